package layout

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/lumber/measure"
)

// TestAxes: marks at near faces and at centres of one frame have the same axes.
func TestAxes(t *testing.T) {
	const in = measure.Inch
	if _, err := axes([]float64{0}, 0, false); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	a, err := axes([]float64{0, 24 * in}, 1.5*in, false)
	if err != nil {
		t.Fatal(err)
	}
	b, err := axes([]float64{0.75 * in, 24.75 * in}, 1.5*in, true)
	if err != nil {
		t.Fatal(err)
	}
	for i := range a {
		if !(math.Abs(a[i]-b[i]) <= 1e-15) {
			t.Errorf("axis %d: %g by its near face, %g by its centre", i+1, a[i], b[i])
		}
	}
}

// FuzzAxes: marks come back as axes a joist apart, in order.
func FuzzAxes(f *testing.F) {
	f.Add(0.0, 0.4, 0.8, 0.038, true)
	f.Add(0.0, 0.02, 0.8, 0.038, false)
	f.Add(math.NaN(), 0.4, math.Inf(1), 0.0, false)
	f.Fuzz(func(t *testing.T, a, b, c, thickness float64, centre bool) {
		lines, err := axes([]float64{a, b, c}, thickness, centre)
		var told *measure.Error
		if err != nil {
			if !errors.As(err, &told) {
				t.Fatal(err)
			}
			return
		}
		for i := 1; i < 3; i++ {
			if !(lines[i]-lines[i-1] >= thickness-measure.Inch/31) {
				t.Errorf("%v at thickness %g", lines, thickness)
			}
		}
	})
}
