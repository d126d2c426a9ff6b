package frame_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/frame"
)

func solveGrid(t *testing.T, g frame.Grillage) *frame.Solution {
	t.Helper()
	s, err := g.Solve()
	if err != nil {
		t.Fatalf("%v\n%+v", err, g)
	}
	return s
}

// randomGrid makes a frame of stringers and cross members, skew here and there,
// with hinges, on supports of a kind; its corners stand on springs.
func randomGrid(r *rand.Rand, k kind) frame.Grillage {
	nx, ny := 2+r.IntN(4), 2+r.IntN(2)
	var g frame.Grillage
	at := func(i, j int) int { return i*ny + j }
	ei, gj := math.Exp(10+3*r.Float64()), math.Exp(6+3*r.Float64())
	for i := range nx {
		for j := range ny {
			g.Nodes = append(g.Nodes, [2]float64{1.5*float64(i) + 0.4*r.Float64(), 1.2*float64(j) + 0.3*r.Float64()})
			g.Forces = append(g.Forces, [3]float64{-500 * r.Float64(), 100 * (r.Float64() - 0.5), 100 * (r.Float64() - 0.5)})
		}
	}
	join := func(a, b int) {
		m := frame.Member{I: a, J: b, EI: ei, GJ: gj}
		if r.IntN(3) == 0 {
			m.GA = ei * (0.5 + 5*r.Float64())
		}
		switch r.IntN(8) {
		case 0:
			m.HingeI = true
		case 1:
			m.HingeJ = true
		case 2:
			m.Untwist = true
		}
		length := math.Hypot(g.Nodes[b][0]-g.Nodes[a][0], g.Nodes[b][1]-g.Nodes[a][1])
		for range r.IntN(3) {
			m.Loads = append(m.Loads, randomLoad(r, length))
		}
		g.Members = append(g.Members, m)
	}
	for i := range nx {
		for j := range ny {
			if i > 0 {
				join(at(i-1, j), at(i, j))
			}
			if j > 0 {
				join(at(i, j-1), at(i, j))
			}
		}
	}
	join(at(0, 0), at(1, 1))
	for i := range nx {
		for j := range ny {
			corner := (i == 0 || i == nx-1) && (j == 0 || j == ny-1)
			stiff := math.Exp(7 + 3*r.Float64())
			seat := frame.Seat{Nodes: []int{at(i, j)}}
			switch {
			case corner && k == linear && r.IntN(4) == 0: // rigid
			case corner:
				seat.Support = frame.Spring(stiff)
			case k == letGo && r.IntN(2) == 0:
				seat.Support = []frame.Support{frame.OneWay(stiff), frame.Gap(0.02, stiff), barrel(0.29, 0.88, 9806.65)}[r.IntN(3)]
			default:
				continue
			}
			seat.Clamped = corner && r.IntN(6) == 0
			if k != linear {
				seat.Level = 0.05 * (r.Float64() - 0.5)
			}
			if seat.Support != nil && !seat.Clamped && r.IntN(4) == 0 && i > 0 {
				seat.Nodes = append(seat.Nodes, at(i-1, j))
				p := r.Float64()
				seat.Share = []float64{p, 1 - p}
			}
			g.Seats = append(g.Seats, seat)
		}
	}
	return g
}

