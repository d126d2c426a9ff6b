package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// maxSteps bounds each search; the quick one gives up after quickSteps.
const (
	quickSteps = 40
	maxSteps   = 200
)

// At returns how the line hangs, in an elastic catenary (exact), with its ends the
// level distance reach apart and the dock end rise above the ground end, both m. near
// is a state to start from, such as the line's last one; the zero Hang starts afresh.
// The result does not depend on it beyond rounding.
//
// The two pulls minimise a convex function, the complementary energy less the
// work of the ends, so a guarded Newton search finds them from nearly anywhere;
// where it stalls, one pull is bracketed inside the other.
//
// At fails with ErrReach where an unstretchable line does not reach. One piece is within
// 2.1 units in the last place of its condition.
// Worst at (12, 0.3, 11.27, 3.6), ordered as in testdata/accuracy.csv.
func (l *Line) At(reach, rise float64, near Hang) (Hang, error) {
	t, err := l.check()
	if err != nil {
		return Hang{}, err
	}
	if l.Shore {
		err = positiveLength.Check("reach", reach)
	} else {
		err = lengthOrZero.Check("reach", reach)
	}
	if err := first(err, l.checkRise(rise)); err != nil {
		return Hang{}, err
	}
	var h Hang
	if !l.hang(&t, reach, rise, near, &h) {
		return Hang{}, ErrReach
	}
	return h, nil
}

// Pull returns how the line hangs under a given level pull, N, with the dock end rise,
// m, above the ground end, by the catenaries of [Line.At]; Reach is then where the dock
// end comes to. Without pull it is the greatest reach at which the line is slack; a
// shore line needs a pull. One piece is within 3.7 units in the last place of its
// condition, worst where it just lifts.
// Worst at (12, 17, 618.8, 3.6), ordered as in testdata/accuracy.csv.
func (l *Line) Pull(pull, rise float64) (Hang, error) {
	t, err := l.check()
	if err != nil {
		return Hang{}, err
	}
	pulls := forceOrZero
	if pull != 0 {
		pulls.Lo = 1e-9 // the square of less may be no number
	}
	if err := first(pulls.Check("pull", pull), l.checkRise(rise)); err != nil {
		return Hang{}, err
	}
	if t.give == 0 && math.Abs(rise) >= t.length {
		return Hang{}, ErrReach
	}
	if pull == 0 {
		if l.Shore {
			return Hang{}, measure.Range{Kind: measure.Force, Hi: 1e10, OpenLo: true, Source: srcSense}.Check("pull of a shore line", pull)
		}
		h, ok := l.slack(&t, rise)
		if !ok { // stretched even as it hangs straight down
			return Hang{}, ErrReach
		}
		return h, nil
	}
	if t.weight == 0 {
		h := pullStraight(&t, pull, rise)
		return h, nil
	}
	v, ok := l.lower(&t, pull, rise)
	if !ok {
		return Hang{}, ErrReach
	}
	var f span
	l.eval(pull, v, &f)
	var h Hang
	fill(&t, l.Shore, f.reach, rise, pull, v, &f, &h)
	return h, nil
}

// hang finds the pulls; false is a line that does not reach.
func (l *Line) hang(t *totals, reach, rise float64, near Hang, out *Hang) bool {
	chord := math.Sqrt(reach*reach + rise*rise)
	if t.give == 0 && chord >= t.length {
		return false
	}
	if t.weight == 0 {
		straight(t, chord, reach, rise, out)
		return true
	}
	if !l.Shore {
		if s, ok := l.slack(t, rise); ok && reach <= s.Reach {
			s.Reach = reach
			*out = s
			return true
		}
	}
	// Where it hung before, its stiffness leads most of the way.
	h, v := near.Pull, near.Down
	dx, dz := reach-near.Reach, rise-near.Rise
	if p := h + near.Stiffness[0][0]*dx + near.Stiffness[0][1]*dz; p > h/3 && p < 3*h {
		h, v = p, math.Max(v+near.Stiffness[1][0]*dx+near.Stiffness[1][1]*dz, v/3)
	}
	if !(h > 0 && h < 1e15 && math.Abs(v) < 1e15 && (l.Shore || v > 0)) {
		h, v = l.guess(t, chord, reach, rise)
	}
	var f span
	if !l.quick(&h, &v, reach, rise, 4e-16*(t.length+chord), &f) {
		h, v = l.steady(t, reach, rise)
		l.eval(h, v, &f)
	}
	fill(t, l.Shore, reach, rise, h, v, &f, out)
	return true
}

