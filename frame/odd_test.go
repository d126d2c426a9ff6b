package frame_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// On many spans there is a pattern for each inner rest that loads both spans beside it
// and every other span from there on, and its complement.
func TestPatternsOfManySpans(t *testing.T) {
	const n = 14
	b := &frame.Beam{Length: n, EI: 1e5}
	for i := range n + 1 {
		b.Rests = append(b.Rests, frame.Rest{At: float64(i)})
	}
	cases, err := b.Patterns(100)
	if err != nil {
		t.Fatal(err)
	}
	var seen []string // the numbers of cases stand in results: their order stays
	for _, c := range cases {
		loaded := [n]byte{}
		for i := range loaded {
			loaded[i] = '.'
		}
		for _, l := range c {
			for x := l.From + 0.5; x < l.To; x++ {
				loaded[int(x)] = '#'
			}
		}
		seen = append(seen, string(loaded[:]))
	}
	for k := 1; k < n; k++ {
		near, other := "", ""
		for i := range n {
			d := i - k
			if i < k {
				d = k - 1 - i
			}
			near += string("#."[d%2])
			other += string(".#"[d%2])
		}
		if i := slices.Index(seen, near); i < 0 || i+1 == len(seen) || seen[i+1] != other {
			t.Errorf("rest %d: no %s or not %s after it", k, near, other)
		}
	}
}

// Nodes in a row, whichever way it runs, turn about the one that is held, though where
// the last one hinges it does not turn itself.
func TestMechanismInARow(t *testing.T) {
	for _, to := range [][2]float64{{2, 0}, {0, 2}, {1.2, 1.6}, {-1.6, 1.2}} {
		g := &frame.Grillage{
			Nodes: [][2]float64{{1, 3}, {1 + to[0]/2, 3 + to[1]/2}, {1 + to[0], 3 + to[1]}},
			Members: []frame.Member{
				{I: 0, J: 1, EI: 1e5, HingeI: true, Untwist: true, Loads: []frame.Load{frame.Point(1, 100)}},
				{I: 1, J: 2, EI: 1e5, HingeJ: true, Untwist: true},
			},
			Seats: []frame.Seat{{Nodes: []int{0}}},
		}
		_, err := g.Solve()
		var m *frame.MechanismError
		if !errors.As(err, &m) {
			t.Fatal(err)
		}
		if want := "turns about a line through (1.000, 3.000) m"; m.Motion != want || math.Hypot(m.X-1-to[0], m.Y-3-to[1]) > 1e-12 {
			t.Errorf("%v: %v", to, m)
		}
	}
}

// The step of a walk has its least and names it.
func TestWalkStep(t *testing.T) {
	b := &frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 4}}}
	group := []frame.Load{frame.Point(0, 100), frame.Point(1, 100)}
	_, err := b.Walk(group, 1e-9)
	var e *measure.Error
	if !errors.As(err, &e) || e.Range.Lo <= 0 {
		t.Fatal(err)
	}
	// The group goes from 1 m before the beam to its end.
	if steps := 5 / e.Range.Lo; math.Abs(steps-math.Round(steps)) > 1e-5 {
		t.Errorf("%g steps of %g m", steps, e.Range.Lo)
	}
	if _, err := b.Walk(group, 0.9*e.Range.Lo); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
}

// A load closer to a rest than a ten-millionth of the length stands on it, on a beam of
// any length.
func TestPlacesAreOne(t *testing.T) {
	for _, length := range []float64{0.1, 100} {
		for _, c := range []struct {
			apart float64
			want  int
		}{{0.5e-7, 2}, {3e-7, 3}} {
			b := &frame.Beam{
				Length: length, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 0.4 * length}, {At: length}},
				Loads: []frame.Load{frame.Point((0.4+c.apart)*length, 20)},
			}
			l, err := b.Solve()
			if err != nil {
				t.Fatal(err)
			}
			if len(l.Pieces) != c.want {
				t.Errorf("%g m, load and rest %g of it apart: %d pieces, want %d", length, c.apart, len(l.Pieces), c.want)
			}
		}
	}
}

// Two rigid rests at one place share their force in no way, the first ones too.
func TestRigidRestsAtOnePlace(t *testing.T) {
	b := &frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 0}, {At: 4}}}
	if _, err := b.Solve(); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
}

// The text of a solution names the member that bends most, the first one too, and of
// nodes as low as each other the first.
func TestSolutionNames(t *testing.T) {
	for most := range 2 {
		g := &frame.Grillage{Nodes: [][2]float64{{0, 0}, {4, 0}, {4, 3}}, Names: []string{"a", "b", "c"}}
		for i := range 2 {
			m := frame.Member{I: i, J: i + 1, EI: 1e5, Untwist: true}
			if i == most {
				m.Loads = []frame.Load{frame.Uniform(0, 3, 500)}
			}
			g.Members = append(g.Members, m)
		}
		for n := range 3 {
			g.Seats = append(g.Seats, frame.Seat{Nodes: []int{n}})
		}
		s, err := g.Solve()
		if err != nil {
			t.Fatal(err)
		}
		if text := s.String(); !strings.Contains(text, fmt.Sprintf("largest moment: member %d, ", most)) || !strings.Contains(text, "highest: node a, 0.00 mm") {
			t.Error(text)
		}
	}
}

