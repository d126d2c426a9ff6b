package layout_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/internal/published"
	"example.org/floewright/lumber/measure"
)

func TestPublished(t *testing.T) {
	checks, err := published.Of("frame/layout")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range checks {
		t.Run(c.Name(), func(t *testing.T) {
			if err := c.Verify(); err != nil {
				t.Error(err)
			}
		})
	}
}

// frame returns the measurements of the flat frame with these corners.
func frame(x, y [4]float64) layout.Frame {
	d := func(i, j int) float64 { return math.Hypot(x[i]-x[j], y[i]-y[j]) }
	return layout.Frame{A: d(0, 1), B: d(1, 2), C: d(2, 3), D: d(3, 0), P: d(0, 2), Q: d(1, 3)}
}

func TestCornerEnds(t *testing.T) {
	for _, c := range []struct{ a, b, c, want float64 }{
		{3, 4, 5, math.Pi / 2},
		{5, 4, 3, math.Acos(0.8)},
		{1, 1, 1, math.Pi / 3},
		{1, 2, 3, math.Pi},
		{2, 1, 1, 0},
		{1, 1, 1e-9, 1e-9}, // the law of cosines as written would give 0
	} {
		if got, err := layout.Corner(c.a, c.b, c.c); err != nil || math.Abs(got-c.want) > 4e-16*math.Max(1e-9, c.want)+4e-16*c.want {
			t.Errorf("Corner(%g, %g, %g) = %.17g, %v, want %.17g", c.a, c.b, c.c, got, err, c.want)
		}
	}
}

func TestRefuses(t *testing.T) {
	for _, bad := range []float64{math.NaN(), 0, -1, math.Inf(1), 1e9} {
		_, e1 := layout.Diagonal(bad, 1)
		_, e2 := layout.Diagonal(1, bad)
		_, e3 := layout.Corner(1, bad, 1)
		_, _, e4 := layout.Racked(4, 3, bad, 5)
		_, e5 := layout.Frame{A: 4, B: 3, C: 4, D: bad, P: 5, Q: 5}.Corners()
		_, e6 := layout.Frame{A: 4, B: 3, C: 4, D: 3, P: 5, Q: bad}.Misfit()
		_, e7 := layout.Frame{A: 4, B: bad, C: 4, D: 3, P: 5, Q: 5}.Misfit()
		for i, err := range []error{e1, e2, e3, e4, e5, e6, e7} {
			if !errors.Is(err, measure.ErrRange) {
				t.Errorf("%g, call %d: %v", bad, i+1, err)
			}
		}
	}
	if _, err := layout.Corner(1, 1, 3); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no triangle: %v", err)
	}
	if _, _, err := layout.Racked(1, 1, 9, 1); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no frame: %v", err)
	}
}

// Whatever convex flat frame is measured, its corners add up to a turn and the
// second diagonal fits; one that is off by a bit shows just that bit.
func FuzzFrame(f *testing.F) {
	f.Add(4.8768, 2.4384, 0.0, 0.0, 0.0)
	f.Add(4.8, 2.4, 0.1, -0.05, 0.01)
	f.Fuzz(func(t *testing.T, a, b, lean, taper, off float64) {
		if !(a > 0.5 && a < 50 && b > 0.5 && b < 50 && math.Abs(lean) < 0.4*b && math.Abs(taper) < 0.2*a && math.Abs(off) < 0.1) {
			return
		}
		q := frame([4]float64{0, a, a + lean - taper, lean}, [4]float64{0, 0, b, b})
		corners, err := q.Corners()
		if err != nil {
			t.Fatalf("%+v: %v", q, err)
		}
		if sum := corners[0] + corners[1] + corners[2] + corners[3]; math.Abs(sum-2*math.Pi) > 1e-9 {
			t.Errorf("%+v: corners add up to %g", q, sum)
		}
		if want := math.Atan2(b, lean); math.Abs(corners[0]-want) > 1e-9 {
			t.Errorf("%+v: corner 1 is %g, want %g", q, corners[0], want)
		}
		q.Q += off
		if got, err := q.Misfit(); err != nil || math.Abs(got-off) > 1e-9*(a+b) {
			t.Errorf("%+v: misfit %g, %v, want %g", q, got, err, off)
		}
		if taper != 0 {
			return
		}
		q.Q -= off
		offset, angle, err := layout.Racked(q.A, q.B, q.P, q.Q)
		if err != nil || math.Abs(angle-math.Atan2(lean, b)) > 1e-7 || math.Abs(offset-q.B*math.Sin(angle)) > 1e-9 {
			t.Errorf("%+v: leans %g rad, %g m, %v, want %g rad", q, angle, offset, err, math.Atan2(lean, b))
		}
	})
}

// A frame of 16 ft by 8 ft, its diagonals half an inch apart.
func ExampleRacked() {
	const in = measure.Inch
	want, err := layout.Diagonal(192*in, 96*in)
	if err != nil {
		fmt.Println(err)
		return
	}
	offset, angle, err := layout.Racked(192*in, 96*in, 214.9*in, 214.4*in)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("both diagonals should read", measure.FeetInches(want, 16))
	fmt.Printf("leans %s over its 8 ft, %.2f deg\n", measure.FeetInches(offset, 16), angle*180/math.Pi)
	// Output:
	// both diagonals should read 17 ft 10-11/16 in
	// leans 1/4 in over its 8 ft, 0.17 deg
}

// Equal diagonals do not make a square: this one is a trapezium.
func ExampleFrame_Corners() {
	f := frame([4]float64{0, 4.80, 4.75, 0.05}, [4]float64{0, 0, 2.4, 2.4})
	corners, err := f.Corners()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("diagonals %.3f m and %.3f m, first corner %.1f deg\n", f.P, f.Q, corners[0]*180/math.Pi)
	// Output: diagonals 5.322 m and 5.322 m, first corner 88.8 deg
}
