package ice_test

import (
	"testing"

	"example.org/floewright/ice"
)

func BenchmarkCrossing(b *testing.B) {
	s, load := sound(0.4), ice.Crossing{Mass: 450, People: 3}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Crossing(load); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCompare(b *testing.B) {
	load := ice.Crossing{Mass: 450, People: 3}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ice.Compare(load); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkFlooding is a dock on four drums until its flood: the sag of the
// viscoelastic plate some twenty-five times.
func BenchmarkFlooding(b *testing.B) {
	s, load := drilled(0.36), frame(2500)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Flooding(load); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCritical(b *testing.B) {
	w := ice.Wave{Plate: demoPlate(), Depth: 6}
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := w.Critical(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkEdge(b *testing.B) {
	p := demoPlate()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Edge(1000, 0.3); err != nil {
			b.Fatal(err)
		}
	}
}
