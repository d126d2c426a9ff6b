package dock

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A Plate is what stands on the dock's sign: numbers of people as heavy as the
// heaviest of the plan, which hold together.
type Plate struct {
	Each   float64 // kg
	Aboard int     // in all, as many of them at an edge or in a corner as may be there, the rest in the middle
	Edge   int     // of them together along any one edge, side by side
	Corner int     // of them together in any one corner
	// Limits says what one more does, or why there are no more, for each of the three.
	Limits [3]string

	Dive  bool    // there is water enough under the dock at its lowest to dive
	Depth float64 // m, at its lowest; 0 is not known
	Low   float64 // m, lowest and highest water, over that when measured
	High  float64 // m, likewise
	Level error   // why they are not known
}

// diveDepth is the least water that anybody should dive into, m.
const diveDepth = 9 * measure.Foot

// DiveSource says whose that depth is.
func DiveSource() *measure.Source {
	return &measure.Source{Title: "American Red Cross, water safety", Locator: "at least 9 ft of water to dive into", Status: measure.Memory}
}

// Plate works out the sign, by [float.Platform.Post] and our choice of limits. No
// number is larger than what the frame was checked for:
// at an edge and in a corner the plan's people, on the whole deck the lesser of its two
// even loads. In a corner, a frame that bends goes lower than one that does not: the
// dock's envelope says how much lower under the plan's people, and fewer are taken in
// proportion; without it nobody may stand there. The error is for a plan that does not
// say enough.
func (d *Dock) Plate(e *Envelope) (*Plate, error) {
	fl, err := d.afloat()
	if err != nil {
		return nil, err
	}
	l, site := &d.plan.Loads, &d.plan.Site
	if err := (rests{on(l.FromEdge), on(l.Centre)}).err(); err != nil {
		return nil, err
	}
	if d.heaviest() == 0 || math.IsNaN(d.heaviest()) {
		return nil, rests{{path: "people", missing: true}}.err()
	}
	out := &Plate{Each: d.heaviest()}
	if err := out.edge(d, fl.base); err != nil {
		return nil, err
	}
	out.corner(d, fl.base, e)
	if err := out.all(d, fl.base); err != nil {
		return nil, err
	}
	out.Level = rests{on(site.LevelLow), on(site.LevelHigh), on(site.Depth)}.err()
	if out.Level == nil {
		out.Low, out.High, out.Depth = site.LevelLow.Value, site.LevelHigh.Value, site.Depth.Value+site.LevelLow.Value
		out.Dive = out.Depth >= diveDepth
	}
	return out, nil
}

// edge finds how many may stand along any edge, nobody else aboard.
func (p *Plate) edge(d *Dock, base *float.Platform) error {
	post, err := d.posting(base)
	if err != nil {
		return err
	}
	p.Edge = max(0, post.People)
	if !post.Full {
		p.Limits[1] = d.broken(post)
	}
	if planned := int(math.Floor(d.people()/p.Each + 1e-9)); planned < p.Edge {
		p.Edge, p.Limits[1] = planned, "the frame was checked for no more, the people of the plan"
	}
	return nil
}

// corner finds how many of them may stand in any corner.
func (p *Plate) corner(d *Dock, base *float.Platform, e *Envelope) {
	p.Corner, p.Limits[2] = p.Edge, "more than at an edge"
	for _, at := range d.cornerPlaces() {
		n, why := 0, ""
		for ; n < p.Corner; n++ {
			if why = d.breaks(p.stand(d, base, n+1, at)); why != "" {
				p.Corner, p.Limits[2] = n, why
			}
		}
	}
	if e == nil || len(e.Situations) == 0 || !(d.people() > 0) {
		p.Corner, p.Limits[2] = 0, "how far the frame bends there is not known"
		return
	}
	i, low := e.lowest()
	if i < 0 {
		p.Corner, p.Limits[2] = 0, "the dock finds no rest with everyone of the plan there"
		return
	}
	empty := slices.Min(e.Situations[0].Corners[:])
	dry := empty + d.deckTop()
	drop := (empty - low) / d.people() * p.Each
	if n := math.Floor(max(0, dry/drop)); !(drop <= 0) && !(n >= float64(p.Corner)) {
		p.Corner, p.Limits[2] = int(max(0, n)), "the corner goes under water, the frame bending"
	}
}

