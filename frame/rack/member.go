package rack

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Member is a straight piece of the frame: a rim, a joist, a header, a
// diagonal. It runs through its nodes in order and is continuous at those between
// its ends; a joint in the middle of a rim is the end of the joist that meets it.
type Member struct {
	Nodes []int   // by index, two or more, in a straight line
	EA    float64 // N, stretching
	EI    float64 // N·m², bending in the plane: of a rim, the weak way
	GA    float64 // N, shear stiffness; 0: no shear deflection
	Ends  [2]End  // how its first and last node hold it
	Loads []Load
	Name  string // for errors and printing; may be empty
}

// An End says how a member's end is joined to its node. The zero End is a hinge
// whose slip is not known.
type End struct {
	// Turn resists turning, N·m/rad, as a corner bracket does: 0 is a hinge,
	// math.Inf(1) a joint that does not turn, NaN one whose stiffness is not known.
	Turn float64
	// Along and Across resist slip along and across the member, N/m: 0 and NaN are
	// not known, math.Inf(1) does not slip.
	Along, Across float64
}

// Pinned returns an end that turns freely and does not slip.
func Pinned() End { return End{Along: math.Inf(1), Across: math.Inf(1)} }

// Rigid returns an end that neither turns nor slips against its node.
func Rigid() End { return End{Turn: math.Inf(1), Along: math.Inf(1), Across: math.Inf(1)} }

// rigid reports whether nothing gives at the end.
func (e *End) rigid() bool { return firm(e.Turn) && firm(e.Along) && firm(e.Across) }

// A Load acts on a member, at places in m from its first node. Along and Across
// are positive towards the last node and to the member's left.
//
// Where To is more than From it is spread over that length and varies evenly from
// Along and Across at From to AlongRise and AcrossRise more at To, all N/m: without
// them it is uniform. Else it is a force of Along and Across, N, and a Couple, N·m,
// at From; at a member's end the node takes it, not the joint.
type Load struct {
	From, To              float64
	Along, Across         float64
	AlongRise, AcrossRise float64
	Couple                float64
}

// Uniform returns a load of so many N/m between two places in m: ice along a rim
// has no Along.
func Uniform(from, to, along, across float64) Load {
	return Load{From: from, To: to, Along: along, Across: across}
}

// Point returns a force, in N, at a place in m.
func Point(at, along, across float64) Load { return Load{From: at, Along: along, Across: across} }

func (l *Load) spread() bool { return l.To > l.From && l.To > 0 }

// check returns what is wrong with a load on a member of a given length.
func (l *Load) check(field func() string, length float64) error {
	place := measure.Range{Kind: measure.Length, Lo: -slack * length, Hi: length * (1 + slack)}
	if err := has(place, l.From, field, ".From"); err != nil {
		return err
	}
	if l.spread() {
		if l.Couple != 0 { // NaN is not 0 either
			return wrong(field(), "a spread load (To beyond From) with a Couple", "two loads")
		}
		if l.To-l.From < 1e-12 { // its slope along so little may be no number
			return wrong(field()+".To", fmt.Sprintf("%g m from From", l.To-l.From), "a length to be spread over, or a force")
		}
		return first(
			has(place, l.To, field, ".To"),
			has(lineLoads, l.Along, field, ".Along"), has(lineLoads, l.AlongRise, field, ".AlongRise"),
			has(lineLoads, l.Across, field, ".Across"), has(lineLoads, l.AcrossRise, field, ".AcrossRise"),
		)
	}
	if l.To != 0 && l.To != l.From {
		return wrong(field()+".To", fmt.Sprintf("%g m", l.To), "0 or From for a force, more than From for a spread load")
	}
	if l.AlongRise != 0 || l.AcrossRise != 0 {
		return wrong(field(), "a force (To not beyond From) with AlongRise or AcrossRise", "two loads")
	}
	return first(has(forces, l.Along, field, ".Along"), has(forces, l.Across, field, ".Across"), has(couples, l.Couple, field, ".Couple"))
}

// line returns a member's first node, its direction and its length.
func (f *Frame) line(m *Member) (start [2]float64, cos, sin, length float64) {
	start = f.Nodes[m.Nodes[0]]
	end := f.Nodes[m.Nodes[len(m.Nodes)-1]]
	dx, dy := end[0]-start[0], end[1]-start[1]
	length = math.Hypot(dx, dy)
	return start, dx / length, dy / length, length
}

// along returns how far a place lies along and to the left of a line.
func along(start [2]float64, cos, sin float64, at [2]float64) (x, left float64) {
	dx, dy := at[0]-start[0], at[1]-start[1]
	return float64(dx*cos) + float64(dy*sin), float64(dy*cos) - float64(dx*sin)
}

func (f *Frame) checkMember(i int) error {
	m := &f.Members[i]
	name := func() string { return f.member(i) }
	if len(m.Nodes) < 2 {
		return wrong(name()+".Nodes", itoa(len(m.Nodes))+" of them", "two nodes or more")
	}
	for k, n := range m.Nodes {
		if n < 0 || n >= len(f.Nodes) {
			return index(fmt.Sprintf("%s.Nodes[%d]", name(), k), n, len(f.Nodes))
		}
	}
	start, cos, sin, length := f.line(m)
	if err := has(lengths, length, name, " from end to end"); err != nil {
		return err
	}
	last := 0.0
	for k, n := range m.Nodes[1:] {
		x, left := along(start, cos, sin, f.Nodes[n])
		if math.Abs(left) > 1e-6*length {
			return wrong(fmt.Sprintf("%s.Nodes[%d]", name(), k+1), fmt.Sprintf("%.4f m beside the straight line", math.Abs(left)), "nodes in a straight line")
		}
		if !(x-last >= 1e-6*length) {
			return wrong(fmt.Sprintf("%s.Nodes[%d]", name(), k+1), "not beyond the node before it", "nodes in order along the member")
		}
		last = x
	}
	if err := first(has(stretch, m.EA, name, ".EA"), has(bending, m.EI, name, ".EI (N·m²)")); err != nil {
		return err
	}
	if m.GA != 0 {
		if err := has(stretch, m.GA, name, ".GA"); err != nil {
			return err
		}
	}
	for k := range m.Ends {
		e := &m.Ends[k]
		end := func() string { return fmt.Sprintf("%s.Ends[%d]", name(), k) }
		if err := first(
			given(turning, e.Turn, end, ".Turn (N·m/rad)"),
			given(stiffnesses, e.Along, end, ".Along"),
			given(stiffnesses, e.Across, end, ".Across"),
		); err != nil {
			return err
		}
	}
	for k := range m.Loads {
		if err := m.Loads[k].check(func() string { return fmt.Sprintf("%s.Loads[%d]", name(), k) }, length); err != nil {
			return err
		}
	}
	return nil
}
