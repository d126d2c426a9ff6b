package frame_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/internal/pinned"
)

// A some draws numbers about those that are given, and counts how often the supports
// that it makes are asked.
type some struct {
	*rand.Rand
	asked *int
}

func (r some) about(x float64) float64 { return x * (0.6 + 0.8*r.Float64()) }

func (r some) support() frame.Support {
	var s frame.Support
	switch r.IntN(4) {
	case 0:
		s = frame.Spring(r.about(5e4))
	case 1:
		s = frame.OneWay(r.about(5e4))
	case 2:
		s = frame.Gap(r.about(0.004), r.about(5e4))
	default:
		return nil
	}
	return func(sink float64) (force, stiffness, energy float64) {
		*r.asked++
		return s(sink)
	}
}

// effort compares how often all supports were asked with how often they were before:
// about, since a machine that rounds otherwise may end a search a step sooner.
func effort(t *testing.T, what string, asked, before int) {
	t.Helper()
	if math.Abs(float64(asked-before)) > 0.002*float64(before) {
		t.Errorf("%s: the supports were asked %d times, before %d times", what, asked, before)
	}
}

func (r some) load(length float64) frame.Load {
	from := length * r.Float64()
	switch r.IntN(4) {
	case 0:
		return frame.Load{From: from, M: r.about(200)}
	case 1:
		return frame.Uniform(from*0.5, from, r.about(300))
	case 2:
		q, end := r.about(100), r.about(400)
		return frame.Load{From: from * 0.3, To: from, Q: q, Rise: end - q}
	}
	return frame.Point(from, r.about(500))
}

func (r some) beam() *frame.Beam {
	b := &frame.Beam{Length: r.about(6), EI: r.about(1e5), GA: r.about(1e6)}
	n := 2 + r.IntN(3)
	for i := range n {
		rest := frame.Rest{At: b.Length * (float64(i) + 0.8*r.Float64()) / float64(n), Support: r.support()}
		if r.IntN(4) == 0 {
			rest.Settlement = r.about(0.003)
		}
		rest.Clamped = r.IntN(6) == 0
		b.Rests = append(b.Rests, rest)
	}
	for range r.IntN(n - 1) {
		b.Hinges = append(b.Hinges, b.Length*(0.05+0.9*r.Float64()))
	}
	for range 1 + r.IntN(3) {
		b.Loads = append(b.Loads, r.load(b.Length))
	}
	return b
}

// TestPinnedBeams compares what invented beams feel, and how those that nothing holds
// move, with what it was before.
func TestPinnedBeams(t *testing.T) {
	pinned.OneMachine(t)
	solved, asked := 0, 0
	pinned.Check(t, "beams", 240, func(seeded *rand.Rand) []any {
		r := some{seeded, &asked}
		b := r.beam()
		l, err := b.Solve()
		if err != nil {
			return []any{err.Error()}
		}
		solved++
		out := []any{l, l.Extremes(), l.ExtremesWithin(0.3*b.Length, 0.7*b.Length), l.At(0.4 * b.Length)}
		cases, err := b.Patterns(r.about(500))
		if err != nil {
			return append(out, err.Error())
		}
		e, err := b.Envelope(cases, 0.25*b.Length, 0.6*b.Length)
		out = append(out, len(cases), e, err)
		if solved%6 == 0 {
			e, err := b.Walk([]frame.Load{frame.Point(0, r.about(400)), frame.Uniform(0.3, r.about(1.2), r.about(300))}, b.Length/7, 0.3*b.Length)
			if err != nil {
				return append(out, err.Error())
			}
			return append(out, e.Push, e.Stations, e.Sag.Moment, e.Hog.Moment, e.Shear.Shear, e.Up.Deflection, e.Down.Deflection)
		}
		return out
	})
	if solved < 120 {
		t.Errorf("only %d were solved", solved)
	}
	effort(t, "beams", asked, 90639)
}

// TestPinnedGrillages does the same for frames.
func TestPinnedGrillages(t *testing.T) {
	pinned.OneMachine(t)
	solved, asked, again := 0, 0, 0
	pinned.Check(t, "grillages", 240, func(seeded *rand.Rand) []any {
		r := some{seeded, &asked}
		g := &frame.Grillage{}
		cols, rows := 2+r.IntN(2), 2+r.IntN(2)
		skew := 0.3 * r.NormFloat64()
		for i := range cols {
			for j := range rows {
				x, y := 2.1*float64(i)*(1+0.1*float64(j)), 1.7*float64(j)
				g.Nodes = append(g.Nodes, [2]float64{x + skew*y, y - 0.2*x})
			}
		}
		join := func(i, j int) {
			m := frame.Member{I: i, J: j, EI: r.about(2e5), GJ: r.about(3e3), HingeI: r.IntN(6) == 0, HingeJ: r.IntN(6) == 0}
			if r.IntN(3) == 0 {
				m.GA = r.about(1e6)
			}
			if r.IntN(4) == 0 {
				m.GJ, m.Untwist = 0, true
			}
			if r.IntN(3) == 0 {
				m.Loads = append(m.Loads, r.load(1.5))
			}
			g.Members = append(g.Members, m)
		}
		for i := range cols {
			for j := range rows {
				n := i*rows + j
				if j+1 < rows {
					join(n, n+1)
				}
				if i+1 < cols {
					join(n, n+rows)
				}
			}
		}
		lacking := r.IntN(5) == 0
		for n := range g.Nodes {
			if lacking && n > 1+r.IntN(2) {
				break
			}
			s := frame.Seat{Nodes: []int{n}, Support: r.support(), Level: 0.01 * r.NormFloat64()}
			if r.IntN(3) == 0 {
				s.Heights = [2]float64{-r.about(0.3), -r.about(0.4)}
			}
			if n > 0 && r.IntN(6) == 0 {
				s.Nodes, s.Support = []int{n, n - 1}, frame.Spring(r.about(4e4))
			}
			s.Clamped = len(s.Nodes) == 1 && r.IntN(9) == 0
			g.Seats = append(g.Seats, s)
		}
		for range g.Nodes {
			g.Forces = append(g.Forces, [3]float64{-r.about(300), r.about(20), r.about(-30)})
		}
		g.Weights = []frame.Weight{{Node: 1, Force: r.about(400), Height: r.about(0.9)}}
		s, err := g.Solve()
		if err != nil {
			return []any{err.Error()}
		}
		solved++
		before := asked
		g.Weights[0].Force *= 1.02
		s2, err := g.SolveFrom(s)
		again += asked - before
		asked = before
		return []any{s, s2, err}
	})
	if solved < 120 {
		t.Errorf("only %d were solved", solved)
	}
	effort(t, "grillages", asked, 4795)
	effort(t, "grillages from near", again, 1494)
}
