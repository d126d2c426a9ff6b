package measure_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode"

	"example.org/floewright/lumber/measure"
)

func TestFeetInches(t *testing.T) {
	const in = measure.Inch
	for _, c := range []struct {
		x    float64
		per  int
		want string
	}{
		{0, 16, "0 in"},
		{math.Copysign(0, -1), 16, "0 in"},
		{0.001 * in, 16, "0 in"},
		{-0.001 * in, 16, "0 in"},
		{0.5 * in, 16, "1/2 in"},
		{-0.5 * in, 16, "-1/2 in"},
		{7.25 * in, 16, "7-1/4 in"},
		{11.97 * in, 16, "1 ft"},        // rounding carries into the foot
		{23.999 * in, 8, "2 ft"},        // twice
		{11.97 * in, 64, "11-31/32 in"}, // and does not where the fraction is fine enough
		{12.5 * in, 16, "1 ft 0-1/2 in"},
		{150 * in, 16, "12 ft 6 in"},
		{-150 * in, 16, "-12 ft 6 in"},
		{3.66, 16, "12 ft 0-1/8 in"},
		{7.3 * in, 1, "7 in"},
		{7.3 * in, 3, "7-5/16 in"}, // no carpenter's rule has thirds
		{7.3 * in, -1, "7-5/16 in"},
		{1e30, 16, "3.280840e+30 ft"},
		{math.NaN(), 16, "no number (ft)"},
		{math.Inf(1), 16, "no finite number (ft)"},
	} {
		if got := measure.FeetInches(c.x, c.per); got != c.want {
			t.Errorf("FeetInches(%g in, %d) = %q, want %q", c.x/in, c.per, got, c.want)
		}
	}
}

func TestPrint(t *testing.T) {
	for _, c := range []struct {
		kind   measure.Kind
		x      float64
		us, si string
	}{
		{measure.Length, 3.66, "12 ft 0-1/8 in", "3.660 m"},
		{measure.Length, 0.184, "7-1/4 in", "184 mm"},
		{measure.Length, 0.9996, "3 ft 3-3/8 in", "1.000 m"},
		{measure.Length, -1e-9, "0 in", "0.0 mm"},
		{measure.Length, 0.00123, "1/16 in", "1.2 mm"},
		{measure.Length, 0.00995, "3/8 in", "10 mm"},
		{measure.Length, -0.00996, "-3/8 in", "-10 mm"},
		{measure.Area, 22.2967, "240 ft²", "22.30 m²"},
		{measure.Volume, 0.208198, "55.0 gal", "208 L"},
		{measure.Mass, 83.9146, "185 lb", "83.9 kg"},
		{measure.Force, 4448.2216, "1000 lbf", "4448 N"},
		{measure.Pressure, 957.605, "20.0 psf", "0.958 kPa"},
		{measure.Stress, 7928970.9, "1150 psi", "7.929 MPa"},
		{measure.LineLoad, 729.7, "50.0 plf", "730 N/m"},
		{measure.Moment, 162.698, "120 lbf·ft", "163 N·m"},
		{measure.Density, 588, "36.7 pcf", "588 kg/m³"},
		{measure.Speed, 11.176, "25.0 mph", "11.2 m/s"},
		{measure.Temperature, -20, "-4.0 °F", "-20.0 °C"},
		{measure.TemperatureDifference, 10, "18.0 F deg", "10.0 C deg"},
		{measure.DegreeDays, 500, "900 F-days", "500 C-days"},
		{measure.Angle, 0.0943, "5.4 deg", "5.4 deg"},
		{measure.Time, 7200, "2.0 h", "2.0 h"},
		{measure.Time, 3 * measure.Day, "3.0 days", "3.0 days"},
		{measure.Time, -2.9 * measure.Day, "-69.6 h", "-69.6 h"},
		{measure.Percent, 0.97, "97.0 %", "97.0 %"},
		{measure.Ratio, 1.15, "1.150", "1.150"},
		{measure.Count + 1, 1.15, "1.150", "1.150"},
		{measure.Kind(-1), 1.15, "1.150", "1.150"},
		{measure.Mass, math.NaN(), "no number (lb)", "no number (kg)"},
		{measure.Mass, math.Inf(-1), "no finite number (lb)", "no finite number (kg)"},
		{measure.Ratio, math.NaN(), "no number", "no number"},
	} {
		if got := c.kind.Format(c.x, measure.US); got != c.us {
			t.Errorf("%v.Format(%g, US) = %q, want %q", c.kind, c.x, got, c.us)
		}
		if got := c.kind.Format(c.x, measure.SI); got != c.si {
			t.Errorf("%v.Format(%g, SI) = %q, want %q", c.kind, c.x, got, c.si)
		}
	}
	if got := measure.Mass.Format(1, measure.System(7)); got != "2.2 lb" {
		t.Errorf("an unknown system prints %q, want the builder's units", got)
	}
}

