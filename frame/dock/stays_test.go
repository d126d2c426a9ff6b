package dock_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

// twoRows are the swim platform's drums two to a bay, with room to slide.
var twoRows = []string{`["21-5/8 in", "5 ft", "8 ft 2-3/8 in"]`, `["3 ft", "7 ft 6 in"]`}

// TestStaysWeigh: blocks weigh on the dock by what a joist weighs to its length, 29 lb on
// 9 ft 6 in, in the floating as in the frame, and are carried down, marked and nailed.
func TestStaysWeigh(t *testing.T) {
	bare := swappedDock(t, "swim", twoRows...)
	d := swappedDock(t, "swim", append([]string{`"tied": "yes",`, blocked}, twoRows...)...)
	r0, r := reported(t, bare, measure.US), reported(t, d, measure.US)
	s, err := d.Shape()
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Stays) < 12 {
		t.Fatalf("%d blocks", len(s.Stays))
	}
	want := 0.0
	for i, b := range s.Stays {
		long := b.X1 - b.X0
		want += 29 * measure.Pound * long / (9.5 * measure.Foot)
		if !(b.Mark > 0) || math.Abs(b.Y0-b.Mark) > 1e-9 || i > 0 && (b.Bay < s.Stays[i-1].Bay || b.Bay == s.Stays[i-1].Bay && b.Mark <= s.Stays[i-1].Mark) {
			t.Errorf("%+v", b)
		}
	}
	const name = "Weight of the whole dock"
	if got := check(t, r, name).Value - check(t, r0, name).Value; math.Abs(got-want) > 1e-6 {
		t.Errorf("blocks weigh %.2f kg, by hand %.2f kg", got, want)
	}
	// The frame's own weight has them too, at each block's place.
	e0, err0 := bare.Envelope(t.Context())
	e, err := d.Envelope(t.Context())
	if err != nil || err0 != nil {
		t.Fatal(err, err0)
	}
	if got := (e.Situations[0].Weight - e0.Situations[0].Weight) / measure.Gravity; math.Abs(got-want) > 1e-6 {
		t.Errorf("the frame carries %.2f kg of blocks, by hand %.2f kg", got, want)
	}
	if all := check(t, r, name).Value; math.Abs(e.Situations[0].Weight/measure.Gravity-all) > 1e-6 {
		t.Errorf("the frame weighs %g kg, the dock %g kg", e.Situations[0].Weight/measure.Gravity, all)
	}
	// They float the dock as as many things of their weight would, fixed at their middles:
	// half a joist, 3-5/8 in, over its underside, 5-1/8 in under the deck's top.
	var things strings.Builder
	for _, b := range s.Stays {
		fmt.Fprintf(&things, `{ "name": "thing", "mass": "%.9f kg", "along": "%.9f m", "across": "%.9f m", "above": "-5-1/8 in" }, `,
			29*measure.Pound*(b.X1-b.X0)/(9.5*measure.Foot), (b.X0+b.X1)/2, (b.Y0+b.Y1)/2)
	}
	like, err0 := swappedDock(t, "swim", append([]string{`"weights": [`, `"weights": [ ` + things.String()}, twoRows...)...).Empty()
	state, err := d.Empty()
	if err != nil || err0 != nil {
		t.Fatal(err, err0)
	}
	if math.Abs(state.Heel-like.Heel) > 1e-6 || math.Abs(state.Trim-like.Trim) > 1e-6 || math.Abs(state.Mass-like.Mass) > 1e-5 {
		t.Errorf("blocks: heel %g, trim %g, %g kg; as things %g, %g, %g kg", state.Heel, state.Trim, state.Mass, like.Heel, like.Trim, like.Mass)
	}
	found := false
	for _, h := range r.Shop.Carry {
		found = found || h.Piece == "stop or block" && h.Count == len(s.Stays) && math.Abs(h.Each*float64(h.Count)-want) < 1e-6
	}
	if !found {
		t.Errorf("no blocks are carried: %+v", r.Shop.Carry)
	}
	struck, nailed, tied := -1, -1, -1
	for i, step := range r.Steps {
		mark := measure.Length.Format(s.Stays[0].Mark, measure.US)
		switch {
		case strings.HasPrefix(step.Do, "Strike the near faces of the stops") && strings.Contains(step.Do, mark):
			struck = i
		case strings.HasPrefix(step.Do, "Nail the stops") && strings.Contains(step.Do, mark) && strings.Contains(step.Do, "3 x 16d common nail"):
			nailed = i
		case strings.HasPrefix(step.Do, "Tie every float"):
			tied = i
		}
	}
	if struck < 0 || !(nailed > struck) || !(tied > nailed) {
		t.Errorf("struck in step %d, nailed in %d, tied in %d", struck+1, nailed+1, tied+1)
	}
	for _, step := range r0.Steps {
		if strings.Contains(step.Do, "stops and blocks") {
			t.Errorf("no stops: %q", step.Do)
		}
	}
}

