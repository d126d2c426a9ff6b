package dock_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

// onIceChecks returns the checks of a plan that say what may be on the ice.
func onIceChecks(t *testing.T, text string) map[string]measure.Check {
	t.Helper()
	r := report(t, text)
	out := map[string]measure.Check{}
	for _, name := range []string{"Ice for one crossing", "Ice for the finished dock parked some hours", "Ice under the finished dock", "Ice for the people at the dock"} {
		out[name] = check(t, r, name)
	}
	return out
}

// thick is the swim platform's plan on ice so thick, without snow, that every check
// but for its weather and its holes holds.
func thick(t *testing.T, swap ...string) string {
	t.Helper()
	text := demoText(t, "swim")
	for _, inches := range []string{"20-1/2", "21", "20-3/4", "20-1/4", "20"} {
		text = strings.ReplaceAll(text, `"clear": "`+inches+` in"`, `"clear": "60 in"`)
	}
	text = strings.ReplaceAll(text, `"snow": "2 in"`, `"snow": "0 in"`)
	text = strings.ReplaceAll(text, `"snow": "3 in"`, `"snow": "0 in"`)
	text = strings.ReplaceAll(text, `"parked": "12 weeks"`, `"snow_to_come": "0 in", "parked": "2 days"`)
	for _, w := range []string{`1-1/2`, `1-5/8`} {
		text = strings.ReplaceAll(text, `"water_below_top": "`+w+` in"`, `"water_below_top": "5 in"`)
	}
	for i := 0; i < len(swap); i += 2 {
		if !strings.Contains(text, swap[i]) {
			t.Fatalf("no %q", swap[i])
		}
		text = strings.ReplaceAll(text, swap[i], swap[i+1])
	}
	return text
}

// days are a plan's weather: a date, its high and its low, three by three.
func days(of ...string) string {
	var rows []string
	for i := 0; i < len(of); i += 3 {
		rows = append(rows, fmt.Sprintf(`{ "date": %q, "high": %q, "low": %q }`, of[i], of[i+1], of[i+2]))
	}
	return `"weather": [` + strings.Join(rows, ", ") + `], "_note": [`
}

