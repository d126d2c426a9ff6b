package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

var (
	spacings = measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: 5}
	loads    = measure.Range{Kind: measure.Pressure, Hi: 1e5}

	// liveLoads begin far below a breath of snow: under nothing any span would do.
	liveLoads = measure.Range{Kind: measure.Pressure, Lo: 1e-3, Hi: loads.Hi}
)

// srcSpan is the rule behind the published tables of joist spans.
var srcSpan = &measure.Source{
	Title: "Span tables for joists (IRC Tables R502.3.1(2), R507.6, R802.5.1(2); DCA 6)", Edition: "2012 to 2018",
	Locator: "bending under all load, deflection under live load, simple span", Status: measure.Quoted,
}

// Span returns how far joists of this member may span, m, simply supported at a
// spacing (m) under a dead and a live load (Pa): the lesser of bending under all
// load, of ten years' duration, and a deflection of L/360 under the live load, by
// beam theory from the design values of [Member.Adjusted].
// Shear never governs a joist of the tables and is left to [Member.Check]. The
// result is neither capped nor rounded; tables print the nearest inch. The boards
// hold the compression edge (CL 1); Repetitive is the caller's, and void where the
// spacing is more than 24 in.
//
// The check compares the member's Length with the span and names the factors of
// what governs; without a Length it gives no answer but the limit.
func (m Member) Span(spacing, dead, live float64) (float64, measure.Check, error) {
	return m.SpanWithin(liveLimit, spacing, dead, live)
}

// SpanWithin is [Member.Span], m at a spacing (m) under loads (Pa), with another limit
// of the deflection under the live load, the span over a divisor: 240 for ceilings.
func (m Member) SpanWithin(divisor, spacing, dead, live float64) (float64, measure.Check, error) {
	m.Held = true
	if spacing > 24*measure.Inch+1e-9 {
		m.Repetitive = false // NDS 4.3.9
	}
	v, err := m.Adjusted(TenYears)
	if err != nil {
		return 0, measure.Check{}, err
	}
	if err := spacings.Check("spacing", spacing); err != nil {
		return 0, measure.Check{}, err
	}
	if err := loads.Check("dead load", dead); err != nil {
		return 0, measure.Check{}, err
	}
	if err := liveLoads.Check("live load", live); err != nil {
		return 0, measure.Check{}, err
	}
	if err := (measure.Range{Lo: 60, Hi: 1000}).Check("divisor of the span", divisor); err != nil {
		return 0, measure.Check{}, err
	}
	for _, s := range []Strength{v.Fb, v.E} {
		if s.Err != nil {
			return 0, measure.Check{}, s.Err
		}
	}
	s := m.Whole()
	bending := math.Sqrt(8 * v.Fb.Value * s.Modulus() / ((dead + live) * spacing))
	deflection := math.Cbrt(384 * v.E.Value * s.Inertia() / (5 * divisor * live * spacing))
	c := measure.Check{
		Name: "joist span, bending governs", Kind: measure.Length, Value: m.Length, Limit: bending,
		Rule: srcSpan, Factors: v.Fb.Factors, Rests: m.restsHeld("by the boards"),
	}
	if deflection < bending {
		c.Name, c.Limit, c.Factors = "joist span, deflection governs", deflection, v.E.Factors
	}
	if m.Length == 0 {
		c.Value = math.NaN()
		c.Err = &measure.Error{Field: "Length", Class: measure.ErrUnknown, Want: "the span in question, m"}
	}
	return c.Limit, c, nil
}
