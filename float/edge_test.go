package float

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// The stations lie evenly on the line drawn in, corners among them, and the line
// runs around.
func TestEdge(t *testing.T) {
	p := &Platform{Corners: []r3.Vec{{X: -3, Y: -1, Z: 0.2}, {X: 3, Y: -1, Z: 0.2}, {X: 3, Y: 1, Z: 0.2}, {X: -3, Y: 1, Z: 0.2}}}
	e, err := p.edge(0.25)
	if err != nil {
		t.Fatal(err)
	}
	if got := e.length(); math.Abs(got-2*(5.5+1.5)) > 1e-12 {
		t.Errorf("length %v", got)
	}
	s := e.stations()
	if len(s) != 48 {
		t.Fatalf("%d stations", len(s))
	}
	for i, at := range s {
		v := e.at(at)
		step := 5.5 / 12
		want := r3.Vec{X: -2.75 + float64(i)*step, Y: -0.75, Z: 0.2}
		if i >= 12 {
			break
		}
		if r3.Norm(r3.Sub(v, want)) > 1e-12 {
			t.Errorf("station %d at %v, want %v", i, v, want)
		}
	}
	if v := e.at(s[18]); r3.Norm(r3.Sub(v, r3.Vec{X: 2.75, Z: 0.2})) > 1e-12 {
		t.Errorf("the middle of the end at %v", v)
	}
	for _, x := range []float64{1, -3, 7.3} {
		if d := r3.Norm(r3.Sub(e.at(x), e.at(x+2*e.length()))); d > 1e-12 {
			t.Errorf("around from %v: off by %v", x, d)
		}
	}
	if v := e.inward(r3.Vec{X: 0.3, Y: 1.2}); v != (r3.Vec{Y: -1}) {
		t.Errorf("inward from the +y side: %v", v)
	}
	if v := e.inward(r3.Vec{X: -3.1}); v != (r3.Vec{X: 1}) {
		t.Errorf("inward from the -x end: %v", v)
	}

	// A triangle drawn in by d loses 2 √3 d of each side.
	p.Corners = []r3.Vec{{}, {X: 4}, {X: 2, Y: 2 * math.Sqrt(3)}}
	if e, err = p.edge(0.3); err != nil {
		t.Fatal(err)
	}
	if got, want := e.length(), 3*(4-2*math.Sqrt(3)*0.3); math.Abs(got-want) > 1e-12 {
		t.Errorf("triangle of length %v, want %v", got, want)
	}
}
