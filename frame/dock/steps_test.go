package dock_test

import (
	"bytes"
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
