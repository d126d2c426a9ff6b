package dock

import (
	"context"
	"fmt"
	"io"
	"slices"
	"time"

	"gonum.org/v1/gonum/stat"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// A Season is what the lake's past winters say of this one: for the diary, never
// permission. A part that is not known has its error.
type Season struct {
	Year    int // in which the winter begins
	Winters int // past winters of temperatures behind it; 0 is remembered dates alone

	On, Out  season.Span
	NoOn     error
	NoOut    error
	Loads    []Carried
	Calendar season.Plan
	NoOdds   error          // of loads and calendar
	SoFar    []season.State // this winter, day by day, by the model

	// Thickness of clear and white ice on each day from First on, m: what nine, five
	// and one of ten past winters passed, by the model.
	First               time.Time
	Thin, Middle, Thick []float64

	Gaps      []season.Gap // in the table of temperatures
	Notes     []string
	Remembers [2]int // dates of ice-on and of ice-out that are remembered
}

// A Carried is one load and the odds that the ice has the thickness that a rule asks
// for under it, day by day. They count thickness and frost alone.
type Carried struct {
	Load        string
	Need        float64 // m
	First, Last season.Span
	Days        []season.DayOdds
}

// winters is a record of temperatures that was read.
type winters struct {
	past, now []season.Day
	gaps      []season.Gap
}

// WithWinters returns the dock with a table of daily temperatures as the lake's past
// winters, those of this one from September on. The table is read as
// [season.ReadCSV] has it; the error names file and line.
func (d *Dock) WithWinters(name string, r io.Reader, o season.Options) (*Dock, error) {
	record, err := season.ReadCSV(name, r, o)
	if err != nil {
		return nil, err
	}
	out := *d
	out.winters = &winters{gaps: record.Gaps}
	from := time.Date(d.winter(), time.September, 1, 0, 0, 0, 0, time.UTC)
	for _, day := range record.Days {
		if day.Date.Before(from) {
			out.winters.past = append(out.winters.past, day)
		} else {
			out.winters.now = append(out.winters.now, day)
		}
	}
	return &out, nil
}

// winter returns the year in which the winter that is asked for begins: that of
// ice.now, else of the newest remembered date.
func (d *Dock) winter() int {
	year := func(t time.Time) int {
		if t.Month() < time.August {
			return t.Year() - 1
		}
		return t.Year()
	}
	if d.plan == nil {
		return 0
	}
	if now, ok := plan.Time(d.plan.Ice.Now); ok {
		return year(now)
	}
	newest := 0
	for _, of := range [][]plan.Remembered{d.plan.Season.Ons, d.plan.Season.Outs} {
		for i := range of {
			if t, ok := plan.Time(of[i].When); ok {
				newest = max(newest, year(t)+1)
			}
		}
	}
	return newest
}

// remembered returns the dates of a list that are known.
func remembered(of []plan.Remembered) []time.Time {
	var out []time.Time
	for i := range of {
		if t, ok := plan.Time(of[i].When); ok {
			out = append(out, t)
		}
	}
	return out
}

// Season works out what past winters say: from the table of temperatures where there
// is one ([Dock.WithWinters]), else from remembered dates. The error is the context's.
func (d *Dock) Season(ctx context.Context) (*Season, error) {
	out := &Season{Year: d.winter()}
	none := notKnown("season", "a table of daily temperatures of five winters or more, or five remembered dates")
	out.NoOn, out.NoOut, out.NoOdds = none, none, none
	if d.plan == nil {
		return out, nil
	}
	ons, outs := remembered(d.plan.Season.Ons), remembered(d.plan.Season.Outs)
	out.Remembers = [2]int{len(ons), len(outs)}
	if len(ons) > 0 {
		out.On, out.NoOn = guessed(ons, out.Year)
	}
	if len(outs) > 0 {
		// Ice-out belongs to the calendar year after the winter's first.
		out.Out, out.NoOut = guessed(outs, out.Year+1)
	}
	if d.winters == nil {
		if len(ons)+len(outs) > 0 {
			out.NoOdds = notKnown("winters", "a table of daily temperatures: remembered dates say nothing of thickness")
			out.Notes = append(out.Notes, "from remembered dates alone: wide, and blind to how this winter goes")
		}
		return out, nil
	}
	return out, d.recorded(ctx, out)
}

// guessed returns the span of a date from remembered ones.
func guessed(dates []time.Time, year int) (season.Span, error) {
	g, err := season.FromDates(dates, year)
	return g.Span, err
}

// recorded fills in what the table of temperatures says.
func (d *Dock) recorded(ctx context.Context, out *Season) error {
	s, w := &d.plan.Season, d.winters
	out.Gaps = w.gaps
	if err := (rests{on(s.Latitude), on(s.MeanDepth)}).err(); err != nil {
		out.NoOdds = err
		return nil
	}
	m, err := season.New(season.Lake{Latitude: s.Latitude.Value / degree, MeanDepth: s.MeanDepth.Value}, season.Default())
	if err != nil {
		out.NoOdds = err
		return nil
	}
	fail := func(err error) error {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		out.NoOdds = err
		return nil
	}
	if len(w.now) > 0 {
		if out.SoFar, err = m.Run(w.now); err != nil {
			return fail(err)
		}
	}
	if err := out.bands(m, w.past); err != nil {
		return fail(err)
	}
	var carry, stand float64
	for _, a := range d.IceAsked() {
		if a.Err != nil {
			continue
		}
		need := a.Check.Limit
		odds, err := m.Odds(ctx, w.now, w.past, season.Question{Need: need})
		if err != nil {
			return fail(err)
		}
		out.Winters, out.On, out.Out, out.NoOn, out.NoOut = odds.Winters, odds.On, odds.Out, nil, nil
		out.Loads = append(out.Loads, Carried{Load: a.Load, Need: need, First: odds.First, Last: odds.Last, Days: odds.Days})
		if a.Hours > 0 {
			stand = max(stand, need)
		} else {
			carry = max(carry, need)
		}
	}
	if !(stand > 0) {
		out.NoOdds = notKnown("floats", "the dock's own weight, and the crew's with its load")
		return nil
	}
	if out.Calendar, err = m.Calendar(ctx, w.now, w.past, season.Question{}, season.Tasks(carry, stand)); err != nil {
		return fail(err)
	}
	out.NoOdds = nil
	return nil
}

// bandDays is how many days the bands last from the first of November on: to the end
// of May.
const bandDays = 212

// bands runs each past winter that the table holds whole.
func (s *Season) bands(m *season.Model, past []season.Day) error {
	s.First = time.Date(s.Year, time.November, 1, 0, 0, 0, 0, time.UTC)
	var by [bandDays][]float64
	for i := 0; i < len(past); i++ {
		from := past[i].Date
		if from.Month() != time.September || from.Day() != 1 {
			continue
		}
		november := time.Date(from.Year(), time.November, 1, 0, 0, 0, 0, time.UTC)
		skip := int(november.Sub(from).Hours()/24 + 0.5)
		last := i + skip + bandDays - 1
		if last >= len(past) || past[last].Date.Sub(from) > time.Duration(skip+bandDays)*24*time.Hour {
			continue // a gap
		}
		states, err := m.Run(past[i : last+1])
		if err != nil {
			return err
		}
		for k := range bandDays {
			by[k] = append(by[k], states[skip+k].Total())
		}
	}
	if len(by[0]) < 5 {
		return nil
	}
	for k := range by {
		slices.Sort(by[k])
		s.Thin = append(s.Thin, stat.Quantile(0.1, stat.Empirical, by[k], nil))
		s.Middle = append(s.Middle, stat.Quantile(0.5, stat.Empirical, by[k], nil))
		s.Thick = append(s.Thick, stat.Quantile(0.9, stat.Empirical, by[k], nil))
	}
	return nil
}

var srcDiary = &measure.Source{Title: "past winters are a sample of this one", Status: measure.OwnChoice}

// seasonChecks holds the work and the stay on the ice against the odds.
func (d *Dock) seasonChecks() []measure.Check {
	p := &d.plan.Ice
	rs := rests{on(p.Now), on(p.Park)}
	for i := range d.plan.Season.Outs {
		rs = append(rs, on(d.plan.Season.Outs[i].When))
	}
	work := measure.Check{Name: "Time left for the work on the ice before an early ice-out, one in ten", Kind: measure.Time, AtLeast: true, Rule: srcDiary, Hazard: true}
	stay := measure.Check{Name: "Time it is planned to stand there, until a late ice-out, one in ten", Kind: measure.Time, AtLeast: true, Rule: srcDiary, Hazard: true}
	out := []measure.Check{work, stay}
	s, err := d.seasoned()
	if err == nil {
		err = s.NoOut
	}
	now, known := plan.Time(p.Now)
	if err == nil && !known {
		err = notKnown("ice.now", "when the question is asked")
	}
	if err == nil {
		err = rests{on(p.Park)}.err()
	}
	if err != nil {
		return []measure.Check{refuse(work.Name, err, rs), refuse(stay.Name, err, rs)}
	}
	days := 0
	for _, t := range season.Tasks(1, 1) {
		if t.Need > 0 {
			days += t.Days
		}
	}
	out[0].Value, out[0].Limit = s.Out.P10.Sub(now).Seconds(), float64(days)*measure.Day
	out[0].Notes = d.seasonNotes(s)
	out[1].Value, out[1].Limit = p.Park.Value, s.Out.P90.Sub(now).Seconds()
	out[1].Notes = []string{"a dock that the thaw is to launch stands there until the ice goes, in nine winters of ten by " + s.Out.P90.Format(time.DateOnly)}
	for i := range out {
		out[i].Rests = dedupe(rs).assumptions()
	}
	return out
}

// seasonNotes says dates and windows.
func (d *Dock) seasonNotes(s *Season) []string {
	out := []string{season.Caution, "ice-out, one in ten earlier, half, nine in ten: " + s.Out.String()}
	if s.NoOn == nil {
		out = append(out, "ice-on likewise: "+s.On.String())
	}
	out = append(out, s.Notes...)
	if s.Winters > 0 {
		out = append(out, fmt.Sprintf("from the temperatures of %d winters", s.Winters))
	}
	for _, c := range s.Loads {
		out = append(out, fmt.Sprintf("%s, %s of ice: from %v, until %v", c.Load, measure.Length.Print(c.Need, d.system()), c.First, c.Last))
	}
	for _, slot := range s.Calendar.Slots {
		out = append(out, slot.String())
		out = append(out, slot.Notes...)
		if slot.Task.Early != "" {
			out = append(out, "if the window closes early: "+slot.Task.Early)
		}
	}
	return out
}

// seasoned returns the dock's season, worked out once in a report: none of the inputs
// that it tries touch dates and weather.
func (d *Dock) seasoned() (*Season, error) {
	if d.trial == nil {
		return d.Season(context.Background())
	}
	of := &d.trial.governing.season
	of.Do(func() { of.made, of.err = d.Season(context.Background()) })
	return of.made, of.err
}
