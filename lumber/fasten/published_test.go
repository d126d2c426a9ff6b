package fasten_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/floewright/internal/published"
	"example.org/floewright/lumber/measure"
)

func TestPublished(t *testing.T) {
	checks, err := published.Of("lumber/fasten")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range checks {
		t.Run(c.Name(), func(t *testing.T) {
			if err := c.Verify(); err != nil {
				t.Error(err)
			}
		})
	}
}

// Printed cells are met at the table's own rounding step, halves up: 585 exactly
// is printed as 590.
func TestCellsRoundHalvesUp(t *testing.T) {
	checks, err := published.Of("lumber/fasten")
	if err != nil {
		t.Fatal(err)
	}
	cells, status := 0, map[measure.Status]int{}
	for _, c := range checks {
		if !strings.Contains(c.Source.Locator, "Table 1") || c.Step == 0 || !strings.Contains(c.Quantity, "G=") && !strings.Contains(c.Quantity, "Cg D=") {
			continue
		}
		r, err := c.Run()
		if err != nil {
			t.Fatal(err)
		}
		cells++
		status[c.Source.Status]++
		if got := c.Step * math.Floor(r.Computed/c.Step+0.5+1e-9); math.Abs(got-r.Printed) > 1e-9 {
			t.Errorf("%s: %g rounds to %g, printed %s", c.Name(), r.Computed, got, c.Printed)
		}
	}
	want := map[measure.Status]int{measure.Read: 338, measure.Quoted: 71, measure.Memory: 98}
	if diff := cmp.Diff(want, status); diff != "" || cells != 507 {
		t.Errorf("%d cells, by status (-want +got):\n%s", cells, diff)
	}
}
