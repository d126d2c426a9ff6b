package sheet_test

import (
	"context"
	"fmt"
	"log"
	"strings"
	"time"

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

// Make the pages that go into the garage and onto the ice, as one page to print.
func ExampleOf() {
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
	pages, err := sheet.Of(d, report, time.Date(2027, time.January, 23, 0, 0, 0, 0, time.UTC))
	if err != nil {
		log.Fatal(err)
	}
	text, err := pages.HTML() // for a file, or sheet.WriteFiles
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(pages.Title)
	for _, card := range pages.Cards[:4] {
		fmt.Println("-", card.Title)
	}
	fmt.Println("every side says it:", strings.Contains(text, sheet.NotSealed))
	// Output:
	// Yard work float (invented)
	// - The twelve checks, worst first
	// - Order of work: before the first cut
	// - Order of work: in the garage
	// - Layout of the frame
	// every side says it: true
}
