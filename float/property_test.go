package float_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// broad returns an invented dock that stands firm under any of its loads.
func broad(rng *rand.Rand) *float.Platform {
	p := &float.Platform{Density: 995 + 30*rng.Float64()}
	lift := 0.0
	for i := range 2 * (2 + rng.IntN(4)) {
		u := float.Unit{
			Body:    float.Cylinder{Diameter: 0.4 + 0.2*rng.Float64(), Length: 0.6 + 0.5*rng.Float64()},
			At:      r3.Vec{X: -2.5 + 1.2*float64(i/2) + 0.2*rng.Float64(), Y: (1 + 0.4*rng.Float64()) * float64(2*(i%2)-1), Z: -0.3 + 0.04*rng.Float64()},
			Heading: []float64{0, math.Pi / 2, 0.4}[rng.IntN(3)],
			Mass:    8 + 14*rng.Float64(),
		}
		if rng.IntN(4) == 0 {
			u.Body = float.Block{Length: 0.9, Width: 0.5, Height: 0.5}
		}
		if rng.IntN(5) == 0 {
			u.Leak = 0.2 * u.Body.Volume() * rng.Float64()
		}
		lift += p.Density*(u.Body.Volume()-u.Leak) - u.Mass
		p.Units = append(p.Units, u)
	}
	var mid r3.Vec
	for _, u := range p.Units {
		mid = r3.Add(mid, r3.Scale(1/float64(len(p.Units)), u.At))
	}
	mid.Z = 0.1
	p.Weights = []float.Weight{
		{Mass: lift * (0.25 + 0.3*rng.Float64()), At: mid},
		{Mass: 0.05 * lift, At: r3.Add(mid, r3.Vec{X: rng.Float64() - 0.5, Y: rng.Float64() - 0.5, Z: 1})},
	}
	p.Corners = []r3.Vec{{X: -3, Y: -1.5, Z: 0.2}, {X: 3, Y: -1.5, Z: 0.2}, {X: 3, Y: 1.5, Z: 0.2}, {X: -3, Y: 1.5, Z: 0.2}}
	return p
}

func near(t *testing.T, name string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.12g, want %.12g within %.2g", name, got, want, tolerance)
	}
}

// Archimedes: what the units displace weighs what the platform weighs, and the
// centres stand over each other.
func balance(t *testing.T, p *float.Platform, s float.State) {
	t.Helper()
	var mass, volume float64
	var g, b r3.Vec
	for _, w := range p.Weights {
		mass += w.Mass
		g = r3.Add(g, r3.Scale(w.Mass, w.At))
	}
	for i, u := range p.Units {
		k, err := s.Unit(i)
		if err != nil {
			t.Fatal(err)
		}
		if k.Free || u.Flooded {
			if u.Flooded && !u.Captive {
				mass += u.Mass
			}
			continue
		}
		mass += u.Mass + p.Density*u.Leak
		volume += k.Volume
	}
	near(t, "weight of the water displaced", p.Density*volume, mass, 1e-9*mass)
	near(t, "mass of the state", s.Mass, mass, 1e-9*mass)
	g, b = s.Gravity, s.Buoyancy
	off := r3.Cross(r3.Sub(g, b), s.Up)
	near(t, "centres over each other", r3.Norm(off), 0, 1e-9)
}

func TestArchimedes(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 1))
	for range 200 {
		p := broad(rng)
		s, err := p.Settle()
		if err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		balance(t, p, s)
	}
}

// Mirrored across its long axis the dock heels the other way.
func TestMirror(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 1))
	for range 100 {
		p := broad(rng)
		q := p.With()
		for i := range q.Units {
			q.Units[i].At.Y *= -1
			q.Units[i].Heading *= -1
		}
		for i := range q.Weights {
			q.Weights[i].At.Y *= -1
		}
		a, err := p.Settle()
		if err != nil {
			t.Fatal(err)
		}
		b, err := q.Settle()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "heel", b.Heel, -a.Heel, 1e-11)
		near(t, "trim", b.Trim, a.Trim, 1e-11)
		near(t, "level", b.Level, a.Level, 1e-11)
		near(t, "metacentric product", b.GM[0][1], -a.GM[0][1], 1e-9)
	}
}

