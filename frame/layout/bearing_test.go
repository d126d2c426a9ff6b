package layout_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber/measure"
)

// A 5-12-13 wedge by hand: half of the opening 5, radius 13, centre 12 below.
func TestWedgeByHand(t *testing.T) {
	rise, press, spread, err := layout.Wedge(26*in, 10*in)
	if err != nil {
		t.Fatal(err)
	}
	about(t, "rise", rise, 1*in, 1e-15)
	about(t, "press", press, 13.0/24, 1e-15)
	about(t, "spread", spread, 5.0/24, 1e-15)
	// An opening of nothing: the drum hangs on two edges side by side.
	rise, press, spread, err = layout.Wedge(0.6, 0)
	if err != nil || rise != 0 || press != 0.5 || spread != 0 {
		t.Error(rise, press, spread, err)
	}
	for _, c := range [][2]float64{{0.6, 0.6}, {0.6, -0.1}, {0.6, math.NaN()}, {0, 0}, {math.Inf(1), 1}, {math.NaN(), 0}} {
		if _, _, _, err := layout.Wedge(c[0], c[1]); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%v: %v", c, err)
		}
	}
}

// wedged is the frame of bays with drums too wide for them.
func wedged(t testing.TB, diameter float64) layout.Drawing {
	t.Helper()
	d := bays(t)
	for i := range d.Drums {
		d.Drums[i].Diameter, d.Drums[i].Bears, d.Drums[i].DropIn = diameter, layout.Wedged, false
	}
	return d
}

func TestWedged(t *testing.T) {
	d := wedged(t, 28*in)
	d.Drums[0].At.X += 2 * in // it rolls back to the middle of its bay
	l := lay(t, d)
	b := l.Bearings[0]
	rise, press, spread, err := layout.Wedge(28*in, 24.5*in)
	if err != nil || b.Seat != layout.Wedged {
		t.Fatal(err, b)
	}
	about(t, "crown", b.Crown, rise, 1e-12)
	about(t, "way to the middle", b.Shift, 2*in, 1e-12)
	about(t, "its place", b.At.X, 13.75*in, 1e-12)
	edges, apart, err := b.Press(1000)
	if err != nil {
		t.Fatal(err)
	}
	about(t, "left edge", edges[0], 1000*press, 1e-9)
	about(t, "right edge", edges[1], 1000*press, 1e-9)
	about(t, "spread", apart, 1000*spread, 1e-9)
	for _, c := range b.Contacts {
		about(t, "share", c.Share, 0.25, 1e-12)
	}
	for _, c := range l.Conflicts {
		if c.Kind != layout.Protrudes { // by a quarter of an inch
			t.Error(c)
		}
	}
	if _, _, err := b.Press(-1); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	b.Angle = [2]float64{-1, 1}
	if _, _, err := b.Press(1); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	if e, s, err := (layout.Bearing{}).Press(1); e != [2]float64{} || s != 0 || err != nil {
		t.Error(e, s, err)
	}
}

// Joists of unequal depth: from a root finder and a linear solve, independently.
func TestWedgeOnUnequalEdges(t *testing.T) {
	s := layout.Piece{Width: 1.5 * in, Depth: 9.25 * in, Kind: layout.Joist}
	left, right := s, s
	left.Name, left.To.Y, left.From.X, left.To.X = "left", 96*in, -0.75*in, -0.75*in
	right.Name, right.To.Y, right.From.X, right.To.X, right.Bottom = "right", 96*in, 17.75*in, 17.75*in, -1.5*in
	l := lay(t, layout.Drawing{
		Pieces: []layout.Piece{left, right},
		Drums:  []layout.Drum{{Name: "drum", At: layout.Point{X: 8 * in, Y: 48 * in}, Diameter: 23.5 * in, Length: 35 * in}},
	})
	b := l.Bearings[0]
	if b.Seat != layout.Wedged {
		t.Fatalf("%+v", b)
	}
	about(t, "place across", b.At.X/in, 7.79001601904065, 1e-12)
	about(t, "centre", b.Centre/in, -8.79648511753928, 1e-12)
	edges, spread, err := b.Press(1)
	if err != nil {
		t.Fatal(err)
	}
	about(t, "left edge", edges[0], 0.785006976486711, 1e-13)
	about(t, "right edge", edges[1], 0.663976933568256, 1e-13)
	about(t, "spread", spread, 0.520443993352407, 1e-13)
	var up [2]float64
	for _, c := range b.Contacts {
		up[c.Piece] += c.Share
	}
	about(t, "left joist's share", up[0], 0.785006976486711*math.Cos(0.724792462556648), 1e-12)
	about(t, "both", up[0]+up[1], 1, 1e-12)
}

