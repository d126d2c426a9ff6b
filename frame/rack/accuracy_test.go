package rack_test

import (
	"math"
	"testing"

	"example.org/floewright/frame/rack"
	"example.org/floewright/internal/ulp"
)

// TestAccuracy compares solved frames with references of 25 digits (independent
// computation, 50 digits): the textbook's polynomials of a beam and a bar, and a
// truss of two bars. The bounds lie just above what was measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")
	inf := math.Inf(1)
	left := func(l *rack.Line, x float64) (float64, error) {
		_, left, _, err := l.Moved(x)
		return left, err
	}
	moment := func(l *rack.Line, x float64) (float64, error) { return l.At(x).Moment, nil }
	along := func(l *rack.Line, x float64) (float64, error) {
		along, _, _, err := l.Moved(x)
		return along, err
	}
	// The inputs are length, EI or EA, load per metre, place.
	beam := func(m rack.Member, holds []rack.Hold, load func(x []float64) rack.Load, of func(*rack.Line, float64) (float64, error)) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) {
			m.Nodes, m.EA, m.EI = []int{0, 1}, x[1], x[1]
			m.Loads = []rack.Load{load(x)}
			f := rack.Frame{Nodes: [][2]float64{{0, 0}, {x[0], 0}}, Members: []rack.Member{m}, Holds: holds}
			s, err := f.Solve()
			if err != nil {
				return 0, err
			}
			return of(&s.Lines[0], x[3])
		}
	}
	across := func(x []float64) rack.Load { return rack.Uniform(0, x[0], 0, x[2]) }
	stretch := func(x []float64) rack.Load { return rack.Uniform(0, x[0], x[2], 0) }
	held := []rack.Hold{{Node: 0, Along: inf, Across: inf, Turn: inf}}
	rigid := rack.Member{Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}}
	r.Within(4, "cantilever left", beam(rigid, held, across, left))
	r.Within(5, "cantilever moment", beam(rigid, held, across, moment))
	r.Within(3, "bar along", beam(rigid, held, stretch, along))
	both := []rack.Hold{{Node: 0, Along: inf, Across: inf}, {Node: 1, Across: inf}}
	pinned := rack.Member{Ends: [2]rack.End{rack.Pinned(), rack.Pinned()}}
	r.Within(10.5, "simple left", beam(pinned, both, across, left))
	r.Within(9, "simple moment", beam(pinned, both, across, moment))

	// The inputs are half the span, height, EA, force.
	truss := func(x []float64, force rack.Force) (*rack.Solution, error) {
		bar := func(n int) rack.Member {
			return rack.Member{Nodes: []int{n, 2}, EA: x[2], EI: 1, Ends: [2]rack.End{rack.Pinned(), rack.Pinned()}}
		}
		force.Node = 2
		f := rack.Frame{
			Nodes: [][2]float64{{-x[0], 0}, {x[0], 0}, {0, x[1]}}, Members: []rack.Member{bar(0), bar(1)},
			Holds:  []rack.Hold{{Node: 0, Along: inf, Across: inf}, {Node: 1, Along: inf, Across: inf}},
			Forces: []rack.Force{force},
		}
		return f.Solve()
	}
	r.Within(4.5, "two bars down", func(x []float64) (float64, error) {
		s, err := truss(x, rack.Force{Y: -x[3]})
		if err != nil {
			return 0, err
		}
		return -s.Move[2][1], nil
	})
	r.Within(3.5, "two bars sideways", func(x []float64) (float64, error) {
		s, err := truss(x, rack.Force{X: x[3]})
		if err != nil {
			return 0, err
		}
		return s.Move[2][0], nil
	})
	r.Within(3, "two bars axial", func(x []float64) (float64, error) {
		s, err := truss(x, rack.Force{Y: -x[3]})
		if err != nil {
			return 0, err
		}
		return s.Lines[0].At(0).Axial, nil
	})
}
