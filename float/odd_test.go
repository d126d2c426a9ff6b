package float_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// wrapped is a block that the package does not know for one, and that can be told to
// contradict itself.
type wrapped struct {
	float.Block
	volume func(float64) float64
}

func (w wrapped) Wet(height float64, up r3.Vec) float.Wet {
	out := w.Block.Wet(height, up)
	if w.volume != nil {
		out.Volume = w.volume(out.Volume)
	}
	return out
}

// A body of the caller's that is far taller or flatter than the cube of its volume
// floats as the block that it is.
func TestWrappedBlock(t *testing.T) {
	for _, b := range []float.Block{{Length: 0.1, Width: 0.1, Height: 20}, {Length: 9, Width: 9, Height: 0.05}, {Length: 0.5, Width: 0.6, Height: 0.4}} {
		all := b.Volume()
		for _, share := range []float64{0.02, 0.3, 0.97} {
			build := func(body float.Body) *float.Platform {
				p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 4 * 0.4 * 1000 * 1.2, At: r3.Vec{Z: 0.1}}}}
				for _, at := range []r3.Vec{{X: -30, Y: -30}, {X: 30, Y: -30}, {X: 30, Y: 30}, {X: -30, Y: 30}} {
					p.Units = append(p.Units, float.Unit{Body: float.Block{Length: 1.2, Width: 1.2, Height: 1}, At: at, Mass: 5})
				}
				p.Units = append(p.Units, float.Unit{Body: body, Mass: share * 1000 * all, Captive: true, At: r3.Vec{Z: 40}})
				return p
			}
			known, err := build(b).Settle()
			if err != nil {
				t.Fatal(err)
			}
			own, err := build(wrapped{Block: b}).Settle()
			if err != nil {
				t.Fatal(err)
			}
			k, err := known.Unit(4)
			if err != nil || !k.Free {
				t.Fatal(k, err)
			}
			u, err := own.Unit(4)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "volume", u.Volume, k.Volume, 1e-12*all)
			near(t, "draft", u.Draft, share*b.Height, 1e-9*b.Height)
			near(t, "draft of the block", u.Draft, k.Draft, 1e-9*b.Height)
		}
		// Water that runs in it.
		for i, up := range []r3.Vec{{Z: 1}, {X: 0.1, Z: 1}, {X: 0.02, Y: -0.03, Z: 1}} {
			share := []float64{0.1, 0.5, 0.8}[i]
			build := func(body float.Body) *float.Platform {
				p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 40 * all, At: r3.Vec{X: 5 * up.X, Y: 5 * up.Y, Z: 0.1}}}}
				for _, at := range []r3.Vec{{X: -30, Y: -30}, {X: 30, Y: -30}, {X: 30, Y: 30}, {X: -30, Y: 30}} {
					p.Units = append(p.Units, float.Unit{Body: float.Block{Length: 10, Width: 10, Height: 1 + all}, At: at, Mass: 5})
				}
				p.Units = append(p.Units, float.Unit{Body: body, Mass: 1, Leak: share * all, At: r3.Vec{Z: 40}})
				return p
			}
			known, err := build(b).Settle()
			if err != nil {
				t.Fatal(err)
			}
			own, err := build(wrapped{Block: b}).Settle()
			if err != nil {
				t.Fatal(err)
			}
			near(t, "heel", own.Heel, known.Heel, 1e-12)
			near(t, "trim", own.Trim, known.Trim, 1e-12)
			near(t, "GM", own.GM[0][0], known.GM[0][0], 1e-9*math.Abs(known.GM[0][0]))
		}
	}
}

// A body that no longer gets wet, or no longer dry, after the platform came to rest
// gives numbers without end or no numbers, never a search without end.
func TestBodyContradictsItself(t *testing.T) {
	for _, always := range []float64{0, 4} {
		body := wrapped{Block: float.Block{Length: 2, Width: 2, Height: 1}, volume: func(float64) float64 { return always }}
		p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 500}}, Units: []float.Unit{{Body: body, Mass: 20, Leak: 1}}}
		if s, err := p.Settle(); err == nil && math.IsNaN(s.Level) {
			t.Errorf("%+v", s)
		}
	}
	for _, then := range []float64{0, 1} {
		dishonest := false
		body := wrapped{Block: float.Block{Length: 2, Width: 2, Height: 1}, volume: func(v float64) float64 {
			if dishonest {
				return then
			}
			return v
		}}
		p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 500}}, Units: []float.Unit{
			{Body: body, Mass: 20}, {Body: body, At: r3.Vec{Z: 30}, Mass: 20, Captive: true},
		}}
		s, err := p.Settle()
		if err != nil {
			t.Fatal(err)
		}
		dishonest = true
		for i := range p.Units {
			if u, err := s.Unit(i); err == nil && (math.IsNaN(u.Draft) || math.IsNaN(u.Push)) {
				t.Errorf("%+v", u)
			}
		}
	}
}

