package measure_test

import (
	"encoding/json"
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

func ExampleKind_Parse() {
	x, err := measure.Length.Parse(`12'-6 1/2"`)
	fmt.Printf("%.4f m, %v\n", x, err)
	_, err = measure.Length.Parse("40 psf")
	fmt.Println(err)
	// Output:
	// 3.8227 m, <nil>
	// "40 psf" cannot be read: "psf" is a unit of pressure; want a length with its unit, such as 12 ft 6-1/2 in or 3.66 m
}

func ExampleKind_Format() {
	fmt.Println(measure.Length.Format(0.184, measure.US), "or", measure.Length.Format(0.184, measure.SI))
	fmt.Println(measure.Pressure.Format(20*measure.PSF, measure.SI))
	// Output:
	// 7-1/4 in or 184 mm
	// 0.958 kPa
}

func ExampleFeetInches() {
	fmt.Println(measure.FeetInches(3.66, 16))
	fmt.Println(measure.FeetInches(3.66, 4))
	// Output:
	// 12 ft 0-1/8 in
	// 12 ft
}

func ExampleCheck() {
	freeboard := measure.Check{
		Name: "Freeboard under dead load", Kind: measure.Length,
		Value: 11.5 * measure.Inch, Limit: 7 * measure.Inch, AtLeast: true,
		Rule: &measure.Source{Title: "Lake authority's dock guide", Status: measure.Read},
	}
	fmt.Println(freeboard.Numbers(measure.US)+":", freeboard.Words())

	// An unknown that decides takes the answer away.
	freeboard.Rests = []measure.Assumption{{Name: "weight of the drums", Decides: true}}
	fmt.Println(freeboard.Words())
	// Output:
	// 11-1/2 in, at least 7 in: holds
	// no answer
}

func ExampleRange_Check() {
	diameter := measure.Range{Kind: measure.Length, Lo: 0, OpenLo: true, Hi: 3}
	fmt.Println(diameter.Check("diameter", -0.58))
	// Output:
	// diameter: -0.58 m is out of range; want more than 0 m, at most 3 m
}

// A check goes through encoding/json as it is, without a number where there is none.
func ExampleCheck_MarshalJSON() {
	c := measure.Check{
		Name: "span of the deck", Kind: measure.Length, Value: 0.6096, Limit: math.NaN(), Rule: &measure.Source{Title: "a table of spans", Status: measure.Read},
	}
	text, err := json.MarshalIndent(c, "", "  ")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(string(text))
	// Output:
	// {
	//   "name": "span of the deck",
	//   "kind": "length",
	//   "unit": "m",
	//   "value": 0.6096,
	//   "limit": null,
	//   "steps": [],
	//   "side": "at most",
	//   "verdict": "no answer",
	//   "rule": {
	//     "title": "a table of spans",
	//     "edition": "",
	//     "locator": "",
	//     "status": "read"
	//   },
	//   "factors": [],
	//   "rests": [],
	//   "notes": [],
	//   "error": null
	// }
}
