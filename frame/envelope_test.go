package frame_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
	"github.com/google/go-cmp/cmp"
)

// spans returns a beam over n equal spans of 1 m on rigid rests.
func spans(n int) frame.Beam {
	b := frame.Beam{Length: float64(n), EI: 1}
	for i := range n + 1 {
		b.Rests = append(b.Rests, frame.Rest{At: float64(i)})
	}
	return b
}

// TestInfluenceIsAUnitLoad compares influence lines with the answers to a small
// load set down at places all along.
func TestInfluenceIsAUnitLoad(t *testing.T) {
	each(t, 60, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, linear)
		b.Loads = nil
		x := b.Length * r.Float64()
		rest := r.IntN(len(b.Rests))
		// The line is the same wherever settled supports have brought the beam.
		down := b
		down.Rests = append([]frame.Rest(nil), b.Rests...)
		for i := range down.Rests {
			down.Rests[i].Settlement = 0.02 * r.Float64()
		}
		moment, err := down.MomentInfluence(x)
		if err != nil {
			t.Fatal(err)
		}
		shear, err := b.ShearInfluence(x)
		if err != nil {
			t.Fatal(err)
		}
		deflection, err := b.DeflectionInfluence(x)
		if err != nil {
			t.Fatal(err)
		}
		push, err := down.PushInfluence(rest)
		if err != nil {
			t.Fatal(err)
		}
		for range 10 {
			a := b.Length * r.Float64()
			b.Loads = []frame.Load{frame.Point(a, 1)}
			l := solve(t, b)
			s := sizes(l)
			near(t, "moment", moment.At(a), l.At(x).Moment, 1e-8*(s.Moment+b.Length))
			near(t, "shear", shear.At(a), l.At(x).Shear, 1e-8*(1+s.Shear))
			near(t, "deflection", deflection.At(a), l.At(x).Deflection, 1e-8*s.Deflection)
			near(t, "push", push.At(a), l.Push[rest], 1e-8*(1+math.Abs(l.Push[rest])))
		}
		// A spread load is the area under the line.
		from, to := b.Length*r.Float64(), b.Length*r.Float64()
		if from > to {
			from, to = to, from
		}
		plus, minus := moment.Area(from, to)
		b.Loads = []frame.Load{frame.Uniform(from, to, 1)}
		l := solve(t, b)
		near(t, "area", plus+minus, l.At(x).Moment, 1e-8*(sizes(l).Moment+b.Length*b.Length))
		if plus < 0 || minus > 0 {
			t.Errorf("parts %g and %g", plus, minus)
		}
	})
}

func TestInfluenceEnds(t *testing.T) {
	// A cantilever from the right: a load of 1 N at a turns it by 4-a at the wall.
	b := frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 4, Clamped: true}}}
	f, err := b.MomentInfluence(4)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "moment at the wall", f.At(1), -3, 1e-9)
	if f, err = b.ShearInfluence(4); err != nil {
		t.Fatal(err)
	}
	near(t, "shear at the wall", f.At(1), -1, 1e-12)
	b.Rests[0].At = 0
	if f, err = b.MomentInfluence(0); err != nil {
		t.Fatal(err)
	}
	near(t, "moment at the wall", f.At(1), -1, 1e-9)
	if f, err = b.ShearInfluence(0); err != nil {
		t.Fatal(err)
	}
	near(t, "shear at the wall", f.At(1), 1, 1e-12)

	b = spans(2)
	if f, err = b.ShearInfluence(0.5); err != nil {
		t.Fatal(err)
	}
	near(t, "jump of the shear's line", f.At(0.5)-f.Before(0.5), 1, 1e-12)
	if f, err = b.MomentInfluence(1); err != nil {
		t.Fatal(err)
	}
	// M = -a(1-a²)/4 is largest at a = 1/√3 (differentiated by hand).
	x, m := f.Least()
	near(t, "worst hogging", m, -1/(6*math.Sqrt(3)), 1e-12)
	near(t, "at", math.Min(x, 2-x), 1/math.Sqrt(3), 1e-6)
	if _, most := f.Most(); math.Abs(most) > 1e-12 {
		t.Errorf("a load sags the middle support by %g", most)
	}

	// Where a support has let go, the line is that of the beam without it.
	b = frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 2, Support: frame.Gap(1, 1e6)}, {At: 4}}}
	if f, err = b.MomentInfluence(2); err != nil {
		t.Fatal(err)
	}
	near(t, "moment at midspan", f.At(2), 1, 1e-9)

	for _, bad := range []float64{-1, 5, math.NaN()} {
		for _, of := range []func(float64) (*frame.Influence, error){b.MomentInfluence, b.ShearInfluence, b.DeflectionInfluence} {
			if _, err := of(bad); !errors.Is(err, measure.ErrRange) {
				t.Errorf("x = %g: %v", bad, err)
			}
		}
	}
	for _, bad := range []int{-1, 3} {
		if _, err := b.PushInfluence(bad); !errors.Is(err, measure.ErrRange) {
			t.Errorf("rest %d: %v", bad, err)
		}
	}
	b.Rests = b.Rests[:1]
	if _, err := b.PushInfluence(0); !errors.Is(err, frame.ErrMechanism) {
		t.Errorf("a loose beam: %v", err)
	}
	b.Length = -1
	if _, err := b.PushInfluence(0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a bad beam: %v", err)
	}
}

