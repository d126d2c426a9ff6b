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
	tow := l.Skid.Value * s.weighs()
	line, whose := s.linePull()
	for i, end := range ends {
		for j, side := range sides {
			at := corner(i, j)
			place := "at the corner of the " + end + " and " + side
			for axis, way := range [2]string{"lengthwise", "sideways"} {
				out := toward[[2]int{i, j}[axis]]
				add("a line pulls "+way+" "+place, "a storm, a boat or a stuck anchor hangs on it"+whose, lumber.TenMinutes, "loads.cleat", along(at, axis, out*line))
				add("a boat bumps "+way+" "+place, "nobody moors by the book", lumber.TenMinutes, "loads.bump", along(at, axis, -out*l.Bump.Value))
				add("dragged "+way+" on skids by one line "+place, "the other line goes slack", lumber.SevenDays, "loads.skid_friction", along(at, axis, out*tow))
			}
		}
	}
	// The four edges: dragged by both corners, or hung on a hinge whose two pins a dock
	// that swings pulls and pushes.
	for edge, name := range [4]string{ends[0], ends[1], sides[0], sides[1]} {
		axis, k := edge/2, edge%2
		at := [2]int{corner(k, 0), corner(k, 1)}
		if axis == 1 {
			at = [2]int{corner(0, k), corner(1, k)}
		}
		add("dragged on skids by both corners of the "+name, "it is hauled out in autumn", lumber.SevenDays, "loads.skid_friction",
			along(at[0], axis, toward[k]*tow/2), along(at[1], axis, toward[k]*tow/2))
		for j := range 2 {
			pulled := [2]string{"near", "far"}[j]
			add("the hinge at the "+name+" is wrung, its "+pulled+" pin pulled", "wind swings a dock that hangs on its hinge"+whose,
				lumber.TenMinutes, "loads.cleat", along(at[j], axis, toward[k]*line), along(at[1-j], axis, -toward[k]*line))
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

// along returns a pull on a node along x (axis 0) or y.
func along(node, axis int, force float64) pull {
	if axis == 0 {
		return pull{node: node, x: force}
	}
	return pull{node: node, y: force}
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
