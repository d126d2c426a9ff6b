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

// pad is an invented sheet of clear ice so many inches thick: a drilled pad of
// 24 by 16 ft about the origin, and the walk from the shore.
func pad(inches float64) ice.Sheet {
	s := survey()
	for i := range s.Holes {
		h := &s.Holes[i]
		h.Clear, h.Water = inches*measure.Inch, 0.078*inches*measure.Inch
	}
	s.Depth = 12 * measure.Foot
	return s
}

// dock is an invented frame of 1800 lb on its six drums, about to be set.
func dock() ice.Stand {
	t := ice.Stand{Stay: 21 * measure.Day}
	for _, x := range []float64{-6, 0, 6} {
		for _, y := range []float64{-4, 4} {
			t.Loads = append(t.Loads, ice.Patch{X: x * measure.Foot, Y: y * measure.Foot, A: 0.3, Force: 300 * measure.PoundForce})
		}
	}
	return t
}

// Today on the ice: what may stand where, and for how long, as a card to fill
// in and carry. It lists what the rules do not rule out; it clears nothing.
func Example_today() {
	s := pad(18)
	line := func(what string, c measure.Check, err error) {
		if err != nil {
			log.Fatal(err)
		}
		words, _, _ := strings.Cut(c.Words(), " by ")
		fmt.Printf("[ ] %-40s %-13s %s\n", what, words, c.Numbers(measure.US))
	}
	fmt.Printf("ICE CARD, %s, drilled 2 hours ago. No clearance: it says what rules do not rule out.\n", s.Place)
	c, err := s.Crossing(ice.Crossing{Mass: 200 * measure.Pound, People: 1})
	line("on the walk: one person", c, err)
	c, err = s.Crossing(ice.Crossing{Mass: 900 * measure.Pound, People: 4})
	line("on the walk: four people and a sled", c, err)
	c, err = s.ParkedHours(ice.Crossing{Mass: 700 * measure.Pound, People: 1}, 4)
	line("on the pad: a stack of 700 lb for 4 h", c, err)
	c, err = s.Beside(dock(), ice.Crossing{Mass: 600 * measure.Pound, People: 3})
	line("on the pad: three people beside the dock", c, err)
	f, err := s.Flooding(dock())
	line("on the pad: the dock alone for 21 days", f.Check, err)
	fmt.Println("Ends 22 hours from now, or at once on thaw, rain, snow or a change of the water level.")
	fmt.Println("Name ____________  back by ______  told to ____________  picks [ ] vest [ ] rope [ ] phone [ ]")
	fmt.Println("Water in the hole at the dock ____ in  read at ______  by ____________")
	// Output:
	// ICE CARD, invented bay, drilled 2 hours ago. No clearance: it says what rules do not rule out.
	// [ ] on the walk: one person                  not ruled out 1 ft 6 in, at least 6 in
	// [ ] on the walk: four people and a sled      not ruled out 1 ft 6 in, at least 1 ft
	// [ ] on the pad: a stack of 700 lb for 4 h    not ruled out 1 ft 6 in, at least 1 ft
	// [ ] on the pad: three people beside the dock short         1 ft 6 in, at least 1 ft 7-3/4 in
	// [ ] on the pad: the dock alone for 21 days   not ruled out 143.2 days, at least 21.0 days
	// Ends 22 hours from now, or at once on thaw, rain, snow or a change of the water level.
	// Name ____________  back by ______  told to ____________  picks [ ] vest [ ] rope [ ] phone [ ]
	// Water in the hole at the dock ____ in  read at ______  by ____________
}

