package layout_test

import (
	"slices"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
)

// TestRegressionDeepRims: rims deeper than the joists stood on the same underside, so
// that boards lay on the rims alone: no joist was ever too far from the next, boards
// over a drum crossed none, and a block under joists did not meet the rim.
func TestRegressionDeepRims(t *testing.T) {
	sizes := make([]lumber.Section, 3)
	for i, name := range []string{"2x8", "2x10", "2x6"} {
		var err error
		if sizes[i], err = lumber.Size(name); err != nil {
			t.Fatal(err)
		}
	}
	pieces, err := layout.Rectangle{
		Length: 120 * in, Width: 96 * in, Across: true, Joist: sizes[0], Rim: sizes[1], RimPlies: 2,
		Marks: []float64{0, 30 * in, 60 * in, 90 * in, 118.5 * in},
	}.Pieces()
	if err != nil {
		t.Fatal(err)
	}
	l, err := layout.New(layout.Drawing{
		Pieces: pieces,
		Drums: []layout.Drum{
			{Name: "drum", At: layout.Point{X: 15.75 * in, Y: 48 * in}, Diameter: 23.5 * in, Length: 35 * in, Tied: true},
			{Name: "block", At: layout.Point{X: 75 * in, Y: 18 * in}, Diameter: 36 * in, Length: 60 * in, Height: 16 * in, Along: true, Tied: true},
		},
		Decks: []layout.Deck{{Name: "deck", Max: layout.Point{X: 120 * in, Y: 96 * in}, Along: true, Face: sizes[2].Depth, Thickness: sizes[2].Width}},
	})
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range l.Drawing.Pieces {
		top := p.Bottom + p.Depth
		if diff := top - sizes[0].Depth; diff > 1e-12 || diff < -1e-12 {
			t.Errorf("%s has its top %g m over the joists'", l.Drawing.Pieces[i].Name, diff)
		}
	}
	if !slices.ContainsFunc(l.Conflicts, func(c layout.Conflict) bool { return c.Kind == layout.WideSpan }) {
		t.Errorf("joists 30 in. apart are near enough: %v", l.Conflicts)
	}
	if l.Bearings[0].Seat != layout.UnderBoards {
		t.Fatalf("the drum sits %v", l.Bearings[0].Seat)
	}
	lift, err := l.Lift(0, 900, layout.Strength{Moment: 400, Screw: 900, Screws: 2})
	if err != nil || lift.Crossing == 0 || len(lift.Rows) == 0 {
		t.Errorf("boards over the drum: %+v, %v", lift, err)
	}
	if slices.ContainsFunc(l.Bearings[1].Contacts, func(c layout.Contact) bool { return l.Drawing.Pieces[c.Piece].Kind == layout.Joist }) {
		t.Errorf("the block passes the rim that hangs lower: %+v", l.Bearings[1].Contacts)
	}
}
