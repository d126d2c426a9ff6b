package moor_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// The working band of each tie ends where rests found level by level say that
// it goes slack or taut.
func TestBandsBruteForce(t *testing.T) {
	m := fourLines()
	for i := range m.Ties {
		m.Ties[i].Line.Pieces[1].Stretch = 5e4
	}
	const low, high = -2.9, 5.0
	bands, err := m.Bands(low, high)
	if err != nil {
		t.Fatal(err)
	}
	working := func(level float64, i int) bool {
		p, err := m.Rest(level, moor.Load{})
		if err != nil {
			t.Fatal(err)
		}
		return p.Hangs[i].Regime == moor.Touching || p.Hangs[i].Regime == moor.Lifted
	}
	for i, b := range bands {
		if b.Tie != m.Ties[i].Name || b.Below != moor.Slack || b.Above != moor.Taut {
			t.Fatalf("%+v", b)
		}
		const step = 0.005
		first, last := math.NaN(), math.NaN()
		for level := low; level < high; level += step {
			if working(level, i) {
				if math.IsNaN(first) {
					first = level
				}
				last = level
			}
		}
		if math.Abs(b.Low-first) > step || math.Abs(b.High-last) > step {
			t.Errorf("%s works from %g to %g m, by brute force from %g to %g m", b.Tie, b.Low, b.High, first, last)
		}
		if working(b.Low-1e-6, i) || !working(b.Low+1e-6, i) || !working(b.High-1e-6, i) || working(b.High+1e-6, i) {
			t.Errorf("%s: the ends of %+v are not where it changes", b.Tie, b)
		}
	}
	// A rigid line goes taut where it no longer reaches.
	for i := range m.Ties {
		m.Ties[i].Line.Pieces[1].Stretch = 0
	}
	bands, err = m.Bands(-1, 6)
	if err != nil {
		t.Fatal(err)
	}
	far := 6.8 * math.Sqrt2
	if want := math.Sqrt(11*11-far*far) - 3.3; math.Abs(bands[0].High-want) > 1e-6 || bands[0].Above != moor.Taut || bands[0].Low != -1 || bands[0].Below != moor.Touching {
		t.Errorf("%+v, want taut at %g m", bands[0], want)
	}
	// One that is loose everywhere works nowhere.
	for i := range m.Ties {
		m.Ties[i].Line.Pieces[1].Length = 30
	}
	bands, err = m.Bands(-1, 1)
	if err != nil || !(bands[0].Low > bands[0].High) || bands[0].Below != moor.Slack {
		t.Errorf("loose line: %+v, %v", bands, err)
	}
}

// The shortest and longest lines serve, and a little past them none does.
func TestLengthsBruteForce(t *testing.T) {
	m := fourLines()
	levels := []float64{-0.6, 0, 0.4}
	storm := steady(900)
	const offset = 1.3
	short, long, found, err := m.Lengths(levels, storm, 8, offset, 2)
	if err != nil || !found {
		t.Fatal(short, long, found, err)
	}
	serves := func(d float64) bool {
		n := fourLines()
		for i := range n.Ties {
			n.Ties[i].Line.Pieces[1].Length += d
		}
		s, err := n.Survey(levels, storm, 8)
		if err != nil {
			if errors.Is(err, moor.ErrReach) {
				return false
			}
			t.Fatal(err)
		}
		return s.Worst().Verdict() == measure.Holds && s.Offset <= offset
	}
	if !(short < long) || !serves(short) || !serves(long) || serves(short-1e-3) || serves(long+1e-3) {
		t.Errorf("%g (serves: %v, less: %v) to %g m (serves: %v, more: %v)", short, serves(short), serves(short-1e-3), long, serves(long), serves(long+1e-3))
	}
	for d := -2.0; d <= 2; d += 0.1 {
		if want := d >= short && d <= long; serves(d) != want {
			t.Errorf("%g m longer serves: %v, though %g to %g m do", d, serves(d), short, long)
		}
	}
	// Where all lengths that are looked at serve, the band is the whole of the span.
	span, middle := (long-short)/4, fourLines()
	for i := range middle.Ties {
		middle.Ties[i].Line.Pieces[1].Length += (short + long) / 2
	}
	if a, b, found, err := middle.Lengths(levels, storm, 8, offset, span); err != nil || !found || a != -span || b != span {
		t.Errorf("%g to %g m of %g, %v, %v", a, b, span, found, err)
	}
	if _, _, found, err := m.Lengths(levels, storm, 8, 1e-3, 2); found || err != nil {
		t.Errorf("no dock stays within a millimetre: %v, %v", found, err)
	}
	m.Ties[1].Ground = nil
	if _, _, _, err := m.Lengths(levels, storm, 8, offset, 2); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("a tie to nothing: %v", err)
	}
}

