package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Demand is what an analysis asks of a member, all plies together. Signs of
// moments, shear and deflections do not matter; a zero asks nothing.
type Demand struct {
	Moment     float64 // about the horizontal axis, N·m
	FlatMoment float64 // about the vertical axis, N·m: a joist pushed sideways
	Shear      float64 // vertical, N, with all loads counted
	Relief     float64 // part of Shear from loads within a depth of the support's face, N; [ShearRelief]
	Axial      float64 // N, tension positive

	Reaction float64 // N, pressing on the bearing; an uplift is not a bearing
	Bearing  float64 // length of the bearing along the grain, m
	Inner    bool    // the bearing lies 3 in. or more from the member's end

	Long  float64 // elastic deflection under the lasting load, m
	Short float64 // elastic deflection under the passing load, m
	Span  float64 // the span the deflections are judged by, m; 0 is the member's Length
	Tip   bool    // they are of an overhang's tip, and Span is the overhang
}

func (d Demand) check() error {
	any := func(k measure.Kind) measure.Range {
		return measure.Range{Kind: k, Lo: -1e12, Hi: 1e12}
	}
	positive := func(k measure.Kind) measure.Range { return measure.Range{Kind: k, Hi: 1e12} }
	for _, c := range []struct {
		field string
		x     float64
		r     measure.Range
	}{
		{"Moment", d.Moment, any(measure.Moment)},
		{"FlatMoment", d.FlatMoment, any(measure.Moment)},
		{"Shear", d.Shear, any(measure.Force)},
		{"Relief", d.Relief, measure.Range{Kind: measure.Force, Hi: math.Abs(d.Shear)}},
		{"Axial", d.Axial, any(measure.Force)},
		{"Reaction", d.Reaction, any(measure.Force)},
		{"Bearing", d.Bearing, positive(measure.Length)},
		{"Long", d.Long, any(measure.Length)},
		{"Short", d.Short, any(measure.Length)},
		{"Span", d.Span, positive(measure.Length)},
	} {
		if err := c.r.Check(c.field, c.x); err != nil {
			return err
		}
	}
	return nil
}

// Check compares a demand with the member's adjusted design values: bending,
// shear, bearing, tension or compression, both at once, deflection. What the
// demand does not ask is left out, but for bending and shear. Each check names
// its rule, its factors and what it rests on; where a value cannot be had it
// gives no answer and the reason. Malformed data is an error.
//
// Fc⊥ and E take no duration. Deflection counts the lasting part twice in wet
// lumber, one and a half times in dry (Kcr, NDS 3.5.2), and has two limits:
// L/360 for the passing load, L/240 for all (L/180 both at a tip).
func (m Member) Check(d Demand, t Duration) ([]measure.Check, error) {
	v, err := m.Adjusted(t)
	if err != nil {
		return nil, err
	}
	if err := d.check(); err != nil {
		return nil, err
	}
	out := []measure.Check{m.bending(d, v)}
	if d.FlatMoment != 0 {
		out = append(out, m.bendingAcross(d, v))
	}
	out = append(out, m.shear(d, v))
	if d.Axial != 0 {
		out = append(out, m.axial(d, v))
	}
	if c, ok := m.combined(d, v); ok {
		out = append(out, c)
	}
	if d.Reaction > 0 {
		out = append(out, m.bearing(d, v))
	}
	if d.Long != 0 || d.Short != 0 {
		out = append(out, m.deflection(d)...)
	}
	for i := range out {
		out[i].Rests = m.rests()
	}
	return out, nil
}

// limited returns a check of a stress against a strength.
func limited(name string, value float64, s Strength, rule *measure.Source) measure.Check {
	c := measure.Check{
		Name: name, Kind: measure.Stress, Value: value, Limit: s.Value,
		Rule: rule, Factors: s.Factors, Err: s.Err,
	}
	if s.Err != nil {
		c.Limit = math.NaN()
	}
	return c
}

// modulusAcross is the section modulus of all plies about the vertical axis,
// each ply bending by itself.
func (m Member) modulusAcross() float64 { return m.plies() * m.ply().Turned().Modulus() }

func (m Member) bending(d Demand, v Design) measure.Check {
	return limited("bending", math.Abs(d.Moment)/m.Whole().Modulus(), v.Fb, srcBending)
}

func (m Member) bendingAcross(d Demand, v Design) measure.Check {
	return limited("bending sideways", math.Abs(d.FlatMoment)/m.modulusAcross(), v.FbAcross, srcBending)
}

