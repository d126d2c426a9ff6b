package dock

import (
	"math"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A box is the outside of a float as it lies: along and across the dock, and its
// height. Of a drum, height is the diameter and long the length of its axis.
type box struct {
	drum                  bool
	long, breadth, height float64
}

// floatSize returns the outside of one float; NaN where the plan does not say.
// Size that belongs to the other shape is a mistake.
func (d *Dock) floatSize(s *plan.Floats) box {
	if s.Shape.Value == "" {
		return box{false, math.NaN(), math.NaN(), math.NaN()}
	}
	if s.Shape.Value == "block" {
		if s.Girth.Known == measure.Measured {
			wrong(d, s.Girth, "a block has no girth", "width and height", measure.ErrName)
		}
		return box{false, s.Length.Value, s.Width.Value, s.Height.Value}
	}
	for _, q := range []plan.Quantity{s.Width, s.Height} {
		if q.Known == measure.Measured {
			wrong(d, q, "a drum has neither width nor height", "girth", measure.ErrName)
		}
	}
	diameter := s.Girth.Value / math.Pi
	return box{true, s.Length.Value, diameter, diameter}
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
