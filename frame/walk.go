package frame

import (
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// walkLimit is the number of places at which a moving load is set down first.
const walkLimit = 20000

// Walk moves a group of loads over the beam (a person, the wheels of a cart) and
// returns what the beam suffers at most, by [Beam.Solve]. The group's places are zero or more,
// from its own origin, which goes from where the group first touches the beam to where it
// leaves; what of it stands off the beam is left out. The beam's own loads stay.
//
// The group is set down every step, m, and on and close beside every rest and
// place of interest (at, m); from the worst of these the origin is moved to the worst
// position of each bound and each peak, to about a millionth of the beam. Since
// every position is solved in full, supports that let go are met as they are.
func (b *Beam) Walk(group []Load, step float64, at ...float64) (*Envelope, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	first, last, err := reach(group)
	if err != nil {
		return nil, err
	}
	from, to := -last, b.Length-first
	if err := (measure.Range{
		Kind: measure.Length, Lo: (to - from) / walkLimit, Hi: largest,
	}).Check("step", step); err != nil {
		return nil, err
	}
	e, err := b.newEnvelope(at)
	if err != nil {
		return nil, err
	}
	origins := b.origins(group, from, to, step, at)
	for _, o := range origins {
		if _, err := e.add(b, b.shift(group, o)); err != nil {
			return nil, err
		}
	}
	return e, e.refine(b, group, origins)
}

// reach returns the group's extent.
func reach(group []Load) (first, last float64, err error) {
	if len(group) == 0 {
		return 0, 0, &measure.Error{Field: "group", Text: "no loads", Class: measure.ErrRange, Want: "one load or more"}
	}
	first, last = math.Inf(1), math.Inf(-1)
	for i, l := range group {
		if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: largest}).Check("group["+itoa(i)+"].From", l.From); err != nil {
			return 0, 0, err
		}
		if err := l.check("group", i, largest); err != nil {
			return 0, 0, err
		}
		first, last = math.Min(first, l.From), math.Max(last, l.From)
		if l.spread() {
			last = math.Max(last, l.To)
		}
	}
	return first, last, nil
}

// origins returns the places, in order, at which the group's origin is set down.
func (b *Beam) origins(group []Load, from, to, step float64, at []float64) []float64 {
	var out []float64
	add := func(o float64) {
		if o >= from && o <= to {
			out = append(out, o)
		}
	}
	n := int(math.Floor((to - from) / step))
	for i := range n + 1 {
		add(from + float64(i)*step)
	}
	add(to)
	// A load on a rest goes straight into it; close beside it, it passes through
	// the beam: the shear is largest there.
	beside := 4 * slack * b.Length
	marks := []float64{0, b.Length}
	for _, r := range b.Rests {
		marks = append(marks, r.At)
	}
	marks = slices.Concat(marks, b.Hinges, at)
	for _, l := range group {
		ends := []float64{l.From}
		if l.spread() {
			ends = append(ends, l.To)
		}
		for _, x := range marks {
			for _, g := range ends {
				add(x - g - beside)
				add(x - g)
				add(x - g + beside)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// shift returns the part of the group that stands on the beam.
func (b *Beam) shift(group []Load, origin float64) []Load {
	var out []Load
	for _, l := range group {
		if !l.spread() {
			l.From += origin
			l.To = 0
			if b.on(l.From) {
				l.From = math.Min(math.Max(l.From, 0), b.Length)
				out = append(out, l)
			}
			continue
		}
		rise := l.Rise / (l.To - l.From)
		from := l.From + origin
		lo, hi := math.Max(from, 0), math.Min(l.To+origin, b.Length)
		if hi-lo > slack*b.Length {
			out = append(out, Load{From: lo, To: hi, Q: l.Q + float64(rise*(lo-from)), Rise: rise * (hi - lo)})
		}
	}
	return out
}

func (b *Beam) on(x float64) bool {
	return x >= -slack*b.Length && x <= b.Length*(1+slack)
}

// refine moves the origin, for each bound and peak, to its worst position
// between the neighbours of the worst position found so far.
func (e *Envelope) refine(b *Beam, group []Load, origins []float64) error {
	type target struct {
		best  int
		value func(l *Line) float64
	}
	var targets []target
	want := func(best int, value func(l *Line) float64) { targets = append(targets, target{best, value}) }
	both := func(bound Bound, value func(l *Line) float64) {
		want(bound.MostCase, value)
		want(bound.LeastCase, func(l *Line) float64 { return -value(l) })
	}
	want(e.Sag.Case, func(l *Line) float64 { return l.Extremes().Sag.Moment })
	want(e.Hog.Case, func(l *Line) float64 { return -l.Extremes().Hog.Moment })
	want(e.Shear.Case, func(l *Line) float64 { return math.Abs(l.Extremes().Shear.Shear) })
	want(e.Up.Case, func(l *Line) float64 { return l.Extremes().Up.Deflection })
	want(e.Down.Case, func(l *Line) float64 { return -l.Extremes().Down.Deflection })
	for i, p := range e.Push {
		both(p, func(l *Line) float64 { return l.Push[i] })
	}
	for _, s := range e.Stations {
		both(s.Shear, func(l *Line) float64 { return l.At(s.X).Shear })
		both(s.Moment, func(l *Line) float64 { return l.At(s.X).Moment })
		both(s.Deflection, func(l *Line) float64 { return l.At(s.X).Deflection })
	}
	n := len(origins)
	for _, t := range targets {
		lo, hi := origins[max(t.best-1, 0)], origins[min(t.best+1, n-1)]
		if err := e.golden(b, group, lo, hi, t.value); err != nil {
			return err
		}
	}
	return nil
}

// golden adds the case of the largest value between two origins.
func (e *Envelope) golden(b *Beam, group []Load, lo, hi float64, value func(*Line) float64) error {
	const ratio = 0.6180339887498949
	at := func(o float64) (float64, error) {
		with := *b
		with.Loads = slices.Concat(b.Loads, b.shift(group, o))
		l, err := with.Solve()
		if err != nil {
			return 0, err
		}
		return value(l), nil
	}
	x, y := hi-ratio*(hi-lo), lo+ratio*(hi-lo)
	fx, err := at(x)
	if err != nil {
		return err
	}
	fy, err := at(y)
	for range 60 {
		if err != nil {
			return err
		}
		if !(hi-lo > 1e-6*b.Length) {
			break
		}
		if fx < fy {
			lo, x, fx = x, y, fy
			y = lo + ratio*(hi-lo)
			fy, err = at(y)
		} else {
			hi, y, fy = y, x, fx
			x = hi - ratio*(hi-lo)
			fx, err = at(x)
		}
	}
	if err != nil {
		return err
	}
	_, err = e.add(b, b.shift(group, lo+(hi-lo)/2))
	return err
}
