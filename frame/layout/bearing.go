package layout

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Seat is what a float pushes up on.
type Seat int

// The seats.
const (
	Nothing     Seat = iota // nothing holds it down; of a wish: as found
	UnderJoists             // on the lower faces of joists, rims, headers or blocking
	Wedged                  // between two joists, on their lower edges
	UnderBoards             // between joists, its crown under the deck boards
)

var seatNames = [...]string{"nothing", "under joists", "wedged between two joists", "under the deck boards"}

// String returns the seat in words, such as "wedged between two joists".
func (s Seat) String() string {
	if s < 0 || int(s) >= len(seatNames) {
		return "no known seat"
	}
	return seatNames[s]
}

// A Bearing is what one drum pushes on when it floats up, and where that stops it.
// Heights are above the underside of the joists, m.
type Bearing struct {
	Drum    int
	Seat    Seat
	At      Point      // its middle, at rest
	Shift   float64    // m, how far it slides sideways to get there
	Centre  float64    // height of its axis, or of the middle of a block
	Crown   float64    // height of its top
	Opening float64    // m, clear width between the pieces on both sides; 0: open
	Between [2]int     // those pieces, -1 for none
	Angle   [2]float64 // rad, of a wedged drum's two contacts from the vertical
	// Contacts share its push among the pieces. Of a drum under the boards they
	// are the joists that the boards' screws pull up.
	Contacts []Contact
	Deck     int // over it; -1: none
}

// Press returns the forces, N, on the two edges of a wedged drum that pushes up
// with a force, N, along its radii; and the one, N, on either side, that pushes the
// joists apart: blocking or a strap across must hold it. Zero for other seats. It is
// statics without friction.
//
//	N1 = P sin θ2/sin(θ1 + θ2),  spread = P sin θ1 sin θ2/sin(θ1 + θ2)
//
// Within 4.4 units in the last place.
// Worst at (1.353, 1.228, 35.8), ordered as in testdata/accuracy.csv.
func (b Bearing) Press(push float64) (edges [2]float64, spread float64, err error) {
	if err := (measure.Range{Kind: measure.Force, Lo: 0, Hi: 1e7}).Check("push", push); err != nil {
		return edges, 0, err
	}
	if b.Seat != Wedged {
		return edges, 0, nil
	}
	s1, s2, both := math.Sin(b.Angle[0]), math.Sin(b.Angle[1]), math.Sin(b.Angle[0]+b.Angle[1])
	if !(both > 0 && s1 >= 0 && s2 >= 0) {
		return edges, 0, &measure.Error{Field: "angles of a wedged drum", Class: measure.ErrRange, Want: "a bearing that New made"}
	}
	return [2]float64{push * s2 / both, push * s1 / both}, push * s1 * s2 / both, nil
}

// A seen is a piece as a drum sees it: its footprint about the drum's middle, u
// along its axis and v across.
type seen struct {
	piece          int
	u0, u1, v0, v1 float64
	z0, z1         float64
}

// view lists the pieces within reach of a drum.
func (l *Layout) view(d *Drum) []seen {
	u, v := d.axes()
	var out []seen
	reach := 2 * (d.Length + d.Diameter + d.height())
	for i, b := range l.bars {
		if l.Drawing.Pieces[i].Kind == Ladder {
			continue
		}
		s := seen{piece: i, z0: b.z0, z1: b.z1}
		s.u0, s.u1 = b.span(u)
		s.v0, s.v1 = b.span(v)
		s.u0, s.u1, s.v0, s.v1 = s.u0-d.At.on(u), s.u1-d.At.on(u), s.v0-d.At.on(v), s.v1-d.At.on(v)
		if apart(s.u0, s.u1, 0, 0) < reach && apart(s.v0, s.v1, 0, 0) < reach {
			out = append(out, s)
		}
	}
	return out
}

// beside reports whether a piece lies over a part of the drum's length.
func (s seen) beside(d *Drum) bool {
	return math.Min(s.u1, d.Length/2)-math.Max(s.u0, -d.Length/2) > bite
}

// bear finds what every drum bears on.
func (l *Layout) bear() {
	for i := range l.Drawing.Drums {
		l.Bearings = append(l.Bearings, l.seat(i))
	}
}

