package season

import (
	"context"
	"fmt"
	"strings"
	"time"

	"example.org/floewright/lumber/measure"
)

// A Task is one piece of the winter's work.
type Task struct {
	Name string
	Days int     // of effort, one after another
	Need float64 // m of effective ice; 0 is done ashore or afloat

	// Parked says that something stands on the ice from this task on, until
	// ice-out: such a task must end before the last day with its ice.
	Parked bool

	// Dry work: as many days as it takes and DryDays after them without a low (or,
	// where only means are known, a mean) under MinAir °C and, where DryDays is not
	// 0 and the record knows rain and snowfall, without any. Film says that MinAir
	// is the film's own temperature for its whole drying time, which the air only
	// stands for; Moisture is the greatest moisture of the wood as a share, to be
	// measured, 0 where it does not matter.
	MinAir   float64
	DryDays  int
	Film     bool
	Moisture float64

	// Wintered wood lay under snow: not before early summer, 1 June in the
	// north and 1 December in the south, whatever the air.
	Wintered bool

	// Early says what to do where the window closes before the work is done.
	Early string
	// Source of the task's numbers; nil is the caller's own.
	Source *measure.Source
}

var trade = &measure.Source{Title: "common practice of boat and deck builders; the label of the product comes first", Status: measure.CommonPractice}

// Tasks returns the usual work of a dock built on the ice, with the ice that
// the caller's loads need, in m: to carry pieces out, and to let the dock stand.
func Tasks(carry, stand float64) []Task {
	return []Task{
		{Name: "carry the pieces out", Days: 2, Need: carry, Early: "leave what is ashore ashore and launch it from there", Source: trade},
		{Name: "assemble the frame over its drums", Days: 3, Need: stand, Parked: true, Early: "everybody off the ice; what lies there is not worth a person", Source: trade},
		{Name: "lay the deck", Days: 2, Need: stand, Parked: true, Early: "everybody off the ice; only a frame whose floats are held without boards floats without them", Source: trade},
		{Name: "preservative on cut ends", Days: 1, MinAir: 5, DryDays: 2, Film: true, Moisture: 0.28, Early: "brush the cuts in the garage before the pieces are carried out", Source: trade},
		{Name: "sealant", Days: 1, MinAir: 5, DryDays: 3, Film: true, Early: "seal in the garage, or wait for the first mild week afloat", Source: trade},
		{Name: "stain the deck", Days: 1, MinAir: 10, DryDays: 3, Film: true, Moisture: 0.16, Wintered: true, Early: "wait: a year unstained harms treated wood less than a film that peels", Source: trade},
	}
}

// A Slot is where one task falls.
type Slot struct {
	Task Task

	// Earliest: in one winter of ten it can begin by then. Usual: in five. Sure:
	// in nine. Latest: the day on which it must begin for this and all later
	// work on the ice to end before the ice fails in one winter of ten. A zero
	// time is no such day.
	Earliest, Usual, Sure, Latest time.Time

	// Chance is the share of winters whose window holds the work.
	Chance float64
	Notes  []string
}

// Fits reports whether nine winters in ten leave the days from Sure to Latest.
func (s Slot) Fits() bool {
	return !s.Sure.IsZero() && (s.Latest.IsZero() || !s.Latest.Before(s.Sure))
}

// String prints the slot on a line; the caution belongs to the calendar.
func (s Slot) String() string {
	d := func(t time.Time) string {
		if t.IsZero() {
			return "-"
		}
		return t.Format("2 Jan")
	}
	return fmt.Sprintf("%-34s earliest %-6s usual %-6s in 9 of 10 from %-6s begin by %-6s room in %3.0f %%",
		s.Task.Name, d(s.Earliest), d(s.Usual), d(s.Sure), d(s.Latest), 100*s.Chance)
}

func (t Task) check() error {
	for _, f := range []struct {
		name   string
		x      float64
		lo, hi float64
	}{
		{"days of effort", float64(t.Days), 1, 200},
		{"ice needed", t.Need, 0, 3},
		{"least temperature", t.MinAir, -40, 40},
		{"days of dryness", float64(t.DryDays), 0, 60},
		{"moisture of the wood", t.Moisture, 0, 1},
	} {
		if err := (measure.Range{Lo: f.lo, Hi: f.hi, Source: paramRange}).Check(t.Name+": "+f.name, f.x); err != nil {
			return err
		}
	}
	return nil
}

// A Calendar is when one winter's work falls.
type Calendar struct {
	Winters int
	Slots   []Slot
	Notes   []string
}

// String prints the calendar and its caution.
func (p Calendar) String() string {
	var b strings.Builder
	for _, s := range p.Slots {
		fmt.Fprintln(&b, s)
		for _, n := range s.Notes {
			fmt.Fprintf(&b, "    %s\n", n)
		}
	}
	for _, n := range p.Notes {
		fmt.Fprintln(&b, n)
	}
	b.WriteString(Caution + "\n")
	return b.String()
}

