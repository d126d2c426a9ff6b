package season

import (
	"fmt"
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/floewright/lumber/measure"
)

// normal is the distribution function of the standard normal, to 1e-15: past 8
// it is 0 or 1, where most days of a year lie.
func normal(x float64) float64 {
	switch {
	case x < -8:
		return 0
	case x > 8:
		return 1
	}
	return math.Erfc(-x/math.Sqrt2) / 2
}

// kernel returns the width that each past winter's date is smeared over: the
// model's error, and the width of a normal kernel for so few winters
// (1.06 s n^(-1/5), the normal reference rule).
func kernel(xs []float64, sd float64) float64 {
	if len(xs) < 2 {
		return math.Hypot(sd, 10)
	}
	mean, ss := 0.0, 0.0
	for _, x := range xs {
		mean += x / float64(len(xs))
	}
	for _, x := range xs {
		ss += (x - mean) * (x - mean)
	}
	s := math.Sqrt(ss / float64(len(xs)-1))
	return math.Hypot(sd, 1.06*s*math.Pow(float64(len(xs)), -0.2))
}

// mixture is a distribution of dates: one normal a winter, the rest never.
type mixture struct {
	xs    []float64
	width float64
	all   int
}

// by returns the chance that it has come by the end of day x.
func (m mixture) by(x float64) float64 {
	sum := 0.0
	for _, c := range m.xs {
		sum += normal((x + 0.5 - c) / m.width)
	}
	return sum / float64(m.all)
}

// span returns the dates, counted from start, that are not before from.
func (m mixture) span(start, from int) Span {
	s := Span{Chance: float64(len(m.xs)) / float64(m.all)}
	if len(m.xs) == 0 {
		return s
	}
	lo, hi := slices.Min(m.xs)-5*m.width-1, slices.Max(m.xs)+5*m.width+1
	at := func(p float64) time.Time {
		if p >= s.Chance {
			return time.Time{}
		}
		a, b := lo, hi
		for range 40 {
			if mid := (a + b) / 2; m.by(mid) < p {
				a = mid
			} else {
				b = mid
			}
		}
		return dateOf(start + max(from, int(math.Ceil(b))))
	}
	s.P10, s.P50, s.P90 = at(0.1), at(0.5), at(0.9)
	return s
}

// odds turns the runs into chances.
func (e *ensemble) odds(q Question) Odds {
	o := Odds{Need: q.Need, Winters: len(e.runs), Days: make([]DayOdds, e.length)}
	collect := func(get func(pastRun) int, bias, sd float64, sure bool) mixture {
		m := mixture{all: len(e.runs)}
		for _, r := range e.runs {
			if x := get(r); x >= 0 {
				m.xs = append(m.xs, float64(x)-bias)
			}
		}
		m.width = kernel(m.xs, sd)
		if sure {
			m.width = 0.1
		}
		return m
	}
	on := collect(func(r pastRun) int { return r.on }, 0, q.On.SD, e.iced)
	if !e.iced {
		on = collect(func(r pastRun) int { return r.on }, q.On.Bias, q.On.SD, false)
	}
	out := collect(func(r pastRun) int { return r.out }, q.Out.Bias, q.Out.SD, false)
	first := collect(func(r pastRun) int { return r.first }, 0, q.On.SD, false)
	last := collect(func(r pastRun) int { return r.last }, 0, q.Out.SD, false)
	for i := range o.Days {
		d := &o.Days[i]
		d.Date = dateOf(e.start + i)
		d.On = on.by(float64(i))
		d.Out = min(d.On, out.by(float64(i)))
		for _, r := range e.runs {
			if h := float64(r.thickness[i]); h > 0 && !r.thaw[i] {
				d.Carries += normal((h - q.Thickness.Bias - q.Need) / e.error(h, q.Thickness.SD))
			}
		}
		d.Carries /= float64(len(e.runs))
	}
	from := 0
	o.On, o.Out = on.span(e.start, from), out.span(e.start, from)
	o.First, o.Last = first.span(e.start, from).later(o.On), last.span(e.start, from)
	if e.iced {
		o.Came = dateOf(e.start + e.icedOn)
	}
	if !q.seenIce() {
		o.First = o.First.later(q.SeenOn.Span)
	}
	o.Last = o.Last.earlier(q.SeenOut.Span)
	if len(e.runs) < few {
		o.Notes = append(o.Notes, fmt.Sprintf("only %d winters are behind this: take the dates as wide", len(e.runs)))
	}
	return o
}

// seenIce reports whether a hole of this winter had ice.
func (q *Question) seenIce() bool {
	return slices.ContainsFunc(q.Holes, func(h Hole) bool { return h.Clear+h.White > 0 })
}

// error returns the model's error in m at a thickness: it grows with the ice,
// never below 2 cm, and is what the fit found from 0.5 m on.
func (e *ensemble) error(h, sd float64) float64 {
	return max(0.02, sd*min(1, h/0.5))
}

