package float_test

import (
	"fmt"
	"log"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// The dock of these examples is invented: 8 ft by 16 ft on eight steel drums, 420 kg
// of frame and deck.
func planOfExample() *float.Platform {
	drum, err := float.LookupDrum("55 gal steel, tight head")
	if err != nil {
		log.Fatal(err)
	}
	p := &float.Platform{
		Density: 999.9,
		Weights: []float.Weight{{Mass: 420, At: r3.Vec{Z: -0.1}}},
		Corners: []r3.Vec{{X: -2.44, Y: -1.22}, {X: 2.44, Y: -1.22}, {X: 2.44, Y: 1.22}, {X: -2.44, Y: 1.22}},
	}
	for _, x := range []float64{-1.9, -0.65, 0.65, 1.9} {
		for _, y := range []float64{-0.85, 0.85} {
			p.Units = append(p.Units, drum.Unit(r3.Vec{X: x, Y: y, Z: -0.45}, 0))
		}
	}
	return p
}

// Which freeboards should the tape find after the thaw?
func ExamplePlatform_Expect() {
	p := planOfExample()
	freeboards, err := p.Expect(float.Doubt{})
	if err != nil {
		log.Fatal(err)
	}
	for i, f := range freeboards {
		fmt.Printf("corner %d: %.1f in, from %.1f to %.1f in\n", i+1,
			f.Value/measure.Inch, (f.Value-f.Within)/measure.Inch, (f.Value+f.Within)/measure.Inch)
	}
	// Output:
	// corner 1: 20.9 in, from 20.2 to 21.7 in
	// corner 2: 20.9 in, from 20.2 to 21.7 in
	// corner 3: 20.9 in, from 20.2 to 21.7 in
	// corner 4: 20.9 in, from 20.2 to 21.7 in
}

// One corner floats low in July, one person of 84 kg aboard: is a drum leaking?
func ExampleSurvey_Find() {
	tape := func(inches float64) float.Figure {
		return float.Figure{Value: inches * measure.Inch, Within: measure.Inch / 4}
	}
	s := float.Survey{
		Plan:       planOfExample(),
		Aboard:     []float.Weight{{Mass: 84, At: r3.Vec{Z: 1}}},
		Freeboards: []float.Figure{tape(22), tape(18.75), tape(16.25), tape(19.75)},
		Doubt:      float.Doubt{Mass: 0.05, Place: 0.02},
	}
	got, err := s.Find()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("weighs %.0f ± %.0f kg, %.0f kg more than planned\n", got.Mass.Value, got.Mass.Within, got.Excess.Value)
	fmt.Printf("twist %.1f ± %.1f in\n", got.Twist.Value/measure.Inch, got.Twist.Within/measure.Inch)
	for _, leak := range got.Leaks {
		for k, unit := range leak.Units {
			fmt.Printf("drum %d with %.0f ± %.0f L would explain it, likelier than all else tried: %v\n", unit+1,
				leak.Volume[k].Value/measure.Litre, leak.Volume[k].Within/measure.Litre, leak.Sure > 0.5)
		}
	}
	// Output:
	// weighs 651 ± 21 kg, 86 kg more than planned
	// twist 0.2 ± 0.5 in
	// drum 8 with 72 ± 6 L would explain it, likelier than all else tried: true
}
