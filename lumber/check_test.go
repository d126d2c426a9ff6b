package lumber_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// named returns the check of a name.
func named(t testing.TB, checks []measure.Check, name string) measure.Check {
	t.Helper()
	for _, c := range checks {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no check %q among %v", name, checks)
	return measure.Check{}
}

func near(t testing.TB, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// checked returns a Spruce-Pine-Fir No.2 2x8, wet, not incised, held.
func checked(t testing.TB) lumber.Member {
	m := piece(t, "spf", "2", "2x8")
	m.Smooth, m.Held, m.Length, m.Unbraced = true, true, 2.4, 0.6
	return m
}

// TestCheckValues compares every check with the arithmetic of its rule, done
// here in inches and pounds.
func TestCheckValues(t *testing.T) {
	const in, lb, psi = measure.Inch, measure.PoundForce, measure.PSI
	m := checked(t)
	d := lumber.Demand{
		Moment: -6000 * lb * in, FlatMoment: 200 * lb * in, Shear: -500 * lb, Relief: 60 * lb,
		Reaction: 600 * lb, Bearing: 1.5 * in, Inner: true,
		Long: 0.05 * in, Short: -0.10 * in,
	}
	for _, c := range []struct {
		name         string
		axial        float64
		value, limit float64
		unit         float64
	}{
		{"bending", 0, 6000 / 13.140625, 875 * 1.2, psi},
		// 875 × CM 1 × CF 1.2 × Cfu 1.15
		{"bending sideways", 0, 200 / 2.71875, 875 * 1.2 * 1.15, psi},
		{"shear a depth from the support", 0, 1.5 * 440 / 10.875, 135 * 0.97, psi},
		// 425 × CM 0.67 × Cb 1.25
		{"bearing", 0, 600 / 2.25, 425 * 0.67 * 1.25, psi},
		{"deflection under the passing load", 0, 0.10, 2400 / 25.4 / 360, in},
		{"deflection with creep", 0, 2*0.05 + 0.10, 2400 / 25.4 / 240, in},
		{"tension", 300, 300 / 10.875, 450 * 1.2, psi},
		{"bending both ways", 0, 6000/13.140625/1050 + 200/2.71875/1207.5, 1, 1},
		{"bending with tension", 300, 300/10.875/540 + 6000/13.140625/1050 + 200/2.71875/1207.5, 1, 1},
	} {
		d := d
		d.Axial = c.axial * lb
		checks, err := m.Check(d, lumber.TenYears)
		if err != nil {
			t.Fatal(err)
		}
		got := named(t, checks, c.name)
		near(t, c.name, got.Value/c.unit, c.value)
		near(t, c.name+", limit", got.Limit/c.unit, c.limit)
		if got.Rule == nil || got.Verdict() == measure.NoAnswer || len(got.Rests) != 3 {
			t.Errorf("%s: %v rests on %v", c.name, got, got.Rests)
		}
	}
}

// TestCompression compares a beam-column with equation 3.9-3 worked out here.
func TestCompression(t *testing.T) {
	const in, lb, psi = measure.Inch, measure.PoundForce, measure.PSI
	m := checked(t)
	m.Held = false
	m.Loading = "uniform"
	checks, err := m.Check(lumber.Demand{Moment: 3000 * lb * in, FlatMoment: 100 * lb * in, Axial: -800 * lb}, lumber.TenYears)
	if err != nil {
		t.Fatal(err)
	}
	root := func(a, c float64) float64 { h := (1 + a) / 2 / c; return h - math.Sqrt(h*h-a/c) }
	le1, le2 := 2400/25.4, 600/25.4
	emin := 510000 * 0.9
	// Fc CF is 1207 psi, above 750: CM 0.8
	star := 1150 * 1.05 * 0.8
	e1, e2 := 0.822*emin/math.Pow(le1/7.25, 2), 0.822*emin/math.Pow(le2/1.5, 2)
	fc := 800 / 10.875
	fcp := star * root(math.Min(e1, e2)/star, 0.8)
	near(t, "Fc'", named(t, checks, "compression").Limit/psi, fcp)
	rb2 := 2.06 * le2 * 7.25 / (1.5 * 1.5)
	fbe := 1.2 * emin / rb2
	fb1 := 1050 * root(fbe/1050, 0.95)
	near(t, "Fb'", named(t, checks, "bending").Limit/psi, fb1)
	f1, f2 := 3000/13.140625, 100/2.71875
	want := math.Pow(fc/fcp, 2) + f1/(fb1*(1-fc/e1)) + f2/(1207.5*(1-fc/e2-math.Pow(f1/fbe, 2)))
	near(t, "interaction", named(t, checks, "bending with compression").Value, want)
}

// TestTensionSide: where tension and bending nearly cancel on one side, the
// compression side with CL governs.
func TestTensionSide(t *testing.T) {
	m := checked(t)
	m.Held, m.Unbraced, m.Length = false, 5, 5
	d := lumber.Demand{Moment: 2000, Axial: 1}
	checks, err := m.Check(d, lumber.TenYears)
	if err != nil {
		t.Fatal(err)
	}
	v := adjusted(t, m, lumber.TenYears)
	want := (2000/m.Section.Modulus() - 1/m.Section.Area()) / v.Fb.Value
	near(t, "compression side", named(t, checks, "bending with tension").Value, want)
}

// TestNoAnswer: what is not known or beyond a rule's range gives no answer and
// its reason, and never a pass.
func TestNoAnswer(t *testing.T) {
	m := checked(t)
	demand := lumber.Demand{Moment: 10, FlatMoment: 1, Shear: 10, Axial: -10, Reaction: 10, Long: 1e-4}
	loose := m
	loose.Held, loose.Length, loose.Unbraced = false, 0, 0
	slender := m
	slender.Held, slender.Length, slender.Unbraced = false, 12, 0
	deck := piece(t, "syp", "standard", "5/4x6")
	deck.Length, deck.Held = 0.4, true
	for what, c := range map[string]struct {
		m     lumber.Member
		names string
		class error
	}{
		"no bearing length":  {m, "bearing", measure.ErrUnknown},
		"no unbraced length": {loose, "bending; compression; bending with compression; deflection under the passing load; deflection with creep", measure.ErrUnknown},
		"too slender":        {slender, "compression; bending with compression", measure.ErrRange},
		"no design values":   {deck, "bending; bending sideways; shear; compression; bending with compression", measure.ErrUnknown},
	} {
		checks, err := c.m.Check(demand, lumber.TenYears)
		if err != nil {
			t.Fatal(what, err)
		}
		for _, name := range strings.Split(c.names, "; ") {
			got := named(t, checks, name)
			if got.Verdict() != measure.NoAnswer || !errors.Is(got.Err, c.class) {
				t.Errorf("%s: %v, want no answer, %v", what, got, c.class)
			}
		}
	}
	v := adjusted(t, deck, lumber.TenYears)
	if v.Fb.Value != 0 || !strings.Contains(v.Fb.String(), "no answer") {
		t.Errorf("a board has %v", v.Fb)
	}
	// A strut at its buckling load has no interaction left.
	m.Held, m.Unbraced = false, 2.4
	strut, err := m.Check(lumber.Demand{Moment: 10, FlatMoment: 10, Axial: -1e5}, lumber.TenYears)
	if err != nil {
		t.Fatal(err)
	}
	if c := named(t, strut, "bending with compression"); !errors.Is(c.Err, measure.ErrRange) || c.Verdict() != measure.NoAnswer {
		t.Errorf("buckled: %v", c)
	}
}

// TestLying: a wide flat member bends about its strong axis sideways.
func TestLying(t *testing.T) {
	m := checked(t)
	m.Flat, m.Held, m.Length = true, false, 1
	checks, err := m.Check(lumber.Demand{Moment: 100, FlatMoment: 300, Axial: -500}, lumber.Snow)
	if err != nil {
		t.Fatal(err)
	}
	s := m.Section.Turned()
	near(t, "bending", named(t, checks, "bending").Value, 100/s.Modulus())
	near(t, "bending sideways", named(t, checks, "bending sideways").Value, 300/m.Section.Modulus())
	v := adjusted(t, m, lumber.Snow)
	fc, f1, f2 := 500/m.Section.Area(), 300/m.Section.Modulus(), 100/s.Modulus() // 1 is on edge: sideways here
	e1, e2 := 0.822*v.Emin.Value*math.Pow(0.6/m.Section.Depth, -2), 0.822*v.Emin.Value*math.Pow(1/m.Section.Width, -2)
	fbe := 1.2 * v.Emin.Value * m.Section.Width * m.Section.Width / (2.06 * m.Section.Depth)
	near(t, "interaction", named(t, checks, "bending with compression").Value,
		math.Pow(fc/v.Fc.Value, 2)+f1/(v.FbAcross.Value*(1-fc/e1))+f2/(v.Fb.Value*(1-fc/e2-math.Pow(f1/fbe, 2))))
	if !(v.FbAcross.Value < v.Fb.Value) || !strings.Contains(v.FbAcross.String(), "CL 0.") {
		t.Errorf("across the boards: %v", v.FbAcross)
	}
}

// TestPlies: plies share moments and forces, and only three of them gain Cr.
func TestPlies(t *testing.T) {
	one := checked(t)
	single := adjusted(t, one, lumber.TenYears)
	for plies, cr := range map[int]float64{1: 1, 2: 1, 3: 1.15, 4: 1.15} {
		m := one
		m.Plies = plies
		n := float64(plies)
		checks, err := m.Check(lumber.Demand{Moment: 100 * n, FlatMoment: 10 * n, Shear: 100 * n, Reaction: 100 * n, Bearing: 0.1}, lumber.TenYears)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "bending", named(t, checks, "bending").Value, 100/one.Section.Modulus())
		near(t, "bending sideways", named(t, checks, "bending sideways").Value, 10/one.Section.Turned().Modulus())
		near(t, "shear", named(t, checks, "shear").Value, 150/one.Section.Area())
		near(t, "bearing", named(t, checks, "bearing").Value, 100/(one.Section.Width*0.1))
		near(t, "Fb'", adjusted(t, m, lumber.TenYears).Fb.Value, cr*single.Fb.Value)
	}
	pair := one
	pair.Plies, pair.Paired = 2, true
	near(t, "paired", adjusted(t, pair, lumber.TenYears).Fb.Value, 1.1*single.Fb.Value)
	pair.Plies = 1
	near(t, "paired alone", adjusted(t, pair, lumber.TenYears).Fb.Value, single.Fb.Value)
}

// TestTip: an overhang's tip is judged by its own length.
func TestTip(t *testing.T) {
	m := checked(t)
	m.Dry = true
	checks, err := m.Check(lumber.Demand{Long: 0.001, Short: 0.002, Span: 0.9, Tip: true}, lumber.TenYears)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "tip", named(t, checks, "deflection under the passing load").Limit, 0.9/180)
	c := named(t, checks, "deflection with creep")
	near(t, "tip", c.Limit, 0.9/180)
	near(t, "dry creep", c.Value, 1.5*0.001+0.002)
}

