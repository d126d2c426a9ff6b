package rack_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

// known fails unless the error is one that the package promises.
func known(t *testing.T, err error) {
	t.Helper()
	var bad *measure.Error
	if !errors.As(err, &bad) && !errors.Is(err, rack.ErrMechanism) && !errors.Is(err, rack.ErrUnsettled) && !errors.Is(err, rack.ErrImbalance) {
		t.Fatalf("an error of no known kind: %v", err)
	}
}

// FuzzSolve takes any numbers for a panel with a brace and a board: the answer is
// an error of a known kind, or finite forces that balance.
func FuzzSolve(f *testing.F) {
	nan := math.NaN()
	f.Add(3.0, 2.0, 2e7, 1e4, 0.0, 0.0, 2e6, 2e6, 1.2, 0.08, 1.5e6, 0.0, inf, inf, 0.0, 1.0, 3.0, 50.0, -90.0, 500.0, uint8(0))
	f.Add(3.0, 2.0, 2e7, 1e4, 1e6, 5e3, 2e6, 0.0, 1.2, 0.08, nan, 0.3, 1e5, 1e5, 0.0, 1.0, 0.0, 50.0, -90.0, 500.0, uint8(1))
	f.Add(0.5, 9.0, 1e5, 1e2, 0.0, nan, nan, nan, 7.0, 0.3, 1e4, 2.0, 1e5, 0.0, 0.0, 0.0, 0.5, 1e3, 1e3, -70.0, uint8(2))
	f.Add(1e-3, 1e5, 1.0, 1e-3, 1.0, 1e-3, 1.0, 1e11, 1e-3, 0.0, 1.0, 0.0, 1.0, 1.0, 1e-3, 0.0, 1e-3, 1e9, 1e9, 1e9, uint8(3))
	f.Add(3.0, 2.0, 1e12, 1e12, 1e12, 1e12, 1e11, 1.0, 1.0, 0.08, 1e11, 1.0, 1.0, 1e11, 1e12, 0.0, 3.0, 1.0, 1.0, 1.0, uint8(9))
	f.Fuzz(func(t *testing.T, w, h, ea, ei, ga, turn, along, across, y, spread, slip, angle, hold, sideways, twist, from, to, q, r, p float64, how uint8) {
		end := rack.End{Turn: turn, Along: along, Across: across}
		fr := &rack.Frame{Nodes: [][2]float64{{0, 0}, {w, 0}, {w, h}, {0, h}, {w / 2, 0}}}
		for _, n := range [][]int{{0, 4, 1}, {1, 2}, {2, 3}, {3, 0}, {0, 2}} {
			fr.Members = append(fr.Members, rack.Member{Nodes: n, EA: ea, EI: ei, GA: ga, Ends: [2]rack.End{end, end}})
		}
		fr.Members[0].Loads = []rack.Load{{From: from, To: to, Along: q, Across: r, AlongRise: -q - q, AcrossRise: q - r}}
		fr.Members[2].Loads = []rack.Load{{From: from, Along: p, Across: q, Couple: r}}
		fr.Forces = []rack.Force{{Node: 3, X: p, Y: q}}
		switch how % 3 {
		case 0:
			fr.Holds = []rack.Hold{{Node: 0, Angle: angle, Along: hold, Across: sideways, Turn: twist}, {Node: 1, Angle: angle, Along: 1e5, Across: 1e5}}
		case 1:
			fr.Drag = rack.Drag{Members: []float64{1, 0, 0, 0, 1}, Nodes: []float64{0, 0, 1, 1, 0}}
		case 2:
			fr.Holds = []rack.Hold{{Node: 0, Along: 1e6, Across: 1e6}, {Node: 2, Angle: angle, Along: hold, Line: true}, {Node: 3, Angle: -angle, Along: 1e5, Line: true}, {Node: 1, Turn: 1e4, Across: 1e3}}
		}
		if how&16 != 0 {
			b, err := fr.Lay(rack.Board{From: [2]float64{0, y}, To: [2]float64{w, y}, EA: ea, EI: ei}, spread, slip)
			if err != nil {
				known(t, err)
				return
			}
			if len(b.Screws) > 0 {
				fr.Boards = append(fr.Boards, b)
			}
		}
		s, err := fr.Solve()
		if err != nil {
			known(t, err)
			return
		}
		if !(s.Residual <= 1e-6) {
			t.Errorf("residual %g", s.Residual)
		}
		size := math.Abs(p) + (math.Abs(q)+math.Abs(r))*(1+w+h)
		for _, j := range s.Joints {
			for _, b := range []rack.Between{j.Axial, j.Across, j.Couple} {
				if !(b.Least <= b.Most) || math.IsInf(b.Least, 0) || math.IsInf(b.Most, 0) {
					t.Fatalf("%s: %v", j.Place, b)
				}
				size = math.Max(size, math.Abs(b.Peak()))
			}
		}
		x, yy, _, _ := total(fr)
		if len(fr.Holds) == 0 {
			x, yy = x-s.Imbalance.X, yy-s.Imbalance.Y
		}
		for i, hd := range fr.Holds {
			g := s.Reactions[i]
			if !g.Along.Sure() || !g.Across.Sure() {
				return
			}
			size = math.Max(size, math.Max(math.Abs(g.Along.Most), math.Abs(g.Across.Most)))
			sin, cos := math.Sincos(hd.Angle)
			x += g.Along.Most*cos - g.Across.Most*sin
			yy += g.Along.Most*sin + g.Across.Most*cos
		}
		if !(math.Abs(x) <= 1e-4*size && math.Abs(yy) <= 1e-4*size) {
			t.Errorf("%g N and %g N left over, of %g N", x, yy, size)
		}
		_ = s.String()
	})
}

