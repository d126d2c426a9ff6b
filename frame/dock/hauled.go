package dock

import (
	"errors"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// hauled checks the line and the anchor with which the dock is hauled out.
func (d *Dock) hauled() []measure.Check {
	names := []string{"Hauling out: the line", "Hauling out: what the winch hangs on"}
	m := &d.plan.Mooring
	if m.HauledOut.Value == "no" {
		return []measure.Check{without(names[0], m.HauledOut, measure.Force), without(names[1], m.HauledOut, measure.Force)}
	}
	g := &m.Haul
	_, rs, err := d.platform()
	rs = append(rs, on(m.HauledOut))
	if m.HauledOut.Value == "yes" {
		rs = append(rs, on(d.plan.Loads.Skid), on(g.Slope), on(g.Parts), on(g.Kind), on(g.Size), on(g.End))
	}
	rs = dedupe(rs)
	if missing := rs.err(); missing != nil {
		err = missing
	}
	var out []measure.Check
	var line moor.Gear
	if err == nil {
		line, err = gear(g.Kind.Value, g.Size.Value, g.End.Value)
	}
	if err == nil {
		anchor := moor.Rated{Name: "holding of the winch's anchor", Source: srcUser}
		if g.Holding.Known == measure.Measured {
			anchor.Hold = g.Holding.Value
		}
		out, err = moor.Haul{
			Mass: d.weighs() / measure.Gravity, Slope: g.Slope.Value, Friction: d.plan.Loads.Skid.Value, Parts: g.Parts.Value, Line: line, Anchor: anchor,
		}.Check()
	}
	if err == nil && len(out) != len(names) {
		err = errors.New("the pull does not end in a line and an anchor")
	}
	if err != nil {
		out = []measure.Check{measure.Refuse("", err), measure.Refuse("", err)}
	}
	for i := range out {
		out[i].Name, out[i].Rests = names[i], append(rs.assumptions(), out[i].Rests...)
	}
	return out
}
