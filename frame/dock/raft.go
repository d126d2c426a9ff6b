package dock

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/float"
	"example.org/floewright/frame"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// shearShare is the shear modulus of lumber as a share of its modulus of
// elasticity.
const shearShare = 1. / 16

// slicesAlong is how many parts a float is cut into along its length, and a block
// across it, too: two have the second moments of the whole.
const slicesAlong = 2

// A strip is one straight piece of the frame in a raft: its nodes by their
// places along it, and the members between them.
type strip struct {
	name  string
	at    []float64 // m, of the nodes, rising
	nodes []int
	first int // its first member; the others follow
}

// A footing is a part of a float and how the frame rests on it.
type footing struct {
	mount  int // which of the dock's floats
	part   float.Unit
	lowest float64 // of the part, over the underside of the joists, m
	round  bool
	along  bool       // a drum's axis lies along the dock
	seat   frame.Seat // without heights
	ends   []end      // of the joists under it
}

// An end is the end of a joist at a rim, two to a joist, and its share of a force
// on the joist by the lever. Heights of weights and of buoyancy act there, about
// the slopes of the rims and of the joists' ends: the boards hold a joist upright
// between them, so that it cannot roll over by itself.
type end struct {
	end   int
	share float64
}

// ends returns the shares of the two ends of a joist in a part of a force.
func (r *raft) ends(joist int, at, part float64) []end {
	near, far := r.dock.rimAxes()
	t := min(max(0, (at-near)/(far-near)), 1)
	return []end{{2 * joist, part * (1 - t)}, {2*joist + 1, part * t}}
}

// A raft is the dock's frame as a grillage: joists between two rims, and the
// floats in parts, each bearing on the joists beside it. Its nodes lie in the
// plane of the joists' underside. Deck boards carry loads to the joists as
// beams from one to the next; what else they do for the frame is left out, as
// the code's factor for repetitive members stands for it.
type raft struct {
	dock    *Dock
	grid    frame.Grillage // without loads and seats
	strips  []strip        // the joists, then the two rims
	feet    []footing
	density float64 // of the water
}

// rimAxes returns the places of the rims' axes along a joist.
func (d *Dock) rimAxes() (near, far float64) {
	half := float64(d.rimPlies) * d.rim.section.Width / 2
	return half, d.reach() - half
}

// on returns a place on the dock, from its middle, of a place along the run and
// one along the joists.
func (d *Dock) on(s, t float64) [2]float64 {
	if d.across {
		return [2]float64{s - d.length/2, t - d.width/2}
	}
	return [2]float64{t - d.length/2, s - d.width/2}
}

// from is the reverse of on.
func (d *Dock) from(x, y float64) (s, t float64) {
	if d.across {
		return x + d.length/2, y + d.width/2
	}
	return y + d.width/2, x + d.length/2
}

// rigidity returns EI and GJ of a piece of the frame.
func (d *Dock) rigidity(w wood, plies int) (ei, gj float64, err error) {
	m := lumber.Member{Section: w.section, Grade: w.grade, Length: d.clear, Plies: plies, Smooth: w.smooth(), Temperature: 20}
	design, err := m.Adjusted(lumber.TenYears)
	if err == nil {
		err = design.E.Err
	}
	if err != nil {
		return 0, 0, err
	}
	j, err := frame.Torsion(w.section.Width, w.section.Depth)
	n := float64(plies)
	return design.E.Value * m.Whole().Inertia(), n * design.E.Value * shearShare * j, err
}

// raft builds the grillage. The dock's inputs must be known: see [Dock.frameRests].
func (d *Dock) raft() (*raft, error) {
	_, density, err := d.water()
	if err != nil {
		return nil, err
	}
	r := &raft{dock: d, density: density}
	if err := r.stand(); err != nil {
		return nil, err
	}
	near, far := d.rimAxes()
	places := make([][]float64, len(d.centres)) // of nodes, by joist
	for k := range places {
		places[k] = []float64{near, far}
	}
	type touch struct {
		joist     int
		at, share float64
	}
	touches := make([][]touch, len(r.feet))
	for i := range r.feet {
		f := &r.feet[i]
		s, t := d.from(f.part.At.X, f.part.At.Y)
		t = min(max(t, near), far)
		for _, h := range d.shares(d.touched(f.mount), s) {
			touches[i] = append(touches[i], touch{h.joist, t, h.share})
			places[h.joist] = append(places[h.joist], t)
		}
	}
	if err := r.members(places); err != nil {
		return nil, err
	}
	for i := range r.feet {
		f := &r.feet[i]
		f.seat.Name = d.at(f.mount)
		for _, h := range touches[i] {
			st := &r.strips[h.joist]
			f.seat.Nodes = append(f.seat.Nodes, st.nodes[nearest(st.at, h.at)])
			f.seat.Share = append(f.seat.Share, h.share)
			f.ends = append(f.ends, r.ends(h.joist, h.at, h.share)...)
		}
	}
	return r, nil
}

