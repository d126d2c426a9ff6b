package dock_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// TestCrewOneWord: whatever the plan says of the crossing, the checks, the card and the
// step that carries the pieces agree on whether it serves, and on the thickness.
func TestCrewOneWord(t *testing.T) {
	const crossing, hours, beside = "Ice for one crossing", "Ice for the finished dock parked some hours", "Ice for the people at the dock"
	for _, c := range []struct {
		said         string
		load, people string // why it does not serve; nothing where it does
	}{
		{`"mass": "670 lb", "people": 3`, "", ""},
		{`"mass": "2000 lb", "people": 5`, "", ""},
		{`"mass": "670 lb", "people": "unknown"`, "ice.crossing.people: not known", "ice.crossing.people: not known"},
		{`"mass": "unknown", "people": 3`, "ice.crossing.mass: not known", "ice.crossing.mass: not known"},
		{`"mass": "670 lb", "people": 1`, `ice.crossing.people: "1" is out of range; want 3 or more: as many are with rim`, `ice.crossing.people: "1" is out of range; want 3 or more: as many are with rim`},
		{`"mass": "670 lb", "people": 2`, `ice.crossing.people: "2" is out of range; want 3 or more`, `"2" is out of range`},
		{`"mass": "600 lb", "people": 3`, `ice.crossing.mass: "600 lb" is out of range; want 666 lb or more`, ""},
		{`"mass": "300 lb", "people": 3`, `"300 lb" is out of range`, "555 lb or more, since 3 people"},
	} {
		t.Run(c.said, func(t *testing.T) {
			var d *dock.Dock
			text := strings.ReplaceAll(thick(t), `"mass": "670 lb", "people": 3`, c.said)
			d, err := dock.Read("crew", strings.NewReader(text))
			if err != nil {
				t.Fatal(err)
			}
			r := reported(t, d, measure.US)
			asked := d.IceAsked()
			for _, k := range []struct {
				check measure.Check
				card  dock.Asking
				why   string
			}{
				{check(t, r, crossing), asked[1], c.load},
				{check(t, r, hours), asked[3], c.people},
				{check(t, r, beside), d.IceBeside(), c.people},
			} {
				if k.why == "" {
					if k.check.Verdict() != measure.Holds || k.card.Err != nil || math.Abs(k.check.Limit-k.card.Check.Limit) > 1e-9 {
						t.Errorf("%v; on the card %g m, %v", k.check, k.card.Check.Limit, k.card.Err)
					}
					continue
				}
				if k.check.Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(k.check.Err), k.why) {
					t.Errorf("%v, want %q", k.check, k.why)
				}
				if k.card.Check.Limit > 0 || !strings.Contains(fmt.Sprint(k.card.Err), k.why) {
					t.Errorf("on the card %g m, %v, want %q", k.card.Check.Limit, k.card.Err, k.why)
				}
			}
			found := false
			for _, s := range r.Steps {
				if strings.HasPrefix(s.Do, "Carry the pieces") {
					gates := fmt.Sprint(s.Gates)
					found = strings.Contains(gates, "ice.crossing 666 lb with 3 people")
					if says := strings.Contains(gates, "does not say as much"); says != strings.Contains(c.load, "not known") {
						t.Error(gates)
					}
				}
			}
			if found != (c.load != "") {
				t.Errorf("the step asks for the heaviest: %v", found)
			}
			if row := dock.Compare(r).Rows; c.load != "" {
				for _, q := range row {
					if q.Question == "Ice asked for, one crossing" && q.Answers[0].Err == nil {
						t.Errorf("compared: %+v", q.Answers[0])
					}
				}
			}
		})
	}
}

// TestCardOfNoLake: on a river, in spring or at an inlet the card has no figure, as the
// check has no answer; cracks of the plan count on both.
func TestCardOfNoLake(t *testing.T) {
	for _, swap := range [][2]string{{`"water": "lake"`, `"water": "river"`}, {`"water": "lake"`, `"water": "unknown"`}, {`"season": "winter"`, `"season": "spring"`}, {`"inlets": "no"`, `"inlets": "yes"`}} {
		d := swappedDock(t, "swim", swap[0], swap[1])
		c := check(t, reported(t, d, measure.US), "Ice for one crossing")
		for _, a := range append(d.IceAsked(), d.IceBeside()) {
			if a.Err == nil || a.Check.Limit > 0 || a.White > 0 || a.Thawed > 0 || a.Err.Error() != fmt.Sprint(c.Err) {
				t.Errorf("%s: %+v, the check %v", swap[1], a, c.Err)
			}
		}
	}
	for _, cracks := range []string{"one", "crossing", "unknown"} {
		d := swappedDock(t, "swim", `"cracks": "none"`, `"cracks": "`+cracks+`"`)
		c := check(t, reported(t, d, measure.US), "Ice for one crossing")
		if a := d.IceAsked()[1]; a.Err != nil || math.Abs(a.Check.Limit-c.Limit) > 1e-9 || (c.Limit > 0.21) != (cracks != "unknown") {
			t.Errorf("%s: the card %g m, the check %g m", cracks, a.Check.Limit, c.Limit)
		}
	}
}

