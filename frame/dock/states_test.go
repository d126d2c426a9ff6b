package dock_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/frame"
	"example.org/floewright/frame/rack"
)

// A state that several packages meet is one error for a caller of them all, and each says
// in its message which it is. The docks are invented: a dock whose weight
// stands too high, as a body and as a frame, a beam and a bar that may turn.
func TestOneStateOneError(t *testing.T) {
	tall := &float.Platform{
		Density: 1000, Weights: []float.Weight{{Mass: 200, At: r3.Vec{Z: 9}}},
		Units: []float.Unit{{Body: float.Block{Length: 2, Width: 1, Height: 0.5}, At: r3.Vec{Z: -0.25}}},
	}
	_, platform := tall.Settle()

	seats := []frame.Seat{
		{Nodes: []int{0}, Support: frame.Spring(1000), Heights: [2]float64{-0.3, -0.3}},
		{Nodes: []int{1}, Support: frame.Spring(1000), Heights: [2]float64{-0.3, -0.3}},
		{Nodes: []int{2}, Support: frame.Spring(1000), Heights: [2]float64{-0.3, -0.3}},
	}
	members := []frame.Member{{I: 0, J: 1, EI: 1e6, GJ: 1e6}, {I: 1, J: 2, EI: 1e6, GJ: 1e6}}
	nodes := [][2]float64{{0, 0}, {1, 0}, {1, 1}}
	raft := &frame.Grillage{Nodes: nodes, Members: members, Seats: seats, Weights: []frame.Weight{{Node: 1, Force: 500, Height: 40}}}
	_, grid := raft.Solve()

	_, beam := (&frame.Beam{Length: 3, EI: 1e5, Rests: []frame.Rest{{At: 0}}, Loads: []frame.Load{frame.Point(1, 100)}}).Solve()
	_, bar := (&rack.Frame{
		Nodes: [][2]float64{{0, 0}, {1, 0}}, Members: []rack.Member{{Nodes: []int{0, 1}, EA: 1e6, EI: 1e3}},
		Holds: []rack.Hold{{Node: 0, Along: math.Inf(1), Across: math.Inf(1)}}, Forces: []rack.Force{{Node: 1, Y: 100}},
	}).Solve()

	for _, c := range []struct {
		err   error
		as    []error // the names under which a caller may ask
		not   error
		speak string
	}{
		{platform, []error{float.ErrCapsizes, frame.ErrCapsizes}, float.ErrSinks, "platform: capsizes"},
		{grid, []error{float.ErrCapsizes, frame.ErrCapsizes}, frame.ErrMechanism, "frame: it capsizes"},
		{beam, []error{frame.ErrMechanism, rack.ErrMechanism}, frame.ErrCapsizes, "frame: nothing holds it"},
		{bar, []error{frame.ErrMechanism, rack.ErrMechanism}, rack.ErrUnsettled, "rack: nothing holds it"},
		{&float.Failure{Class: float.ErrUnsettled}, []error{frame.ErrUnsettled, rack.ErrUnsettled}, float.ErrCapsizes, "platform: no balance found"},
	} {
		for _, as := range c.as {
			if !errors.Is(c.err, as) {
				t.Errorf("%v is not %v", c.err, as)
			}
		}
		if errors.Is(c.err, c.not) || !strings.HasPrefix(c.err.Error(), c.speak) {
			t.Errorf("%v: want %s, and not %v", c.err, c.speak, c.not)
		}
	}
}