// TestNotch: a deeper notch carries less, on the compression edge more than on
// the tension edge; a full section carries two thirds of Fv b d.
func TestNotch(t *testing.T) {
	m := checked(t)
	v := adjusted(t, m, lumber.TenYears)
	whole := v.Fv.Value * m.Section.Area() / 1.5
	last := whole
	for depth := 0.001; depth < m.Section.Depth; depth += 0.01 {
		vr := func(n lumber.Notch) float64 {
			n.Depth = depth
			checks, err := m.CheckNotch(n, 1, lumber.TenYears)
			if err != nil {
				t.Fatal(err)
			}
			return checks[0].Limit
		}
		bottom, top, long := vr(lumber.Notch{}), vr(lumber.Notch{Top: true}), vr(lumber.Notch{Top: true, Length: 1})
		share := (m.Section.Depth - depth) / m.Section.Depth
		near(t, "tension edge", bottom, whole*share*share*share)
		near(t, "compression edge, at the face", top, whole)
		near(t, "compression edge, long", long, whole*share)
		e := 0.3 * (m.Section.Depth - depth)
		near(t, "compression edge", vr(lumber.Notch{Top: true, Length: e}), whole*(m.Section.Depth-0.3*depth)/m.Section.Depth)
		near(t, "inner", vr(lumber.Notch{Inner: true}), whole*share)
		if !(bottom < last) {
			t.Errorf("deeper notch carries more: %g after %g", bottom, last)
		}
		last = bottom
	}
}

