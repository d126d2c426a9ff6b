package measure_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/floewright/lumber/measure"
)

// A check goes out with its verdict, with null where there is no number, and with lists
// that are never null.
func TestCheckAsJSON(t *testing.T) {
	rule := &measure.Source{Title: "A rule <&>", Edition: "2020", Locator: "Table 1", Status: measure.Read}
	for _, c := range []struct {
		check measure.Check
		want  string
	}{
		{
			measure.Check{
				Name: "span", Kind: measure.Length, Value: 0.123456789, Limit: 1.5e-12, AtLeast: true, Rule: rule, Steps: []string{"a"}, Notes: []string{"b"},
				Factors: []measure.Factor{{Symbol: "CM", Name: "wet", Value: 0.85, Why: "soaked", Source: rule}, {Value: math.NaN()}},
				Rests:   []measure.Assumption{{Name: "frame.moisture", Text: "60 %", Known: measure.Assumed, Decides: true}},
			},
			`{"name":"span","kind":"length","unit":"m","value":0.123457,"limit":0,"steps":["a"],"side":"at least","verdict":"holds",` +
				`"rule":{"title":"A rule <&>","edition":"2020","locator":"Table 1","status":"read"},` +
				`"factors":[{"symbol":"CM","name":"wet","value":0.85,"why":"soaked","source":{"title":"A rule <&>","edition":"2020","locator":"Table 1","status":"read"}},` +
				`{"symbol":"","name":"","value":null,"why":"","source":null}],` +
				`"rests":[{"path":"frame.moisture","text":"60 %","known":"assumed","decides":true}],"notes":["b"],"error":null}`,
		},
		{
			measure.Refuse("ice", &measure.Error{Field: "ice.holes", Class: measure.ErrUnknown, Want: "a hole"}),
			`{"name":"ice","kind":"ratio","unit":"1","value":null,"limit":null,"steps":[],"side":"at most","verdict":"no answer",` +
				`"rule":null,"factors":[],"rests":[],"notes":[],"error":{"class":"unknown","text":"ice.holes: not known; want a hole"}}`,
		},
		{
			measure.Check{Name: "ice", Kind: measure.Mass, Value: 1, Limit: 2, Rule: &measure.Source{}, Hazard: true},
			`{"name":"ice","kind":"mass","unit":"kg","value":1,"limit":2,"steps":[],"side":"at most","verdict":"not ruled out",` +
				`"rule":{"title":"","edition":"","locator":"","status":"` + measure.Unstated.String() + `"},"factors":[],"rests":[],"notes":[],"error":null}`,
		},
		{
			measure.Check{Name: "ice", Value: 3, Limit: 2, Rule: rule, Hazard: true},
			`{"name":"ice","kind":"ratio","unit":"1","value":3,"limit":2,"steps":[],"side":"at most","verdict":"short",` +
				`"rule":{"title":"A rule <&>","edition":"2020","locator":"Table 1","status":"read"},"factors":[],"rests":[],"notes":[],"error":null}`,
		},
	} {
		got, err := json.Marshal(c.check)
		if err != nil {
			t.Fatal(err)
		}
		var a, b any
		if err := json.Unmarshal(got, &a); err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal([]byte(c.want), &b); err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(b, a); d != "" {
			t.Errorf("%s (-want +got):\n%s", got, d)
		}
	}
}

func TestClass(t *testing.T) {
	for want, err := range map[string]error{
		"": nil, "other": errors.New("disk full"), "syntax": measure.ErrSyntax, "name": measure.ErrName, "range": fmt.Errorf("far: %w", measure.ErrRange),
		"unknown": &measure.Error{Class: measure.ErrUnknown}, "not computed": measure.ErrNotComputed,
	} {
		if got := measure.Class(err); got != want {
			t.Errorf("%v is of class %q, want %q", err, got, want)
		}
	}
}

// The coherent units of the SI (SI Brochure, 9th edition, tables 2 to 5, from memory), and
// what the trade counts degrees and their days in.
func TestUnit(t *testing.T) {
	for kind, want := range map[measure.Kind]string{
		measure.Ratio: "1", measure.Length: "m", measure.Area: "m²", measure.Volume: "m³", measure.Mass: "kg", measure.Force: "N", measure.Pressure: "Pa",
		measure.Stress: "Pa", measure.LineLoad: "N/m", measure.Moment: "N·m", measure.Density: "kg/m³", measure.Speed: "m/s", measure.Temperature: "°C",
		measure.TemperatureDifference: "C deg", measure.DegreeDays: "C-days", measure.Angle: "rad", measure.Time: "s", measure.Percent: "1", measure.Count: "1",
		-1: "1", 999: "1",
	} {
		if got := kind.Unit(); got != want {
			t.Errorf("%v is kept in %q, want %q", kind, got, want)
		}
	}
}

// FuzzNumber: what goes out is null or a number to six digits, whatever it was.
func FuzzNumber(f *testing.F) {
	for _, x := range []float64{0, 1, -0.123456789, 999999.5, 1e-9, 9.9e-10, 123456.5, 1e300, 5e-324, math.MaxFloat64, math.Inf(1), math.NaN(), 1e22, 0.0001} {
		f.Add(x)
	}
	f.Fuzz(func(t *testing.T, x float64) {
		text, err := json.Marshal(measure.Number(x))
		if err != nil {
			t.Fatal(err)
		}
		if math.IsNaN(x) || math.IsInf(x, 0) {
			if string(text) != "null" {
				t.Errorf("%g goes out as %s", x, text)
			}
			return
		}
		got, err := strconv.ParseFloat(string(text), 64)
		if err != nil || math.Abs(got-x) > 5.0000001e-6*math.Abs(x) && math.Abs(x) >= 1e-9 || got != 0 && math.Abs(x) < 1e-9 {
			t.Errorf("%g goes out as %s, %v", x, text, err)
		}
	})
}
