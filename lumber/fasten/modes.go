package fasten

import (
	"math"
)

// The yield modes, in the order of NDS Table 12.3.1A.
const (
	im = iota
	is
	ii
	iiim
	iiis
	iv
	modes
)

var modeNames = [modes]string{"Im", "Is", "II", "IIIm", "IIIs", "IV"}

// A shank is one dowel across the faces of a joint, in inches and psi.
type shank struct {
	d        float64 // in the equations
	lm, ls   float64 // bearing lengths in the main and the side member
	fem, fes float64
	fyb      float64
	gap      float64 // between the faces
	double   bool
}

// loads returns the loads of the yield modes, lbf, before the reduction term.
// Modes II and IIIm do not exist in double shear: NaN. Where faces touch these
// are the equations of NDS Table 12.3.1A, else those of Technical Report 12.
func (s shank) loads() [modes]float64 {
	z := s.touching()
	if s.gap > 0 {
		z = s.apart()
	}
	if s.double {
		z[ii], z[iiim] = math.NaN(), math.NaN()
		z[is] *= 2
		z[iiis] *= 2
		z[iv] *= 2
	}
	return z
}

// touching holds NDS Table 12.3.1A, single shear. k1 is written as
//
//	k1 = Re (1 + Re Rt²)/(√[Re + 2Re²(1 + Rt + Rt²) + Rt² Re³] + Re(1 + Rt))
//
// which is the printed one without its difference of near equals; so are k2 and
// k3, √(1 + x) - 1 as x/(√(1 + x) + 1).
func (s shank) touching() [modes]float64 {
	re, rt := s.fem/s.fes, s.lm/s.ls
	root := math.Sqrt(re + float64(2*re*re*(1+rt+float64(rt*rt))) + float64(rt*rt*re*re*re))
	k1 := re * (1 + float64(re*rt*rt)) / (root + float64(re*(1+rt)))
	bend := 2 * s.fyb * s.d * s.d / (3 * s.fem)
	x2 := 1 + bend/(s.lm*s.lm) // times 1 + 2Re
	k2 := x2 / (math.Sqrt(1+float64(x2*(1+2*re))) + 1)
	x3 := 1/re + bend/(s.ls*s.ls) // times 2 + Re
	k3 := x3 / (math.Sqrt(1+float64(x3*(2+re))) + 1)
	var z [modes]float64
	z[im] = s.d * s.lm * s.fem
	z[is] = s.d * s.ls * s.fes
	z[ii] = k1 * s.d * s.ls * s.fes
	z[iiim] = k2 * s.d * s.lm * s.fem
	z[iiis] = k3 * s.d * s.ls * s.fem
	z[iv] = s.d * s.d * math.Sqrt(2*s.fem*s.fyb/(3*(1+re)))
	return z
}

// apart holds Technical Report 12, solid members with a gap: each mode is the
// positive root of A P² + B P + C = 0 with q = Fe D, M = Fyb D³/6.
func (s shank) apart() [modes]float64 {
	qm, qs := s.fem*s.d, s.fes*s.d
	m := s.fyb * s.d * s.d * s.d / 6
	side, main := qs*s.ls*s.ls/4, qm*s.lm*s.lm/4
	var z [modes]float64
	z[im] = qm * s.lm
	z[is] = qs * s.ls
	z[ii] = positiveRoot(1/(4*qs)+1/(4*qm), s.ls/2+s.gap+s.lm/2, -side-main)
	z[iiim] = positiveRoot(1/(2*qs)+1/(4*qm), s.gap+s.lm/2, -m-main)
	z[iiis] = positiveRoot(1/(4*qs)+1/(2*qm), s.ls/2+s.gap, -side-m)
	z[iv] = positiveRoot(1/(2*qs)+1/(2*qm), s.gap, -2*m)
	return z
}

// positiveRoot returns the positive root of a x² + b x + c for a, b > 0 > c,
// without a difference of near equals.
func positiveRoot(a, b, c float64) float64 {
	return -2 * c / (b + math.Sqrt(b*b-4*a*c))
}

// reductions returns Rd of each mode, NDS Table 12.3.1B: d is the diameter in
// the equations, nominal the fastener's, inches; kt is Kθ. A threaded fastener of
// 1/4 in. and more whose root is thinner takes KD of the root times Kθ (its
// footnote 1; a later correction of that footnote for 1/4 in. was not read).
func reductions(d, nominal, kt float64) [modes]float64 {
	if d >= 0.25-hair {
		return [modes]float64{im: 4 * kt, is: 4 * kt, ii: 3.6 * kt, iiim: 3.2 * kt, iiis: 3.2 * kt, iv: 3.2 * kt}
	}
	kd := 2.2
	if d > 0.17+hair {
		kd = 10*d + 0.5
	}
	if nominal >= 0.25-hair {
		kd *= kt
	}
	return [modes]float64{kd, kd, kd, kd, kd, kd}
}

// least returns the least of the values that exist and which it is.
func least(z [modes]float64) int {
	best := im
	for i := range z {
		if z[i] < z[best] {
			best = i
		}
	}
	return best
}
