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
)

// A Season is what the lake's past winters say of this one: for the diary, never
// permission. A part that is not known has its error.
type Season struct {
	Year    int // in which the winter begins
	Winters int // past winters of temperatures behind it; 0 is remembered dates alone

	// On and Out are the dates that count. Where the table of temperatures and remembered
	// dates both give them, these are the later ones of ice-on and the earlier ones of
	// ice-out, but for its late date, one in ten, which is the later.
	On, Out season.Span
	NoOn    error
	NoOut   error

	// Came is the day on which the ice came this winter, by the model and the table's
	// days of this winter; On is then that day alone. The zero time is not yet, or not known.
	Came time.Time

	Table, Memory Dates // what each alone gives

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

// Dates are those of ice-on and of ice-out by one source; the zero Span is not known.
type Dates struct{ On, Out season.Span }

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

// Season works out what past winters say: from the table of temperatures where there
// is one ([Dock.WithWinters], [season.Model.Odds]) and from remembered dates
// ([season.FromDates]): where there are both, the more cautious of them counts. The error
// is the context's.
func (d *Dock) Season(ctx context.Context) (*Season, error) {
	out := &Season{Year: d.winter()}
	none := notKnown("season", "a table of daily temperatures of five winters or more, or five remembered dates")
	out.NoOn, out.NoOut, out.NoOdds = none, none, none
	if d.plan == nil {
		return out, nil
	}
	m := d.memory(out.Year)
	out.Remembers = [2]int{len(m.ons), len(m.outs)}
	out.Memory = Dates{m.on.Span, m.out.Span}
	if len(m.ons) > 0 {
		out.On, out.NoOn = m.on.Span, m.noOn
	}
	if len(m.outs) > 0 {
		out.Out, out.NoOut = m.out.Span, m.noOut
	}
	if d.winters == nil {
		if len(m.ons)+len(m.outs) > 0 {
			out.NoOdds = notKnown("winters", "a table of daily temperatures: remembered dates say nothing of thickness")
			out.Notes = append(out.Notes, "from remembered dates alone: wide, and blind to how this winter goes")
		}
		return out, nil
	}
	return out, d.recorded(ctx, out, m)
}

// recorded fills in what the table of temperatures says.
func (d *Dock) recorded(ctx context.Context, out *Season, memory recalled) error {
	s, w := &d.plan.Season, d.winters
	out.Gaps = w.gaps
	if err := (rests{on(s.Latitude), on(s.MeanDepth)}).err(); err != nil {
		out.NoOdds = err
		return nil
	}
	now, known := plan.Time(d.plan.Ice.Now)
	switch {
	case !known && out.Year == 0:
		out.NoOdds = notKnown("ice.now", "when the question is asked, which says of which winter")
		return nil
	case !known:
		now = d.opens(out.Year)
	}
	if out.NoOdds = d.tableDoubt(out.Year); out.NoOdds != nil {
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
	asked := now
	if n := len(w.now); !known && n > 0 {
		asked = w.now[n-1].Date // of this winter, as far as the table knows it
	}
	out.Holes = d.drilled(w.now, asked)
	if len(out.Holes) > 0 {
		out.Notes = append(out.Notes, fmt.Sprintf("odds of thickness corrected by the holes of %s; they are taken for the lake's ice, so leave out those of a pad that was kept bare", several(len(out.Holes), "day")))
	}
	if err := out.bands(m, w.past, d.opens(out.Year)); err != nil {
		return fail(err)
	}
	q := season.Question{Holes: out.Holes, Now: asked, SeenOut: memory.out}
	if !d.seenIce(now) {
		q.SeenOn = memory.on
	}
	var carry, stand float64
	for _, a := range d.IceAsked() {
		if a.Err != nil {
			continue
		}
		need := a.Check.Limit
		q.Need = need
		odds, err := m.Odds(ctx, w.now, w.past, q)
		if err != nil {
			return fail(err)
		}
		out.Winters, out.Came, out.Table = odds.Winters, odds.Came, Dates{odds.On, odds.Out}
		out.weigh(memory)
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
	if out.Calendar, err = m.Calendar(ctx, w.now, w.past, q, season.Tasks(carry, stand)); err != nil {
		return fail(err)
	}
	out.NoOdds = nil
	if known {
		d.bar(out.Calendar.Slots, now)
	}
	return nil
}

// drilled returns the plan's holes as the mean of each day, those of days that the
// table holds, that are not to come, and of which clear and white ice are known.
func (d *Dock) drilled(days []season.Day, now time.Time) []season.Hole {
	var out []season.Hole
	var n []float64
	for i := range d.plan.Ice.Holes {
		h := &d.plan.Ice.Holes[i]
		t, ok := plan.Time(h.When)
		t = t.Truncate(24 * time.Hour)
		if !ok || !plan.Has(h.Clear) || !plan.Has(h.White) || len(days) == 0 || t.After(now) || t.Before(days[0].Date) || t.After(days[len(days)-1].Date) {
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
