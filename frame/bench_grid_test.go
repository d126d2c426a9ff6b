package frame

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// cylinder is a drum without weight in fresh water.
func cylinder(r, length float64) Support {
	gamma := 9806.65 * length
	return func(sink float64) (force, stiffness, energy float64) {
		h := math.Min(math.Max(sink, 0), 2*r)
		q := math.Sqrt(math.Max(h*(2*r-h), 0))
		angle := math.Acos(math.Min(math.Max((r-h)/r, -1), 1))
		energy = gamma * (r*r*q - (r-h)*r*r*angle - q*q*q/3)
		if sink > 2*r {
			energy += gamma * math.Pi * r * r * (sink - 2*r)
		}
		return gamma * (r*r*angle - (r-h)*q), gamma * 2 * q, energy
	}
}

// raft is a frame of three stringers with n cross members and a drum at every
// inner outer node: 6 of them make 18 nodes and 8 drums.
func raft(n int) Grillage {
	var g Grillage
	at := func(i, j int) int { return 3*i + j }
	m := Member{EI: 1.88e5, GJ: 1750}
	for i := range n {
		for j := range 3 {
			g.Nodes = append(g.Nodes, [2]float64{1.2 * float64(i), 1.5 * float64(j)})
			g.Forces = append(g.Forces, [3]float64{-300})
			if i > 0 {
				m.I, m.J = at(i-1, j), at(i, j)
				m.Loads = []Load{Uniform(0, 1.2, 300)}
				g.Members = append(g.Members, m)
			}
			if j > 0 {
				m.I, m.J, m.Loads = at(i, j-1), at(i, j), nil
				g.Members = append(g.Members, m)
			}
			if i > 0 && i < n-1 && j != 1 {
				g.Seats = append(g.Seats, Seat{Support: cylinder(0.29, 0.88), Nodes: []int{at(i, j)}})
			}
		}
	}
	g.Forces[at(n-1, 2)][0] -= 800 // a person on a corner
	return g
}

func BenchmarkGrillage(b *testing.B) {
	each := map[int]float64{}
	for _, n := range []int{6, 11, 101, 1001} {
		b.Run(fmt.Sprintf("bays=%d", n-1), func(b *testing.B) {
			b.ReportAllocs()
			g := raft(n)
			for b.Loop() {
				if _, err := g.Solve(); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n-1), "ns/bay")
			exponent(b, each, 10, 1000, n-1)
		})
	}
}

// gridStiffness returns the raft's stiffness afloat.
func gridStiffness(tb testing.TB, n int) (*band, []float64) {
	g := raft(n)
	s, err := g.assemble()
	if err != nil {
		tb.Fatal(err)
	}
	t, err := s.settle()
	if err != nil {
		tb.Fatal(err)
	}
	k := newBand(len(s.x), s.half)
	s.tangentInto(k, t, 0)
	zero := s.newTrial()
	s.balance(zero)
	return k, zero.out
}

// BenchmarkGrillageFactor is one factorisation and solution of the raft of 18
// nodes: this package's band, and gonum's dense Cholesky as baseline.
func BenchmarkGrillageFactor(b *testing.B) {
	k, load := gridStiffness(b, 6)
	b.Run("band", func(b *testing.B) {
		b.ReportAllocs()
		f, x := newBand(k.n, k.k), make([]float64, k.n)
		for b.Loop() {
			f.copyFrom(k)
			copy(x, load)
			if weakest, _ := f.factor(); !(weakest > 0) {
				b.Fatal("loose")
			}
			f.solve(x)
		}
	})
	b.Run("dense", func(b *testing.B) {
		b.ReportAllocs()
		d := mat.NewSymDense(k.n, nil)
		for i := range k.n {
			for j := max(0, i-k.k); j <= i; j++ {
				d.SetSym(i, j, *k.at(i, j))
			}
		}
		var c mat.Cholesky
		x := mat.NewVecDense(k.n, nil)
		for b.Loop() {
			if !c.Factorize(d) {
				b.Fatal("loose")
			}
			if err := c.SolveVecTo(x, mat.NewVecDense(k.n, load)); err != nil {
				b.Fatal(err)
			}
		}
	})
}
