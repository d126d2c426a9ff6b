package rack_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

// every runs a check on many random frames, held and afloat.
func every(t *testing.T, n int, check func(t *testing.T, f *rack.Frame, s *rack.Solution, r *rand.Rand)) {
	t.Helper()
	r := rand.New(rand.NewPCG(1, 7))
	tried := 0
	for range n {
		f := randomFrame(r, r.IntN(3) > 0)
		s, err := f.Solve()
		if errors.Is(err, rack.ErrMechanism) { // hinges in a row
			continue
		}
		if err != nil {
			t.Fatalf("%v\n%+v", err, f)
		}
		tried++
		check(t, f, s, r)
		if t.Failed() {
			t.Fatalf("%+v", f)
		}
	}
	if tried < n/2 {
		t.Errorf("only %d of %d frames stand", tried, n)
	}
}

// Loads and what holds balance as a whole; afloat, the drag takes what they leave.
func TestWholeBalances(t *testing.T) {
	every(t, 200, func(t *testing.T, f *rack.Frame, s *rack.Solution, _ *rand.Rand) {
		x, y, couple, size := total(f)
		if len(f.Holds) == 0 {
			at := s.Imbalance.At
			near(t, "x left", s.Imbalance.X, x, 1e-10*size)
			near(t, "y left", s.Imbalance.Y, y, 1e-10*size)
			near(t, "couple left", s.Imbalance.Couple, couple-at[0]*y+at[1]*x, 1e-9*size)
			return
		}
		force, _ := largest(s)
		for i, h := range f.Holds {
			g, n := s.Reactions[i], f.Nodes[h.Node]
			sin, cos := math.Sincos(h.Angle)
			fx, fy := g.Along.Most*cos-g.Across.Most*sin, g.Along.Most*sin+g.Across.Most*cos
			x, y, couple = x+fx, y+fy, couple+g.Couple.Most+n[0]*fy-n[1]*fx
		}
		near(t, "x", x, 0, 1e-8*(size+force))
		near(t, "y", y, 0, 1e-8*(size+force))
		near(t, "couple", couple, 0, 1e-7*(size+force))
	})
}

// Every node balances: what its joints do to it, what passes through it, its own
// force and its hold.
func TestNodesBalance(t *testing.T) {
	every(t, 150, func(t *testing.T, f *rack.Frame, s *rack.Solution, _ *rand.Rand) {
		sum := make([][3]float64, len(f.Nodes))
		add := func(n int, along, across, couple, cos, sin float64) {
			sum[n][0] += along*cos - across*sin
			sum[n][1] += along*sin + across*cos
			sum[n][2] += couple
		}
		for _, p := range f.Forces {
			add(p.Node, p.X, p.Y, p.Couple, 1, 0)
		}
		for i, h := range f.Holds {
			sin, cos := math.Sincos(h.Angle)
			g := s.Reactions[i]
			add(h.Node, g.Along.Most, g.Across.Most, g.Couple.Most, cos, sin)
		}
		for i := range f.Members {
			m := &f.Members[i]
			a, b := f.Nodes[m.Nodes[0]], f.Nodes[m.Nodes[len(m.Nodes)-1]]
			l := length(f, i)
			cos, sin := (b[0]-a[0])/l, (b[1]-a[1])/l
			for e := range 2 {
				j := s.Joints[2*i+e]
				axial := j.Axial.Most
				if e == 1 {
					axial = -axial
				}
				add(j.Node, axial, -j.Across.Most, -j.Couple.Most, cos, sin)
			}
			for _, n := range m.Nodes[1 : len(m.Nodes)-1] {
				x := (f.Nodes[n][0]-a[0])*cos + (f.Nodes[n][1]-a[1])*sin
				d := 1e-7 * l
				u, v := s.Lines[i].At(x-d), s.Lines[i].At(x+d)
				add(n, v.Axial-u.Axial, -(v.Shear - u.Shear), v.Moment-u.Moment, cos, sin)
			}
			for _, ld := range m.Loads { // at the ends the node takes them
				if ld.To > ld.From {
					continue
				}
				if ld.From < 1e-9*l || ld.From > l*(1-1e-9) {
					t.Fatal("a load at an end")
				}
			}
		}
		force, _ := largest(s)
		for n := range sum {
			for k := range 3 {
				near(t, s.Names[n], sum[n][k], 0, 1e-5*(force+1000))
			}
		}
	})
}

