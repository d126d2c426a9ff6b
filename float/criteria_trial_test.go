package float_test

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// TestWhatEndsTheLoad: where the dock turns over under a little more than it carries, the
// check says by how much it then lacks: as much as the dock itself under that load.
func TestWhatEndsTheLoad(t *testing.T) {
	p := &float.Platform{Density: 998, Weights: []float.Weight{{Mass: 300, At: r3.Vec{Z: 0.3}}}}
	for _, x := range []float64{-1.5, 0, 1.5} {
		for _, y := range []float64{-0.35, 0.35} {
			p.Units = append(p.Units, float.Unit{Body: float.Cylinder{Diameter: 0.58, Length: 0.9}, Mass: 10, At: r3.Vec{X: x, Y: y, Z: -0.3}})
		}
	}
	p.Corners = []r3.Vec{{X: -2, Y: -0.9, Z: 0.6}, {X: 2, Y: -0.9, Z: 0.6}, {X: 2, Y: 0.9, Z: 0.6}, {X: -2, Y: 0.9, Z: 0.6}}
	c, err := float.LookupCriterion("20 psf over the deck")
	if err != nil {
		t.Fatal(err)
	}
	check, err := c.Rule(float.Deck{})(p)
	if err != nil || !(check.Value > 0) {
		t.Fatalf("%v, %v", check, err)
	}
	load := func(q float64) float.Weight {
		return float.Weight{Mass: q * 4 * 1.8 / measure.Gravity, At: r3.Vec{Z: 0.6 + c.Above}}
	}
	s, err := p.With(load(check.Value)).Settle()
	if err != nil {
		t.Fatal(err)
	}
	if _, h, err := s.Lowest(); err != nil || h < 0 {
		t.Errorf("under what it carries the lowest corner is at %g m, %v", h, err)
	}
	_, err = p.With(load(check.Value * (1 + 1e-9))).Settle()
	if err == nil {
		t.Fatal("a little more than it carries, and it still rests")
	}
	found := false
	for _, n := range check.Notes {
		found = found || strings.HasPrefix(n, "beyond it: ") && strings.Contains(n, err.Error())
	}
	if !found {
		t.Errorf("no note says %q: %q", err, check.Notes)
	}
}
