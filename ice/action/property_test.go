package action_test

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/floewright/ice/action"
	"example.org/floewright/lumber/measure"
)

var (
	nan, inf = math.NaN(), math.Inf(1)
	drum     = action.Body{Length: 0.88, Breadth: 0.55} // invented
)

func one(x float64) action.Span { return action.Span{Low: x, High: x} }

// inside reports a span that is finite and in order.
func inside(s action.Span) bool {
	return s.Low <= s.High && !math.IsInf(s.Low, 0) && !math.IsInf(s.High, 0)
}

// soundLift tells what is wrong with a lift: no cap is ever exceeded, every
// part is in order and has a source.
func soundLift(t *testing.T, l action.Lift) {
	t.Helper()
	for _, s := range append([]action.Span{l.Elastic, l.Force, l.Moment, l.Crack}, l.Caps...) {
		if !inside(s) || s.Low < 0 || s.Source == nil || s.Source.Status == measure.Unstated || s.Name == "" {
			t.Fatalf("not a span: %+v of %+v", s, l)
		}
	}
	for _, s := range append([]action.Span{l.Elastic}, l.Caps...) {
		if l.Force.High > s.High || l.Force.Low > s.Low {
			t.Fatalf("%s is exceeded: %+v over %+v", s.Name, l.Force, s)
		}
	}
	if len(l.Rests) < 2 || len(l.Notes) == 0 {
		t.Fatalf("rests on nothing: %+v", l)
	}
}

func soundPush(t *testing.T, p action.Push) {
	t.Helper()
	for _, s := range append([]action.Span{p.Wind, p.Current, p.Drive, p.Limit, p.Force}, p.Caps...) {
		if !inside(s) || s.Low < 0 || s.Source == nil || s.Name == "" {
			t.Fatalf("not a span: %+v of %+v", s, p)
		}
	}
	for _, s := range append([]action.Span{p.Limit}, p.Caps...) {
		if p.Force.High > s.High || p.Force.Low > s.Low {
			t.Fatalf("%s is exceeded: %+v over %+v", s.Name, p.Force, s)
		}
	}
}

// A rise and a fall of the same size have the same sizes; level 0 has no force.
func TestRiseAndFall(t *testing.T) {
	c := action.Cover{Thickness: 0.3}
	up, err := c.Uplift(drum, 0.05)
	if err != nil {
		t.Fatal(err)
	}
	down, err := c.Uplift(drum, -0.05)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(up.Force, down.Force); d != "" {
		t.Error(d)
	}
	if up.Level != 0.05 || down.Level != -0.05 || cmp.Equal(up.Notes, down.Notes) {
		t.Error("a rise and a fall read alike")
	}
	for _, f := range []func() (action.Lift, error){
		func() (action.Lift, error) { return c.Uplift(drum, 0) },
		func() (action.Lift, error) { return c.Wall(0, action.Span{}) },
	} {
		if l, err := f(); err != nil || l.Force.High != 0 || l.Moment.High != 0 || !(l.Crack.Low > 0) {
			t.Errorf("no level change: %+v, %v", l.Force, err)
		}
	}
	g, err := c.Grip(drum, -0.05, 2)
	if err != nil || g.Up.High != -down.Force.Low || g.Up.Low != -down.Force.High || !(g.BracketUp.Low <= g.Up.Low/1 && g.BracketUp.High <= 0) {
		t.Errorf("a falling lake presses: %+v, %v", g.Up, err)
	}
}