// TestPatterns compares the worst of all patterns with the areas of influence
// lines, which add up the spans that make it worse.
func TestPatterns(t *testing.T) {
	each(t, 25, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, linear)
		b.Loads = nil
		const q = 700.0
		cases, err := b.Patterns(q)
		if err != nil {
			t.Fatal(err)
		}
		x := b.Length * r.Float64()
		e, err := b.Envelope(cases, x)
		if err != nil {
			t.Fatal(err)
		}
		whole := cases[len(cases)-1] // every span is loaded in the last one
		f, err := b.MomentInfluence(x)
		if err != nil {
			t.Fatal(err)
		}
		var most, least float64
		for _, span := range whole {
			p, m := f.Area(span.From, span.To)
			most += math.Max(q*(p+m), 0)
			least += math.Min(q*(p+m), 0)
		}
		size := q * b.Length * b.Length
		near(t, "most", e.Stations[0].Moment.Most, most, 1e-9*size)
		near(t, "least", e.Stations[0].Moment.Least, least, 1e-9*size)
		if e.Sag.Moment < most-1e-9*size || e.Hog.Moment > least+1e-9*size {
			t.Errorf("peaks %v, %v within the bounds %g, %g at x = %g", e.Sag, e.Hog, most, least, x)
		}
		f, err = b.PushInfluence(0)
		if err != nil {
			t.Fatal(err)
		}
		most = 0
		for _, span := range whole {
			p, m := f.Area(span.From, span.To)
			most += math.Max(q*(p+m), 0)
		}
		near(t, "push", e.Push[0].Most, most, 1e-9*size)
	})
}

// TestLongPatterns looks at what is given and refused beyond twelve spans.
func TestLongPatterns(t *testing.T) {
	b := spans(13)
	long, err := b.Patterns(1)
	if err != nil {
		t.Fatal(err)
	}
	if len(long) != 2+2+2*12 {
		t.Errorf("%d patterns", len(long))
	}
	b.Rests[3].Support = frame.OneWay(1e5)
	if _, err := b.Patterns(1); !errors.Is(err, measure.ErrNotComputed) || !strings.Contains(err.Error(), "13 spans") {
		t.Errorf("13 spans on supports that give: %v", err)
	}
	if _, err := b.Patterns(math.NaN()); !errors.Is(err, measure.ErrRange) {
		t.Errorf("q = NaN: %v", err)
	}
	b.EI = 0
	if _, err := b.Patterns(1); !errors.Is(err, measure.ErrRange) {
		t.Errorf("EI = 0: %v", err)
	}
}

