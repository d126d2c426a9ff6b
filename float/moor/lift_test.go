package moor_test

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// TestDeadWeightLifted: a block that the line lifts off the bottom is short with those
// words, whatever the pull, on either side of its weight in water, by hand 1000 kg of 2400
// kg/m³ concrete: 1000 g (1 - 1000/2400) = 5720.5 N.
func TestDeadWeightLifted(t *testing.T) {
	d := moor.DeadWeight{Mass: 1000, Density: 2400, Bottom: "sand"}
	w := 1000 * measure.Gravity * (1 - 1000./2400)
	for _, c := range []struct {
		lift   float64
		lifted bool
	}{{0, false}, {w * 0.999, false}, {w, true}, {w * 1.3, true}} {
		for _, pull := range []float64{0, 100, 1e5} {
			got, err := d.Check(pull, c.lift)
			if err != nil {
				t.Fatal(err)
			}
			lifted := got.Numbers(measure.US) == "lifted off the bottom; must be on the bottom"
			if lifted != c.lifted || lifted && (got.Verdict() != measure.Short || len(got.Factors) > 0 || !strings.Contains(got.Notes[0], "in water")) {
				t.Errorf("lift %g N, pull %g N: %v", c.lift, pull, got)
			}
			if !lifted && !(got.Limit > 0 && !math.IsInf(got.Limit, 0)) {
				t.Errorf("lift %g N: limit %g N", c.lift, got.Limit)
			}
		}
	}
}
