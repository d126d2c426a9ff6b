package moor_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// known fails on an error that is neither of the library's classes nor of the
// physics.
func known(t *testing.T, err error) {
	t.Helper()
	var e *measure.Error
	if !errors.As(err, &e) && !errors.Is(err, moor.ErrReach) && !errors.Is(err, moor.ErrAdrift) {
		t.Fatalf("%v belongs to no class", err)
	}
}

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// FuzzLine holds that a line hung at given ends has finite pulls, hangs back to
// the same reach under them, and pulls harder farther out, slack to taut.
func FuzzLine(f *testing.F) {
	f.Add(12.0, 20.0, 0.0, 0.0, 5.0, 1.0, 5e4, 11.0, 3.0, false)
	f.Add(12.0, 20.0, 0.0, 100.0, 5.0, 0.0, 5e4, 16.7, 3.0, false)
	f.Add(12.0, 20.0, 1e6, 0.0, 5.0, 1.0, 0.0, 2.0, 3.0, true)
	f.Add(12.0, 20.0, 0.0, 0.0, 5.0, 1.0, 0.0, 16.73320053068151, 3.0, false)
	f.Add(10.0, 0.0, 2e4, 0.0, 1.0, 0.0, 1e4, 11.5, 0.5, true)
	f.Add(math.NaN(), 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, false)
	f.Fuzz(func(t *testing.T, l1, w1, ea1, clump, l2, w2, ea2, reach, rise float64, shore bool) {
		l := moor.Line{Shore: shore, Pieces: []moor.Piece{{Length: l1, Weight: w1, Stretch: ea1, Clump: clump}, {Length: l2, Weight: w2, Stretch: ea2}}}
		h, err := l.At(reach, rise, moor.Hang{})
		if err != nil {
			known(t, err)
			if h != (moor.Hang{}) {
				t.Fatalf("%+v beside %v", h, err)
			}
			return
		}
		if !finite(h.Pull, h.Down, h.Lift, h.Lying) || !(h.Pull >= 0) || !(h.Tension() >= h.Pull) {
			t.Fatalf("%+v", h)
		}
		dip, err := l.Dip(h)
		if err != nil || !finite(dip) || dip < 0 {
			t.Fatalf("dips %g, %v", dip, err)
		}
		for i := range 2 {
			if s, err := l.Tension(i, h); err != nil || !finite(s) || s < h.Pull {
				t.Fatalf("piece %d bears %g N, pulled with %g N, %v", i, s, h.Pull, err)
			}
		}
		// Sizes of a lake, where rounding leaves the digits compared below.
		sane := func(lo, hi float64, xs ...float64) bool {
			for _, x := range xs {
				if x != 0 && !(x >= lo && x <= hi) {
					return false
				}
			}
			return true
		}
		if !sane(0.1, 1000, l1, l2, reach, math.Abs(rise)) || !sane(0.01, 1e4, w1, w2, clump) || !sane(1e3, 1e8, ea1, ea2) || w1*w2 == 0 {
			return
		}
		if h.Pull > 1e-6*h.Tension() && h.Tension() < 1e6 {
			back, err := l.Pull(h.Pull, rise)
			if err != nil || math.Abs(back.Reach-reach) > 1e-7*(reach+math.Abs(rise)+l1+l2) {
				t.Fatalf("%+v at %g m, back at %+v, %v", h, reach, back, err)
			}
		}
		if far, err := l.At(reach*1.001, rise, h); err == nil && far.Pull < h.Pull*(1-1e-6)-1e-6 {
			t.Fatalf("pulls %g N, and %g N farther out", h.Pull, far.Pull)
		}
	})
}

