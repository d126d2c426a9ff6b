package frame

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// Solve finds the state of balance of the frame under its loads, as
// [Beam.Solve] does for a beam: rigid seats are taken out of the unknowns,
// supports that let go are met by Newton's method on the energy, and the
// diagrams of every member are exact.
//
// Bad data gives a [*measure.Error]; a frame, or a loose part of it, that can
// move freely a [*MechanismError] that names the node and the motion; a state
// that could not be found [ErrUnsettled].
func (g *Grillage) Solve() (*Solution, error) {
	s, err := g.assemble()
	if err != nil {
		return nil, err
	}
	t, err := s.settle()
	if err != nil {
		return nil, err
	}
	return s.solution(t)
}

// combine returns a·x + b·y in two parts.
func combine(a float64, x two, b float64, y two) two {
	p, q := a*x.hi, b*y.hi
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

// forces implements body.
func (s *grid) forces(t *trial) {
	for i, f := range s.forces3 {
		c := &s.corners[i]
		t.out[c.w] += f[0]
		t.out[c.r1] += f[1]
		t.out[c.r2] += f[2]
	}
	for i := range s.bars {
		p := &s.bars[i]
		shear, moment, _, torque := p.inner(t.x, 1)
		farShear := shear + p.load.Shear
		farMoment := moment + float64(shear*p.h) + p.load.Moment
		if p.HingeJ {
			farMoment = 0
		}
		t.out[p.a.w] -= shear
		t.out[p.b.w] += farShear
		t.out[p.a.r1] += float64(moment*p.a.slope1) + float64(torque*p.a.twist1)
		t.out[p.a.r2] += float64(moment*p.a.slope2) + float64(torque*p.a.twist2)
		t.out[p.b.r1] -= float64(farMoment*p.b.slope1) + float64(torque*p.b.twist1)
		t.out[p.b.r2] -= float64(farMoment*p.b.slope2) + float64(torque*p.b.twist2)
		t.scale = max(t.scale, math.Abs(shear), math.Abs(farShear), max(math.Abs(moment), math.Abs(farMoment), math.Abs(torque))/s.length)
	}
}

// stored implements body.
func (s *grid) stored(v []float64) float64 {
	x := make([]two, len(v))
	for i := range v {
		x[i].hi = v[i]
	}
	var sum float64
	for i := range s.bars {
		p := &s.bars[i]
		shear, moment, _, torque := p.inner(x, 0)
		// A bar without loads: the energy from its end forces.
		sum += moment*moment*p.h/p.EI + moment*shear*p.h*p.h/p.EI + shear*shear*p.h*p.h*p.h/(3*p.EI)
		if p.GA > 0 {
			sum += shear * shear * p.h / p.GA
		}
		if p.twist > 0 {
			sum += torque * torque / p.twist
		}
	}
	return sum
}

// called implements body.
func (s *grid) called(i int) string { return s.of.seat(s.seats[i]) }

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

// solution writes down the state t.
func (s *grid) solution(t *trial) (*Solution, error) {
	g := s.of
	r := &Solution{
		Move: make([][3]float64, len(g.Nodes)), Push: make([]float64, len(g.Seats)), Hold: make([][2]float64, len(g.Seats)),
		Lines: make([]Line, len(g.Members)), Torque: make([]float64, len(g.Members)), Places: make([]string, len(g.Seats)),
		Residual: t.residual(), Names: make([]string, len(g.Nodes)),
	}
	for i := range s.corners {
		c := &s.corners[i]
		r.Names[i] = "node " + itoa(i)
		if i < len(g.Names) && g.Names[i] != "" {
			r.Names[i] = "node " + g.Names[i]
		}
		r1, r2 := t.x[c.r1].hi, t.x[c.r2].hi
		r.Move[i] = [3]float64{t.x[c.w].hi, float64(r1*c.cos) - float64(r2*c.sin), float64(r1*c.sin) + float64(r2*c.cos)}
	}
	for i, seat := range s.seats {
		r.Push[seat] = t.push[i]
		r.Energy += t.energy[i]
	}
	for i := range g.Seats {
		seat := &g.Seats[i]
		c := &s.corners[seat.Nodes[0]]
		r.Places[i] = seat.Name
		if seat.Name == "" {
			r.Places[i] = "seat " + itoa(i)
		}
		if seat.Support == nil {
			r.Push[i] = -t.out[c.w] + 0
		}
		if seat.Held {
			m1, m2 := -t.out[c.r1], -t.out[c.r2]
			r.Hold[i] = [2]float64{float64(m1*c.cos) - float64(m2*c.sin), float64(m1*c.sin) + float64(m2*c.cos)}
		}
	}
	pieces := make([]Piece, 0, len(s.stretches))
	for i := range s.bars {
		p := &s.bars[i]
		shear, moment, slope, torque := p.inner(t.x, 1)
		first := len(pieces)
		d := Diagram{Shear: shear, Moment: moment, Slope: slope, Deflection: t.x[p.a.w].hi}
		pieces = trace(pieces, s.stretches[p.first:p.after], d, p.EI, p.GA)
		l := Line{EI: p.EI, GA: p.GA, Residual: r.Residual, Pieces: pieces[first:len(pieces):len(pieces)]}
		if err := l.finite(); err != nil {
			return nil, err
		}
		l.Energy = l.strain()
		r.Lines[i], r.Torque[i] = l, torque
		r.Energy += l.Energy
		if p.twist > 0 {
			r.Energy += torque * torque / (2 * p.twist)
		}
	}
	return r, nil
}

// String returns the pushes and the extremes with their units, a line each.
func (r *Solution) String() string {
	var b strings.Builder
	for i, p := range r.Push {
		note := ""
		if p == 0 {
			note = " (idle)"
		}
		fmt.Fprintf(&b, "%s pushes %s%s\n", r.Places[i], measure.Force.Print(p, measure.SI), note)
	}
	low, high := 0, 0
	for i, m := range r.Move {
		if m[0] < r.Move[low][0] {
			low = i
		}
		if m[0] > r.Move[high][0] {
			high = i
		}
	}
	for _, c := range []struct {
		what string
		node int
	}{{"lowest", low}, {"highest", high}} {
		if len(r.Move) > 0 {
			fmt.Fprintf(&b, "%s: %s, %.2f mm\n", c.what, r.Names[c.node], noMinus(1e3*r.Move[c.node][0], 2))
		}
	}
	most, which := Diagram{}, -1
	for i := range r.Lines {
		e := r.Lines[i].Extremes()
		for _, d := range [2]Diagram{e.Sag, e.Hog} {
			if which < 0 || math.Abs(d.Moment) > math.Abs(most.Moment)*(1+1e-12) {
				most, which = d, i
			}
		}
	}
	if which >= 0 {
		fmt.Fprintf(&b, "largest moment: member %d, %v\n", which, most)
	}
	fmt.Fprintf(&b, "imbalance left: %.0e of the largest force\n", r.Residual)
	return b.String()
}
