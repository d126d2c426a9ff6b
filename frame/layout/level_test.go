package layout_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber/measure"
)

// corners are four supports of 16 by 12 m with these heights, in order round.
func corners(h ...float64) []layout.Support {
	at := []layout.Point{{}, {X: 16}, {X: 16, Y: 12}, {Y: 12}}
	var out []layout.Support
	for i, x := range h {
		out = append(out, layout.Support{Name: string(rune('a' + i)), At: at[i], Height: x})
	}
	return out
}

func TestLevelByHand(t *testing.T) {
	// One high corner: the frame rocks on it and the opposite one.
	l, err := layout.Level(corners(0, 0.01, 0, 0), layout.Point{X: 8, Y: 6})
	if err != nil {
		t.Fatal(err)
	}
	if !l.Rocks || len(l.Idle) != 2 || l.Idle[0] != 0 || l.Idle[1] != 2 {
		t.Errorf("%+v", l)
	}
	about(t, "twist", l.Twist, -0.01, 1e-15)
	total, flat := 0.0, 0.0
	for i := range l.Level {
		total, flat = total+l.Level[i], flat+l.Flat[i]
		about(t, "off the best plane", math.Abs(l.Off[i]), 0.0025, 1e-15)
		about(t, "level shim", l.Level[i], [4]float64{0.01, 0, 0.01, 0.01}[i], 1e-15)
	}
	about(t, "level shims", total, 0.03, 1e-15)
	about(t, "flat shims", flat, 0.01, 1e-15)

	// A tilted plane: no shim takes the twist out of what has none.
	l, err = layout.Level(corners(0, 0.016, 0.04, 0.024), layout.Point{X: 3, Y: 4})
	if err != nil || l.Rocks || l.Idle != nil {
		t.Fatal(l, err)
	}
	about(t, "twist", l.Twist, 0, 1e-15)
	about(t, "slope along x", l.Plane[1], 0.001, 1e-15)
	about(t, "slope along y", l.Plane[2], 0.002, 1e-15)
	about(t, "height at the origin", l.Plane[0], 0, 1e-15)
	for i := range l.Flat {
		about(t, "flat shim", l.Flat[i], 0, 1e-12)
		about(t, "level shim", l.Level[i], 0.04-[4]float64{0, 0.016, 0.04, 0.024}[i], 1e-15)
	}

	// Weight towards corner 1: it stands on 1, 2 and 4 and leaves 3 idle.
	l, err = layout.Level(corners(0, 0.01, 0, 0.01), layout.Point{X: 6, Y: 5})
	if err != nil || l.Rocks || len(l.Idle) != 1 || l.Idle[0] != 2 {
		t.Fatalf("%+v %v", l, err)
	}
	about(t, "gap", l.Gap[2], 0.02, 1e-12)

	// Three supports always stand.
	l, err = layout.Level(corners(0, 0.3, 0.1), layout.Point{X: 12, Y: 4})
	if err != nil || l.Rocks || l.Twist != 0 || l.Idle != nil {
		t.Fatalf("%+v %v", l, err)
	}
}

func TestLevelRefuses(t *testing.T) {
	middle := layout.Point{X: 8, Y: 6}
	line := []layout.Support{{}, {At: layout.Point{X: 1, Y: 1}}, {At: layout.Point{X: 2, Y: 2}}}
	for i, c := range []struct {
		s  []layout.Support
		at layout.Point
	}{
		{corners(0, 0), middle},
		{make([]layout.Support, 61), middle},
		{line, layout.Point{X: 1, Y: 1}},
		{corners(0, 0, 0, 0), layout.Point{X: 17, Y: 6}},
		{corners(0, 0, 0, math.NaN()), middle},
		{corners(0, 0, 0, 11), middle},
		{corners(0, 0, 0, 0), layout.Point{X: math.NaN()}},
		{corners(0, 0, 0, 0), layout.Point{Y: math.Inf(1)}},
		{append(corners(0, 0, 0), layout.Support{At: layout.Point{X: 2000}}), middle},
	} {
		if _, err := layout.Level(c.s, c.at); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%d: %v", i, err)
		}
	}
}

