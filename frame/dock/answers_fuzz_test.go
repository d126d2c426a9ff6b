package dock_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// FuzzWinters: whatever table of past winters is given, it is refused by name and line or
// the dock takes it, and another table leaves the first dock as it was.
func FuzzWinters(f *testing.F) {
	var b strings.Builder
	fmt.Fprintln(&b, "date,high,low")
	for d := time.Date(2023, 8, 1, 0, 0, 0, 0, time.UTC); d.Year() < 2024; d = d.AddDate(0, 0, 1) {
		mean := 6 - 16*math.Cos(2*math.Pi*(float64(d.YearDay())-20)/365)
		fmt.Fprintf(&b, "%s,%.1f,%.1f\n", d.Format(time.DateOnly), mean+4, mean-4)
	}
	f.Add(b.String(), false, 3)
	f.Add("date,temp\n2026-01-01,99\n", true, 0)
	f.Add("", false, -1)
	d, err := dock.Read("swim", strings.NewReader(demoText(f, "swim")))
	if err != nil {
		f.Fatal(err)
	}
	before := d.Fingerprint()
	f.Fuzz(func(t *testing.T, table string, fahrenheit bool, gap int) {
		o := season.Options{Fahrenheit: fahrenheit, MaxGap: gap}
		with, err := d.WithWinters("winters.csv", strings.NewReader(table), o)
		_, read := season.ReadCSV("winters.csv", strings.NewReader(table), o)
		if (err == nil) != (read == nil) {
			t.Fatalf("%v, and by itself %v", err, read)
		}
		if err != nil {
			if with != nil || !strings.HasPrefix(err.Error(), "winters.csv") {
				t.Fatalf("no name and line: %v", err)
			}
			return
		}
		if with == d || d.Fingerprint() != before || with.Fingerprint() != before {
			t.Fatal("the dock itself was changed")
		}
	})
}

// FuzzAnswers: from any demo with one value varied come a sign for no more than the plan's
// people, a diagram of the worst member or an error, JSON that reads back and a table
// of comparison with a column for each dock.
func FuzzAnswers(f *testing.F) {
	f.Add(true, "loads.people", "9")
	f.Add(false, "frame.length", "31 ft")
	f.Add(true, "frame.joists.size", "2x4")
	f.Fuzz(func(t *testing.T, swim bool, path, value string) {
		name := "work"
		if swim {
			name = "swim"
		}
		p, err := plan.Read(name, strings.NewReader(demoText(t, name)))
		if err != nil {
			t.Fatal(err)
		}
		if p, err = p.Vary(path, value); err != nil {
			return
		}
		d, err := dock.Build(p)
		if err != nil {
			return
		}
		r := reported(t, d, measure.US)
		sound(t, r)
		e, err := r.Envelope()
		if err == nil {
			if g, err := e.Diagram(); err == nil && (g.Member == "" || math.IsNaN(g.Length)) {
				t.Fatalf("%+v", g)
			}
		}
		alone, err1 := d.Envelope(context.Background())
		if (err1 == nil) != (err == nil) || err == nil && len(alone.Situations) != len(e.Situations) {
			t.Fatalf("%v, and by itself %v", err, err1)
		}
		aboard := 0
		for _, group := range p.People {
			aboard += group.Count.Value
		}
		if sign, err := d.Plate(e); err == nil && (sign.People < 0 || sign.People > aboard || !(sign.Each > 0) || sign.Limit == "") {
			t.Fatalf("%+v, of %d in the plan", sign, aboard)
		}
		short, open := 0, 0
		for _, topic := range r.Topics {
			worst := topic.Worst()
			for _, c := range topic.Checks {
				switch c.Verdict() {
				case measure.Short:
					short++
					if worst.Verdict() != measure.Short {
						t.Fatalf("%s: %v is worse than %v", topic.Title, c, worst)
					}
				case measure.NoAnswer:
					open++
				}
			}
		}
		if (r.Status() == dock.SomeShort) != (short > 0) || short == 0 && open > 0 && r.Status() == dock.AllHold {
			t.Fatalf("%v with %d short and %d open", r.Status(), short, open)
		}
		for _, h := range r.Twelve {
			if len(h.Checks) > 0 && h.Verdict() != h.Checks[0].Verdict() {
				t.Fatalf("%s: %v, the worst is %v", h.Name, h.Verdict(), h.Checks[0])
			}
		}
		b, err := r.MarshalJSON()
		var back map[string]any
		if err != nil || json.Unmarshal(b, &back) != nil || bytes.Contains(b, []byte("NaN")) {
			t.Fatalf("%v: %.200s", err, b)
		}
		var table bytes.Buffer
		if err := dock.Compare(r, nil, r).WriteCSV(&table); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(&table).ReadAll()
		if err != nil || len(rows) < 5 {
			t.Fatalf("%d rows, %v", len(rows), err)
		}
	})
}

// FuzzLead: a line is no shorter than it reaches, and a plan of boards can save no more
// than all it costs.
func FuzzLead(f *testing.F) {
	f.Add(3.0, 1.0, -2.0, 0.3, 120.0, 100.0)
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Add(math.NaN(), math.Inf(1), 5e-324, -1.0, math.NaN(), 1e300)
	f.Add(1.0, 1.0, 1.0, 1.0, -5.0, 90.0)
	f.Fuzz(func(t *testing.T, x, y, z, rise, cost, bound float64) {
		l := dock.Lead{Foot: [3]float64{x, y, z}}
		d := l.At(rise)
		if sum := math.Abs(x) + math.Abs(y) + math.Abs(z) + math.Abs(rise); sum < 1e100 {
			if !(d <= sum*(1+1e-12)) || d < math.Hypot(x, y)*(1-1e-12) {
				t.Fatalf("%+v lies %g m apart", l, d)
			}
		}
		c := dock.Cutting{Cost: cost, Bound: bound}
		if g := c.Gap(); !(g >= 0 && g <= 1) {
			t.Fatalf("%+v may save %g", c, g)
		}
		if w := (dock.Topic{}).Worst(); w.Verdict() != measure.NoAnswer || errors.Is(w.Err, context.Canceled) {
			t.Fatalf("nothing is worst: %v", w)
		}
	})
}
