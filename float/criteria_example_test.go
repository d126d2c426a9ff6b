package float_test

import (
	"fmt"
	"log"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// Does the dock pass what is asked of private docks? An invented dock, 10 by 16 ft
// on twelve drums.
func ExampleRules() {
	drum, err := float.LookupDrum("55 gal plastic, tight head")
	if err != nil {
		log.Fatal(err)
	}
	p := &float.Platform{
		Density: 999.9,
		Weights: []float.Weight{{Mass: 600, At: r3.Vec{Z: -0.1}}},
		Corners: []r3.Vec{
			{X: -8 * measure.Foot, Y: -5 * measure.Foot},
			{X: 8 * measure.Foot, Y: -5 * measure.Foot},
			{X: 8 * measure.Foot, Y: 5 * measure.Foot},
			{X: -8 * measure.Foot, Y: 5 * measure.Foot},
		},
	}
	for _, x := range []float64{-1.9, -0.65, 0.65, 1.9} {
		for _, y := range []float64{-1.2, 0, 1.2} {
			p.Units = append(p.Units, drum.Unit(r3.Vec{X: x, Y: y, Z: -0.45}, 0))
		}
	}
	rules, err := float.Rules(float.Deck{Depth: 9 * measure.Inch})
	if err != nil {
		log.Fatal(err)
	}
	for _, rule := range rules {
		check, err := rule(p)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %s: %s\n", check.Name, check.Numbers(measure.US), check.Words())
	}
	// Output:
	// 20 psf over the deck: 26.5 psf, at least 20.0 psf: holds
	// 400 lb on one spot: 810 lb, at least 400 lb: holds
	// 7 in from water to frame: 1 ft 1-1/8 in, at least 7 in: holds
	// end loses at most 4 in: 4-1/8 in, at most 4 in: short
	// cross level 3/8 in in 3 ft: 0 in, at most 3/8 in: holds
	// tilt at most 5 deg: 7.8 deg, at most 5.0 deg: short
	// 10 in to the deck: 1 ft 10-1/8 in, at least 10 in: holds
	// drums at most 85 % immersed: 85.7 %, at most 85.0 %: short
	// deck edge dry: 8-7/8 in, at least 0 in: holds
}

// How many people for the sign, if the deck may tilt 5 degrees and its edge must stay
// dry? The invented dock of eight drums; nobody else aboard.
func ExampleCriterion_AsLoaded() {
	var rules []float.Rule
	for _, name := range []string{"tilt at most 5 deg", "deck edge dry"} {
		c, err := float.LookupCriterion(name)
		if err != nil {
			log.Fatal(err)
		}
		rules = append(rules, c.AsLoaded().Rule(float.Deck{}))
	}
	post, err := planOfExample().Post(float.Crowd{}, rules...)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d people at one place; one more breaks %q\n", post.People, post.Breaks.Name)
	// Output: 1 people at one place; one more breaks "tilt at most 5 deg"
}

// A town with a stricter freeboard (invented): a copy of a row with its own limit.
func ExampleCriterion_Rule() {
	c, err := float.LookupCriterion("10 in to the deck")
	if err != nil {
		log.Fatal(err)
	}
	c.Name, c.Limit = "14 in to the deck", 14*measure.Inch
	c.Source = &measure.Source{Title: "an invented town", Status: measure.OwnChoice}
	check, err := c.Rule(float.Deck{})(planOfExample())
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s: %s: %s\n", check.Name, check.Numbers(measure.US), check.Words())
	fmt.Println(len(check.Notes) > 0 && check.Notes[len(check.Notes)-1] == float.DrumNotice)
	// Output:
	// 14 in to the deck: 1 ft 8-15/16 in, at least 1 ft 2 in: holds
	// true
}
