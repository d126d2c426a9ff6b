package dock

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/float/moor"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A Launch is what to expect of the dock on the day that it floats, with nobody
// aboard.
type Launch struct {
	Corners [4]Corner // as the tape goes round from where it hooks

	// Gust is the wind over 3 s at 10 m, m/s, at which so many hands, each with 100 N
	// on slippery ground, no longer hold the dock with its long side to the wind; 0
	// where Err says why it is not known.
	Gust  float64
	Hands int
	Err   error
}

// A Corner is the height over still water at which a corner of the deck should be
// found, m, within which 19 of 20 docks lie that are built like this one, and how low
// it is with the float that lowers it most full of water.
type Corner struct {
	Name           string
	Height, Within float64
	Leak           float64 // m; the height itself where the dock finds no rest with any float full
	Float          string  // which that is
}

// Launch works it out: corners by [float.Platform.Expect], the wind by
// [moor.Wind.Load]. The error is for a plan that does not say enough, or a
// [float.Failure] of the dock with nobody aboard.
func (d *Dock) Launch() (*Launch, error) {
	fl, err := d.afloat()
	if err != nil {
		return nil, err
	}
	expect, err := fl.base.Expect(float.Doubt{})
	if err != nil {
		return nil, err
	}
	losses, err := fl.base.Losses()
	if err != nil {
		return nil, err
	}
	out := &Launch{}
	for i, at := range fl.base.Corners {
		c := Corner{Name: corners[i], Height: expect[i].Value, Within: expect[i].Within, Leak: expect[i].Value}
		for _, l := range losses {
			if l.Err != nil {
				continue
			}
			if h := l.State.Height(at); h < c.Leak-1e-9 {
				c.Leak, c.Float = h, d.at(l.Unit)
			}
		}
		out.Corners[i] = c
	}
	out.Gust, out.Hands, out.Err = d.gust(fl)
	return out, nil
}

// gust returns the wind in which hands hold the dock.
func (d *Dock) gust(fl floating) (speed float64, hands int, err error) {
	hands = 2
	if plan.Has(d.plan.Shop.Sled) || d.plan.Shop.Carriers.Value > 0 {
		hands = max(hands, d.plan.Shop.Carriers.Value)
	}
	h, err := d.storm(fl)
	if err != nil {
		return 0, hands, err
	}
	const trial = 10.0 // m/s: the push grows with the square
	w := h.wind
	w.Current, w.Below = moor.Current{}, nil
	w.Wind = moor.Wind{Speed: trial, Averaging: 3, Height: 10}
	w.Above = slices.DeleteFunc(slices.Clone(w.Above), func(f moor.Face) bool { return f.Name == "people" })
	side, err := w.Load(math.Pi / 2)
	if err != nil {
		return 0, hands, err
	}
	end, err := w.Load(0)
	if err != nil {
		return 0, hands, err
	}
	push := math.Max(math.Abs(side.Y), math.Abs(end.X))
	return trial * math.Sqrt(pullOne*float64(hands)/push), hands, nil
}

// A Plate is what stands on the dock's sign: numbers of people as heavy as the
// heaviest of the plan.
type Plate struct {
	Each     float64 // kg
	Anywhere int     // spread over the deck
	Edge     int     // together along any one edge, side by side
	Corner   int     // together in any one corner
	Limits   [3]string

	Dive  bool    // there is water enough at its lowest to dive
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

// Plate works out the sign, by [float.Platform.Post] and our choice of limits. In a
// corner, a frame that bends goes lower than one that
// does not: the dock's envelope says how much lower under the plan's people, and the
// number is in proportion; without it nobody may stand there. The error is for a plan
// that does not say enough.
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
	post, err := d.posting(fl.base)
	if err != nil {
		return nil, err
	}
	out.Edge = max(0, post.People)
	if !post.Full {
		out.Limits[1] = d.broken(post)
	}
	x, y := d.length/2-l.FromEdge.Value, d.width/2-l.FromEdge.Value
	out.Anywhere, out.Limits[0] = d.most(fl.base, [2]float64{})
	if most := l.Deck.Value * d.length * d.width / measure.Gravity / out.Each; plan.Has(l.Deck) && most < float64(out.Anywhere) {
		out.Anywhere, out.Limits[0] = int(most), "more than the even load that the lumber was checked for"
	}
	out.Corner = out.Edge
	for _, at := range [4][2]float64{{-x, -y}, {x, -y}, {x, y}, {-x, y}} {
		if n, why := d.most(fl.base, at); n < out.Corner {
			out.Corner, out.Limits[2] = n, why
		}
	}
	out.Anywhere = max(out.Anywhere, out.Edge)
	out.bend(d, e)
	out.Level = rests{on(site.LevelLow), on(site.LevelHigh), on(site.Depth)}.err()
	if out.Level == nil {
		out.Low, out.High, out.Depth = site.LevelLow.Value, site.LevelHigh.Value, site.Depth.Value+site.LevelLow.Value
		out.Dive = out.Depth >= diveDepth
	}
	return out, nil
}

// most returns how many of the heaviest may stand at a place, from the dock's middle,
// and what the next one breaks. Each sinks and tilts it further, so that halving finds
// the number.
func (d *Dock) most(base *float.Platform, at [2]float64) (int, string) {
	const all = 1000
	why := ""
	bears := func(n int) bool {
		p := base.With(float.Weight{Mass: float64(n) * d.heaviest(), At: r3.Vec{X: at[0], Y: at[1], Z: d.deckTop() + d.plan.Loads.Centre.Value}})
		c, err := d.bearable(p)
		switch {
		case err != nil:
			why = "the dock finds no rest"
		case c.Verdict() != measure.Holds:
			why = fmt.Sprintf("it breaks %q: %s", c.Name, c.Numbers(d.system()))
		default:
			return true
		}
		return false
	}
	lo, hi := 0, 1 // lo bears
	for hi <= all && bears(hi) {
		lo, hi = hi, 2*hi
	}
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; bears(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	bears(lo + 1)
	return lo, why
}

// bend lowers the number in a corner for a frame that bends.
func (p *Plate) bend(d *Dock, e *Envelope) {
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
