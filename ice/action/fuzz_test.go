package action_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/ice/action"
	"example.org/floewright/lumber/measure"
)

// classed tells that an error has a class.
func classed(t *testing.T, err error) {
	t.Helper()
	for _, class := range []error{measure.ErrRange, measure.ErrUnknown, measure.ErrName} {
		if errors.Is(err, class) {
			return
		}
	}
	t.Fatalf("error without a class: %v", err)
}

// noLess tells that no end of b lies below a, rounding aside.
func noLess(t *testing.T, what string, a, b action.Span) {
	t.Helper()
	if b.Low < a.Low*(1-1e-9) || b.High < a.High*(1-1e-9) {
		t.Fatalf("%s lowers a force: %+v to %+v", what, a, b)
	}
}

// grow is x times a factor of 1 to 2 made of step.
func grow(x, step float64) float64 {
	step = math.Abs(step)
	return x * (1 + step/(1+step))
}

func FuzzWall(f *testing.F) {
	f.Add(0.3, -0.05, 1e9, 5e9, 0.0, 0.5)
	f.Add(0.05, 0.001, 5e9, 5e9, 2e5, 3.0)
	f.Add(2.9, 9.0, 1e6, 1e6, 1e3, 0.1)
	f.Fuzz(func(t *testing.T, h, level, low, high, bond, step float64) {
		if math.IsNaN(step) || math.IsInf(step, 0) {
			return
		}
		c := action.Cover{Thickness: h, Modulus: action.Span{Low: low, High: high}}
		l, err := c.Wall(level, one(bond))
		if err != nil {
			classed(t, err)
			return
		}
		soundLift(t, l)
		if more, err := c.Wall(grow(level, step), one(bond)); err == nil {
			noLess(t, "a greater change", l.Force, more.Force)
		}
		thick := c
		thick.Thickness = grow(h, step)
		if more, err := thick.Wall(level, one(bond)); err == nil {
			noLess(t, "thicker ice", l.Force, more.Force)
		}
	})
}

func FuzzUplift(f *testing.F) {
	f.Add(0.3, -0.05, 0.88, 0.55, true, 2e5, 0.5)
	f.Add(0.1, 0.001, 0.2, 0.0, false, 0.0, 3.0)
	f.Add(1.0, 1.0, 6.0, 2.4, true, 0.0, 0.01)
	f.Fuzz(func(t *testing.T, h, level, length, breadth float64, smooth bool, bond, step float64) {
		if math.IsNaN(step) || math.IsInf(step, 0) {
			return
		}
		c := action.Cover{Thickness: h}
		b := action.Body{Length: length, Breadth: breadth, Smooth: smooth, Bond: one(bond)}
		l, err := c.Uplift(b, level)
		if err != nil {
			classed(t, err)
			return
		}
		soundLift(t, l)
		if more, err := c.Uplift(b, grow(level, step)); err == nil {
			noLess(t, "a greater change", l.Force, more.Force)
		}
		thick := c
		thick.Thickness = grow(h, step)
		if more, err := thick.Uplift(b, level); err == nil {
			noLess(t, "thicker ice", l.Force, more.Force)
		}
		// Less known about the bond, or a shape that locks, is never better.
		b.Bond = action.Span{}
		if more, err := c.Uplift(b, level); err == nil && more.Force.High < l.Force.High {
			t.Fatalf("an unknown bond lowers the force: %+v to %+v", l.Force, more.Force)
		}
		b.Smooth = false
		if more, err := c.Uplift(b, level); err == nil && more.Force.High < l.Force.High {
			t.Fatalf("a locking shape lowers the force: %+v to %+v", l.Force, more.Force)
		}
	})
}

func FuzzGrip(f *testing.F) {
	f.Add(0.3, -0.05, 0.88, 0.55, 4)
	f.Add(0.05, 0.2, 0.58, 0.0, 1)
	f.Add(0.05, 0.2, 0.58, 0.0, 3)
	f.Fuzz(func(t *testing.T, h, level, length, breadth float64, brackets int) {
		c, b := action.Cover{Thickness: h}, action.Body{Length: length, Breadth: breadth}
		g, err := c.Grip(b, level, brackets)
		if err != nil {
			classed(t, err)
			return
		}
		l, err := c.Uplift(b, level)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []action.Span{g.Up, g.Sideways, g.Squeeze, g.BracketUp, g.BracketSideways} {
			if !inside(s) || s.Source == nil {
				t.Fatalf("not a span: %+v of %+v", s, g)
			}
		}
		if most := math.Max(-g.Up.Low, g.Up.High); most != l.Force.High || level < 0 && g.Up.High > 0 || level > 0 && g.Up.Low < 0 {
			t.Fatalf("level %g: up %+v of %+v", level, g.Up, l.Force)
		}
		side := math.Max(length, breadth)
		if g.Sideways.High > g.Squeeze.High*h*side*(1+1e-12) {
			t.Fatalf("sideways past what crushes the ice: %+v", g)
		}
		n := float64(brackets)
		worst := math.Max(-g.BracketUp.Low, g.BracketUp.High)
		if most := math.Max(-g.Up.Low, g.Up.High); worst > most*(1+1e-12) || worst*n < most*(1-1e-12) {
			t.Fatalf("one of %d brackets takes %g of %g", brackets, worst, most)
		}
	})
}

