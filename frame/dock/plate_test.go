package dock_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// TestPlate: no more than float's own number, nor than the plan's people, fewer of
// heavier people, none without an envelope, and people are grown.
func TestPlate(t *testing.T) {
	plate := func(demo string, swaps ...string) *dock.Plate {
		t.Helper()
		d := swappedDock(t, demo, swaps...)
		e, err := d.Envelope(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		p, err := d.Plate(e)
		if err != nil {
			t.Fatal(err)
		}
		none, err := d.Plate(nil)
		if err != nil || none.People != 0 {
			t.Errorf("%s: without an envelope %d, %v", demo, none.People, err)
		}
		if none.Each != p.Each || none.Dive != p.Dive {
			t.Errorf("%+v, %+v", none, p)
		}
		return p
	}
	for _, demo := range plan.Demos() {
		p := plate(demo)
		if post := check(t, demoReport(t, demo), "Everyone together at one edge").Limit; !(0 < p.People && float64(p.People) <= post) {
			t.Errorf("%s: %d, on the sheet %g", demo, p.People, post)
		}
	}
	// 660 lb of people in the plan, and float would take four of 185 lb.
	light := plate("swim")
	if light.People != 3 || !strings.Contains(light.Limit, "people of the plan") {
		t.Errorf("%+v", light)
	}
	if heavy := plate("swim", `"count": 2, "mass": "185 lb"`, `"count": 2, "mass": "300 lb"`); heavy.People >= light.People || math.Abs(heavy.Each-300*measure.Pound) > 1e-9 {
		t.Errorf("of 300 lb %+v, of 185 lb %+v", heavy, light)
	}
	// Ten children of 70 lb are 700 lb, three grown people.
	children := plate("swim", family, `{ "who": "child", "count": 10, "mass": "70 lb" }`)
	if children.People != 3 || math.Abs(children.Each-84) > 0.1 {
		t.Errorf("of children %+v", children)
	}
	if light.Dive || math.Abs(light.Depth-7.5*measure.Foot) > 1e-9 {
		t.Errorf("7 ft 6 in at low water: %+v", light)
	}
	if deep := plate("swim", `"depth": "9 ft"`, `"depth": "11 ft"`); !deep.Dive {
		t.Errorf("9 ft 6 in at low water: %+v", deep)
	}
}

// TestPlateHolds: so many people at an edge, alone on the dock, hold by the sheet's own
// checks, the frame bending, in every corner too.
func TestPlateHolds(t *testing.T) {
	d := swappedDock(t, "swim")
	e, err := d.Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	p, err := d.Plate(e)
	if err != nil {
		t.Fatal(err)
	}
	r := crowdedSwim(t, p.People, 0)
	for _, name := range []string{"Tilt of the deck with everyone at one edge", "Lowest deck edge above the water with everyone at one edge", "Lowest deck corner with everyone"} {
		if c := check(t, r, name); c.Verdict() != measure.Holds {
			t.Errorf("%d people: %v", p.People, c)
		}
	}
}

const family = `{ "who": "adult", "count": 2, "mass": "185 lb" },
    { "who": "grandparent", "mass": "150 lb" },
    { "who": "child", "count": 2, "mass": "70 lb" }`

// crowdedSwim is the report of the swim platform under so many people of 185 lb at one
// edge, with others standing in the middle.
func crowdedSwim(t *testing.T, edge, others int) *dock.Report {
	t.Helper()
	swaps := []string{family, fmt.Sprintf(`{ "who": "adult", "count": %d, "mass": "185 lb" }`, edge)}
	if others > 0 {
		bench := `{ "name": "bench", "mass": "60 lb", "along": "2 ft", "across": "5 ft", "above": "14 in" }`
		swaps = append(swaps, bench, bench+fmt.Sprintf(`, { "name": "others", "mass": "%d lb", "along": "12 ft", "across": "5 ft", "above": "1 m" }`, 185*others))
	}
	return reported(t, swappedDock(t, "swim", swaps...), measure.US)
}

// TestOthersAboard: why the sign has one number. By a separate program that slices the
// drums as circles and polygons (independent computation), with four of 185 lb at the
// side of the swim platform others in the middle tilt it further, and twenty of them
// tip it over.
func TestOthersAboard(t *testing.T) {
	const tilt = "Tilt of the deck with everyone at one edge"
	for _, c := range []struct {
		others       int
		tilt, within float64 // degrees
	}{{0, 4.76, 0.0051}, {5, 5.2, 0.051}, {10, 5.9, 0.051}, {15, 7.2, 0.051}} {
		if got := check(t, crowdedSwim(t, 4, c.others), tilt).Value * 180 / math.Pi; !(math.Abs(got-c.tilt) <= c.within) {
			t.Errorf("%d others: %.3f deg, want %g", c.others, got, c.tilt)
		}
	}
	if c := check(t, crowdedSwim(t, 4, 20), tilt); c.Verdict() != measure.Short || c.Numbers(measure.US) != "capsizes; must be afloat" {
		t.Errorf("twenty others: %v", c)
	}
}
