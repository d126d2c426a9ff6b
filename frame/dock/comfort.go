package dock

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
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

	// Dip is how far the deck gives locally under the heaviest person, beyond what a
	// frame that does not bend would sink there: at a joist farthest from any float,
	// at its middle or its end; Where names it.
	Dip   float64
	Where string
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

// sag finds the member that a situation bends most, beyond its bend with nobody
// aboard.
func (c *Comfort) sag(r *raft, rides []*ride, situation int) {
	for i := range r.strips {
		st := &r.strips[i]
		n := len(st.at) - 1
		// bend is the height over the chord, at a distance into the member's part k.
		bend := func(of *ride, k int, x float64) float64 {
			t := (st.at[k] + x - st.at[0]) / (st.at[n] - st.at[0])
			a, b := of.Move[st.nodes[0]][0], of.Move[st.nodes[n]][0]
			return of.Lines[st.first+k].At(x).Deflection - (1-t)*a - t*b
		}
		for k := range n {
			for _, part := range [3]float64{0, 0.5, 1} {
				x := part * (st.at[k+1] - st.at[k])
				before := c.Sag
				c.Sag.take(math.Abs(bend(rides[situation], k, x)-bend(rides[0], k, x)), st.at[k]+x, situation)
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
	last := len(st.at) - 1
	mid := nearest(st.at, (st.at[0]+st.at[last])/2)
	for _, node := range [2]int{0, mid} {
		at := d.on(d.centres[lonely], st.at[node])
		person := d.spot(at[0], at[1], d.heaviest(), d.deckTop()+d.plan.Loads.Centre.Value)
		l, err := r.laden()
		if err != nil {
			return err
		}
		for _, p := range append(empty.presses, person) {
			l.press(p)
		}
		now, err := l.afloat(lake{}, empty)
		if err != nil {
			continue // the situations with everyone aboard say so
		}
		give := func(of *ride) (float64, error) {
			p := float.Platform{Density: r.density, Weights: of.stiff}
			for _, m := range d.floats {
				p.Units = append(p.Units, m.unit(d.floatSize(m.set)))
			}
			rest, err := p.Settle()
			return rest.Height(r3.Vec{X: at[0], Y: at[1]}) - of.Move[st.nodes[node]][0], err
		}
		before, err := give(empty)
		if err != nil {
			return err
		}
		after, err := give(now)
		if err != nil {
			continue
		}
		if dip := after - before; dip > c.Dip*(1+1e-9) {
			c.Dip = dip
			c.Where = st.name + " at " + measure.Length.Print(st.at[node], d.system())
		}
	}
	return nil
}
