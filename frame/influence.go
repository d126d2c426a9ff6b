package frame

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// An Influence is an influence line: the effect at one place of a load of 1 N,
// downward, as a function of where the load stands.
//
// It is the beam's deflection under an imposed unit movement at that place
// (H. Müller-Breslau): a kink for a moment, a step for a shear, a lift for a
// push; and under a unit load for a deflection. So it is exact everywhere. It
// holds for a small additional load on the beam as it rests under its own loads:
// supports that are not linear count with the stiffness they have there.
// The zero value says nothing: NaN.
type Influence struct{ line Line }

// At returns the effect of 1 N at x, m from the left end, in N, N·m or m per N, exact;
// where it jumps, of a load just right of the place. An x off the beam counts as the
// nearer end.
func (f *Influence) At(x float64) float64 { return f.line.At(x).Deflection }

// Before returns the effect of 1 N just left of x, m; as [Influence.At] else.
func (f *Influence) Before(x float64) float64 { return f.line.Before(x).Deflection }

// Most returns where, m, a load has the largest effect, and that effect, in the unit
// of [Influence.At], exact.
func (f *Influence) Most() (x, effect float64) {
	d := f.line.Extremes().Up
	return d.X, d.Deflection
}

// Least returns where, m, a load has the least (most negative) effect, and that
// effect, in the unit of [Influence.At], exact.
func (f *Influence) Least() (x, effect float64) {
	d := f.line.Extremes().Down
	return d.X, d.Deflection
}

// Area returns the effect of 1 N/m between two places, m, in N, N·m or m per N/m, the
// exact integral of [Influence.At], and of its parts that add (plus) and relieve
// (minus, zero or less): a crowd that may stand anywhere between the two has at most
// the effect plus.
func (f *Influence) Area(from, to float64) (plus, minus float64) {
	l := &f.line
	for i := range l.Pieces {
		p := &l.Pieces[i]
		lo, hi := math.Max(from, p.Start.X), math.Min(to, p.To)
		if !(lo < hi) {
			continue
		}
		lo, hi = lo-p.Start.X, hi-p.Start.X
		c := l.curves(i)
		w := poly(c.deflection[:])
		area := w.integral()
		a := lo
		for _, b := range append(w.crossings(lo, hi), hi) {
			part := area.at(b) - area.at(a)
			if part > 0 {
				plus += part
			} else {
				minus += part
			}
			a = b
		}
	}
	return plus, minus
}

func (p poly) integral() poly {
	out := make(poly, len(p)+1)
	for i, v := range p {
		out[i+1] = v / float64(i+1)
	}
	return out
}

// MomentInfluence returns the influence line of the bending moment at x, m, in N·m
// per N, exact (Müller-Breslau, see [Influence]).
func (b *Beam) MomentInfluence(x float64) (*Influence, error) {
	return b.influence(x, -1, func(*Beam) map[float64]jump { return map[float64]jump{x: {kink: -1}} })
}

// ShearInfluence returns the influence line of the shear just right of x, m, in N
// per N, exact. At the far end it is the shear just left of it.
func (b *Beam) ShearInfluence(x float64) (*Influence, error) {
	return b.influence(x, -1, func(*Beam) map[float64]jump { return map[float64]jump{x: {step: 1}} })
}

// DeflectionInfluence returns the influence line of the deflection at x, m, up
// positive, in m per N, exact.
func (b *Beam) DeflectionInfluence(x float64) (*Influence, error) {
	return b.influence(x, -1, func(c *Beam) map[float64]jump {
		c.Loads = []Load{Point(x, 1)}
		return nil
	})
}

// PushInfluence returns the influence line of the push of a rest, by its index,
// in N per N, exact.
func (b *Beam) PushInfluence(rest int) (*Influence, error) {
	if rest < 0 || rest >= len(b.Rests) {
		return nil, &measure.Error{
			Field: "rest", Value: float64(rest), Class: measure.ErrRange,
			Range: measure.Range{Lo: 0, Hi: float64(len(b.Rests) - 1)},
		}
	}
	return b.influence(0, rest, func(*Beam) map[float64]jump { return nil })
}

// influence solves the beam with its present stiffness under an imposed unit
// movement: jumps at x, or a lift of one rest.
func (b *Beam) influence(x float64, lift int, impose func(*Beam) map[float64]jump) (*Influence, error) {
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: b.Length}).Check("x", x); err != nil {
		return nil, err
	}
	s, err := b.assemble(nil)
	if err != nil {
		return nil, err
	}
	t, err := s.settle()
	if err != nil {
		return nil, err
	}
	c := *b
	c.Loads = nil
	c.Rests = make([]Rest, len(b.Rests))
	next := 0 // bearing
	for i, r := range b.Rests {
		r.Settlement = 0
		if i == lift {
			r.Settlement = -1
		}
		if r.Support != nil {
			r.Support = Spring(t.stiffness[next])
			next++
		}
		c.Rests[i] = r
	}
	s, err = c.assemble(impose(&c))
	if err != nil {
		return nil, err
	}
	if t, err = s.settle(); err != nil {
		return nil, err
	}
	l, err := s.line(t)
	if err != nil {
		return nil, err
	}
	return &Influence{*l}, nil
}
