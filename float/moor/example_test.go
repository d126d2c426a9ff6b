package moor_test

import (
	"fmt"
	"log"
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// invented is the dock of the examples, four lines of chain and nylon to screw
// anchors off its corners, 16 by 8 ft in 12 ft of water. All figures are invented.
func invented() *moor.Mooring {
	must := func(g moor.Gear, err error) moor.Gear {
		if err != nil {
			log.Fatal(err)
		}
		return g
	}
	chain := must(moor.Lookup("chain grade 30", "3/8 in"))
	rope := must(moor.Lookup("nylon 3-strand", "3/4 in"))
	shackle := must(moor.Lookup("shackle", "1/2 in"))
	splice, err := moor.Factor("end of rope", "eye splice on thimble")
	if err != nil {
		log.Fatal(err)
	}
	rope.Ends = []measure.Factor{splice}
	if rope.Design, err = moor.Factor("design", "rope, least"); err != nil {
		log.Fatal(err)
	}
	cleat := moor.Gear{
		Name: "cleat", Break: 6000 * measure.PoundForce,
		Source: &measure.Source{Title: "Invented for the example", Status: measure.OwnChoice},
	}
	const ft = measure.Foot
	m := &moor.Mooring{}
	for i, c := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		m.Ties = append(m.Ties, moor.Tie{
			Name: [4]string{"lake right", "shore right", "shore left", "lake left"}[i],
			Line: moor.Line{Pieces: []moor.Piece{
				{Gear: chain, Length: 25 * ft, Weight: 1.2 * measure.PLF},
				{Gear: rope, Length: 15 * ft, Weight: 0.02 * measure.PLF, Stretch: 25e3 * measure.PoundForce},
			}},
			At: [2]float64{8 * ft * c[0], 4 * ft * c[1]}, Height: 1 * ft,
			Foot: [2]float64{(8 + 25.5) * ft * c[0], (4 + 25.5) * ft * c[1]}, FootZ: -12 * ft,
			Fitting: cleat, Links: []moor.Gear{shackle},
			Ground: moor.Rated{Name: "screw anchor by its pull test", Hold: 2000 * measure.PoundForce, Steepest: 20 * math.Pi / 180},
		})
	}
	return m
}

// storm is wind of 25 mph over the hour on the sides of the dock, people and a
// boat alongside, and the waves it raises over half a mile of lake to the south
// and west. The dock's x axis points north.
func storm() moor.Storm {
	const sqft, ft = measure.Foot * measure.Foot, measure.Foot
	return moor.Weather{
		Wind: moor.Wind{Speed: 25 * measure.MPH},
		Above: []moor.Face{
			{Name: "frame and drums", End: 8 * sqft, Side: 16 * sqft, Height: 0.2, Shape: 1.2},
			{Name: "four people", End: 28 * sqft, Side: 28 * sqft, Height: 1.3, Shape: 1.3},
			{Name: "boat", End: 20 * sqft, Side: 50 * sqft, Height: 0.6, Shape: 1.5, At: [2]float64{0.8, 2.2}},
		},
		Fetches: moor.Fetches{100, 100, 200, 400, 800, 800, 600, 200}, // N, NE, E and so on
		Depth:   12 * ft, Length: 16 * ft, Breadth: 8 * ft, Draft: 1 * ft, Freeboard: 1 * ft,
	}.Load
}

// Four lines, one storm, and the lake two feet down in August: does every part
// hold at both levels, how far does the dock go, and what if one line is lost?
func ExampleMooring_Survey() {
	m := invented()
	for _, level := range []float64{0, -2 * measure.Foot} {
		s, err := m.Survey([]float64{level}, storm(), 72)
		if err != nil {
			log.Fatal(err)
		}
		worst := s.Worst()
		fmt.Printf("lake at %+.0f ft: moves %.1f ft, nearest its limit: %s, %.0f of %.0f lbf: %v\n",
			level/measure.Foot, s.Offset/measure.Foot, worst.Name, worst.Value/measure.PoundForce, worst.Limit/measure.PoundForce, worst.Verdict())
	}
	losses, err := m.Losses([]float64{0, -2 * measure.Foot}, storm(), 72)
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range losses[:1] {
		fmt.Printf("without %s: moves %.0f ft, %s: %v\n", s.Lost, s.Offset/measure.Foot, s.Worst().Name, s.Worst().Verdict())
	}
	bands, err := m.Bands(-8*measure.Foot, 12*measure.Foot)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%s: works from %+.1f ft (%v below) to %+.1f ft (%v above)\n", bands[0].Tie,
		bands[0].Low/measure.Foot, bands[0].Below, bands[0].High/measure.Foot, bands[0].Above)
	// Output:
	// lake at +0 ft: moves 5.3 ft, nearest its limit: shore right, ground: screw anchor by its pull test, 535 of 667 lbf: holds
	// lake at -2 ft: moves 6.2 ft, nearest its limit: shore right, ground: screw anchor by its pull test, 526 of 667 lbf: holds
	// without lake right: moves 19 ft, shore right, ground: screw anchor by its pull test: short
	// lake right: works from -8.0 ft (touching below) to +4.3 ft (taut above)
}

