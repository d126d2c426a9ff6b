package float_test

import (
	"context"
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// tilt5 is a rule of these tests: at most 5 degrees.
func tilt5(p *float.Platform) (measure.Check, error) {
	s, err := p.Settle()
	if err != nil {
		return measure.Check{}, err
	}
	return measure.Check{
		Name: "tilt", Kind: measure.Angle, Value: s.Tilt(), Limit: 5 * math.Pi / 180,
		Rule: &measure.Source{Title: "a rule of this test", Status: measure.OwnChoice},
	}, nil
}

func TestPostWithRules(t *testing.T) {
	p := eight()
	p.Weights = p.Weights[:1]
	c := float.Crowd{Inset: 0.15}
	dry, err := p.Post(c)
	if err != nil {
		t.Fatal(err)
	}
	ruled, err := p.Post(c, tilt5)
	if err != nil {
		t.Fatal(err)
	}
	if !(ruled.People > 0 && ruled.People < dry.People) {
		t.Errorf("%d with the rule, %d without", ruled.People, dry.People)
	}
	if ruled.Breaks.Verdict() != measure.Short || ruled.Breaks.Value < ruled.Breaks.Limit {
		t.Errorf("breaks %v", ruled.Breaks)
	}
	// One fewer person holds everywhere, on a fine walk around the edge.
	for _, k := range p.Corners {
		at := r3.Vec{X: math.Copysign(math.Abs(k.X)-0.15, k.X), Y: math.Copysign(math.Abs(k.Y)-0.15, k.Y), Z: k.Z + 1}
		check, err := tilt5(p.With(float.Weight{Mass: 185 * measure.Pound * float64(ruled.People), At: at}))
		if err != nil || check.Verdict() != measure.Holds {
			t.Errorf("posted %d, at a corner %v %v", ruled.People, check, err)
		}
	}
	// Spread along the edge more may stand.
	c.Room = 0.6
	spread, err := p.Post(c, tilt5)
	if err != nil {
		t.Fatal(err)
	}
	if spread.People < ruled.People {
		t.Errorf("%d spread, %d on one spot", spread.People, ruled.People)
	}
	c.Room = 4
	if full, err := p.Post(c); err != nil || !full.Full || full.People != 4 {
		t.Errorf("room for %d (%v), want 4 around 17.1 m", full.People, err)
	}
	c.People = 5
	if _, err := p.WorstCrowd(c); !errors.Is(err, measure.ErrRange) {
		t.Errorf("five where four find room: %v", err)
	}
	// A rule that is broken by the dock itself, one without an answer, one that fails.
	none := func(*float.Platform) (measure.Check, error) { return measure.Check{}, nil }
	if out, err := p.Post(c, none); err != nil || out.People != -1 {
		t.Errorf("without an answer %d, %v", out.People, err)
	}
	bad := errors.New("bad")
	if _, err := p.Post(c, func(*float.Platform) (measure.Check, error) { return measure.Check{}, bad }); !errors.Is(err, bad) {
		t.Errorf("%v, want the rule's error", err)
	}
	sinks := func(q *float.Platform) (measure.Check, error) {
		_, err := q.With(float.Weight{Mass: 1e5}).Settle()
		return measure.Check{}, err
	}
	if out, err := p.Post(c, sinks); err != nil || !errors.Is(out.Failure, float.ErrSinks) {
		t.Errorf("%v %v, want a rule's own failure", out.Failure, err)
	}
}

func TestWorstCrowd(t *testing.T) {
	p := eight()
	p.Weights = p.Weights[:1]
	w, err := p.WorstCrowd(float.Crowd{People: 2})
	if err != nil {
		t.Fatal(err)
	}
	// On a dock that is the same four ways the worst place is a corner, and the
	// first one is named.
	if d := cmp.Diff(p.Corners[0], w.At); d != "" {
		t.Error(d)
	}
	// Corners in the other order enclose the same deck.
	q := p.With()
	for i, c := range p.Corners {
		q.Corners[len(q.Corners)-1-i] = c
	}
	o, err := q.WorstCrowd(float.Crowd{People: 2, Inset: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	w, err = p.WorstCrowd(float.Crowd{People: 2, Inset: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "height, corners the other way", o.Height, w.Height, 1e-9)

	// A dock with a weak place at the middle of a long side: a drum lost there.
	q = p.With()
	for i := range q.Units {
		if x := q.Units[i].At.X; math.Abs(x-0.8) < 0.1 && q.Units[i].At.Y > 0 {
			q.Units[i].Flooded = true
		}
	}
	if o, err = q.WorstCrowd(float.Crowd{People: 1, Inset: 0.3}); err != nil {
		t.Fatal(err)
	}
	if !(o.At.Y > 1) {
		t.Errorf("worst place %v, want the weak side", o.At)
	}
	// So many that it goes over: the failure comes with the place.
	o, err = p.WorstCrowd(float.Crowd{People: 8})
	if !errors.Is(err, float.ErrCapsizes) && !errors.Is(err, float.ErrSinks) || o.At == (r3.Vec{}) {
		t.Errorf("%v at %v", err, o.At)
	}
}

func TestEdgeErrors(t *testing.T) {
	p := eight()
	for _, c := range []float.Crowd{
		{People: -1}, {People: 1e6}, {Each: -1}, {Each: math.NaN()}, {Height: -1}, {Inset: -1}, {Inset: 1.6}, {Inset: math.Inf(1)}, {Room: -1},
	} {
		if _, err := p.WorstCrowd(c); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", c, err)
		}
		if _, err := p.Post(c); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	for _, corners := range [][]r3.Vec{nil, {{X: 1}, {X: 2}}, {{X: 1}, {X: 2}, {X: 3}}, {{X: 1}, {X: 1}, {X: 2, Y: 1}, {Y: 1}}} {
		q := p.With()
		q.Corners = corners
		if _, err := q.WorstCrowd(float.Crowd{People: 1}); !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%v: %v", corners, err)
		}
	}
	// A spike, where the edge turns back on itself, is no fault.
	q := p.With()
	q.Corners = append(q.Corners, r3.Vec{X: -3.048, Y: 3, Z: 0.25}, r3.Vec{X: -3.048, Y: 1.524, Z: 0.25})
	if _, err := q.WorstCrowd(float.Crowd{People: 1, Each: 10, Inset: 0.1}); err != nil {
		t.Error(err)
	}
	q.Corners[0].X = math.NaN()
	if _, err := q.WorstCrowd(float.Crowd{People: 1}); !errors.Is(err, measure.ErrRange) {
		t.Errorf("%v", err)
	}
}

func TestLosses(t *testing.T) {
	p := eight()
	p.Weights = p.Weights[:1]
	p.Units[3].Flooded = true
	losses, err := p.Losses()
	if err != nil {
		t.Fatal(err)
	}
	if len(losses) != 7 {
		t.Fatalf("%d losses of seven sound drums", len(losses))
	}
	for _, l := range losses {
		if l.Unit == 3 {
			t.Error("a flooded drum was lost again")
		}
		if l.Err != nil {
			if !errors.Is(l.Err, float.ErrCapsizes) {
				t.Errorf("drum %d: %v", l.Unit, l.Err)
			}
			continue
		}
		// The side of what is lost goes down, with what was lost already.
		u := p.Units[l.Unit].At
		o := p.Units[3].At
		if (u.Y+o.Y)*l.State.Heel < -1e-9 || (u.X+o.X)*l.State.Trim < -1e-9 {
			t.Errorf("drum %d lost: heel %v, trim %v", l.Unit, l.State.Heel, l.State.Trim)
		}
		k, err := l.State.Unit(l.Unit)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "push of the lost drum", k.Push, -18*measure.Gravity, 1e-9)
	}
	if p.Units[0].Flooded {
		t.Error("the platform itself was changed")
	}
	p.Density = 0
	if _, err := p.Losses(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no density: %v", err)
	}
}

func TestSwimmer(t *testing.T) {
	p := eight()
	p.Weights = p.Weights[:1]
	at := r3.Vec{X: 1, Y: 1.524, Z: 0.25}
	s, err := p.Swimmer(float.Ladder{At: at})
	if err != nil {
		t.Fatal(err)
	}
	want, err := p.With(float.Weight{Mass: 185 * measure.Pound, At: r3.Vec{X: 1, Y: 1.824, Z: 0.25}}).Settle()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "heel", s.Heel, want.Heel, 1e-12)
	near(t, "ladder's top", s.Height(at), want.Height(at), 1e-12)
	// On the end it hangs off the end.
	s, err = p.Swimmer(float.Ladder{At: r3.Vec{X: -3.048, Z: 0.25}, Out: 0.4, Mass: 100})
	if err != nil {
		t.Fatal(err)
	}
	if !(s.Trim < 0) || math.Abs(s.Heel) > 1e-9 {
		t.Errorf("heel %v, trim %v", s.Heel, s.Trim)
	}
	for _, l := range []float.Ladder{{Out: -1}, {Out: 9}, {Mass: math.NaN()}, {Height: 9}, {At: r3.Vec{Z: math.Inf(1)}}} {
		if _, err := p.Swimmer(l); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", l, err)
		}
	}
	p.Corners = nil
	if _, err := p.Swimmer(float.Ladder{}); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no edge: %v", err)
	}
	p.Density = math.NaN()
	if _, err := p.Swimmer(float.Ladder{}); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no density: %v", err)
	}
}

