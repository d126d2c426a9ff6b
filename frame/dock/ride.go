package dock

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/frame"
)

// A ride is a raft afloat in one situation.
type ride struct {
	*laden
	*frame.Solution
	sinks []float64 // by footing, m
}

// A lake is the water, or the ground, under a raft: how high it stands over its
// mean level at a place, and which floats are there.
type lake struct {
	level func(x, y float64) float64 // nil is flat water
	lost  int                        // a float open to the lake, 1 for the first; 0 is none
}

// settledHeight is how far the heights of buoyancy may shift between two
// passes, m: a hundredth of what drums of one kind differ by.
const settledHeight = 1e-4

// guess returns sinkages to start from: each float half under.
func (r *raft) guess() []float64 {
	out := make([]float64, len(r.feet))
	for i := range r.feet {
		out[i] = r.feet[i].part.At.Z
	}
	return out
}

// passes bounds the passes of afloat; each brings two digits or more.
const passes = 8

// afloat finds the rest of a loaded raft. Where a float's push acts shifts with
// its draft, so that it is solved again until that no longer moves.
func (l *laden) afloat(on lake, start []float64) (*ride, error) {
	g := l.Grillage
	g.Seats = make([]frame.Seat, 0, len(l.feet))
	var seats []int // which footing each is
	for i := range l.feet {
		f := &l.feet[i]
		if f.mount == on.lost-1 {
			continue
		}
		s := f.seat
		if on.level != nil {
			s.Level = on.level(f.part.At.X, f.part.At.Y)
		}
		s.Heights = f.heights(start[i])
		g.Seats = append(g.Seats, s)
		seats = append(seats, i)
	}
	out := &ride{laden: l, sinks: make([]float64, len(l.feet))}
	for range passes {
		var err error
		if out.Solution, err = g.Solve(); err != nil {
			return nil, err
		}
		moved := 0.0
		for k, i := range seats {
			s := &g.Seats[k]
			w := 0.0
			for j, n := range s.Nodes {
				w += s.Share[j] * out.Move[n][0]
			}
			out.sinks[i] = s.Level - w
			h := l.feet[i].heights(out.sinks[i])
			moved = max(moved, math.Abs(h[0]-s.Heights[0]), math.Abs(h[1]-s.Heights[1]))
			s.Heights = h
		}
		if moved <= settledHeight {
			break
		}
	}
	// By footing, the lost one's push being none.
	pushes := make([]float64, len(l.feet))
	for k, i := range seats {
		pushes[i] = out.Push[k]
	}
	out.Push = pushes
	return out, nil
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