// Turned axes, and another origin, describe the same dock.
func TestAxesDoNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 1))
	for range 100 {
		p := broad(rng)
		a, err := p.Settle()
		if err != nil {
			t.Fatal(err)
		}
		turn := 6 * (rng.Float64() - 0.5)
		shift := r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}
		sin, cos := math.Sincos(turn)
		move := func(v r3.Vec) r3.Vec {
			return r3.Add(shift, r3.Vec{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos, Z: v.Z})
		}
		q := p.With()
		for i := range q.Units {
			q.Units[i].At = move(q.Units[i].At)
			q.Units[i].Heading += turn
		}
		for i := range q.Weights {
			q.Weights[i].At = move(q.Weights[i].At)
		}
		for i := range q.Corners {
			q.Corners[i] = move(q.Corners[i])
		}
		b, err := q.Settle()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "tilt", b.Tilt(), a.Tilt(), 1e-10)
		if d := cmp.Diff(a.Freeboards(), b.Freeboards(), cmpopts.EquateApprox(0, 1e-10)); d != "" {
			t.Error(d)
		}
		for k, m := range a.Principal() {
			near(t, "principal metacentric height", b.Principal()[k].Height, m.Height, 1e-8)
			// The same axis in space; the waterplane's x is turned by nearly as much.
			d := math.Mod(b.Principal()[k].Axis-m.Axis-turn, math.Pi)
			near(t, "principal axis", math.Sin(d), 0, 0.02)
		}
	}
}

// The metacentre of a lone round float is on its axis at every draft.
func TestKMIsRadius(t *testing.T) {
	for _, share := range []float64{1e-6, 1e-3, 0.05, 0.2, 0.5, 0.8, 0.95, 0.999} {
		c := float.Cylinder{Diameter: 0.6, Length: 2}
		const low = 0.11 // G below the axis
		p := &float.Platform{
			Density: 1000,
			Units:   []float.Unit{{Body: c}},
			Weights: []float.Weight{{Mass: 1000 * share * c.Volume(), At: r3.Vec{Z: -low}}},
		}
		s, err := p.Settle()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "KM less radius", s.GM[0][0]-low, 0, 1e-12)
		// Heeled by hand it rights itself by GM sin(angle) at every angle.
		angles := []float64{0.1, 0.4, 0.9}
		curve, err := p.Righting(0, angles)
		if err != nil {
			t.Fatal(err)
		}
		for i, a := range angles {
			near(t, "lever", curve.Points[i].Lever, low*math.Sin(a), 1e-12)
		}
	}
}

// More load, deeper.
func TestSinkageGrowsWithLoad(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 1))
	for range 30 {
		p := broad(rng)
		a, err := p.Settle()
		if err != nil {
			t.Fatal(err)
		}
		last := math.Inf(1)
		for range 10 {
			s, err := p.Settle()
			if err != nil {
				break
			}
			h := s.Height(a.Buoyancy)
			if !(h < last) {
				t.Errorf("rises to %v from %v under more load", h, last)
			}
			last = h
			// Over the middle of the waterplane, so that it goes straight down.
			p.Weights = append(p.Weights, float.Weight{Mass: 20, At: s.Buoyancy})
		}
	}
}

// The metacentric matrix is the slope of the righting lever.
func TestMetacentricMatrixIsSlope(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 1))
	for range 40 {
		p := broad(rng)
		p.Weights = p.Weights[:1]
		s, err := p.Settle()
		if err != nil {
			t.Fatal(err)
		}
		const step = 1e-4
		c, err := p.Righting(0, []float64{s.Heel - step, s.Heel, s.Heel + step})
		if err != nil {
			t.Fatal(err)
		}
		// With trim free the slope is GM heel less what trim gives way.
		want := math.Cos(s.Trim) * (s.GM[0][0] - s.GM[0][1]*s.GM[0][1]/s.GM[1][1])
		got := (c.Points[2].Lever - c.Points[0].Lever) / (2 * step)
		near(t, "slope of the lever", got, want, 1e-5*s.GM[1][1])
		near(t, "lever at rest", c.Points[1].Lever, 0, 1e-11)
	}
}

