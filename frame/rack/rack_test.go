package rack_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

// cantilever is 2 m long and held at its first node.
func cantilever() *rack.Frame {
	return &rack.Frame{
		Nodes:   [][2]float64{{0, 0}, {2, 0}},
		Members: []rack.Member{{Nodes: []int{0, 1}, EA: 1e6, EI: 1e4, Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}}},
		Holds:   []rack.Hold{{Node: 0, Along: inf, Across: inf, Turn: inf}},
	}
}

// Signs and sizes on a cantilever: P L³/3EI, P L²/2EI, P L/EA, q L⁴/8EI, and with
// shear deflection P L/GA more.
func TestCantilever(t *testing.T) {
	f := cantilever()
	f.Forces = []rack.Force{{Node: 1, X: 500, Y: 300}}
	s := solve(t, f)
	near(t, "u", s.Move[1][0], 500*2/1e6, 1e-15)
	near(t, "v", s.Move[1][1], 300*8/3e4, 1e-15)
	near(t, "turn", s.Move[1][2], 300*4/2e4, 1e-15)
	near(t, "pull", s.Joints[0].Pull.Most, 500, 1e-9)
	near(t, "across", s.Joints[0].Across.Most, -300, 1e-9)
	near(t, "couple", s.Joints[0].Couple.Most, -600, 1e-9)
	d := s.Lines[0].At(0)
	near(t, "axial", d.Axial, 500, 1e-9)
	near(t, "shear", d.Shear, -300, 1e-9)
	near(t, "moment", d.Moment, 600, 1e-9)
	near(t, "hold along", s.Reactions[0].Along.Most, -500, 1e-9)
	near(t, "hold across", s.Reactions[0].Across.Most, -300, 1e-9)
	near(t, "hold couple", s.Reactions[0].Couple.Most, -600, 1e-9)

	f.Forces[0].X = -500
	s = solve(t, f)
	if p := s.Joints[0].Pull; p.Most != 0 || p.Least != 0 {
		t.Errorf("a pressed joint is pulled out with %v", p)
	}

	f.Forces = nil
	f.Members[0].Loads = []rack.Load{rack.Uniform(0, 2, 0, 100)}
	near(t, "v of a spread load", solve(t, f).Move[1][1], 100*16/8e4, 1e-15)
	// A triangle from 0 at the hold to q at the tip: 11 q L⁴/120 EI.
	f.Members[0].Loads = []rack.Load{{To: 2, AcrossRise: 100}}
	near(t, "v of a triangle", solve(t, f).Move[1][1], 11*100*16/120e4, 1e-15)
	f.Members[0].Loads = []rack.Load{{From: 2, Couple: 70}}
	near(t, "v of a couple at the tip", solve(t, f).Move[1][1], 70*4/2e4, 1e-15)
	f.Members[0].Loads = []rack.Load{{From: 1, Couple: 70}}
	near(t, "v of a couple in the middle", solve(t, f).Move[1][1], 70/2e4+70/1e4, 1e-15)
	f.Members[0].GA = 1e5
	f.Members[0].Loads = []rack.Load{rack.Point(1, 0, 60)}
	near(t, "v with shear deflection", solve(t, f).Move[1][1], 60/3e4+60/2e4+60/1e5, 1e-15)
	// A spread load along it: n L²/2EA.
	f.Members[0].Loads = []rack.Load{rack.Uniform(0, 2, 40, 0)}
	near(t, "u of a spread load", solve(t, f).Move[1][0], 40*4/2e6, 1e-15)
}

