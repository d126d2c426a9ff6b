package ice

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// besideRule governs people beside what has stood for more than a day: no
// public body's rule was found.
var besideRule = own("double the strictest rule for everything as one load, and water read today in the hole at the dock: no public rule was found")

// Beside asks whether people may stand today, for up to a day, beside what
// stands on the ice: everything counts as one load that stands, twice the
// thickness of the strictest rules, as in [Sheet.ParkedHours]. Besides, the
// freeboard that is left tomorrow must be more than what the people take, by the
// sag of the softest ice and by the water read today in a hole at the dock. It
// never rests on what [Sheet.Flooding] says: that the dock may stay is no word
// about people.
func (s Sheet) Beside(load Stand, people Crossing) (measure.Check, error) {
	const name = "people beside what stands on the ice, today"
	load, err := load.settled()
	if err != nil {
		return measure.Refuse(name, err), err
	}
	if err := people.check(); err != nil {
		return measure.Refuse(name, err), err
	}
	all := people
	all.Mass = load.mass() + people.own()
	c, err := s.judge(fmt.Sprintf("%s: %s", name, all.label()), all, &parkedFactor, func(v *survey) {
		v.reasons = append(v.reasons, s.outside(load.Loads)...)
		v.reasons = append(v.reasons, load.unwatched(s.highest())...)
		v.low(s.bowl(load))
		if !v.open && v.thickness > 0 && load.Since >= 0 {
			v.reasons = append(v.reasons, s.left(load, people, v.thickness)...)
		}
	})
	if err == nil && c.Rule != nil && !(load.Since <= measure.Day) {
		c.Rule = besideRule
	}
	c.Notes = append(c.Notes, "says nothing about how long the dock may stay: see its freeboard")
	return c, err
}

// left lists why the freeboard does not bear people for a further day: by the sag
// of the soft end, and by the gauge.
func (s Sheet) left(load Stand, people Crossing, thickness float64) []error {
	p := Plate{Thickness: thickness, E: load.Soft.E, Nu: poisson}
	l := p.length()
	more := people.counted() * measure.Gravity / (8 * p.foundation() * l * l)
	_, sag, err := s.Sag(load, load.Since+measure.Day)
	if err != nil {
		return []error{err}
	}
	free := s.freeboard(0) - sag // new snow ends the survey
	var out []error
	if len(load.Gauge) > 0 {
		free = math.Min(free, load.Gauge.newest().Freeboard-readingError)
		if fall, err := load.Gauge.Fall(); err == nil && fall.Early <= measure.Day {
			out = append(out, unfit("gauge", "ice whose freeboard runs out within a day", "move the dock"))
		}
	}
	if !(free > more) {
		out = append(out, unfit("water level", "ice with less freeboard left than people take", fmt.Sprintf("%s left, %s taken", measure.Length.Format(free, measure.SI), measure.Length.Format(more, measure.SI))))
	}
	return out
}
