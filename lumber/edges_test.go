package lumber_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// TestWetEdges: a value times its size factor of just 1150 or 750 psi is spared
// the wet service factor, a psi more is not.
func TestWetEdges(t *testing.T) {
	psi := func(x float64) lumber.Value { return lumber.Value{Printed: x, Unit: measure.PSI} }
	s, err := lumber.Size("2x12") // CF is 1
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		p             lumber.Property
		printed, want float64
	}{
		{lumber.Fb, 1150, 1},
		{lumber.Fb, 1150.5, 0.85},
		{lumber.Fc, 750, 1},
		{lumber.Fc, 750.5, 0.8},
		{lumber.Fv, 100, 0.97},
		{lumber.Ft, 100, 1},
	} {
		g := lumber.Grade{Fb: psi(c.printed), Fc: psi(c.printed)}
		f, err := lumber.WetService(c.p, g, s, false)
		if err != nil || f.Value != c.want {
			t.Errorf("%v of %g psi: %v, %v, want %g", c.p, c.printed, f, err, c.want)
		}
		if f, err = lumber.WetService(c.p, g, s, true); err != nil || f.Value != 1 {
			t.Errorf("%v of %g psi, dry: %v, %v", c.p, c.printed, f, err)
		}
	}
}

// TestTemperatureEdges: the steps of the table stand at 100, 125 and 150 °F, the
// lower step still holding at its end.
func TestTemperatureEdges(t *testing.T) {
	for _, c := range []struct {
		fahrenheit    float64
		wet, dry, all float64 // Fb wet and dry, E
	}{
		{99.9, 1, 1, 1},
		{100, 1, 1, 1},
		{100.1, 0.7, 0.8, 0.9},
		{125, 0.7, 0.8, 0.9},
		{125.1, 0.5, 0.7, 0.9},
		{150, 0.5, 0.7, 0.9},
	} {
		for _, x := range []struct {
			p    lumber.Property
			dry  bool
			want float64
		}{{lumber.Fb, false, c.wet}, {lumber.Fb, true, c.dry}, {lumber.FcPerp, false, c.wet}, {lumber.E, false, c.all}, {lumber.Ft, true, c.all}} {
			f, err := lumber.Temperature(x.p, measure.Fahrenheit(c.fahrenheit), x.dry)
			if err != nil || f.Value != x.want {
				t.Errorf("%v at %g °F, dry %v: %v, %v, want %g", x.p, c.fahrenheit, x.dry, f, err, x.want)
			}
		}
	}
	for _, outside := range []float64{-60.1, measure.Fahrenheit(150.1)} {
		if _, err := lumber.Temperature(lumber.Fb, outside, false); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%g °C: %v", outside, err)
		}
	}
}

// TestDurationEdges: the list ends where it ends, and CD is 1 where it does not
// apply.
func TestDurationEdges(t *testing.T) {
	for _, d := range []lumber.Duration{-1, lumber.TenMinutes + 1} {
		if _, err := d.Factor(lumber.Fb); !errors.Is(err, measure.ErrName) || d.String() != "no duration" {
			t.Errorf("duration %d: %v, %q", int(d), err, d)
		}
	}
	for _, p := range []lumber.Property{lumber.FcPerp, lumber.E, lumber.Emin} {
		for d := lumber.Permanent; d <= lumber.TenMinutes; d++ {
			if f, err := d.Factor(p); err != nil || f.Value != 1 {
				t.Errorf("%v, %v: %v, %v", p, d, f, err)
			}
		}
	}
}

// TestWeakWay: a column of which nothing was said of bracing buckles the weak way
// over its whole length, and bracing farther apart than that does not lengthen it.
func TestWeakWay(t *testing.T) {
	m := piece(t, "dfl", "2", "4x8")
	m.Length = 2.5
	free := adjusted(t, m, lumber.TenYears)
	weak, err := lumber.ColumnStability(free.Fc.Value/cp(t, free.Fc), free.Emin.Value, m.Length/m.Section.Width)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "CP, unbraced", cp(t, free.Fc), weak.Value)
	m.Unbraced = 5
	near(t, "CP, braced beyond the length", cp(t, adjusted(t, m, lumber.TenYears).Fc), weak.Value)
	m.Unbraced = 0.3 // now the strong way governs
	strong, err := lumber.ColumnStability(free.Fc.Value/cp(t, free.Fc), free.Emin.Value, m.Length/m.Section.Depth)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "CP, braced", cp(t, adjusted(t, m, lumber.TenYears).Fc), strong.Value)
}

func cp(t *testing.T, s lumber.Strength) float64 {
	t.Helper()
	for _, f := range s.Factors {
		if f.Symbol == "CP" {
			return f.Value
		}
	}
	t.Fatalf("no CP: %v", s)
	return 0
}

// TestTwiceTheWidth: the rule of twice the width goes by nominal sides, to a
// sixteenth of an inch over.
func TestTwiceTheWidth(t *testing.T) {
	g := piece(t, "dfl", "2", "2x4").Grade
	for _, c := range []struct {
		wide, deep float64
		spared     bool
	}{{1.5, 3.5, true}, {2, 4.06, true}, {2, 4.07, false}, {2.06, 4.07, false}, {2.07, 4.07, true}} {
		m := lumber.Member{Section: lumber.Section{Width: c.wide * measure.Inch, Depth: c.deep * measure.Inch}, Grade: g, Length: 6}
		v := adjusted(t, m, lumber.TenYears)
		if spared := strings.Contains(v.Fb.String(), "CL 1 "); spared != c.spared {
			t.Errorf("%g x %g in.: %v", c.wide, c.deep, v.Fb)
		}
	}
}

// TestNotchNote: an inner notch is said to weaken the stiffness past a sixth of
// the depth, or a third of it in length, and not before; a short span has outer
// thirds as well.
func TestNotchNote(t *testing.T) {
	m := checked(t)
	m.Length = 0.6
	d := m.Section.Depth
	for _, c := range []struct {
		depth, length float64
		noted         bool
	}{{0.166, 0.33, false}, {0.168, 0.33, true}, {0.166, 0.34, true}} {
		checks, err := m.CheckNotch(lumber.Notch{Depth: c.depth * d, Length: c.length * d, Inner: true, From: 0.1}, 0, lumber.TenYears)
		if err != nil {
			t.Fatal(err)
		}
		got := checks[1]
		if noted := strings.Contains(strings.Join(got.Notes, " "), "stiffness"); noted != c.noted || got.Limit != d/6 {
			t.Errorf("%g d deep, %g d long: %v, %v", c.depth, c.length, got, got.Notes)
		}
	}
}