// A frame that can move says which node does, and how.
func TestMechanisms(t *testing.T) {
	pinned := [2]rack.End{rack.Pinned(), rack.Pinned()}
	for _, c := range []struct {
		name   string
		frame  func() *rack.Frame
		place  string
		motion string
	}{
		{"hinged panel without a brace", func() *rack.Frame {
			f := panel()
			f.Members = f.Members[:4]
			return f
		}, "node C at (3.000, 2.000) m", "moves along x"},
		{"held along x alone", func() *rack.Frame {
			f := panel()
			f.Holds = []rack.Hold{{Node: 0, Along: inf}, {Node: 3, Along: 1e5}}
			return f
		}, "node A at (0.000, 0.000) m", "moves along y"},
		{"held at one node", func() *rack.Frame {
			f := panel()
			f.Holds = f.Holds[:1]
			return f
		}, "node C at (3.000, 2.000) m", "turns about (0.000, 0.000) m"},
		{"two parts afloat", func() *rack.Frame {
			f := panel()
			f.Holds, f.Forces = nil, nil
			f.Nodes = append(f.Nodes, [2]float64{10, 0}, [2]float64{11, 0})
			f.Members = append(f.Members, rack.Member{Nodes: []int{4, 5}, EA: 1e7, EI: 1e4, Ends: pinned})
			return f
		}, "node ", ""},
		{"a node without a member", func() *rack.Frame {
			f := panel()
			f.Nodes = append(f.Nodes, [2]float64{1, 1})
			return f
		}, "node 4 at (1.000, 1.000) m", "moves along x"},
		{"a joint in the middle of two hinged pieces in line but for rounding", func() *rack.Frame {
			return &rack.Frame{
				Nodes: [][2]float64{{0, 0}, {1, 0}, {2, 1e-16}},
				Members: []rack.Member{
					{Nodes: []int{0, 1}, EA: 1e7, EI: 1e4, Ends: pinned}, {Nodes: []int{1, 2}, EA: 1e7, EI: 1e4, Ends: pinned},
				},
				Holds: []rack.Hold{{Node: 0, Along: inf, Across: inf}, {Node: 2, Along: inf, Across: inf}},
			}
		}, "node 1 at (1.000, 0.000) m", "moves along y"},
		{"a joint in the middle of two hinged pieces in line, aslant", func() *rack.Frame {
			return &rack.Frame{
				Nodes: [][2]float64{{0, 0}, {0.3, 0.4}, {0.9, 1.2}},
				Members: []rack.Member{
					{Nodes: []int{0, 1}, EA: 1e7, EI: 1e4, Ends: pinned}, {Nodes: []int{1, 2}, EA: 1e7, EI: 1e4, Ends: pinned},
				},
				Holds: []rack.Hold{{Node: 0, Along: inf, Across: inf}, {Node: 2, Along: inf, Across: inf}},
			}
		}, "node 1 at (0.300, 0.400) m", "moves at 143 degrees from x"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := c.frame().Solve()
			var m *rack.MechanismError
			if !errors.As(err, &m) || !errors.Is(err, rack.ErrMechanism) {
				t.Fatalf("%v", err)
			}
			if !strings.HasPrefix(m.Place, c.place) || !strings.HasPrefix(m.Motion, c.motion) {
				t.Errorf("%v, want %s that %s", err, c.place, c.motion)
			}
		})
	}
}

// A board on one screw turns freely on it, and carries nothing.
func TestBoardOnOneScrew(t *testing.T) {
	f := panel()
	f.Boards = []rack.Board{{
		From: [2]float64{2, 1}, To: [2]float64{4, 1}, EA: 1e7, EI: 1e4,
		Screws: []rack.Screw{{Member: 1, At: [2]float64{3, 1}, Slip: 1e6}},
	}}
	near(t, "screw", solve(t, f).Screws[0].Force.Most, 0, 1e-6)
}

// A soft frame is no mechanism: a long unbraced cantilever, and a spring next to
// nothing.
func TestSoftIsNoMechanism(t *testing.T) {
	f := pier(600)
	f.Holds = []rack.Hold{{Node: 0, Along: inf, Across: inf}, {Node: 1, Along: inf}}
	for i := range f.Members {
		f.Members[i].EA /= 50
	}
	f.Members[0].Loads = nil
	f.Forces = []rack.Force{{Node: len(f.Nodes) - 1, Y: 1e-3}}
	s := solve(t, f)
	if len(s.Move) == 0 || !(s.Move[len(f.Nodes)-1][1] > 0) {
		t.Error("the tip does not move")
	}
	f = panel()
	for k, far := range map[float64]bool{1: true, 1e3: true, 1e4: false} { // moves by 667 N/k
		f.Holds[1].Across = k
		if s := solve(t, f); far != (len(s.Notes) == 1 && strings.Contains(s.Notes[0], "not small")) {
			t.Errorf("k = %g: notes %q", k, s.Notes)
		}
	}
}

