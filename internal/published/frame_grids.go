package published

import (
	"fmt"
	"math"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// frameTorsion compares the torsion constants of rectangles.
func frameTorsion() ([]Check, error) {
	table, err := rows("frame_torsion")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		ratio, err := r.num("b_over_t")
		if err != nil {
			return nil, err
		}
		beta := func() (float64, error) { return frame.Torsion(1, ratio) }
		exact := Check{
			Package: "frame", Quantity: "J/(b t³) at b/t = " + r["b_over_t"],
			Source:  measure.Source{Title: "St Venant's series for a rectangle", Status: measure.Independent},
			Printed: r["exact"], Compute: func() (float64, error) {
				j, err := beta()
				return j / ratio, err
			},
		}
		out = append(out, exact)
		if r["printed"] != "" {
			exact.Source = measure.Source{Title: "Appendix tables of books on the strength of materials", Status: measure.Read}
			exact.Printed = r["printed"]
			out = append(out, exact)
		}
	}
	for _, c := range []struct {
		size, inches4 string
		b, h          float64
	}{
		{"2x4", "2.875342", 1.5, 3.5},
		{"2x6", "5.123976", 1.5, 5.5},
		{"2x8", "7.092706", 1.5, 7.25},
		{"2x10", "9.342705", 1.5, 9.25},
		{"2x12", "11.592705", 1.5, 11.25},
		{"4x4", "21.095338", 3.5, 3.5},
		{"6x6", "128.636755", 5.5, 5.5},
	} {
		out = append(out, Check{
			Package: "frame", Quantity: "J of a dressed " + c.size, Unit: "in⁴", Printed: c.inches4,
			Source: measure.Source{Title: "St Venant's series for a rectangle", Status: measure.Independent},
			Compute: func() (float64, error) {
				j, err := frame.Torsion(c.b*measure.Inch, c.h*measure.Inch)
				return j / math.Pow(measure.Inch, 4), err
			},
		})
	}
	return out, nil
}

// frameAfloat compares the heel of a stiff frame on a box of water with the
// metacentric height of the box. Four prisms at Gauss's points have the box's
// own second moments.
func frameAfloat() ([]Check, error) {
	var out []Check
	for _, c := range []struct {
		name                     string
		length, width, draft, kg float64
	}{{"broad dock", 6, 4, 0.3, 0.8}, {"narrow finger", 8, 1.2, 0.25, 0.5}} {
		const gamma = 9806.65
		weight := gamma * c.length * c.width * c.draft
		gm := c.draft/2 + c.width*c.width/(12*c.draft) - c.kg
		g := &frame.Grillage{Forces: make([][3]float64, 4)}
		x, y := c.length/(2*math.Sqrt(3)), c.width/(2*math.Sqrt(3))
		for n, p := range [][2]float64{{-x, -y}, {x, -y}, {x, y}, {-x, y}} {
			g.Nodes = append(g.Nodes, p)
			g.Members = append(g.Members, frame.Member{I: n, J: (n + 1) % 4, EI: 1e12, GJ: 1e12})
			g.Weights = append(g.Weights, frame.Weight{Node: n, Force: weight / 4, Height: c.kg - 0.45})
			g.Seats = append(g.Seats, frame.Seat{
				Nodes: []int{n}, Support: frame.Spring(weight / c.draft / 4),
				Heights: [2]float64{c.draft/2 - 0.45, c.draft/2 - 0.45},
			})
		}
		const moment = 1.0 // N m
		g.Forces[2][1] = moment
		out = append(out, frameGrid(measure.Source{Title: "Metacentric height of a box afloat", Locator: "GM = T/2 + B²/(12 T) - KG", Status: measure.Exact},
			c.name+": GM from its heel", fmt.Sprintf("%.9g", gm), "m", 1e-6, g,
			func(s *frame.Solution) float64 { return moment / (weight * s.Move[2][1]) }))
	}
	return out, nil
}

// frameHeld returns rigid seats that hold the rotations of nodes as well.
func frameHeld(nodes ...int) []frame.Seat {
	var out []frame.Seat
	for _, n := range nodes {
		out = append(out, frame.Seat{Nodes: []int{n}, Clamped: true})
	}
	return out
}

// frameGrid builds a check of one quantity of a grillage.
func frameGrid(src measure.Source, quantity, printed, unit string, relative float64, g *frame.Grillage, of func(s *frame.Solution) float64) Check {
	return Check{
		Package: "frame", Source: src, Quantity: quantity, Printed: printed, Unit: unit, Relative: relative,
		Compute: func() (float64, error) {
			s, err := g.Solve()
			if err != nil {
				return 0, err
			}
			return of(s), nil
		},
	}
}

