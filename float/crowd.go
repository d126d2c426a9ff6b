package float

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// adult is the mass of a person, 185 lb (46 CFR 170.090; read), and stands how
// high his centre of gravity is above the deck he stands on, m (IMO Intact
// Stability Code 3.5.2.6; read).
const (
	adult  = 185 * measure.Pound
	stands = 1.0
)

// A Rule is one criterion applied to a platform as it is loaded; its check names
// the source. It returns an error for bad data; a platform that finds no rest is
// a check that does not hold, or that failure. Neither the rules made here nor the methods
// of a Platform change it, so that goroutines may share both.
type Rule func(*Platform) (measure.Check, error)

// A Crowd is people who stand together at the deck's edge. Zero fields are the
// cautious ones.
type Crowd struct {
	People int
	Each   float64 // kg; 0 means 83.9 (185 lb; 46 CFR 170.090)
	Height float64 // of their centres of gravity above the deck, m; 0 means 1.0, standing (IMO Intact Stability Code 3.5.2.6)
	Inset  float64 // of the line they stand on from the edge, m; 0 is the edge itself
	Room   float64 // of that line each takes, m; 0 puts all on one spot
}

// A Worst is the worst place for a crowd.
type Worst struct {
	At     r3.Vec  // the middle of the crowd, on the deck, m
	State  State   // the platform at rest with the crowd there
	Low    r3.Vec  // the lowest corner, m
	Height float64 // of the lowest corner above the water, m
}

// crowded is a platform with a crowd at its edge.
type crowded struct {
	with  *Platform // a copy; its last weights are the people
	base  int       // number of the platform's own weights
	crowd Crowd
	edge  *edge
}

func (p *Platform) crowded(c Crowd) (*crowded, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	if c.People < 0 || c.People > 1e5 {
		return nil, (measure.Range{Lo: 0, Hi: 1e5, Source: ownBound}).Check("People", float64(c.People))
	}
	if err := massRange.Check("Each", c.Each); err != nil {
		return nil, err
	}
	r := measure.Range{Kind: measure.Length, Lo: 0, Hi: 100, Source: ownBound}
	if err := r.Check("Height", c.Height); err != nil {
		return nil, err
	}
	if err := r.Check("Inset", c.Inset); err != nil {
		return nil, err
	}
	if err := r.Check("Room", c.Room); err != nil {
		return nil, err
	}
	if c.Each == 0 {
		c.Each = adult
	}
	if c.Height == 0 {
		c.Height = stands
	}
	e, err := p.edge(c.Inset)
	if err != nil {
		return nil, err
	}
	return &crowded{with: p.With(), base: len(p.Weights), crowd: c, edge: e}, nil
}

// room returns how many find room along the line.
func (k *crowded) room() int {
	n := k.edge.length() / k.crowd.Room
	if !(n < 1e6) {
		return 1e6 // beyond any number asked for
	}
	return int(n)
}

// place puts n people around a way along the edge.
func (k *crowded) place(s float64, n int) {
	w := k.with.Weights[:k.base]
	c := &k.crowd
	if c.Room == 0 && n > 0 {
		at := k.edge.at(s)
		at.Z += c.Height
		k.with.Weights = append(w, Weight{Mass: float64(n) * c.Each, At: at})
		return
	}
	for i := range n {
		at := k.edge.at(s + (float64(i)-float64(n-1)/2)*c.Room)
		at.Z += c.Height
		w = append(w, Weight{Mass: c.Each, At: at})
	}
	k.with.Weights = w
}

// height returns the height of the lowest corner with n people at s.
func (k *crowded) height(s float64, n int) (float64, error) {
	k.place(s, n)
	st, err := k.with.Settle()
	if err != nil {
		return 0, err
	}
	_, h, err := st.Lowest()
	return h, err
}

// worst returns the way along the edge where n people bring a corner lowest, or
// where most is lacking for the platform to find a rest, and that failure.
func (k *crowded) worst(n int) (at float64, failure error) {
	stations := k.edge.stations()
	low, best := math.Inf(1), 0
	var worst *Failure
	for i, s := range stations {
		h, err := k.height(s, n)
		var f *Failure
		switch {
		case errors.As(err, &f):
			if worst == nil || f.Short > worst.Short*(1+1e-9) {
				worst, best = f, i
			}
		case err != nil:
			return s, err
		case worst == nil && h < low-1e-9: // the first of equals, on every machine
			low, best = h, i
		}
	}
	if worst != nil {
		return stations[best], worst
	}
	// Between the neighbours, by golden section; corners are stations.
	all := k.edge.length()
	s := stations[best]
	a, b := s-all, s+all
	for _, o := range stations {
		for _, o := range [3]float64{o - all, o, o + all} {
			if o < s {
				a = max(a, o)
			}
			if o > s {
				b = min(b, o)
			}
		}
	}
	for range 24 {
		const golden = 0.3819660112501051
		c, d := a+golden*(b-a), b-golden*(b-a)
		hc, err := k.height(c, n)
		if err != nil {
			return c, err
		}
		hd, err := k.height(d, n)
		if err != nil {
			return d, err
		}
		for _, t := range [2][2]float64{{c, hc}, {d, hd}} {
			if t[1] < low-1e-9 {
				s, low = t[0], t[1]
			}
		}
		if hc < hd {
			b = d
		} else {
			a = c
		}
	}
	return s, nil
}

// WorstCrowd returns the place along the edge where the crowd brings a corner of the
// deck lowest, by [Platform.Settle] at place after place. Where the platform finds no
// rest with the crowd somewhere, that is the worst place, and the error is the
// [*Failure].
func (p *Platform) WorstCrowd(c Crowd) (Worst, error) {
	k, err := p.crowded(c)
	if err != nil {
		return Worst{}, err
	}
	if c.People > k.room() {
		return Worst{}, (measure.Range{Lo: 0, Hi: float64(k.room()), Source: &measure.Source{
			Title: "room along the edge", Status: measure.Exact,
		}}).Check("People", float64(c.People))
	}
	s, err := k.worst(c.People)
	w := Worst{At: k.edge.at(s)}
	if err != nil {
		return w, err
	}
	k.place(s, c.People)
	if w.State, err = k.with.Settle(); err != nil {
		return w, err
	}
	w.Low, w.Height, err = w.State.Lowest()
	return w, err
}