// TestWeatherIsOfTheDaysBefore: weather of other days than the five right before takes
// every answer away, in any order of the list, and the error names field, date and what
// is wanted.
func TestWeatherIsOfTheDaysBefore(t *testing.T) {
	for name, c := range onIceChecks(t, thick(t)) {
		if c.Verdict() != measure.Holds {
			t.Fatalf("%s does not hold to begin with: %v", name, c)
		}
	}
	frost := func(dates ...string) string {
		var of []string
		for _, d := range dates {
			of = append(of, d, "20 F", "5 F")
		}
		return days(of...)
	}
	const window = "want the 5 days before 2027-02-06, 2027-02-01 to 2027-02-05, each once"
	for name, c := range map[string]struct {
		weather string
		holds   bool
		says    []string
	}{
		"newest first":     {frost("2027-02-05", "2027-02-04", "2027-02-03", "2027-02-02", "2027-02-01"), true, nil},
		"with one before":  {frost("2027-01-31", "2027-02-05", "2027-02-04", "2027-02-03", "2027-02-02", "2027-02-01"), true, nil},
		"a year before":    {frost("2026-02-01", "2026-02-02", "2026-02-03", "2026-02-04", "2026-02-05"), false, []string{"ice.weather[1].date", `"2026-02-01"`, window}},
		"three weeks old":  {frost("2027-01-10", "2027-01-11", "2027-01-12", "2027-01-13", "2027-01-14"), false, []string{"ice.weather[1].date", `"2027-01-10"`, window}},
		"still to come":    {frost("2027-03-10", "2027-03-11", "2027-03-12", "2027-03-13", "2027-03-14"), false, []string{"ice.weather[1].date", `"2027-03-10"`, window}},
		"one day only":     {frost("2027-02-01", "2027-02-01", "2027-02-01", "2027-02-01", "2027-02-01"), false, []string{"ice.weather[2].date", `"2027-02-01"`, "twice", window}},
		"one a month back": {frost("2027-02-01", "2027-02-02", "2027-02-03", "2027-02-04", "2027-01-05"), false, []string{"ice.weather[5].date", `"2027-01-05"`, window}},
		"one missing":      {frost("2027-02-01", "2027-02-02", "2027-02-04", "2027-02-05"), false, []string{"ice.weather", "2027-02-03", "missing", window}},
		"one unknown":      {frost("2027-02-01", "2027-02-02", "unknown", "2027-02-04", "2027-02-05"), false, []string{"ice.weather[3].date", window}},
		"high under low":   {days("2027-02-01", "5 F", "40 F"), false, []string{"ice.weather[1].high"}},
		"none":             {frost(), false, []string{"ice.weather", window}},
		"thaw yesterday, newest first": {
			days("2027-02-05", "45 F", "40 F", "2027-02-04", "20 F", "5 F", "2027-02-03", "20 F", "5 F", "2027-02-02", "20 F", "5 F", "2027-02-01", "20 F", "5 F", "2027-01-31", "20 F", "5 F"),
			false,
			[]string{"thawing ice"},
		},
		"thaw today": {
			days("2027-02-06", "35 F", "30 F", "2027-02-05", "20 F", "5 F", "2027-02-04", "20 F", "5 F", "2027-02-03", "20 F", "5 F", "2027-02-02", "20 F", "5 F", "2027-02-01", "20 F", "5 F"),
			false,
			[]string{"thawing ice"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			for name, k := range onIceChecks(t, thick(t, `"weather": [`, c.weather)) {
				if (k.Verdict() == measure.Holds) != c.holds {
					t.Errorf("%s: %v, %v", name, k, k.Err)
				}
				if !c.holds && k.Verdict() != measure.NoAnswer && !strings.Contains(c.weather, "45 F") { // a thaw may be short
					t.Errorf("%s: %v, want no answer", name, k)
				}
				for _, says := range c.says {
					if k.Verdict() == measure.NoAnswer && !strings.Contains(k.Err.Error(), says) {
						t.Errorf("%s: %v does not say %q", name, k.Err, says)
					}
				}
			}
		})
	}
	for name, k := range onIceChecks(t, thick(t, `"now": "2027-02-06 09:00"`, `"now": "unknown"`)) {
		if k.Verdict() != measure.NoAnswer || !errors.Is(k.Err, measure.ErrUnknown) {
			t.Errorf("no hour: %s: %v", name, k)
		}
	}
}

// TestHolesSurroundTheDock: holes at one place, far off, on one side or where the walk
// is none take every answer away; unknown places do.
func TestHolesSurroundTheDock(t *testing.T) {
	for name, c := range map[string]struct {
		swap []string
		says string
	}{
		"all at one place":   {[]string{`"along": "-4 ft"`, `"along": "0 ft"`, `"along": "28 ft"`, `"along": "0 ft"`, `"across": "-4 ft"`, `"across": "0 ft"`, `"across": "14 ft"`, `"across": "0 ft"`}, "four different places"},
		"1000 ft off":        {[]string{`"along": "-4 ft"`, `"along": "996 ft"`, `"along": "28 ft"`, `"along": "1028 ft"`, `"along": "12 ft", "across": "5 ft"`, `"along": "1012 ft", "across": "5 ft"`, `"across": "-60 ft"`, `"across": "-70 ft"`}, "holes"},
		"one end left out":   {[]string{`"along": "28 ft"`, `"along": "20 ft"`}, "the dock stands outside the drilled pad"},
		"one side left out":  {[]string{`"across": "14 ft"`, `"across": "8 ft"`}, "the dock stands outside the drilled pad"},
		"walk on the pad":    {[]string{`"across": "-60 ft"`, `"across": "2 ft"`}, "outside the pad"},
		"walk far off":       {[]string{`"across": "-60 ft"`, `"across": "-120 ft"`}, "within 100 ft"},
		"middle off the pad": {[]string{`"along": "12 ft", "across": "5 ft"`, `"along": "40 ft", "across": "5 ft"`}, "the middle of the pad"},
		"one not placed":     {[]string{`"along": "12 ft", "across": "5 ft"`, `"along": "12 ft", "across": "unknown"`}, "ice.holes[5].a"},
	} {
		t.Run(name, func(t *testing.T) {
			for name, k := range onIceChecks(t, thick(t, c.swap...)) {
				if k.Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(k.Err), c.says) {
					t.Errorf("%s: %v (%v), want %q", name, k, k.Err, c.says)
				}
			}
		})
	}
	// A corner at the dock's own corner, and half a foot short of it.
	for name, k := range onIceChecks(t, thick(t, `"along": "-4 ft"`, `"along": "6 in"`, `"along": "28 ft"`, `"along": "23 ft 6 in"`, `"across": "-4 ft"`, `"across": "0 ft"`, `"across": "14 ft"`, `"across": "10 ft"`)) {
		if k.Verdict() != measure.Holds {
			t.Errorf("%s: %v", name, k)
		}
	}
}

