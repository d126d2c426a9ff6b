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
	Calendar season.Calendar
	NoOdds   error          // of loads and calendar
	SoFar    []season.State // this winter, day by day, by the model alone
	Holes    []season.Hole  // the plan's, that correct it for the odds: the mean of each day

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
// winters, those of this one from September on, in the south from March. The table is read as
// [season.ReadCSV] has it; the error names file and line.
func (d *Dock) WithWinters(name string, r io.Reader, o season.Options) (*Dock, error) {
	record, err := season.ReadCSV(name, r, o)
	if err != nil {
		return nil, err
	}
	out := *d
	out.winters = &winters{gaps: record.Gaps}
	from := d.opens(d.winter())
	for _, day := range record.Days {
		if day.Date.Before(from) {
			out.winters.past = append(out.winters.past, day)
		} else {
			out.winters.now = append(out.winters.now, day)
		}
	}
	return &out, nil
}

// opens returns the first day of the winter that begins in a year, as package season
// counts winters: 1 September in the north, 1 March in the south.
func (d *Dock) opens(year int) time.Time {
	month := time.September
	if d.plan != nil && d.plan.Season.Latitude.Value < 0 {
		month = time.March
	}
	return time.Date(year, month, 1, 0, 0, 0, 0, time.UTC)
}

// winterOf returns the year in which the winter of a day begins.
func (d *Dock) winterOf(t time.Time) int {
	if t.Before(d.opens(t.Year())) {
		return t.Year() - 1
	}
	return t.Year()
}

