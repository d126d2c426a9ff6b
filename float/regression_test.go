package float_test

import (
	"testing"

	"example.org/floewright/float"
)

// The numbers of this file are the package's own, pinned to show a change; they
// are no outside check.
func TestPinned(t *testing.T) {
	p := eight()
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "heel", s.Heel, 0.069926784795, 1e-11)
	near(t, "trim", s.Trim, 0.008995245471, 1e-11)
	near(t, "level", s.Level, 0.238305534991, 1e-11)
	near(t, "GM", s.GM[0][0], 3.96294257301, 1e-9)
	c, err := p.Righting(0, steps(0.5, 51))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "edge under", c.Under.Angle, 0.225973172751, 1e-10)
	near(t, "peak", c.Peak.Lever, 0.339745336024, 1e-10)
	p.Weights = p.Weights[:1]
	post, err := p.Post(float.Crowd{Inset: 0.15})
	if err != nil {
		t.Fatal(err)
	}
	if post.People != 3 {
		t.Errorf("posts %d people, was 3", post.People)
	}
}
