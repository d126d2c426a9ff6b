package dock_test

import (
	"bytes"
	"context"
	"errors"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// demoText returns an embedded plan with replacements: old, new, old, new.
func demoText(t testing.TB, name string, swap ...string) string {
	t.Helper()
	r, err := plan.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	s := string(b)
	for i := 0; i < len(swap); i += 2 {
		if !strings.Contains(s, swap[i]) {
			t.Fatalf("demo %s has no %q", name, swap[i])
		}
		s = strings.Replace(s, swap[i], swap[i+1], 1)
	}
	return s
}

func report(t testing.TB, text string) *dock.Report {
	t.Helper()
	d, err := dock.Read("test.json", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return reported(t, d, d.Units())
}

// reported returns the dock's report.
func reported(t testing.TB, d *dock.Dock, units measure.System) *dock.Report {
	t.Helper()
	r, err := d.Report(context.Background(), units)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// check returns the check whose name begins with the words given.
func check(t testing.TB, r *dock.Report, name string) measure.Check {
	t.Helper()
	for _, topic := range r.Topics {
		for _, c := range topic.Checks {
			if strings.HasPrefix(c.Name, name) {
				return c
			}
		}
	}
	t.Fatalf("no check %q", name)
	return measure.Check{}
}

func text(t testing.TB, r *dock.Report) string {
	t.Helper()
	var b bytes.Buffer
	if err := r.WriteText(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestDemosReport(t *testing.T) {
	for name, status := range map[string]dock.Status{"swim": dock.SomeShort, "work": dock.SomeOpen} {
		for _, s := range []measure.System{measure.US, measure.SI} {
			d, err := dock.Read(name, strings.NewReader(demoText(t, name)))
			if err != nil {
				t.Fatal(err)
			}
			r := reported(t, d, s)
			if got := r.Status(); got != status {
				t.Errorf("%s: status %d, want %d", name, got, status)
			}
			sound(t, r)
			out := text(t, r)
			if again := text(t, reported(t, d, s)); again != out {
				t.Errorf("%s: two reports differ", name)
			}
			for _, line := range strings.Split(out, "\n") {
				if utf8.RuneCountInString(line) > 80 || strings.ContainsAny(line, "\t\x1b") || strings.HasSuffix(line, " ") {
					t.Errorf("%s: line does not fit a plain sheet: %q", name, line)
				}
			}
			for _, want := range []string{"not a permit drawing", "ASSUMPTIONS THAT DECIDE", "double thickness", "life jacket"} {
				if !strings.Contains(strings.Join(strings.Fields(out), " "), want) {
					t.Errorf("%s: the sheet does not say %q", name, want)
				}
			}
		}
	}
}

// permission are the words that no sheet prints about ice.
var permission = regexp.MustCompile(`(?i)\b(go|safe|safely|allowed|permitted|cleared)\b`)

// Every check of a report has a verdict with a reason: a rule and numbers, or an
// error; nothing about ice reads as permission.
func sound(t testing.TB, r *dock.Report) {
	t.Helper()
	names := map[string]bool{}
	for _, topic := range r.Topics {
		for _, c := range topic.Checks {
			if names[c.Name] {
				t.Errorf("two checks are called %q", c.Name)
			}
			names[c.Name] = true
			if c.Err == nil && (c.Rule == nil || math.IsNaN(c.Value+c.Limit) || math.IsInf(c.Value+c.Limit, 0)) {
				t.Errorf("%s: value %g, limit %g, rule %v and no error", c.Name, c.Value, c.Limit, c.Rule)
			}
			if c.Rule != nil && c.Rule.Status == measure.Unstated {
				t.Errorf("%s: the rule %v states no status", c.Name, c.Rule)
			}
			if strings.HasPrefix(c.Name, "Ice") {
				if !c.Hazard && c.Verdict() != measure.NoAnswer {
					t.Errorf("%s is not marked as a hazard", c.Name)
				}
				for _, s := range append(append([]string{}, c.Notes...), c.String(), c.Words()) {
					if permission.MatchString(s) {
						t.Errorf("%s reads as permission: %q", c.Name, s)
					}
				}
			}
		}
	}
}

// A dock that sinks or tips over is short, not unanswered.
func TestSinksAndCapsizes(t *testing.T) {
	sinks := report(t, demoText(t, "swim", `"flotation": "20 psf"`, `"flotation": "60 psf"`))
	for _, name := range []string{"Lowest deck edge above the water under", "Most immersed float under", "Draft of the deepest float under"} {
		c := check(t, sinks, name)
		if c.Verdict() != measure.Short || c.Numbers(measure.US) != "sinks; must be afloat" || !strings.Contains(strings.Join(c.Notes, " "), "of buoyancy lacking") {
			t.Errorf("sinks: %v %q", c, c.Notes)
		}
	}
	if sinks.Status() != dock.SomeShort {
		t.Errorf("status %d", sinks.Status())
	}
	tips := report(t, demoText(t, "swim", `"count": 2, "mass": "185 lb"`, `"count": 25, "mass": "185 lb"`))
	for _, name := range []string{"Tilt of the deck", "Lowest deck edge above the water with everyone", "Most immersed float with everyone"} {
		c := check(t, tips, name)
		if c.Verdict() != measure.Short || c.Numbers(measure.US) != "capsizes; must be afloat" || !strings.Contains(strings.Join(c.Notes, " "), "of righting moment lacking") {
			t.Errorf("tips over: %v %q", c, c.Notes)
		}
	}
	sound(t, tips)
	// So says the frame that bends.
	if c := check(t, tips, "Lowest deck corner with everyone"); c.Verdict() != measure.Short || c.Numbers(measure.US) != "capsizes; must be afloat" {
		t.Errorf("tips over: %v", c)
	}
	if c := check(t, sinks, "Sag of joists and rims"); c.Verdict() != measure.Short || c.Numbers(measure.US) != "sinks; must be afloat" {
		t.Errorf("sinks: %v", c)
	}
	// The criteria say the same of the same case: laid on half of the deck it turns over.
	high := report(t, demoText(t, "swim", `"mass": "60 lb", "along": "2 ft", "across": "5 ft", "above": "14 in"`, `"mass": "1200 lb", "along": "12 ft", "across": "5 ft", "above": "15 ft"`))
	for _, name := range []string{"Criterion: deck edge dry", "Criterion: drums at most 85 %", "Criterion: tilt at most 5 deg"} {
		c := check(t, high, name)
		if c.Verdict() != measure.Short || len(c.Steps) != 2 || !strings.Contains(strings.Join(c.Notes, " "), "lacking") {
			t.Errorf("high: %v %q", c, c.Notes)
		}
	}
	for _, r := range []*dock.Report{sinks, tips, high} {
		all := text(t, r)
		if strings.Contains(all, "60.0 deg, at most") || strings.Contains(all, "-8-3/4 in, at least") {
			t.Error("a number stands in for a dock that finds no rest")
		}
	}
}

// Where a drum sits decides how high the dock floats.
func TestSeats(t *testing.T) {
	frame := func(swap ...string) (float64, string) {
		r := report(t, demoText(t, "swim", swap...))
		return check(t, r, "Water to the frame").Value, strings.Join(check(t, r, "Draft of the deepest float with nobody").Notes, " ")
	}
	wedged, how := frame()
	if !strings.Contains(how, "wedged between two joists") {
		t.Errorf("%q", how)
	}
	under, how := frame(`"bears": "between joists"`, `"bears": "under joists"`)
	if !strings.Contains(how, "under the joists") || under < wedged+4*measure.Inch {
		t.Errorf("under the joists %g m against wedged %g m: %q", under, wedged, how)
	}
	across, how := frame(`"lies": "across"`, `"lies": "along"`)
	if !strings.Contains(how, "under the deck boards") || across > wedged {
		t.Errorf("%g m: %q", across, how)
	}
	// Measured, the seat is not worked out: the top 1 in. lower lifts the frame 1 in.
	a, _ := frame(`"bears": "between joists",`, `"bears": "between joists", "top_below_joists": "-5 in",`)
	b, _ := frame(`"bears": "between joists",`, `"bears": "between joists", "top_below_joists": "-4 in",`)
	if math.Abs(b-a-measure.Inch) > 1e-4 {
		t.Errorf("an inch lower lifts the frame by %g m", b-a)
	}
	// Given by places instead of bays, a drum finds its bay.
	r := report(t, demoText(t, "swim", `"bays": [1, 3, 5, 9, 11, 13],
      "marks": ["21-5/8 in", "5 ft", "8 ft 2-3/8 in"]`, `"places": [{"along":"11 in","across":"3 ft"},{"along":"11 in","across":"7 ft"},{"along":"23 ft 1 in","across":"3 ft"},{"along":"23 ft 1 in","across":"7 ft"},{"along":"8 ft 3 in","across":"5 ft"},{"along":"16 ft","across":"5 ft"}]`))
	if n := strings.Join(check(t, r, "Draft of the deepest float with nobody").Notes, " "); !strings.Contains(n, "wedged") {
		t.Errorf("%q", n)
	}
}

// A longer bay than the drum is wide: it drops to the deck boards.
func TestWideBayBearsOnBoards(t *testing.T) {
	r := report(t, demoText(t, "swim", `"bays": [1, 3, 5, 9, 11, 13]`, `"bays": [2, 4, 6, 8, 10, 12]`, `"girth": "6 ft 1 in"`, `"girth": "5 ft 8 in"`, `, "volume": "67 gal"`, ``))
	if n := strings.Join(check(t, r, "Draft of the deepest float with nobody").Notes, " "); !strings.Contains(n, "under the deck boards") {
		t.Errorf("%q", n)
	}
}

// An unknown that decides takes the answer away and is called out; one that does
// not is listed and changes nothing.
func TestUnknownThatDecides(t *testing.T) {
	swap := []string{`"species": "Southern Pine", "grade": "No.2", "incised": "no",
      "_note"`, `"species": "Southern Pine", "grade": "No.2", "incised": "unknown",
      "_note"`}
	r := report(t, demoText(t, "swim", swap...))
	c := check(t, r, "Worst joist, floats standing firm: bending")
	if c.Verdict() != measure.NoAnswer || c.Meets() {
		t.Fatalf("%v meets %v", c, c.Meets())
	}
	found := false
	for _, a := range r.Deciding {
		found = found || a.Name == "frame.joists.incised" && a.Known == measure.Unknown
	}
	if !found {
		t.Errorf("not called out: %+v", r.Deciding)
	}
	if out := text(t, r); !strings.Contains(out, "turns on frame.joists.incised: yes (unknown)") {
		t.Errorf("the sheet does not say what it turns on:\n%s", out)
	}
	// With the same species stated incised, it is short.
	swap[1] = strings.Replace(swap[1], "unknown", "yes", 1)
	if c := check(t, report(t, demoText(t, "swim", swap...)), "Worst joist, floats standing firm: bending"); c.Verdict() != measure.Short {
		t.Errorf("%v", c)
	}
}

// The outcome of a report follows the worst of its checks: short before open.
func TestStatus(t *testing.T) {
	rule := &measure.Source{Title: "rule", Status: measure.OwnChoice}
	holds := measure.Check{Value: 1, Limit: 2, Rule: rule}
	short := measure.Check{Value: 3, Limit: 2, Rule: rule}
	for _, c := range []struct {
		checks []measure.Check
		want   dock.Status
	}{
		{nil, dock.AllHold},
		{[]measure.Check{holds}, dock.AllHold},
		{[]measure.Check{holds, {}}, dock.SomeOpen},
		{[]measure.Check{{}, short, holds}, dock.SomeShort},
	} {
		r := dock.Report{Topics: []dock.Topic{{Checks: c.checks}}}
		if got := r.Status(); got != c.want {
			t.Errorf("%v: status %d, want %d", c.checks, got, c.want)
		}
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errors.New("paper out") }

func TestWriterFails(t *testing.T) {
	if err := report(t, demoText(t, "swim")).WriteText(failing{}); err == nil || !strings.Contains(err.Error(), "paper out") {
		t.Errorf("%v", err)
	}
}

// A joist that overhangs its floats far hogs over them, and nothing holds its
// lower edge: the limit is less than where boards hold the pressed edge.
func TestOverhangingJoistBuckles(t *testing.T) {
	r := report(t, demoText(t, "swim", `"bays": [1, 3, 5, 9, 11, 13]`, `"bays": [1, 3, 5, 7, 9, 11, 13]`,
		`["21-5/8 in", "5 ft", "8 ft 2-3/8 in"]`, `["50 in", "70 in"]`, `"12 ft 10-3/4 in"`, `"12 ft 7-1/4 in"`, `"length": "36-1/2 in"`, `"length": "19 in"`, `, "volume": "67 gal"`, ``))
	c := check(t, r, "Worst joist, floats standing firm: bending")
	stands := strings.Contains(strings.Join(c.Notes, " "), "stands on 2 floats")
	arm := 48.5 * measure.Inch // from the floats' middle to the joist's end
	if !stands || c.Value*13.140625*math.Pow(measure.Inch, 3) < 400*measure.PoundForce*arm || c.Limit > 1050*measure.PSI {
		t.Errorf("%v %q", c, c.Notes)
	}
	found := false
	for _, f := range c.Factors {
		found = found || f.Symbol == "CL" && f.Value < 1
	}
	if !found {
		t.Errorf("no CL below 1 among %v", c.Factors)
	}
}

// A survey is as old as its oldest hole, and a parked dock counts with the load
// that crosses beside it.
func TestIceSurvey(t *testing.T) {
	r := report(t, demoText(t, "swim"))
	c := check(t, r, "Ice for the finished dock parked some hours")
	if notes := strings.Join(c.Notes, " "); !strings.Contains(notes, "for 3519 lb: the dock and the crossing load beside it") {
		t.Errorf("%q", notes)
	}
	if check(t, r, "Ice for one crossing").Verdict() != measure.Holds {
		t.Error("the demo's sheet no longer passes")
	}
	for _, swap := range [][]string{
		{`"when": "2027-02-06 08:30"`, `"when": "2027-02-03 08:30"`},
		{`"when": "2027-02-06 08:30"`, `"when": "unknown"`},
		{`"now": "2027-02-06 09:00"`, `"now": "unknown"`},
		{`"now": "2027-02-06 09:00"`, `"now": "2027-02-05 09:00"`},
		{`"season": "winter"`, `"season": "unknown"`},
		{`"cracks": "none"`, `"cracks": "crossing"`},
		{`"wet": "no"`, `"wet": "yes"`},
		{`"inlets": "no"`, `"inlets": "yes"`},
		{`"changed": "no"`, `"changed": "unknown"`},
		{`"water": "lake"`, `"water": "river"`},
		{`"high": "19 F"`, `"high": "45 F"`},
		{`"clear": "20-1/4 in"`, `"clear": "3 in"`},
		{`"white": "0 in", "gap": "0 in"`, `"white": "0 in", "gap": "unknown"`},
	} {
		if c := check(t, report(t, demoText(t, "swim", swap...)), "Ice for one crossing"); swap[1] != `"cracks": "crossing"` && c.Verdict() == measure.Holds {
			t.Errorf("%s: %v", swap[1], c)
		} else if swap[1] == `"cracks": "crossing"` && c.Limit < 1.4*check(t, r, "Ice for one crossing").Limit {
			t.Errorf("%s: %v", swap[1], c)
		}
	}
}
