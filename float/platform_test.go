package float_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// ball is a body of the caller's: a sphere of radius 0.3 m.
type ball struct{}

func (ball) Volume() float64 { return 4. / 3 * math.Pi * 0.027 }

func (ball) Wet(height float64, up r3.Vec) float.Wet {
	const r = 0.3
	d := min(max(r-height, 0), 2*r) // depth of the lowest point
	v := math.Pi * d * d * (3*r - d) / 3
	var w float.Wet
	w.Volume = v
	// Moment along up of the cap: -π (d (2r - d))²/4.
	m := -math.Pi * d * d * (2*r - d) * (2*r - d) / 4
	w.VolumeMoment = r3.Scale(m, up)
	if d > 0 && d < 2*r {
		a2 := d * (2*r - d)
		w.Plane = math.Pi * a2
		w.PlaneMoment = r3.Scale(-height*w.Plane, up)
		own := w.Plane * a2 / 4 // about a diameter, in the plane
		rest := height*height*w.Plane - own
		w.PlaneInertia = [6]float64{
			own + rest*up.X*up.X, own + rest*up.Y*up.Y, own + rest*up.Z*up.Z,
			rest * up.X * up.Y, rest * up.X * up.Z, rest * up.Y * up.Z,
		}
	}
	return w
}

func balls() *float.Platform {
	p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 220, At: r3.Vec{X: 0.1, Z: 0.4}}}}
	for _, x := range []float64{-1, 1} {
		for _, y := range []float64{-0.8, 0.8} {
			p.Units = append(p.Units, float.Unit{Body: ball{}, At: r3.Vec{X: x, Y: y}, Mass: 4})
		}
	}
	return p
}

// Four balls by hand: level under a load in the middle each carries 59 kg, 0.5216
// of its volume: 3 t² - 2 t³ = 0.5216 for the depth t in diameters, t = 0.5144.
func TestOwnBody(t *testing.T) {
	p := balls()
	p.Weights[0].At.X = 0
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	u, err := s.Unit(0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "share", u.Share, 236./4/(1000*ball{}.Volume()), 1e-12)
	near(t, "draft over diameter", u.Draft/0.6, 0.5144, 1e-4)
	// M of each ball is its centre: GM = Σ A y²/V less G's height over the centres.
	want := 4*math.Pi*u.Draft*(0.6-u.Draft)*0.64/0.236 - 220*0.4/236
	near(t, "metacentric height", s.GM[0][0], want, 1e-9)

	// Leaking and captive balls, and the lowest point when turned.
	p = balls()
	p.Units[0].Leak = 0.02
	p.Units[1].Captive = true
	p.Units[2].Captive = true
	p.Units[2].At.Z = 0.9
	p.Weights[0] = float.Weight{Mass: 120, At: r3.Vec{X: -0.3, Y: 0.2, Z: 0.4}}
	if s, err = p.Settle(); err != nil {
		t.Fatal(err)
	}
	balance(t, p, s)
	k, err := s.Unit(2)
	if err != nil {
		t.Fatal(err)
	}
	if !k.Free {
		t.Errorf("%+v, want it free", k)
	}
	near(t, "volume of the free ball", k.Volume, 0.004, 1e-9)
	near(t, "cap of that depth", math.Pi*k.Draft*k.Draft*(0.9-k.Draft)/3, 0.004, 1e-9)
	// Water in a ball runs freely around its centre: it changes nothing but the
	// mass, as a weight there would.
	q := balls()
	q.Units[0].Leak = 0.02
	a, err := q.Settle()
	if err != nil {
		t.Fatal(err)
	}
	q = balls()
	q.Weights = append(q.Weights, float.Weight{Mass: 20, At: q.Units[0].At})
	b, err := q.Settle()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "heel with water in a ball", a.Heel, b.Heel, 1e-9)
	near(t, "metacentric height with water in a ball", a.GM[0][0], b.GM[0][0], 1e-6)
	// A wave needs to know how long it is.
	q.Wave = &float.Wave{Height: 0.1, Length: 20}
	if _, err := q.Settle(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("a wave under balls: %v", err)
	}
}

