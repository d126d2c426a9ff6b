package frame

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Bound holds the least and the most that a quantity reaches over several load
// cases, N of a shear or a push, N·m of a moment, m of a deflection, and the indices
// of the cases that give them.
type Bound struct {
	Least, Most         float64
	LeastCase, MostCase int
}

// add takes in a value of case c; the first one sets both sides.
func (b *Bound) add(c int, v float64, first bool) {
	if first || v < b.Least {
		b.Least, b.LeastCase = v, c
	}
	if first || v > b.Most {
		b.Most, b.MostCase = v, c
	}
}

// A Station is the envelope at one place of a beam. Its shear covers both sides.
type Station struct {
	X                         float64 // m
	Shear, Moment, Deflection Bound
}

// A Peak is a state at its exact place, and the index of the case that gives it.
type Peak struct {
	Diagram
	Case int
}

// An Envelope is what a beam suffers at most over several load cases.
type Envelope struct {
	Cases    [][]Load  // as examined, without the beam's own loads
	Stations []Station // at the places asked for
	Push     []Bound   // N, by rest
	Sag      Peak      // largest moment anywhere
	Hog      Peak      // least moment anywhere
	Shear    Peak      // largest shear of either sign
	Up       Peak      // largest deflection
	Down     Peak      // least deflection
}

// String returns the peaks and the bounds of the pushes with their units, a line
// each.
func (e *Envelope) String() string {
	var b strings.Builder
	for _, p := range []struct {
		name string
		peak Peak
	}{
		{"largest sagging", e.Sag}, {"largest hogging", e.Hog}, {"largest shear", e.Shear}, {"highest", e.Up}, {"lowest", e.Down},
	} {
		fmt.Fprintf(&b, "%s, case %d: %v\n", p.name, p.peak.Case, p.peak.Diagram)
	}
	for i, p := range e.Push {
		fmt.Fprintf(&b, "push of rest %d: %s to %s\n", i, measure.Force.Format(p.Least, measure.SI), measure.Force.Format(p.Most, measure.SI))
	}
	for _, s := range e.Stations {
		fmt.Fprintf(&b, "x = %.3f m: shear %s to %s, moment %s to %s\n", noMinus(s.X, 3),
			measure.Force.Format(s.Shear.Least, measure.SI), measure.Force.Format(s.Shear.Most, measure.SI),
			measure.Moment.Format(s.Moment.Least, measure.SI), measure.Moment.Format(s.Moment.Most, measure.SI))
	}
	return b.String()
}

// Envelope solves the beam under its own loads together with each of the cases in
// turn, by [Beam.Solve], and returns what it suffers at most. The extremes over the
// whole beam are exact; at adds places, m, at which bounds are kept. A case under
// which the beam finds no rest is an error that names it.
func (b *Beam) Envelope(cases [][]Load, at ...float64) (*Envelope, error) {
	if len(cases) == 0 {
		return nil, &measure.Error{Field: "cases", Text: "none", Class: measure.ErrRange, Want: "one or more; a case may be empty"}
	}
	e, err := b.newEnvelope(at)
	if err != nil {
		return nil, err
	}
	for _, c := range cases {
		if _, err := e.add(b, c); err != nil {
			return nil, err
		}
	}
	return e, nil
}

func (b *Beam) newEnvelope(at []float64) (*Envelope, error) {
	e := &Envelope{Push: make([]Bound, len(b.Rests))}
	within := measure.Range{Kind: measure.Length, Lo: 0, Hi: b.Length}
	for i, x := range at {
		if err := within.Check("at["+itoa(i)+"]", x); err != nil {
			return nil, err
		}
		e.Stations = append(e.Stations, Station{X: x})
	}
	return e, nil
}

