package dock

import (
	"fmt"
	"math"

	"example.org/floewright/frame/plan"
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

// heaviestGoes is the most that goes over the ice at a time, of what the plan weighs, and
// the names of what it does not weigh.
func (d *Dock) heaviestGoes() (most goes, unweighed []string) {
	for _, p := range d.carried() {
		h := d.haul(p)
		if !(h.Each > 0) {
			unweighed = append(unweighed, p.name)
			continue
		}
		n := max(h.People, h.Crew)
		if m := max(h.Each, h.Load) + float64(n)*d.grown(); m > most.mass*(1+1e-9) {
			most = goes{p.name, m, n, p.rests}
		}
	}
	return most, unweighed
}

// crosses returns why the load of the plan's crossing is not the one that goes over the
// ice: it is less than the people who are said to be with it, or than the heaviest that
// goes. A load of which not all is known is refused elsewhere.
func (d *Dock) crosses() (people, load error) {
	c := &d.plan.Ice.Cross
	if !plan.Has(c.Mass) {
		return nil, nil
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
	n := max(1, c.People.Value)
	least := float64(n) * d.grown()
	people = short(least, fmt.Sprintf("%s or more, since %s of %s each are among it", measure.Mass.Format(least, sys), heads(n), measure.Mass.Format(d.grown(), sys)))
	if most, _ := d.heaviestGoes(); most.mass > 0 {
		load = short(most.mass, fmt.Sprintf("%s or more, for the heaviest that goes out: %s with %s", measure.Mass.Format(most.mass, sys), most.what, heads(most.people)))
	}
	return people, load
}

// iceChecks returns the checks of the ice; where the plan's crossing is less than what
// crosses, they answer another question than the builder's, and are no answer.
func (d *Dock) iceChecks() []measure.Check {
	out := d.onIce()
	people, load := d.crosses()
	refused := func(c measure.Check, why error) measure.Check {
		if c.Err == nil && why != nil {
			c.Err, c.Value, c.Limit = why, math.NaN(), math.NaN() // they are of another load
		}
		return c
	}
	for i := range out {
		switch c := &out[i]; c.Name {
		case iceCrossing:
			if load == nil {
				load = people
			}
			most, unweighed := d.heaviestGoes()
			c.Rests = append(c.Rests, fresh(c.Rests, most.rests)...)
			*c = refused(*c, load)
			if len(unweighed) > 0 {
				c.Notes = append(c.Notes, "not weighed, and not in what crosses: "+listed(unweighed, 8))
			}
		case iceBeside:
			*c = refused(*c, people)
		}
	}
	return out
}

// The checks of the ice that rest on the crossing, by name.
const (
	iceCrossing = "Ice for one crossing"
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