// gridBalance checks force and both moments about the origin, and that each
// node's own balance is met by the ends of its members.
func gridBalance(t *testing.T, g frame.Grillage, s *frame.Solution) {
	t.Helper()
	var up, mx, my, size float64
	push := func(f, x, y float64) {
		up, mx, my = up+f, mx+f*y, my-f*x
		size += math.Abs(f) * (1 + math.Abs(x) + math.Abs(y))
	}
	nodes := make([][3]float64, len(g.Nodes)) // up, about x, about y
	for i, f := range g.Forces {
		push(f[0], g.Nodes[i][0], g.Nodes[i][1])
		mx, my = mx+f[1], my+f[2]
		nodes[i] = f
		size += math.Abs(f[1]) + math.Abs(f[2])
	}
	for i, m := range g.Members {
		a, b := g.Nodes[m.I], g.Nodes[m.J]
		h := math.Hypot(b[0]-a[0], b[1]-a[1])
		c, d := (b[0]-a[0])/h, (b[1]-a[1])/h
		for _, l := range m.Loads {
			f, at := l.P, l.From
			if l.To > l.From {
				f = (l.Q + l.Rise/2) * (l.To - l.From)
				if f != 0 {
					at = l.From + (l.To-l.From)*(l.Q+2*(l.Q+l.Rise))/(3*(l.Q+l.Q+l.Rise))
				}
			}
			push(-f, a[0]+c*at, a[1]+d*at)
			// A couple that lifts towards the far end turns about (d, -c).
			mx, my = mx+l.M*d, my-l.M*c
			size += math.Abs(l.M)
		}
		line := &s.Lines[i]
		near, far := line.At(0), line.At(h)
		torque := s.Torque[i]
		// What the bar does to its nodes. A sagging moment at I turns the node
		// there as a couple towards the far end does.
		end := func(k int, up, m, t float64) {
			nodes[k][0] += up
			nodes[k][1] += m*d + t*c
			nodes[k][2] += -m*c + t*d
		}
		end(m.I, -near.Shear, near.Moment, torque)
		end(m.J, far.Shear, -far.Moment, -torque)
		size += math.Abs(near.Shear) + math.Abs(near.Moment) + math.Abs(torque)
	}
	for i, seat := range g.Seats {
		for k, n := range seat.Nodes {
			part := 1.0
			if seat.Share != nil {
				part = seat.Share[k]
			} else if len(seat.Nodes) > 1 {
				part = 1 / float64(len(seat.Nodes))
			}
			push(s.Push[i]*part, g.Nodes[n][0], g.Nodes[n][1])
			nodes[n][0] += s.Push[i] * part
		}
		mx, my = mx+s.Couple[i][0], my+s.Couple[i][1]
		nodes[seat.Nodes[0]][1] += s.Couple[i][0]
		nodes[seat.Nodes[0]][2] += s.Couple[i][1]
	}
	near(t, "force left over", up, 0, 1e-10*size)
	near(t, "moment about x left over", mx, 0, 1e-10*size)
	near(t, "moment about y left over", my, 0, 1e-10*size)
	for i, n := range nodes {
		for k := range n {
			if math.Abs(n[k]) > 1e-9*size {
				t.Errorf("node %d is out of balance: %v", i, n)
				break
			}
		}
	}
	if !(s.Residual <= 1e-9) {
		t.Errorf("residual %g", s.Residual)
	}
}

// moves returns the largest deflection and rotation of the nodes.
func moves(s *frame.Solution) (w, turn float64) {
	for _, m := range s.Move {
		w = math.Max(w, math.Abs(m[0]))
		turn = math.Max(turn, math.Hypot(m[1], m[2]))
	}
	return w, turn
}

func TestGridBalance(t *testing.T) {
	each(t, 150, func(t *testing.T, r *rand.Rand) {
		g := randomGrid(r, letGo)
		s := solveGrid(t, g)
		gridBalance(t, g, s)
		for i, seat := range g.Seats {
			if seat.Support == nil {
				near(t, "rigid seat", s.Move[seat.Nodes[0]][0], seat.Level, 1e-15)
				continue
			}
			sink := seat.Level
			for k, n := range seat.Nodes {
				part := 1.0
				if seat.Share != nil {
					part = seat.Share[k]
				}
				sink -= part * s.Move[n][0]
			}
			f, _, _ := seat.Support(sink)
			near(t, "push", s.Push[i], f, 1e-8*(1+math.Abs(f)))
		}
	})
}