// When water may come over the ice under the dock: a range of days, the soonest
// for the softest ice that it may be.
func ExampleSheet_Flooding() {
	s, d := pad(14), dock()
	d.Snow = 2 * measure.Inch
	f, err := s.Flooding(d)
	if err != nil {
		log.Fatal(err)
	}
	from, to := f.Dates(time.Date(2027, 1, 30, 12, 0, 0, 0, time.UTC))
	fmt.Println(f.Check.Words(), "for 21 days; soonest", from.Format("2 January"), "by", f.Governs)
	if to.IsZero() {
		fmt.Println("latest: past what the law speaks of")
	}
	fmt.Printf("freeboard under 2 in more of snow %.0f mm, ", f.Freeboard*1000)
	d.Snow = 0 // shovelled as it falls
	f, err = s.Flooding(d)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("shovelled %.0f mm\n", f.Freeboard*1000)
	// Output:
	// short for 21 days; soonest 4 February by the freeboard
	// freeboard under 2 in more of snow 7 mm, shovelled 28 mm
}

// A load that stands sags from hour to hour; the ends are for the stiffest and
// the softest ice that it may be.
func ExampleSheet_Sag() {
	for _, hours := range []float64{0, 1, 24, 3 * 24} {
		least, most, err := pad(10).Sag(dock(), hours*3600)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("after %3.0f h: %.1f to %.1f mm\n", hours, least*1000, most*1000)
	}
	// Output:
	// after   0 h: 2.5 to 6.9 mm
	// after   1 h: 3.2 to 8.7 mm
	// after  24 h: 5.1 to 10.5 mm
	// after  72 h: 6.7 to 12.9 mm
}

// The same dock under people: as one load it asks for more ice than the dock
// alone takes in freeboard.
func ExampleSheet_Beside() {
	for _, people := range []int{1, 8} {
		c, err := pad(24).Beside(dock(), ice.Crossing{Mass: float64(people) * 200 * measure.Pound, People: people})
		if err != nil {
			log.Fatal(err)
		}
		words, _, _ := strings.Cut(c.Words(), " by ")
		fmt.Printf("%d: %s, %s\n", people, c.Numbers(measure.SI), words)
	}
	// Output:
	// 1: 610 mm, at least 500 mm, not ruled out
	// 8: 610 mm, at least 600 mm, not ruled out
}

// The builder's gauge: the water in the hole at the dock, read each morning.
func ExampleGauge_Fall() {
	var g ice.Gauge
	for i, mm := range []float64{44, 43, 41, 40, 38, 37} {
		g = append(g, ice.Reading{Age: float64(5-i) * measure.Day, Freeboard: mm / 1000})
	}
	f, err := g.Fall()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("falling %.1f mm a day, zero in %.0f days (%.0f to %.0f)\n", f.Rate*measure.Day*1000, f.Zero/measure.Day, math.Floor(f.Early/measure.Day), f.Late/measure.Day)
	c, err := g.Check(14 * measure.Day)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("for two more weeks:", c.Verdict(), "- move the dock before it reaches zero")
	// Output:
	// falling 1.5 mm a day, zero in 25 days (8 to 56)
	// for two more weeks: short - move the dock before it reaches zero
}

// How fast a sled may be pulled by a snowmobile: the least of the published
// limits and of half the speed of the wave under the ice.
func ExampleSheet_Hauling() {
	sled := ice.Crossing{Mass: 700, People: 1, Machine: ice.Snowmobile}
	for _, kmh := range []float64{8, 25} {
		c, err := pad(20).Hauling(ice.Haul{Load: sled, Speed: kmh * measure.KPH, Offshore: true})
		if err != nil {
			log.Fatal(err)
		}
		words, _, _ := strings.Cut(c.Words(), " by ")
		fmt.Printf("%.0f km/h, limit %.1f km/h: %s\n", kmh, c.Limit/measure.KPH, words)
	}
	// Output:
	// 8 km/h, limit 10.7 km/h: not ruled out
	// 25 km/h, limit 10.7 km/h: short
}

// The slowest wave over three depths of water.
func ExampleWave_Critical() {
	for _, depth := range []float64{2, 5, 10} {
		w := ice.Wave{Plate: ice.Plate{Thickness: 0.30, E: 5e9, Nu: 0.33}, Depth: depth}
		c, length, err := w.Critical()
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%2.0f m deep: %.0f km/h, waves of %.0f m\n", depth, c/measure.KPH, length)
	}
	// Output:
	// 2 m deep: 16 km/h, waves of 232 m
	//  5 m deep: 25 km/h, waves of 104 m
	// 10 m deep: 33 km/h, waves of 61 m
}

