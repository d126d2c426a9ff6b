package measure_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

func TestRestate(t *testing.T) {
	for _, c := range []struct{ text, us, si string }{
		{"347 N·m of righting moment lacking", "256 lbf·ft of righting moment lacking", ""},
		{"under 0.958 kPa over the deck", "under 20.0 psf over the deck", ""},
		{"under 181 kg at x 1.83 m, y 0.00 m: short", "under 399 lb at x 6 ft 0-1/16 in, y 0 in: short", ""},
		{"thickness required: 200 mm (8 in) (larger groups, 20 cm; CCOHS)", "thickness required: 8 in (larger groups, 20 cm; CCOHS)", "thickness required: 200 mm (larger groups, 20 cm; CCOHS)"},
		{"500 mm (1 ft 7-3/4 in) (a row)", "1 ft 7-3/4 in (a row)", "500 mm (a row)"},
		{"keep 10 yd (9 m) from your companion", "keep 10 yd from your companion", "keep 9 m from your companion"},
		{"a fall of 10.0 C deg, from 3 °C by 9 C deg", "a fall of 18.0 F deg, from 37.4 °F by 16.2 F deg", ""},
		{"a fall of 18 F deg to 32 °F", "", "a fall of 10.0 C deg to 0.0 °C"},
		{"park 50 ft (15 m) apart", "park 50 ft apart", "park 15 m apart"},
		{"air of 0 °C (32 °F) and higher", "air of 32 °F and higher", "air of 0 °C and higher"},
		{"everything within 29 m counts", "everything within 95 ft counts", ""},
		{"loads over 7000 kg at least 1 km apart, at most 15 km/h", "loads over 15400 lb at least 0.62 mi apart, at most 9.3 mph", ""},
		{"freeboard before the load: -49 mm", "freeboard before the load: -1-15/16 in", ""},
		{"13 J, the dock held fast", "9.6 lbf·ft, the dock held fast", ""},
		{"20 psf over the half, 400 lb on 1 sq ft", "", "0.958 kPa over the half, 181 kg on 0.09 m²"},
		{"400 lb within 12 in of the edge, centre 6 in from it", "", "181 kg within 305 mm of the edge, centre 152 mm from it"},
		{"0 corners, 1 in the middle, 2 in all", "", ""},
		{"tension in 7/8 in nylon", "", ""},
		{"1 ft 6 in of water", "", "457 mm of water"},
		{"3 people, 2 m deep, 4 metres", "3 people, 6 ft 6-3/4 in deep, 4 metres", ""},
		{"100-150 kN/m, 100 W/m² and 3.5 kg/cm²", "", ""},
		{"5 kN/m, 917 kg/m³, 3 m/s, 2 m2, 9 L", "343 plf, 57.2 pcf, 6.7 mph, 21.5 ft², 2.4 gal", ""},
		{"12 in 1 ft", "", "12 in 305 mm"},
		{"2.5e-05 m", "0 in", ""},
		{"38 mm x 184 mm", "1-1/2 in x 7-1/4 in", ""},
		{`"9 ft" and "9 m" are out of range`, "", ""},
		{"5 m on, 4 m back, 1000 kg", "16 ft on, 13 ft 1-1/2 in back, 2200 lb", ""},
		{"1000 m of shore, 999 m of it his", "0.62 mi of shore, 3278 ft of it his", ""},
		{"60 %, 5.0 deg, 3 h", "", ""},
		{`drum: "foam 3 m long" is unknown; want one of "58 gal steel"; "220 L plastic", within 3 m`, `drum: "foam 3 m long" is unknown; want one of "58 gal steel"; "220 L plastic", within 9 ft 10-1/8 in`, ""},
		{`a 2" pipe of 3 m and a 3" pipe`, `a 2" pipe of 9 ft 10-1/8 in and a 3" pipe`, ""},
		{`"a \" 3 m" for 2 m, "open 2 m`, `"a \" 3 m" for 6 ft 6-3/4 in, "open 6 ft 6-3/4 in`, ""},
		{"", "", ""},
	} {
		for s, want := range map[measure.System]string{measure.US: c.us, measure.SI: c.si} {
			if want == "" {
				want = c.text
			}
			if got := measure.Restate(c.text, s); got != want {
				t.Errorf("%q in system %d: %q, want %q", c.text, s, got, want)
			}
		}
	}
}

func TestRestateError(t *testing.T) {
	bad := measure.Range{Kind: measure.Length, Lo: 1.5, Hi: 3}.Check("Length", 18.288)
	us := measure.RestateError(fmt.Errorf("start: %w", bad), measure.US)
	if us.Error() != "start: Length: 60 ft is out of range; want at least 4 ft 11-1/16 in, at most 9 ft 10-1/8 in" || !errors.Is(us, measure.ErrRange) {
		t.Errorf("%v", us)
	}
	if si := measure.RestateError(us, measure.SI); si.Error() != "start: "+bad.Error() {
		t.Errorf("back in SI: %v", si)
	}
	if plain := errors.New("no number"); measure.RestateError(plain, measure.US) != plain || measure.RestateError(nil, measure.SI) != nil {
		t.Error("an error without a quantity changes")
	}
}

