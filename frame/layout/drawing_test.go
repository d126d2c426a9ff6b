package layout_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

const in = measure.Inch

// All frames of these tests are invented.

// bays is a frame of three bays, 24-1/2 in. clear, with a drum of 23-1/2 by 35 in.
// under the boards of the first and the last, between stops 36-3/4 in. apart. It
// has no conflict.
func bays(t testing.TB) layout.Drawing {
	t.Helper()
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	pieces, err := layout.Rectangle{
		Length: 79.5 * in, Width: 96 * in, Across: true, Marks: []float64{0, 26 * in, 52 * in, 78 * in}, Joist: s, Rim: s,
	}.Pieces()
	if err != nil {
		t.Fatal(err)
	}
	d := layout.Drawing{Pieces: pieces}
	for k, x := range []float64{13.75, 65.75} {
		name := string(rune('A' + k))
		d.Drums = append(d.Drums, layout.Drum{
			Name: "drum " + name, At: layout.Point{X: x * in, Y: 48 * in}, Diameter: 23.5 * in, Length: 35 * in,
			Bears: layout.UnderBoards, DropIn: true, Tied: true,
		})
		for j, y := range []float64{48 - 18.375 - 0.75, 48 + 18.375 + 0.75} {
			d.Pieces = append(d.Pieces, layout.Piece{
				Name: "stop " + name + string(rune('1'+j)), Kind: layout.Stop, Width: 1.5 * in, Depth: 3.5 * in, Bottom: 2 * in,
				From: layout.Point{X: (x - 12.25) * in, Y: y * in}, To: layout.Point{X: (x + 12.25) * in, Y: y * in},
			})
		}
	}
	d.Decks = []layout.Deck{{
		Name: "deck", Max: layout.Point{X: 79.5 * in, Y: 96 * in}, Along: true, Face: 5.5 * in, Thickness: 1.5 * in, Gap: 0.25 * in, Rating: 28 * in,
	}}
	d.Bolts = []layout.Bolt{{Name: "bolt", At: layout.Point{X: 13.75 * in, Y: 1.5 * in}, Height: 3.6 * in, Tail: layout.Point{Y: 1 * in}}}
	return d
}

func lay(t testing.TB, d layout.Drawing) *layout.Layout {
	t.Helper()
	l, err := layout.New(d)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func about(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.9g, want %.9g", what, got, want)
	}
}

func TestBays(t *testing.T) {
	l := lay(t, bays(t))
	for _, c := range l.Conflicts {
		t.Error(c)
	}
	if l.Sections != 1 {
		t.Errorf("%d sections", l.Sections)
	}
	// 8 corners of joists and rims, and two places beside either drum on both sides.
	if len(l.Nodes) != 16 || len(l.Members) != 6+4*3 {
		t.Errorf("%d nodes, %d members", len(l.Nodes), len(l.Members))
	}
	about(t, "corner of the axes", l.Nodes[0].At.X, 0.75*in, 1e-12)
	b := l.Bearings[0]
	if b.Seat != layout.UnderBoards || len(b.Contacts) != 4 {
		t.Fatalf("%+v", b)
	}
	about(t, "crown", b.Crown, 7.25*in, 1e-12)
	about(t, "clear width", b.Opening, 24.5*in, 1e-12)
	for _, c := range b.Contacts {
		about(t, "share", c.Share, 0.25, 1e-12)
		off := math.Abs(c.At-(48-1.5)*in) - 35*in/math.Sqrt(12)
		about(t, "place along the joist", off, 0, 1e-9)
		about(t, "its node", l.Nodes[c.Node].At.Y-1.5*in, c.At, 1e-9)
	}
}

// What a piece carries of the deck, worked by hand.
func TestTributary(t *testing.T) {
	d := bays(t)
	d.Decks[0].Min.X, d.Decks[0].Max.X = -1*in, 81.5*in // overhangs of 1 and 2 in.
	l := lay(t, d)
	inside := 93 * in
	for i, want := range []float64{
		82.5 * in * 1.5 * in, // the rims take what lies over them, to the boards' ends
		82.5 * in * 1.5 * in,
		(0.75 + 1 + 13) * in * inside,
		26 * in * inside,
		26 * in * inside,
		(13 + 0.75 + 2) * in * inside,
	} {
		about(t, l.Drawing.Pieces[i].Name, l.Area(i), want, 1e-9)
	}
	sum := 0.0
	for i := range d.Pieces {
		sum += l.Area(i)
	}
	about(t, "all", sum, 82.5*in*96*in, 1e-9)
}