// add solves one more case and takes it in.
func (e *Envelope) add(b *Beam, loads []Load) (*Line, error) {
	n := len(e.Cases)
	with := *b
	with.Loads = slices.Concat(b.Loads, loads)
	l, err := with.Solve()
	if err != nil {
		return nil, fmt.Errorf("case %d: %w", n, err)
	}
	e.Cases = append(e.Cases, loads)
	for i, p := range l.Push {
		e.Push[i].add(n, p, n == 0)
	}
	for i := range e.Stations {
		s := &e.Stations[i]
		for k, d := range [2]Diagram{l.Before(s.X), l.At(s.X)} {
			first := n == 0 && k == 0
			s.Shear.add(n, d.Shear, first)
			s.Moment.add(n, d.Moment, first)
			s.Deflection.add(n, d.Deflection, first)
		}
	}
	x := l.Extremes()
	take := func(p *Peak, d Diagram, worse bool) {
		if n == 0 || worse {
			*p = Peak{d, n}
		}
	}
	take(&e.Sag, x.Sag, x.Sag.Moment > e.Sag.Moment)
	take(&e.Hog, x.Hog, x.Hog.Moment < e.Hog.Moment)
	take(&e.Shear, x.Shear, math.Abs(x.Shear.Shear) > math.Abs(e.Shear.Shear))
	take(&e.Up, x.Up, x.Up.Deflection > e.Up.Deflection)
	take(&e.Down, x.Down, x.Down.Deflection < e.Down.Deflection)
	return l, nil
}

// allPatterns is the number of spans up to which every pattern is examined.
const allPatterns = 12

// Patterns returns the ways in which a uniform live load of q N/m, downward, may
// stand on some of the spans and not on others; hand them to [Beam.Envelope].
// A span lies between neighbouring rests, or between an end and the nearest
// rest; it is loaded whole or not at all.
//
// Up to 12 spans every combination is returned, so that the worst one is among
// them whatever the supports are. Beyond that the alternating patterns are,
// which hold the worst moments and pushes of a beam on rigid rests without
// hinges; other long beams give an error of class [measure.ErrNotComputed].
func (b *Beam) Patterns(q float64) ([][]Load, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	if err := anyFinite(measure.LineLoad).Check("q", q); err != nil {
		return nil, err
	}
	xs := []float64{0}
	for _, r := range b.Rests {
		xs = append(xs, math.Min(math.Max(r.At, 0), b.Length))
	}
	xs = places(append(xs, b.Length), slack*b.Length)
	xs[len(xs)-1] = b.Length
	spans := make([]Load, len(xs)-1)
	for i := range spans {
		spans[i] = Uniform(xs[i], xs[i+1], q)
	}
	if len(spans) <= allPatterns {
		out := make([][]Load, 1<<len(spans))
		for set := range out {
			for i, s := range spans {
				if set&(1<<i) != 0 {
					out[set] = append(out[set], s)
				}
			}
		}
		return out, nil
	}
	rigid := len(b.Hinges) == 0
	for _, r := range b.Rests {
		rigid = rigid && r.Support == nil
	}
	if !rigid {
		return nil, &measure.Error{
			Field: "Rests", Class: measure.ErrNotComputed,
			Why:  fmt.Sprintf("the worst patterns of %d spans on supports that give, or with hinges", len(spans)),
			Want: fmt.Sprintf("at most %d spans, or cases of your own", allPatterns),
		}
	}
	return alternating(spans), nil
}

// alternating returns, for n spans in a row, every second span loaded, and for
// each inner support its two neighbours loaded and every second one outward,
// each with its complement, and none and all.
func alternating(spans []Load) [][]Load {
	n := len(spans)
	pick := func(on func(i int) bool) []Load {
		var out []Load
		for i, s := range spans {
			if on(i) {
				out = append(out, s)
			}
		}
		return out
	}
	out := [][]Load{nil, spans}
	for parity := range 2 {
		out = append(out, pick(func(i int) bool { return i%2 == parity }))
	}
	for k := 1; k < n; k++ {
		near := func(i int) bool {
			if i < k {
				return (k-1-i)%2 == 0
			}
			return (i-k)%2 == 0
		}
		out = append(out, pick(near), pick(func(i int) bool { return !near(i) }))
	}
	return out
}
