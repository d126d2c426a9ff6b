package published

import (
	"math"

	"example.org/floewright/frame/rack"
)

// rackMore has what a member carries on both sides of a place, how its axis moves between its
// ends, frames out of square, and where boards meet members.
func rackMore() []Check {
	var out []Check
	for _, set := range [][]Check{rackJumps(), rackAxes(), rackSquares(), rackLaid()} {
		out = append(out, set...)
	}
	return out
}

// rackBeam is a simple beam along x of the loads, turning freely at both ends.
func rackBeam(length, ei, ga float64, loads ...rack.Load) rack.Frame {
	m := rackRigid(rackFirm, ei, 0, 1)
	m.GA, m.Loads = ga, loads
	return rack.Frame{Nodes: [][2]float64{{0, 0}, {length, 0}}, Members: []rack.Member{m}, Holds: []rack.Hold{rackPin(0), rackRoller(1)}}
}

func rackOf(f rack.Frame, of func(*rack.Solution) (float64, error)) func() (float64, error) {
	return func() (float64, error) {
		s, err := f.Solve()
		if err != nil {
			return 0, err
		}
		return of(s)
	}
}

// rackJumps checks both sides of a force and a couple. A simple beam of 4 m: 1000 N across at
// 1 m, 250 N are borne at the far end; a couple of 800 N m at 2 m, 200 N at each end.
func rackJumps() []Check {
	force := rackBeam(4, 5e4, 0, rack.Point(1, 0, -1000))
	couple := rackBeam(4, 5e4, 0, rack.Load{From: 2, Couple: 800})
	pulled := rackBeam(4, 5e4, 0, rack.Point(3, 600, 0))
	before := func(f rack.Frame, x float64, of func(rack.Diagram) float64) func() (float64, error) {
		return rackOf(f, func(s *rack.Solution) (float64, error) { return of(s.Lines[0].Before(x)), nil })
	}
	size := func(f func(rack.Diagram) float64) func(rack.Diagram) float64 {
		return func(d rack.Diagram) float64 { return math.Abs(f(d)) }
	}
	shear := size(func(d rack.Diagram) float64 { return d.Shear })
	moment := size(func(d rack.Diagram) float64 { return d.Moment })
	axial := func(d rack.Diagram) float64 { return d.Axial }
	return share("frame/rack", exactly("Simple beam of 4 m by statics", "1000 N at a quarter: 750 N and 250 N; a couple of 800 N m in the middle: 200 N; 600 N along at 3 m"), 1e-9,
		one{"shear just before the force", "750.000000000", "N", before(force, 1, shear)},
		one{"shear before the far end", "250.000000000", "N", before(force, 4, shear)},
		one{"moment at the force", "750.000000000", "N m", before(force, 1, moment)},
		one{"moment just before a couple in the middle", "400.000000000", "N m", before(couple, 2, moment)},
		one{"shear just before a couple in the middle", "200.000000000", "N", before(couple, 2, shear)},
		one{"jump of the moment at the couple", "800.000000000", "N m", rackOf(couple, func(s *rack.Solution) (float64, error) {
			return math.Abs(s.Lines[0].At(2).Moment - s.Lines[0].Before(2).Moment), nil
		})},
		one{"tension just before a force along", "600.000000000", "N", before(pulled, 3, axial)},
	)
}

