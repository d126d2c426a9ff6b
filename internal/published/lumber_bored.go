package published

import (
	"fmt"
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// lumberBored compares the wall of a bored hole, and the shear that may be left out near a
// support, with the same worked by hand.
func lumberBored() ([]Check, error) {
	wall := measure.Source{Title: "Wall of a cylinder", Status: measure.Exact}
	relief := measure.Source{Title: "National Design Specification for Wood Construction (American Wood Council)", Edition: "2018", Locator: "3.4.3.1, worked by hand", Status: measure.Memory}
	var out []Check
	for _, c := range []struct {
		quantity, unit string
		value          float64
		source         measure.Source
		compute        func() (float64, error)
	}{
		{"hole of 20 mm through 40 mm", "m2", math.Pi * 0.02 * 0.04, wall, func() (float64, error) { return lumber.HoleArea(0.02, 0.04) }},
		{"uniform 1000 N/m within a depth of 0.2 m", "N", 200, relief, func() (float64, error) { return lumber.ShearRelief(0.2, 1000, 0, 0) }},
		{"the same and 500 N at half the depth", "N", 450, relief, func() (float64, error) { return lumber.ShearRelief(0.2, 1000, 500, 0.1) }},
		{"500 N at the face", "N", 500, relief, func() (float64, error) { return lumber.ShearRelief(0.2, 0, 500, 0) }},
		{"500 N a depth away", "N", 0, relief, func() (float64, error) { return lumber.ShearRelief(0.2, 0, 500, 0.2) }},
	} {
		out = append(out, Check{
			Package: "lumber", Source: c.source, Quantity: c.quantity,
			Printed: fmt.Sprintf("%.9f", c.value), Unit: c.unit, Compute: c.compute,
		})
	}
	return out, nil
}
