package dock_test

import (
	"fmt"
	"strings"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
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
	r := d.Report(measure.US)
	for _, topic := range r.Topics {
		for _, c := range topic.Checks {
			if strings.HasPrefix(c.Name, "Tilt") {
				fmt.Printf("%s: %s: %s\n", c.Name, c.Numbers(measure.US), c.Words())
			}
		}
	}
	fmt.Println("exit status", int(r.Status()))
	// Output:
	// Tilt of the deck with everyone at one edge: 4.3 deg, at most 5.0 deg: holds
	// exit status 1
}
