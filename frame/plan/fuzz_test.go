package plan_test

import (
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/plan"
)

// Whatever the file, reading gives a plan or errors with a place, and no number
// of the plan is infinite.
func FuzzRead(f *testing.F) {
	for _, name := range plan.Demos() {
		r, err := plan.Demo(name)
		if err != nil {
			f.Fatal(err)
		}
		b, _ := io.ReadAll(r)
		f.Add(string(b))
	}
	f.Add(small)
	f.Add(`{"name":"x","floats":[{"marks":["1e400 m"]}],"_note":{"a":[1,{"b":null}]}}`)
	f.Fuzz(func(t *testing.T, text string) {
		p, err := plan.Read("f", strings.NewReader(text))
		if err != nil {
			var all plan.Errors
			if !errors.As(err, &all) || len(all) == 0 {
				t.Fatalf("%T has no list of errors", err)
			}
			for i, e := range all {
				if e.At.Line < 1 || e.At.Column < 1 || e.Err == nil {
					t.Fatalf("error without a place: %+v", e)
				}
				if i > 0 && e.At.Line < all[i-1].At.Line {
					t.Fatal("errors out of order")
				}
			}
		}
		if p == nil {
			if err == nil {
				t.Fatal("neither plan nor error")
			}
			return
		}
		for _, q := range []plan.Quantity{p.Frame.Length, p.Frame.Moisture, p.Loads.Deck, p.Site.Temperature, p.Ice.Park} {
			if math.IsInf(q.Value, 0) {
				t.Fatalf("%s is infinite", q.Path)
			}
		}
	})
}