// Whatever hangs over, and however the boards run, all of the deck is carried once
// and its moments are those of the deck where boards span as simple beams.
func TestTributaryIsTheDeck(t *testing.T) {
	for _, along := range []bool{true, false} {
		d := bays(t)
		d.Decks[0].Along = along
		d.Decks[0].Min, d.Decks[0].Max = layout.Point{X: -3 * in, Y: -2 * in}, layout.Point{X: 83 * in, Y: 99 * in}
		l := lay(t, d)
		sum := 0.0
		for _, s := range l.Tributary {
			m := l.Members[s.Member]
			if !(s.From >= -1e-12 && s.To <= m.To-m.From+1e-12 && s.To > s.From && s.Width > 0) || m.Piece != s.Piece {
				t.Errorf("%+v on %+v", s, m)
			}
			sum += (s.To - s.From) * s.Width
		}
		about(t, "area", sum, 86*101*in*in, 1e-9)

		// Boards far out past the frame, further than a rim is long.
		d.Decks[0].Min.X = -300 * in
		l, sum = lay(t, d), 0
		for i := range d.Pieces {
			sum += l.Area(i)
		}
		about(t, "area of a deck far out", sum, 383*101*in*in, 1e-9)
	}
}

func TestUnder(t *testing.T) {
	l := lay(t, bays(t))
	for _, p := range []layout.Point{{X: 10 * in, Y: 40 * in}, {X: 0, Y: 50 * in}, {X: 79.5 * in, Y: 90 * in}, {X: 26.75 * in, Y: 3 * in}, {X: 40 * in, Y: 0.5 * in}} {
		on, err := l.Under(p)
		if err != nil {
			t.Fatal(err)
		}
		var sum, x, y float64
		for _, c := range on {
			m := l.Members[c.Member]
			i, j := l.Nodes[m.I].At, l.Nodes[m.J].At
			f := c.From / (m.To - m.From)
			sum, x, y = sum+c.Share, x+c.Share*(i.X+f*(j.X-i.X)), y+c.Share*(i.Y+f*(j.Y-i.Y))
		}
		about(t, "shares", sum, 1, 1e-12)
		about(t, "x of the force", x, p.X, 1e-9)
		about(t, "y of the force", y, p.Y, 0.75*in) // over a rim it is laid on its axis
	}
	var none *layout.Layout
	if _, err := none.Under(layout.Point{}); !errors.Is(err, measure.ErrUnknown) {
		t.Error(err)
	}
	for _, p := range []layout.Point{{X: -1}, {X: 1, Y: 9}, {X: math.NaN()}, {Y: math.Inf(1)}} {
		if _, err := l.Under(p); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%v: %v", p, err)
		}
	}
}

// An L of two frames with a header, blocking, a splice and an overhanging joist.
func TestEll(t *testing.T) {
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	main := layout.Rectangle{Name: "main", Length: 144 * in, Width: 96 * in, Across: true, Marks: []float64{0, 24 * in, 48 * in, 72 * in, 96 * in, 120 * in, 142.5 * in}, Joist: s, Rim: s, RimPlies: 2}
	for _, across := range []bool{true, false} {
		wing := layout.Rectangle{Name: "wing", Corner: layout.Point{X: 96 * in}, Length: 48 * in, Width: 60 * in, Across: across, Joist: s, Rim: s}
		wing.Marks = []float64{0, 24 * in, 46.5 * in}
		if !across {
			wing.Marks = []float64{0, 20 * in, 40 * in, 58.5 * in}
		}
		pieces, err := layout.Ell(main, wing)
		if err != nil {
			t.Fatal(err)
		}
		d := layout.Drawing{Pieces: pieces}
		d.Decks = []layout.Deck{
			{Name: "main deck", Max: layout.Point{X: 144 * in, Y: 96 * in}, Along: true, Face: 5.5 * in, Thickness: 1.5 * in},
			{Name: "wing deck", Min: layout.Point{X: 96 * in, Y: 96 * in}, Max: layout.Point{X: 144 * in, Y: 156 * in}, Along: across, Face: 5.5 * in, Thickness: 1.5 * in},
		}
		l := lay(t, d)
		for _, c := range l.Conflicts {
			t.Errorf("across %v: %v", across, c)
		}
		sum := 0.0
		for i := range pieces {
			sum += l.Area(i)
		}
		about(t, "area", sum, (144*96+48*60)*in*in, 1e-9)
		if got := motions(t, l); got != 3 {
			t.Errorf("across %v: %d motions", across, got)
		}
	}
	wing := main
	if _, err := layout.Ell(main, wing); !errors.Is(err, measure.ErrName) {
		t.Error(err)
	}
	wing.Name, wing.Corner.X = "wing", 1*in
	if _, err := layout.Ell(main, wing); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	wing.Corner.X, wing.Marks = 0, nil
	if _, err := layout.Ell(main, wing); !errors.Is(err, measure.ErrUnknown) {
		t.Error(err)
	}
	main.Marks = nil
	if _, err := layout.Ell(main, wing); !errors.Is(err, measure.ErrUnknown) {
		t.Error(err)
	}
}

