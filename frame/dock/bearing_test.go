package dock

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber/measure"
)

// TestLayoutIsTheDock: the layout puts every float where the dock floats it, on
// what the dock says it bears on.
func TestLayoutIsTheDock(t *testing.T) {
	for name, d := range docks(t) {
		l, err := d.Layout()
		if err != nil {
			t.Fatal(name, err)
		}
		for i, m := range d.floats {
			b := l.Bearings[i]
			size := d.floatSize(m.set)
			if x, y := b.At.X-d.length/2, b.At.Y-d.width/2; math.Hypot(x-m.x, y-m.y) > 1e-6 && b.Shift < 1e-9 {
				t.Errorf("%s: float %d at %g, %g, laid out at %g, %g", name, i+1, m.x, m.y, x, y)
			}
			if size.drum && math.Abs(b.Centre-m.z) > 1e-9 {
				t.Errorf("%s: float %d with its axis at %g m, laid out at %g m", name, i+1, m.z, b.Centre)
			}
			want := map[seat]layout.Seat{underJoists: layout.UnderJoists, wedged: layout.Wedged, underBoards: layout.UnderBoards}[m.seat]
			if b.Seat != want {
				t.Errorf("%s: float %d sits %v, laid out %v", name, i+1, m.seat, b.Seat)
			}
		}
		area := 0.0
		for i := range l.Drawing.Pieces {
			area += l.Area(i)
		}
		if math.Abs(area-d.length*d.width) > 1e-9*area {
			t.Errorf("%s: the pieces carry %g m² of a deck of %g m²", name, area, d.length*d.width)
		}
	}
}

// TestUnderBoards: drums in wide bays lift boards and pull screws; the more so the
// harder they push, and nothing is known without a screw.
func TestUnderBoards(t *testing.T) {
	d := docks(t)["drums under boards"]
	e, err := d.Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range e.Bearings {
		// A line load on the boards between two joists: half of a board's share at each
		// of two joists or more.
		if b.Spread != 0 || !(b.Board > b.Push.Value/8 && b.Board < b.Push.Value/2) || !(b.Screw > b.Board/4 && b.Screw < b.Board) {
			t.Errorf("%s pushes with %g N, lifts a board with %g N, pulls a screw with %g N", b.Name, b.Push.Value, b.Board, b.Screw)
		}
	}
	find := func(d *Dock) measure.Check {
		for _, c := range d.fit() {
			if strings.HasPrefix(c.Name, "Boards that must be on") {
				return c
			}
		}
		t.Fatal("no check of boards")
		return measure.Check{}
	}
	c := find(d)
	if c.Err != nil || !(c.Value >= 2) || !(c.Limit >= 5 && c.Limit <= 8) || len(c.Notes) != len(d.floats) {
		t.Errorf("%v", c)
	}
	d.plan.Frame.Decking.Screws.Value = 4
	if more := find(d); more.Value > c.Value {
		t.Errorf("more screws need more boards: %g, %g", more.Value, c.Value)
	}
	d.plan.Frame.Decking.Screw.Value = ""
	if c := find(d); !errors.Is(c.Err, measure.ErrUnknown) {
		t.Errorf("without a screw: %v", c)
	}
	if c := find(docks(t)["blocks under"]); c.Verdict() != measure.Holds || c.Limit != 0 {
		t.Errorf("under joists: %v", c)
	}
}

// TestSpreads: wedged drums push joists apart by the circle's geometry: push times
// tan θ/2 with sin θ the opening over the diameter.
func TestSpreads(t *testing.T) {
	d := demoDock(t, "swim")
	e, err := d.Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	sin := 19.0 / (73 / math.Pi)
	tan := sin / math.Sqrt(1-sin*sin)
	for i, b := range e.Bearings[:3] {
		if want := b.Push.Value * tan / 2; math.Abs(b.Spread-want) > 1e-6*want {
			t.Errorf("float %d: spreads with %g N, by hand %g N", i+1, b.Spread, want)
		}
	}
}

func TestFaultsOnTheSheet(t *testing.T) {
	d := docks(t)["drums in bays"]
	checks := d.fit()
	if c := checks[1]; c.Verdict() != measure.Short || !strings.Contains(strings.Join(c.Notes, " "), "drops away") {
		t.Errorf("untied drums: %v, %q", c, c.Notes)
	}
	d = docks(t)["blocks under"]
	if c := d.fit()[1]; !strings.Contains(strings.Join(c.Notes, " "), "drops away") {
		t.Errorf("untied blocks: %v, %q", c, c.Notes)
	}
	for i := range d.plan.Floats {
		d.plan.Floats[i].Tied.Value = "yes"
	}
	if c := d.fit()[1]; c.Verdict() != measure.Holds {
		t.Errorf("tied blocks: %v", c)
	}
	var zero Dock
	if _, err := zero.Layout(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("the zero dock: %v", err)
	}
}

// TestLiftIsNetOfWeight: what lifts the boards is the float's push less its own weight: a
// float nearly as heavy as the water it displaces lifts next to nothing.
func TestLiftIsNetOfWeight(t *testing.T) {
	d := docks(t)["drums under boards"]
	boards := func(share float64) float64 {
		set := *d.floats[0].set
		set.Mass.Value = share * waterHeavy * d.floatVolume(0)
		of := *d
		of.floats = slices.Clone(d.floats)
		for i := range of.floats {
			of.floats[i].set = &set
		}
		l, err := of.Layout()
		if err != nil {
			t.Fatal(err)
		}
		return of.boardsOn(l, nil, nil).Value
	}
	light, heavy := boards(0.01), boards(0.99)
	if !(heavy < light) {
		t.Errorf("%g boards hold a heavy float, %g a light one", heavy, light)
	}
}

// TestFaultsInOrder: the worst stands first, and of like ones the first found.
func TestFaultsInOrder(t *testing.T) {
	d := docks(t)["blocks under"]
	l, err := d.Layout()
	if err != nil {
		t.Fatal(err)
	}
	l.Conflicts = nil
	for _, c := range []struct {
		name    string
		missing float64
	}{{"first", 0.1}, {"second", 0.1}, {"third", 0.1 * (1 + 1e-12)}, {"worst", 0.2}, {"least", 0.05}} {
		l.Conflicts = append(l.Conflicts, layout.Conflict{Kind: layout.Overlaps, A: c.name, B: "rim", Missing: c.missing})
	}
	var c measure.Check
	d.faults(&c, l, []layout.Fault{layout.Overlaps})
	for i, want := range []string{"worst", "first", "second", "and 2 more"} {
		if i >= len(c.Notes) || !strings.HasPrefix(c.Notes[i], want) {
			t.Errorf("note %d is not of %s: %q", i, want, c.Notes)
		}
	}
	if c.Value != 0.2 {
		t.Errorf("%g m are missing at most", c.Value)
	}
}
