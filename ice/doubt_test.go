package ice_test

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// TestLiesDeeper: ice whose water stands nearer to its top than so much clear ice under
// its snow floats, by more than a level is read wrong, has no answer; a load that stands
// there is let its own bowl.
func TestLiesDeeper(t *testing.T) {
	one := ice.Crossing{Mass: 90, People: 1}
	at := func(h, water, snow float64) ice.Sheet {
		s := drilled(h)
		for i := range s.Holes {
			s.Holes[i].Water, s.Holes[i].Snow = water, snow
		}
		return s
	}
	for _, c := range []struct {
		h, water, snow float64
		holds          bool
	}{
		{1, 0.0625, 0, false}, // 83 mm of free ice less 20
		{1, 0.0635, 0, true},
		{1, 0.0235, 0.1, true}, // and less 40 under 10 cm of 400 kg/m³
		{1, 0.0225, 0.1, false},
		{0.24, 0.001, 0, true}, // thin ice says nothing by its level
		{1.524, 0.003175, 0, false},
		{0.508, 0.003175, 0, false},
	} {
		k, err := at(c.h, c.water, c.snow).Crossing(one)
		if err != nil || (k.Verdict() == measure.Holds) != c.holds {
			t.Errorf("%+v: %v, %v", c, k, err)
		}
		if !c.holds && (k.Verdict() != measure.NoAnswer || !strings.Contains(k.Err.Error(), "lies deeper than it floats")) {
			t.Errorf("%+v: %v", c, k)
		}
	}
	// One misread hole among six, and one at the dock, which lies in its bowl.
	s := drilled(1)
	s.Holes[5].Water = 0.01
	if k, _ := s.Crossing(one); k.Verdict() != measure.NoAnswer || !strings.Contains(k.Err.Error(), "at walk the water") {
		t.Errorf("%v", k)
	}
	s = drilled(1)
	s.Holes = append(s.Holes, ice.Hole{Name: "gauge", X: 1, Clear: 1, Water: 0.01, Looked: true})
	if k, _ := s.Crossing(one); k.Verdict() != measure.Holds {
		t.Errorf("%v", k)
	}
	load := watched(frame(3000), 10, 0.05, 0.0001)
	_, sag, err := drilled(1).Sag(load, load.Since)
	if err != nil || !(sag > 0.003) {
		t.Fatalf("a bowl of %g m, %v", sag, err)
	}
	for deep, holds := range map[float64]bool{sag - 0.001: true, sag + 0.001: false} {
		s := at(1, 0.083-0.02-deep, 0)
		f, b := flooding(t, s, load), beside(t, s, load, one)
		for _, c := range []measure.Check{f.Check, b} {
			if strings.Contains(strings.Join(c.Notes, "\n"), "lies deeper than it floats") == holds {
				t.Errorf("%g m under the free level in a bowl of %g m: %v", deep+0.02, sag, c)
			}
		}
		if k, _ := s.Crossing(one); k.Verdict() != measure.NoAnswer {
			t.Errorf("a crossing that knows no load: %v", k)
		}
	}
}

// TestGaugeDoubted: water that stands lower at the dock than its ice floats, that falls
// away from under it, or days of the last five without a reading are no answer.
func TestGaugeDoubted(t *testing.T) {
	one := ice.Crossing{Mass: 90, People: 1}
	base := watched(frame(300), 10, 0.07, 0.0001)
	with := func(change func(*ice.Stand)) ice.Stand {
		l := base
		l.Gauge = append(ice.Gauge(nil), base.Gauge...)
		change(&l)
		return l
	}
	all := func(to func(age float64) float64) func(*ice.Stand) {
		return func(l *ice.Stand) {
			for i := range l.Gauge {
				l.Gauge[i].Freeboard = to(l.Gauge[i].Age / measure.Day)
			}
		}
	}
	days := func(keep func(day float64) bool) func(*ice.Stand) {
		return func(l *ice.Stand) {
			var out ice.Gauge
			for _, r := range l.Gauge {
				if keep(r.Age / measure.Day) {
					out = append(out, r)
				}
			}
			l.Gauge = out
		}
	}
	for _, c := range []struct {
		name string
		load ice.Stand
		says string // nothing where it holds
	}{
		{"as it is", base, ""},
		{"12.5 % of the ice and 20 mm", with(all(func(float64) float64 { return 0.1449 })), ""},
		{"more than that", with(all(func(float64) float64 { return 0.1451 })), "does not rest on the water"},
		{"far down", with(all(func(float64) float64 { return 0.76 })), "does not rest on the water"},
		{"rising by 19 mm", with(all(func(d float64) float64 { return 0.07 - 0.0019*d })), ""},
		{"rising by 21 mm", with(all(func(d float64) float64 { return 0.07 - 0.0021*d })), "falls away"},
		{"up and down by 21 mm", with(func(l *ice.Stand) { l.Gauge[4].Freeboard = 0.049 }), "falls away"},
		{"four of the last days left out", with(days(func(d float64) bool { return d < 1 || d > 4 })), "not read daily"},
		{"one left out", with(days(func(d float64) bool { return d != 2 })), "not read daily"},
		{"one left out long ago", with(days(func(d float64) bool { return d != 7 })), ""},
		{"none before the last days", with(days(func(d float64) bool { return d <= 4 })), "not read daily"},
		{"the last days alone", with(days(func(d float64) bool { return d <= 5 })), ""},
		{"set two days ago, read today", with(func(l *ice.Stand) { l.Since, l.Gauge = 2*measure.Day, l.Gauge[:1] }), "not read daily"},
		{"set yesterday, read today", with(func(l *ice.Stand) { l.Since, l.Gauge = measure.Day, l.Gauge[:1] }), ""},
	} {
		f, b := flooding(t, drilled(1), c.load), beside(t, drilled(1), c.load, one)
		for _, k := range []measure.Check{f.Check, b} {
			if c.says == "" && k.Verdict() != measure.Holds {
				t.Errorf("%s: %v", c.name, k)
			}
			if c.says != "" && (k.Verdict() != measure.NoAnswer || !strings.Contains(k.Err.Error(), c.says)) {
				t.Errorf("%s: %v", c.name, k)
			}
		}
		if c.says == "falls away" || c.name == "one left out" {
			if k, err := c.load.Gauge.Check(measure.Day); err != nil || k.Verdict() != measure.NoAnswer || !strings.Contains(k.Err.Error(), c.says) {
				t.Errorf("%s, the gauge alone: %v, %v", c.name, k, err)
			}
		}
	}
}

