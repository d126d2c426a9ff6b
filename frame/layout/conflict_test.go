package layout_test

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber/measure"
)

// with returns the index of a piece by name.
func with(t *testing.T, d *layout.Drawing, name string) *layout.Piece {
	t.Helper()
	for i := range d.Pieces {
		if d.Pieces[i].Name == name {
			return &d.Pieces[i]
		}
	}
	t.Fatalf("no piece %s", name)
	return nil
}

// Each kind of conflict, provoked once: its parts and what is missing, by hand.
func TestConflicts(t *testing.T) {
	block := func(y float64) layout.Piece {
		return layout.Piece{
			Name: "block", Kind: layout.Blocking, Width: 1.5 * in, Depth: 7.25 * in,
			From: layout.Point{X: 1.5 * in, Y: y * in}, To: layout.Point{X: 26 * in, Y: y * in},
		}
	}
	strips := func(d *layout.Drawing, wide float64) {
		for k, x := range []float64{1.5 + wide/2, 26 - wide/2} {
			d.Pieces = append(d.Pieces, layout.Piece{
				Name: "keeper " + string(rune('1'+k)), Kind: layout.Strip, Width: wide * in, Depth: 12 * in, Bottom: -11.5 * in,
				From: layout.Point{X: x * in, Y: 30 * in}, To: layout.Point{X: x * in, Y: 66 * in},
			})
		}
		d.Drums[0].Tied = false
	}
	seen := map[layout.Fault]bool{}
	for _, c := range []struct {
		name   string
		change func(d *layout.Drawing)
		kind   layout.Fault
		a, b   string
		inches float64
	}{
		{"blocking drawn into a joist", func(d *layout.Drawing) {
			p := block(30)
			p.To.X = 27 * in
			d.Pieces = append(d.Pieces, p)
		}, layout.Overlaps, "joist 2", "block", 1},
		{"two drums in one place", func(d *layout.Drawing) {
			o := d.Drums[0]
			o.Name, o.At.Y = "drum C", o.At.Y+30*in
			d.Drums = append(d.Drums, o)
		}, layout.Overlaps, "drum A", "drum C", 5},
		{"a joist cut an inch short", func(d *layout.Drawing) { with(t, d, "joist 2").From.Y += 1 * in }, layout.Apart, "joist 2", "rim 1", 7.0 / 8},
		{"a rim an inch off", func(d *layout.Drawing) {
			p := with(t, d, "rim 2")
			p.From.Y, p.To.Y = p.From.Y+1*in, p.To.Y+1*in
			d.Decks = nil
		}, layout.Apart, "joist 3", "rim 2", 7.0 / 8},
		{"a stop nailed to nothing", func(d *layout.Drawing) {
			p := with(t, d, "stop A1")
			p.From.X, p.To.X = p.From.X+6*in, p.To.X-5*in
		}, layout.Apart, "stop A1", "joist 2", 5 - 1.0/8},
		{"a pin past the end of its joist", func(d *layout.Drawing) {
			p := block(30)
			p.Name, p.From.X, p.To.X = "far rim", 84*in, 110*in
			d.Pieces = append(d.Pieces, p)
			d.Pins = []layout.Pin{{Name: "pin", At: layout.Point{X: 82 * in, Y: 33 * in}, On: [2]string{"joist 4", "far rim"}}}
		}, layout.Apart, "pin", "far rim", 2},
		{"a deck on nothing", func(d *layout.Drawing) {
			d.Decks[0].Min.X, d.Decks[0].Max.X = 90*in, 120*in
		}, layout.Apart, "deck", "rim 1", 10.5},
		{"a drum in a tight bay", func(d *layout.Drawing) { d.Drums[0].Diameter = 24.2 * in }, layout.TightBay, "drum A", "joist 1", 0.2},
		{"a drum between tight stops", func(d *layout.Drawing) { d.Drums[0].Length = 35.5 * in }, layout.TightEnds, "drum A", "stop A1", 0.25},
		{"blocking over a drum", func(d *layout.Drawing) { d.Pieces = append(d.Pieces, block(48)) }, layout.Covered, "drum A", "block", 17.5 + 0.75},
		{"a thin drum in a wide bay", func(d *layout.Drawing) { d.Drums[0].Diameter = 22.5 * in }, layout.Rolls, "drum A", "joist 1", 0.5},
		{"stops too far apart", func(d *layout.Drawing) {
			p := with(t, d, "stop A2")
			p.From.Y, p.To.Y = p.From.Y+1*in, p.To.Y+1*in
		}, layout.Slides, "drum A", "stop A2", 0.75},
		{"no stops along a drum under joists", func(d *layout.Drawing) {
			d.Drums[0].At.X, d.Drums[0].Along, d.Drums[0].DropIn, d.Drums[0].Bears = 39.75*in, true, false, layout.UnderJoists
		}, layout.Slides, "drum A", "the frame's edge", 39.75},
		{"no stops beside a drum under joists", func(d *layout.Drawing) {
			d.Drums[0].At.X, d.Drums[0].Along, d.Drums[0].DropIn, d.Drums[0].Bears = 39.75*in, true, false, layout.UnderJoists
		}, layout.Rolls, "drum A", "the frame's edge", 48},
		{"no tie", func(d *layout.Drawing) { d.Drums[0].Tied = false }, layout.Drops, "drum A", "joist 1", 23.5},
		{"keepers too narrow", func(d *layout.Drawing) { strips(d, 0.25) }, layout.Drops, "drum A", "keeper 2", 0.5},
		{"a drum on the last joist alone", func(d *layout.Drawing) {
			d.Drums[0].At.X, d.Drums[0].Along, d.Decks = (79.5+5)*in, true, nil
		}, layout.Rocks, "drum A", "joist 4", 5.75},
		{"meant to be wedged", func(d *layout.Drawing) { d.Drums[0].Bears = layout.Wedged }, layout.Elsewhere, "drum A", "deck", 1},
		{"meant to bear on boards, wedged", func(d *layout.Drawing) { d.Drums[0].Diameter = 30 * in }, layout.Elsewhere, "drum A", "joist 1", 7.25 - (15 - math.Sqrt(15*15-12.25*12.25))},
		{"meant under joists", func(d *layout.Drawing) { d.Drums[0].Bears = layout.UnderJoists }, layout.Elsewhere, "drum A", "deck", 7.25},
		{"no boards", func(d *layout.Drawing) { d.Decks = nil }, layout.Unborne, "drum A", "joist 1", 1},
		{"a drum out past the deck", func(d *layout.Drawing) { d.Drums[0].At.Y = 10 * in }, layout.Protrudes, "drum A", "deck", 7.5},
		{"a tail towards a drum", func(d *layout.Drawing) {
			d.Bolts[0].At, d.Bolts[0].Tail, d.Bolts[0].Height = layout.Point{X: 1.5 * in, Y: 48 * in}, layout.Point{X: 2 * in}, 2*in
		}, layout.TailNear, "bolt", "drum A", 1 - (math.Hypot(10.25, 6.5) - 11.75)},
		{"a nut behind blocking", func(d *layout.Drawing) { d.Pieces = append(d.Pieces, block(4.75)) }, layout.NoReach, "bolt", "block", 2.5},
		{"boards of no rating", func(d *layout.Drawing) { d.Decks[0].Rating = 0 }, layout.WideSpan, "deck", "joist 2 and joist 3", 2},
		{"thin boards", func(d *layout.Drawing) { d.Decks[0].Thickness, d.Decks[0].Rating = 0.75*in, 0 }, layout.WideSpan, "deck", "joist 1 and joist 2", 0.25},
		{"plies spliced side by side", func(d *layout.Drawing) {
			p := with(t, d, "rim 1")
			p.Plies, p.Splices = 2, []layout.Splice{{At: 20 * in, Ply: 1}, {At: 50 * in, Ply: 2}}
		}, layout.SplicesClose, "rim 1", "rim 1", 18},
		{"all plies spliced at once", func(d *layout.Drawing) {
			p := with(t, d, "rim 1")
			p.Plies, p.Splices = 2, []layout.Splice{{At: 20 * in}}
		}, layout.SplicesClose, "rim 1", "rim 1", 48},
	} {
		d := bays(t)
		c.change(&d)
		l := lay(t, d)
		found := false
		for _, x := range l.Conflicts {
			if !(x.Missing > 0) || x.A == "" || x.B == "" {
				t.Errorf("%s: %+v", c.name, x)
			}
			if x.Kind == c.kind && x.A == c.a && x.B == c.b {
				found = true
				about(t, c.name, x.Missing/in, c.inches, 1e-6)
				if s := x.String(); !strings.HasPrefix(s, c.a+" "+c.kind.String()+" "+c.b+": ") || !strings.Contains(s, "mm") && !strings.Contains(s, " m ") {
					t.Errorf("%s: %q", c.name, s)
				}
			}
		}
		if !found {
			t.Errorf("%s: not among %v", c.name, l.Conflicts)
		}
		seen[c.kind] = true
	}
	l := lay(t, bays(t))
	lift, err := l.Lift(0, 2000, layout.Strength{Moment: 10, Screw: 200, Screws: 2})
	if err != nil || lift.Conflict == nil || lift.Rows != nil {
		t.Fatalf("%+v, %v", lift, err)
	}
	seen[lift.Conflict.Kind] = true
	for f := layout.Overlaps; f <= layout.WeakBoards; f++ {
		if !seen[f] {
			t.Errorf("%v was not provoked", f)
		}
	}
	if layout.Fault(-1).String() != layout.Fault(99).String() || layout.Kind(99).String() == layout.Ladder.String() || layout.Seat(-1).String() == layout.Wedged.String() {
		t.Error("names of what is none")
	}
}

