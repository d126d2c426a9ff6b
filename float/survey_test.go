package float_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// taped returns the freeboards of a platform at rest as a perfect tape reads them,
// and the accuracy it claims.
func taped(t testing.TB, p *float.Platform, within float64) []float.Figure {
	t.Helper()
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	var out []float.Figure
	for _, h := range s.Freeboards() {
		out = append(out, float.Figure{Value: h, Within: within})
	}
	return out
}

// certain is a doubt so small that it does not bear on the result.
var certain = float.Doubt{Mass: 1e-6, Place: 1e-6, Volume: 1e-6, Each: 1e-6, Aboard: 1e-6}

// TestSurveyInverse checks that the survey of a dock at rest returns the attitude,
// the mass and the centre of gravity that were put in, whatever the plan says.
func TestSurveyInverse(t *testing.T) {
	people := []float.Weight{{Mass: 84, At: r3.Vec{X: 1, Y: 0.9, Z: 1}}, {Mass: 140, At: r3.Vec{X: -2, Y: -1, Z: 0.1}}}
	for _, c := range []struct {
		name   string
		change func(*float.Platform)
		extra  float.Weight
	}{
		{"as planned", func(*float.Platform) {}, float.Weight{}},
		{"heavier, to one side", func(*float.Platform) {}, float.Weight{Mass: 130, At: r3.Vec{X: 1.5, Y: 1.1, Z: -0.1}}},
		{"lighter", func(*float.Platform) {}, float.Weight{Mass: 0, At: r3.Vec{}}},
		{"drums across, one captive", func(p *float.Platform) {
			for i := range p.Units {
				p.Units[i].Heading = math.Pi / 2
			}
			p.Units[3].Captive = true
		}, float.Weight{Mass: 60, At: r3.Vec{X: -1, Z: -0.1}}},
		{"water known to be in a drum, another flooded", func(p *float.Platform) {
			p.Units[2].Leak, p.Units[5].Flooded = 0.03, true
		}, float.Weight{Mass: 20, At: r3.Vec{X: -1, Z: -0.1}}},
		{"corners at several heights", func(p *float.Platform) {
			p.Corners[0].Z, p.Corners[2].Z = 0.1, -0.2
			p.Corners = append(p.Corners, r3.Vec{X: -1, Y: 1.3, Z: 0.4})
		}, float.Weight{Mass: 50, At: r3.Vec{Y: -0.5, Z: -0.1}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan := drumDock(0)
			c.change(plan)
			// The truth: the extra weight at the height of the plan's centre, since
			// freeboards cannot tell heights.
			bare, err := plan.Settle()
			if err != nil {
				t.Fatal(err)
			}
			c.extra.At.Z = bare.Gravity.Z
			truth := plan.With(c.extra)
			whole, err := truth.Settle()
			if err != nil {
				t.Fatal(err)
			}
			got, err := float.Survey{Plan: plan, Aboard: people, Freeboards: taped(t, truth.With(people...), 0.003), Doubt: certain}.Find()
			if err != nil {
				t.Fatal(err)
			}
			loaded, err := truth.With(people...).Settle()
			if err != nil {
				t.Fatal(err)
			}
			for _, v := range []struct {
				what      string
				got, want float64
			}{
				{"heel", got.Heel.Value, loaded.Heel},
				{"trim", got.Trim.Value, loaded.Trim},
				{"level", got.Level.Value, loaded.Level},
				{"mass", got.Mass.Value / 1000, whole.Mass / 1000},
				{"excess", got.Excess.Value / 1000, c.extra.Mass / 1000},
			} {
				if math.Abs(v.got-v.want) > 1e-9 {
					t.Errorf("%s %.12g, put in %.12g", v.what, v.got, v.want)
				}
			}
			if c.name != "water known to be in a drum, another flooded" { // there the loose water moves
				for _, v := range [][2]float64{{got.Centre.X, whole.Gravity.X}, {got.Centre.Y, whole.Gravity.Y}} {
					if math.Abs(v[0]-v[1]) > 2e-3 { // the plan's own height, seen from another tilt
						t.Errorf("centre %+v, put in %+v", got.Centre, whole.Gravity)
					}
				}
			}
			if got.Fits < 0.999 {
				t.Errorf("a flat deck, read without error, fits %g", got.Fits)
			}
			if !slices.Contains(got.Notices, float.DrumNotice) {
				t.Error("no notice on reused drums")
			}
		})
	}
}