// FuzzLay lays a board anywhere: each crossing has its two screws on the board's
// and the member's middle lines, the spread apart across the board.
func FuzzLay(f *testing.F) {
	f.Add(0.0, 1.0, 3.0, 1.0, 0.08)
	f.Add(-1.0, 0.2, 4.0, 1.7, 0.1)
	f.Add(1.5, -1.0, 1.5, 3.0, 0.0)
	f.Add(0.0, 2.0, 3.0, 2.0, 0.05)
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, spread float64) {
		fr := panel()
		b, err := fr.Lay(rack.Board{From: [2]float64{x1, y1}, To: [2]float64{x2, y2}, EA: 1e7, EI: 1e4}, spread, 1e6)
		if err != nil {
			known(t, err)
			return
		}
		l := math.Hypot(x2-x1, y2-y1)
		off := func(s rack.Screw) float64 { return ((s.At[1]-y1)*(x2-x1) - (s.At[0]-x1)*(y2-y1)) / l }
		for i, s := range b.Screws {
			n := fr.Members[s.Member].Nodes
			a, c := fr.Nodes[n[0]], fr.Nodes[n[1]]
			if d := ((s.At[1]-a[1])*(c[0]-a[0]) - (s.At[0]-a[0])*(c[1]-a[1])) / length(fr, s.Member); !(math.Abs(d) < 1e-6) {
				t.Errorf("a screw %g m beside member %d", d, s.Member)
			}
			if spread > 0 && i%2 == 1 && !(math.Abs(math.Abs(off(s)-off(b.Screws[i-1]))-spread) < 1e-6*(1+l)) {
				t.Errorf("screws %g m apart across the board, want %g m", off(s)-off(b.Screws[i-1]), spread)
			}
		}
		fr.Boards = []rack.Board{b}
		if _, err := fr.Solve(); err != nil {
			known(t, err)
		}
	})
}

// FuzzRandom solves random frames of all kinds: forces balance and nothing is
// exceeded.
func FuzzRandom(f *testing.F) {
	f.Add(uint64(1), true)
	f.Add(uint64(2), false)
	f.Add(uint64(910), true) // two boards cross a member a millimetre apart
	f.Fuzz(func(t *testing.T, seed uint64, held bool) {
		r := rand.New(rand.NewPCG(seed, 5))
		fr := randomFrame(r, held)
		s, err := fr.Solve()
		if err != nil {
			known(t, err)
			return
		}
		force, _ := largest(s)
		if !(s.Residual <= 1e-6) || math.IsNaN(force) {
			t.Errorf("residual %g, force %g", s.Residual, force)
		}
		m := solve(t, mirrored(fr))
		for i := range s.Joints {
			near(t, "axial in the mirror", m.Joints[i].Axial.Most, s.Joints[i].Axial.Most, 1e-6*force)
		}
	})
}

// FuzzLine asks a solved member anywhere.
func FuzzLine(f *testing.F) {
	f.Add(0.5, uint8(0), uint8(1), uint8(2), uint8(3))
	f.Add(math.NaN(), uint8(9), uint8(1), uint8(1), uint8(3))
	f.Add(-1.0, uint8(0), uint8(3), uint8(2), uint8(1))
	s, err := panel().Solve()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, x float64, a, b, c, d uint8) {
		l := &s.Lines[4]
		at, before := l.At(x), l.Before(x)
		if math.IsNaN(x) != math.IsNaN(at.Axial) || math.IsNaN(x) != math.IsNaN(before.Axial) {
			t.Errorf("at %g: %v, %v", x, at, before)
		}
		if along, left, turn, err := l.Moved(x); err != nil {
			known(t, err)
		} else if math.IsNaN(along + left + turn) {
			t.Errorf("moved %g, %g, %g at %g", along, left, turn, x)
		}
		r, err := s.Racking([4]int{int(a), int(b), int(c), int(d)})
		if err != nil {
			known(t, err)
			return
		}
		// Nothing here goes further out of square than its nodes move.
		if !(math.Abs(r.Out) < 0.01 && math.Abs(r.Shear) < 0.01) {
			t.Errorf("%+v", r)
		}
	})
}
