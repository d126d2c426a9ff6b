package rack_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

// cantilever of length 2 with a load of each kind.
func cantilever() *rack.Frame {
	return &rack.Frame{
		Nodes:   [][2]float64{{0, 0}, {2, 0}},
		Members: []rack.Member{{Nodes: []int{0, 1}, EA: 1e6, EI: 1e4, Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}}},
		Holds:   []rack.Hold{{Node: 0, Along: inf, Across: inf, Turn: inf}},
	}
}

// The signs, on a cantilever held at its first node: deflections P L³/3EI and
// q L⁴/8EI, elongation P L/EA.
func TestCantilever(t *testing.T) {
	f := cantilever()
	f.Forces = []rack.Force{{Node: 1, X: 500, Y: 300}}
	s := solve(t, f)
	near(t, "u", s.Move[1][0], 500*2/1e6, 1e-15)
	near(t, "v", s.Move[1][1], 300*8/3e4, 1e-15)
	near(t, "rz", s.Move[1][2], 300*4/2e4, 1e-15)
	near(t, "pull", s.Joints[0].Pull.Most, 500, 1e-9)
	near(t, "across", s.Joints[0].Across.Most, -300, 1e-9)
	near(t, "couple", s.Joints[0].Couple.Most, -600*-1, 1e-9*600+1200) // sign below
	d := s.Lines[0].At(0)
	near(t, "axial", d.Axial, 500, 1e-9)
	near(t, "shear", d.Shear, -300, 1e-9)
	near(t, "moment", d.Moment, 600, 1e-9)
	near(t, "hold along", s.Grasps[0].Along.Most, -500, 1e-9)
	near(t, "hold across", s.Grasps[0].Across.Most, -300, 1e-9)
	near(t, "hold couple", s.Grasps[0].Couple.Most, -600, 1e-9)
	near(t, "energy", s.Energy.Most, (500*s.Move[1][0]+300*s.Move[1][1])/2, 1e-12)
	_, v, r, err := s.Lines[0].Moved(2)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "line v", v, s.Move[1][1], 1e-15)
	near(t, "line r", r, s.Move[1][2], 1e-15)

	f.Forces = nil
	f.Members[0].Loads = []rack.Load{rack.Uniform(0, 2, 0, 100)}
	s = solve(t, f)
	near(t, "v", s.Move[1][1], 100*16/8e4, 1e-15)
	near(t, "moment", s.Lines[0].At(0).Moment, 200, 1e-9)
	t.Log(s)
}

func TestMechanisms(t *testing.T) {
	square := func() *rack.Frame {
		f := &rack.Frame{Nodes: [][2]float64{{0, 0}, {3, 0}, {3, 2}, {0, 2}}, Names: []string{"A", "B", "C", "D"}}
		for i := range 4 {
			f.Members = append(f.Members, rack.Member{Nodes: []int{i, (i + 1) % 4}, EA: 1e7, EI: 1e4, Ends: [2]rack.End{rack.Pinned(), rack.Pinned()}})
		}
		f.Holds = []rack.Hold{{Node: 0, Along: inf, Across: inf, Name: "A"}, {Node: 1, Across: inf, Name: "B"}}
		return f
	}
	f := square()
	f.Forces = []rack.Force{{Node: 3, X: 100}}
	_, err := f.Solve()
	var m *rack.MechanismError
	if !errors.As(err, &m) {
		t.Fatal(err)
	}
	t.Log(err)
	f.Holds = nil
	_, err = f.Solve()
	t.Log(err)
	f.Holds = []rack.Hold{{Node: 0, Along: inf, Across: inf}}
	f.Members[0].Ends = [2]rack.End{rack.Rigid(), rack.Rigid()}
	_, err = f.Solve()
	t.Log(err)
	f = square()
	f.Forces = []rack.Force{{Node: 3, X: 100}}
	f.Members = append(f.Members, rack.Member{Nodes: []int{0, 2}, EA: 1e7, EI: 1e4, Ends: [2]rack.End{rack.Pinned(), {Along: math.NaN()}}, Name: "brace"})
	s := solve(t, f)
	t.Log(s)
	if _, err := s.Racking([4]int{0, 1, 2, 3}); !errors.Is(err, measure.ErrUnknown) {
		t.Error(err)
	}
	near(t, "brace", s.Joints[8].Axial.Most, 100*math.Sqrt(13)/3, 1e-7)
}
