package dock_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// table returns invented winters, each with the same weather but for the warmth of
// its spring.
func table(from, to int, warm func(year int) float64) string {
	var b strings.Builder
	b.WriteString("date,temp\n")
	end := time.Date(to, time.February, 1, 0, 0, 0, 0, time.UTC)
	for t := time.Date(from, time.September, 1, 0, 0, 0, 0, time.UTC); t.Before(end); t = t.AddDate(0, 0, 1) {
		mean := 5 - 17*math.Cos(2*math.Pi*float64(t.YearDay()-20)/365.25)
		if t.Month() > time.February && t.Month() < time.July {
			mean += warm(t.Year())
		}
		fmt.Fprintf(&b, "%s,%.1f\n", t.Format(time.DateOnly), mean)
	}
	return b.String()
}

func seasonOf(t *testing.T, d *dock.Dock) *dock.Season {
	t.Helper()
	s, err := d.Season(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestSeasonRemembered: dates alone give dates, wide, and nothing of thickness; their
// mean by hand.
func TestSeasonRemembered(t *testing.T) {
	s := seasonOf(t, swappedDock(t, "swim"))
	if s.Year != 2026 || s.NoOut != nil || s.NoOn != nil || !errors.Is(s.NoOdds, measure.ErrUnknown) || s.Remembers != [2]int{6, 8} || s.Winters != 0 {
		t.Fatalf("%+v", s)
	}
	// 27, 21, 15, 8, 24, 22, 2 and 16 April: the 17th in the mean (16.9).
	if got := s.Out.P50.Format(time.DateOnly); got != "2027-04-17" {
		t.Errorf("ice-out in half of the winters by %s", got)
	}
	if !(s.Out.P10.Before(s.Out.P50) && s.Out.P50.Before(s.Out.P90)) || s.Out.P90.Sub(s.Out.P10) < 16*24*time.Hour {
		t.Errorf("ice-out %v", s.Out)
	}
	if s.On.P50.Year() != 2026 || s.On.P50.Month() != time.December {
		t.Errorf("ice-on %v", s.On)
	}
	four := seasonOf(t, swappedDock(t, "swim", `{ "date": "2022-04-24" }, { "date": "2023-04-22" }, { "date": "2024-04-02" }, { "date": "2026-04-16" }`, `{ "date": "unknown" }`))
	if four.NoOut == nil {
		t.Error("four dates are enough")
	}
	if bare := seasonOf(t, swappedDock(t, "work")); bare.NoOut == nil || bare.NoOn == nil || bare.NoOdds == nil {
		t.Errorf("of nothing: %+v", bare)
	}
}

// TestSeasonRecord: temperatures of past winters give odds, windows and bands; warmer
// springs open the lake earlier.
func TestSeasonRecord(t *testing.T) {
	with := func(warm float64) (*dock.Dock, *dock.Season) {
		t.Helper()
		d, err := swappedDock(t, "swim").WithWinters("winters.csv", strings.NewReader(table(2015, 2027, func(y int) float64 { return warm + float64(y%3) })), season.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return d, seasonOf(t, d)
	}
	d, s := with(0)
	if s.NoOdds != nil || s.Winters < 8 || len(s.Loads) != 4 || len(s.Calendar.Slots) == 0 || len(s.SoFar) < 100 {
		t.Fatalf("%d winters, %d loads, %d slots, %v", s.Winters, len(s.Loads), len(s.Calendar.Slots), s.NoOdds)
	}
	if len(s.Middle) == 0 || len(s.Thin) != len(s.Middle) {
		t.Fatalf("%d days in the band", len(s.Middle))
	}
	for i := range s.Middle {
		if !(s.Thin[i] <= s.Middle[i] && s.Middle[i] <= s.Thick[i]) {
			t.Errorf("%v: %g, %g, %g m", s.First.AddDate(0, 0, i), s.Thin[i], s.Middle[i], s.Thick[i])
		}
	}
	for i := 1; i < len(s.Loads); i++ {
		if s.Loads[i].Need < s.Loads[i-1].Need {
			t.Errorf("%s asks for %g m", s.Loads[i].Load, s.Loads[i].Need)
		}
	}
	// Pieces are carried on the ice that the crew asks for, the dock stands on what it asks for.
	for _, w := range s.Calendar.Slots {
		want := 0.0
		switch {
		case w.Task.Parked:
			want = max(s.Loads[2].Need, s.Loads[3].Need)
		case w.Task.Name == "carry the pieces out":
			want = max(s.Loads[0].Need, s.Loads[1].Need)
		}
		if w.Task.Need != want {
			t.Errorf("%s: on %g m of ice, want %g m", w.Task.Name, w.Task.Need, want)
		}
	}
	_, warm := with(4)
	if !warm.Out.P50.Before(s.Out.P50) {
		t.Errorf("after warm springs ice-out on %v, after others on %v", warm.Out.P50, s.Out.P50)
	}
	r := reported(t, d, measure.SI)
	c := check(t, r, "Time it is planned to stand there")
	if want := s.Out.P90.Sub(time.Date(2027, time.February, 6, 9, 0, 0, 0, time.UTC)).Seconds(); c.Limit != want || !c.Hazard {
		t.Errorf("until a late ice-out %g s, %v", want, c)
	}
	var b bytes.Buffer
	if err := r.WriteText(&b); err != nil {
		t.Fatal(err)
	}
	for _, say := range []string{"for the diary only", "if the window closes early", "film at", "early summer"} {
		if !strings.Contains(strings.Join(strings.Fields(b.String()), " "), say) {
			t.Errorf("the sheet does not say %q", say)
		}
	}
	if _, err := d.WithWinters("bad.csv", strings.NewReader("date,temp\n2020-01-01,99\n"), season.Options{}); err == nil || !strings.Contains(err.Error(), "bad.csv") {
		t.Errorf("a day of 99 °C: %v", err)
	}
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := d.Season(gone); !errors.Is(err, context.Canceled) {
		t.Errorf("given up: %v", err)
	}
}

// TestSeasonSouth: in the south the winter begins in March and its ice goes in the
// same calendar year; a lake that closes about the new year keeps its own year.
func TestSeasonSouth(t *testing.T) {
	south := func(swaps ...string) *dock.Dock {
		swaps = append([]string{`"latitude": "46 deg"`, `"latitude": "-46 deg"`, `"now": "2027-02-06 09:00"`, `"now": "2027-08-06 09:00"`}, swaps...)
		return swappedDock(t, "swim", swaps...)
	}
	var b strings.Builder
	b.WriteString("date,temp\n")
	for day := time.Date(2014, time.March, 1, 0, 0, 0, 0, time.UTC); day.Before(time.Date(2027, time.August, 1, 0, 0, 0, 0, time.UTC)); day = day.AddDate(0, 0, 1) {
		fmt.Fprintf(&b, "%s,%.1f\n", day.Format(time.DateOnly), 5+17*math.Cos(2*math.Pi*float64(day.YearDay()-20)/365.25))
	}
	d, err := south().WithWinters("south.csv", strings.NewReader(b.String()), season.Options{})
	if err != nil {
		t.Fatal(err)
	}
	s := seasonOf(t, d)
	if s.NoOdds != nil || s.Year != 2027 || s.Winters < 10 || s.First.Month() != time.May || len(s.Middle) == 0 {
		t.Fatalf("%d, %d winters, from %v, %v", s.Year, s.Winters, s.First, s.NoOdds)
	}
	if s.Out.P50.Year() != 2027 || s.Out.P50.Month() < time.September || len(s.SoFar) != 153 {
		t.Errorf("ice-out %v, %d days so far", s.Out, len(s.SoFar))
	}
	if !(s.Middle[92] > s.Middle[0]) {
		t.Errorf("%g m in May, %g m in August", s.Middle[0], s.Middle[92])
	}
}

// TestSeasonWithoutIce: where ice does not come in nine winters of ten there is no
// date that the work could be held against.
func TestSeasonWithoutIce(t *testing.T) {
	var b strings.Builder
	b.WriteString("date,temp\n")
	for day := time.Date(2014, time.September, 1, 0, 0, 0, 0, time.UTC); day.Before(time.Date(2027, time.February, 1, 0, 0, 0, 0, time.UTC)); day = day.AddDate(0, 0, 1) {
		fmt.Fprintf(&b, "%s,%.1f\n", day.Format(time.DateOnly), 12-6*math.Cos(2*math.Pi*float64(day.YearDay()-20)/365.25))
	}
	d, err := swappedDock(t, "swim").WithWinters("mild.csv", strings.NewReader(b.String()), season.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r := reported(t, d, measure.US)
	for _, name := range []string{"Time left for the work", "Time it is planned to stand there"} {
		if c := check(t, r, name); c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
			t.Errorf("without ice: %v", c)
		}
	}
}

// TestSeasonLessKnown: a date that is listed and unknown, or a table of temperatures
// of a lake nobody knows the depth of, leaves no verdict, and says what it can.
func TestSeasonLessKnown(t *testing.T) {
	one := check(t, reported(t, swappedDock(t, "swim", `{ "date": "2024-04-02" }`, `{ "date": "unknown" }`), measure.US), "Time left for the work")
	if one.Verdict() != measure.NoAnswer || !strings.Contains(strings.Join(one.Notes, " "), "ice-out, one in ten") {
		t.Errorf("an unknown date: %v", one)
	}
	d, err := swappedDock(t, "swim", `"latitude": "46 deg"`, `"latitude": "unknown"`).WithWinters("w.csv", strings.NewReader(table(2015, 2027, func(int) float64 { return 0 })), season.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if c := check(t, reported(t, d, measure.US), "Time left for the work"); c.Verdict() != measure.NoAnswer {
		t.Errorf("somewhere: %v", c)
	}
}

// TestSeasonNewYear: a lake that closes about the new year does so in the winter that
// is asked for, whichever side the first remembered date lies on.
func TestSeasonNewYear(t *testing.T) {
	for _, first := range []string{"2019-12-28", "2020-01-06"} {
		list := fmt.Sprintf(`"ice_ons": [{ "date": %q }, { "date": "2021-01-03" }, { "date": "2021-12-27" }, { "date": "2023-01-08" }, { "date": "2023-12-30" }], "_note": [`, first)
		s := seasonOf(t, swappedDock(t, "work", `"ice": {`, `"season": {`+list+`"invented"]}, "ice": {`))
		if s.NoOn != nil {
			t.Fatal(s.NoOn)
		}
		want := time.Date(s.Year+1, time.January, 1, 0, 0, 0, 0, time.UTC)
		if off := s.On.P50.Sub(want).Hours() / 24; math.Abs(off) > 4 {
			t.Errorf("first remembered %s: ice-on %v in the winter of %d", first, s.On.P50, s.Year)
		}
	}
}

// TestSeasonHoles: holes of days that the table holds correct the odds, the mean of each
// day by hand; thin ones make the dock's ice less likely.
func TestSeasonHoles(t *testing.T) {
	odds := func(clear string) (*dock.Season, float64) {
		t.Helper()
		hole := func(when, clear string) string {
			return `{ "where": "walk", "when": "` + when + `", "clear": "` + clear + `", "white": "0 in", "gap": "0 in", "snow": "2 in" },`
		}
		d, err := swappedDock(t, "swim", `"holes": [`, `"holes": [`+hole("2027-01-20 09:00", "20 cm")+hole("2027-01-20 10:00", clear)+hole("2027-01-28 10:00", clear)).
			WithWinters("w.csv", strings.NewReader(table(2015, 2027, func(y int) float64 { return float64(y % 3) })), season.Options{})
		if err != nil {
			t.Fatal(err)
		}
		s := seasonOf(t, d)
		for _, o := range s.Loads[len(s.Loads)-1].Days {
			if o.Date.Month() == time.February && o.Date.Day() == 20 {
				return s, o.Carries
			}
		}
		t.Fatal("no such day")
		return nil, 0
	}
	thin, a := odds("10 cm")
	_, b := odds("60 cm")
	if len(thin.Holes) != 2 || math.Abs(thin.Holes[0].Clear-0.15) > 1e-12 || thin.Holes[1].Clear != 0.1 {
		t.Errorf("%+v", thin.Holes)
	}
	if notes := strings.Join(thin.Notes, "; "); !strings.Contains(notes, "corrected by the holes of 2 days") {
		t.Errorf("%q", notes)
	}
	if !(a < b) {
		t.Errorf("the dock's ice on 20 February: %.2f after 10 cm, %.2f after 60 cm", a, b)
	}
}

// TestTimeLeft: two weeks before an early ice-out count no more. By hand: from 9 in the
// morning of 6 February to 4 April are 56.6 days, less 14.
func TestTimeLeft(t *testing.T) {
	c := check(t, demoReport(t, "swim"), "Time left for the work on the ice")
	if days := c.Value / measure.Day; !(days > 42.5 && days < 42.7) {
		t.Errorf("%g days left", days)
	}
}