// Loose water costs stiffness i/V and runs to the low side.
func TestLooseWater(t *testing.T) {
	p := eight()
	p.Weights = p.Weights[:1]
	for i := range p.Units {
		p.Units[i].Leak = 0.3 * p.Units[i].Body.Volume()
	}
	wet, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	q := eight()
	q.Weights = q.Weights[:1]
	c := q.Units[0].Body.(float.Cylinder)
	v, h := 0.3*c.Volume(), 0.0
	if h, err = c.Draft(v); err != nil {
		t.Fatal(err)
	}
	chord := 2 * math.Sqrt(h*(c.Diameter-h))
	cap3 := chord * chord * chord / 12 // moment of the segment about its circle's centre
	for i := range q.Units {
		at := q.Units[i].At
		at.Z -= cap3 / (v / c.Length)
		q.Weights = append(q.Weights, float.Weight{Mass: v * q.Density, At: at})
	}
	dry, err := q.Settle()
	if err != nil {
		t.Fatal(err)
	}
	volume := dry.Mass / q.Density
	near(t, "level", wet.Level, dry.Level, 1e-12)
	near(t, "loss of GM for heel", dry.GM[0][0]-wet.GM[0][0], 8*c.Length*chord*chord*chord/12/volume, 1e-9)
	near(t, "loss of GM for trim", dry.GM[1][1]-wet.GM[1][1], 8*chord*c.Length*c.Length*c.Length/12/volume, 1e-9)
}

