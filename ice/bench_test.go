package ice_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

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

// BenchmarkBowl is the deflection beside a load on a circle, in closed form.
func BenchmarkBowl(b *testing.B) {
	at := bowl(b, demoPlate(), ice.Patch{A: 0.5, Force: 6000})
	b.ReportAllocs()
	for b.Loop() {
		if w, err := at.At(0.3, 0.9); err != nil || w.Deflection <= 0 {
			b.Fatal(w, err)
		}
	}
}

// BenchmarkBowlIntegral is the baseline, what a reader would write from the plate's
// equation: Hankel's integral on Gauss's points, good to five digits.
func BenchmarkBowlIntegral(b *testing.B) {
	p := demoPlate()
	d, err := p.Rigidity()
	if err != nil {
		b.Fatal(err)
	}
	const a, force = 0.5, 6000.0
	r := math.Hypot(0.3, 0.9)
	integral := func() float64 {
		f := func(x float64) float64 { return math.J1(x*a) * math.J0(x*r) / (d*x*x*x*x + p.Foundation) }
		return force / (math.Pi * a) * quad.Fixed(f, 0, 15, 200, nil, 0)
	}
	want, err := bowl(b, p, ice.Patch{A: a, Force: force}).At(0.3, 0.9)
	if got := integral(); err != nil || !(math.Abs(got/want.Deflection-1) < 1e-5) {
		b.Fatalf("the integral gives %g m, the closed form %g m, %v", got, want.Deflection, err)
	}
	b.ReportAllocs()
	for b.Loop() {
		integral()
	}
}
