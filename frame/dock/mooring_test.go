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

// topic returns the checks of one topic.
func topic(t testing.TB, r *dock.Report, title string) []measure.Check {
	t.Helper()
	for _, x := range r.Topics {
		if x.Title == title {
			return x.Checks
		}
	}
	t.Fatalf("no topic %q", title)
	return nil
}

const linesTitle = "LINES AND WATER LEVEL"

// The demo's lines are followed to ground, and what nobody has judged is named.
func TestLinesOfDemo(t *testing.T) {
	r := report(t, demoText(t, "swim"))
	sound(t, r)
	for _, title := range []string{linesTitle, "LOCAL LIMITS AND PERMITS"} {
		if n := len(topic(t, r, title)); n < 7 {
			t.Errorf("%s: %d checks", title, n)
		}
	}
	// The pine's strength is unknown: no answer, and it is named.
	c := check(t, r, "Line 1, pine line: what it ends in, old pine")
	if c.Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(c.Err), "old pine") {
		t.Errorf("%v", c)
	}
	for _, name := range []string{"Line 2, shore left: what it ends in, screw 1", "Line 1, pine line: cleat", "Line 3, lake right: rope"} {
		if c := check(t, r, name); c.Verdict() == measure.NoAnswer {
			t.Errorf("%v", c)
		}
	}
	if c := check(t, r, "Permits and notices"); len(c.Notes) == 0 || !strings.HasPrefix(c.Notes[0], "reused drums") || c.Verdict() != measure.NoAnswer {
		t.Errorf("%v %q", c, c.Notes)
	}
}

// Without lines there is no answer, and the sheet says what to measure.
func TestNoLines(t *testing.T) {
	r := report(t, demoText(t, "work"))
	for _, c := range topic(t, r, linesTitle) {
		if c.Verdict() != measure.NoAnswer {
			t.Errorf("%v", c)
		}
	}
	if c := check(t, r, "Lines: cleat"); !errors.Is(c.Err, measure.ErrUnknown) || !strings.Contains(c.Err.Error(), "length by tape") {
		t.Errorf("%v", c)
	}
}

// What is not known is named and takes the answer.
func TestUnknownMooring(t *testing.T) {
	for _, c := range []struct{ path, check, says string }{
		{"mooring.wind_speed", "Line 1, pine line: cleat", "mooring.wind_speed"},
		{"mooring.current", "Line 1, pine line: cleat", "mooring.current"},
		{"site.level_low", "Line 2, shore left: rope", "site.level_low"},
		{"site.level_high", "Lowest level", "site.level_high"},
		{"site.depth", "Depth at low water", "site.depth"},
		{"site.shore_points[1].along", "Line 1, pine line: cleat", "site.shore_points[1].along"},
		{"mooring.lines[1].cleat_breaks", "Line 1, pine line: cleat", "cleat"},
		{"mooring.lines[1].corner", "Line 1, pine line: cleat", "mooring.lines[1].corner"},
		{"mooring.lines[1].shackle", "Line 1, pine line: rope", "mooring.lines[1].shackle"},
		{"mooring.lines[2].pieces[1].mass", "Line 2, shore left: rope", "mooring.lines[2].pieces[1].mass"},
		{"mooring.lines[2].to", "Line 2, shore left: what", "mooring.lines[2].to"},
		{"mooring.anchors[1].depth", "Line 2, shore left: what", "mooring.anchors[1].depth"},
		{"mooring.anchors[1].holding", "Line 2, shore left: what", "screw 1"},
		{"mooring.hinged_to", "Hinge", "mooring.hinged_to"},
		{"mooring.has_ramp", "Ramp", "mooring.has_ramp"},
		{"mooring.hauled_out", "Hauling out: the line", "mooring.hauled_out"},
		{"local.reach", "Reach", "local.reach"},
		{"local.most_area", "Area", "local.most_area"},
		{"local.least_setback", "Setback", "local.least_setback"},
		{"local.off_ice_by", "Time on the ice", "local.off_ice_by"},
		{"local.flotation_rule", "Kinds of floats", "local.flotation_rule"},
		{"local.drums", "Kinds of floats", "local.drums"},
		{"local.mains", "Mains", "local.mains"},
	} {
		p, err := plan.Read("swim", strings.NewReader(demoText(t, "swim")))
		if err != nil {
			t.Fatal(err)
		}
		if p, err = p.Vary(c.path, "unknown"); err != nil {
			t.Fatal(err)
		}
		d, err := dock.Build(p)
		if err != nil {
			t.Fatal(err)
		}
		got := find(t, d, c.check)
		if got.Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(got.Err), c.says) {
			t.Errorf("%s: %v, want no answer for want of %s", c.path, got, c.says)
		}
	}
}

