package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

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
