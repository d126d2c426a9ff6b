package frame_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// TestMechanisms has beams that can move, and what is said of them.
func TestMechanisms(t *testing.T) {
	one := frame.OneWay(9000)
	load := []frame.Load{frame.Point(3.5, 1500)}
	for _, c := range []struct {
		name   string
		beam   frame.Beam
		x      float64
		motion string
	}{
		{"no rest", frame.Beam{Length: 4, EI: 1e6}, 0, "moves up or down"},
		{"no rest, loaded", frame.Beam{Length: 4, EI: 1e6, Loads: load}, 0, "moves up or down"},
		{"one pin", frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 1}}, Loads: load}, 4, "turns about x = 1.000 m"},
		{"one spring", frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 1, Support: frame.Spring(1e5)}}, Loads: load}, 4, "turns about x = 1.000 m"},
		{"one pin under the load", frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 2}}, Loads: []frame.Load{frame.Point(2, 10)}}, 0, "turns about x = 2.000 m"},
		{"hinge in a simple span", frame.Beam{Length: 4, EI: 1e6, Hinges: []float64{2}, Rests: []frame.Rest{{At: 0}, {At: 4}}, Loads: load}, 2, "folds at the hinge at x = 2.000 m"},
		{"hinge at the rest of an overhang", frame.Beam{Length: 5, EI: 1e6, Hinges: []float64{4}, Rests: []frame.Rest{{At: 0}, {At: 4}}, Loads: load}, 5, "folds at the hinge at x = 4.000 m"},
		{"two hinges in an inner span", frame.Beam{
			Length: 12, EI: 1e6, Hinges: []float64{5, 6, 7},
			Rests: []frame.Rest{{At: 0}, {At: 4}, {At: 8}, {At: 12}}, Loads: load,
		}, 6, "folds at the hinge at x = 5.000 m"},
		{"guided, free to sink", frame.Beam{
			Length: 4, EI: 1e6, Loads: load, Rests: []frame.Rest{{At: 0, Clamped: true, Support: frame.Spring(0)}},
		}, 0, "moves up or down"},
		{"lifted off", frame.Beam{
			Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0, Support: one}, {At: 4, Support: one}}, Loads: []frame.Load{frame.Point(1, -100)},
		}, 0, ""},
		{"tips over the last support", frame.Beam{
			Length: 3.6, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: one}, {At: 1.8, Support: one}, {At: 2.4, Support: one}},
			Loads: []frame.Load{frame.Point(3.6, 1500)},
		}, 0, "turns about x = 2.400 m"},
		{"past what the drums carry", frame.Beam{
			Length: 4, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: barrel(0.29, 0.88, 9806.65)}, {At: 4, Support: barrel(0.29, 0.88, 9806.65)}},
			Loads: []frame.Load{frame.Uniform(0, 4, 2000)},
		}, -1, ""},
		{"held by next to nothing", frame.Beam{
			Length: 4, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: frame.Spring(1e-7)}, {At: 4, Support: frame.Spring(1e-7)}},
			Loads: []frame.Load{frame.Point(2, 100)},
		}, -1, "moves up or down"},
		{"lies on nothing yet", frame.Beam{
			Length: 4, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: frame.Gap(0.1, 1e4)}, {At: 4, Support: frame.Gap(0.1, 1e4)}},
		}, 0, "moves up or down"},
		{"balanced on one of three", frame.Beam{
			Length: 4, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: frame.Gap(0.5, 1e4)}, {At: 2}, {At: 4, Support: frame.Gap(0.5, 1e4)}},
			Loads: []frame.Load{frame.Point(2, 100)},
		}, 0, "turns about x = 2.000 m"},
		{"a short piece beside a free one", frame.Beam{
			Length: 4, EI: 1e6, Hinges: []float64{1e-4}, Rests: []frame.Rest{{At: 0, Clamped: true}}, Loads: load,
		}, 4, "folds at the hinge at x = 0.000 m"},
	} {
		t.Run(c.name, func(t *testing.T) {
			l, err := c.beam.Solve()
			var m *frame.MechanismError
			if !errors.As(err, &m) || !errors.Is(err, frame.ErrMechanism) {
				t.Fatalf("%v, %v", l, err)
			}
			if c.x >= 0 && math.Abs(m.X-c.x) > 1e-9 {
				t.Errorf("at x = %g, want %g", m.X, c.x)
			}
			if c.motion != "" && m.Motion != c.motion {
				t.Errorf("it %s, want %s", m.Motion, c.motion)
			}
			if !strings.Contains(err.Error(), m.Place) || !strings.Contains(err.Error(), m.Motion) {
				t.Errorf("%q does not name place and motion", err)
			}
		})
	}
}

