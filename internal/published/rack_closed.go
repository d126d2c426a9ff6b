package published

import (
	"math"
	"strconv"

	"example.org/floewright/frame/rack"
)

// rackClosed compares with closed forms, each at numbers of its own. The formula
// stands in the row; it was derived from equilibrium and the bending of simple
// pieces, without a stiffness matrix.
func rackClosed() []rackRow {
	const rel = 1e-6  // stretching is very small in these frames, not nothing
	const some = 1e-4 // nor is the bending of what is taken for stiff
	var out []rackRow
	tol := rel
	row := func(quantity string, want float64, unit string, frame func() rack.Frame, of func(s *rack.Solution) float64) {
		out = append(out, rackRow{rackDerived, quantity, strconv.FormatFloat(want, 'g', 12, 64), unit, tol, frame, of})
	}

	// A closed bay of rigid corners, racked by P at its top and held at its foot:
	// points of no moment in the middle of all four sides.
	const p, l, h, ic, ib = 900.0, 3.2, 2.1, 1.3e4, 8e3
	bay := func() rack.Frame {
		return rack.Frame{
			Nodes: [][2]float64{{0, 0}, {l, 0}, {l, h}, {0, h}},
			Members: []rack.Member{
				rackRigid(rackFirm, ib, 0, 1), rackRigid(rackFirm, ic, 1, 2), rackRigid(rackFirm, ib, 2, 3), rackRigid(rackFirm, ic, 3, 0),
			},
			Holds:  []rack.Hold{rackPin(0), rackRoller(1)},
			Forces: []rack.Force{{Node: 3, X: p}},
		}
	}
	row("bay without a brace, rigid corners: racking = P h² l/(24 EI beam) + P h³/(24 EI column)",
		p*h*h*l/(24*ib)+p*h*h*h/(24*ic), "m", bay, func(s *rack.Solution) float64 { return s.Move[3][0] })
	row("bay without a brace, rigid corners: corner moment = P h/4",
		p*h/4, "N·m", bay, func(s *rack.Solution) float64 { return math.Abs(s.Lines[2].At(0).Moment) })

	// Corner brackets of stiffness c beside the bending: a portal on hinges.
	const c = 6e3
	bracket := func() rack.Frame {
		f := rackPortal(l, h, ic, ib, p, rackPin)
		f.Members[1].Ends = [2]rack.End{{Turn: c, Along: math.Inf(1), Across: math.Inf(1)}, {Turn: c, Along: math.Inf(1), Across: math.Inf(1)}}
		return f
	}
	row("portal on hinges with corner brackets c: racking = P h³/(6 EI column) + P h² l/(12 EI beam) + P h²/(2c)",
		p*h*h*h/(6*ic)+p*h*h*l/(12*ib)+p*h*h/(2*c), "m", bracket, func(s *rack.Solution) float64 { return s.Move[1][0] })

	// A hinged panel with one brace of EA on end screws of slip k.
	const ea, k = 1.4e7, 1.2e6
	d := math.Hypot(l, h)
	braced := func() rack.Frame {
		f := rack.Frame{
			Nodes: [][2]float64{{0, 0}, {l, 0}, {l, h}, {0, h}},
			Members: []rack.Member{
				rackPinned(rackFirm, ib, 0, 1), rackPinned(rackFirm, ic, 1, 2), rackPinned(rackFirm, ib, 2, 3), rackPinned(rackFirm, ic, 3, 0),
				rackPinned(ea, 1e3, 0, 2),
			},
			Holds:  []rack.Hold{rackPin(0), rackRoller(1)},
			Forces: []rack.Force{{Node: 2, X: p}},
		}
		f.Members[4].Ends = [2]rack.End{{Along: k, Across: k}, {Along: k, Across: k}}
		return f
	}
	row("hinged panel with a brace: its force = P d/l", p*d/l, "N", braced, func(s *rack.Solution) float64 { return s.Joints[8].Pull.Most })
	row("hinged panel with a brace: racking = P (d/l)² (d/EA + 2/k)",
		p*d*d/(l*l)*(d/ea+2/k), "m", braced, func(s *rack.Solution) float64 { return s.Move[2][0] })

	// Decking as couples: n stiff boards across two hinged joists, two screws of
	// stiffness k a distance e apart at each crossing. Each joist gets the couple
	// P h/2 of n crossings, M each; a board balances its two by forces 2M/l across
	// it, on which it turns by (e/l)² of the joists' lean against it.
	const n, e = 5, 0.09
	decked := func() rack.Frame {
		f := rack.Frame{
			Nodes: [][2]float64{{0, 0}, {l, 0}, {l, h}, {0, h}},
			Members: []rack.Member{
				rackPinned(rackFirm, 1e8, 0, 1), rackPinned(rackFirm, 1e8, 1, 2), rackPinned(rackFirm, 1e8, 2, 3), rackPinned(rackFirm, 1e8, 3, 0),
			},
			Holds:  []rack.Hold{rackPin(0), rackRoller(1)},
			Forces: []rack.Force{{Node: 3, X: p}},
		}
		for i := range n {
			y := h * (float64(i) + 0.5) / n
			b := rack.Board{From: [2]float64{-0.05, y}, To: [2]float64{l + 0.05, y}, EA: 1e9, EI: 1e8}
			for _, j := range [2]int{1, 3} {
				x := f.Nodes[f.Members[j].Nodes[0]][0]
				for _, side := range [2]float64{-e / 2, e / 2} {
					b.Screws = append(b.Screws, rack.Screw{Member: j, At: [2]float64{x, y + side}, Slip: k})
				}
			}
			f.Boards = append(f.Boards, b)
		}
		return f
	}
	tol = some
	row("hinged panel, n boards with a couple of screws e apart at each of two joists: lean = P h/(n k e²) (1 + (e/l)²)",
		p*h/(n*k*e*e)*(1+e*e/(l*l)), "rad", decked, func(s *rack.Solution) float64 { return s.Move[3][0] / h })
	row("hinged panel, n boards with a couple of screws: force of each screw = P h/(2n) √(1/e² + 1/l²)",
		p*h/(2*n)*math.Sqrt(1/(e*e)+1/(l*l)), "N", decked, func(s *rack.Solution) float64 { return s.Screws[6].Force.Most })

	tol = rel

	// A rim afloat, pulled across: the water's drag is spread evenly over it.
	afloat := func(at float64) func() rack.Frame {
		return func() rack.Frame {
			m := rackRigid(1e7, 1e4, 0, 1)
			m.Loads = []rack.Load{rack.Point(at, 0, p)}
			return rack.Frame{Nodes: [][2]float64{{0, 0}, {l, 0}}, Members: []rack.Member{m}, Drag: rack.Drag{Members: []float64{1}}}
		}
	}
	row("member afloat pulled across at its middle: moment = P l/8",
		p*l/8, "N·m", afloat(l/2), func(s *rack.Solution) float64 { return math.Abs(s.Lines[0].At(l / 2).Moment) })
	row("member afloat pulled across at its end, drag as inertia: largest moment = 4 P l/27",
		4*p*l/27, "N·m", afloat(0), func(s *rack.Solution) float64 { return s.Lines[0].Extremes().Right.Moment })
	row("member afloat pulled across at its end, drag as inertia: at l/3 from it",
		l/3, "m", afloat(0), func(s *rack.Solution) float64 { return s.Lines[0].Extremes().Right.X })
	return out
}
