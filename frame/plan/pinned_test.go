package plan_test

import (
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber/measure"
)

// TestPinned compares new plans of invented docks with what they were before.
func TestPinned(t *testing.T) {
	written := 0
	pinned.Check(t, "new", 300, func(r *rand.Rand) []any {
		s := plan.Start{
			Length: 2 + 8*r.Float64(), Width: 1.5 + 3*r.Float64(), Girth: 1.2 + r.Float64(), Long: 0.5 + 0.6*r.Float64(), Mass: 5 + 15*r.Float64(),
			Units: []measure.System{measure.US, measure.SI}[r.IntN(2)],
		}
		if r.IntN(12) == 0 {
			s.Girth, s.Long, s.Mass = 0, 0, 0
		}
		if r.IntN(2) == 0 {
			s.Drums = 1 + r.IntN(16)
		}
		text, err := plan.New(s)
		if err != nil {
			return []any{err.Error()} // the message says how many there is room for
		}
		written++
		return []any{string(text)}
	})
	if written < 150 {
		t.Errorf("only %d were written", written)
	}
}
