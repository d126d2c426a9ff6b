package measure_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

// Whatever a check holds, its verdict is that of its numbers, a ratio is above 1 only
// where it is short, it prints, and it goes out as JSON that reads back.
func FuzzVerdict(f *testing.F) {
	f.Add(3.0, 4.0, true, int(measure.Length), "deck", "a rule", 1.15, true, 0)
	f.Add(0.3, 0.3, false, int(measure.Ratio), "", "", -1.0, false, 1)
	f.Add(math.NaN(), math.Inf(1), true, 999, "\x00\xff", "\"", math.NaN(), true, -7)
	f.Fuzz(func(t *testing.T, value, limit float64, atLeast bool, kind int, name, title string, factor float64, hazard bool, system int) {
		src := &measure.Source{Title: title, Status: measure.Read}
		c := measure.Check{
			Name: name, Kind: measure.Kind(kind), Value: value, Limit: limit, AtLeast: atLeast, Rule: src, Hazard: hazard,
			Factors: []measure.Factor{{Symbol: "C", Name: name, Value: factor, Source: src}},
			Rests:   []measure.Assumption{{Name: name, Text: title, Known: measure.Assumed}},
		}
		v := c.Verdict()
		if r := c.Ratio(); !math.IsNaN(r) && v != measure.NoAnswer && (r > 1) != (v == measure.Short) {
			t.Fatalf("%+v is %v at %g of its limit", c, v, r)
		}
		if text := c.Numbers(measure.System(system)); text == "" || strings.Contains(text, "NaN") {
			t.Fatalf("%+v prints as %q", c, text)
		}
		line := c.Format(measure.System(system))
		if !strings.HasPrefix(line, name+": "+c.Numbers(measure.System(system))+": "+c.Words()) || c.Format(measure.SI) != c.String() {
			t.Fatalf("%+v is the line %q", c, line)
		}
		if c.Kind.Unit() == "" {
			t.Fatalf("%v has no unit", c.Kind)
		}
		for _, x := range []json.Marshaler{c, c.Factors[0], c.Rests[0], *src, measure.Number(value)} {
			b, err := x.MarshalJSON()
			var back any
			if err != nil || json.Unmarshal(b, &back) != nil {
				t.Fatalf("%+v goes out as %q, %v", x, b, err)
			}
		}
		why := errors.New(title)
		if no := measure.Refuse(name, why); no.Verdict() != measure.NoAnswer || !errors.Is(no.Err, why) {
			t.Fatalf("refused: %+v", no)
		}
	})
}

// A range takes what its check lets pass, and no other; its error keeps its class in
// either system.
func FuzzRange(f *testing.F) {
	f.Add(0.0, 5.0, 3.0, true, false, 0)
	f.Add(math.Inf(-1), math.Inf(1), math.NaN(), false, false, 1)
	f.Add(5.0, 5e-324, -1e300, true, true, 7)
	f.Fuzz(func(t *testing.T, lo, hi, x float64, openLo, openHi bool, system int) {
		r := measure.Range{Kind: measure.Length, Lo: lo, Hi: hi, OpenLo: openLo, OpenHi: openHi}
		err := r.Check("length", x)
		if in := r.Has(x); in != (err == nil) || in && !(x >= lo && x <= hi) || in && (math.IsNaN(x) || math.IsInf(x, 0)) {
			t.Fatalf("%+v has %g: %v, %v", r, x, in, err)
		}
		again := measure.RestateError(err, measure.System(system))
		if (again == nil) != (err == nil) || err != nil && (!errors.Is(again, measure.ErrRange) || again.Error() == "") {
			t.Fatalf("%v restated is %v", err, again)
		}
	})
}

// A length prints in feet and inches that read back to half of the finest mark, rounded up
// never to less, and a temperature comes back from the other scale.
func FuzzPrinted(f *testing.F) {
	f.Add(3.81, 16, 72.5)
	f.Add(0.0009, 64, -40.0)
	f.Add(math.NaN(), -3, math.Inf(1))
	f.Add(-1e300, 7, 1e300)
	f.Fuzz(func(t *testing.T, x float64, per int, degrees float64) {
		text := measure.FeetInches(x, per)
		if text == "" || strings.Contains(text, "NaN") {
			t.Fatalf("%g prints as %q", x, text)
		}
		if math.Abs(x) < 1e4 {
			finest := 16.0
			if per >= 1 && per <= 64 && per&(per-1) == 0 {
				finest = float64(per)
			}
			if y, err := measure.Length.Parse(text); err != nil || math.Abs(x-y) > measure.Inch/finest/2*(1+1e-9)+1e-12*math.Abs(x) {
				t.Fatalf("%g prints as %q and reads as %g, %v", x, text, y, err)
			}
		}
		for _, s := range []measure.System{measure.US, measure.SI} {
			up := measure.Upward(x, s)
			if x > 1e-3 && x < 100 {
				if y, err := measure.Length.Parse(up); err != nil || y < x*(1-1.1e-6)-1e-12 || y > x+0.02+0.01*x {
					t.Fatalf("%g rounded up is %q, %g, %v", x, up, y, err)
				}
			}
		}
		if math.Abs(degrees) < 1e9 {
			if back := measure.ToFahrenheit(measure.Fahrenheit(degrees)); math.Abs(back-degrees) > 1e-12*(math.Abs(degrees)+100) {
				t.Fatalf("%g °F comes back as %g", degrees, back)
			}
		}
	})
}