// Along every member the moment's slope is the shear, the ends are those of the
// joints, extremes are not exceeded anywhere, and the two ends' movements agree
// with the nodes' where the joint does not give.
func TestLines(t *testing.T) {
	every(t, 100, func(t *testing.T, f *rack.Frame, s *rack.Solution, r *rand.Rand) {
		force, move := largest(s)
		for i := range s.Lines {
			l, far := &s.Lines[i], length(f, i)
			e := l.Extremes()
			for range 20 {
				x := far * r.Float64()
				d := l.At(x)
				if d.Axial > e.Pull.Axial+1e-9*force || d.Axial < e.Push.Axial-1e-9*force || math.Abs(d.Shear) > math.Abs(e.Shear.Shear)+1e-9*force ||
					d.Moment > e.Right.Moment+1e-9*force || d.Moment < e.Left.Moment-1e-9*force {
					t.Errorf("%v exceeds %v", d, e)
				}
				const h = 1e-5
				a, b := l.At(x-h), l.At(x+h)
				if whole(l, x-h, x+h) && x > h && x < far-h {
					near(t, "slope of the moment", (b.Moment-a.Moment)/(2*h), d.Shear, 1e-5*(force+1e4))
					_, va, ra, _ := l.Moved(x - h)
					_, vb, rb, _ := l.Moved(x + h)
					turn := (rb - ra) / (2 * h)
					near(t, "curvature", turn, d.Moment/l.EI, 1e-4*(force/l.EI+move))
					_, _, rm, _ := l.Moved(x)
					if l.GA > 0 {
						rm -= d.Shear / l.GA
					}
					near(t, "slope", (vb-va)/(2*h), rm, 1e-5*(move+force/l.EI))
				}
			}
			for end, x := range [2]float64{0, far} {
				j, d := &s.Joints[2*i+end], l.At(x)
				near(t, "axial", j.Axial.Most, d.Axial, 1e-9*force)
				sign := 1.0
				if end == 1 {
					sign = -1
				}
				near(t, "across", j.Across.Most, sign*d.Shear, 1e-8*force)
				near(t, "couple", j.Couple.Most, -sign*d.Moment, 1e-8*force)
				near(t, "pull", j.Pull.Most, math.Max(0, j.Axial.Most), 0)
				along, left, turn, err := l.Moved(math.Min(x, l.Pieces[len(l.Pieces)-1].To))
				if err != nil {
					t.Fatal(err)
				}
				a, b := f.Nodes[f.Members[i].Nodes[0]], f.Nodes[f.Members[i].Nodes[len(f.Members[i].Nodes)-1]]
				cos, sin := (b[0]-a[0])/far, (b[1]-a[1])/far
				m := s.Move[j.Node]
				at := f.Members[i].Ends[end]
				// What the joint gives is its force over its stiffness.
				gave := [3]float64{along - (m[0]*cos + m[1]*sin), left - (m[1]*cos - m[0]*sin), turn - m[2]}
				near(t, "slip along", gave[0], sign*j.Axial.Most/at.Along, 1e-8*(move+force/1e5))
				near(t, "slip across", gave[1], -j.Across.Most/at.Across, 1e-7*(move+force/1e5))
				if at.Turn > 0 {
					near(t, "bracket", gave[2], -j.Couple.Most/at.Turn, 1e-6*(move+force/1e5))
				}
			}
		}
	})
}

// whole reports whether a and b lie in one piece of a line.
func whole(l *rack.Line, a, b float64) bool {
	for i := range l.Pieces {
		if p := &l.Pieces[i]; a >= p.Start.X && b <= p.To {
			return true
		}
	}
	return false
}

