package moor

import (
	"errors"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Band is the span of levels in which a tie works on a dock at rest without
// load: neither slack nor taut, m over the datum. Below and Above say what it is
// past either end; Lifted or Touching where the asked span ended first.
type Band struct {
	Tie          string
	Low, High    float64
	Below, Above Regime
}

// Bands returns the working band of each tie between two levels, m, where
// [Mooring.Rest] puts the dock without load, around the level nearest to their middle
// where the tie works. A tie that works nowhere between them has Low above High.
func (m *Mooring) Bands(low, high float64) ([]Band, error) {
	s, err := newTide(m)
	if err != nil {
		return nil, err
	}
	if err := first(anyLength.Check("low level", low), measure.Range{Kind: measure.Length, Lo: low, Hi: 1e5, Source: srcSense}.Check("high level", high)); err != nil {
		return nil, err
	}
	const n = 128 // a working band narrower than this share of the span may be missed
	levels := make([]float64, n+1)
	states := make([][]Regime, n+1)
	for k := range levels {
		levels[k] = low + (high-low)*float64(k)/n
		if states[k], err = s.regimes(levels[k]); err != nil {
			return nil, err
		}
	}
	out := make([]Band, len(m.Ties))
	for i := range out {
		works := func(k int) bool { return states[k][i] == Touching || states[k][i] == Lifted }
		start := -1
		for d := 0; d <= n/2 && start < 0; d++ {
			for _, k := range []int{n/2 - d, n/2 + d} {
				if start < 0 && works(k) {
					start = k
				}
			}
		}
		b := &out[i]
		b.Tie = m.Ties[i].Name
		if start < 0 {
			b.Low, b.High, b.Below, b.Above = high, low, states[0][i], states[n][i]
			continue
		}
		if b.Low, b.Below, err = s.edge(i, levels, states, start, -1); err != nil {
			return nil, err
		}
		if b.High, b.Above, err = s.edge(i, levels, states, start, 1); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// edge walks from a level where tie i works to where it ceases to, and halves
// the step in between.
func (s *tide) edge(i int, levels []float64, states [][]Regime, k, step int) (float64, Regime, error) {
	works := func(r Regime) bool { return r == Touching || r == Lifted }
	for k+step >= 0 && k+step < len(levels) {
		if works(states[k+step][i]) {
			k += step
			continue
		}
		in, out, beyond := levels[k], levels[k+step], states[k+step][i]
		for range 60 {
			mid := in + (out-in)/2
			r, err := s.regimes(mid)
			if err != nil {
				return 0, 0, err
			}
			if works(r[i]) {
				in = mid
			} else {
				out, beyond = mid, r[i]
			}
		}
		return in, beyond, nil
	}
	return levels[k], states[k][i], nil
}

// regimes returns how each tie hangs at a level on the unloaded dock; a tie that
// does not reach counts as taut, those beside it as they hang with the dock
// unmoved.
func (s *tide) regimes(level float64) ([]Regime, error) {
	if err := s.set(level); err != nil {
		return nil, err
	}
	out := make([]Regime, len(s.m.Ties))
	err := s.find(Load{})
	if err == nil {
		for i, h := range s.hangs {
			out[i] = h.Regime
		}
		return out, nil
	}
	if !errors.Is(err, ErrReach) {
		return nil, err
	}
	for i := range s.m.Ties {
		t := &s.m.Ties[i]
		_, _, reach, _, _ := t.toward(0, 0, 0)
		var h Hang
		out[i] = Taut
		if t.Line.hang(&s.totals[i], reach, level+t.Height-t.FootZ, Hang{}, &h) {
			out[i] = h.Regime
		}
	}
	return out, nil
}

// Lengths returns by how much the dock-side piece of every tie may be shortened
// (negative) and lengthened, m, so that at every level, in the storm from every
// direction, each line reaches, every check holds and no fitting moves farther than
// offset, m, as [Mooring.Survey] finds them. Levels are m over the datum. It looks
// around the present lengths between -span and +span, m, at a 40th of span and then
// by halving. found is false where no length in that span serves.
//
// A mooring with an undescribed strength has no answer: an error of class
// measure.ErrUnknown.
func (m *Mooring) Lengths(levels []float64, storm Storm, directions int, offset, span float64) (shortest, longest float64, found bool, err error) {
	if err := first(positiveLength.Check("offset", offset), positiveLength.Check("span of lengths", span), m.check()); err != nil {
		return 0, 0, false, err
	}
	serves := func(d float64) (bool, error) {
		changed := Mooring{Ties: append([]Tie(nil), m.Ties...), Posts: m.Posts}
		for i := range changed.Ties {
			t := &changed.Ties[i]
			t.Line.Pieces = append([]Piece(nil), t.Line.Pieces...)
			p := &t.Line.Pieces[len(t.Line.Pieces)-1]
			if p.Length += d; !(p.Length > 0) {
				return false, nil
			}
		}
		s, err := changed.Survey(levels, storm, directions)
		if errors.Is(err, ErrReach) || errors.Is(err, ErrAdrift) {
			return false, nil
		}
		if err != nil {
			return false, err
		}
		for _, c := range s.Checks {
			if c.Verdict() == measure.NoAnswer && errors.Is(c.Err, measure.ErrUnknown) {
				return false, c.Err
			}
			if c.Verdict() != measure.Holds {
				return false, nil
			}
		}
		return s.Offset <= offset, nil
	}
	const n = 40
	var good [2*n + 1]bool
	for k := range good {
		if good[k], err = serves(span * float64(k-n) / n); err != nil {
			return 0, 0, false, err
		}
	}
	start := -1
	for d := 0; d <= n && start < 0; d++ {
		for _, k := range []int{n - d, n + d} {
			if start < 0 && good[k] {
				start = k
			}
		}
	}
	if start < 0 {
		return 0, 0, false, nil
	}
	edge := func(step int) (float64, error) {
		k := start
		for k+step >= 0 && k+step < len(good) && good[k+step] {
			k += step
		}
		in := span * float64(k-n) / n
		if k+step < 0 || k+step >= len(good) {
			return in, nil
		}
		out := span * float64(k+step-n) / n
		for range 20 {
			mid := in + (out-in)/2
			ok, err := serves(mid)
			if err != nil {
				return 0, err
			}
			if ok {
				in = mid
			} else {
				out = mid
			}
		}
		return in, nil
	}
	if shortest, err = edge(-1); err != nil {
		return 0, 0, false, err
	}
	longest, err = edge(1)
	return shortest, longest, err == nil, err
}

// Winter returns what must be let go before freeze-up, given the least and greatest
// level, m over the datum, expected until break-up: ties that would go taut between
// them, and everything that holds the dock to something fixed. An ice sheet moves and
// falls with all the force there is.
func (m *Mooring) Winter(low, high float64) ([]string, error) {
	bands, err := m.Bands(low, high)
	if err != nil {
		return nil, err
	}
	var out []string
	for _, b := range bands {
		switch {
		case b.Low > b.High && b.Below == Slack && b.Above == Slack:
		case b.Low > b.High:
			out = append(out, b.Tie+": taut over the winter's levels: slacken it or let it go")
		case b.Above == Taut:
			out = append(out, b.Tie+": taut from "+both(b.High)+" over the datum up: slacken it")
		case b.Below == Taut:
			out = append(out, b.Tie+": taut from "+both(b.Low)+" over the datum down: slacken it")
		}
	}
	for _, p := range m.Posts {
		out = append(out, p.Name+": unpin or lift it, so that frozen-in ice cannot wrench it")
	}
	if math.Abs(high-low) > 0 && len(m.Ties) > 0 {
		out = append(out, "all lines: lengthen as the water falls; ice that hangs on short lines breaks the fittings")
	}
	return out, nil
}

// both prints a length in both systems.
func both(x float64) string {
	return measure.Length.Format(x, measure.US) + " (" + measure.Length.Format(x, measure.SI) + ")"
}
