package lumber

import (
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Strength is an adjusted design value and how it came about.
type Strength struct {
	Symbol    string
	Reference Value            // as printed
	Value     float64          // adjusted, Pa; 0 where there is no answer
	Factors   []measure.Factor // in the order of NDS Table 4.3.1
	Err       error            // why there is no answer
}

// A Design holds the adjusted design values of a member, allowable stress
// design, in the order and with the factors of NDS Table 4.3.1:
//
//	Fb' = Fb CD CM Ct CL CF Cfu Ci Cr     Ft' = Ft CD CM Ct CF Ci
//	Fv' = Fv CD CM Ct Ci                  Fc⊥' = Fc⊥ CM Ct Ci
//	Fc' = Fc CD CM Ct CF Ci CP            E', Emin' = E, Emin CM Ct Ci
//
// Cb belongs to a bearing and is applied where one is checked.
type Design struct {
	Fb       Strength // bending about the horizontal axis
	FbAcross Strength // bending about the vertical axis, without Cr
	Ft, Fv   Strength
	FcPerp   Strength
	Fc       Strength
	E, Emin  Strength
}

// Adjusted returns the member's design values for loads of a duration, each with the
// factors applied, whose sources they name (NDS Table 4.3.1). A value that cannot be
// had (lumber without published values, an unknown unbraced length, slenderness
// beyond 50) has its reason in Err and is 0; malformed data is an error.
func (m Member) Adjusted(t Duration) (Design, error) {
	var d Design
	if err := m.check(); err != nil {
		return d, err
	}
	if _, err := t.Factor(Fb); err != nil {
		return d, err
	}
	standing := m.ply()
	d.E = m.adjust(E, t, standing)
	d.Emin = m.adjust(Emin, t, standing)
	d.Ft = m.adjust(Ft, t, standing)
	d.Fv = m.adjust(Fv, t, standing)
	d.FcPerp = m.adjust(FcPerp, t, standing)
	d.Fb = m.adjust(Fb, t, standing)
	d.FbAcross = m.adjust(Fb, t, standing.Turned())
	d.FbAcross.Symbol += " across"
	d.Fc = m.adjust(Fc, t, standing)

	d.Fb.factor(m.repetitive(standing))
	d.Fb.insertCL(m.beam(d.Fb, d.Emin))
	d.FbAcross.insertCL(m.beamAcross(d.FbAcross, m.adjust(Emin, t, standing.Turned())))
	d.Fc.factor(m.column(d.Fc, d.Emin))
	return d, nil
}

// repetitive returns Cr, with the inferred 1.10 of two plies where it is asked
// for.
func (m Member) repetitive(s Section) (measure.Factor, error) {
	f, err := RepetitiveMember(s, m.Repetitive, m.Plies)
	if err == nil && m.Paired && m.Plies == 2 && !m.Repetitive && classOf(s) == dimension {
		f.Value, f.Why, f.Source = 1.10, "two plies, inferred from tables, not granted by the NDS", srcPaired
	}
	return f, err
}

// adjust applies the factors that need no stability, for a ply as it stands.
func (m Member) adjust(p Property, t Duration, s Section) Strength {
	v := m.Grade.value(p)
	a := Strength{Symbol: p.String() + "'", Reference: v, Value: v.SI()}
	if v.none() {
		a.fail(&measure.Error{
			Field: p.String(), Class: measure.ErrUnknown, Why: "no published value for " + m.Grade.Species + " " + m.Grade.Name + " of this size",
		})
		return a
	}
	a.factor(t.Factor(p))
	a.factor(WetService(p, m.Grade, s, m.Dry))
	a.factor(Temperature(p, m.Temperature, m.Dry))
	a.factor(SizeFactor(p, m.Grade, s))
	a.factor(FlatUse(p, m.Grade, s))
	a.factor(Incising(p, m.Smooth))
	return a
}

// factor multiplies by a factor, unless the factor does not concern the
// property, and keeps the first error.
func (a *Strength) factor(f measure.Factor, err error) {
	switch {
	case a.Err != nil:
	case err != nil:
		a.fail(err)
	case strings.HasPrefix(f.Why, notFor):
	default:
		if a.Factors == nil {
			a.Factors = make([]measure.Factor, 0, 8) // few properties have more
		}
		a.Factors = append(a.Factors, f)
		a.Value *= f.Value
	}
}

// insertCL multiplies by CL, which stands after Ct.
func (a *Strength) insertCL(f measure.Factor, err error) {
	n := len(a.Factors)
	a.factor(f, err)
	if len(a.Factors) > n && n >= 3 {
		copy(a.Factors[4:], a.Factors[3:n])
		a.Factors[3] = f
	}
}

func (a *Strength) fail(err error) { a.Err, a.Value = err, 0 }

// without returns the value with some factors left out, for Fb* and Fb**.
func (a Strength) without(symbols ...string) float64 {
	x := a.Value
	for _, f := range a.Factors {
		for _, s := range symbols {
			if f.Symbol == s {
				x /= f.Value
			}
		}
	}
	return x
}

// String returns the value with its factors: "Fv' 0.9 MPa = 180 psi × CD 1 ...".
func (a Strength) String() string {
	if a.Err != nil {
		return a.Symbol + ": no answer (" + a.Err.Error() + ")"
	}
	s := a.Symbol + " " + measure.Stress.Format(a.Value, measure.US) + " = " + measure.Stress.Format(a.Reference.SI(), measure.US)
	for _, f := range a.Factors {
		s += " × " + f.Symbol + " " + number(f.Value)
	}
	return s
}
