package dock_test

import (
	"context"
	"math"
	"regexp"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

var people = regexp.MustCompile(`(?s)"people": \[.*?\]`)

// Two people of 185 lb, for whom the frame was checked, are two people on the sign, and
// the report posts the sign's number.
func TestSignCountsThePlan(t *testing.T) {
	for mass, want := range map[string]int{"185 lb": 2, "83.9 kg": 2, "83 kg": 1, "84 kg": 2, "230 lb": 2} {
		text := people.ReplaceAllString(demoText(t, "swim"), `"people": [{ "who": "adult", "count": 2, "mass": "`+mass+`" }]`)
		d, err := dock.Read("test.json", strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		e, err := d.Envelope(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		p, err := d.Plate(e)
		if err != nil {
			t.Fatal(err)
		}
		if p.People != want {
			t.Errorf("%s: %d people of %g kg: %s", mass, p.People, p.Each, p.Limit)
		}
		if mass == "185 lb" && math.Abs(p.Each-185*measure.Pound) > 1e-9 {
			t.Errorf("of %g kg", p.Each)
		}
		c := check(t, reported(t, d, measure.US), "Everyone together")
		if says := "post what the sign says: " + map[int]string{1: "1 person", 2: "2 people"}[want] + " of "; len(c.Notes) == 0 || !strings.HasPrefix(c.Notes[0], says) {
			t.Errorf("%s: %q", mass, c.Notes)
		}
	}
}