// TestSurveyCentre checks the centre of gravity exactly: the extra weight at the
// plan's own height, no loose water, no captive drum.
func TestSurveyCentre(t *testing.T) {
	plan := drumDock(0)
	bare, err := plan.Settle()
	if err != nil {
		t.Fatal(err)
	}
	truth := plan.With(float.Weight{Mass: 150, At: r3.Vec{X: 1.2, Y: 0.8, Z: bare.Gravity.Z}})
	whole, err := truth.Settle()
	if err != nil {
		t.Fatal(err)
	}
	got, err := float.Survey{Plan: plan, Freeboards: taped(t, truth, 0.002), Doubt: certain}.Find()
	if err != nil {
		t.Fatal(err)
	}
	if r3.Norm(r3.Sub(got.Centre, whole.Gravity)) > 1e-9 || r3.Norm(r3.Sub(got.Shift, r3.Sub(whole.Gravity, bare.Gravity))) > 1e-9 {
		t.Errorf("centre %+v shift %+v, put in %+v", got.Centre, got.Shift, whole.Gravity)
	}
	// 2 mm at four corners of a dock that sinks 1 mm under about 6 kg.
	if !(got.Mass.Within > 3 && got.Mass.Within < 15 && got.Within.Y > 0.001 && got.Within.X > 0.001 && got.Within.X < 0.1) {
		t.Errorf("mass ± %g kg, centre ± %+v", got.Mass.Within, got.Within)
	}
}

// TestSurveyTwist lifts one corner after the other by 20 mm. By hand: the last
// corner stands over the plane of the others by h3 - h2 + h1 - h0, so by +20, -20,
// +20, -20 mm for corners 3, 2, 1, 0; four tapes of 3 mm give it ±6 mm; and the best
// plane leaves a quarter of it, 5 mm, at each corner: with 1.5 mm the standard
// deviation, χ² = 4 (5/1.5)² = 44, far beyond chance.
func TestSurveyTwist(t *testing.T) {
	plan := drumDock(0)
	for i, sign := range []float64{-1, 1, -1, 1} {
		f := taped(t, plan, 0.003)
		f[i].Value += 0.020
		got, err := float.Survey{Plan: plan, Freeboards: f}.Find()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got.Twist.Value-sign*0.020) > 1e-5 || math.Abs(got.Twist.Within-0.006) > 1e-5 {
			t.Errorf("corner %d: twist %g ± %g m", i, got.Twist.Value, got.Twist.Within)
		}
		for k, e := range got.Residuals {
			want := 0.005
			if (k+i)%2 == 1 {
				want = -want
			}
			if math.Abs(e-want) > 1e-5 {
				t.Errorf("corner %d lifted: residual %g at corner %d, by hand %g", i, e, k, want)
			}
		}
		if !(got.Fits < 1e-9) {
			t.Errorf("fits %g", got.Fits)
		}
	}
	// Within the tape's accuracy nothing is said: χ² = 4 (1/1.5)² = 1.78, p = 0.18.
	f := taped(t, plan, 0.003)
	f[2].Value += 0.004
	got, err := float.Survey{Plan: plan, Freeboards: f}.Find()
	if err != nil || math.Abs(got.Fits-0.182) > 0.002 {
		t.Errorf("fits %g, %v", got.Fits, err)
	}
	// Three corners always fit, and have no twist.
	three := drumDock(0)
	three.Corners = three.Corners[:3]
	got, err = float.Survey{Plan: three, Freeboards: taped(t, three, 0.003)}.Find()
	if err != nil || got.Fits != 1 || got.Twist != (float.Figure{}) {
		t.Errorf("three corners: %+v, %v", got, err)
	}
}

