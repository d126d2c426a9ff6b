package season

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// A Question is what the odds are asked for.
type Question struct {
	// Need is the effective thickness in m that the load wants, clear ice and
	// half of the white ice. NeedFor reads it from the public rules.
	Need float64

	// Errors of the model in days and metres, as Fit found them; the zero value
	// takes those of the default set.
	On, Out, Thickness Misfit

	// Holes drilled this winter, on days that are over: they correct today's ice and
	// the season's snow before the past winters run on from it; see [Model.Correct].
	Holes []Hole

	// Now is the day on which it is asked: no work begins before it, and no day of soFar
	// is after it but one that is marked as forecast. It says which
	// winter is asked for where soFar has no day of it. The zero time is the day after
	// the last of soFar, and without any the first of the season after the record's.
	Now time.Time

	// SeenOn and SeenOut are what people remember beside the record, by [FromDates] for
	// the winter that is asked for, the one before the other; the
	// zero Guess is nothing. No day of thick ice is before the one, unless a hole of this
	// winter had ice, or after the other, and work on ice ends [Failing] before it.
	SeenOn, SeenOut Guess
}

// Failing is how long before ice-out ice no longer counts for work, s (our choice).
const Failing = 14 * measure.Day

// NeedFor returns the thickness in m that the strictest public rule of [ice.Compare]
// asks for under a load, before any factor for white ice, thaw or cracks, and doubled
// where the load is to stand for hours. For days and weeks no rule was found.
func NeedFor(load ice.Crossing, stands bool) (float64, error) {
	c, err := ice.Compare(load)
	if err != nil {
		return math.NaN(), err
	}
	_, most := c.Spread()
	if !(most > 0) {
		return math.NaN(), &measure.Error{Field: "load", Class: measure.ErrUnknown, Why: "no public rule speaks of it"}
	}
	if stands {
		most *= 2
	}
	return most, nil
}

// A Span is a date with its spread: 10, 50 and 90 per cent of winters are
// earlier. Chance is the share of winters in which it comes at all; a date
// beyond that share is the zero time.
type Span struct {
	P10, P50, P90 time.Time
	Chance        float64
}

// later returns the dates of s, none of them before those of an event that must come
// first: never where that never comes. The zero Span says nothing.
func (s Span) later(than Span) Span {
	if than == (Span{}) {
		return s
	}
	after := func(a, b time.Time) time.Time {
		if a.IsZero() || b.IsZero() {
			return time.Time{}
		}
		if b.After(a) {
			return b
		}
		return a
	}
	return Span{after(s.P10, than.P10), after(s.P50, than.P50), after(s.P90, than.P90), s.Chance}
}

// earlier returns the dates of s, none of them after those of an event that ends it. The
// zero Span says nothing.
func (s Span) earlier(than Span) Span {
	before := func(a, b time.Time) time.Time {
		if !b.IsZero() && b.Before(a) {
			return b
		}
		return a
	}
	return Span{before(s.P10, than.P10), before(s.P50, than.P50), before(s.P90, than.P90), s.Chance}
}

// dayForm is how a day is printed: with its year, since a record may be of another winter.
const dayForm = "2 Jan 2006"

// String prints the three dates, a year once behind its days, and how often it comes at
// all.
func (s Span) String() string {
	text := func(t, next time.Time) string {
		switch {
		case t.IsZero():
			return "never"
		case t.Year() == next.Year(): // of the zero time none that is printed
			return t.Format("2 Jan")
		}
		return t.Format(dayForm)
	}
	out := fmt.Sprintf("%s, %s, %s", text(s.P10, s.P50), text(s.P50, s.P90), text(s.P90, time.Time{}))
	if s.Chance < 0.995 {
		out += fmt.Sprintf(" (in %.0f %% of winters)", 100*s.Chance)
	}
	return out
}

// DayOdds are the chances for one calendar day.
type DayOdds struct {
	Date    time.Time
	On      float64 // ice has come by then
	Out     float64 // and has left for good
	Carries float64 // the ice has the effective thickness asked for, and the day's mean is below 0 °C
}

// Odds are what past winters say of this one.
type Odds struct {
	Need    float64 // m, the thickness asked for
	Winters int     // past winters behind it
	Days    []DayOdds
	On, Out Span

	// Came is the day on which the ice came this winter, by the model and this winter's
	// own days; all dates of On are then that day. The zero time is not yet.
	Came time.Time

	First Span // first day with the thickness asked for, none before On
	Last  Span // last such day
	Notes []string
}

