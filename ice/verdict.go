package ice

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// Crossing checks the sheet under a load that moves: the governing effective
// thickness against the thickness that the strictest rules ask for, whose source the
// check names. Besides
// bad data, which is an error, it answers "no answer" for ice that is
// unmeasured, drilled at fewer than six places (the four corners and the middle of
// the pad, and the walk) or at places that are not those, surveyed more than a day ago,
// thawing, in spring, on a river or unknown in any way, however thick it is,
// and "short" where even what is known is too thin. It never permits anything.
func (s Sheet) Crossing(load Crossing) (measure.Check, error) {
	return s.judge("crossing, "+load.label(), load, nil, nil)
}

// Required returns the thickness that the rules of [Sheet.Crossing] ask for without
// comparing it with any: Limit is set, Value is NaN, and the verdict is "no answer". Hours
// is how long the load is to stand on one spot, in hours; zero is a crossing. It serves
// before a hole was drilled; what is known of the sheet is counted.
func (s Sheet) Required(load Crossing, hours float64) (measure.Check, error) {
	name := "thickness required, " + load.label()
	var c measure.Check
	var err error
	if hours == 0 {
		c, err = s.judge(name, load, nil, nil)
	} else {
		c, err = s.parked(name, load, hours)
	}
	if err != nil {
		return c, err
	}
	c.Value = math.NaN()
	if c.Err == nil {
		c.Err = unknown("ice thickness", "compared with none")
	}
	return c, nil
}

// judge compares the sheet with what the load needs; more is a further factor,
// bar adds reasons against an answer.
func (s Sheet) judge(name string, load Crossing, more *measure.Factor, bar func(*survey)) (measure.Check, error) {
	if err := load.check(); err != nil {
		return measure.Refuse(name, err), err
	}
	v, err := s.survey()
	if err != nil {
		return measure.Refuse(name, err), err
	}
	if bar == nil {
		v.low(0)
	} else {
		bar(&v)
	}
	c := measure.Check{
		Name: name, Kind: measure.Length, AtLeast: true, Hazard: true,
		Value: v.thickness, Limit: math.NaN(), Rests: v.rests,
	}
	n, err := s.needs(load, v.white, v.air)
	if err != nil { // beyond the reach of the class: no rule, no answer
		c.Err = err
		c.Notes = append(s.notes(v, nil), caveats()...)
		return c, nil
	}
	if more != nil {
		n.raise(*more)
	}
	c.Limit, c.Rule, c.Factors = n.thickness, n.rule, n.factors
	if load.counted() > load.Mass {
		c.Rests = append(c.Rests, measure.Assumption{
			Name: "mass of the load", Known: measure.Assumed,
			Text: fmt.Sprintf("%s, %s a person; less was given", measure.Mass.Format(load.counted(), measure.SI), measure.Mass.Format(person, measure.SI)),
		})
	}
	// Ice that is too thin by what is known stays short, whatever else is
	// unknown; otherwise each reason denies the answer.
	if short := !v.open && c.Value < c.Limit; !short && len(v.reasons) > 0 {
		c.Err = v.reasons[0]
		decide(c.Rests)
	}
	c.Notes = append(s.notes(v, &n), together(load))
	c.Notes = append(c.Notes, caveats()...)
	return c, nil
}

// decide marks every unknown as deciding.
func decide(rests []measure.Assumption) {
	for i := range rests {
		rests[i].Decides = rests[i].Known == measure.Unknown
	}
}

// together says what counts as one load.
func together(load Crossing) string {
	r := load.reach()
	if math.IsInf(r, 1) {
		return "every other load on the ice counts with this one"
	}
	return fmt.Sprintf("everything within %.0f m counts as one load: name it among the others", math.Ceil(r))
}

// notes lists the reasons against an answer, the thickness required, what may
// still raise it, the governing hole and the expiry.
func (s Sheet) notes(v survey, n *need) []string {
	var out []string
	for _, r := range v.reasons {
		out = append(out, "never better than no answer: "+r.Error())
	}
	if n != nil {
		out = append(out, "thickness required: "+upward(n.thickness)+" ("+n.what+"; "+n.rule.String()+")")
		out = append(out, s.mayRaise(v)...)
	}
	place := s.Place
	if place == "" {
		place = "a place not named"
	}
	when := "at a time not known"
	if s.aged() {
		when = hours(math.Ceil(s.Age/3600)) + " ago"
	}
	out = append(out, fmt.Sprintf("measured: %d holes, %s, at %s", len(s.Holes), when, place))
	if !math.IsNaN(v.thickness) {
		where := v.hole
		if s.Place != "" {
			where += ", " + s.Place
		}
		out = append(out, "thinnest: "+where+", counted as "+s.Scheme.String())
	}
	for i, h := range s.Holes {
		if h.Gap > 0 {
			out = append(out, "layers with a gap never add: of "+h.label(i)+" the thickest single layer counts, "+measure.Length.Format(h.Clear, measure.SI))
		}
	}
	left := "EXPIRY: 24 hours after drilling"
	switch void := s.void(); {
	case void != "":
		left += ": " + void
	case s.aged() && s.Age <= expiry:
		left += ", " + hours(math.Floor((expiry-s.Age)/3600)) + " from now"
	}
	return append(out, left+", or at once on thaw, rain, snow or a change of the water level")
}

// hours prints a whole number of them.
func hours(n float64) string {
	if n == 1 {
		return "1 hour"
	}
	return fmt.Sprintf("%.0f hours", n)
}

// mayRaise says what the unknown may add to the thickness required.
func (s Sheet) mayRaise(v survey) []string {
	var out []string
	if v.open && v.white == 1 && schemes[s.Scheme].need > 1 {
		out = append(out, "not known and not counted: white ice doubles the thickness required")
	}
	if !v.air.known && v.air.factor == 1 {
		out = append(out, "not known and not counted: a thaw in the last days triples the thickness required")
	}
	if s.Cracks == UnknownCracks {
		out = append(out, "not known and not counted: "+cracksWords())
	}
	return out
}

// upward prints a length in both systems, rounded up.
func upward(h float64) string {
	return measure.Upward(h, measure.SI) + " (" + measure.Upward(h, measure.US) + ")"
}

// caveats are the notes that every check bears: what it is not, what must be
// measured, and the weightiest cautions with their publishers.
func caveats() []string {
	out := []string{
		"failures were reported at loads as low as the 50 psi rule (" + goldUpper.String() + ")",
		"not ruled out is no clearance: local authorities, people who know this ice, and licensed practice decide",
	}
	for _, begin := range []string{
		"drill at least", "the smallest thickness", "measure clear ice", "never alone", "wear a life jacket", "carry ice picks", "probe ahead",
	} {
		out = append(out, caution(begin))
	}
	return append(out, "more: see Cautions")
}
