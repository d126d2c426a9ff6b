package layout

import (
	"cmp"
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// A Contact is a place on a piece that takes a part of a force.
type Contact struct {
	Piece  int
	At     float64 // m along the piece from its From
	Member int     // the member there
	From   float64 // m from that member's node I
	Node   int     // made for it, within 1/4 in.; each once to a drum; -1 for a place on the deck
	Share  float64 // a share of the force; all together 1; negative only past the outermost joist
}

// whole returns an error unless the drawing still has the parts, by their number, from
// which New worked the layout out.
func (l *Layout) whole() error {
	if l != nil && len(l.bars) > 0 && len(l.bars) == len(l.Drawing.Pieces) && len(l.Bearings) == len(l.Drawing.Drums) && len(l.decks) == len(l.Drawing.Decks) {
		return nil
	}
	return &measure.Error{Field: "layout", Class: measure.ErrUnknown, Want: "a layout as New made it"}
}

// on returns the deck that covers a place, nil where none does.
func (l *Layout) on(p Point) *deckOn {
	for i := range l.decks {
		d := &l.Drawing.Decks[l.decks[i].deck]
		if p.X >= d.Min.X-tiny && p.X <= d.Max.X+tiny && p.Y >= d.Min.Y-tiny && p.Y <= d.Max.Y+tiny {
			return &l.decks[i]
		}
	}
	return nil
}

// Under returns what carries a force on the deck at a place: the piece along the
// boards under it, or the two joists beside it by the lever, which keeps the
// force's moment about them. Past the outermost joist the next one is lifted: its
// share is negative. A place off the decks is an error.
func (l *Layout) Under(p Point) ([]Contact, error) {
	if err := l.whole(); err != nil {
		return nil, err
	}
	if err := places.Check("X", p.X); err != nil {
		return nil, err
	}
	if err := places.Check("Y", p.Y); err != nil {
		return nil, err
	}
	out := l.under(p)
	if out == nil {
		return nil, &measure.Error{
			Field: "place on the deck", Text: measure.Length.Format(p.X, measure.SI) + ", " + measure.Length.Format(p.Y, measure.SI),
			Class: measure.ErrRange, Want: "a place that a deck on joists covers",
		}
	}
	for i := range out {
		l.locate(&out[i])
		if out[i].Member < 0 {
			return nil, &measure.Error{Field: l.name(out[i].Piece), Class: measure.ErrNotComputed, Want: "a piece that carries"}
		}
	}
	return out, nil
}

// under is Under in pieces alone; nil where there is no deck.
func (l *Layout) under(p Point) []Contact {
	on := l.on(p)
	if on == nil {
		return nil
	}
	k, t := p.on(on.k), p.on(on.t)
	place := func(j int, share float64) Contact {
		b := l.bars[j]
		s := math.Min(b.hi, math.Max(b.lo, p.on(b.axis)))
		return Contact{Piece: j, At: b.along(s), Member: -1, Node: -1, Share: share}
	}
	for _, j := range on.beside {
		b := l.bars[j]
		if lo, hi := b.span(on.t); t >= lo && t <= hi && k >= b.lo && k <= b.hi {
			return []Contact{place(j, 1)}
		}
	}
	across := l.across(on, t)
	if len(across) == 0 {
		across = append(slices.Clone(on.beside), on.across...)
		best := slices.MinFunc(across, func(a, b int) int {
			return cmp.Compare(l.distance(a, p), l.distance(b, p))
		})
		return []Contact{place(best, 1)}
	}
	if len(across) == 1 {
		return []Contact{place(across[0], 1)}
	}
	n := 1
	for n < len(across)-1 && k > l.bars[across[n]].c {
		n++
	}
	a, b := across[n-1], across[n]
	far := l.bars[b].c - l.bars[a].c
	if !(far > tiny) {
		return []Contact{place(a, 0.5), place(b, 0.5)}
	}
	x := (k - l.bars[a].c) / far
	return []Contact{place(a, 1-x), place(b, x)}
}

// distance returns how far a place lies from a piece in plan.
func (l *Layout) distance(piece int, p Point) float64 {
	x0, x1 := l.bars[piece].span(0)
	y0, y1 := l.bars[piece].span(1)
	return math.Hypot(math.Max(0, apart(x0, x1, p.X, p.X)), math.Max(0, apart(y0, y1, p.Y, p.Y)))
}

// On returns what carries a force at the middle of a piece, by name: what a ladder,
// a stop or a strip is fixed to, or the piece itself if it carries; as [Layout.Under].
func (l *Layout) On(piece string) ([]Contact, error) {
	if err := l.whole(); err != nil {
		return nil, err
	}
	i := l.Drawing.piece(piece)
	if i < 0 {
		return nil, &measure.Error{Field: "piece", Text: piece, Class: measure.ErrName, Want: "the name of a piece of the drawing"}
	}
	b := l.bars[i]
	out := l.carry(i, b.point((b.lo+b.hi)/2), 1)
	for k := range out {
		l.locate(&out[k])
		out[k].Node = -1
	}
	return out, nil
}
