package float_test

import (
	"context"
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// finite fails where a number is none.
func finite(t *testing.T, name string, xs ...float64) {
	t.Helper()
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%s: %v", name, xs)
		}
	}
}

// expected fails on an error that is neither bad data nor a failure to float.
func expected(t *testing.T, err error) {
	t.Helper()
	var bad *measure.Error
	var failure *float.Failure
	if !errors.As(err, &bad) && !errors.As(err, &failure) {
		t.Fatalf("error of no class: %v", err)
	}
	if failure != nil {
		finite(t, "failure", failure.Short, failure.Heel, failure.Trim)
	}
}

// wet checks the integrals of any body against what they must obey.
func wet(t *testing.T, b float.Body, h float64, up r3.Vec) {
	t.Helper()
	all := b.Volume()
	w := b.Wet(h, up)
	finite(t, "wet", w.Volume, w.VolumeMoment.X, w.VolumeMoment.Y, w.VolumeMoment.Z, w.Plane, w.PlaneMoment.X, w.PlaneMoment.Y, w.PlaneMoment.Z)
	finite(t, "inertia", w.PlaneInertia[:]...)
	n := r3.Norm(up)
	if !(n > 0) || math.IsInf(n, 0) || math.IsNaN(h) || math.IsInf(h, 0) {
		return
	}
	if w.Volume < 0 || w.Volume > all*(1+1e-12) || w.Plane < 0 {
		t.Fatalf("volume %v of %v, plane %v", w.Volume, all, w.Plane)
	}
	// What is wet upside down was dry.
	o := b.Wet(-h, r3.Scale(-1, up))
	if math.Abs(w.Volume+o.Volume-all) > 1e-10*all {
		t.Fatalf("wet %v and dry %v are not %v", w.Volume, o.Volume, all)
	}
	if math.Abs(w.Plane-o.Plane) > 1e-8*(w.Plane+1e-3*math.Pow(all, 2./3)) {
		t.Fatalf("waterplane %v seen from below %v", w.Plane, o.Plane)
	}
	// The centroid of what is wet is under water, the waterplane's is on it.
	if w.Volume > 1e-6*all {
		if c := (h + r3.Dot(up, r3.Scale(1/w.Volume, w.VolumeMoment))) / n; c > 1e-9*(1+math.Abs(h/n)) {
			t.Fatalf("centroid %v above the water", c)
		}
	}
	if w.Plane > 1e-3*math.Pow(all, 2./3) {
		if c := (h + r3.Dot(up, r3.Scale(1/w.Plane, w.PlaneMoment))) / n; math.Abs(c) > 1e-7*(1+math.Abs(h/n)) {
			t.Fatalf("waterplane %v above the water", c)
		}
	}
	// It does not grow as it rises.
	if r := b.Wet(h+1e-3*n*math.Cbrt(all), up); r.Volume > w.Volume+1e-10*all {
		t.Fatalf("rises and displaces %v after %v", r.Volume, w.Volume)
	}
}

func FuzzCylinderWet(f *testing.F) {
	f.Add(0.57, 0.85, 0.05, 0.05, 0.0, 1.0)
	f.Add(0.57, 0.85, 0.28, 0.1, 0.1, 1.0)
	f.Add(0.57, 0.85, -0.28, 1e-9, 0.1, 1.0)
	f.Add(0.57, 0.85, 0.1, 1.0, 0.0, 0.0)
	f.Add(0.57, 0.85, math.NaN(), 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, d, l, h, x, y, z float64) {
		c := float.Cylinder{Diameter: d, Length: l}
		if !(d > 1e-3 && d < 1e3 && l > 1e-3 && l < 1e3) {
			c.Wet(h, r3.Vec{X: x, Y: y, Z: z})
			return
		}
		wet(t, c, h, r3.Vec{X: x, Y: y, Z: z})
	})
}

func FuzzBlockWet(f *testing.F) {
	f.Add(1.0, 2.0, 0.5, 0.1, 0.1, 0.2, 1.0)
	f.Add(1.0, 2.0, 0.5, -0.2, 0.0, 0.0, 1.0)
	f.Add(1.0, 2.0, 0.5, 0.6, -0.6, 0.5, 0.2)
	f.Fuzz(func(t *testing.T, l, w, e, h, x, y, z float64) {
		b := float.Block{Length: l, Width: w, Height: e}
		if !(l > 1e-2 && l < 1e2 && w > 1e-2 && w < 1e2 && e > 1e-2 && e < 1e2) {
			b.Wet(h, r3.Vec{X: x, Y: y, Z: z})
			return
		}
		wet(t, b, h, r3.Vec{X: x, Y: y, Z: z})
	})
}