func TestWinter(t *testing.T) {
	m := fourLines()
	m.Posts = []moor.Post{{Name: "hinge pin", At: [2]float64{-3, 0}, Stiffness: 1e5}}
	for i := range m.Ties {
		m.Ties[i].Line.Pieces[1].Stretch = 0
	}
	list, err := m.Winter(-0.5, 3)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(list, "\n")
	for _, want := range []string{"north-east: taut from", "hinge pin: unpin", "lengthen as the water falls"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q does not say %q", text, want)
		}
	}
	// A shore line from a tree goes taut as the water falls.
	tree := moor.Mooring{Ties: []moor.Tie{{
		Name: "tree", Line: moor.Line{Shore: true, Pieces: []moor.Piece{{Length: 6.2, Weight: 2}}},
		Foot: [2]float64{-6, 0}, FootZ: 1.5, Height: 0.3,
	}}}
	list, err = tree.Winter(-2, 0)
	if err == nil && !strings.Contains(strings.Join(list, "\n"), "over the datum down: slacken it") {
		t.Errorf("%q", list)
	} else if err != nil && !errors.Is(err, moor.ErrAdrift) {
		t.Error(err)
	}
}

// A dock finds rest whatever is thrown at it: lines rigid and stretching, some
// lost, pushed anywhere.
func TestRestRobust(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 1))
	adrift := 0
	for i := range 600 {
		m := sixLines()
		for k := range m.Ties {
			if rng.IntN(2) == 0 {
				m.Ties[k].Line.Pieces[0].Stretch = 0
				m.Ties[k].Line.Pieces[len(m.Ties[k].Line.Pieces)-1].Stretch = 0
			}
		}
		rng.Shuffle(len(m.Ties), func(a, b int) { m.Ties[a], m.Ties[b] = m.Ties[b], m.Ties[a] })
		m.Ties = m.Ties[:1+rng.IntN(6)]
		size := math.Min(math.Exp(2*rng.NormFloat64()+6), 3e4)
		load := moor.Load{X: size * rng.NormFloat64(), Y: size * rng.NormFloat64(), Turn: size * rng.NormFloat64()}
		if len(m.Ties) < 3 {
			load.Turn = 0 // two lines take a moment only up to their pulls times the dock
		}
		p, err := m.Rest(0.3*rng.NormFloat64(), load)
		if err != nil {
			adrift++
			t.Logf("case %d, %d ties, %+v: %v", i, len(m.Ties), load, err)
			continue
		}
		f, _ := m.Forces(p)
		seen := load.Turned(-p.Turn)
		x, y := seen.X, seen.Y
		for _, f := range f {
			x, y = x+f.X, y+f.Y
		}
		if math.Hypot(x, y) > 1e-5*(math.Hypot(load.X, load.Y)+1) {
			t.Errorf("case %d: %g N left", i, math.Hypot(x, y))
		}
	}
	if adrift > 0 {
		t.Errorf("%d of 600 find no rest", adrift)
	}
}