// TestSurveyLeak pours water into each drum in turn and looks for it. Within the
// tape's accuracy and small doubts it must find the drum and the amount; the
// drum's neighbours may explain it less well.
func TestSurveyLeak(t *testing.T) {
	small := float.Doubt{Mass: 0.01, Place: 0.005, Volume: 0.002, Each: 0.002}
	for i := range drumDock(0).Units {
		for _, litres := range []float64{25, 80} {
			plan := drumDock(0)
			truth := plan.With()
			truth.Units[i].Leak = litres * measure.Litre
			got, err := float.Survey{Plan: plan, Freeboards: taped(t, truth, 0.003), Doubt: small}.Find()
			if err != nil {
				t.Fatal(err)
			}
			if len(got.Leaks) == 0 {
				t.Errorf("drum %d, %g L: no leak found; as planned %g", i, litres, got.AsPlanned)
				continue
			}
			best := got.Leaks[0]
			if !slices.Equal(best.Units, []int{i}) {
				t.Errorf("drum %d, %g L: found %+v", i, litres, got.Leaks)
				continue
			}
			v := best.Volume[0]
			if math.Abs(v.Value/measure.Litre-litres) > 0.01*litres || !(v.Within > 0.5*measure.Litre && v.Within < 20*measure.Litre) {
				t.Errorf("drum %d: %g ± %g L, put in %g", i, v.Value/measure.Litre, v.Within/measure.Litre, litres)
			}
			if best.Fits < 0.99 || got.Sound > 0.05 || got.AsPlanned > 0.01 || best.Sure < 0.3 {
				t.Errorf("drum %d, %g L: fits %g, sure %g, sound %g, as planned %g", i, litres, best.Fits, best.Sure, got.Sound, got.AsPlanned)
			}
			if math.Abs(got.Excess.Value/litres/0.9999-1) > 0.001 {
				t.Errorf("excess %g kg of %g L", got.Excess.Value, litres)
			}
			sum := got.Sound
			for _, l := range got.Leaks {
				sum += l.Sure
			}
			if sum > 1+1e-9 {
				t.Errorf("chances sum to %g", sum)
			}
		}
	}
}

// TestSurveyTwoLeaks pours water into two drums on opposite corners: no single
// drum explains a dock that sinks level, the pair does.
func TestSurveyTwoLeaks(t *testing.T) {
	small := float.Doubt{Mass: 0.01, Place: 0.005, Volume: 0.002, Each: 0.002}
	plan := drumDock(0)
	truth := plan.With()
	truth.Units[0].Leak, truth.Units[6].Leak = 0.09, 0.06
	got, err := float.Survey{Plan: plan, Freeboards: taped(t, truth, 0.002), Doubt: small}.Find()
	if err != nil {
		t.Fatal(err)
	}
	if got.AsPlanned > 1e-6 || len(got.Leaks) == 0 {
		t.Fatalf("as planned %g, leaks %+v", got.AsPlanned, got.Leaks)
	}
	found := slices.IndexFunc(got.Leaks, func(l float.Leak) bool { return slices.Equal(l.Units, []int{0, 6}) })
	if found < 0 {
		t.Fatalf("the pair is not among %+v", got.Leaks)
	}
	l := got.Leaks[found]
	if l.Fits < 0.9 || math.Abs(l.Volume[0].Value-0.09) > 0.005 || math.Abs(l.Volume[1].Value-0.06) > 0.005 {
		t.Errorf("%+v", l)
	}
	for _, l := range got.Leaks {
		if len(l.Units) == 1 {
			t.Errorf("a single drum explains it: %+v", l)
		}
	}
}

// TestSurveySound checks a dock that is as planned, and one heavier than any leak.
func TestSurveySound(t *testing.T) {
	plan := drumDock(0)
	got, err := float.Survey{Plan: plan, Freeboards: taped(t, plan, 0.003)}.Find()
	if err != nil || got.AsPlanned < 0.999 || got.Sound < 0.5 {
		t.Errorf("as planned %g, sound %g, leaks %+v, %v", got.AsPlanned, got.Sound, got.Leaks, err)
	}
	heavy := plan.With(float.Weight{Mass: 500, At: r3.Vec{Z: 0.1}})
	got, err = float.Survey{Plan: plan, Freeboards: taped(t, heavy, 0.003), Doubt: certain}.Find()
	if err != nil || got.AsPlanned > 1e-9 {
		t.Errorf("500 kg more is as planned to %g, %v", got.AsPlanned, err)
	}
	if math.Abs(got.Excess.Value-500) > 1e-6 {
		t.Errorf("excess %+v", got.Excess)
	}
}