func FuzzDraft(f *testing.F) {
	f.Add(0.57, 0.85, 0.1)
	f.Add(0.57, 0.85, 1e-12)
	f.Add(1.0, 1.0, 0.999999999)
	f.Fuzz(func(t *testing.T, d, l, share float64) {
		c := float.Cylinder{Diameter: d, Length: l}
		v := share * c.Volume()
		h, err := c.Draft(v)
		if err != nil {
			expected(t, err)
			return
		}
		got, err := c.Displaced(h)
		if err != nil {
			t.Fatal(err)
		}
		if v > 1e-290 && math.Abs(got-v) > 1e-14*v {
			t.Fatalf("%+v: %v at %v, asked for %v", c, got, h, v)
		}
	})
}

// dockOf builds a platform from any numbers, sound or not.
func dockOf(d, l, x, y, z, mass, load, gx, gy, gz, density float64, kinds uint16) *float.Platform {
	p := &float.Platform{Density: density, Weights: []float.Weight{{Mass: load, At: r3.Vec{X: gx, Y: gy, Z: gz}}}}
	for i := range 4 {
		sx, sy := float64(i/2*2-1), float64(i%2*2-1)
		u := float.Unit{Body: float.Cylinder{Diameter: d, Length: l}, At: r3.Vec{X: sx * x, Y: sy * y, Z: z}, Mass: mass}
		switch kinds >> (2 * i) & 3 {
		case 1:
			u.Heading = math.Pi / 2
			u.Leak = 0.3 * u.Body.Volume()
		case 2:
			u.Captive = true
		case 3:
			u.Body = float.Block{Length: l, Width: d, Height: d}
			u.Flooded = kinds>>8&1 == 1
		}
		p.Units = append(p.Units, u)
	}
	if kinds>>9&1 == 1 {
		p.Wave = &float.Wave{Height: 0.1, Length: 6 * math.Max(d, l), Heading: gx, Phase: gy}
	}
	p.Corners = []r3.Vec{{X: -x, Y: -y, Z: 0.2}, {X: x, Y: -y, Z: 0.2}, {X: x, Y: y, Z: 0.2}, {X: -x, Y: y, Z: 0.2}}
	return p
}

func FuzzSettle(f *testing.F) {
	for _, k := range []uint16{0, 1, 2, 0x39, 0xb6, 0x1ff, 0x200, 0x2e4} {
		f.Add(0.57, 0.85, 2.0, 1.1, -0.3, 18.0, 300.0, 0.1, 0.2, 0.3, 1000.0, k, 0.0, 0.0)
	}
	f.Add(0.57, 0.85, 2.0, 1.1, -0.3, 18.0, math.Inf(1), 0.1, 0.2, 0.3, 1000.0, uint16(0), 0.2, -0.1)
	f.Add(0.57, 0.85, 2.0, 1.1, -0.3, 18.0, 900.0, 0.1, 1.2, 3.0, 1000.0, uint16(0), 0.2, -0.1)
	f.Add(0.57, 0.85, 2.0, 1.1, -0.3, 18.0, 300.0, 0.1, 0.2, 0.3, 1000.0, uint16(0), -1.0, 0.48) // together past the stop
	f.Fuzz(func(t *testing.T, d, l, x, y, z, mass, load, gx, gy, gz, density float64, kinds uint16, heel, trim float64) {
		p := dockOf(d, l, x, y, z, mass, load, gx, gy, gz, density, kinds)
		s, err := p.SettleFrom(heel, trim)
		if err != nil {
			expected(t, err)
			return
		}
		finite(t, "state", s.Heel, s.Trim, s.Level, s.Residual, s.Mass, s.Gravity.X, s.Buoyancy.Z)
		finite(t, "matrix", s.GM[0][0], s.GM[0][1], s.GM[1][1])
		if s.Residual > 1e-9 {
			t.Fatalf("residual %v", s.Residual)
		}
		if k := s.Principal()[0].Height; k < -1e-6*(math.Abs(s.GM[0][0])+math.Abs(s.GM[1][1])+1) {
			t.Fatalf("rests on an unstable balance: %v", k)
		}
		var push float64
		deepest, err := s.Draft()
		if err != nil {
			expected(t, err)
			deepest = math.Inf(1)
		}
		for i := range p.Units {
			u, err := s.Unit(i)
			if err != nil {
				expected(t, err)
				continue
			}
			finite(t, "unit", u.Volume, u.Share, u.Draft, u.Push)
			if u.Draft > deepest {
				t.Fatalf("unit %d lies %v m deep, the deepest %v m", i, u.Draft, deepest)
			}
			push += u.Push
			if p.Units[i].Captive && u.Push < 0 {
				t.Fatalf("captive unit hangs on by %v N", u.Push)
			}
		}
		if want := load * measure.Gravity; math.Abs(push-want) > 1e-6*(want+measure.Gravity*s.Mass) {
			t.Fatalf("units push %v N, the load is %v N", push, want)
		}
		if _, _, err := s.Lowest(); err != nil {
			t.Fatal(err)
		}
	})
}

