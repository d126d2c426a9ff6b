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
		v.reasons = append(v.reasons, load.unwatched()...)
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
		out = append(out, unfit("water level", "ice with less freeboard left than people take", fmt.Sprintf("%s left, %s taken", measure.Length.Print(free, measure.SI), measure.Length.Print(more, measure.SI))))
	}
	return out
}

// outside lists why a load does not stand on the drilled pad: a place outside
// the corners by more than a metre, or corners whose place is not known.
func (s Sheet) outside(loads []Patch) []error {
	var corners [][2]float64
	for _, h := range s.Holes {
		if h.spot() == PadCorner && !math.IsNaN(h.X+h.Y) {
			corners = append(corners, [2]float64{h.X, h.Y})
		}
	}
	ring := hull(corners)
	if len(ring) < 3 {
		return []error{unknown("holes", "where the corners of the pad lie must be given, in the axes of the load")}
	}
	const margin = 1.0
	for i, p := range loads {
		for k, a := range ring {
			b := ring[(k+1)%len(ring)]
			dx, dy := b[0]-a[0], b[1]-a[1]
			if (dx*(p.Y-a[1])-dy*(p.X-a[0]))/math.Hypot(dx, dy) < -margin {
				return []error{unknown("holes", fmt.Sprintf("load %d stands outside the drilled pad", i+1))}
			}
		}
	}
	return nil
}

// hull returns the corners of the convex hull in order, counter-clockwise.
func hull(points [][2]float64) [][2]float64 {
	if len(points) < 3 {
		return nil
	}
	start := points[0]
	for _, p := range points {
		if p[0] < start[0] || p[0] == start[0] && p[1] < start[1] {
			start = p
		}
	}
	var ring [][2]float64
	for at := start; len(ring) <= len(points); {
		ring = append(ring, at)
		next := at
		for _, p := range points {
			turn := (next[0]-at[0])*(p[1]-at[1]) - (next[1]-at[1])*(p[0]-at[0])
			far := math.Hypot(p[0]-at[0], p[1]-at[1]) > math.Hypot(next[0]-at[0], next[1]-at[1])
			if p != at && (next == at || turn < 0 || turn == 0 && far) {
				next = p
			}
		}
		if next == start || next == at {
			return ring
		}
		at = next
	}
	return ring
}