// A line pulls, and hangs slack where it would have to push.
func TestLines_slack(t *testing.T) {
	f := panel()
	f.Holds = []rack.Hold{
		{Node: 0, Along: inf, Across: inf},
		{Node: 3, Angle: math.Pi, Along: 1e5, Line: true, Name: "west line"},
		{Node: 2, Angle: 0, Along: 1e5, Line: true, Name: "east line"},
	}
	s := solve(t, f)
	near(t, "west line", s.Reactions[1].Along.Most, 1000, 1e-6)
	near(t, "east line", s.Reactions[2].Along.Most, 0, 0)
	if len(s.Notes) != 1 || s.Notes[0] != "line east line hangs slack" {
		t.Errorf("notes %q", s.Notes)
	}
	f.Forces[0].X = -1000
	s = solve(t, f)
	near(t, "west line", s.Reactions[1].Along.Most, 0, 0)
	near(t, "east line", s.Reactions[2].Along.Most, 1000, 1e-6)
	// Both slack: nothing is left.
	f.Holds[1].Angle, f.Holds[2].Angle = 0, 0
	f.Forces[0].X = 1000
	if _, err := f.Solve(); !errors.Is(err, rack.ErrMechanism) {
		t.Errorf("lines that push hold the frame: %v", err)
	}
}

// On many frames on lines: each pulls in proportion to its stretch, or not at all.
func TestLines_many(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	solved := 0
	for range 400 {
		f := &rack.Frame{Holds: []rack.Hold{{Node: 0, Along: inf, Across: 1e4, Turn: 300}}}
		var all []int
		for i := range 7 {
			all = append(all, i)
			f.Nodes = append(f.Nodes, [2]float64{float64(i), 0})
			f.Forces = append(f.Forces, rack.Force{Node: i, Y: 1000 * (r.Float64() - 0.4)})
			if i > 0 {
				side := math.Pi * (float64(r.IntN(2)) - 0.5)
				f.Holds = append(f.Holds, rack.Hold{Node: i, Angle: side, Along: math.Exp(8 + 5*r.Float64()), Line: true})
			}
		}
		f.Members = []rack.Member{{Nodes: all, EA: 1e7, EI: 2e3, Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}}}
		s, err := f.Solve()
		if errors.Is(err, rack.ErrUnsettled) {
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		solved++
		for i, h := range f.Holds[1:] {
			stretch := -s.Move[h.Node][1] * math.Sin(h.Angle)
			near(t, "pull", s.Reactions[i+1].Along.Most, math.Max(0, stretch*h.Along), 1e-5)
		}
	}
	if solved < 400 {
		t.Errorf("%d of 400 solved", solved)
	}
}

// The water holds nothing: loads that do not balance are an error that says by
// how much, rounding is carried and reported, drag carries what it is asked to.
func TestAfloat(t *testing.T) {
	f := panel()
	f.Holds = nil
	_, err := f.Solve()
	var im *rack.ImbalanceError
	if !errors.As(err, &im) || !errors.Is(err, rack.ErrImbalance) {
		t.Fatal(err)
	}
	near(t, "left over", im.Left.X, 1000, 1e-9)
	near(t, "of", im.Largest, 1000, 1e-9)

	f.Forces = append(f.Forces, rack.Force{Node: 2, X: -1000.5}) // balanced to half a thousandth
	s := solve(t, f)
	near(t, "rest", s.Imbalance.X, -0.5, 1e-9)
	near(t, "top chord", s.Joints[4].Axial.Most, -1000, 0.5)
	f.Forces[1].X = -1003
	if _, err := f.Solve(); !errors.Is(err, rack.ErrImbalance) {
		t.Errorf("three thousandths left over: %v", err)
	}
	f.Forces = []rack.Force{{Node: 0, Couple: 10}, {Node: 2, X: 1}, {Node: 2, X: -1}}
	f.Members[0].Ends[0].Turn = inf
	if _, err := f.Solve(); !errors.Is(err, rack.ErrImbalance) {
		t.Errorf("a couple left over: %v", err)
	}
	f = panel()
	f.Holds = nil

	// Friction under two drums of unequal weight: shares as given.
	f.Drag.Nodes = []float64{3, 0, 0, 1}
	f.Forces = []rack.Force{{Node: 0, X: 800}}
	s = solve(t, f)
	near(t, "carried", s.Imbalance.X, 800, 1e-9)
	// The middle is at y = 0.5, so the pull at y = 0 also turns: 400 N·m over
	// the polar moment 3·0.25 + 1·2.25 = 3, that is 133.3 N/m at each.
	near(t, "couple carried", s.Imbalance.Couple, 400, 1e-9)
	// Drum D, 1.5 m from the middle, takes 1·(-800/4 + 133.3·1.5) N along x: none.
	// So A alone drags, 3·(-800/4 - 133.3·0.5) N, against the pull at itself.
	force, _ := largest(s)
	near(t, "nothing goes through the frame", force, 0, 1e-6)

	f.Drag.Nodes = []float64{0, 0, 0, 1} // one place carries no couple
	if _, err := f.Solve(); !errors.Is(err, rack.ErrImbalance) {
		t.Errorf("one drum carries a couple: %v", err)
	}
}