func FuzzRighting(f *testing.F) {
	f.Add(0.57, 0.85, 2.0, 1.1, 300.0, 0.3, 0.0, 0.6, uint16(0))
	f.Add(0.57, 0.85, 2.0, 1.1, 500.0, 0.6, 0.4, 0.9, uint16(1))
	f.Add(0.57, 0.85, 2.0, 1.1, 500.0, 0.6, 1.57, -0.9, uint16(0x202))
	f.Fuzz(func(t *testing.T, d, l, x, y, load, gz, axis, to float64, kinds uint16) {
		p := dockOf(d, l, x, y, -0.3, 18, load, 0.05, -0.02, gz, 1000, kinds)
		angles := make([]float64, 9)
		for i := range angles {
			angles[i] = to * float64(i) / 8
		}
		c, err := p.Righting(axis, angles)
		if err != nil {
			expected(t, err)
		}
		for i, k := range c.Points {
			finite(t, "point", k.Angle, k.Lever, k.Moment, k.Other, k.Level, k.Edge)
			if k.Angle != angles[i] {
				t.Fatalf("angle %v, want %v", k.Angle, angles[i])
			}
		}
		finite(t, "marks", c.Rest.Angle, c.Under.Angle, c.Peak.Lever, c.Vanishing.Angle, c.Area)
		if c.Peak.Found {
			for _, k := range c.Points {
				if k.Lever > c.Peak.Lever+1e-12 {
					t.Fatalf("lever %v above the peak %v", k.Lever, c.Peak.Lever)
				}
			}
		}
		sane := d < 3 && l < 5 && x > 0.5 && x < 20 && y > 0.5 && y < 20
		if sane && c.Rest.Found && math.Abs(c.Rest.Lever) > 1e-6 {
			t.Fatalf("lever %v at rest", c.Rest.Lever)
		}
	})
}

func FuzzCrowd(f *testing.F) {
	f.Add(2.0, 1.1, 300.0, 3, 80.0, 1.0, 0.15, 0.5)
	f.Add(2.0, 1.1, 300.0, 0, 0.0, 0.0, 0.0, 0.0)
	f.Add(2.0, 1.1, 300.0, 9, 80.0, 1.0, 0.5, 0.0)
	f.Fuzz(func(t *testing.T, x, y, load float64, people int, each, height, inset, room float64) {
		if people > 200 {
			people %= 200
		}
		if room > 0 && room < 0.05 {
			room = 0.05
		}
		p := dockOf(0.57, 0.85, x, y, -0.3, 18, load, 0, 0, 0.1, 1000, 0)
		c := float.Crowd{People: people, Each: each, Height: height, Inset: inset, Room: room}
		w, err := p.WorstCrowd(c)
		if err != nil {
			expected(t, err)
			return
		}
		finite(t, "worst", w.At.X, w.At.Y, w.At.Z, w.Height)
		if _, h, err := w.State.Lowest(); err != nil || h != w.Height {
			t.Fatalf("lowest %v, %v; want %v", h, err, w.Height)
		}
		// No corner of the deck is a worse place.
		for _, k := range p.Corners {
			if room > 0 || inset > 0 || people == 0 {
				break
			}
			e, h := each, height
			if e == 0 {
				e = 185 * measure.Pound
			}
			if h == 0 {
				h = 1
			}
			k.Z += h
			s, err := p.With(float.Weight{Mass: float64(people) * e, At: k}).Settle()
			if err != nil {
				t.Fatalf("a corner fails with %v, the worst place does not", err)
			}
			if _, low, _ := s.Lowest(); low < w.Height-1e-6 {
				t.Fatalf("a corner leaves %v, the worst place %v", low, w.Height)
			}
		}
	})
}