// TestSurveyCoverage reads the tape 400 times with errors of its accuracy (normal,
// two standard deviations; a fixed seed) and counts how often the truth lies in the
// range: 19 times in 20 is 380, the count's own standard deviation 4.4.
func TestSurveyCoverage(t *testing.T) {
	plan := drumDock(0)
	truth := plan.With(float.Weight{Mass: 60, At: r3.Vec{X: 0.8, Y: -0.5, Z: -0.16}})
	whole, err := truth.Settle()
	if err != nil {
		t.Fatal(err)
	}
	clean := taped(t, truth, 0.004)
	rng := rand.New(rand.NewPCG(1, 2))
	// Doubts of the plan's weights, which the mass found does not rest on, keep the
	// search for leaks short.
	wide := certain
	wide.Mass, wide.Place = 0.2, 0.2
	const n = 400
	var in [4]int
	for range n {
		f := slices.Clone(clean)
		for i := range f {
			f[i].Value += rng.NormFloat64() * f[i].Within / 2
		}
		got, err := float.Survey{Plan: plan, Freeboards: f, Doubt: wide}.Find()
		if err != nil {
			t.Fatal(err)
		}
		for k, v := range [][3]float64{
			{got.Mass.Value, got.Mass.Within, whole.Mass},
			{got.Heel.Value, got.Heel.Within, whole.Heel},
			{got.Centre.X, got.Within.X, whole.Gravity.X},
			{got.Centre.Y, got.Within.Y, whole.Gravity.Y},
		} {
			if math.Abs(v[0]-v[2]) <= v[1] {
				in[k]++
			}
		}
	}
	for k, name := range []string{"mass", "heel", "centre along", "centre across"} {
		if in[k] < 364 || in[k] > 396 {
			t.Errorf("%s: in its range %d times of %d", name, in[k], n)
		}
	}
}

// TestExpect works a box by hand: freeboard H - d with d = M/(ρLB). A share m more
// mass sinks it by m d; a share v more length lifts it by v d (each drum's own v the
// same, there being one); a centre off by p trims it by p/GM along, so that a corner
// half the side away moves by that times the side's half.
func TestExpect(t *testing.T) {
	p := boxDock()
	d := boxMass / (boxRho * boxL * boxB)
	gm := func(side float64) float64 { return d/2 + side*side/12/d - boxZG }
	doubt := float.Doubt{Mass: 0.06, Place: 0.02, Volume: 0.03, Each: 0.01}
	want := math.Sqrt(math.Pow(0.06*d, 2) + math.Pow(0.03*d, 2) + math.Pow(0.01*d, 2) +
		math.Pow(0.02/gm(boxL)*boxL/2, 2) + math.Pow(0.02/gm(boxB)*boxB/2, 2))
	got, err := p.Expect(doubt)
	if err != nil || len(got) != 4 {
		t.Fatal(got, err)
	}
	for i, f := range got {
		if math.Abs(f.Value-(boxH-d)) > 1e-12 || math.Abs(f.Within/want-1) > 1e-3 {
			t.Errorf("corner %d: %.6f ± %.6f m, by hand %.6f ± %.6f", i, f.Value, f.Within, boxH-d, want)
		}
	}
	// The defaults: 10 %, 5 cm, 2 %, 1 %.
	zero, err := p.Expect(float.Doubt{})
	said, err2 := p.Expect(float.Doubt{Mass: 0.10, Place: 0.05, Volume: 0.02, Each: 0.01, Aboard: 0.10})
	if err != nil || err2 != nil || !slices.Equal(zero, said) {
		t.Errorf("%v, defaults said %v; %v %v", zero, said, err, err2)
	}
	// A wave under the dock does not matter, nor is the dock changed.
	p.Wave = &float.Wave{Height: 0.1, Length: 40}
	again, err := p.Expect(float.Doubt{})
	if err != nil || !slices.Equal(zero, again) || p.Wave == nil {
		t.Errorf("on a wave %v, %v", again, err)
	}
}

// strange is a body of the user's own: a box seen through the interface.
type strange struct{ float.Block }

