package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Clips are how an eye in wire rope is made with U-bolt clips, the saddle on the
// live end, the U-bolt on the dead end.
type Clips struct {
	Number   int     // at least
	Spacing  float64 // m, between two
	Turnback float64 // m, length of wire turned back
	Torque   float64 // N·m, on the nuts; again after the first load
	Sources  []*measure.Source
}

// ClipsFor returns the clips of a wire rope of a diameter, m, from 1/8 to 1/2 in: the
// greater number of 3D + 1, D in inches, and the catalogue's, which differ at 3/8
// and 7/16 in; spacing 6D; turnback and torque of the next greater listed size.
// Made so an eye keeps the share of the end "wire rope clips" of [Factor].
func ClipsFor(diameter float64) (Clips, error) {
	t, err := load()
	if err != nil {
		return Clips{}, err
	}
	most := t.clips[len(t.clips)-1].size
	listed := measure.Range{Kind: measure.Length, Lo: t.clips[0].size * (1 - 1e-9), Hi: most * (1 + 1e-9), Source: t.clips[0].source}
	if err := listed.Check("diameter of the wire rope", diameter); err != nil {
		return Clips{}, err
	}
	rule := src("Steelworker, NAVEDTRA 14026", "", "number and spacing of clips", measure.Read)
	for _, c := range t.clips {
		if diameter <= c.size*(1+1e-9) {
			n := int(math.Ceil(3*diameter/measure.Inch + 1 - 1e-9))
			return Clips{
				Number: max(n, c.number), Spacing: 6 * diameter, Turnback: c.turnback, Torque: c.torque,
				Sources: []*measure.Source{rule, c.source},
			}, nil
		}
	}
	return Clips{}, listed.Check("diameter of the wire rope", diameter)
}