// An error is told from its numbers: what no text could be turned back from, seconds and
// radians, with as few digits as tell the value from the end that it passes.
func TestRestateErrorNumbers(t *testing.T) {
	in := func(k measure.Kind, lo, hi, x float64) error {
		return measure.Range{Kind: k, Lo: lo, Hi: hi}.Check("x", x)
	}
	for _, c := range []struct {
		err    error
		us, si string
	}{
		{in(measure.Time, 0, 864000, 867600), "10.04 days is out of range; want at least 0 s, at most 10.00 days", ""},
		{in(measure.Time, 0, 10, 5*3600), "5.0 h is out of range; want at least 0 s, at most 10 s", ""},
		{in(measure.Time, 120, 7200, 90), "1.5 min is out of range; want at least 2 min, at most 2.0 h", ""},
		{in(measure.Angle, 0, 1, 1.2180771913254114), "69.8 deg is out of range; want at least 0.0 deg, at most 57.3 deg", ""},
		{in(measure.Ratio, 0, 0.2, 0.24410921181396525), "0.244109 is out of range; want at least 0, at most 0.2", ""},
		{in(measure.Speed, 0, 100, 120.67573866482772), "270 mph is out of range; want at least 0.0 mph, at most 224 mph", "120.676 m/s is out of range; want at least 0 m/s, at most 100 m/s"},
		{in(measure.Length, 1e-6, 1e5, -4.5625*measure.Inch), "-4-9/16 in is out of range; want more than 0 in, at most 62.1371 mi", "-0.115888 m is out of range; want at least 1e-06 m, at most 100000 m"},
		{in(measure.Force, 0, 20000*measure.PoundForce, 444822.16152605), "100000 lbf is out of range; want at least 0.0 lbf, at most 20000 lbf", "444822 N is out of range; want at least 0 N, at most 88964.4 N"},
		{in(measure.Mass, 0, 1e9, -5*measure.Pound), "-5.0 lb is out of range; want at least 0.0 lb, at most 2.20462e+09 lb", "-2.26796 kg is out of range; want at least 0 kg, at most 1e+09 kg"},
		{in(measure.Length, 0, 1, 1.0000001), "just over 3 ft 3-3/8 in is out of range; want at least 0 in, at most 3 ft 3-3/8 in", "1.0000001 m is out of range; want at least 0 m, at most 1 m"},
		{in(measure.Count, 1, 3600, 2.5e-7), "2.5e-07 is out of range; want at least 1, at most 3600", ""},
		{in(measure.Temperature, -80, 60, math.NaN()), "no number (°F) is out of range; want at least -112.0 °F, at most 140.0 °F", "no number (°C) is out of range; want at least -80 °C, at most 60 °C"},
	} {
		if c.si == "" {
			c.si = c.us
		}
		both := errors.Join(errors.New("first"), fmt.Errorf("y: %w", c.err))
		for s, want := range map[measure.System]string{measure.US: c.us, measure.SI: c.si} {
			if got := measure.RestateError(both, s); got.Error() != "first\ny: x: "+want || !errors.Is(got, measure.ErrRange) {
				t.Errorf("%v in system %d: %q, want %q", c.err, s, got, want)
			}
		}
	}
}

// Nothing of the other system is left, and a second time changes nothing.
func FuzzRestate(f *testing.F) {
	f.Add("200 mm (8 in) and 3 m")
	f.Add("-4.5 kN, 12 ft 6-1/2 in of 3 lb")
	f.Add("1 ft (2 m) (3 ft)")
	f.Fuzz(func(t *testing.T, text string) {
		for _, s := range []measure.System{measure.US, measure.SI} {
			once := measure.Restate(text, s)
			if twice := measure.Restate(once, s); strings.Count(text, "(") == 0 && twice != once {
				t.Errorf("%q: %q, then %q", text, once, twice)
			}
		}
	})
}

func BenchmarkRestate(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		measure.Restate("under 0.958 kPa over the half of the deck toward +y: platform: capsizes past a heel of 60.3 deg; 347 N·m of righting moment lacking", measure.US)
	}
}

func ExampleRestate() {
	fmt.Println(measure.Restate("thickness required: 200 mm (8 in), within 29 m of it", measure.US))
	fmt.Println(measure.Restate("under 400 lb placed 2 ft from it", measure.SI))
	// Output:
	// thickness required: 8 in, within 95 ft of it
	// under 181 kg placed 610 mm from it
}

// TestTimesInErrors: a time of an hour and more is told in hours or days; one that is just
// past a bound does not read as the bound. 867600 s are 10 days and an hour.
func TestTimesInErrors(t *testing.T) {
	ten := measure.Range{Kind: measure.Time, Lo: 60, Hi: 10 * measure.Day}
	for _, c := range []struct {
		x    float64
		want string
	}{
		{867600, "age: 10.0417 days is out of range; want at least 60 s, at most 10 days"},
		{10*measure.Day + 1e-3, "age: just over 10 days is out of range; want at least 60 s, at most 10 days"},
		{30, "age: 30 s is out of range; want at least 60 s, at most 10 days"},
		{-5 * 3600, "age: -5 h is out of range; want at least 60 s, at most 10 days"},
		{math.Inf(1), "age: +Inf s is out of range; want at least 60 s, at most 10 days"},
	} {
		if err := ten.Check("age", c.x); err == nil || err.Error() != c.want {
			t.Errorf("%v\nwant %s", err, c.want)
		}
	}
}