// rackAxes checks how a beam's axis moves. EI 5·10⁴ N m², 4 m: PL³/48EI of 1200 N is 32 mm,
// PL²/16EI 24 mrad; 5qL⁴/384EI of 900 N/m is 60 mm; PL/4GA of 1200 N on 3·10⁵ N is 4 mm; a load
// that grows evenly from nothing to 900 N/m bends the middle half as much as the even one.
func rackAxes() []Check {
	point := rackBeam(4, 5e4, 0, rack.Point(2, 0, 1200))
	spread := rackBeam(4, 5e4, 0, rack.Uniform(0, 4, 0, 900))
	soft := rackBeam(4, 5e4, 3e5, rack.Point(2, 0, 1200))
	grows := rackBeam(4, 5e4, 0, rack.Load{From: 0, To: 4, AcrossRise: 900})
	stretched := rackBeam(4, 5e4, 0, rack.Point(4, 500, 0))
	stretched.Members[0].EA = 1e6
	moved := func(f rack.Frame, x float64, pick int, unit float64) func() (float64, error) {
		return rackOf(f, func(s *rack.Solution) (float64, error) {
			along, left, turn, err := s.Lines[0].Moved(x)
			return math.Abs([3]float64{along, left, turn}[pick]) * unit, err
		})
	}
	return share("frame/rack", exactly("Beam formulas of the textbooks", "PL³/48EI, PL²/16EI, 11PL³/768EI at a quarter, 5qL⁴/384EI, qL³/24EI, PL/4GA, half of 5qL⁴/384EI, PL/EA"), 1e-9,
		one{"middle of a beam under a force there", "32.0000000000", "mm", moved(point, 2, 1, 1000)},
		one{"slope at the end of a beam under a force in the middle", "24.0000000000", "mrad", moved(point, 0, 2, 1000)},
		one{"slope at the far end", "24.0000000000", "mrad", moved(point, 4, 2, 1000)},
		one{"quarter of a beam under a force in the middle", "22.0000000000", "mm", moved(point, 1, 1, 1000)},
		one{"middle of a beam under an even load", "60.0000000000", "mm", moved(spread, 2, 1, 1000)},
		one{"slope at the end of a beam under an even load", "48.0000000000", "mrad", moved(spread, 0, 2, 1000)},
		one{"middle of a beam that gives to shear", "36.0000000000", "mm", moved(soft, 2, 1, 1000)},
		one{"middle of a beam under a load that grows evenly", "30.0000000000", "mm", moved(grows, 2, 1, 1000)},
		one{"middle of a beam pulled at its end", "1.00000000000", "mm", moved(stretched, 2, 0, 1000)},
	)
}

// rackSquares checks four corners of a rectangle of 4 m by 3 m, whose diagonals are of 5 m.
func rackSquares() []Check {
	places := [][2]float64{{0, 0}, {4, 0}, {4, 3}, {0, 3}}
	racking := func(corners [4]int, move [][3]float64, of func(rack.Racking) float64) func() (float64, error) {
		return func() (float64, error) {
			s := &rack.Solution{Places: places, Move: move, Names: []string{"a", "b", "c", "d"}}
			r, err := s.Racking(corners)
			return of(r), err
		}
	}
	// The far side moves 15 mm along: the diagonals by 15·4/5 mm both ways, the lean 15 mm in 3 m.
	along := [][3]float64{{}, {}, {0.015, 0, 0}, {0.015, 0, 0}}
	// Turned as a whole by 1 mrad: nothing. Stretched by 10 mm along: 8 mm on both, no lean.
	turned := [][3]float64{{0, 0, 0}, {0, 0.004, 0}, {-0.003, 0.004, 0}, {-0.003, 0, 0}}
	longer := [][3]float64{{}, {0.010, 0, 0}, {0.010, 0, 0}, {}}
	ccw, cw := [4]int{0, 1, 2, 3}, [4]int{0, 3, 2, 1}
	first := func(r rack.Racking) float64 { return 1000 * r.Diagonals[0] }
	second := func(r rack.Racking) float64 { return 1000 * r.Diagonals[1] }
	shear := func(r rack.Racking) float64 { return 1000 * r.Shear }
	out := func(r rack.Racking) float64 { return 1000 * r.Out }
	checks := share("frame/rack", exactly("Rectangle of 4 m by 3 m, diagonals of 5 m", "small movements along the diagonals, δ·4/5; lean δ/3 m"), 1e-9,
		one{"first diagonal, far side 15 mm along", "12.0000000000", "mm", racking(ccw, along, first)},
		one{"second diagonal, far side 15 mm along", "-12.0000000000", "mm", racking(ccw, along, second)},
		one{"difference of the diagonals", "24.0000000000", "mm", racking(ccw, along, out)},
		one{"lean", "5.00000000000", "mrad", racking(ccw, along, shear)},
		one{"lean, the corners taken the other way around", "5.00000000000", "mrad", racking(cw, along, shear)},
		one{"first diagonal, 10 mm longer", "8.00000000000", "mm", racking(ccw, longer, first)},
		one{"difference of the diagonals, 10 mm longer", "0", "mm", racking(ccw, longer, out)},
	)
	// Zeros are met to half of a digit of 1e-9.
	zeros := share("frame/rack", exactly("Rectangle of 4 m by 3 m turned as a whole", "nothing changes"), 0,
		one{"lean", "0.000000000", "mrad", racking(ccw, turned, shear)},
		one{"first diagonal", "0.000000000", "mm", racking(ccw, turned, first)},
	)
	// A hinged panel with one brace: the work of the force is that of the brace, P (d/l)² (d/EA).
	const p, l, h, ea = 900.0, 4.0, 3.0, 1.4e6
	braced := rack.Frame{
		Nodes: [][2]float64{{0, 0}, {l, 0}, {l, h}, {0, h}},
		Members: []rack.Member{
			rackPinned(rackFirm, 1e4, 0, 1), rackPinned(rackFirm, 1e4, 1, 2), rackPinned(rackFirm, 1e4, 2, 3), rackPinned(rackFirm, 1e4, 3, 0),
			rackPinned(ea, 1e3, 0, 2),
		},
		Holds:  []rack.Hold{rackPin(0), rackRoller(1)},
		Forces: []rack.Force{{Node: 2, X: p}},
	}
	// 900 N · 5/4 in the brace, 5 m of 1.4 MN: 1125·5/1.4·10⁶ m longer, 225/56 mm.
	return append(append(checks, zeros...), share("frame/rack", exactly("Hinged panel with one brace", "the brace alone gives, P (d/l) d/EA"), 1e-5,
		one{"first diagonal of a braced panel", "4.01785714286", "mm", rackOf(braced, func(s *rack.Solution) (float64, error) {
			r, err := s.Racking(ccw)
			return 1000 * r.Diagonals[0], err
		})},
	)...)
}