// FuzzRest holds that a dock at rest is in balance, whatever it is moored and
// pushed by.
func FuzzRest(f *testing.F) {
	f.Add(0.0, 800.0, -300.0, 200.0, 5.0, 9.8, uint8(0))
	f.Add(0.4, 30000.0, 0.0, 0.0, 5.0, 9.8, uint8(1))
	f.Add(-2.0, 5.0, 5.0, 0.0, 9.0, 12.0, uint8(2))
	f.Add(math.NaN(), 0.0, 0.0, 0.0, 5.0, 5.0, uint8(3))
	f.Fuzz(func(t *testing.T, level, x, y, turn, length, foot float64, lost uint8) {
		m := sixLines()
		for i := range 4 {
			m.Ties[i].Line.Pieces[1].Length = length
			m.Ties[i].Foot[0] = math.Copysign(foot, m.Ties[i].Foot[0])
		}
		if k := int(lost % 7); k < 6 {
			m.Ties = append(m.Ties[:k:k], m.Ties[k+1:]...)
		}
		p, err := m.Rest(level, moor.Load{X: x, Y: y, Turn: turn})
		if err != nil {
			known(t, err)
			return
		}
		forces, err := m.Forces(p)
		if err != nil {
			t.Fatal(err)
		}
		seen := moor.Load{X: x, Y: y}.Turned(-p.Turn)
		left, size := [2]float64{seen.X, seen.Y}, 1e-3+math.Abs(x)+math.Abs(y)+math.Abs(turn)
		for _, g := range forces {
			left[0], left[1] = left[0]+g.X, left[1]+g.Y
			size += math.Hypot(g.X, g.Y)
		}
		if !(math.Hypot(left[0], left[1]) <= 2e-5*size) || !finite(p.X, p.Y, p.Turn) {
			t.Fatalf("%+v: %v N left of %g N", p, left, size)
		}
	})
}

// FuzzWeather holds that wind and current push along themselves and no harder
// when they are weaker.
func FuzzWeather(f *testing.F) {
	f.Add(10.0, 10.0, 60.0, 2.0, 3.0, 1.5, 1.2, 0.7, 2.0, 0.3)
	f.Add(0.5, 0.0, 0.0, 1.0, 0.0, -1.0, 0.0, 4.0, 0.0, 0.0)
	f.Add(math.Inf(1), 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, math.NaN(), 1.0, 1.0)
	f.Fuzz(func(t *testing.T, v, height, averaging, end, side, z, shape, θ, depth, draft float64) {
		face := moor.Face{End: end, Side: side, Height: z, Shape: shape}
		for name, load := range map[string]func(v float64) (moor.Load, error){
			"wind": func(v float64) (moor.Load, error) {
				return moor.Wind{Speed: v, Height: height, Averaging: averaging}.Load(θ, face)
			},
			"design wind": func(v float64) (moor.Load, error) {
				return moor.Wind{Speed: v, Exposure: "D"}.Load(θ, face, moor.Face{Side: side, Row: 3, Height: z})
			},
			"current": func(v float64) (moor.Load, error) {
				return moor.Current{Speed: v, Depth: depth, Draft: draft}.Load(θ, face)
			},
		} {
			l, err := load(v)
			if err != nil {
				known(t, err)
				continue
			}
			along := l.X*math.Cos(θ) + l.Y*math.Sin(θ)
			if !finite(along) || along < -1e-9 || math.Abs(l.Y*math.Cos(θ)-l.X*math.Sin(θ)) > 1e-9*(1+along) {
				t.Fatalf("%s: %+v towards %g", name, l, θ)
			}
			if half, err := load(v / 2); err != nil || math.Hypot(half.X, half.Y) > along*(0.25+1e-9)+1e-9 {
				t.Fatalf("%s: %+v at half the speed, %+v, %v", name, half, l, err)
			}
		}
	})
}

