package dock

import (
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// until returns the lines of a table before a day's.
func until(table, day string) string {
	rows, _, _ := strings.Cut(table, day)
	return rows
}

// TestSeasonUnknownNeverImproves: no value that the season rests on makes a check of it
// hold by being unknown, with a table of temperatures or from remembered dates alone,
// and there are as many checks as ever.
func TestSeasonUnknownNeverImproves(t *testing.T) {
	var b strings.Builder
	b.WriteString("date,temp\n")
	for day := time.Date(2015, time.September, 1, 0, 0, 0, 0, time.UTC); day.Year() < 2027; day = day.AddDate(0, 0, 1) {
		fmt.Fprintf(&b, "%s,%.1f\n", day.Format(time.DateOnly), 5-17*math.Cos(2*math.Pi*float64(day.YearDay()-20-day.Year()%4)/365.25))
	}
	paths := []string{"season.latitude", "season.mean_depth", "ice.now", "ice.parked"}
	for i := range 8 {
		paths = append(paths, fmt.Sprintf("season.ice_outs[%d].date", i+1))
	}
	for i := range 6 {
		paths = append(paths, fmt.Sprintf("season.ice_ons[%d].date", i+1))
	}
	demo, err := plan.Demo("swim")
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(demo)
	if err != nil {
		t.Fatal(err)
	}
	for _, now := range []string{"2026-11-10 09:00", "2026-12-12 09:00", "2027-02-06 09:00", "2027-03-30 09:00", "2027-04-20 09:00"} {
		p, err := plan.Read("swim", strings.NewReader(strings.Replace(string(text), `"now": "2027-02-06 09:00"`, `"now": "`+now+`"`, 1)))
		if err != nil {
			t.Fatal(err)
		}
		for _, winters := range []bool{false, true} {
			checks := func(p *plan.Plan) []measure.Check {
				d := build(p)
				if winters {
					if d, err = d.WithWinters("w.csv", strings.NewReader(until(b.String(), now[:10])), season.Options{}); err != nil {
						t.Fatal(err)
					}
				}
				return d.seasonChecks()
			}
			given := checks(p)
			for _, path := range paths {
				q, err := p.Vary(path, "unknown")
				if err != nil {
					t.Fatal(err)
				}
				after := checks(q)
				if len(after) != len(given) {
					t.Fatalf("%s unknown: %d checks, %d before", path, len(after), len(given))
				}
				for i, c := range given {
					if c.Name != after[i].Name || c.Verdict() != measure.Holds && after[i].Verdict() == measure.Holds {
						t.Errorf("%s, table %v, %s unknown: %v, was %v", now, winters, path, after[i], c)
					}
				}
			}
		}
	}
}
