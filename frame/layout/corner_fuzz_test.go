package layout_test

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber/measure"
)

// FuzzCorner: a square corner's third side is the diagonal, the three angles of a
// triangle are a half turn, and a longer third side opens the corner.
func FuzzCorner(f *testing.F) {
	f.Add(3.0, 4.0, 5.0)
	f.Add(12.0, 16.0, 20.01)
	f.Add(1e-3, 1000.0, 1000.0)
	f.Add(5e-324, math.NaN(), -1.0)
	f.Fuzz(func(t *testing.T, a, b, c float64) {
		if d, err := layout.Diagonal(a, b); err != nil {
			ours(t, err)
		} else {
			if !(d >= math.Max(a, b) && d <= a+b) {
				t.Fatalf("%g and %g: %g", a, b, d)
			}
			if γ, err := layout.Corner(a, b, d); d < 1000 && math.Min(a, b) > 1e-6*math.Max(a, b) && (err != nil || math.Abs(γ-math.Pi/2) > 1e-9) {
				t.Fatalf("%g and %g with the diagonal: %g, %v", a, b, γ, err)
			}
		}
		γ, err := layout.Corner(a, b, c)
		if err != nil {
			ours(t, err)
			return
		}
		if !(γ >= 0 && γ <= math.Pi) {
			t.Fatalf("%g", γ)
		}
		α, err1 := layout.Corner(b, c, a)
		β, err2 := layout.Corner(c, a, b)
		if err1 == nil && err2 == nil && math.Abs(α+β+γ-math.Pi) > 1e-6 {
			t.Fatalf("%g, %g and %g of %g, %g, %g", α, β, γ, a, b, c)
		}
		if wider, err := layout.Corner(a, b, c*1.001); err == nil && wider < γ {
			t.Fatalf("%g, with a longer third side %g", γ, wider)
		}
	})
}

// FuzzArea: the areas of all pieces are the deck's, and a piece that is none has none.
func FuzzArea(f *testing.F) {
	f.Add(2.0193, 2.4384, 3)
	f.Add(1.0, 1.0, -1)
	f.Add(math.NaN(), 5e-324, math.MaxInt)
	f.Fuzz(func(t *testing.T, length, width float64, piece int) {
		d := bays(t)
		d.Decks[0].Max = layout.Point{X: length, Y: width}
		l, err := layout.New(d)
		if err != nil {
			ours(t, err)
			return
		}
		sum := 0.0
		for i := range l.Drawing.Pieces {
			a := l.Area(i)
			if !(a >= 0) {
				t.Fatalf("%g m² on piece %d", a, i)
			}
			sum += a
		}
		if piece >= len(l.Drawing.Pieces) || piece < 0 {
			if a := l.Area(piece); a != 0 {
				t.Fatalf("%g m² on no piece", a)
			}
		}
		if sum > length*width*(1+1e-9) || length <= 79.5*in && width <= 96*in && length > 27*in && math.Abs(sum-length*width) > 1e-6 {
			t.Fatalf("%g m² on the pieces, %g m of %g m", sum, length, width)
		}
	})
}

// FuzzConflict: whatever conflict prints its parts on one line, in either system.
func FuzzConflict(f *testing.F) {
	f.Add(3, "joist 1", "drum A", 0.02, 0.01, 0.03, "it is", 0)
	f.Add(-1, "", "\x00", math.NaN(), math.Inf(1), -1.0, "", 9)
	f.Fuzz(func(t *testing.T, kind int, a, b string, missing, has, wants float64, why string, system int) {
		c := layout.Conflict{Kind: layout.Fault(kind), A: a, B: b, Missing: missing, Has: has, Wants: wants, Why: why}
		text := c.Format(measure.System(system))
		if !strings.Contains(text, a) || !strings.Contains(text, b) || !strings.Contains(text, why) || strings.Count(text, "\n") > strings.Count(a+b+why, "\n") {
			t.Fatalf("%+v prints as %q", c, text)
		}
	})
}