// TestParkedFromNow: ice.parked counts from now in every check; what stands already, and
// both together, are in the one of the ice.
func TestParkedFromNow(t *testing.T) {
	const stay, left = "Ice under the finished dock", "Time on the ice before the last day"
	level := func(days int, inches func(day int) float64) string {
		var rows []string
		for k := 0; k <= days; k++ {
			rows = append(rows, fmt.Sprintf(`{ "when": "2027-%s 08:30", "water_below_top": "%.2f in" }`, []string{"01-27", "01-28", "01-29", "01-30", "01-31", "02-01", "02-02", "02-03", "02-04", "02-05", "02-06"}[10-k], inches(k)))
		}
		return `"gauge": [` + strings.Join(rows, ", ") + `], "snow_to_come"`
	}
	still := level(10, func(int) float64 { return 5 })
	of := func(since, parked string, gauge string) map[string]measure.Check {
		text := thick(t, `"parked": "2 days"`, `"parked": "`+parked+`"`, `"snow_to_come"`, gauge)
		text = strings.Replace(text, `"parked":`, `"since": "`+since+`", "parked":`, 1)
		r := report(t, text)
		return map[string]measure.Check{stay: check(t, r, stay), left: check(t, r, left), "season": check(t, r, "Time it is planned to stand there"), "people": check(t, r, "Ice for the people at the dock")}
	}
	day := measure.Day
	for _, c := range []struct {
		since, parked string
		in, from      float64
	}{{"0 h", "14 days", 14, 14}, {"40 days", "14 days", 54, 14}, {"40 days", "84 days", 124, 84}} {
		gauge := still
		if c.since == "0 h" {
			gauge = `"snow_to_come"`
		}
		k := of(c.since, c.parked, gauge)
		if math.Abs(k[stay].Limit-c.in*day) > 1 || k[stay].Err != nil {
			t.Errorf("%+v: %v", c, k[stay])
		}
		if says := strings.Contains(k[stay].Name, fmt.Sprintf("%.4g days more, %.4g days in all", c.from, c.in)); says != (c.since != "0 h") {
			t.Error(k[stay].Name)
		}
		if math.Abs(k[left].Value-c.from*day) > 1 || math.Abs(k["season"].Value-c.from*day) > 1 {
			t.Errorf("%+v: %v; %v", c, k[left], k["season"])
		}
	}
	// A level that falls by 0.3 in a day from 5 in has gone in a week: short of 54 days.
	if k := of("40 days", "14 days", level(10, func(d int) float64 { return 2.3 + 0.3*float64(d) }))[stay]; k.Verdict() != measure.Short {
		t.Errorf("%v", k)
	}
	// What one winter does not hold, and what is not known, is refused in the plan's words.
	if k := of("100 days", "100 days", still)[stay]; k.Verdict() != measure.NoAnswer || !strings.Contains(k.Err.Error(), "want ice.since and ice.parked together, with no more than 180 days") || !strings.HasPrefix(k.Err.Error(), "ice.parked: ") {
		t.Errorf("%v", k)
	}
	if k := of("unknown", "14 days", still); k[stay].Verdict() != measure.NoAnswer || !errors.Is(k[stay].Err, measure.ErrUnknown) || k["people"].Verdict() != measure.NoAnswer {
		t.Errorf("%v; %v", k[stay], k["people"])
	}
	// Levels far below the top, and rising ones, are no answer for dock and people.
	for name, inches := range map[string]func(int) float64{"far down": func(int) float64 { return 30 }, "falling away": func(d int) float64 { return 4.6 - 0.36*float64(d) }} {
		k := of("10 days", "14 days", level(9, inches))
		for _, at := range []string{stay, "people"} {
			if k[at].Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(k[at].Err), "gauge") {
				t.Errorf("%s: %v", name, k[at])
			}
		}
	}
}

