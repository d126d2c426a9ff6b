package main

import (
	"errors"
	"fmt"
	"math"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

func init() {
	calls = append(calls, call{"frame/rack", func() (string, error) {
		f := rack.Frame{Nodes: [][2]float64{{0, 0}, {3, 0}, {3, 2}, {0, 2}}}
		for _, n := range [][]int{{0, 1}, {1, 2}, {2, 3}, {3, 0}} {
			f.Members = append(f.Members, rack.Member{Nodes: n, EA: 2e7, EI: 1e4, Ends: [2]rack.End{rack.Pinned(), rack.Pinned()}})
		}
		f.Holds = []rack.Hold{{Node: 0, Along: math.Inf(1), Across: math.Inf(1)}, {Node: 1, Across: math.Inf(1)}}
		f.Forces = []rack.Force{{Node: 2, X: 900}}
		if _, err := f.Solve(); !errors.Is(err, rack.ErrMechanism) {
			return "", fmt.Errorf("a hinged panel without a brace has a solution: %v", err)
		}
		f.Members = append(f.Members, rack.Member{Nodes: []int{0, 2}, EA: 2e7, EI: 1e4, Name: "brace"})
		s, err := f.Solve()
		if err != nil {
			return "", err
		}
		pull := s.Joints[8].Pull
		if want := 900 * math.Hypot(3, 2) / 3; !pull.Sure() || math.Abs(pull.Most-want) > 1e-6 {
			return "", fmt.Errorf("a brace is pulled with %v, want %g N", pull, want)
		}
		if _, err := s.Racking([4]int{0, 1, 2, 3}); !errors.Is(err, measure.ErrUnknown) {
			return "", fmt.Errorf("joints of unknown slip give inches: %v", err)
		}
		return fmt.Sprintf("the brace of a panel is pulled off its joint with %.0f N", pull.Most), nil
	}})
}
