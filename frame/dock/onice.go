package dock

import (
	"fmt"
	"math"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// survey turns the plan's survey into the sheet that package ice judges. What the
// plan does not know stays at the cautious zero value.
func (d *Dock) survey() ice.Sheet {
	p := &d.plan.Ice
	s := ice.Sheet{
		Age:     math.NaN(),
		Water:   map[string]ice.Water{"lake": ice.Lake, "river": ice.River}[d.plan.Site.Water.Value],
		Season:  map[string]ice.Season{"winter": ice.Winter, "spring": ice.Spring}[p.Season.Value],
		Cracks:  map[string]ice.Cracks{"none": ice.NoCracks, "one": ice.OneCrack, "crossing": ice.CrossingCracks}[p.Cracks.Value],
		Wet:     finding(p.Wet),
		Inlets:  finding(p.Inlets),
		Changed: finding(p.Changed),
	}
	now, known := plan.Time(p.Now)
	oldest := 0.0
	for _, h := range p.Holes {
		s.Holes = append(s.Holes, ice.Hole{
			Name: h.Where.Value, Clear: h.Clear.Value, White: h.White.Value, Gap: h.Gap.Value,
			Water: h.Water.Value, Snow: h.Snow.Value, Hard: h.Hard.Value == "yes",
		})
		when, ok := plan.Time(h.When)
		known = known && ok && !when.After(now) // a hole of tomorrow is a slip of the pen
		oldest = max(oldest, now.Sub(when).Seconds())
	}
	if known && len(p.Holes) > 0 {
		s.Age = oldest
	}
	for _, w := range p.Weather {
		s.Air = append(s.Air, ice.Air{High: w.High.Value, Low: w.Low.Value})
	}
	return s
}

func finding(n plan.Name) ice.Finding {
	return map[string]ice.Finding{"yes": ice.Found, "no": ice.NotFound}[n.Value]
}

// onIce returns the checks of the ice: a crossing, hours of parking by the
// guides' own rule, and the time the plan wants, which nothing here answers.
func (d *Dock) onIce() []measure.Check {
	s, p := d.survey(), &d.plan.Ice
	const crossing = "Ice for one crossing"
	out := []measure.Check{}
	rs := rests{on(p.Cross.Mass), on(p.Cross.People).standsIn("one")}
	if err := rs.err(); err != nil {
		out = append(out, refuse(crossing, err, rs))
	} else {
		c, err := s.Crossing(ice.Crossing{Mass: p.Cross.Mass.Value, People: p.Cross.People.Value})
		out = append(out, d.iceCheck(crossing, c, err, rs))
	}

	const hours = 24
	name := "Ice for the finished dock parked some hours (the guides' rule: double thickness)"
	base, drs, err := d.platform()
	if err != nil {
		out = append(out, refuse(name, err, drs))
	} else {
		mass, with := d.weight(floating{base: base}).Value, "the dock alone"
		if plan.Has(p.Cross.Mass) {
			mass, with = mass+p.Cross.Mass.Value, "the dock and the crossing load beside it"
			drs = append(drs, on(p.Cross.Mass))
		}
		c, err := s.ParkedHours(mass, hours)
		c = d.iceCheck(name, c, err, drs)
		c.Notes = append([]string{fmt.Sprintf("for %s: %s, without snow, up to %d h", measure.Mass.Print(mass, d.system()), with, hours)}, c.Notes...)
		out = append(out, c)
	}

	whole := "Ice for the finished dock parked for days or weeks"
	if plan.Has(p.Park) {
		whole += ": " + d.days(p.Park.Value)
	}
	return append(out, refuse(whole, &measure.Error{
		Class: measure.ErrNotComputed,
		Why:   "doubling is a rule for hours; days and weeks need the sag of the sheet against its freeboard",
		Want:  "an ice engineer's word",
	}, rests{on(p.Park)}))
}

func (d *Dock) days(seconds float64) string {
	return fmt.Sprintf("%.4g days", seconds/measure.Day)
}

// iceCheck names a check of package ice and adds what the plan assumed.
func (d *Dock) iceCheck(name string, c measure.Check, err error, rs rests) measure.Check {
	if err != nil {
		return refuse(name, err, rs)
	}
	c.Name, c.Hazard = name, true
	c.Rests = append(rs.assumptions(), c.Rests...)
	return c
}

// refuse returns a check without an answer that still says what it would rest on.
func refuse(name string, why error, rs rests) measure.Check {
	c := measure.Refuse(name, why)
	c.Rests = dedupe(rs).assumptions()
	return c
}