func TestEnvelope(t *testing.T) {
	b := spans(2)
	cases := [][]frame.Load{{frame.Uniform(0, 1, 1)}, {frame.Uniform(1, 2, 1)}, nil}
	e, err := b.Envelope(cases, 0.5, 1)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "uplift", e.Push[0].Least, -1.0/16, 1e-12)
	if e.Push[0].LeastCase != 1 || e.Push[0].MostCase != 0 || e.Sag.Case > 1 {
		t.Errorf("wrong cases: %+v", e)
	}
	// Right of the middle support the shear reaches 9/16, left of it -9/16.
	near(t, "shear", e.Stations[1].Shear.Most, 9.0/16, 1e-12)
	near(t, "shear", e.Stations[1].Shear.Least, -9.0/16, 1e-12)
	again, err := b.Envelope(cases, 0.5, 1)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(e, again); d != "" {
		t.Error(d)
	}
	for _, want := range []string{"largest sagging, case", "N·m", "push of rest 0: -0.1 N to 0.4 N", "x = 0.500 m: shear"} {
		if !strings.Contains(e.String(), want) {
			t.Errorf("no %q in\n%s", want, e)
		}
	}
	if _, err := b.Envelope(nil); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no cases: %v", err)
	}
	if _, err := b.Envelope(cases, 3); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a place off the beam: %v", err)
	}
	b.Rests[0].Support, b.Rests[1].Support, b.Rests[2].Support = frame.OneWay(1), frame.OneWay(1), frame.OneWay(1)
	if _, err := b.Envelope([][]frame.Load{nil, {frame.Point(1, -1)}}); !errors.Is(err, frame.ErrMechanism) || !strings.Contains(err.Error(), "case 1") {
		t.Errorf("lifted: %v", err)
	}
}

// TestWalk compares a moving load with the influence lines.
func TestWalk(t *testing.T) {
	each(t, 12, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, linear)
		b.Loads = nil
		x := b.Length * r.Float64()
		e, err := b.Walk([]frame.Load{frame.Point(0, 800)}, b.Length/40, x)
		if err != nil {
			t.Fatal(err)
		}
		for name, c := range map[string]struct {
			bound frame.Bound
			of    func() (*frame.Influence, error)
		}{
			"moment":     {e.Stations[0].Moment, func() (*frame.Influence, error) { return b.MomentInfluence(x) }},
			"shear":      {e.Stations[0].Shear, func() (*frame.Influence, error) { return b.ShearInfluence(x) }},
			"deflection": {e.Stations[0].Deflection, func() (*frame.Influence, error) { return b.DeflectionInfluence(x) }},
			"push":       {e.Push[0], func() (*frame.Influence, error) { return b.PushInfluence(0) }},
		} {
			f, err := c.of()
			if err != nil {
				t.Fatal(err)
			}
			_, most := f.Most()
			_, least := f.Least()
			near(t, "most "+name, c.bound.Most, 800*most, 800*1e-5*(most-least))
			near(t, "least "+name, c.bound.Least, 800*least, 800*1e-5*(most-least))
		}
	})
}

// TestWalkBesideARest: over a rest the shear reaches the whole load from either
// side, while a load right on it reaches the beam not at all.
func TestWalkBesideARest(t *testing.T) {
	b := spans(2)
	e, err := b.Walk([]frame.Load{frame.Point(0, 1)}, 0.3, 1)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "shear", e.Stations[0].Shear.Most, 1, 1e-5)
	near(t, "shear", e.Stations[0].Shear.Least, -1, 1e-5)
}