// TestGridJoins checks that members meet their nodes: deflection, and slope
// where there is no hinge; no moment where there is one.
func TestGridJoins(t *testing.T) {
	each(t, 100, func(t *testing.T, r *rand.Rand) {
		g := randomGrid(r, letGo)
		s := solveGrid(t, g)
		w, turn := moves(s)
		for i, m := range g.Members {
			a, b := g.Nodes[m.I], g.Nodes[m.J]
			h := math.Hypot(b[0]-a[0], b[1]-a[1])
			c, d := (b[0]-a[0])/h, (b[1]-a[1])/h
			slope := func(k int) float64 { return d*s.Move[k][1] - c*s.Move[k][2] }
			l := &s.Lines[i]
			size := sizes(l)
			near(t, "deflection at I", l.At(0).Deflection, s.Move[m.I][0], 1e-13+1e-12*w)
			near(t, "deflection at J", l.At(h).Deflection, s.Move[m.J][0], 1e-11*w)
			if !m.HingeI {
				near(t, "slope at I", l.At(0).Slope, slope(m.I), 1e-10*turn)
			} else {
				near(t, "moment at a hinge", l.At(0).Moment, 0, 1e-10*(size.Moment+1))
			}
			if !m.HingeJ {
				near(t, "slope at J", l.At(h).Slope, slope(m.J), 1e-9*turn)
			} else {
				near(t, "moment at a hinge", l.At(h).Moment, 0, 1e-9*(size.Moment+1))
			}
			twist := c*(s.Move[m.J][1]-s.Move[m.I][1]) + d*(s.Move[m.J][2]-s.Move[m.I][2])
			want := m.GJ * twist / h
			if m.Untwist {
				want = 0
			}
			near(t, "torque", s.Torque[i], want, 1e-9*(m.GJ*turn/h))
		}
	})
}

// TestGridTurned turns the whole frame in plan: nothing changes but directions.
func TestGridTurned(t *testing.T) {
	each(t, 60, func(t *testing.T, r *rand.Rand) {
		g := randomGrid(r, letGo)
		sin, cos := math.Sincos(6 * r.Float64())
		turned := func(x, y float64) (float64, float64) { return cos*x - sin*y, sin*x + cos*y }
		h := g
		h.Nodes = slices.Clone(g.Nodes)
		h.Forces = slices.Clone(g.Forces)
		for i := range h.Nodes {
			h.Nodes[i][0], h.Nodes[i][1] = turned(g.Nodes[i][0]+3, g.Nodes[i][1]-7)
			h.Forces[i][1], h.Forces[i][2] = turned(g.Forces[i][1], g.Forces[i][2])
		}
		a, b := solveGrid(t, g), solveGrid(t, h)
		w, turn := moves(a)
		for i := range a.Move {
			near(t, "w", b.Move[i][0], a.Move[i][0], 1e-8*w)
			x, y := turned(a.Move[i][1], a.Move[i][2])
			near(t, "thx", b.Move[i][1], x, 1e-7*turn)
			near(t, "thy", b.Move[i][2], y, 1e-7*turn)
		}
		near(t, "energy", b.Energy, a.Energy, 1e-7*math.Abs(a.Energy))
	})
}