// defaultErrors are the root mean squares that the default set showed on the
// winters it was not fitted to; see the package's page.
var defaultErrors = Question{
	On: Misfit{SD: 6}, Out: Misfit{SD: 6}, Thickness: Misfit{SD: 0.09},
}

// few is the number of winters below which the odds say so.
const few = 10

// Odds runs every past winter of the record, by [Model.Run], from today on: soFar are this
// winter's days (none before the season), past the record of earlier winters,
// which may hold gaps; a winter with one is left out. The model's own error and
// the smallness of the record widen every date. At least five winters are
// needed. The error of the context is returned as it is.
func (m *Model) Odds(ctx context.Context, soFar, past []Day, q Question) (Odds, error) {
	o, _, err := m.gather(ctx, soFar, past, q)
	return o, err
}

func (m *Model) gather(ctx context.Context, soFar, past []Day, q Question) (Odds, *ensemble, error) {
	r := measure.Range{Kind: measure.Length, Lo: 0, Hi: 3, OpenLo: true, Source: own("thicker ice is not asked for")}
	if err := r.Check("thickness asked for", q.Need); err != nil {
		return Odds{}, nil, err
	}
	for _, e := range []struct{ x, usual *Misfit }{{&q.On, &defaultErrors.On}, {&q.Out, &defaultErrors.Out}, {&q.Thickness, &defaultErrors.Thickness}} {
		if !(math.Abs(e.x.Bias) < 60 && e.x.SD >= 0 && e.x.SD < 60) {
			return Odds{}, nil, &measure.Error{Field: "error of the model", Value: e.x.SD, Class: measure.ErrRange, Want: "a mean and a root mean square that a fit found"}
		}
		if e.x.SD == 0 {
			*e.x = *e.usual
		}
	}
	e, err := m.ensemble(ctx, soFar, past, q)
	if err != nil {
		return Odds{}, nil, err
	}
	return e.odds(q), e, nil
}

// past winters, each run from the same start.
type ensemble struct {
	start  int // number of the first day of the season that the odds are for
	length int
	runs   []pastRun
	iced   bool // ice has come this winter already
	icedOn int

	from        int // days of the season that are over, by its record
	today       int // the first day of it on which work can begin
	first, last int // of them, with the thickness asked for; -1: none
}

// pastRun is one past winter from today on, in days of the season.
type pastRun struct {
	year        int
	on, out     int // -1: never
	first, last int
	thickness   []float32 // effective, m; 0 without ice
	thaw        []bool
}

// begun returns the states of this winter, corrected by holes if there are any, and
// the model that goes on from them.
func (m *Model) begun(days []Day, holes []Hole) ([]State, *Model, error) {
	if len(holes) == 0 {
		states, err := m.Run(days)
		return states, m, err
	}
	c, err := m.Correct(days, holes)
	if err != nil {
		return nil, nil, err
	}
	states := make([]State, len(c.Days))
	for i := range states {
		states[i] = c.Days[i].State
	}
	return states, m.with(c.Params), nil
}