// Practice's rooms: a drum of 23.5 in. goes into bays of 24 to 25 in., and stops
// stand 36.5 to 37 in. apart for a drum of 35 in.: common practice, no source.
func TestPractice(t *testing.T) {
	r := layout.Practice()
	about(t, "narrowest bay", 23.5*in+r.Side[0], 24*in, 1e-12)
	about(t, "widest bay", 23.5*in+r.Side[1], 25*in, 1e-12)
	about(t, "nearest stops", 35*in+r.End[0], 36.5*in, 1e-12)
	about(t, "farthest stops", 35*in+r.End[1], 37*in, 1e-12)
	for _, bay := range []float64{23.9, 24, 24.5, 25, 25.1} {
		d := bays(t)
		// The second drum's bay grows: joist 4 and the deck move with it.
		d.Pieces[5].From.X, d.Pieces[5].To.X = (53.5+bay+0.75)*in, (53.5+bay+0.75)*in
		d.Drums[1].At.X = (53.5 + bay/2) * in
		rooms := 0
		for _, c := range lay(t, d).Conflicts {
			if c.A == "drum B" && (c.Kind == layout.TightBay || c.Kind == layout.Rolls) {
				rooms++
			}
		}
		if want := bay < 24 || bay > 25; (rooms > 0) != want {
			t.Errorf("bay of %g in.: %d conflicts", bay, rooms)
		}
	}
	own := bays(t)
	own.Room = r
	own.Room.Side[0] = 2 * in
	if l := lay(t, own); len(l.Conflicts) != 2 || l.Conflicts[0].Kind != layout.TightBay || l.Conflicts[0].Format(measure.US) == "" {
		t.Errorf("%v", l.Conflicts)
	}
}