// seat lets one drum float up until something stops it.
func (l *Layout) seat(i int) Bearing {
	d := &l.Drawing.Drums[i]
	r, h := d.Diameter/2, d.height()
	b := Bearing{Drum: i, At: d.At, Deck: -1, Between: [2]int{-1, -1}}
	top := math.Inf(1) // underside of the boards
	if on := l.on(d.At); on != nil {
		b.Deck, top = on.deck, on.under
	}
	b.Centre = top - h/2
	if b.Deck >= 0 {
		b.Seat = UnderBoards
	}
	keeper := top - h/2
	if b.Deck < 0 {
		keeper = -h / 2
	}
	var left, right []seen
	var over []seen
	for _, s := range l.view(d) {
		kind := l.Drawing.Pieces[s.piece].Kind
		if !s.beside(d) || (kind == Strip || kind == Stop) && (s.z0+s.z1)/2 < keeper {
			continue // what lies below the drum's middle never stops it
		}
		switch {
		case d.round() && s.v0 <= 0 && s.v1 >= 0, !d.round() && apart(s.v0, s.v1, -r, r) < -bite:
			over = append(over, s)
		case s.v1 <= 0:
			left = append(left, s)
		default:
			right = append(right, s)
		}
	}
	low := math.Inf(1)
	for _, s := range over {
		low = math.Min(low, s.z0)
	}
	v := 0.0
	if low-h/2 < b.Centre {
		b.Centre, b.Seat = low-h/2, UnderJoists
	}
	inner := func(all []seen, sign float64) (int, float64) {
		best, edge := -1, math.Inf(1)
		for _, s := range all {
			e := s.v0
			if sign < 0 {
				e = -s.v1
			}
			if e < edge {
				best, edge = s.piece, e
			}
		}
		return best, sign * edge
	}
	var v0, v1 float64
	b.Between[0], v0 = inner(left, -1)
	b.Between[1], v1 = inner(right, 1)
	if b.Between[0] >= 0 && b.Between[1] >= 0 {
		b.Opening = v1 - v0
	}
	if d.round() {
		if b.Seat != UnderJoists && v0+r <= v1-r { // it rolls to where it fits
			v = math.Max(v0+r, math.Min(0, v1-r))
		}
		for _, s := range left {
			for _, o := range right {
				cv, cz, angle, ok := seated(r, edge{s.v1, s.z0}, edge{o.v0, o.z0})
				if ok && cz < b.Centre {
					v, b.Centre, b.Seat, b.Angle = cv, cz, Wedged, angle
					b.Between, b.Opening = [2]int{s.piece, o.piece}, o.v0-s.v1
				}
			}
		}
	}
	b.Shift = math.Abs(v)
	u, w := d.axes()
	b.At = at(u, d.At.on(u), d.At.on(w)+v)
	if b.Seat == UnderBoards { // of the deck that it rolled to
		if on := l.on(b.At); on != nil {
			b.Deck, b.Centre = on.deck, on.under-h/2
		} else {
			b.Deck, b.Seat = -1, Nothing
		}
	}
	if b.Seat == Nothing {
		l.unborne(d, &b)
	}
	b.Crown = b.Centre + h/2
	l.contact(d, &b, over, low)
	l.meant(d, b)
	return b
}

// unborne records a drum that nothing holds down. It is drawn with its middle at
// the underside of the joists.
func (l *Layout) unborne(d *Drum, b *Bearing) {
	b.Centre = 0
	best, gap := 0, math.Inf(1)
	for j := range l.bars {
		if g := l.distance(j, b.At); g < gap {
			best, gap = j, g
		}
	}
	missing := math.Max(bite, gap)
	if b.Opening > 0 {
		missing = math.Max(bite, b.Opening-d.Diameter)
	}
	l.conflict(Unborne, d.Name, l.name(best), missing, "neither joists nor boards stop it as it floats up")
}

// meant compares a drum's seat with the one it was meant to have.
func (l *Layout) meant(d *Drum, b Bearing) {
	if d.Bears == Nothing || d.Bears == b.Seat || b.Seat == Nothing {
		return
	}
	on, missing := "", bite
	switch {
	case b.Seat == UnderBoards:
		on = l.Drawing.Decks[b.Deck].Name
	case len(b.Contacts) > 0:
		on = l.name(b.Contacts[0].Piece)
	}
	switch d.Bears {
	case Wedged:
		missing = math.Max(missing, b.Opening-d.Diameter)
	case UnderBoards:
		if b.Deck >= 0 {
			missing = math.Max(missing, l.deckOf(b.Deck).under-b.Crown)
		}
	case UnderJoists:
		missing = math.Max(missing, math.Abs(b.Crown))
	}
	l.conflict(Elsewhere, d.Name, on, missing, "meant "+d.Bears.String()+", found "+b.Seat.String())
}

func (l *Layout) deckOf(deck int) *deckOn {
	for i := range l.decks {
		if l.decks[i].deck == deck {
			return &l.decks[i]
		}
	}
	return nil
}