// The lesser governs and says its name: elastic at a small change, bending at a
// great one, bond where it is weak.
func TestGoverns(t *testing.T) {
	c := action.Cover{Thickness: 0.3}
	smooth := action.Body{Length: 0.2, Smooth: true, Bond: one(1e4)}
	for _, k := range []struct {
		name string
		body action.Body
		δ    float64
		want string
	}{
		{"millimetre", action.Body{Length: 0.2}, 0.001, "unbroken sheet"},
		{"metre", action.Body{Length: 0.2}, 1, "bending of the ice"},
		{"weak bond", smooth, 1, "bond of the ice"},
		{"bond not smooth", action.Body{Length: 0.2, Bond: one(1e4)}, 1, "bending of the ice"},
	} {
		l, err := c.Uplift(k.body, k.δ)
		if err != nil || l.Force.Name != k.want {
			t.Errorf("%s: governed by %q, %v, want %q", k.name, l.Force.Name, err, k.want)
			continue
		}
		soundLift(t, l)
	}
	unknown, err := c.Uplift(action.Body{Length: 0.2, Smooth: true}, 1)
	if err != nil || unknown.Force.Low != 0 || unknown.Force.Name != "bending of the ice" || len(unknown.Caps) != 1 {
		t.Errorf("unknown adhesion: %+v, %v", unknown, err)
	}
	wall, err := c.Wall(1, one(1e3))
	if err != nil || wall.Force.Name != "bond of the ice" || math.Abs(wall.Force.High-300) > 1e-9 {
		t.Errorf("wall of weak bond: %+v, %v", wall.Force, err)
	}
	open, err := c.Wall(1, action.Span{})
	if err != nil || open.Force.Name != "bending of the ice" || len(open.Caps) != 1 {
		t.Errorf("locked wall: %+v, %v", open, err)
	}
}

// Froude's law: with lengths, moduli and strengths all n times, forces and
// moments per metre are n³ times, forces per metre n² times, and the wind's speed is √n times.
func TestScaleLaws(t *testing.T) {
	build := func(n float64) (action.Cover, action.Body) {
		return action.Cover{Thickness: 0.2 * n, Modulus: one(2e9 * n), Flexure: one(7e5 * n), Crushing: one(1e6 * n)},
			action.Body{Length: 0.5 * n, Breadth: 0.3 * n, Smooth: true, Bond: one(2e5 * n)}
	}
	forces := func(n, level float64) (out []float64) {
		c, b := build(n)
		body, err := c.Uplift(b, level*n)
		if err != nil {
			t.Fatal(err)
		}
		wall, err := c.Wall(level*n, one(2e5*n))
		if err != nil {
			t.Fatal(err)
		}
		face := action.Face{Width: 3 * n, Height: 0.4 * n, Slope: 0.8, Friction: one(0.2)}
		p, err := action.Drift{
			Wind: 12 * math.Sqrt(n), Current: 0.1 * math.Sqrt(n), Reach: 300 * n, Width: 100 * n, Face: face, Cover: c, Touching: true,
		}.Push()
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range append([]action.Span{body.Elastic, body.Force, wall.Moment, body.Moment, p.Wind, p.Current, p.Force, p.Limit}, append(p.Caps, body.Caps...)...) {
			out = append(out, s.Low/(n*n*n), s.High/(n*n*n))
		}
		for _, s := range append([]action.Span{wall.Elastic, wall.Force}, wall.Caps...) {
			out = append(out, s.Low/(n*n), s.High/(n*n))
		}
		return append(out, wall.Crack.Low/n, wall.Crack.High/n, body.Crack.Low/n, body.Crack.High/n)
	}
	for _, level := range []float64{0.002, 0.2} {
		a, b := forces(1, level), forces(3, level)
		for i := range a {
			if math.Abs(a[i]-b[i]) > 1e-9*math.Abs(a[i]) {
				t.Errorf("level %g, force %d: %g, three times as large %g", level, i, a[i], b[i])
			}
		}
	}
}