// FuzzWaves holds that every sea has a height and a period or an error, that a
// seen sea stands, that waves do not run backwards, and that the crest pushes at
// least as hard with more freeboard.
func FuzzWaves(f *testing.F) {
	f.Add(15.0, 2000.0, 3.0, 0.0, 0.3, 20.0, 4.0, 30.0, 0.2)
	f.Add(5.0, 100.0, 0.5, 100.0, 3.0, 20.0, 0.1, 1.0, 0.4)
	f.Add(math.NaN(), -1.0, 0.0, math.Inf(1), 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, wind, length, depth, duration, seen, ten, boat, distance, draft float64) {
		all, err := moor.Fetch{Wind: wind, Length: length, Depth: depth, Duration: duration}.Spread()
		if err != nil {
			known(t, err)
		}
		for _, s := range all {
			if !(s.Height > 0) || !finite(s.Height, s.Period, s.Grown) || s.Period < 0 {
				t.Fatalf("%+v", s)
			}
		}
		if s, err := moor.Seen(seen, ten); err != nil {
			known(t, err)
		} else {
			crest, drift, err := s.Push(depth, draft, 0.1)
			if err != nil {
				known(t, err)
			} else if more, _, _ := s.Push(depth, draft, 0.2); !finite(crest, drift) || more < crest || drift < 0 {
				t.Fatalf("%+v: %g, %g, %g N/m", s, crest, more, drift)
			}
			if l, err := (moor.Sea{Period: s.Period}).Length(depth); err != nil {
				known(t, err)
			} else if !(l > 0) || l > measure.Gravity*s.Period*s.Period/(2*math.Pi)*(1+1e-9) {
				t.Fatalf("%g s: %g m", s.Period, l)
			}
		}
		if s, err := (moor.Wake{Boat: boat, Height: seen, Distance: 10}).At(distance, depth); err != nil {
			known(t, err)
		} else if !(s.Height > 0) || !(s.Period > 0) || !finite(s.Height, s.Period) {
			t.Fatalf("%+v", s)
		}
		if x, err := (moor.Fetches{length, 2, 3, 4, 5, 6, 7, 8}).From(wind); err != nil {
			known(t, err)
		} else if x < math.Min(length, 2) {
			t.Fatalf("fetch %g m", x)
		}
	})
}

// FuzzImpact holds that a boat brings no more than all its energy and the water's,
// and that the fender's work equals it.
func FuzzImpact(f *testing.F) {
	f.Add(1500.0, 0.46, 0.4, 2.2, 6.0, 0.45, 1.5, 1.0, 2000.0, 2e4)
	f.Add(0.0, math.NaN(), -1.0, 0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0)
	f.Fuzz(func(t *testing.T, mass, speed, draft, beam, length, block, arm, angle, dock, k float64) {
		e, err := moor.Impact{Mass: mass, Speed: speed, Draft: draft, Beam: beam, Length: length, Block: block, Arm: arm, Angle: angle, Dock: dock}.Energy()
		if err != nil {
			known(t, err)
			return
		}
		if !(e >= 0) || e > mass/2*speed*speed*3*(1+1e-9) {
			t.Fatalf("%g J of a boat with %g J", e, mass/2*speed*speed)
		}
		force, stroke, err := moor.Fender{Stiffness: k, Stroke: 1}.Stop(e)
		if err != nil {
			known(t, err)
		} else if math.Abs(force*stroke/2-e) > 1e-9*(1+e) {
			t.Fatalf("%g N over %g m for %g J", force, stroke, e)
		}
	})
}

