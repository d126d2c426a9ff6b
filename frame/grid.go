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

// A grid is a grillage prepared for solving.
type grid struct {
	engine
	of        *Grillage
	corners   []corner
	bars      []bar
	stretches []stretch
	wood      *wood
	forces3   [][3]float64 // by node: up, about the corner's own two axes
	spins     []bool       // by node: a rotation that no member takes
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
	joined := g.joined()
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
	s.spins = make([]bool, n)
	s.fixed, s.turns, s.x = make([]bool, 3*n), make([]bool, 3*n), make([]two, 3*n)
	for i := range s.corners {
		c := &s.corners[i]
		*c = corner{w: 3 * place[i], r1: 3*place[i] + 1, r2: 3*place[i] + 2, cos: 1}
		s.turns[c.r1], s.turns[c.r2] = true, true
		t := turns[i]
		switch sum := t.xx + t.yy; {
		case sum == 0:
			s.fixed[c.r1], s.fixed[c.r2] = true, true
			s.spins[i] = true
		case t.xx*t.yy-t.xy*t.xy <= 1e-13*sum*sum:
			// One direction only: turn the axes so that r1 lies along it.
			angle := math.Atan2(2*t.xy, t.xx-t.yy) / 2
			c.sin, c.cos = math.Sincos(angle)
			s.fixed[c.r2] = true
			s.spins[i] = true
		}
	}
}

// joined lists the nodes that each node is joined to, by members and seats, all of
// them in one piece of memory.
func (g *Grillage) joined() [][]int {
	each := func(join func(i, j int)) {
		for i := range g.Members {
			join(g.Members[i].I, g.Members[i].J)
		}
		for i := range g.Seats {
			nodes := g.Seats[i].Nodes
			for k, a := range nodes {
				for _, b := range nodes[:k] {
					join(a, b)
				}
			}
		}
	}
	count, all := make([]int, len(g.Nodes)), 0
	each(func(i, j int) {
		count[i]++
		count[j]++
		all += 2
	})
	room := make([]int, all)
	out := make([][]int, len(g.Nodes))
	for i, c := range count {
		out[i], room = room[:0:c], room[c:]
	}
	each(func(i, j int) {
		out[i] = append(out[i], j)
		out[j] = append(out[j], i)
	})
	return out
}

// setSeats makes the bearings and holds the rigid nodes.
func (s *grid) setSeats() error {
	g := s.of
	rigid := make([]bool, len(g.Nodes))
	held := make([]bool, len(g.Nodes))
	for i := range g.Seats {
		if n := g.Seats[i].Nodes[0]; g.Seats[i].Clamped {
			s.spins[n] = false
		}
	}
	under := 0
	for i := range g.Seats {
		under += len(g.Seats[i].Nodes)
	}
	room := make([]share, 3*under) // for the shares of every seat
	s.bearings, s.seats = make([]bearing, 0, len(g.Seats)), make([]int, 0, len(g.Seats))
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
		if seat.Clamped {
			if err := twice(&held[seat.Nodes[0]], ".Clamped", "a second hold on the rotations of a node"); err != nil {
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
		m := len(seat.Nodes)
		b := bearing{support: seat.Support, down: -seat.Level, shares: room[:m:m]}
		about := [2][]share{room[m : m : 2*m], room[2*m : 2*m : 3*m]}
		room = room[3*m:]
		for k, n := range seat.Nodes {
			part := 1 / float64(len(seat.Nodes))
			if seat.Share != nil {
				part = seat.Share[k]
			}
			c := &s.corners[n]
			b.shares[k] = share{c.w, part}
			// A node with axes of its own spins, which is refused, or is held.
			about[0] = append(about[0], share{c.r1, part})
			about[1] = append(about[1], share{c.r2, part})
			if seat.Heights != [2]float64{} && s.spins[n] {
				return s.turnsFreely(n)
			}
		}
		for k, h := range seat.Heights {
			if h != 0 {
				b.tilts = append(b.tilts, tilt{h, about[k]})
				s.tilting = true
			}
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
			if mode.stiffness == 0 {
				continue
			}
			for j := range mode.at {
				for k := range mode.at[:j+1] {
					*s.base.at(mode.at[j], mode.at[k]) += mode.stiffness * mode.part[j] * mode.part[k]
				}
			}
		}
	}
}

// setForces turns the forces on the nodes into their corners' axes. A moment
// that no member takes turns the node freely.
func (s *grid) setForces() error {
	g := s.of
	if g.Forces == nil && g.Weights == nil {
		return nil
	}
	s.forces3 = make([][3]float64, len(g.Nodes))
	for _, w := range g.Weights {
		c := &s.corners[w.Node]
		s.forces3[w.Node][0] -= w.Force
		s.load += math.Abs(w.Force)
		if moment := w.Force * w.Height; moment != 0 {
			if s.spins[w.Node] {
				return s.turnsFreely(w.Node)
			}
			s.tops = append(s.tops, top{c.r1, moment}, top{c.r2, moment})
			s.tilting = true
		}
	}
	for i, f := range g.Forces {
		c := &s.corners[i]
		m1, m2 := f[1]*c.cos+f[2]*c.sin, -f[1]*c.sin+f[2]*c.cos
		size := math.Hypot(f[1], f[2])
		if s.spins[i] && (s.fixed[c.r2] && math.Abs(m2) > 1e-9*size || s.fixed[c.r1] && math.Abs(m1) > 1e-9*size) {
			return s.turnsFreely(i)
		}
		s.forces3[i][0] += f[0]
		s.forces3[i][1], s.forces3[i][2] = m1, m2
		s.load += math.Abs(f[0]) + size/s.length
	}
	return nil
}

// turnsFreely is the error of a node that is loaded in a rotation which no
// member takes.
func (s *grid) turnsFreely(i int) error {
	g := s.of
	return &MechanismError{
		Place: g.node(i), X: g.Nodes[i][0], Y: g.Nodes[i][1],
		Motion: "turns on the spot, and no member takes that",
	}
}
