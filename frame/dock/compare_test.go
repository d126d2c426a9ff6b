package dock_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// TestCompare: each answer is the report's own; a dock beside itself is the same; a
// wider dock tilts less.
func TestCompare(t *testing.T) {
	swim := demoReport(t, "swim")
	wide := report(t, demoText(t, "swim", `"width": "10 ft"`, `"width": "12 ft"`, `"marks": ["21-5/8 in", "5 ft", "8 ft 2-3/8 in"]`, `"marks": ["21-5/8 in", "6 ft", "10 ft 2-3/8 in"]`))
	c := dock.Compare(swim, wide, swim)
	if len(c.Names) != 3 || len(c.Rows) < 10 {
		t.Fatalf("%d docks, %d questions", len(c.Names), len(c.Rows))
	}
	for _, row := range c.Rows {
		a, b := row.Answers[0], row.Answers[2]
		if a.Value != b.Value || a.Note != b.Note || (a.Err == nil) != (b.Err == nil) {
			t.Errorf("%s: %+v beside itself %+v", row.Question, a, b)
		}
		for _, x := range row.Answers {
			if math.IsNaN(x.Value) || x.Err == nil && row.Question == "" {
				t.Errorf("%s: %+v", row.Question, x)
			}
		}
		switch row.Question {
		case "Tilt, everyone at one edge":
			if !(row.Answers[1].Value < a.Value) {
				t.Errorf("twelve feet wide it tilts %g, ten feet wide %g", row.Answers[1].Value, a.Value)
			}
			if want := check(t, swim, "Tilt of the deck with everyone").Value; a.Value != want {
				t.Errorf("tilt %g, in the report %g", a.Value, want)
			}
		case "Weight":
			if !(row.Answers[1].Value > a.Value) {
				t.Errorf("weights %v", row.Answers)
			}
		case "Checks that are short":
			n := 0
			for _, topic := range swim.Topics {
				for _, k := range topic.Checks {
					if k.Verdict() == measure.Short {
						n++
					}
				}
			}
			if a.Value != float64(n) {
				t.Errorf("%g are short, in the report %d", a.Value, n)
			}
		}
	}
	var text, table bytes.Buffer
	if err := c.WriteText(&text); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(text.String(), "\n") {
		if len([]rune(line)) > 80 {
			t.Errorf("too long: %s", line)
		}
	}
	if err := c.WriteCSV(&table); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&table).ReadAll()
	if err != nil || len(rows) != len(c.Rows)+1 || len(rows[0]) != 2+2*3 {
		t.Errorf("%d rows, %v", len(rows), err)
	}
	none := dock.Compare(nil, &dock.Report{})
	for _, row := range none.Rows {
		if row.Answers[0].Err == nil {
			t.Errorf("no report answers %q", row.Question)
		}
	}
	if err := dock.Compare().WriteText(&text); err != nil {
		t.Error(err)
	}
}

// Two docks side by side, both invented.
func ExampleCompare() {
	var reports []*dock.Report
	for _, name := range plan.Demos() {
		in, err := plan.Demo(name)
		if err != nil {
			fmt.Println(err)
			return
		}
		d, err := dock.Read(name, in)
		if err != nil {
			fmt.Println(err)
			return
		}
		r, err := d.Report(context.Background(), measure.US)
		if err != nil {
			fmt.Println(err)
			return
		}
		reports = append(reports, r)
	}
	c := dock.Compare(reports...)
	c.Rows = c.Rows[1:3] // the first questions
	if err := c.WriteText(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// A  Otter Point camp swim platform (invented)
	// B  Yard work float (invented)
	//
	// Weight
	//    A  2849 lb
	//    B  2122 lb
	// Deck over water, nobody aboard
	//    A  1 ft 7-7/16 in
	//    B  1 ft 10-3/4 in
}