// TestGridSubdivided cuts every member in two and numbers the nodes anew; and
// turns members end for end.
func TestGridSubdivided(t *testing.T) {
	each(t, 60, func(t *testing.T, r *rand.Rand) {
		g := randomGrid(r, letGo)
		n := len(g.Nodes)
		h := frame.Grillage{Nodes: slices.Clone(g.Nodes), Forces: slices.Clone(g.Forces), Seats: g.Seats}
		for _, m := range g.Members {
			a, b := g.Nodes[m.I], g.Nodes[m.J]
			length := math.Hypot(b[0]-a[0], b[1]-a[1])
			f := 0.2 + 0.6*r.Float64()
			mid := len(h.Nodes)
			h.Nodes = append(h.Nodes, [2]float64{a[0] + f*(b[0]-a[0]), a[1] + f*(b[1]-a[1])})
			h.Forces = append(h.Forces, [3]float64{})
			// The second part is laid from J to the middle.
			p, q := m, m
			p.J, p.HingeJ, p.Loads = mid, false, nil
			q.I, q.J, q.HingeI, q.HingeJ, q.Loads = m.J, mid, m.HingeJ, false, nil
			for _, l := range m.Loads {
				if !(l.To > l.From) {
					if l.From < f*length {
						p.Loads = append(p.Loads, l)
					} else {
						l.From, l.M = length-l.From, -l.M
						q.Loads = append(q.Loads, l)
					}
					continue
				}
				at := func(x float64) float64 { return l.Q + l.Rise*(x-l.From)/(l.To-l.From) }
				if lo, hi := l.From, math.Min(l.To, f*length); hi > lo {
					p.Loads = append(p.Loads, frame.Load{From: lo, To: hi, Q: at(lo), Rise: at(hi) - at(lo)})
				}
				if lo, hi := math.Max(l.From, f*length), l.To; hi > lo {
					q.Loads = append(q.Loads, frame.Load{From: length - hi, To: length - lo, Q: at(hi), Rise: at(lo) - at(hi)})
				}
			}
			h.Members = append(h.Members, p, q)
		}
		a, b := solveGrid(t, g), solveGrid(t, h)
		w, turn := moves(a)
		for i := range n {
			near(t, "w", b.Move[i][0], a.Move[i][0], 1e-8*w)
			near(t, "thx", b.Move[i][1], a.Move[i][1], 1e-7*turn)
			near(t, "thy", b.Move[i][2], a.Move[i][2], 1e-7*turn)
		}
		for i := range a.Lines {
			e, p, q := a.Lines[i].Extremes(), b.Lines[2*i].Extremes(), b.Lines[2*i+1].Extremes()
			size := sizes(&a.Lines[i])
			near(t, "sag", math.Max(p.Sag.Moment, q.Sag.Moment), e.Sag.Moment, 1e-7*size.Moment+1e-6)
			near(t, "hog", math.Min(p.Hog.Moment, q.Hog.Moment), e.Hog.Moment, 1e-7*size.Moment+1e-6)
		}
		near(t, "energy", b.Energy, a.Energy, 1e-7*math.Abs(a.Energy))
	})
}

func TestGridReciprocityAndWork(t *testing.T) {
	each(t, 80, func(t *testing.T, r *rand.Rand) {
		g := randomGrid(r, linear)
		for i := range g.Members {
			g.Members[i].Loads = nil
		}
		n := len(g.Nodes)
		unit := func(node, k int) *frame.Solution {
			h := g
			h.Forces = make([][3]float64, n)
			h.Forces[node][k] = 1000
			s := solveGrid(t, h)
			near(t, "energy", s.Energy, 1000*s.Move[node][k]/2, 1e-8*s.Energy)
			return s
		}
		a, b := r.IntN(n), r.IntN(n)
		j, k := r.IntN(3), r.IntN(3)
		one, two := unit(a, j), unit(b, k)
		w, turn := moves(one)
		w2, turn2 := moves(two)
		near(t, "movement", one.Move[b][k], two.Move[a][j], 1e-8*(w+turn+w2+turn2))
		// Both together, with a factor.
		h := g
		h.Forces = make([][3]float64, n)
		h.Forces[a][j] += 1000
		h.Forces[b][k] -= 700
		both := solveGrid(t, h)
		for i := range both.Move {
			near(t, "superposed", both.Move[i][0], one.Move[i][0]-0.7*two.Move[i][0], 1e-8*(w+w2))
		}
	})
}