// FuzzGear holds that a known piece holds nothing beyond its breaking load over
// its design factor, and an unknown one nothing.
func FuzzGear(f *testing.F) {
	f.Add("nylon 3-strand", "1/2 in", 1000.0, 5000.0, 0.0, 0.8, 4.0)
	f.Add("chain grade 30", "3/8", math.NaN(), -1.0, 2.0, 2.0, 0.5)
	f.Add("", "", 0.0, 0.0, 0.0, 1.0, 0.0)
	f.Fuzz(func(t *testing.T, kind, size string, tension, breaks, working, end, design float64) {
		if g, err := moor.Lookup(kind, size); err != nil {
			known(t, err)
		} else if c, err := g.Check(g.Break); err != nil || c.Verdict() == measure.Holds {
			t.Fatalf("%v holds its breaking load, %v", c, err)
		}
		for _, of := range []string{"rope", "wire rope"} {
			if e, err := moor.Factor("end of "+of, size); err != nil {
				known(t, err)
			} else if !(e.Value > 0 && e.Value <= 1) {
				t.Fatalf("%+v", e)
			}
		}
		if d, err := moor.Factor("design", kind); err != nil {
			known(t, err)
		} else if !(d.Value >= 1) {
			t.Fatalf("%+v", d)
		}
		g := moor.Gear{
			Name: "piece", Kind: kind, Break: breaks, Working: working, Source: source,
			Ends: []measure.Factor{{Name: "end", Value: end}}, Design: measure.Factor{Name: "design", Value: design},
		}
		c, err := g.Check(tension)
		if err != nil {
			known(t, err)
			return
		}
		if c.Verdict() == measure.Holds && breaks > 0 && tension > breaks/math.Max(design, 1)*(1+1e-9) {
			t.Fatalf("%v", c)
		}
		if breaks == 0 && working == 0 && c.Verdict() != measure.NoAnswer {
			t.Fatalf("%v", c)
		}
	})
}

// FuzzGround holds that more pull or lift never helps and that the mass needed
// is the mass that holds.
func FuzzGround(f *testing.F) {
	f.Add(500.0, 2400.0, "sand", false, 0.0, 0.1, 800.0, 200.0, 5000.0, 0.5)
	f.Add(500.0, 0.0, "soft mud", true, 0.4, 0.0, math.NaN(), 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, mass, density float64, bottom string, cast bool, friction, slope, pull, lift, hold, steepest float64) {
		d := moor.DeadWeight{Mass: mass, Density: density, Bottom: bottom, Cast: cast, Friction: friction, Slope: slope}
		for _, g := range []moor.Ground{d, moor.Rated{Name: "tree", Hold: hold, Steepest: steepest}} {
			c, err := g.Check(pull, lift)
			if err != nil {
				known(t, err)
				continue
			}
			if c.Verdict() == measure.Holds {
				continue
			}
			for _, more := range [][2]float64{{pull * 2, lift * 2}, {pull + 1, lift}} {
				if w, err := g.Check(more[0], more[1]); err == nil && lift >= 0 && w.Verdict() == measure.Holds && c.Err == nil {
					t.Fatalf("%v, and with more %v", c, w)
				}
			}
		}
		need, err := d.Needed(pull, lift)
		if err != nil {
			known(t, err)
			return
		}
		d.Mass = need * (1 + 1e-12) // on the verge it is lifted
		if c, err := d.Check(pull, lift); err == nil && c.Err == nil && math.Abs(c.Limit-pull) > 1e-6*(pull+math.Abs(lift)+1)/math.Max(1e-9, need/(need+1)) {
			t.Fatalf("%g kg needed for %g N: %v", need, pull, c)
		}
	})
}

