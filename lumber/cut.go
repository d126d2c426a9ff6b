package lumber

import (
	"context"
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Want is a number of equal pieces to be cut.
type Want struct {
	Name    string  // "joist"
	Section string  // "2x8"; pieces are cut from stock of the same section
	Length  float64 // m
	Count   int
}

// A Stock is a length of lumber: boards in hand, boards to be bought, or both.
type Stock struct {
	Name    string  // "2x8, 12 ft"; the section and length where it is blank
	Section string  // "2x8"; capitals, blanks and the sign of times do not matter
	Length  float64 // true length, m
	InHand  int     // boards there are already; they cost nothing
	Price   float64 // of one board, in the caller's currency to the cent, any number of them; 0: not for sale

	// Defects are stretches of the boards in hand, in metres from one end, that no
	// piece may cross. Boards for sale have none: a board with defects is a Stock of
	// its own.
	Defects [][2]float64
}

// A Saw is what is lost to cutting.
type Saw struct {
	Kerf float64 // width of a cut, m: 1/8 in. for most circular saws
	Trim float64 // cut off both ends of every board to square it, kerf included, m
}

// Cuts is a cutting plan.
type Cuts struct {
	Boards   []Sawn   // section by section, those in hand before those bought
	Uncut    []Want   // pieces without a board: too long for what is for sale, and what is in hand is used up
	Sections []Outlay // in the order of the wants
	Total    Outlay
}

// A Sawn is a board and what is cut from it.
type Sawn struct {
	Name    string // "2x8, 12 ft, bought 3"
	Section string
	Stock   int     // index of the Stock
	Length  float64 // m
	Bought  bool
	Price   float64 // in that currency; 0 in hand
	Pieces  []Piece
	Offcuts []Offcut
}

// A Piece is one piece on its board.
type Piece struct {
	Name   string
	Want   int     // index of the Want
	At     float64 // its near end, from one end of the board, m
	Length float64 // m
}

// An Offcut is a clear stretch of a board that is left over, its far end not
// trimmed yet.
type Offcut struct {
	Name   string  // "2x8, 12 ft, bought 3, rest"
	At     float64 // its near end, from one end of the board, m
	Length float64 // m
}

// An Outlay is what a plan costs, and how good it is.
type Outlay struct {
	Section string  // blank in the total
	Cost    float64 // in the currency of the prices
	Bound   float64 // in that currency: no plan costs less that leaves as few pieces uncut
	Proven  bool    // none leaves fewer uncut, and of those none costs less
	InHand  int     // boards in hand that are cut into
	Bought  int     // boards to buy

	Length, Pieces, Offcuts float64 // of the boards, the pieces and the offcuts together, m
}

// Gap returns which share of the cost a better plan might save at the most, exact by
// the bound of [Cut]: 0 for a proven plan, and where there is no cost, or no bound below
// it.
func (o Outlay) Gap() float64 {
	if !(o.Cost > 0 && o.Cost <= math.MaxFloat64 && o.Bound < o.Cost) {
		return 0
	}
	return (o.Cost - math.Max(0, o.Bound)) / o.Cost
}

// Cut plans how to cut the wanted pieces: as few as can be left uncut, then at
// the least cost of the boards to buy, from the boards in hand as far as they
// help. Lengths are whole numbers of 1/320 mm, a common part of the tenth of a
// millimetre and the sixty-fourth of an inch: pieces, kerf and trim rounded up,
// stock down. Prices are whole cents.
//
// The plan is the cheapest where Proven is set; else the search was stopped by a
// count of its steps, and Bound says how much might be saved. The order of the
// arguments changes no cost that is proven, and no machine or clock any plan.
//
// Bad data is a [*measure.Error]; of class [measure.ErrRange] for a piece that
// no board holds, and of class [measure.ErrName] for a section without stock.
// The context ends the work with its error.
//
// The search is by linear relaxation with columns as needed (Gilmore and Gomory,
// Operations Research 9, 1961; from memory), whole boards by remainders over its
// basis (Gomory 1969; from memory).
func Cut(ctx context.Context, wants []Want, stock []Stock, saw Saw) (*Cuts, error) {
	if err := checkCut(wants, stock, saw); err != nil {
		return nil, err
	}
	out := &Cuts{Total: Outlay{Proven: true}}
	seen := map[string]bool{}
	for _, w := range wants {
		name := sectionKey(w.Section)
		if seen[name] {
			continue
		}
		seen[name] = true
		if err := out.section(ctx, name, w.Section, wants, stock, saw); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// sectionKey brings a section's name into one spelling.
func sectionKey(s string) string {
	return strings.NewReplacer(" ", "", "×", "x", "*", "x").Replace(strings.ToLower(s))
}

// Ranges of what may be cut; our choice: past them is a slip of the pen.
var (
	srcCut      = &measure.Source{Title: "our choice", Status: measure.OwnChoice}
	cutLengths  = measure.Range{Kind: measure.Length, Lo: 0.01, Hi: 30, Source: srcCut}
	cutKerfs    = measure.Range{Kind: measure.Length, Hi: 0.02, Source: srcCut}
	cutTrims    = measure.Range{Kind: measure.Length, Hi: 0.5, Source: srcCut}
	cutPrices   = measure.Range{Hi: 5000, Source: srcCut}
	cutPieces   = measure.Range{Lo: 1, Hi: 2000, Source: srcCut}
	cutBoards   = measure.Range{Hi: 2000, Source: srcCut}
	cutSegments = 300 // kinds of pieces and stretches in hand, each, of one section
)

func checkCut(wants []Want, stock []Stock, saw Saw) error {
	if err := cutKerfs.Check("Saw.Kerf", saw.Kerf); err != nil {
		return err
	}
	if err := cutTrims.Check("Saw.Trim", saw.Trim); err != nil {
		return err
	}
	if len(wants) == 0 {
		return &measure.Error{Field: "wants", Class: measure.ErrUnknown, Want: "at least one piece"}
	}
	total := 0
	for i, w := range wants {
		at := fmt.Sprintf("wants[%d] %s ", i, w.Name)
		if err := cutLengths.Check(at+"Length", w.Length); err != nil {
			return err
		}
		if err := cutPieces.Check(at+"Count", float64(w.Count)); err != nil {
			return err
		}
		if total += w.Count; float64(total) > cutPieces.Hi {
			return cutPieces.Check("pieces wanted together", float64(total))
		}
	}
	for i, s := range stock {
		if err := s.check(fmt.Sprintf("stock[%d] %s ", i, s.Name)); err != nil {
			return err
		}
	}
	return nil
}

func (s Stock) check(at string) error {
	if err := cutLengths.Check(at+"Length", s.Length); err != nil {
		return err
	}
	if err := cutBoards.Check(at+"InHand", float64(s.InHand)); err != nil {
		return err
	}
	if err := cutPrices.Check(at+"Price", s.Price); err != nil {
		return err
	}
	cents := math.Round(s.Price * 100)
	switch {
	case s.Price > 0 && !(cents >= 1):
		return &measure.Error{Field: at + "Price", Value: s.Price, Class: measure.ErrRange, Want: "0, or at least a cent"}
	case s.InHand == 0 && s.Price == 0:
		return &measure.Error{Field: at + "InHand", Class: measure.ErrUnknown, Want: "a number of boards in hand, or a Price to buy them at"}
	case len(s.Defects) > 0 && s.Price > 0:
		return &measure.Error{Field: at + "Defects", Class: measure.ErrUnknown, Want: "a Stock of its own, without a Price, for boards with defects"}
	}
	for k, d := range s.Defects {
		field := fmt.Sprintf("%sDefects[%d]", at, k)
		if err := (measure.Range{Kind: measure.Length, Hi: s.Length}).Check(field, d[0]); err != nil {
			return err
		}
		if err := (measure.Range{Kind: measure.Length, Lo: d[0], Hi: s.Length}).Check(field, d[1]); err != nil {
			return err
		}
	}
	return nil
}
