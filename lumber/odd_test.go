package lumber_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// One past the last property is none.
func TestPropertyPastTheLast(t *testing.T) {
	p := lumber.Property(0)
	for p.String() != "no property" {
		if p++; p > 100 {
			t.Fatal("no end of properties")
		}
	}
	if p != lumber.Emin+1 {
		t.Errorf("%d properties", p)
	}
	if _, err := lumber.Temperature(p, 20, false); !errors.Is(err, measure.ErrName) {
		t.Error(err)
	}
}

// A piece 4-1/2 in. thick is a timber, of nominal 5 in. (NDS 2018 supplement, 4.1.1).
func TestTimberFromFourAndAHalf(t *testing.T) {
	thick := lumber.Section{Width: 4.5 * measure.Inch, Depth: 5.5 * measure.Inch}
	post, err := lumber.Size("6x6")
	if err != nil {
		t.Fatal(err)
	}
	a, err1 := lumber.Lookup("Southern Pine", "No.2", thick)
	b, err2 := lumber.Lookup("Southern Pine", "No.2", post)
	if err1 != nil || err2 != nil || a.Table != b.Table {
		t.Errorf("%v %v, %v %v", a.Table, err1, b.Table, err2)
	}
}

// Green lumber of 6/4 is 1-9/32 in. thick (PS 20-20, table 3).
func TestGreenSixQuarter(t *testing.T) {
	s, err := lumber.GreenSize("6/4x6")
	if err != nil {
		t.Fatal(err)
	}
	near(t, "thickness", s.Width, (1+9.0/32)*measure.Inch)
}

// Beams and stringers on the wide face: Fb 0.86 and E 1.00 of Select Structural, 0.74 and
// 0.90 of No.1, 1.00 of No.2 (NDS 2018 supplement, table 4D, flat use factor).
func TestFlatUseOfStringers(t *testing.T) {
	s, err := lumber.Size("6x12")
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string][3]float64{"Select Structural": {0.86, 1, 1}, "No.1": {0.74, 0.9, 0.9}, "No.2": {1, 1, 1}} {
		g, err := lumber.Lookup("Douglas Fir-Larch", name, s)
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range []lumber.Property{lumber.Fb, lumber.E, lumber.Emin} {
			if f, err := lumber.FlatUse(p, g, lumber.Section{Width: s.Depth, Depth: s.Width}); err != nil || f.Value != want[i] {
				t.Errorf("%s %v: %v, %v", name, p, f, err)
			}
		}
	}
}

// Of two grades on a stamp the lower counts, whichever comes first.
func TestStampTakesTheLower(t *testing.T) {
	for _, text := range []string{"No.1 No.2 SYP", "No.2 No.1 SYP"} {
		s, err := lumber.ReadStamp(text)
		if err != nil || s.Grade != "No.2" {
			t.Errorf("%q: %+v, %v", text, s, err)
		}
	}
}

// A joint five depths from the end is no longer near it (NDS 3.4.3.3).
func TestJointFiveDepthsFromTheEnd(t *testing.T) {
	size, err := lumber.Size("2x8")
	if err != nil {
		t.Fatal(err)
	}
	g, err := lumber.Lookup("Southern Pine", "No.2", size)
	if err != nil {
		t.Fatal(err)
	}
	m := lumber.Member{Section: size, Grade: g, Length: 3}
	for share, want := range map[float64]string{5: "shear at the joint", 4.99: "shear at a joint near the end"} {
		if c, err := m.CheckJoint(0.7*size.Depth, share*size.Depth, 900, lumber.TenYears); err != nil || c.Name != want {
			t.Errorf("%g depths: %q, %v", share, c.Name, err)
		}
	}
	// A beam too slender for CL lists no factor without a name.
	m.Length = 30
	d, err := m.Adjusted(lumber.TenYears)
	if err != nil {
		t.Fatal(err)
	}
	if d.Fb.Err == nil {
		t.Errorf("no error of a beam 30 m long: %+v", d.Fb)
	}
	seen := map[string]bool{}
	for _, f := range d.Fb.Factors {
		if f.Symbol == "" || seen[f.Symbol] {
			t.Errorf("%+v", d.Fb.Factors)
		}
		seen[f.Symbol] = true
	}
}

// A damp bound of nothing is one, as of a board that was never weighed damp.
func TestWeighedBounds(t *testing.T) {
	w := lumber.Weights{Light: 10, Soaked: 20}
	if got, err := w.Weighed(12); err != nil || got.Bought != 12 {
		t.Errorf("%+v, %v", got, err)
	}
	if _, err := (lumber.Weights{Light: 10, Damp: 12}).Weighed(11); !errors.Is(err, measure.ErrUnknown) {
		t.Error(err)
	}
}

