package dock_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// TestPlate: fewer in a corner than at an edge, fewer there than in all, and fewer of
// heavier people; at an edge no more than float's own number.
func TestPlate(t *testing.T) {
	for _, demo := range plan.Demos() {
		d, r := swappedDock(t, demo), demoReport(t, demo)
		e, err := r.Envelope()
		if err != nil {
			t.Fatal(err)
		}
		p, err := d.Plate(e)
		if err != nil {
			t.Fatal(err)
		}
		if !(0 < p.Corner && p.Corner <= p.Edge && p.Edge <= p.Aboard) {
			t.Errorf("%s: %+v", demo, p)
		}
		if post := check(t, r, "Everyone together at one edge").Limit; float64(p.Edge) > post {
			t.Errorf("%s: %d at an edge, on the sheet %g", demo, p.Edge, post)
		}
		none, err := d.Plate(nil)
		if err != nil || none.Corner != 0 {
			t.Errorf("%s: without an envelope %d in a corner, %v", demo, none.Corner, err)
		}
	}
	d := swappedDock(t, "swim", `"count": 2, "mass": "185 lb"`, `"count": 2, "mass": "300 lb"`)
	heavy, err := d.Plate(nil)
	if err != nil {
		t.Fatal(err)
	}
	light, err := swappedDock(t, "swim").Plate(nil)
	if err != nil {
		t.Fatal(err)
	}
	if heavy.Aboard >= light.Aboard || heavy.Edge > light.Edge {
		t.Errorf("of 300 lb %+v, of 185 lb %+v", heavy, light)
	}
	if light.Dive || math.Abs(light.Depth-7.5*measure.Foot) > 1e-9 {
		t.Errorf("7 ft 6 in at low water: %+v", light)
	}
	if deep, err := swappedDock(t, "swim", `"depth": "9 ft"`, `"depth": "11 ft"`).Plate(nil); err != nil || !deep.Dive {
		t.Errorf("9 ft 6 in at low water: %+v, %v", deep, err)
	}
}

// TestPlateByLumber: no more people than the even load that the lumber was checked for,
// 5 psf on 24 ft by 10 ft, 1200 lb: six of 185 lb; and no more at an edge than the plan
// has.
func TestPlateByLumber(t *testing.T) {
	for _, key := range []string{`"deck": "40 psf"`, `"flotation": "20 psf"`} {
		name, _, _ := strings.Cut(key, ":")
		p, err := swappedDock(t, "swim", key, name+`: "5 psf"`).Plate(nil)
		if err != nil || p.Aboard != 6 || !strings.Contains(p.Limits[0], "even load") {
			t.Errorf("%s 5 psf: %+v, %v", name, p, err)
		}
	}
	// 660 lb of people in the plan, and float would take four of 185 lb.
	p, err := swappedDock(t, "swim").Plate(nil)
	if err != nil || p.Edge != 3 || !strings.Contains(p.Limits[1], "people of the plan") {
		t.Errorf("%+v, %v", p, err)
	}
}

// crowdedSwim is the swim platform under so many people of 185 lb at one edge, with
// others standing in the middle.
func crowdedSwim(t *testing.T, edge, others int) measure.Check {
	t.Helper()
	swaps := []string{
		`{ "who": "adult", "count": 2, "mass": "185 lb" },
    { "who": "grandparent", "mass": "150 lb" },
    { "who": "child", "count": 2, "mass": "70 lb" }`, fmt.Sprintf(`{ "who": "adult", "count": %d, "mass": "185 lb" }`, edge),
	}
	if others > 0 {
		bench := `{ "name": "bench", "mass": "60 lb", "along": "2 ft", "across": "5 ft", "above": "14 in" }`
		swaps = append(swaps, bench, bench+fmt.Sprintf(`, { "name": "others", "mass": "%d lb", "along": "12 ft", "across": "5 ft", "above": "1 m" }`, 185*others))
	}
	return check(t, reported(t, swappedDock(t, "swim", swaps...), measure.US), "Tilt of the deck with everyone at one edge")
}

// TestPlateTogether: the sign's numbers hold together. By a separate program that slices
// the drums as circles and polygons (independent computation), with four of 185 lb at
// the side of the swim platform others in the middle tilt it further, and twenty of
// them tip it over.
func TestPlateTogether(t *testing.T) {
	for _, c := range []struct {
		others       int
		tilt, within float64 // degrees
	}{{0, 4.76, 0.0051}, {5, 5.2, 0.051}, {10, 5.9, 0.051}, {15, 7.2, 0.051}} {
		if got := crowdedSwim(t, 4, c.others).Value * 180 / math.Pi; !(math.Abs(got-c.tilt) <= c.within) {
			t.Errorf("%d others: %.3f deg, want %g", c.others, got, c.tilt)
		}
	}
	if c := crowdedSwim(t, 4, 20); c.Verdict() != measure.Short || !(c.Value > 0.5) {
		t.Errorf("twenty others: %v", c)
	}

	e, err := demoReport(t, "swim").Envelope()
	if err != nil {
		t.Fatal(err)
	}
	p, err := swappedDock(t, "swim").Plate(e)
	if err != nil {
		t.Fatal(err)
	}
	if c := crowdedSwim(t, p.Edge, p.Aboard-p.Edge); c.Verdict() != measure.Holds {
		t.Errorf("%d aboard, %d at the edge: %v", p.Aboard, p.Edge, c)
	}
}
