package main

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// places offers rows of places for drums that lie across the dock: as many beside each
// other as there is room, half a foot apart and a foot in the row, wedged with their axes under the joists.
func places(drum float.Drum, length, width float64) []float.Unit {
	const gap, under = 6 * measure.Inch, -6.5 * measure.Inch
	long, thick := drum.Length.Value, drum.Diameter.Value
	beside := max(1, int((width-gap)/(long+gap)))
	rows := max(2, int((length+2*gap)/(thick+2*gap)))
	var out []float.Unit
	for i := range rows {
		x := -length/2 + thick/2 + (length-thick)*float64(i)/float64(rows-1)
		for k := range beside {
			y := 0.0
			if beside > 1 {
				y = (width - long - gap) * (float64(k)/float64(beside-1) - 0.5)
			}
			out = append(out, drum.Unit(r3.Vec{X: x, Y: y, Z: under}, math.Pi/2))
		}
	}
	return out
}
