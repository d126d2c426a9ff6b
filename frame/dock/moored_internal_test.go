package dock

import (
	"io"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// varied returns the swim platform with replacements in its plan.
func varied(t *testing.T, swap ...string) *Dock {
	t.Helper()
	r, err := plan.Demo("swim")
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	d, err := Read("swim", strings.NewReader(strings.NewReplacer(swap...).Replace(string(b))))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// A current flows where its bearing says: along the dock when it is the dock's own,
// and to the right of it, -y, a quarter turn clockwise. A fitting and a foot stand
// where the marks say, the foot on the bottom.
func TestCurrentAndPlaces(t *testing.T) {
	for _, c := range []struct {
		to   string
		x, y float64 // signs
	}{{"40 deg", 1, 0}, {"130 deg", 0, -1}, {"220 deg", -1, 0}, {"310 deg", 0, 1}} {
		d := varied(t, `"current": "0 mph"`, `"current": "3 mph", "current_to": "`+c.to+`"`, `"wind_speed": "25 mph"`, `"wind_speed": "1 mph"`,
			`"temperature": "72 F",`, `"temperature": "72 F", "wave_height": "0 in",`)
		h, _, err := d.hold()
		if err != nil {
			t.Fatal(err)
		}
		l, err := h.load(false)(0)
		if err != nil {
			t.Fatal(err)
		}
		if l.X*c.x+l.Y*c.y < 50 || math.Abs(l.X*c.y)+math.Abs(l.Y*c.x) > 5 {
			t.Errorf("to %s: %v", c.to, l)
		}
	}
	h, _, err := varied(t).hold()
	if err != nil {
		t.Fatal(err)
	}
	tie := h.Ties[1]
	want := [5]float64{-12, 5, -37.5, 30.5, -9}
	for i, x := range [5]float64{tie.At[0], tie.At[1], tie.Foot[0], tie.Foot[1], tie.FootZ} {
		if math.Abs(x-want[i]*measure.Foot) > 1e-9 {
			t.Errorf("place %d: %g m, want %g ft", i, x, want[i])
		}
	}
	if !h.Ties[0].Line.Shore || math.Abs(h.Ties[0].FootZ-3*measure.Foot) > 1e-9 {
		t.Errorf("pine line %+v", h.Ties[0])
	}
}

// One short line among long ones ends the span of levels of them all.
func TestShortestLineEndsTheSpan(t *testing.T) {
	d := varied(t, `"level_high": "1 ft"`, `"level_high": "6 ft"`, `"depth": "9 ft", "kind": "tested", "mass": "28 lb", "holding": "3600 lbf", "steepest": "20 deg" },
      { "name": "screw 2"`, `"depth": "14 ft", "kind": "tested", "mass": "28 lb", "holding": "3600 lbf", "steepest": "20 deg" },
      { "name": "screw 2"`)
	h, _, err := d.hold()
	if err != nil {
		t.Fatal(err)
	}
	s, err := h.working()
	if err != nil {
		t.Fatal(err)
	}
	low, high := d.bands(h, nil)
	for _, b := range s.bands {
		if low.Value < b.Low || high.Value > b.High {
			t.Errorf("%s works from %g to %g m, all from %g to %g m", b.Tie, b.Low, b.High, low.Value, high.Value)
		}
	}
}

// Wind that pushes across a dock hung on its end's hinge turns it about the pins,
// which take the turn as a couple: the force times half the length over their width.
func TestHingeTakesTheTurn(t *testing.T) {
	pin := func(width string) float64 {
		d := varied(t, `"hinged_to": "nothing"`, `"hinged_to": "float", "hinge": { "edge": "near end", "pins": 2, "width": "`+width+
			`", "diameter": "1 in", "plate": "1/2 in", "height": "12 in", "neighbour_height": "12 in", "pin_breaks": "90000 lbf" }`)
		return d.hinged().Value
	}
	d := varied(t)
	h, _, err := d.hold()
	if err != nil {
		t.Fatal(err)
	}
	l, err := h.load(true)(math.Pi / 2)
	if err != nil {
		t.Fatal(err)
	}
	if couple := l.Y * d.length / 2 / (4 * measure.Foot); !(pin("4 ft") > couple) || pin("4 ft") > 2*couple {
		t.Errorf("the pins take %g N, the couple alone %g N", pin("4 ft"), couple)
	}
	if !(pin("4 ft") > 1.5*pin("8 ft")) {
		t.Errorf("4 ft apart %g N, 8 ft %g N", pin("4 ft"), pin("8 ft"))
	}
}
