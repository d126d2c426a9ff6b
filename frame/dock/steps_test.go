package dock_test

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

func demoReport(t *testing.T, name string) *dock.Report {
	t.Helper()
	in, err := plan.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	d, err := dock.Read(name, in)
	if err != nil {
		t.Fatal(err)
	}
	return reported(t, d, d.Units())
}

// TestTwelve: there are twelve, each with an answer behind it, the worst first, and
// no check answers for two of them.
func TestTwelve(t *testing.T) {
	order := []measure.Verdict{measure.Short, measure.NoAnswer, measure.Holds}
	for _, demo := range plan.Demos() {
		r := demoReport(t, demo)
		if len(r.Twelve) != 12 {
			t.Fatalf("%s: %d of twelve", demo, len(r.Twelve))
		}
		seen := map[string]string{}
		for i, h := range r.Twelve {
			if len(h.Checks) == 0 {
				t.Errorf("%s: nothing answers %q", demo, h.Name)
			}
			if i > 0 && slices.Index(order, h.Verdict()) < slices.Index(order, r.Twelve[i-1].Verdict()) {
				t.Errorf("%s: %q is worse than %q before it", demo, h.Name, r.Twelve[i-1].Name)
			}
			for k, c := range h.Checks {
				if k > 0 && slices.Index(order, c.Verdict()) < slices.Index(order, h.Checks[k-1].Verdict()) {
					t.Errorf("%s: %s: %q is worse than %q before it", demo, h.Name, c.Name, h.Checks[k-1].Name)
				}
				if other, twice := seen[c.Name]; twice {
					t.Errorf("%s: %q answers for %q and %q", demo, c.Name, other, h.Name)
				}
				seen[c.Name] = h.Name
			}
		}
		// Whatever these topics say is said in the twelve.
		for _, topic := range r.Topics {
			for _, c := range topic.Checks {
				if slices.Contains([]string{
					"AFLOAT, NOBODY ABOARD", "AFLOAT, UNIFORM LOAD", "AFLOAT, EVERYONE AT ONE EDGE", "AFLOAT, STANDARD LOADS", "AFLOAT, ONE FLOAT FULL OF WATER",
					"WHAT BEARS ON WHAT", "JOINTS", "TIES AND DRUMS", "LINES AND WATER LEVEL", "ICE", "LOCAL LIMITS AND PERMITS",
				}, topic.Title) && seen[c.Name] == "" {
					t.Errorf("%s: %s: none of the twelve says %q", demo, topic.Title, c.Name)
				}
			}
		}
	}
}

// TestSteps: the order of work goes from the office to the autumn, says what opens
// and what stops it, and rests on what the report or the plan holds.
func TestSteps(t *testing.T) {
	stages := []string{"Before the first cut", "In the garage", "On the ice", "Break-up and launch", "Through the year"}
	for _, demo := range plan.Demos() {
		r := demoReport(t, demo)
		var names []string
		for _, topic := range r.Topics {
			names = append(names, topic.Title)
			for _, c := range topic.Checks {
				names = append(names, c.Name)
				for _, a := range c.Rests {
					names = append(names, a.Name)
				}
			}
		}
		for _, h := range r.Twelve {
			names = append(names, h.Name)
		}
		for _, e := range plan.Explain() {
			names = append(names, strings.ReplaceAll(e.Path, "[]", ""))
		}
		at, stops, gates := 0, 0, 0
		var all strings.Builder
		for _, s := range r.Steps {
			k := slices.Index(stages, s.Stage)
			if k < at || s.Do == "" {
				t.Errorf("%s: %q in %q comes too late", demo, s.Do, s.Stage)
			}
			at = k
			stops += len(s.Stops)
			gates += len(s.Gates)
			all.WriteString(s.Do)
			for _, on := range s.Rests {
				if !strings.HasPrefix(on, "the ") && !slices.ContainsFunc(names, func(n string) bool { return strings.HasPrefix(n, on) || strings.Contains(on, n) }) {
					t.Errorf("%s: %q rests on %q, which is nowhere", demo, s.Do, on)
				}
			}
		}
		if at != len(stages)-1 || len(r.Steps) < 20 || stops < 10 || gates < 15 {
			t.Errorf("%s: %d steps to stage %d with %d gates and %d stops", demo, len(r.Steps), at, gates, stops)
		}
		// The diagonal and the first mark are the frame's own.
		for _, want := range map[string][]string{"swim": {"Both diagonals: 26 ft.", "0 in, 1 ft 8-1/2 in, 3 ft 8 in"}, "work": {"Both diagonals: 6.462 m.", "0.0 mm"}}[demo] {
			if !strings.Contains(all.String(), want) {
				t.Errorf("%s: no step says %q", demo, want)
			}
		}
	}
}