// TestCrossingHolds: a crossing lighter than the people in it, or than the heaviest that
// goes out with whoever carries it, has no answer.
func TestCrossingHolds(t *testing.T) {
	const crossing, beside = "Ice for one crossing", "Ice for the people at the dock"
	at := func(said string, swaps ...string) (c, b measure.Check) {
		t.Helper()
		r := reported(t, swappedDock(t, "swim", append([]string{`"mass": "670 lb", "people": 3`, said}, swaps...)...), measure.US)
		return check(t, r, crossing), check(t, r, beside)
	}
	// A rim of 111 lb and three people of 185 lb are 666 lb.
	if c, b := at(`"mass": "670 lb", "people": 3`); c.Verdict() != measure.Holds || b.Err != nil {
		t.Errorf("%v; %v", c, b)
	}
	if c, b := at(`"mass": "660 lb", "people": 3`); c.Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(c.Err), "666 lb or more, for the heaviest that goes out: rim with 3 people") || b.Err != nil {
		t.Errorf("%v; %v", c, b)
	}
	for said, people := range map[string]bool{`"mass": "60 lb", "people": 1`: true, `"mass": "300 lb", "people": 3`: true, `"mass": "600 lb", "people": 3`: false} {
		c, b := at(said)
		if c.Verdict() != measure.NoAnswer || c.Err == nil || (b.Err != nil) != people || !math.IsNaN(c.Limit) {
			t.Errorf("%s: %v; %v", said, c, b)
		}
	}
	// An anchor of 500 lb goes with ten people.
	heavy := []string{
		`"name": "screw 1", "along": "-25 ft 6 in", "across": "35 ft 6 in", "depth": "9 ft", "kind": "tested", "mass": "28 lb"`,
		`"name": "screw 1", "along": "-25 ft 6 in", "across": "35 ft 6 in", "depth": "9 ft", "kind": "tested", "mass": "500 lb"`,
	}
	if c, _ := at(`"mass": "2300 lb", "people": 10`, heavy...); c.Verdict() != measure.NoAnswer || !strings.Contains(fmt.Sprint(c.Err), "2350 lb or more, for the heaviest that goes out: anchor screw 1 with 10 people") {
		t.Errorf("%v", c)
	}
	if c, _ := at(`"mass": "2400 lb", "people": 10`, heavy...); c.Err != nil {
		t.Errorf("%v", c)
	}
	if c, _ := at(`"mass": "670 lb", "people": 3`, `"mass": "28 lb", `, ""); c.Err != nil || !strings.Contains(strings.Join(c.Notes, "\n"), "not weighed, and not in what crosses: anchor screw 1") {
		t.Errorf("%v %q", c, c.Notes)
	}
}