// TestCounted: the words that go onto a card are those of the checks, by the very days
// at which the verdicts turn.
func TestCounted(t *testing.T) {
	var all []string
	for _, c := range ice.Counted() {
		if c.Text == "" || c.Publisher == "" || c.Status == measure.Unstated {
			t.Errorf("%+v", c)
		}
		all = append(all, c.Text)
	}
	words := strings.Join(all, "\n")
	one := ice.Crossing{Mass: 90, People: 1}
	said := func(c measure.Check) string {
		text := strings.Join(c.Notes, "\n")
		for _, f := range c.Factors {
			text += "\n" + f.Why
		}
		return text
	}
	both := func(name, part string, c measure.Check) {
		t.Helper()
		if !strings.Contains(words, part) || !strings.Contains(said(c), part) {
			t.Errorf("%s: %q is not in both of\n%s\n%s", name, part, words, said(c))
		}
	}
	for day := range 5 {
		s := sound(2)
		s.Air[day].High = 0 // its mean stays below
		c := crossing(t, s, one)
		if tripled := c.Verdict() == measure.Holds && math.Abs(c.Limit-0.45) < 1e-9; tripled != (day < 4) {
			t.Errorf("0 °C on day %d: %v", day+1, c)
		}
		if day < 4 {
			both("thaw", "one of the 4 days before yesterday reached 0 °C, its mean below that", c)
			continue
		}
		both("yesterday", "0 °C and more yesterday or today, or as the mean of one of the last 5 days", c)
	}
	s := sound(2)
	s.Air[4] = ice.Air{High: s.Air[3].High - 10, Low: s.Air[3].Low - 4}
	if c := crossing(t, s, one); c.Verdict() != measure.NoAnswer {
		t.Errorf("10 degrees colder: %v", c)
	} else {
		both("snap", "a high or a low that fell by 10.0 C deg and more from one day to the next, to today, yesterday or the day before", c)
		if us := measure.RestateError(c.Err, measure.US).Error(); !strings.Contains(us, "fell by 18.0 F deg") || strings.Contains(us, "50.0") {
			t.Error(us)
		}
	}
	s = sound(2)
	s.Cracks = ice.OneCrack
	both("cracks", "a dry crack near the load asks for 1.42 times the thickness", crossing(t, s, one))
}

// TestBarred: what no drilling mends.
func TestBarred(t *testing.T) {
	for name, c := range map[string]struct {
		sheet ice.Sheet
		bar   bool
	}{
		"lake":                 {ice.Sheet{Water: ice.Lake}, false},
		"lake in winter":       {ice.Sheet{Water: ice.Lake, Season: ice.Winter}, false},
		"river":                {ice.Sheet{Water: ice.River}, true},
		"not said":             {ice.Sheet{}, true},
		"spring":               {ice.Sheet{Water: ice.Lake, Season: ice.Spring}, true},
		"an inlet":             {ice.Sheet{Water: ice.Lake, Inlets: ice.Found}, true},
		"not looked for inlet": {ice.Sheet{Water: ice.Lake, Inlets: ice.NotFound}, false},
	} {
		if err := c.sheet.Barred(); (err != nil) != c.bar {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestThawIsNamed: the factor of a thaw says which thaw it is, and a day of which a part alone
// is known thaws by that part.
func TestThawIsNamed(t *testing.T) {
	one := ice.Crossing{Mass: 80, People: 1} // asks for 15 cm, after a thaw for 45
	for _, c := range []struct {
		air     ice.Air // of that day, from 0
		day     int
		verdict measure.Verdict // on 30 cm
		why     string
	}{
		{ice.Air{High: math.NaN(), Low: 1}, 1, measure.Short, "one of the 4 days before yesterday reached 0 °C"},
		{ice.Air{High: 1, Low: math.NaN()}, 1, measure.Short, "one of the 4 days before yesterday reached 0 °C"},
		{ice.Air{High: math.NaN(), Low: -9}, 1, measure.NoAnswer, ""},
		{ice.Air{High: 3, Low: -1}, 1, measure.Short, "0 °C and more yesterday or today, or as the mean"},
		{ice.Air{High: 1, Low: -9}, 4, measure.Short, "0 °C and more yesterday or today, or as the mean"},
	} {
		s := sound(0.3)
		s.Air[c.day] = c.air
		got := crossing(t, s, one)
		if got.Verdict() != c.verdict {
			t.Errorf("%+v on day %d: %v, want %v", c.air, c.day+1, got, c.verdict)
		}
		why := ""
		for _, f := range got.Factors {
			if f.Value == 3 {
				why = f.Why
			}
		}
		if !strings.HasPrefix(why, c.why) || (why == "") != (c.why == "") {
			t.Errorf("%+v on day %d: the factor is for %q, want %q", c.air, c.day+1, why, c.why)
		}
	}
}
