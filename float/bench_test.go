package float_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
)

// eight returns an invented 10 × 20 ft dock on eight drums with three people.
func eight() *float.Platform {
	p := &float.Platform{Density: 999.7, Weights: []float.Weight{{Mass: 650, At: r3.Vec{Z: 0.14}}}}
	for _, x := range []float64{-2.4, -0.8, 0.8, 2.4} {
		for _, y := range []float64{-1.15, 1.15} {
			p.Units = append(p.Units, float.Unit{Body: float.Cylinder{Diameter: 0.5715, Length: 0.8509}, At: r3.Vec{X: x, Y: y, Z: -0.28575}, Mass: 18})
		}
	}
	for _, x := range []float64{-1, 0.2, 2} {
		p.Weights = append(p.Weights, float.Weight{Mass: 84, At: r3.Vec{X: x, Y: 1.2, Z: 1.25}})
	}
	p.Corners = []r3.Vec{{X: -3.048, Y: -1.524, Z: 0.25}, {X: 3.048, Y: -1.524, Z: 0.25}, {X: 3.048, Y: 1.524, Z: 0.25}, {X: -3.048, Y: 1.524, Z: 0.25}}
	return p
}

func BenchmarkSettle(b *testing.B) {
	p := eight()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Settle(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCylinderWet(b *testing.B) {
	c := float.Cylinder{Diameter: 0.5715, Length: 0.8509}
	for _, at := range []struct {
		name string
		h    float64
		trim float64
	}{{"inside", 0.05, 0.05}, {"hoof", 0.28, 0.1}, {"steep", 0.1, 1.2}} {
		b.Run(at.name, func(b *testing.B) {
			up := r3.Vec{X: -math.Sin(at.trim), Z: math.Cos(at.trim)}
			b.ReportAllocs()
			for b.Loop() {
				c.Wet(at.h, up)
			}
		})
	}
}

func BenchmarkRighting61(b *testing.B) {
	p := eight()
	angles := make([]float64, 61)
	for i := range angles {
		angles[i] = float64(i) * 0.5 * math.Pi / 180
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Righting(0, angles); err != nil {
			b.Fatal(err)
		}
	}
}