func FuzzPost(f *testing.F) {
	f.Add(300.0, 80.0, 0.3)
	f.Add(900.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, load, each, inset float64) {
		if each > 0 && each < 20 {
			each = 20
		}
		p := dockOf(0.57, 0.85, 2, 1.1, -0.3, 18, load, 0, 0, 0.1, 1000, 0)
		c := float.Crowd{Each: each, Inset: inset}
		out, err := p.Post(c)
		if err != nil {
			expected(t, err)
			return
		}
		if out.People < 0 {
			return
		}
		c.People = out.People
		w, err := p.WorstCrowd(c)
		if err != nil || w.Height < 0 {
			t.Fatalf("posted %d, who leave %v (%v)", c.People, w.Height, err)
		}
		c.People++
		if w, err = p.WorstCrowd(c); err == nil && w.Height >= 0 {
			t.Fatalf("posted %d, but one more leaves %v", out.People, w.Height)
		}
	})
}

func FuzzSwimmer(f *testing.F) {
	f.Add(2.0, 1.1, 300.0, 2.0, 0.0, 0.3, 90.0, 0.2)
	f.Fuzz(func(t *testing.T, x, y, load, ax, ay, out, mass, height float64) {
		p := dockOf(0.57, 0.85, x, y, -0.3, 18, load, 0, 0, 0.1, 1000, 0)
		l := float.Ladder{At: r3.Vec{X: ax, Y: ay, Z: 0.2}, Out: out, Mass: mass, Height: height}
		s, err := p.Swimmer(l)
		if err != nil {
			expected(t, err)
			return
		}
		finite(t, "state", s.Heel, s.Trim, s.Level, s.Height(l.At))
	})
}

func FuzzSupport(f *testing.F) {
	f.Add(0.57, 0.85, 18.0, 0.0, 1000.0, 0.3, uint8(0))
	f.Add(0.57, 0.85, 18.0, 0.05, 1000.0, 0.3, uint8(1))
	f.Add(0.57, 0.85, 400.0, 0.05, 1000.0, 0.3, uint8(3))
	f.Fuzz(func(t *testing.T, d, l, mass, leak, density, sink float64, kinds uint8) {
		u := float.Unit{Body: float.Cylinder{Diameter: d, Length: l}, Mass: mass, Leak: leak, Captive: kinds&1 == 1, Flooded: kinds&2 == 2}
		s, err := u.Support(density)
		if err != nil {
			expected(t, err)
			return
		}
		force, stiffness, energy := s(sink)
		if math.Abs(sink) < 1e100 {
			finite(t, "support", force, stiffness, energy)
		}
		if stiffness < 0 || u.Captive && force < 0 {
			t.Fatalf("force %v, stiffness %v", force, stiffness)
		}
		if d > 0.1 && d < 10 && l > 0.1 && l < 10 && mass < 1e4 && math.Abs(sink) < 2*d {
			step := 1e-6
			a, _, ea := s(sink - step)
			b, _, eb := s(sink + step)
			if got := (eb - ea) / (2 * step); got < math.Min(a, b)-1e-3*(1+math.Abs(force)+mass) || got > math.Max(a, b)+1e-3*(1+math.Abs(force)+mass) {
				t.Fatalf("work grows by %v N, force %v", got, force)
			}
		}
	})
}

func FuzzFewest(f *testing.F) {
	f.Add(300.0, 0.57, 2, 40)
	f.Add(100.0, 0.9, 0, 10)
	f.Add(100.0, 0.9, 0, 2) // the tries run out while places are taken away
	f.Fuzz(func(t *testing.T, load, d float64, people, tries int) {
		if people > 20 {
			people %= 20
		}
		if tries > 60 {
			tries %= 60
		}
		p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: load, At: r3.Vec{Z: 0.1}}}}
		p.Corners = []r3.Vec{{X: -2, Y: -1.2, Z: 0.2}, {X: 2, Y: -1.2, Z: 0.2}, {X: 2, Y: 1.2, Z: 0.2}, {X: -2, Y: 1.2, Z: 0.2}}
		var places []float.Unit
		for _, x := range []float64{-1.5, 0, 1.5} {
			for _, y := range []float64{-0.9, 0.9} {
				places = append(places, float.Unit{Body: float.Cylinder{Diameter: d, Length: 0.9}, At: r3.Vec{X: x, Y: y, Z: -0.3}, Mass: 18})
			}
		}
		c, err := p.Fewest(context.Background(), places, float.Demand{Crowd: float.Crowd{People: people}, Tries: tries})
		if errors.Is(err, float.ErrNoChoice) {
			return
		}
		if err != nil {
			expected(t, err)
			return
		}
		if c.Bound > len(c.Places) || c.Proven != (c.Bound == len(c.Places)) {
			t.Fatalf("%+v", c)
		}
		losses, err := c.Platform.Losses()
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range losses {
			if l.Err != nil {
				t.Fatalf("choice %v with %d lost: %v", c.Places, l.Unit, l.Err)
			}
		}
	})
}

