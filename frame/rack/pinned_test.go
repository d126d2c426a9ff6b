package rack_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame/rack"
	"example.org/floewright/internal/pinned"
)

// pinnedFrame returns an invented frame of two bays that is like itself in no way,
// boarded, braced and held now one way, now another.
func pinnedFrame(t *testing.T, r *rand.Rand) *rack.Frame {
	t.Helper()
	vary := func(x float64) float64 { return x * (0.7 + 0.6*r.Float64()) }
	end := func() rack.End {
		if r.IntN(2) == 0 {
			return rack.Rigid()
		}
		return rack.Pinned()
	}
	long, half, deep := vary(4), 0.0, vary(2.4)
	half = long * (0.3 + 0.4*r.Float64())
	f := &rack.Frame{Nodes: [][2]float64{{0, 0}, {half, 0}, {long, 0}, {long, deep}, {half, deep}, {0, deep}}}
	for i, n := range [][]int{{0, 1, 2}, {2, 3}, {3, 4, 5}, {5, 0}, {1, 4}} {
		m := rack.Member{Nodes: n, EA: vary(2e7), EI: vary(1e4), GA: vary(1e6), Ends: [2]rack.End{end(), end()}}
		if i%2 == r.IntN(2) {
			m.Loads = []rack.Load{rack.Uniform(0, vary(1), vary(10), vary(20)), rack.Point(vary(0.5), vary(-30), vary(40))}
		}
		f.Members = append(f.Members, m)
	}
	if r.IntN(2) == 0 {
		f.Members = append(f.Members, rack.Member{Nodes: []int{0, 4}, EA: vary(1e7), EI: vary(1e3)})
	}
	for range r.IntN(4) {
		x := long * (0.1 + 0.8*r.Float64())
		b, err := f.Lay(rack.Board{From: [2]float64{x, -0.05}, To: [2]float64{x + 0.3*r.NormFloat64(), deep + 0.05}, EA: vary(1e7), EI: vary(1e3)}, 0.1, vary(1.5e6))
		if err == nil {
			f.Boards = append(f.Boards, b)
		}
	}
	f.Forces = []rack.Force{{Node: 2, X: vary(900), Y: vary(-100), Couple: vary(50)}, {Node: 4, Y: vary(300)}}
	switch r.IntN(3) {
	case 0:
		f.Holds = []rack.Hold{{Node: 0, Along: vary(1e5), Across: vary(1e5), Turn: vary(1e4), Angle: r.Float64()}, {Node: 1, Across: math.Inf(1)}}
	case 1:
		for i, n := range []int{0, 2, 3, 5} {
			f.Holds = append(f.Holds, rack.Hold{Node: n, Line: true, Along: vary(3e4), Angle: math.Pi/4 + float64(i)*math.Pi/2 + 0.2*r.NormFloat64()})
		}
	}
	return f
}

// TestPinned compares invented frames with what they were before.
func TestPinned(t *testing.T) {
	pinned.OneMachine(t)
	solved := 0
	pinned.Check(t, "frames", 200, func(r *rand.Rand) []any {
		f := pinnedFrame(t, r)
		if len(f.Holds) == 0 {
			switch r.IntN(4) {
			case 0, 1:
				for range f.Members {
					f.Drag.Members = append(f.Drag.Members, r.Float64())
				}
			case 2:
				for range f.Nodes {
					f.Drag.Nodes = append(f.Drag.Nodes, 100*r.Float64())
				}
			}
		}
		s, err := f.Solve()
		if err != nil {
			return []any{err}
		}
		solved++
		racked, err := s.Racking([4]int{0, 2, 3, 5})
		return []any{s, racked, err}
	})
	if solved < 100 {
		t.Errorf("only %d were solved", solved)
	}
}