// Quantities that are unknown, negative or past a source's range.
func TestRefusals(t *testing.T) {
	good := action.Drift{Wind: 10, Reach: 1000, Width: 50, Face: action.Face{Width: 3}, Cover: action.Cover{Thickness: 0.3}}
	cover := action.Cover{Thickness: 0.3}
	for _, c := range []struct {
		name string
		call func(x float64) error
		high float64 // out of range
	}{
		{"thickness", func(x float64) error { _, err := (action.Cover{Thickness: x}).Wall(0.1, action.Span{}); return err }, 4},
		{"modulus", func(x float64) error {
			_, err := (action.Cover{Thickness: 0.3, Modulus: one(x)}).Wall(0.1, action.Span{})
			return err
		}, 1e12},
		{"modulus, high end", func(x float64) error {
			_, err := (action.Cover{Thickness: 0.3, Modulus: action.Span{Low: 1e9, High: x}}).Wall(0.1, action.Span{})
			return err
		}, 1e12},
		{"flexure", func(x float64) error {
			_, err := (action.Cover{Thickness: 0.3, Flexure: one(x)}).Uplift(drum, 0.1)
			return err
		}, 1e12},
		{"crushing", func(x float64) error {
			_, err := (action.Cover{Thickness: 0.3, Crushing: one(x)}).Grip(drum, 0.1, 2)
			return err
		}, 1e12},
		{"Poisson", func(x float64) error {
			_, err := (action.Cover{Thickness: 0.3, Poisson: x}).Uplift(drum, 0.1)
			return err
		}, 0.6},
		{"foundation", func(x float64) error {
			_, err := (action.Cover{Thickness: 0.3, Foundation: x}).Uplift(drum, 0.1)
			return err
		}, 1e9},
		{"bond of a wall", func(x float64) error { _, err := cover.Wall(0.1, one(x)); return err }, 1e12},
		{"length", func(x float64) error { _, err := cover.Uplift(action.Body{Length: x}, 0.1); return err }, 300},
		{"length past the wedges", func(x float64) error { _, err := cover.Uplift(action.Body{Length: x, Breadth: x}, 0.1); return err }, 12},
		{"breadth", func(x float64) error { _, err := cover.Uplift(action.Body{Length: 1, Breadth: x}, 0.1); return err }, 300},
		{"bond of a body", func(x float64) error {
			_, err := cover.Uplift(action.Body{Length: 1, Smooth: true, Bond: one(x)}, 0.1)
			return err
		}, 1e12},
		{"wind", func(x float64) error { d := good; d.Wind = x; _, err := d.Push(); return err }, 100},
		{"current", func(x float64) error { d := good; d.Current = x; _, err := d.Push(); return err }, 10},
		{"reach", func(x float64) error { d := good; d.Reach = x; _, err := d.Push(); return err }, 1e6},
		{"floe", func(x float64) error { d := good; d.Width = x; _, err := d.Push(); return err }, 1e6},
		{"face", func(x float64) error { d := good; d.Face.Width = x; _, err := d.Push(); return err }, 1e6},
		{"height", func(x float64) error { d := good; d.Face.Height = x; _, err := d.Push(); return err }, 1e6},
		{"slope", func(x float64) error { d := good; d.Face.Slope = x; _, err := d.Push(); return err }, 2},
		{"friction", func(x float64) error { d := good; d.Face.Friction = one(x); _, err := d.Push(); return err }, 3},
		{"air", func(x float64) error { d := good; d.Air = one(x); _, err := d.Push(); return err }, 1},
		{"water", func(x float64) error { d := good; d.Water = one(x); _, err := d.Push(); return err }, 1},
		{"across", func(x float64) error { _, err := action.Adhesion("wood", x, 0.3); return err }, 3},
		{"adhesion, thickness", func(x float64) error { _, err := action.Adhesion("steel", 0.3, x); return err }, 9},
		{"short wall", func(x float64) error { _, err := action.ShortWall(x); return err }, 1e5},
		{"thrust, width", func(x float64) error { _, err := action.Thrusts()[0].On(x, 0.3); return err }, 1e5},
		{"thrust, thickness", func(x float64) error { _, err := action.Thrusts()[7].On(1, x); return err }, 0.7},
	} {
		if err := c.call(nan); !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%s unknown: %v", c.name, err)
		}
		for _, x := range []float64{-1, inf, -inf, c.high} {
			var e *measure.Error
			if err := c.call(x); !errors.As(err, &e) || e.Class != measure.ErrRange || e.Field == "" || e.Range.Source == nil {
				t.Errorf("%s %g: %v", c.name, x, err)
			}
		}
	}
	for _, level := range []float64{nan, inf, -inf, 11, -11} {
		if _, err := cover.Wall(level, action.Span{}); err == nil {
			t.Errorf("level %g has a force", level)
		}
		if _, err := cover.Uplift(drum, level); err == nil {
			t.Errorf("level %g has a force", level)
		}
	}
	if _, err := (action.Cover{Thickness: 0.3, Modulus: action.Span{Low: 2e9, High: 1e9}}).Wall(0.1, action.Span{}); err == nil {
		t.Error("a modulus whose high end is the lower one")
	}
	for _, n := range []int{0, -1, 1e6} {
		if _, err := cover.Grip(drum, 0.1, n); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%d brackets: %v", n, err)
		}
	}
	for _, th := range []action.Thrust{
		{Low: -1, High: 1, Source: &measure.Source{}},
		{Low: 2, High: 1, Source: &measure.Source{}},
		{Low: nan, High: 1, Source: &measure.Source{}},
		{Low: 1, High: inf, Source: &measure.Source{}},
		{Pressure: -1, Source: &measure.Source{}},
		{},
	} {
		if s, err := th.On(1, 0.3); err == nil {
			t.Errorf("%+v pushes %+v", th, s)
		}
	}
}