// stand cuts the floats into parts.
func (r *raft) stand() error {
	d := r.dock
	for i, m := range d.floats {
		size := d.floatSize(m.set)
		across := 1
		if !size.drum {
			across = slicesAlong
		}
		u := m.unit(size)
		hung := u.Mass
		u.Mass = 0 // its own weight stands on the frame beside the push
		parts, err := u.Slices(slicesAlong, across)
		if err != nil {
			return err
		}
		for _, p := range parts {
			push, err := p.Support(r.density)
			if err != nil {
				return err
			}
			f := footing{mount: i, part: p, lowest: p.At.Z - size.height/2, round: size.drum, along: m.set.Lies.Value != "across"}
			f.part.Mass = hung / float64(len(parts))
			low := f.lowest
			f.seat.Support = func(sink float64) (force, stiffness, energy float64) { return push(sink - low) }
			r.feet = append(r.feet, f)
		}
	}
	if len(r.feet) == 0 {
		return &measure.Error{Field: "floats", Class: measure.ErrUnknown, Want: "floats with their places"}
	}
	return nil
}

// members lays the joists' nodes, the rims through their ends, and the members
// between them.
func (r *raft) members(places [][]float64) error {
	d, g := r.dock, &r.grid
	_, far := d.rimAxes()
	node := func(s, t float64, name string) int {
		g.Nodes = append(g.Nodes, d.on(s, t))
		g.Names = append(g.Names, name)
		return len(g.Nodes) - 1
	}
	rims := [2]strip{{name: "near rim"}, {name: "far rim"}}
	for k, at := range places {
		slices.Sort(at)
		at = slices.CompactFunc(at, func(a, b float64) bool { return math.Abs(a-b) < least })
		at[len(at)-1] = far
		st := strip{name: joistName(k), at: at}
		for i, t := range at {
			name := fmt.Sprintf("%s at %s", st.name, measure.Length.Format(t, d.system()))
			n := node(d.centres[k], t, name)
			st.nodes = append(st.nodes, n)
			for side, end := range [2]bool{i == 0, i == len(at)-1} {
				if end {
					rims[side].at = append(rims[side].at, d.centres[k])
					rims[side].nodes = append(rims[side].nodes, n)
				}
			}
		}
		r.strips = append(r.strips, st)
	}
	r.strips = append(r.strips, rims[:]...)
	for i := range r.strips {
		st := &r.strips[i]
		w, plies := d.joist, 1
		if i >= len(places) {
			w, plies = d.rim, d.rimPlies
		}
		ei, gj, err := d.rigidity(w, plies)
		if err != nil {
			return err
		}
		st.first = len(g.Members)
		for k := 1; k < len(st.nodes); k++ {
			g.Members = append(g.Members, frame.Member{I: st.nodes[k-1], J: st.nodes[k], EI: ei, GJ: gj, Name: st.name})
		}
	}
	return nil
}

// least is the shortest piece of a joist that the raft tells apart.
const least = 0.02

// nearest returns the place in a rising list that is nearest to x.
func nearest(at []float64, x float64) int {
	best := 0
	for i, a := range at {
		if math.Abs(a-x) < math.Abs(at[best]-x) {
			best = i
		}
	}
	return best
}

// A half is a joist and its share of a force.
type half struct {
	joist int
	share float64
}

// touched returns the joists that a float bears on: by itself where it lies under
// them, through the deck boards or its own flanks where it lies in a bay. One under a
// single joist is kept upright by its ties to the next.
func (d *Dock) touched(i int) []int {
	m := d.floats[i]
	if m.seat != underJoists && m.bay > 0 {
		return []int{m.bay - 1, m.bay}
	}
	var out []int
	for k, c := range d.centres {
		if _, ok := d.bears(m, k, c); ok {
			out = append(out, k)
		}
	}
	if len(out) > 1 {
		return out
	}
	s, _ := d.from(m.x, m.y)
	k := min(max(1, d.bayOf(s)), len(d.centres)-1)
	return []int{k - 1, k}
}

// bayOf returns the bay at a place along the run; 0 before the first joist.
func (d *Dock) bayOf(s float64) int {
	k, _ := slices.BinarySearch(d.centres, s)
	return k
}

// shares splits a force at a place along the run between the two of some joists
// beside it by the lever, which lifts the one farther off where the force lies beyond
// the last of them. A single joist takes it all.
func (d *Dock) shares(joists []int, s float64) []half {
	n := len(joists)
	if n == 1 {
		return []half{{joists[0], 1}}
	}
	i := 1
	for i < n-1 && d.centres[joists[i]] < s {
		i++
	}
	low, high := joists[i-1], joists[i]
	part := (s - d.centres[low]) / (d.centres[high] - d.centres[low])
	return []half{{low, 1 - part}, {high, part}}
}
