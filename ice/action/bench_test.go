package action_test

import (
	"testing"

	"example.org/floewright/ice/action"
)

func BenchmarkUplift(b *testing.B) {
	c := action.Cover{Thickness: 0.3}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Uplift(drum, -0.05); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWall(b *testing.B) {
	c := action.Cover{Thickness: 0.3}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Wall(-0.05, action.Span{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPush(b *testing.B) {
	d := action.Drift{Wind: 15, Reach: 1600, Face: action.Face{Width: 3, Slope: 0.7, Height: 0.3}, Cover: action.Cover{Thickness: 0.3}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := d.Push(); err != nil {
			b.Fatal(err)
		}
	}
}
