package lumber

import (
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Member is a piece of lumber in the frame. The zero values are the cautious
// ones: wet, incised, single, unheld.
type Member struct {
	// Section is one ply as it stands. "2x8" from [Size] is on edge.
	Section

	Grade Grade

	// Length is the span or the buckling length, m. It serves where Unbraced is
	// 0, for columns, and for the limits of deflection.
	Length float64

	// Unbraced is the distance between points that hold the compression edge (or
	// the column) sideways, m. 0 is not said: the whole Length.
	Unbraced float64

	// Held says that the compression edge is held all along, as by deck boards,
	// and the ends are kept from turning: CL is 1 (NDS 3.3.3.3).
	Held bool

	// Loading names the loading for the effective length, as [EffectiveLength]
	// knows it. Empty is any.
	Loading string

	// Temperature is sustained, °C; up to 37.8 °C (100 °F) nothing is reduced.
	Temperature float64

	Plies int // side by side, 0 is 1; moments and forces are of all together

	Dry        bool // stays at 19 % moisture or less; not on a dock
	Smooth     bool // not incised: the faces show no slits
	Repetitive bool // one of three or more, at most 24 in. apart, joined by boards
	Flat       bool // lies on its wide face, however Section is written

	// Paired gives two plies the 1.10 that the published tables of deck beams
	// seem to contain, for comparing with those tables. The NDS grants nothing to
	// two plies.
	Paired bool
}

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

func (m Member) plies() float64 { return float64(max(1, m.Plies)) }

// ply returns one ply as it stands.
func (m Member) ply() Section {
	if m.Flat && m.Depth > m.Width {
		return m.Section.Turned()
	}
	return m.Section
}

// whole returns the section of all plies.
func (m Member) whole() Section {
	s := m.ply()
	s.Width *= m.plies()
	return s
}

// check returns an error for malformed data and for a grade that does not stand
// for the section.
func (m Member) check() error {
	if err := m.Section.check(); err != nil {
		return err
	}
	if err := pliesRange.Check("Plies", float64(m.Plies)); err != nil {
		return err
	}
	free := measure.Range{Kind: measure.Length, Hi: lengths.Hi}
	if err := free.Check("Length", m.Length); err != nil {
		return err
	}
	if err := free.Check("Unbraced", m.Unbraced); err != nil {
		return err
	}
	if m.Loading != "" {
		if _, err := EffectiveLength(m.Loading, 1, 1); err != nil {
			return err
		}
	}
	if _, err := Temperature(Fb, m.Temperature, m.Dry); err != nil {
		return err
	}
	if err := m.checkValues(); err != nil {
		return err
	}
	return m.Grade.fits(m.Section)
}

// checkValues finds numbers among the design values that are none.
func (m Member) checkValues() error {
	r := measure.Range{Kind: measure.Stress, Hi: 1e15}
	for p := Fb; p < properties; p++ {
		if err := r.Check("Grade."+p.String(), m.Grade.value(p).SI()); err != nil {
			return err
		}
	}
	return nil
}

// fits returns an error where the values belong to another size.
func (g Grade) fits(s Section) error {
	if !tableFits(g.Table, s) {
		return &measure.Error{
			Field: "Grade", Text: g.Species + " " + g.Name, Class: measure.ErrName,
			Why:  "values of Table " + g.Table + " do not stand for this size",
			Want: "the Grade that Lookup gives for the section",
		}
	}
	hi := math.Inf(1)
	if g.Widest > 0 && !(g.Table == "4B" && g.Widest == widestOf(widths[7])) {
		hi = g.Widest
	}
	r := measure.Range{Kind: measure.Length, Hi: hi, OpenLo: true, Source: g.Fb.Source}
	return r.Check("width for this grade", s.wide())
}

// Adjusted returns the member's design values for loads of a duration, each with
// the factors applied. A value that cannot be had (lumber without published
// values, an unknown unbraced length, slenderness beyond 50) has its reason in
// Err and is 0; malformed data is an error.
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
	s := a.Symbol + " " + measure.Stress.Print(a.Value, measure.US) + " = " + measure.Stress.Print(a.Reference.SI(), measure.US)
	for _, f := range a.Factors {
		s += " × " + f.Symbol + " " + number(f.Value)
	}
	return s
}

// lateralLength returns lu, or an error where nothing was said.
func (m Member) lateralLength() (float64, error) {
	switch {
	case m.Unbraced > 0:
		return m.Unbraced, nil
	case m.Length > 0:
		return m.Length, nil
	}
	return 0, &measure.Error{
		Field: "Unbraced", Class: measure.ErrUnknown, Want: "the distance between points held sideways, or Length, or Held",
	}
}

// beam returns CL for bending about the horizontal axis.
func (m Member) beam(fb, emin Strength) (measure.Factor, error) {
	s := m.whole()
	return m.lateral(s, fb, emin)
}

// beamAcross returns CL for bending about the vertical axis: a wide member that
// is bent in its own plane.
func (m Member) beamAcross(fb, emin Strength) (measure.Factor, error) {
	s := m.ply().Turned() // one ply: nothing ties their depths together
	m.Held = false        // boards hold the upper edge, not the side
	m.Unbraced = math.Max(m.Unbraced, m.Length)
	return m.lateral(s, fb, emin)
}

func (m Member) lateral(s Section, fb, emin Strength) (measure.Factor, error) {
	f := measure.Factor{Symbol: "CL", Name: "beam stability", Value: 1, Source: srcCL}
	switch {
	case s.Depth <= s.Width:
		f.Why = "not deeper than wide"
		return f, nil
	case m.Held:
		f.Why = "compression edge held all along"
		return f, nil
	case nominalDepth(s.Depth) <= 2*nominalDepth(s.Width):
		f.Why = "nominal depth at most twice the width (NDS 4.4.1.2)"
		return f, nil
	case fb.Err != nil:
		return f, fb.Err
	case emin.Err != nil:
		return f, emin.Err
	}
	lu, err := m.lateralLength()
	if err != nil {
		return f, err
	}
	le, err := EffectiveLength(m.Loading, lu, s.Depth)
	if err != nil {
		return f, err
	}
	return BeamStability(fb.without("Cfu"), emin.Value, le, s.Depth, s.Width)
}

// nominalDepth turns a dressed side into the nominal one that the rules of thumb
// for sideways support are written in, in inches.
func nominalDepth(x float64) float64 {
	return math.Ceil(x/measure.Inch - 1.0/16)
}

// slenderness returns le/d of the column the strong and the weak way, with le/d
// across the vertical axis for one ply.
func (m Member) slenderness() (vertical, sideways float64, err error) {
	s := m.ply()
	if !(m.Length > 0) {
		return 0, 0, &measure.Error{Field: "Length", Class: measure.ErrUnknown, Want: "the buckling length of the column"}
	}
	lu := m.Length
	if m.Unbraced > 0 {
		lu = math.Min(m.Unbraced, m.Length)
	}
	return m.Length / s.Depth, lu / s.Width, nil
}

// column returns CP for the more slender way.
func (m Member) column(fc, emin Strength) (measure.Factor, error) {
	if fc.Err != nil {
		return measure.Factor{}, fc.Err
	}
	if emin.Err != nil {
		return measure.Factor{}, emin.Err
	}
	v, w, err := m.slenderness()
	if err != nil {
		return measure.Factor{}, err
	}
	return ColumnStability(fc.Value, emin.Value, math.Max(v, w))
}