func TestUnderJoists(t *testing.T) {
	d := bays(t)
	d.Decks = nil
	// Along the dock under joists 1 to 4, its middle off the middle of them.
	d.Drums = []layout.Drum{
		{Name: "long", At: layout.Point{X: 38 * in, Y: 20 * in}, Diameter: 20 * in, Length: 100 * in, Along: true, Tied: true, Bears: layout.UnderJoists},
		{Name: "short", At: layout.Point{X: 37 * in, Y: 75 * in}, Diameter: 20 * in, Length: 34 * in, Along: true, Tied: true},
		{Name: "lengthwise", At: layout.Point{X: 52.75 * in, Y: 48 * in}, Diameter: 14 * in, Length: 30 * in, Tied: true},
		{Name: "block", At: layout.Point{X: 20 * in, Y: 48 * in}, Diameter: 30 * in, Length: 40 * in, Height: 16 * in, Along: true, Tied: true},
		{Name: "crossways block", At: layout.Point{X: 66 * in, Y: 40 * in}, Diameter: 30 * in, Length: 40 * in, Height: 16 * in, Tied: true},
	}
	l := lay(t, d)
	for i, b := range l.Bearings {
		f := d.Drums[i]
		height := f.Height
		if height == 0 {
			height = f.Diameter
		}
		if b.Seat != layout.UnderJoists {
			t.Errorf("%s is %v", f.Name, b.Seat)
		}
		about(t, f.Name+", centre", b.Centre, -height/2, 1e-12)
		var sum, x, y float64
		for _, c := range b.Contacts {
			m := l.Members[c.Member]
			i, j := l.Nodes[m.I].At, l.Nodes[m.J].At
			q := c.From / (m.To - m.From)
			sum, x, y = sum+c.Share, x+c.Share*(i.X+q*(j.X-i.X)), y+c.Share*(i.Y+q*(j.Y-i.Y))
			if c.Share <= 0 {
				t.Errorf("%s: %+v", f.Name, c)
			}
		}
		about(t, f.Name+", all", sum, 1, 1e-12)
		about(t, f.Name+", x of the push", x, f.At.X, 1e-9)
		about(t, f.Name+", y of the push", y, f.At.Y, 1e-9)
	}
	if n := len(l.Bearings[0].Contacts); n != 4 {
		t.Errorf("the long drum touches %d joists", n)
	}
	// Two joists share the short one by the lever: 26.75 and 52.75 in.
	about(t, "lever", l.Bearings[1].Contacts[0].Share, (52.75-37)/26, 1e-12)
	if n := len(l.Bearings[2].Contacts); n != 2 {
		t.Errorf("the drum along one joist touches it at %d places", n)
	}
	for _, slices := range []int{1, 3} {
		d.Slices = slices
		if n := len(lay(t, d).Bearings[2].Contacts); n != slices {
			t.Errorf("%d slices, %d contacts", slices, n)
		}
	}
}

