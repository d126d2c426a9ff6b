package published

import (
	"math"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber/measure"
)

// layoutChecks compares the squareness of frames: worked by hand from plane
// geometry, and right triangles in whole numbers.
func layoutChecks() ([]Check, error) {
	const in = measure.Inch
	racked := func(angle bool) func() (float64, error) {
		return func() (float64, error) {
			offset, e, err := layout.Racked(192*in, 96*in, 214.9*in, 214.4*in)
			if angle {
				return e * 180 / math.Pi, err
			}
			return offset / in, err
		}
	}
	corner := func(a, b, c float64) func() (float64, error) {
		return func() (float64, error) {
			γ, err := layout.Corner(a*in, b*in, c*in)
			return γ * 180 / math.Pi, err
		}
	}
	plane := measure.Source{Title: "Plane geometry of a frame of 16 ft by 8 ft", Locator: "parallelogram law", Status: measure.Independent}
	cosines := measure.Source{Title: "Corner check of 12, 16 and 20 ft", Locator: "law of cosines", Status: measure.Independent}
	euclid := measure.Source{Title: "Euclid, Elements", Locator: "I.47", Status: measure.Exact}
	more, err := layoutBearings()
	if err != nil {
		return nil, err
	}
	return append(append([]Check{
		{Package: "frame/layout", Quantity: "lean over the 8 ft side, diagonals 1/2 in apart", Source: plane, Printed: "0.27949", Unit: "in", Compute: racked(false)},
		{Package: "frame/layout", Quantity: "angle of the lean, diagonals 1/2 in apart", Source: plane, Printed: "0.16681", Unit: "deg", Compute: racked(true)},
		{Package: "frame/layout", Quantity: "corner with a diagonal of 20 ft 1 in", Source: cosines, Printed: "90.4984", Unit: "deg", Compute: corner(144, 192, 241)},
		{Package: "frame/layout", Quantity: "corner of 3, 4 and 5", Source: euclid, Printed: "90.00000000", Unit: "deg", Compute: corner(3, 4, 5)},
		{Package: "frame/layout", Quantity: "diagonal of 12 by 5", Source: euclid, Printed: "13.0000000000", Unit: "", Compute: func() (float64, error) { return layout.Diagonal(12, 5) }},
	}, more...), append(layoutFacts(), layoutMore()...)...), nil
}