// find runs the two topics alone.
func find(t testing.TB, d *dock.Dock, name string) measure.Check {
	t.Helper()
	for _, c := range append(dock.Mooring(d), dock.Local(d)...) {
		if strings.HasPrefix(c.Name, name) {
			return c
		}
	}
	t.Fatalf("no check %q", name)
	return measure.Check{}
}

func read(t testing.TB, swap ...string) *dock.Dock {
	t.Helper()
	d, err := dock.Read("test", strings.NewReader(demoText(t, "swim", swap...)))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// By hand: on its pine line alone, in next to no wind, the dock swings out and the
// line takes all of the drift of the waves seen, ρgH²/8 on the width it shows them:
// 9806.65 N/m³ x (0.3048 m)²/8 = 113.9 N/m on 3.048 m cos 67.5° + 7.315 m sin 67.5° =
// 7.925 m, the widest of the sixteen directions, 902.5 N.
func TestLineByHand(t *testing.T) {
	text := demoText(t, "swim", `"wind_speed": "25 mph"`, `"wind_speed": "1 mph"`)
	i, j := strings.Index(text, `      { "name": "shore left"`), strings.Index(text, `    "anchors": [`)
	i = strings.LastIndex(text[:i], ",")
	d, err := dock.Read("one line", strings.NewReader(text[:i]+"],"+text[j:]))
	if err != nil {
		t.Fatal(err)
	}
	c := find(t, d, "Line 1, pine line: cleat")
	if math.Abs(c.Value-902.5) > 20 {
		t.Errorf("%v, by hand 902.5 N", c)
	}
	if c := find(t, d, "Lines whose loss"); c.Verdict() != measure.Short || c.Value != 1 {
		t.Errorf("the only line lost: %v", c)
	}
}

// A line too short for high water is taut there, one that lies about works not at all.
func TestLevelsOfLines(t *testing.T) {
	const piece = `"size": "7/8 in", "length": "15 ft"`
	for _, c := range []struct {
		swap []string
		name string
	}{
		{[]string{`"level_high": "1 ft"`, `"level_high": "9 ft"`}, "Highest level"},
		{[]string{piece, `"size": "7/8 in", "length": "40 ft"`}, "Lowest level"},
	} {
		got := find(t, read(t, c.swap...), c.name)
		if got.Verdict() == measure.Holds {
			t.Errorf("%q: %v %q", c.swap, got, got.Notes)
		}
	}
	if c := find(t, read(t, `"depth": "9 ft",
    "shore_points"`, `"depth": "2 ft 6 in",
    "shore_points"`), "Depth at low water"); c.Verdict() != measure.Short {
		t.Errorf("it grounds: %v", c)
	}
	if c := find(t, read(t, `"level_high": "1 ft"`, `"level_high": "-2 ft"`), "Highest level"); c.Verdict() != measure.NoAnswer {
		t.Errorf("low above high: %v", c)
	}
}

// The worst of a line, against single rests by brute force at every level and
// direction: the checks' values are no less than any of them, and met by one.
func TestWorstByBruteForce(t *testing.T) {
	d := read(t)
	got := find(t, d, "Line 3, lake right: cleat").Value
	most, finer := dock.BruteForce(t, d, 2)
	if math.Abs(got-most) > 0.02*most {
		t.Errorf("survey %g N, by single rests %g N", got, most)
	}
	if finer > 1.1*got {
		t.Errorf("between the survey's levels and directions it pulls %g N, %g N in the survey", finer, got)
	}
}

// Hinge, ramp and hauling out where the plan has them.
func TestHingeRampHaul(t *testing.T) {
	const none = `"hinged_to": "nothing", "has_ramp": "no", "hauled_out": "no"`
	d := read(t, none, `"hinged_to": "float", "hinge": { "edge": "near end", "pins": 2, "width": "8 ft", "diameter": "1 in", "plate": "1/2 in", "height": "12 in", "neighbour_height": "12 in", "pin_breaks": "90000 lbf" },
    "has_ramp": "yes", "ramp": { "length": "12 ft", "mass": "200 lb", "shore_height": "4 ft" },
    "hauled_out": "yes", "haul_out": { "slope": "10 deg", "parts": 2, "kind": "nylon 3-strand", "size": "7/8 in", "holding": "20000 lbf" }`)
	hinge := find(t, d, "Hinge")
	if hinge.Verdict() != measure.Holds || !(hinge.Value > 0) {
		t.Errorf("%v", hinge)
	}
	pier := find(t, read(t, none, `"hinged_to": "pier", "hinge": { "edge": "near end", "pins": 2, "width": "8 ft", "diameter": "1 in", "plate": "1/2 in", "height": "12 in", "neighbour_height": "12 in", "pin_breaks": "90000 lbf" },
    "has_ramp": "no", "hauled_out": "no"`), "Hinge")
	if !(pier.Value > hinge.Value) {
		t.Errorf("a pier that does not follow the water pulls the pins with %g N, a float with %g N", pier.Value, hinge.Value)
	}
	// The ramp by hand: from 4 ft to the deck, the lake 1 ft 6 in down, over 12 ft.
	deck := check(t, reported(t, read(t), measure.US), "Water to the deck's lowest corner with nobody").Value
	drop := 5.5*measure.Foot - deck
	want := drop / math.Sqrt(144*measure.Foot*measure.Foot-drop*drop)
	if c := find(t, d, "Ramp"); c.Err != nil || math.Abs(math.Tan(c.Value)-want) > 1e-6 && math.Abs(c.Value-want) > 1e-6 {
		t.Errorf("%v, by hand a slope of %g", c, want)
	}
	line, winch := find(t, d, "Hauling out: the line"), find(t, d, "Hauling out: what")
	if line.Err != nil || winch.Err != nil || math.Abs(winch.Value/line.Value-8.0/3) > 1e-9 {
		// Two parts with a tenth a sheave: 0.6 of the pull in the line, 1.6 on the winch's anchor.
		t.Errorf("%v; %v", line, winch)
	}
}

// Fetches, a current and a block on the bottom enter, and more of each is never less.
func TestMoreWeatherPullsMore(t *testing.T) {
	most := func(swap ...string) float64 {
		d, out := read(t, swap...), 0.0
		for _, name := range []string{"Line 1, pine line: cleat", "Line 2, shore left: cleat", "Line 3, lake right: cleat", "Line 4, lake left: cleat"} {
			c := find(t, d, name)
			if c.Verdict() == measure.NoAnswer {
				return math.NaN()
			}
			out = max(out, c.Value)
		}
		return out
	}
	calm := most()
	const eight = `"current": "0 mph", "fetch": { "n": "2 mi", "ne": "2 mi", "e": "2 mi", "se": "2 mi", "s": "2 mi", "sw": "2 mi", "w": "2 mi", "nw": "2 mi" }`
	for _, more := range []string{
		`"current": "2 mph", "current_to": "90 deg"`, eight,
		`"current": "0 mph", "above": [{ "name": "boat", "end_area": "20 sq ft", "side_area": "60 sq ft", "height": "2 ft" }]`,
	} {
		if got := most(`"current": "0 mph"`, more); !(got > calm) {
			t.Errorf("%s: %g N, without %g N", more, got, calm)
		}
	}
	if got := most(`"current": "0 mph"`, strings.Replace(eight, `"n": "2 mi", `, "", 1)); !math.IsNaN(got) {
		t.Errorf("seven fetches: %g N", got)
	}
	block := find(t, read(t, `"kind": "tested", "mass": "28 lb", "holding": "3600 lbf", "steepest": "20 deg" }`,
		`"kind": "dead weight", "material": "concrete", "mass": "400 lb", "bottom": "silt" }`), "Line 2, shore left: what")
	if block.Verdict() != measure.Short {
		t.Errorf("a small block: %v", block)
	}
}

// Electricity is never silent, and entered limits are checked.
func TestLocal(t *testing.T) {
	for _, c := range []struct {
		swap []string
		name string
		want measure.Verdict
	}{
		{nil, "Mains", measure.Holds},
		{[]string{`"mains": "no"`, `"mains": "yes"`}, "Mains", measure.NoAnswer},
		{nil, "Reach", measure.Holds},
		{[]string{`"reach": "60 ft"`, `"reach": "101 ft"`}, "Reach", measure.Short},
		{[]string{`"most_area": "400 sq ft"`, `"most_area": "239 sq ft"`}, "Area", measure.Short},
		{[]string{`"setback": "30 ft"`, `"setback": "14 ft"`}, "Setback", measure.Short},
		{nil, "Time on the ice", measure.Holds},
		{[]string{`"off_ice_by": "2027-05-15"`, `"off_ice_by": "2027-03-01"`}, "Time on the ice", measure.Short},
		{[]string{`"flotation_rule": "any"`, `"flotation_rule": "no reused drums"`}, "Kinds of floats", measure.Short},
		{[]string{`"offices_asked": "no"`, `"offices_asked": "yes"`}, "Permits", measure.Holds},
	} {
		if got := find(t, read(t, c.swap...), c.name); got.Verdict() != c.want {
			t.Errorf("%q: %v, want %v", c.swap, got, c.want)
		}
	}
}

// What an owner asks before building: permits, the worst first.
func ExampleDock_Permits() {
	file, err := plan.Demo("swim")
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := dock.Read("swim.json", file)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range d.Permits()[:2] {
		fmt.Printf("%s: ask %s\n", p.Ask, p.Whom)
	}
	// Output:
	// reused drums as flotation: ask the lake's authority
	// a structure in or over the water: ask the state, province or county's water office
}