// TestExpectBodies checks that a body of another kind is varied like one of ours.
func TestExpectBodies(t *testing.T) {
	p := boxDock()
	want, err := p.Expect(float.Doubt{})
	if err != nil {
		t.Fatal(err)
	}
	p.Units[0].Body = strange{p.Units[0].Body.(float.Block)}
	got, err := p.Expect(float.Doubt{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range got {
		if math.Abs(got[i].Value-want[i].Value) > 1e-9 || math.Abs(got[i].Within/want[i].Within-1) > 1e-3 {
			t.Errorf("corner %d: %+v, as a block %+v", i, got[i], want[i])
		}
	}
}

// TestSurveyAboard checks that doubt of what is aboard widens the mass by as much.
func TestSurveyAboard(t *testing.T) {
	plan := drumDock(0)
	snow := []float.Weight{{Mass: 300, At: r3.Vec{}}}
	f := taped(t, plan.With(snow...), 0.001)
	a, err := float.Survey{Plan: plan, Aboard: snow, Freeboards: f, Doubt: certain}.Find()
	unsure := certain
	unsure.Aboard = 0.20
	b, err2 := float.Survey{Plan: plan, Aboard: snow, Freeboards: f, Doubt: unsure}.Find()
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	if want := math.Hypot(a.Mass.Within, 60); math.Abs(b.Mass.Within-want) > 1e-3 || math.Abs(b.Mass.Value-a.Mass.Value) > 1e-9 {
		t.Errorf("mass %+v with sure snow, %+v with 300 ± 60 kg", a.Mass, b.Mass)
	}
}

func TestSurveyRefuses(t *testing.T) {
	nan := math.NaN()
	plan := drumDock(0)
	good := taped(t, plan, 0.003)
	with := func(change func(*float.Survey)) float.Survey {
		s := float.Survey{Plan: plan.With(), Freeboards: slices.Clone(good)}
		change(&s)
		return s
	}
	for _, c := range []struct {
		name string
		s    float.Survey
		want error
	}{
		{"no plan", float.Survey{}, measure.ErrUnknown},
		{"no corners", with(func(s *float.Survey) { s.Plan.Corners, s.Freeboards = nil, nil }), measure.ErrUnknown},
		{"a freeboard short", with(func(s *float.Survey) { s.Freeboards = s.Freeboards[:3] }), measure.ErrUnknown},
		{"NaN freeboard", with(func(s *float.Survey) { s.Freeboards[1].Value = nan }), measure.ErrRange},
		{"no accuracy", with(func(s *float.Survey) { s.Freeboards[1].Within = 0 }), measure.ErrRange},
		{"NaN accuracy", with(func(s *float.Survey) { s.Freeboards[1].Within = nan }), measure.ErrRange},
		{"inches for metres", with(func(s *float.Survey) { s.Freeboards[1].Value = 22 }), measure.ErrRange},
		{"NaN aboard", with(func(s *float.Survey) { s.Aboard = []float.Weight{{Mass: nan}} }), measure.ErrRange},
		{"negative doubt", with(func(s *float.Survey) { s.Doubt.Mass = -0.1 }), measure.ErrRange},
		{"NaN place", with(func(s *float.Survey) { s.Doubt.Place = nan }), measure.ErrRange},
		{"corners on a line", with(func(s *float.Survey) {
			for i := range s.Plan.Corners {
				s.Plan.Corners[i].Y = 0
			}
		}), measure.ErrUnknown},
		{"corners mixed up", with(func(s *float.Survey) { s.Freeboards[0].Value, s.Freeboards[3].Value = 6, -6 }), measure.ErrUnknown},
		{"more aboard than the drums carry", with(func(s *float.Survey) { s.Aboard = []float.Weight{{Mass: 5000}} }), measure.ErrUnknown},
		{"plan sinks", with(func(s *float.Survey) { s.Plan.Weights[0].Mass = 5000 }), float.ErrSinks},
		{"bad plan", with(func(s *float.Survey) { s.Plan.Density = nan }), measure.ErrRange},
	} {
		if got, err := c.s.Find(); !errors.Is(err, c.want) {
			t.Errorf("%s: %+v, %v", c.name, got, err)
		}
	}
	bare := plan.With()
	bare.Corners = nil
	sunk := plan.With(float.Weight{Mass: 5000})
	nearly := boxDock()
	nearly.Weights[0].Mass = 0.999 * boxRho * boxL * boxB * boxH
	for _, c := range []struct {
		name string
		p    *float.Platform
		d    float.Doubt
		want error
	}{
		{"no platform", nil, float.Doubt{}, measure.ErrUnknown},
		{"no corners", bare, float.Doubt{}, measure.ErrUnknown},
		{"sinks", sunk, float.Doubt{}, float.ErrSinks},
		{"sinks within its doubt", nearly, float.Doubt{}, float.ErrSinks},
		{"doubt of 60 %", plan, float.Doubt{Each: 0.6}, measure.ErrRange},
	} {
		if got, err := c.p.Expect(c.d); !errors.Is(err, c.want) || got != nil {
			t.Errorf("%s: %v, %v", c.name, got, err)
		}
	}
}
