package plan_test

import (
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber/measure"
)

// tenths draws a number of tenths of a millimetre, or gram, the same on every machine.
func tenths(r *rand.Rand, from, to float64) float64 {
	lo := int(from * 1e4)
	return float64(lo+r.IntN(int(to*1e4)-lo)) / 1e4
}

// TestPinned compares new plans of invented docks with what they were before.
func TestPinned(t *testing.T) {
	pinned.OneMachine(t)
	written := 0
	pinned.Check(t, "new", 300, func(r *rand.Rand) []any {
		s := plan.Start{
			Length: tenths(r, 2, 10), Width: tenths(r, 1.5, 4.5), Girth: tenths(r, 1.2, 2.2), Long: tenths(r, 0.5, 1.1), Mass: tenths(r, 5, 20),
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
