package fasten_test

import (
	"fmt"
	"log"
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

const (
	in = measure.Inch
	lb = measure.PoundForce
)

// must ends an example that cannot go on.
func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}

// grade looks up Southern Pine No.2 of a nominal size.
func grade(nominal string) (lumber.Grade, lumber.Section) {
	s := must(lumber.Size(nominal))
	return must(lumber.Lookup("Southern Pine", "No.2", s)), s
}

func print(checks []measure.Check) {
	for _, c := range checks {
		fmt.Printf("%s: %s: %s\n", c.Name, c.Numbers(measure.US), c.Words())
	}
}

// corner is the corner of an invented dock: the rim, a 2x8, bolted to a 4x4 post
// with two 1/2 in bolts one above the other. The post's load comes down along its
// grain, across that of the rim. A drum lies against the post.
func corner() fasten.Joint {
	rim, rimSize := grade("2x8")
	post, postSize := grade("4x4")
	return fasten.Joint{
		Fastener: must(fasten.Lookup("1/2 x 7 bolt")),
		Main: fasten.Piece{
			Grade: post, Thickness: postSize.Width, Width: postSize.Depth, Smooth: true,
			Away: true, End: 3 * in, Edge: 1.75 * in,
		},
		Side: fasten.Piece{
			Grade: rim, Thickness: rimSize.Width, Width: rimSize.Depth, Smooth: true,
			Angle: math.Pi / 2, End: 2.25 * in, Edge: 2.25 * in,
		},
		PerRow: 2, Spacing: 3 * in,
		Service:    fasten.Service{Seasoned: true, Temperature: 20},
		DrumAtMain: true,
	}
}

// One bolted corner from its load to the verdict and the list to buy.
func Example() {
	j := corner()
	y := must(j.Yield())
	fmt.Println(y)
	print(must(j.Check(fasten.Demand{Lateral: 350 * lb}, lumber.TenYears)))

	rows, buy, err := fasten.Schedule([]fasten.Place{{
		Name: "corner, rim to post", Joint: j, Alike: 4, Finish: "hot-dip galvanized",
	}}, fasten.Exposure{Treatment: "MCA", Fresh: true, Drains: true})
	if err != nil {
		log.Fatal(err)
	}
	for _, r := range rows {
		fmt.Printf("%s: %d of %s\n", r.Place, r.Count, r.Fastener)
		fmt.Println("tail", r.Tail)
		for _, d := range r.Drills {
			fmt.Printf("%s %s\n", d.What, measure.FeetInches(d.Size, 64))
		}
		print(r.Checks)
	}
	for _, b := range buy {
		fmt.Println(b.Count, b.What)
	}
	// Output:
	// Z 400 lbf, mode IIIs (Im 2152 lbf, Is 548 lbf, II 723 lbf, IIIm 868 lbf, IIIs 400 lbf, IV 518 lbf)
	// lateral: 350 lbf, at most 546 lbf: holds
	// end distance, main: 3 in, at least 1 in: holds
	// edge distance, main: 1-3/4 in, at least 3/4 in: holds
	// distance from the other edge, main: 1-3/4 in, at least 3/4 in: holds
	// spread across the grain, main: 0 in, at most 5 in: holds
	// end distance, side: 2-1/4 in, at least 1 in: holds
	// edge distance, side: 2-1/4 in, at least 2 in: holds
	// distance from the other edge, side: 2 in, at least 3/4 in: holds
	// spread across the grain, side: 3 in, at most 5 in: holds
	// spacing in the row: 3 in, at least 1-1/2 in: holds
	// shear at a joint near the end, side piece: 350 lbf, at most 467 lbf: holds
	// corner, rim to post: 8 of 1/2 bolt, 7 in long
	// tail off the drum: head at the main piece, nut at the side piece
	// through hole 9/16 in
	// bolt long enough: 7 in, at least 5-15/16 in: holds
	// washers under head and nut: 2, at least 2: holds
	// nut kept from working loose: yes; must be yes: holds
	// coating of the bolt: 2 (for treated wood that dries), at least 2 (for treated wood that dries): holds
	// coating of the washer: 2 (for treated wood that dries), at least 2 (for treated wood that dries): holds
	// coating of the nut: 2 (for treated wood that dries), at least 2 (for treated wood that dries): holds
	// one family of metal: 1, at most 1: holds
	// 10 1/2 bolt, 7 in long, hot-dip galvanized A153
	// 10 lock nut 1/2 in, hot-dip galvanized A153
	// 18 washer 1/2 in, 1-3/8 in across, hot-dip galvanized A153
}

// The joint's factors, each with its reason.
func ExampleJoint_Lateral() {
	c := must(corner().Lateral(lumber.TenYears))
	fmt.Println(c)
	for _, f := range c.Factors {
		fmt.Printf("%s %.2f %s: %s\n", f.Symbol, f.Value, f.Name, f.Why)
	}
	// Output:
	// lateral 546 lbf = 2 × 400 lbf × CD 1 × CM 0.7 × Ct 1 × Cg 0.977 × CΔ 1 (mode IIIs)
	// CD 1.00 load duration: ten years
	// CM 0.70 wet service: wet in use
	// Ct 1.00 temperature: at most 100 °F
	// Cg 0.98 group action: fasteners in a row share unequally
	// CΔ 1.00 geometry: full distances
}

