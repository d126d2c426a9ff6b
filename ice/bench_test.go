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
