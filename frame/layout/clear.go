package layout

import "math"

// clear looks at the room around every drum and bolt.
func (l *Layout) clear() {
	for i := range l.Drawing.Drums {
		l.around(i)
		l.inside(i)
		for j := range i {
			l.crowded(j, i)
		}
	}
	for i := range l.Drawing.Bolts {
		l.reach(&l.Drawing.Bolts[i])
	}
}

// A room is the free way of a drum towards one side: how far, and to which piece;
// -1 and no end where nothing stands there.
type room struct {
	gap   float64
	piece int
}

func (r *room) take(gap float64, piece int) {
	if gap < r.gap {
		r.gap, r.piece = math.Max(0, gap), piece
	}
}

// around checks a drum's way in, and what keeps it from rolling, sliding and
// dropping out.
func (l *Layout) around(i int) {
	d, b := &l.Drawing.Drums[i], &l.Bearings[i]
	placed := *d
	placed.At = b.At
	r, h := d.Diameter/2, d.height()
	open := room{math.Inf(1), -1}
	side, end, keep := [2]room{open, open}, [2]room{open, open}, [2]room{open, open}
	bay := [2]room{open, open}
	held := false // something lies right below
	for _, s := range l.view(&placed) {
		if d.DropIn && s.z1 > b.Centre && s.beside(d) && (s.v0 <= 0 && s.v1 >= 0 || !d.round() && s.v0 < r-bite && s.v1 > -r+bite) {
			l.conflict(Covered, d.Name, l.name(s.piece), math.Min(s.u1+d.Length/2, d.Length/2-s.u0), "it cannot be put in from above")
		}
		z := math.Min(s.z1, math.Max(s.z0, b.Centre))
		dz := math.Abs(z - b.Centre)
		if dz >= h/2-tiny {
			continue // above or below the drum
		}
		// Practice counts a bay's width over the whole diameter, though joists stand
		// above the widest place; strips and stops are met where they are.
		chord, wide := r, r
		if d.round() {
			chord = math.Sqrt((r - dz) * (r + dz))
			if !l.Drawing.Pieces[s.piece].Kind.carries() {
				wide = chord
			}
		}
		if s.beside(d) {
			below := (s.z0+s.z1)/2 < b.Centre
			switch {
			case s.v0 <= 0 && s.v1 >= 0:
				held = held || below
			case s.v1 <= 0:
				side[0].take(-s.v1-wide, s.piece)
				if below {
					keep[0].take(-s.v1, s.piece)
				} else {
					bay[0].take(-s.v1, s.piece)
				}
			default:
				side[1].take(s.v0-wide, s.piece)
				if below {
					keep[1].take(s.v0, s.piece)
				} else {
					bay[1].take(s.v0, s.piece)
				}
			}
			continue
		}
		if s.v0 < chord-bite && s.v1 > -chord+bite {
			if s.u0 > 0 {
				end[1].take(s.u0-d.Length/2, s.piece)
			} else {
				end[0].take(-s.u1-d.Length/2, s.piece)
			}
		}
	}
	beside, row := l.neighbours(i, &side, &end)
	least, loosest := l.Drawing.Room.Side[0], l.Drawing.Room.Side[1]
	if opening := bay[0].gap + bay[1].gap; bay[0].piece >= 0 && bay[1].piece >= 0 && (d.DropIn || b.Seat == UnderBoards) && d.Diameter+least-opening > tiny {
		tight := bay[0]
		if bay[1].gap < bay[0].gap-tiny {
			tight = bay[1]
		}
		l.short(TightBay, d.Name, l.name(tight.piece), opening, d.Diameter+least, practice, "clear width of the bay")
	}
	if b.Seat != Wedged {
		l.loose(Rolls, i, 1-axisOf(d), side, loosest*beside)
	}
	between := end[0].gap + end[1].gap
	if end[0].piece >= 0 && end[1].piece >= 0 && l.Drawing.Room.End[0]*row-between > tiny {
		tight := end[0]
		if end[1].gap < end[0].gap-tiny {
			tight = end[1]
		}
		l.short(TightEnds, d.Name, l.name(tight.piece), between, l.Drawing.Room.End[0]*row, practice, "room at both ends together")
	}
	l.loose(Slides, i, axisOf(d), end, l.Drawing.Room.End[1]*row)
	if d.Tied || held {
		return
	}
	opening := keep[0].gap + keep[1].gap
	switch {
	case keep[0].piece < 0 && keep[1].piece < 0:
		on := "the frame"
		if len(b.Contacts) > 0 {
			on = l.name(b.Contacts[0].Piece)
		}
		l.conflict(Drops, d.Name, on, d.Diameter, "no tie and no strip holds it when the water falls or the dock is lifted")
	case opening >= d.Diameter:
		on := max(keep[0].piece, keep[1].piece)
		missing := opening - d.Diameter
		if math.IsInf(missing, 1) {
			missing = d.Diameter
		}
		l.conflict(Drops, d.Name, l.name(on), math.Max(missing, bite), "it falls through between the strips below it")
	}
}

