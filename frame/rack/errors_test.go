package rack_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

// Bad data is an error that names its field.
func TestBadData(t *testing.T) {
	nan := math.NaN()
	plank := func() []rack.Board {
		return []rack.Board{{
			From: [2]float64{0, 1}, To: [2]float64{3, 1}, EA: 1e7, EI: 1e4, Name: "plank",
			Screws: []rack.Screw{{Member: 3, At: [2]float64{0, 1.04}, Slip: 1e6}, {Member: 3, At: [2]float64{0, 0.96}, Slip: 1e6}, {Member: 1, At: [2]float64{3, 1}, Slip: 1e6}},
		}}
	}
	for field, spoil := range map[string]func(f *rack.Frame){
		"Members":                  func(f *rack.Frame) { f.Members = nil },
		"Nodes[1][0]":              func(f *rack.Frame) { f.Nodes[1][0] = nan },
		"Nodes[2][1]":              func(f *rack.Frame) { f.Nodes[2][1] = inf },
		"south.Nodes":              func(f *rack.Frame) { f.Members[0].Nodes = []int{0} },
		"south.Nodes[1]":           func(f *rack.Frame) { f.Members[0].Nodes = []int{0, 9} },
		"east.Nodes[0]":            func(f *rack.Frame) { f.Members[1].Nodes[0] = -1 },
		"west from end to end":     func(f *rack.Frame) { f.Members[3].Nodes = []int{0, 0} },
		"brace.Nodes[1]":           func(f *rack.Frame) { f.Members[4].Nodes = []int{0, 1, 2} },
		"north.Nodes[2]":           func(f *rack.Frame) { f.Members[2].Nodes = []int{0, 1, 0, 1} },
		"south.EA":                 func(f *rack.Frame) { f.Members[0].EA = 0 },
		"south.EI":                 func(f *rack.Frame) { f.Members[0].EI = nan },
		"south.GA":                 func(f *rack.Frame) { f.Members[0].GA = -1 },
		"south.Ends[0].Turn":       func(f *rack.Frame) { f.Members[0].Ends[0].Turn = -1 },
		"south.Ends[1].Along":      func(f *rack.Frame) { f.Members[0].Ends[1].Along = -1 },
		"south.Ends[1].Across":     func(f *rack.Frame) { f.Members[0].Ends[1].Across = math.Inf(-1) },
		"south.Loads[0].From":      func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{From: -1}} },
		"south.Loads[1].To":        func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{}, {To: 4}} },
		"south.Loads[0]":           func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{To: 1, Couple: nan}} },
		"south.Loads[0].To":        func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{From: 2, To: 1}} },
		"Loads[0]":                 func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{From: 2, AcrossRise: 1}} },
		"south.Loads[0].Along":     func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{From: 2, Along: nan}} },
		"south.Loads[0].Couple":    func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{From: 2, Couple: inf}} },
		"south.Loads[0].AlongRise": func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{To: 2, AlongRise: nan}} },
		"south.Loads[0].Across":    func(f *rack.Frame) { f.Members[0].Loads = []rack.Load{{To: 2, Across: 1e12}} },
		"hinge.Node":               func(f *rack.Frame) { f.Holds[0].Node = 4 },
		"hinge.Angle":              func(f *rack.Frame) { f.Holds[0].Angle = nan },
		"hinge.Along":              func(f *rack.Frame) { f.Holds[0].Along = nan },
		"post.Across":              func(f *rack.Frame) { f.Holds[1].Across = -5 },
		"post.Turn":                func(f *rack.Frame) { f.Holds[1].Turn = -5 },
		"post":                     func(f *rack.Frame) { f.Holds[1] = rack.Hold{Name: "post"} },
		"second":                   func(f *rack.Frame) { f.Holds[1] = rack.Hold{Along: inf, Name: "second"} },
		"line": func(f *rack.Frame) {
			f.Holds[1] = rack.Hold{Node: 1, Along: 1e5, Across: 1e5, Line: true, Name: "line"}
		},
		"line.Along":                    func(f *rack.Frame) { f.Holds[1] = rack.Hold{Node: 1, Along: inf, Line: true, Name: "line"} },
		"cleat.Node":                    func(f *rack.Frame) { f.Forces[0].Node = -1 },
		"cleat.X":                       func(f *rack.Frame) { f.Forces[0].X = nan },
		"cleat.Y":                       func(f *rack.Frame) { f.Forces[0].Y = inf },
		"cleat.Couple":                  func(f *rack.Frame) { f.Forces[0].Couple = nan },
		"couple on node D":              func(f *rack.Frame) { f.Forces[0].Couple = 5 },
		"Drag":                          func(f *rack.Frame) { f.Drag.Nodes = make([]float64, 4) },
		"Drag.Members":                  func(f *rack.Frame) { f.Holds, f.Drag.Members = nil, []float64{1} },
		"Drag.Nodes[1]":                 func(f *rack.Frame) { f.Holds, f.Drag.Nodes = nil, []float64{1, -1, 1, 1} },
		"plank.EA":                      func(f *rack.Frame) { f.Boards[0].EA = nan },
		"plank.From[1]":                 func(f *rack.Frame) { f.Boards[0].From[1] = nan },
		"plank from end to end":         func(f *rack.Frame) { f.Boards[0].To = f.Boards[0].From },
		"plank.Screws[0].Member":        func(f *rack.Frame) { f.Boards[0].Screws[0].Member = 7 },
		"plank.Screws[1].At[1]":         func(f *rack.Frame) { f.Boards[0].Screws[1].At[1] = nan },
		"plank.Screws[1].Slip":          func(f *rack.Frame) { f.Boards[0].Screws[1].Slip = inf },
		"plank.Screws[0], off the":      func(f *rack.Frame) { f.Boards[0].Screws[0].At[1] = 1.5 },
		"plank.Screws[0], along the":    func(f *rack.Frame) { f.Boards[0].Screws[0].At[0] = -1 },
		"plank.Screws[2], of west, off": func(f *rack.Frame) { f.Boards[0].Screws[2].Member = 3 },
	} {
		t.Run(field, func(t *testing.T) {
			f := panel()
			f.Boards = plank()
			if _, err := f.Solve(); err != nil {
				t.Fatal(err)
			}
			spoil(f)
			_, err := f.Solve()
			var e *measure.Error
			if !errors.As(err, &e) || !errors.Is(err, measure.ErrRange) {
				t.Fatalf("%v", err)
			}
			if !strings.Contains(e.Field, field) {
				t.Errorf("%v does not name %s", err, field)
			}
		})
	}
}