func FuzzPush(f *testing.F) {
	f.Add(15.0, 0.0, 1609.0, 0.0, 3.0, 0.0, 0.0, 0.3, true, 0.5)
	f.Add(3.0, 0.2, 100.0, 20.0, 6.0, 0.7, 0.5, 0.1, false, 2.0)
	f.Add(0.0, 0.0, 10.0, 1.0, 6.0, 1.2, 0.5, 1.0, true, 0.1)
	f.Fuzz(func(t *testing.T, wind, current, reach, width, face, slope, height, h float64, touching bool, step float64) {
		if math.IsNaN(step) || math.IsInf(step, 0) {
			return
		}
		d := action.Drift{
			Wind: wind, Current: current, Reach: reach, Width: width, Touching: touching,
			Face: action.Face{Width: face, Slope: slope, Height: height}, Cover: action.Cover{Thickness: h},
		}
		p, err := d.Push()
		if err != nil {
			classed(t, err)
			return
		}
		soundPush(t, p)
		for _, w := range []struct {
			what string
			do   func(*action.Drift)
		}{
			{"more wind", func(d *action.Drift) { d.Wind = grow(d.Wind, step) }},
			{"more current", func(d *action.Drift) { d.Current = grow(d.Current, step) }},
			{"more reach", func(d *action.Drift) { d.Reach = grow(d.Reach, step) }},
			{"a wider floe", func(d *action.Drift) { d.Width = grow(d.Width, step) }},
			{"a wider face", func(d *action.Drift) { d.Face.Width = grow(d.Face.Width, step) }},
			{"a higher face", func(d *action.Drift) { d.Face.Height = grow(d.Face.Height, step) }},
			{"thicker ice", func(d *action.Drift) { d.Cover.Thickness = grow(d.Cover.Thickness, step) }},
		} {
			worse := d
			w.do(&worse)
			if q, err := worse.Push(); err == nil {
				noLess(t, w.what, p.Force, q.Force)
			}
		}
		way := d
		way.Touching = false
		if q, err := way.Push(); err != nil || q.Force.High < p.Force.High {
			t.Fatalf("a floe under way pushes less: %+v to %+v, %v", p.Force, q.Force, err)
		}
	})
}

func FuzzThrust(f *testing.F) {
	f.Add(0, 3.0, 0.3, 0.5)
	f.Add(7, 5.0, 0.6, 1.0)
	f.Add(5, 12.0, 1.0, 0.0)
	f.Fuzz(func(t *testing.T, row int, width, h, step float64) {
		ts := action.Thrusts()
		if row < 0 || row >= len(ts) || math.IsNaN(step) || math.IsInf(step, 0) {
			return
		}
		if s, err := action.ShortWall(width); err != nil {
			classed(t, err)
		} else if !(s.Low >= 1 && s.Low <= s.High && s.High <= 1.15) {
			t.Fatalf("short wall of %g m: %+v", width, s)
		} else if more, err := action.ShortWall(grow(width, step)); err == nil && (more.Low > s.Low || more.High > s.High) && width != 5 {
			t.Fatalf("a longer wall feels more: %+v, %+v", s, more)
		}
		s, err := ts[row].On(width, h)
		if err != nil {
			classed(t, err)
			return
		}
		if !inside(s) || s.Low < 0 || s.Source == nil {
			t.Fatalf("thrust %+v", s)
		}
		if more, err := ts[row].On(grow(width, step), h); err == nil {
			noLess(t, "a wider face", s, more)
		}
		if more, err := ts[row].On(width, grow(h, step)); err == nil {
			noLess(t, "thicker ice", s, more)
		}
	})
}

func FuzzAdhesion(f *testing.F) {
	f.Add("wood", 0.2, 0.4)
	f.Add("steel", 0.58, 0.3)
	f.Add("polyethylene", 0.58, 0.3)
	f.Fuzz(func(t *testing.T, material string, across, h float64) {
		s, err := action.Adhesion(material, across, h)
		if err != nil {
			classed(t, err)
			return
		}
		if !inside(s) || !(s.Low > 0) || s.Source == nil {
			t.Fatalf("bond %+v", s)
		}
		l, err := action.Cover{Thickness: h}.Uplift(action.Body{Length: across, Smooth: true, Bond: s}, 0.1)
		if err != nil {
			classed(t, err)
			return
		}
		if most := s.High * math.Pi * across * h; l.Force.High > most*(1+1e-12) {
			t.Fatalf("the bond bears %g, the force is %g", most, l.Force.High)
		}
	})
}

// A lower capacity never improves a verdict, and nothing holds on what is not
// known.
func FuzzCheck(f *testing.F) {
	f.Add(0.3, 0.05, 10.0, 1e5, 1e3)
	f.Add(0.3, 0.05, 10.0, math.NaN(), 1e3)
	f.Add(5.0, 0.05, 10.0, 1e5, 1e3)
	f.Fuzz(func(t *testing.T, h, level, wind, capacity, less float64) {
		c := action.Cover{Thickness: h}
		lift, errLift := c.Uplift(drum, level)
		push, errPush := action.Drift{Wind: wind, Reach: 500, Face: action.Face{Width: 3}, Cover: c, Touching: true}.Push()
		for _, k := range []struct {
			check func(string, float64) (measure.Check, error)
			err   error
			force action.Span
		}{{lift.Check, errLift, lift.Force}, {push.Check, errPush, push.Force}} {
			got, err := k.check("line", capacity)
			if got.Verdict() == measure.Holds && (err != nil || k.err != nil || !(k.force.High <= capacity)) {
				t.Fatalf("holds without ground: %v, force %+v, %v, %v", got, k.force, err, k.err)
			}
			if k.err != nil && got.Err == nil {
				t.Fatalf("the check lost %v", k.err)
			}
			if worse, _ := k.check("line", capacity-math.Abs(less)); worse.Verdict() == measure.Holds && got.Verdict() != measure.Holds {
				t.Fatalf("a lower capacity holds: %v, before %v", worse, got)
			}
		}
	})
}
