package dock

import (
	"math"
	"slices"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/frame"
)

// A ride is a raft at rest in one situation.
type ride struct {
	*laden
	*frame.Solution
	sinks  []float64   // by footing, m; of those afloat
	push   []float64   // by footing, N
	unbent float.State // where it would rest if it did not bend; of those afloat

	peaks []peak // by member
}

// A peak is the extremes of a member, once they were asked for: trials of a report
// share rides.
type peak struct {
	sync.Once
	frame.Extremes
}

// extremes returns those of a member.
func (r *ride) extremes(member int) *frame.Extremes {
	p := &r.peaks[member]
	p.Do(func() { p.Extremes = r.Lines[member].Extremes() })
	return &p.Extremes
}

// A lake is the water under a raft: how high it stands over its mean level at a
// place, and which float is open to it.
type lake struct {
	level func(x, y float64) float64 // nil is flat water
	lost  int                        // 1 for the first; 0 is none
}

// meet finds the rest of a raft in a situation. What the ground holds, it holds
// where the raft floats with nobody aboard: empty. The search begins from near, a ride
// of the same kind, if there is one.
func (r *raft) meet(s *Situation, empty, near *ride) (*ride, error) {
	out, err := r.rest(s, empty, near)
	if err == nil {
		out.peaks = make([]peak, len(out.Lines))
	}
	return out, err
}

func (r *raft) rest(s *Situation, empty, near *ride) (*ride, error) {
	l, err := r.laden(s.presses...)
	if err != nil {
		return nil, err
	}
	if s.ground == nil {
		return l.afloat(s.lake, near)
	}
	g := l.Grillage
	g.Seats = s.ground(l, empty)
	var sol *frame.Solution
	if near == nil {
		sol, err = g.Solve()
	} else {
		sol, err = g.SolveFrom(near.Solution)
	}
	if err != nil {
		return nil, err
	}
	return &ride{laden: l, Solution: sol, push: sol.Push[:len(l.feet)]}, nil
}

// settled is how far the heights of buoyancy may shift between two passes, m in the
// mean over the weight: half a per cent of the smaller metacentric height, which they
// are a part of.
func settled(gm float64) float64 { return max(1e-3, gm/200) }

// shifted returns the movements of a ride carried along to another rest of the dock
// that does not bend.
func (r *ride) shifted(rest float.State) *frame.Solution {
	out := &frame.Solution{Move: make([][3]float64, len(r.Move))}
	heel, trim := rest.Heel-r.unbent.Heel, rest.Trim-r.unbent.Trim
	for i, m := range r.Move {
		at := r3.Vec{X: r.Nodes[i][0], Y: r.Nodes[i][1]}
		out.Move[i] = [3]float64{m[0] + rest.Height(at) - r.unbent.Height(at), m[1] - heel, m[2] + trim}
	}
	return out
}

// rigid returns the sinkages of the feet if the dock did not bend, and its rest then.
func (l *laden) rigid(on lake) (sinks []float64, rest float.State, err error) {
	p := float.Platform{Density: l.density, Weights: l.stiff}
	for i, m := range l.dock.floats {
		u := m.unit(l.dock.floatSize(m.set))
		u.Flooded = on.lost == i+1
		p.Units = append(p.Units, u)
	}
	if rest, err = p.Settle(); err != nil {
		return nil, rest, err
	}
	out := make([]float64, len(l.feet))
	mean := 0.0 // of the water's level at the feet: the dock follows it
	for i := range l.feet {
		at := l.feet[i].part.At
		out[i] = -rest.Height(r3.Vec{X: at.X, Y: at.Y})
		if on.level != nil {
			out[i] += on.level(at.X, at.Y)
			mean += on.level(at.X, at.Y) / float64(len(out))
		}
	}
	for i := range out {
		out[i] -= mean
	}
	return out, rest, nil
}

// passes bounds the passes of afloat; each brings two digits or more.
const passes = 8

