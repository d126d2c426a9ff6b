package dock

import (
	"fmt"
	"math"

	"example.org/floewright/float"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A box is the outside of a float as it lies: along and across the dock, and its
// height. Of a drum, height is the diameter and long the length of its axis. Pushes is
// the length of the plain cylinder that stands for it in the water.
type box struct {
	drum                  bool
	long, breadth, height float64
	pushes                float64
}

// Bounds of a drum's outside volume as shares of the plain cylinder of its girth and
// length, which catch a slip of the pen (our choice).
const leastVolume, mostVolume = 0.6, 1.03

var srcVolume = &measure.Source{Title: "a drum's outside volume against the plain cylinder of its girth and length", Status: measure.OwnChoice}

// cylinder returns the volume of the plain cylinder of a drum's girth and length.
func cylinder(s *plan.Floats) float64 {
	return s.Girth.Value * s.Girth.Value * s.Length.Value / (4 * math.Pi)
}

// tapered returns the share of that cylinder which stands in for a drum's volume where
// the plan does not have it.
func tapered(s *plan.Floats) float64 {
	if s.Of.Value == "steel" {
		return 1
	}
	return float.LeastTapered
}

// standIn says so, "" where the volume is known or it is no drum.
func standIn(s *plan.Floats) string {
	switch {
	case s.Shape.Value != "drum" || plan.Has(s.Volume):
		return ""
	case tapered(s) == 1:
		return "the plain cylinder of its girth and length stands in"
	}
	return fmt.Sprintf("%.0f %%", 100*tapered(s)) + " of the plain cylinder of its girth and length stands in, for a plastic drum tapers"
}

// floatSize returns the outside of one float; NaN where the plan does not say.
// Size that belongs to the other shape is a mistake.
func (d *Dock) floatSize(s *plan.Floats) box {
	if s.Shape.Value == "" {
		return box{long: math.NaN(), breadth: math.NaN(), height: math.NaN()}
	}
	if s.Shape.Value == "block" {
		if s.Girth.Known == measure.Measured {
			wrong(d, s.Girth, "a block has no girth", "width and height", measure.ErrName)
		}
		if s.Volume.Known == measure.Measured {
			wrong(d, s.Volume, "a block's volume is that of its sides", "length, width and height", measure.ErrName)
		}
		return box{long: s.Length.Value, breadth: s.Width.Value, height: s.Height.Value}
	}
	for _, q := range []plan.Quantity{s.Width, s.Height} {
		if q.Known == measure.Measured {
			wrong(d, q, "a drum has neither width nor height", "girth", measure.ErrName)
		}
	}
	diameter := s.Girth.Value / math.Pi
	out := box{true, s.Length.Value, diameter, diameter, s.Length.Value * tapered(s)}
	if whole := cylinder(s); plan.Has(s.Volume) && whole > 0 {
		out.pushes = s.Length.Value * s.Volume.Value / whole
		r := measure.Range{Kind: measure.Volume, Lo: leastVolume * whole, Hi: mostVolume * whole, Source: srcVolume}
		if !r.Has(s.Volume.Value) {
			wrong(d, s.Volume, "it is not that of a drum of this girth and length",
				fmt.Sprintf("from %s to %s", measure.Volume.Format(r.Lo, d.system()), measure.Volume.Format(r.Hi, d.system())), measure.ErrRange)
		}
	}
	return out
}

// A seat is what a float pushes up on.
type seat int

const (
	underJoists seat = iota
	wedged           // between two joists, on their lower edges
	underBoards
)

func (s seat) String() string {
	return [...]string{"under the joists", "wedged between two joists", "under the deck boards"}[s]
}

// seat returns the height of a float's centre and what it bears on.
func (d *Dock) seat(s *plan.Floats, size box, bay int) (z float64, on seat) {
	r := size.height / 2
	if s.Bears.Value != "between joists" {
		z, on = -r, underJoists
	} else {
		z, on = d.joist.section.Depth-r, underBoards // its top touches the boards
		withJoists := (s.Lies.Value == "across") == d.across
		if bay > 0 && size.drum && withJoists {
			half := (d.centres[bay] - d.centres[bay-1] - d.joist.section.Width) / 2
			if low := -math.Sqrt(max(0, (r-half)*(r+half))); half < r && low < z {
				z, on = low, wedged
			}
		}
	}
	if plan.Has(s.Top) {
		z = -s.Top.Value - r
	}
	return z, on
}

// bayAt returns the bay at a place, 0 where there is none.
func (d *Dock) bayAt(along, across float64) int {
	s := across
	if d.across {
		s = along
	}
	for k := 1; k < len(d.centres); k++ {
		if s >= d.centres[k-1] && s <= d.centres[k] {
			return k
		}
	}
	return 0
}