// How ice under one drum cracks and then breaks: knowledge, no permission.
func ExamplePlate_Breakthrough() {
	p := ice.Plate{Thickness: 0.20, E: 3e9, Nu: 0.33}
	for _, strength := range []float64{0.4e6, 0.8e6} {
		b, err := p.Breakthrough(ice.Patch{A: 0.3}, strength, 8)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%.1f MPa: first crack %.0f kN, breaks through at %.0f kN, %.1f times that\n", strength/1e6, b.FirstCrack/1e3, b.Wedges/1e3, b.Margin)
	}
	// Output:
	// 0.4 MPa: first crack 8 kN, breaks through at 21 kN, 2.7 times that
	// 0.8 MPa: first crack 16 kN, breaks through at 43 kN, 2.7 times that
}

// Beside an open crack the same force bends the ice twice as much.
func ExamplePlate_Edge() {
	p := ice.Plate{Thickness: 0.30, E: 1e9, Nu: 0.33}
	edge, err := p.Edge(1000, 0.3)
	if err != nil {
		log.Fatal(err)
	}
	within, err := p.At([]ice.Patch{{A: 0.3, Force: 1000}}, 0, 0)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("moment %.1f times, sag %.1f times\n", edge.Mx/within.Mx, edge.Deflection/within.Deflection)
	// Output:
	// moment 2.4 times, sag 3.8 times
}

// Half a metre of fresh snow on a quarter metre of ice: what it does to the
// freeboard, and how deep the slush is.
func ExampleCover_Slush() {
	c := ice.Cover{Ice: 0.25, Snow: 0.5, SnowDensity: 150}
	free, err := c.Freeboard()
	if err != nil {
		log.Fatal(err)
	}
	most, err := c.MostSnow()
	if err != nil {
		log.Fatal(err)
	}
	z, err := c.Slush(920)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("freeboard %.0f mm; %.0f mm of such snow use it up; slush %.0f mm\n", free*1000, most*1000, z*1000)
	// Output:
	// freeboard -54 mm; 138 mm of such snow use it up; slush 236 mm
}

// What shovelling a pad gains at once, and the bank beside it.
func ExamplePad_Shovelled() {
	clear := ice.Pad{A: 9, B: 7, Snow: 0.25 * 250, Bank: 1}
	p := ice.Plate{Thickness: 0.35, E: 0.2e9, Nu: 0.33} // after weeks
	for _, at := range []struct {
		what string
		x    float64
	}{{"middle", 0}, {"bank", 5}, {"beyond", 9}} {
		b, err := clear.Shovelled(p, at.x, 0)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %+.1f mm of freeboard\n", at.what, -b.Deflection*1000)
	}
	// Output:
	// middle: +14.9 mm of freeboard
	// bank: +3.0 mm of freeboard
	// beyond: -1.7 mm of freeboard
}

// What an elastic plate is given in place of ice that creeps.
func ExampleCreep_Modulus() {
	c := ice.Creep{Temperature: -5, Grain: 3 * measure.Millimetre}
	for _, hours := range []float64{1, 24, 24 * 7} {
		e, within, err := c.Modulus(0.1*measure.Megapascal, hours*3600)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%3.0f h: %.1f GPa, small strain: %t\n", hours, e/1e9, within)
	}
	// Output:
	// 1 h: 3.0 GPa, small strain: true
	//  24 h: 1.5 GPa, small strain: true
	// 168 h: 0.4 GPa, small strain: true
}

// How deep a dark drum melts in at most in a day that gives it 80 W/m² of sun.
func ExampleMeltIn() {
	d, err := ice.MeltIn(80, measure.Day)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f mm\n", d*1000)
	// Output:
	// 23 mm
}
