package dock_test

import (
	"context"
	"fmt"
	"log"

	"example.org/floewright/lumber/measure"
)

// What a tape measures on the frame before it is nailed: marks and diagonals.
func ExampleDock_Shape() {
	d, err := demoDock("swim")
	if err != nil {
		log.Fatal(err)
	}
	s, err := d.Shape()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("both diagonals", measure.Length.Format(s.Diagonal, measure.US))
	fmt.Println("joist 2 at", measure.Length.Format(s.Marks[1], measure.US))
	f := s.Floats[0]
	fmt.Printf("%s, %s, between joists %d and %d\n", f.Name, f.Bears, f.Bay, f.Bay+1)
	// Output:
	// both diagonals 26 ft
	// joist 2 at 1 ft 8-1/2 in
	// plastic drum, wedged between two joists, between joists 1 and 2
}

// How far the dock heels under everyone at its worst edge, and how far until that
// edge goes under.
func ExampleDock_Righting() {
	d, err := demoDock("swim")
	if err != nil {
		log.Fatal(err)
	}
	r, err := d.Righting()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d people at the %s: %s\n", r.People, r.Edge, measure.Angle.Format(r.AtRest, measure.US))
	fmt.Println("deck edge under at", measure.Angle.Format(r.Wet, measure.US))
	// Output:
	// 5 people at the near side: 4.2 deg
	// deck edge under at 19.8 deg
}

// Which member bends nearest to what its wood takes, and when.
func ExampleEnvelope_Diagram() {
	d, err := demoDock("swim")
	if err != nil {
		log.Fatal(err)
	}
	e, err := d.Envelope(context.Background())
	if err != nil {
		log.Fatal(err)
	}
	g, err := e.Diagram()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s, %s: %s\n", g.Member, g.Situation, g.Check.Words())
	fmt.Println("hogs up to", measure.Moment.Format(g.Hogs, measure.US))
	// Output:
	// joist 1, frozen in at the near side, the water 6 in lower: holds
	// hogs up to 836 lbf·ft
}

// How much line there is from the dock to what holds it, at low and at high water.
func ExampleDock_Lines() {
	d, err := demoDock("swim")
	if err != nil {
		log.Fatal(err)
	}
	l, err := d.Lines()
	if err != nil {
		log.Fatal(err)
	}
	a := l.Leads[1]
	fmt.Printf("%s, made %s: %s at low water, %s at high\n", a.Name, measure.Length.Format(a.Made, measure.US),
		measure.FeetInches(a.At(l.Low), 1), measure.FeetInches(a.At(l.High), 1))
	// Output: shore left, made 40 ft: 37 ft 2 in at low water, 37 ft 11 in at high
}