// afloat finds the rest of a loaded raft. Where a float's push acts shifts with
// its draft, and how much it pushes with the load: it is solved again until
// neither moves any more.
//
// It starts from where the dock would rest if it did not bend, where that finds no
// rest, on still water, neither does this, and from how a ride near by is bent.
func (l *laden) afloat(on lake, near *ride) (*ride, error) {
	start, rest, err := l.rigid(on)
	if err != nil {
		return nil, err
	}
	g := l.Grillage
	n := len(l.feet)
	out := &ride{laden: l, unbent: rest, sinks: slices.Clone(start), push: make([]float64, n)}
	g.Seats = make([]frame.Seat, n, n+len(l.tips))
	var all float64 // N, as at the start
	for i := range l.feet {
		f := &l.feet[i]
		s := f.seat
		if on.level != nil {
			s.Level = on.level(f.part.At.X, f.part.At.Y)
		}
		if f.mount == on.lost-1 {
			s.Support = frame.Spring(0)
		}
		g.Seats[i] = s
		out.push[i], _, _ = s.Support(start[i])
		all += out.push[i]
	}
	for i := range out.push {
		out.push[i] *= l.weight / all
	}
	tilts := l.tilts(out)
	g.Forces = make([][3]float64, len(g.Nodes))
	for i := range tilts {
		g.Seats = append(g.Seats, l.tilt(i, &tilts[i]))
		g.Forces[g.Seats[n+i].Nodes[0]][0] -= l.weight
	}
	if near != nil && on.level == nil {
		out.Solution = near.shifted(rest)
	}
	for range passes {
		var err error
		if out.Solution == nil {
			out.Solution, err = g.Solve()
		} else {
			out.Solution, err = g.SolveFrom(out.Solution)
		}
		if err != nil {
			return nil, err
		}
		copy(out.push, out.Push)
		for i := range l.feet {
			s := &g.Seats[i]
			w := 0.0
			for j, node := range s.Nodes {
				w += s.Share[j] * out.Move[node][0]
			}
			out.sinks[i] = s.Level - w
		}
		moved := 0.0
		for i, t := range l.tilts(out) {
			moved += math.Abs(t[0]-tilts[i][0]) + math.Abs(t[1]-tilts[i][1])
			tilts[i] = t
			g.Seats[n+i].Heights = t
		}
		if moved <= settled(rest.Principal()[0].Height) {
			break
		}
	}
	return out, nil
}

// tilts returns, by joist end, the heights at which the whole weight would act to do
// what pushes and weights do there, for turns about x and about y.
func (l *laden) tilts(r *ride) [][2]float64 {
	out := make([][2]float64, len(l.tips))
	for i, t := range l.tips {
		out[i] = [2]float64{-t / l.weight, -t / l.weight}
	}
	for i := range l.feet {
		f := &l.feet[i]
		h := f.heights(r.sinks[i])
		for _, e := range f.ends {
			for k := range h {
				out[e.end][k] += e.share * r.push[i] * h[k] / l.weight
			}
		}
	}
	return out
}

// tilt returns the seat that stands for heights at a joist's end: the whole weight
// pushed up there, at its heights, against as much as a force on the node.
func (l *laden) tilt(end int, heights *[2]float64) frame.Seat {
	st := &l.strips[end/2]
	weight := l.weight
	return frame.Seat{
		Support: func(sink float64) (force, stiffness, energy float64) { return weight, 0, weight * sink },
		Nodes:   []int{st.nodes[(end%2)*(len(st.nodes)-1)]}, Heights: *heights,
		Name: st.name,
	}
}

// heights returns at which heights the push of a footing acts for turns about x
// and about y: a drum's axis for turns about that axis, else the centre of what
// it displaces.
func (f *footing) heights(sink float64) [2]float64 {
	z := f.part.At.Z
	wet := f.part.Body.Wet(z-sink, r3.Vec{Z: 1})
	b := z
	if wet.Volume > 0 {
		b += wet.VolumeMoment.Z / wet.Volume
	}
	switch {
	case !f.round:
		return [2]float64{b, b}
	case f.along:
		return [2]float64{z, b}
	}
	return [2]float64{b, z}
}