// A long body is refused where the wedges end and is a wall; just within, its
// force per metre of outline lies near the wall's and not below its low end.
func TestBodyMeetsWall(t *testing.T) {
	c := action.Cover{Thickness: 0.3, Modulus: one(2e9), Flexure: one(7e5)}
	wall, err := c.Wall(0.001, action.Span{})
	if err != nil {
		t.Fatal(err)
	}
	b := action.Body{Length: 2 * 4.76}
	body, err := c.Uplift(b, 0.001)
	if err != nil {
		t.Fatal(err)
	}
	per := math.Pi * b.Length
	if lo, hi := body.Elastic.Low/per/wall.Elastic.Low, body.Elastic.High/per/wall.Elastic.High; !(lo > 1 && lo < 2 && hi > 1 && hi < 2) {
		t.Errorf("body over wall per metre: %g and %g", lo, hi)
	}
	b.Length = 2 * 4.77
	if _, err := c.Uplift(b, 0.001); !errors.Is(err, measure.ErrRange) {
		t.Errorf("past the wedges: %v", err)
	}
}

// Faces: vertical, sloping, so steep and rough that the ice does not bend; a
// narrow floe bears on its own width.
func TestFaces(t *testing.T) {
	d := action.Drift{Wind: 10, Reach: 1000, Width: 50, Face: action.Face{Width: 3}, Cover: action.Cover{Thickness: 0.3}}
	caps := func(slope, μ, width float64) action.Push {
		d := d
		d.Face.Slope, d.Face.Friction, d.Width = slope, one(μ), width
		p, err := d.Push()
		if err != nil {
			t.Fatal(err)
		}
		soundPush(t, p)
		return p
	}
	for _, c := range []struct {
		slope, μ float64
		n        int
	}{{0, 0.2, 2}, {math.Pi / 2, 0.2, 2}, {0.5, 0.2, 3}, {math.Pi / 4, 0.999, 3}, {math.Pi / 4, 1, 2}, {1.4, 0.2, 2}} {
		if p := caps(c.slope, c.μ, 50); len(p.Caps) != c.n {
			t.Errorf("slope %g, friction %g: %d caps, want %d", c.slope, c.μ, len(p.Caps), c.n)
		}
	}
	if a, b := caps(0, 0.2, 50), caps(0, 0.2, 1.5); math.Abs(b.Caps[0].High/a.Caps[0].High-0.5) > 1e-12 {
		t.Errorf("a floe half as wide as the face bears %g of the cap", b.Caps[0].High/a.Caps[0].High)
	}
	// Wide faces buckle the ice at twice k l² at most, narrow ones at more.
	wide := d
	wide.Face.Width, wide.Width = 199, 1000
	p, err := wide.Push()
	if err != nil {
		t.Fatal(err)
	}
	if r := p.Caps[1].High / p.Caps[1].Low; math.Abs(r-2*math.Sqrt(5)) > 1e-9 {
		t.Errorf("wide face: buckling spans %g, want 2 √5", r)
	}
	// Zero width of the floe is as wide as long.
	d.Width = 0
	square, err := d.Push()
	if err != nil {
		t.Fatal(err)
	}
	d.Width = d.Reach
	same, err := d.Push()
	if err != nil {
		t.Fatal(err)
	}
	if square.Drive != same.Drive {
		t.Errorf("floe of no width: %+v, square: %+v", square.Drive, same.Drive)
	}
}

