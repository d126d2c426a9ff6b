package measure_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/lumber/measure"
)

// Whatever a builder types, reading gives a finite number or an error with a
// class, never both, and a number that was read prints and reads again.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"12 ft 6 in", `12'-6 1/2"`, "7-1/4 in", "3.66 m", "55 gal", "40 psf", "-4 F", "", "NaN", "--1 m", "1e308 km", "½″"} {
		f.Add(int(measure.Length), s)
		f.Add(int(measure.Temperature), s)
	}
	f.Fuzz(func(t *testing.T, kind int, text string) {
		k := measure.Kind(kind)
		x, err := k.Parse(text)
		if err != nil {
			if !errors.Is(err, measure.ErrSyntax) && !errors.Is(err, measure.ErrRange) {
				t.Fatalf("%v.Parse(%q): %v has no class", k, text, err)
			}
			if !math.IsNaN(x) {
				t.Fatalf("%v.Parse(%q) = %g beside an error", k, text, x)
			}
			return
		}
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%v.Parse(%q) = %g without an error", k, text, x)
		}
		for _, s := range []measure.System{measure.US, measure.SI} {
			if _, err := k.Parse(k.Format(x*0.999, s)); err != nil {
				t.Fatalf("%v: %q read as %g, prints as %q: %v", k, text, x, k.Format(x*0.999, s), err)
			}
		}
	})
}

// Printing and reading return the number to half of the last printed digit.
func FuzzPrintParse(f *testing.F) {
	f.Add(int(measure.Length), 3.81)
	f.Add(int(measure.Mass), 83.9146)
	f.Add(int(measure.Temperature), -17.3)
	f.Fuzz(func(t *testing.T, kind int, x float64) {
		k := measure.Kind(kind)
		if k <= measure.Ratio || k > measure.Percent || !(math.Abs(x) < 100) {
			return
		}
		roundTrip(t, k, x, measure.US)
		roundTrip(t, k, x, measure.SI)
	})
}
