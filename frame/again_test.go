package frame_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// TestSolveFrom: from wherever the search begins, the same state is found, supports
// that let go among it.
func TestSolveFrom(t *testing.T) {
	each(t, 80, func(t *testing.T, r *rand.Rand) {
		g := randomGrid(r, letGo)
		want := solveGrid(t, g)
		h := g
		h.Forces = slices.Clone(g.Forces)
		if h.Forces == nil {
			h.Forces = make([][3]float64, len(g.Nodes))
		}
		h.Forces[r.IntN(len(h.Forces))][0] -= 2000 * r.Float64()
		other := solveGrid(t, h)
		for i := range other.Move { // and some way off it
			other.Move[i][0] += 0.01 * (r.Float64() - 0.5)
		}
		got, err := g.SolveFrom(other)
		if err != nil {
			t.Fatal(err)
		}
		var all float64
		for _, p := range want.Push {
			all += math.Abs(p)
		}
		for i := range want.Push {
			near(t, "push", got.Push[i], want.Push[i], 1e-7*all)
		}
		w, turn := moves(want)
		for i, m := range want.Move {
			near(t, "deflection", got.Move[i][0], m[0], 1e-7*w+1e-12)
			near(t, "turn", math.Hypot(got.Move[i][1]-m[1], got.Move[i][2]-m[2]), 0, 1e-6*turn+1e-12)
		}
	})
}

func TestSolveFromBadData(t *testing.T) {
	g := square()
	for i := range 4 {
		g.Seats = append(g.Seats, frame.Seat{Support: frame.Spring(1e4), Nodes: []int{i}})
	}
	s := solveGrid(t, g)
	for name, earlier := range map[string]*frame.Solution{
		"nil":         nil,
		"of another":  {Move: make([][3]float64, 3)},
		"not a place": {Move: [][3]float64{{}, {0, math.NaN()}, {}, {}}},
		"far away":    {Move: [][3]float64{{}, {math.Inf(1)}, {}, {}}},
	} {
		if _, err := g.SolveFrom(earlier); !errors.Is(err, measure.ErrRange) || !strings.Contains(err.Error(), "earlier") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if again, err := g.SolveFrom(s); err != nil || math.Abs(again.Push[0]-s.Push[0]) > 1e-9 {
		t.Errorf("from itself: %v, %v", again, err)
	}
}

// TestTallInOnePlace: a heavy thing high up on one node tips a body over, though
// nothing near is loose: that is a capsize, wherever it stands.
func TestTallInOnePlace(t *testing.T) {
	for node := range 12 {
		g, weight, gmx, _ := pontoon(4, 3, 8, 1.2, 0.25, 0.4, 0.4, 1e8)
		if gmx <= 0 {
			t.Fatal("it capsizes by itself")
		}
		g.Weights = append(g.Weights, frame.Weight{Node: node, Force: 0.3 * weight, Height: 6}, frame.Weight{Node: node, Force: -0.3 * weight})
		s, err := g.Solve()
		if !errors.Is(err, frame.ErrCapsizes) {
			t.Errorf("at node %d: %v, %v", node, s, err)
		}
	}
	// Half as high it stands, if what it takes from GM leaves some.
	g, weight, gmx, _ := pontoon(4, 3, 8, 1.2, 0.25, 0.4, 0.4, 1e8)
	h := 0.5 * gmx / 0.3
	g.Weights = append(g.Weights, frame.Weight{Node: 5, Force: 0.3 * weight, Height: h}, frame.Weight{Node: 5, Force: -0.3 * weight})
	if _, err := g.Solve(); err != nil {
		t.Errorf("with half of GM left: %v", err)
	}
}

// TestNegativeShare: a support beyond the last of its nodes presses one and lifts the
// other, as the lever has it.
func TestNegativeShare(t *testing.T) {
	g := frame.Grillage{
		Nodes:   [][2]float64{{0, 0}, {1, 0}, {3, 0}, {0, 1}},
		Members: []frame.Member{{I: 0, J: 1, EI: 1e7, GJ: 1e7}, {I: 1, J: 2, EI: 1e7, GJ: 1e7}, {I: 0, J: 3, EI: 1e7, GJ: 1e7}},
		Forces:  [][3]float64{{}, {}, {-600, 0, 0}, {}},
		Seats: []frame.Seat{
			{Support: frame.Spring(1e5), Nodes: []int{0}},
			// Stands at x = 2, where there is no node: 2 = -0·1 + ..., by nodes 0 and 1.
			{Support: frame.Spring(1e5), Nodes: []int{0, 1}, Share: []float64{-1, 2}},
			{Support: frame.Spring(1e5), Nodes: []int{3}},
		},
	}
	s := solveGrid(t, g)
	// Moments about x = 0: the middle seat carries 600·3/2.
	near(t, "push at x = 2", s.Push[1], 900, 1e-4)
	near(t, "push at x = 0", s.Push[0]+s.Push[2], -300, 1e-4)
}
