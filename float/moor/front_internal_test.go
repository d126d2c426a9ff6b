package moor

import (
	"math/rand/v2"
	"testing"

	"example.org/floewright/lumber/measure"
)

// For any ground that a larger pull or lift never helps, the worst of the front
// is at least as bad as the worst of all, and little worse.
func TestFront(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 1))
	for range 200 {
		var f front
		var all []pair
		for range 400 {
			x := rng.Float64()
			p := pair{100 * x, 100 * (1 - x*x) * (0.98 + 0.02*rng.Float64())}
			all = append(all, p)
			f.add(p)
		}
		a, b := rng.Float64(), rng.Float64()
		most := func(ps []pair) float64 {
			m := 0.0
			for _, p := range ps {
				m = max(m, a*p.pull+b*p.lift)
			}
			return m
		}
		got, want := most(f.worst()), most(all)
		if got < want || got > 1.2*want || len(f.worst()) > maxFront+1 {
			t.Fatalf("worst %g, of all %g, of %d pairs", got, want, len(f.worst()))
		}
		for _, p := range all {
			if p.lift/p.pull > f.steepest.lift/f.steepest.pull {
				t.Fatalf("%v is steeper than %v", p, f.steepest)
			}
		}
	}
}

// No answer is worse than short, short than any that holds.
func TestWorse(t *testing.T) {
	rule := &measure.Source{Title: "a rule", Status: measure.OwnChoice}
	unknown := measure.Refuse("unknown", measure.ErrUnknown)
	short := measure.Check{Value: 2, Limit: 1, Rule: rule}
	tight := measure.Check{Value: 0.9, Limit: 1, Rule: rule}
	easy := measure.Check{Value: 0.5, Limit: 1, Rule: rule}
	order := []measure.Check{unknown, short, tight, easy}
	for i, a := range order {
		for j, b := range order {
			if i != j && worse(a, b) != (i < j) {
				t.Errorf("%v worse than %v: %v", a, b, worse(a, b))
			}
		}
	}
	for i := range order {
		s := Survey{Checks: []measure.Check{easy, order[i], easy}}
		if w := s.Worst(); w.Verdict() != order[i].Verdict() || w.Value != order[i].Value && i > 0 {
			t.Errorf("worst %v, want %v", w, order[i])
		}
	}
}
