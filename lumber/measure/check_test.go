package measure_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

var rule = &measure.Source{Title: "A rule", Edition: "2020", Locator: "Table 1", Status: measure.Read}

func TestVerdict(t *testing.T) {
	unknown := []measure.Assumption{{Name: "water", Known: measure.Unknown, Decides: true}}
	harmless := []measure.Assumption{{Name: "water", Known: measure.Unknown}}
	assumed := []measure.Assumption{{Name: "water", Known: measure.Assumed, Decides: true}}
	for _, c := range []struct {
		name  string
		check measure.Check
		want  measure.Verdict
	}{
		{"zero value", measure.Check{}, measure.NoAnswer},
		{"at most, under", measure.Check{Value: 1, Limit: 2, Rule: rule}, measure.Holds},
		{"at most, equal", measure.Check{Value: 2, Limit: 2, Rule: rule}, measure.Holds},
		{"at most, over", measure.Check{Value: 3, Limit: 2, Rule: rule}, measure.Short},
		{"at least, over", measure.Check{Value: 3, Limit: 2, AtLeast: true, Rule: rule}, measure.Holds},
		{"at least, equal", measure.Check{Value: 2, Limit: 2, AtLeast: true, Rule: rule}, measure.Holds},
		{"at least, under", measure.Check{Value: 1, Limit: 2, AtLeast: true, Rule: rule}, measure.Short},
		// A ratio would let an edge 5 cm under water "hold" against dry.
		{"edge under water against dry", measure.Check{Value: -0.05, Limit: 0, AtLeast: true, Rule: rule}, measure.Short},
		{"edge under water against 10 cm", measure.Check{Value: -0.05, Limit: 0.10, AtLeast: true, Rule: rule}, measure.Short},
		{"both negative", measure.Check{Value: -2, Limit: -1, AtLeast: true, Rule: rule}, measure.Short},
		{"no rule", measure.Check{Value: 1, Limit: 2}, measure.NoAnswer},
		{"value NaN", measure.Check{Value: math.NaN(), Limit: 2, Rule: rule}, measure.NoAnswer},
		{"limit NaN", measure.Check{Value: 1, Limit: math.NaN(), Rule: rule}, measure.NoAnswer},
		{"limit infinite", measure.Check{Value: 1, Limit: math.Inf(1), Rule: rule}, measure.NoAnswer},
		{"value infinite", measure.Check{Value: math.Inf(1), Limit: 1, AtLeast: true, Rule: rule}, measure.NoAnswer},
		{"error", measure.Check{Value: 1, Limit: 2, Rule: rule, Err: measure.ErrUnknown}, measure.NoAnswer},
		{"unknown that decides", measure.Check{Value: 1, Limit: 2, Rule: rule, Rests: unknown}, measure.NoAnswer},
		{"unknown that does not", measure.Check{Value: 1, Limit: 2, Rule: rule, Rests: harmless}, measure.Holds},
		{"assumed that decides", measure.Check{Value: 1, Limit: 2, Rule: rule, Rests: assumed}, measure.Holds},
		{"refused", measure.Refuse("x", measure.ErrNotComputed), measure.NoAnswer},
	} {
		if got := c.check.Verdict(); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// A verdict is never better than its weakest input: whatever an input loses
// (a rule, a number, knowledge), nothing but Holds ever turns, and an unknown
// that decides never leaves a Holds.
func TestVerdictNeverBetterThanWeakestInput(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	number := func() float64 {
		special := []float64{0, 1, -1, math.NaN(), math.Inf(1), math.Inf(-1), 5e-324}
		if rng.IntN(3) == 0 {
			return special[rng.IntN(len(special))]
		}
		return rng.NormFloat64()
	}
	for range 20000 {
		c := measure.Check{Value: number(), Limit: number(), AtLeast: rng.IntN(2) == 0, Hazard: rng.IntN(2) == 0}
		if rng.IntN(8) > 0 {
			c.Rule = rule
		}
		if rng.IntN(8) == 0 {
			c.Err = measure.ErrUnknown
		}
		for range rng.IntN(4) {
			c.Rests = append(c.Rests, measure.Assumption{Known: measure.Knowledge(rng.IntN(4)), Decides: rng.IntN(2) == 0})
		}
		before := c.Verdict()
		if before == measure.Holds {
			for _, a := range c.Rests {
				if a.Decides && a.Known != measure.Measured && a.Known != measure.Assumed {
					t.Fatalf("holds on an unknown that decides: %+v", c)
				}
			}
			if c.Rule == nil || c.Err != nil || !c.Meets() || math.IsNaN(c.Value+c.Limit) {
				t.Fatalf("holds without ground: %+v", c)
			}
		}
		worse := c
		worse.Rests = append([]measure.Assumption(nil), c.Rests...)
		switch rng.IntN(5) {
		case 0:
			worse.Rule = nil
		case 1:
			worse.Err = measure.ErrNotComputed
		case 2:
			worse.Value = math.NaN()
		case 3:
			worse.Rests = append(worse.Rests, measure.Assumption{Known: measure.Unknown, Decides: true})
		case 4:
			for i := range worse.Rests {
				worse.Rests[i].Known, worse.Rests[i].Decides = measure.Unknown, true
			}
		}
		if after := worse.Verdict(); after == measure.Holds && before != measure.Holds {
			t.Fatalf("%v became %v as an input got worse: %+v", before, after, worse)
		}
		if before != measure.Holds && strings.Contains(c.Words(), "not ruled out") {
			t.Fatalf("words %q for %v", c.Words(), before)
		}
	}
}

// A worse value, in the direction the check names, never improves the verdict.
func FuzzVerdictMonotone(f *testing.F) {
	f.Add(1.0, 2.0, 0.5, true)
	f.Add(-0.05, 0.0, 0.01, true)
	f.Fuzz(func(t *testing.T, value, limit, step float64, atLeast bool) {
		if !(step >= 0) {
			return
		}
		c := measure.Check{Value: value, Limit: limit, AtLeast: atLeast, Rule: rule}
		worse := c
		if atLeast {
			worse.Value -= step
		} else {
			worse.Value += step
		}
		if worse.Verdict() == measure.Holds && c.Verdict() == measure.Short {
			t.Errorf("%v holds though %v is short", worse, c)
		}
	})
}

func TestRatio(t *testing.T) {
	if got := (measure.Check{Value: 1, Limit: 2}).Ratio(); got != 0.5 {
		t.Errorf("ratio %g, want 0.5", got)
	}
	if got := (measure.Check{Value: 1, Limit: 2, AtLeast: true}).Ratio(); got != 2 {
		t.Errorf("ratio %g, want 2", got)
	}
	for _, c := range []measure.Check{{}, {Value: -1, Limit: 2}, {Value: 1, Limit: -2, AtLeast: true}, {Value: math.NaN(), Limit: 1}} {
		if got := c.Ratio(); !math.IsNaN(got) {
			t.Errorf("ratio of %g to %g is %g, want NaN", c.Value, c.Limit, got)
		}
	}
}

// A value that misses its limit never prints like it, on either side; one that meets
// it has no more digits than it needs.
func TestNumbersApart(t *testing.T) {
	deg := math.Pi / 180
	for _, c := range []struct {
		kind         measure.Kind
		value, limit float64
		atLeast      bool
		us, si       string
	}{
		{measure.Angle, 5.03 * deg, 5 * deg, false, "5.03 deg, at most 5.00 deg", "5.03 deg, at most 5.00 deg"},
		{measure.Angle, 5.0004 * deg, 5 * deg, false, "5.0004 deg, at most 5.0000 deg", "5.0004 deg, at most 5.0000 deg"},
		{measure.Angle, 5 * deg * (1 + 1e-9), 5 * deg, false, "just over 5.0 deg, at most 5.0 deg", "just over 5.0 deg, at most 5.0 deg"},
		{measure.Angle, 5 * deg * (1 - 1e-9), 5 * deg, true, "just under 5.0 deg, at least 5.0 deg", "just under 5.0 deg, at least 5.0 deg"},
		{measure.Angle, 4.97 * deg, 5 * deg, false, "5.0 deg, at most 5.0 deg", "5.0 deg, at most 5.0 deg"},
		{measure.Angle, 5 * deg, 5 * deg, false, "5.0 deg, at most 5.0 deg", "5.0 deg, at most 5.0 deg"},
		{measure.Angle, 5.1 * deg, 5 * deg, false, "5.1 deg, at most 5.0 deg", "5.1 deg, at most 5.0 deg"},
		{measure.Length, 7*measure.Inch - 0.00025, 7 * measure.Inch, true, "6-63/64 in, at least 7 in", "177.6 mm, at least 177.8 mm"},
		{measure.Length, 7*measure.Inch - 0.00001, 7 * measure.Inch, true, "6.9996 in, at least 7.0000 in", "177.79 mm, at least 177.80 mm"},
		{measure.Length, 2.0001, 2, false, "6 ft 6-3/4 in, at most 6 ft 6-47/64 in", "2.0001 m, at most 2.0000 m"},
		{measure.Force, 500.04 * measure.PoundForce, 500 * measure.PoundForce, false, "500.04 lbf, at most 500.00 lbf", "2224.3 N, at most 2224.1 N"},
		{measure.Temperature, 0.02, 0, false, "32.04 °F, at most 32.00 °F", "0.02 °C, at most 0.00 °C"},
		{measure.Time, 7*measure.Day - 600, 7 * measure.Day, true, "6.99 days, at least 7.00 days", "6.99 days, at least 7.00 days"},
		{measure.Ratio, 1.0002, 1, false, "1.0002, at most 1.0000", "1.0002, at most 1.0000"},
	} {
		check := measure.Check{Kind: c.kind, Value: c.value, Limit: c.limit, AtLeast: c.atLeast}
		if us, si := check.Numbers(measure.US), check.Numbers(measure.SI); us != c.us || si != c.si {
			t.Errorf("%v %g, %g: %q and %q, want %q and %q", c.kind, c.value, c.limit, us, si, c.us, c.si)
		}
	}
	rng := rand.New(rand.NewPCG(5, 6))
	for range 2000 {
		limit := math.Exp(20*rng.Float64() - 10)
		check := measure.Check{Kind: measure.Kind(rng.IntN(int(measure.Count) + 1)), Limit: limit, Value: limit * (1 + math.Exp(-40*rng.Float64())), AtLeast: rng.IntN(2) == 0}
		for _, s := range []measure.System{measure.US, measure.SI} {
			text := check.Numbers(s)
			value, rest, _ := strings.Cut(text, ", at ")
			_, bound, _ := strings.Cut(rest, " ")
			if !check.Meets() && value == bound {
				t.Errorf("%v: %q does not meet and prints alike", check.Kind, text)
			}
		}
	}
}

// Steps of a scale are printed by their names, whatever the system.
func TestNumbersNamed(t *testing.T) {
	three := []string{"dry", "damp", "wet"}
	for _, c := range []struct {
		value, limit float64
		atLeast      bool
		steps        []string
		want         string
	}{
		{0, 1, true, []string{"no", "yes"}, "no; must be yes"},
		{1, 1, true, []string{"no", "yes"}, "yes; must be yes"},
		{1, 2, true, three, "1 (damp), at least 2 (wet)"},
		{2, 0, false, three, "2 (wet), at most 0 (dry)"},
		{3, 2, false, three, "3, at most 2 (wet)"},
		{-1, 2, true, three, "-1, at least 2 (wet)"},
		{0, 0, false, []string{"nothing to ask"}, "nothing to ask"},
		{math.NaN(), 1, true, three, "no value, at least 1 (damp)"},
		{1, math.Inf(1), false, three, "1 (damp)"},
	} {
		check := measure.Check{Kind: measure.Count, Value: c.value, Limit: c.limit, AtLeast: c.atLeast, Steps: c.steps}
		if got := check.Numbers(measure.US); got != c.want || got != check.Numbers(measure.SI) {
			t.Errorf("%+v: %q, want %q", c, got, c.want)
		}
	}
}

func TestCheckWords(t *testing.T) {
	c := measure.Check{Name: "Freeboard", Kind: measure.Length, Value: 0.28, Limit: 0.1778, AtLeast: true, Rule: rule}
	for _, w := range []struct {
		name      string
		got, want string
	}{
		{"holds", c.String(), "Freeboard: 280 mm, at least 178 mm: holds (A rule, 2020, Table 1)"},
		{"numbers", c.Numbers(measure.US), "11 in, at least 7 in"},
		{"no value", measure.Refuse("Ice", measure.ErrNotComputed).String(), "Ice: no value: no answer (not computed yet)"},
		{"no limit", measure.Check{Name: "Draft", Kind: measure.Length, Value: 0.2, Limit: math.NaN()}.Numbers(measure.SI), "200 mm"},
		{"value unknown, limit known", measure.Check{Kind: measure.Length, Value: math.NaN(), Limit: 0.1, AtLeast: true}.Numbers(measure.SI), "no value, at least 100 mm"},
	} {
		if w.got != w.want {
			t.Errorf("%s: %q, want %q", w.name, w.got, w.want)
		}
	}
	ice := c
	ice.Hazard = true
	if got, want := ice.Words(), "not ruled out by A rule, 2020, Table 1"; got != want {
		t.Errorf("hazard: %q, want %q", got, want)
	}
	if s := ice.String(); strings.Contains(s, "holds") {
		t.Errorf("hazard prints %q", s)
	}
	ice.Value = 0.1
	if got := ice.Words(); got != "short" {
		t.Errorf("hazard short: %q", got)
	}
	for k, want := range map[measure.Knowledge]string{measure.Unknown: "unknown", measure.Assumed: "assumed", measure.Measured: "measured", 9: "unknown"} {
		if k.String() != want {
			t.Errorf("knowledge %d prints %q", k, k)
		}
	}
	if measure.Verdict(9).String() != "no answer" {
		t.Error("an unknown verdict must be no answer")
	}
}

func TestRange(t *testing.T) {
	src := &measure.Source{Title: "A guide", Status: measure.Memory}
	r := measure.Range{Kind: measure.Length, Lo: 0, OpenLo: true, Hi: 3, Source: src}
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 3.0001} {
		err := r.Check("diameter", x)
		if !errors.Is(err, measure.ErrRange) {
			t.Errorf("%g: %v, want ErrRange", x, err)
			continue
		}
		for _, part := range []string{"diameter", "more than 0 m, at most 3 m", "A guide", "from memory"} {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%q does not say %q", err, part)
			}
		}
	}
	for _, x := range []float64{5e-324, 1, 3} {
		if err := r.Check("diameter", x); err != nil {
			t.Errorf("%g: %v", x, err)
		}
	}
	for _, c := range []struct {
		r    measure.Range
		x    float64
		has  bool
		text string
	}{
		{measure.Range{Lo: 0, Hi: 1, OpenHi: true}, 1, false, "at least 0, less than 1"},
		{measure.Range{Lo: 0, Hi: 1}, 0, true, "at least 0, at most 1"},
		{measure.Range{Lo: math.Inf(-1), Hi: math.Inf(1)}, -7, true, "a finite number"},
		{measure.Range{Lo: math.Inf(-1), Hi: math.Inf(1)}, math.Inf(1), false, "a finite number"},
		{measure.Range{Lo: 1, Hi: math.Inf(1)}, 1e300, true, "at least 1"},
	} {
		if c.r.Has(c.x) != c.has || c.r.String() != c.text {
			t.Errorf("%v has %g: %v, want %q %v", c.r, c.x, c.r.Has(c.x), c.text, c.has)
		}
	}
}

