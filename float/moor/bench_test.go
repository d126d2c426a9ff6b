package moor_test

import (
	"math"
	"testing"

	"example.org/floewright/float/moor"
)

// One line, warm: chain touching down as the dock swings, started from where it
// hung before. Under 1 µs.
func BenchmarkLineWarm(b *testing.B) {
	for _, c := range []struct {
		name string
		line moor.Line
	}{
		{"chain", moor.Line{Pieces: []moor.Piece{{Length: 12, Weight: 20}}}},
		{"stretching", moor.Line{Pieces: []moor.Piece{{Length: 12, Weight: 20, Stretch: 1e6}}}},
		{"chain weight rope", moor.Line{Pieces: []moor.Piece{{Length: 6, Weight: 20, Clump: 100}, {Length: 6, Weight: 1, Stretch: 5e4}}}},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			var h moor.Hang
			var err error
			i := 0
			for b.Loop() {
				i++
				reach := 11.2 + 0.2*math.Sin(float64(i)*0.1)
				if h, err = c.line.At(reach, 3, h); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// bisected returns the level pull of an unstretchable chain on a bottom, of a length and a
// weight, whose dock end is a rise above it and a reach away: the catenary's formulas, and
// the pull between two bounds halved until nothing changes.
func bisected(length, weight, reach, rise float64) float64 {
	at := func(pull float64) float64 {
		a := pull / weight
		if s := math.Sqrt(rise*rise + 2*rise*a); s < length { // the rest lies
			return length - s + a*math.Acosh(1+rise/a)
		}
		return 2 * a * math.Asinh(math.Sqrt(length*length-rise*rise)/(2*a))
	}
	lo, hi := 0.0, 1e6
	for {
		mid := (lo + hi) / 2
		if !(lo < mid && mid < hi) {
			return mid
		}
		if at(mid) < reach {
			lo = mid
		} else {
			hi = mid
		}
	}
}

// The baseline: the same chain at the same places by plain bisection.
func BenchmarkLineByBisection(b *testing.B) {
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		i++
		if pull := bisected(12, 20, 11.2+0.2*math.Sin(float64(i)*0.1), 3); !(pull > 0) {
			b.Fatal(pull)
		}
	}
}

// TestBisectedBaseline: the baseline computes what the line does.
func TestBisectedBaseline(t *testing.T) {
	line := moor.Line{Pieces: []moor.Piece{{Length: 12, Weight: 20}}}
	var h moor.Hang
	for _, reach := range []float64{9.5, 10.5, 11, 11.3, 11.55, 11.61} {
		var err error
		if h, err = line.At(reach, 3, h); err != nil {
			t.Fatal(err)
		}
		if want := bisected(12, 20, reach, 3); !(math.Abs(h.Pull-want) <= 1e-7*want) {
			t.Errorf("reach %g m: %.12g N, bisected %.12g N", reach, h.Pull, want)
		}
	}
}

// The same, afresh each time.
func BenchmarkLineCold(b *testing.B) {
	line := moor.Line{Pieces: []moor.Piece{{Length: 12, Weight: 20}}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := line.At(11.2, 3, moor.Hang{}); err != nil {
			b.Fatal(err)
		}
	}
}

// The dock to rest, afresh.
func BenchmarkRest(b *testing.B) {
	m := sixLines()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Rest(0, moor.Load{X: 1500, Y: 900}); err != nil {
			b.Fatal(err)
		}
	}
}