// TestRowIsABeam compares a row of nodes with a beam, which is solved by other
// code.
func TestRowIsABeam(t *testing.T) {
	each(t, 80, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, letGo)
		b.Hinges = nil
		for i := range b.Rests {
			b.Rests[i].Clamped = false
		}
		xs := []float64{0, b.Length}
		for _, rest := range b.Rests {
			xs = append(xs, rest.At)
		}
		slices.Sort(xs)
		xs = slices.CompactFunc(xs, func(x, y float64) bool { return math.Abs(y-x) < 1e-6 })
		sin, cos := math.Sincos(r.Float64() * 6)
		var g frame.Grillage
		for i, x := range xs {
			g.Nodes = append(g.Nodes, [2]float64{cos * x, sin * x})
			if i == 0 {
				continue
			}
			m := frame.Member{I: i - 1, J: i, EI: b.EI, GA: b.GA, Untwist: true}
			for _, l := range b.Loads {
				if !(l.To > l.From) {
					if l.From >= xs[i-1] && l.From < xs[i] {
						l.From -= xs[i-1]
						m.Loads = append(m.Loads, l)
					}
					continue
				}
				at := func(x float64) float64 { return l.Q + l.Rise*(x-l.From)/(l.To-l.From) }
				if lo, hi := math.Max(l.From, xs[i-1]), math.Min(l.To, xs[i]); hi > lo {
					m.Loads = append(m.Loads, frame.Load{From: lo - xs[i-1], To: hi - xs[i-1], Q: at(lo), Rise: at(hi) - at(lo)})
				}
			}
			g.Members = append(g.Members, m)
		}
		for _, rest := range b.Rests {
			g.Seats = append(g.Seats, frame.Seat{
				Support: rest.Support, Level: -rest.Settlement,
				Nodes: []int{slices.IndexFunc(xs, func(x float64) bool { return math.Abs(x-rest.At) < 1e-6 })},
			})
		}
		l, err := b.Solve()
		s, err2 := g.Solve()
		if (err == nil) != (err2 == nil) {
			t.Fatalf("beam: %v, grillage: %v", err, err2)
		}
		if err != nil {
			return
		}
		size := sizes(l)
		for i, x := range xs {
			near(t, "w", s.Move[i][0], l.At(x).Deflection, 1e-9*size.Deflection)
			near(t, "slope", sin*s.Move[i][1]-cos*s.Move[i][2], l.At(x).Slope, 1e-8*size.Slope)
			near(t, "twist", cos*s.Move[i][1]+sin*s.Move[i][2], 0, 1e-12*size.Slope)
		}
		for i := range b.Rests {
			near(t, "push", s.Push[i], l.Push[i], 1e-8*(size.Shear+math.Abs(l.Push[i])))
		}
		near(t, "energy", s.Energy, l.Energy, 1e-8*math.Abs(l.Energy))
	})
}

// TestLink compares members with hinges at one end or both, held between fixed
// nodes, with beams of the same ends: settlement, shear deflection and all.
func TestLink(t *testing.T) {
	each(t, 40, func(t *testing.T, r *rand.Rand) {
		ei, ga := 1e4*(1+r.Float64()), 0.0
		if r.IntN(2) == 0 {
			ga = ei * (0.5 + r.Float64())
		}
		for _, hinged := range [][2]bool{{false, false}, {true, false}, {false, true}, {true, true}} {
			b := frame.Beam{
				Length: 3, EI: ei, GA: ga, Loads: []frame.Load{randomLoad(r, 3), randomLoad(r, 3), {From: 3, M: 70}, {From: 0, M: 50}, frame.Point(3, 90)},
				Rests: []frame.Rest{{At: 0, Clamped: !hinged[0], Settlement: 0.02}, {At: 3, Clamped: !hinged[1], Settlement: -0.01}},
			}
			g := frame.Grillage{
				Nodes:   [][2]float64{{0, 0}, {0, 3}},
				Members: []frame.Member{{I: 0, J: 1, EI: ei, GA: ga, GJ: 1, HingeI: hinged[0], HingeJ: hinged[1], Loads: b.Loads}},
				Seats:   []frame.Seat{{Nodes: []int{0}, Clamped: true, Level: -0.02}, {Nodes: []int{1}, Clamped: true, Level: 0.01}},
			}
			l, s := solve(t, b), solveGrid(t, g)
			size := sizes(l)
			for x := 0.0; x <= 3; x += 0.3 {
				d, e := l.At(x), s.Lines[0].At(x)
				if x == 0 && !hinged[0] || x > 2.9 {
					continue // loads right at an end belong to the clamp of the beam
				}
				near(t, "moment", e.Moment, d.Moment, 1e-9*size.Moment)
				near(t, "shear", e.Shear, d.Shear, 1e-9*(size.Shear+size.Moment))
				near(t, "slope", e.Slope, d.Slope, 1e-9*size.Slope)
				near(t, "deflection", e.Deflection, d.Deflection, 1e-9*size.Deflection)
			}
			near(t, "push", s.Push[1], l.Push[1], 1e-9*(size.Shear+size.Moment))
			near(t, "energy", s.Energy, l.Energy, 1e-9*l.Energy)
		}
	})
}

