package dock_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

func accepts(t *testing.T, path string) string {
	t.Helper()
	for _, e := range plan.Explain() {
		if e.Path == path {
			return e.Accepts
		}
	}
	t.Fatalf("no field %s", path)
	return ""
}

// The words in which the plan explains coatings and durations are those of the packages
// that know them.
func TestExplainedNames(t *testing.T) {
	all := fasten.Finishes()
	for _, path := range []string{"hardware.joist_ends.finish", "hardware.joist_ends.bracket_finish", "hardware.deck_finish", "hardware.ties[].finish"} {
		text := accepts(t, path)
		for _, f := range all {
			checks, err := fasten.Exposure{Fresh: true, Drains: true}.Check(fasten.Metal{Finish: f.Name, Connector: f.Use == "connectors"})
			if err != nil {
				t.Fatal(err)
			}
			stands := checks[0].Steps[f.Level]
			_, behind, found := strings.Cut(text, strconv.Quote(f.Name))
			_, behind, _ = strings.Cut(behind, "(")
			if word, _, _ := strings.Cut(behind, ")"); !found || word != stands {
				t.Errorf("%s: %s is said to be %q, is %q", path, f.Name, word, stands)
			}
		}
	}
	text := accepts(t, "hardware.joist_ends.printed_for")
	for d := lumber.TenYears; d <= lumber.TenMinutes; d++ {
		f, err := d.Factor(lumber.Fb)
		if want := strconv.Quote(strconv.FormatFloat(f.Value, 'g', -1, 64)) + " (" + d.String() + ")"; err != nil || !strings.Contains(text, want) {
			t.Errorf("%q has no %s", text, want)
		}
	}
}

// What is a step of a scale, a yes or a no is printed by its name.
func TestNamedSteps(t *testing.T) {
	for _, c := range []struct {
		swap         []string
		check, value string
	}{
		{nil, "Coating of the fasteners", "2 (for treated wood that dries), at least 2 (for treated wood that dries)"},
		{[]string{`"dries": "yes"`, `"dries": "no"`}, "Coating of the screws", "4 (for salt, or wet for good), at least 4 (for salt, or wet for good)"},
		{[]string{`"finish": "hot-dip galvanized",`, `"finish": "plain steel",`}, "Coating of the fasteners", "0 (for dry rooms), at least 2 (for treated wood that dries)"},
		{[]string{`"leak_tested": "yes"`, `"leak_tested": "no"`}, "Leak test", "no; must be yes"},
		{[]string{`"held": "food"`, `"held": "oil or fuel"`}, "What was in it before", "not harmless; must be harmless"},
		{[]string{`"bungs": "level at the sides"`, `"bungs": "in the side wall"`}, "Bungs", "elsewhere; must be level at the sides"},
		{nil, "Coating of the tie", "no metal in it"},
		{nil, "Hinge", "the plan has none"},
	} {
		for _, s := range []measure.System{measure.US, measure.SI} {
			got := check(t, reported(t, swappedDock(t, "swim", c.swap...), s), c.check)
			if text := got.Numbers(s); text != c.value {
				t.Errorf("%s: %q, want %q", c.check, text, c.value)
			}
		}
	}
	r := reported(t, swappedDock(t, "swim", `, "printed_for": "1"`, ``), measure.US)
	for _, a := range append(r.Deciding, r.Assumed...) {
		if a.Name == "hardware.joist_ends.printed_for" {
			if a.Text != "1.6, ten minutes" {
				t.Errorf("%+v", a)
			}
			return
		}
	}
	t.Error("the duration left out is not told")
}

// What a report says in one system of units has no number in the other's, but in
// what a thing is called and in the titles of sources.
func TestOneSystemOnly(t *testing.T) {
	foreign := map[measure.System]*regexp.Regexp{
		measure.US: regexp.MustCompile(`\d (mm|m|km|kg|N|kN|Pa|kPa|MPa|N/m|N·m|J|L|m2|m²|m/s|km/h|C|°C)( |$|[,.;:)])`),
		measure.SI: regexp.MustCompile(`\d (ft|lb|lbf|psf|plf|mph|gal|F|°F|ft/s|sq ft|lbf·ft)( |$|[,.;:)])`),
	}
	quoted := regexp.MustCompile(`\([^()]*(\([^()]*\)[^()]*)*\)$|55 gal|38 mm x \d+ mm|"[^"]*"`) // a source behind it; names
	narrow := strings.NewReplacer(`"width": "10 ft"`, `"width": "7 ft 6 in"`, `"people": [`, `"people": [ { "who": "the 20 ft club", "count": 30 },`, `"depth": "9 ft"`, `"depth": "unknown"`)
	for name, in := range map[string]string{
		"swim": demoText(t, "swim"), "work": demoText(t, "work"),
		"new": started(t, 2.4, measure.US), "narrow": started(t, 1.5, measure.SI), "crowd": narrow.Replace(demoText(t, "work")),
	} {
		d, err := dock.Read(name, strings.NewReader(in))
		if err != nil {
			t.Fatal(name, err)
		}
		for s, re := range foreign {
			r := reported(t, d, s)
			look := func(what, text string) {
				if bad := re.FindString(quoted.ReplaceAllString(text, "")); bad != "" {
					t.Errorf("%s in system %d, %s: %q in %q", name, s, what, bad, text)
				}
			}
			for _, topic := range r.Topics {
				for _, c := range topic.Checks {
					look(c.Name, c.Numbers(s))
					if c.Err != nil {
						look(c.Name, c.Err.Error())
					}
					for _, n := range c.Notes {
						look(c.Name, n)
					}
				}
			}
			for _, a := range append(r.Deciding, r.Assumed...) {
				look(a.Name, a.Text)
			}
			for _, c := range r.Cautions {
				look("caution", c.Text)
			}
			for _, step := range r.Steps {
				look("step", step.Do+" "+strings.Join(step.Stops, " "))
			}
		}
	}
}

func started(t *testing.T, width float64, s measure.System) string {
	t.Helper()
	text, err := plan.Start{Units: s, Length: 5, Width: width, Drum: "55 gal drum", Girth: 1.85, Long: 0.886, Mass: 10}.JSON()
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
