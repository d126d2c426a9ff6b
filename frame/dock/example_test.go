package dock_test

import (
	"context"
	"fmt"
	"log"
	"os"
	"strings"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

func Example() {
	file, err := plan.Demo("swim") // or os.Open of your own plan
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := dock.Read("swim.json", file)
	if err != nil {
		fmt.Println(err) // every mistake of the plan, each with its line
		return
	}
	r, err := d.Report(context.Background(), measure.US)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, topic := range r.Topics {
		for _, c := range topic.Checks {
			if strings.HasPrefix(c.Name, "Tilt") {
				fmt.Printf("%s: %s: %s\n", c.Name, c.Numbers(measure.US), c.Words())
			}
		}
	}
	fmt.Println("exit status", int(r.Status()))
	// Output:
	// Tilt of the deck with everyone at one edge: 4.2 deg, at most 5.0 deg: holds
	// Tilt of the deck with everyone spread and one float full of water: 1.2 deg, at most 5.0 deg: holds
	// exit status 1
}

// The worst of everything: what governs the rims and joists of the embedded swim
// platform, and which float pushes most.
func ExampleDock_Envelope() {
	r, err := plan.Demo("swim")
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := dock.Read("swim", r)
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := d.Envelope(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	rim := e.Members[len(e.Members)-1]
	fmt.Printf("%s: %s\n", rim.Name, measure.Moment.Format(rim.Sag.Value, measure.US))
	fmt.Println(e.Situations[rim.Sag.Situation].Name)
	most := e.Bearings[0]
	for _, b := range e.Bearings {
		if b.Push.Value > most.Push.Value*1.001 {
			most = b
		}
	}
	fmt.Printf("%s, %s: %s\n", most.Name, most.On, measure.Force.Format(most.Push.Value, measure.US))
	fmt.Println(e.Situations[most.Push.Situation].Name)
	// Output:
	// far rim: 2753 lbf·ft
	// afloat, everyone at the middle of the far side
	// plastic drum at 8 ft 2-7/8 in along, 1 ft 9-5/8 in across, wedged between two joists: 1772 lbf
	// on ice or blocks under snow, 1/2 in low: plastic drum at 15 ft 9-1/8 in along, 1 ft 9-5/8 in across
}

// What to buy to hold the embedded swim platform together. Its plan does not say yet
// what screws go through the boards.
func ExampleDock_Hardware() {
	r, err := plan.Demo("swim")
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := dock.Read("swim", r)
	if err != nil {
		fmt.Println(err)
		return
	}
	_, buy, err := d.Hardware()
	for _, i := range buy {
		fmt.Println(i.Count, i.What)
	}
	fmt.Println("open:", err)
	// Output:
	// 493 10d common nail, 3 in long, hot-dip galvanized A153
	// 31 hanger, galvanized sheet G185
	// 40 tie of strap for plastic drum
	// open: frame.decking.screw: not known; want it in the plan
}

// The number of people on the dock's sign: how many may be aboard wherever they stand, and
// what stops one more.
func ExampleDock_Plate() {
	file, err := plan.Demo("swim") // or os.Open of your own plan
	if err != nil {
		log.Fatal(err)
	}
	d, err := dock.Read("mydock.json", file) // every mistake of the plan, with line and column
	if err != nil {
		log.Fatal(err)
	}
	envelope, err := d.Envelope(context.Background()) // the frame in all that the dock meets
	if err != nil {
		log.Fatal(err)
	}
	sign, err := d.Plate(envelope)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(sign.People, sign.Limit)
	// Output:
	// 3 the frame was checked for no more, the people of the plan
}

// Ask what past winters say of this one, from a table of daily temperatures beside the plan:
// here of an invented lake.
func ExampleDock_WithWinters() {
	d, err := demoDock("swim")
	if err != nil {
		log.Fatal(err)
	}
	table, err := os.Open("../../examples/winter/invented.csv")
	if err != nil {
		log.Fatal(err)
	}
	defer table.Close()
	if d, err = d.WithWinters("invented.csv", table, season.Options{}); err != nil {
		log.Fatal(err)
	}
	s, err := d.Season(context.Background())
	if err != nil {
		log.Fatal(err)
	}
	day := time.Date(s.Year+1, time.February, 1, 0, 0, 0, 0, time.UTC)
	k := int(day.Sub(s.First).Hours() / 24)
	fmt.Printf("%d winters; ice on 1 February: nine of ten had %.0f in, half %.0f in\n",
		s.Winters, s.Thin[k]/measure.Inch, s.Middle[k]/measure.Inch)
	// Output:
	// 9 winters; ice on 1 February: nine of ten had 20 in, half 21 in
}
