package float

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// near reports whether two numbers agree to 1e-12 of a metre or so.
func near(a, b float64) bool { return math.Abs(a-b) < 1e-12*(1+math.Abs(b)) }

// TestOutlineL works an L by hand: 4 by 2 with a 1 by 1 notch off its +x +y corner
// has the area 7, its centre at (8·2 - 1·3.5)/7, (8·1 - 1·1.5)/7; seen from the
// middle of its width, y = 1, the upper half is 3 by 1, the lower 4 by 1.
func TestOutlineL(t *testing.T) {
	ring := []r3.Vec{{X: 0, Y: 0, Z: 1}, {X: 4, Y: 0, Z: 1}, {X: 4, Y: 1, Z: 1}, {X: 3, Y: 1, Z: 1}, {X: 3, Y: 2, Z: 1}, {X: 0, Y: 2, Z: 1}}
	reversed := make([]r3.Vec, len(ring))
	for i, c := range ring {
		reversed[len(ring)-1-i] = c
	}
	for _, r := range [][]r3.Vec{ring, reversed} {
		o, err := deckOutline(r)
		if err != nil {
			t.Fatal(err)
		}
		if !near(o.area, 7) || !near(o.centre.X, 12.5/7) || !near(o.centre.Y, 6.5/7) || !near(o.centre.Z, 1) {
			t.Errorf("area %g, centre %+v", o.area, o.centre)
		}
		upper, cu := o.half(1)
		lower, cl := o.half(-1)
		if !near(upper, 3) || !near(lower, 4) || !near(cu.X, 1.5) || !near(cu.Y, 1.5) || !near(cl.X, 2) || !near(cl.Y, 0.5) {
			t.Errorf("halves %g at %+v, %g at %+v", upper, cu, lower, cl)
		}
		spots, err := o.spots(0.1)
		if err != nil {
			t.Fatal(err)
		}
		corners := map[[2]float64]bool{
			{0.1, 0.1}: false, {3.9, 0.1}: false, {3.9, 0.9}: false, {2.9, 0.9}: false, {2.9, 1.9}: false, {0.1, 1.9}: false,
		}
		for _, s := range spots {
			for c := range corners {
				if near(s.X, c[0]) && near(s.Y, c[1]) {
					corners[c] = true
				}
			}
			if s.X < 0.1-1e-12 || s.Y < 0.1-1e-12 || s.X > 2.9+1e-12 && s.Y > 0.9+1e-12 {
				t.Errorf("spot %+v is nearer the edge than 0.1", s)
			}
		}
		for c, seen := range corners {
			if !seen {
				t.Errorf("no spot at %v", c)
			}
		}
		if m := o.middle(1); !near(m.Y, 1) {
			t.Errorf("middle at x 1: %+v", m)
		}
		if m := o.middle(3.5); !near(m.Y, 0.5) {
			t.Errorf("middle at x 3.5: %+v", m)
		}
		if m := o.middle(9); !near(m.Y, o.centre.Y) {
			t.Errorf("middle off the deck: %+v", m)
		}
	}
}

// TestOutlineStraight checks a corner on a straight edge and one named twice.
func TestOutlineStraight(t *testing.T) {
	o, err := deckOutline([]r3.Vec{{}, {X: 1}, {X: 2}, {X: 2, Y: 1}, {X: 2, Y: 1}, {Y: 1}})
	if err != nil || !near(o.area, 2) {
		t.Fatal(o, err)
	}
	spots, err := o.spots(0.2)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range spots {
		if math.IsNaN(s.X+s.Y) || s.X < -1e-9 || s.X > 2+1e-9 || s.Y < -1e-9 || s.Y > 1+1e-9 {
			t.Errorf("spot %+v", s)
		}
	}
}

func TestOutlineRefuses(t *testing.T) {
	for _, ring := range [][]r3.Vec{
		nil,
		{{}, {X: 1}},
		{{}, {X: 1}, {X: 2}},
		{{}, {X: 1, Y: 1}, {X: 1}, {Y: 1}},
		{{}, {X: 4}, {X: 4, Y: 2}, {X: 1, Y: -1}},
		{{}, {X: math.NaN()}, {Y: 1}},
		{{}, {X: 1e5}, {Y: 1}},
	} {
		if o, err := deckOutline(ring); err == nil {
			t.Errorf("%v gave the area %g", ring, o.area)
		}
	}
}

// TestSpotsOblique checks the inset of a deck without right angles: each of its
// corners lies as far as asked from the two edges it belongs to, and none nearer.
func TestSpotsOblique(t *testing.T) {
	o, err := deckOutline([]r3.Vec{{}, {X: 4, Y: -1}, {X: 5, Y: 2}, {X: 2, Y: 3.5}, {X: -0.5, Y: 2}})
	if err != nil {
		t.Fatal(err)
	}
	const inset = 0.2
	spots, err := o.spots(inset)
	if err != nil {
		t.Fatal(err)
	}
	n, exact := len(o.ring), 0
	for _, s := range spots {
		at := 0
		for i := range n {
			a, b := o.ring[i], o.ring[(i+1)%n]
			ux, uy := unit2(a, b)
			d := ux*(s.Y-a.Y) - uy*(s.X-a.X) // from the edge, inward
			if d < inset-1e-12 {
				t.Errorf("spot %+v is %g from edge %d", s, d, i)
			}
			if near(d, inset) {
				at++
			}
		}
		if at == 2 {
			exact++
		}
		if at == 0 {
			t.Errorf("spot %+v is at no edge", s)
		}
	}
	if exact != n {
		t.Errorf("%d spots at two edges, want %d corners", exact, n)
	}
}
