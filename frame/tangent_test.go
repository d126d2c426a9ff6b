package frame

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestTangent compares the stiffness with differences of the forces, at random
// movements of a frame with supports of every kind, seats under two nodes,
// heights, skew axes and rigid holds. A wrong term would still settle, slowly.
func TestTangent(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 9))
	for range 30 {
		g := raft(4)
		g.Nodes[4][0] += 0.3
		g.Nodes[7][1] -= 0.2
		for i := range g.Members {
			g.Members[i].Loads = []Load{Uniform(0.1, 0.8, 300)}
		}
		g.Members[3].HingeI, g.Members[5].HingeJ, g.Members[6].Untwist = true, true, true
		g.Members[1].GA = 1e5
		g.Nodes = append(g.Nodes, [2]float64{6, 1})
		g.Forces = append(g.Forces, [3]float64{-50})
		g.Members = append(g.Members, Member{I: 10, J: 12, EI: 1e5, Untwist: true})
		g.Seats[0].Nodes, g.Seats[0].Share = []int{3, 6}, []float64{0.3, 0.7}
		for i := range g.Seats {
			g.Seats[i].Heights = [2]float64{r.Float64() - 0.6, r.Float64() - 0.6}
		}
		g.Seats = append(g.Seats,
			Seat{Nodes: []int{0}, Support: Spring(3e4), Clamped: true},
			Seat{Nodes: []int{12}, Support: Gap(0.01, 2e4), Level: 0.05},
			Seat{Nodes: []int{2}, Level: -0.1})
		g.Weights = []Weight{{Node: 5, Force: 700, Height: 1.1}, {Node: 8, Force: 300, Height: -0.3}}
		s, err := g.assemble()
		if err != nil {
			t.Fatal(err)
		}
		n := len(s.x)
		at := s.newTrial()
		for i := range at.x {
			at.x[i] = two{hi: -0.15 + 0.1*r.NormFloat64()}
			if s.fixed[i] {
				at.x[i] = s.x[i]
			}
		}
		s.balance(at)
		k := newBand(n, s.half)
		s.tangentInto(k, at, 0)
		const d = 1e-5
		for j := range n {
			if s.fixed[j] {
				continue
			}
			up, down := s.newTrial(), s.newTrial()
			copy(up.x, at.x)
			copy(down.x, at.x)
			up.x[j].hi += d
			down.x[j].hi -= d
			s.balance(up)
			s.balance(down)
			for i := range n {
				if s.fixed[i] {
					continue
				}
				got := 0.0
				if i-j <= s.half && j-i <= s.half {
					got = *k.at(i, j)
				}
				want := (down.out[i] - up.out[i]) / (2 * d)
				if math.Abs(got-want) > 1e-2+1e-5*math.Abs(want) {
					t.Errorf("stiffness (%d, %d) = %g, differences give %g", i, j, got, want)
				}
			}
		}
		if t.Failed() {
			return
		}
	}
}