// Just before and just past a force and a couple.
func TestJumps(t *testing.T) {
	f := cantilever()
	f.Members[0].Loads = []rack.Load{{From: 1, Along: 30, Across: 50, Couple: 20}}
	l := &solve(t, f).Lines[0]
	a, b := l.Before(1), l.At(1)
	near(t, "axial before", a.Axial, 30, 1e-9)
	near(t, "axial past", b.Axial, 0, 1e-9)
	near(t, "shear before", a.Shear, -50, 1e-9)
	near(t, "shear past", b.Shear, 0, 1e-9)
	near(t, "moment before", a.Moment, 20, 1e-9)
	near(t, "moment past", b.Moment, 0, 1e-9)
	near(t, "at its far end", l.At(5).X, 2, 0)
	near(t, "before its near end", l.Before(-5).Axial, 30, 1e-9)
}

func TestRacking(t *testing.T) {
	f := panel()
	s := solve(t, f)
	r, err := s.Racking([4]int{0, 1, 2, 3})
	if err != nil {
		t.Fatal(err)
	}
	u := s.Move
	near(t, "diagonal A-C", r.Diagonals[0], (3*u[2][0]+2*u[2][1])/math.Sqrt(13), 1e-12)
	near(t, "diagonal B-D", r.Diagonals[1], (-3*(u[3][0]-u[1][0])+2*(u[3][1]-u[1][1]))/math.Sqrt(13), 1e-12)
	near(t, "out", r.Out, r.Diagonals[0]-r.Diagonals[1], 1e-15)
	near(t, "shear", r.Shear, (u[2][0]-u[1][0]+u[3][0])/4+(u[2][1]-u[3][1]+u[1][1])/6, 1e-12)
	if !strings.Contains(r.String(), "in") || !strings.Contains(r.String(), "mm") {
		t.Errorf("no units in %q", r)
	}
	// From another corner, and clockwise: the same frame.
	if a, err := s.Racking([4]int{0, 3, 2, 1}); err != nil || math.Abs(a.Shear-r.Shear) > 1e-15 || math.Abs(a.Out-r.Out) > 1e-15 {
		t.Errorf("clockwise %v %v, want %v", a, err, r)
	}
	if a, err := s.Racking([4]int{1, 2, 3, 0}); err != nil || math.Abs(a.Shear+r.Shear) > 1e-15 || math.Abs(a.Out+r.Out) > 1e-15 {
		t.Errorf("from B %v %v, want the opposite of %v", a, err, r)
	}
	for _, c := range [][4]int{{0, 1, 2, 4}, {-1, 1, 2, 3}, {0, 0, 1, 2}, {0, 1, 0, 1}, {0, 1, 3, 2}} {
		if _, err := s.Racking(c); !errors.Is(err, measure.ErrRange) {
			t.Errorf("corners %v: %v", c, err)
		}
	}
}

