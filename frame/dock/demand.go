package dock

import (
	"math"

	"example.org/floewright/frame"
)

// spots returns where the load on one spot is tried: at both tips, and in each
// stretch a depth from its ends, where it shears most, and about the middle,
// where it bends most.
func spots(edges []float64, depth float64) []float64 {
	last := len(edges) - 1
	out := []float64{edges[0], edges[last]}
	for i := 1; i <= last; i++ {
		from, size := edges[i-1], edges[i]-edges[i-1]
		for _, share := range []float64{0.25, 0.4, 0.5, 0.6, 0.75} {
			out = append(out, from+share*size)
		}
		if size > 2*depth {
			out = append(out, from+depth, edges[i]-depth)
		}
	}
	return out
}

// A demand is what a joist is asked over one stretch between rests, or over an
// overhang.
type demand struct {
	from, to    float64
	tip         bool
	sag, hog    float64
	shear       float64
	long, short float64
	spotGoverns bool
}

// demands solves a joist under dead load with the uniform load on the stretches
// where it is worst, and with the load on one spot wherever it is worst, and
// returns the envelope.
func (d *Dock) demands(s stand, ei, dead, live, spot float64) ([]demand, error) {
	b := frame.Beam{Length: d.clear, EI: ei}
	for _, at := range s.rests {
		b.Rests = append(b.Rests, frame.Rest{At: at})
	}
	beam := func(loads ...frame.Load) (*frame.Line, error) {
		b := b
		b.Loads = loads
		return b.Solve()
	}
	lasting, err := beam(frame.Uniform(0, d.clear, dead))
	if err != nil {
		return nil, err
	}
	var out []demand
	edges := append(append([]float64{0}, s.rests...), d.clear)
	for i := 1; i < len(edges); i++ {
		if edges[i]-edges[i-1] < 1e-6 {
			continue
		}
		x := lasting.ExtremesWithin(edges[i-1], edges[i])
		out = append(out, demand{
			from: edges[i-1], to: edges[i], tip: i == 1 || i == len(edges)-1,
			long: max(x.Up.Deflection, -x.Down.Deflection),
		})
	}
	take := func(isSpot bool, passing ...frame.Load) error {
		all, err := beam(append(passing, frame.Uniform(0, d.clear, dead))...)
		if err != nil {
			return err
		}
		alone, err := beam(passing...)
		if err != nil {
			return err
		}
		for i := range out {
			o := &out[i]
			x, y := all.ExtremesWithin(o.from, o.to), alone.ExtremesWithin(o.from, o.to)
			if m := max(x.Sag.Moment, -x.Hog.Moment); m > max(o.sag, o.hog) {
				o.spotGoverns = isSpot
			}
			o.sag, o.hog = max(o.sag, x.Sag.Moment), max(o.hog, -x.Hog.Moment)
			o.shear = max(o.shear, math.Abs(x.Shear.Shear))
			o.short = max(o.short, y.Up.Deflection, -y.Down.Deflection)
		}
		return nil
	}
	patterns, err := b.Patterns(live)
	if err != nil {
		return nil, err
	}
	for _, p := range patterns {
		if err := take(false, p...); err != nil {
			return nil, err
		}
	}
	for _, at := range spots(edges, d.joist.section.Depth) {
		if err := take(true, frame.Point(at, spot)); err != nil {
			return nil, err
		}
	}
	return out, nil
}