// TestSkewShaft twists a skew member whose far node is held in no other way: its
// rotation is about the member alone.
func TestSkewShaft(t *testing.T) {
	sin, cos := math.Sincos(0.6)
	g := frame.Grillage{
		Nodes:   [][2]float64{{0, 0}, {2 * cos, 2 * sin}},
		Members: []frame.Member{{I: 0, J: 1, EI: 1e5, GJ: 500, HingeJ: true}},
		Seats:   []frame.Seat{{Nodes: []int{0}, Clamped: true}, {Nodes: []int{1}}},
		Forces:  [][3]float64{{0, 7, 9}, {-100, 30 * cos, 30 * sin}},
	}
	s := solveGrid(t, g)
	near(t, "thx", s.Move[1][1], 30*2/500.0*cos, 1e-14)
	near(t, "thy", s.Move[1][2], 30*2/500.0*sin, 1e-14)
	near(t, "torque", s.Torque[0], 30, 1e-11)
	gridBalance(t, g, s)
	// A held end whose member takes no torque: the hold takes the node's moment.
	g.Members[0] = frame.Member{I: 0, J: 1, EI: 1e5, Untwist: true}
	g.Forces = [][3]float64{{0, 7, 9}, {-100, 0, 0}}
	g.Seats = g.Seats[:1]
	s = solveGrid(t, g)
	gridBalance(t, g, s)
	near(t, "slope along the member", s.Lines[0].At(2).Slope, -100*4/(2*1e5), 1e-12)
}

// TestLooseInAChain: two links hinged at both ends meet in a bare node.
func TestLooseInAChain(t *testing.T) {
	g := frame.Grillage{
		Nodes: [][2]float64{{0, 0}, {1, 0}, {2, 0.5}},
		Members: []frame.Member{
			{I: 0, J: 1, EI: 1e5, Untwist: true, HingeI: true, HingeJ: true},
			{I: 1, J: 2, EI: 1e5, Untwist: true, HingeI: true, HingeJ: true},
		},
		Seats: []frame.Seat{{Nodes: []int{0}, Clamped: true}, {Nodes: []int{2}, Clamped: true}},
	}
	_, err := g.Solve()
	var m *frame.MechanismError
	if !errors.As(err, &m) || !strings.HasPrefix(m.Place, "node 1") {
		t.Errorf("%v", err)
	}
	// One node on its own, on a spring.
	g = frame.Grillage{Nodes: [][2]float64{{4, 4}}, Forces: [][3]float64{{-50}}, Seats: []frame.Seat{{Nodes: []int{0}, Support: frame.Spring(1000)}}}
	near(t, "w", solveGrid(t, g).Move[0][0], -0.05, 1e-15)
}

// TestLevels: raising the ground under every seat raises the frame, no more.
func TestLevels(t *testing.T) {
	each(t, 40, func(t *testing.T, r *rand.Rand) {
		g := randomGrid(r, letGo)
		h := g
		h.Seats = slices.Clone(g.Seats)
		for i := range h.Seats {
			h.Seats[i].Level += 0.3
		}
		a, b := solveGrid(t, g), solveGrid(t, h)
		w, _ := moves(a)
		for i := range a.Move {
			near(t, "raised", b.Move[i][0], a.Move[i][0]+0.3, 1e-9*(w+0.3))
		}
		for i := range a.Push {
			near(t, "push", b.Push[i], a.Push[i], 1e-7*(1+math.Abs(a.Push[i])))
		}
	})
}