// TestVoidHourIsPrinted: the sheet of any later day still says when its word ended.
func TestVoidHourIsPrinted(t *testing.T) {
	for name, k := range onIceChecks(t, thick(t)) {
		if notes := strings.Join(k.Notes, "\n"); strings.Contains(name, "crossing") && !strings.Contains(notes, "void from 2027-02-07 08:05") {
			t.Errorf("%s: %s", name, notes)
		}
	}
	// Drilled this very minute is drilled, by a clock that tells no seconds.
	if k := onIceChecks(t, thick(t, `"now": "2027-02-06 09:00"`, `"now": "2027-02-06 08:40"`, `2027-02-06 08:05`, `2027-02-06 08:40`, `2027-02-06 08:10`, `2027-02-06 08:40`, `2027-02-06 08:20`, `2027-02-06 08:40`, `2027-02-06 08:25`, `2027-02-06 08:40`, `2027-02-06 08:30`, `2027-02-06 08:40`))["Ice for one crossing"]; k.Verdict() != measure.Holds {
		t.Errorf("drilled this minute: %v", k)
	}
}

// TestIceBeside: the card asks for as much as the check of the same load on sound ice,
// and the check says which load that is.
func TestIceBeside(t *testing.T) {
	for _, swaps := range [][]string{nil, {`"parked"`, `"snow_to_come": "0 in", "parked"`}, {`"mass": "670 lb", "people": 3`, `"mass": "600 lb", "people": 3`}} {
		d := swappedDock(t, "swim", swaps...)
		a := d.IceBeside()
		k := check(t, reported(t, d, measure.US), "Ice for the people at the dock")
		if a.Err != nil || math.Abs(a.Check.Limit-k.Limit) > 1e-9 || !(a.White > a.Check.Limit) || !(a.Thawed > a.White) {
			t.Errorf("%+v, the check asks for %g m", a, k.Limit)
		}
		notes := strings.Join(k.Notes, "\n")
		if want := "for " + measure.Mass.Format(a.Mass, measure.US) + " as one load"; !strings.Contains(notes, want) || strings.Contains(notes, "snow to come on it") != (len(swaps) == 0 || swaps[0] != `"parked"`) {
			t.Errorf("no %q in %s", want, notes)
		}
		if strings.Contains(notes, "each of 3 people counts") != (len(swaps) > 0 && strings.Contains(swaps[1], "600 lb")) {
			t.Error(notes)
		}
	}
	// White ice in the plan's holes doubles what the check asks for, and has a column of
	// its own on the card.
	d := swappedDock(t, "swim", `"white": "0 in"`, `"white": "1 in"`)
	if a, k := d.IceBeside(), check(t, reported(t, d, measure.US), "Ice for the people at the dock"); math.Abs(a.White-k.Limit) > 1e-9 || math.Abs(2*a.Check.Limit-k.Limit) > 1e-9 {
		t.Errorf("%+v, the check asks for %g m", a, k.Limit)
	}
	if a := swappedDock(t, "swim", `"crossing": { "mass": "670 lb", "people": 3 }`, `"crossing": { "mass": "unknown", "people": 3 }`).IceBeside(); a.Err == nil {
		t.Errorf("people of unknown weight: %+v", a)
	}
	if a := new(dock.Dock).IceBeside(); !errors.Is(a.Err, measure.ErrUnknown) {
		t.Errorf("no plan: %+v", a)
	}
}