// Facts of the trade, common practice without a source: 12 ft end members with
// 16 ft members between them, all 2x, measured 243 in. across both ways; a quarter
// inch between the diagonals is fine work.
func TestSquareFacts(t *testing.T) {
	a, b := 144*in, (192+2*1.5)*in
	want, err := layout.Diagonal(a, b)
	if err != nil {
		t.Fatal(err)
	}
	about(t, "diagonal by nominal lengths", want/in, 242.4, 0.05)
	least, greatest, err := layout.FromNominal(a, b)
	if err != nil || !(least < 243*in && 243*in < greatest) || least != want {
		t.Errorf("%g to %g, %v", least/in, greatest/in, err)
	}
	if _, _, err := layout.FromNominal(-1, 1); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	// Stock a quarter to half an inch long: the sides as measured, and 243 both ways.
	f := layout.Frame{A: 144.375 * in, B: 195.5 * in, C: 144.375 * in, D: 195.5 * in, P: 243 * in, Q: 243 * in}
	s, err := f.Square(in / 16)
	if err != nil || s.Check.Verdict() != measure.Holds || len(s.Notes) != 0 {
		t.Fatalf("%+v, %v", s, err)
	}
	// With nominal sides six tens of an inch are left over, which the tape does not
	// explain: the readings do not belong together.
	f = layout.Frame{A: 144 * in, B: 195 * in, C: 144 * in, D: 195 * in, P: 243 * in, Q: 243 * in}
	if s, err = f.Square(in / 16); err != nil || s.Check.Verdict() != measure.NoAnswer || s.Twist != 0 || !(s.Misfit > s.Slack) {
		t.Fatalf("%+v, %v", s, err)
	}
	for _, c := range []struct {
		apart float64
		want  measure.Verdict
	}{{0.25, measure.Holds}, {0.26, measure.Short}} {
		f := layout.Frame{A: 144.1 * in, B: 192.1 * in, C: 144.1 * in, D: 192.1 * in}
		d := math.Hypot(f.A, f.B)
		// Diagonals of a parallelogram: the sum of squares is kept.
		f.P = d + c.apart*in/2
		f.Q = math.Sqrt(2*d*d - f.P*f.P)
		f.P -= (f.P - f.Q - c.apart*in) / 2
		f.Q = math.Sqrt(2*d*d - f.P*f.P)
		s, err := f.Square(in / 16)
		if err != nil || c.apart == 0.26 && s.Check.Verdict() != c.want || c.apart == 0.25 && math.Abs(s.Check.Value-0.25*in) > 1e-5 {
			t.Errorf("%g: %+v, %v", c.apart, s.Check, err)
		}
	}
}

func TestSquare(t *testing.T) {
	// A parallelogram: as Racked says, at the corner of the long diagonal.
	f := frame([4]float64{0, 4.9, 4.93, 0.03}, [4]float64{0, 0, 2.45, 2.45})
	s, err := f.Square(0.001)
	if err != nil {
		t.Fatal(err)
	}
	offset, angle, err := layout.Racked(f.A, f.B, f.P, f.Q)
	if err != nil {
		t.Fatal(err)
	}
	if s.Corner != 3 {
		t.Errorf("corner %d", s.Corner)
	}
	about(t, "push", s.Push, offset, 1e-9)
	about(t, "corner 1", s.Off[0], -angle, 1e-9)
	about(t, "reads", s.Read[0], math.Hypot(f.A, f.B), 1e-12)
	about(t, "reads", s.Read[1], math.Hypot(f.A, f.B), 1e-12)
	f.P, f.Q = f.Q, f.P
	s, err = f.Square(0.001)
	if err != nil || s.Corner != 4 {
		t.Fatalf("%+v %v", s, err)
	}
	about(t, "push of the mirror image", s.Push, offset, 1e-9)

	// No two sides alike: from a root finder on the corner that makes opposite
	// corners add up to half a turn.
	f = layout.Frame{A: 4.9, B: 2.4, C: 4.8, D: 2.45, P: 5.42275299087097, Q: 5.42160043975707}
	s, err = f.Square(0.001)
	if err != nil {
		t.Fatal(err)
	}
	about(t, "P", s.Read[0], f.P, 1e-12)
	about(t, "Q", s.Read[1], f.Q, 1e-12)
	about(t, "corner 1", s.Off[0]+math.Pi/2, 1.54502301655068, 1e-12)
	about(t, "push", s.Push, 0, 1e-12)
	if len(s.Notes) != 1 || s.Check.Verdict() != measure.Holds { // it says that the sides differ
		t.Errorf("%v, %v", s.Notes, s.Check)
	}

	// Corner 4 lifted by 6 in. about the diagonal, 144 by 195 in.: Q by coordinates.
	f = layout.Frame{A: 144.0001 * in, B: 195 * in, C: 144.0001 * in, D: 195 * in, Q: 242.332366434708 * in}
	f.P = math.Hypot(f.A, f.B)
	s, err = f.Square(0.0001)
	if err != nil || s.Check.Verdict() != measure.NoAnswer {
		t.Fatalf("%+v %v", s, err)
	}
	about(t, "twist", s.Twist, 6*in, 0.01*in)
	f.Q = 1 * in // no fold makes it so short: the two corners on top of each other at least
	if s, err = f.Square(0); err == nil && !(s.Twist > 0) {
		t.Errorf("%+v", s)
	}

	// Whole feet earn a warning, and no verdict better than assumed.
	f = layout.Frame{A: 12 * measure.Foot, B: 16 * measure.Foot, C: 12 * measure.Foot, D: 16 * measure.Foot, P: 20 * measure.Foot, Q: 20 * measure.Foot}
	if s, err = f.Square(0.001); err != nil || len(s.Notes) != 1 || len(s.Check.Rests) != 1 {
		t.Errorf("%v, %v", s.Notes, err)
	}
	for _, bad := range []float64{-1, math.NaN(), 1} {
		if _, err := f.Square(bad); !errors.Is(err, measure.ErrRange) {
			t.Error(err)
		}
	}
	f.P = 30
	if _, err := f.Square(0); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
}
