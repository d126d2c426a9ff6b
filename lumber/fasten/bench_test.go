package fasten_test

import (
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

func BenchmarkYield(b *testing.B) {
	j := corner()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := j.Yield(); err != nil {
			b.Fatal(err)
		}
	}
}

// The six equations of NDS 2018, table 12.3.1A, single shear, on bare numbers in inches
// and psi, without their factors, checks and notes.
func BenchmarkYieldByHand(b *testing.B) {
	d, lm, ls, fem, fes, fyb := 0.5, 3.5, 1.5, 3650.0, 3650.0, 45000.0
	b.ReportAllocs()
	var least float64
	for b.Loop() {
		re, rt := fem/fes, lm/ls
		k1 := (math.Sqrt(re+2*re*re*(1+rt+rt*rt)+rt*rt*re*re*re) - re*(1+rt)) / (1 + re)
		k2 := -1 + math.Sqrt(2*(1+re)+2*fyb*(1+2*re)*d*d/(3*fem*lm*lm))
		k3 := -1 + math.Sqrt(2*(1+re)/re+2*fyb*(2+re)*d*d/(3*fem*ls*ls))
		least = min(d*lm*fem/4, d*ls*fes/4, k1*d*ls*fes/3.6, k2*d*lm*fem/(1+2*re)/3.2, k3*d*ls*fem/(2+re)/3.2,
			d*d/3.2*math.Sqrt(2*fem*fyb/(3*(1+re))))
		lm += 1e-12
	}
	if !(least > 0) {
		b.Error(least)
	}
}

func BenchmarkJointCheck(b *testing.B) {
	j := corner()
	d := fasten.Demand{Lateral: 300 * measure.PoundForce, Withdrawal: 50 * measure.PoundForce}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := j.Check(d, lumber.TenYears); err != nil {
			b.Fatal(err)
		}
	}
}
