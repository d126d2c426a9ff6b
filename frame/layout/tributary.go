package layout

import (
	"cmp"
	"math"
	"slices"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A Tributary is a part of the deck that one member carries: as a load of q per area,
// it is q times Width on every metre between From and To.
type Tributary struct {
	Member, Piece int
	From, To      float64 // m from the member's node I
	Width         float64 // m
}

// Area returns the area of deck that a piece carries, m², 0 for none: geometry, by
// halves of the spans.
func (l *Layout) Area(piece int) float64 {
	var sum float64
	for _, s := range l.Tributary {
		if s.Piece == piece {
			sum += (s.To - s.From) * s.Width
		}
	}
	return sum
}

// A deckOn is a deck on the pieces below it.
type deckOn struct {
	deck    int
	k, t    int     // axes along the boards and across them
	under   float64 // height of its underside
	across  []int   // pieces square to the boards, by rising place
	beside  []int   // pieces along them
	patches []patch
}

// A patch is a part of a deck that one piece carries: from lo to hi on the
// piece's axis.
type patch struct {
	piece         int
	lo, hi, width float64
}

// flush is how far a top may lie below the boards and still carry them. Our choice.
const flush = measure.Inch / 8

// corners returns a deck's interval on an axis.
func (d *Deck) corners(axis int) (lo, hi float64) { return d.Min.on(axis), d.Max.on(axis) }

// layDecks finds what every deck lies on and what each piece carries of it.
func (l *Layout) layDecks() {
	for i := range l.Drawing.Decks {
		d := &l.Drawing.Decks[i]
		on := deckOn{deck: i, under: math.Inf(-1)}
		on.k, on.t = d.boards()
		lies := func(b bar) bool {
			for axis := range 2 {
				lo, hi := d.corners(axis)
				b0, b1 := b.span(axis)
				if apart(lo, hi, b0, b1) > l.Drawing.Room.Butt {
					return false
				}
			}
			return true
		}
		for j, b := range l.bars {
			if l.Drawing.Pieces[j].Kind <= Header && lies(b) {
				on.under = math.Max(on.under, b.z1)
			}
		}
		for j, b := range l.bars {
			if l.Drawing.Pieces[j].Kind > Header || !lies(b) || b.z1 < on.under-flush {
				continue
			}
			if b.axis == on.t {
				on.across = append(on.across, j)
			} else {
				on.beside = append(on.beside, j)
			}
		}
		if len(on.across)+len(on.beside) == 0 {
			best, gap := -1, math.Inf(1)
			for j, b := range l.bars {
				x0, x1 := b.span(0)
				y0, y1 := b.span(1)
				g := math.Hypot(math.Max(0, apart(d.Min.X, d.Max.X, x0, x1)), math.Max(0, apart(d.Min.Y, d.Max.Y, y0, y1)))
				if g < gap && l.Drawing.Pieces[j].Kind <= Header {
					best, gap = j, g
				}
			}
			if best < 0 {
				best, gap = 0, bite
			}
			l.conflict(Apart, d.Name, l.name(best), math.Max(gap, bite), "no rim, joist or header is under the deck")
			continue
		}
		slices.SortStableFunc(on.across, func(a, b int) int { return cmp.Compare(l.bars[a].c, l.bars[b].c) })
		l.patch(&on)
		l.decks = append(l.decks, on)
	}
}

// patch gives every part of a deck to the piece that carries it. Over a piece
// along the boards it is that piece; elsewhere the nearest of those that the boards
// cross, each span by halves and what hangs over by the outermost; where the boards
// cross none, the nearest along them.
func (l *Layout) patch(on *deckOn) {
	d := &l.Drawing.Decks[on.deck]
	t0, t1 := d.corners(on.t)
	k0, k1 := d.corners(on.k)
	cuts := []float64{t0, t1}
	cut := func(x float64) {
		if x > t0 && x < t1 {
			cuts = append(cuts, x)
		}
	}
	for _, j := range on.beside {
		lo, hi := l.bars[j].span(on.t)
		cut(lo)
		cut(hi)
	}
	for _, j := range on.across {
		cut(l.bars[j].lo)
		cut(l.bars[j].hi)
	}
	slices.Sort(cuts)
	widest := map[[2]int]float64{}
	for i := 1; i < len(cuts); i++ {
		if cuts[i] > cuts[i-1] {
			l.band(on, cuts[i-1], cuts[i], k0, k1, widest)
		}
	}
	on.patches = joined(on.patches)
	l.spans(on, widest)
}

// band gives away a band of boards between two cuts.
func (l *Layout) band(on *deckOn, t0, t1, k0, k1 float64, widest map[[2]int]float64) {
	mid := (t0 + t1) / 2
	free := [][2]float64{{k0, k1}}
	for _, j := range on.beside {
		b := l.bars[j]
		if lo, hi := b.span(on.t); mid < lo || mid > hi {
			continue
		}
		var left [][2]float64
		for _, f := range free {
			a0, a1 := math.Max(f[0], b.lo), math.Min(f[1], b.hi)
			if a1 <= a0 {
				left = append(left, f)
				continue
			}
			on.patches = append(on.patches, patch{j, a0, a1, t1 - t0})
			if a0 > f[0] {
				left = append(left, [2]float64{f[0], a0})
			}
			if f[1] > a1 {
				left = append(left, [2]float64{a1, f[1]})
			}
		}
		free = left
	}
	across := l.across(on, mid)
	for _, f := range free {
		if len(across) == 0 {
			best, gap := -1, math.Inf(1)
			for _, j := range append(slices.Clone(on.beside), on.across...) {
				b0, b1 := l.bars[j].span(on.k)
				c0, c1 := l.bars[j].span(on.t)
				if g := math.Max(0, apart(f[0], f[1], b0, b1)) + math.Max(0, apart(t0, t1, c0, c1)); g < gap {
					best, gap = j, g
				}
			}
			if l.bars[best].axis == on.k {
				on.patches = append(on.patches, patch{best, f[0], f[1], t1 - t0})
			} else {
				on.patches = append(on.patches, patch{best, t0, t1, f[1] - f[0]})
			}
			continue
		}
		edge := f[0]
		for n, j := range across {
			to := f[1]
			if n+1 < len(across) {
				o := l.bars[across[n+1]].c
				to = math.Min(to, (l.bars[j].c+o)/2)
				if a, b := math.Max(f[0], l.bars[j].c), math.Min(f[1], o); b > a {
					key := [2]int{j, across[n+1]}
					widest[key] = math.Max(widest[key], o-l.bars[j].c)
				}
			}
			if to > edge {
				on.patches = append(on.patches, patch{j, t0, t1, to - edge})
				edge = to
			}
		}
	}
}

// across returns the pieces that boards at a place cross, by rising place. One
// that ends short of the place by a butt's gap counts.
func (l *Layout) across(on *deckOn, t float64) []int {
	var out []int
	for _, j := range on.across {
		if b := l.bars[j]; t >= b.lo-l.Drawing.Room.Butt-tiny && t <= b.hi+l.Drawing.Room.Butt+tiny {
			out = append(out, j)
		}
	}
	return out
}

// joined puts patches of one piece together that lie beside each other or end to
// end.
func joined(all []patch) []patch {
	slices.SortStableFunc(all, func(a, b patch) int {
		return cmp.Or(cmp.Compare(a.piece, b.piece), cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi))
	})
	beside := all[:0:0]
	for _, p := range all {
		if n := len(beside) - 1; n >= 0 && beside[n].piece == p.piece && beside[n].lo == p.lo && beside[n].hi == p.hi {
			beside[n].width += p.width
			continue
		}
		beside = append(beside, p)
	}
	out := beside[:0:0]
	for _, p := range beside {
		if n := len(out) - 1; n >= 0 && out[n].piece == p.piece && out[n].hi == p.lo && math.Abs(out[n].width-p.width) < tiny {
			out[n].hi = p.hi
			continue
		}
		out = append(out, p)
	}
	return out
}