// The weakest of several species is no wider than the narrowest of those that have a
// greatest width, whichever is named first.
func TestWeakestIsAsWide(t *testing.T) {
	size, err := lumber.Size("2x8")
	if err != nil {
		t.Fatal(err)
	}
	pine, err := lumber.Lookup("Southern Pine", "No.2", size)
	if err != nil || pine.Widest == 0 {
		t.Fatal(pine.Widest, err)
	}
	for _, species := range [][]string{{"Southern Pine", "Douglas Fir-Larch"}, {"Douglas Fir-Larch", "Southern Pine"}} {
		if g, err := lumber.Weakest("No.2", size, species...); err != nil || g.Widest != pine.Widest {
			t.Errorf("%v: %g m, want %g m, %v", species, g.Widest, pine.Widest, err)
		}
	}
}

// A piece may be all of its board, and a board may cost a cent.
func TestCutWholeBoards(t *testing.T) {
	saw := lumber.Saw{}
	wants := []lumber.Want{{Name: "post", Section: "4x4", Length: 2, Count: 3}}
	stock := []lumber.Stock{{Section: "4x4", Length: 2, Price: 0.01}}
	c, err := lumber.Cut(context.Background(), wants, stock, saw)
	if err != nil || len(c.Boards) != 3 {
		t.Fatalf("%+v, %v", c, err)
	}
	stock[0].Price = 0.004
	if _, err := lumber.Cut(context.Background(), wants, stock, saw); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
}

// TestPinnedRows compares the rows of boards of invented decks with what they were before.
func TestPinnedRows(t *testing.T) {
	laid := 0
	pinned.Check(t, "rows", 200, func(r *rand.Rand) []any {
		d := lumber.Deck{
			Board: []string{"5/4x6", "2x6"}[r.IntN(2)], Length: pinned.Tenths(r, 2, 8), Width: pinned.Tenths(r, 1.5, 3.5),
			Face: 0.14, Gap: 0.006 * float64(r.IntN(2)), Least: 0.05, Longest: []float64{0, 1.9, 2.4, 3.6, 4.8}[r.IntN(5)],
		}
		spacing := pinned.Tenths(r, 0.3, 0.5)
		for x := 0.0; x < d.Length; x += spacing {
			d.Joists = append(d.Joists, x)
		}
		d.Joists = append(d.Joists, d.Length)
		if r.IntN(2) == 0 { // joists where two boards meet, as long as some board
			d.Longest = spacing * float64(2+r.IntN(5))
		}
		rows, err := d.Rows()
		if err != nil {
			return []any{err.Error()}
		}
		laid++
		return []any{rows}
	})
	if laid < 100 {
		t.Errorf("only %d were laid", laid)
	}
}

// A modulus of next to nothing is refused, not divided by.
func TestBoardOfNoStiffness(t *testing.T) {
	b := lumber.Board{Section: lumber.Section{Width: 0.14, Depth: 0.025}}
	if _, sag, err := b.Under(0, 5e-324, 1, false, 5e-324); !errors.Is(err, measure.ErrRange) {
		t.Errorf("%g, %v", sag, err)
	}
	if _, sag, err := b.Under(900, 0.4, 1, false, 1); err != nil || !(sag > 0) {
		t.Errorf("%g, %v", sag, err)
	}
}

// A joist that bears nothing, or boards a hair apart, has no span that is a number.
func TestSpanUnderNothing(t *testing.T) {
	m := piece(t, "hf", "2", "2x8")
	for _, x := range [][2]float64{{1.5e-323, 30}, {0.4, 5e-324}, {0, 1000}, {0.4, 0}} {
		if span, _, err := m.SpanWithin(360, x[0], 0, x[1]); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%g m apart under %g Pa: %g m, %v", x[0], x[1], span, err)
		}
		if span, _, err := m.BeamSpan(math.Min(x[0], 1e-300), 0, 0, x[1]); !errors.Is(err, measure.ErrRange) {
			t.Errorf("joists of next to nothing under %g Pa: %g m, %v", x[1], span, err)
		}
	}
	if span, _, err := m.BeamSpan(3, 0, 0, 5e-324); !errors.Is(err, measure.ErrRange) {
		t.Errorf("under nothing: %g m, %v", span, err)
	}
	if span, _, err := m.BeamSpan(1e-3, 0, 0, 1e-3); err != nil || math.IsInf(span, 0) {
		t.Errorf("under the least: %g m, %v", span, err)
	}
	if span, _, err := m.SpanWithin(60, 1e-3, 0, 1e-3); err != nil || math.IsInf(span, 0) {
		t.Errorf("under the least: %g m, %v", span, err)
	}
}

// A bound above the cost, or none, leaves nothing to save, and one below nothing all of it.
func TestGapOfOddBounds(t *testing.T) {
	for _, c := range []struct{ cost, bound, want float64 }{
		{10, 8, 0.2}, {10, 10, 0}, {10, 12, 0}, {10, math.NaN(), 0}, {10, -5, 1}, {0, -5, 0}, {math.NaN(), 1, 0}, {math.Inf(1), 1, 0},
	} {
		if g := (lumber.Outlay{Cost: c.cost, Bound: c.bound}).Gap(); math.Abs(g-c.want) > 1e-15 {
			t.Errorf("%g of %g: %g, want %g", c.bound, c.cost, g, c.want)
		}
	}
}