// Twice the energy is the work of the loads.
func TestWork(t *testing.T) {
	every(t, 100, func(t *testing.T, f *rack.Frame, _ *rack.Solution, _ *rand.Rand) {
		f = clone(f)
		for i := range f.Members { // of forces alone, whose work needs no integral
			f.Members[i].Loads = []rack.Load{rack.Point(length(f, i)*0.3, 500, -900), {From: length(f, i) * 0.6, Couple: 400}}
		}
		if len(f.Holds) == 0 { // the drag would work too
			f.Holds = []rack.Hold{{Node: 0, Along: 1e5, Across: 2e5, Turn: 1e4}}
			f.Drag = rack.Drag{}
		}
		s, err := f.Solve()
		if err != nil {
			t.Fatal(err)
		}
		var work float64
		for _, p := range f.Forces {
			m := s.Move[p.Node]
			work += p.X*m[0] + p.Y*m[1] + p.Couple*m[2]
		}
		for i := range f.Members {
			for _, l := range f.Members[i].Loads {
				along, left, turn, err := s.Lines[i].Moved(l.From)
				if err != nil {
					t.Fatal(err)
				}
				work += l.Along*along + l.Across*left + l.Couple*turn
			}
		}
		near(t, "energy", 2*s.Energy.Most, work, 1e-7*work)
	})
}

// The movement at one place by a force at another is that at the other by the
// same force at the one.
func TestReciprocity(t *testing.T) {
	every(t, 60, func(t *testing.T, f *rack.Frame, _ *rack.Solution, r *rand.Rand) {
		bare := clone(f)
		for i := range bare.Members {
			bare.Members[i].Loads = nil
		}
		bare.Holds = []rack.Hold{{Node: 1, Along: 1e5, Across: inf}, {Node: len(f.Nodes) - 1, Angle: 1, Along: 2e5, Across: 3e5}}
		bare.Drag = rack.Drag{}
		unit := func(n, way int) *rack.Solution {
			g := clone(bare)
			p := rack.Force{Node: n}
			*[2]*float64{&p.X, &p.Y}[way] = 1000
			g.Forces = []rack.Force{p}
			return solve(t, g)
		}
		a, b := r.IntN(len(f.Nodes)), r.IntN(len(f.Nodes))
		wa, wb := r.IntN(2), r.IntN(2)
		sa, sb := unit(a, wa), unit(b, wb)
		_, move := largest(sa)
		near(t, "reciprocal movement", sa.Move[b][wb], sb.Move[a][wa], 1e-8*move)
	})
}

// Two sets of loads together give what they give one by one, together.
func TestSuperposition(t *testing.T) {
	every(t, 60, func(t *testing.T, f *rack.Frame, s *rack.Solution, r *rand.Rand) {
		g, both := clone(f), clone(f)
		load(g, r)
		both.Forces = append(both.Forces, g.Forces...)
		for i := range both.Members {
			both.Members[i].Loads = append(both.Members[i].Loads, g.Members[i].Loads...)
		}
		sg, sum := solve(t, g), solve(t, both)
		f1, m1 := largest(s)
		f2, m2 := largest(sg)
		for i := range sum.Move {
			for k := range 2 {
				near(t, "movement", sum.Move[i][k], s.Move[i][k]+sg.Move[i][k], 1e-8*(m1+m2))
			}
		}
		for i := range sum.Joints {
			near(t, "axial", sum.Joints[i].Axial.Most, s.Joints[i].Axial.Most+sg.Joints[i].Axial.Most, 1e-7*(f1+f2))
			near(t, "couple", sum.Joints[i].Couple.Most, s.Joints[i].Couple.Most+sg.Joints[i].Couple.Most, 1e-7*(f1+f2))
		}
		for i := range sum.Screws {
			near(t, "screw", sum.Screws[i].X.Most, s.Screws[i].X.Most+sg.Screws[i].X.Most, 1e-7*(f1+f2))
		}
	})
}

// compare fails unless two solutions of the same joints agree; x, of the second's
// turning, maps its movements and signs.
func compare(t *testing.T, a, b *rack.Solution, sign float64, to func(x, y float64) (float64, float64)) {
	t.Helper()
	force, move := largest(a)
	for i := range a.Move {
		x, y := to(a.Move[i][0], a.Move[i][1])
		near(t, "x", b.Move[i][0], x, 1e-7*move)
		near(t, "y", b.Move[i][1], y, 1e-7*move)
		near(t, "turn", b.Move[i][2], sign*a.Move[i][2], 1e-6*move)
	}
	for i := range a.Joints {
		near(t, "axial", b.Joints[i].Axial.Most, a.Joints[i].Axial.Most, 1e-7*force)
		near(t, "across", b.Joints[i].Across.Most, sign*a.Joints[i].Across.Most, 1e-7*force)
		near(t, "couple", b.Joints[i].Couple.Most, sign*a.Joints[i].Couple.Most, 1e-7*force)
	}
	for i := range a.Screws {
		near(t, "screw", b.Screws[i].Force.Most, a.Screws[i].Force.Most, 1e-7*force)
	}
	near(t, "energy", b.Energy.Most, a.Energy.Most, 1e-7*a.Energy.Most)
}