// How long may the lines be, so that the dock stays within seven feet and
// nothing is overloaded, from two feet down to a foot up?
func ExampleMooring_Lengths() {
	const ft = measure.Foot
	short, long, found, err := invented().Lengths([]float64{-2 * ft, 0, 1 * ft}, storm(), 24, 7*ft, 4*ft)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%v: from %+.1f ft to %+.1f ft\n", found, short/ft, long/ft)
	// Output: true: from -1.5 ft to +0.5 ft
}

// A chain with part of it on the bottom, and pulled until all of it hangs
// (invented figures).
func ExampleLine_At() {
	line := moor.Line{Pieces: []moor.Piece{{Length: 12, Weight: 20}}}
	var h moor.Hang
	var err error
	for _, reach := range []float64{8, 10.99, 11.46, 11.59} {
		if h, err = line.At(reach, 3, h); err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%5.2f m off: %v, %.0f N at the dock, %.0f N of lift at the anchor\n", reach, h.Regime, h.Tension(), h.Lift)
	}
	// Output:
	// 8.00 m off: slack, 60 N at the dock, 0 N of lift at the anchor
	// 10.99 m off: touching, 160 N at the dock, 0 N of lift at the anchor
	// 11.46 m off: touching, 454 N at the dock, 0 N of lift at the anchor
	// 11.59 m off: lifted, 1015 N at the dock, 126 N of lift at the anchor
}

// How high are the waves of a 15 m/s wind over 2 km? Six methods, one lake.
func ExampleFetch_Spread() {
	seas, err := moor.Fetch{Wind: 15, Length: 2000}.Spread()
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range seas {
		fmt.Printf("%-11s %.2f m\n", s.Method, s.Height)
	}
	// Output:
	// JONSWAP     0.34 m
	// CEM         0.36 m
	// SPM 1984    0.45 m
	// revised SMB 0.46 m
	// Stevenson   0.48 m
	// SMB         0.53 m
}

// What does a half-inch nylon rope bear, spliced on a thimble and wet?
func ExampleGear_Check() {
	rope, err := moor.Lookup("nylon 3-strand", "1/2 in")
	if err != nil {
		log.Fatal(err)
	}
	splice, err := moor.Factor("end of rope", "eye splice on thimble")
	if err != nil {
		log.Fatal(err)
	}
	rope.Ends = []measure.Factor{splice}
	c, err := rope.Check(400 * measure.PoundForce)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(c.Numbers(measure.US)+":", c.Verdict())
	for _, f := range c.Factors {
		fmt.Printf("%s × %.3f\n", f.Name, f.Value)
	}
	// Output:
	// 400 lbf, at most 367 lbf: short
	// eye splice on thimble × 0.900
	// wet nylon × 0.850
	// rope × 0.083
}

// How heavy a block holds 250 lbf on sand, pulled level and lifted with 60 lbf?
func ExampleDeadWeight_Needed() {
	block := moor.DeadWeight{Density: 2350, Bottom: "sand"}
	mass, err := block.Needed(250*measure.PoundForce, 60*measure.PoundForce)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f lb, dry\n", mass/measure.Pound)
	// Output: 3006 lb, dry
}

// A boat of 3300 lb bumps the dock at 1.5 ft/s: what must a fender of 4 in give?
func ExampleFender_Stop() {
	e, err := moor.Impact{Mass: 3300 * measure.Pound, Speed: 1.5 * measure.Foot}.Energy()
	if err != nil {
		log.Fatal(err)
	}
	force, _, err := moor.Fender{Stroke: 4 * measure.Inch}.Stop(e)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f J, %.0f lbf\n", e, force/measure.PoundForce)
	// Output: 282 J, 1246 lbf
}