// Stiffnesses at the ends of what is accepted either balance or say that they do
// not; a hinge too few is not taken for stiff.
func TestFarApart(t *testing.T) {
	for _, k := range []float64{1, 1e11} {
		for _, ei := range []float64{1e-3, 1e12} {
			f := panel()
			for i := range f.Members {
				f.Members[i].EI = ei
				f.Members[i].Ends = [2]rack.End{{Turn: 1e-3, Along: k, Across: k}, {Turn: 1e12, Along: k, Across: k}}
			}
			s, err := f.Solve()
			switch {
			case err == nil && !(s.Residual <= 1e-6):
				t.Errorf("residual %g", s.Residual)
			case err != nil && !errors.Is(err, rack.ErrUnsettled):
				t.Errorf("k = %g, EI = %g: %v", k, ei, err)
			}
		}
	}
}

// What a caller spoils in a solution is no movement.
func TestSpoiltSolution(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for axis := range 2 {
			s := solve(t, panel())
			s.Move[2][axis] = x
			if r, err := s.Racking([4]int{0, 1, 2, 3}); !errors.Is(err, measure.ErrRange) {
				t.Errorf("%g: %+v, %v", x, r, err)
			}
		}
		s := solve(t, panel())
		s.Names, s.Places[1] = nil, s.Places[0]
		if r, err := s.Racking([4]int{0, 1, 2, 3}); !errors.Is(err, measure.ErrRange) {
			t.Errorf("two corners in one place: %+v, %v", r, err)
		}
		l := s.Lines[0]
		l.EI = 0
		if _, left, _, err := l.Moved(1); !errors.Is(err, measure.ErrRange) {
			t.Errorf("a line without stiffness moved %g, %v", left, err)
		}
		l = s.Lines[0]
		l.Start[1] = x
		if _, left, _, err := l.Moved(1); !errors.Is(err, measure.ErrRange) {
			t.Errorf("a line moved %g, %v", left, err)
		}
	}
}

// A load spread over next to nothing is refused: its slope would be no number.
func TestLoadOfNoLength(t *testing.T) {
	f := panel()
	f.Members[3].Loads = []rack.Load{rack.Uniform(0, 5e-324, 10, 20)}
	f.Members[3].Loads[0].AlongRise = 10
	if s, err := f.Solve(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("%v, %v", s, err)
	}
}
