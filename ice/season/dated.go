package season

import (
	"time"

	"example.org/floewright/lumber/measure"
)

// dated refuses dates that contradict each other, for the winter that begins on a day.
func (q *Question) dated(soFar, past []Day, start int) error {
	refuse := func(field string, t time.Time, want string) error {
		return &measure.Error{Field: field, Text: t.Format(time.DateOnly), Class: measure.ErrRange, Want: want}
	}
	for i := len(soFar) - 1; i >= 0 && !q.Now.IsZero() && number(soFar[i].Date) > number(q.Now); i-- {
		if !soFar[i].Forecast {
			return refuse("days of this winter", soFar[i].Date, "days until "+q.Now.Format(time.DateOnly)+", when it is asked, and later ones marked as forecast")
		}
	}
	for _, h := range q.Holes {
		if !q.Now.IsZero() && number(h.Date) > number(q.Now) {
			return refuse("hole", h.Date, "a hole drilled until "+q.Now.Format(time.DateOnly)+", when it is asked")
		}
	}
	winter := "a date of the winter that begins on " + dateOf(start).Format(time.DateOnly)
	for _, g := range []struct {
		name string
		*Guess
	}{{"SeenOn", &q.SeenOn}, {"SeenOut", &q.SeenOut}} {
		// Two months on either side: the spread of dates at its ends.
		if day := number(g.P50) - start; g.N > 0 && (day < -61 || day > 365+61) {
			return refuse(g.name, g.P50, winter)
		}
	}
	if q.SeenOn.N > 0 && q.SeenOut.N > 0 && !q.SeenOn.P50.Before(q.SeenOut.P50) {
		return refuse("SeenOn", q.SeenOn.P50, "ice-on before ice-out, half of the winters by "+q.SeenOut.P50.Format(time.DateOnly))
	}
	if n := len(past); n > 0 && start-number(past[n-1].Date) > (stale+1)*366 {
		return tooOld("past winters", past[n-1].Date, dateOf(start).Year())
	}
	return nil
}
