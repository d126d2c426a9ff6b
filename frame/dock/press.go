package dock

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// A press is a load that the deck boards carry to the joists: a force spread
// evenly over a rectangle, along the run and along the joists, over a line, or
// on one spot.
type press struct {
	run, reach [2]float64 // m, from the ends that the tape hooks on
	force      float64    // N downward, all of it
	height     float64    // of its centre over the underside of the joists, m
}

// everywhere returns the press of a force over the whole deck.
func (d *Dock) everywhere(force, height float64) press {
	return press{[2]float64{0, d.run()}, [2]float64{0, d.reach()}, force, height}
}

// spot returns the press of a mass on one spot, given from the dock's middle.
func (d *Dock) spot(x, y, mass, height float64) press {
	s, t := d.from(x, y)
	return press{[2]float64{s, s}, [2]float64{t, t}, mass * measure.Gravity, height}
}

// share returns the part of an even load between two places along the run that
// comes to a joist, the boards being beams from joist to joist.
func (d *Dock) share(k int, from, to float64) float64 {
	c := d.centres
	// hat is what reaches the joist of a force at s.
	hat := func(s float64) float64 {
		switch {
		case s < c[k] && k > 0:
			return max(0, (s-c[k-1])/(c[k]-c[k-1]))
		case s > c[k] && k < len(c)-1:
			return max(0, (c[k+1]-s)/(c[k+1]-c[k]))
		}
		return 1
	}
	if !(to > from) {
		return hat(from)
	}
	edges := []float64{from, to}
	for i := max(0, k-1); i <= min(len(c)-1, k+1); i++ {
		if c[i] > from && c[i] < to {
			edges = append(edges, c[i])
		}
	}
	slices.Sort(edges)
	var sum float64 // the hat is straight between the edges
	for i := 1; i < len(edges); i++ {
		sum += (edges[i] - edges[i-1]) * (hat(edges[i-1]) + hat(edges[i])) / 2
	}
	return sum / (to - from)
}

// A laden is a raft's grillage with the loads of one situation.
type laden struct {
	*raft
	frame.Grillage
	weight  float64   // N, of everything with the floats
	tips    []float64 // N·m, by joist end: forces times heights, as they tip
	presses []press
	stiff   []float.Weight // the same weights, but the floats', for a frame that does not bend
}

// laden returns the grillage with the own weight of the frame, and of the deck
// where a share of it lies, ready for more.
func (r *raft) laden(presses ...press) (*laden, error) {
	l := &laden{raft: r, Grillage: r.grid, tips: make([]float64, 2*len(r.dock.centres))}
	l.Members = slices.Clone(r.grid.Members)
	d, f := r.dock, &r.dock.plan.Frame
	joist, err := d.joist.mass(d.clear, f.Moisture.Value)
	if err != nil {
		return nil, err
	}
	rim, err := d.rim.mass(d.run(), f.Moisture.Value)
	if err != nil {
		return nil, err
	}
	perMetre := joist / d.clear
	joist += f.Hardware.Value / float64(len(d.centres))
	for i := range r.strips {
		mass, height := joist, d.joist.section.Depth/2
		if i >= len(d.centres) {
			mass, height = rim*float64(d.rimPlies), d.rimMiddle()
		}
		st := &r.strips[i]
		l.stiffen(st.middle(r), mass, height)
		l.line(i, st.at[0], st.at[len(st.at)-1], mass*measure.Gravity, height)
	}
	for _, s := range d.stops() { // each hangs by half on the joists at its ends
		mass := perMetre * d.room(s.bay)
		height := d.joist.section.Depth / 2
		l.stiffen(d.on((d.centres[s.bay-1]+d.centres[s.bay])/2, s.at), mass, height)
		for _, k := range [2]int{s.bay - 1, s.bay} {
			l.line(k, s.at, s.at, mass*measure.Gravity/2, height)
		}
	}
	for i := range r.feet {
		foot := &r.feet[i]
		own := foot.part.Mass * measure.Gravity
		for k, n := range foot.seat.Nodes {
			l.Weights = append(l.Weights, frame.Weight{Node: n, Force: foot.seat.Share[k] * own})
		}
		for _, e := range foot.ends {
			l.tips[e.end] += e.share * own * foot.part.At.Z
		}
		l.weight += own
	}
	for _, p := range presses {
		l.press(p)
	}
	return l, nil
}

// fixed returns the presses of what is fixed to the deck.
func (d *Dock) fixed() []press {
	var out []press
	for i := range d.plan.Weights {
		w := &d.plan.Weights[i]
		out = append(out, d.spot(w.Along.Value-d.length/2, w.Across.Value-d.width/2, w.Mass.Value, d.deckTop()+w.Above.Value))
	}
	return out
}

// deck returns the press of the deck boards.
func (d *Dock) deck() (press, error) {
	board, err := d.board.mass(d.run(), d.plan.Frame.Moisture.Value)
	_, covered := d.boards()
	return d.everywhere(board*covered*measure.Gravity, d.joist.section.Depth+d.board.section.Width/2), err
}

// press puts a load on the joists.
func (l *laden) press(p press) {
	l.presses = append(l.presses, p)
	l.stiffen(l.dock.on((p.run[0]+p.run[1])/2, (p.reach[0]+p.reach[1])/2), p.force/measure.Gravity, p.height)
	for k := range l.dock.centres {
		if part := l.dock.share(k, p.run[0], p.run[1]); part != 0 {
			l.line(k, p.reach[0], p.reach[1], part*p.force, p.height)
		}
	}
}

// line spreads a force over a strip between two places; what lies beyond its ends
// goes to the end.
func (l *laden) line(i int, from, to, force, height float64) {
	st := &l.strips[i]
	l.weight += force
	if i < len(l.dock.centres) {
		for _, e := range l.ends(i, (from+to)/2, 1) {
			l.tips[e.end] += e.share * force * height
		}
	} else { // a rim: its joists' ends
		for k := range l.dock.centres {
			l.tips[2*k+i-len(l.dock.centres)] += force * height / float64(len(l.dock.centres))
		}
	}
	first, last := st.at[0], st.at[len(st.at)-1]
	if !(to > from) {
		l.point(st, min(max(from, first), last), force)
		return
	}
	q := force / (to - from)
	if from < first {
		l.point(st, first, q*(min(to, first)-from))
	}
	if to > last {
		l.point(st, last, q*(to-max(from, last)))
	}
	for k := 1; k < len(st.at); k++ {
		a, b := max(from, st.at[k-1]), min(to, st.at[k])
		if b > a {
			m := &l.Members[st.first+k-1]
			m.Loads = append(m.Loads, frame.Uniform(a-st.at[k-1], min(b, st.at[k])-st.at[k-1], q))
		}
	}
}

// point puts a force on a strip.
func (l *laden) point(st *strip, at, force float64) {
	k := 1
	for k < len(st.at)-1 && at > st.at[k] {
		k++
	}
	m := &l.Members[st.first+k-1]
	m.Loads = append(m.Loads, frame.Point(min(max(0, at-st.at[k-1]), st.at[k]-st.at[k-1]), force))
}

// stiffen writes a weight down for the frame that does not bend.
func (l *laden) stiffen(at [2]float64, mass, height float64) {
	l.stiff = append(l.stiff, float.Weight{Mass: mass, At: r3.Vec{X: at[0], Y: at[1], Z: height}})
}

// middle returns the middle of a strip.
func (st *strip) middle(r *raft) [2]float64 {
	a, b := r.grid.Nodes[st.nodes[0]], r.grid.Nodes[st.nodes[len(st.nodes)-1]]
	return [2]float64{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2}
}