// Statically determinate forces are known whatever the joints do; the rest is a
// range.
func TestUnknownSlips(t *testing.T) {
	f := panel()
	for i := range f.Members {
		f.Members[i].Ends = [2]rack.End{}
	}
	s := solve(t, f)
	brace := s.Joints[8].Pull
	near(t, "brace", brace.Most, 1000*math.Sqrt(13)/3, 1e-6)
	if !brace.Sure() || !strings.Contains(strings.Join(s.Notes, "\n"), "equilibrium alone") {
		t.Errorf("brace %v, notes %q", brace, s.Notes)
	}
	if _, err := s.Racking([4]int{0, 1, 2, 3}); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("racking: %v", err)
	}
	// A second diagonal: how they share depends on their screws.
	f.Members = append(f.Members, rack.Member{Nodes: []int{1, 3}, EA: 2e7, EI: 1e4, Name: "other brace"})
	s = solve(t, f)
	brace = s.Joints[8].Pull
	if brace.Sure() || !(brace.Least > 100 && brace.Most < 1300) {
		t.Errorf("brace %v", brace)
	}
	for _, want := range []string{" N to ", "movement: not known", "slip of joints along members"} {
		if !strings.Contains(s.String(), want) {
			t.Errorf("%q is not said:\n%v", want, s)
		}
	}
	for i := range s.Cases {
		if i > 0 && s.Cases[i].Slips == s.Cases[i-1].Slips && !s.Cases[i].Scattered {
			t.Error("a case is there twice")
		}
		e := s.Cases[i].Lines[4].Extremes()
		if w := s.Worst[4]; e.Pull.Axial > w.Pull.Axial || e.Push.Axial < w.Push.Axial {
			t.Error("a case is beyond the worst")
		}
	}
}

func TestLay(t *testing.T) {
	f := panel()
	b := rack.Board{From: [2]float64{0, 1}, To: [2]float64{3, 1}, EA: 1e7, EI: 1e4, Name: "plank"}
	laid, err := f.Lay(b, 0.08, 1e6)
	if err != nil {
		t.Fatal(err)
	}
	if len(laid.Screws) != 6 || len(b.Screws) != 0 { // east, west and the brace
		t.Fatalf("%+v", laid)
	}
	for _, s := range laid.Screws {
		if s.Slip != 1e6 {
			t.Errorf("%+v", s)
		}
		if s.Member == 1 {
			near(t, "x", s.At[0], 3, 1e-12)
			near(t, "off the middle", math.Abs(s.At[1]-1), 0.04, 1e-12)
		}
	}
	if one, err := f.Lay(b, 0, math.NaN(), 3, 1); err != nil || len(one.Screws) != 2 || one.Screws[0].Member != 3 || !math.IsNaN(one.Screws[0].Slip) {
		t.Errorf("%+v %v", one, err)
	}
	for name, members := range map[string][]int{"none such": {5}, "along it": {0}, "negative": {-1}} {
		if _, err := f.Lay(b, 0.08, 1e6, members...); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	short := b
	short.To[0] = 2
	if _, err := f.Lay(short, 0.08, 1e6, 1); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a member beyond its end: %v", err)
	}
	for _, bad := range [][2]float64{{-1, 1e6}, {1, 1e6}, {math.NaN(), 1e6}, {0.08, -1}, {0.08, inf}} {
		if _, err := f.Lay(b, bad[0], bad[1]); !errors.Is(err, measure.ErrRange) {
			t.Errorf("spread and slip %v: %v", bad, err)
		}
	}
	// Right on a hinged joint it is left out; on the error path it is named.
	b.From[1], b.To[1] = 2, 2
	if laid, err := f.Lay(b, 0.08, 1e6); err != nil || len(laid.Screws) != 0 {
		t.Errorf("on the joints: %+v %v", laid, err)
	}
	b.Screws = []rack.Screw{{Member: 1, At: [2]float64{3, 2}, Slip: 1e6}}
	f.Boards = []rack.Board{b}
	if _, err := f.Solve(); err == nil || !strings.Contains(err.Error(), "right on the joint") {
		t.Error(err)
	}
	f.Boards[0].Screws[0].At = [2]float64{3, 2.1}
	if _, err := f.Solve(); err == nil || !strings.Contains(err.Error(), "beyond the end") {
		t.Error(err)
	}
	// On a rigid end it counts as on the node.
	f.Members[1].Ends = [2]rack.End{rack.Rigid(), rack.Rigid()}
	f.Members[3].Ends = f.Members[1].Ends
	f.Boards = nil
	b.Screws = nil
	if laid, err = f.Lay(b, 0.08, 1e6); err != nil || len(laid.Screws) != 4 {
		t.Fatalf("%+v %v", laid, err)
	}
	f.Boards = []rack.Board{laid}
	solve(t, f)
}

