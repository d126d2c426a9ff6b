package ice_test

import (
	"fmt"
	"log"
	"math"
	"strings"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// survey is an invented sheet: five holes on the pad, one on the walk.
func survey() ice.Sheet {
	s := ice.Sheet{
		Place: "invented bay", Water: ice.Lake, Season: ice.Winter, Age: 2 * 3600,
		Cracks: ice.NoCracks, Wet: ice.NotFound, Inlets: ice.NotFound, Changed: ice.NotFound,
	}
	for i, inches := range []float64{11, 10.5, 11.25, 10.75, 11, 9.5} {
		name := []string{"pad, NW corner", "pad, NE corner", "pad, SE corner", "pad, SW corner", "pad, middle", "walk"}[i]
		at := [][2]float64{{-12, 8}, {12, 8}, {12, -8}, {-12, -8}, {0, 0}, {0, -60}}[i] // ft, about the middle of the pad
		s.Holes = append(s.Holes, ice.Hole{
			Name: name, X: at[0] * measure.Foot, Y: at[1] * measure.Foot,
			Clear: inches * measure.Inch, Water: 0.75 * measure.Inch, Looked: true, // no white ice, no gap, no snow
		})
	}
	s.Now = time.Date(2027, time.January, 30, 11, 0, 0, 0, time.UTC) // by the clock at the lake
	for i, f := range [][2]float64{{25, 9}, {22, 5}, {20, 2}, {24, 8}, {23, 6}} {
		s.Air = append(s.Air, ice.Air{Date: s.Now.AddDate(0, 0, i-5), High: measure.Fahrenheit(f[0]), Low: measure.Fahrenheit(f[1])})
	}
	return s
}

// Three people pull a sled with a frame over the ice: 600 lb on one spot.
func ExampleSheet_Crossing() {
	load := ice.Crossing{Mass: 600 * measure.Pound, People: 3}
	c, err := survey().Crossing(load)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Numbers(measure.US))
	fmt.Println(c.Verdict() == measure.Holds, c.Words())
	for _, note := range c.Notes {
		if strings.HasPrefix(note, "EXPIRY") || strings.HasPrefix(note, "thinnest") {
			fmt.Println(note)
		}
	}
	// Output:
	// 9-1/2 in, at least 8 in
	// true not ruled out by CCOHS (Canada), newsletter, January 2005
	// thinnest: walk, invented bay, counted as clear ice alone, doubled thickness where there is white ice
	// EXPIRY: 24 hours after drilling: void from 2027-01-31 09:00, or at once on thaw, rain, snow or a change of the water level
}

// The same sheet gets no answer once nobody looked for cracks, and is short
// once an inch of white ice was found: the strictest rule doubles the thickness.
func ExampleSheet_Crossing_worse() {
	load := ice.Crossing{Mass: 600 * measure.Pound, People: 3}
	s := survey()
	s.Cracks = ice.UnknownCracks
	c, err := s.Crossing(load)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Words())

	s = survey()
	s.Holes[0].White = measure.Inch
	c, err = s.Crossing(load)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Words(), c.Numbers(measure.US))
	// Output:
	// no answer
	// short 9-1/2 in, at least 1 ft 3-3/4 in
}

// The frame is left on the ice over a lunch break, then for three weeks.
func ExampleSheet_ParkedHours() {
	for _, hours := range []float64{2, 21 * 24} {
		c, err := survey().ParkedHours(ice.Crossing{Mass: 150, People: 1}, hours)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Println(c.Words())
		if c.Err != nil {
			fmt.Println(c.Err)
		} else {
			fmt.Println(c.Numbers(measure.SI))
		}
	}
	// Output:
	// short
	// 241 mm, at least 300 mm
	// no answer
	// time on the spot: not computed yet: days and weeks need the sag of the sheet against its freeboard (Flooding, Beside); ask an ice engineer
}

