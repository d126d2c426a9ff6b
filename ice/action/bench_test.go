package action_test

import (
	"math"
	"math/cmplx"
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

// kelvinByIntegral returns ker + i kei of x and its derivative from
// K0(z) = ∫ exp(-z cosh t) dt, 0 to ∞, along z = x exp(iπ/4), by the trapezoidal
// rule: what a reader would write who has no Kelvin functions.
func kelvinByIntegral(x float64) (k, dk complex128) {
	const step, points = 0.025, 200
	turn := cmplx.Exp(1i * math.Pi / 4)
	for i := range points {
		weight := complex(step, 0)
		if i == 0 {
			weight /= 2
		}
		cosh := turn * complex(math.Cosh(float64(i)*step), 0)
		term := weight * cmplx.Exp(-complex(x, 0)*cosh)
		k += term
		dk -= cosh * term
	}
	return k, dk
}

// The four Kelvin functions that the two ends of an uplift rest on, by their integral:
// it leaves out the rest of [action.Cover.Uplift].
func BenchmarkUpliftByIntegral(b *testing.B) {
	b.ReportAllocs()
	var sum complex128
	for b.Loop() {
		for _, α := range []float64{0.1, 0.2} {
			k, dk := kelvinByIntegral(α)
			sum += k + dk
		}
	}
	if k, _ := kelvinByIntegral(1); math.Abs(real(k)-0.2867062) > 1e-6 || math.Abs(imag(k)+0.4949946) > 1e-6 || cmplx.IsNaN(sum) {
		b.Errorf("ker 1 + i kei 1 = %v, Abramowitz and Stegun 1964, table 9.12: 0.2867 - 0.4950 i", k)
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

// The drags alone, as they stand in a handbook.
func BenchmarkPushByHand(b *testing.B) {
	wind, reach := 15.0, 1600.0
	b.ReportAllocs()
	var sum float64
	for b.Loop() {
		for _, c := range []float64{0.001, 0.005} {
			sum += 1.292 * c * wind * wind * reach * reach
		}
		wind += 1e-9
	}
	if !(sum > 0) {
		b.Error(sum)
	}
}