func TestBadPlatforms(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, spoil := range map[string]func(*float.Platform){
		"Units[2].Body":          func(p *float.Platform) { p.Units[2].Body = nil },
		"Units[2].Body.Diameter": func(p *float.Platform) { p.Units[2].Body = float.Cylinder{Length: 1} },
		"Units[2].Body.Length":   func(p *float.Platform) { p.Units[2].Body = float.Cylinder{Diameter: 1, Length: nan} },
		"Units[1].Body.Length":   func(p *float.Platform) { p.Units[1].Body = float.Block{Length: -1, Width: 1, Height: 1} },
		"Units[1].Body.Width":    func(p *float.Platform) { p.Units[1].Body = float.Block{Length: 1, Width: inf, Height: 1} },
		"Units[1].Body.Height":   func(p *float.Platform) { p.Units[1].Body = float.Block{Length: 1, Width: 1} },
		"Units[1].Body.Volume()": func(p *float.Platform) { p.Units[1].Body = nothing{} },
		"Units[0].At.X":          func(p *float.Platform) { p.Units[0].At.X = nan },
		"Units[0].At.Y":          func(p *float.Platform) { p.Units[0].At.Y = inf },
		"Units[0].At.Z":          func(p *float.Platform) { p.Units[0].At.Z = 1e5 },
		"Units[0].Heading":       func(p *float.Platform) { p.Units[0].Heading = nan },
		"Units[0].Mass":          func(p *float.Platform) { p.Units[0].Mass = -1 },
		"Units[0].Leak":          func(p *float.Platform) { p.Units[0].Leak = 1 },
		"Weights[1].Mass":        func(p *float.Platform) { p.Weights[1].Mass = nan },
		"Weights[1].At.Z":        func(p *float.Platform) { p.Weights[1].At.Z = nan },
		"Corners[3].X":           func(p *float.Platform) { p.Corners[3].X = nan },
		"Density":                func(p *float.Platform) { p.Density = 0 },
		"TiltStop":               func(p *float.Platform) { p.TiltStop = 1.5 },
		"mass of the platform": func(p *float.Platform) {
			p.Weights = nil
			for i := range p.Units {
				p.Units[i].Mass = 0
			}
		},
	} {
		p := eight()
		spoil(p)
		_, err := p.Settle()
		var bad *measure.Error
		if !errors.As(err, &bad) {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if bad.Field != name {
			t.Errorf("error of %s, want %s", bad.Field, name)
		}
		if _, err := p.Righting(0, []float64{0, 0.1}); !errors.As(err, &bad) {
			t.Errorf("%s: righting gives %v", name, err)
		}
	}
	p := eight()
	for _, a := range [][2]float64{{nan, 0}, {0, inf}, {1.1, 0}, {0, -1.1}, {1, 0.48}, {math.Pi, 0}} {
		if _, err := p.SettleFrom(a[0], a[1]); !errors.Is(err, measure.ErrRange) {
			t.Errorf("from %v: %v", a, err)
		}
	}
	var none *float.Platform
	if _, err := none.Settle(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no platform: %v", err)
	}
	// A flooded unit's leak is not looked at.
	p.Units[0].Flooded, p.Units[0].Leak = true, 99
	if _, err := p.Settle(); err != nil {
		t.Error(err)
	}
	// A body whose integrals are no numbers is no rest, not a NaN.
	p.Units[1].Body = broken{}
	if s, err := p.Settle(); !errors.Is(err, float.ErrUnsettled) {
		t.Errorf("%+v, %v", s, err)
	}
	if _, err := p.Righting(0, []float64{0}); err == nil {
		t.Error("a righting curve of a broken body")
	}
}

type nothing struct{}

func (nothing) Volume() float64                   { return 0 }
func (nothing) Wet(float64, r3.Vec) (w float.Wet) { return w }

type broken struct{}

func (broken) Volume() float64 { return 1 }
func (broken) Wet(float64, r3.Vec) float.Wet {
	return float.Wet{Volume: math.NaN()}
}

func TestBadBodies(t *testing.T) {
	c := float.Cylinder{Diameter: 0.5, Length: 1}
	for _, x := range []float64{-1e-9, 0.6, math.NaN(), math.Inf(1)} {
		if _, err := c.Displaced(x); !errors.Is(err, measure.ErrRange) {
			t.Errorf("draft %v: %v", x, err)
		}
		if _, err := c.Draft(x); !errors.Is(err, measure.ErrRange) {
			t.Errorf("volume %v: %v", x, err)
		}
	}
	for _, c := range []float.Cylinder{{}, {Diameter: 1}, {Diameter: -1, Length: 1}, {Diameter: math.NaN(), Length: 1}} {
		if _, err := c.Displaced(0.1); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", c, err)
		}
		if _, err := c.Draft(0.1); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", c, err)
		}
		if w := c.Wet(0, r3.Vec{Z: 1}); w != (float.Wet{}) {
			t.Errorf("%+v: %+v", c, w)
		}
	}
	if w := (float.Block{Length: 1}).Wet(0, r3.Vec{Z: 1}); w != (float.Wet{}) {
		t.Errorf("%+v", w)
	}
	for _, up := range []r3.Vec{{}, {X: math.NaN()}, {Z: math.Inf(1)}} {
		if w := c.Wet(0, up); w != (float.Wet{}) {
			t.Errorf("%v: %+v", up, w)
		}
		if w := (float.Block{Length: 1, Width: 1, Height: 1}).Wet(0, up); w != (float.Wet{}) {
			t.Errorf("%v: %+v", up, w)
		}
	}
	// The length of up does not matter.
	a, b := c.Wet(0.1, r3.Vec{X: 0.06, Z: 0.08}), c.Wet(1, r3.Vec{X: 0.6, Z: 0.8})
	near(t, "volume with a long up", a.Volume, b.Volume, 1e-15)
}

func TestZeroState(t *testing.T) {
	var s float.State
	if s.Height(r3.Vec{X: 1}) != 0 || s.Freeboards() != nil || s.Tilt() != 0 {
		t.Errorf("%v %v %v", s.Height(r3.Vec{X: 1}), s.Freeboards(), s.Tilt())
	}
	if _, err := s.Unit(0); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("%v", err)
	}
	if _, _, err := s.Lowest(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("%v", err)
	}
	if k := s.Principal(); k[0].Height != 0 || k[1].Height != 0 || math.IsNaN(k[0].Axis) {
		t.Errorf("%v", k)
	}
	r, err := eight().Settle()
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range []int{-1, 8} {
		if _, err := r.Unit(i); !errors.Is(err, measure.ErrName) {
			t.Errorf("unit %d: %v", i, err)
		}
	}
}

// A state keeps what it was of when its platform is given other units.
func TestStateStands(t *testing.T) {
	p := eight()
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	u, err := s.Unit(7)
	if err != nil {
		t.Fatal(err)
	}
	p.Units, p.Corners, p.Density = nil, nil, 0
	v, err := s.Unit(7)
	if err != nil || u != v || len(s.Freeboards()) != 4 {
		t.Errorf("%+v, %v, want %+v", v, err, u)
	}
}

