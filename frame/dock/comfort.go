package dock

import (
	"math"
	"slices"
)

// Comfort is how the frame feels underfoot, in m.
type Comfort struct {
	// Sag is the most that the uniform load bends a joist or a rim away from the
	// straight line between its ends, and which member that is.
	Sag   Extreme
	Bends string

	// Twist is the most that one corner leaves the plane of the other three, in any
	// situation afloat.
	Twist Extreme

	// Dip is how far the joist farthest from any float gives at its middle under the
	// heaviest person, against its two ends; Springs names it.
	Dip     float64
	Springs string
}

// comfort finds how the frame feels.
func (e *Envelope) comfort(r *raft, rides []*ride) error {
	c := &e.Comfort
	for i, o := range e.Situations {
		if o.Err == nil && o.ground == nil {
			c.Twist.take(math.Abs(o.Corners[0]-o.Corners[1]+o.Corners[2]-o.Corners[3]), 0, i)
		}
	}
	for i, o := range e.Situations {
		if o.uniform && o.Err == nil {
			c.sag(r, rides, i)
		}
	}
	return c.dip(r, rides[0])
}

// bend returns how far a strip's part k, at a distance x into it, lies over the line
// between the strip's ends.
func (r *ride) bend(st *strip, k int, x float64) float64 {
	n := len(st.at) - 1
	t := (st.at[k] + x - st.at[0]) / (st.at[n] - st.at[0])
	a, b := r.Move[st.nodes[0]][0], r.Move[st.nodes[n]][0]
	return r.Lines[st.first+k].At(x).Deflection - (1-t)*a - t*b
}

// sag finds the member that a situation bends most, beyond its bend with nobody
// aboard.
func (c *Comfort) sag(r *raft, rides []*ride, situation int) {
	for i := range r.strips {
		st := &r.strips[i]
		for k := 1; k < len(st.at); k++ {
			for _, part := range [3]float64{0, 0.5, 1} {
				x := part * (st.at[k] - st.at[k-1])
				before := c.Sag
				c.Sag.take(math.Abs(rides[situation].bend(st, k-1, x)-rides[0].bend(st, k-1, x)), st.at[k-1]+x, situation)
				if c.Sag != before {
					c.Bends = st.name
				}
			}
		}
	}
}

// dip finds how far the deck gives under one person.
func (c *Comfort) dip(r *raft, empty *ride) error {
	d := r.dock
	lonely, farthest := 0, -1.0
	for k, s := range d.centres {
		near := math.Inf(1)
		for _, m := range d.floats {
			at, _ := d.from(m.x, m.y)
			near = min(near, math.Abs(at-s))
		}
		if near > farthest+1e-9 {
			lonely, farthest = k, near
		}
	}
	st := &r.strips[lonely]
	middle := (st.at[0] + st.at[len(st.at)-1]) / 2
	k := 1
	for st.at[k] < middle {
		k++
	}
	at := d.on(d.centres[lonely], middle)
	l, err := r.laden(append(slices.Clone(empty.presses), d.spot(at[0], at[1], d.heaviest(), d.deckTop()+d.plan.Loads.Centre.Value))...)
	if err != nil {
		return err
	}
	now, err := l.afloat(lake{}, empty)
	if err != nil {
		return nil // the situations with everyone aboard say so
	}
	x := middle - st.at[k-1]
	c.Dip, c.Springs = empty.bend(st, k-1, x)-now.bend(st, k-1, x), st.name
	return nil
}
