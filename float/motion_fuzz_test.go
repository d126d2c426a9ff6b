package float_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
)

// FuzzMotion holds Froude's law: a dock four times as large in every length, and
// so 64 times as heavy, has twice the periods, whatever its shape.
func FuzzMotion(f *testing.F) {
	f.Add(0.58, 0.9, 1.2, 2.0, 120.0, 0.3, -0.2, 0.0)
	f.Add(0.58, 0.9, 0.8, 2.0, 300.0, 0.0, 0.0, 1.1)
	f.Add(0.3, 3.0, 1.5, 0.1, 80.0, -0.4, 0.9, 0.4)
	f.Add(math.NaN(), 0.9, 1.2, 2.0, 120.0, 0.3, -0.2, 0.0)
	f.Fuzz(func(t *testing.T, diameter, length, y, x, mass, wx, wy, heading float64) {
		build := func(scale float64) *float.Platform {
			tube := float.Cylinder{Diameter: diameter * scale, Length: length * scale}
			p := &float.Platform{Density: 1000}
			for _, c := range [4][2]float64{{x, y}, {x, -y}, {-x, y}, {-x, -y}} {
				p.Units = append(p.Units, float.Unit{Body: tube, At: r3.Vec{X: c[0] * scale, Y: c[1] * scale}, Heading: heading, Mass: 10 * scale * scale * scale})
			}
			deck, err := float.Weight{Mass: mass * scale * scale * scale, At: r3.Vec{X: wx * scale, Y: wy * scale, Z: 0.4 * scale}}.Spread(4*scale, 2*scale)
			if err != nil {
				return p
			}
			p.Weights = deck
			return p
		}
		a, err := build(1).Motion()
		if err != nil {
			return
		}
		b, err := build(4).Motion()
		if err != nil {
			t.Skip("at the edge of a bound")
		}
		for _, c := range [3][2]float.Band{{a.Heave, b.Heave}, {a.Roll, b.Roll}, {a.Pitch, b.Pitch}} {
			if !(c[0].Shortest > 0 && c[0].Longest >= c[0].Shortest && c[0].Pure > 0 && c[0].Pure <= 1) {
				t.Fatalf("band %+v", c[0])
			}
		}
		// Names may change where two periods meet; the product does not.
		pa := a.Heave.Shortest * a.Roll.Shortest * a.Pitch.Shortest
		pb := b.Heave.Shortest * b.Roll.Shortest * b.Pitch.Shortest
		if math.Abs(pb/pa/8-1) > 1e-6 {
			t.Fatalf("scaled by 4: periods %+v and %+v", a, b)
		}
	})
}
