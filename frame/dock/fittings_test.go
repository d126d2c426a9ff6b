package dock_test

import (
	"math"
	"testing"

	"example.org/floewright/lumber/measure"
)

// TestFendersByHand: the swim platform's rowing boat, 480 lb at 1 ft/s, by the berthing
// formula: half of m v², with the water that moves along 1 + 2 x 6 in/4 ft; the fender
// stores k s²/2.
func TestFendersByHand(t *testing.T) {
	r := demoReport(t, "swim")
	energy := 480 * 0.45359237 * 0.3048 * 0.3048 / 2 * (1 + 2*0.5/4)
	k := 1400 * 4.4482216152605 / 0.3048
	if c := check(t, r, "Fender: how far"); math.Abs(c.Value-math.Sqrt(2*energy/k)) > 1e-9 || c.Verdict() != measure.Holds {
		t.Errorf("stroke %v", c)
	}
	if c := check(t, r, "Fender: its push"); math.Abs(c.Value-math.Sqrt(2*energy*k)) > 1e-6 || c.Verdict() != measure.Holds {
		t.Errorf("push %v", c)
	}
	r = report(t, demoText(t, "swim", `"boat": "480 lb"`, `"boat": "6000 lb"`))
	if c := check(t, r, "Fender: how far"); c.Verdict() != measure.Short {
		t.Errorf("three tons against a hose: %v", c)
	}
	r = report(t, demoText(t, "swim", `"boat_comes": "yes"`, `"boat_comes": "no"`))
	if c := check(t, r, "Fender: its push"); c.Verdict() != measure.Holds || c.Value != 0 {
		t.Errorf("no boat: %v", c)
	}
}

// TestLadders: without one there is no way out; a heavier swimmer takes the edge
// lower, and no ladder is no answer for a swimmer on it.
func TestLadders(t *testing.T) {
	edge := func(swap ...string) measure.Check {
		t.Helper()
		return check(t, report(t, demoText(t, "swim", swap...)), "Lowest deck edge above the water with a swimmer")
	}
	light, heavy := edge(), edge(`"count": 2, "mass": "185 lb"`, `"count": 2, "mass": "260 lb"`)
	if !(heavy.Value < light.Value) || light.Verdict() != measure.Holds {
		t.Errorf("the edge at %v under 185 lb, at %v under 260 lb", light.Value, heavy.Value)
	}
	// Of two ladders the one that takes the edge lower counts, wherever it is listed.
	const bench = `{ "name": "bench", "mass": "60 lb"`
	ladder := func(along, across string) string {
		return `{ "name": "swim ladder", "ladder": "yes", "mass": "0.25 lb", "along": "` + along + `", "across": "` + across + `", "above": "0 in" }, `
	}
	corner, middle := ladder("24 ft", "10 ft"), ladder("12 ft", "10 ft")
	worst := edge(bench, corner+bench)
	if !(worst.Value < edge(bench, middle+bench).Value) {
		t.Errorf("the corner's ladder takes the edge to %v", worst)
	}
	for _, both := range []string{corner + middle, middle + corner} {
		if c := edge(bench, both+bench); math.Abs(c.Value-worst.Value) > 1e-4 { // the other one weighs, too
			t.Errorf("of both %v, of the worse %v", c, worst)
		}
	}
	none := report(t, demoText(t, "swim", `"name": "swim ladder", "ladder": "yes"`, `"name": "swim ladder", "ladder": "no"`))
	if c := check(t, none, "Ladders out of the water"); c.Verdict() != measure.Short {
		t.Errorf("no ladder: %v", c)
	}
	if c := check(t, none, "Lowest deck edge above the water with a swimmer"); c.Verdict() != measure.NoAnswer {
		t.Errorf("a swimmer on no ladder: %v", c)
	}
}