// A level dock pressed on by its own supports sinks as Settle says.
func TestSupport(t *testing.T) {
	p := eight()
	p.Weights = p.Weights[:1]
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	for _, captive := range []bool{false, true} {
		u := p.Units[0]
		u.Captive = captive
		support, err := u.Support(p.Density)
		if err != nil {
			t.Fatal(err)
		}
		k, err := s.Unit(0)
		if err != nil {
			t.Fatal(err)
		}
		force, stiffness, _ := support(k.Draft)
		near(t, "force", force, 650*measure.Gravity/8, 1e-8)
		near(t, "stiffness", stiffness, measure.Gravity*p.Density*0.8509*2*math.Sqrt(k.Draft*(0.5715-k.Draft)), 1e-6)
		// Work by the trapezoidal rule from the water's edge.
		const n = 20000
		sum := 0.0
		for i := range n {
			f, _, _ := support(k.Draft * (float64(i) + 0.5) / n)
			sum += f * k.Draft / n
		}
		_, _, work := support(k.Draft)
		near(t, "work", work, sum, 1e-4)
		force, _, _ = support(0)
		want := -18 * measure.Gravity
		if captive {
			want = 0
		}
		near(t, "force clear of the water", force, want, 1e-12)
	}
	u := p.Units[0]
	u.Flooded = true
	support, err := u.Support(1000)
	if err != nil {
		t.Fatal(err)
	}
	force, stiffness, work := support(0.2)
	near(t, "force of a flooded drum", force, -18*measure.Gravity, 1e-12)
	near(t, "its stiffness", stiffness, 0, 0)
	near(t, "its work", work, -18*measure.Gravity*0.2, 1e-12)
	u.Captive = true
	if support, err = u.Support(1000); err != nil {
		t.Fatal(err)
	}
	if force, _, _ = support(0.2); force != 0 {
		t.Errorf("a flooded captive drum pushes %v", force)
	}
	u.Flooded, u.Mass = false, 1000
	if support, err = u.Support(1000); err != nil {
		t.Fatal(err)
	}
	if force, _, _ = support(0.5); force != 0 {
		t.Errorf("a captive drum of 1000 kg pushes %v", force)
	}
	if _, err := u.Support(0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no density: %v", err)
	}
	if _, err := (float.Unit{}).Support(1000); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no body: %v", err)
	}
}