// Deck boards that a drum presses up from below: what their screws hold, eight of
// them, before the drum lifts the boards off the joists.
func ExampleJoint_Pull() {
	wood, board := grade("2x8")
	screw := must(fasten.Lookup("No.10 x 3 wood screw"))
	j := fasten.Joint{
		Fastener: screw,
		Main:     fasten.Piece{Grade: wood, Thickness: board.Depth, Width: board.Width},
		Side:     fasten.Piece{Grade: wood, Thickness: 1 * in, Width: 5.5 * in},
		PerRow:   8,
	}
	for _, c := range must(j.Pull(lumber.TenMinutes)) {
		fmt.Println(c)
	}
	// The push of two drums less their weight.
	print(must(j.Check(fasten.Demand{Withdrawal: 900 * lb}, lumber.TenMinutes)))
	// Output:
	// withdrawal 2935 lbf = 8 × 328 lbf × CD 1.6 × CM 0.7 × Ct 1
	// head pull-through 1935 lbf = 8 × 216 lbf × CD 1.6 × CM 0.7 × Ct 1
	// withdrawal: 900 lbf, at most 2935 lbf: holds
	// head pull-through: 900 lbf, at most 1935 lbf: holds
}

// A hanger by the figures printed on its box. Nothing is printed for pulling the
// joist out of it. The figures are invented.
func ExampleConnector_Check() {
	wood, _ := grade("2x8")
	hanger := fasten.Connector{
		Name:    "joist hanger",
		Printed: fasten.Forces{Down: 900 * lb, Up: 500 * lb},
		For:     fasten.Forces{Down: 1, Up: 1.6}, Basis: 0.5,
		Nail: must(fasten.Lookup("10d common nail")), HeaderNails: 10, JoistNails: 4, Steel: 0.06 * in,
	}
	asked := fasten.Forces{Down: 400 * lb, Up: 100 * lb, Along: 50 * lb}
	print(must(hanger.Check(asked, wood, fasten.Service{}, lumber.TenYears)))
	// Output:
	// joist hanger, down: 400 lbf, at most 630 lbf: holds
	// joist hanger, uplift: 100 lbf, at most 219 lbf: holds
	// joist hanger, along the joist: 50.0 lbf, at most 0.0 lbf: short
}

// A drum of 55 gal under joists, tied with two parts of 1/4 in wire rope through
// its lip. Nobody has said yet what the lip carries.
func ExampleTie_Check() {
	tie := fasten.Tie{
		Strength: 7000 * lb, Efficiency: 0.80, Rounded: true, DesignFactor: 5, Parts: 2,
		Slack: 1 * in, Stiffness: 2e5,
	}
	drum := fasten.Drum{Mass: 10, Watched: true, Leak: 60, Drag: 200, Above: true}
	print(must(tie.Check(drum)))
	tie.Point = 3000
	print(must(tie.Check(drum)))
	// Output:
	// drum hanging on its tie: 813 lbf, at most 2240 lbf: holds
	// drum hanging on its tie: what it is made to: 813 lbf: no answer
	// drum hanging on its tie: 813 lbf, at most 2240 lbf: holds
	// drum hanging on its tie: what it is made to: 813 lbf, at most 674 lbf: short
}

// Metal at the water: a plated nut on a galvanized bolt.
func ExampleExposure_Check() {
	e := fasten.Exposure{Treatment: "ACQ", Fresh: true, Drains: true}
	print(must(e.Check(
		fasten.Metal{Part: "bolt", Finish: "hot-dip galvanized"},
		fasten.Metal{Part: "nut", Finish: "electroplated"},
		fasten.Metal{Part: "bracket", Finish: "stainless 304", Connector: true},
		fasten.Metal{Part: "washer"},
	)))
	// Output:
	// coating of the bolt: 2 (for treated wood that dries), at least 2 (for treated wood that dries): holds
	// coating of the nut: 1 (not in treated wood), at least 2 (for treated wood that dries): short
	// coating of the bracket: 3 (stainless, for treated wood that dries), at least 2 (for treated wood that dries): holds
	// coating of the washer: no value, at least 2 (for treated wood that dries): no answer
	// one family of metal: 2, at most 1: short
}

// A hinge pin between two dock sections, worn by a millimetre.
func ExamplePin_Check() {
	p := fasten.Pin{Diameter: 0.019, Lug: 0.010, Leaf: 0.008, Play: 0.002, Yield: 250 * measure.Megapascal}
	for _, c := range must(p.Check(8000)) {
		fmt.Printf("%s: %s: %s\n", c.Name, c.Numbers(measure.SI), c.Words())
	}
	// Output:
	// pin in double shear: 14.108 MPa, at most 100.00 MPa: holds
	// pin in bending: 50.491 MPa, at most 187.50 MPa: holds
	// pin bearing on its plates: 42.105 MPa, at most 225.00 MPa: holds
}

// How far a frame's corner racks by the play of four bolted joints alone, and
// under a push of 200 lbf.
func ExampleSlip() {
	j := corner()
	fmt.Printf("%.3f in\n", must(fasten.Slip(0, j, j, j, j))/in)
	fmt.Printf("%.3f in\n", must(fasten.Slip(200*lb, j, j, j, j))/in)
	// Output:
	// 0.250 in
	// 0.256 in
}

func ExampleLookup() {
	f := must(fasten.Lookup("#10 x 3 screws"))
	fmt.Println(f)
	fmt.Printf("root %.3f in, source %s\n", f.Root/in, f.Source)
	_, err := fasten.Lookup("17d nail")
	fmt.Println(err != nil)
	// Output:
	// No.10 wood screw, 3 in long
	// root 0.152 in, source National Design Specification for Wood Construction (American Wood Council), 2018, allowable stress design, Appendix L, Table L3; Table I1 (as quoted)
	// true
}
