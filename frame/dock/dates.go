package dock

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// A dated is a day that the plan says, and where.
type dated struct {
	path, text string
	time.Time
}

// data returns the dates of a list that are known.
func data(of []plan.Remembered) []dated {
	var out []dated
	for i := range of {
		if t, ok := plan.Time(of[i].When); ok {
			out = append(out, dated{of[i].When.Path, of[i].When.Value, t})
		}
	}
	return out
}

// not refuses a date of the plan; want names what it contradicts.
func (a dated) not(want string) error {
	return &measure.Error{Field: a.path, Text: a.text, Class: measure.ErrRange, Want: want}
}

// asking is ice.now as a date, and whether it is known.
func (d *Dock) asking() (dated, bool) {
	n := d.plan.Ice.Now
	now, ok := plan.Time(n)
	return dated{n.Path, n.Value, now}, ok
}

// midnight begins the day of a time.
func midnight(t time.Time) time.Time { return t.Truncate(24 * time.Hour) }

// far is the latitude from which on, north or south, lakes may have ice in any month
// (our choice).
const far = 60 * degree

// warm reports whether a day lies in the months from one to September, in the south six
// months on, at a latitude where lakes have no ice then. A latitude that is not known is
// a northern one below far.
func (d *Dock) warm(t time.Time, from time.Month) bool {
	lat := d.plan.Season.Latitude.Value
	m := t.Month()
	if lat < 0 {
		m = (m+5)%12 + 1
	}
	return !(math.Abs(lat) >= far) && m >= from && m <= time.September
}

// contradicts returns why remembered dates cannot be what they are said to be: they are
// of days to come, of summer, of one winter, or the lake opened before it closed.
func (d *Dock) contradicts() error {
	ons, outs := data(d.plan.Season.Ons), data(d.plan.Season.Outs)
	now, known := d.asking()
	day := now.Format(time.DateOnly)
	for _, list := range [][]dated{ons, outs} {
		for i, a := range list {
			if known && a.After(now.Time) {
				return a.not("a day that is over on " + day + ", ice.now")
			}
			if d.warm(a.Time, time.July) {
				return a.not("a day outside of summer, at the latitude of season.latitude: no lake closes or opens then")
			}
			for _, b := range list[:i] {
				switch {
				case a.Equal(b.Time):
					return a.not("each date once: " + b.path + " is the same, given twice")
				case d.winterOf(a.Time) == d.winterOf(b.Time):
					return a.not("one date a winter: " + b.path + ", " + b.text + ", is of the same")
				}
			}
		}
	}
	for _, a := range outs {
		if known && d.winterOf(a.Time) == d.winterOf(now.Time) {
			return a.not("a day of a winter before that of ice.now, " + day + ": by this one the ice is gone")
		}
		for _, b := range ons {
			if d.winterOf(a.Time) == d.winterOf(b.Time) && !b.Before(a.Time) {
				return a.not("a day after " + b.text + ", when the lake closed that winter by " + b.path)
			}
		}
	}
	if len(ons) == 0 || len(outs) == 0 {
		return nil
	}
	// Whatever the winter: it opens after it closes, one date against the half of the others.
	into := func(a dated) float64 { return a.Sub(d.opens(d.winterOf(a.Time))).Hours() }
	sorted := func(of []dated) []dated {
		return slices.SortedFunc(slices.Values(of), func(a, b dated) int { return int(into(a) - into(b)) })
	}
	ons, outs = sorted(ons), sorted(outs)
	for _, two := range [][2]dated{{ons[(len(ons)-1)/2], outs[0]}, {ons[len(ons)-1], outs[len(outs)/2]}} {
		if on, out := two[0], two[1]; into(on) >= into(out) {
			return out.not("a later day of its winter than that of " + on.path + ", " + on.text + ": a lake closes before it opens")
		}
	}
	return nil
}

// tableDoubt is why the table of temperatures is not of the winter that is asked for.
func (d *Dock) tableDoubt(year int) error {
	if d.winters == nil || len(d.winters.now) == 0 {
		return nil
	}
	days := d.winters.now
	now, known := d.asking()
	last := days[len(days)-1].Date
	if d.winterOf(last) != year {
		return now.not("a time in the last winter of the table of temperatures, which ends on " + last.Format(time.DateOnly) + ", or after it")
	}
	for i := len(days) - 1; i >= 0 && known && days[i].Date.After(now.Time); i-- {
		if !days[i].Forecast {
			return now.not("a time not before " + days[i].Date.Format(time.DateOnly) + ", of which the table of temperatures has a day that it does not mark as forecast")
		}
	}
	return nil
}