// A capsizing dock says so, and so do one that sinks and one without floats.
func TestFailures(t *testing.T) {
	p := eight()
	p.Weights = append(p.Weights, float.Weight{Mass: 400, At: r3.Vec{Y: 1.4, Z: 1.2}})
	_, err := p.Settle()
	var f *float.Failure
	if !errors.Is(err, float.ErrCapsizes) || !errors.As(err, &f) {
		t.Fatalf("%v, want a capsize", err)
	}
	if !(f.Short > 0) || !(f.Heel > 0.9) {
		t.Errorf("capsizes with %+v", f)
	}
	// With as much of a couple to the other side it just holds.
	q := p.With(float.Weight{Mass: 1, At: r3.Vec{Y: -1.05 * f.Short / measure.Gravity}})
	if _, err := q.Settle(); err != nil {
		t.Errorf("with the moment that was lacking: %v", err)
	}

	p = eight()
	p.Weights[0].Mass = 3000
	if _, err = p.Settle(); !errors.Is(err, float.ErrSinks) || !errors.As(err, &f) {
		t.Fatalf("%v, want it to sink", err)
	}
	lift := 8 * 999.7 * float.Cylinder{Diameter: 0.5715, Length: 0.8509}.Volume()
	near(t, "buoyancy lacking", f.Short, 3000+3*84+8*18-lift, 1e-9)

	p.Units = nil
	if _, err = p.Settle(); !errors.Is(err, float.ErrNoFloat) || !errors.As(err, &f) {
		t.Fatalf("%v, want no float", err)
	}
	near(t, "buoyancy lacking", f.Short, 3252, 1e-9)
}

// The tilt stop is the caller's.
func TestTiltStop(t *testing.T) {
	p := eight()
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	p.TiltStop = s.Tilt() - 1e-3
	if _, err := p.Settle(); !errors.Is(err, float.ErrCapsizes) {
		t.Errorf("past the stop: %v", err)
	}
	p.TiltStop = s.Tilt() + 0.02
	if _, err := p.Settle(); err != nil {
		t.Errorf("within the stop: %v", err)
	}
}

// A dock that leans on outriggers has an unstable balance upright; Settle leaves
// it toward +y, and its mirror image is another rest position.
func TestLeavesUnstableBalance(t *testing.T) {
	p := &float.Platform{
		Density: 1000,
		Units: []float.Unit{
			{Body: float.Cylinder{Diameter: 0.6, Length: 4}, At: r3.Vec{Z: -0.3}},
			{Body: float.Cylinder{Diameter: 0.3, Length: 4}, At: r3.Vec{Y: 1, Z: 0.2}},
			{Body: float.Cylinder{Diameter: 0.3, Length: 4}, At: r3.Vec{Y: -1, Z: 0.2}},
		},
		Weights: []float.Weight{{Mass: 500, At: r3.Vec{Z: 0.2}}},
	}
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	if !(s.Heel > 0.05) || s.Principal()[0].Height < 0 {
		t.Fatalf("rests at a heel of %v, least metacentric height %v", s.Heel, s.Principal()[0].Height)
	}
	o, err := p.SettleFrom(-s.Heel/2, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "the other heel", o.Heel, -s.Heel, 1e-9)

	// Unstable in trim only: toward positive trim.
	for i, u := range p.Units {
		p.Units[i].At.X, p.Units[i].At.Y = u.At.Y, 0
		p.Units[i].Heading = math.Pi / 2
	}
	if s, err = p.Settle(); err != nil {
		t.Fatal(err)
	}
	near(t, "trim", s.Trim, -o.Heel, 1e-9)
	near(t, "heel", s.Heel, 0, 1e-9)
}

// Neither a wave without height nor a very long one changes how the dock lies on
// the water; a real one brings its crest side up.
func TestWave(t *testing.T) {
	p := eight()
	flat, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	p.Wave = &float.Wave{Height: 0, Length: 10}
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "level over no wave", s.Level, flat.Level, 1e-12)
	near(t, "heel over no wave", s.Heel, flat.Heel, 1e-12)

	p.Wave = &float.Wave{Height: 0.5, Length: 4e4, Heading: 0.7, Phase: 0.3}
	if s, err = p.Settle(); err != nil {
		t.Fatal(err)
	}
	near(t, "height above a very long wave", s.Height(r3.Vec{}), flat.Height(r3.Vec{}), 1e-3)

	// A slope of the water across the dock heels it by as much.
	slope := math.Pi * 0.2 / 60
	p.Wave = &float.Wave{Height: 0.2, Length: 60, Heading: math.Pi / 2, Phase: math.Pi / 2}
	if s, err = p.Settle(); err != nil {
		t.Fatal(err)
	}
	near(t, "heel on a slope", flat.Heel-s.Heel, slope, 0.03*slope)

	near(t, "length of the up vector", r3.Norm(s.Up), 1, 1e-15)

	short := []struct{ length, height float64 }{{4.2, 0.1}, {math.NaN(), 0.1}, {10, 2}, {10, math.NaN()}}
	for _, w := range short {
		p.Wave = &float.Wave{Height: w.height, Length: w.length}
		if _, err := p.Settle(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("wave %+v: %v", w, err)
		}
	}
	p.Wave = &float.Wave{Height: 0.1, Length: 4.3} // five drums of 0.8509 m are 4.2545 m
	if _, err := p.Settle(); err != nil {
		t.Error(err)
	}
}

