package frame

import (
	"math"

	"example.org/floewright/internal/fault"
)

// ErrCapsizes is the class of every [*CapsizeError]; package float has the same value.
var ErrCapsizes = fault.ErrCapsizes

// A CapsizeError says that a frame afloat, whose weights and pushes have heights,
// has no stable state near the upright: the weights stand too high for what the
// floats give back, or it turns by more than 30 degrees, where small angles say
// nothing any more.
type CapsizeError struct {
	Place  string  // what moves most: "node 3 at (2.400, 0.000) m"
	X, Y   float64 // where that is, m
	Motion string  // how it moves
}

// Error names the place and the motion.
func (e *CapsizeError) Error() string {
	return "frame: it " + ErrCapsizes.Error() + ": " + e.Place + " " + e.Motion
}

// Unwrap returns [ErrCapsizes].
func (e *CapsizeError) Unwrap() error { return ErrCapsizes }

// turn returns the turn that counts for a tilt.
func (a *tilt) turn(x []two) float64 {
	var sum float64
	for _, s := range a.shares {
		sum += s.part * x[s.dof].hi
	}
	return sum
}

// tangentOf returns the stiffness of bearing i; shift where it has none, and on
// top where the body may tip over.
func (e *engine) tangentOf(t *trial, i int, shift float64) float64 {
	stiff := t.stiffness[i]
	if stiff > 0 && !e.tilting {
		return stiff
	}
	return stiff + shift
}

// tiltInto adds what heights do to the stiffness: a push at a height above its
// nodes holds them upright, a weight tips them.
func (e *engine) tiltInto(k *band, t *trial, shift float64) {
	for i := range e.bearings {
		b := &e.bearings[i]
		stiff := e.tangentOf(t, i, shift)
		for j := range b.tilts {
			a := &b.tilts[j]
			k.addSquare(t.push[i]*a.height, a.shares)
			// The turn also sinks the support: its share in the slope of the
			// sinkage.
			slope := a.height * a.turn(t.x)
			k.addSquare(stiff*slope*slope, a.shares)
			for _, s := range a.shares {
				for _, r := range b.shares {
					*k.at(s.dof, r.dof) -= stiff * slope * s.part * r.part
				}
			}
			for _, other := range b.tilts[:j] { // about the other axis
				cross := stiff * slope * other.height * other.turn(t.x)
				for _, s := range a.shares {
					for _, r := range other.shares {
						*k.at(s.dof, r.dof) += cross * s.part * r.part
					}
				}
			}
		}
	}
	for _, p := range e.tops {
		*k.at(p.dof, p.dof) -= p.moment
	}
}

// resist returns twice the energy that the bearings and heights store in a
// motion at the state t.
func (e *engine) resist(t *trial, v []float64, shift float64) float64 {
	var sum float64
	for i := range e.bearings {
		b := &e.bearings[i]
		var down float64
		for _, s := range b.shares {
			down -= s.part * v[s.dof]
		}
		for j := range b.tilts {
			a := &b.tilts[j]
			var turn float64
			for _, s := range a.shares {
				turn += s.part * v[s.dof]
			}
			down += a.height * a.turn(t.x) * turn
			sum += t.push[i] * a.height * turn * turn
		}
		sum += e.tangentOf(t, i, shift) * down * down
	}
	for _, p := range e.tops {
		sum -= p.moment * v[p.dof] * v[p.dof]
	}
	return sum
}

// tips reports whether it is the heights that make a motion free: without them
// the body and its bearings would resist it.
func (e *engine) tips(v []float64) bool {
	if !e.tilting || e.last == nil {
		return false
	}
	sum, size := e.body.stored(v), 0.0
	for i, v := range v {
		size += v * v * e.diagonal[i]
	}
	for i := range e.bearings {
		var down float64
		for _, s := range e.bearings[i].shares {
			down += s.part * v[s.dof]
		}
		sum += e.last.stiffness[i] * down * down
	}
	return sum > 1e-18*size
}

// topple returns the motion in which heights tip the body most at the state t, and
// whether they tip it over: whether they give more than members and bearings,
// which hold it without them, take. It is found by iterating with the stiffness
// without heights under what the heights add.
func (e *engine) topple(t *trial) ([]float64, bool) {
	if !e.tilting {
		return nil, false
	}
	k := newBand(len(e.x), e.half)
	e.tangentInto(k, t, 0)
	tip := newBand(len(e.x), e.half)
	e.tiltInto(tip, t, 0)
	for i := range k.a {
		k.a[i] -= tip.a[i]
	}
	for i, f := range e.fixed {
		if f {
			k.fix(i)
			tip.fix(i)
			*tip.at(i, i) = 0
		}
	}
	if weakest, _ := k.factor(); !(weakest > leastPivot) {
		return nil, false // it is loose anyway
	}
	var ratio, offset float64
	var v []float64
	// Where what holds outweighs what tips, the second round sees past it.
	for range 2 {
		v = make([]float64, len(e.x))
		for i := range v {
			v[i] = 1 + 0.01*math.Sin(float64(7*i+1))
			if e.turns[i] {
				v[i] /= e.length
			}
		}
		w := make([]float64, len(v))
		last := math.Inf(1)
		for range 200 {
			tip.times(v, w)
			for i := range w {
				w[i] = -w[i]
				if e.fixed[i] {
					w[i] = 0
				}
			}
			k.solve(w)
			var up, down, top float64
			for i := range w {
				w[i] += offset * v[i]
				up, down = up+w[i]*v[i], down+v[i]*v[i]
				top = max(top, math.Abs(w[i]))
			}
			ratio = up / down
			if !(top > 0) || math.IsInf(top, 1) {
				return nil, false
			}
			for i := range v {
				v[i] = w[i] / top
			}
			if math.Abs(ratio-last) <= 1e-6*math.Abs(ratio) {
				break
			}
			last = ratio
		}
		if ratio >= 0 {
			break
		}
		offset = -ratio
	}
	return v, ratio-offset >= 1-1e-9
}
