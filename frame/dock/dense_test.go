package dock

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/frame"
)

// A fullMatrix is the grillage of a raft as one writes it first: the stiffness of every
// node in one full matrix, Newton's steps by gonum's Cholesky, no line search.
type fullMatrix struct {
	g     *frame.Grillage
	fixed *mat.SymDense // of the members
	load  []float64     // upward on the nodes
}

// bend returns how an element of a length answers to a unit of each of w and slope at
// its near end, then of those at its far end, at a place from 0 to 1: Hermite's cubics.
func bend(t, length float64) [4]float64 {
	return [4]float64{
		1 - 3*t*t + 2*t*t*t, length * t * (1 - t) * (1 - t),
		t * t * (3 - 2*t), length * t * t * (t - 1),
	}
}

// newFullMatrix writes down members and loads.
func newFullMatrix(g *frame.Grillage) *fullMatrix {
	n := 3 * len(g.Nodes)
	d := &fullMatrix{g: g, fixed: mat.NewSymDense(n, nil), load: make([]float64, n)}
	for i, f := range g.Forces {
		for k, f := range f {
			d.load[3*i+k] += f
		}
	}
	for _, w := range g.Weights {
		d.load[3*w.Node] -= w.Force
		for _, turn := range [2]int{1, 2} { // above the nodes it tips them
			row := 3*w.Node + turn
			d.fixed.SetSym(row, row, d.fixed.At(row, row)-w.Force*w.Height)
		}
	}
	for i := range g.Members {
		m := &g.Members[i]
		dx, dy := g.Nodes[m.J][0]-g.Nodes[m.I][0], g.Nodes[m.J][1]-g.Nodes[m.I][1]
		length := math.Hypot(dx, dy)
		c, s := dx/length, dy/length
		// w, slope and twist of each end by the node's w, thx, thy.
		var to [6][6]float64
		for e := range 2 {
			to[3*e][3*e] = 1
			to[3*e+1][3*e+1], to[3*e+1][3*e+2] = s, -c
			to[3*e+2][3*e+1], to[3*e+2][3*e+2] = c, s
		}
		b := m.EI / (length * length * length)
		l1, l2 := 6*b*length, 2*b*length*length
		t := m.GJ / length
		k := [6][6]float64{
			{12 * b, l1, 0, -12 * b, l1, 0},
			{l1, 2 * l2, 0, -l1, l2, 0},
			{0, 0, t, 0, 0, -t},
			{-12 * b, -l1, 0, 12 * b, -l1, 0},
			{l1, l2, 0, -l1, 2 * l2, 0},
			{0, 0, -t, 0, 0, t},
		}
		var push [6]float64
		on := func(at, p float64) {
			for j, v := range bend(at/length, length) {
				push[j+j/2] -= p * v
			}
		}
		for _, q := range m.Loads {
			if q.To > q.From && q.To > 0 { // spread: Gauss's three points are exact
				half := (q.To - q.From) / 2
				for _, point := range [3][2]float64{{-math.Sqrt(0.6), 5. / 9}, {0, 8. / 9}, {math.Sqrt(0.6), 5. / 9}} {
					on(q.From+half*(1+point[0]), point[1]*half*(q.Q+(1+point[0])*q.Rise/2))
				}
				continue
			}
			on(q.From, q.P)
		}
		at := func(j int) int { return 3*[2]int{m.I, m.J}[j/3] + j%3 }
		for i := range 6 {
			for j := range 6 {
				d.load[at(j)] += to[i][j] * push[i]
				if at(j) > at(i) {
					continue
				}
				sum := 0.0
				for p := range 6 {
					for q := range 6 {
						sum += to[p][i] * k[p][q] * to[q][j]
					}
				}
				d.fixed.SetSym(at(i), at(j), d.fixed.At(at(i), at(j))+sum)
			}
		}
	}
	return d
}

