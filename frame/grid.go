package frame

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A corner is a node prepared for solving. Its two rotations are about axes of
// its own where a single direction is all that its members hold, so that the
// other can be left out; else about x and y.
type corner struct {
	w, r1, r2 int     // unknowns
	cos, sin  float64 // the first axis; the second is a quarter turn on
}

// An end is one end of a bar: the slope along the bar is slope1·r1 + slope2·r2
// of its corner, the twist about it twist1·r1 + twist2·r2.
type end struct {
	corner
	slope1, slope2, twist1, twist2 float64
}

// A bar is a member prepared for solving.
type bar struct {
	*Member
	h            float64
	a, b         end
	shear        float64 // stiffness against leaving the line, N/m
	bend         float64 // stiffness against bending evenly, N·m; none with a hinge
	twist        float64 // stiffness against twisting, N·m
	phi          float64
	first, after int // its stretches
	// What its loads alone do at J when it is held at I.
	load Diagram
}

// A grid is a grillage prepared for solving.
type grid struct {
	engine
	of        *Grillage
	corners   []corner
	bars      []bar
	stretches []stretch
	forces3   [][3]float64 // by node: up, about the corner's own two axes
	seats     []int        // of each bearing
}

// assemble prepares the grillage.
func (g *Grillage) assemble() (*grid, error) {
	if err := g.check(); err != nil {
		return nil, err
	}
	if err := g.seated(); err != nil {
		return nil, err
	}
	s := &grid{of: g}
	s.body = s
	s.size()
	s.setCorners()
	s.setBars()
	if err := s.setSeats(); err != nil {
		return nil, err
	}
	s.setStiffness()
	return s, s.setForces()
}

// seated returns an error if a part has no seat at all.
func (g *Grillage) seated() error {
	part := g.parts()
	held := make([]bool, len(part))
	for _, s := range g.Seats {
		for _, n := range s.Nodes {
			held[part[n]] = true
		}
	}
	for i, p := range part {
		if !held[p] {
			return &MechanismError{Place: g.node(i), X: g.Nodes[i][0], Y: g.Nodes[i][1], Motion: "moves up or down"}
		}
	}
	return nil
}

// size finds the size of the frame and of its stiffness.
func (s *grid) size() {
	g := s.of
	lo, hi := g.Nodes[0], g.Nodes[0]
	for _, n := range g.Nodes {
		for k := range n {
			lo[k], hi[k] = math.Min(lo[k], n[k]), math.Max(hi[k], n[k])
		}
	}
	s.length = math.Hypot(hi[0]-lo[0], hi[1]-lo[1])
	if s.length == 0 {
		s.length = 1
	}
	for _, m := range g.Members {
		s.soft = math.Max(s.soft, m.EI)
	}
	s.soft /= s.length * s.length * s.length
	if s.soft == 0 {
		s.soft = 1
	}
}

// setCorners orders the nodes and gives each its unknowns.
func (s *grid) setCorners() {
	g := s.of
	n := len(g.Nodes)
	joined := make([][]int, n)
	join := func(i, j int) {
		joined[i] = append(joined[i], j)
		joined[j] = append(joined[j], i)
	}
	for _, m := range g.Members {
		join(m.I, m.J)
	}
	for _, seat := range g.Seats {
		for k, i := range seat.Nodes {
			for _, j := range seat.Nodes[:k] {
				join(i, j)
			}
		}
	}
	place := narrow(n, joined)
	for i, js := range joined {
		for _, j := range js {
			s.half = max(s.half, place[i]-place[j])
		}
	}
	s.half = 3*s.half + 2
	s.half = min(s.half, 3*n-1)

	// The stiffness of a node against turning, in its two directions, tells
	// whether one direction is free of every member.
	type turn struct{ xx, xy, yy float64 }
	turns := make([]turn, n)
	for i := range g.Members {
		m := &g.Members[i]
		h := g.length(i)
		c, d := (g.Nodes[m.J][0]-g.Nodes[m.I][0])/h, (g.Nodes[m.J][1]-g.Nodes[m.I][1])/h
		if !m.Untwist {
			for _, k := range [2]int{m.I, m.J} {
				turns[k].xx += m.GJ / h * c * c
				turns[k].xy += m.GJ / h * c * d
				turns[k].yy += m.GJ / h * d * d
			}
		}
		for k, hinged := range [2]bool{m.HingeI, m.HingeJ} {
			if !hinged {
				t := &turns[[2]int{m.I, m.J}[k]]
				t.xx += m.EI / h * d * d
				t.xy -= m.EI / h * c * d
				t.yy += m.EI / h * c * c
			}
		}
	}
	s.corners = make([]corner, n)
	s.fixed, s.turns, s.x = make([]bool, 3*n), make([]bool, 3*n), make([]two, 3*n)
	for i := range s.corners {
		c := &s.corners[i]
		*c = corner{w: 3 * place[i], r1: 3*place[i] + 1, r2: 3*place[i] + 2, cos: 1}
		s.turns[c.r1], s.turns[c.r2] = true, true
		t := turns[i]
		switch sum := t.xx + t.yy; {
		case sum == 0:
			s.fixed[c.r1], s.fixed[c.r2] = true, true
		case t.xx*t.yy-t.xy*t.xy <= 1e-13*sum*sum:
			// One direction only: turn the axes so that r1 lies along it.
			angle := math.Atan2(2*t.xy, t.xx-t.yy) / 2
			c.sin, c.cos = math.Sincos(angle)
			s.fixed[c.r2] = true
		}
	}
}