// TestCarryAnchorsAndLines: what holds the dock goes over the ice, too, and is set in a
// step of its own; hardware takes as many people as its weight asks.
func TestCarryAnchorsAndLines(t *testing.T) {
	r := demoReport(t, "swim")
	want := map[string]float64{"anchor screw 1": 28, "anchor screw 3": 28, "pine line": 6.8, "line shore left": 43, "hardware": 65}
	for _, h := range r.Shop.Carry {
		if m, ok := want[h.Piece]; ok {
			delete(want, h.Piece)
			if math.Abs(h.Each/measure.Pound-m) > 1e-6 || h.Err != nil {
				t.Errorf("%+v, want %g lb", h, m)
			}
			if h.Piece == "hardware" && (h.People != 2 || h.Trips != 1) {
				t.Errorf("65 lb at 51 lb a person: %+v", h)
			}
		}
	}
	if len(want) > 0 {
		t.Errorf("not carried: %v", want)
	}
	found := false
	for _, s := range r.Steps {
		found = found || strings.HasPrefix(s.Do, "Set each anchor at its place") && strings.Contains(s.Do, "screw 2, 28.0 lb, at 49 ft 6 in along, -25 ft 6 in across")
	}
	if !found {
		t.Error("no step sets the anchors")
	}
	for _, h := range reported(t, swappedDock(t, "swim", `"stock": [`, `"shop": { "carriers": 1 }, "stock": [`), measure.US).Shop.Carry {
		if h.Piece == "hardware" && (h.People != 1 || h.Trips != 2) {
			t.Errorf("65 lb with one to carry: %+v", h)
		}
	}
}

// TestHarmfulDrums: a drum known to have held what harms is not rinsed by the builder.
func TestHarmfulDrums(t *testing.T) {
	for held, harms := range map[string]bool{"poison or solvent": true, "oil or fuel": true, "food": false, "unknown": false} {
		r := varied(t, demoText(t, "swim"), "hardware.drums[1].held", held)
		sent := false
		for _, s := range r.Steps {
			all := s.Do + strings.Join(s.Gates, " ") + strings.Join(s.Stops, " ")
			if !strings.Contains(all, "rinse") {
				continue
			}
			if strings.Contains(s.Do, "do not rinse, open, drill") {
				sent = strings.Contains(s.Do, "licensed reconditioner") && strings.Contains(s.Do, held) && len(s.Stops) == 1 && strings.Contains(s.Stops[0], held)
				continue
			}
			if own := strings.HasPrefix(s.Do, "Each plastic drum: rinse"); own == harms {
				t.Errorf("%s: %q", held, s.Do)
			}
		}
		if sent != harms {
			t.Errorf("%s: sent away %v", held, sent)
		}
	}
}

