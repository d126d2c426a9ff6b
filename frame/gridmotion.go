package frame

import (
	"fmt"
	"math"
)

// describe implements body: the node that moves most, and whether what moves
// moves as one.
func (s *grid) describe(v []float64) error {
	g := s.of
	best, top := 0, 0.0
	for i := range s.corners {
		if w := math.Abs(v[s.corners[i].w]); w > top*(1+1e-9) {
			best, top = i, w
		}
	}
	spin, turned := 0, 0.0
	for i := range s.corners {
		c := &s.corners[i]
		if r := math.Hypot(v[c.r1], v[c.r2]) * s.length; r > turned*(1+1e-9) {
			spin, turned = i, r
		}
	}
	e := &MechanismError{Place: g.node(best), X: g.Nodes[best][0], Y: g.Nodes[best][1]}
	switch {
	case top <= 1e-6*turned:
		e.Place, e.X, e.Y = g.node(spin), g.Nodes[spin][0], g.Nodes[spin][1]
		e.Motion = "turns on the spot"
	default:
		e.Motion = s.motion(v, best, top)
	}
	if s.tips(v) {
		return &CapsizeError{Place: e.Place, X: e.X, Y: e.Y, Motion: e.Motion}
	}
	return e
}

// A plane is a rigid movement: w is that of the centre, g its slope.
type plane struct{ x, y, w, gx, gy float64 }

// fits reports whether the nodes for which of is true move as the plane does.
func (p plane) fits(s *grid, v []float64, top float64, of func(i int) bool) bool {
	for i, n := range s.of.Nodes {
		d := v[s.corners[i].w] - (p.w + p.gx*(n[0]-p.x) + p.gy*(n[1]-p.y))
		if of(i) && math.Abs(d) > 1e-3*top {
			return false
		}
	}
	return true
}

// motion says how the part around the node that moves most moves. Its plane is
// that of the node's own rotation, or of its whole part, or of all that moves.
func (s *grid) motion(v []float64, best int, top float64) string {
	part := s.of.parts()
	moving := func(i int) bool { return math.Abs(v[s.corners[i].w]) > 1e-6*top }
	same := func(i int) bool { return part[i] == part[best] }
	c, n := &s.corners[best], s.of.Nodes[best]
	own := plane{n[0], n[1], v[c.w], -(v[c.r1]*c.sin + v[c.r2]*c.cos), v[c.r1]*c.cos - v[c.r2]*c.sin}
	for _, try := range []struct {
		p  plane
		of func(int) bool
	}{
		{own, func(i int) bool { return same(i) && moving(i) }},
		{s.fit(v, same), same},
		{s.fit(v, moving), moving},
	} {
		p := try.p
		if !p.fits(s, v, top, try.of) {
			continue
		}
		slope := p.gx*p.gx + p.gy*p.gy
		if math.Sqrt(slope)*s.length <= 0.1*top {
			return "moves up or down"
		}
		// The still line is where w + g·(p - centre) vanishes.
		k := -p.w / slope
		return fmt.Sprintf("turns about a line through (%.3f, %.3f) m", noMinus(p.x+k*p.gx, 3), noMinus(p.y+k*p.gy, 3))
	}
	return "moves against its neighbours"
}

// fit returns the plane nearest to the movements of the nodes for which of is
// true.
func (s *grid) fit(v []float64, of func(i int) bool) plane {
	var p plane
	var n, xx, xy, yy, xw, yw float64
	for i, c := range s.corners {
		if of(i) {
			n, p.x, p.y, p.w = n+1, p.x+s.of.Nodes[i][0], p.y+s.of.Nodes[i][1], p.w+v[c.w]
		}
	}
	p.x, p.y, p.w = p.x/n, p.y/n, p.w/n
	for i, c := range s.corners {
		if of(i) {
			dx, dy, dw := s.of.Nodes[i][0]-p.x, s.of.Nodes[i][1]-p.y, v[c.w]-p.w
			xx, xy, yy, xw, yw = xx+dx*dx, xy+dx*dy, yy+dy*dy, xw+dx*dw, yw+dy*dw
		}
	}
	switch det := xx*yy - xy*xy; {
	case det > 1e-9*(xx+yy)*(xx+yy):
		p.gx, p.gy = (xw*yy-yw*xy)/det, (yw*xx-xw*xy)/det
	case xx+yy > 0: // nodes in a row
		p.gx, p.gy = xw/(xx+yy), yw/(xx+yy)
	}
	return p
}

// parts returns, for each node, the lowest node that members join it to.
func (g *Grillage) parts() []int {
	part := make([]int, len(g.Nodes))
	for i := range part {
		part[i] = i
	}
	find := func(i int) int {
		for part[i] != i {
			part[i] = part[part[i]]
			i = part[i]
		}
		return i
	}
	for _, m := range g.Members {
		a, b := find(m.I), find(m.J)
		part[max(a, b)] = min(a, b)
	}
	for i := range part {
		part[i] = find(i)
	}
	return part
}
