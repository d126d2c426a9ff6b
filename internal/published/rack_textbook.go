package published

import (
	"math"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

// Sources of the textbook frames.
var (
	rackSway = measure.Source{
		Title: "Portal frame with fixed column bases and top horizontal load, teaching notebook of the stiffness method", Status: measure.Read,
	}
	rackOffCenter = measure.Source{
		Title: "Portal frame with fixed column bases and off-center vertical load, teaching notebook of the stiffness method", Status: measure.Read,
	}
	rackMcGuire = measure.Source{
		Title: "W. McGuire, R. H. Gallagher, R. D. Ziemian, Matrix Structural Analysis", Edition: "2nd edition",
		Locator: "Example 4.13, values as a public solver's test carries them", Status: measure.Quoted,
	}
	rackHibbeler = measure.Source{
		Title: "R. C. Hibbeler, Structural Analysis", Locator: "Example 16.1, values as a public solver's test carries them", Status: measure.Quoted,
	}
	rackHibbelerTruss = measure.Source{
		Title: "R. C. Hibbeler, Structural Analysis", Locator: "Example 14.3, values as a public solver's test carries them", Status: measure.Quoted,
	}
	rackLogan = measure.Source{
		Title: "D. L. Logan, A First Course in the Finite Element Method", Locator: "Example 5.1, rigid plane frame", Status: measure.Memory,
	}
	rackLoganTruss = measure.Source{
		Title: "D. L. Logan, A First Course in the Finite Element Method", Locator: "Example 3.5, plane truss", Status: measure.Memory,
	}
	rackKleinlogel = measure.Source{
		Title: "A. Kleinlogel, Rigid Frame Formulas", Locator: "rectangular frame, horizontal load at the top", Status: measure.Memory,
	}
	rackDerived = measure.Source{
		Title: "Closed forms derived for this library from the elementary theory of frames", Status: measure.Independent,
	}
)

// rackRow is one value of a solved frame.
type rackRow struct {
	source   measure.Source
	quantity string
	printed  string
	unit     string
	relative float64 // 0: to the digits printed
	frame    func() rack.Frame
	of       func(s *rack.Solution) float64
}

func rackTextbook() []Check {
	var out []Check
	for _, list := range [][]rackRow{rackPortals(), rackBooks(), rackClosed()} {
		for _, r := range list {
			out = append(out, Check{
				Package: "frame/rack", Source: r.source, Quantity: r.quantity, Printed: r.printed, Unit: r.unit, Relative: r.relative,
				Compute: func() (float64, error) {
					f := r.frame()
					s, err := f.Solve()
					if err != nil {
						return 0, err
					}
					return r.of(s), nil
				},
			})
		}
	}
	return out
}

const rackFirm = 1e12 // N, stretching of a member that is taken not to

// rackRigid is a member with joints that do not give.
func rackRigid(ea, ei float64, nodes ...int) rack.Member {
	return rack.Member{Nodes: nodes, EA: ea, EI: ei, Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}}
}

// rackPinned is a member with hinges.
func rackPinned(ea, ei float64, nodes ...int) rack.Member {
	return rack.Member{Nodes: nodes, EA: ea, EI: ei, Ends: [2]rack.End{rack.Pinned(), rack.Pinned()}}
}

// rackClamp holds a node entirely, rackPin its place, rackRoller its y.
func rackClamp(n int) rack.Hold {
	return rack.Hold{Node: n, Along: math.Inf(1), Across: math.Inf(1), Turn: math.Inf(1)}
}

func rackPin(n int) rack.Hold    { return rack.Hold{Node: n, Along: math.Inf(1), Across: math.Inf(1)} }
func rackRoller(n int) rack.Hold { return rack.Hold{Node: n, Across: math.Inf(1)} }