// TestAngleFigures: an angle's maker is asked only for the ways that bend the angle; its
// bolts are on the list without him.
func TestAngleFigures(t *testing.T) {
	angle := `"by": "angle", "fastener": "1/2 x 5 bolt", "count": 2, "in_joist": 2, "steel": "1/4 in", "edge": "2 in", "end": "3-1/2 in", "spacing": "2 in", "finish": "hot-dip galvanized A153", "bracket_finish": "hot-dip galvanized A123"`
	text := demoText(t, "swim")
	from := strings.Index(text, `"joist_ends": {`)
	to := from + strings.Index(text[from:], "}")
	text = text[:from] + `"joist_ends": { ` + angle + " " + text[to:]
	d, err := dock.Read("angle", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	r := reported(t, d, measure.US)
	for name, lacks := range map[string]string{
		"Joist's end carried": "", "Joist's end held down": "", "Joist's end to and fro": "",
		"Joist pulled off its rim": "hardware.joist_ends.along", "Joist's end slid": "hardware.joist_ends.lateral",
	} {
		c := check(t, r, name)
		if (c.Err == nil) != (lacks == "") || lacks != "" && !strings.Contains(c.Err.Error(), lacks) {
			t.Errorf("%v: %v", c, c.Err)
		}
	}
	rows, items, _ := d.Hardware()
	if all := fmt.Sprint(rows, items); !strings.Contains(all, "angle in the rim") || !strings.Contains(all, "1/2 bolt, 5 in long") {
		t.Errorf("no angles: %s", all)
	}
}

// TestSignAndCompare: what a comparison says of people is the sign's number, and the
// report says why its check has another.
func TestSignAndCompare(t *testing.T) {
	d := swappedDock(t, "swim")
	r := reported(t, d, measure.US)
	e, err := d.Envelope(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	p, err := d.Plate(e)
	if err != nil {
		t.Fatal(err)
	}
	c := check(t, r, "Everyone together at one edge")
	if !(c.Limit > float64(p.People)) || !strings.Contains(strings.Join(c.Notes, "\n"), "fewer than the 4 people that the floats alone bear") {
		t.Errorf("sign %d, check %v %q", p.People, c, c.Notes)
	}
	capsized := report(t, demoText(t, "swim", `"count": 2, "mass": "185 lb"`, `"count": 25, "mass": "185 lb"`))
	seen := 0
	for _, row := range dock.Compare(r, capsized).Rows {
		switch row.Question {
		case "People that the sign has, wherever they stand":
			seen++
			if a := row.Answers[0]; a.Value != float64(p.People) || !strings.Contains(a.Note, p.Limit) {
				t.Errorf("%+v, the sign has %d", a, p.People)
			}
		case "Tilt, everyone at one edge":
			seen++
			if a := row.Answers[1]; a.Words != "capsizes" || a.Note != "short" {
				t.Errorf("%+v", a)
			}
		}
	}
	if seen != 2 {
		t.Errorf("%d rows", seen)
	}
}

// TestNothingToAsk: what the plan has none of is not among what holds.
func TestNothingToAsk(t *testing.T) {
	r := demoReport(t, "swim")
	holds, nothing := 0, 0
	for _, topic := range r.Topics {
		for _, c := range topic.Checks {
			switch {
			case c.Verdict() != measure.Holds:
			case len(c.Steps) == 1:
				nothing++
			default:
				holds++
			}
		}
	}
	head := strings.Join(strings.Fields(text(t, r)), " ")
	if want := fmt.Sprintf("%d hold or are not ruled out", holds); nothing == 0 || !strings.Contains(head, want) || !strings.Contains(head, fmt.Sprintf("of %d more there is nothing to ask", nothing)) {
		t.Errorf("%d hold, of %d there is nothing to ask: %.200s", holds, nothing, head)
	}
}

// TestLevelsAreFound: the level to which lines work is where one ceases to, not where the
// search ended, and a line that works on says so.
func TestLevelsAreFound(t *testing.T) {
	r := demoReport(t, "swim")
	for name, ceases := range map[string]string{"Lowest level to which": "slack below", "Highest level to which": "taut above"} {
		c := check(t, r, name)
		if off := math.Abs(c.Value - c.Limit); math.Abs(off-measure.Foot) < 1e-6 || !strings.Contains(strings.Join(c.Notes, "\n"), ceases+" "+measure.Length.Format(c.Value, measure.US)) {
			t.Errorf("%v %q", c, c.Notes)
		}
	}
}

// TestLaunchLimitsByCorner: the step's limits are the launch's own, corner by corner where
// they differ.
func TestLaunchLimitsByCorner(t *testing.T) {
	d := swappedDock(t, "swim")
	l, err := d.Launch()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range reported(t, d, measure.US).Steps {
		if !strings.HasPrefix(s.Do, "From a boat or from shore") {
			continue
		}
		first := measure.Length.Format(l.Corners[0].Within, measure.US)
		alike := true
		for _, c := range l.Corners {
			alike = alike && measure.Length.Format(c.Within, measure.US) == first
		}
		for _, c := range l.Corners {
			want := c.Name + ": " + measure.Length.Format(c.Within, measure.US)
			if alike {
				want = "lower than that by more than " + first
			}
			if !strings.Contains(s.Stops[0], want) {
				t.Errorf("%q lacks %q", s.Stops[0], want)
			}
		}
		return
	}
	t.Error("no step")
}