// quick improves the pulls h and v by Newton steps down the convex energy and
// leaves the last sums in f; false if it does not get there.
func (l *Line) quick(h, v *float64, reach, rise, floor float64, f *span) bool {
	l.eval(*h, *v, f)
	rx, rv := reach-f.reach, rise-f.rise
	for range quickSteps {
		if math.Abs(rx) <= floor && math.Abs(rv) <= floor {
			return true
		}
		dh, dv := (f.vv*rx-f.xv*rv)/f.det, (f.xx*rv-f.xv*rx)/f.det
		slope := rx*dh + rv*dv // of the energy, downhill
		if !(slope > 0) {
			// Rounding has the last word near the end, a kink before it.
			return math.Abs(rx)+math.Abs(rv) <= 100*floor
		}
		step := 1.0
		if *h+dh < *h/10 {
			step = math.Min(step, -0.9**h/dh)
		}
		if !l.Shore && *v+dv < *v/10 {
			step = math.Min(step, -0.9**v/dv)
		}
		h1, v1 := *h, *v
		for range 30 {
			h1, v1 = *h+step*dh, *v+step*dv
			l.eval(h1, v1, f)
			rx, rv = reach-f.reach, rise-f.rise
			past := -(rx*dh + rv*dv)
			if !(past > slope/2) {
				break // not past the lowest point along the way, or not far
			}
			step *= math.Max(0.1, math.Min(0.7, slope/(slope+past)))
		}
		// The search doubles its digits: after a small full step these are the last.
		last := step == 1 && math.Abs(h1-*h) <= 1e-8*h1 && math.Abs(v1-*v) <= 1e-8*(h1+math.Abs(v1))
		*h, *v = h1, v1
		if last {
			return true
		}
	}
	return false
}

// steady brackets the level pull, and the downward pull at each.
func (l *Line) steady(t *totals, reach, rise float64) (h, v float64) {
	var f span
	short := func(h float64) (float64, bool) { // how far the end still is
		v, _ = l.lower(t, h, rise)
		l.eval(h, v, &f)
		return reach - f.reach, f.reach >= reach
	}
	lo, hi := 1e-300, math.Max(t.weight, 1e-3)
	for range 100 {
		if _, there := short(hi); there {
			break
		}
		lo, hi = hi, 8*hi
	}
	h = hi
	step := math.Inf(1)
	for range 400 {
		r, there := short(h)
		if there {
			hi = h
		} else {
			lo = h
		}
		next := h + r*f.vv/f.det
		if !(next > lo && next < hi) || math.Abs(next-h) > step/2 {
			next = math.Sqrt(lo) * math.Sqrt(hi)
		}
		if math.Abs(next-h) <= 2e-16*h || hi-lo <= 4e-16*hi {
			break
		}
		h, step = next, math.Abs(next-h)
	}
	return h, v
}

// fill writes a state down.
func fill(t *totals, shore bool, reach, rise, h, v float64, f *span, out *Hang) {
	out.Reach, out.Rise, out.Pull, out.Down = reach, rise, h, v
	out.Lift, out.Lying = f.lift, f.lying
	out.Stiffness = [2][2]float64{{f.vv / f.det, -f.xv / f.det}, {-f.xv / f.det, f.xx / f.det}}
	switch {
	case !shore && f.lying > 0:
		out.Regime = Touching
	case math.Sqrt(reach*reach+rise*rise) >= t.length:
		out.Regime = Taut
	default:
		out.Regime = Lifted
	}
}

// guess returns pulls to start from: those of an even catenary, or of a spring
// where the line is stretched.
func (l *Line) guess(t *totals, chord, reach, rise float64) (h, v float64) {
	w := t.weight / t.length
	if chord < t.length {
		λ := math.Sqrt(3 * (t.length*t.length/(chord*chord) - 1) * (chord * chord) / (reach*reach + 1e-300))
		λ = math.Min(math.Max(λ, 1e-8), 300)
		h = w * reach / (2 * λ)
		v = w / 2 * (rise/math.Tanh(λ) + t.length)
	} else {
		s := (chord - t.length) / t.give
		s += math.Cbrt(t.weight * t.weight * t.length / (24 * t.give) / t.length)
		h, v = s*reach/chord, s*rise/chord+t.weight/2
	}
	h = math.Max(h, 1e-9*t.weight)
	if !l.Shore {
		v = math.Max(v, 1e-3*t.weight)
	}
	return h, v
}

// lower finds the downward pull at which a line under the level pull h rises by
// rise: Newton on a rising function, kept inside a bracket.
func (l *Line) lower(t *totals, h, rise float64) (float64, bool) {
	var f span
	lo, hi := 0.0, t.weight+h
	if l.Shore {
		lo = -hi
	}
	for range 80 {
		if l.eval(h, hi, &f); f.rise >= rise {
			break
		}
		lo, hi = hi, 4*hi
	}
	if f.rise < rise {
		return 0, false
	}
	for range 80 {
		if !l.Shore {
			break
		}
		if l.eval(h, lo, &f); f.rise <= rise {
			break
		}
		hi, lo = lo, 4*lo
	}
	v := hi
	if !l.Shore {
		// Exact for one piece touching down.
		w := l.Pieces[len(l.Pieces)-1].load()
		if g := math.Sqrt(w * rise * (w*rise + 2*h)); g > lo && g < hi {
			v = g
		}
	}
	step := math.Inf(1)
	for range maxSteps {
		l.eval(h, v, &f)
		r := rise - f.rise
		if r > 0 {
			lo = v
		} else {
			hi = v
		}
		newton := v + r/f.vv
		next := newton
		// A line that hangs in a bight has a rise shaped like an S, on which Newton
		// may swing between two places for ever: each step must halve the last.
		if !(next > lo && next < hi) || math.Abs(next-v) > step/2 {
			next = lo + (hi-lo)/2
		}
		if math.Abs(next-v) <= 2e-16*(math.Abs(v)+h) || hi-lo <= 2e-16*(math.Abs(hi)+math.Abs(lo)) {
			return math.Min(math.Max(newton, lo), hi), true
		}
		v, step = next, math.Abs(next-v)
	}
	return v, true
}