// What thickness to wait for, before a hole was drilled.
func ExampleSheet_Required() {
	c, err := ice.Sheet{Water: ice.Lake}.Required(ice.Crossing{Mass: 270, People: 3}, 0)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Words())
	for _, note := range c.Notes {
		if strings.HasPrefix(note, "thickness") || strings.HasPrefix(note, "not known") {
			fmt.Println(note)
		}
	}
	// Output:
	// no answer
	// thickness required: 200 mm (8 in) (larger groups, 20 cm; CCOHS (Canada), newsletter, January 2005)
	// not known and not counted: white ice doubles the thickness required
	// not known and not counted: a thaw in the last days triples the thickness required
	// not known and not counted: a dry crack near the load asks for 1.42 times the thickness, dry cracks that cross for 2 times
}

// How far the public sources differ for one person.
func ExampleCompare() {
	c, err := ice.Compare(ice.Crossing{Mass: 90, People: 1})
	if err != nil {
		log.Fatal(err)
	}
	least, most := c.Spread()
	fmt.Printf("%d classes and tables, %.0f to %.0f mm\n", len(c.Opinions), least*1000, most*1000)
	// Output:
	// 23 classes and tables, 34 to 150 mm
}

// The weight table of one public body is its formula in whole inches.
func ExampleClass_Load() {
	for _, c := range ice.Classes() {
		if c.Name != "public weight table" {
			continue
		}
		p, err := c.Load(8 * measure.Inch)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %.0f lb moving on 8 in of clear ice\n", c.Printed, p/measure.PoundForce)
		_, err = c.Load(3 * measure.Inch)
		fmt.Println(err)
	}
	// Output:
	// 50 psi: 3200 lb moving on 8 in of clear ice
	// effective thickness: 0.0762 m is out of range; want at least 0.1016 m, at most 0.508 m (Minnesota Department of Natural Resources, ice thickness guidelines by weight, weight table and its footnote, solid clear ice)
}

// White ice counts differently from source to source; a layer with water under
// it never adds.
func ExampleScheme_Effective() {
	h := ice.Hole{Clear: 0.20, White: 0.10, Hard: true, Looked: true}
	for s := ice.Strictest; s <= ice.HalfWhite; s++ {
		thickness, factor, err := s.Effective(h)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%.0f mm against %.0f times the thickness: %s\n", thickness*1000, factor, s)
	}
	h.Gap = 0.02
	thickness, _, err := ice.HalfWhite.Effective(h)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("with a gap: %.0f mm\n", math.Round(thickness*1000))
	// Output:
	// 200 mm against 2 times the thickness: clear ice alone, doubled thickness where there is white ice
	// 300 mm against 2 times the thickness: all hard ice, doubled thickness where there is white ice
	// 200 mm against 1 times the thickness: clear ice alone
	// 250 mm against 1 times the thickness: clear ice and half of the hard white ice
	// with a gap: 200 mm
}

// A stack of lumber and a person beside it on a foot of ice, for the minutes
// that an elastic modulus of 1 GPa stands for.
func ExamplePlate_Bowl() {
	p := ice.Plate{Thickness: 0.30, E: 1e9, Nu: 0.33}
	l, err := p.CharacteristicLength()
	if err != nil {
		log.Fatal(err)
	}
	bowl, err := p.Bowl([]ice.Patch{
		{A: 1.2, B: 3.6, Force: 600 * measure.Gravity},
		{X: 1.5, A: 0.15, Force: 100 * measure.Gravity},
	})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("loads within %.0f m of each other count together\n", 4*l)
	for _, x := range []float64{0, 1.5, 4, 8} {
		s, err := bowl.At(x, 0)
		if err != nil {
			log.Fatal(err)
		}
		tension, err := p.Stress(s)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%4.1f m: down %.1f mm, tension %.0f kPa\n", x, s.Deflection*1000, tension/1000)
	}
	// Output:
	// loads within 16 m of each other count together
	//  0.0 m: down 5.1 mm, tension 82 kPa
	//  1.5 m: down 4.9 mm, tension 72 kPa
	//  4.0 m: down 3.5 mm, tension 25 kPa
	//  8.0 m: down 1.5 mm, tension 8 kPa
}