// neighbours takes from a drum's way what other drums in its row fill of it: the row
// wanders as one, and shares the room of all. It returns how many drums there are
// in the row to its sides and in the one past its ends.
func (l *Layout) neighbours(i int, side, end *[2]room) (beside, row float64) {
	beside, row = 1, 1
	d, b := &l.Drawing.Drums[i], &l.Bearings[i]
	u, v := d.axes()
	bare := map[*[2]room][2]room{side: *side, end: *end}
	for j := range l.Drawing.Drums {
		o, ob := &l.Drawing.Drums[j], &l.Bearings[j]
		if j == i || o.Along != d.Along || math.Abs(ob.Centre-b.Centre) >= (d.height()+o.height())/2 {
			continue
		}
		fill := func(way *[2]room, axis int, own, other float64) float64 {
			k, gap := 1, ob.At.on(axis)-b.At.on(axis)
			if gap < 0 {
				k, gap = 0, -gap
			}
			if bare[way][k].gap > gap-own/2-bite { // the piece lies past the other drum
				way[k].gap = math.Max(0, way[k].gap-other)
				return 1
			}
			return 0
		}
		du, dv := math.Abs(ob.At.on(u)-b.At.on(u)), math.Abs(ob.At.on(v)-b.At.on(v))
		switch {
		case dv < (d.Diameter+o.Diameter)/2-bite && du >= (d.Length+o.Length)/2-bite:
			row += fill(end, u, d.Length, o.Length)
		case du < (d.Length+o.Length)/2-bite && dv >= (d.Diameter+o.Diameter)/2-bite:
			beside += fill(side, v, d.Diameter, o.Diameter)
		}
	}
	return beside, row
}

func axisOf(d *Drum) int {
	u, _ := d.axes()
	return u
}

// loose records a drum that may wander further than it should. Where nothing stands
// in its way, what is missing is how far its middle lies from the frame's edge.
func (l *Layout) loose(f Fault, i, axis int, way [2]room, most float64) {
	d, b := &l.Drawing.Drums[i], &l.Bearings[i]
	far := 0
	if way[1].gap > way[0].gap+tiny {
		far = 1
	}
	if way[far].piece >= 0 {
		if free := way[0].gap + way[1].gap; free-most > tiny {
			l.short(f, d.Name, l.name(way[far].piece), free, most, practice, "all gaps along it together")
		}
		return
	}
	missing := math.Inf(1) // to the nearer edge, if both ways are open
	for k, w := range way {
		if w.piece >= 0 {
			continue
		}
		edge := 0.0
		for _, bar := range l.bars {
			lo, hi := bar.span(axis)
			if k == 0 {
				edge = math.Max(edge, b.At.on(axis)-lo)
			} else {
				edge = math.Max(edge, hi-b.At.on(axis))
			}
		}
		missing = math.Min(missing, edge)
	}
	l.conflict(f, d.Name, "the frame's edge", math.Max(missing, bite), "nothing stands in its way")
}

// inside checks that the decks cover a drum.
func (l *Layout) inside(i int) {
	d, b := &l.Drawing.Drums[i], &l.Bearings[i]
	if len(l.Drawing.Decks) == 0 {
		return
	}
	u, _ := d.axes()
	worst, past := "", 0.0
	for _, s := range [4][2]float64{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}} {
		p := at(u, b.At.on(u)+s[0]*d.Length/2, b.At.on(1-u)+s[1]*d.Diameter/2)
		name, gap := "", math.Inf(1)
		for j := range l.Drawing.Decks {
			k := &l.Drawing.Decks[j]
			if g := math.Hypot(math.Max(0, apart(k.Min.X, k.Max.X, p.X, p.X)), math.Max(0, apart(k.Min.Y, k.Max.Y, p.Y, p.Y))); g < gap {
				name, gap = k.Name, g
			}
		}
		if gap > past {
			worst, past = name, gap
		}
	}
	if past > bite {
		l.conflict(Protrudes, d.Name, worst, past, "boats and ice catch it there")
	}
}

