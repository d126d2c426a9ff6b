package frame

import "errors"

// ErrCapsizes is the class of every [*CapsizeError].
var ErrCapsizes = errors.New("capsizes")

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
