package dock

import (
	"fmt"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// sideways is what pulls and pushes the frame in its plane.
func (s *scene) sideways() []Situation {
	l := &s.plan.Loads
	var out []Situation
	last := len(s.centres) - 1
	// corner returns the node at an end and a side of the dock.
	corner := func(end, side int) int {
		if !s.across {
			end, side = side, end
		}
		return 2*([2]int{0, last}[end]) + side
	}
	toward := [2]float64{-1, 1}
	add := func(name, why string, t lumber.Duration, input string, pulls ...pull) {
		out = append(out, Situation{Name: name, Why: why, Duration: t, inputs: []string{input}, pulls: pulls})
	}
	for i, end := range ends {
		for j, side := range sides {
			at := corner(i, j)
			place := "at the corner of the " + end + " and " + side
			add("a line pulls lengthwise at the cleat "+place, "a storm, a boat or a stuck anchor hangs on it", lumber.TenMinutes, "loads.cleat",
				pull{node: at, x: toward[i] * l.Cleat.Value})
			add("a line pulls sideways at the cleat "+place, "a storm, a boat or a stuck anchor hangs on it", lumber.TenMinutes, "loads.cleat",
				pull{node: at, y: toward[j] * l.Cleat.Value})
			add("a boat bumps "+place, "nobody moors by the book", lumber.TenMinutes, "loads.bump", pull{node: at, x: -toward[i] * l.Bump.Value})
			add("a boat bumps the "+side+" "+place, "nobody moors by the book", lumber.TenMinutes, "loads.bump", pull{node: at, y: -toward[j] * l.Bump.Value})
		}
		tow := l.Skid.Value * s.weighs()
		add("dragged on skids by both corners of the "+end, "it is hauled out in autumn", lumber.SevenDays, "loads.skid_friction",
			pull{node: corner(i, 0), x: toward[i] * tow / 2}, pull{node: corner(i, 1), x: toward[i] * tow / 2})
		// The two pins of a hinge, one pulled and one pushed by a dock that swings.
		for j, side := range sides {
			add("the hinge at the "+end+" is wrung, pulled at the "+side, "wind on the side swings a dock that hangs on its hinge",
				lumber.TenMinutes, "loads.cleat", pull{node: corner(i, j), x: toward[i] * l.Cleat.Value}, pull{node: corner(i, 1-j), x: -toward[i] * l.Cleat.Value})
			add("dragged on skids by the corner of the "+end+" and "+side, "one line goes slack", lumber.SevenDays, "loads.skid_friction",
				pull{node: corner(i, j), x: toward[i] * tow})
		}
	}
	if q := l.IcePush.Value; q > 0 {
		for i, side := range s.rimSides() {
			// A rim's left is +y where it runs along x, -x where it runs along y.
			inward := -toward[i] * q
			if !s.across {
				inward = -inward
			}
			add("ice pushes along the "+side, "a sheet grows and drifts", lumber.SevenDays, "loads.ice_push", pull{rim: true, side: i, across: inward})
		}
	}
	return out
}

func joistName(k int) string { return fmt.Sprintf("joist %d", k+1) }

// weighs returns the weight of everything but people, N.
func (d *Dock) weighs() float64 {
	mass := 0.0
	for _, p := range d.pieces() {
		mass += p.count * p.each
	}
	for i := range d.plan.Weights {
		mass += d.plan.Weights[i].Mass.Value
	}
	for _, m := range d.floats {
		mass += m.set.Mass.Value
	}
	return mass * measure.Gravity
}
