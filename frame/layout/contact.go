package layout

import (
	"math"
	"slices"
)

// parts holds the places, on -1 to 1, and weights of a push in 1, 2 and 3 parts
// whose moments up to the fifth are those of an even push (Gauss and Legendre).
var parts = [...][]struct{ x, w float64 }{
	1: {{0, 1}},
	2: {{-0.57735026918962576451, 0.5}, {0.57735026918962576451, 0.5}},
	3: {{-0.77459666924148337704, 5.0 / 18}, {0, 8.0 / 18}, {0.77459666924148337704, 5.0 / 18}},
}

// A touch is a place that a drum touches, about its middle, with its weight among
// all.
type touch struct {
	piece   int
	u, v, w float64
}

// contact shares a drum's push among what it touches.
func (l *Layout) contact(d *Drum, b *Bearing, over []seen, low float64) {
	u, _ := d.axes()
	cut := parts[l.Drawing.Slices]
	var touches []touch
	line := func(piece int, u0, u1, v0, v1, w float64) { // a line of contact in u, or in v
		for _, p := range cut {
			touches = append(touches, touch{piece, (u0+u1)/2 + p.x*(u1-u0)/2, (v0+v1)/2 + p.x*(v1-v0)/2, w * p.w})
		}
	}
	half := d.Length / 2
	switch b.Seat {
	case UnderJoists:
		for _, s := range over {
			if s.z0 > low+bite {
				continue
			}
			u0, u1 := math.Max(s.u0, -half), math.Min(s.u1, half)
			switch along := l.bars[s.piece].axis == u; {
			case along && d.round():
				line(s.piece, u0, u1, 0, 0, u1-u0)
			case along:
				c := (math.Max(s.v0, -d.Diameter/2) + math.Min(s.v1, d.Diameter/2)) / 2
				line(s.piece, u0, u1, c, c, u1-u0)
			case d.round():
				touches = append(touches, touch{s.piece, (u0 + u1) / 2, 0, 1})
			default:
				v0, v1 := math.Max(s.v0, -d.Diameter/2), math.Min(s.v1, d.Diameter/2)
				line(s.piece, (u0+u1)/2, (u0+u1)/2, v0, v1, v1-v0)
			}
		}
	case Wedged:
		sin := [2]float64{math.Sin(b.Angle[1]) * math.Cos(b.Angle[0]), math.Sin(b.Angle[0]) * math.Cos(b.Angle[1])}
		for k, piece := range b.Between {
			s0, s1 := l.bars[piece].span(u)
			u0, u1 := math.Max(s0-b.At.on(u), -half), math.Min(s1-b.At.on(u), half)
			line(piece, u0, u1, 0, 0, sin[k]/(sin[0]+sin[1]))
		}
	case UnderBoards:
		t0, t1 := l.Drawing.Decks[b.Deck].corners(u)
		line(-1, math.Max(t0-b.At.on(u), -half), math.Min(t1-b.At.on(u), half), 0, 0, 1)
	default:
		return
	}
	shares, miss := balance(touches, !d.round())
	if miss > bite {
		on := -1
		for _, t := range touches {
			on = max(on, t.piece)
		}
		name := ""
		if on >= 0 {
			name = l.name(on)
		} else {
			name = l.Drawing.Decks[b.Deck].Name
		}
		l.conflict(Rocks, d.Name, name, miss, "its middle lies outside what it bears on")
	}
	var out []Contact
	for i, t := range touches {
		p := at(u, b.At.on(u)+t.u, b.At.on(1-u)+t.v)
		on := l.under(p)
		if t.piece >= 0 {
			on = l.carry(t.piece, p, 1)
		}
		for _, c := range on {
			if c.Share *= shares[i]; math.Abs(c.Share) > 1e-12 { // what rounding leaves of nothing bears nothing
				out = append(out, c)
			}
		}
	}
	b.Contacts = out
}

// carry returns what takes a share of a push on a piece at a place: the piece
// itself, or what a strip or a stop is fixed to, by the lever between two.
func (l *Layout) carry(piece int, p Point, share float64) []Contact {
	on := func(piece int, share float64) Contact {
		bar := l.bars[piece]
		s := math.Min(bar.hi, math.Max(bar.lo, p.on(bar.axis)))
		return Contact{Piece: piece, At: bar.along(s), Share: share}
	}
	if l.Drawing.Pieces[piece].Kind.carries() {
		return []Contact{on(piece, share)}
	}
	k := l.bars[piece].axis
	below, above := -1, -1 // hosts square to it, on both sides of the place
	for _, h := range l.hosts[piece] {
		switch b := l.bars[h]; {
		case b.axis == k: // it lies along its host
			return []Contact{on(h, share)}
		case b.c <= p.on(k) && (below < 0 || b.c > l.bars[below].c):
			below = h
		case b.c > p.on(k) && (above < 0 || b.c < l.bars[above].c):
			above = h
		}
	}
	switch {
	case below >= 0 && above >= 0:
		x := (p.on(k) - l.bars[below].c) / (l.bars[above].c - l.bars[below].c)
		return []Contact{on(below, share*(1-x)), on(above, share*x)}
	case below >= 0 || above >= 0:
		return []Contact{on(max(below, above), share)}
	}
	best, gap := -1, math.Inf(1) // fixed to nothing, which is a conflict of its own
	for j := range l.bars {
		if g := l.distance(j, p); g < gap && l.Drawing.Pieces[j].Kind.carries() {
			best, gap = j, g
		}
	}
	return []Contact{on(best, share)}
}

// balance returns the shares of a rigid float's push, which are the weights with a
// linear change over the float that puts their centre under its middle; places
// that would have to pull take nothing. It returns also how far the middle lies
// outside of all that can push.
func balance(all []touch, plane bool) (shares []float64, miss float64) {
	shares = make([]float64, len(all))
	active := make([]int, len(all))
	for i := range active {
		active[i] = i
	}
	for len(active) > 0 {
		var s, su, sv, suu, svv, suv float64
		for _, i := range active {
			s, su, sv = s+all[i].w, su+all[i].w*all[i].u, sv+all[i].w*all[i].v
		}
		cu, cv := su/s, sv/s
		if !plane {
			cv = 0
		}
		for _, i := range active {
			u, v := all[i].u-cu, all[i].v-cv
			suu, svv, suv = suu+all[i].w*u*u/s, svv+all[i].w*v*v/s, suv+all[i].w*u*v/s
		}
		// Shares w/s (1 + β(u - cu) + γ(v - cv)) with their centre at 0.
		var β, γ float64
		det := suu*svv - suv*suv
		switch {
		case plane && det > 1e-12*(suu+svv)*(suu+svv):
			β, γ = (-cu*svv+cv*suv)/det, (-cv*suu+cu*suv)/det
		case suu > 1e-12:
			β = -cu / suu
		case plane && svv > 1e-12:
			γ = -cv / svv
		}
		least, worst := 0.0, -1
		var ru, rv float64
		for _, i := range active {
			shares[i] = all[i].w / s * (1 + β*(all[i].u-cu) + γ*(all[i].v-cv))
			ru, rv = ru+shares[i]*all[i].u, rv+shares[i]*all[i].v
			if shares[i] < least-1e-12 {
				least, worst = shares[i], i
			}
		}
		if worst < 0 {
			if !plane {
				rv = 0
			}
			return shares, math.Hypot(ru, rv)
		}
		for _, i := range active {
			shares[i] = 0
		}
		active = slices.DeleteFunc(active, func(i int) bool { return i == worst })
	}
	return shares, 0
}
