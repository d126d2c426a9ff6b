package rack_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/floewright/frame/rack"
)

var inf = math.Inf(1)

// near fails unless got is within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.12g, want %.12g within %.2g", what, got, want, tol)
	}
}

func solve(t *testing.T, f *rack.Frame) *rack.Solution {
	t.Helper()
	s, err := f.Solve()
	if err != nil {
		t.Fatalf("%v\n%+v", err, f)
	}
	return s
}

// randomEnd is a joint of any kind, with known slips.
func randomEnd(r *rand.Rand) rack.End {
	slip := func() float64 {
		if r.IntN(3) == 0 {
			return inf
		}
		return math.Exp(12 + 5*r.Float64())
	}
	e := rack.End{Along: slip(), Across: slip()}
	switch r.IntN(3) {
	case 0:
		e.Turn = inf
	case 1:
		e.Turn = math.Exp(6 + 5*r.Float64())
	}
	return e
}

// randomFrame makes a frame of rims along x and joists between them, turned as a
// whole, that stands: braced in its first bay and boarded in some, loaded anyhow.
// Held, it stands on a hinge and a spring; else it floats with drag.
func randomFrame(r *rand.Rand, held bool) *rack.Frame {
	f := &rack.Frame{}
	bays := 1 + r.IntN(3)
	rows := 2 + r.IntN(2)
	xs, ys := []float64{0}, []float64{0}
	for range bays {
		xs = append(xs, xs[len(xs)-1]+0.8+r.Float64())
	}
	for range rows - 1 {
		ys = append(ys, ys[len(ys)-1]+0.8+r.Float64())
	}
	at := func(i, j int) int { return i*rows + j }
	for _, x := range xs {
		for _, y := range ys {
			f.Nodes = append(f.Nodes, [2]float64{x, y})
		}
	}
	member := func(nodes ...int) {
		m := rack.Member{Nodes: nodes, EA: math.Exp(16 + 2*r.Float64()), EI: math.Exp(8 + 2*r.Float64()), Ends: [2]rack.End{randomEnd(r), randomEnd(r)}}
		if r.IntN(3) == 0 {
			m.GA = m.EA / 20
		}
		f.Members = append(f.Members, m)
	}
	for j := range rows {
		var rim []int
		for i := range xs {
			rim = append(rim, at(i, j))
		}
		member(rim...)
	}
	for i := range xs {
		var joist []int
		for j := range rows {
			joist = append(joist, at(i, j))
		}
		if r.IntN(2) == 0 {
			member(joist...)
			continue
		}
		for j := range rows - 1 {
			member(joist[j], joist[j+1])
		}
	}
	for j := range rows - 1 {
		for i := range bays {
			if i == 0 || r.IntN(2) == 0 {
				member(at(i, j), at(i+1, j+1))
			}
		}
	}
	for range r.IntN(3) {
		y := ys[0] + (ys[len(ys)-1]-ys[0])*(0.1+0.8*r.Float64())
		b := rack.Board{From: [2]float64{-0.1, y}, To: [2]float64{xs[len(xs)-1] + 0.1, y + 0.1*r.Float64()}, EA: 1.2e7, EI: math.Exp(8 + 2*r.Float64())}
		if b, err := f.Lay(b, 0.06+0.04*r.Float64(), math.Exp(13+2*r.Float64())); err == nil && len(b.Screws) > 2 {
			f.Boards = append(f.Boards, b)
		}
	}
	load(f, r)
	if held {
		last := len(f.Nodes) - rows
		f.Holds = []rack.Hold{
			{Node: 0, Angle: 6 * r.Float64(), Along: inf, Across: inf},
			{Node: last, Angle: 6 * r.Float64(), Along: math.Exp(10 + 5*r.Float64()), Across: math.Exp(10 + 5*r.Float64()), Turn: 3e3 * r.Float64()},
		}
	} else {
		f.Drag.Members = make([]float64, len(f.Members))
		for i := range f.Drag.Members {
			f.Drag.Members[i] = r.Float64()
		}
	}
	return turned(f, 6*r.Float64())
}

// load replaces a frame's loads by random ones, of every kind.
func load(f *rack.Frame, r *rand.Rand) {
	size := func() float64 { return 2000 * (r.Float64() - 0.5) }
	f.Forces = nil
	for range 1 + r.IntN(3) {
		f.Forces = append(f.Forces, rack.Force{Node: r.IntN(len(f.Nodes)), X: size(), Y: size()})
	}
	for i := range f.Members {
		m := &f.Members[i]
		m.Loads = nil
		l := length(f, i)
		switch r.IntN(6) {
		case 0:
			m.Loads = append(m.Loads, rack.Uniform(0, l, size(), size()))
		case 1:
			a, b := l*r.Float64()/2, l*(0.5+0.5*r.Float64())
			x, y := size(), size()
			m.Loads = append(m.Loads, rack.Load{From: a, To: b, Along: x, Across: y, AlongRise: size() - x, AcrossRise: size() - y})
		case 2:
			m.Loads = append(m.Loads, rack.Point(l*r.Float64(), size(), size()), rack.Load{From: l * (0.01 + 0.98*r.Float64()), Couple: size()})
		}
	}
}