// Calendar lays the tasks, in their order, into this winter. Tasks on ice
// follow each other; those without ice stand for themselves after ice-out, or
// whenever the air allows it if they need no more than that. soFar, past and q are as for
// [Model.Odds]; q.Need is not looked at.
func (m *Model) Calendar(ctx context.Context, soFar, past []Day, q Question, tasks []Task) (Calendar, error) {
	var plan Calendar
	for _, t := range tasks {
		if err := t.check(); err != nil {
			return Calendar{}, err
		}
	}
	left := 0 // days of work on ice, from this task on
	for _, t := range tasks {
		if t.Need > 0 {
			left += t.Days
		}
	}
	var ahead Slot // the task on ice before this one
	for _, t := range tasks {
		s := Slot{Task: t}
		if t.Need > 0 {
			q.Need = t.Need
			o, e, err := m.gather(ctx, soFar, past, q)
			if err != nil {
				return Calendar{}, err
			}
			plan.Winters = o.Winters
			s.iced(o, e, ahead, left)
			left -= t.Days
			ahead = s
		} else if err := m.dry(&s, past); err != nil {
			return Calendar{}, err
		}
		s.remark()
		plan.Slots = append(plan.Slots, s)
	}
	return plan, nil
}

// iced places a task on the ice: after the one ahead of it, and so that all
// work on ice that is left ends in time.
func (s *Slot) iced(o Odds, e *ensemble, ahead Slot, left int) {
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
	still := func(t time.Time) time.Time {
		if today := dateOf(e.start + e.from); e.from > 0 && !t.IsZero() && t.Before(today) {
			return today
		}
		return t
	}
	s.Earliest = after(still(o.First.P10), ahead.Earliest, ahead.Task.Days)
	s.Usual = after(still(o.First.P50), ahead.Usual, ahead.Task.Days)
	s.Sure = after(still(o.First.P90), ahead.Sure, ahead.Task.Days)
	if !o.Last.P10.IsZero() {
		s.Latest = o.Last.P10.AddDate(0, 0, 1-left)
	}
	for _, r := range e.runs {
		if r.first >= 0 && r.last-max(r.first, e.from)+1 >= left {
			s.Chance += 1 / float64(len(e.runs))
		}
	}
	switch {
	case s.Sure.IsZero():
		s.Notes = append(s.Notes, "not every winter brings such ice in time")
	case !s.Fits():
		s.Notes = append(s.Notes, "more than one winter in ten leaves no room for it")
	}
	if s.Task.Parked {
		s.Notes = append(s.Notes, fmt.Sprintf("stands on the ice until ice-out, %s; no public rule covers weeks: watch sag, water and snow", o.Out))
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

// wet is the rain or melted snow of a day, in kg/m², that spoils a film: our choice,
// the least that a gauge tells.
const wet = 0.2

// spoils reports whether a day is too cold or too wet for a task, and whether the
// record knows how wet it was.
func (t *Task) spoils(d *Day) (spoils, knows bool) {
	air := d.Mean
	if d.Has&HasRange != 0 {
		air = d.Low
	}
	fell := 0.0
	if d.Has&HasRain != 0 {
		fell += d.Rain
	}
	if d.Has&HasSnowfall != 0 {
		fell += d.Snowfall
	}
	return air < t.MinAir || t.DryDays > 0 && fell >= wet, d.Has&HasRain != 0
}

// dry places a task that waits for air: the first run of days, from midwinter
// on, of which none is too cold or too wet.
func (m *Model) dry(s *Slot, past []Day) error {
	parts, err := split(past)
	if err != nil {
		return err
	}
	t := s.Task
	want := t.Days + t.DryDays
	var mix mixture
	year, blind := 0, false
	for _, part := range parts {
		first, end := number(part[0].Date), number(part[0].Date)+len(part)
		for y := m.lake.year(first); ; y++ {
			open := m.lake.opening(y)
			if open+362 > end {
				break
			}
			if open < first {
				continue
			}
			mix.all++
			year = max(year, y)
			from := 122 // 1 January in the north, 1 July in the south
			if t.Wintered {
				from = 273 // 1 June, 1 December
			}
			run := 0
			for i := from; i < 362; i++ {
				spoils, knows := t.spoils(&part[open-first+i])
				blind = blind || !knows
				if run++; spoils {
					run = 0
				}
				if run == want {
					mix.xs = append(mix.xs, float64(i-want+1))
					break
				}
			}
		}
	}
	if mix.all < 5 {
		return &measure.Error{Field: "past winters", Value: float64(mix.all), Class: measure.ErrUnknown, Why: "fewer than five whole winters are on record"}
	}
	if blind && t.DryDays > 0 {
		s.Notes = append(s.Notes, "the record does not know the rain of every day: these dates know the air alone, and rain makes them later")
	}
	mix.width = kernel(mix.xs, 0.5)
	start, from := m.lake.opening(year+1), 122
	if t.Wintered {
		from = 273
	}
	span := mix.span(start, from)
	s.Earliest, s.Usual, s.Sure, s.Chance = span.P10, span.P50, span.P90, span.Chance
	return nil
}
