package dock

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// A Plate is what stands on the dock's sign: one number of people, which holds wherever
// they stand, all of them at any one edge or in any one corner, nobody else aboard.
type Plate struct {
	Each   float64 // kg: the heaviest of the plan, and no less than a grown person
	People int     // of that mass, in all
	Limit  string  // what one more does, or why there are no more

	// Water under the dock. Where Level is not nil none of it is known: Dive is false, and
	// Depth, Low and High are 0, which is then no depth and no level.
	Dive  bool    // there is water enough under the dock at its lowest to dive
	Depth float64 // m, at its lowest; 0 or less is a dock aground, if Level is nil
	Low   float64 // m, lowest water, over that when measured
	High  float64 // m, highest water, likewise
	Level error   // why they are not known

	DiveSource *measure.Source // whose rule it is that nobody dives into less than 9 ft
}

// diveDepth is the least water that anybody should dive into, m.
const diveDepth = 9 * measure.Foot

var srcDive = &measure.Source{Title: "American Red Cross, water safety", Locator: "at least 9 ft of water to dive into", Status: measure.Memory}

// Plate works out the sign, by [float.Platform.Post] and our choice of limits. People
// of [Plate.Each] kg, all together, hold at every place of the edge and in every
// corner, and are no more than the plan's, for whom the frame was checked there. In a
// corner, a frame that bends goes lower than one that does not: the dock's envelope says
// how much lower under the plan's people, and fewer are taken in proportion; without it
// nobody may stand there. The error is for a plan that does not say enough.
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
	post, err := d.posting(fl.base)
	if err != nil {
		return nil, err
	}
	out := &Plate{Each: d.grown(), People: max(0, post.People), DiveSource: srcDive}
	if !post.Full {
		out.Limit = d.broken(post)
	}
	const weighed = 1.001 // kilograms and pounds of the same people, rounded
	out.most(int(math.Floor(d.people()/out.Each*weighed)), "the frame was checked for no more, the people of the plan")
	for _, at := range d.cornerPlaces() {
		for n := range out.People {
			p := fl.base.With(float.Weight{Mass: float64(n+1) * out.Each, At: r3.Vec{X: at[0], Y: at[1], Z: d.deckTop() + l.Centre.Value}})
			if why := d.breaks(p); why != "" {
				out.most(n, why+", in a corner")
				break
			}
		}
	}
	out.bend(d, e)
	out.Level = rests{on(site.LevelLow), on(site.LevelHigh), on(site.Depth)}.err()
	if out.Level == nil {
		out.Low, out.High, out.Depth = site.LevelLow.Value, site.LevelHigh.Value, site.Depth.Value+site.LevelLow.Value
		out.Dive = out.Depth >= diveDepth
	}
	return out, nil
}

// most lowers the number to n.
func (p *Plate) most(n int, why string) {
	if n < p.People {
		p.People, p.Limit = n, why
	}
}

// bend lowers the number for a frame that bends.
func (p *Plate) bend(d *Dock, e *Envelope) {
	if e == nil || len(e.Situations) == 0 || !(d.people() > 0) {
		p.most(0, "how far the frame bends in a corner is not known")
		return
	}
	i, low := e.lowest()
	if i < 0 {
		p.most(0, "the dock finds no rest with everyone of the plan in a corner")
		return
	}
	empty := slices.Min(e.Situations[0].Corners[:])
	dry := empty + d.deckTop()
	drop := (empty - low) / d.people() * p.Each
	switch n := math.Floor(dry / drop); {
	case drop <= 0:
	case !(n > 0): // and where a corner's height is no number
		p.most(0, "the corner goes under water, the frame bending")
	default:
		p.most(int(min(n, 1e6)), "the corner goes under water, the frame bending")
	}
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
