package dock

import (
	"cmp"
	"math"
	"slices"

	"example.org/floewright/frame"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A Diagram is one member of the frame in one situation: what acts on it, and what
// that does along it. Places are m from the member's beginning on the side where the
// tape hooks on.
type Diagram struct {
	Member    string
	From      string // its end that lies where the tape hooks on: "near side"
	Situation string
	Why       string       // that is looked at
	Length    float64      // m
	Points    []frame.Load // loads on one place, downward positive
	Spread    []frame.Load // loads spread evenly
	Pushes    []Push       // of what it meets at its nodes: floats, and the members that cross

	X      []float64 // m, rising; where something jumps, twice within a hundredth of a millimetre
	Shear  []float64 // N, the sum of the upward forces before
	Moment []float64 // N·m, positive where the member sags

	Sags, Hogs float64 // N·m, the moments that the wood takes for as long as it lasts
	Check      measure.Check
}

// A Push is a force, N, upward positive, at a place, m.
type Push struct{ At, Force float64 }

// Envelope returns what the frame's topics found: the worst of everything that the
// dock meets. The error says why there is none.
func (r *Report) Envelope() (*Envelope, error) {
	if r.envelope == nil && r.noEnvelope == nil {
		return nil, &measure.Error{Field: "report", Class: measure.ErrUnknown, Want: "a dock's report"}
	}
	return r.envelope, r.noEnvelope
}

// Diagram returns the joist or rim whose bending uses most of what its wood takes,
// where and when it does, as [Dock.Envelope] found it. The error is for an envelope
// that it has not made.
func (e *Envelope) Diagram() (*Diagram, error) {
	d := e.dock
	foreign := &measure.Error{Field: "envelope", Class: measure.ErrUnknown, Want: "one that a dock has made"}
	if d == nil || len(e.Members) != len(d.centres)+2 || len(e.Situations) == 0 {
		return nil, foreign
	}
	met := func(x Extreme) bool {
		if x.Situation < 0 || x.Situation >= len(e.Situations) {
			return false
		}
		d := e.Situations[x.Situation].Duration
		return d >= lumber.Permanent && d <= lumber.TenMinutes
	}
	worst := 0
	for i := range e.Members {
		if m := &e.Members[i]; len(m.Checks) == 0 || !met(m.Sag) || !met(m.Hog) {
			return nil, foreign
		}
		if worseRatio(e.Members[i].Checks[0], e.Members[worst].Checks[0]) {
			worst = i
		}
	}
	of := e.Members[worst]
	w, plies, unbraced := d.joist, 1, d.clear
	if worst >= len(d.centres) {
		w, plies, unbraced = d.rim, d.rimPlies, d.widest()
	}
	can, err := d.capacities(w, plies, unbraced)
	if err != nil {
		return nil, err
	}
	takes := func(x Extreme) capacity { return can.by[e.Situations[x.Situation].Duration] }
	at := of.Sag
	if of.Hog.Value/takes(of.Hog).hog > of.Sag.Value/takes(of.Sag).sag {
		at = of.Hog
	}
	ride, err := e.again(at.Situation)
	if err != nil {
		return nil, err
	}
	out := ride.diagram(worst)
	in := &e.Situations[at.Situation]
	out.Situation, out.Why, out.Check = in.Name, in.Why, of.Checks[0]
	out.Sags, out.Hogs = takes(at).sag, takes(at).hog
	return out, nil
}

// again solves one of the envelope's situations once more.
func (e *Envelope) again(i int) (*ride, error) {
	r, err := e.dock.raft()
	if err != nil {
		return nil, err
	}
	met := func(i int) *Situation { return &e.Situations[i].Situation }
	empty, err := r.meet(met(0), nil, nil)
	if err != nil || i == 0 {
		return empty, err
	}
	if met(i).ground == nil {
		return r.meet(met(i), empty, empty)
	}
	level := slices.IndexFunc(e.Situations, func(o Outcome) bool { return o.level })
	if level < 0 || level == i || met(i).lake.level != nil {
		return r.meet(met(i), empty, nil)
	}
	near, err := r.meet(met(level), empty, nil)
	if err != nil {
		return nil, err
	}
	return r.meet(met(i), empty, near)
}

// parts is how many parts of a member between two nodes the diagram shows.
const parts = 12

// diagram returns what acts on a strip and what that does.
func (r *ride) diagram(i int) *Diagram {
	st := &r.strips[i]
	first, last := st.at[0], st.at[len(st.at)-1]
	out := &Diagram{Member: st.name, From: r.dock.rimSides()[0], Length: last - first}
	if i >= len(r.dock.centres) { // a rim runs the other way
		out.From = ends[0]
		if !r.dock.across {
			out.From = sides[0]
		}
	}
	// before is the shear before a node and here what loads lie on it: the rest of the
	// shear's jump is what the member meets there.
	before, here := 0.0, 0.0
	push := func(at, shear float64) {
		if f := shear - before + here; math.Abs(f) > 1e-9 {
			out.Pushes = append(out.Pushes, Push{at, f})
		}
		here = 0
	}
	var spread []frame.Load
	for k := 1; k < len(st.at); k++ {
		from, h := st.at[k-1]-first, st.at[k]-st.at[k-1]
		line := &r.Lines[st.first+k-1]
		atEnd := 0.0
		for _, l := range r.laden.Members[st.first+k-1].Loads {
			if l.To > l.From {
				l.From, l.To = l.From+from, l.To+from
				spread = append(spread, l)
				continue
			}
			switch {
			case l.From <= 0:
				here += l.P
			case l.From >= h:
				atEnd += l.P
			}
			l.From, l.To = l.From+from, 0
			out.Points = append(out.Points, l)
		}
		push(from, line.At(0).Shear)
		out.sample(line, from, h)
		before, here = line.Before(h).Shear, atEnd
	}
	push(out.Length, 0)
	out.Spread = merged(spread)
	return out
}

// sample adds the stations between two nodes, those of the extremes with them.
func (g *Diagram) sample(line *frame.Line, from, h float64) {
	const apart = 1e-5
	x := line.Extremes()
	at := []float64{x.Sag.X, x.Hog.X}
	for i := range parts {
		at = append(at, h*float64(i)/parts)
	}
	at = append(at, h)
	for _, p := range line.Pieces { // a force on one place makes the shear jump there
		at = append(at, p.Start.X, p.Start.X-apart)
	}
	at = slices.DeleteFunc(at, func(x float64) bool { return !(x >= 0 && x <= h) })
	slices.Sort(at)
	for i, x := range at {
		s := line.At(x)
		if n := len(g.X); n > 0 && from+x-g.X[n-1] < apart/2 {
			if i > 0 {
				continue
			}
			g.X[n-1] -= apart // the end before a node
		}
		g.X = append(g.X, from+x)
		g.Shear = append(g.Shear, s.Shear)
		g.Moment = append(g.Moment, s.Moment)
	}
}

// merged adds up even loads and returns as few as have the same sum.
func merged(loads []frame.Load) []frame.Load {
	var edges []float64
	for _, l := range loads {
		edges = append(edges, l.From, l.To)
	}
	slices.Sort(edges)
	edges = slices.CompactFunc(edges, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
	var out []frame.Load
	for i := 1; i < len(edges); i++ {
		from, to, q := edges[i-1], edges[i], 0.0
		for _, l := range loads {
			if m := (from + to) / 2; l.From < m && m < l.To {
				q += l.Q
			}
		}
		n := len(out) - 1
		switch {
		case n >= 0 && cmp.Compare(out[n].To, from) == 0 && math.Abs(out[n].Q-q) <= 1e-9*math.Abs(q):
			out[n].To = to
		case q != 0:
			out = append(out, frame.Uniform(from, to, q))
		}
	}
	return out
}
