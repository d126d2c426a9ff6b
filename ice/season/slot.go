package season

import (
	"fmt"
	"time"

	"example.org/floewright/lumber/measure"
)

// A Slot is where one task falls.
type Slot struct {
	Task Task

	// Earliest: in one winter of ten it can begin by then. Usual: in five. Sure:
	// in nine. Latest: the day on which it must begin for this and all later
	// work on the ice to end before the ice fails in one winter of ten. A zero
	// time is no such day.
	Earliest, Usual, Sure, Latest time.Time

	// Chance is the share of winters whose window holds the work; where dates of
	// ice-out are remembered beside the record, times the chance that these leave it.
	Chance float64

	// Against is what speaks against the work as things are, whatever past winters had:
	// its last day is over, or the ice of today is too thin. The days on which it would
	// otherwise begin are then no days. "" is nothing known.
	Against string
	Notes   []string
}

// Bar takes from a slot the days up to one on which it would begin, and says why; what
// was said against it before stays in front. The zero day takes them all.
func (s *Slot) Bar(until time.Time, why string) {
	if s.Against != "" {
		why = s.Against + "; " + why
	}
	s.Against = why
	for _, t := range []*time.Time{&s.Earliest, &s.Usual, &s.Sure} {
		if until.IsZero() || !t.After(until) {
			*t = time.Time{}
		}
	}
}

// Fits reports whether nine winters in ten leave the days from Sure to Latest.
func (s Slot) Fits() bool {
	return !s.Sure.IsZero() && (s.Latest.IsZero() || !s.Latest.Before(s.Sure))
}

// String prints the slot on a line, what speaks against it behind; the caution belongs
// to the calendar.
func (s Slot) String() string {
	d := func(t time.Time) string {
		switch {
		case !t.IsZero():
			return t.Format(dayForm)
		case s.Against != "":
			return "not now"
		}
		return "never"
	}
	by := "no last day" // of what waits for air alone
	switch {
	case !s.Latest.IsZero():
		by = "begin by " + d(s.Latest)
	case s.Task.Need > 0:
		by = "no day to begin by"
	}
	if s.Against != "" && s.Earliest.IsZero() && s.Usual.IsZero() && s.Sure.IsZero() {
		return fmt.Sprintf("%-34s NOT AS THINGS ARE: %s; %s", s.Task.Name, s.Against, by)
	}
	out := fmt.Sprintf("%-34s earliest %-12s usual %-12s in 9 of 10 from %-12s %-21s room in %3.0f %%",
		s.Task.Name, d(s.Earliest)+",", d(s.Usual)+",", d(s.Sure)+",", by+",", 100*s.Chance)
	if s.Against != "" {
		out += "; NOT AS THINGS ARE: " + s.Against
	}
	return out
}

// iced places a task on the ice: after the one ahead of it, and so that all
// work on ice that is left ends in time.
func (s *Slot) iced(o Odds, e *ensemble, q Question, ahead Slot, left int) {
	after := func(own, ahead time.Time, days int) time.Time {
		if own.IsZero() || days == 0 {
			return own
		}
		if ahead.IsZero() {
			return ahead
		}
		if t := ahead.AddDate(0, 0, days); t.After(own) {
			return t
		}
		return own
	}
	// Nothing begins on a day that is over.
	today := dateOf(e.start + e.today)
	still := func(t time.Time) time.Time {
		if e.today > 0 && !t.IsZero() && t.Before(today) {
			return today
		}
		return t
	}
	s.Earliest = after(still(o.First.P10), ahead.Earliest, ahead.Task.Days)
	s.Usual = after(still(o.First.P50), ahead.Usual, ahead.Task.Days)
	s.Sure = after(still(o.First.P90), ahead.Sure, ahead.Task.Days)
	const kept = int(Failing / measure.Day)
	if last := o.Last.P10; !last.IsZero() {
		if seen := q.SeenOut.P10; !seen.IsZero() && seen.AddDate(0, 0, -kept).Before(last) {
			last = seen.AddDate(0, 0, -kept)
		}
		s.Latest = last.AddDate(0, 0, 1-left)
	}
	for _, r := range e.runs {
		begins := max(r.first, e.today)
		if r.first < 0 || r.last-begins+1 < left {
			continue
		}
		share := 1.0
		if gone := q.SeenOut.By(dateOf(e.start + begins + left - 1 + kept)); gone >= 0 { // NaN: nobody remembers
			share -= gone
		}
		s.Chance += share / float64(len(e.runs))
	}
	switch {
	case s.Sure.IsZero():
		s.Notes = append(s.Notes, "not every winter brings such ice in time")
	case !s.Fits():
		s.Notes = append(s.Notes, "more than one winter in ten leaves no room for it")
	}
	if s.Task.Parked {
		until := o.Out.String()
		if q.SeenOut.N > 0 {
			until += "; as remembered " + q.SeenOut.Span.String()
		}
		s.Notes = append(s.Notes, fmt.Sprintf("stands on the ice until ice-out, %s; no public rule covers weeks: watch sag, water and snow", until))
	}
}

// late bars a task whose last day is over on the first day that is left.
func (s *Slot) late(today time.Time) {
	if !s.Latest.IsZero() && s.Latest.Before(today) {
		s.Bar(time.Time{}, "the last day to begin it, "+s.Latest.Format(dayForm)+", is over")
	}
}

// remark adds what the numbers cannot say.
func (s *Slot) remark() {
	t := s.Task
	if t.Film {
		s.Notes = append(s.Notes, fmt.Sprintf("film at %.0f °C or above for all %d days of drying, dew and rain kept off; under a clear night sky it is colder than the air", t.MinAir, max(1, t.DryDays)))
	}
	if t.Moisture > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("wood at %.0f %% moisture or below, measured, besides", 100*t.Moisture))
	}
	if t.Wintered {
		s.Notes = append(s.Notes, "boards that wintered under snow: not before early summer")
	}
	if t.Early != "" {
		s.Notes = append(s.Notes, "if the window closes early: "+t.Early)
	}
}
