package season_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// What is filled in across a gap lies on the straight line between its ends.
func TestFilledMeans(t *testing.T) {
	const text = "date,mean\n2027-01-01,0\n2027-01-04,-6\n"
	r, err := season.ReadCSV("gap.csv", strings.NewReader(text), season.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Days) != 4 {
		t.Fatalf("%d days: %+v", len(r.Days), r.Gaps)
	}
	for i, d := range r.Days {
		if want := time.Date(2027, 1, 1+i, 0, 0, 0, 0, time.UTC); !d.Date.Equal(want) || math.Abs(d.Mean+2*float64(i)) > 1e-12 || d.Filled != (i == 1 || i == 2) {
			t.Errorf("%+v", d)
		}
	}
}

// Air hotter than any is taken for degrees Fahrenheit that were not declared; water
// that no cloud holds is not.
func TestFahrenheitGuessed(t *testing.T) {
	for text, want := range map[string]bool{
		"date,high,low\n2027-07-01,95,71\n":        true,
		"date,high,low\n2027-07-01,-2,-95\n":       false,
		"date,mean,rain_mm\n2027-07-01,12,90000\n": false,
	} {
		_, err := season.ReadCSV("hot.csv", strings.NewReader(text), season.Options{})
		if err == nil || strings.Contains(err.Error(), "°F must be declared") != want {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Dates about the turn of the year are days apart, not a year; dates months apart are
// refused with how far they spread.
func TestDatesAboutNewYear(t *testing.T) {
	day := func(year, month, day int) time.Time {
		return time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	}
	g, err := season.FromDates([]time.Time{day(2020, 12, 28), day(2022, 1, 4), day(2022, 12, 30), day(2024, 1, 2), day(2024, 12, 31)}, 2027)
	if err != nil || !(g.SD < 4) {
		t.Errorf("%+v, %v", g, err)
	}
	apart := []time.Time{day(2020, 1, 1), day(2021, 3, 1), day(2022, 5, 1), day(2023, 6, 1), day(2024, 5, 20)}
	_, err = season.FromDates(apart, 2027)
	var e *measure.Error
	if !errors.As(err, &e) || !errors.Is(err, measure.ErrRange) {
		t.Fatal(err)
	}
	// Days of the year 1, 60, 121, 152, 141: mean 95, deviation 63.5.
	if got := e.Value / measure.Day; math.Abs(got-63.5) > 0.5 {
		t.Errorf("%g days", got)
	}
}

// A rule without an upper figure gives no thickness, not even without frost.
func TestRuleWithoutABound(t *testing.T) {
	for _, frost := range []float64{0, 300} {
		if lo, hi, err := (season.Rule{Lo: 0.5, Hi: math.Inf(1)}).Thickness(frost); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%g to %g, %v", lo, hi, err)
		}
	}
}