// crowded checks two drums against each other.
func (l *Layout) crowded(i, j int) {
	var g [3]float64
	box := func(i int) (lo, hi [3]float64) {
		d, b := &l.Drawing.Drums[i], &l.Bearings[i]
		u, v := d.axes()
		lo[u], hi[u] = b.At.on(u)-d.Length/2, b.At.on(u)+d.Length/2
		lo[v], hi[v] = b.At.on(v)-d.Diameter/2, b.At.on(v)+d.Diameter/2
		lo[2], hi[2] = b.Centre-d.height()/2, b.Centre+d.height()/2
		return lo, hi
	}
	a0, a1 := box(i)
	b0, b1 := box(j)
	for k := range g {
		g[k] = apart(a0[k], a1[k], b0[k], b1[k])
	}
	d, o := &l.Drawing.Drums[i], &l.Drawing.Drums[j]
	if v := 1 - axisOf(d); d.round() && o.round() && d.Along == o.Along {
		ring := math.Hypot(l.Bearings[i].At.on(v)-l.Bearings[j].At.on(v), l.Bearings[i].Centre-l.Bearings[j].Centre) - (d.Diameter+o.Diameter)/2
		g[v], g[2] = ring, ring
	}
	if deep := -math.Max(g[0], math.Max(g[1], g[2])); deep > bite {
		l.conflict(Overlaps, d.Name, o.Name, deep, "both drums are drawn in one place")
	}
}

// reach checks a bolt's tail against the drums, and the room for the wrench.
func (l *Layout) reach(b *Bolt) {
	axis, length := 0, b.Tail.X
	if b.Tail.X == 0 {
		axis, length = 1, b.Tail.Y
	}
	sign := math.Copysign(1, length)
	length = math.Abs(length)
	start, across := b.At.on(axis), b.At.on(1-axis)
	free, by := math.Inf(1), ""
	for i, bar := range l.bars {
		lo, hi := bar.span(axis)
		c0, c1 := bar.span(1 - axis)
		if across <= c0 || across >= c1 || b.Height <= bar.z0 || b.Height >= bar.z1 {
			continue
		}
		face := lo
		if sign < 0 {
			face = hi
		}
		if way := (face - start) * sign; way > -bite && way < free {
			free, by = math.Max(0, way), l.name(i)
		}
	}
	for i := range l.Drawing.Drums {
		d, on := &l.Drawing.Drums[i], &l.Bearings[i]
		gap := func(s float64) float64 { // from the tail, at s along it, to the drum
			p := at(axis, start+sign*s, across)
			u, v := d.axes()
			du, dv, dz := math.Abs(p.on(u)-on.At.on(u))-d.Length/2, p.on(v)-on.At.on(v), b.Height-on.Centre
			ring := math.Hypot(dv, dz) - d.Diameter/2
			if !d.round() {
				ring = box2(math.Abs(dv)-d.Diameter/2, math.Abs(dz)-d.height()/2)
			}
			return box2(du, ring)
		}
		// The gap to a convex body is convex along the tail.
		lo, hi := 0.0, length
		for range 100 {
			a, z := lo+(hi-lo)/3, hi-(hi-lo)/3
			if gap(a) <= gap(z) {
				hi = z
			} else {
				lo = a
			}
		}
		least := math.Min(gap((lo+hi)/2), math.Min(gap(0), gap(length)))
		if missing := l.Drawing.Room.Tail - least; missing > tiny {
			l.short(TailNear, b.Name, d.Name, least, l.Drawing.Room.Tail, practice, "the drum rubs and the tail cuts: turn it round")
		}
		// The drum ahead of the tail, in the tail's own line.
		for k := 0; k <= 400; k++ {
			s := float64(k) / 400 * (length + l.Drawing.Room.Wrench)
			if gap(s) <= 0 {
				if s < free {
					free, by = s, d.Name
				}
				break
			}
		}
	}
	if missing := length + l.Drawing.Room.Wrench - free; missing > tiny {
		l.short(NoReach, b.Name, by, free, length+l.Drawing.Room.Wrench, practice, "the tail and a wrench past it")
	}
}

// box2 returns the signed distance from a box, from those past its sides.
func box2(x, y float64) float64 {
	if x > 0 && y > 0 {
		return math.Hypot(x, y)
	}
	return math.Max(x, y)
}
