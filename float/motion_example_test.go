package float_test

import (
	"fmt"
	"log"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// Will a dock of eight drums dance in the chop? An invented dock, 8 by 16 ft, its
// frame and deck of 500 kg spread over it.
func ExamplePlatform_Motion() {
	drum, err := float.LookupDrum("55 gal plastic, tight head")
	if err != nil {
		log.Fatal(err)
	}
	p := &float.Platform{Density: 999.9}
	for _, x := range []float64{-2, -0.7, 0.7, 2} {
		for _, y := range []float64{-0.9, 0.9} {
			p.Units = append(p.Units, drum.Unit(r3.Vec{X: x, Y: y}, 0))
		}
	}
	deck := float.Weight{Mass: 500, At: r3.Vec{Z: 0.4}}
	if p.Weights, err = deck.Spread(16*measure.Foot, 8*measure.Foot); err != nil {
		log.Fatal(err)
	}
	m, err := p.Motion()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("heave %.1f to %.1f s, roll %.1f to %.1f s, pitch %.1f to %.1f s\n",
		m.Heave.Shortest, m.Heave.Longest, m.Roll.Shortest, m.Roll.Longest, m.Pitch.Shortest, m.Pitch.Longest)
	for _, period := range []float64{1.5, 4} {
		warnings, err := m.Near(period)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("waves of %.1f s: %d warnings\n", period, len(warnings))
	}
	// Output:
	// heave 1.0 to 1.2 s, roll 1.0 to 1.2 s, pitch 1.0 to 1.2 s
	// waves of 1.5 s: 3 warnings
	// waves of 4.0 s: 0 warnings
}