// rackPortal is a portal of width l and height h: nodes 0 and 3 the feet, 1 and
// 2 the corners, pushed at the left corner.
func rackPortal(l, h, column, beam, p float64, foot func(int) rack.Hold) rack.Frame {
	return rack.Frame{
		Nodes:   [][2]float64{{0, 0}, {0, h}, {l, h}, {l, 0}},
		Members: []rack.Member{rackRigid(rackFirm, column, 0, 1), rackRigid(rackFirm, beam, 1, 2), rackRigid(rackFirm, column, 2, 3)},
		Holds:   []rack.Hold{foot(0), foot(3)},
		Forces:  []rack.Force{{Node: 1, X: p}},
	}
}

// rackPortals are portals whose books leave stretching out.
func rackPortals() []rackRow {
	const tiny = 1e-6 // stretching is very small here, not nothing
	square := func() rack.Frame { return rackPortal(2, 2, 1e4, 1e4, 1000, rackClamp) }
	off := func() rack.Frame {
		return rack.Frame{
			Nodes:   [][2]float64{{0, 0}, {0, 2}, {0.5, 2}, {2, 2}, {2, 0}},
			Members: []rack.Member{rackRigid(rackFirm, 1e4, 0, 1), rackRigid(rackFirm, 1e4, 1, 2, 3), rackRigid(rackFirm, 1e4, 4, 3)},
			Holds:   []rack.Hold{rackClamp(0), rackClamp(4)},
			Forces:  []rack.Force{{Node: 2, Y: -1000}},
		}
	}
	const u, r = 1e4 / (1000 * 8.0), 1e4 / (1000 * 4.0) // EI/(P L³), EI/(P L²)
	out := []rackRow{
		{rackSway, "sway u: 84 EI u/(P L³)", "5", "", tiny, square, func(s *rack.Solution) float64 { return 84 * u * s.Move[1][0] }},
		{rackSway, "turn of the corner: 28 EI turn/(P L²), clockwise", "1", "", tiny, square, func(s *rack.Solution) float64 { return -28 * r * s.Move[1][2] }},
		{rackOffCenter, "sway: 896 EI u/(P L³), away from the load", "3", "", tiny, off, func(s *rack.Solution) float64 { return 896 * u * s.Move[1][0] }},
		{rackOffCenter, "turn of the near corner: 224 EI turn/(P L²)", "-5", "", tiny, off, func(s *rack.Solution) float64 { return 224 * r * s.Move[1][2] }},
		{rackOffCenter, "movement of the load: 28672 EI v/(P L³)", "-165", "", tiny, off, func(s *rack.Solution) float64 { return 28672 * u * s.Move[2][1] }},
		{rackOffCenter, "turn at the load: 7168 EI turn/(P L²)", "-113", "", tiny, off, func(s *rack.Solution) float64 { return 7168 * r * s.Move[2][2] }},
		{rackOffCenter, "turn of the far corner: 112 EI turn/(P L²)", "1", "", tiny, off, func(s *rack.Solution) float64 { return 112 * r * s.Move[3][2] }},
	}
	// k = (I beam/I column)(h/l); columns and beam as below: k = 3/4. Clamped feet:
	// M foot = (P h/2)(3k+1)/(6k+1), M corner = (P h/2) 3k/(6k+1), uplift
	// (P h/l) 3k/(6k+1). Hinged feet: M corner = P h/2.
	clamped := func() rack.Frame { return rackPortal(4, 3, 1e4, 1e4, 1100, rackClamp) }
	hinged := func() rack.Frame { return rackPortal(4, 3, 1e4, 1e4, 1100, rackPin) }
	return append(out,
		rackRow{rackKleinlogel, "clamped feet, k = 3/4, P = 1100 N, h = 3 m: moment at the foot = P h/2 (3k+1)/(6k+1)", "975", "N·m", tiny, clamped, func(s *rack.Solution) float64 { return math.Abs(s.Lines[0].At(0).Moment) }},
		rackRow{rackKleinlogel, "clamped feet, k = 3/4, P = 1100 N, h = 3 m: moment at the corner = P h/2 · 3k/(6k+1)", "675", "N·m", tiny, clamped, func(s *rack.Solution) float64 { return math.Abs(s.Lines[1].At(0).Moment) }},
		rackRow{rackKleinlogel, "clamped feet, k = 3/4, l = 4 m: uplift = 2 M corner/l", "337.5", "N", tiny, clamped, func(s *rack.Solution) float64 { return -s.Reactions[0].Across.Most }},
		rackRow{rackKleinlogel, "hinged feet: moment at the corner = P h/2", "1650", "N·m", tiny, hinged, func(s *rack.Solution) float64 { return math.Abs(s.Lines[1].At(0).Moment) }},
		rackRow{rackKleinlogel, "hinged feet: uplift = P h/l", "825", "N", tiny, hinged, func(s *rack.Solution) float64 { return -s.Reactions[0].Across.Most }},
	)
}