// A strip below the drum's middle keeps it and does not stop it; one above its
// middle does. A drum beside one joist alone rolls clear of it.
func TestKeepers(t *testing.T) {
	d := bays(t)
	d.Drums[0].Tied = false
	for k, x := range []float64{2.25, 25.25} {
		d.Pieces = append(d.Pieces, layout.Piece{
			Name: "keeper " + string(rune('1'+k)), Kind: layout.Strip, Width: 1.5 * in, Depth: 12 * in, Bottom: -11.5 * in,
			From: layout.Point{X: x * in, Y: 30 * in}, To: layout.Point{X: x * in, Y: 66 * in},
		})
	}
	l := lay(t, d)
	if b := l.Bearings[0]; b.Seat != layout.UnderBoards || len(l.Conflicts) != 0 {
		t.Errorf("%+v, %v", b, l.Conflicts)
	}
	bare := bays(t)
	bare.Decks[0].Max.X = 120 * in
	bare.Drums = []layout.Drum{{Name: "outside", At: layout.Point{X: (79.5 + 10) * in, Y: 48 * in}, Diameter: 23.5 * in, Length: 35 * in, Tied: true}}
	b := lay(t, bare).Bearings[0]
	about(t, "rolls clear", b.Shift, 1.75*in, 1e-12)
	if b.Seat != layout.UnderBoards || b.Between[1] != -1 || b.Opening != 0 {
		t.Errorf("%+v", b)
	}
	// Where it rolls clear of the deck too, nothing holds it down.
	off := bare
	off.Decks = []layout.Deck{bare.Decks[0]}
	off.Decks[0].Max.X = 90 * in
	gone := lay(t, off)
	if b := gone.Bearings[0]; b.Seat != layout.Nothing || b.Deck != -1 || len(b.Contacts) != 0 {
		t.Errorf("%+v", b)
	}
	if c := gone.Conflicts[0]; c.Kind != layout.Unborne || c.B != "joist 4" {
		t.Errorf("%v", c)
	}
	// It bends the boards' ends up, 12-1/2 in. past the axis of the last joist.
	lift, err := lay(t, bare).Lift(0, 1000, layout.Strength{Moment: 1e5, Screw: 1e5, Screws: 1})
	if err != nil {
		t.Fatal(err)
	}
	about(t, "moment of the ends", lift.Moment, lift.Board*12.5*in, 1e-9)
	// M at the last joist bends back over three spans: -4/15 of it at the next.
	about(t, "pull of the last joist", lift.Screw, lift.Board*(1+12.5/26*(1+4.0/15)), 1e-9)

	// Stops under a drum hand its push to the joists that they stand between, a
	// strip to the joist that it lies along.
	low := bays(t)
	low.Drums = low.Drums[:1]
	low.Drums[0].At.X, low.Drums[0].Length = 11*in, 41*in
	low.Pieces = slices.Clone(low.Pieces)
	for i := range low.Pieces {
		if low.Pieces[i].Kind == layout.Stop {
			low.Pieces[i].Bottom = -2 * in
		}
	}
	low.Pieces = append(low.Pieces, layout.Piece{Name: "strip", Kind: layout.Strip, Width: 1.5 * in, Depth: 3.5 * in, Bottom: 0, From: layout.Point{X: 2.25 * in, Y: 40 * in}, To: layout.Point{X: 2.25 * in, Y: 50 * in}})
	l = lay(t, low)
	low.Pieces[len(low.Pieces)-1].Bottom = -2 * in
	low.Drums[0].Diameter, low.Drums[0].At.X = 22*in, 3*in
	for _, l := range []*layout.Layout{l, lay(t, low)} {
		b := l.Bearings[0]
		sum, x := 0.0, 0.0
		for _, c := range b.Contacts {
			if l.Drawing.Pieces[c.Piece].Kind != layout.Joist || c.Member < 0 {
				t.Errorf("%+v", c)
			}
			sum, x = sum+c.Share, x+c.Share*l.Nodes[c.Node].At.X
		}
		if b.Seat != layout.UnderJoists {
			t.Errorf("%+v", b)
		}
		about(t, "all", sum, 1, 1e-12)
	}
}

// A drum that comes up under the middle of two boards on edge between joists: its
// push goes to either joist by the lever. Stops that hang below a drum's crown are
// met where they are, not at its widest place.
func TestStops(t *testing.T) {
	d := bays(t)
	d.Decks, d.Drums = nil, d.Drums[:1]
	d.Drums[0] = layout.Drum{Name: "drum", At: layout.Point{X: 10 * in, Y: 48 * in}, Diameter: 10 * in, Length: 60 * in, Tied: true}
	for i := range d.Pieces {
		if d.Pieces[i].Kind == layout.Stop {
			d.Pieces[i].Bottom, d.Pieces[i].Depth = 1*in, 6*in
		}
	}
	b := lay(t, d).Bearings[0]
	if b.Seat != layout.UnderJoists {
		t.Fatalf("%+v", b)
	}
	var up [4]float64
	for _, c := range b.Contacts {
		up[c.Piece-2] += c.Share
	}
	about(t, "left joist", up[0], (26.75-10)/26, 1e-12)
	about(t, "right joist", up[1], (10-0.75)/26, 1e-12)

	// A drum of 20 in. under all joists; strips 3-1/2 in. deep hang 8 in. on either
	// side of its axis, where it is 2·√(10² - 6.5²) wide.
	d = bays(t)
	d.Drums = []layout.Drum{{Name: "drum", At: layout.Point{X: 39.75 * in, Y: 48 * in}, Diameter: 20 * in, Length: 70 * in, Along: true, Tied: true}}
	for k, y := range []float64{48 - 8.75, 48 + 8.75} {
		d.Pieces = append(d.Pieces, layout.Piece{
			Name: "chock " + string(rune('1'+k)), Kind: layout.Stop, Width: 1.5 * in, Depth: 3.5 * in, Bottom: -3.5 * in,
			From: layout.Point{X: 10 * in, Y: y * in}, To: layout.Point{X: 70 * in, Y: y * in},
		})
	}
	l := lay(t, d)
	found := false
	for _, c := range l.Conflicts {
		if c.Kind == layout.Rolls {
			t.Errorf("%v: it has %g in.", c, c.Has/in)
		}
		found = found || c.Kind == layout.Slides
	}
	if !found { // nothing stands at its ends
		t.Errorf("%v", l.Conflicts)
	}
	for i := range d.Pieces {
		if d.Pieces[i].Kind == layout.Stop {
			d.Pieces[i].From.Y += math.Copysign(1*in, d.Pieces[i].From.Y-48*in)
			d.Pieces[i].To.Y = d.Pieces[i].From.Y
		}
	}
	found = false
	for _, c := range lay(t, d).Conflicts {
		if c.Kind == layout.Rolls {
			found = true
			about(t, "free way", c.Has, 2*(9-math.Sqrt(10*10-6.5*6.5))*in, 1e-12)
		}
	}
	if !found {
		t.Error("it does not roll")
	}
}

