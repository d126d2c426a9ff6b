package lumber

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// A Deck is a rectangle to be covered with boards over joists. Joists lie across
// its length; boards run along it, or at 45° to it where Slanted is set.
type Deck struct {
	Length, Width float64   // of the decked surface, m; joists lie across Length
	Joists        []float64 // their centre lines, m from one end of Length, rising
	Board         string    // nominal size, "5/4x6"; boards lie flat
	Face          float64   // measured width of a board, m; 0: dressed dry
	Gap           float64   // between two rows, m
	Least         float64   // least width of an edge board, m; 0: half a board
	Longest       float64   // longest board to be had, m; 0: as long as the deck
	Slanted       bool
}

// Rows is how a deck is laid.
type Rows struct {
	Rows        []Row
	First, Last float64 // widths of the edge rows, m, ripped where less than Face
	Face, Gap   float64 // of a full board and between rows, as laid, m
	Pieces      []Want  // boards to cut, by length
	Screws      int     // two for every board on every joist it lies on
	Lineal      float64 // of all pieces, m
	Net         float64 // area over face and gap, m: the boards without edges, ends and waste
	BoardFeet   float64 // a number of board feet, of all pieces
	Notes       []string
}

// A Row is one row of boards.
type Row struct {
	At, Width float64   // of its near edge from where the rows begin, m
	From, To  float64   // where it begins and ends along the boards, m
	Joints    []int     // index of the joists that two boards butt on
	Boards    []float64 // lengths, m
}

var (
	deckSides = measure.Range{Kind: measure.Length, OpenLo: true, Hi: 100, Source: srcCut}
	deckFaces = measure.Range{Kind: measure.Length, Lo: 0.03, Hi: 0.4, Source: srcCut}
	deckGaps  = measure.Range{Kind: measure.Length, Hi: 0.03, Source: srcCut}
)

// rowFit is how far lengths of a deck may be off and still count as equal, m.
const rowFit = 1e-6

// Rows lays the boards. The last row is ripped to what is left; where that is
// less than Least, both edge rows are ripped to the same width instead, and
// where that is still too little a row is left out and the gaps open a little to
// make up for it. Boards shorter than the deck butt on joists, neighbouring rows
// never on the same one if the boards are long enough for that. Common practice,
// no source.
//
// Slanted rows are counted from one corner; their boards are as long as they are
// from long point to long point.
func (d Deck) Rows() (*Rows, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	face := d.Face
	if face == 0 {
		s, err := Size(d.Board)
		if err != nil {
			return nil, err
		}
		face = s.wide()
	}
	if err := deckFaces.Check("Face", face); err != nil {
		return nil, err
	}
	least := d.Least
	if least == 0 {
		least = face / 2
	}
	if err := (measure.Range{Kind: measure.Length, Hi: face, Source: srcCut}).Check("Least", least); err != nil {
		return nil, err
	}
	out := &Rows{Face: face, Net: d.Length * d.Width / (face + d.Gap)}
	out.spread(d.across(), face, d.Gap, least)
	if err := out.joints(d); err != nil {
		return nil, err
	}
	return out, out.count(d)
}

func (d Deck) check() error {
	if err := deckSides.Check("Length", d.Length); err != nil {
		return err
	}
	if err := deckSides.Check("Width", d.Width); err != nil {
		return err
	}
	if err := deckGaps.Check("Gap", d.Gap); err != nil {
		return err
	}
	if d.Face != 0 {
		if err := deckFaces.Check("Face", d.Face); err != nil {
			return err
		}
	}
	if err := (measure.Range{Kind: measure.Length, Hi: deckSides.Hi}).Check("Longest", d.Longest); err != nil {
		return err
	}
	if _, err := Size(d.Board); err != nil {
		return err
	}
	if len(d.Joists) < 2 {
		return &measure.Error{Field: "Joists", Class: measure.ErrUnknown, Want: "at least two centre lines"}
	}
	last := 0.0
	for i, x := range d.Joists {
		r := measure.Range{Kind: measure.Length, Lo: last, OpenLo: i > 0, Hi: d.Length}
		if err := r.Check(fmt.Sprintf("Joists[%d]", i), x); err != nil {
			return err
		}
		last = x
	}
	return nil
}

// across is what the rows together have to cover.
func (d Deck) across() float64 {
	if d.Slanted {
		return (d.Length + d.Width) / math.Sqrt2
	}
	return d.Width
}

// spread sets the rows over a width.
//
//	n = ⌈(W + g)/(b + g)⌉,  last row W - (n-1)(b + g)
func (r *Rows) spread(width, face, gap, least float64) {
	n := max(1, int(math.Ceil((width+gap)/(face+gap)-rowFit)))
	last := min(face, width-float64(n-1)*(face+gap))
	first := face
	switch edge := (last + face) / 2; {
	case n == 1:
		first = last
	case last >= least-rowFit || last >= face-rowFit:
	case edge >= least-rowFit || n == 2:
		first, last = edge, edge
		r.Notes = append(r.Notes, "both edge rows are ripped to the same width: the last alone would be a sliver")
	default:
		n--
		first, last = face, face
		gap = (width - float64(n)*face) / float64(n-1)
		r.Notes = append(r.Notes, "the gaps are opened so that one row less covers the deck: an edge row would be a sliver")
	}
	r.First, r.Last, r.Gap = first, last, gap
	at := 0.0
	for k := range n {
		w := face
		if k == n-1 {
			w = last
		}
		if k == 0 {
			w = first
		}
		r.Rows = append(r.Rows, Row{At: at, Width: w})
		at += w + gap
	}
}

// count adds up pieces, screws and lengths.
func (r *Rows) count(d Deck) error {
	type length struct {
		x    float64
		edge bool
	}
	n := map[length]int{}
	for _, row := range r.Rows {
		for _, b := range row.Boards {
			n[length{math.Round(b/rowFit) * rowFit, row.Width < r.Face-rowFit}]++
			r.Lineal += b
		}
		r.Screws += 2 * (row.bearings(d) + len(row.Joints))
	}
	for k, count := range n {
		w := Want{Name: "deck board", Section: d.Board, Length: k.x, Count: count}
		if k.edge {
			w.Name = "edge board"
		}
		r.Pieces = append(r.Pieces, w)
	}
	slices.SortFunc(r.Pieces, func(a, b Want) int {
		switch {
		case a.Length > b.Length || (a.Length == b.Length && a.Name < b.Name):
			return -1
		}
		return 1
	})
	feet, err := BoardFeet(d.Board, 1)
	r.BoardFeet = feet * r.Lineal
	return err
}
