package frame

import "math"

// A Support is anything a frame rests on, described by what it does when the
// frame presses on it. Given the sinkage in m (down positive, from the level at
// which the support stands before any load), it returns the force with which it
// pushes up (N), the stiffness (N/m, how fast the force grows with the sinkage),
// and the energy stored (J, the integral of the force over the sinkage).
//
// The force must not fall as the sinkage grows: then the frame's energy is
// convex and there is one answer. A support that cannot say its energy returns
// NaN for it. A force that is not finite, or a stiffness that is not finite or
// is negative, is an error of the solver, which names the rest.
//
// [Spring], [OneWay] and [Gap] make the common ones; a drum is written by the
// package that knows water.
type Support func(sink float64) (force, stiffness, energy float64)

// Spring returns a support that pushes and pulls with k N/m, zero or more. A
// spring of zero carries nothing; it serves a rest that only holds a rotation.
// Any other k makes a support that the solvers refuse. It is k s, by definition.
func Spring(k float64) Support {
	if !(k >= 0) || math.IsInf(k, 1) {
		return refused
	}
	return func(sink float64) (force, stiffness, energy float64) {
		force = k * sink
		return force, k, force * sink / 2
	}
}

// OneWay returns a support that pushes with k N/m, zero or more, and lets go
// instead of pulling: a block, or a drum tied by nothing. It is [Gap] without one.
func OneWay(k float64) Support { return Gap(0, k) }

// Gap returns a one-way support that is reached at a sinkage of g m and pushes
// with k N/m, zero or more, from there on. A negative g is a support that stands
// too high, packed tight. It is k (s - g), by definition.
func Gap(g, k float64) Support {
	if !(k >= 0) || math.IsInf(k, 1) || math.IsNaN(g) || math.IsInf(g, 0) {
		return refused
	}
	return func(sink float64) (force, stiffness, energy float64) {
		// At the very touch it counts as bearing: an unloaded frame that just
		// lies on its supports is held by them.
		d := sink - g
		if !(d >= 0) {
			return 0, 0, 0
		}
		force = k * d
		return force, k, force * d / 2
	}
}

// refused is the support made from bad data: no solver accepts its values.
func refused(float64) (force, stiffness, energy float64) {
	return math.NaN(), math.NaN(), math.NaN()
}
