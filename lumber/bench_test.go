package lumber_test

import (
	"testing"

	"example.org/floewright/lumber"
)

func BenchmarkLookup(b *testing.B) {
	s, err := lumber.Size("2x8")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := lumber.Lookup("southern pine", "No.2", s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAdjusted(b *testing.B) {
	m := checked(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Adjusted(lumber.TenYears); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCheck(b *testing.B) {
	m := checked(b)
	d := lumber.Demand{Moment: 500, FlatMoment: 10, Shear: 1000, Axial: -100, Reaction: 2000, Bearing: 0.038, Long: 1e-3, Short: 2e-3}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Check(d, lumber.TenYears); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkTorsion(b *testing.B) {
	s := lumber.Section{Width: 0.038, Depth: 0.184}
	b.ReportAllocs()
	for b.Loop() {
		if s.Torsion() == 0 {
			b.Fatal("no torsion constant")
		}
	}
}