// What a sinking captive unit lacks is its weight less what it displaces whole.
func TestCaptiveSinksShort(t *testing.T) {
	p := eight()
	body := float.Cylinder{Diameter: 0.5, Length: 0.8}
	p.Units = append(p.Units, float.Unit{Body: body, Mass: 150, Leak: 0.02, Captive: true, At: r3.Vec{Z: 30}})
	s, err := p.Settle()
	if err == nil {
		_, err = s.Unit(8)
	}
	var f *float.Failure
	if !errors.As(err, &f) || !errors.Is(err, float.ErrSinks) {
		t.Fatal(err)
	}
	near(t, "short", f.Short, 150+999.7*0.02-999.7*body.Volume(), 1e-9)
}

// Level is 0, not minus 0, which prints with a sign.
func TestLevelHasNoSign(t *testing.T) {
	p := &float.Platform{
		Density: 1000, Weights: []float.Weight{{Mass: 500}},
		Units: []float.Unit{{Body: float.Block{Length: 2, Width: 2, Height: 0.4}}},
	}
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	if s.Heel != 0 || s.Trim != 0 || math.Signbit(s.Heel) || math.Signbit(s.Trim) {
		t.Errorf("heel %v, trim %v", s.Heel, s.Trim)
	}
}

// Turning the axes of the plan changes no period of heave, and none of roll and pitch
// where the two are alike; a drum held under whole, askew, turns with them.
func TestMotionTurnsWithThePlan(t *testing.T) {
	build := func(by float64) *float.Platform {
		sin, cos := math.Sincos(by)
		turned := func(x, y, z float64) r3.Vec { return r3.Vec{X: x*cos - y*sin, Y: x*sin + y*cos, Z: z} }
		p := &float.Platform{Density: 1000}
		for _, x := range []float64{-1, 1} {
			for _, y := range []float64{-1, 1} {
				p.Units = append(p.Units, float.Unit{Body: float.Block{Length: 0.7, Width: 0.7, Height: 0.5}, At: turned(2*x, 2*y, 0), Heading: by, Mass: 5})
			}
		}
		// Two, so that the whole stays alike both ways; under water from end to end.
		p.Units = append(p.Units,
			float.Unit{Body: float.Cylinder{Diameter: 0.3, Length: 2}, At: turned(0, 0, -1.2), Heading: by + 0.6, Mass: 5},
			float.Unit{Body: float.Cylinder{Diameter: 0.3, Length: 2}, At: turned(0, 0, -1.2), Heading: by + 0.6 + math.Pi/2, Mass: 5})
		load, err := float.Weight{Mass: 600, At: r3.Vec{Z: 0.3}}.Spread(4.7, 4.7)
		if err != nil {
			t.Fatal(err)
		}
		for i := range load {
			load[i].At = turned(load[i].At.X, load[i].At.Y, load[i].At.Z)
		}
		p.Weights = load
		return p
	}
	want, err := build(0).Motion()
	if err != nil {
		t.Fatal(err)
	}
	for _, by := range []float64{0.1, 0.7, 1.3} {
		got, err := build(by).Motion()
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct{ got, want float.Band }{{got.Heave, want.Heave}, {got.Roll, want.Roll}, {got.Pitch, want.Pitch}} {
			near(t, "longest", c.got.Longest, c.want.Longest, 1e-7)
			near(t, "shortest", c.got.Shortest, c.want.Shortest, 1e-7)
		}
		near(t, "roll and pitch, alike", got.Roll.Longest, got.Pitch.Longest, 1e-7)
	}
}

// The edge that goes under after the last angle but one is found, and one that was
// under from the start is marked at the start.
func TestUnderAtTheEnds(t *testing.T) {
	p := eight()
	all, err := p.Righting(0, steps(0.5, 51))
	if err != nil || !all.Under.Found {
		t.Fatal(all.Under, err)
	}
	c, err := p.Righting(0, []float64{0, all.Under.Angle - 0.1, all.Under.Angle + 0.01})
	if err != nil || !c.Under.Found {
		t.Fatal(c.Under, err)
	}
	near(t, "edge under", c.Under.Angle, all.Under.Angle, 1e-10)
	c, err = p.Righting(0, []float64{all.Under.Angle + 0.01, all.Under.Angle + 0.02, all.Under.Angle + 0.05})
	if err != nil || !c.Under.Found || c.Under.Angle != all.Under.Angle+0.01 {
		t.Errorf("%+v, %v", c.Under, err)
	}
}