// Boards over a drum: a point push at the middle of the first of three spans of
// 26 in., simple: M = PL/4, half at each end; running on: M = 0.2 PL, 0.725 at the
// inner joist (theorem of three moments).
func TestLift(t *testing.T) {
	d := bays(t)
	l := lay(t, d)
	strong := layout.Strength{Moment: 1e5, Screw: 1e5, Screws: 2}
	lift, err := l.Lift(0, 1000, strong)
	if err != nil {
		t.Fatal(err)
	}
	about(t, "line load", lift.Line, 1000/(35*in), 1e-9)
	if lift.Crossing != 6 || len(lift.Rows) != 2 {
		t.Fatalf("%+v", lift)
	}
	// Rows of 5-3/4 in.: the middles are at 2.75 + 5.75 n; 48 lies between the 8th
	// at 43 and the 9th at 48.75.
	if lift.Rows[0] != 8 || lift.Rows[1] != 9 {
		t.Errorf("rows %v", lift.Rows)
	}
	share := (48 - 43) / 5.75
	about(t, "harder pushed board", lift.Board, 1000*share, 1e-9)
	about(t, "moment", lift.Moment, lift.Board*26*in/4, 1e-9)
	about(t, "screw", lift.Screw, lift.Board*0.725/2, 1e-9)

	// What one board holds sets their number.
	for _, c := range []struct {
		s    layout.Strength
		rows int
	}{
		{layout.Strength{Moment: 869.6 * 6.5 * in, Screw: 1e5, Screws: 2}, 2},
		{layout.Strength{Moment: 869.5 * 6.5 * in, Screw: 1e5, Screws: 2}, 3},
		{layout.Strength{Moment: 1e5, Screw: 869.6 * 0.725 / 3, Screws: 3}, 2},
		{layout.Strength{Moment: 1e5, Screw: 869.5 * 0.725 / 3, Screws: 3}, 3},
		{layout.Strength{Moment: 1e5, Screw: 230 * 0.725, Screws: 1}, 5},
		{layout.Strength{Moment: 1e5, Screw: 165 * 0.725, Screws: 1}, 0},
	} {
		lift, err := l.Lift(0, 1000, c.s)
		if err != nil || len(lift.Rows) != c.rows || (lift.Conflict != nil) != (c.rows == 0) {
			t.Errorf("%+v: %+v, %v", c.s, lift, err)
		}
		if lift.Conflict != nil {
			// Seven boards' worth of push on six.
			about(t, "missing", lift.Conflict.Missing, 5.75*in, 1e-9)
		}
	}

	// Boards along the drum: one takes it all, over the joists that it crosses.
	d.Decks[0].Along = false
	d.Drums = d.Drums[:1]
	b := lay(t, d)
	if _, err := b.Lift(0, 1000, strong); !errors.Is(err, measure.ErrNotComputed) && err != nil {
		t.Error(err)
	} else if err == nil {
		one, _ := b.Lift(0, 1000, strong)
		if one.Crossing != 1 || len(one.Rows) != 1 || one.Board != 1000 {
			t.Errorf("%+v", one)
		}
		// 35 in. of even push at the middle of 94-1/2 in. between the rims' axes:
		// PL/4 - P·35/8 within what eight parts of it make.
		about(t, "moment of a line", one.Moment, 1000*(94.5/4-35.0/8)*in, 3)
	}

	// A deck that ends just short of the drum's middle: no number of boards keeps the
	// drum from tipping.
	d = bays(t)
	d.Decks[0].Max.Y = 48.5 * in
	if one, err := lay(t, d).Lift(0, 1, strong); err != nil || one.Rows != nil || one.Conflict == nil {
		t.Errorf("%+v, %v", one, err)
	}

	w := wedged(t, 28*in)
	if lift, err := lay(t, w).Lift(0, 1000, strong); err != nil || lift.Rows != nil || lift.Conflict != nil {
		t.Errorf("a wedged drum: %+v, %v", lift, err)
	}
	for _, c := range []struct {
		drum int
		push float64
		s    layout.Strength
	}{{-1, 1, strong}, {2, 1, strong}, {0, 0, strong}, {0, math.NaN(), strong}, {0, 1, layout.Strength{}}, {0, 1, layout.Strength{Moment: 1, Screw: 1}}, {0, 1, layout.Strength{Moment: 1, Screw: math.Inf(1), Screws: 2}}} {
		if _, err := l.Lift(c.drum, c.push, c.s); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", c, err)
		}
	}
}
