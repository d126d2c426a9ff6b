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
	pinned.OneMachine(t)
	written := 0
	pinned.Check(t, "new", 300, func(r *rand.Rand) []any {
		s := plan.Start{
			Length: pinned.Tenths(r, 2, 10), Width: pinned.Tenths(r, 1.5, 4.5), Girth: pinned.Tenths(r, 1.2, 2.2), Long: pinned.Tenths(r, 0.5, 1.1), Mass: pinned.Tenths(r, 5, 20),
			Units: []measure.System{measure.US, measure.SI}[r.IntN(2)],
		}
		if r.IntN(12) == 0 {
			s.Girth, s.Long, s.Mass = 0, 0, 0
		}
		if r.IntN(2) == 0 {
			s.Drums = 1 + r.IntN(16)
		}
		text, err := s.JSON()
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
