package dock_test

import (
	"fmt"
	"log"
	"math"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

// fourLines is an invented dock, 16 ft by 8 ft, on nylon lines off its corners to
// trees and anchors around.
func fourLines() (*moor.Mooring, error) {
	rope, err := moor.Lookup("nylon 3-strand", "5/8 in")
	if err != nil {
		return nil, err
	}
	const ft = measure.Foot
	m := &moor.Mooring{}
	for i, c := range corners {
		m.Ties = append(m.Ties, moor.Tie{
			Name: fmt.Sprintf("line %d", i+1), At: [2]float64{8 * ft * c[0], 4 * ft * c[1]}, Height: ft,
			Foot: [2]float64{30 * ft * c[0], 24 * ft * c[1]}, FootZ: -6 * ft,
			Line: moor.Line{Pieces: []moor.Piece{{Gear: rope, Length: 31 * ft, Weight: 0.5, Stretch: 6e4}}},
		})
	}
	return m, nil
}

// corners in order around the frame.
var corners = [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}

// planeFrame is that dock's frame in its plane: two rims, three joists, screws and
// hangers that slip by known amounts.
func planeFrame() *rack.Frame {
	const ft, e = measure.Foot, 1.2e6 * measure.PSI
	f := &rack.Frame{}
	rims := [2][]int{}
	for _, x := range []float64{-8, 0, 8} {
		for side, y := range [2]float64{-4, 4} {
			rims[side] = append(rims[side], len(f.Nodes))
			f.Nodes = append(f.Nodes, [2]float64{x * ft, y * ft})
		}
	}
	const width, depth = 1.5 * measure.Inch, 7.25 * measure.Inch
	m := rack.Member{EA: e * width * depth, EI: e * depth * width * width * width / 12}
	add := func(name string, nodes []int, ends rack.End) {
		m.Name, m.Nodes, m.Ends = name, nodes, [2]rack.End{ends, ends}
		f.Members = append(f.Members, m)
	}
	add("near rim", rims[0], rack.Rigid())
	add("far rim", rims[1], rack.Rigid())
	for i, name := range []string{"near joist", "middle joist", "far joist"} {
		add(name, []int{rims[0][i], rims[1][i]}, rack.End{Turn: 6e3, Along: 2e6, Across: 2e6})
	}
	return f
}

// pulled puts what a mooring's lines do at their fittings on a frame's corners, and
// the load that they balance along its far rim.
func pulled(f *rack.Frame, forces []moor.FittingForce, load moor.Load) {
	corner := map[[2]float64]int{}
	for i, n := range f.Nodes {
		corner[[2]float64{math.Copysign(1, n[0]), math.Copysign(1, n[1])}] = i
	}
	for i, c := range [4]int{0, 4, 5, 1} {
		f.Forces = append(f.Forces, rack.Force{Node: c, X: forces[i].X, Y: forces[i].Y, Name: forces[i].Name})
	}
	length := f.Nodes[4][0] - f.Nodes[0][0]
	f.Members[1].Loads = []rack.Load{rack.Uniform(0, length, 0, load.Y/length)}
}

// A storm on the side of a dock: the forces of its lines go to the frame in its own
// plane as they come, and balance the storm there.
func Example_moored() {
	m, err := fourLines()
	if err != nil {
		log.Fatal(err)
	}
	load := moor.Load{Y: -300 * measure.PoundForce}
	p, err := m.Rest(0, load)
	if err != nil {
		log.Fatal(err)
	}
	forces, err := m.Forces(p)
	if err != nil {
		log.Fatal(err)
	}
	f := planeFrame()
	pulled(f, forces, load)
	s, err := f.Solve()
	if err != nil {
		log.Fatal(err)
	}
	j, _ := s.Pull()
	fmt.Printf("lines pull with up to %.0f lbf; the frame finds %s left over\n", most(forces)/measure.PoundForce, small(s.Imbalance, load))
	fmt.Printf("%s: pull-out %.0f lbf\n", j.Place, j.Pull.Most/measure.PoundForce)
	// Output:
	// lines pull with up to 215 lbf; the frame finds nothing left over
	// far rim at node 1: pull-out 124 lbf
}

func most(forces []moor.FittingForce) float64 {
	out := 0.0
	for _, f := range forces {
		out = math.Max(out, math.Hypot(f.X, f.Y))
	}
	return out
}

func small(left rack.Resultant, load moor.Load) string {
	if math.Hypot(left.X, left.Y) < 1e-6*math.Abs(load.Y) {
		return "nothing"
	}
	return left.String()
}

// TestMooredBalance: whatever the storm's direction, mooring and frame agree that
// nothing is left over, forces and turning alike.
func TestMooredBalance(t *testing.T) {
	m, err := fourLines()
	if err != nil {
		t.Fatal(err)
	}
	for deg := 0; deg < 360; deg += 30 {
		sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
		load := moor.Load{X: 900 * cos, Y: 900 * sin}
		p, err := m.Rest(0, load)
		if err != nil {
			t.Fatal(err)
		}
		forces, err := m.Forces(p)
		if err != nil {
			t.Fatal(err)
		}
		f := planeFrame()
		// The storm in the axes of the dock, which it has turned.
		load = load.Turned(-p.Turn)
		pulled(f, forces, load)
		// Its share along the dock goes to the middle joist's ends.
		f.Forces = append(f.Forces, rack.Force{Node: 2, X: load.X / 2}, rack.Force{Node: 3, X: load.X / 2})
		s, err := f.Solve()
		if err != nil {
			t.Fatalf("%d deg: %v", deg, err)
		}
		if left := math.Hypot(s.Imbalance.X, s.Imbalance.Y); left > 1e-6*900 {
			t.Errorf("%d deg: %g N left over", deg, left)
		}
		if s.Residual > 1e-9 {
			t.Errorf("%d deg: imbalance %g at a node", deg, s.Residual)
		}
	}
}
