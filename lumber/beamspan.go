package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// srcOverhang is the rule behind the published overhangs of deck joists.
var srcOverhang = &measure.Source{
	Title: "International Residential Code; DCA 6 (American Wood Council)", Edition: "2018; 2015",
	Locator: "Table R507.6, cantilevers; Table 2, overhangs", Status: measure.Quoted,
}

// Overhang returns how far joists of this member may run past their support, m,
// where the span behind it is back (m) and a person of the force point (N) stands
// at the tip: the lesser of a quarter of the span and of a tip deflection of
// a/180 under that force,
//
//	P a² (L + a)/(3 E' I) ≤ a/180,
//
// and, of the second, as much less as less says (m). The tables take 220 lbf and
// less nothing (IRC 2018) or 3 in. (DCA 6-2015). The bending over the support is
// left to [Member.Check].
func (m Member) Overhang(back, point, less float64) (float64, measure.Check, error) {
	v, err := m.Adjusted(TenYears)
	if err != nil {
		return 0, measure.Check{}, err
	}
	if err := lengths.Check("back span", back); err != nil {
		return 0, measure.Check{}, err
	}
	if err := (measure.Range{Kind: measure.Force, Hi: 1e6, OpenLo: true}).Check("force at the tip", point); err != nil {
		return 0, measure.Check{}, err
	}
	if err := (measure.Range{Kind: measure.Length, Hi: 1}).Check("less", less); err != nil {
		return 0, measure.Check{}, err
	}
	if v.E.Err != nil {
		return 0, measure.Check{}, v.E.Err
	}
	// a² + L a = 3EI/(180 P) = k; the root without loss of digits where k is small.
	k := 3 * v.E.Value * m.Whole().Inertia() / (tipLimit * point)
	tip := 2*k/(back+math.Sqrt(back*back+4*k)) - less
	c := measure.Check{
		Name: "overhang, a quarter of the span governs", Kind: measure.Length, Value: math.NaN(), Limit: back / 4,
		Rule: srcOverhang, Rests: m.rests(),
		Err: &measure.Error{Field: "overhang", Class: measure.ErrUnknown, Want: "the overhang in question: the limit is the answer"},
	}
	if tip < c.Limit {
		c.Name, c.Limit, c.Factors = "overhang, deflection of the tip governs", math.Max(0, tip), v.E.Factors
	}
	return c.Limit, c, nil
}

// srcBeam is the rule behind the published spans of deck beams.
var srcBeam = &measure.Source{
	Title: "International Residential Code", Edition: "2018",
	Locator: "Table R507.5, Southern Pine rows; NDS 3.3, 3.4, 3.5", Status: measure.Memory,
}

// BeamSpan returns how far a beam of this member and its Plies may span, m,
// simply supported, under joists of a span (m) that run past it by an overhang
// (m), for a dead and a live load (Pa). The joists bring
//
//	w = q (L + a)²/(2 L)
//
// to it. The span is the least of bending and shear under all load, of ten years'
// duration and without the relief near the supports, and a deflection of L/360
// under the live load. The joists hold the compression edge. The check compares
// the member's Length, as in [Member.Span].
func (m Member) BeamSpan(joist, overhang, dead, live float64) (float64, measure.Check, error) {
	m.Held = true
	v, err := m.Adjusted(TenYears)
	if err != nil {
		return 0, measure.Check{}, err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: spacings.Lo, Hi: lengths.Hi}).Check("joist span", joist); err != nil {
		return 0, measure.Check{}, err
	}
	if err := (measure.Range{Kind: measure.Length, Hi: joist}).Check("joist overhang", overhang); err != nil {
		return 0, measure.Check{}, err
	}
	if err := loads.Check("dead load", dead); err != nil {
		return 0, measure.Check{}, err
	}
	if err := liveLoads.Check("live load", live); err != nil {
		return 0, measure.Check{}, err
	}
	for _, s := range []Strength{v.Fb, v.Fv, v.E} {
		if s.Err != nil {
			return 0, measure.Check{}, s.Err
		}
	}
	s := m.Whole()
	reach := (joist + overhang) * (joist + overhang) / (2 * joist)
	all, passing := (dead+live)*reach, live*reach
	c := measure.Check{Kind: measure.Length, Value: m.Length, Limit: math.Inf(1), Rule: srcBeam, Rests: m.restsHeld("by the joists")}
	for _, by := range []struct {
		what string
		span float64
		of   Strength
	}{
		{"bending", math.Sqrt(8 * v.Fb.Value * s.Modulus() / all), v.Fb},
		{"shear", 4.0 / 3 * v.Fv.Value * s.Area() / all, v.Fv},
		{"deflection", math.Cbrt(384 * v.E.Value * s.Inertia() / (5 * liveLimit * passing)), v.E},
	} {
		if by.span < c.Limit {
			c.Name, c.Limit, c.Factors = "beam span, "+by.what+" governs", by.span, by.of.Factors
		}
	}
	if m.Length == 0 {
		c.Value = math.NaN()
		c.Err = &measure.Error{Field: "Length", Class: measure.ErrUnknown, Want: "the span in question, m"}
	}
	return c.Limit, c, nil
}
