package action

import (
	"errors"
	"math"

	"example.org/floewright/lumber/measure"
)

// last is what a short check says.
const last = "slack the lines, cut it free, or expect loss"

// capacity is the range of what lines and joints bear.
var capacity = measure.Range{Kind: measure.Force, Lo: 0, Hi: 1e12, Source: slip}

// Check compares the high end of the force with what the lines and joints that
// hold the thing bear, N (N/m of a wall): statics. It has no answer, and carries the
// error, for a Lift that could not be computed and for a capacity of NaN, not
// known. The error is for a capacity that is none, or for data that made none.
func (l Lift) Check(name string, capacity float64) (measure.Check, error) {
	kind := measure.Force
	if l.perMetre {
		kind = measure.LineLoad
	}
	return judge(name, kind, l.Force, capacity, l.err, l.Rests, l.Notes)
}

// Check compares the high end of the push with what the lines and joints on
// its path bear, N, as [Lift.Check] does.
func (p Push) Check(name string, capacity float64) (measure.Check, error) {
	return judge(name, measure.Force, p.Force, capacity, p.err, p.Rests, p.Notes)
}

func judge(name string, kind measure.Kind, force Span, limit float64, err error, rests []measure.Assumption, notes []string) (measure.Check, error) {
	switch {
	case err != nil:
		return measure.Refuse(name, err), malformed(err)
	case force.Source == nil:
		return measure.Refuse(name, unknown("force of the ice")), nil
	}
	if err := check("capacity of lines and joints", limit, capacity); err != nil {
		return measure.Refuse(name, err), malformed(err)
	}
	c := measure.Check{
		Name: name, Kind: kind, Value: force.High, Limit: limit, Rule: force.Source, Hazard: true,
		Rests: append([]measure.Assumption(nil), rests...),
		Notes: append([]string{"governed by: " + force.Name}, notes...),
	}
	if !c.Meets() {
		c.Notes = append([]string{last}, c.Notes...)
	}
	c.Notes = append(c.Notes, "an estimate; local rules, permits, people who know the lake and licensed practice come first")
	return c, nil
}

// malformed returns the error if its data cannot be: negative, infinite. What
// is unknown or past the reach of a source is no answer instead.
func malformed(err error) error {
	var e *measure.Error
	if errors.As(err, &e) && e.Class == measure.ErrRange && !math.IsInf(e.Value, 0) && e.Value > 0 {
		return nil
	}
	if errors.Is(err, measure.ErrUnknown) {
		return nil
	}
	return err
}
