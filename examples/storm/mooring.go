package main

import (
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// mooring is four lines of chain and nylon to screw anchors off the corners.
func mooring() (*moor.Mooring, error) {
	chain, err1 := moor.Lookup("chain grade 30", "3/8 in")
	rope, err2 := moor.Lookup("nylon 3-strand", "3/4 in")
	shackle, err3 := moor.Lookup("shackle", "1/2 in")
	splice, err4 := moor.Factor("end of rope", "eye splice on thimble")
	design, err5 := moor.Factor("design", "rope, least")
	for _, err := range []error{err1, err2, err3, err4, err5} {
		if err != nil {
			return nil, err
		}
	}
	rope.Ends, rope.Design = []measure.Factor{splice}, design
	invented := &measure.Source{Title: "Invented for the example", Status: measure.OwnChoice}
	cleat := moor.Gear{Name: "cleat", Break: 6000 * measure.PoundForce, Source: invented}
	m := &moor.Mooring{}
	for i, c := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		m.Ties = append(m.Ties, moor.Tie{
			Name: [4]string{"lake right", "shore right", "shore left", "lake left"}[i],
			Line: moor.Line{Pieces: []moor.Piece{
				{Gear: chain, Length: 25 * ft, Weight: 1.2 * measure.PLF},
				{Gear: rope, Length: 15 * ft, Weight: 0.02 * measure.PLF, Stretch: 25e3 * measure.PoundForce},
			}},
			At: [2]float64{8 * ft * c[0], 4 * ft * c[1]}, Height: 1 * ft,
			Foot: [2]float64{33.5 * ft * c[0], 29.5 * ft * c[1]}, FootZ: -depth,
			Fitting: cleat, Links: []moor.Gear{shackle},
			Ground: moor.Rated{Name: "screw anchor by its pull test", Hold: 2000 * measure.PoundForce, Steepest: 20 * math.Pi / 180, Source: invented},
		})
	}
	return m, nil
}

// storm blows on the dock, four people and a boat alongside, and raises waves over
// half a mile of lake to the south and west, the water lower by fall. The dock's x axis
// points north.
func storm(speed, fall float64) moor.Weather {
	const sqft = ft * ft
	return moor.Weather{
		Wind: moor.Wind{Speed: speed},
		Above: []moor.Face{
			{Name: "frame and drums", End: 8 * sqft, Side: 16 * sqft, Height: 0.2, Shape: 1.2},
			{Name: "four people", End: 28 * sqft, Side: 28 * sqft, Height: 1.3, Shape: 1.3},
			{Name: "boat", End: 20 * sqft, Side: 50 * sqft, Height: 0.6, Shape: 1.5, At: [2]float64{0.8, 2.2}},
		},
		Fetches: moor.Fetches{100, 100, 200, 400, 800, 800, 600, 200}, // N, NE, E and so on
		Depth:   depth - fall, Length: 16 * ft, Breadth: 8 * ft, Draft: draft, Freeboard: 1 * ft,
	}
}