// The ends of the ranges belong to them.
func TestEndsOfRanges(t *testing.T) {
	p := eight()
	p.Units[0].Heading, p.Units[1].Heading = 100, -100
	if _, err := p.Settle(); err != nil {
		t.Error(err)
	}
	p.Units[0].Heading = math.Nextafter(100, 200)
	if _, err := p.Settle(); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}

	q := eight()
	places := q.Units
	for len(places) < 64 {
		places = append(places, places[:min(8, 64-len(places))]...)
	}
	q.Units = q.Units[:1]
	if c, err := q.Fewest(context.Background(), places, float.Demand{Tries: 1}); errors.Is(err, measure.ErrRange) || err == nil && c.Platform == nil {
		t.Error(err)
	}
	if _, err := q.Fewest(context.Background(), append(places, places[0]), float.Demand{Tries: 1}); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}

	spoilt := slices.Clone(places)
	spoilt[63].Mass = math.NaN()
	if _, err := q.Fewest(context.Background(), spoilt, float.Demand{Tries: 1}); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}

	c := float.Crowd{People: 1, Inset: 0.15, Room: 0.6}
	var e *measure.Error
	for c.People = 1; c.People < 200; c.People++ {
		if _, err := eight().WorstCrowd(c); errors.As(err, &e) {
			break
		}
	}
	// The line is 17.088 m long; what a corner cuts off counts for nobody.
	if most := e.Range.Hi; float64(c.People) != most+1 || most > 17.088/0.6 || most < 24 {
		t.Errorf("%d people refused, room for %g", c.People, most)
	}
	c.People--
	if w, err := eight().WorstCrowd(c); err == nil && w.At == (r3.Vec{}) {
		t.Errorf("as many as there is room for: %+v", w)
	}
}

// How often the bodies are asked is compared with how often they were before: about,
// since a machine that rounds otherwise may end a search a step sooner.
func TestEffort(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	var settled, righted, least int
	asked := 0
	count := func(v float64) float64 { asked++; return v }
	for range 60 {
		p := &float.Platform{Density: 1000, Weights: []float.Weight{
			{Mass: 300 + 200*r.Float64(), At: r3.Vec{Z: 0.2}}, {Mass: 160 * r.Float64(), At: r3.Vec{X: 2*r.Float64() - 1, Y: r.Float64() - 0.5, Z: 1.2}},
		}}
		for _, x := range []float64{-2, 0, 2} {
			for _, y := range []float64{-1, 1} {
				p.Units = append(p.Units, float.Unit{
					Body: wrapped{float.Block{Length: 0.9, Width: 0.6, Height: 0.4 + 0.2*r.Float64()}, count},
					At:   r3.Vec{X: x + 0.2*r.Float64(), Y: y, Z: -0.3}, Heading: r.Float64(), Mass: 15, Leak: 0.02 * float64(r.IntN(2)),
				})
			}
		}
		p.Corners = []r3.Vec{{X: -2.5, Y: -1.3, Z: 0.1}, {X: 2.6, Y: -1.4, Z: 0.1}, {X: 2.4, Y: 1.3, Z: 0.1}, {X: -2.5, Y: 1.2, Z: 0.1}}
		asked = 0
		if _, err := p.Settle(); err != nil {
			t.Fatal(err)
		}
		settled, asked = settled+asked, 0
		if _, err := p.Righting(r.Float64(), steps(0.6, 13)); err != nil && !errors.Is(err, float.ErrCapsizes) {
			t.Fatal(err)
		}
		righted, asked = righted+asked, 0
		if _, err := p.WorstCrowd(float.Crowd{People: 1, Inset: 0.1}); err != nil && !errors.Is(err, float.ErrCapsizes) {
			t.Fatal(err)
		}
		least += asked
	}
	for _, c := range []struct {
		what        string
		got, before int
	}{{"rest", settled, 4368}, {"righting", righted, 166267}, {"a crowd", least, 440465}} {
		if math.Abs(float64(c.got-c.before)) > 0.003*float64(c.before) {
			t.Errorf("%s: the bodies were asked %d times, before %d times", c.what, c.got, c.before)
		}
	}
}

// Sizes that are none displace nothing, as a drum's do, and the largest numbers leave
// axes that are numbers.
func TestNoSizes(t *testing.T) {
	for _, b := range []float.Block{{10, -math.MaxFloat64, math.Copysign(0, -1)}, {1e30, -math.MaxFloat64, 0}, {math.NaN(), 1, 1}, {1, 1, math.Inf(1)}, {1, 1, 2e4}} {
		if v := b.Volume(); v != 0 {
			t.Errorf("%+v displaces %g m³", b, v)
		}
	}
	const most = math.MaxFloat64
	for _, gm := range [][2][2]float64{{{most, 0}, {0, -most}}, {{most, most}, {most, most}}, {{-most, most}, {most, most}}} {
		for _, m := range (float.State{GM: gm}).Principal() {
			if math.IsNaN(m.Axis) || math.IsNaN(m.Height) {
				t.Errorf("%g: %+v", gm, m)
			}
		}
	}
}