// Two sections on hinge pins, with every kind of piece in one of them.
func TestHingedSections(t *testing.T) {
	d := bays(t)
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	second, err := layout.Rectangle{
		Name: "outer", Corner: layout.Point{X: 83.5 * in}, Length: 60 * in, Width: 96 * in,
		Marks: []float64{0, 20 * in, 40 * in, 60 * in, 80 * in, 94.5 * in}, Joist: s, Rim: s,
	}.Pieces()
	if err != nil {
		t.Fatal(err)
	}
	d.Pieces = append(d.Pieces, second...)
	d.Pieces = append(
		d.Pieces,
		layout.Piece{Name: "block", Kind: layout.Blocking, From: layout.Point{X: 27.5 * in, Y: 48 * in}, To: layout.Point{X: 52 * in, Y: 48 * in}, Width: 1.5 * in, Depth: 5.5 * in},
		layout.Piece{Name: "beam", Kind: layout.Header, From: layout.Point{X: 100 * in, Y: -4 * in}, To: layout.Point{X: 100 * in, Y: 104 * in}, Width: 1.5 * in, Depth: 5.5 * in, Bottom: -5.5 * in, Plies: 2, Splices: []layout.Splice{{At: 30 * in, Ply: 1}}},
		layout.Piece{Name: "strip", Kind: layout.Strip, From: layout.Point{X: 28.25 * in, Y: 3 * in}, To: layout.Point{X: 28.25 * in, Y: 40 * in}, Width: 1.5 * in, Depth: 1.5 * in, Bottom: 5.75 * in},
		layout.Piece{Name: "ladder", Kind: layout.Ladder, From: layout.Point{X: 144.25 * in, Y: 40 * in}, To: layout.Point{X: 144.25 * in, Y: 56 * in}, Width: 1.5 * in, Depth: 3.5 * in},
	)
	for i := range d.Pieces {
		if d.Pieces[i].Name == "outer joist 3" {
			d.Pieces[i].Splices = []layout.Splice{{At: 20 * in}, {At: 30 * in, Carries: true}}
		}
	}
	d.Pins = []layout.Pin{
		{Name: "pin 1", At: layout.Point{X: 81.5 * in, Y: 12 * in}, On: [2]string{"joist 4", "outer rim 1"}},
		{Name: "pin 2", At: layout.Point{X: 81.5 * in, Y: 84 * in}, On: [2]string{"joist 4", "outer rim 1"}},
	}
	l := lay(t, d)
	for _, c := range l.Conflicts {
		t.Error(c)
	}
	if l.Sections != 2 {
		t.Errorf("%d sections", l.Sections)
	}
	arms := 0
	for _, m := range l.Members {
		if m.Pin >= 0 {
			arms++
			a, b := l.Nodes[m.I].At, l.Nodes[m.J].At
			if want := math.Hypot(a.X-b.X, a.Y-b.Y); math.Abs(m.To-want) > 1e-12 {
				t.Errorf("an arm of %g m between places %g m apart", m.To, want)
			}
			if m.Piece != -1 || m.HingeJ != m.Untwist || m.To < 1*in {
				t.Errorf("arm %+v", m)
			}
		}
	}
	if arms != 4 {
		t.Errorf("%d arms", arms)
	}
	// Down, two tilts and the fold of the hinge. The spliced joist makes no motion
	// of its own: the beam under it holds.
	if got := motions(t, l); got != 4 {
		t.Errorf("%d motions, want 4", got)
	}
	// The ladder hangs at the middle of the outer rim's face.
	on, err := l.On("ladder")
	if err != nil || len(on) != 1 || l.Drawing.Pieces[on[0].Piece].Name != "outer rim 2" {
		t.Fatalf("%+v, %v", on, err)
	}
	about(t, "place of the ladder", on[0].At, 48*in, 1e-9)
	if m := l.Members[on[0].Member]; math.Abs(m.From+on[0].From-48*in) > 1e-9 || on[0].Node != -1 {
		t.Errorf("%+v on %+v", on[0], m)
	}
	if _, err := l.On("gangway"); !errors.Is(err, measure.ErrName) {
		t.Error(err)
	}
	beam, splice := -1, 0
	for _, m := range l.Members {
		if m.Piece < 0 {
			continue
		}
		switch l.Drawing.Pieces[m.Piece].Name {
		case "beam":
			beam++
		case "outer joist 3":
			if m.HingeJ && math.Abs(m.To-20*in) < 1e-9 {
				splice++
			}
		}
	}
	// Six joists cross the beam, and it hangs over by more than a joist at either end.
	if beam+1 != 7 || splice != 1 {
		t.Errorf("beam in %d members, %d splices", beam+1, splice)
	}
}

// A joist that the frame has no room for is named by its number.
func TestJoistOutside(t *testing.T) {
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	r := layout.Rectangle{Length: 96 * in, Width: 48 * in, Across: true, Marks: []float64{0, 20 * in, 200 * in}, Joist: s, Rim: s}
	if _, err := r.Pieces(); !errors.Is(err, measure.ErrRange) || !strings.Contains(err.Error(), "centre of joist 3:") {
		t.Error(err)
	}
}