// A raft on springs at its corners, b out from its middle, tips over under a weight at
// height h from W h = Σ k b² on: the moment of statics. Short of that it stands, and
// tilts W e/(Σ k b² - W h) under an eccentricity e.
func TestCapsizesAtItsStiffness(t *testing.T) {
	const k, b = 4000.0, 1.2
	for _, share := range []float64{0.2, 0.7, 0.97, 0.999, 1.001, 1.03, 2} {
		const force = 800.0
		g := &frame.Grillage{Nodes: [][2]float64{{-3, -b}, {3, -b}, {3, b}, {-3, b}, {0, -b}, {0, b}}}
		for _, ends := range [][2]int{{0, 4}, {4, 1}, {3, 5}, {5, 2}, {0, 3}, {1, 2}, {4, 5}} {
			g.Members = append(g.Members, frame.Member{I: ends[0], J: ends[1], EI: 1e13, GJ: 1e13})
		}
		for n := range 4 {
			g.Seats = append(g.Seats, frame.Seat{Nodes: []int{n}, Support: frame.Spring(k)})
		}
		h := share * 4 * k * b * b / force
		g.Weights = []frame.Weight{{Node: 4, Force: force / 2 * 1.0002, Height: h}, {Node: 5, Force: force / 2 * 0.9998, Height: h}}
		s, err := g.Solve()
		if share > 1 {
			if !errors.Is(err, frame.ErrCapsizes) {
				t.Errorf("%g of its stiffness: %v", share, err)
			}
			continue
		}
		if err != nil {
			t.Errorf("%g of its stiffness: %v", share, err)
			continue
		}
		tilt := (s.Move[5][0] - s.Move[4][0]) / (2 * b)
		want := force * 0.0002 * b / (4 * k * b * b * (1 - share))
		if math.Abs(tilt/want-1) > 1e-5 {
			t.Errorf("%g of its stiffness: tilts %g, want %g", share, tilt, want)
		}
	}
}

// Half of the last digit prints with its sign, less than that as nothing.
func TestDiagramSign(t *testing.T) {
	for deflection, want := range map[float64]string{-5e-6: "deflection -0.01 mm", -4.9e-6: "deflection 0.00 mm"} {
		if text := (frame.Diagram{Deflection: deflection}).String(); !strings.HasSuffix(text, want) {
			t.Errorf("%g: %s", deflection, text)
		}
	}
}

// What is left over is a number: nothing where nothing was needed, more where there is.
func TestResidualCounts(t *testing.T) {
	b := &frame.Beam{Length: 3, EI: 1e5, Rests: []frame.Rest{{At: 0}, {At: 3}}}
	l, err := b.Solve()
	if err != nil || l.Residual != 0 {
		t.Errorf("without loads %g, %v", l.Residual, err)
	}
	b.Rests = append(b.Rests, frame.Rest{At: 1.1, Support: frame.Spring(2.7e4)}, frame.Rest{At: 2.3, Support: frame.Spring(3.1e4)})
	some := false
	for n := range 40 {
		b.Loads = []frame.Load{frame.Uniform(0.1*float64(n)/7, 2.9, 100+float64(n)/3)}
		l, err := b.Solve()
		if err != nil || !(l.Residual < 1e-9) {
			t.Fatal(l, err)
		}
		some = some || l.Residual > 0
	}
	if !some {
		t.Error("nothing is ever left over")
	}
}

// A spring under the middle of a simple beam that carries nothing goes down by δ: it
// pulls with δ/(1/k + 1/2k + L³/48EI), the ends on springs alike (beam theory).
func TestSettlesWithoutLoads(t *testing.T) {
	for _, length := range []float64{0.3, 3, 30} {
		const k, ei, down = 2e4, 1e5, 0.004
		b := &frame.Beam{Length: length, EI: ei, Rests: []frame.Rest{
			{At: 0, Support: frame.Spring(k)}, {At: length / 2, Support: frame.Spring(k), Settlement: down}, {At: length, Support: frame.Spring(k)},
		}}
		l, err := b.Solve()
		if err != nil {
			t.Fatal(err)
		}
		want := down / (1/k + 1/(2*k) + length*length*length/(48*ei))
		near(t, "middle", l.Push[1], -want, 1e-9*want)
		near(t, "end", l.Push[0], want/2, 1e-9*want)
	}
}
