package frame_test

import (
	"errors"
	"fmt"
	"log"
	"math"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// A joist of two spans with an overhang: what every support carries and where it
// bends most. The lumber and the load are invented.
func ExampleBeam_Solve() {
	const (
		e    = 1.4e6 * measure.PSI
		b, h = 1.5 * measure.Inch, 7.25 * measure.Inch // a 2x8
	)
	joist := frame.Beam{
		Length: 18 * measure.Foot,
		EI:     e * b * h * h * h / 12,
		Rests: []frame.Rest{
			{At: 0, Name: "ledger"},
			{At: 8 * measure.Foot, Name: "middle beam"},
			{At: 16 * measure.Foot, Name: "outer beam"},
		},
		Loads: []frame.Load{frame.Uniform(0, 18*measure.Foot, 66*measure.PLF)},
	}
	line, err := joist.Solve()
	if err != nil {
		log.Fatal(err)
	}
	for i, p := range line.Push {
		fmt.Printf("%s: %s\n", line.Places[i], measure.Force.Format(p, measure.US))
	}
	most := line.Extremes()
	fmt.Printf("sags %s at %s\n", measure.Moment.Format(most.Sag.Moment, measure.US), measure.Length.Format(most.Sag.X, measure.US))
	fmt.Printf("hogs %s at %s\n", measure.Moment.Format(-most.Hog.Moment, measure.US), measure.Length.Format(most.Hog.X, measure.US))
	fmt.Printf("goes down %.2f in at %s\n", -most.Down.Deflection/measure.Inch, measure.Length.Format(most.Down.X, measure.US))
	// The shear that counts for sawn lumber is a depth away from the support.
	fmt.Printf("shear a depth right of the middle beam: %s\n", measure.Force.Format(line.At(8*measure.Foot+h).Shear, measure.US))
	// Output:
	// ledger: 202 lbf
	// middle beam: 635 lbf
	// outer beam: 351 lbf
	// sags 310 lbf·ft at 3 ft 0-3/4 in
	// hogs 495 lbf·ft at 8 ft
	// goes down 0.04 in at 3 ft 5-1/4 in
	// shear a depth right of the middle beam: 270 lbf
}

// A joist over three springs, which share a load as far as the joist is stiff.
func ExampleBeam_Solve_springs() {
	spring := frame.Spring(9000) // N/m
	joist := frame.Beam{
		Length: 3.6, // m
		EI:     2e5, // N·m²
		Rests:  []frame.Rest{{At: 0, Support: spring}, {At: 1.8, Support: spring}, {At: 3.6, Support: spring}},
		Loads:  []frame.Load{frame.Point(1.8, 1500)},
	}
	line, err := joist.Solve()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("outer springs %.0f N each, middle spring %.0f N\n", line.Push[0], line.Push[1])
	fmt.Printf("moment under the load %.0f N·m\n", line.At(1.8).Moment)
	// Output:
	// outer springs 486 N each, middle spring 528 N
	// moment under the load 874 N·m
}

// A beam on blocks that only push: a load on the overhang lifts it off a block.
func ExampleOneWay() {
	block := frame.OneWay(2e6)
	beam := frame.Beam{
		Length: 5, EI: 1.9e5,
		Rests: []frame.Rest{{At: 0, Support: block, Name: "first block"}, {At: 2, Support: block, Name: "second block"}, {At: 4, Support: block, Name: "third block"}},
		Loads: []frame.Load{frame.Uniform(0, 5, 100), frame.Point(5, 600)},
	}
	line, err := beam.Solve()
	if err != nil {
		log.Fatal(err)
	}
	for i, p := range line.Push {
		if p == 0 {
			fmt.Printf("%s: idle, the beam is %.0f mm above it\n", line.Places[i], 1e3*line.At(beam.Rests[i].At).Deflection)
			continue
		}
		fmt.Printf("%s: %.0f N\n", line.Places[i], p)
	}
	// Output:
	// first block: 38 N
	// second block: idle, the beam is 1 mm above it
	// third block: 1062 N
}

// A free motion is named, not answered with enormous numbers.
func ExampleMechanismError() {
	beam := frame.Beam{
		Length: 4, EI: 1e5, Hinges: []float64{2},
		Rests: []frame.Rest{{At: 0}, {At: 4}},
		Loads: []frame.Load{frame.Point(1, 500)},
	}
	_, err := beam.Solve()
	var free *frame.MechanismError
	if errors.As(err, &free) {
		fmt.Println(free)
	}
	// Output:
	// frame: nothing holds it at x = 2.000 m: it folds at the hinge at x = 2.000 m
}

// A live load on the worst of three spans, beside the weight that is always there.
func ExampleBeam_Patterns() {
	beam := frame.Beam{
		Length: 9, EI: 2e5,
		Rests: []frame.Rest{{At: 0}, {At: 3}, {At: 6}, {At: 9}},
		Loads: []frame.Load{frame.Uniform(0, 9, 300)},
	}
	cases, err := beam.Patterns(1200)
	if err != nil {
		log.Fatal(err)
	}
	worst, err := beam.Envelope(cases)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d patterns\n", len(cases))
	fmt.Printf("sags at most %.0f N·m, hogs at most %.0f N·m\n", worst.Sag.Moment, -worst.Hog.Moment)
	fmt.Printf("the end support takes %.0f to %.0f N\n", worst.Push[0].Least, worst.Push[0].Most)
	// Output:
	// 8 patterns
	// sags at most 1307 N·m, hogs at most 1530 N·m
	// the end support takes 180 to 1980 N
}

// A person of 800 N walks along a beam on three springs.
func ExampleBeam_Walk() {
	spring := frame.Spring(20000)
	beam := frame.Beam{
		Length: 6, EI: 1.9e5,
		Rests: []frame.Rest{{At: 0.5, Support: spring}, {At: 3, Support: spring}, {At: 5.5, Support: spring}},
	}
	worst, err := beam.Walk([]frame.Load{frame.Point(0, 800)}, 0.1, 3)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("the first spring takes %.0f to %.0f N\n", worst.Push[0].Least, worst.Push[0].Most)
	fmt.Printf("over the middle spring it bends from %.0f to %.0f N·m\n", worst.Stations[0].Moment.Least, worst.Stations[0].Moment.Most)
	fmt.Printf("lowest %.0f mm\n", -1e3*worst.Down.Deflection)
	// Output:
	// the first spring takes -174 to 786 N
	// over the middle spring it bends from -435 to 564 N·m
	// lowest 47 mm
}

// Where must a load stand to bend a beam of two spans most over its support?
func ExampleBeam_MomentInfluence() {
	beam := frame.Beam{Length: 6, EI: 2e5, Rests: []frame.Rest{{At: 0}, {At: 3}, {At: 6}}}
	line, err := beam.MomentInfluence(3)
	if err != nil {
		log.Fatal(err)
	}
	x, effect := line.Least()
	fmt.Printf("1 N at x = %.2f m gives %.3f N·m\n", x, effect)
	plus, minus := line.Area(0, 6)
	fmt.Printf("1 N/m everywhere gives %.3f N·m\n", plus+minus)
	// Output:
	// 1 N at x = 1.73 m gives -0.289 N·m
	// 1 N/m everywhere gives -1.125 N·m
}

// One frame, one crowd: what each drum carries. A raft of two stringers, three
// cross members and four drums, with six people at one end. All data invented.
func ExampleGrillage_Solve() {
	const (
		e, g = 9.5e9, 9.5e9 / 16 // Pa
		b, h = 0.038, 0.184      // m, dressed
	)
	j, err := frame.Torsion(b, h)
	if err != nil {
		log.Fatal(err)
	}
	raft := frame.Grillage{
		Names: []string{"SW", "S", "SE", "NW", "N", "NE"},
		Nodes: [][2]float64{{0, 0}, {2.4, 0}, {4.8, 0}, {0, 2.4}, {2.4, 2.4}, {4.8, 2.4}},
	}
	member := frame.Member{EI: e * b * h * h * h / 12, GJ: g * j}
	for _, ends := range [][2]int{{0, 1}, {1, 2}, {3, 4}, {4, 5}, {0, 3}, {1, 4}, {2, 5}} {
		member.I, member.J = ends[0], ends[1]
		member.Loads = []frame.Load{frame.Uniform(0, 2.4, 250)} // frame and deck
		raft.Members = append(raft.Members, member)
	}
	for _, corner := range []int{0, 2, 3, 5} {
		raft.Seats = append(raft.Seats, frame.Seat{
			Nodes: []int{corner}, Name: "drum " + raft.Names[corner], Support: barrel(0.29, 0.88, 9806.65),
		})
	}
	raft.Forces = make([][3]float64, 6)
	raft.Forces[2][0], raft.Forces[5][0] = -700, -1200 // the crowd at the east end

	s, err := raft.Solve()
	if err != nil {
		log.Fatal(err)
	}
	for i, push := range s.Push {
		fmt.Printf("%s carries %.0f N, sunk %.0f mm\n", s.Places[i], push, -1e3*s.Move[raft.Seats[i].Nodes[0]][0])
	}
	most := 0.0
	for i := range s.Lines {
		e := s.Lines[i].Extremes()
		most = max(most, e.Sag.Moment, -e.Hog.Moment)
	}
	fmt.Printf("largest moment in a member %.0f N·m\n", most)
	// Output:
	// drum SW carries 1025 N, sunk 267 mm
	// drum SE carries 1775 N, sunk 422 mm
	// drum NW carries 1075 N, sunk 277 mm
	// drum NE carries 2225 N, sunk 546 mm
	// largest moment in a member 1089 N·m
}

// A person stands at the edge of a narrow finger. The heights of what stands on
// it and of the drums decide how far it heels. All data invented.
func ExampleWeight() {
	finger := frame.Grillage{
		Nodes: [][2]float64{{0, -0.6}, {3, -0.6}, {6, -0.6}, {0, 0.6}, {3, 0.6}, {6, 0.6}},
	}
	for _, ends := range [][2]int{{0, 1}, {1, 2}, {3, 4}, {4, 5}, {0, 3}, {1, 4}, {2, 5}} {
		finger.Members = append(finger.Members, frame.Member{I: ends[0], J: ends[1], EI: 1.9e5, GJ: 1.8e3})
	}
	for n := range finger.Nodes {
		finger.Seats = append(finger.Seats, frame.Seat{
			Nodes: []int{n}, Support: barrel(0.29, 0.88, 9806.65),
			Heights: [2]float64{-0.35, -0.50}, // the drum's axis; its centre of buoyancy
		})
		finger.Weights = append(finger.Weights, frame.Weight{Node: n, Force: 300, Height: 0.05})
	}
	finger.Weights = append(finger.Weights, frame.Weight{Node: 4, Force: 800, Height: 1})

	heel := func(g frame.Grillage) float64 {
		s, err := g.Solve()
		if err != nil {
			log.Fatal(err)
		}
		return -s.Move[4][1] * 180 / math.Pi
	}
	with := heel(finger)
	for i := range finger.Seats {
		finger.Seats[i].Heights = [2]float64{}
	}
	for i := range finger.Weights {
		finger.Weights[i].Height = 0
	}
	fmt.Printf("heels %.1f degrees; without the heights it would seem to be %.1f\n", with, heel(finger))
	// Output:
	// heels 4.1 degrees; without the heights it would seem to be 3.3
}
