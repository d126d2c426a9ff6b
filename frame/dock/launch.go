package dock

import (
	"math"
	"slices"

	"example.org/floewright/float"
	"example.org/floewright/float/moor"
	"example.org/floewright/frame/plan"
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
// found, m, within which 19 of 20 docks lie that are built like this one, or half of the
// way to Leak where that is less, and how low it is with the float that lowers it most
// full of water.
type Corner struct {
	Name           string
	Height, Within float64
	Leak           float64 // m; the height itself where the dock finds no rest with any float full
	Float          string  // which that is
}

// Launch returns how high over the water the deck's four corners should be found with
// nobody aboard, how much that may be off and what a leak makes of it, by
// [float.Platform.Expect] and [float.Platform.Losses], and up to which gust hands hold
// the dock, by [moor.Wind.Load]. The error is for a plan that does not say enough, or a
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
		if drop := c.Height - c.Leak; drop > 0 {
			c.Within = min(c.Within, drop/2)
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