// rackBooks are frames and trusses worked with numbers.
func rackBooks() []rackRow {
	const in, lbf, psi = measure.Inch, measure.PoundForce, measure.PSI
	const in2, in4 = in * in, in * in * in * in
	mcguire := func() rack.Frame {
		return rack.Frame{
			Nodes:   [][2]float64{{0, 5}, {8, 5}, {8, 0}},
			Members: []rack.Member{rackRigid(1200e6, 4e7, 0, 1), rackRigid(800e6, 1e7, 1, 2)},
			Holds:   []rack.Hold{rackClamp(0), rackClamp(2)},
			Forces:  []rack.Force{{Node: 1, X: 1e5 / math.Sqrt2, Y: -1e5 / math.Sqrt2, Couple: 5e4}},
		}
	}
	hibbeler := func() rack.Frame {
		const ea, ei = 29e6 * psi * 10 * in2, 29e6 * psi * 500 * in4
		return rack.Frame{
			Nodes:   [][2]float64{{0, 0}, {240 * in, 0}, {240 * in, -240 * in}},
			Members: []rack.Member{rackRigid(ea, ei, 0, 1), rackRigid(ea, ei, 1, 2)},
			Holds:   []rack.Hold{rackRoller(0), rackClamp(2)},
			Forces:  []rack.Force{{Node: 1, X: 5000 * lbf}},
		}
	}
	truss := func() rack.Frame { // EA = 1e6, P = 2e3: the book's numbers by a thousandth
		return rack.Frame{
			Nodes:   [][2]float64{{3, 4}, {0, 0}, {3, 0}},
			Members: []rack.Member{rackPinned(1e6, 1, 1, 2), rackPinned(1e6, 1, 1, 0)},
			Holds:   []rack.Hold{rackPin(0), rackPin(2)},
			Forces:  []rack.Force{{Node: 1, Y: -2000}},
		}
	}
	logan := func() rack.Frame {
		const e = 30e6 * psi
		return rack.Frame{
			Nodes: [][2]float64{{-60 * in, 0}, {-60 * in, 120 * in}, {60 * in, 120 * in}, {60 * in, 0}},
			Members: []rack.Member{
				rackRigid(e*10*in2, e*200*in4, 0, 1), rackRigid(e*10*in2, e*100*in4, 1, 2), rackRigid(e*10*in2, e*200*in4, 2, 3),
			},
			Holds:  []rack.Hold{rackClamp(0), rackClamp(3)},
			Forces: []rack.Force{{Node: 1, X: 10000 * lbf}, {Node: 2, Couple: 5000 * lbf * in}},
		}
	}
	loganTruss := func() rack.Frame {
		const ea = 30e6 * psi * 2 * in2
		return rack.Frame{
			Nodes:   [][2]float64{{0, 0}, {0, 120 * in}, {120 * in, 120 * in}, {120 * in, 0}},
			Members: []rack.Member{rackPinned(ea, 1, 0, 1), rackPinned(ea, 1, 0, 2), rackPinned(ea, 1, 0, 3)},
			Holds:   []rack.Hold{rackPin(1), rackPin(2), rackPin(3)},
			Forces:  []rack.Force{{Node: 0, Y: -10000 * lbf}},
		}
	}
	move := func(node, k int, unit float64) func(s *rack.Solution) float64 {
		return func(s *rack.Solution) float64 { return s.Move[node][k] / unit }
	}
	return []rackRow{
		{rackMcGuire, "movement along x of the corner", "0.00044147", "m", 0, mcguire, move(1, 0, 1)},
		{rackMcGuire, "movement along y of the corner", "-0.00039989", "m", 0, mcguire, move(1, 1, 1)},
		{rackMcGuire, "turn of the corner", "0.00169432", "rad", 0, mcguire, move(1, 2, 1)},
		{rackMcGuire, "force along x at a", "-6.6221e4", "N", 0, mcguire, func(s *rack.Solution) float64 { return s.Reactions[0].Along.Most }},
		{rackMcGuire, "force along y at a", "6728.6", "N", 0, mcguire, func(s *rack.Solution) float64 { return s.Reactions[0].Across.Most }},
		{rackMcGuire, "couple at a", "1.8443e4", "N·m", 0, mcguire, func(s *rack.Solution) float64 { return s.Reactions[0].Couple.Most }},
		{rackMcGuire, "force along x at c", "-4490.2", "N", 0, mcguire, func(s *rack.Solution) float64 { return s.Reactions[1].Along.Most }},
		{rackMcGuire, "force along y at c", "6.3982e4", "N", 0, mcguire, func(s *rack.Solution) float64 { return s.Reactions[1].Across.Most }},
		{rackMcGuire, "couple at c", "7836.8", "N·m", 0, mcguire, func(s *rack.Solution) float64 { return s.Reactions[1].Couple.Most }},

		{rackHibbeler, "movement along x of node 1", "0.6958", "in", 0, hibbeler, move(0, 0, in)},
		{rackHibbeler, "turn of node 1", "0.001234", "rad", 0, hibbeler, move(0, 2, 1)},
		{rackHibbeler, "movement along y of node 2", "-0.001551", "in", 0, hibbeler, move(1, 1, in)},
		{rackHibbeler, "turn of node 2", "-0.002488", "rad", 0, hibbeler, move(1, 2, 1)},
		{rackHibbeler, "force along y at node 1", "-1.87", "kip", 0, hibbeler, func(s *rack.Solution) float64 { return s.Reactions[0].Across.Most / lbf / 1000 }},
		{rackHibbeler, "force along x at node 3", "-5.00", "kip", 0, hibbeler, func(s *rack.Solution) float64 { return s.Reactions[1].Along.Most / lbf / 1000 }},
		{rackHibbeler, "couple at node 3", "750", "kip·in", 0, hibbeler, func(s *rack.Solution) float64 { return s.Reactions[1].Couple.Most / lbf / in / 1000 }},

		{rackHibbelerTruss, "movement along x, times EA/1000", "4.5", "", 0, truss, move(1, 0, 1e-3)},
		{rackHibbelerTruss, "movement along y, times EA/1000", "-19.0", "", 0, truss, move(1, 1, 1e-3)},
		{rackHibbelerTruss, "force along x at the upper hold", "1.5", "kN", 0, truss, func(s *rack.Solution) float64 { return s.Reactions[0].Along.Most / 1000 }},

		{rackLogan, "movement along x of node 2", "0.211", "in", 0, logan, move(1, 0, in)},
		{rackLogan, "movement along y of node 2", "0.00148", "in", 0, logan, move(1, 1, in)},
		{rackLogan, "turn of node 2", "-0.00153", "rad", 0, logan, move(1, 2, 1)},
		{rackLogan, "movement along x of node 3", "0.209", "in", 0, logan, move(2, 0, in)},
		{rackLogan, "movement along y of node 3", "-0.00148", "in", 0, logan, move(2, 1, in)},
		{rackLogan, "turn of node 3", "-0.00149", "rad", 0, logan, move(2, 2, 1)},

		{rackLoganTruss, "movement along x of node 1", "0.00414", "in", 0, loganTruss, move(0, 0, in)},
		{rackLoganTruss, "movement along y of node 1", "-0.0159", "in", 0, loganTruss, move(0, 1, in)},
	}
}