// TestHardSupports has supports that need more than a few Newton steps.
func TestHardSupports(t *testing.T) {
	drum := barrel(0.29, 0.88, 9806.65)
	capacity := 9806.65 * 0.88 * math.Pi * 0.29 * 0.29
	for _, c := range []struct {
		name string
		beam frame.Beam
	}{
		{"dry drums", frame.Beam{Length: 4, EI: 2e5, Rests: []frame.Rest{{At: 0.5, Support: drum}, {At: 3.5, Support: drum}}, Loads: []frame.Load{frame.Uniform(0, 4, 1)}}},
		{"drums all but full", frame.Beam{Length: 4, EI: 2e5, Rests: []frame.Rest{{At: 0.5, Support: drum}, {At: 3.5, Support: drum}}, Loads: []frame.Load{frame.Uniform(0, 4, 0.4999*capacity)}}},
		{"one drum under", frame.Beam{Length: 4, EI: 2e5, Rests: []frame.Rest{{At: 0, Support: drum}, {At: 2, Support: drum}, {At: 4, Support: drum}}, Loads: []frame.Load{frame.Point(0.6, 1.3*capacity)}}},
		{"deep gaps", frame.Beam{Length: 4, EI: 1e4, Rests: []frame.Rest{{At: 0, Support: frame.Gap(3, 1e6)}, {At: 2, Support: frame.Gap(0.1, 1e6)}, {At: 4, Support: frame.Gap(2, 1e6)}}, Loads: []frame.Load{frame.Point(3.9, 500), frame.Point(0.1, 480)}}},
		{"hard contact", frame.Beam{Length: 4, EI: 1e5, Rests: []frame.Rest{{At: 0, Support: frame.OneWay(1e12)}, {At: 1, Support: frame.OneWay(1e12)}, {At: 3, Support: frame.OneWay(1e12)}, {At: 4, Support: frame.OneWay(1e12)}}, Loads: []frame.Load{frame.Uniform(1, 3, 1000)}}},
		{"hard and soft", frame.Beam{Length: 4, EI: 1e5, Rests: []frame.Rest{{At: 0, Support: frame.OneWay(1e12)}, {At: 4, Support: frame.Gap(0.01, 1)}}, Loads: []frame.Load{frame.Uniform(0, 4, 1)}}},
		{"a stop that saturates", frame.Beam{Length: 4, EI: 1e5, Rests: []frame.Rest{{At: 0}, {At: 4, Support: func(s float64) (float64, float64, float64) {
			return 300 * math.Atan(s/0.001), 300 / 0.001 / (1 + s*s/1e-6), math.NaN()
		}}}, Loads: []frame.Load{frame.Point(4, 450)}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := solve(t, c.beam)
			balance(t, c.beam, l)
			if !(l.Residual < 1e-9) {
				t.Errorf("residual %g", l.Residual)
			}
			for i, r := range c.beam.Rests {
				if r.Support != nil {
					f, _, _ := r.Support(-l.At(r.At).Deflection)
					near(t, "push", l.Push[i], f, 1e-6*math.Abs(f)+1e-6)
				}
			}
		})
	}
	l := solve(t, frame.Beam{Length: 4, EI: 1e5, Rests: []frame.Rest{{At: 0}, {At: 4, Support: func(s float64) (float64, float64, float64) {
		return 100 * s, 100, math.NaN()
	}}}, Loads: []frame.Load{frame.Point(3, 5)}})
	if !math.IsNaN(l.Energy) {
		t.Errorf("energy %g with a support that cannot say its own", l.Energy)
	}
}