// setBars finds each member's stiffness and what its loads do.
func (s *grid) setBars() {
	g := s.of
	s.bars = make([]bar, len(g.Members))
	n := 0
	for i := range g.Members {
		n += 2*len(g.Members[i].Loads) + 1
	}
	s.stretches = make([]stretch, 0, n)
	for i := range s.bars {
		m := &g.Members[i]
		p := &s.bars[i]
		h := g.length(i)
		c, d := (g.Nodes[m.J][0]-g.Nodes[m.I][0])/h, (g.Nodes[m.J][1]-g.Nodes[m.I][1])/h
		p.Member, p.h = m, h
		p.a, p.b = s.corners[m.I].along(c, d), s.corners[m.J].along(c, d)
		if m.GA > 0 {
			p.phi = 12 * m.EI / (m.GA * h * h)
		}
		cube := m.EI / (h * h * h)
		switch {
		case !m.HingeI && !m.HingeJ:
			p.shear, p.bend = 12*cube/(1+p.phi), m.EI/h
		case m.HingeI != m.HingeJ:
			p.shear = 3 * cube / (1 + p.phi/4)
		}
		if !m.Untwist {
			p.twist = m.GJ / h
		}
		s.stiffest = max(s.stiffest, p.shear)
		s.layLoads(p)
	}
}

// along returns the end of a bar in the direction (c, d) at a corner. The slope
// along the bar is d·thx - c·thy, the twist about it c·thx + d·thy.
func (k corner) along(c, d float64) end {
	return end{
		corner: k,
		slope1: d*k.cos - c*k.sin, slope2: -d*k.sin - c*k.cos,
		twist1: c*k.cos + d*k.sin, twist2: -c*k.sin + d*k.cos,
	}
}

// layLoads cuts a bar at its loads and finds what they do alone.
func (s *grid) layLoads(p *bar) {
	p.first = len(s.stretches)
	inside := func(x float64) float64 {
		if x <= slack*p.h {
			return 0
		}
		if x >= p.h*(1-slack) {
			return p.h
		}
		return x
	}
	cuts := make([]float64, 2, 2+2*len(p.Loads))
	cuts[1] = p.h
	for _, l := range p.Loads {
		cuts = append(cuts, inside(l.From))
		if l.spread() {
			cuts = append(cuts, inside(l.To))
		}
	}
	cuts = places(cuts, 0)
	for i := range cuts[1:] {
		s.stretches = append(s.stretches, stretch{x: cuts[i], h: cuts[i+1] - cuts[i]})
	}
	p.after = len(s.stretches)
	row := s.stretches[p.first:]
	var last jump
	for _, l := range p.Loads {
		s.load += l.size(s.length)
		if l.spread() {
			l.over(row, inside(l.From), inside(l.To))
			continue
		}
		at := &last
		for k := range row {
			if row[k].x == inside(l.From) {
				at = &row[k].jump
			}
		}
		at.force += l.P
		at.couple += l.M
	}
	var d Diagram
	for k := range row {
		d = row[k].begin(d)
		d = row[k].march(d, p.EI, p.GA)
	}
	d.Shear -= last.force
	d.Moment -= last.couple
	p.load = d
}