// FuzzHinge holds that pins, ramps, skids and cleats give finite forces or an
// error, and that the two sides of a hinge meet.
func FuzzHinge(f *testing.F) {
	f.Add(1.5, 3, 0.02, 0.4, 0.34, 10.0, 30.0, 2.5, 600.0, 0.3, 5.0)
	f.Add(0.0, 1, math.NaN(), 0.4, 0.34, -1.0, 0.0, 2.5, 600.0, 2.0, 0.0)
	f.Fuzz(func(t *testing.T, width float64, pins int, diameter, z1, z2, area, inertia, arm, pull, slope, length float64) {
		dock, err := moor.Afloat(0, z1, area, inertia, area, arm)
		if err != nil {
			known(t, err)
		}
		j, err := moor.Hinge{Width: width, Pins: pins, Diameter: diameter, Plate: 0.01}.Tie(dock, moor.Side{Height: z2}, pull, pull/3, pull/5)
		if err != nil {
			known(t, err)
		} else if !finite(j.Pin, j.Shear, j.Bearing, j.Lift) || math.Abs(dock.Height-j.Lift*dock.Give-j.Line) > 1e-6*(1+math.Abs(z1)+math.Abs(z2)) {
			t.Fatalf("%+v", j)
		}
		r := moor.Ramp{Length: length, Width: width, Mass: math.Abs(pull), Shore: z1, Deck: z2}
		if c, err := r.Check(z2, z1); err != nil {
			known(t, err)
		} else if s, err := r.Slide(z2, z1); err != nil || !finite(c.Value, s) || s < 0 || s > 2*length {
			t.Fatalf("%v, slides %g m, %v", c, s, err)
		}
		if p, err := (moor.Haul{Mass: area, Slope: slope}).Pull(); err != nil {
			known(t, err)
		} else if !(p > 0) || p > 2*area*measure.Gravity {
			t.Fatalf("%g kg pulled with %g N", area, p)
		}
		if tension, shear, err := (moor.Cleat{Height: arm, Base: width, Bolts: pins}).On(pull, z1); err != nil {
			known(t, err)
		} else if !finite(tension, shear) || tension < 0 {
			t.Fatalf("%g, %g N", tension, shear)
		}
		if s, err := (moor.Post{}).Stress(pull, length, diameter); err != nil {
			known(t, err)
		} else if !(s >= 0) {
			t.Fatalf("%g Pa", s)
		}
	})
}

// FuzzSnow holds that snow and its drifts weigh something, that a ramp of the length
// it needs keeps its limit, and that clips and figures come with their sources.
func FuzzSnow(f *testing.F) {
	f.Add(1200.0, 0.4, 0.0, 12.0, 1.2, -0.5, 0.8, "accessible", 3, "ramp width", 0.0095)
	f.Add(0.0, math.NaN(), -1.0, 1e9, 5.0, 5.0, 5.0, "", -1, "", math.Inf(1))
	f.Fuzz(func(t *testing.T, ground, depth, density, upwind, shore, low, high float64, limit string, slips int, name string, diameter float64) {
		s := moor.Snow{Ground: ground, Depth: depth, Density: density}
		if p, err := s.Pressure(); err != nil {
			known(t, err)
		} else if !(p > 0) || !finite(p) {
			t.Fatalf("%+v weighs %g Pa", s, p)
		}
		if h, p, err := s.Drift(upwind); err != nil {
			known(t, err)
		} else if !(h > 0 && p > 0) || !finite(h, p) {
			t.Fatalf("%+v drifts %g m, %g Pa", s, h, p)
		}
		r := moor.Ramp{Width: 1, Shore: shore, Limit: limit, Slips: slips}
		l, err := r.Needed(low, high)
		if err != nil {
			known(t, err)
		} else if l > 1e-6 && l < 1e4 {
			r.Length = l
			if c, err := r.Check(low, high); err != nil || !c.AtLeast && c.Value > c.Limit*(1+1e-9) {
				t.Fatalf("%+v: %v, %v", r, c, err)
			}
		}
		if c, err := moor.ClipsFor(diameter); err != nil {
			known(t, err)
		} else if c.Number < 2 || !finite(c.Spacing, c.Turnback, c.Torque) || c.Sources[0] == nil || c.Sources[1] == nil {
			t.Fatalf("%+v", c)
		}
		if u, err := moor.Usual(name); err != nil {
			known(t, err)
		} else if u.Source == nil || u.Lo > u.Hi {
			t.Fatalf("%v", u)
		}
		if x, err := moor.Factor(limit, name); err != nil {
			known(t, err)
		} else if !(x.Value > 0) || x.Source == nil {
			t.Fatalf("%+v", x)
		}
	})
}
