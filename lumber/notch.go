package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Notch is a cut across a member's upper or lower edge.
type Notch struct {
	Depth  float64 // cut into the edge, m
	Length float64 // along the grain: for an end, how far it reaches past the support's inner face; m
	Inner  bool    // away from the ends
	From   float64 // of an inner notch: its far edge from the nearer support, m
	Top    bool    // cut into the compression edge
}

// CheckNotch compares the shear at a notched place with what the section left
// carries, and the notch with the limits of sawn lumber:
//
//	tension edge, end:      Vr' = (2/3 Fv' b dn)(dn/d)²
//	compression edge, end:  Vr' = 2/3 Fv' b [d - e (d - dn)/dn],  e ≤ dn, else 2/3 Fv' b dn
//	inner:                  Vr' = 2/3 Fv' b dn
//
// with dn the depth left and e the Length. An end may lose a quarter of its
// depth, an inner place of the outer thirds a sixth, the middle third nothing;
// lumber 3.5 in. and thicker has no inner notch on its tension edge. Stiffness is
// not reduced by a notch of at most d/6 in depth and d/3 in length. NDS 3.4.3.2
// and 4.4.3.
func (m Member) CheckNotch(n Notch, shear float64, t Duration) ([]measure.Check, error) {
	v, err := m.Adjusted(t)
	if err != nil {
		return nil, err
	}
	s := m.Whole()
	for _, c := range []struct {
		field string
		x     float64
		r     measure.Range
	}{
		{"Depth of the notch", n.Depth, measure.Range{Kind: measure.Length, Hi: s.Depth, OpenLo: true, OpenHi: true}},
		{"Length of the notch", n.Length, measure.Range{Kind: measure.Length, Hi: lengths.Hi}},
		{"From", n.From, measure.Range{Kind: measure.Length, Hi: lengths.Hi}},
		{"shear", shear, measure.Range{Kind: measure.Force, Lo: -1e12, Hi: 1e12}},
	} {
		if err := c.r.Check(c.field, c.x); err != nil {
			return nil, err
		}
	}
	left := s.Depth - n.Depth
	whole := 2.0 / 3 * v.Fv.Value * s.Width
	force := measure.Check{
		Name: "shear at the notch", Kind: measure.Force, Value: math.Abs(shear), Limit: whole * left,
		Rule: srcNotch, Factors: v.Fv.Factors, Rests: m.rests(), Err: v.Fv.Err,
	}
	switch {
	case n.Inner:
	case !n.Top:
		share := left / s.Depth
		force.Limit *= share * share
		force.Factors = append(force.Factors, measure.Factor{
			Symbol: "(dn/d)²", Name: "notch", Value: share * share, Why: "end notch on the tension edge", Source: srcNotch,
		})
	case n.Length <= left:
		force.Limit = whole * (s.Depth - n.Length*n.Depth/left)
	}
	return []measure.Check{force, m.notchLimit(n)}, nil
}

// notchLimit is the rule of how deep a notch may be and where.
func (m Member) notchLimit(n Notch) measure.Check {
	s := m.Whole()
	c := measure.Check{
		Name: "depth of the notch", Kind: measure.Length, Value: n.Depth, Limit: s.Depth / 4, Rule: srcNotched,
	}
	if !n.Inner {
		c.Notes = []string{"an end notch goes no deeper than a quarter of the depth"}
		return c
	}
	c.Limit = s.Depth / 6
	switch {
	case !n.Top && m.ply().Width >= 3.5*measure.Inch-1e-9:
		c.Limit = 0
		c.Notes = []string{"lumber 3.5 in. and thicker has no notch on the tension edge but at its ends"}
	case !(m.Length > 0):
		c.Limit = math.NaN()
		c.Err = &measure.Error{Field: "Length", Class: measure.ErrUnknown, Want: "the span, to know its outer thirds"}
	case !(n.From > 0):
		c.Limit = math.NaN()
		c.Err = &measure.Error{Field: "From", Class: measure.ErrUnknown, Want: "how far the notch reaches from the nearer support"}
	case n.From > m.Length/3+1e-9:
		c.Limit = 0
		c.Notes = []string{"no notch in the middle third of the span"}
	}
	if n.Length > s.Depth/3 || n.Depth > s.Depth/6 {
		c.Notes = append(c.Notes, "longer than d/3 or deeper than d/6: the stiffness of the whole section no longer holds")
	}
	return c
}

// CheckJoint compares the shear at a joint of fasteners with what the member
// carries there. Loaded is de, the depth from the loaded-side farthest edge: the
// member's depth less the distance from the unloaded edge to the nearest
// fastener, m; end is the joint's distance from the member's end, m.
//
//	within 5d of the end:  Vr' = (2/3 Fv' b de)(de/d)²
//	farther in:            Vr' = 2/3 Fv' b de
//
// NDS 3.4.3.3.
func (m Member) CheckJoint(loaded, end, shear float64, t Duration) (measure.Check, error) {
	v, err := m.Adjusted(t)
	if err != nil {
		return measure.Check{}, err
	}
	s := m.Whole()
	if err := (measure.Range{Kind: measure.Length, Hi: s.Depth, OpenLo: true}).Check("depth at the joint", loaded); err != nil {
		return measure.Check{}, err
	}
	if err := (measure.Range{Kind: measure.Length, Hi: lengths.Hi}).Check("distance from the end", end); err != nil {
		return measure.Check{}, err
	}
	if err := (measure.Range{Kind: measure.Force, Lo: -1e12, Hi: 1e12}).Check("shear", shear); err != nil {
		return measure.Check{}, err
	}
	c := measure.Check{
		Name: "shear at the joint", Kind: measure.Force, Value: math.Abs(shear),
		Limit: 2.0 / 3 * v.Fv.Value * s.Width * loaded,
		Rule:  srcJoint, Factors: v.Fv.Factors, Rests: m.rests(), Err: v.Fv.Err,
	}
	if end < 5*s.Depth {
		share := loaded / s.Depth
		c.Name = "shear at a joint near the end"
		c.Limit *= share * share
		c.Factors = append(c.Factors, measure.Factor{
			Symbol: "(de/d)²", Name: "joint near the end", Value: share * share, Why: "within 5 d of the end", Source: srcJoint,
		})
	}
	return c, nil
}

// ShearRelief returns the part of the shear at a support that NDS 3.4.3.1 leaves
// out, N, for a member that rests on its bottom edge over its full width: the
// uniform load (N/m) within a depth of the support's face and, of a point force
// (N) at a distance (m) less than the depth, the share that is missing to
// distance/depth. No force: 0, at any distance.
// Within 0.7 units in the last place of what it is at no distance.
// Worst at (0.08967, 1732, 1309, 0.02074), ordered as in testdata/accuracy.csv.
func ShearRelief(depth, uniform, force, distance float64) (float64, error) {
	if err := (Section{Width: depth, Depth: depth}).check(); err != nil {
		return 0, err
	}
	r := measure.Range{Kind: measure.LineLoad, Hi: 1e9}
	if err := r.Check("uniform load", uniform); err != nil {
		return 0, err
	}
	r.Kind = measure.Force
	if err := r.Check("force", force); err != nil {
		return 0, err
	}
	r.Kind = measure.Length
	if err := r.Check("distance", distance); err != nil {
		return 0, err
	}
	return uniform*depth + force*math.Max(0, 1-distance/depth), nil
}
