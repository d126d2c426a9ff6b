package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// The rules for pontoon vessels of 46 CFR 178.340 are for two rows of tubes; 178.320
// bounds their size. Smaller floats have no answer from them.
var (
	pontoonSize  = &measure.Source{Title: "46 CFR 178.320(b)", Status: measure.Read}
	tubeRange    = measure.Range{Kind: measure.Length, Lo: 2 * measure.Foot, Hi: math.Inf(1), Source: pontoonSize}
	spacingRange = measure.Range{Kind: measure.Length, Lo: 6 * measure.Foot, Hi: math.Inf(1), Source: pontoonSize}
)

// twoRows checks that the units are tubes along x in two rows, within the rule's
// range.
func (t *trial) twoRows() error {
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range t.platform.Units {
		u := &t.platform.Units[i]
		c, ok := u.Body.(Cylinder)
		if !ok || u.Heading != 0 {
			return &measure.Error{Field: "Units", Class: measure.ErrUnknown, Why: "the rule is for round tubes along the dock", Want: pontoonSize.String()}
		}
		if err := tubeRange.Check("Cylinder.Diameter", c.Diameter); err != nil {
			return err
		}
		lo, hi = min(lo, u.At.Y), max(hi, u.At.Y)
	}
	for i := range t.platform.Units {
		if y := t.platform.Units[i].At.Y; math.Abs(y-lo) > 0.01 && math.Abs(y-hi) > 0.01 {
			return &measure.Error{Field: "Units", Class: measure.ErrUnknown, Why: "the rule is for two rows of tubes", Want: pontoonSize.String()}
		}
	}
	return spacingRange.Check("spacing of the tubes", hi-lo)
}

// crowdMoment puts everybody a sixth of the width off the middle, on either side.
func crowdMoment(t *trial) ([]loading, error) {
	if t.outlineErr != nil {
		return nil, t.outlineErr
	}
	var out []loading
	for _, sign := range []float64{1, -1} {
		l := t.even(t.criterion.Pressure)[0]
		l.add = append([]Weight(nil), l.add...)
		l.add[0].At.Y += sign * (t.outline.y1 - t.outline.y0) / 6
		l.name += ", a sixth of the width off the middle"
		out = append(out, l)
	}
	return out, nil
}

// crowdAtEnds puts everybody at one end, then at the other.
func crowdAtEnds(t *trial) ([]loading, error) {
	if t.outlineErr != nil {
		return nil, t.outlineErr
	}
	var out []loading
	for _, x := range []float64{t.outline.x1, t.outline.x0} {
		l := t.even(t.criterion.Pressure)[0]
		at := t.outline.middle(x)
		at.X, at.Z = x, at.Z+t.criterion.Above
		l.add = []Weight{{Mass: l.add[0].Mass, At: at}}
		l.name += ", all at one end"
		out = append(out, l)
	}
	return out, nil
}

// exposed is what the lowest tube has left above water, of its section, beyond
// what it must: a quarter, and as much as the shift put under.
func exposed(t *trial) (float64, error) {
	if err := t.twoRows(); err != nil {
		return 0, err
	}
	if t.outlineErr != nil {
		return 0, t.outlineErr
	}
	before, err := t.settle(t.even(t.criterion.Pressure)[0])
	if fails(err) {
		t.note("with everybody in the middle: %v", err)
		return 0, err
	}
	if err != nil {
		return 0, err
	}
	return t.worst(-1, func(s State, _ loading) (float64, error) {
		left := math.Inf(1)
		for i := range t.platform.Units {
			level, err := before.Unit(i)
			if err != nil {
				return 0, err
			}
			heeled, err := s.Unit(i)
			if err != nil {
				return 0, err
			}
			if moved := heeled.Share - level.Share; moved > 0 {
				left = min(left, 1-heeled.Share-max(0.25, moved))
			}
		}
		return left, nil
	})
}

// tops is the height of the lowest point of any tube's top line over water.
func tops(t *trial) (float64, error) {
	if err := t.twoRows(); err != nil {
		return 0, err
	}
	return t.worst(-1, func(s State, _ loading) (float64, error) {
		low := math.Inf(1)
		for i := range t.platform.Units {
			u := &t.platform.Units[i]
			c := u.Body.(Cylinder)
			top := s.Height(u.At) + c.Diameter/2*math.Hypot(s.Up.Y, s.Up.Z)
			low = min(low, top-c.Length/2*math.Abs(r3.Dot(s.Up, r3.Vec{X: 1})))
		}
		return low, nil
	})
}