// spans compares the joists' spacing with what the boards may span.
func (l *Layout) spans(on *deckOn, widest map[[2]int]float64) {
	d := &l.Drawing.Decks[on.deck]
	board := lumber.Board{Section: lumber.Section{Width: d.Face, Depth: d.Thickness}, Rating: math.Min(2, d.Rating)}
	for n, j := range on.across {
		for _, o := range on.across[n+1:] {
			spacing, ok := widest[[2]int{j, o}]
			if !ok {
				continue
			}
			c, err := board.Check(math.Min(spacing, 10) - tiny) // 24 in. by marks are 24 in.
			if err != nil || c.Err != nil {
				// Boards have a table from 1 in. up.
				missing := math.Max(1*measure.Inch-math.Min(d.Face, d.Thickness), tiny)
				l.conflict(WideSpan, d.Name, l.name(j)+" and "+l.name(o), missing, "no rule for boards of that thickness")
				continue
			}
			if c.Verdict() != measure.Holds {
				l.short(WideSpan, d.Name, l.name(j)+" and "+l.name(o), spacing, c.Limit, c.Rule, "center to center of the joists")
			}
		}
	}
}

// share cuts the patches into tributary strips by members.
func (l *Layout) share() {
	for _, on := range l.decks {
		for _, p := range on.patches {
			members := l.byPiece[p.piece]
			if len(members) == 0 {
				continue
			}
			b := l.bars[p.piece]
			lo, hi := b.along(p.lo), b.along(p.hi)
			if lo > hi {
				lo, hi = hi, lo
			}
			first, last := l.Members[members[0]].From, l.Members[members[len(members)-1]].To
			lay := func(lo, hi, width float64) {
				for _, m := range members {
					x := &l.Members[m]
					if a, z := math.Max(lo, x.From), math.Min(hi, x.To); z > a {
						l.Tributary = append(l.Tributary, Tributary{Member: m, Piece: p.piece, From: a - x.From, To: z - x.From, Width: width})
					}
				}
			}
			lay(lo, hi, p.width)
			// What lies past the last node is laid just inside it, as far as it is long.
			if past := math.Min(hi, first) - lo; past > 0 {
				in := math.Min(past, last-first)
				lay(first, first+in, p.width*past/in)
			}
			if past := hi - math.Max(lo, last); past > 0 {
				in := math.Min(past, last-first)
				lay(last-in, last, p.width*past/in)
			}
		}
	}
}