func places() []float.Unit {
	var out []float.Unit
	for _, x := range []float64{-2.4, -0.8, 0.8, 2.4} {
		for _, y := range []float64{-1.15, 0, 1.15} {
			out = append(out, float.Unit{Body: float.Cylinder{Diameter: 0.5715, Length: 0.8509}, At: r3.Vec{X: x, Y: y, Z: -0.28575}, Mass: 18})
		}
	}
	return out
}

func TestFewest(t *testing.T) {
	p := eight()
	p.Units, p.Weights = nil, p.Weights[:1]
	d := float.Demand{Load: []float.Rule{tilt5}, Crowd: float.Crowd{People: 2, Inset: 0.15, Room: 0.5}, Edge: []float.Rule{tilt5}}
	c, err := p.Fewest(context.Background(), places(), d)
	if err != nil {
		t.Fatal(err)
	}
	if !c.Proven || c.Bound != len(c.Places) || len(c.Platform.Units) != len(c.Places) {
		t.Fatalf("%+v", c)
	}
	t.Logf("%d drums at %v, %d choices looked at, lowest corner %.3f m", len(c.Places), c.Places, c.Tries, c.Margin)
	// It meets the demand, checked from outside.
	w, err := c.Platform.WorstCrowd(d.Crowd)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "margin", c.Margin, w.Height, 1e-9)
	losses, err := c.Platform.Losses()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range losses {
		if l.Err != nil {
			t.Errorf("drum %d lost: %v", l.Unit, l.Err)
		} else if _, h, err := l.State.Lowest(); err != nil || h < 0 {
			t.Errorf("drum %d lost leaves %v (%v)", l.Unit, h, err)
		}
	}
	// No choice of one fewer does: by hand through all of them for the corner
	// drums that any choice must have.
	short, err := p.Fewest(context.Background(), places(), float.Demand{Crowd: d.Crowd, Load: d.Load, Edge: d.Edge, Tries: 3})
	if err == nil && short.Proven {
		t.Error("proven by three tries")
	}
	// A demand that nothing meets.
	never := func(*float.Platform) (measure.Check, error) { return measure.Check{}, nil }
	for _, d := range []float.Demand{{Load: []float.Rule{never}}, {Lost: []float.Rule{never}}, {Edge: []float.Rule{never}, Crowd: d.Crowd}, {Crowd: float.Crowd{People: 30}}, {Crowd: float.Crowd{People: 7}}} {
		d.Tries = 40
		if _, err := p.Fewest(context.Background(), places(), d); !errors.Is(err, float.ErrNoChoice) {
			t.Errorf("%v, want no choice", err)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := p.Fewest(ctx, places(), d); !errors.Is(err, context.Canceled) {
		t.Errorf("%v, want it cancelled", err)
	}
	bad := places()
	bad[2].Mass = math.NaN()
	for _, f := range []func() error{
		func() error { _, err := p.Fewest(context.Background(), nil, d); return err },
		func() error { _, err := p.Fewest(context.Background(), bad, d); return err },
		func() error {
			_, err := p.Fewest(context.Background(), places(), float.Demand{Tries: -1})
			return err
		},
		func() error {
			_, err := (&float.Platform{}).Fewest(context.Background(), places(), d)
			return err
		},
	} {
		if err := f(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%v", err)
		}
	}
}

// What the platform has already counts: a flooded and a captive drum, a wave;
// and a crowd that finds no room is bad data.
func TestFewestBesideOthers(t *testing.T) {
	p := eight()
	p.Weights = []float.Weight{{Mass: 200, At: r3.Vec{Z: 0.1}}}
	own := p.Units[:3:3]
	own[0].Flooded, own[1].Captive = true, true
	own = append(own, own[0])
	own[3].Captive = true
	p.Units = own
	p.Wave = &float.Wave{Height: 0.05, Length: 20}
	offered := places()[4:]
	offered[0].Captive = true
	offered[1].Flooded = true
	c, err := p.Fewest(context.Background(), offered, float.Demand{})
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Platform.Units) != 4+len(c.Places) || c.Platform.Wave == p.Wave {
		t.Errorf("%+v", c)
	}
	for _, i := range c.Places {
		if i == 1 {
			t.Error("a flooded drum was chosen")
		}
	}
	if _, err := c.Platform.Settle(); err != nil {
		t.Error(err)
	}
	d := float.Demand{Crowd: float.Crowd{People: 9, Each: 1, Room: 4}}
	if _, err := p.Fewest(context.Background(), offered, d); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no room: %v", err)
	}
	// A rule that fails, and one that finds the platform failing.
	bad := errors.New("bad")
	d = float.Demand{Load: []float.Rule{func(*float.Platform) (measure.Check, error) { return measure.Check{}, bad }}}
	if _, err := p.Fewest(context.Background(), offered, d); !errors.Is(err, bad) {
		t.Errorf("%v, want the rule's error", err)
	}
	d.Load[0] = func(q *float.Platform) (measure.Check, error) {
		_, err := q.With(float.Weight{Mass: 1e5}).Settle()
		return measure.Check{}, err
	}
	if _, err := p.Fewest(context.Background(), offered, d); !errors.Is(err, float.ErrNoChoice) {
		t.Errorf("%v, want no choice", err)
	}
	// Without corners there is no edge to keep dry.
	p.Corners = nil
	if _, err := p.Fewest(context.Background(), offered, float.Demand{}); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no edge: %v", err)
	}
}