// TestWalkOffTheBeam lets a cart come on, pass and leave; what is not on the
// beam does not load it.
func TestWalkOffTheBeam(t *testing.T) {
	b := frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 4}}}
	cart := []frame.Load{frame.Point(3, 300), frame.Uniform(2, 2.5, 100), {From: 0, P: 200, M: 50}}
	e, err := b.Walk(cart, 0.05)
	if err != nil {
		t.Fatal(err)
	}
	var all float64
	for _, c := range e.Cases {
		var sum float64
		for _, l := range c {
			if l.From < 0 || math.Max(l.From, l.To) > 4+1e-6 {
				t.Errorf("a load off the beam: %+v", l)
			}
			sum += l.P + l.Q*math.Max(l.To-l.From, 0)
		}
		all = math.Max(all, sum)
	}
	near(t, "the whole cart", all, 300+50+200, 1e-9)
	// What the left support of a simple beam takes at most, by statics, trying
	// every position.
	most := 0.0
	for o := -3.0; o <= 4; o += 1e-3 {
		var push float64
		for _, l := range [][2]float64{{3, 300}, {2.25, 50}, {0, 200}} {
			if x := o + l[0]; x >= 0 && x <= 4 {
				push += l[1] * (4 - x) / 4
			}
		}
		if o >= 0 {
			push += 50.0 / 4 // the couple
		}
		if o > -2 || o < -2.5 { // the spread load is on whole, or not at all
			most = math.Max(most, push)
		}
	}
	near(t, "push", e.Push[0].Most, most, 1)

	// Half a spread load that varies: its inner part only.
	e, err = b.Walk([]frame.Load{{From: 0, To: 2, Rise: 100}}, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, c := range e.Cases {
		for _, l := range c {
			if l.From == 0 && math.Abs(l.To-1) < 1e-9 {
				found = true
				near(t, "cut load", l.Q, 50, 1e-9)
				near(t, "cut load", l.Rise, 50, 1e-9)
			}
		}
	}
	if !found {
		t.Error("the load never stood half on the beam")
	}

	for name, run := range map[string]func() error{
		"no group":      func() error { _, err := b.Walk(nil, 1); return err },
		"a bad load":    func() error { _, err := b.Walk([]frame.Load{{From: math.NaN()}}, 1); return err },
		"a mixed load":  func() error { _, err := b.Walk([]frame.Load{{From: 1, Q: 3}}, 1); return err },
		"behind zero":   func() error { _, err := b.Walk([]frame.Load{{From: -1, P: 3}}, 1); return err },
		"a turned load": func() error { _, err := b.Walk([]frame.Load{{From: 1, To: -1}}, 1); return err },
		"no step":       func() error { _, err := b.Walk(cart, 0); return err },
		"NaN step":      func() error { _, err := b.Walk(cart, math.NaN()); return err },
		"a bad place":   func() error { _, err := b.Walk(cart, 1, -1); return err },
		"a bad beam":    func() error { _, err := (&frame.Beam{}).Walk(cart, 1); return err },
	} {
		if err := run(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	b.Rests[0].Support, b.Rests[1].Support = frame.OneWay(1e4), frame.OneWay(1e4)
	b.Rests[1].At = 2
	if _, err := b.Walk([]frame.Load{frame.Point(0, 10)}, 0.1); !errors.Is(err, frame.ErrMechanism) {
		t.Errorf("a walk out on an overhang: %v", err)
	}
}

// TestWalkOnDrums: a person walks along a float whose ends come out of the water.
func TestWalkOnDrums(t *testing.T) {
	b := frame.Beam{Length: 6, EI: 1.9e5, Loads: []frame.Load{frame.Uniform(0, 6, 150)}}
	for _, x := range []float64{0.5, 2.2, 3.8, 5.5} {
		b.Rests = append(b.Rests, frame.Rest{At: x, Support: barrel(0.29, 0.88, 9806.65)})
	}
	e, err := b.Walk([]frame.Load{frame.Point(0, 900)}, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	n := len(b.Rests)
	for i := range b.Rests {
		if e.Push[i].Least < 0 {
			t.Errorf("drum %d pulls: %+v", i, e.Push[i])
		}
		near(t, "mirrored push", e.Push[i].Most, e.Push[n-1-i].Most, 1e-3)
	}
	// The peak is really met by the case that is said to give it.
	c := b
	c.Loads = append(append([]frame.Load(nil), b.Loads...), e.Cases[e.Sag.Case]...)
	near(t, "sag", solve(t, c).Extremes().Sag.Moment, e.Sag.Moment, 1e-9)
}