// setSeats makes the bearings and holds the rigid nodes.
func (s *grid) setSeats() error {
	g := s.of
	rigid := make([]bool, len(g.Nodes))
	held := make([]bool, len(g.Nodes))
	for i := range g.Seats {
		seat := &g.Seats[i]
		c := &s.corners[seat.Nodes[0]]
		twice := func(was *bool, part, text string) error {
			if *was {
				return &measure.Error{Field: g.seat(i) + part, Text: text, Class: measure.ErrRange, Want: "one of them"}
			}
			*was = true
			return nil
		}
		if seat.Held {
			if err := twice(&held[seat.Nodes[0]], ".Held", "a second hold on the rotations of a node"); err != nil {
				return err
			}
			s.fixed[c.r1], s.fixed[c.r2] = true, true
		}
		if seat.Support == nil {
			if err := twice(&rigid[seat.Nodes[0]], ".Nodes", "a second rigid seat under a node"); err != nil {
				return err
			}
			s.fixed[c.w] = true
			s.x[c.w] = two{hi: seat.Level}
			continue
		}
		b := bearing{support: seat.Support, down: -seat.Level, shares: make([]share, len(seat.Nodes))}
		for k, n := range seat.Nodes {
			part := 1 / float64(len(seat.Nodes))
			if seat.Share != nil {
				part = seat.Share[k]
			}
			b.shares[k] = share{s.corners[n].w, part}
		}
		s.bearings = append(s.bearings, b)
		s.seats = append(s.seats, i)
	}
	return nil
}

// setStiffness adds up the members: each resists leaving its line, bending
// evenly and twisting, by one stiffness and one combination of movements each.
func (s *grid) setStiffness() {
	s.base = newBand(len(s.x), s.half)
	for i := range s.bars {
		p := &s.bars[i]
		for _, mode := range p.modes() {
			for j := range mode.at {
				for k := range mode.at[:j+1] {
					*s.base.at(mode.at[j], mode.at[k]) += mode.stiffness * mode.part[j] * mode.part[k]
				}
			}
		}
	}
}

// A mode is one way in which a bar resists.
type mode struct {
	stiffness float64
	at        [6]int
	part      [6]float64
}

func (p *bar) modes() [3]mode {
	at := [6]int{p.a.w, p.a.r1, p.a.r2, p.b.w, p.b.r1, p.b.r2}
	near, far := p.h/2, p.h/2
	switch {
	case p.HingeI:
		near, far = 0, p.h
	case p.HingeJ:
		near, far = p.h, 0
	}
	return [3]mode{
		{p.shear, at, [6]float64{1, near * p.a.slope1, near * p.a.slope2, -1, far * p.b.slope1, far * p.b.slope2}},
		{p.bend, at, [6]float64{0, -p.a.slope1, -p.a.slope2, 0, p.b.slope1, p.b.slope2}},
		{p.twist, at, [6]float64{0, -p.a.twist1, -p.a.twist2, 0, p.b.twist1, p.b.twist2}},
	}
}

// setForces turns the forces on the nodes into their corners' axes. A moment
// that no member takes turns the node freely.
func (s *grid) setForces() error {
	g := s.of
	if g.Forces == nil {
		return nil
	}
	held := make([]bool, len(g.Nodes))
	for _, seat := range g.Seats {
		if seat.Held {
			held[seat.Nodes[0]] = true
		}
	}
	s.forces3 = make([][3]float64, len(g.Nodes))
	for i, f := range g.Forces {
		c := &s.corners[i]
		m1, m2 := f[1]*c.cos+f[2]*c.sin, -f[1]*c.sin+f[2]*c.cos
		size := math.Hypot(f[1], f[2])
		if !held[i] && (s.fixed[c.r2] && math.Abs(m2) > 1e-9*size || s.fixed[c.r1] && math.Abs(m1) > 1e-9*size) {
			return &MechanismError{
				Place: g.node(i), X: g.Nodes[i][0], Y: g.Nodes[i][1],
				Motion: "turns on the spot under its moment, which no member takes",
			}
		}
		s.forces3[i] = [3]float64{f[0], m1, m2}
		s.load += math.Abs(f[0]) + size/s.length
	}
	return nil
}