// A new dock pinned to an older float, in every state that comes (invented
// waterplanes, and a crowd that leans the new dock by the pins and to one side):
// what is the step, what does a pin take, and how far must the hinge turn?
func ExampleHinge_Tie() {
	hinge := moor.Hinge{Width: 6 * measure.Foot, Pins: 2, Diameter: 0.75 * measure.Inch, Plate: 0.375 * measure.Inch}
	least, most := math.Inf(1), math.Inf(-1)
	for _, state := range []struct {
		name        string
		level, deck float64 // ft, and in by which the new dock's pin line stands over the water
		tilt, heel  float64 // rad
	}{
		{"at launch, dry", 1, 15.5, 0, 0},
		{"empty", 0, 15, 0, 0},
		{"crowded at the pins", 0, 13, -0.03, 0.02},
		{"high water", 1.5, 15, 0, 0},
		{"low water", -2, 15, 0, 0},
	} {
		dock, err1 := moor.Afloat(state.level*measure.Foot, state.deck*measure.Inch, 4, 9, 4, 2.4)
		old, err2 := moor.Afloat(state.level*measure.Foot, 14*measure.Inch, 6, 18, 6, 3)
		if err1 != nil || err2 != nil {
			log.Fatal(err1, err2)
		}
		dock.Tilt, dock.Heel = state.tilt, state.heel
		j, err := hinge.Tie(dock, old, 300*measure.PoundForce, 150*measure.PoundForce, 400*measure.PoundForce*measure.Foot)
		if err != nil {
			log.Fatal(err)
		}
		least, most = math.Min(least, j.Bend), math.Max(most, j.Bend)
		fmt.Printf("%s: step %+.1f in, %+.0f lbf on the neighbour, a pin takes %.0f lbf\n",
			state.name, j.Step/measure.Inch, j.Lift/measure.PoundForce, j.Pin/measure.PoundForce)
	}
	waves, err := moor.Sea{Height: 0.3, Period: 2.2}.Swing(4)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("the hinge turns from %.0f to %+.0f degrees\n", (least-waves)*180/math.Pi, (most+waves)*180/math.Pi)
	// Output:
	// at launch, dry: step +1.5 in, +54 lbf on the neighbour, a pin takes 231 lbf
	// empty: step +1.0 in, +36 lbf on the neighbour, a pin takes 230 lbf
	// crowded at the pins: step -1.0 in, -36 lbf on the neighbour, a pin takes 242 lbf
	// high water: step +1.0 in, +36 lbf on the neighbour, a pin takes 230 lbf
	// low water: step +1.0 in, +36 lbf on the neighbour, a pin takes 230 lbf
	// the hinge turns from -16 to +14 degrees
}

// How long a ramp keeps 1 in 3 when the deck falls five feet under its hinge?
func ExampleRamp_Needed() {
	l, err := moor.Ramp{Width: 1, Shore: 5 * measure.Foot}.Needed(0, 2*measure.Foot)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.1f ft\n", l/measure.Foot)
	// Output: 15.8 ft
}

// A 16 ft ramp from a wall four feet over the usual water: how steep is it when
// the lake is two feet down, and what does it lay on the dock?
func ExampleRamp_Check() {
	const ft = measure.Foot
	r := moor.Ramp{Length: 16 * ft, Width: 3 * ft, Mass: 180 * measure.Pound, Shore: 4 * ft, Deck: 1.5 * ft}
	c, err := r.Check(-2*ft, 1*ft)
	if err != nil {
		log.Fatal(err)
	}
	w, err := r.Reaction(25*measure.PSF, 0)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("1 in %.1f, at most 1 in %.0f: %v; %.0f lbf on the dock\n", 1/c.Value, 1/c.Limit, c.Verdict(), w/measure.PoundForce)
	// Output: 1 in 3.4, at most 1 in 3: holds; 690 lbf on the dock
}

// What pull brings 2500 lb of wet dock up a slope of 1 in 6 on skids?
func ExampleHaul_Pull() {
	p, err := moor.Haul{Mass: 2500 * measure.Pound, Slope: math.Atan(1. / 6)}.Pull()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f lbf\n", p/measure.PoundForce)
	// Output: 1644 lbf
}

// What does a dock that is pinned to an older float pass on to it in the storm?
// With its own load this is the storm of the older float's survey.
func ExampleMooring_Passed() {
	m := invented()
	m.Ties = m.Ties[:1] // the lake side keeps one line
	for i, y := range []float64{3, -3} {
		m.Posts = append(m.Posts, moor.Post{
			Name: [2]string{"right pin", "left pin"}[i], At: [2]float64{-8 * measure.Foot, y * measure.Foot}, Stiffness: 1e6,
		})
	}
	passed, err := m.Passed(0, storm())(math.Pi / 2)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f lbf across\n", passed.Y/measure.PoundForce)
	// Output: 421 lbf across
}

// What do 18 inches of snow weigh on a deck where the code has 40 psf on the ground?
func ExampleSnow_Pressure() {
	p, err := moor.Snow{Ground: 40 * measure.PSF, Depth: 18 * measure.Inch}.Pressure()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.0f psf\n", p/measure.PSF)
	// Output: 29 psf
}

// How is an eye made in 3/8 in wire rope?
func ExampleClipsFor() {
	c, err := moor.ClipsFor(3. / 8 * measure.Inch)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d clips, %.2f in apart, %.1f in turned back, nuts at %.0f lbf·ft\n",
		c.Number, c.Spacing/measure.Inch, c.Turnback/measure.Inch, c.Torque/(measure.PoundForce*measure.Foot))
	// Output: 3 clips, 2.25 in apart, 6.5 in turned back, nuts at 45 lbf·ft
}
