package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// The added mass of a body that heaves at the surface, as a share of its value
// at high frequency: the bounds of what it has at the periods of waves. At high
// frequency it is 1; it falls to about 0.6 where waves of 1 to 2 s are made (the
// minimum of Ursell's curve, from memory), and short bodies have less than long
// ones.
const (
	leastAdded = 0.5
	mostAdded  = 1.0
)

// Motion returns the natural periods of the platform about its rest position on
// flat water, coupled as its masses and its waterplane couple them.
//
// The added mass of each body moves up and down with it: that of the flat plate
// of its waterplane, ρπb²/8 for each metre of its length (b its breadth at the
// water), or the mass of the water it displaces, whichever is more. Both are
// exact for a half-immersed drum, ρπr²/2, and each in its own limit, barely wet
// and deep (Korotkin, Added Masses of Ship Structures, p. 206; a drum turning
// about its own axis moves no water). Each period comes as a [Band], for half of
// it and for all of it. Sway and the damping by the waves that the dock makes are
// left out.
//
// The weights must lie where their masses are: a frame lumped in one point would
// roll much too fast. See [Weight.Spread].
//
// Errors are those of Settle, and a [measure.Error] if the masses have no inertia
// about some axis.
func (p *Platform) Motion() (Motion, error) {
	if p == nil {
		return Motion{}, p.check()
	}
	calm := *p
	calm.Wave = nil
	rest, err := calm.Settle()
	if err != nil {
		return Motion{}, err
	}
	m, err := calm.model(nil)
	if err != nil {
		return Motion{}, err
	}
	var s sums
	n, d := rest.Up, rest.Level
	m.at(n.X, n.Y, n.Z, d, &s)
	f := frameOfMotion{
		n: n, e1: r3.Vec{X: s.e1x, Y: s.e1y, Z: s.e1z}, e2: r3.Vec{X: s.e2x, Y: s.e2y, Z: s.e2z},
		g: r3.Vec{X: s.gx / s.mass, Y: s.gy / s.mass, Z: s.gz / s.mass},
	}
	stiffness := f.stiffness(&s, m.rho)
	var out [2][3]float64
	var pure [3]float64
	for i, share := range []float64{leastAdded, mostAdded} {
		inertia := f.masses(&calm, &m, d, &s)
		f.entrain(&m, share, d, &s, &inertia)
		period, energy, err := oscillate(inertia, stiffness)
		if err != nil {
			return Motion{}, err
		}
		out[i] = period
		for k := range pure {
			if i == 0 || energy[k] < pure[k] {
				pure[k] = energy[k]
			}
		}
	}
	band := func(k int) Band {
		return Band{Shortest: min(out[0][k], out[1][k]), Longest: max(out[0][k], out[1][k]), Pure: pure[k]}
	}
	return Motion{Heave: band(0), Roll: band(2), Pitch: band(1)}, nil
}

// Spread returns four weights that stand for the mass laid evenly over a level
// rectangle, length along x and width along y, centred where the weight was. They
// have its mass, its centre and its moments of inertia, so that [Platform.Motion]
// is right and Settle unchanged. Sizes are in m, 0 or more.
func (w Weight) Spread(length, width float64) ([]Weight, error) {
	if err := heftRange.Check("Mass", w.Mass); err != nil {
		return nil, err
	}
	for _, x := range []float64{w.At.X, w.At.Y, w.At.Z} {
		if err := placeRange.Check("At", x); err != nil {
			return nil, err
		}
	}
	for _, c := range []struct {
		field string
		size  float64
	}{{"length", length}, {"width", width}} {
		if err := spreadRange.Check(c.field, c.size); err != nil {
			return nil, err
		}
	}
	// Four points at half of size/√3 have the second moment m size²/12.
	x, y := length/(2*math.Sqrt(3)), width/(2*math.Sqrt(3))
	out := make([]Weight, 0, 4)
	for _, c := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		out = append(out, Weight{Mass: w.Mass / 4, At: r3.Add(w.At, r3.Vec{X: c[0] * x, Y: c[1] * y})})
	}
	return out, nil
}

var (
	spreadBound = &measure.Source{Title: "bound against slips of the pen", Status: measure.OwnChoice}
	spreadRange = measure.Range{Kind: measure.Length, Lo: 0, Hi: 1e4, Source: spreadBound}
	heftRange   = measure.Range{Kind: measure.Mass, Lo: 0, Hi: 1e9, Source: spreadBound}
)