// A board on two screws in a line pulls as a tie: it is a diagonal.
func TestBoardAsDiagonal(t *testing.T) {
	f := panel()
	f.Members = f.Members[:4]
	for _, i := range []int{1, 3} {
		f.Members[i].EI = 1e8
	}
	f.Boards = []rack.Board{{
		From: [2]float64{0, 0.1}, To: [2]float64{3, 1.9}, EA: 1e7, EI: 1e4,
		Screws: []rack.Screw{{Member: 3, At: [2]float64{0, 0.1}, Slip: 2e6}, {Member: 1, At: [2]float64{3, 1.9}, Slip: 2e6}},
	}}
	s := solve(t, f)
	// Moments about the east and west hinges: the tie's pull along x at 0.1 and
	// 1.9 m of 2 m: 1000 N · 2 m = H (1.9 - 0.1).
	near(t, "tie along x", math.Abs(s.Screws[0].X.Most), 2000/1.8, 0.1)
	near(t, "tie", s.Screws[0].Force.Most, 2000/1.8*math.Hypot(3, 1.8)/3, 0.1)
}

func TestBetween(t *testing.T) {
	b := rack.Between{Least: -300, Most: 200}
	if b.Peak() != -300 || b.Sure() || b.Format(measure.Force, measure.SI) != "-300 N to 200 N" {
		t.Errorf("%v %v", b.Peak(), b.Format(measure.Force, measure.SI))
	}
	b.Least = 200
	if b.Peak() != 200 || !b.Sure() || b.Format(measure.Force, measure.SI) != "200 N" {
		t.Errorf("%v %v", b.Peak(), b.Format(measure.Force, measure.SI))
	}
}

// Values of no solution answer without a panic.
func TestZeroValues(t *testing.T) {
	var l rack.Line
	if !math.IsNaN(l.At(0).Axial) || !math.IsNaN(l.Before(1).Moment) || !math.IsNaN(l.Extremes().Pull.Axial) {
		t.Error("a line without pieces carries something")
	}
	if _, _, _, err := l.Moved(1); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	var s rack.Solution
	if _, err := s.Racking([4]int{}); err == nil {
		t.Error("no error")
	}
	if _, ok := s.Pull(); ok || s.String() == "" {
		t.Error("a solution of nothing pulls")
	}
	if _, err := (&rack.Frame{}).Solve(); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	if _, err := (&rack.Frame{}).Lay(rack.Board{}, 0, 0); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	for _, text := range []string{
		(&rack.MechanismError{}).Error(), (&rack.ImbalanceError{}).Error(), rack.Slips{}.String(), rack.Resultant{}.String(),
		rack.Diagram{}.String(), rack.Racking{}.String(),
	} {
		if text == "" {
			t.Error("an empty text")
		}
	}
}

// TestUniformByDefault: a load spread over a length without a rise is the same all along.
func TestUniformByDefault(t *testing.T) {
	if got, want := (rack.Load{From: 1, To: 2, Along: 3, Across: 4}), rack.Uniform(1, 2, 3, 4); got != want {
		t.Errorf("%+v is not %+v", got, want)
	}
	f := rack.Frame{Nodes: [][2]float64{{0, 0}, {2, 0}}, Members: []rack.Member{{Nodes: []int{0, 1}, EA: 1e7, EI: 1e5, Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}, Loads: []rack.Load{{To: 2, Across: 100}}}}}
	f.Holds = []rack.Hold{{Node: 0, Along: math.Inf(1), Across: math.Inf(1), Turn: math.Inf(1)}}
	s, err := f.Solve()
	if err != nil {
		t.Fatal(err)
	}
	if got := math.Abs(s.Lines[0].At(0).Moment); math.Abs(got-100*2*2/2) > 1e-9 {
		t.Errorf("the moment at the root is %g N·m, w L²/2 is 200", got)
	}
}