// TestNotchLimits: where and how deep a notch may be.
func TestNotchLimits(t *testing.T) {
	m := checked(t)
	thick := piece(t, "dfl", "2", "4x8")
	thick.Length = 2.4
	free := m
	free.Length = 0
	d := m.Section.Depth
	for what, c := range map[string]struct {
		m     lumber.Member
		n     lumber.Notch
		limit float64 // NaN: no answer
	}{
		"end":              {m, lumber.Notch{Depth: 0.01}, d / 4},
		"outer third":      {m, lumber.Notch{Depth: 0.01, Inner: true, From: 0.8}, d / 6},
		"middle third":     {m, lumber.Notch{Depth: 0.01, Inner: true, From: 0.81}, 0},
		"thick, below":     {thick, lumber.Notch{Depth: 0.01, Inner: true, From: 0.5}, 0},
		"thick, above":     {thick, lumber.Notch{Depth: 0.01, Inner: true, From: 0.5, Top: true}, d / 6},
		"nowhere":          {m, lumber.Notch{Depth: 0.01, Inner: true}, math.NaN()},
		"no span":          {free, lumber.Notch{Depth: 0.01, Inner: true, From: 0.5}, math.NaN()},
		"soft for its cut": {m, lumber.Notch{Depth: 0.05, Inner: true, From: 0.5}, d / 6},
	} {
		checks, err := c.m.CheckNotch(c.n, 0, lumber.TenYears)
		if err != nil {
			t.Fatal(what, err)
		}
		got := checks[1]
		if math.IsNaN(c.limit) {
			if got.Verdict() != measure.NoAnswer || !errors.Is(got.Err, measure.ErrUnknown) {
				t.Errorf("%s: %v", what, got)
			}
			continue
		}
		if got.Limit != c.limit || got.Verdict() == measure.NoAnswer {
			t.Errorf("%s: %v, want %g", what, got, c.limit)
		}
	}
}

