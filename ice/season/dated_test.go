package season_test

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// refused fails a test unless an error is of class ErrRange or ErrSyntax and names all of
// these.
func refused(t *testing.T, what string, err error, names ...string) {
	t.Helper()
	if !errors.Is(err, measure.ErrRange) && !errors.Is(err, measure.ErrSyntax) {
		t.Errorf("%s: %v", what, err)
		return
	}
	for _, n := range names {
		if !strings.Contains(err.Error(), n) {
			t.Errorf("%s: %q does not name %q", what, err, n)
		}
	}
}

// TestDatesOneAWinter: remembered dates are of as many winters, past by the year that is
// asked for, and not all older than twenty years; the error names what contradicts.
func TestDatesOneAWinter(t *testing.T) {
	aprils := func(years ...int) []time.Time {
		var out []time.Time
		for i, y := range years {
			out = append(out, time.Date(y, time.April, 10+i, 0, 0, 0, 0, time.UTC))
		}
		return out
	}
	guess := func(year int, dates []time.Time) error {
		_, err := season.FromDates(dates, year)
		return err
	}
	if err := guess(2027, aprils(2022, 2023, 2024, 2025, 2026)); err != nil {
		t.Error(err)
	}
	refused(t, "two of one spring", guess(2027, aprils(2022, 2023, 2024, 2025, 2025)), "2025-04-14", "2025-04-13", "one date a winter")
	refused(t, "of one winter, in two years", guess(2027, append(aprils(2021, 2022, 2023, 2024), time.Date(2023, time.December, 28, 0, 0, 0, 0, time.UTC))), "2024-04-13", "2023-12-28")
	refused(t, "years to come", guess(2027, aprils(2028, 2029, 2030, 2031, 2032)), "2032-04-14", "2027")
	refused(t, "the year itself", guess(2027, aprils(2023, 2024, 2025, 2026, 2027)), "2027-04-14", "2027")
	refused(t, "of long ago", guess(2027, aprils(1950, 1951, 1952, 1953, 1954)), "1954-04-14", "2027")
	if err := guess(2027, aprils(2003, 2004, 2005, 2006, 2007)); err != nil {
		t.Errorf("twenty years back: %v", err)
	}
	refused(t, "twenty-one years back", guess(2028, aprils(2003, 2004, 2005, 2006, 2007)), "2007-04-14", "2028")
}

// TestQuestionDates: no answer where a measured day or a hole is after the day of asking,
// where remembered dates are of another winter, or the record is of another age.
func TestQuestionDates(t *testing.T) {
	m, all := model(t), winter(99, -15, 3, 140)
	ask := func(soFar, past []season.Day, q season.Question) error {
		q.Need = 0.1
		_, err := m.Odds(context.Background(), soFar, past, q)
		return err
	}
	last := all[len(all)-1].Date
	day := func(n int) string { return last.AddDate(0, 0, n).Format(time.DateOnly) }
	if err := ask(all, years(12), season.Question{Now: last}); err != nil {
		t.Errorf("asked on its last day: %v", err)
	}
	refused(t, "asked before its last day", ask(all, years(12), season.Question{Now: last.AddDate(0, 0, -1)}), day(0), day(-1))
	forecast := append([]season.Day(nil), all...)
	forecast[len(all)-1].Forecast = true
	if err := ask(forecast, years(12), season.Question{Now: last.AddDate(0, 0, -1)}); err != nil {
		t.Errorf("with a forecast: %v", err)
	}
	hole := []season.Hole{{Date: last, Clear: 0.3}}
	refused(t, "a hole to come", ask(forecast, years(12), season.Question{Now: last.AddDate(0, 0, -1), Holes: hole}), day(0), day(-1))

	guess := func(month time.Month, year int) season.Guess {
		var dates []time.Time
		for i := range 5 {
			dates = append(dates, time.Date(2018+i, month, 5+i, 0, 0, 0, 0, time.UTC))
		}
		g, err := season.FromDates(dates, year)
		if err != nil {
			t.Fatal(err)
		}
		return g
	}
	if err := ask(all, years(12), season.Question{SeenOn: guess(time.December, 2025), SeenOut: guess(time.April, 2026)}); err != nil {
		t.Error(err)
	}
	for _, year := range []int{2025, 2027} {
		refused(t, "ice-out of another winter", ask(all, years(12), season.Question{SeenOut: guess(time.April, year)}), "SeenOut", "2025-09-01")
		refused(t, "ice-on of another winter", ask(all, years(12), season.Question{SeenOn: guess(time.December, year-1)}), "SeenOn", "2025-09-01")
	}
	refused(t, "exchanged", ask(all, years(12), season.Question{SeenOn: guess(time.April, 2026), SeenOut: guess(time.December, 2025)}), "2026-04-07", "2025-12-07")

	refused(t, "a record of another age", ask(nil, years(12), season.Question{Now: time.Date(2087, time.January, 5, 0, 0, 0, 0, time.UTC)}), "2025-08-31", "2086")
	if err := ask(nil, years(12), season.Question{Now: time.Date(2045, time.January, 5, 0, 0, 0, 0, time.UTC)}); err != nil {
		t.Errorf("nineteen years on: %v", err)
	}
}
