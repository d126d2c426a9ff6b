package frame

import "math"

// loose reports whether the softest motion of the factored stiffness is free:
// whether it stores next to no energy. The energy is taken from the bending of
// the members, in which a free motion leaves no rounding behind; the pivots alone
// cannot tell a free motion from a soft one beside a short stiff piece. A motion
// that gives energy back, of a body that tips over, is free too.
func (e *engine) loose(k *band, t *trial, shift float64) bool {
	v := e.softest(k)
	stored, size := e.body.stored(v), 0.0
	for i, v := range v {
		size += v * v * e.diagonal[i]
	}
	stored += e.resist(t, v, shift)
	return !(stored > 1e-18*size)
}

// softest returns the motion that the factored stiffness k resists least, each
// unknown measured by its own stiffness, its largest part 1: inverse iteration
// from a move as a whole with a little of everything.
func (e *engine) softest(k *band) []float64 {
	v := make([]float64, len(e.x))
	for i, d := range e.diagonal {
		if d == 0 && !e.fixed[i] { // nothing at all resists it
			v[i] = 1
			return v
		}
	}
	for i := range v {
		v[i] = 0.01 * math.Sin(float64(7*i+1))
		if !e.turns[i] {
			v[i]++
		}
	}
	for range 4 {
		for i := range v {
			v[i] *= e.diagonal[i]
			if e.fixed[i] {
				v[i] = 0
			}
		}
		k.solve(v)
		top := 0.0
		for i := range v {
			top = max(top, math.Abs(v[i]))
		}
		if !(top > 0) || math.IsInf(top, 1) {
			break
		}
		for i := range v {
			v[i] /= top
		}
	}
	return v
}

// free returns the error that describes the softest motion at the state t.
func (e *engine) free(k *band, t *trial) error {
	held := false
	for i, f := range e.fixed {
		held = held || f && !e.turns[i]
	}
	for i := range e.bearings {
		held = held || t.stiffness[i] > 0
	}
	if !held {
		v := make([]float64, len(e.x))
		for i := range v {
			if !e.turns[i] {
				v[i] = 1
			}
		}
		return e.body.describe(v)
	}
	if v, over := e.topple(t); over {
		return e.body.describe(v)
	}
	e.tangentInto(k, t, 0)
	k.factor()
	return e.body.describe(e.softest(k))
}

// within returns an error if the movements are beyond all bounds: what resists
// them is as good as nothing.
func (e *engine) within(x []two) error {
	if !e.adrift(x) && !e.overturned(x) {
		return nil
	}
	v := make([]float64, len(x))
	for i := range x {
		v[i] = x[i].hi
	}
	return e.body.describe(v)
}

// overturned reports whether a body that may tip over has turned past what small
// angles say anything about.
func (e *engine) overturned(x []two) bool {
	const most = 30 * math.Pi / 180
	for i := range x {
		if e.tilting && e.turns[i] && math.Abs(x[i].hi) > most {
			return true
		}
	}
	return false
}

// adrift reports whether a movement is far past anything small: ten thousand
// times the body's size.
func (e *engine) adrift(x []two) bool {
	for i := range x {
		if !e.turns[i] && math.Abs(x[i].hi) > 1e4*e.length {
			return true
		}
	}
	return false
}
