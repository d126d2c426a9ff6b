package sheet_test

import (
	"context"
	"fmt"
	"log"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
)

// Draw an embedded plan, with what its report found.
func ExampleDraw() {
	file, err := plan.Demo("work")
	if err != nil {
		log.Fatal(err)
	}
	d, err := dock.Read("work.json", file)
	if err != nil {
		log.Fatal(err)
	}
	report, err := d.Report(context.Background(), d.Units())
	if err != nil {
		log.Fatal(err)
	}
	drawn, err := sheet.Draw(d, report)
	if err != nil {
		log.Fatal(err)
	}
	section, ok := drawn.Picture("section")
	fmt.Println(section.Title, ok)
	fmt.Println(section.Desc)
	for _, n := range drawn.Missing {
		if n.Code == "lines" {
			fmt.Println("no lines:", n.Text)
		}
	}
	// Output:
	// Section through a bay true
	// A cut through one bay, 362 mm between the joists, with foam block and 2 water lines.
	// no lines: mooring.lines: not known; want each line's corner and where it ends
}
