package measure_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

// near compares two numbers to a few units in the last place.
func near(a, b float64) bool {
	return math.Abs(a-b) <= 4e-16*math.Max(math.Abs(a), math.Abs(b))
}

func TestParse(t *testing.T) {
	const in, ft = measure.Inch, measure.Foot
	for _, c := range []struct {
		kind measure.Kind
		text string
		want float64
	}{
		{measure.Length, "12 ft 6 in", 12.5 * ft},
		{measure.Length, "12ft6in", 12.5 * ft},
		{measure.Length, `12'-6 1/2"`, 12*ft + 6.5*in},
		{measure.Length, `12' 6"`, 12.5 * ft},
		{measure.Length, "12’ 6½”", 12*ft + 6.5*in},
		{measure.Length, "12 ft. 6 in.", 12.5 * ft},
		{measure.Length, "12 ft - 6 in", 12.5 * ft},
		{measure.Length, "7-1/4 in", 7.25 * in},
		{measure.Length, "7 1/4 in", 7.25 * in},
		{measure.Length, "5/4 in", 1.25 * in},
		{measure.Length, `-1/2"`, -0.5 * in},
		{measure.Length, "-1 ft 3 in", -1.25 * ft},
		{measure.Length, ".5 m", 0.5},
		{measure.Length, "3.66 m", 3.66},
		{measure.Length, "184mm", 0.184},
		{measure.Length, "2 yd", 2 * measure.Yard},
		{measure.Length, "12 FT", 12 * ft},
		{measure.Length, "25 cm", 0.25},
		{measure.Length, "3 mi", 3 * 5280 * ft},
		{measure.Length, "0.4 km", 400},
		{measure.Area, "240 sq ft", 240 * ft * ft},
		{measure.Area, "288 in2", 2 * ft * ft},
		{measure.Area, "22.3 m²", 22.3},
		{measure.Volume, "55 gal", 55 * measure.USGallon},
		{measure.Volume, "45 imp gal", 45 * measure.ImperialGallon},
		{measure.Volume, "208 L", 0.208},
		{measure.Volume, "355 ml", 355e-6},
		{measure.Volume, "7.5 cu ft", 7.5 * ft * ft * ft},
		{measure.Volume, "2 m3", 2},
		{measure.Mass, "250 g", 0.25},
		{measure.Mass, "40 lbs", 40 * measure.Pound},
		{measure.Mass, "5 lb 4 oz", 5.25 * measure.Pound},
		{measure.Mass, "1.5 ton", 3000 * measure.Pound},
		{measure.Mass, "1.5 t", 1500},
		{measure.Force, "900 lbf", 900 * measure.PoundForce},
		{measure.Force, "4 kN", 4000},
		{measure.Force, "4 KN", 4000},
		{measure.Pressure, "40 psf", 40 * measure.PSF},
		{measure.Pressure, "40 lb/sq ft", 40 * measure.PSF},
		{measure.Pressure, "150 kg/m²", 150 * measure.Gravity},
		{measure.Stress, "1150 psi", 1150 * measure.PSI},
		{measure.Stress, "8 MPa", 8e6},
		{measure.Stress, "8 mPa", 8e-3},
		{measure.LineLoad, "50 plf", 50 * measure.PLF},
		{measure.Moment, "120 lbf·ft", 120 * measure.PoundForce * ft},
		{measure.Moment, "120 lbf-in", 10 * measure.PoundForce * ft},
		{measure.Moment, "3 kN-m", 3000},
		{measure.Stress, "29 ksi", 29000 * measure.PSI},
		{measure.Stress, "12 GPa", 12e9},
		{measure.Force, "2 kip", 2000 * measure.PoundForce},
		{measure.LineLoad, "100 kg/m", 100 * measure.Gravity},
		{measure.Density, "36.7 pcf", 36.7 * measure.PCF},
		{measure.Speed, "25 mph", 25 * measure.MPH},
		{measure.Speed, "20 kn", 20 * measure.Knot},
		{measure.Speed, "36 km/h", 10},
		{measure.Speed, "10 ft/s", 10 * ft},
		{measure.Time, "90 min", 5400},
		{measure.Time, "30 h", 1.25 * measure.Day},
		{measure.Temperature, "-4 F", -20},
		{measure.Temperature, "-4°F", -20},
		{measure.Temperature, "−20 °C", -20},
		{measure.Temperature, "273.15 K", 0},
		{measure.TemperatureDifference, "18 F deg", 10},
		{measure.DegreeDays, "900 F-days", 500},
		{measure.DegreeDays, "500 °C·d", 500},
		{measure.Angle, "180 deg", math.Pi},
		{measure.Time, "3 weeks", 21 * measure.Day},
		{measure.Percent, "85 %", 0.85},
	} {
		got, err := c.kind.Parse(c.text)
		if err != nil {
			t.Errorf("%v.Parse(%q): %v", c.kind, c.text, err)
			continue
		}
		if !near(got, c.want) && math.Abs(got-c.want) > 1e-13 {
			t.Errorf("%v.Parse(%q) = %.17g, want %.17g", c.kind, c.text, got, c.want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		kind  measure.Kind
		text  string
		class error
		says  string // a part of the message
	}{
		{measure.Length, "", measure.ErrSyntax, "empty"},
		{measure.Length, "  ", measure.ErrSyntax, "empty"},
		{measure.Length, "12", measure.ErrSyntax, "no unit"},
		{measure.Length, `12' 6`, measure.ErrSyntax, "last number has no unit"},
		{measure.Length, "NaN", measure.ErrSyntax, "does not begin with a number"},
		{measure.Length, "NaN ft", measure.ErrSyntax, "does not begin with a number"},
		{measure.Length, "Inf m", measure.ErrSyntax, "does not begin with a number"},
		{measure.Length, "--4 ft", measure.ErrSyntax, "two signs"},
		{measure.Length, "+-4 ft", measure.ErrSyntax, "two signs"},
		{measure.Length, "12 ft -- 6 in", measure.ErrSyntax, "unit"},
		{measure.Length, "40 psf", measure.ErrSyntax, "psf\" is a unit of pressure"},
		{measure.Length, "3 fathoms", measure.ErrSyntax, "no unit known here"},
		{measure.Length, "3,66 m", measure.ErrSyntax, "comma"},
		{measure.Length, "1,200 ft", measure.ErrSyntax, "comma"},
		{measure.Length, "7-5/4 in", measure.ErrSyntax, "proper"},
		{measure.Length, "7-1/0 in", measure.ErrSyntax, "fraction"},
		{measure.Length, "12 ft 12 in", measure.ErrSyntax, "makes a whole"},
		{measure.Length, "12.5 ft 6 in", measure.ErrSyntax, "whole"},
		{measure.Length, "12 ft 6 mm", measure.ErrSyntax, "does not follow"},
		{measure.Length, "12 ft x", measure.ErrSyntax, "no unit known"},
		{measure.Length, "7.. in", measure.ErrSyntax, "no unit known"},
		{measure.Length, "1e400 m", measure.ErrSyntax, "too large"},
		{measure.Length, strings.Repeat("1", 90) + " m", measure.ErrSyntax, "too long"},
		{measure.Length, "1e9 m", measure.ErrRange, "at most 100000 m"},
		{measure.Length, "-1e9 m", measure.ErrRange, "at least -100000 m"},
		{measure.Mass, "40 lbf", measure.ErrSyntax, "unit of force"},
		{measure.Force, "40 lb", measure.ErrSyntax, "unit of mass"},
		{measure.Stress, "5 mpa", measure.ErrSyntax, "no unit known"},
		{measure.Temperature, "-300 C", measure.ErrRange, "at least -273.15"},
		{measure.Speed, "900 mph", measure.ErrRange, "speed"},
		{measure.Ratio, "0.5", measure.ErrSyntax, "no unit to read"},
		{measure.Kind(99), "0.5 m", measure.ErrSyntax, "no unit to read"},
	} {
		got, err := c.kind.Parse(c.text)
		if err == nil {
			t.Errorf("%v.Parse(%q) = %g, want an error", c.kind, c.text, got)
			continue
		}
		if !math.IsNaN(got) {
			t.Errorf("%v.Parse(%q) returns %g beside its error, want NaN", c.kind, c.text, got)
		}
		if !errors.Is(err, c.class) {
			t.Errorf("%v.Parse(%q): %v: want class %q", c.kind, c.text, err, c.class)
		}
		var e *measure.Error
		if !errors.As(err, &e) || e.Kind != c.kind {
			t.Errorf("%v.Parse(%q): %T carries no details", c.kind, c.text, err)
		}
		if c.says != "speed" && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v.Parse(%q): %q does not say %q", c.kind, c.text, err, c.says)
		}
		if len(c.text) < 80 && !strings.Contains(err.Error(), c.text) && c.text != "" && !strings.Contains(c.text, `"`) {
			t.Errorf("%v.Parse(%q): %q does not quote the text", c.kind, c.text, err)
		}
	}
}
