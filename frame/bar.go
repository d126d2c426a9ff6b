package frame

import (
	"math"
	"slices"
	"sync"
)

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

// A wood is the memory of a grid's bars, used again by the next grid.
type wood struct {
	bars      []bar
	stretches []stretch
}

var woods = sync.Pool{New: func() any { return new(wood) }}

// free gives the memory of a grid back that is of no more use.
func (s *grid) free() {
	s.base.free()
	clear(s.bars) // they point at the caller's members
	s.wood.stretches = s.stretches
	woods.Put(s.wood)
}

// setBars finds each member's stiffness and what its loads do.
func (s *grid) setBars() {
	g := s.of
	s.wood = woods.Get().(*wood)
	s.wood.bars = slices.Grow(s.wood.bars[:0], len(g.Members))[:len(g.Members)]
	s.bars = s.wood.bars
	clear(s.bars)
	n := 0
	for i := range g.Members {
		n += 2*len(g.Members[i].Loads) + 1
	}
	s.stretches = slices.Grow(s.wood.stretches[:0], n)
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

// combine returns a·x + b·y in two parts.
func combine(a float64, x two, b float64, y two) two {
	p, q := float64(a*x.hi), float64(b*y.hi) // rounded, not fused into the sum
	pe, qe := math.FMA(a, x.hi, -p), math.FMA(b, y.hi, -q)
	s, e := twoSum(p, q)
	s, e = twoSum(s, e+((pe+qe)+(float64(a*x.lo)+float64(b*y.lo))))
	return two{s, e}
}

func (e *end) slope(x []two) two { return combine(e.slope1, x[e.r1], e.slope2, x[e.r2]) }
func (e *end) turn(x []two) two  { return combine(e.twist1, x[e.r1], e.twist2, x[e.r2]) }

// inner returns what a bar does at movements x: shear, moment and slope at its
// end I, and torque. Loads says whether its loads count.
func (p *bar) inner(x []two, loads float64) (shear, moment, slope, torque float64) {
	near, far := p.a.slope(x), p.b.slope(x)
	wi, wj := x[p.a.w], x[p.b.w]
	load := &p.load
	if p.twist > 0 {
		torque = p.twist * p.b.turn(x).minus(p.a.turn(x))
	}
	slope = near.hi
	switch {
	case !p.HingeI && !p.HingeJ:
		turn := far.minus(near) - loads*load.Slope
		off := offLine(wj, wi, near, p.h) - loads*load.Deflection
		shear = p.shear * (float64(p.h*turn/2) - off)
		moment = float64(p.bend*turn) - float64(shear*p.h/2)
	case p.HingeI && !p.HingeJ:
		off := offLine(wj, wi, far, p.h) - loads*(load.Deflection-float64(p.h*load.Slope))
		shear = -p.shear * off
		slope = far.hi - loads*load.Slope - shear*p.h*p.h/(2*p.EI)
	case p.HingeJ && !p.HingeI:
		off := offLine(wj, wi, near, p.h) - loads*(load.Deflection-load.Moment*p.h*p.h/(2*p.EI))
		shear = -p.shear * off
		moment = -float64(shear*p.h) - loads*load.Moment
	default:
		shear = -loads * load.Moment / p.h
		slope = (wj.minus(wi)-loads*load.Deflection)/p.h - shear*p.h*p.h/(6*p.EI)*(1-p.phi/2)
	}
	return shear, moment, slope, torque
}
