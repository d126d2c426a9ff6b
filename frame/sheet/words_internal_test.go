package sheet

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// One is no plural.
func TestOneIsOne(t *testing.T) {
	for got, want := range map[string]string{people(1): "1 person", people(0): "0 people", people(2): "2 people"} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	open := dock.Topic{Checks: []measure.Check{measure.Refuse("ice", measure.ErrUnknown)}}
	c := &cards{report: &dock.Report{Topics: []dock.Topic{open}}}
	if said := strings.Join(c.notChecked(), "; "); !strings.Contains(said, "1 check without an answer") {
		t.Error(said)
	}
	c.report.Topics = append(c.report.Topics, open)
	if said := strings.Join(c.notChecked(), "; "); !strings.Contains(said, "2 checks without an answer") {
		t.Error(said)
	}
}

// The name of a piece never runs into its length: "bay 1 1 ft" reads as eleven feet.
func TestPieceApartFromLength(t *testing.T) {
	stop := lumber.Piece{Name: "stop, bay 1", Length: 20.375 * measure.Inch}
	c := &cards{units: measure.US}
	if got, want := c.pieces(lumber.Sawn{Pieces: []lumber.Piece{{Name: "joist", Length: 9.5 * measure.Foot}, stop, stop}}), "joist: 9 ft 6 in; 2 of stop, bay 1: 1 ft 8-3/8 in"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	b := Board{Length: 4, Pieces: []Piece{{Name: stop.Name, Length: stop.Length}, {Length: 1}}}
	parts := b.parts(1000, 0, measure.US)
	if parts[0].text != "stop, bay 1: 1 ft 8-3/8 in" || parts[1].text != "3 ft 3-3/8 in" {
		t.Errorf("%q, %q", parts[0].text, parts[1].text)
	}
}

// Picture and cut list say the same of what is left over of each board, and a board
// that no list knows loses what squares both of its ends.
func TestLeftAlike(t *testing.T) {
	if b := (Board{Length: 3, Trim: 0.01, Kerf: 0.003, Pieces: []Piece{{Length: 2}}}); b.left() < 0.977-1e-9 || b.left() > 0.977+1e-9 {
		t.Errorf("%g m are left over, want 0.977", b.left())
	}
	for _, name := range plan.Demos() {
		r, err := plan.Demo(name)
		if err != nil {
			t.Fatal(err)
		}
		d, err := dock.Read(name, r)
		if err != nil {
			t.Fatal(err)
		}
		cut, err := d.Cutting(t.Context())
		if err != nil || cut.Err != nil {
			t.Fatal(err, cut.Err)
		}
		g := &drawing{units: measure.US, report: &dock.Report{Shop: &dock.Shop{Cutting: *cut}}}
		k, rests := g.cuts(cut)
		if len(k.Boards) < 3 {
			t.Fatalf("%s: %d boards", name, len(k.Boards))
		}
		for i, b := range k.bars(rests) {
			left := "left over " + measure.Length.Format(rests[i], measure.US)
			if own := k.Boards[i].left(); math.Abs(own-rests[i]) > 1e-4 || !strings.HasSuffix(strings.Join(b.head, " "), left) {
				t.Errorf("%s: %q and %g m by the picture, %q by the list", name, b.head, own, left)
			}
		}
	}
}