// The mirror image, and the frame turned, answer alike.
func TestMirrorAndTurn(t *testing.T) {
	every(t, 60, func(t *testing.T, f *rack.Frame, s *rack.Solution, r *rand.Rand) {
		compare(t, s, solve(t, mirrored(f)), -1, func(x, y float64) (float64, float64) { return -x, y })
		angle := 6 * r.Float64()
		sin, cos := math.Sincos(angle)
		compare(t, s, solve(t, turned(f, angle)), 1, func(x, y float64) (float64, float64) { return x*cos - y*sin, x*sin + y*cos })
	})
}

// A node put into the middle of a member changes nothing.
func TestSubdividing(t *testing.T) {
	every(t, 80, func(t *testing.T, f *rack.Frame, s *rack.Solution, r *rand.Rand) {
		g := clone(f)
		i := r.IntN(len(g.Members))
		m := &g.Members[i]
		a, b, part := g.Nodes[m.Nodes[0]], g.Nodes[m.Nodes[1]], 0.2+0.6*r.Float64()
		g.Nodes = append(g.Nodes, [2]float64{a[0] + part*(b[0]-a[0]), a[1] + part*(b[1]-a[1])})
		m.Nodes = append([]int{m.Nodes[0], len(g.Nodes) - 1}, m.Nodes[1:]...)
		cut := solve(t, g)
		force, move := largest(s)
		for i := range s.Joints {
			near(t, "axial", cut.Joints[i].Axial.Most, s.Joints[i].Axial.Most, 1e-7*force)
			near(t, "couple", cut.Joints[i].Couple.Most, s.Joints[i].Couple.Most, 1e-7*force)
		}
		if len(f.Holds) > 0 { // afloat, the mean of the nodes is another
			for i := range s.Move {
				near(t, "x", cut.Move[i][0], s.Move[i][0], 1e-7*move)
			}
		}
		for range 5 {
			x := r.Float64() * length(f, i)
			if x > 1e-6 && x < length(f, i)-1e-6 {
				near(t, "moment", cut.Lines[i].At(x).Moment, s.Lines[i].At(x).Moment, 1e-6*force)
			}
		}
	})
}

// Everything softer by one factor moves more by that factor, under the same
// forces.
func TestScale(t *testing.T) {
	every(t, 40, func(t *testing.T, f *rack.Frame, s *rack.Solution, _ *rand.Rand) {
		g := clone(f)
		const by = 8
		for i := range g.Members {
			m := &g.Members[i]
			m.EA, m.EI, m.GA = m.EA/by, m.EI/by, m.GA/by
			for e := range m.Ends {
				m.Ends[e] = rack.End{Turn: m.Ends[e].Turn / by, Along: m.Ends[e].Along / by, Across: m.Ends[e].Across / by}
			}
		}
		for i := range g.Boards {
			g.Boards[i].EA /= by
			g.Boards[i].EI /= by
			for k := range g.Boards[i].Screws {
				g.Boards[i].Screws[k].Slip /= by
			}
		}
		for i := range g.Holds {
			h := &g.Holds[i]
			h.Along, h.Across, h.Turn = h.Along/by, h.Across/by, h.Turn/by
		}
		soft := solve(t, g)
		force, move := largest(s)
		for i := range s.Move {
			near(t, "x", soft.Move[i][0], by*s.Move[i][0], 1e-7*by*move)
		}
		for i := range s.Joints {
			near(t, "axial", soft.Joints[i].Axial.Most, s.Joints[i].Axial.Most, 1e-7*force)
		}
	})
}