// TestJoint: within five depths of the end the square counts.
func TestJoint(t *testing.T) {
	m := checked(t)
	v := adjusted(t, m, lumber.TenYears)
	de := 0.6 * m.Section.Depth
	for _, c := range []struct{ end, share float64 }{{4.99, 0.6 * 0.36}, {5.01, 0.6}} {
		got, err := m.CheckJoint(de, c.end*m.Section.Depth, 100, lumber.TenYears)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "joint", got.Limit, c.share*v.Fv.Value*m.Section.Area()/1.5)
	}
}

// TestRelief: the whole load at the face, none of it a depth away.
func TestRelief(t *testing.T) {
	for distance, want := range map[float64]float64{0: 100 + 40, 0.1: 100 + 20, 0.2: 100, 3: 100} {
		got, err := lumber.ShearRelief(0.2, 500, 40, distance)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "relief", got, want)
	}
}

// TestSizesBetween: a section between two of the list takes the cautious class,
// for the size factor the wider, for flat use the narrower.
func TestSizesBetween(t *testing.T) {
	dfl := piece(t, "dfl", "2", "2x8").Grade
	for _, c := range []struct{ thick, wide, cf, cfu float64 }{
		{1.5, 5.5, 1.3, 1.15},
		{1.5, 5.0, 1.3, 1.1}, // ripped
		{1.5, 6.0, 1.2, 1.15},
		{2.0, 6.0, 1.2, 1.15}, // sawn full
		{2.9, 7.25, 1.2, 1.05},
		{3.5, 9.25, 1.2, 1.1},
		{3.0, 9.25, 1.1, 1.1},
		{1.5, 15, 0.9, 1.2},
		{1.5, 1.5, 1.5, 1},
	} {
		s := lumber.Section{Width: c.thick * measure.Inch, Depth: c.wide * measure.Inch}
		cf, err := lumber.SizeFactor(lumber.Fb, dfl, s)
		if err != nil {
			t.Fatal(err)
		}
		cfu, err := lumber.FlatUse(lumber.Fb, dfl, s.Turned())
		if err != nil {
			t.Fatal(err)
		}
		if cf.Value != c.cf || cfu.Value != c.cfu {
			t.Errorf("%g x %g in.: CF %g, Cfu %g, want %g, %g", c.thick, c.wide, cf.Value, cfu.Value, c.cf, c.cfu)
		}
	}
}

// TestStringers: beams and stringers on their wide face lose strength by grade.
func TestStringers(t *testing.T) {
	for _, c := range []struct {
		grade string
		fb, e float64
	}{{"ss", 0.86, 1}, {"1", 0.74, 0.9}, {"2", 1, 1}} {
		m := piece(t, "dfl", c.grade, "6x12")
		m.Length = 3
		edge := adjusted(t, m, lumber.TenYears)
		m.Flat = true
		flat := adjusted(t, m, lumber.TenYears)
		near(t, c.grade+" E", flat.E.Value, c.e*edge.E.Value)
		near(t, c.grade+" Fb", flat.Fb.Value, c.fb*edge.FbAcross.Reference.SI()*0.8)
	}
	// A post is the same both ways.
	m := piece(t, "dfl", "2", "6x8")
	m.Flat, m.Length = true, 3
	near(t, "post", adjusted(t, m, lumber.TenYears).Fb.Value, m.Grade.Fb.SI()*0.8)
}

// TestUnheld: a loading by name, and the rule of twice the width.
func TestUnheld(t *testing.T) {
	m := piece(t, "spf", "2", "2x4")
	m.Length = 4
	if v := adjusted(t, m, lumber.TenYears); !strings.Contains(v.Fb.String(), "CL 1 ") {
		t.Errorf("a 2x4 needs no support: %v", v.Fb)
	}
	m = piece(t, "spf", "2", "2x10")
	m.Unbraced = 2
	uniform, point := m, m
	uniform.Loading, point.Loading = "uniform", "point at mid span"
	a, b := adjusted(t, uniform, lumber.TenYears), adjusted(t, point, lumber.TenYears)
	if !(a.Fb.Value < b.Fb.Value) {
		t.Errorf("uniform %v, point %v", a.Fb, b.Fb)
	}
}