// into maps any number into a range.
func into(x, lo, hi float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return lo
	}
	return lo + (hi-lo)*(0.5+math.Atan(x)/math.Pi)
}

// Whatever the dock, if it stands firm: mirrored it lies mirrored, on turned axes
// it lies the same, from elsewhere it comes to the same rest, with more load it
// lies deeper, and its centres stand over each other.
func FuzzInvariants(f *testing.F) {
	f.Add(0.1, 0.3, 0.2, -0.2, 0.5, 0.3, -0.4, uint16(0), 0.2, -0.3, 1.0)
	f.Add(-0.5, 1.3, 0.9, 1.2, -0.5, -0.3, 0.4, uint16(0x1e4), -2.0, 0.3, -2.0)
	f.Add(0.5, -1.3, 0.9, 0.2, -1.5, 0.3, 2.4, uint16(0x0d9), 2.0, 2.3, 0.1)
	f.Fuzz(func(t *testing.T, d, l, x, y, load, gx, gy float64, kinds uint16, heel, trim, turn float64) {
		d, l = into(d, 0.3, 0.9), into(l, 0.5, 3)
		all := 4 * 1000 * float.Cylinder{Diameter: d, Length: l}.Volume()
		p := dockOf(d, l, into(x, 1, 4), into(y, 0.8, 3), -d/2, 0.02*all, all*into(load, 0.05, 0.7),
			into(gx, -0.3, 0.3), into(gy, -0.3, 0.3), 0.2, 1000, kinds&0x1ff)
		s, err := p.Settle()
		if err != nil {
			expected(t, err)
			return
		}
		balance(t, p, s)
		if s.Principal()[0].Height < 0.5 || s.Tilt() > 0.1 {
			return // another rest position may exist
		}
		for i := range p.Units {
			u, err := s.Unit(i)
			if err != nil || u.Share > 0.75 || p.Units[i].Flooded || p.Units[i].Captive {
				return // it gives way, or lets go: the dock goes over from not far off
			}
		}
		const near9 = 1e-9
		o, err := p.SettleFrom(s.Heel+into(heel, -0.06, 0.06), s.Trim+into(trim, -0.04, 0.04))
		if err != nil {
			t.Fatalf("from elsewhere: %v", err)
		}
		near(t, "heel from elsewhere", o.Heel, s.Heel, near9)
		near(t, "trim from elsewhere", o.Trim, s.Trim, near9)

		turn = into(turn, -3, 3)
		sin, cos := math.Sincos(turn)
		m, q := p.With(), p.With()
		for i := range p.Units {
			m.Units[i].At.Y *= -1
			m.Units[i].Heading *= -1
			at := p.Units[i].At
			q.Units[i].At = r3.Vec{X: at.X*cos - at.Y*sin, Y: at.X*sin + at.Y*cos, Z: at.Z}
			q.Units[i].Heading += turn
		}
		m.Weights[0].At.Y *= -1
		at := p.Weights[0].At
		q.Weights[0].At = r3.Vec{X: at.X*cos - at.Y*sin, Y: at.X*sin + at.Y*cos, Z: at.Z}
		if o, err = m.Settle(); err != nil {
			t.Fatalf("mirrored: %v", err)
		}
		near(t, "mirrored heel", o.Heel, -s.Heel, near9)
		near(t, "mirrored trim", o.Trim, s.Trim, near9)
		if o, err = q.Settle(); err != nil {
			t.Fatalf("on turned axes: %v", err)
		}
		near(t, "tilt on turned axes", o.Tilt(), s.Tilt(), near9)
		near(t, "level on turned axes", o.Level, s.Level, near9)

		// More load over the buoyancy: straight down, to first order.
		if o, err = p.With(float.Weight{Mass: 1e-3 * all, At: s.Buoyancy}).Settle(); err != nil {
			expected(t, err)
			return
		}
		if !(o.Height(s.Buoyancy) < s.Height(s.Buoyancy)) {
			t.Errorf("rises to %v from %v under more load", o.Height(s.Buoyancy), s.Height(s.Buoyancy))
		}
	})
}