// Very stiff joints are as good as ones that do not give, and movement grows
// without bound as a brace's joints become soft.
func TestLimits(t *testing.T) {
	every(t, 30, func(t *testing.T, f *rack.Frame, _ *rack.Solution, _ *rand.Rand) {
		stiff, firm := clone(f), clone(f)
		for i := range f.Members {
			for e := range 2 {
				firm.Members[i].Ends[e] = rack.Rigid()
				stiff.Members[i].Ends[e] = rack.End{Turn: 1e10, Along: 1e11, Across: 1e11}
			}
		}
		a, b := solve(t, firm), solve(t, stiff)
		force, move := largest(a)
		for i := range a.Move {
			near(t, "x", b.Move[i][0], a.Move[i][0], 1e-3*move)
		}
		for i := range a.Joints {
			near(t, "axial", b.Joints[i].Axial.Most, a.Joints[i].Axial.Most, 1e-2*force)
		}
	})
	for _, k := range []float64{1e3, 1e4, 1e5} {
		f := panel()
		f.Members[4].Ends = [2]rack.End{{Along: k, Across: k}, {Along: k, Across: k}}
		s := solve(t, f)
		near(t, "racking of a soft brace, times its stiffness", s.Move[2][0]*k, 2*1000*13.0/9, 0.02*3000)
	}
}

// panel is a hinged panel of 3 m by 2 m with a brace, pushed at its top.
func panel() *rack.Frame {
	f := &rack.Frame{Nodes: [][2]float64{{0, 0}, {3, 0}, {3, 2}, {0, 2}}, Names: []string{"A", "B", "C", "D"}}
	for i, n := range [][]int{{0, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}} {
		f.Members = append(f.Members, rack.Member{Nodes: n, EA: 2e7, EI: 1e4, Ends: [2]rack.End{rack.Pinned(), rack.Pinned()}, Name: []string{"south", "east", "north", "west", "brace"}[i]})
	}
	f.Holds = []rack.Hold{{Node: 0, Along: inf, Across: inf, Name: "hinge"}, {Node: 1, Across: inf, Name: "post"}}
	f.Forces = []rack.Force{{Node: 3, X: 1000, Name: "cleat"}}
	return f
}

// Forces afloat are those of the same frame held at three motions anywhere, as
// the loads balance; the movements differ by one of the frame as a whole.
func TestAfloatAsHeld(t *testing.T) {
	every(t, 60, func(t *testing.T, f *rack.Frame, s *rack.Solution, r *rand.Rand) {
		if len(f.Holds) == 0 {
			return
		}
		// The holds' forces as forces: the loads balance.
		g := clone(f)
		g.Holds = nil
		for i, h := range f.Holds {
			sin, cos := math.Sincos(h.Angle)
			k := s.Reactions[i]
			g.Forces = append(g.Forces, rack.Force{
				Node: h.Node, X: k.Along.Most*cos - k.Across.Most*sin, Y: k.Along.Most*sin + k.Across.Most*cos, Couple: k.Couple.Most,
			})
		}
		free := solve(t, g)
		force, move := largest(s)
		for i := range s.Joints {
			near(t, "axial", free.Joints[i].Axial.Most, s.Joints[i].Axial.Most, 1e-6*force)
			near(t, "couple", free.Joints[i].Couple.Most, s.Joints[i].Couple.Most, 1e-6*force)
		}
		if len(f.Nodes) >= 4 {
			n := len(f.Nodes)
			c := [4]int{0, 1, n - 1, n - 2}
			a, err1 := s.Racking(c)
			b, err2 := free.Racking(c)
			if err1 != nil || err2 != nil {
				if !errors.Is(err1, measure.ErrRange) {
					t.Fatal(err1, err2)
				}
				return
			}
			near(t, "shear", b.Shear, a.Shear, 1e-6*move)
			near(t, "diagonal", b.Diagonals[0], a.Diagonals[0], 1e-6*move)
			near(t, "out of square", b.Out, a.Diagonals[0]-a.Diagonals[1], 2e-6*move)
		}
		var u, v, turn float64
		var cx, cy float64
		for _, p := range f.Nodes {
			cx, cy = cx+p[0]/float64(len(f.Nodes)), cy+p[1]/float64(len(f.Nodes))
		}
		for i, m := range free.Move {
			u, v, turn = u+m[0], v+m[1], turn+(f.Nodes[i][0]-cx)*m[1]-(f.Nodes[i][1]-cy)*m[0]
		}
		near(t, "mean x", u, 0, 1e-7*move)
		near(t, "mean y", v, 0, 1e-7*move)
		near(t, "mean turn", turn, 0, 1e-6*move)
	})
}

