package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Member is a piece of lumber in the frame. The zero values are the cautious
// ones: wet, incised, single, unheld.
type Member struct {
	// Section is one ply as written, "2x8" from [Size] on edge: neither Plies nor Flat
	// are in it. What bends is [Member.Whole].
	Section Section

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
	Smooth     bool // not incised: the faces show no slits (Southern Pine mostly; look)
	Repetitive bool // one of three or more, at most 24 in. apart, joined by boards
	Flat       bool // lies on its wide face, however Section is written

	// Paired gives two plies the 1.10 that the published tables of deck beams
	// seem to contain, for comparing with those tables. The NDS grants nothing to
	// two plies.
	Paired bool
}

func (m Member) plies() float64 { return float64(max(1, m.Plies)) }

// ply returns one ply as it stands.
func (m Member) ply() Section {
	if m.Flat && m.Section.Depth > m.Section.Width {
		return m.Section.Turned()
	}
	return m.Section
}

// Whole returns the section of all plies as it stands, for bending about the
// horizontal axis: EI for package frame is Design.E.Value * Whole().Inertia(). Plies are
// nailed, not glued: sideways and in torsion they act each for itself, so that their
// stiffnesses add (beam theory), not as Whole's own.
func (m Member) Whole() Section {
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
	if err := m.Grade.check(); err != nil {
		return err
	}
	return m.Grade.fits(m.Section)
}

// check finds numbers among the design values that are none.
func (g Grade) check() error {
	r := measure.Range{Kind: measure.Stress, Hi: 1e15}
	for p := Fb; p < properties; p++ {
		if err := r.Check("Grade."+p.String(), g.value(p).SI()); err != nil {
			return err
		}
	}
	return measure.Range{Kind: measure.Length, Hi: lengths.Hi}.Check("Grade.Widest", g.Widest)
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
	if g.Widest > 0 {
		hi = g.Widest
	}
	r := measure.Range{Kind: measure.Length, Hi: hi, OpenLo: true, Source: g.Fb.Source}
	return r.Check("width for this grade", s.wide())
}