// TestUnsettled has supports against the contract.
func TestUnsettled(t *testing.T) {
	b := frame.Beam{Length: 4, EI: 1e5, Loads: []frame.Load{frame.Point(2, 100)}}
	with := func(s frame.Support) error {
		c := b
		c.Rests = []frame.Rest{{At: 0}, {At: 4, Support: s, Name: "the bad one"}}
		_, err := c.Solve()
		return err
	}
	jump := func(s float64) (float64, float64, float64) { // from 0 to 80 N at once
		if s > 0.01 {
			return 80, 1, math.NaN()
		}
		return 0, 1, math.NaN()
	}
	if err := with(jump); !errors.Is(err, frame.ErrUnsettled) {
		t.Errorf("a jump in the force: %v", err)
	}
	nan := math.NaN()
	for name, s := range map[string]frame.Support{
		"Spring(-1)":     frame.Spring(-1),
		"Spring(NaN)":    frame.Spring(nan),
		"Spring(Inf)":    frame.Spring(math.Inf(1)),
		"OneWay(-1)":     frame.OneWay(-1),
		"Gap(NaN, 1)":    frame.Gap(nan, 1),
		"Gap(Inf, 1)":    frame.Gap(math.Inf(1), 1),
		"Gap(0, NaN)":    frame.Gap(0, nan),
		"NaN stiffness":  func(s float64) (float64, float64, float64) { return s, nan, 0 },
		"falling":        func(s float64) (float64, float64, float64) { return -s, -1, 0 },
		"infinite force": func(s float64) (float64, float64, float64) { return math.Inf(1), 1, 0 },
		"late NaN": func(s float64) (float64, float64, float64) {
			if s > 1e-4 {
				return nan, 1, 0
			}
			return s, 1, 0
		},
	} {
		err := with(s)
		var m *measure.Error
		if !errors.As(err, &m) || m.Field != "the bad one.Support" || !strings.Contains(err.Error(), "stiffness") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestBadData names the field of every kind of bad data.
func TestBadData(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := func() frame.Beam {
		return frame.Beam{
			Length: 4, EI: 1e6, GA: 1e6, Hinges: []float64{1},
			Rests: []frame.Rest{{At: 0, Clamped: true}, {At: 2}, {At: 4}},
			Loads: []frame.Load{frame.Uniform(0, 2, 10), frame.Point(3, 10)},
		}
	}
	solve(t, good())
	for _, c := range []struct {
		field string
		spoil func(b *frame.Beam)
	}{
		{"Length", func(b *frame.Beam) { b.Length = 0 }},
		{"Length", func(b *frame.Beam) { b.Length = nan }},
		{"Length", func(b *frame.Beam) { b.Length = inf }},
		{"EI (N·m²)", func(b *frame.Beam) { b.EI = -1 }},
		{"EI (N·m²)", func(b *frame.Beam) { b.EI = nan }},
		{"GA", func(b *frame.Beam) { b.GA = -1 }},
		{"GA", func(b *frame.Beam) { b.GA = nan }},
		{"Hinges[0]", func(b *frame.Beam) { b.Hinges[0] = 0 }},
		{"Hinges[0]", func(b *frame.Beam) { b.Hinges[0] = 4 }},
		{"Hinges[0]", func(b *frame.Beam) { b.Hinges[0] = nan }},
		{"Hinges[0]", func(b *frame.Beam) { b.Hinges[0] = 1e-8 }},
		{"Rests[1].At", func(b *frame.Beam) { b.Rests[1].At = 5 }},
		{"Rests[1].At", func(b *frame.Beam) { b.Rests[1].At = nan }},
		{"Rests[2].At", func(b *frame.Beam) { b.Rests[1].At = 4 }},
		{"Rests[1].Settlement", func(b *frame.Beam) { b.Rests[1].Settlement = inf }},
		{"Rests[1].Clamped", func(b *frame.Beam) { b.Rests[1] = frame.Rest{At: 1, Clamped: true} }},
		{"post.At", func(b *frame.Beam) { b.Rests[1] = frame.Rest{At: -1, Name: "post"} }},
		{"Loads[0].From", func(b *frame.Beam) { b.Loads[0].From = -1 }},
		{"Loads[0].From", func(b *frame.Beam) { b.Loads[0].From = nan }},
		{"Loads[0].To", func(b *frame.Beam) { b.Loads[0].To = 5 }},
		{"Loads[0].To", func(b *frame.Beam) { b.Loads[0].To = nan }},
		{"Loads[0].To", func(b *frame.Beam) { b.Loads[0].From, b.Loads[0].To = 2, 1 }},
		{"Loads[0].Q", func(b *frame.Beam) { b.Loads[0].Q = nan }},
		{"Loads[0].Rise", func(b *frame.Beam) { b.Loads[0].Rise = inf }},
		{"Loads[0]", func(b *frame.Beam) { b.Loads[0].P = 1 }},
		{"Loads[0]", func(b *frame.Beam) { b.Loads[0].M = nan }},
		{"Loads[1].P", func(b *frame.Beam) { b.Loads[1].P = nan }},
		{"Loads[1].M", func(b *frame.Beam) { b.Loads[1].M = inf }},
		{"Loads[1]", func(b *frame.Beam) { b.Loads[1].Q = 1 }},
		{"Loads[1]", func(b *frame.Beam) { b.Loads[1].Rise = nan }},
		{"Loads[1].M", func(b *frame.Beam) { b.Loads[1] = frame.Load{From: 1, M: 5} }},
	} {
		b := good()
		c.spoil(&b)
		_, err := b.Solve()
		var m *measure.Error
		if !errors.As(err, &m) || m.Field != c.field || !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", c.field, err)
		}
	}
}

// TestSides reads the two sides of a jump and places off the beam.
func TestSides(t *testing.T) {
	l := solve(t, frame.Beam{
		Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 2}, {At: 4}},
		Loads: []frame.Load{frame.Point(1, 1600), {From: 3, M: 800}},
	})
	near(t, "shear left of the load minus right", l.Before(1).Shear-l.At(1).Shear, 1600, 1e-9)
	near(t, "moment left of the couple minus right", l.Before(3).Moment-l.At(3).Moment, 800, 1e-9)
	near(t, "shear over the middle", l.At(2).Shear-l.Before(2).Shear, l.Push[1], 1e-9)
	near(t, "first shear", l.At(-1).Shear, l.Push[0], 1e-9)
	near(t, "first shear", l.Before(0).Shear, l.Push[0], 1e-9)
	near(t, "last shear", l.At(99).Shear, -l.Push[2], 1e-9)
	near(t, "last x", l.At(99).X, 4, 0)
	if d := l.At(math.NaN()); !math.IsNaN(d.Moment) || !math.IsNaN(d.X) {
		t.Errorf("NaN gives %v", d)
	}
	if d := (&frame.Line{}).At(1); !math.IsNaN(d.Moment) {
		t.Errorf("an empty line gives %v", d)
	}
	if e := (&frame.Line{}).Extremes(); !math.IsNaN(e.Sag.Moment) || !math.IsNaN(e.Down.Deflection) {
		t.Errorf("an empty line has extremes %v", e)
	}
	// A place summed from inches is the place itself.
	third := 0.1 + 0.2
	l = solve(t, frame.Beam{Length: 0.6, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: third}, {At: 0.6}}, Loads: []frame.Load{frame.Point(0.3, 100)}})
	near(t, "push", l.Push[1], 100, 1e-9)
	near(t, "jump", l.At(0.3).Shear-l.Before(0.3).Shear, 0, 1e-9)
}

func TestString(t *testing.T) {
	l := solve(t, frame.Beam{
		Length: 4, EI: 1e6, Loads: []frame.Load{frame.Point(1, 100)},
		Rests: []frame.Rest{{At: 0, Name: "sill"}, {At: 2}, {At: 3, Support: frame.OneWay(1e5)}},
	})
	s := l.String()
	for _, want := range []string{"sill pushes", "rest at 2.000 m pushes", "rest at 3.000 m pushes 0.0 N (idle)", " N·m", "rad", "mm"} {
		if !strings.Contains(s, want) {
			t.Errorf("no %q in\n%s", want, s)
		}
	}
}

// TestUniformByDefault: a load spread over a length without a Rise is the same all along.
func TestUniformByDefault(t *testing.T) {
	b := frame.Beam{Length: 6, EI: 1e5, Rests: []frame.Rest{{At: 0}, {At: 6}}, Loads: []frame.Load{{From: 0, To: 6, Q: 400}}}
	l, err := b.Solve()
	if err != nil {
		t.Fatal(err)
	}
	for i, push := range l.Push {
		near(t, l.Places[i], push, 1200, 1e-9)
	}
	near(t, "bending moment in the middle", l.At(3).Moment, 400*6*6/8., 1e-9)
}
