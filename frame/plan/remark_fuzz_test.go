package plan_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// FuzzRemark: a start has a remark, or none, where JSON makes a plan of it, and the same
// error, with a class, where it makes none.
func FuzzRemark(f *testing.F) {
	f.Add(7.3, 3.0, 1.82, 0.9, 10.0, 4, 0)
	f.Add(7.3, 14.4, 1.85, 0.9, 10.0, 0, 0) // its stops stand 46 ft apart
	f.Add(math.NaN(), -1.0, 0.0, math.Inf(1), 5e-324, -3, 9)
	f.Fuzz(func(t *testing.T, length, width, girth, long, mass float64, drums, units int) {
		s := plan.Start{Units: measure.System(units), Length: length, Width: width, Drum: "drum", Girth: girth, Long: long, Mass: mass, Drums: drums}
		_, err := s.JSON()
		text, err2 := s.Remark()
		if (err == nil) != (err2 == nil) || err != nil && err.Error() != err2.Error() || err2 != nil && text != "" {
			t.Fatalf("%v, and the remark %q, %v", err, text, err2)
		}
		var bad *measure.Error
		if err2 != nil && !errors.As(err2, &bad) {
			t.Fatalf("an error of no class: %v", err2)
		}
	})
}