// TestStepsOnIce: from the first float on no step on the ice opens without the ice of
// that day under dock and people; nobody goes out after an early ice-out; and a load
// heavier than the plan's crossing is asked for.
func TestStepsOnIce(t *testing.T) {
	for _, demo := range plan.Demos() {
		floats := false
		for _, s := range demoReport(t, demo).Steps {
			if s.Stage != "On the ice" {
				continue
			}
			want := "the ice of that day, as for the floats"
			if strings.HasPrefix(s.Do, "Set the floats") {
				floats, want = true, "the ice under the finished dock and the people at it, measured within 24 hours"
			}
			if floats && !slices.ContainsFunc(s.Gates, func(g string) bool { return strings.HasPrefix(g, want) }) {
				t.Errorf("%s: %q opens on %q", demo, s.Do, s.Gates)
			}
		}
		if !floats {
			t.Errorf("%s: no step sets floats", demo)
		}
	}
	step := func(begin string, swaps ...string) dock.Step {
		for _, s := range reported(t, swappedDock(t, "swim", swaps...), measure.US).Steps {
			if strings.HasPrefix(s.Do, begin) {
				return s
			}
		}
		t.Fatalf("no step %q", begin)
		return dock.Step{}
	}
	// The last day set is 15 May, and the remembered ice is out on 4 April in one of ten.
	if s := step("Bring everything loose ashore"); !strings.Contains(s.Gates[0], "by 2027-03-21 at the latest, two weeks before") || !strings.Contains(s.Gates[1], "Ice for one crossing") {
		t.Errorf("the last walk out opens on %q", s.Gates)
	}
	if s := step("Bring everything", `"off_ice_by": "2027-05-15"`, `"off_ice_by": "2027-03-01"`); !strings.Contains(s.Gates[0], "well before 2027-03-01") {
		t.Errorf("the last walk out opens on %q", s.Gates)
	}
	// A sled for 400 lb takes six boards of 66 lb at a time.
	if s := step("Carry the pieces", `"people": [`, `"shop": { "sled_load": "400 lb" }, "people": [`); !strings.Contains(fmt.Sprint(s.Gates), "the sheet was made for the heaviest") {
		t.Errorf("a sled of 400 lb opens on %q", s.Gates)
	}
	// The heaviest piece, 111 lb, and three people of 185 lb are 666 lb.
	if s := step("Carry the pieces"); len(s.Gates) != 2 {
		t.Errorf("carrying 666 lb where the plan says 670 opens on %q", s.Gates)
	}
	if s := step("Carry the pieces", `"mass": "670 lb", "people": 3`, `"mass": "660 lb", "people": 3`); len(s.Gates) != 3 || !strings.Contains(s.Gates[1], "666 lb with 3 people") {
		t.Errorf("carrying 666 lb where the plan says 660 opens on %q", s.Gates)
	}
}

// TestTwelveBeyond: a joist that is pulled off where nothing may pull is worse than
// whatever has a share of a limit to tell.
func TestTwelveBeyond(t *testing.T) {
	rule := &measure.Source{Title: "an invented rule", Status: measure.OwnChoice}
	topic := dock.Topic{Checks: []measure.Check{
		{Name: "holds", Kind: measure.Force, Value: 1, Limit: 2, Rule: rule},
		{Name: "twice", Kind: measure.Force, Value: 2, Limit: 1, Rule: rule},
		{Name: "no pull at all", Kind: measure.Force, Value: 1, Limit: 0, Rule: rule},
		{Name: "unknown", Kind: measure.Force, Rule: rule, Err: measure.ErrUnknown},
	}}
	if got := topic.Worst().Name; got != "no pull at all" {
		t.Errorf("the worst is %q", got)
	}
}

// TestReportText pins the form of both sheets.
func TestReportText(t *testing.T) {
	for _, demo := range plan.Demos() {
		r := demoReport(t, demo)
		golden(t, demo+"_sheet.txt", func(w io.Writer) error { return r.WriteText(w) })
		var b bytes.Buffer
		if err := r.WriteText(&b); err != nil {
			t.Fatal(err)
		}
		for i, line := range strings.Split(b.String(), "\n") {
			if n := len([]rune(line)); n > 80 {
				t.Errorf("%s: line %d has %d columns: %s", demo, i+1, n, line)
			}
		}
	}
}

// TestStatusOfAssumptions: a report that holds throughout, but turns on what nobody
// measured, is open.
func TestStatusOfAssumptions(t *testing.T) {
	r := &dock.Report{}
	if r.Status() != dock.AllHold {
		t.Errorf("an empty report: %v", r.Status())
	}
	r.Deciding = []measure.Assumption{{Name: "frame.moisture", Known: measure.Assumed}}
	if r.Status() != dock.SomeOpen {
		t.Errorf("a verdict that turns on an assumption: %v", r.Status())
	}
}
