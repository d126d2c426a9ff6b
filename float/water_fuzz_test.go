package float_test

import (
	"math"
	"testing"

	"example.org/floewright/float"
)

// FuzzWater holds that an accepted water has a density that rises with salt, and
// that a refused one gives no number.
func FuzzWater(f *testing.F) {
	f.Add(0.0, 0.0)
	f.Add(40.0, 42.0)
	f.Add(-1.0, 20.0)
	f.Add(math.NaN(), math.Inf(1))
	f.Fuzz(func(t *testing.T, celsius, salt float64) {
		rho, err := float.Water{Celsius: celsius, Salinity: salt}.Density()
		if err != nil {
			if rho != 0 {
				t.Fatalf("density %g beside error %v", rho, err)
			}
			return
		}
		if !(rho > 990 && rho < 1040) {
			t.Fatalf("density %g at %g °C, salinity %g", rho, celsius, salt)
		}
		saltier, err := float.Water{Celsius: celsius, Salinity: salt + 0.5}.Density()
		if err == nil && !(saltier > rho+0.3) {
			t.Fatalf("half a gram of salt turned %g into %g at %g °C", rho, saltier, celsius)
		}
	})
}

// FuzzSeal holds that suction in the cold grows with the step of temperature,
// that damp air gives no less of it, and that depth adds to it.
func FuzzSeal(f *testing.F) {
	f.Add(25.0, -30.0, 0.5, 0.0)
	f.Add(-10.0, 35.0, 0.0, 90e3)
	f.Add(math.NaN(), 0.0, 0.0, 101325.0)
	f.Fuzz(func(t *testing.T, closed, now, depth, air float64) {
		damp := float.Seal{Celsius: closed, Atmosphere: air}
		dry := damp
		dry.Dry = true
		wet, err := damp.Squeeze(now, depth, 1000)
		if err != nil {
			return
		}
		less, err := dry.Squeeze(now, depth, 1000)
		if err != nil {
			t.Fatal(err)
		}
		if now < closed && wet < less-1e-6 || now > closed && wet > less+1e-6 {
			t.Fatalf("closed at %g, now %g: damp %g, dry %g Pa", closed, now, wet, less)
		}
		top, err := damp.Squeeze(now, 0, 1000)
		if err != nil || math.Abs(wet-top-9806.65*depth) > 1e-6 {
			t.Fatalf("depth %g m adds %g Pa, %v", depth, wet-top, err)
		}
	})
}

// FuzzMeasureDrum holds that a drum made from its girth gives its girth back, and
// that its range covers a tape read at either end of its accuracy.
func FuzzMeasureDrum(f *testing.F) {
	f.Add(1.8, 0.002, 0.88, 0.003, 18.0)
	f.Add(1.45, 0.0, 0.7, 0.0, 12.0)
	f.Add(0.1, -1.0, math.NaN(), 0.0, 0.0)
	f.Fuzz(func(t *testing.T, girth, dg, length, dl, mass float64) {
		d, err := float.MeasureDrum(float.Figure{Value: girth, Within: dg}, float.Figure{Value: length, Within: dl}, float.Figure{Value: mass})
		if err != nil {
			return
		}
		if math.Abs(d.Diameter.Value*math.Pi/girth-1) > 1e-15 || d.Length.Value != length {
			t.Fatalf("girth %g, length %g gave %+v", girth, length, d)
		}
		if !(d.Mass.Value < 1000*d.Displacement.Value) {
			t.Fatalf("a drum that sinks: %+v", d)
		}
		if dg < 0.01*girth && dl < 0.01*length {
			big := (girth + dg) * (girth + dg) * (length + dl) / (4 * math.Pi)
			if big > d.Displacement.Value+d.Displacement.Within {
				t.Fatalf("volume %g outside %+v", big, d.Displacement)
			}
		}
	})
}