// The fewest drums of a small choice, against looking through every subset.
func TestFewestAgainstAll(t *testing.T) {
	p := eight()
	p.Units, p.Weights = nil, []float.Weight{{Mass: 260, At: r3.Vec{Z: 0.1}}}
	all := places()
	offered := []float.Unit{all[0], all[2], all[3], all[4], all[7], all[8], all[9], all[11]}
	crowd := float.Crowd{People: 1, Inset: 0.3}
	c, err := p.Fewest(context.Background(), offered, float.Demand{Crowd: crowd})
	if err != nil {
		t.Fatal(err)
	}
	least, margin := len(offered)+1, 0.0
	for set := range 1 << len(offered) {
		q := p.With()
		for i, u := range offered {
			if set>>i&1 == 1 {
				q.Units = append(q.Units, u)
			}
		}
		if len(q.Units) > least {
			continue
		}
		dry := func(q *float.Platform) bool {
			s, err := q.Settle()
			if err != nil {
				return false
			}
			_, h, err := s.Lowest()
			return err == nil && h >= 0
		}
		good := dry(q)
		for i := range q.Units {
			o := q.With()
			o.Units[i].Flooded = true
			good = good && dry(o)
		}
		w, err := q.WorstCrowd(crowd)
		if !good || err != nil || w.Height < 0 {
			continue
		}
		if len(q.Units) < least || w.Height > margin {
			least, margin = len(q.Units), w.Height
		}
	}
	if len(c.Places) != least {
		t.Errorf("%d drums, want %d", len(c.Places), least)
	}
	near(t, "margin", c.Margin, margin, 1e-8)
}
