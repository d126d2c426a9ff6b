package dock

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame"
	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// Water over the ice has days only where the law reaches them and there may be ice.
func TestFlooded(t *testing.T) {
	now := time.Date(2027, 2, 6, 12, 0, 0, 0, time.UTC)
	day := func(n int) time.Time { return now.AddDate(0, 0, n) }
	for _, c := range []struct {
		soonest, latest time.Time
		want            string
	}{
		{day(3), day(20), "water over the ice between 2027-02-09 and 2027-02-26"},
		{day(3), time.Time{}, "water over the ice from 2027-02-09 at the soonest, at the latest past four months from now, or never"},
		{day(3), day(200), "water over the ice from 2027-02-09 at the soonest, at the latest past four months from now, or never"},
		{day(180), time.Time{}, "water over the ice not before 180 days after it was set, which is more than four months from now"},
		{time.Time{}, time.Time{}, "water over the ice not before 180 days after it was set, which is more than four months from now"},
	} {
		if got := new(Dock).flooded(ice.Flood{Soonest: 180 * measure.Day}, c.soonest, c.latest, now); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	for n, want := range map[int]string{0: "0 people", 1: "1 person", 2: "2 people"} {
		if got := heads(n); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	for n, want := range map[int]string{0: "0 people of 84 kg each", 1: "1 person of 84 kg", 2: "2 people of 84 kg each"} {
		if got := headsOf(n, "84 kg"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	for n, want := range map[int]string{0: "0 days", 1: "1 day", 2: "2 days"} {
		if got := several(n, "day"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What the frame says in metres from its middle, the report says along the tape, and the
// error stays what it is.
func TestPlaced(t *testing.T) {
	d := &Dock{length: 16 * measure.Foot, width: 8 * measure.Foot, units: measure.US}
	err := d.placed(&frame.CapsizeError{Place: "node joist 1 at 1-1/2 in at (-2.419, -1.181) m", Motion: "turns about a line through (1.219, 0.610) m"})
	const want = "frame: it capsizes: node joist 1 at 1-1/2 in turns about a line through 12 ft along, 6 ft across"
	if err.Error() != want || !errors.Is(err, frame.ErrCapsizes) {
		t.Errorf("%v", err)
	}
	if plain := errors.New("nothing of it"); d.placed(plain) != plain || d.placed(nil) != nil {
		t.Error("changed what has no place")
	}
}

// Hard ice that a hole's finder marks is passed on as found, and only it.
func TestHardIsFound(t *testing.T) {
	for answer, want := range map[string]bool{"yes": true, "no": false} {
		d := varied(t, `"white": "0 in"`, `"white": "0 in", "hard": "`+answer+`"`)
		for i, h := range d.survey().Holes {
			if h.Hard != want {
				t.Errorf("hole %d, hard %s: %v", i+1, answer, h.Hard)
			}
		}
	}
}

// Joists share loads as the code's factor asks up to 24 in on centre, and three or more of
// them (NDS 2018 4.3.9, as quoted); a tape's finest mark decides nothing.
func TestRepetitive(t *testing.T) {
	for _, c := range []struct {
		marks []float64 // in
		want  bool
	}{
		{[]float64{0, 24, 48, 72}, true},
		{[]float64{0.1, 24.1, 48.1}, true},
		{[]float64{0, 24.1, 48}, false},
		{[]float64{0, 24}, false},
		{[]float64{0, 12, 24}, true},
		{[]float64{0, 24 + 1./64, 48}, true},
	} {
		d := &Dock{}
		for _, m := range c.marks {
			d.centres = append(d.centres, m*measure.Inch)
		}
		if got := d.repetitive(); got != c.want {
			t.Errorf("joists at %v in: %v", c.marks, got)
		}
	}
}

// A name that holds a quantity stays as the plan has it, with the text around restated.
func TestNamesStay(t *testing.T) {
	d := varied(t, `"name": "old pine"`, `"name": "pine, 3.0 m off"`, `"to": "old pine"`, `"to": "pine, 3.0 m off"`)
	names := d.named()
	if !slices.Contains(names, "pine, 3.0 m off") {
		t.Errorf("%q", names)
	}
	for _, n := range names {
		if measure.Restate(n, measure.US) == n && measure.Restate(n, measure.SI) == n {
			t.Errorf("%q holds no quantity", n)
		}
	}
	const text = "pine, 3.0 m off: 2.0 m short"
	got := restated(text, names, measure.US)
	if !strings.HasPrefix(got, "pine, 3.0 m off: ") || strings.Contains(got, "2.0 m short") {
		t.Errorf("%q", got)
	}
	if got := restated(text, nil, measure.US); strings.Contains(got, " m ") {
		t.Errorf("without names: %q", got)
	}
}

// A ride carried to the rest of another dock that does not bend keeps its shape: its
// movements differ by that of a plane. To its own rest it stays as it is.
func TestShiftedKeepsShape(t *testing.T) {
	_, rides := rideAll(t, mustRaft(t, docks(t)["drums under"]))
	leaning := rides[0]
	for _, r := range rides {
		if r != nil && math.Abs(r.unbent.Heel) > math.Abs(leaning.unbent.Heel) {
			leaning = r
		}
	}
	if math.Abs(leaning.unbent.Heel) < 0.01 {
		t.Fatal("none heels")
	}
	for i, m := range leaning.shifted(leaning.unbent).Move {
		for k := range m {
			if math.Abs(m[k]-leaning.Move[i][k]) > 1e-12 {
				t.Fatalf("node %d moves by itself: %v, was %v", i, m, leaning.Move[i])
			}
		}
	}
	// To the level one: what each node is lowered is what the slopes say.
	level := rides[0]
	to := leaning.shifted(level.unbent)
	heel, trim := level.unbent.Heel-leaning.unbent.Heel, level.unbent.Trim-leaning.unbent.Trim
	for i, m := range to.Move {
		if math.Abs(m[1]-leaning.Move[i][1]+heel) > 1e-12 || math.Abs(m[2]-leaning.Move[i][2]-trim) > 1e-12 {
			t.Fatalf("node %d turns to %v from %v", i, m, leaning.Move[i])
		}
	}
}

// Dragged on skids by both corners of an edge, each takes half of friction times weight,
// outward.
func TestSkids(t *testing.T) {
	d := demoDock(t, "swim")
	met, err := d.situations()
	if err != nil {
		t.Fatal(err)
	}
	tow := d.plan.Loads.Skid.Value * d.weighs()
	if !(tow > 0) {
		t.Fatal("no friction")
	}
	seen := 0
	for _, s := range met {
		edge, ok := strings.CutPrefix(s.Name, "dragged on skids by both corners of the ")
		if !ok {
			continue
		}
		seen++
		want := map[string]pull{ends[0]: {x: -tow / 2}, ends[1]: {x: tow / 2}, sides[0]: {y: -tow / 2}, sides[1]: {y: tow / 2}}[edge]
		if len(s.pulls) != 2 || s.pulls[0].node == s.pulls[1].node {
			t.Fatalf("%s: %+v", s.Name, s.pulls)
		}
		for _, p := range s.pulls {
			if math.Abs(p.x-want.x) > 1e-9 || math.Abs(p.y-want.y) > 1e-9 {
				t.Errorf("%s: %+v, by hand %+v", s.Name, p, want)
			}
		}
	}
	if seen != 4 {
		t.Errorf("%d edges", seen)
	}
}

// What governs a joist's bending is told: on 117 in, 400 lb on one spot bends it more
// than 40 lbf/ft² on two feet of deck, 975 against 951 lbf·ft, and 380 lb less.
func TestSpotGoverns(t *testing.T) {
	d := demoDock(t, "swim")
	s := stand{rests: []float64{0, d.clear}, onRims: true, width: 2 * measure.Foot}
	for spot, want := range map[float64]bool{400: true, 380: false} {
		out, err := d.demands(s, 2e5, 100, 40*measure.PSF*2*measure.Foot, spot*measure.PoundForce)
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range out {
			if o.spotGoverns != want {
				t.Errorf("%g lbf on a spot: governs %v", spot, o.spotGoverns)
			}
		}
	}
}
