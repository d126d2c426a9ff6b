package layout

import (
	"cmp"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Strength is what one deck board and its screws hold against a drum below.
type Strength struct {
	Moment float64 // N·m, upward bending of one board on the flat
	Screw  float64 // N, pull of one screw
	Screws int     // through one board into one joist
}

// A Lift is what a drum under the boards does to them, and how many must be on
// before it may push: before they are, it lifts nothing, and when the ice goes it
// pushes those that are there.
type Lift struct {
	Line     float64 // N/m along the crown
	Crossing int     // boards over the crown once all are on
	Rows     []int   // the fewest that hold, counted from 1 at the deck's Min; nil where no number does
	Board    float64 // N, on the hardest pushed of them
	Moment   float64 // N·m, in that board
	Screw    float64 // N, pull of its hardest pulled screw
	Conflict *Conflict
}

// Lift returns the least boards that must be on over a drum, by its index, before
// its push, N, may come: neighbours about its middle, on which it stands without
// rocking, two at least where two cross it. Boards along the drum's axis take it
// one alone. A drum that bears on joists needs none; its Lift is zero.
//
// A board is figured both as ended on the two joists beside the drum and as running
// on over all joists under it, held down and up at each (beam theory, the theorem of
// three moments); the worse counts. Its own weight is left out, which is cautious.
func (l *Layout) Lift(drum int, push float64, s Strength) (Lift, error) {
	if err := l.whole(); err != nil {
		return Lift{}, err
	}
	if drum < 0 || drum >= len(l.Bearings) {
		return Lift{}, &measure.Error{Field: "drum", Value: float64(drum), Class: measure.ErrRange, Want: "the index of a drum of the drawing"}
	}
	for _, c := range []struct {
		what string
		r    measure.Range
		x    float64
	}{
		{"push", measure.Range{Kind: measure.Force, OpenLo: true, Hi: 1e7}, push},
		{"Moment", measure.Range{Kind: measure.Moment, Lo: 1e-6, Hi: 1e6}, s.Moment},
		{"Screw", measure.Range{Kind: measure.Force, Lo: 1e-6, Hi: 1e6}, s.Screw},
		{"Screws", measure.Range{Lo: 1, Hi: 20}, float64(s.Screws)},
	} {
		if err := c.r.Check(c.what, c.x); err != nil {
			return Lift{}, err
		}
	}
	b, d := &l.Bearings[drum], &l.Drawing.Drums[drum]
	if b.Seat != UnderBoards {
		return Lift{}, nil
	}
	// Both may have been changed since New checked the one and found the other.
	if err := cmp.Or(l.Drawing.check(), places.Check("Bearings.At.X", b.At.X), places.Check("Bearings.At.Y", b.At.Y)); err != nil {
		return Lift{}, err
	}
	on := l.deckOf(b.Deck)
	if on == nil {
		return Lift{}, &measure.Error{Field: "Bearings.Deck", Value: float64(b.Deck), Class: measure.ErrRange, Want: "the index of a deck of the drawing"}
	}
	deck := &l.Drawing.Decks[b.Deck]
	u := axisOf(d)
	t0, t1 := deck.corners(u)
	half := d.Length / 2
	from, to := math.Max(t0, b.At.on(u)-half), math.Min(t1, b.At.on(u)+half)
	if !(to-from > tiny) {
		return Lift{}, &measure.Error{Field: "boards over " + d.Name, Class: measure.ErrNotComputed, Why: "none lie over its crown", Want: "a drum under the deck"}
	}
	out := Lift{Line: push / (to - from)}

	// What one newton on one board does to it.
	var loads []load
	if on.k == u { // boards along the drum: one takes the whole line
		for i := range 8 {
			loads = append(loads, load{from + (to-from)*(float64(i)+0.5)/8, 1.0 / 8})
		}
	} else {
		loads = []load{{b.At.on(on.k), 1}}
	}
	var supports []float64
	for _, j := range l.across(on, b.At.on(on.t)) {
		if n := len(supports); n == 0 || l.bars[j].c > supports[n-1]+merge {
			supports = append(supports, l.bars[j].c)
		}
	}
	if len(supports) < 2 {
		return Lift{}, &measure.Error{Field: "boards over " + d.Name, Class: measure.ErrNotComputed, Why: "they cross fewer than two joists", Want: "two joists or more"}
	}
	bend, pull := continuous(supports, loads)
	n := 1
	for n < len(supports)-1 && b.At.on(on.k) > supports[n] {
		n++
	}
	bend2, pull2 := continuous(supports[n-1:n+1], loads)
	bend, pull = math.Max(bend, bend2), math.Max(pull, pull2)
	least := math.Min(s.Moment/bend, s.Screw*float64(s.Screws)/pull) // N that one board holds

	var all []touch
	var rows []int
	pitch := deck.Face + deck.Gap
	r0, r1 := deck.corners(on.t)
	for row := 0; row < 100000 && r0+float64(row)*pitch < r1-tiny; row++ {
		lo := r0 + float64(row)*pitch
		hi := math.Min(r1, lo+deck.Face)
		mid := (lo + hi) / 2
		if on.k == u {
			if v := b.At.on(on.t); v < lo-deck.Gap/2-tiny || v >= hi+deck.Gap/2 || len(rows) == 1 {
				continue
			}
			mid = b.At.on(u)
		} else if mid < from-tiny || mid > to+tiny {
			continue
		}
		rows, all = append(rows, row+1), append(all, touch{u: mid - b.At.on(u), w: 1})
	}
	out.Crossing = len(rows)
	for n := min(2, len(rows)); n <= len(rows) && n > 0 && out.Rows == nil; n++ {
		hardest := math.Inf(1)
		for first := 0; first+n <= len(rows); first++ {
			shares, miss := balance(all[first:first+n], false)
			worst := 0.0
			for _, x := range shares {
				worst = math.Max(worst, x)
			}
			if miss > bite || worst*push > least*(1+1e-12) || worst >= hardest-1e-12 {
				continue
			}
			hardest, out.Rows = worst, rows[first:first+n]
			out.Board, out.Moment, out.Screw = worst*push, worst*push*bend, worst*push*pull/float64(s.Screws)
		}
	}
	if out.Rows == nil {
		need := math.Max(float64(len(rows)+1), math.Ceil(push/least))
		c := Conflict{
			Kind: WeakBoards, A: d.Name, B: deck.Name, Missing: (need - float64(len(rows))) * pitch,
			Why: "one board holds " + measure.Force.Format(least, measure.SI) + " of a push of " + measure.Force.Format(push, measure.SI),
		}
		out.Conflict = &c
	}
	return out, nil
}

// A load is a force at a place along a board.
type load struct{ x, p float64 }

// continuous returns the greatest bending moment and the greatest reaction, both
// as sizes, of a beam of one stiffness under forces on rigid supports that hold
// both ways, from the theorem of three moments:
//
//	M1 a + 2 M2 (a + b) + M3 b = -Σ P x(a² - x²)/a - Σ P x(b² - x²)/b
//
// with x from the far support of either span. Supports rise; two are a simple span.
func continuous(supports []float64, loads []load) (moment, reaction float64) {
	n := len(supports)
	span := func(i int) float64 { return supports[i+1] - supports[i] }
	m := make([]float64, n)
	right := make([]float64, n)
	r := make([]float64, n)
	for _, q := range loads {
		switch {
		case q.x < supports[0]:
			m[0] -= q.p * (supports[0] - q.x)
			r[0] += q.p
			continue
		case q.x > supports[n-1]:
			m[n-1] -= q.p * (q.x - supports[n-1])
			r[n-1] += q.p
			continue
		}
		i := 0
		for i < n-2 && q.x > supports[i+1] {
			i++
		}
		s, a := span(i), q.x-supports[i]
		b := s - a
		right[i+1] -= q.p * a * (s*s - a*a) / s
		right[i] -= q.p * b * (s*s - b*b) / s
		r[i], r[i+1] = r[i]+q.p*b/s, r[i+1]+q.p*a/s
	}
	// Thomas's elimination over the inner supports.
	c := make([]float64, n)
	for i := 1; i < n-1; i++ {
		diag, rhs := 2*(span(i-1)+span(i)), right[i]
		if i == 1 {
			rhs -= m[0] * span(0)
		} else {
			diag -= span(i-1) * c[i-1]
			rhs -= span(i-1) * m[i-1]
		}
		if i == n-2 {
			rhs -= m[n-1] * span(i)
		}
		c[i], m[i] = span(i)/diag, rhs/diag
	}
	for i := n - 3; i >= 1; i-- {
		m[i] -= c[i] * m[i+1]
	}
	for i := range n - 1 {
		t := (m[i+1] - m[i]) / span(i)
		r[i], r[i+1] = r[i]+t, r[i+1]-t
	}
	for i := range n {
		moment, reaction = math.Max(moment, math.Abs(m[i])), math.Max(reaction, r[i])
	}
	for _, q := range loads {
		moment = math.Max(moment, math.Abs(bending(supports, m, loads, q.x)))
	}
	return moment, reaction
}

// bending returns the moment at a place from those at the supports.
func bending(supports, m []float64, loads []load, x float64) float64 {
	n := len(supports)
	if x <= supports[0] || x >= supports[n-1] {
		return 0 // the arm past the end bends most at its support
	}
	i := 0
	for i < n-2 && x > supports[i+1] {
		i++
	}
	s, a := supports[i+1]-supports[i], x-supports[i]
	out := m[i]*(1-a/s) + m[i+1]*a/s
	for _, q := range loads {
		if q.x > supports[i] && q.x < supports[i+1] {
			y := q.x - supports[i]
			out += q.p * math.Min(a, y) * (s - math.Max(a, y)) / s
		}
	}
	return out
}
