package dock

import (
	"fmt"
	"math"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

var srcLocal = &measure.Source{Title: "the lake's authority or the building office, as entered in the plan", Status: measure.Quoted}

// A Permit is something to ask an office about before building.
type Permit struct{ Ask, Whom, Why string }

// Permits lists the permits and notices to ask about, the one that ends most plans
// first. Which of them a place knows, only its offices can say.
func (d *Dock) Permits() []Permit {
	var out []Permit
	if d.plan != nil {
		for i := range d.plan.Floats {
			if _, used := d.usedDrum(i); d.plan.Floats[i].Shape.Value == "drum" && (used || d.plan.Local.Drums.Value != "new") {
				out = append(out, Permit{"reused drums as flotation", "the lake's authority", "many forbid drums, or all that held something"})
				break
			}
		}
	}
	return append(out,
		Permit{"a structure in or over the water", "the state, province or county's water office", "size, place and season of docks"},
		Permit{"work in navigable water, lights and marks", "the federal water authority", "others must see and pass the dock"},
		Permit{"use of the lake's bed, anchors and shore trees", "the owner of the bed and of the shore", "an anchor or a bolt stands on somebody's land"},
		Permit{"building permit, and a setback from the neighbours", "the building office", "reach, area and distances"},
		Permit{"things left standing on the ice, vehicles on it", "the lake's authority and the police", "dates by which they must be off, name and address on them"},
		Permit{"treated lumber and foam over the water", "the environmental office", "some preservatives and bare foam are banned"},
		Permit{"mains electricity near the water", "an electrician and the inspector", "leaking current kills swimmers"},
		Permit{"notice to the insurer", "the insurer of the house", "liability for swimmers and for a dock adrift"},
	)
}

// local checks the limits that the plan enters, electricity and permits.
func (d *Dock) local() []measure.Check {
	l := &d.plan.Local
	limit := func(name string, kind measure.Kind, value, most float64, least bool, rs ...rest) measure.Check {
		c := measure.Check{Name: name, Kind: kind, Value: value, Limit: most, AtLeast: least, Rule: srcLocal, Rests: rests(rs).assumptions()}
		if c.Err = rests(rs).err(); c.Err != nil {
			c.Value = math.NaN()
		}
		return c
	}
	f := &d.plan.Frame
	return []measure.Check{
		limit("Reach from shore", measure.Length, l.Reach.Value, l.MostReach.Value, false, on(l.Reach), on(l.MostReach)),
		limit("Area over the water", measure.Area, float64(d.length*d.width), l.MostArea.Value, false, on(f.Length), on(f.Width), on(l.MostArea)),
		limit("Setback from the neighbour's line", measure.Length, l.Setback.Value, l.LeastSetback.Value, true, on(l.Setback), on(l.LeastSetback)),
		d.offIce(),
		d.flotation(),
		d.mains(),
		d.asked(),
	}
}

// offIce checks how long the dock stands on the ice against the last day for it.
func (d *Dock) offIce() measure.Check {
	l, i := &d.plan.Local, &d.plan.Ice
	rs := rests{on(i.Now), on(i.Park), on(l.OffIce)}
	c := measure.Check{Name: "Time on the ice before the last day set for it", Kind: measure.Time, Rule: srcLocal, Rests: rs.assumptions(), Err: rs.err()}
	if c.Err != nil {
		return c
	}
	now, knows := plan.Time(i.Now)
	last, err := d.offIceDay()
	if err == nil && !knows {
		err = notKnown(i.Now.Path, "when the question is asked")
	}
	if err != nil {
		c.Err, c.Value, c.Limit = err, math.NaN(), math.NaN()
		return c
	}
	c.Value, c.Limit = i.Park.Value, max(0, last.Sub(now).Seconds()) // on the last day itself nothing
	c.Notes = []string{"the thaw asks nobody: a dock still there then is salvage, and its owner pays"}
	return c
}

// flotation checks the floats against the rule on them.
func (d *Dock) flotation() measure.Check {
	l := &d.plan.Local
	rs := rests{on(l.Flotation)}
	c := measure.Check{Name: "Kinds of floats that the rule on flotation excludes", Kind: measure.Count, Rule: srcLocal}
	if len(d.plan.Floats) == 0 {
		rs = append(rs, rest{path: "floats", missing: true})
	}
	for i := range d.plan.Floats {
		s := &d.plan.Floats[i]
		rs = append(rs, on(s.Shape))
		if s.Shape.Value != "drum" {
			continue
		}
		rs = append(rs, on(l.Drums))
		held, used := d.usedDrum(i)
		if used && l.Drums.Value == "new" {
			c.Notes = append(c.Notes, fmt.Sprintf("local.drums says new, %s says %s: a drum that held something is reused", held.Path, held.Value))
		}
		if l.Flotation.Value == "no reused drums" && l.Drums.Value == "new" {
			if duty := d.drumOf(i); duty != nil { // new is what held nothing
				rs = append(rs, on(duty.Held))
			}
		}
		if l.Flotation.Value == "no drums" || l.Flotation.Value == "no reused drums" && (used || l.Drums.Value != "new") {
			c.Value++
		}
	}
	rs = dedupe(rs)
	c.Rests, c.Err = rs.assumptions(), rs.err()
	return c
}

// mains is never silent: with electricity there is no answer.
func (d *Dock) mains() measure.Check {
	l := &d.plan.Local
	c := without("Mains electricity on the dock", l.Mains, measure.Count)
	if l.Mains.Value == "no" {
		return c
	}
	c = measure.Refuse(c.Name, rests{on(l.Mains)}.err())
	if l.Mains.Value == "yes" {
		c.Err = notKnown(l.Mains.Path, "an electrician who answers for it, a residual-current device tested that day, and nobody in the water near it")
	}
	c.Notes = append(c.Notes, "leaking current paralyses swimmers without a mark: no cord or cable comes on the dock without that")
	c.Rests = rests{on(l.Mains)}.assumptions()
	return c
}

// asked has an answer once every office was asked.
func (d *Dock) asked() measure.Check {
	l := &d.plan.Local
	c := measure.Check{Name: "Permits and notices still to ask about", Kind: measure.Count, Rule: srcLocal, Rests: rests{on(l.Asked)}.assumptions()}
	for _, p := range d.Permits() {
		c.Notes = append(c.Notes, p.Ask+": "+p.Whom+"; "+p.Why)
	}
	if l.Asked.Value != "yes" {
		c.Value, c.Limit = math.NaN(), math.NaN()
		path := l.Asked.Path
		if path == "" {
			path = "plan"
		}
		c.Err = notKnown(path, "the answer of each office on this list, in hand")
	}
	return c
}