// all finds how many may be aboard in all: as many at the worst place of an edge, or in
// a corner, as the other numbers say, and the rest in the middle.
func (p *Plate) all(d *Dock, base *float.Platform) error {
	if p.Edge == 0 {
		p.Limits[0] = "one at an edge is too many already"
		return nil
	}
	l := &d.plan.Loads
	even := math.Inf(1)
	for _, q := range []plan.Quantity{l.Deck, l.Flotation} {
		if plan.Has(q) {
			even = min(even, q.Value*d.length*d.width/measure.Gravity/p.Each)
		}
	}
	failed := error(nil)
	bears := func(n int) bool {
		if float64(n) > even {
			p.Limits[0] = "the frame was checked for no more, its even load"
			return false
		}
		why, err := p.together(d, base, n)
		if err != nil {
			failed = err
		}
		if why != "" {
			p.Limits[0] = why
		}
		return why == "" && err == nil
	}
	const most = 1000
	lo, hi := 0, 1 // lo bears: each more sinks it further, so that halving finds the number
	for hi <= most && bears(hi) {
		lo, hi = hi, 2*hi
	}
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; bears(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	if lo < most {
		bears(lo + 1) // says why not
	}
	p.Aboard = lo
	p.Edge, p.Corner = min(p.Edge, lo), min(p.Corner, lo)
	return failed
}

// together says what so many aboard break, spread in the ways that the sign leaves
// open; nothing is an empty text.
func (p *Plate) together(d *Dock, base *float.Platform, n int) (string, error) {
	if why := d.breaks(p.stand(d, base, n, [2]float64{})); why != "" {
		return why + ", all in the middle", nil
	}
	k := min(n, p.Edge)
	post, err := d.posting(p.stand(d, base, n-k, [2]float64{}))
	if err != nil {
		return "", err
	}
	if post.People < k && !post.Full {
		return fmt.Sprintf("%s, %d at an edge and %d in the middle", d.broken(post), post.People+1, n-k), nil
	}
	k = min(n, p.Corner)
	rest := p.stand(d, base, n-k, [2]float64{})
	for _, at := range d.cornerPlaces() {
		if why := d.breaks(p.stand(d, rest, k, at)); why != "" {
			return fmt.Sprintf("%s, %d in a corner and %d in the middle", why, k, n-k), nil
		}
	}
	return "", nil
}

// stand returns the dock with so many more at a place, from its middle.
func (p *Plate) stand(d *Dock, base *float.Platform, n int, at [2]float64) *float.Platform {
	if n == 0 {
		return base
	}
	return base.With(float.Weight{Mass: float64(n) * p.Each, At: r3.Vec{X: at[0], Y: at[1], Z: d.deckTop() + d.plan.Loads.Centre.Value}})
}

// cornerPlaces are where people stand in a corner, from the dock's middle.
func (d *Dock) cornerPlaces() [4][2]float64 {
	in := d.plan.Loads.FromEdge.Value
	x, y := d.length/2-in, d.width/2-in
	return [4][2]float64{{-x, -y}, {x, -y}, {x, y}, {-x, y}}
}

// breaks says which limit of tilt, edge and immersion the dock breaks, if any.
func (d *Dock) breaks(p *float.Platform) string {
	c, err := d.bearable(p)
	switch {
	case err != nil:
		return "the dock finds no rest"
	case c.Verdict() != measure.Holds:
		return fmt.Sprintf("it breaks %q: %s", c.Name, c.Numbers(d.system()))
	}
	return ""
}
