package float_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
)

// TestDrumUnit checks that every preset's body displaces what the preset says, and
// that the unit carries its mass, place and heading.
func TestDrumUnit(t *testing.T) {
	least := 1.0
	for _, d := range float.Drums() {
		u := d.Unit(r3.Vec{X: 1, Y: 2, Z: -0.3}, math.Pi/2)
		if v := u.Body.Volume(); math.Abs(v/d.Displacement.Value-1) > 1e-14 {
			t.Errorf("%s: body of %g m³, displacement %g", d.Name, v, d.Displacement.Value)
		}
		if l := d.Body().Length / d.Length.Value; !(l > float.LeastTapered && l <= 1+1e-12) {
			t.Errorf("%s: body %g of the drum's length", d.Name, l)
		} else {
			least = min(least, l)
		}
		if u.Mass != d.Mass.Value || u.At.Y != 2 || u.Heading != math.Pi/2 || u.Captive || u.Flooded {
			t.Errorf("%s: %+v", d.Name, u)
		}
	}
	if least > float.LeastTapered+0.01 {
		t.Errorf("the most tapered drum has %g of its cylinder, %g stands in", least, float.LeastTapered)
	}
}
