package rack_test

import (
	"errors"
	"fmt"
	"log"
	"math"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

const (
	ft, lbf = measure.Foot, measure.PoundForce
	modulus = 1.4e6 * measure.PSI
	thick   = 1.5 * measure.Inch // of 2x lumber, bent the weak way
	ea      = modulus * thick * 7.25 * measure.Inch
	weakWay = modulus * 7.25 * measure.Inch * thick * thick * thick / 12
)

// dock is an invented frame, 16 ft by 8 ft: two rims along x, five joists between
// them with nails and a bracket at each end (they slip, and turn a little), held at
// a hinge to the shore at the end x = 0.
func dock() *rack.Frame {
	f := &rack.Frame{}
	var south, north []int
	for i := range 5 {
		south, north = append(south, len(f.Nodes)), append(north, len(f.Nodes)+1)
		x := 4 * ft * float64(i)
		f.Nodes = append(f.Nodes, [2]float64{x, 0}, [2]float64{x, 8 * ft})
		f.Names = append(f.Names, fmt.Sprintf("S%d", i), fmt.Sprintf("N%d", i))
	}
	whole := [2]rack.End{rack.Rigid(), rack.Rigid()}
	f.Members = []rack.Member{
		{Nodes: south, EA: ea, EI: weakWay, Ends: whole, Name: "south rim"},
		{Nodes: north, EA: ea, EI: weakWay, Ends: whole, Name: "north rim"},
	}
	nailed := rack.End{Turn: 8e3, Along: 2e6, Across: 2e6}
	for i := range 5 {
		f.Members = append(f.Members, rack.Member{
			Nodes: []int{south[i], north[i]}, EA: ea, EI: weakWay,
			Ends: [2]rack.End{nailed, nailed}, Name: fmt.Sprintf("joist %d", i),
		})
	}
	f.Holds = []rack.Hold{
		{Node: 0, Along: math.Inf(1), Across: math.Inf(1), Name: "south hinge"},
		{Node: 1, Along: math.Inf(1), Name: "north hinge"},
	}
	return f
}

// A boat pulls at a cleat on the outer corner of a frame without a brace: it racks
// the frame, and pulls the last joist off its rim. Braces keep it square, but the
// joist is pulled all the same.
func ExampleFrame_Solve() {
	f := dock()
	f.Forces = []rack.Force{{Node: 9, X: 20 * lbf, Y: 60 * lbf, Name: "cleat"}}
	corners := [4]int{0, 8, 9, 1}
	for range 2 {
		s, err := f.Solve()
		if err != nil {
			log.Fatal(err)
		}
		out, err := s.Racking(corners)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("out of square by %.2f in\n", math.Abs(out.Out)/measure.Inch)
		for _, j := range s.Joints {
			if j.Member == 6 && j.End == 1 {
				fmt.Printf("%s: pull-out %s\n", j.Place, j.Pull.Format(measure.Force, measure.US))
			}
		}
		// Braces, one in each bay, to and fro between the rims.
		screws := rack.End{Along: 3e6, Across: 3e6}
		for _, n := range [][]int{{0, 3}, {3, 4}, {4, 7}, {7, 8}} {
			f.Members = append(f.Members, rack.Member{Nodes: n, EA: ea, EI: weakWay, Ends: [2]rack.End{screws, screws}, Name: "brace"})
		}
	}
	// Output:
	// out of square by 4.39 in
	// joist 4 at node N4: pull-out 29.8 lbf
	// out of square by 0.04 in
	// joist 4 at node N4: pull-out 59.0 lbf
}

// Ice pushes along a whole rim while the shore holds the other: what the rim
// bends the weak way between its joists.
func ExampleUniform() {
	f := dock()
	f.Members[0].Loads = []rack.Load{rack.Uniform(0, 16*ft, 0, 100*measure.PLF)}
	f.Holds = append(f.Holds, rack.Hold{Node: 5, Across: 1e6, Name: "post"}, rack.Hold{Node: 9, Across: 1e6, Name: "outer post"})
	s, err := f.Solve()
	if err != nil {
		log.Fatal(err)
	}
	rim := s.Lines[0].Extremes()
	worst := rim.Right
	if -rim.Left.Moment > worst.Moment {
		worst = rim.Left
	}
	fmt.Printf("rim: %s at %s\n", measure.Moment.Format(math.Abs(worst.Moment), measure.US), measure.Length.Format(worst.X, measure.US))
	fmt.Printf("middle joist pressed with %s\n", measure.Force.Format(-s.Lines[4].At(0).Axial, measure.US))
	// Output:
	// rim: 388 lbf·ft at 8 ft
	// middle joist pressed with 643 lbf
}

// Towed by one corner: nothing holds the frame, the water drags along both rims.
func ExampleDrag() {
	f := dock()
	f.Holds = nil
	f.Forces = []rack.Force{{Node: 8, X: 200 * lbf, Name: "tow line"}}
	_, err := f.Solve()
	fmt.Println("without drag:", errors.Is(err, rack.ErrImbalance))

	f.Drag.Members = []float64{1, 1, 0, 0, 0, 0, 0} // the rims, by length
	s, err := f.Solve()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("the drag takes %s and %s\n", measure.Force.Format(s.Imbalance.X, measure.US), measure.Moment.Format(s.Imbalance.Couple, measure.US))
	for _, j := range s.Joints[2*2:] { // the joists
		if j.Pull.Most > 1*lbf {
			fmt.Printf("%s: pull-out %s\n", j.Place, j.Pull.Format(measure.Force, measure.US))
		}
	}
	// Output:
	// without drag: true
	// the drag takes 200 lbf and 800 lbf·ft
}

// Nobody has measured how the joints slip: forces come as ranges, inches not at
// all.
func ExampleSolution_Racking() {
	f := dock()
	f.Forces = []rack.Force{{Node: 9, Y: 60 * lbf}}
	for i := 2; i < len(f.Members); i++ {
		f.Members[i].Ends = [2]rack.End{{Turn: math.NaN()}, {Turn: math.NaN()}}
	}
	s, err := f.Solve()
	if err != nil {
		log.Fatal(err)
	}
	_, err = s.Racking([4]int{0, 8, 9, 1})
	fmt.Println(err)
	j := s.Joints[2*6+1] // joist 4 at its north end
	fmt.Printf("%s: pull-out %s\n", j.Place, j.Pull.Format(measure.Force, measure.US))
	// Output:
	// racking: not known: slip of joints along members, slip of joints across members, turning of brackets; want a stiffness for every screw and joint; forces are given all the same
	// joist 4 at node N4: pull-out 14.2 lbf to 30.1 lbf
}

// Deck boards across the joists resist racking as couples of their screws.
func ExampleFrame_Lay() {
	f := dock()
	f.Forces = []rack.Force{{Node: 9, Y: 150 * lbf}}
	width, thickness := 5.5*measure.Inch, 1.0*measure.Inch
	for i := range 16 {
		y := (0.25 + 0.5*float64(i)) * ft
		b, err := f.Lay(rack.Board{
			From: [2]float64{0, y}, To: [2]float64{16 * ft, y},
			EA: modulus * width * thickness, EI: modulus * thickness * width * width * width / 12,
			Name: fmt.Sprintf("board %d", i),
		}, 3.5*measure.Inch, 1.5e6)
		if err != nil {
			log.Fatal(err)
		}
		f.Boards = append(f.Boards, b)
	}
	s, err := f.Solve()
	if err != nil {
		log.Fatal(err)
	}
	out, err := s.Racking([4]int{0, 8, 9, 1})
	if err != nil {
		log.Fatal(err)
	}
	most := 0.0
	for _, g := range s.Screws {
		most = math.Max(most, g.Force.Most)
	}
	fmt.Printf("%d screws, the hardest worked with %s\n", len(s.Screws), measure.Force.Format(most, measure.US))
	fmt.Printf("out of square by %.2f in\n", math.Abs(out.Out)/measure.Inch)
	// Output:
	// 160 screws, the hardest worked with 101 lbf
	// out of square by 1.11 in
}

// A panel of hinged corners has nothing to keep it square.
func ExampleMechanismError() {
	f := dock()
	for i := range f.Members {
		f.Members[i].Ends = [2]rack.End{rack.Pinned(), rack.Pinned()}
	}
	_, err := f.Solve()
	fmt.Println(err)
	// Output:
	// rack: nothing holds it at node S4 at (4.877, 0.000) m: it moves along y against the rest
}