// frameGrids holds the grids of textbooks. Where a book's own hand arithmetic
// is rough, its printed digits stay, with the reason; the exact answer of its
// data stands beside.
func frameGrids() ([]Check, error) {
	exact := func(name string) measure.Source {
		return measure.Source{Title: "Solved by an independent program", Locator: name, Status: measure.Independent}
	}
	because := func(c Check, why string, within float64) Check {
		c.Because, c.Within = why, within
		return c
	}
	var out []Check

	// Logan 5.4, in kip and inch.
	logan4 := measure.Source{Title: "Logan, A First Course in the Finite Element Method", Locator: "grid Example 5.4", Status: measure.Quoted}
	four := &frame.Grillage{
		Nodes:  [][2]float64{{240, 120}, {0, 240}, {0, 0}, {240, 0}},
		Seats:  frameHeld(1, 2, 3),
		Forces: [][3]float64{{-100}, {}, {}, {}},
	}
	for _, j := range []int{1, 2, 3} {
		four.Members = append(four.Members, frame.Member{I: 0, J: j, EI: 30e3 * 400, GJ: 12e3 * 110})
	}
	w := func(s *frame.Solution) float64 { return s.Move[0][0] }
	thx := func(s *frame.Solution) float64 { return math.Abs(s.Move[0][1]) }
	thy := func(s *frame.Solution) float64 { return math.Abs(s.Move[0][2]) }
	out = append(out,
		because(frameGrid(logan4, "deflection of node 1", "-2.83", "in", 0, four, w), "the book rounds its stiffness terms to three figures; exact -2.82494", 0.0051),
		frameGrid(logan4, "rotation of node 1 about the 20 ft axis", "0.0295", "rad", 0, four, thx),
		frameGrid(logan4, "rotation of node 1 about the other axis", "0.0169", "rad", 0, four, thy),
		frameGrid(exact("Logan, Example 5.4"), "deflection of node 1", "-2.824944559", "in", 1e-9, four, w),
		frameGrid(exact("Logan, Example 5.4"), "rotation about the 20 ft axis", "0.02946179033", "rad", 1e-9, four, thx),
		frameGrid(exact("Logan, Example 5.4"), "rotation about the other axis", "0.01689063254", "rad", 1e-9, four, thy),
	)
	for _, c := range []struct {
		member                int
		shear, torque, m1, m2 string
	}{
		{0, "19.124166", "166.791269", "2479.386580", "2652.165569"},
		{2, "88.103095", "185.796958", "2340.006662", "8232.364729"},
	} {
		name := fmt.Sprintf("member 1-%d: ", c.member+2)
		far := func(s *frame.Solution) frame.Diagram { return s.Lines[c.member].At(math.Inf(1)) }
		out = append(out,
			frameGrid(exact("Logan, Example 5.4"), name+"shear", c.shear, "kip", 0, four, func(s *frame.Solution) float64 { return math.Abs(s.Lines[c.member].At(0).Shear) }),
			frameGrid(exact("Logan, Example 5.4"), name+"torque", c.torque, "kip in", 0, four, func(s *frame.Solution) float64 { return math.Abs(s.Torque[c.member]) }),
			frameGrid(exact("Logan, Example 5.4"), name+"moment at 1", c.m1, "kip in", 0, four, func(s *frame.Solution) float64 { return math.Abs(s.Lines[c.member].At(0).Moment) }),
			frameGrid(exact("Logan, Example 5.4"), name+"moment at the far end", c.m2, "kip in", 0, four, func(s *frame.Solution) float64 { return math.Abs(far(s).Moment) }),
		)
	}

	// Logan 5.5: two members at right angles, kN and m.
	logan5 := measure.Source{Title: "Logan, A First Course in the Finite Element Method", Locator: "grid Example 5.5", Status: measure.Quoted}
	five := &frame.Grillage{
		Nodes: [][2]float64{{3, 0}, {0, 0}, {3, 3}}, Seats: frameHeld(1, 2), Forces: [][3]float64{{-22}, {}, {}},
	}
	for _, j := range []int{1, 2} {
		five.Members = append(five.Members, frame.Member{I: 0, J: j, EI: 210e6 * 16.6e-5, GJ: 84e6 * 4.6e-5})
	}
	torque := func(s *frame.Solution) float64 { return math.Abs(s.Torque[0]) }
	hand := "the book's hand arithmetic; closed form theta = (P/4) L²/(EI + GJ)"
	out = append(out,
		because(frameGrid(logan5, "deflection of node 2", "-2.59", "mm", 0, five, func(s *frame.Solution) float64 { return 1e3 * s.Move[0][0] }), hand, 0.038),
		because(frameGrid(logan5, "rotation at 2", "0.00126", "rad", 0, five, thx), hand, 2e-5),
		because(frameGrid(logan5, "torque", "1.50", "kN m", 0, five, torque), hand, 0.15),
		frameGrid(logan5, "shear of a member", "11.0", "kN", 0, five, func(s *frame.Solution) float64 { return math.Abs(s.Lines[0].At(0).Shear) }),
		because(frameGrid(logan5, "moment at a wall", "31.0", "kN m", 0, five, func(s *frame.Solution) float64 { return math.Abs(s.Lines[0].At(3).Moment) }), hand, 0.36),
		frameGrid(exact("Logan, Example 5.5"), "deflection of node 2", "-2.627398345", "mm", 1e-9, five, func(s *frame.Solution) float64 { return 1e3 * s.Move[0][0] }),
		frameGrid(exact("Logan, Example 5.5"), "rotation at 2", "0.001278277037", "rad", 1e-9, five, thx),
		frameGrid(exact("Logan, Example 5.5"), "torque", "1.646420824", "kN m", 1e-9, five, torque),
		frameGrid(exact("Logan, Example 5.5"), "moment at a wall", "31.35357918", "kN m", 1e-9, five, func(s *frame.Solution) float64 { return math.Abs(s.Lines[0].At(3).Moment) }),
	)

	// Prague: grid without torsion; a fixed, b on a roller, c free, d fixed.
	ctu := measure.Source{Title: "CTU Prague, course SM3, notes on grillages", Locator: "example 3", Status: measure.Quoted}
	prague := func(gj float64) *frame.Grillage {
		return &frame.Grillage{
			Nodes: [][2]float64{{0, 0}, {6, 0}, {3, 0}, {3, -4}},
			Seats: append(frameHeld(0, 3), frame.Seat{Nodes: []int{1}}),
			Members: []frame.Member{
				{I: 0, J: 2, EI: 3456, GJ: gj},
				{I: 2, J: 1, EI: 3456, GJ: gj},
				{I: 2, J: 3, EI: 3456, GJ: gj, Loads: []frame.Load{frame.Uniform(0, 4, 5)}},
			},
		}
	}
	flat := prague(8.333e6 * 1e-9)
	round := "the notes round by hand"
	at := func(member int, x float64, of func(frame.Diagram) float64) func(*frame.Solution) float64 {
		return func(s *frame.Solution) float64 { return math.Abs(of(s.Lines[member].At(x))) }
	}
	moment := func(d frame.Diagram) float64 { return d.Moment }
	shear := func(d frame.Diagram) float64 { return d.Shear }
	out = append(out,
		frameGrid(ctu, "shear at a", "4.72", "kN", 0, flat, at(0, 0, shear)),
		frameGrid(ctu, "moment at a", "7.72", "kN m", 0, flat, at(0, 0, moment)),
		frameGrid(ctu, "moment at c in a-c", "6.44", "kN m", 0, flat, at(0, 3, moment)),
		because(frameGrid(ctu, "shear in c-b", "2.14", "kN", 0, flat, at(1, 0, shear)), round+"; exact 2.145731", 0.0058),
		frameGrid(ctu, "shear at c in c-d", "6.87", "kN", 0, flat, at(2, 0, shear)),
		frameGrid(ctu, "shear at d", "13.13", "kN", 0, flat, at(2, 4, shear)),
		because(frameGrid(ctu, "moment at d", "12.52", "kN m", 0, flat, at(2, 4, moment)), round+"; exact 12.534644", 0.015),
		frameGrid(exact("CTU grid"), "moment at a", "7.72463186", "kN m", 1e-7, flat, at(0, 0, moment)),
		frameGrid(exact("CTU grid"), "moment at c in a-c", "6.437193604", "kN m", 1e-7, flat, at(0, 3, moment)),
		frameGrid(exact("CTU grid"), "shear in c-b", "2.145730813", "kN", 1e-7, flat, at(1, 0, shear)),
		frameGrid(exact("CTU grid"), "shear at d", "13.1336607", "kN", 1e-7, flat, at(2, 4, shear)),
		frameGrid(exact("CTU grid"), "moment at d", "12.53464408", "kN m", 1e-7, flat, at(2, 4, moment)),
	)
	twisted := prague(8.333e6 * 1.747e-4)
	out = append(out,
		frameGrid(exact("CTU grid with torsion"), "deflection of c", "0.003934646956", "m", 1e-9, twisted, func(s *frame.Solution) float64 { return -s.Move[2][0] }),
		frameGrid(exact("CTU grid with torsion"), "moment at d", "12.453162", "kN m", 0, twisted, at(2, 4, moment)),
		frameGrid(exact("CTU grid with torsion"), "torque in a-c", "0.19297811", "kN m", 0, twisted, func(s *frame.Solution) float64 { return math.Abs(s.Torque[0]) }),
	)

	// Monash: kN, m.
	monash := &frame.Grillage{
		Nodes:  [][2]float64{{0, 0}, {0, 4.75}, {4, 0}, {0, -4}, {-2, 0}},
		Seats:  frameHeld(1, 2, 3),
		Forces: [][3]float64{{-50, 25, 15}, {}, {}, {}, {}},
	}
	for _, j := range []int{1, 2, 3, 4} {
		monash.Members = append(monash.Members, frame.Member{I: 0, J: j, EI: 25000, GJ: 15000})
	}
	for k, c := range []string{"-0.004770432852", "0.0002407901084", "-0.0009315189308"} {
		out = append(out, frameGrid(exact("grid of Monash CIV4280, 2021, whose stiffness terms were read"), [3]string{"w", "thx", "thy"}[k]+" of node E", c, "m, rad", 1e-9, monash,
			func(s *frame.Solution) float64 { return s.Move[0][k] }))
	}

	// Stiffness of one member, from unit movements of a held one (kN, m).
	module := measure.Source{Title: "Course module on matrix stiffness of grids", Locator: "three-member grid, member of 10 m", Status: measure.Read}
	one := func(lift float64, f [3]float64) *frame.Grillage {
		g := &frame.Grillage{
			Nodes: [][2]float64{{0, 0}, {10, 0}}, Seats: frameHeld(0), Forces: [][3]float64{{}, f},
			Members: []frame.Member{{I: 0, J: 1, EI: 200e6 * 347e-6, GJ: 76e6 * 115e-6}},
		}
		if lift != 0 {
			g.Seats = frameHeld(0, 1)
			g.Seats[1].Level = lift
		}
		return g
	}
	out = append(out,
		frameGrid(module, "12EI/L³", "832.8", "kN/m", 0, one(1, [3]float64{}), func(s *frame.Solution) float64 { return s.Push[1] }),
		frameGrid(module, "6EI/L²", "4164", "kN", 0, one(1, [3]float64{}), func(s *frame.Solution) float64 { return math.Abs(s.Couple[1][1]) }),
		frameGrid(module, "GJ/L", "874", "kN m", 0, one(0, [3]float64{0, 1, 0}), func(s *frame.Solution) float64 { return 1 / s.Move[1][1] }),
	)
	turning := one(0, [3]float64{0, 0, 1})
	turning.Seats = append(turning.Seats, frame.Seat{Nodes: []int{1}})
	out = append(out,
		frameGrid(module, "4EI/L", "27760", "kN m", 0, turning, func(s *frame.Solution) float64 { return 1 / s.Move[1][2] }),
		frameGrid(module, "2EI/L", "13880", "kN m", 0, turning, func(s *frame.Solution) float64 { return math.Abs(s.Couple[0][1]) / s.Move[1][2] }),
	)

	// Two simple beams crossing at their middles; a bent cantilever.
	crossing := &frame.Grillage{
		Nodes:  [][2]float64{{0, 0}, {-2, 0}, {2, 0}, {0, -1.5}, {0, 1.5}},
		Forces: [][3]float64{{-10e3}, {}, {}, {}, {}},
	}
	for j, ei := range []float64{1e6, 1e6, 0.6e6, 0.6e6} {
		crossing.Members = append(crossing.Members, frame.Member{I: 0, J: j + 1, EI: ei, Untwist: true})
		crossing.Seats = append(crossing.Seats, frame.Seat{Nodes: []int{j + 1}})
	}
	bent := &frame.Grillage{
		Nodes: [][2]float64{{0, 0}, {2, 0}, {2, 1.5}}, Seats: frameHeld(0), Forces: [][3]float64{{}, {}, {-800}},
		Members: []frame.Member{{I: 0, J: 1, EI: 4e5, GJ: 1e4}, {I: 1, J: 2, EI: 4e5, GJ: 1e4}},
	}
	out = append(out,
		frameGrid(measure.Source{Title: "Crossing beams share in proportion to 48EI/L³", Status: measure.Independent}, "deflection at the crossing", "-0.005504587156", "m", 1e-9, crossing, w),
		frameGrid(measure.Source{Title: "Statics of a bent cantilever", Status: measure.Independent}, "torque in the first leg", "1200", "N m", 1e-11, bent, torque),
	)
	return out, nil
}
