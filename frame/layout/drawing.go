package layout

import (
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// A Drum is one float in its place. Its size is its outside.
type Drum struct {
	Name     string
	At       Point   // its middle, as marked
	Diameter float64 // m, over the hoops; of a block its breadth
	Length   float64 // m, over the ends
	Height   float64 // m, of a block with a flat top; 0: a round drum
	Along    bool    // its axis lies along x; otherwise along y
	Bears    Seat    // what it is meant to push on; Nothing: as found
	DropIn   bool    // it is put in from above, before the boards
	Tied     bool    // a tie keeps it from dropping out
}

func (d *Drum) round() bool { return d.Height == 0 }

// height returns how tall the float is.
func (d *Drum) height() float64 {
	if d.round() {
		return d.Diameter
	}
	return d.Height
}

// axes returns the drum's own axis and the one across it.
func (d *Drum) axes() (u, v int) {
	if d.Along {
		return 0, 1
	}
	return 1, 0
}

// A Deck is a rectangle covered with boards on the highest tops below it. Its
// corners lie out past the frame where boards hang over.
type Deck struct {
	Name      string
	Min, Max  Point
	Along     bool    // boards run along x; otherwise along y
	Face      float64 // m, width of a board
	Thickness float64 // m
	Gap       float64 // m, between two boards
	Rating    float64 // m, span rating printed on the board; 0: none
}

// boards returns the axis that the boards run along and the one across.
func (d *Deck) boards() (k, t int) {
	if d.Along {
		return 0, 1
	}
	return 1, 0
}

// A Bolt is one end of a bolt with its nut: where it leaves the wood, and its
// tail from there, straight along x or y.
type Bolt struct {
	Name   string
	At     Point
	Height float64 // m, above the underside of the joists
	Tail   Point   // m, from At to the end of the thread
}

// A Pin is one pin of the hinge between two sections: an arm reaches from the
// nearest place of either piece to it. The hinge's axis is square to the arms.
type Pin struct {
	Name string
	At   Point
	On   [2]string // the pieces that it joins, by name
}

// Room is how much room parts need around each other, m. Pairs are the least and
// the most in all, both sides together.
type Room struct {
	Side    [2]float64 // of the bay over the drum's diameter
	End     [2]float64 // of the stops over the drum's length
	Butt    float64    // most gap at the end of a piece
	Tail    float64    // least from a bolt's tail to a drum
	Wrench  float64    // least past a bolt's tail
	Stagger float64    // least between splices of neighbouring plies
}

// practice is where the rooms of Practice come from.
var practice = &measure.Source{Title: "common practice, no source", Status: measure.CommonPractice}

// Practice returns the rooms that builders leave: 1/2 to 1-1/2 in. beside a drum,
// 1-1/2 to 2 in. at its ends, a butt open by 1/8 in. at most, a bolt's tail 1 in.
// off a drum, 4 in. for the wrench, 4 ft from splice to splice: common practice, and
// no published rule was read for any of them.
func Practice() Room {
	const in = measure.Inch
	return Room{
		Side: [2]float64{0.5 * in, 1.5 * in}, End: [2]float64{1.5 * in, 2 * in}, Butt: in / 8,
		Tail: 1 * in, Wrench: 4 * in, Stagger: 4 * measure.Foot,
	}
}

// A Drawing is a frame as the builder has it on paper: what [New] works out.
type Drawing struct {
	Pieces []Piece
	Drums  []Drum
	Decks  []Deck // they do not overlap
	Bolts  []Bolt
	Pins   []Pin
	Room   Room // zero: Practice
	// Slices is in how many parts along its length a drum pushes, 1 to 3; 0 is 2.
	// Two have the same middle and the same spread as an even push.
	Slices int
}

// limits on how much a drawing may hold, against a slip in a generated one.
const most = 5000

// check returns what is wrong with the data, if anything.
func (d *Drawing) check() error {
	if len(d.Pieces) == 0 {
		return &measure.Error{Field: "pieces", Class: measure.ErrUnknown, Want: "one piece or more"}
	}
	if !slices.ContainsFunc(d.Pieces, func(p Piece) bool { return p.Kind.carries() }) {
		return &measure.Error{Field: "pieces that carry", Class: measure.ErrUnknown, Want: "a rim, a joist, a header or blocking"}
	}
	if err := (measure.Range{Hi: most}).Check("parts of the drawing", float64(len(d.Pieces)+len(d.Drums)+len(d.Decks)+len(d.Bolts)+len(d.Pins))); err != nil {
		return err
	}
	if err := (measure.Range{Lo: 0, Hi: 3}).Check("slices", float64(d.Slices)); err != nil {
		return err
	}
	names := map[string]bool{}
	name := func(what, s string) error {
		if s == "" || names[s] {
			return &measure.Error{Field: what, Text: s, Class: measure.ErrName, Want: "a name of its own for every part"}
		}
		names[s] = true
		return nil
	}
	type value struct {
		what string
		r    measure.Range
		x    float64
	}
	all := func(part string, values ...value) error {
		for _, v := range values {
			if err := v.r.Check(part+", "+v.what, v.x); err != nil {
				return err
			}
		}
		return nil
	}
	for i := range d.Pieces {
		p := &d.Pieces[i]
		if err := p.check(); err != nil {
			return err
		}
		if err := name("piece", p.Name); err != nil {
			return err
		}
	}
	zeroOrSide := measure.Range{Kind: measure.Length, Lo: 0, Hi: 3, Source: srcFrame}
	size := measure.Range{Kind: measure.Length, Lo: 0.01, Hi: 20, Source: srcFrame}
	for _, f := range d.Drums {
		if err := name("drum", f.Name); err != nil {
			return err
		}
		if err := all("drum "+f.Name, value{"At.X", places, f.At.X}, value{"At.Y", places, f.At.Y}, value{"Diameter", size, f.Diameter},
			value{"Length", size, f.Length}, value{"Height", zeroOrSide, f.Height}, value{"Bears", measure.Range{Hi: float64(UnderBoards)}, float64(f.Bears)}); err != nil {
			return err
		}
	}
	for _, k := range d.Decks {
		if err := name("deck", k.Name); err != nil {
			return err
		}
		if err := all("deck "+k.Name, value{"Min.X", places, k.Min.X}, value{"Min.Y", places, k.Min.Y}, value{"Max.X", places, k.Max.X},
			value{"Max.Y", places, k.Max.Y}, value{"length along x", lengths, k.Max.X - k.Min.X}, value{"length along y", lengths, k.Max.Y - k.Min.Y},
			value{"Face", sides, k.Face}, value{"Thickness", sides, k.Thickness}, value{"Gap", zeroOrSide, k.Gap}, value{"Rating", zeroOrSide, k.Rating}); err != nil {
			return err
		}
	}
	for _, b := range d.Bolts {
		if err := name("bolt", b.Name); err != nil {
			return err
		}
		tail := measure.Range{Kind: measure.Length, Lo: 0, Hi: 1, OpenLo: true, Source: srcFrame}
		if err := all("bolt "+b.Name, value{"At.X", places, b.At.X}, value{"At.Y", places, b.At.Y}, value{"Height", heights, b.Height},
			value{"Tail", tail, math.Hypot(b.Tail.X, b.Tail.Y)}); err != nil {
			return err
		}
		if b.Tail.X != 0 && b.Tail.Y != 0 {
			return &measure.Error{Field: "bolt " + b.Name + ", tail", Text: "slanted", Class: measure.ErrRange, Want: "a tail along x or along y"}
		}
	}
	for _, p := range d.Pins {
		if err := name("pin", p.Name); err != nil {
			return err
		}
		if err := all("pin "+p.Name, value{"At.X", places, p.At.X}, value{"At.Y", places, p.At.Y}); err != nil {
			return err
		}
		for _, on := range p.On {
			if i := d.piece(on); i < 0 || !d.Pieces[i].Kind.carries() || p.On[0] == p.On[1] {
				return &measure.Error{Field: "pin " + p.Name + ", piece", Text: on, Class: measure.ErrName, Want: "the names of two pieces that carry"}
			}
		}
	}
	r := d.Room
	room := measure.Range{Kind: measure.Length, Lo: 0, Hi: 10, Source: srcFrame}
	return all("room", value{"Side[0]", room, r.Side[0]}, value{"Side[1]", room, r.Side[1]}, value{"End[0]", room, r.End[0]}, value{"End[1]", room, r.End[1]},
		value{"Butt", measure.Range{Kind: measure.Length, Hi: 0.05, Source: srcFrame}, r.Butt}, value{"Tail", room, r.Tail}, value{"Wrench", room, r.Wrench}, value{"Stagger", room, r.Stagger})
}

// piece returns the index of a piece by name, -1 if there is none.
func (d *Drawing) piece(name string) int {
	for i := range d.Pieces {
		if d.Pieces[i].Name == name {
			return i
		}
	}
	return -1
}

// A Node is a place where pieces meet, end, or take a drum's push.
type Node struct {
	Name    string
	At      Point
	Section int // which of the sections that pins join, from 0
}

// A Member is a piece, or a part of one, between two nodes: what a grillage or a
// frame in its plane takes. Ends turn freely where they are said to.
type Member struct {
	I, J     int     // nodes
	Piece    int     // -1: the arm of a pin
	Pin      int     // -1: none
	From, To float64 // m along the piece from its From; the first and the last end at the axis of what they butt on
	HingeI   bool    // the end at I passes no bending moment
	HingeJ   bool    // the end at J passes none
	Untwist  bool    // it passes no torque
}

// A Layout is a drawing worked out: plain data for the solvers, what every drum
// pushes on, and every conflict. [New] makes one.
type Layout struct {
	Drawing   Drawing
	Nodes     []Node
	Members   []Member
	Sections  int
	Tributary []Tributary // what the decks lay on the members; all areas together are the decks'
	Bearings  []Bearing   // one for each drum
	Conflicts []Conflict

	bars     []bar
	hosts    [][]int // what a strip, stop or ladder is fixed to
	joints   []joint
	decks    []deckOn
	stations [][]station // per piece, rising from its From
	byPiece  [][]int     // members, in that order
}

// New works out a drawing, by plane geometry. Bad data is an error; parts that do not
// go together are conflicts, and the layout is there beside them.
func New(d Drawing) (*Layout, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	if d.Room == (Room{}) {
		d.Room = Practice()
	}
	if d.Slices == 0 {
		d.Slices = 2
	}
	l := &Layout{Drawing: d, bars: make([]bar, len(d.Pieces)), hosts: make([][]int, len(d.Pieces))}
	for i := range d.Pieces {
		l.bars[i] = d.Pieces[i].bar()
	}
	l.join()
	l.layDecks()
	l.bear()
	if err := l.build(); err != nil {
		return nil, err
	}
	l.share()
	l.clear()
	return l, nil
}

// conflict records one of plain geometry.
func (l *Layout) conflict(f Fault, a, b string, missing float64, why string) {
	l.Conflicts = append(l.Conflicts, Conflict{Kind: f, A: a, B: b, Missing: missing, Why: why})
}

// short records one of a room that there is and the one that is wanted.
func (l *Layout) short(f Fault, a, b string, has, wants float64, src *measure.Source, why string) {
	l.Conflicts = append(l.Conflicts, Conflict{Kind: f, A: a, B: b, Missing: math.Abs(has - wants), Has: has, Wants: wants, Why: why, Source: src})
}

func (l *Layout) name(piece int) string { return l.Drawing.Pieces[piece].Name }