// ensemble cuts the past into winters and runs them.
func (m *Model) ensemble(ctx context.Context, soFar, past []Day, q Question) (*ensemble, error) {
	states, m, err := m.begun(soFar, q.Holes)
	if err != nil {
		return nil, err
	}
	parts, err := split(past)
	if err != nil {
		return nil, err
	}
	e := &ensemble{first: -1, last: -1}
	s := sheet{}
	switch {
	case len(soFar) > 0:
		last := number(soFar[len(soFar)-1].Date)
		year := m.lake.year(last)
		e.start = m.lake.opening(year)
		e.from = last + 1 - e.start
		for _, s := range states {
			if i := number(s.Date) - e.start; i >= 0 && s.Effective >= q.Need && !s.Thaw {
				if e.first < 0 {
					e.first = i
				}
				e.last = i
			}
		}
		s = states[len(states)-1].sheet()
		if w := m.Winters(states); len(w) > 0 && w[len(w)-1].Year == year {
			if on := w[len(w)-1].On; !on.IsZero() && s.ice {
				e.iced, e.icedOn = true, number(on)-e.start
			}
		}
	case !q.Now.IsZero():
		e.start = m.lake.opening(m.lake.year(number(q.Now)))
	case len(past) > 0:
		// The season after the record's last.
		e.start = m.lake.opening(m.lake.year(number(past[len(past)-1].Date)) + 1)
	}
	e.today = e.from
	if !q.Now.IsZero() {
		if now := m.lake.opening(m.lake.year(number(q.Now))); now != e.start {
			return nil, &measure.Error{Field: "Now", Text: q.Now.Format(time.DateOnly), Class: measure.ErrRange, Want: "a day of the winter whose days are given"}
		}
		e.today = max(e.from, number(q.Now)-e.start)
	}
	if err := q.dated(soFar, past, e.start); err != nil {
		return nil, err
	}
	const length = 362 // the last days of summer are left to records that end in August
	e.length = length
	for _, part := range parts {
		first, end := number(part[0].Date), number(part[0].Date)+len(part)
		for year := m.lake.year(first); ; year++ {
			open := m.lake.opening(year)
			if open+length > end {
				break
			}
			if open < first || len(soFar) > 0 && open == e.start {
				continue
			}
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			days := part[open-first : open-first+length]
			begun := s
			if len(soFar) == 0 {
				begun = begin(days)
			}
			e.runs = append(e.runs, m.past(begun, days, q.Need, e))
			e.runs[len(e.runs)-1].year = year
		}
	}
	if len(e.runs) < 5 {
		return nil, &measure.Error{Field: "past winters", Value: float64(len(e.runs)), Class: measure.ErrUnknown, Why: "fewer than five whole winters are on record; remembered ice-out dates (FromDates) say more"}
	}
	return e, nil
}

// opening returns the number of the first day of a season, 1 September in the
// north, 1 March in the south.
func (l Lake) opening(year int) int {
	month := time.September
	if l.Latitude < 0 {
		month = time.March
	}
	return number(time.Date(year, month, 1, 0, 0, 0, 0, time.UTC))
}

// past runs one past winter from the day on to which the season has come.
func (m *Model) past(s sheet, days []Day, need float64, e *ensemble) pastRun {
	from := e.from
	r := pastRun{on: -1, out: -1, first: e.first, last: e.last, thickness: make([]float32, len(days)), thaw: make([]bool, len(days))}
	doy := days[0].Date.YearDay()
	year := days[0].Date.Year()
	leap := time.Date(year, 12, 31, 0, 0, 0, 0, time.UTC).YearDay()
	spell := 0
	if e.iced {
		r.on, r.out, spell = e.icedOn, from, lasting
	}
	for i := range days {
		d := doy + i
		if d > leap {
			d -= leap
		}
		if i < from {
			continue
		}
		m.c.step(&s, &days[i], m.sun[d])
		r.thaw[i] = days[i].Mean >= 0
		if !s.ice {
			spell = 0
			continue
		}
		spell++
		if spell == lasting && r.on < 0 {
			r.on = i - lasting + 1
		}
		r.out = i + 1
		h := s.effective()
		r.thickness[i] = float32(h)
		if h >= need && !r.thaw[i] {
			if r.first < 0 {
				r.first = i
			}
			r.last = i
		}
	}
	if r.on < 0 {
		r.out = -1
	}
	return r
}

// String prints the odds as a table by half-month with their caution.
func (o Odds) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "from %d past winters; 10, 50 and 90 %% of winters are earlier\n", o.Winters)
	on := o.On.String()
	if !o.Came.IsZero() {
		on = o.Came.Format(dayForm) + ": it has come, by this winter's own record"
	}
	fmt.Fprintf(&b, "ice-on             %s\n", on)
	fmt.Fprintf(&b, "first %s  %s\n", measure.Upward(o.Need, measure.SI), o.First)
	fmt.Fprintf(&b, "last %s   %s\n", measure.Upward(o.Need, measure.SI), o.Last)
	fmt.Fprintf(&b, "ice-out            %s\n", o.Out)
	for _, n := range o.Notes {
		fmt.Fprintln(&b, n)
	}
	b.WriteString(Caution + "\n")
	return b.String()
}

// At returns the odds of a calendar day, by month and day, as [Model.Odds] found them.
func (o Odds) At(date time.Time) (DayOdds, bool) {
	i := slices.IndexFunc(o.Days, func(d DayOdds) bool {
		return d.Date.Month() == date.Month() && d.Date.Day() == date.Day()
	})
	if i < 0 {
		return DayOdds{}, false
	}
	return o.Days[i], true
}
