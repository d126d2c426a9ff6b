package frame_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/frame"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.12g, want %.12g", what, got, want)
	}
}

func solve(t *testing.T, b frame.Beam) *frame.Line {
	t.Helper()
	l, err := b.Solve()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestFirst(t *testing.T) {
	l := solve(t, frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 4}}, Loads: []frame.Load{frame.Uniform(0, 4, 1000)}})
	e := l.Extremes()
	near(t, "M", e.Sag.Moment, 2000, 1e-9)
	near(t, "w", e.Down.Deflection, -5.0/384*1000*256/1e6, 1e-15)
	near(t, "V", e.Shear.Shear, 2000, 1e-9)
	t.Log(l)
	q := frame.OneWay(9000)
	l = solve(t, frame.Beam{Length: 3.6, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: q}, {At: 1.8, Support: q}, {At: 3.6, Support: q}}, Loads: []frame.Load{frame.Point(1.8, 1500)}})
	near(t, "spring", l.Push[1], 528.3337868, 1e-6)
	// one-way tip: load beyond the middle lifts the far end
	l = solve(t, frame.Beam{Length: 3.6, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: q}, {At: 1.8, Support: q}, {At: 2.4, Support: q}}, Loads: []frame.Load{frame.Point(2.3, 1500)}})
	t.Log(l)
	_, err := (&frame.Beam{Length: 3.6, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: q}, {At: 1.8, Support: q}, {At: 2.4, Support: q}}, Loads: []frame.Load{frame.Point(3.6, 1500)}}).Solve()
	t.Log(err)
	var m *frame.MechanismError
	if !errors.As(err, &m) {
		t.Error("tips over")
	}
	g := frame.Gap(0.02, 1e5)
	l = solve(t, frame.Beam{Length: 4, EI: 1e4, Rests: []frame.Rest{{At: 0}, {At: 2, Support: g}, {At: 4, Support: g}}, Loads: []frame.Load{frame.Point(1, 1500)}})
	t.Log(l)
	for _, b := range []frame.Beam{
		{Length: 4, EI: 1e6},
		{Length: 4, EI: 1e6, Loads: []frame.Load{frame.Point(1, 1)}},
		{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 1}}, Loads: []frame.Load{frame.Point(1, 1)}},
		{Length: 4, EI: 1e6, Hinges: []float64{2}, Rests: []frame.Rest{{At: 0}, {At: 4}}, Loads: []frame.Load{frame.Point(1, 1)}},
		{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0, Support: frame.OneWay(100)}, {At: 4, Support: frame.OneWay(100)}}, Loads: []frame.Load{frame.Point(1, -1)}},
	} {
		_, err := b.Solve()
		if !errors.As(err, &m) {
			t.Errorf("%+v: %v", b, err)
		}
		t.Log(err)
	}
	l = solve(t, frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 1e-5}, {At: 4}, {At: 4 - 1e-5}}, Loads: []frame.Load{frame.Uniform(0, 4, 1000)}})
	t.Log(l)
}
