package dock_test

import (
	"context"
	"fmt"
	"os"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

func demoDock(name string) (*dock.Dock, error) {
	r, err := plan.Demo(name)
	if err != nil {
		return nil, err
	}
	return dock.Read(name, r)
}

// What to buy for the embedded swim platform, and whether a cheaper way to cut it is
// ruled out.
func ExampleDock_Shop() {
	d, err := demoDock("swim")
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := d.Shop(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range s.Bill.Rows {
		fmt.Printf("%s: need %d, have %d, buy %d\n", r.Item, r.Need, r.Have, r.Buy)
	}
	fmt.Printf("%.2f %s, proven %v\n", s.Cutting.Cost, s.Bill.Currency, s.Cutting.Proven)
	fmt.Println("cut ends:", measure.Volume.Format(s.Finish[0].Volume, measure.US))
	// Output:
	// 2x8, 10 ft 0-1/2 in: need 14, have 14, buy 0
	// 2x10, 24 ft 0-3/4 in: need 4, have 0, buy 4
	// 2x6, 24 ft 0-3/4 in: need 22, have 0, buy 22
	// 866.00 USD, proven true
	// cut ends: 0.2 gal
}

// The same for a spreadsheet.
func ExampleReport_WritePurchaseList() {
	d, err := demoDock("work")
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := d.Shop(context.Background())
	if err != nil {
		fmt.Println(err)
		return
	}
	r := dock.Report{Shop: s} // or the whole of Dock.Report
	if err := r.WritePurchaseList(os.Stdout); err != nil {
		fmt.Println(err)
	}
	// Output:
	// item,kind,need,have,lot,lots,buy,spare,price,cost,currency
	// "38 mm x 235 mm, 2.44 m",lumber,16,0,1,16,16,0,15.60,249.60,EUR
	// "38 mm x 235 mm, 6.1 m",lumber,4,0,1,4,4,0,41.00,164.00,EUR
	// "38 mm x 140 mm, 6.1 m",lumber,17,17,1,0,0,0,21.00,0.00,EUR
	// goods,sum,,,,,,,,413.60,EUR
	// delivery,sum,,,,,,,,,EUR
	// tax,sum,,,,,,,,,EUR
	// total,sum,,,,,,,,,EUR
}
