package season

import (
	"context"
	"fmt"
	"math"
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
			s.iced(o, e, q, ahead, left)
			left -= t.Days
			ahead = s // as if it were begun: it may be done already
			if e.today > 0 {
				s.late(dateOf(e.start + e.today))
			}
		} else if err := m.dry(&s, past, m.today(soFar, q.Now)); err != nil {
			return Calendar{}, err
		}
		s.remark()
		plan.Slots = append(plan.Slots, s)
	}
	return plan, nil
}

// today is the first day on which work can begin, by its number; it is long ago where
// neither days of this winter nor the day of asking are known.
func (m *Model) today(soFar []Day, now time.Time) int {
	out := math.MinInt / 2
	if len(soFar) > 0 {
		out = number(soFar[len(soFar)-1].Date) + 1
	}
	if !now.IsZero() {
		out = max(out, number(now))
	}
	return out
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
// on, of which none is too cold or too wet. It lies in the winter of today, or in the one
// after the record's where that is not known.
func (m *Model) dry(s *Slot, past []Day, today int) error {
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
	if today > math.MinInt/2 {
		start = m.lake.opening(m.lake.year(today))
	}
	if t.Wintered {
		from = 273
	}
	span := mix.span(start, max(from, today-start))
	s.Earliest, s.Usual, s.Sure, s.Chance = span.P10, span.P50, span.P90, span.Chance
	return nil
}
