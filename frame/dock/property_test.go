package dock_test

import (
	"errors"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// The same dock with its axes swapped floats and bends alike.
func TestTurnedDock(t *testing.T) {
	a := report(t, demoText(t, "work"))
	turned := demoText(t, "work",
		`"length": "6.0 m",
    "width": "2.4 m",
    "joists_run": "across"`, `"length": "2.4 m", "width": "6.0 m", "joists_run": "along"`,
		`"lies": "along"`, `"lies": "across"`)
	turned = regexp.MustCompile(`"along": ("[\d.]+ m"), "across": ("[\d.]+ m")`).ReplaceAllString(turned, `"along": $2, "across": $1`)
	b := report(t, turned)
	for i, topic := range a.Topics {
		if topic.Title == "AFLOAT, STANDARD LOADS" {
			continue // these know length from width
		}
		for j, c := range topic.Checks {
			o := b.Topics[i].Checks[j]
			if math.Abs(c.Value-o.Value) > 1e-9*math.Max(1, math.Abs(c.Value)) {
				t.Errorf("%s: %g, turned %g", c.Name, c.Value, o.Value)
			}
			if c.Verdict() != o.Verdict() {
				t.Errorf("%s: %v, turned %v", c.Name, c.Verdict(), o.Verdict())
			}
		}
	}
}

// Spacing is shorthand for marks: the same frame either way.
func TestSpacingIsShorthand(t *testing.T) {
	const marks = `"marks_at": "centre", "marks": ["19 mm", "419 mm", "819 mm", "1219 mm", "1619 mm", "2019 mm", "2419 mm", "2819 mm", "3219 mm", "3619 mm", "4019 mm", "4419 mm", "4819 mm", "5219 mm", "5619 mm", "5981 mm"]`
	a, b := report(t, demoText(t, "work")), report(t, demoText(t, "work", `"spacing": "400 mm"`, marks))
	for i, topic := range a.Topics {
		for j, c := range topic.Checks {
			if o := b.Topics[i].Checks[j]; math.Abs(c.Value-o.Value) > 1e-9*math.Max(1, math.Abs(c.Value)) {
				t.Errorf("%s: %g by spacing, %g by marks", c.Name, c.Value, o.Value)
			}
		}
	}
}

// A longer, heavier or more crowded case is never better.
func TestMoreIsNeverBetter(t *testing.T) {
	last := math.Inf(-1)
	for _, n := range []string{"1", "2", "3", "4"} {
		c := check(t, report(t, demoText(t, "swim", `"count": 2, "mass": "185 lb"`, `"count": `+n+`, "mass": "185 lb"`)), "Tilt of the deck")
		if !(c.Value > last) {
			t.Errorf("%s adults tilt it %g rad, fewer %g rad", n, c.Value, last)
		}
		last = c.Value
	}
	last = math.Inf(1)
	for _, q := range []string{"5 psf", "10 psf", "20 psf", "25 psf"} {
		c := check(t, report(t, demoText(t, "swim", `"flotation": "20 psf"`, `"flotation": "`+q+`"`)), "Lowest deck edge above the water under")
		if !(c.Value < last) {
			t.Errorf("%s leaves %g m, less load %g m", q, c.Value, last)
		}
		last = c.Value
	}
}

// "unknown" is legal for every field, and knowing less never turns a check that
// was short, or had no answer, into one that holds.
func TestUnknownNeverImproves(t *testing.T) {
	if testing.Short() {
		t.Skip("a report for each field takes its time")
	}
	tried := 0
	for b, base := range []string{
		demoText(t, "swim"),
		demoText(t, "work"),
		demoText(t, "swim", `"count": 2, "mass": "185 lb"`, `"count": 12, "mass": "320 lb"`, `"flotation": "20 psf"`, `"flotation": "45 psf"`,
			`"length": "36-1/2 in", "mass": "22 lb"`, `"length": "36-1/2 in", "mass": "140 lb"`, `"moisture": "60 %"`, `"moisture": "110 %"`),
		demoText(t, "swim", `"clear": "20 in"`, `"clear": "5 in"`, `"girth": "6 ft 1 in"`, `"girth": "4 ft"`, `, "volume": "67 gal"`, ``, `"deck": "40 psf"`, `"deck": "100 psf"`,
			`"mass": "60 lb", "along": "2 ft", "across": "5 ft", "above": "14 in"`, `"mass": "900 lb", "along": "2 ft", "across": "9 ft", "above": "9 ft"`),
		demoText(t, "work", `"spacing": "400 mm"`, `"spacing": "900 mm"`, `"size": "38 mm x 140 mm", "species"`, `"size": "20 mm x 140 mm", "species"`,
			`"temperature": "20 C"`, `"temperature": "40 C"`, `"crowd_from_edge": "150 mm"`, `"crowd_from_edge": "0 mm"`, `"count": 3, "mass": "95 kg"`, `"count": 9, "mass": "95 kg"`),
	} {
		p, err := plan.Read("base", strings.NewReader(base))
		if err != nil {
			t.Fatal(err)
		}
		d, err := dock.Build(p)
		if err != nil {
			t.Fatal(err)
		}
		before := reported(t, d, measure.US)
		for i, e := range plan.Explain() {
			// One of the five plans for each field, in turn; every fifth field, unless
			// all are asked for: that takes minutes.
			if (i+b)%5 > 0 || os.Getenv("ALL_FIELDS") == "" && i/5%5 != b {
				continue
			}
			path := strings.ReplaceAll(e.Path, "[]", "[1]")
			q, err := p.Vary(path, "unknown")
			if errors.Is(err, measure.ErrName) {
				continue // a list or an object, or one that this plan does not have
			}
			if err != nil {
				t.Errorf("%s: %v", path, err)
				continue
			}
			tried++
			d, err := dock.Build(q)
			if err != nil {
				t.Errorf("%s unknown: %v", path, err)
				continue
			}
			r := reported(t, d, measure.US)
			sound(t, r)
			for i, topic := range before.Topics {
				for j, c := range topic.Checks {
					now := r.Topics[i].Checks[j]
					if c.Verdict() != measure.Holds && now.Verdict() == measure.Holds {
						t.Errorf("%s unknown: %v, was %v", path, now, c)
					}
				}
			}
		}
	}
	if tried < 30 {
		t.Errorf("only %d values were tried", tried)
	}
}