// A captive drum pushes as a strapped one while it is under, and lets go without
// a jump.
func TestCaptive(t *testing.T) {
	make := func(load float64) *float.Platform {
		p := eight()
		p.Weights = []float.Weight{{Mass: load, At: r3.Vec{Z: 0.1}}}
		return p
	}
	strapped, err := make(650).Settle()
	if err != nil {
		t.Fatal(err)
	}
	p := make(650)
	for i := range p.Units {
		p.Units[i].Captive = true
	}
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "level on captive drums", s.Level, strapped.Level, 1e-12)
	// At level nothing but the drums' own waterplanes differs.
	if d := math.Abs(s.GM[0][0] - strapped.GM[0][0]); d > 0.2 {
		t.Errorf("metacentric height differs by %v", d)
	}

	// One drum hung too high to carry: it floats by itself and leaves the sums.
	p = make(650)
	p.Units[0].Captive = true
	p.Units[0].At.Z += 0.6
	s, err = p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	u, err := s.Unit(0)
	if err != nil {
		t.Fatal(err)
	}
	if !u.Free || u.Push != 0 {
		t.Errorf("free drum: %+v", u)
	}
	near(t, "volume of the free drum", u.Volume, 18/999.7, 1e-12)
	near(t, "mass without the free drum", s.Mass, 650+7*18, 1e-9)
	gone := make(650)
	gone.Units = gone.Units[1:]
	g, err := gone.Settle()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "level as without it", s.Level, g.Level, 1e-12)
	near(t, "heel as without it", s.Heel, g.Heel, 1e-12)
	balance(t, p, s)

	// Raised drums let go one after another: the level moves without a jump.
	last := 0.0
	for i := range 400 {
		p = make(650)
		for k := range 2 {
			p.Units[k].Captive = true
			p.Units[k].At.Z += 0.001 * float64(i)
		}
		s, err := p.Settle()
		if err != nil {
			t.Fatal(err)
		}
		for k := range 2 {
			u, err := s.Unit(k)
			if err != nil {
				t.Fatal(err)
			}
			if u.Push < 0 {
				t.Fatalf("drum %d hangs on by %v N", k, u.Push)
			}
		}
		if i > 0 && math.Abs(s.Trim-last) > 2e-3 {
			t.Errorf("raised by %d mm the trim jumps from %v to %v", i, last, s.Trim)
		}
		last = s.Trim
	}
	// Too heavy to float it lies on the bottom, and says so.
	p = make(650)
	p.Units[7].Captive, p.Units[7].Mass = true, 400
	if s, err = p.Settle(); err != nil {
		t.Fatal(err)
	}
	if _, err = s.Unit(7); !errors.Is(err, float.ErrSinks) {
		t.Errorf("a captive drum of 400 kg: %v", err)
	}
}

// Displaced returns what Draft was asked for.
func TestDraftInverse(t *testing.T) {
	rng := rand.New(rand.NewPCG(16, 1))
	for range 20000 {
		c := float.Cylinder{Diameter: 0.1 + rng.Float64(), Length: 0.1 + rng.Float64()}
		all := c.Volume()
		v := all * (0.5 + 0.5*rng.Float64())
		if rng.IntN(2) == 0 {
			v = all * (1 - 0.5*math.Pow(10, -12*rng.Float64()))
		}
		h, err := c.Draft(v)
		if err != nil {
			t.Fatal(err)
		}
		got, err := c.Displaced(h)
		if err != nil {
			t.Fatal(err)
		}
		full, err := c.Displaced(c.Diameter)
		if err != nil || full != all {
			t.Fatalf("%+v holds %v of %v full (%v)", c, full, all, err)
		}
		if ulp := math.Abs(got-v) / (math.Nextafter(v, math.Inf(1)) - v); ulp > 2 {
			t.Fatalf("%+v holds %v at %v, asked for %v: %v units", c, got, h, v, ulp)
		}
	}
	c := float.Cylinder{Diameter: 0.6, Length: 0.9}
	for _, v := range []float64{0, c.Volume()} {
		h, err := c.Draft(v)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "draft at an end", h, 0.6*v/c.Volume(), 0)
	}
}