// rackLaid checks where the screws of a board lie: on the middle lines of what it crosses.
func rackLaid() []Check {
	frame := &rack.Frame{
		Nodes: [][2]float64{{0, 0}, {0, 3}, {2, 0}, {2, 3}},
		Members: []rack.Member{
			rackRigid(rackFirm, 1e4, 0, 1), rackRigid(rackFirm, 1e4, 2, 3),
		},
	}
	// From (-1, 0.5) at 45° the board's middle line meets x = 0 at 1.5 m, and x = 2 past its end.
	steep := rack.Board{From: [2]float64{-1, 0.5}, To: [2]float64{1, 2.5}, EA: 1e7, EI: 1e4}
	flat := rack.Board{From: [2]float64{-0.1, 1}, To: [2]float64{2.1, 1}, EA: 1e7, EI: 1e4}
	laid := func(b rack.Board, spread float64, of func([]rack.Screw) float64) func() (float64, error) {
		return func() (float64, error) {
			b, err := frame.Lay(b, spread, 1e6)
			if err != nil {
				return 0, err
			}
			return of(b.Screws), nil
		}
	}
	return share("frame/rack", exactly("Board laid over two joists 2 m apart", "intersections of lines; at 45° a spread across the board is √2 of it along the joist"), 1e-12,
		one{"screws of a board straight across", "4.00000000000", "", laid(flat, 0.09, func(s []rack.Screw) float64 { return float64(len(s)) })},
		one{"first screw along its joist, straight across", "0.955000000000", "m", laid(flat, 0.09, func(s []rack.Screw) float64 { return s[0].At[1] })},
		one{"last screw from the first joist, straight across", "2.00000000000", "m", laid(flat, 0.09, func(s []rack.Screw) float64 { return s[3].At[0] })},
		one{"screws of a board at 45° that crosses one joist", "1.00000000000", "", laid(steep, 0, func(s []rack.Screw) float64 { return float64(len(s)) })},
		one{"place of its screw along the joist", "1.50000000000", "m", laid(steep, 0, func(s []rack.Screw) float64 { return s[0].At[1] })},
		one{"square of the distance of two screws, at 45°", "0.016200000000", "m²", laid(steep, 0.09, func(s []rack.Screw) float64 {
			d := s[1].At[1] - s[0].At[1]
			return d * d
		})},
	)
}