func TestFailureWords(t *testing.T) {
	for _, c := range []struct {
		f    float.Failure
		want string
	}{
		{float.Failure{Class: float.ErrSinks, Short: 12.34}, "platform: sinks; 12.3 kg of buoyancy lacking"},
		{float.Failure{Class: float.ErrNoFloat, Short: 100}, "platform: no float carries it; 100 kg of buoyancy lacking"},
		{float.Failure{Class: float.ErrUnsettled}, "platform: no balance found"},
		{float.Failure{Class: float.ErrCapsizes, Short: 50, Heel: 1.1}, "platform: capsizes past a heel of 63.0 deg and a trim of 0.0 deg; 50.0 N·m of righting moment lacking"},
	} {
		if got := c.f.Error(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if !strings.Contains((&float.Failure{Class: float.ErrSinks}).Error(), "kg") {
		t.Error("a failure without unit")
	}
}

// Leaning blocks, flooded ones among them, tell their lowest point.
func TestUnitsOfEveryKind(t *testing.T) {
	p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 300, At: r3.Vec{X: -0.4, Y: 0.3, Z: 0.2}}}}
	for i, x := range []float64{-1.5, 0, 1.5} {
		for _, y := range []float64{-1, 1} {
			p.Units = append(p.Units, float.Unit{Body: float.Block{Length: 0.9, Width: 0.5, Height: 0.4}, At: r3.Vec{X: x, Y: y, Z: -0.2}, Heading: float64(i), Mass: 6})
		}
	}
	p.Units[2].Flooded = true
	p.Units[3].Flooded, p.Units[3].Captive = true, true
	p.Units[4].Captive, p.Units[4].At.Z = true, 0.8
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	balance(t, p, s)
	for i, u := range p.Units {
		k, err := s.Unit(i)
		if err != nil {
			t.Fatal(err)
		}
		if i == 4 {
			near(t, "draft of a free block", k.Draft, 0.006/(0.9*0.5), 1e-12)
			continue
		}
		// The lowest of its eight corners.
		low := math.Inf(1)
		sin, cos := math.Sincos(u.Heading)
		for c := range 8 {
			x, y, z := 0.45*float64(c&1*2-1), 0.25*float64(c>>1&1*2-1), 0.2*float64(c>>2&1*2-1)
			low = min(low, s.Height(r3.Add(u.At, r3.Vec{X: x*cos - y*sin, Y: x*sin + y*cos, Z: z})))
		}
		near(t, "draft of a block", k.Draft, -low, 1e-12)
	}
}

// Up to sixteen units Settle allocates nothing.
func TestSettleAllocatesNothing(t *testing.T) {
	p := rows(8)
	p.Units[3].Leak = 0.01
	p.Units[5].Captive = true
	if n := testing.AllocsPerRun(100, func() {
		if _, err := p.Settle(); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

// TestDraftIsOfTheDeepest: a block barge draws m/(ρLB) level, after Archimedes; with a
// second unit lower down the draft is that one's; nothing rests on no unit.
func TestDraftIsOfTheDeepest(t *testing.T) {
	barge := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 3000}}, Units: []float.Unit{{Body: float.Block{Length: 4, Width: 2, Height: 1}}}}
	s, err := barge.Settle()
	if err != nil {
		t.Fatal(err)
	}
	if draft, err := s.Draft(); err != nil || math.Abs(draft-3000.0/(1000*4*2)) > 1e-12 {
		t.Errorf("a barge of 4 by 2 m with 3 t draws %g m, %v", draft, err)
	}
	barge.Units = append(barge.Units, float.Unit{Body: float.Block{Length: 1, Width: 0.5, Height: 0.2}, At: r3.Vec{Z: -0.7}, Flooded: true})
	s, err = barge.Settle()
	if err != nil {
		t.Fatal(err)
	}
	second, err := s.Unit(1)
	if err != nil {
		t.Fatal(err)
	}
	if draft, err := s.Draft(); err != nil || draft != second.Draft || !(draft > 0.6) {
		t.Errorf("with a full one below it draws %g m, %v; that one %g m", draft, err, second.Draft)
	}
	if draft, err := (float.State{}).Draft(); err == nil || draft != 0 {
		t.Errorf("a state of nothing draws %g m", draft)
	}
}