func length(f *rack.Frame, i int) float64 {
	n := f.Members[i].Nodes
	a, b := f.Nodes[n[0]], f.Nodes[n[len(n)-1]]
	return math.Hypot(b[0]-a[0], b[1]-a[1])
}

// clone returns a frame whose parts may be changed.
func clone(f *rack.Frame) *rack.Frame {
	g := *f
	g.Nodes, g.Members, g.Boards = slices.Clone(f.Nodes), slices.Clone(f.Members), slices.Clone(f.Boards)
	g.Holds, g.Forces = slices.Clone(f.Holds), slices.Clone(f.Forces)
	for i := range g.Members {
		g.Members[i].Loads = slices.Clone(g.Members[i].Loads)
		g.Members[i].Nodes = slices.Clone(g.Members[i].Nodes)
	}
	for i := range g.Boards {
		g.Boards[i].Screws = slices.Clone(g.Boards[i].Screws)
	}
	return &g
}

// turned returns the frame turned about the origin.
func turned(f *rack.Frame, angle float64) *rack.Frame {
	g := clone(f)
	s, c := math.Sincos(angle)
	each(g, func(p [2]float64) [2]float64 { return [2]float64{p[0]*c - p[1]*s, p[0]*s + p[1]*c} })
	for i := range g.Holds {
		g.Holds[i].Angle += angle
	}
	return g
}

// mirrored returns the frame's mirror image, x reversed.
func mirrored(f *rack.Frame) *rack.Frame {
	g := clone(f)
	each(g, func(p [2]float64) [2]float64 { return [2]float64{-p[0], p[1]} })
	for i := range g.Holds {
		g.Holds[i].Angle = math.Pi - g.Holds[i].Angle
	}
	for i := range g.Forces {
		g.Forces[i].Couple *= -1
	}
	for i := range g.Members {
		for k := range g.Members[i].Loads {
			l := &g.Members[i].Loads[k]
			l.Across, l.AcrossRise, l.Couple = -l.Across, -l.AcrossRise, -l.Couple
		}
	}
	return g
}

// each replaces every place, and the forces at nodes as places.
func each(f *rack.Frame, to func([2]float64) [2]float64) {
	for i := range f.Nodes {
		f.Nodes[i] = to(f.Nodes[i])
	}
	for i := range f.Boards {
		b := &f.Boards[i]
		b.From, b.To = to(b.From), to(b.To)
		for k := range b.Screws {
			b.Screws[k].At = to(b.Screws[k].At)
		}
	}
	for i := range f.Forces {
		p := to([2]float64{f.Forces[i].X, f.Forces[i].Y})
		f.Forces[i].X, f.Forces[i].Y = p[0], p[1]
	}
}

// largest returns the largest force of joints, and the largest movement.
func largest(s *rack.Solution) (force, move float64) {
	for _, j := range s.Joints {
		force = math.Max(force, math.Max(math.Abs(j.Axial.Peak()), math.Abs(j.Across.Peak())))
	}
	for _, m := range s.Move {
		move = math.Max(move, math.Hypot(m[0], m[1]))
	}
	return force, move
}

// total returns what the loads come to about the origin, found by Simpson's rule.
func total(f *rack.Frame) (x, y, couple, size float64) {
	add := func(px, py, fx, fy, m float64) {
		x, y, couple = x+fx, y+fy, couple+m+px*fy-py*fx
		size += math.Abs(fx) + math.Abs(fy) + math.Abs(m)
	}
	for _, p := range f.Forces {
		n := f.Nodes[p.Node]
		add(n[0], n[1], p.X, p.Y, p.Couple)
	}
	for i := range f.Members {
		m := &f.Members[i]
		a, b := f.Nodes[m.Nodes[0]], f.Nodes[m.Nodes[len(m.Nodes)-1]]
		h := length(f, i)
		c, s := (b[0]-a[0])/h, (b[1]-a[1])/h
		put := func(at, along, across, couple float64) {
			add(a[0]+at*c, a[1]+at*s, along*c-across*s, along*s+across*c, couple)
		}
		for _, l := range m.Loads {
			if !(l.To > l.From) {
				put(l.From, l.Along, l.Across, l.Couple)
				continue
			}
			w := (l.To - l.From) / 6
			put(l.From, l.Along*w, l.Across*w, 0)
			put((l.From+l.To)/2, (2*l.Along+l.AlongRise)*2*w, (2*l.Across+l.AcrossRise)*2*w, 0)
			put(l.To, (l.Along+l.AlongRise)*w, (l.Across+l.AcrossRise)*w, 0)
		}
	}
	return x, y, couple, size
}
