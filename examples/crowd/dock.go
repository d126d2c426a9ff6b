package main

import (
	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// dock returns the invented dock: two rows of five drums under its long edges.
func dock(frame float64) *float.Platform {
	const x, y, top = 8 * measure.Foot, 4 * measure.Foot, 9 * measure.Inch
	p := &float.Platform{
		Density: 998,
		Weights: []float.Weight{{Mass: frame, At: r3.Vec{Z: 5 * measure.Inch}}},
		Corners: []r3.Vec{{X: -x, Y: -y, Z: top}, {X: x, Y: -y, Z: top}, {X: x, Y: y, Z: top}, {X: -x, Y: y, Z: top}},
	}
	drum := float.Cylinder{Diameter: 23 * measure.Inch, Length: 35 * measure.Inch}
	for i := -2; i <= 2; i++ {
		for _, side := range []float64{-1, 1} {
			p.Units = append(p.Units, float.Unit{Body: drum, Mass: 22 * measure.Pound, At: r3.Vec{X: float64(i) * 38 * measure.Inch, Y: side * 33 * measure.Inch, Z: -7 * measure.Inch}})
		}
	}
	return p
}
