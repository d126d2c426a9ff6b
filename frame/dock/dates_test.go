package dock_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

const (
	workLeft = "Time left for the work"
	stays    = "Time it is planned to stand there"
	lastDay  = "Time on the ice before the last day set for it"
)

// demoOns are the ice-ons of the swim platform's plan.
const demoOns = `"ice_ons": [ { "date": "2018-12-02" }, { "date": "2019-11-28" }, { "date": "2020-12-09" }, { "date": "2021-12-05" }, { "date": "2023-12-16" }, { "date": "2024-12-03" } ]`

// named fails a test unless a check has no answer and its error names all of these.
func named(t *testing.T, what string, c measure.Check, names ...string) {
	t.Helper()
	if c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrRange) {
		t.Errorf("%s: %v", what, c)
		return
	}
	for _, n := range names {
		if !strings.Contains(c.Err.Error(), n) {
			t.Errorf("%s: %q does not name %q", what, c.Err, n)
		}
	}
}

// listed replaces a list of remembered dates.
func listed(list string, dates ...string) []string {
	var of []string
	for _, d := range dates {
		of = append(of, fmt.Sprintf(`{ "date": %q }`, d))
	}
	old := `"` + list + `": [`
	note := map[string]string{"ice_ons": `"latitude"`, "ice_outs": `"mean_depth"`}[list]
	return []string{old, `"_note": [`, `"_note": "The camp's invented diary: no such lake has these dates.",`, ``, note, old + strings.Join(of, ", ") + "], " + note}
}

func walk(t *testing.T, r *dock.Report) dock.Step {
	t.Helper()
	for i, s := range r.Steps {
		if s.Do == "Leave it alone while it breaks free." {
			return r.Steps[i-1]
		}
	}
	t.Fatal("no last walk")
	return dock.Step{}
}

// TestDatesContradict: remembered dates to come, of summer, of one winter, of this one, of
// long ago or in the wrong order leave the season without an answer that names both, with
// a table of temperatures and without, and no date to the last walk out.
func TestDatesContradict(t *testing.T) {
	for _, c := range []struct {
		name  string
		swaps []string
		names []string
	}{
		{"ice-outs to come", listed("ice_outs", "2022-04-27", "2023-04-21", "2024-04-15", "2025-04-08", "2028-04-24"), []string{"season.ice_outs[5].date", "2028-04-24", "2027-02-06"}},
		{"ice-on to come", listed("ice_ons", "2022-12-07", "2023-12-01", "2024-12-05", "2025-12-08", "2027-12-04"), []string{"season.ice_ons[5].date", "2027-12-04", "2027-02-06"}},
		{"of two springs", listed("ice_outs", "2018-04-27", "2018-04-28", "2018-04-29", "2019-04-01", "2019-04-03"), []string{"2018-04-28", "2018-04-27"}},
		{"of one winter in two years", listed("ice_ons", "2019-12-27", "2020-01-03", "2021-12-29", "2022-12-29", "2023-12-29"), []string{"2020-01-03", "2019-12-27"}},
		{"of summer", listed("ice_outs", "2018-07-27", "2019-08-21", "2020-07-15", "2021-08-08", "2022-07-24"), []string{"2018-07-27", "season.latitude"}},
		{"ice-ons in April", listed("ice_ons", "2018-04-02", "2019-04-28", "2020-04-09", "2021-04-05", "2023-04-16"), []string{"season.ice_outs[", "season.ice_ons["}},
		{"ice-ons in April of other winters", listed("ice_ons", "2006-04-02", "2007-04-28", "2008-04-09", "2009-04-05", "2010-04-16"), []string{"season.ice_outs[", "season.ice_ons["}},
		{"open this winter", listed("ice_outs", "2022-04-27", "2023-04-21", "2024-04-15", "2025-04-08", "2027-01-24"), []string{"2027-01-24", "2027-02-06", "ice.now"}},
	} {
		for table, d := range map[string]*dock.Dock{"dates alone": swappedDock(t, "swim", c.swaps...), "with a table": withWinters(t, c.swaps...)} {
			r := reported(t, d, measure.US)
			for _, check2 := range []string{workLeft, stays} {
				named(t, c.name+", "+table, check(t, r, check2), c.names...)
			}
			if s := walk(t, r); !strings.Contains(s.Gates[0], "nobody can say on which day") {
				t.Errorf("%s, %s: the last walk opens on %q", c.name, table, s.Gates)
			}
		}
	}
	old := check(t, reported(t, swappedDock(t, "swim", listed("ice_outs", "1950-04-27", "1951-04-21", "1952-04-15", "1953-04-08", "1954-04-24")...), measure.US), stays)
	named(t, "of long ago", old, "1954-04-24", "2027")
	// What is not known is not north, and not winter.
	for _, swap := range [][]string{{`"latitude": "46 deg"`, `"latitude": "unknown"`}, {`"latitude": "46 deg", `, ``}} {
		if c := check(t, reported(t, swappedDock(t, "swim", swap...), measure.US), stays); c.Verdict() != measure.NoAnswer || !strings.Contains(c.Err.Error(), "season.latitude") {
			t.Errorf("%q: %v", swap, c)
		}
	}
	// Beyond 60 degrees a lake opens in July; one that closed this winter has closed.
	for name, swaps := range map[string][]string{
		"far north":          append(listed("ice_outs", "2018-07-02", "2019-07-05", "2020-06-28", "2021-07-03", "2022-07-01"), `"46 deg"`, `"66 deg"`),
		"closed this winter": {`{ "date": "2018-12-02" }`, `{ "date": "2018-12-02" }, { "date": "2026-12-03" }`},
	} {
		if c := check(t, reported(t, swappedDock(t, "swim", swaps...), measure.US), workLeft); c.Verdict() != measure.Holds {
			t.Errorf("%s: %v", name, c)
		}
	}
}