// Where slips are not known, the ranges hold the answers of many slips that are
// alike by kind, to a few hundredths of the largest force.
func TestRangesHold(t *testing.T) {
	every(t, 60, func(t *testing.T, f *rack.Frame, _ *rack.Solution, r *rand.Rand) {
		blank := clone(f)
		for i := range f.Members {
			for e := range 2 {
				end := &blank.Members[i].Ends[e]
				end.Along, end.Across = 0, math.NaN()
				if end.Turn > 0 {
					end.Turn = math.NaN()
				}
			}
		}
		for i := range f.Boards {
			for k := range f.Boards[i].Screws {
				blank.Boards[i].Screws[k].Slip = 0
			}
		}
		s := solve(t, blank)
		if len(s.Unknown) < 2 || len(s.Cases) < 8 || s.Move != nil || len(s.Notes) == 0 {
			t.Fatalf("unknown %q, %d cases", s.Unknown, len(s.Cases))
		}
		if _, err := s.Racking([4]int{0, 1, 2, 3}); !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("racking: %v", err)
		}
		if _, _, _, err := s.Lines[0].Moved(0); !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("movement: %v", err)
		}
		force, _ := largest(s)
		for range 4 {
			g := clone(blank)
			between := func(lo, hi float64) float64 { return lo * math.Pow(hi/lo, r.Float64()) }
			along, across, turn, slip := between(1e5, 5e7), between(1e5, 5e7), between(300, 1e6), between(1e5, 5e7)
			for i := range g.Members {
				for e := range 2 {
					end := &g.Members[i].Ends[e]
					end.Along, end.Across = along, across
					if math.IsNaN(end.Turn) {
						end.Turn = turn
					}
				}
			}
			for i := range g.Boards {
				for k := range g.Boards[i].Screws {
					g.Boards[i].Screws[k].Slip = slip
				}
			}
			one := solve(t, g)
			for i := range one.Joints {
				a, b := one.Joints[i].Axial.Most, s.Joints[i].Axial
				if !(a >= b.Least-0.05*force && a <= b.Most+0.05*force) {
					t.Errorf("axial %g, found %v", a, b)
				}
			}
		}
	})
}

// Hinged grids without a brace rack, however large and at whatever angle: each is
// a mechanism, never a huge movement.
func TestHingedGridsRack(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for range 150 {
		f := &rack.Frame{}
		bays, deep := 1+r.IntN(12), 1+r.IntN(3)
		x := 0.0
		for range bays + 1 {
			for j := range deep + 1 {
				f.Nodes = append(f.Nodes, [2]float64{x, 1.3 * float64(j)})
			}
			x += 0.3 + 2*r.Float64()
		}
		member := func(a, b int) {
			f.Members = append(f.Members, rack.Member{Nodes: []int{a, b}, EA: math.Exp(13 + 5*r.Float64()), EI: 1e4, Ends: [2]rack.End{rack.Pinned(), rack.Pinned()}})
		}
		for i := range bays + 1 {
			for j := range deep + 1 {
				n := i*(deep+1) + j
				if j < deep {
					member(n, n+1)
				}
				if i < bays {
					member(n, n+deep+1)
				}
			}
		}
		if r.IntN(2) == 0 {
			f.Holds = []rack.Hold{{Node: 0, Along: math.Exp(9 + 9*r.Float64()), Across: inf}, {Node: len(f.Nodes) - 1, Across: 1e6}}
			f.Forces = []rack.Force{{Node: deep, X: 100, Y: 7}}
		}
		if _, err := turned(f, 6*r.Float64()).Solve(); !errors.Is(err, rack.ErrMechanism) {
			t.Fatalf("%d by %d bays: %v", bays, deep, err)
		}
	}
}

// Solving twice gives the same, to the last digit, and go-cmp compares solutions.
func TestSameAgain(t *testing.T) {
	f := randomFrame(rand.New(rand.NewPCG(3, 3)), true)
	a, b := solve(t, f), solve(t, f)
	if diff := cmp.Diff(a, b); diff != "" {
		t.Error(diff)
	}
	f.Forces[0].X++
	if cmp.Equal(a, solve(t, f)) {
		t.Error("another load gives an equal solution")
	}
}
