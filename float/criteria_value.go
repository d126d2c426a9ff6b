package float

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

func lowest(s State, _ loading) (float64, error) {
	_, h, err := s.Lowest()
	return h, err
}

// lowestEdge is the height of the lowest deck edge over water.
func lowestEdge(t *trial) (float64, error) {
	if t.outlineErr != nil {
		return 0, t.outlineErr
	}
	return t.worst(-1, lowest)
}

// clearance is the height of the frame's underside over water at its lowest
// corner.
func clearance(t *trial) (float64, error) {
	if t.outlineErr != nil {
		return 0, t.outlineErr
	}
	if t.deck.Depth == 0 {
		return 0, &measure.Error{Field: "Deck.Depth", Class: measure.ErrUnknown, Want: "the depth from the deck down to the frame's underside"}
	}
	return t.worst(-1, func(s State, _ loading) (float64, error) {
		low := math.Inf(1)
		for _, c := range t.platform.Corners {
			low = min(low, s.Height(r3.Vec{X: c.X, Y: c.Y, Z: c.Z - t.deck.Depth}))
		}
		return low, nil
	})
}

// tilt is the angle between deck and water.
func tilt(t *trial) (float64, error) {
	return t.worst(1, func(s State, _ loading) (float64, error) { return s.Tilt(), nil })
}

// share is the immersed share of the deepest drum.
func share(t *trial) (float64, error) {
	return t.worst(1, func(s State, _ loading) (float64, error) {
		most := 0.0
		for i := range t.platform.Units {
			u, err := s.Unit(i)
			if err != nil && !fails(err) {
				return 0, err
			}
			most = max(most, u.Share)
		}
		return most, nil
	})
}

// metacentre is the smaller principal metacentric height.
func metacentre(t *trial) (float64, error) {
	return t.worst(-1, func(s State, _ loading) (float64, error) { return s.Principal()[0].Height, nil })
}

// crossLevel is the rise of the deck over 3 ft of its width.
func crossLevel(t *trial) (float64, error) {
	return t.worst(1, func(s State, _ loading) (float64, error) { return 3 * measure.Foot * math.Abs(s.Up.Y), nil })
}

// ends calls see with the corners at the end that is named by its sign.
func (t *trial) ends(end float64, see func(r3.Vec)) {
	o := t.outline
	reach := 0.05 * (o.x1 - o.x0)
	for _, c := range t.platform.Corners {
		if end > 0 && c.X >= o.x1-reach || end < 0 && c.X <= o.x0+reach {
			see(c)
		}
	}
}

// endDrop is what a corner at the loaded end loses.
func endDrop(t *trial) (float64, error) {
	before, err := t.settle(deadLoad)
	if err != nil {
		return 0, err
	}
	return t.worst(1, func(s State, l loading) (float64, error) {
		drop := math.Inf(-1)
		t.ends(l.end, func(c r3.Vec) { drop = max(drop, before.Height(c)-s.Height(c)) })
		return drop, nil
	})
}

// fromDrawing is the greatest difference of a corner's freeboard from the drawing.
func fromDrawing(t *trial) (float64, error) {
	if t.deck.Drawn == 0 {
		return 0, &measure.Error{Field: "Deck.Drawn", Class: measure.ErrUnknown, Want: "the freeboard on the drawing"}
	}
	if t.outlineErr != nil {
		return 0, t.outlineErr
	}
	return t.worst(1, func(s State, _ loading) (float64, error) {
		most := 0.0
		for _, h := range s.Freeboards() {
			most = max(most, math.Abs(h-t.deck.Drawn))
		}
		return most, nil
	})
}

// fromWalk is the greatest difference of a corner at the +x end from the walk.
func fromWalk(t *trial) (float64, error) {
	if t.deck.Walk == 0 {
		return 0, &measure.Error{Field: "Deck.Walk", Class: measure.ErrUnknown, Want: "the walk's height over water"}
	}
	if t.outlineErr != nil {
		return 0, t.outlineErr
	}
	return t.worst(1, func(s State, _ loading) (float64, error) {
		most := 0.0
		t.ends(1, func(c r3.Vec) { most = max(most, math.Abs(s.Height(c)-t.deck.Walk)) })
		return most, nil
	})
}

// carried returns the greatest x up to which the dock floats with its deck edge
// dry under loads(x), between 0 and hi, where it does not, and notes what ends it.
// The halvings end at a 1e-13th of hi.
func (t *trial) carried(hi float64, loads func(float64) ([]loading, error)) (float64, error) {
	why, err := t.wetUnder([]loading{deadLoad}, true)
	if err != nil || why != "" {
		t.note("%s", why)
		return 0, err
	}
	lo, none := 0.0, true
	for range 43 {
		mid := lo + (hi-lo)/2
		l, err := loads(mid)
		if err != nil {
			return 0, err
		}
		why, err := t.wetUnder(l, false)
		if err != nil {
			return 0, err
		}
		if why == "" {
			lo = mid
		} else {
			hi, none = mid, false
		}
	}
	ends := "nothing: no float"
	if !none { // once more, to say how much is lacking
		l, err := loads(hi)
		if err == nil {
			ends, err = t.wetUnder(l, true)
		}
		if err != nil {
			return 0, err
		}
	}
	t.note("beyond it: %s", ends)
	return lo, nil
}

// wetUnder says under which of the loads the dock does not float or its deck edge
// goes under, or nothing; how much is lacking on demand.
func (t *trial) wetUnder(loads []loading, howMuch bool) (string, error) {
	for _, l := range loads {
		s, err := t.under(l, howMuch)
		if fails(err) {
			return "under " + l.name + " the " + err.Error(), nil
		}
		if err != nil {
			return "", err
		}
		at, h, err := s.Lowest()
		if err != nil {
			return "", err
		}
		if !(h >= 0) {
			return fmt.Sprintf("under %s the deck edge at x %.2f m, y %.2f m goes under", l.name, at.X, at.Y), nil
		}
	}
	return "", nil
}

// reserve is the mass in kg that would hold all drums under, at most.
func (t *trial) reserve() float64 {
	sum := 0.0
	for i := range t.platform.Units {
		if u := &t.platform.Units[i]; !u.Flooded {
			sum += t.platform.Density * u.Body.Volume()
		}
	}
	return sum
}

// carriesEvenly is the pressure over the whole deck up to which the dock floats
// with its deck edge dry.
func carriesEvenly(t *trial) (float64, error) {
	if t.outlineErr != nil {
		return 0, t.outlineErr
	}
	return t.carried(t.reserve()*measure.Gravity/t.outline.area, func(q float64) ([]loading, error) { return t.even(q), nil })
}

// carriesOnSpot is the mass on any one spot up to which the dock floats with its
// deck edge dry.
func carriesOnSpot(t *trial) (float64, error) {
	if _, err := t.spots(0); err != nil {
		return 0, err
	}
	return t.carried(t.reserve(), t.spots)
}

// The deck's own size, and the dock's mass.

func leastSide(t *trial) (float64, error) {
	o := t.outline
	return min(o.x1-o.x0, o.y1-o.y0), t.outlineErr
}

func mostSide(t *trial) (float64, error) {
	o := t.outline
	return max(o.x1-o.x0, o.y1-o.y0), t.outlineErr
}

func sidesRatio(t *trial) (float64, error) {
	if t.outlineErr != nil {
		return 0, t.outlineErr
	}
	o := t.outline
	return max(o.x1-o.x0, o.y1-o.y0) / min(o.x1-o.x0, o.y1-o.y0), nil
}

func wholeMass(t *trial) (float64, error) {
	s, err := t.settle(deadLoad)
	return s.Mass, err
}
