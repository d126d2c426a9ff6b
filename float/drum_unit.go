package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// LeastTapered is the least share of the plain cylinder of its girth and length that a
// plastic drum of [Drums] displaces, for its tapered ends, rounded down: what stands in
// where a plastic drum's volume is not known.
const LeastTapered = 0.84

// Body returns the cylinder that stands for the drum: its outside diameter, and the
// length that gives its displacement, which is our choice. A plastic drum's is 4 to
// 16 % shorter than the drum, for its tapered ends. Body checks nothing; Settle
// refuses a cylinder without volume.
func (d Drum) Body() Cylinder {
	if !(d.Diameter.Value > 0 && d.Displacement.Value > 0) {
		return Cylinder{}
	}
	area := math.Pi / 4 * d.Diameter.Value * d.Diameter.Value
	return Cylinder{Diameter: d.Diameter.Value, Length: d.Displacement.Value / area}
}

// Unit returns the drum, by its [Drum.Body], as a unit of a platform, strapped to it,
// with its centre at a place (m) and its axis turned by heading (rad) from the
// platform's x axis.
func (d Drum) Unit(at r3.Vec, heading float64) Unit {
	return Unit{Body: d.Body(), At: at, Heading: heading, Mass: d.Mass.Value}
}
