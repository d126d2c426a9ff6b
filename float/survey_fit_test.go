package float

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// fitCase is a deck of corners at several heights, tilted and misread.
func fitCase() (corners []r3.Vec, heights, accuracy []float64) {
	corners = []r3.Vec{{X: -1, Y: -1, Z: 0.8}, {X: 5, Y: -1.5, Z: -0.3}, {X: 5, Y: 2, Z: 0.2}, {X: -1, Y: 2, Z: 1.5}, {X: 2, Y: 2.5}}
	n := r3.Unit(r3.Vec{X: 0.25, Y: -0.3, Z: 1})
	for i, c := range corners {
		heights = append(heights, r3.Dot(n, c)+0.4+0.08*math.Sin(float64(7*i)))
		accuracy = append(accuracy, 0.004+0.002*float64(i%2))
	}
	return corners, heights, accuracy
}

// TestFitIsLeast checks that the fit is the least of the weighted squares, by
// evaluating them around it.
func TestFitIsLeast(t *testing.T) {
	corners, heights, accuracy := fitCase()
	f, err := fitDeck(corners, heights, accuracy)
	if err != nil {
		t.Fatal(err)
	}
	cost := func(d, x, y float64) float64 {
		x, y = x+f.up.X, y+f.up.Y
		n := r3.Vec{X: x, Y: y, Z: math.Sqrt(1 - x*x - y*y)}
		sum := 0.0
		for i, c := range corners {
			e := (heights[i] - r3.Dot(n, c) - f.level - d) / accuracy[i]
			sum += e * e
		}
		return sum
	}
	const h = 1e-4
	for _, v := range [][3]float64{{h, 0, 0}, {0, h, 0}, {0, 0, h}} {
		plus, minus, here := cost(v[0], v[1], v[2]), cost(-v[0], -v[1], -v[2]), cost(0, 0, 0)
		if curve := plus + minus - 2*here; !(curve > 0 && math.Abs(plus-minus) < 1e-3*curve) {
			t.Errorf("along %v: %g, %g, %g", v, minus, here, plus)
		}
	}
	for i, c := range corners {
		if e := heights[i] - r3.Dot(f.up, c) - f.level; math.Abs(e-f.residuals[i]) > 1e-12 {
			t.Errorf("corner %d: residual %g, want %g", i, f.residuals[i], e)
		}
	}
}

// TestFitCovariance checks the covariance against the slopes of the fit, on a deck
// read without error, for which the method is exact to first order.
func TestFitCovariance(t *testing.T) {
	corners, heights, accuracy := fitCase()
	n := r3.Unit(r3.Vec{X: 0.25, Y: -0.3, Z: 1})
	for i, c := range corners {
		heights[i] = r3.Dot(n, c) + 0.4
	}
	f, err := fitDeck(corners, heights, accuracy)
	if err != nil {
		t.Fatal(err)
	}
	var want matrix3
	for i := range heights {
		const h = 1e-6
		var side [2]deckFit
		for k, sign := range []float64{-1, 1} {
			moved := append([]float64(nil), heights...)
			moved[i] += sign * h
			if side[k], err = fitDeck(corners, moved, accuracy); err != nil {
				t.Fatal(err)
			}
		}
		a, b := side[0], side[1]
		want.add(accuracy[i]*accuracy[i]/4, [3]float64{
			(b.level - a.level) / (2 * h), (b.up.X - a.up.X) / (2 * h), (b.up.Y - a.up.Y) / (2 * h),
		})
	}
	for i := range want {
		for j := range want {
			scale := math.Sqrt(want[i][i] * want[j][j])
			if math.Abs(f.covariance[i][j]-want[i][j]) > 1e-5*scale {
				t.Errorf("covariance %d %d: %g, by slopes %g", i, j, f.covariance[i][j], want[i][j])
			}
		}
	}
}

// TestSwollen checks that a swollen body is so many times the body.
func TestSwollen(t *testing.T) {
	b := Block{Length: 2, Width: 1, Height: 0.5}
	up := r3.Unit(r3.Vec{X: 0.1, Y: -0.2, Z: 1})
	one, more := b.Wet(0.05, up), swollen{b, 1.2}.Wet(0.05, up)
	pairs := [][2]float64{
		{one.Volume, more.Volume},
		{one.Plane, more.Plane},
		{one.VolumeMoment.X, more.VolumeMoment.X},
		{one.VolumeMoment.Z, more.VolumeMoment.Z},
		{one.PlaneMoment.Y, more.PlaneMoment.Y},
		{b.Volume(), swollen{b, 1.2}.Volume()},
	}
	for i := range one.PlaneInertia {
		pairs = append(pairs, [2]float64{one.PlaneInertia[i], more.PlaneInertia[i]})
	}
	for i, p := range pairs {
		if math.Abs(p[1]-1.2*p[0]) > 1e-15 || p[0] == 0 {
			t.Errorf("integral %d: %g, swollen %g", i, p[0], p[1])
		}
	}
}
