package published

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/lumber/measure"
)

func TestLastDigit(t *testing.T) {
	for printed, want := range map[string]float64{"0.250": 1e-3, "1100": 1, "1.25e-6": 1e-8, "-2.83": 0.01, "5E3": 1e3, "31.": 1} {
		if got := lastDigit(printed); math.Abs(got-want) > 1e-12*want {
			t.Errorf("last digit of %s: %g, want %g", printed, got, want)
		}
	}
}

// A check is met up to half of the last printed digit and no further; a known
// deviation has a limit of its own.
func TestVerify(t *testing.T) {
	value := func(x float64) func() (float64, error) { return func() (float64, error) { return x, nil } }
	for _, c := range []struct {
		name  string
		check Check
		met   bool
	}{
		{"exact", Check{Printed: "0.25", Compute: value(0.25)}, true},
		{"half a digit", Check{Printed: "0.25", Compute: value(0.255)}, true},
		{"more", Check{Printed: "0.25", Compute: value(0.25501)}, false},
		{"thousands", Check{Printed: "20,000", Compute: value(20000.4)}, true},
		{"coarser step", Check{Printed: "440", Step: 10, Compute: value(444.9)}, true},
		{"beyond the coarser step", Check{Printed: "440", Step: 10, Compute: value(445.1)}, false},
		{"relative", Check{Printed: "2.000", Relative: 1e-9, Compute: value(2.0000001)}, false},
		{"known deviation", Check{Printed: "7", Because: "the source rounds up", Within: 1, Compute: value(7.6)}, true},
		{"beyond the known deviation", Check{Printed: "7", Because: "the source rounds up", Within: 0.5, Compute: value(7.6)}, false},
		{"NaN", Check{Printed: "7", Compute: value(math.NaN())}, false},
		{"no number", Check{Printed: "seven", Compute: value(7)}, false},
		{"fails", Check{Printed: "7", Compute: func() (float64, error) { return 0, errors.New("no") }}, false},
	} {
		if err := c.check.Verify(); (err == nil) != c.met {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// Every row names its package, what it compares, its source and status, and can
// be computed; no two rows of a package are the same.
func TestRowsAreWhole(t *testing.T) {
	all, err := All()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, c := range all {
		if c.Package == "" || c.Quantity == "" || c.Source.Title == "" || c.Source.Status == measure.Unstated || c.Printed == "" {
			t.Errorf("row without package, quantity, source, status or value: %+v", c)
		}
		if c.Because != "" && !(c.Within > 0) {
			t.Errorf("%s: a known deviation needs a limit", c.Name())
		}
		key := c.Package + c.Name() + c.Printed
		if seen[key] {
			t.Errorf("%s is there twice", c.Name())
		}
		seen[key] = true
	}
	if _, err := Of("nothing"); err == nil {
		t.Error("a package without checks gives no error")
	}
	t.Logf("%d outside values", len(all))
}

// TestRuns computes the checks in two parts, for who counts which statements they run: what
// the dock's own checks run of the packages below is no check of those.
func TestRuns(t *testing.T) {
	all, err := All()
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range []string{"below", "dock"} {
		t.Run(part, func(t *testing.T) {
			n := 0
			for _, c := range all {
				if (c.Package == "frame/dock" || c.Package == "frame/sheet") != (part == "dock") {
					continue
				}
				n++
				if _, err := c.Compute(); err != nil {
					t.Error(c.Name(), err)
				}
			}
			if n < 15 {
				t.Errorf("%d checks", n)
			}
		})
	}
}