// A floe under way reaches the cap whatever the wind; one that touches does not.
func TestUnderWay(t *testing.T) {
	d := action.Drift{Wind: 3, Reach: 100, Width: 20, Face: action.Face{Width: 3}, Cover: action.Cover{Thickness: 0.3}}
	moving, err := d.Push()
	if err != nil {
		t.Fatal(err)
	}
	d.Touching = true
	still, err := d.Push()
	if err != nil {
		t.Fatal(err)
	}
	if moving.Force.High != moving.Limit.High || still.Force.High != still.Drive.High || still.Force.Name != "wind and current" {
		t.Errorf("moving %+v, touching %+v", moving.Force, still.Force)
	}
}

// ShortWall at both sides of each of its switches.
func TestShortWall(t *testing.T) {
	for _, c := range []struct{ width, low, high float64 }{
		{5, 1.10, 1.15}, {5.001, 1.05, 1.15}, {9.999, 1.05, 1.15}, {10, 1.05, 1.10}, {10.001, 1, 1.10}, {150, 1, 1.10},
	} {
		if s, err := action.ShortWall(c.width); err != nil || s.Low != c.low || s.High != c.high || s.Source == nil {
			t.Errorf("%g m: %+v, %v", c.width, s, err)
		}
	}
	if _, err := action.ShortWall(4.999); !errors.Is(err, measure.ErrRange) {
		t.Errorf("narrower than the source: %v", err)
	}
}

// Every published figure has its words, a source with a status, and is a copy.
func TestData(t *testing.T) {
	ts := action.Thrusts()
	for _, x := range ts {
		s, err := x.On(3, 0.3)
		if err != nil || x.Of == "" || x.Printed == "" || x.Applies == "" || x.Source.Status == measure.Unstated || !inside(s) {
			t.Errorf("thrust %+v: %+v, %v", x, s, err)
		}
	}
	ts[0].High = 0
	if action.Thrusts()[0].High == 0 {
		t.Error("Thrusts hands out its own slice")
	}
	air, water := action.Drags()
	for _, s := range append(air, water...) {
		if !(s.Low > 0) || !inside(s) || s.Source == nil || s.Name == "" {
			t.Errorf("drag %+v", s)
		}
	}
	as := action.Autumn()
	for _, a := range as {
		if a.Text == "" || a.Publisher == "" || a.Status == measure.Unstated {
			t.Errorf("caution %+v", a)
		}
	}
	as[0].Text = ""
	if action.Autumn()[0].Text == "" {
		t.Error("Autumn hands out its own slice")
	}
	for _, m := range []string{"wood", "Steel ", "aluminium"} {
		if s, err := action.Adhesion(m, 0.3, 0.3); err != nil || !(s.Low > 0) || !inside(s) {
			t.Errorf("%s: %+v, %v", m, s, err)
		}
	}
	for m, class := range map[string]error{"polyethylene": measure.ErrUnknown, "PVC": measure.ErrUnknown, "glue": measure.ErrName, "": measure.ErrName} {
		if _, err := action.Adhesion(m, 0.3, 0.3); !errors.Is(err, class) {
			t.Errorf("%q: %v", m, err)
		}
	}
	for _, d := range []float64{0.149, 2.0} { // 0.497 and 6.67 thicknesses
		if _, err := action.Adhesion("wood", d, 0.3); !errors.Is(err, measure.ErrRange) {
			t.Errorf("wood of %g m: %v", d, err)
		}
	}
}
