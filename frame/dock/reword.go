package dock

import (
	"strings"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// reword puts remarks, errors and assumed values into the units of the sheet: the
// packages below know no reader, and defaults stand as the plan's table has them. What
// the plan calls a thing stays as it is.
func (d *Dock) reword(checks []measure.Check) {
	names := d.named()
	for i := range checks {
		c := &checks[i]
		for k, n := range c.Notes {
			if now := restated(n, names, d.system()); now != n {
				c.Notes = append([]string(nil), c.Notes...) // others may hold it, too
				c.Notes[k] = now
			}
		}
		c.Err = measure.RestateError(c.Err, d.system())
		for k := range c.Rests {
			if a := &c.Rests[k]; a.Known != measure.Measured {
				a.Text = quantity(a.Text, d.system())
			}
		}
	}
}

// quantity restates a text that is one quantity and nothing more.
func quantity(text string, s measure.System) string {
	exact := text // whole metres may be rounded in a remark
	if digits, unit, ok := strings.Cut(text, " "); ok && strings.Trim(digits, "0123456789") == "" && digits != "" {
		exact = digits + ".0 " + unit
	}
	if now := strings.TrimSuffix(measure.Restate(exact+" of ", s), " of "); now != exact {
		return now
	}
	return text
}

// restated restates a text around names that hold a quantity themselves.
func restated(text string, names []string, s measure.System) string {
	for i, n := range names {
		if parts := strings.Split(text, n); len(parts) > 1 {
			for k := range parts {
				parts[k] = restated(parts[k], names[i+1:], s)
			}
			return strings.Join(parts, n)
		}
	}
	return measure.Restate(text, s)
}

// named returns what the plan calls its things, where that reads like a quantity.
func (d *Dock) named() []string {
	var out []string
	add := func(n plan.Name) {
		if n.Value != "" && (measure.Restate(n.Value, measure.US) != n.Value || measure.Restate(n.Value, measure.SI) != n.Value) {
			out = append(out, n.Value)
		}
	}
	p := d.plan
	add(p.Name)
	for i := range p.Floats {
		add(p.Floats[i].Name)
	}
	for i := range p.Weights {
		add(p.Weights[i].Name)
	}
	for i := range p.People {
		add(p.People[i].Who)
	}
	for i := range p.Site.Shore {
		add(p.Site.Shore[i].Name)
	}
	for i := range p.Mooring.Lines {
		add(p.Mooring.Lines[i].Name)
	}
	for i := range p.Mooring.Anchors {
		add(p.Mooring.Anchors[i].Name)
	}
	for i := range p.Ice.Holes {
		add(p.Ice.Holes[i].Where)
	}
	for i := range p.Shop.Items {
		add(p.Shop.Items[i].Name)
	}
	return out
}