func TestErrorText(t *testing.T) {
	for _, c := range []struct {
		err  measure.Error
		want string
	}{
		{measure.Error{Field: "species", Text: "sothern pin", Want: "Southern Pine or Hem-Fir", Class: measure.ErrName}, `species: "sothern pin" unknown name; want Southern Pine or Hem-Fir`},
		{measure.Error{Field: "mass", Kind: measure.Mass, Value: -2, Range: measure.Range{Kind: measure.Mass, Hi: 10}, Class: measure.ErrRange}, "mass: -2 kg is out of range; want at least 0 kg, at most 10 kg"},
		{measure.Error{Field: "girth", Class: measure.ErrUnknown, Want: "a tape around the drum"}, "girth: not known; want a tape around the drum"},
		{measure.Error{Field: "lines", Class: measure.ErrNotComputed}, "lines: not computed yet"},
		{measure.Error{Field: "x"}, "x"},
		{measure.Error{Why: "it is missing", Want: "a length"}, "it is missing; want a length"},
	} {
		if got := c.err.Error(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
		if c.err.Class != nil && !errors.Is(&c.err, c.err.Class) {
			t.Errorf("%v is not of its class", &c.err)
		}
	}
}

func TestSourceText(t *testing.T) {
	for _, c := range []struct {
		s    *measure.Source
		want string
	}{
		{nil, "no source"},
		{rule, "A rule, 2020, Table 1"},
		{&measure.Source{Title: "A guide", Status: measure.Quoted}, "A guide (as quoted)"},
		{&measure.Source{Title: "A guide"}, "A guide (status not stated)"},
		{&measure.Source{Title: "common practice, no source", Status: measure.CommonPractice}, "common practice, no source"},
		{&measure.Source{Title: "x", Status: measure.Status(99)}, "x (status not stated)"},
	} {
		if got := c.s.String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	f := measure.Factor{Symbol: "CM", Name: "wet service", Value: 0.85, Why: "soaked", Source: rule}
	if got := f.String(); got != "CM 0.85 wet service: soaked" {
		t.Errorf("%q", got)
	}
}

// TestCheckFormat: one line in either system; String is the one in SI, and an error is told
// in the reader's units.
func TestCheckFormat(t *testing.T) {
	rule := &measure.Source{Title: "a rule", Status: measure.CommonPractice}
	holds := measure.Check{Name: "freeboard", Kind: measure.Length, Value: 12 * measure.Inch, Limit: 8 * measure.Inch, AtLeast: true, Rule: rule}
	ice := holds
	ice.Hazard = true
	r := measure.Range{Kind: measure.Length, Lo: measure.Foot, Hi: 2 * measure.Foot}
	for _, c := range []struct {
		check  measure.Check
		us, si string
	}{
		{holds, "freeboard: 1 ft, at least 8 in: holds (a rule (common practice, no source))", "freeboard: 305 mm, at least 203 mm: holds (a rule (common practice, no source))"},
		{ice, "freeboard: 1 ft, at least 8 in: not ruled out by a rule (common practice, no source)", "freeboard: 305 mm, at least 204 mm: not ruled out by a rule (common practice, no source)"},
		{
			measure.Refuse("span", r.Check("span", 1)),
			"span: no value: no answer (span: 3 ft 3-3/8 in is out of range; want at least 1 ft, at most 2 ft)", "span: no value: no answer (span: 1 m is out of range; want at least 0.3048 m, at most 0.6096 m)",
		},
	} {
		if got := c.check.Format(measure.US); got != c.us {
			t.Errorf("in US units %q, not %q", got, c.us)
		}
		if got := c.check.Format(measure.SI); got != c.si || got != c.check.String() {
			t.Errorf("in SI %q, not %q; String %q", got, c.si, c.check)
		}
	}
}
