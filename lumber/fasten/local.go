package fasten

import (
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// tearing returns the checks of the wood around a group loaded along the grain:
// the section left by the holes, a row torn out, the group torn out.
//
//	net section  Ft' An
//	rows         Σ n Fv' t s,  s the lesser of end distance and spacing
//	group        half of the two outer rows' tear-out + Ft' A between them
//
// A piece under compression alone cannot tear. NDS Appendix E.
func (j Joint) tearing(force float64, t lumber.Duration) []measure.Check {
	var out []measure.Check
	d := inches(j.Fastener.Diameter)
	if d < 0.25-hair {
		return nil
	}
	for _, p := range j.pieces() {
		if p.Material != Wood || p.across() || p.EndGrain || p.Away {
			continue
		}
		share := force * math.Cos(p.Angle)
		if j.Double && p.name == "side" {
			share /= 2
		}
		out = append(out, j.tearingOf(p, share, d, t)...)
	}
	return out
}

func (j Joint) tearingOf(p named, force, d float64, t lumber.Duration) []measure.Check {
	blank := func(name string) measure.Check {
		return measure.Check{Name: name + ", " + p.name + " piece", Kind: measure.Force, Value: force, Limit: math.NaN(), Rule: srcLocal}
	}
	net, rows := blank("section left by the holes"), blank("rows tearing out")
	wood, err := j.member(p.Piece).Adjusted(t)
	if err != nil {
		net.Err, rows.Err = err, err
		return []measure.Check{net, rows}
	}
	net.Factors, rows.Factors = wood.Ft.Factors, wood.Fv.Factors
	hole := d * measure.Inch
	if j.Fastener.Kind == Bolt {
		if hole, err = j.hole(d); err != nil {
			net.Err, rows.Err = err, err
			return []measure.Check{net, rows}
		}
	}
	depth := p.Thickness
	if p.ends && j.Fastener.Kind != Bolt {
		if g, err := j.sit(); err == nil {
			depth = math.Min(depth, g.depth*measure.Inch)
		}
	}
	switch left := p.Width - float64(j.rows())*hole; {
	case !(p.Width > 0):
		net.Err = unknown("Width", "the width of the "+p.name+" piece")
	case wood.Ft.Err != nil:
		net.Err = wood.Ft.Err
	default:
		net.Limit = wood.Ft.Value * depth * math.Max(0, left)
	}
	s := p.End
	if j.perRow() > 1 {
		s = math.Min(s, j.Spacing)
	}
	one := wood.Fv.Value * depth * s * float64(j.perRow())
	switch {
	case !(s > 0):
		rows.Err = unknown("End, Spacing", "the end distance, and the spacing of a row")
	case wood.Fv.Err != nil:
		rows.Err = wood.Fv.Err
	default:
		rows.Limit = one * float64(j.rows())
	}
	out := []measure.Check{net, rows}
	if j.rows() == 1 {
		return out
	}
	group := blank("group tearing out")
	group.Factors = wood.Ft.Factors
	switch between := float64(j.rows()-1) * (j.Between - hole); {
	case rows.Err != nil:
		group.Err = rows.Err
	case wood.Ft.Err != nil:
		group.Err = wood.Ft.Err
	case !(j.Between > 0):
		group.Err = unknown("Between", "the spacing between rows")
	default:
		group.Limit = one + wood.Ft.Value*depth*math.Max(0, between)
	}
	return append(out, group)
}

// crossShear returns the shear of a piece loaded across its grain, by the depth
// from the loaded edge to the farthest fastener: a beam hung from bolts in its
// lower half splits. The whole load is taken as shear on one side of the joint,
// the cautious way; a joint whose distances are not known gives no answer. NDS
// 3.4.3.3.
func (j Joint) crossShear(force float64, t lumber.Duration) []measure.Check {
	var out []measure.Check
	for _, p := range j.pieces() {
		if p.Material != Wood || p.along() || p.EndGrain {
			continue
		}
		share := force * math.Sin(p.Angle)
		if j.Double && p.name == "side" {
			share /= 2
		}
		name := "shear at the joint, " + p.name + " piece"
		if !(p.Width > 0 && p.End > 0 && p.Edge > 0) {
			c := measure.Refuse(name, unknown("Width, End, Edge", "how wide the "+p.name+" piece is and how far the fasteners are from its end and from the edge the load presses toward"))
			out = append(out, ruled(c, nds("3.4.3.3", measure.Memory)))
			continue
		}
		// From the loaded edge to the fastener nearest to the other one.
		de := p.Edge + j.wide(p)
		m := lumber.Member{
			Section: lumber.Section{Width: p.Thickness, Depth: p.Width}, Grade: p.Grade,
			Dry: j.Dry, Smooth: p.Smooth, Temperature: j.Temperature,
		}
		c, err := m.CheckJoint(de, p.End, share, t)
		if err != nil {
			c = ruled(measure.Refuse(name, err), nds("3.4.3.3", measure.Memory))
		}
		c.Name += ", " + p.name + " piece"
		c.Notes = append(c.Notes, "the whole load taken as shear on one side of the joint")
		out = append(out, c)
	}
	return out
}