// TestPlanTakesWhatTheChecksTake: the ends of what a plan accepts are judged.
func TestPlanTakesWhatTheChecksTake(t *testing.T) {
	for _, c := range []struct{ path, lo, hi string }{
		{"ice.parked", "1 h", "180 days"}, {"ice.weather[].high", "-60 C", "50 C"}, {"ice.weather[].low", "-60 C", "50 C"},
	} {
		for _, e := range plan.Explain() {
			if says := e.In(measure.SI).Accepts; e.Path == c.path && (!strings.Contains(says, c.lo) || !strings.Contains(says, c.hi)) {
				t.Errorf("%s accepts %s", c.path, says)
			}
		}
	}
	for _, parked := range []string{"1 h", "180 days"} {
		c := check(t, report(t, thick(t, `"parked": "2 days"`, `"parked": "`+parked+`"`)), "Ice under the finished dock")
		if c.Err != nil {
			t.Errorf("%s: %v", parked, c)
		}
		if notes := strings.Join(c.Notes, "\n"); strings.Contains(notes, "four months on which") || !strings.Contains(notes, "water over the ice") {
			t.Error(notes)
		}
	}
	r := report(t, thick(t, `{ "date": "2027-02-01", "high": "24 F", "low": "6 F" }`, `{ "date": "2027-02-01", "high": "5 F", "low": "40 F" }`))
	if c := check(t, r, "Ice for one crossing"); c.Verdict() != measure.NoAnswer || !strings.Contains(c.Err.Error(), "at most 122.0") {
		t.Errorf("%v", c.Err)
	}
}

// TestGapAsksForItsLayer: with a gap the thickest layer counts, and nothing without it.
func TestGapAsksForItsLayer(t *testing.T) {
	hole := `"clear": "10 in", "white": "0 in", "gap": "`
	thin := func(gap string) map[string]measure.Check {
		text := thick(t, `"clear": "60 in"`, `"clear": "10 in"`, `"water_below_top": "5 in"`, `"water_below_top": "3/4 in"`, `"white": "0 in", "gap": "0 in"`, `"white": "0 in", "gap": "`+gap)
		return onIceChecks(t, text)
	}
	if !strings.Contains(thick(t, `"clear": "60 in"`, `"clear": "10 in"`), hole) {
		t.Fatal("the plan has other holes")
	}
	for name, c := range thin(`2 in"`) {
		if c.Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(c.Err), "ice.holes[1].layer: not known: there is a gap in the ice of") {
			t.Errorf("%s: %v", name, c)
		}
	}
	for name, c := range thin(`2 in", "layer": "11 in"`) {
		if c.Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(c.Err), "ice.holes[1].layer") {
			t.Errorf("%s: %v", name, c)
		}
	}
	c := thin(`2 in", "layer": "5 in"`)["Ice for one crossing"]
	if c.Verdict() != measure.Short || math.Abs(c.Value-5*measure.Inch) > 1e-9 || !strings.Contains(strings.Join(c.Notes, "\n"), "the thickest single layer counts, 5 in") {
		t.Errorf("%v %q", c, c.Notes)
	}
	if c := thin(`2 in", "layer": "8 in"`)["Ice for one crossing"]; c.Verdict() != measure.Holds || math.Abs(c.Value-8*measure.Inch) > 1e-9 {
		t.Errorf("%v %q", c, c.Notes)
	}
}

// TestDifferenceStaysOne: a fall of temperature is told as a fall in both systems.
func TestDifferenceStaysOne(t *testing.T) {
	for low, holds := range map[string]bool{"-9": true, "-10": false} {
		r := report(t, thick(t, `"weather": [`, days("2027-02-01", "20 F", "10 F", "2027-02-02", "20 F", "10 F", "2027-02-03", "20 F", "10 F", "2027-02-04", "20 F", "8 F", "2027-02-05", "3 F", low+" F")))
		c := check(t, r, "Ice for one crossing")
		if (c.Verdict() == measure.Holds) != holds {
			t.Errorf("8 F, then %s F: %v", low, c)
		}
		if !holds && (!strings.Contains(c.Err.Error(), "fell by 18.0 F deg") || strings.Contains(c.Err.Error(), "50.0")) {
			t.Error(c.Err)
		}
	}
}
