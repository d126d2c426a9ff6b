package main

import (
	"log"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

const (
	length, width, spacing = 16 * measure.Foot, 10 * measure.Foot, 16 * measure.Inch
	dead, live             = 10 * measure.PSF, 40 * measure.PSF
	crew                   = 4 // stand at an edge, or pull the sled
	person                 = 185 * measure.Pound
)

// must ends the notebook at the first thing that does not work.
func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal("notebook: ", err)
	}
	return x
}

// printer prints numbers of a kind as a builder reads them.
func printer(k measure.Kind) func(float64) string {
	return func(x float64) string { return k.Format(x, measure.US) }
}

// raft is the frame without floats, its origin at the underside of the joists.
func raft(mass, depth float64) *float.Platform {
	x, y, top := length/2, width/2, depth+1.5*measure.Inch
	return &float.Platform{
		Density: 998, Weights: []float.Weight{{Mass: mass, At: r3.Vec{Z: depth / 2}}},
		Corners: []r3.Vec{{X: -x, Y: -y, Z: top}, {X: x, Y: -y, Z: top}, {X: x, Y: y, Z: top}, {X: -x, Y: y, Z: top}},
	}
}

// rows offers places for drums that lie across the dock in two rows, under the rims.
func rows(drum float.Drum) []float.Unit {
	var out []float.Unit
	thick, long := drum.Diameter.Value, drum.Length.Value
	for i := range 7 {
		for _, side := range []float64{-1, 1} {
			at := r3.Vec{X: (length - thick) * (float64(i)/6 - 0.5), Y: side * (width - long) / 2, Z: -thick / 2}
			out = append(out, drum.Unit(at, math.Pi/2))
		}
	}
	return out
}