// TestTableAndNow: days that the table of temperatures has measured after the time of
// asking, or a table of another winter, leave no answer that names both.
func TestTableAndNow(t *testing.T) {
	for now, names := range map[string][]string{
		"2027-01-30 09:00": {"ice.now", "2027-01-30", "2027-01-31"},
		"2025-12-30 09:00": {"ice.now", "2025-12-30", "2027-01-31"},
	} {
		r := reported(t, withWinters(t, `"now": "2027-02-06 09:00"`, `"now": "`+now+`"`, `, { "date": "2026-04-16" }`, ``), measure.US)
		for _, name := range []string{workLeft, stays} {
			named(t, now, check(t, r, name), names...)
		}
	}
	if c := check(t, reported(t, withWinters(t, `"now": "2027-02-06 09:00"`, `"now": "2027-01-31 09:00"`, `"parked": "12 weeks"`, `"parked": "20 weeks"`), measure.US), stays); c.Verdict() != measure.Holds {
		t.Errorf("asked on its last day: %v", c)
	}
	// A record of sixty years ago counts no more than none.
	old := strings.NewReplacer("\n201", "\n195", "\n202", "\n196").Replace(table(2015, 2027, func(int) float64 { return 0 }))
	d, err := swappedDock(t, "swim").WithWinters("old.csv", strings.NewReader(old), season.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if s := seasonOf(t, d); !errors.Is(s.NoOdds, measure.ErrRange) || !strings.Contains(s.NoOdds.Error(), "1967-01-31") || !strings.Contains(s.NoOdds.Error(), "2026") {
		t.Errorf("%v", s.NoOdds)
	}
}

// TestIceGone: on ice that no check has a word against, none stands after an early ice-out
// by the season's own dates, nor in summer; the stay none after a late one, and the last
// walk says that its day is over.
func TestIceGone(t *testing.T) {
	at := func(month string, swaps ...string) string {
		return thick(t, append([]string{"2027-02-", "2027-" + month + "-", `"off_ice_by": "2027-05-15"`, `"off_ice_by": "2027-06-15"`}, swaps...)...)
	}
	none := []string{`"ice_outs": [`, `"_note": [`, `"_note": "The camp's invented diary: no such lake has these dates.",`, ``}
	for _, c := range []struct {
		text, what string
		names      []string // none: the checks hold
	}{
		{at("03"), "in March", nil},
		{at("04"), "after an early ice-out", []string{"ice.now", "2027-04-06", "2027-04-04"}},
		{at("05"), "after a late ice-out", []string{"ice.now", "2027-05-06", "2027-04-04"}},
		{at("05", none...), "in May, no date known", nil},
		{at("07", none...), "in July", []string{"ice.now", "2027-07-06", "season.latitude"}},
		{at("07", append(none, `"46 deg"`, `"unknown"`)...), "in July, somewhere", []string{"ice.now", "2027-07-06", "season.latitude"}},
		{at("07", append(none, `"46 deg"`, `"-46 deg"`, demoOns, `"ice_ons": []`)...), "in July, in the south", nil},
		{at("01", append(none, `"46 deg"`, `"-46 deg"`, demoOns, `"ice_ons": []`)...), "in January, in the south", []string{"ice.now", "2027-01-06"}},
		{at("07", append(none, `"46 deg"`, `"66 deg"`)...), "in July, far north", nil},
		{at("04", `{ "date": "2018-04-27" }, { "date": "2019-04-21" }, { "date": "2020-04-15" }, { "date": "2021-04-08" },`, ``, `, { "date": "2026-04-16" }`, ``), "after the earliest of three", []string{"ice.now", "2027-04-06", "2024-04-02"}},
	} {
		for name, k := range onIceChecks(t, c.text) {
			switch {
			case c.names != nil:
				named(t, c.what+", "+name, k, c.names...)
			case k.Verdict() != measure.Holds:
				t.Errorf("%s: %v", c.what, k)
			}
		}
	}

	may := report(t, at("05"))
	named(t, "in May", check(t, may, stays), "ice.now", "2027-05-06", "2027-04-30")
	if c := check(t, may, workLeft); c.Verdict() != measure.Short || !strings.Contains(said(c), "the last day for it, 2027-03-21, is over on 2027-05-06") {
		t.Errorf("%v\n%s", c, said(c))
	}
	for _, r := range []*dock.Report{may, report(t, at("04"))} {
		if s := walk(t, r); !strings.Contains(s.Gates[0], "2027-03-21, two weeks before the ice is out in one winter of ten, is over on 2027-0") || !strings.Contains(s.Gates[0], "nobody goes out") || strings.Contains(s.Do, "ashore.") {
			t.Errorf("%s: %q", s.Do, s.Gates)
		}
	}
	// Without a time of asking, the winter after the newest date may be long over.
	if s := walk(t, reported(t, swappedDock(t, "swim", `"now": "2027-02-06 09:00"`, `"now": "unknown"`), measure.US)); strings.Contains(s.Gates[0], "2027-03-21") {
		t.Errorf("%q", s.Gates)
	}
	for _, s := range []dock.Step{walk(t, report(t, at("03")))} {
		if !strings.Contains(s.Gates[0], "by 2027-03-21 at the latest") || !strings.HasPrefix(s.Do, "Bring everything") {
			t.Errorf("%s: %q", s.Do, s.Gates)
		}
	}
}

// TestLastDaySet: a day of another winter, or one that is over, is no limit; no time is
// negative.
func TestLastDaySet(t *testing.T) {
	on := func(day string) (*dock.Report, measure.Check) {
		t.Helper()
		r := reported(t, swappedDock(t, "swim", `"off_ice_by": "2027-05-15"`, `"off_ice_by": "`+day+`"`), measure.US)
		return r, check(t, r, lastDay)
	}
	for _, day := range []string{"2030-05-15", "2026-02-10", "2027-09-01", "2026-08-31", "2027-02-05"} {
		r, c := on(day)
		named(t, day, c, "local.off_ice_by", day, "2027-02-06", "ice.now")
		if s := walk(t, r); strings.Contains(s.Gates[0], "well before "+day) || !strings.Contains(s.Gates[0], "local.off_ice_by") || !strings.Contains(s.Gates[0], "2027-03-21") {
			t.Errorf("%s: %q", day, s.Gates)
		}
	}
	// 12 weeks from 9 in the morning of 6 February end on 1 May at 9.
	for day, want := range map[string]measure.Verdict{"2027-02-06": measure.Short, "2027-05-01": measure.Short, "2027-05-02": measure.Holds, "2027-08-31": measure.Holds} {
		_, c := on(day)
		end, err := time.Parse(time.DateOnly, day)
		if err != nil {
			t.Fatal(err)
		}
		left := max(0, end.Sub(time.Date(2027, time.February, 6, 9, 0, 0, 0, time.UTC)).Seconds())
		if c.Verdict() != want || c.Limit != left {
			t.Errorf("%s: %v, want %g s and %v", day, c, left, want)
		}
	}
	if r, _ := on("2027-03-01"); !strings.Contains(walk(t, r).Gates[0], "well before 2027-03-01") {
		t.Errorf("%q", walk(t, r).Gates)
	}
}