func (m Member) shear(d Demand, v Design) measure.Check {
	force := math.Abs(d.Shear) - d.Relief
	c := limited("shear", 1.5*force/m.Whole().Area(), v.Fv, srcShear)
	if d.Relief > 0 {
		c.Name = "shear a depth from the support"
		c.Notes = append(c.Notes, "loads within a depth of the support's face are left out (NDS 3.4.3.1): "+
			"the member must rest on its bottom edge over its full width")
	}
	return c
}

func (m Member) axial(d Demand, v Design) measure.Check {
	stress := math.Abs(d.Axial) / m.Whole().Area()
	if d.Axial > 0 {
		return limited("tension", stress, v.Ft, srcTension)
	}
	return limited("compression", stress, v.Fc, srcColumn)
}

func (m Member) bearing(d Demand, v Design) measure.Check {
	if d.Bearing == 0 {
		c := measure.Refuse("bearing", &measure.Error{
			Field: "Bearing", Class: measure.ErrUnknown, Want: "the length of the bearing along the grain",
		})
		c.Rule = srcBearing
		return c
	}
	s := v.FcPerp
	s.factor(BearingArea(d.Bearing, d.Inner))
	return limited("bearing", d.Reaction/(m.Whole().Width*d.Bearing), s, srcBearing)
}

// creep returns Kcr, by which the elastic deflection under lasting load grows
// with the years: 2.0 for wet lumber, 1.5 for seasoned lumber used dry.
// NDS 3.5.2.
func (m Member) creep() measure.Factor {
	f := measure.Factor{Symbol: "Kcr", Name: "creep", Value: 2, Why: "wet or unseasoned", Source: srcCreep}
	if m.Dry {
		f.Value, f.Why = 1.5, "seasoned and used dry"
	}
	return f
}

// limits of deflection as fractions of the span.
const (
	liveLimit  = 360
	totalLimit = 240
	tipLimit   = 180
)

var srcLimit = &measure.Source{
	Title: "International Residential Code", Edition: "2018",
	Locator: "Table R301.7 and the notes of the span tables", Status: measure.Quoted,
}

func (m Member) deflection(d Demand) []measure.Check {
	span := d.Span
	if span == 0 {
		span = m.Length
	}
	var err error
	if !(span > 0) {
		err = &measure.Error{Field: "Span", Class: measure.ErrUnknown, Want: "the span the deflection is judged by"}
	}
	live, total := float64(liveLimit), float64(totalLimit)
	if d.Tip {
		live, total = tipLimit, tipLimit
	}
	k := m.creep()
	passing := measure.Check{
		Name: "deflection under the passing load", Kind: measure.Length, Rule: srcLimit, Err: err,
		Value: math.Abs(d.Short), Limit: span / live,
	}
	all := measure.Check{
		Name: "deflection with creep", Kind: measure.Length, Rule: srcLimit, Err: err, Factors: []measure.Factor{k},
		Value: k.Value*math.Abs(d.Long) + math.Abs(d.Short), Limit: span / total,
	}
	if err != nil {
		passing.Limit, all.Limit = math.NaN(), math.NaN()
	}
	return []measure.Check{passing, all}
}

// rests lists what every check of the member rests on. The cautious side stands
// in for what was not said, so that none of it can decide.
func (m Member) rests() []measure.Assumption {
	wet := measure.Assumption{Name: "moisture in service", Text: "above 19 % (wet)", Known: measure.Assumed}
	if m.Dry {
		wet.Text, wet.Known = "19 % or less", measure.Measured
	}
	slits := measure.Assumption{Name: "incising", Text: "incised", Known: measure.Assumed}
	if m.Smooth {
		slits.Text, slits.Known = "not incised", measure.Measured
	}
	held := measure.Assumption{Name: "compression edge", Text: "held at the ends of its length only", Known: measure.Assumed}
	switch {
	case m.Held:
		held.Text, held.Known = "held all along", measure.Measured
	case m.Unbraced > 0:
		held.Text, held.Known = "held every "+measure.Length.Format(m.Unbraced, measure.US), measure.Measured
	}
	return []measure.Assumption{wet, slits, held}
}

// restsHeld is rests for rules that take the compression edge for held.
func (m Member) restsHeld(by string) []measure.Assumption {
	out := m.rests()
	out[len(out)-1] = measure.Assumption{
		Name: "compression edge", Text: "held all along " + by, Known: measure.Assumed,
	}
	return out
}