// resolution returns the largest error that reading text back may show: half of
// its last digit, in SI, found by moving that digit by one.
func resolution(k measure.Kind, text string) float64 {
	if k == measure.Length && (strings.HasSuffix(text, "in") || strings.HasSuffix(text, "ft")) {
		return measure.Inch / 32
	}
	digits, unit := text, ""
	if i := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsDigit(r) && r != '.' && r != '-' }); i >= 0 {
		digits, unit = text[:i], text[i:]
	}
	places := 0
	if _, d, ok := strings.Cut(digits, "."); ok {
		places = len(d)
	}
	one, err1 := k.Parse("1" + unit)
	two, err2 := k.Parse("2" + unit)
	if err1 != nil || err2 != nil {
		return math.NaN()
	}
	return (two - one) * math.Pow10(-places) / 2
}

func roundTrip(t *testing.T, k measure.Kind, x float64, s measure.System) {
	t.Helper()
	text := k.Format(x, s)
	got, err := k.Parse(text)
	if err != nil {
		t.Errorf("%v: %g prints as %q, which does not read: %v", k, x, text, err)
		return
	}
	if limit := resolution(k, text) * (1 + 1e-9); !(math.Abs(got-x) <= limit+1e-15*math.Abs(x)) {
		t.Errorf("%v: %g prints as %q, reads as %g, off by more than %g", k, x, text, got, limit)
	}
}

func TestPrintParsesBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for k := measure.Length; k <= measure.Percent; k++ {
		for range 400 {
			x := math.Pow(10, 5*rng.Float64()-3)
			if k != measure.Temperature && rng.IntN(2) == 0 {
				x = -x
			}
			if k == measure.Speed || k == measure.Percent || k == measure.TemperatureDifference || k == measure.Angle {
				x = math.Mod(x, 90)
			}
			roundTrip(t, k, x, measure.US)
			roundTrip(t, k, x, measure.SI)
		}
	}
}

func TestFahrenheit(t *testing.T) {
	for _, c := range []struct{ f, c float64 }{{32, 0}, {212, 100}, {-40, -40}, {-4, -20}, {-459.67, -273.15}} {
		if got := measure.Fahrenheit(c.f); math.Abs(got-c.c) > 1e-13 {
			t.Errorf("Fahrenheit(%g) = %g, want %g °C", c.f, got, c.c)
		}
		if got := measure.ToFahrenheit(c.c); math.Abs(got-c.f) > 1e-12 {
			t.Errorf("ToFahrenheit(%g) = %g, want %g °F", c.c, got, c.f)
		}
	}
}

// A length that is asked for never prints smaller than it is, nor a whole digit greater.
func TestUpward(t *testing.T) {
	for _, c := range []struct {
		x      float64
		us, si string
	}{
		{0.2, "8 in", "200 mm"},
		{0.2001, "8 in", "201 mm"},
		{21.39 * measure.Inch, "1 ft 9-1/2 in", "544 mm"},
		{8 * measure.Inch, "8 in", "204 mm"},
		{1.0001, "3 ft 3-1/2 in", "1.001 m"},
		{0.00512, "1/4 in", "5.2 mm"},
		{0, "0 in", "0.0 mm"},
		{math.NaN(), "no number (ft)", "no number (m)"},
	} {
		if us, si := measure.Upward(c.x, measure.US), measure.Upward(c.x, measure.SI); math.IsNaN(c.x) && strings.HasPrefix(us, "no number") || us == c.us && si == c.si {
			continue
		} else {
			t.Errorf("%g: %q, %q, want %q, %q", c.x, us, si, c.us, c.si)
		}
	}
	rule := &measure.Source{Title: "a rule", Status: measure.OwnChoice}
	for _, c := range []struct {
		value, limit float64
		want         string
	}{
		{30 * measure.Inch, 21.39 * measure.Inch, "2 ft 6 in, at least 1 ft 9-1/2 in"},
		{math.NaN(), 21.39 * measure.Inch, "no value, at least 1 ft 9-1/2 in"},
		{21.40 * measure.Inch, 21.39 * measure.Inch, "1 ft 9-13/32 in, at least 1 ft 9-25/64 in"},
		{21.38 * measure.Inch, 21.39 * measure.Inch, "1 ft 9-3/8 in, at least 1 ft 9-1/2 in"},
	} {
		k := measure.Check{Kind: measure.Length, AtLeast: true, Hazard: true, Value: c.value, Limit: c.limit, Rule: rule}
		if got := k.Numbers(measure.US); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