// outDoubt is why it is not known when the ice goes, though there are dates.
func (d *Dock) outDoubt(s *Season, m recalled) error {
	if s.NoOut != nil {
		return s.NoOut
	}
	if err := d.remembers(d.plan.Season.Outs).err(); err != nil {
		return err
	}
	if s.Out.P10.IsZero() || s.Out.P90.IsZero() {
		return &measure.Error{Field: "season", Class: measure.ErrUnknown, Why: fmt.Sprintf("ice came in %.0f %% of winters only", 100*s.Out.Chance), Want: "ice that comes in nine winters of ten"}
	}
	if err := d.tableDoubt(s.Year); err != nil {
		return err
	}
	return d.doubtOut(s, m)
}

// remembers is what dates rest on: a date that is listed and unknown might be the
// earliest of all, or the latest, and the latitude says in which months winter is.
func (d *Dock) remembers(of []plan.Remembered) rests {
	var out rests
	if d.winters != nil || len(of) > 0 {
		out = append(out, on(d.plan.Season.Latitude))
	}
	for i := range of {
		out = append(out, on(of[i].When))
	}
	return out
}

// lastWalk is the last day on which people may count on the ice at all: two weeks before
// it is out in one winter of ten, as the check of the season has it; not known where the
// time of asking is not, since nothing else says which winter this is.
func (d *Dock) lastWalk(s *Season) (time.Time, bool) {
	if _, known := d.asking(); s == nil || !known || d.outDoubt(s, d.memory(s.Year)) != nil {
		return time.Time{}, false
	}
	return s.Out.P10.Add(-time.Duration(season.Failing) * time.Second), true
}

// offIceDay is the last day set for things on the ice: one of this winter that is not over.
func (d *Dock) offIceDay() (time.Time, error) {
	l := d.plan.Local.OffIce
	t, ok := plan.Time(l)
	if !ok {
		return t, notKnown(l.Path, "a date")
	}
	now, known := d.asking()
	switch at := (dated{l.Path, l.Value, t}); {
	case !known:
	case d.winterOf(t) != d.winterOf(now.Time):
		return t, at.not("a day of the winter of ice.now, " + now.Format(time.DateOnly))
	case t.Before(midnight(now.Time)):
		return t, at.not("a day that is not over on " + now.Format(time.DateOnly) + ", ice.now")
	}
	return t, nil
}

// iceInSeason returns the checks of the ice; none of them stands where the ice is gone by
// the season's own dates, or by the time of the year.
func (d *Dock) iceInSeason() []measure.Check {
	out := d.iceChecks()
	gone := d.gone()
	for i := range out {
		if c := &out[i]; gone != nil && c.Verdict() == measure.Holds {
			c.Err, c.Value, c.Limit = gone, math.NaN(), math.NaN()
		}
	}
	return out
}

// gone is why there is no ice to be judged on the day of asking: it is past an early
// ice-out, or where no odds of it are known past one that is remembered, or in summer.
func (d *Dock) gone() error {
	now, known := d.asking()
	if !known {
		return nil // without a time no check of the ice has an answer
	}
	s, err := d.seasoned()
	if err != nil {
		return err
	}
	m := d.memory(s.Year)
	if early := s.Out.P10; s.NoOut == nil && !early.IsZero() && !now.Before(early) {
		return now.not("a time before " + early.Format(time.DateOnly) + ", when the ice is out in one winter of ten by the dates of season: it is not winter ice any more")
	}
	if m.noOut != nil {
		for _, a := range data(d.plan.Season.Outs) {
			if t := d.inWinter(a.Time, d.winterOf(now.Time)); !now.Before(t) {
				return now.not("a time before " + t.Format("2 January") + ", when the ice was out in another winter by " + a.path + ", " + a.text)
			}
		}
	}
	if d.warm(now.Time, time.June) {
		return now.not("a time outside of summer, June to September, in the south December to March: lakes below 60 deg of season.latitude have no ice then")
	}
	return nil
}