// A leak that is no number is refused where the unit is flooded too.
func TestFloodedLeak(t *testing.T) {
	u := float.Unit{Body: float.Block{Length: 1, Width: 1, Height: 1}, Flooded: true, Leak: math.NaN()}
	if parts, err := u.Slices(2, 2); !errors.Is(err, measure.ErrRange) {
		t.Errorf("%+v, %v", parts, err)
	}
	u.Leak = 0.5
	if parts, err := u.Slices(2, 2); err != nil || len(parts) != 4 {
		t.Errorf("%+v, %v", parts, err)
	}
}

// A unit at any depth has its work done on it, as far as numbers go.
func TestSupportFarDown(t *testing.T) {
	for _, captive := range []bool{false, true} {
		push, err := float.Unit{Body: float.Cylinder{Diameter: 0.58, Length: 0.88}, Mass: 18, Leak: 0.01, Captive: captive}.Support(1000)
		if err != nil {
			t.Fatal(err)
		}
		for _, sink := range []float64{math.MaxFloat64, 1e200, 1e99, -math.MaxFloat64, -1e99} {
			if force, stiffness, energy := push(sink); math.IsNaN(force) || stiffness != 0 || math.IsNaN(energy) {
				t.Errorf("at %g: %g, %g, %g", sink, force, stiffness, energy)
			}
		}
	}
}

// A rule that is none is refused before anything is tried.
func TestNoRule(t *testing.T) {
	units := []float.Unit{{Body: float.Block{Length: 2, Width: 2, Height: 0.5}, At: r3.Vec{Z: -0.25}}}
	p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 300}}, Corners: []r3.Vec{{X: -1, Y: -1, Z: 0.1}, {X: 1, Y: -1, Z: 0.1}, {X: 1, Y: 1, Z: 0.1}, {X: -1, Y: 1, Z: 0.1}}}
	crowd := float.Crowd{People: 1, Inset: 0.2}
	if _, err := p.Fewest(context.Background(), units, float.Demand{Crowd: crowd}); !errors.Is(err, float.ErrNoChoice) { // one float must not be lost
		t.Fatal(err)
	}
	for _, d := range []float.Demand{{Load: []float.Rule{nil}}, {Edge: []float.Rule{nil}}, {Lost: []float.Rule{nil}}} {
		d.Crowd = crowd
		if c, err := p.Fewest(context.Background(), units, d); !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%+v, %v", c, err)
		}
	}
}

// Water in a captive drum that hangs free of the water moves nothing: the attitude
// tells nothing of it, and nothing of the rest is lost.
func TestSurveyWithAHangingDrum(t *testing.T) {
	p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 400}}}
	for _, x := range []float64{-2, 2} {
		for _, y := range []float64{-1, 1} {
			p.Units = append(p.Units, float.Unit{Body: float.Cylinder{Diameter: 0.58, Length: 0.88}, At: r3.Vec{X: x, Y: y, Z: -0.3}, Mass: 10})
			p.Corners = append(p.Corners, r3.Vec{X: x, Y: y * x / 2, Z: 0.2})
		}
	}
	p.Units = append(p.Units, float.Unit{Body: float.Cylinder{Diameter: 0.2, Length: 0.4}, At: r3.Vec{Z: 3}, Captive: true})
	got, err := float.Survey{Plan: p, Freeboards: taped(t, p, 0.003), Doubt: float.Doubt{Mass: 0.05, Place: 0.01}}.Find()
	if err != nil || !(got.Sound > 0.3 && got.Sound <= 1) {
		t.Errorf("sound %g, %v", got.Sound, err)
	}
	for _, l := range got.Leaks {
		if slices.Contains(l.Units, 4) {
			t.Errorf("it tells of the drum in the air: %+v", l)
		}
	}
}

// An accuracy that no tape has is refused, not squared into an infinity.
func TestAccuracyOfAnything(t *testing.T) {
	girth, length, mass := float.Figure{Value: 1.82, Within: 0.01}, float.Figure{Value: 0.88}, float.Figure{Value: 18}
	if _, err := float.MeasureDrum(girth, length, mass); err != nil {
		t.Fatal(err)
	}
	for _, within := range []float64{math.MaxFloat64, 1e300, math.Inf(1), math.NaN(), -1} {
		girth.Within = within
		if d, err := float.MeasureDrum(girth, length, mass); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v, %v", d, err)
		}
	}
}
