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
		for _, r := range []string{"18-12-02", "19-11-28", "20-12-09", "21-12-05", "23-12-16", "24-12-03"} { // the demo's diary, half a year on
			swaps = append(swaps, r, strings.Replace(strings.Replace(r, "-11-", "-05-", 1), "-12-", "-06-", 1))
		}
		for _, r := range []string{"18-04-27", "19-04-21", "20-04-15", "21-04-08", "22-04-24", "23-04-22", "24-04-02", "26-04-16"} {
			swaps = append(swaps, r, strings.Replace(r, "-04-", "-10-", 1))
		}
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
	if out := s.Table.Out; out.P50.Year() != 2027 || out.P50.Month() < time.September || len(s.SoFar) != 153 {
		t.Errorf("ice-out %v, %d days so far", out, len(s.SoFar))
	}
	if s.Memory.Out.P50.Month() != time.October || s.Memory.On.P50.Month() != time.June || s.Memory.Out.P50.Year() != 2027 {
		t.Errorf("remembered %v and %v", s.Memory.On, s.Memory.Out)
	}
	// The demo's diary is of the north: there it opens in April before it closes in December.
	north, err := swappedDock(t, "swim", `"latitude": "46 deg"`, `"latitude": "-46 deg"`, `"now": "2027-02-06 09:00"`, `"now": "2027-08-06 09:00"`).WithWinters("south.csv", strings.NewReader(b.String()), season.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"Time left for the work", "Time it is planned"} {
		if c := check(t, reported(t, north, measure.US), name); c.Verdict() != measure.NoAnswer || !strings.Contains(c.Err.Error(), "season.ice_outs[") || !strings.Contains(c.Err.Error(), "season.ice_ons[") {
			t.Errorf("%v", c)
		}
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

// withWinters returns the swim platform, its plan changed, with eleven invented winters
// beside its remembered dates.
func withWinters(t *testing.T, swaps ...string) *dock.Dock {
	t.Helper()
	d, err := swappedDock(t, "swim", swaps...).WithWinters("w.csv", strings.NewReader(table(2015, 2027, func(y int) float64 { return float64(y % 3) })), season.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// outs replaces the remembered dates of ice-out.
func outs(dates ...string) []string {
	list := []string{}
	for _, d := range dates {
		list = append(list, fmt.Sprintf(`{ "date": %q }`, d))
	}
	return []string{`"ice_outs": [`, `"ice_outs": [` + strings.Join(list, ", ") + `], "_note": [`, `"_note": "The camp's invented diary: no such lake has these dates.",`, ``}
}

func said(c measure.Check) string { return strings.Join(c.Notes, "\n") }

// TestSeasonRemembersBesideTable: remembered dates that are earlier than the table's
// shorten the work, later ones lengthen the stay, and the report says which counts.
func TestSeasonRemembersBesideTable(t *testing.T) {
	now := time.Date(2027, time.February, 6, 9, 0, 0, 0, time.UTC)
	d := withWinters(t)
	s := seasonOf(t, d)
	r := reported(t, d, measure.US)
	c, stay := check(t, r, "Time left for the work"), check(t, r, "Time it is planned to stand there")
	early := s.Memory.Out.P10
	if !early.Before(s.Table.Out.P10) || !s.Out.P10.Equal(early) || !s.Out.P90.Equal(s.Table.Out.P90) || !s.Table.Out.P90.After(s.Memory.Out.P90) {
		t.Fatalf("table %v, remembered %v, of both %v", s.Table.Out, s.Memory.Out, s.Out)
	}
	// As without the table: 42.6 days, by hand in TestTimeLeft.
	if want := early.Sub(now).Seconds() - 14*measure.Day; c.Value != want || math.Abs(c.Value/measure.Day-42.6) > 0.1 {
		t.Errorf("%g days left, want %g", c.Value/measure.Day, want/measure.Day)
	}
	if stay.Limit != s.Table.Out.P90.Sub(now).Seconds() {
		t.Errorf("to stand until a late ice-out %g days", stay.Limit/measure.Day)
	}
	for _, say := range []string{
		s.Table.Out.String() + " by the temperatures of 11 winters, " + s.Memory.Out.String() + " by 8 remembered dates; they differ by up to ",
		"the earlier counts", "ask why", "it has come, by this winter's own temperatures", "they count only while no hole of this winter has ice",
	} {
		if !strings.Contains(said(c), say) {
			t.Errorf("it does not say %q:\n%s", say, said(c))
		}
	}
	for _, slot := range s.Calendar.Slots {
		if slot.Task.Need > 0 && slot.Latest.AddDate(0, 0, slot.Task.Days-1+14).After(early) {
			t.Errorf("%v: it ends less than two weeks before %v", slot, early)
		}
	}
	for _, l := range s.Loads {
		if l.Last.P10.After(early) || l.First.P10.Before(s.On.P10) || l.First.P90.Before(s.On.P90) {
			t.Errorf("%s: from %v until %v, ice-on %v, ice-out %v", l.Load, l.First, l.Last, s.On, s.Out)
		}
	}

	// The work step of the dock's own order knows the earlier date.
	if words := strings.Join(strings.Fields(text(t, r)), " "); !strings.Contains(words, "by "+early.AddDate(0, 0, -14).Format(time.DateOnly)+" at the latest, two weeks before the ice is out in one winter of ten") {
		t.Errorf("no step ends before %v", early)
	}

	// Later remembered dates leave the table's early one and lengthen the stay.
	late := seasonOf(t, withWinters(t, outs("2018-06-27", "2019-06-21", "2020-06-25", "2021-06-28", "2022-06-24")...))
	if !late.Out.P10.Equal(late.Table.Out.P10) || !late.Out.P90.Equal(late.Memory.Out.P90) {
		t.Errorf("table %v, remembered %v, of both %v", late.Table.Out, late.Memory.Out, late.Out)
	}

	// An unknown date among them might be the earliest of all.
	if c := check(t, reported(t, withWinters(t, `{ "date": "2024-04-02" }`, `{ "date": "unknown" }`), measure.US), "Time left for the work"); c.Verdict() != measure.NoAnswer {
		t.Errorf("an unknown date beside a table: %v", c)
	}
}

// TestSeasonFewRemembered: fewer than five dates tell nothing; where one lies outside of
// what the table has there is no answer, else the table's, and they are named.
func TestSeasonFewRemembered(t *testing.T) {
	early := check(t, reported(t, withWinters(t, outs("2024-03-02", "2023-04-22")...), measure.US), "Time left for the work")
	if early.Verdict() != measure.NoAnswer || !strings.Contains(early.Err.Error(), "2 Mar 2024, lies outside of what the table") {
		t.Errorf("%v", early)
	}
	s := seasonOf(t, withWinters(t))
	d := withWinters(t, outs("2024-"+s.Table.Out.P50.Format("01-02"))...)
	c, alone := check(t, reported(t, d, measure.US), "Time left for the work"), seasonOf(t, d)
	if c.Verdict() != measure.Holds || !alone.Out.P10.Equal(alone.Table.Out.P10) || !strings.Contains(said(c), "1 remembered date of ice-out is not counted beside the table") {
		t.Errorf("%v\n%s", c, said(c))
	}
	twice := check(t, reported(t, withWinters(t, outs("2024-05-01", "2024-05-01", "2023-05-01", "2022-05-01", "2021-05-01")...), measure.US), "Time it is planned")
	if twice.Verdict() != measure.NoAnswer || !strings.Contains(twice.Err.Error(), "twice") {
		t.Errorf("%v", twice)
	}
}

// TestSeasonBeforeIceOn: in autumn, with no hole in any ice, the time for the work counts
// from the later of the late ice-ons; where none is known there is no answer.
func TestSeasonBeforeIceOn(t *testing.T) {
	bare := []string{`"now": "2027-02-06 09:00"`, `"now": "2026-10-10 09:00"`}
	until := func(day string, swaps ...string) *dock.Dock { // a table that ends on the day of asking
		t.Helper()
		rows, _, ok := strings.Cut(table(2015, 2027, func(y int) float64 { return float64(y % 3) }), day)
		if !ok {
			t.Fatal(day)
		}
		d, err := swappedDock(t, "swim", swaps...).WithWinters("w.csv", strings.NewReader(rows), season.Options{})
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	d := until("2026-10-10", bare...)
	s := seasonOf(t, d)
	c := check(t, reported(t, d, measure.US), "Time left for the work")
	late := s.Table.On.P90
	if s.Memory.On.P90.After(late) {
		late = s.Memory.On.P90
	}
	if want := s.Out.P10.Sub(late).Seconds() - 14*measure.Day; c.Value != want || !strings.Contains(said(c), "counted from "+late.Format(time.DateOnly)) || s.Table.On.P90.Equal(s.Memory.On.P90) {
		t.Errorf("%g days, want %g; ice-on by the table %v, remembered %v", c.Value/measure.Day, want/measure.Day, s.Table.On, s.Memory.On)
	}
	ons := `"ice_ons": [ { "date": "2018-12-02" }, { "date": "2019-11-28" }, { "date": "2020-12-09" }, { "date": "2021-12-05" }, { "date": "2023-12-16" }, { "date": "2024-12-03" } ]`
	january := strings.NewReplacer("2018-12-02", "2019-01-12", "2019-11-28", "2020-01-16", "2020-12-09", "2021-01-19", "2021-12-05", "2022-01-14", "2023-12-16", "2024-01-17", "2024-12-03", "2025-01-15").Replace(ons)
	s = seasonOf(t, until("2026-10-10", append(bare, ons, january)...))
	for _, l := range s.Loads {
		if l.First.P90.Before(s.Memory.On.P90) || l.First.P10.Before(s.Memory.On.P10) {
			t.Errorf("%s: from %v, ice-on as remembered %v", l.Load, l.First, s.Memory.On)
		}
	}
	for _, none := range []string{`"ice_ons": []`, strings.Replace(ons, "2020-12-09", "unknown", 1)} {
		c := check(t, reported(t, swappedDock(t, "swim", append(bare, ons, none)...), measure.US), "Time left for the work")
		if c.Verdict() != measure.NoAnswer || !strings.Contains(c.Err.Error(), "ice_ons") {
			t.Errorf("%s: %v", none, c)
		}
		if c := check(t, reported(t, swappedDock(t, "swim", ons, none), measure.US), "Time left for the work"); c.Verdict() != measure.Holds {
			t.Errorf("%s, with holes in the ice of February: %v", none, c)
		}
	}
}

// TestSeasonTaskNotNow: what would begin today or tomorrow does not where the ice of the
// holes is short for it or tells nothing, and the sheet says why; what begins weeks from
// now keeps its days.
func TestSeasonTaskNotNow(t *testing.T) {
	tasks := func(swaps ...string) []season.Slot {
		t.Helper()
		return seasonOf(t, withWinters(t, swaps...)).Calendar.Slots
	}
	now := time.Date(2027, time.February, 6, 0, 0, 0, 0, time.UTC)
	fine := tasks()
	if s := fine[0]; s.Against != "" || !s.Earliest.Equal(now) {
		t.Errorf("on 20 in of ice: %v", s)
	}
	for _, c := range []struct{ name, old, new, say string }{
		{"a warm spell", `"changed": "no"`, `"changed": "yes"`, `"Ice for one crossing" has no answer on 6 Feb 2027`},
		{"white ice", `"clear": "20 in", "white": "0 in"`, `"clear": "3 in", "white": "2 in"`, `"Ice for one crossing" is short by the holes of 6 Feb 2027: `},
	} {
		all := tasks(c.old, c.new)
		s := all[0]
		if ahead := all[1]; ahead.Earliest.After(now.AddDate(0, 0, 1)) && ahead.Against != "" {
			t.Errorf("%s: %v", c.name, ahead)
		}
		if !s.Earliest.IsZero() || !s.Usual.IsZero() || !strings.Contains(s.Against, c.say) || !strings.Contains(s.String(), "NOT AS THINGS ARE") {
			t.Errorf("%s: %v", c.name, s)
		}
	}
	for i, s := range fine[1:3] {
		if !s.Earliest.IsZero() && !s.Earliest.After(now.AddDate(0, 0, 1)) {
			t.Errorf("%d: %v", i, s)
		}
	}
	if none := seasonOf(t, withWinters(t, `"now": "2027-02-06 09:00"`, `"now": "unknown"`)); none.NoOdds != nil || none.Year != 2026 {
		t.Errorf("asked at no time: %d, %v", none.Year, none.NoOdds)
	}
	if stale := seasonOf(t, withWinters(t, `"now": "2027-02-06 09:00"`, `"now": "2026-02-06 09:00"`)); !errors.Is(stale.NoOdds, measure.ErrRange) || !strings.Contains(stale.NoOdds.Error(), "ice.now") {
		t.Errorf("asked a winter before the table's last: %v", stale.NoOdds)
	}
}