// solve moves the nodes from a start until a step is no more than a part in 10^10, and
// returns the movements and how many steps it took.
func (d *fullMatrix) solve(start []float64) (*mat.VecDense, int, bool) {
	n := len(d.load)
	x := mat.NewVecDense(n, append([]float64(nil), start...))
	k, out, step := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	var c mat.Cholesky
	for steps := 1; steps <= 100; steps++ {
		k.CopySym(d.fixed)
		out.MulVec(d.fixed, x)
		out.SubVec(mat.NewVecDense(n, d.load), out)
		for i := range d.g.Seats {
			s := &d.g.Seats[i]
			sink := s.Level
			share := func(j int) float64 {
				if s.Share == nil {
					return 1 / float64(len(s.Nodes))
				}
				return s.Share[j]
			}
			for j, node := range s.Nodes {
				sink -= share(j) * x.AtVec(3*node)
			}
			force, stiff, _ := s.Support(sink)
			for j, a := range s.Nodes {
				out.SetVec(3*a, out.AtVec(3*a)+share(j)*force)
				for l, b := range s.Nodes {
					if b <= a {
						k.SetSym(3*a, 3*b, k.At(3*a, 3*b)+stiff*share(j)*share(l))
					}
				}
				for turn, h := range s.Heights { // a push above the nodes rights them
					row := 3*a + 1 + turn
					out.SetVec(row, out.AtVec(row)-share(j)*force*h*x.AtVec(row))
					k.SetSym(row, row, k.At(row, row)+share(j)*force*h)
				}
			}
		}
		if !c.Factorize(k) || c.SolveVecTo(step, out) != nil {
			return nil, steps, false
		}
		x.AddVec(x, step)
		if mat.Norm(step, math.Inf(1)) <= 1e-10*mat.Norm(x, math.Inf(1)) {
			return x, steps, true
		}
	}
	return nil, 0, false
}

// standing returns the grillages of a dock's situations afloat on flat water, with the
// seats and heights at which each came to rest, and where it would rest if it did not bend.
func standing(tb testing.TB, d *Dock) (grids []frame.Grillage, starts [][]float64) {
	tb.Helper()
	met, err := d.situations()
	if err != nil {
		tb.Fatal(err)
	}
	r := mustRaft(tb, d)
	for i := range met {
		s := &met[i]
		if s.pulls != nil || s.ground != nil || s.lake.level != nil || s.lake.lost != 0 {
			continue
		}
		ride, err := r.meet(s, nil, nil)
		if err != nil {
			continue // it capsizes: TestRidesLikeFloat
		}
		g := ride.Grillage
		g.Seats = nil
		for i := range ride.feet {
			g.Seats = append(g.Seats, ride.feet[i].seat)
		}
		g.Forces = make([][3]float64, len(g.Nodes))
		tilts := ride.tilts(ride)
		for i := range tilts {
			g.Seats = append(g.Seats, ride.tilt(i, &tilts[i]))
			g.Forces[g.Seats[len(g.Seats)-1].Nodes[0]][0] -= ride.weight
		}
		var start []float64
		for _, at := range g.Nodes {
			start = append(start, ride.unbent.Height(r3.Vec{X: at[0], Y: at[1]}), -ride.unbent.Heel, ride.unbent.Trim)
		}
		grids, starts = append(grids, g), append(starts, start)
	}
	return grids, starts
}

// TestDenseReferee: in every situation on flat water the frame moves as the full matrix
// has it.
func TestDenseReferee(t *testing.T) {
	for name, d := range docks(t) {
		grids, starts := standing(t, d)
		if len(grids) < 15 {
			t.Errorf("%s: %d situations", name, len(grids))
		}
		for i := range grids {
			want, _, ok := newFullMatrix(&grids[i]).solve(starts[i])
			if !ok {
				t.Errorf("%s, situation %d: Newton's steps end nowhere", name, i)
				continue
			}
			s, err := grids[i].Solve()
			if err != nil {
				t.Errorf("%s, situation %d: %v", name, i, err)
				continue
			}
			most := mat.Norm(want, math.Inf(1))
			for j, m := range s.Move {
				for k, got := range m {
					if !(math.Abs(got-want.AtVec(3*j+k)) <= 1e-9*most) {
						t.Fatalf("%s, situation %d, node %d: movement %d is %.9g, by the full matrix %.9g", name, i, j, k, got, want.AtVec(3*j+k))
					}
				}
			}
		}
	}
}

// BenchmarkRideDense is the frame of one situation of two docks, its seats and heights
// given: this library's grillage, and as baseline the full matrix.
func BenchmarkRideDense(b *testing.B) {
	for name, d := range map[string]*Dock{"floats=8": mustBuild(b, "eight", eightBlocks), "floats=18": demoDock(b, "swim")} {
		grids, starts := standing(b, d)
		g := &grids[len(grids)/2]
		b.Run(name+"/band", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := g.Solve(); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(name+"/dense", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, steps, ok := newFullMatrix(g).solve(starts[len(grids)/2])
				if !ok {
					b.Fatal("loose")
				}
				b.ReportMetric(float64(steps), "steps")
			}
			b.ReportMetric(float64(3*len(g.Nodes)), "unknowns")
		})
	}
}