// winter returns the year in which the winter that is asked for begins: that of
// ice.now, else the one after the newest remembered date's; 0 where neither is known.
func (d *Dock) winter() int {
	if d.plan == nil {
		return 0
	}
	if now, ok := plan.Time(d.plan.Ice.Now); ok {
		return d.winterOf(now)
	}
	newest := 0
	for _, of := range [][]plan.Remembered{d.plan.Season.Ons, d.plan.Season.Outs} {
		for _, t := range remembered(of) {
			newest = max(newest, d.winterOf(t)+1)
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
// is one ([Dock.WithWinters], [season.Model.Odds]), else from remembered dates
// ([season.FromDates]). The error is the context's.
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
		out.On, out.NoOn = d.guessed(ons, out.Year)
	}
	if len(outs) > 0 {
		out.Out, out.NoOut = d.guessed(outs, out.Year)
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

// guessed returns the span of a date in a winter from remembered ones. The date that
// counts falls into the winter's first calendar year or the next, as the first
// remembered one does into its own winter.
func (d *Dock) guessed(dates []time.Time, winter int) (season.Span, error) {
	g, err := season.FromDates(dates, winter+dates[0].Year()-d.winterOf(dates[0]))
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
	out.Holes = d.drilled(w.now)
	if len(out.Holes) > 0 {
		out.Notes = append(out.Notes, fmt.Sprintf("odds of thickness corrected by the holes of %d days; they are taken for the lake's ice, so leave out those of a pad that was kept bare", len(out.Holes)))
	}
	if err := out.bands(m, w.past, d.opens(out.Year)); err != nil {
		return fail(err)
	}
	var carry, stand float64
	for _, a := range d.IceAsked() {
		if a.Err != nil {
			continue
		}
		need := a.Check.Limit
		odds, err := m.Odds(ctx, w.now, w.past, season.Question{Need: need, Holes: out.Holes})
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
	if out.Calendar, err = m.Calendar(ctx, w.now, w.past, season.Question{Holes: out.Holes}, season.Tasks(carry, stand)); err != nil {
		return fail(err)
	}
	out.NoOdds = nil
	return nil
}

// drilled returns the plan's holes as the mean of each day, those of days that the
// table holds and of which clear and white ice are known.
func (d *Dock) drilled(days []season.Day) []season.Hole {
	var out []season.Hole
	var n []float64
	for i := range d.plan.Ice.Holes {
		h := &d.plan.Ice.Holes[i]
		t, ok := plan.Time(h.When)
		t = t.Truncate(24 * time.Hour)
		if !ok || !plan.Has(h.Clear) || !plan.Has(h.White) || len(days) == 0 || t.Before(days[0].Date) || t.After(days[len(days)-1].Date) {
			continue
		}
		k := slices.IndexFunc(out, func(o season.Hole) bool { return o.Date.Equal(t) })
		if k < 0 {
			k, out, n = len(out), append(out, season.Hole{Date: t}), append(n, 0)
		}
		n[k]++
		out[k].Clear += (h.Clear.Value - out[k].Clear) / n[k]
		out[k].White += (h.White.Value - out[k].White) / n[k]
	}
	slices.SortFunc(out, func(a, b season.Hole) int { return a.Date.Compare(b.Date) })
	return out
}

// bandDays is how many days the bands last from the third month of a winter on: from
// 1 November to the end of May in the north.
const bandDays = 212

// bands runs each past winter that the table holds whole; this one opens on a day.
func (s *Season) bands(m *season.Model, past []season.Day, opens time.Time) error {
	s.First = opens.AddDate(0, 2, 0)
	var by [bandDays][]float64
	for i := 0; i < len(past); i++ {
		from := past[i].Date
		if from.Month() != opens.Month() || from.Day() != 1 {
			continue
		}
		skip := int(from.AddDate(0, 2, 0).Sub(from).Hours()/24 + 0.5)
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

// failing is how long before ice-out ice no longer counts for work, s (our choice).
const failing = 14 * measure.Day

var srcDiary = &measure.Source{Title: "past winters are a sample of this one", Status: measure.OwnChoice}

// seasonChecks holds the work and the stay on the ice against the odds.
func (d *Dock) seasonChecks() []measure.Check {
	p := &d.plan.Ice
	rs := rests{on(p.Now), on(p.Park)}
	s, err := d.seasoned()
	if d.winters != nil {
		rs = append(rs, on(d.plan.Season.Latitude), on(d.plan.Season.MeanDepth))
	}
	if s.Winters == 0 {
		// A date that is listed and unknown might be the earliest of all.
		for i := range d.plan.Season.Outs {
			rs = append(rs, on(d.plan.Season.Outs[i].When))
		}
	}
	rs = dedupe(rs)
	work := measure.Check{Name: "Time left for the work on the ice, two weeks before an early ice-out, one in ten", Kind: measure.Time, AtLeast: true, Rule: srcDiary, Hazard: true}
	stay := measure.Check{Name: "Time it is planned to stand there, until a late ice-out, one in ten", Kind: measure.Time, AtLeast: true, Rule: srcDiary, Hazard: true}
	out := []measure.Check{work, stay}
	if err == nil {
		err = s.NoOut
	}
	if err == nil {
		err = rs.err()
	}
	if err == nil && (s.Out.P10.IsZero() || s.Out.P90.IsZero()) {
		err = &measure.Error{Field: "season", Class: measure.ErrUnknown, Why: fmt.Sprintf("ice came in %.0f %% of winters only", 100*s.Out.Chance), Want: "ice that comes in nine winters of ten"}
	}
	now, known := plan.Time(p.Now)
	if err == nil && !known {
		err = notKnown("ice.now", "when the question is asked")
	}
	if err != nil {
		out = []measure.Check{refuse(work.Name, err, rs), refuse(stay.Name, err, rs)}
		if s.NoOn == nil || s.NoOut == nil {
			out[0].Notes = append(out[0].Notes, d.seasonNotes(s)...)
		}
		return out
	}
	days := 0
	for _, t := range season.Tasks(1, 1) {
		if t.Need > 0 {
			days += t.Days
		}
	}
	from := now
	if s.NoOn == nil && s.On.P90.After(from) { // there is no ice to work on yet
		from = s.On.P90
	}
	out[0].Value, out[0].Limit = max(0, s.Out.P10.Sub(from).Seconds()-failing), float64(days)*measure.Day
	out[0].Notes = append([]string{"ice fails before it is gone: two weeks are kept back (our choice)"}, d.seasonNotes(s)...)
	out[1].Value, out[1].Limit = p.Park.Value, s.Out.P90.Sub(now).Seconds()
	out[1].Notes = []string{"a dock that the thaw is to launch stands there until the ice goes, in nine winters of ten by " + s.Out.P90.Format(time.DateOnly)}
	for i := range out {
		out[i].Rests = rs.assumptions()
	}
	return out
}

// seasonNotes says dates and windows.
func (d *Dock) seasonNotes(s *Season) []string {
	out := []string{season.Caution}
	const three = ", one in ten earlier, half, nine in ten: "
	if s.NoOut == nil {
		out = append(out, "ice-out"+three+s.Out.String())
	}
	if s.NoOn == nil {
		out = append(out, "ice-on"+three+s.On.String())
	}
	out = append(out, s.Notes...)
	if s.Winters > 0 {
		out = append(out, fmt.Sprintf("from the temperatures of %d winters", s.Winters))
	}
	for _, g := range s.Gaps {
		out = append(out, "table of temperatures, "+g.String())
	}
	out = append(out, d.rulesBeside(s)...)
	for _, c := range s.Loads {
		out = append(out, fmt.Sprintf("%s, %s of ice: from %v, until %v", c.Load, measure.Length.Print(c.Need, d.system()), c.First, c.Last))
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
		measure.Length.Print(last.Clear, sys), measure.Length.Print(last.White, sys))}
	for _, r := range season.Rules() {
		if lo, hi, err := r.Thickness(last.FrostDays); err == nil {
			out = append(out, fmt.Sprintf("by the square-root law, %s: %s to %s", r.Name, measure.Length.Print(lo, sys), measure.Length.Print(hi, sys)))
		}
	}
	return out
}

// seasoned returns the dock's season, worked out once in a report: none of the inputs
// that it tries touch dates and weather.
func (d *Dock) seasoned() (*Season, error) {
	ctx := d.trial.context()
	if d.trial == nil {
		return d.Season(ctx)
	}
	of := &d.trial.governing.season
	of.Do(func() { of.made, of.err = d.Season(ctx) })
	return of.made, of.err
}
