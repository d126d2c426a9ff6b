package dock

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// A goes is one load that goes over the ice: the most of one kind at a time, with whoever
// carries it, pulls it or holds it back.
type goes struct {
	what   string
	mass   float64 // kg, of all
	people int
	rests  rests
}

// heaviestGoes is the most that goes over the ice at a time, of what the plan weighs, what
// goes with the most people, and the names of what it does not weigh.
func (d *Dock) heaviestGoes() (most, crowd goes, unweighed []string) {
	for _, p := range d.carried() {
		h := d.haul(p)
		if !(h.Each > 0) {
			unweighed = append(unweighed, p.name)
			continue
		}
		n := max(h.People, h.Crew)
		one := goes{p.name, max(h.Each, h.Load) + float64(n)*d.grown(), n, p.rests}
		if one.mass > most.mass*(1+1e-9) {
			most = one
		}
		if n > crowd.people {
			crowd = one
		}
	}
	return most, crowd, unweighed
}

// crew is the load of the plan's crossing.
func (d *Dock) crew() ice.Crossing {
	c := &d.plan.Ice.Cross
	return ice.Crossing{Mass: c.Mass.Value, People: c.People.Value}
}

// crosses returns why the load of the plan's crossing is not the one that goes over the
// ice: mass or people of it are not known, it is less than the people who are said to be
// with it, these are fewer than go with any one piece, or it is less than the heaviest that
// goes. The check of a crossing has no answer for any of it, those of the dock with people
// beside it for all but the last.
// Check, card, step and comparison ask here.
func (d *Dock) crosses() (people, load error) {
	c := &d.plan.Ice.Cross
	if err := (rests{on(c.Mass), on(c.People)}).err(); err != nil {
		return err, err
	}
	const weighed = 1.001 // kilograms and pounds of the same people, rounded
	short := func(least float64, want string) error {
		if c.Mass.Value*weighed >= least {
			return nil
		}
		return &measure.Error{
			Field: c.Mass.Path, Text: c.Mass.Text, Kind: measure.Mass, Value: c.Mass.Value, Class: measure.ErrRange,
			Want: want,
		}
	}
	sys := d.system()
	n := c.People.Value
	least := float64(n) * d.grown()
	people = short(least, fmt.Sprintf("%s or more, since %s of %s each are among it", measure.Mass.Format(least, sys), heads(n), measure.Mass.Format(d.grown(), sys)))
	most, crowd, _ := d.heaviestGoes()
	if people == nil && n < crowd.people { // who carries it out stands at the dock, too
		people = &measure.Error{
			Field: c.People.Path, Text: c.People.Text, Value: float64(n), Class: measure.ErrRange,
			Want: fmt.Sprintf("%d or more: as many are with %s", crowd.people, crowd.what),
		}
	}
	if most.mass > 0 {
		load = short(most.mass, fmt.Sprintf("%s or more, for the heaviest that goes out: %s with %s", measure.Mass.Format(most.mass, sys), most.what, heads(most.people)))
	}
	if load == nil {
		load = people
	}
	return people, load
}

// layers returns why a hole with a gap says nothing of the ice: the thickest layer of it
// is not known, or it is thicker than all of its clear ice.
func (d *Dock) layers() error {
	for i := range d.plan.Ice.Holes {
		h := &d.plan.Ice.Holes[i]
		switch {
		case !(h.Gap.Value > 0): // one that is not known is refused with its hole
		case !plan.Has(h.Layer):
			return &measure.Error{
				Field: h.Layer.Path, Class: measure.ErrUnknown, Why: "there is a gap in the ice of " + called(h.Where, "this hole") + ", and layers never add",
				Want: "the thickest single layer of clear ice, by itself",
			}
		case h.Layer.Value > h.Clear.Value:
			return &measure.Error{
				Field: h.Layer.Path, Text: h.Layer.Text, Kind: measure.Length, Value: h.Layer.Value, Class: measure.ErrRange,
				Want: "no more than " + h.Clear.Path + ", all clear ice of that hole",
			}
		}
	}
	return nil
}

// iceChecks returns the checks of the ice; where the plan's crossing is less than what
// crosses, they answer another question than the builder's, and are no answer. Nor are they
// with layers of which nobody knows the thickest.
func (d *Dock) iceChecks() []measure.Check {
	out := d.onIce()
	people, load := d.crosses()
	layers := d.layers()
	refused := func(c measure.Check, why error) measure.Check {
		if c.Err == nil && why != nil {
			c.Err, c.Value, c.Limit = why, math.NaN(), math.NaN() // they are of another load
		}
		return c
	}
	for i := range out {
		if layers != nil {
			out[i].Err = layers
		}
		switch c := &out[i]; c.Name {
		case iceCrossing:
			most, crowd, unweighed := d.heaviestGoes()
			c.Rests = append(c.Rests, fresh(c.Rests, append(slices.Clone(most.rests), crowd.rests...))...)
			*c = refused(*c, load)
			if len(unweighed) > 0 {
				c.Notes = append(c.Notes, "not weighed, and not in what crosses: "+listed(unweighed, 8))
			}
		case iceHours, iceBeside:
			*c = refused(*c, people)
		}
	}
	return out
}

// The checks of the ice that rest on the crossing, by name.
const (
	iceCrossing = "Ice for one crossing"
	iceHours    = "Ice for the finished dock parked some hours (the guides' rule: double thickness)"
	iceBeside   = "Ice for the people at the dock that stands there, today"
)

// fresh returns the assumptions that a list has not yet.
func fresh(has []measure.Assumption, more rests) []measure.Assumption {
	var out []measure.Assumption
	for _, a := range dedupe(more).assumptions() {
		if !named(has, a.Name) {
			out = append(out, a)
		}
	}
	return out
}
