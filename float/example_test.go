package float_test

import (
	"context"
	"errors"
	"fmt"
	"log"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// The dock of these examples is invented: 10 by 20 ft, eight 55 gal drums in two
// rows, the origin in the middle at the frame's underside.
func exampleDock() *float.Platform {
	const in, ft, lb = measure.Inch, measure.Foot, measure.Pound
	drum := float.Cylinder{Diameter: 22.5 * in, Length: 33.5 * in}
	p := &float.Platform{
		Density: 999.7, // fresh water at 10 °C
		Weights: []float.Weight{{Mass: 1400 * lb, At: r3.Vec{Z: 5 * in}}},
	}
	for _, x := range []float64{-8, -2.7, 2.7, 8} {
		for _, y := range []float64{-3.8, 3.8} {
			p.Units = append(p.Units, float.Unit{Body: drum, At: r3.Vec{X: x * ft, Y: y * ft, Z: -drum.Diameter / 2}, Mass: 40 * lb})
		}
	}
	for _, c := range [][2]float64{{-10, -5}, {10, -5}, {10, 5}, {-10, 5}} {
		p.Corners = append(p.Corners, r3.Vec{X: c[0] * ft, Y: c[1] * ft, Z: 9 * in})
	}
	return p
}

func degrees(rad float64) float64 { return rad*180/math.Pi + 0 }

// How deep does a drum float under its share of the load?
func ExampleCylinder_Draft() {
	drum := float.Cylinder{Diameter: 22.5 * measure.Inch, Length: 33.5 * measure.Inch}
	draft, err := drum.Draft(200 * measure.Pound / 999.7)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.1f in\n", draft/measure.Inch)
	// Output: 9.8 in
}

// What does a drum carry when it is ten inches under?
func ExampleCylinder_Displaced() {
	drum := float.Cylinder{Diameter: 22.5 * measure.Inch, Length: 33.5 * measure.Inch}
	volume, err := drum.Displaced(10 * measure.Inch)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f L, %.0f lb of lake water\n", volume/measure.Litre, volume*999.7/measure.Pound)
	// Output: 94 L, 207 lb of lake water
}

// How does the dock lie with one person near a corner?
func ExamplePlatform_Settle() {
	p := exampleDock().With(float.Weight{Mass: 185 * measure.Pound, At: r3.Vec{X: 2.5, Y: 1.3, Z: 1.2}})
	s, err := p.Settle()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("heel %.1f deg, trim %.1f deg\n", degrees(s.Heel), degrees(s.Trim))
	fmt.Printf("water to frame in the middle %.1f in\n", s.Level/measure.Inch)
	_, low, err := s.Lowest()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("lowest corner of the deck %.1f in above the water\n", low/measure.Inch)
	// Output:
	// heel 1.3 deg, trim 1.0 deg
	// water to frame in the middle 11.3 in
	// lowest corner of the deck 17.0 in above the water
}

// What does each drum do?
func ExampleState_Unit() {
	p := exampleDock().With(float.Weight{Mass: 400 * measure.Pound, At: r3.Vec{Y: 1.3, Z: 0.23}})
	s, err := p.Settle()
	if err != nil {
		log.Fatal(err)
	}
	for _, i := range []int{2, 3} {
		u, err := s.Unit(i)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("drum %d: draft %.1f in, %.0f %% under, pushes %.0f lbf\n", i, u.Draft/measure.Inch, 100*u.Share, u.Push/measure.PoundForce)
	}
	// Output:
	// drum 2: draft 9.9 in, 43 % under, pushes 165 lbf
	// drum 3: draft 14.4 in, 68 % under, pushes 285 lbf
}

// How much water does it need, with a crowd at one side?
func ExampleState_Draft() {
	p := exampleDock().With(float.Weight{Mass: 400 * measure.Pound, At: r3.Vec{Y: 1.3, Z: 0.23}})
	s, err := p.Settle()
	if err != nil {
		log.Fatal(err)
	}
	draft, err := s.Draft()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("the deepest drum draws %.1f in\n", draft/measure.Inch)
	// Output:
	// the deepest drum draws 14.4 in
}

// How stiff is it, and about which axis least?
func ExampleState_Principal() {
	s, err := exampleDock().Settle()
	if err != nil {
		log.Fatal(err)
	}
	m := s.Principal()
	fmt.Printf("least metacentric height %.1f m, about an axis %.0f deg from the dock's\n", m[0].Height, degrees(m[0].Axis))
	fmt.Printf("greatest %.1f m\n", m[1].Height)
	// Output:
	// least metacentric height 6.3 m, about an axis 0 deg from the dock's
	// greatest 16.3 m
}

// How far can it be heeled?
func ExamplePlatform_Righting() {
	angles := make([]float64, 51)
	for i := range angles {
		angles[i] = float64(i) * math.Pi / 180
	}
	c, err := exampleDock().Righting(0, angles)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("deck edge under at %.1f deg\n", degrees(c.Under.Angle))
	fmt.Printf("greatest lever %.2f m at %.1f deg\n", c.Peak.Lever, degrees(c.Peak.Angle))
	// Output:
	// deck edge under at 36.8 deg
	// greatest lever 1.06 m at 11.9 deg
}

// Where do three people at the edge do most harm?
func ExamplePlatform_WorstCrowd() {
	w, err := exampleDock().WorstCrowd(float.Crowd{People: 3, Inset: 6 * measure.Inch, Room: 0.5})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("around x %.1f m, y %.1f m: %.1f deg, lowest corner %.0f in above the water\n",
		w.At.X, w.At.Y, degrees(w.State.Tilt()), w.Height/measure.Inch)
	// Output: around x -2.9 m, y -1.4 m: 6.0 deg, lowest corner 5 in above the water
}

// How many people on that edge? Post this number.
func ExamplePlatform_Post() {
	// A rule is a function; this one is the example's own.
	rule := measure.Source{Title: "the owner's wish", Status: measure.OwnChoice}
	steady := func(p *float.Platform) (measure.Check, error) {
		s, err := p.Settle()
		if err != nil {
			return measure.Check{}, err
		}
		return measure.Check{Name: "tilt", Kind: measure.Angle, Value: s.Tilt(), Limit: 5 * math.Pi / 180, Rule: &rule}, nil
	}
	post, err := exampleDock().Post(float.Crowd{Inset: 6 * measure.Inch, Room: 0.5}, steady)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d people; one more: %v\n", post.People, post.Breaks)
	// Output: 2 people; one more: tilt: 6.0 deg, at most 5.0 deg: short (the owner's wish (our choice))
}

// What if a drum fills?
func ExamplePlatform_Losses() {
	losses, err := exampleDock().Losses()
	if err != nil {
		log.Fatal(err)
	}
	for _, l := range losses[:2] {
		if l.Err != nil {
			fmt.Println(l.Unit, l.Err)
			continue
		}
		_, low, err := l.State.Lowest()
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("drum %d lost: %.1f deg, lowest corner %.0f in above the water\n", l.Unit, degrees(l.State.Tilt()), low/measure.Inch)
	}
	// Output:
	// drum 0 lost: 3.3 deg, lowest corner 12 in above the water
	// drum 1 lost: 3.3 deg, lowest corner 12 in above the water
}

// A swimmer climbs the ladder at the end.
func ExamplePlatform_Swimmer() {
	ladder := float.Ladder{At: r3.Vec{X: 10 * measure.Foot, Z: 9 * measure.Inch}}
	s, err := exampleDock().Swimmer(ladder)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("the ladder's top is %.0f in above the water\n", s.Height(ladder.At)/measure.Inch)
	// Output: the ladder's top is 18 in above the water
}

// How few drums, and where?
func ExamplePlatform_Fewest() {
	p := exampleDock()
	places := p.Units
	p.Units = nil
	c, err := p.Fewest(context.Background(), places, float.Demand{Crowd: float.Crowd{People: 1}})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d drums, proven %v\n", len(c.Places), c.Proven)
	// Output: 8 drums, proven true
}

// A drum with water in it, and one that is only captive under the frame.
func ExampleUnit() {
	p := exampleDock()
	p.Units[0].Leak = 20 * measure.Litre
	p.Units[7].Captive = true
	s, err := p.Settle()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("heel %.1f deg, trim %.1f deg\n", degrees(s.Heel), degrees(s.Trim))
	// Output: heel -0.3 deg, trim -0.2 deg
}

// The crest of a wake lies under one long side.
func ExampleWave() {
	p := exampleDock()
	p.Wave = &float.Wave{Height: 8 * measure.Inch, Length: 20 * measure.Foot, Heading: math.Pi / 2, Phase: math.Pi / 2}
	s, err := p.Settle()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("heel %.1f deg\n", degrees(s.Heel))
	// Output: heel -4.8 deg
}

// Too many people: the error says how, and by how much.
func ExampleFailure() {
	p := exampleDock().With(float.Weight{Mass: 1300 * measure.Pound, At: r3.Vec{Y: 1.4, Z: 1.2}})
	_, err := p.Settle()
	var f *float.Failure
	if errors.As(err, &f) && errors.Is(err, float.ErrCapsizes) {
		fmt.Printf("goes over; %.1f kN·m are lacking\n", f.Short/1000)
	}
	// Output: goes over; 5.3 kN·m are lacking
}

// A drum as a spring for the frame above it.
func ExampleUnit_Support() {
	drum := float.Unit{Body: float.Cylinder{Diameter: 0.57, Length: 0.85}, Mass: 18}
	support, err := drum.Support(999.7)
	if err != nil {
		log.Fatal(err)
	}
	force, stiffness, _ := support(0.25)
	fmt.Printf("%.0f N, %.1f kN/m\n", force, stiffness/1000)
	// Output: 721 N, 4.7 kN/m
}
