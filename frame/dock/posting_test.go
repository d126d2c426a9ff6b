package dock_test

import (
	"math"
	"testing"

	"example.org/floewright/lumber/measure"
)

// TestUnderside: rims that reach two inches below the joists bring the frame's
// underside down by as much, and by what they weigh.
func TestUnderside(t *testing.T) {
	under := func(rim string) float64 {
		t.Helper()
		return check(t, report(t, demoText(t, "swim", `"rims": { "size": "2x10"`, `"rims": { "size": "`+rim+`"`)), "Water to the frame's underside").Value / measure.Inch
	}
	if flush, deep := under("2x8"), under("2x10"); flush-deep < 2 || flush-deep > 2.5 {
		t.Errorf("%g in over the water with rims as deep as the joists, %g in with deeper ones", flush, deep)
	}
}

// TestPosting: as many as hold and one more break a limit; fewer of heavier people.
func TestPosting(t *testing.T) {
	post := func(swap ...string) measure.Check {
		t.Helper()
		return check(t, report(t, demoText(t, "swim", swap...)), "Everyone together at one edge")
	}
	c := post()
	if c.Verdict() != measure.Holds || c.Value != 4 { // 660 lb are as heavy as 3.6 of 185 lb
		t.Errorf("the family: %v", c)
	}
	heavy := post(`"count": 2, "mass": "185 lb"`, `"count": 2, "mass": "370 lb"`)
	if heavy.Limit >= c.Limit {
		t.Errorf("%g of 370 lb, %g of 185 lb", heavy.Limit, c.Limit)
	}
	crowd := post(`"count": 2, "mass": "185 lb"`, `"count": 12, "mass": "185 lb"`)
	if crowd.Verdict() != measure.Short || crowd.Limit != c.Limit {
		t.Errorf("a dozen: %v", crowd)
	}
}

// TestLeaking: a float full of water lets the edge down and tilts the deck, the more the
// fewer floats there are.
func TestLeaking(t *testing.T) {
	r := demoReport(t, "swim")
	sound, leaks := check(t, r, "Lowest deck edge above the water under"), check(t, r, "Lowest deck edge above the water with everyone spread")
	few := check(t, report(t, demoText(t, "swim", `"bays": [1, 3, 5, 9, 11, 13]`, `"bays": [1, 5, 9, 13]`)), "Lowest deck edge above the water with everyone spread")
	if !(few.Value < leaks.Value) || !(leaks.Value > 0) || !(sound.Value > 0) {
		t.Errorf("edge %g m with one of eighteen full, %g m with one of twelve", leaks.Value, few.Value)
	}
	// By a separate program that slices the drums (independent computation): 9.7 in at the
	// edge with everyone at the side where the drum is full.
	edge := check(t, r, "Lowest deck edge above the water with everyone at one edge and one float")
	if got := edge.Value / measure.Inch; math.Abs(got-9.7) > 0.06 {
		t.Errorf("edge %g in", got)
	}
}
