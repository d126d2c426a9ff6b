package dock

import (
	"fmt"
	"time"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

var srcDiary = &measure.Source{Title: "past winters are a sample of this one", Status: measure.OwnChoice}

// dayForm is how a day is printed in a sentence.
const dayForm = "2 Jan 2006"

// three names the dates of a span.
const three = ", one in ten earlier, half, nine in ten: "

// seasonChecks holds the work and the stay on the ice against the odds.
func (d *Dock) seasonChecks() []measure.Check {
	p := &d.plan.Ice
	now, known := plan.Time(p.Now)
	seen := known && d.seenIce(now)
	rs := rests{on(p.Now), on(p.Park)}
	s, err := d.seasoned()
	m := d.memory(s.Year)
	if d.winters != nil {
		rs = append(rs, on(d.plan.Season.Latitude), on(d.plan.Season.MeanDepth))
	}
	rs = dedupe(append(rs, d.remembers(d.plan.Season.Outs)...))
	both := rs[:len(rs):len(rs)]
	if !seen {
		both = dedupe(append(both, d.remembers(d.plan.Season.Ons)...))
	}
	work := measure.Check{Name: "Time left for the work on the ice, two weeks before an early ice-out, one in ten", Kind: measure.Time, AtLeast: true, Rule: srcDiary, Hazard: true}
	stay := measure.Check{Name: "Time it is planned to stand there, until a late ice-out, one in ten", Kind: measure.Time, AtLeast: true, Rule: srcDiary, Hazard: true}
	if err == nil {
		err = s.NoOut
	}
	if err == nil {
		err = rs.err()
	}
	if err == nil && !known {
		err = notKnown("ice.now", "when the question is asked")
	}
	if err == nil {
		err = d.outDoubt(s, m)
	}
	idle := err // why nothing is known of the work
	if idle == nil {
		idle = both.err()
	}
	if idle == nil && !seen {
		idle = d.doubtOn(s, m, now)
	}

	if idle != nil {
		work = refuse(work.Name, idle, both)
	} else {
		days := 0
		for _, t := range season.Tasks(1, 1) {
			if t.Need > 0 {
				days += t.Days
			}
		}
		from := now
		for _, on := range []time.Time{s.On.P90, s.Memory.On.P90} {
			if !seen && on.After(from) { // there is no ice to work on yet
				from = on
			}
		}
		work.Value, work.Limit = max(0, s.Out.P10.Sub(from).Seconds()-season.Failing), float64(days)*measure.Day
		work.Notes = []string{"ice fails before it is gone: two weeks are kept back (our choice)"}
		if from.After(now) {
			work.Notes = append(work.Notes, "counted from "+from.Format(time.DateOnly)+", a late ice-on: no hole of this winter has ice in it")
		}
		if last, _ := d.lastWalk(s); !now.Before(last) {
			work.Notes = append(work.Notes, "the last day for it, "+last.Format(time.DateOnly)+", is over on "+now.Format(time.DateOnly))
		}
		work.Rests = both.assumptions()
	}
	if idle == nil || s.NoOn == nil || s.NoOut == nil {
		work.Notes = append(work.Notes, d.seasonNotes(s, m)...)
	}
	if err == nil && !now.Before(s.Out.P90) {
		at, _ := d.asking()
		err = at.not("a time before " + s.Out.P90.Format(time.DateOnly) + ", a late ice-out of this winter, one in ten by the dates of season: no ice is left to stand on")
	}
	if err != nil {
		return []measure.Check{work, refuse(stay.Name, err, rs)}
	}
	stay.Value, stay.Limit = p.Park.Value, s.Out.P90.Sub(now).Seconds()
	stay.Notes = []string{"a dock that the thaw is to launch stands there until the ice goes, in nine winters of ten by " + s.Out.P90.Format(time.DateOnly)}
	stay.Rests = rs.assumptions()
	return []measure.Check{work, stay}
}

// seasonNotes says dates and windows.
func (d *Dock) seasonNotes(s *Season, m recalled) []string {
	out := []string{season.Caution}
	if s.NoOut == nil {
		out = append(out, "ice-out"+three+s.Out.String())
	}
	switch {
	case !s.Came.IsZero():
		out = append(out, "ice-on "+s.Came.Format(dayForm)+": it has come, by this winter's own temperatures and the model; one day, no odds any more")
	case s.NoOn == nil:
		out = append(out, "ice-on"+three+s.On.String())
	}
	out = append(out, s.beside(m)...)
	out = append(out, s.Notes...)
	switch {
	case s.Winters > 0:
		out = append(out, fmt.Sprintf("from the temperatures of %s", several(s.Winters, "winter")))
	case d.winters != nil && s.NoOdds != nil:
		out = append(out, "the table of temperatures is not counted: "+measure.RestateError(s.NoOdds, d.system()).Error())
	}
	for _, g := range s.Gaps {
		out = append(out, "table of temperatures, "+g.String())
	}
	out = append(out, d.rulesBeside(s)...)
	for _, c := range s.Loads {
		out = append(out, fmt.Sprintf("%s, %s of ice: from %v, until %v", c.Load, measure.Upward(c.Need, d.system()), c.First, c.Last))
	}
	for _, slot := range s.Calendar.Slots {
		out = append(out, slot.String())
		out = append(out, slot.Notes...)
	}
	return out
}

// rulesBeside says what the model has of this winter's ice and, beside it, the square-root
// laws of the handbooks after the same frost.
func (d *Dock) rulesBeside(s *Season) []string {
	if len(s.SoFar) == 0 {
		return nil
	}
	sys := d.system()
	last := s.SoFar[len(s.SoFar)-1]
	if !last.Ice {
		return []string{"by the model the lake is open on " + last.Date.Format(time.DateOnly)}
	}
	out := []string{fmt.Sprintf("by the model on %s: %s of clear and %s of white ice, no measurement", last.Date.Format(time.DateOnly),
		measure.Length.Format(last.Clear, sys), measure.Length.Format(last.White, sys))}
	for _, r := range season.Rules() {
		if lo, hi, err := r.Thickness(last.FrostDays); err == nil {
			out = append(out, fmt.Sprintf("by the square-root law, %s: %s to %s", r.Name, measure.Length.Format(lo, sys), measure.Length.Format(hi, sys)))
		}
	}
	return out
}