// A Guess is what a handful of remembered dates tells.
type Guess struct {
	N    int
	Span // of the coming winter's date
	Mean time.Time
	SD   float64 // days, of the remembered dates
	Note string

	center, scale float64
	dist          distuv.StudentsT
}

// FromDates returns the odds of a date, ice-out as a rule, from five or more
// remembered dates of past years, one a winter, for the same season of the given year:
// the calendar year in which a date like the first of them would fall, where they lie on
// both sides of a new year. The spread is Student's t for one more draw: wide, as so few
// dates are, with two days for what memory rounds off. Two dates that lie less than 200
// days apart, dates that are not past by then, and dates of which none is younger than 20
// years are errors.
func FromDates(dates []time.Time, year int) (Guess, error) {
	if len(dates) < 5 {
		return Guess{}, &measure.Error{Field: "remembered dates", Value: float64(len(dates)), Class: measure.ErrUnknown, Why: "fewer than five tell too little"}
	}
	if err := (measure.Range{Lo: 1600, Hi: 2400, Source: own("years of this calendar")}).Check("year", float64(year)); err != nil {
		return Guess{}, err
	}
	if err := oneAWinter(dates); err != nil {
		return Guess{}, err
	}
	// Days of the year about the first date, so that no new year cuts them.
	base := dates[0].YearDay()
	xs := make([]float64, len(dates))
	mean := 0.0
	for i, t := range dates {
		x := t.YearDay() - base
		if x > 182 {
			x -= 365
		}
		if x < -182 {
			x += 365
		}
		xs[i] = float64(x)
		mean += float64(x) / float64(len(dates))
	}
	ss := 0.0
	for _, x := range xs {
		ss += (x - mean) * (x - mean)
	}
	n := float64(len(xs))
	sd := math.Sqrt(ss / (n - 1))
	if sd > 45 {
		return Guess{}, &measure.Error{Field: "remembered dates", Kind: measure.Time, Value: sd * daySeconds, Class: measure.ErrRange, Why: "lie months apart: not all are of the same event"}
	}
	g := Guess{N: len(xs), SD: sd, Note: fmt.Sprintf("from %d remembered dates alone: wide, and blind to this winter", len(xs))}
	first := number(time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC)) + base - 1
	g.center = float64(first) + mean
	newest := slices.MaxFunc(dates, time.Time.Compare)
	if age := g.center - float64(number(newest)); !(age > 365/2) {
		return Guess{}, &measure.Error{Field: "remembered dates", Text: newest.Format(time.DateOnly), Class: measure.ErrRange, Want: fmt.Sprintf("a date of a year before %d, the one asked for", year)}
	} else if age > (stale+0.5)*365.25 {
		return Guess{}, tooOld("remembered dates", newest, dateOf(int(math.Round(g.center))).Year())
	}
	g.scale = math.Hypot(sd, 2) * math.Sqrt(1+1/n)
	g.dist = distuv.StudentsT{Mu: 0, Sigma: 1, Nu: n - 1}
	at := func(p float64) time.Time { return dateOf(int(math.Round(g.center + g.scale*g.dist.Quantile(p)))) }
	g.Mean = dateOf(int(math.Round(g.center)))
	g.P10, g.P50, g.P90, g.Chance = at(0.1), at(0.5), at(0.9), 1
	return g, nil
}

// stale is how many years old the newest winter of a record may be: lakes close later and
// open earlier than they did (our choice).
const stale = 20

// tooOld refuses a record whose newest day is out of date for a year.
func tooOld(field string, newest time.Time, year int) error {
	return &measure.Error{
		Field: field, Text: newest.Format(time.DateOnly), Class: measure.ErrRange, Why: "is the newest",
		Want: fmt.Sprintf("winters of the %d years before %d: lakes close later and open earlier than they did (our choice)", stale, year),
	}
}

// oneAWinter returns the first two dates that are of one winter.
func oneAWinter(dates []time.Time) error {
	sorted := slices.SortedFunc(slices.Values(dates), time.Time.Compare)
	for i, t := range sorted[1:] {
		switch days := number(t) - number(sorted[i]); {
		case days == 0:
			return order(t, "is given twice")
		case days < 200: // the same event of two winters is further apart
			return order(t, "is of the same winter as "+sorted[i].Format(time.DateOnly)+": one date a winter")
		}
	}
	return nil
}

// By returns the chance that the date has come by the end of a day, by the spread of
// [FromDates]; NaN for the zero Guess.
func (g Guess) By(date time.Time) float64 {
	if !(g.scale > 0 && g.dist.Nu > 0) {
		return math.NaN()
	}
	return g.dist.CDF((float64(number(date)) + 0.5 - g.center) / g.scale)
}

// String prints the guess with its caution.
func (g Guess) String() string {
	return fmt.Sprintf("%s; %s. %s", g.Span, g.Note, Caution)
}
