package fasten_test

import (
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
