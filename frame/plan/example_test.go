package plan_test

import (
	"fmt"
	"strings"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

func ExampleRead() {
	r, err := plan.Demo("swim")
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := plan.Read("swim.json", r)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Name.Value)
	fmt.Println(measure.Length.Format(p.Frame.Length.Value, measure.US), "long,", len(p.Frame.Joists.Marks), "joists")
	// Output:
	// Otter Point camp swim platform (invented)
	// 24 ft long, 14 joists
}

func ExampleRead_mistakes() {
	_, err := plan.Read("dock.json", strings.NewReader(`{
  "name": "My dock",
  "frame": { "length": "24", "width": "10 psf" }
}`))
	for _, line := range strings.Split(err.Error(), "\n")[:3] {
		fmt.Println(line)
	}
	// Output:
	// dock.json:1:1: floats: not known: it is missing; want a list [ ] of objects { }, or "unknown"
	// dock.json:3:12: frame.joists: not known: it is missing; want an object { }, or "unknown"
	// dock.json:3:12: frame.rims: not known: it is missing; want an object { }, or "unknown"
}

func ExampleExplain() {
	for _, e := range plan.Explain() {
		if e.Path == "floats[].girth" {
			fmt.Println(e)
			fmt.Println(e.In(measure.SI).Accepts)
		}
	}
	// Output:
	// floats[].girth: Of a drum: the tape once around its body, between the hoops. Accepts a length from 1 ft 11-3/4 in to 16 ft.
	// a length from 0.6 m to 5 m
}
