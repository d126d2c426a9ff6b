package frame

import (
	"fmt"
	"math"
)

// loose reports whether the softest motion of the factored stiffness is free:
// whether it stores next to no energy. The energy is taken from the bending of
// each span, in which a free motion leaves no rounding behind; the pivots alone
// cannot tell a free motion from a soft one beside a short stiff piece.
func (s *system) loose(k *band, t *trial, shift float64) bool {
	v := s.softest(k)
	var stored, size float64
	for i := range s.spans {
		p := &s.spans[i]
		a, b := &s.joints[i], &s.joints[i+1]
		wa, ta, wb, tb := two{hi: v[a.w]}, two{hi: v[a.right]}, two{hi: v[b.w]}, two{hi: v[b.left]}
		turn := tb.minus(ta)
		off := offLine(wb, wa, ta, p.h)
		shear := 12 * p.e * (float64(p.h*turn/2) - off)
		moment := s.ei*turn/p.h - shear*p.h/2
		stored += -shear*off + float64(moment+shear*p.h)*turn
	}
	for i, v := range v {
		size += v * v * s.diagonal[i]
	}
	for i := range s.rests {
		if s.rests[i].Support != nil {
			w := v[s.joints[s.at[i]].w]
			stored += t.tangent(i, shift) * w * w
		}
	}
	return !(stored > 1e-18*size)
}

// softest returns the motion that the factored stiffness k resists least, each
// unknown measured by its own stiffness, its largest part 1: inverse iteration
// from a move as a whole with a little of everything.
func (s *system) softest(k *band) []float64 {
	v := make([]float64, len(s.x))
	for i := range v {
		v[i] = 0.01 * math.Sin(float64(7*i+1))
	}
	for i := range s.joints {
		v[s.joints[i].w]++
	}
	for range 4 {
		for i := range v {
			v[i] *= s.diagonal[i]
			if s.fixed[i] {
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
func (s *system) free(k *band, t *trial) error {
	held := false
	for i := range s.rests {
		held = held || s.rests[i].Support == nil || t.stiffness[i] > 0
	}
	if !held {
		v := make([]float64, len(s.x))
		for i := range s.joints {
			v[s.joints[i].w] = 1
		}
		return s.describe(v)
	}
	s.tangentInto(k, t, 0)
	k.factor()
	return s.describe(s.softest(k))
}

// describe puts a free motion into words.
func (s *system) describe(v []float64) error {
	best, top := 0, 0.0
	for i := range s.joints {
		if w := math.Abs(v[s.joints[i].w]); w > top*(1+1e-9) {
			best, top = i, w
		}
	}
	j := &s.joints[best]
	e := &MechanismError{Place: fmt.Sprintf("x = %.3f m", noMinus(j.x, 3)), X: j.x}
	// The tangent of the straight part that j belongs to: towards its
	// neighbour on the same side of a hinge.
	turn := v[j.left]
	if best == 0 || j.hinged && best < len(s.joints)-1 {
		turn = v[j.right]
	}
	fold := -1
	for i := range s.joints {
		if h := &s.joints[i]; h.hinged && math.Abs(v[h.left]-v[h.right])*s.length > 1e-6*top {
			fold = i
			break
		}
	}
	switch {
	case fold >= 0:
		e.Motion = fmt.Sprintf("folds at the hinge at x = %.3f m", s.joints[fold].x)
	case math.Abs(turn)*s.length <= 0.1*top:
		e.Motion = "moves up or down"
	default:
		about := j.x - v[j.w]/turn
		e.Motion = fmt.Sprintf("turns about x = %.3f m", noMinus(about, 3))
	}
	return e
}
