package dock

import (
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// A stand is one joist as it stands: on the floats that bear on it, taken as
// firm (on the ice, on blocks), or on the rims at its ends where it has fewer
// than two floats.
type stand struct {
	number int // from the end or side the tape hooks on
	rests  []float64
	onRims bool
	width  float64 // of the deck it carries
}

// like reports whether another joist stands and carries alike.
func (s stand) like(o stand) bool {
	return slices.Equal(s.rests, o.rests) && s.onRims == o.onRims && math.Abs(s.width-o.width) < 1e-9
}

// stands returns every joist with what it stands on.
func (d *Dock) stands() []stand {
	var out []stand
	for k, c := range d.centres {
		s := stand{number: k + 1}
		for _, m := range d.floats {
			if t, ok := d.bears(m, k, c); ok && t > 0 && t < d.clear {
				s.rests = append(s.rests, t)
			}
		}
		slices.Sort(s.rests)
		s.rests = slices.CompactFunc(s.rests, func(a, b float64) bool { return math.Abs(a-b) < 0.05 })
		if len(s.rests) < 2 {
			s.rests, s.onRims = []float64{0, d.clear}, true
		}
		if k > 0 {
			s.width += (c - d.centres[k-1]) / 2
		} else {
			s.width += d.joist.section.Width / 2
		}
		if k < len(d.centres)-1 {
			s.width += (d.centres[k+1] - c) / 2
		} else {
			s.width += d.joist.section.Width / 2
		}
		out = append(out, s)
	}
	return out
}

// bears returns where along joist k, from its end, a float bears on it.
func (d *Dock) bears(m mount, k int, centre float64) (t float64, ok bool) {
	along, across := m.x+d.length/2, m.y+d.width/2
	s, t := along, across
	if !d.across {
		s, t = across, along
	}
	t -= float64(d.rimPlies) * d.rim.section.Width
	switch m.seat {
	case wedged:
		return t, m.bay == k || m.bay == k+1
	case underJoists:
		size := d.floatSize(m.set)
		reach := size.breadth
		if (m.set.Lies.Value == "along") == d.across {
			reach = size.long
		}
		return t, math.Abs(s-centre) <= (reach+d.joist.section.Width)/2
	}
	return t, false
}

// marks is what the joists' places rest on.
func (d *Dock) marks() rest {
	j := &d.plan.Frame.Joists
	if len(j.Marks) == 0 {
		return on(j.Spacing)
	}
	return rest{path: "frame.joists.marks", known: measure.Measured, missing: len(d.centres) == 0}
}

// repetitive reports whether the joists share loads as the code's factor asks.
func (d *Dock) repetitive() bool {
	return len(d.centres) >= 3 && d.widest() <= 24*measure.Inch+slack
}

// widest returns the largest distance between two joists, centre to centre.
func (d *Dock) widest() float64 {
	w := 0.0
	for k := 1; k < len(d.centres); k++ {
		w = max(w, d.centres[k]-d.centres[k-1])
	}
	return w
}
