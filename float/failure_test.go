package float_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// TestFailureCheck: a dock that sinks or capsizes is short without a number; one that no
// rest was found for, or nobody knows what of, has no answer.
func TestFailureCheck(t *testing.T) {
	rule := &measure.Source{Title: "a limit"}
	of := measure.Check{Name: "tilt", Kind: measure.Angle, Value: 1, Limit: 2, Rule: rule, Notes: []string{"under a load"}}
	for _, c := range []struct {
		f    *float.Failure
		says string
	}{
		{&float.Failure{Class: float.ErrSinks}, "sinks; must be afloat"},
		{&float.Failure{Class: float.ErrCapsizes}, "capsizes; must be afloat"},
		{&float.Failure{Class: float.ErrNoFloat}, "no float carries it; must be afloat"},
	} {
		got := c.f.Check(of)
		if got.Verdict() != measure.Short || got.Numbers(measure.US) != c.says || got.Rule != rule || got.Name != "tilt" || len(got.Notes) != 1 || !math.IsNaN(got.Ratio()) {
			t.Errorf("%v: %v", c.f, got)
		}
	}
	for _, f := range []*float.Failure{nil, {}, {Class: float.ErrUnsettled}} {
		got := f.Check(of)
		if got.Verdict() != measure.NoAnswer || !math.IsNaN(got.Value) || f != nil && !errors.Is(got.Err, f) {
			t.Errorf("%v: %v", f, got)
		}
	}
}
