package moor_test

import (
	"math"
	"slices"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// oneLine changes a length, a foot, a height and a strength of the invented mooring.
func oneLine(length, foot, height, hold float64, lines uint8) *moor.Mooring {
	m := sixLines()
	m.Ties = m.Ties[:3+int(lines%4)]
	t := &m.Ties[0]
	t.Line.Pieces = slices.Clone(t.Line.Pieces)
	t.Line.Pieces[len(t.Line.Pieces)-1].Length = length
	t.Foot[0] += foot
	t.Height = height
	t.Ground = moor.Rated{Name: "as tested", Hold: hold, Steepest: 1}
	return m
}

// blowing is a load of so many newtons from every direction, with a turn.
func blowing(force, turn float64) moor.Storm {
	return func(θ float64) (moor.Load, error) {
		return moor.Load{X: force * math.Cos(θ), Y: force * math.Sin(θ), Turn: turn * math.Sin(θ)}, nil
	}
}

func seedMoorings(f *testing.F) {
	f.Add(10.0, 0.0, 0.3, 2e4, uint8(3), 800.0, 200.0, 0.0, 0.4)
	f.Add(6.0, 1.0, 0.5, 500.0, uint8(1), 5000.0, 0.0, -0.5, 0.0)
	f.Add(9.0, -3.0, 0.3, 2e4, uint8(0), 1e9, 0.0, 3.0, -3.0)
	f.Add(math.NaN(), math.Inf(1), -1.0, -1.0, uint8(9), math.NaN(), 1e300, math.NaN(), 5e-324)
}

// FuzzSurvey: a survey finds nothing worse in one direction than in all of them, its worst
// check is no better than any, a mooring with a tie lost is told for each tie, and what
// posts pass on is a load.
func FuzzSurvey(f *testing.F) {
	seedMoorings(f)
	f.Fuzz(func(t *testing.T, length, foot, height, hold float64, lines uint8, force, turn, low, high float64) {
		m, storm := oneLine(length, foot, height, hold, lines), blowing(force, turn)
		levels := []float64{low, high}
		s, err := m.Survey(levels, storm, 6)
		if err != nil {
			known(t, err)
			return
		}
		worst := s.Worst()
		for _, c := range s.Checks {
			if c.Verdict() < worst.Verdict() {
				t.Fatalf("%v is worse than %v", c, worst)
			}
		}
		if g := s.Worst("ground"); g.Verdict() < worst.Verdict() || s.Worst("nothing").Name != "" {
			t.Fatalf("%v is worse than the worst, %v", g, worst)
		}
		if !finite(s.Offset, s.Turn) || s.Offset < 0 || s.Turn < 0 {
			t.Fatalf("offset %g, turn %g", s.Offset, s.Turn)
		}
		one, err := storm(2 * math.Pi / 3) // the third of six
		if err != nil {
			t.Fatal(err)
		}
		p, err := m.Rest(low, one)
		if err != nil {
			known(t, err)
			return
		}
		for i, h := range p.Hangs {
			size := 1e-3 + math.Abs(force) + math.Abs(turn) + s.Ties[i].Tension
			if !finite(s.Ties[i].Tension) || h.Tension() > s.Ties[i].Tension+1e-5*size {
				t.Fatalf("%s bears %g N, and %g N in one direction", s.Ties[i].Name, s.Ties[i].Tension, h.Tension())
			}
		}
		lost, err := m.Losses(levels, storm, 4)
		if err != nil {
			known(t, err)
			return
		}
		for i, l := range lost {
			if l.Lost != m.Ties[i].Name || l.Err == nil && (!finite(l.Offset) || len(l.Ties) != len(m.Ties)-1) {
				t.Fatalf("without %s: %+v", m.Ties[i].Name, l)
			}
		}
		m.Posts = []moor.Post{{Name: "hinge", At: [2]float64{-3, 0}, Stiffness: 1e6, Fitting: strong("pin"), Hold: strong("post")}}
		l, err := m.Passed(low, storm, "hinge")(2 * math.Pi / 3)
		if err != nil {
			known(t, err)
			return
		}
		both := l.Plus(one)
		if !finite(l.X, l.Y, l.Turn) || both != one.Plus(l) || both.X != l.X+one.X {
			t.Fatalf("passes on %+v, with the dock's %+v", l, both)
		}
	})
}

// FuzzLevels: bands lie between the levels that were asked for, what must be let go before
// winter is a tie or a post, and lengths that serve hold the storm that they were found
// for.
func FuzzLevels(f *testing.F) {
	seedMoorings(f)
	f.Fuzz(func(t *testing.T, length, foot, height, hold float64, lines uint8, force, turn, low, high float64) {
		m := oneLine(length, foot, height, hold, lines)
		bands, err := m.Bands(low, high)
		if err != nil {
			known(t, err)
		}
		for _, b := range bands {
			if b.Low <= b.High && !(b.Low >= low-1e-9 && b.High <= high+1e-9) || b.Tie == "" {
				t.Fatalf("%+v between %g and %g", b, low, high)
			}
		}
		if loosen, err := m.Winter(low, high); err != nil {
			known(t, err)
		} else if slices.Contains(loosen, "") {
			t.Fatalf("%q", loosen)
		}
		span, offset := math.Abs(foot), 1+math.Abs(turn)
		shortest, longest, found, err := m.Lengths([]float64{low, high}, blowing(force, turn), 3, offset, span)
		if err != nil {
			known(t, err)
			return
		}
		if !found {
			return
		}
		if !(shortest >= -span-1e-9 && longest <= span+1e-9 && shortest <= longest) {
			t.Fatalf("%g to %g within %g", shortest, longest, span)
		}
		for i := range m.Ties {
			l := &m.Ties[i].Line
			l.Pieces = slices.Clone(l.Pieces)
			l.Pieces[len(l.Pieces)-1].Length += (shortest + longest) / 2
		}
		if longest-shortest < span/39 { // between two that serve, close enough to be one stretch
			s, err := m.Survey([]float64{low, high}, blowing(force, turn), 3)
			if err != nil || s.Worst().Verdict() != measure.Holds || s.Offset > offset*(1+1e-6) {
				t.Fatalf("%g to %g: %+v, %v", shortest, longest, s, err)
			}
		}
	})
}
