package float

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Curve is the righting lever of a platform turned about a horizontal axis by
// an outside couple, with sinkage and the turn about the other axis free.
type Curve struct {
	Axis   float64 // rad from the platform's x axis toward y
	Points []Point // in the order of the angles asked for

	// What was found between the first and the last angle.
	Rest      Mark // where the lever rises through zero, without a leap: a rest position
	Under     Mark // where the deck's edge (Corners) first goes under water; the first angle if it is
	Peak      Mark // the greatest lever; at the last angle it may rise on
	Vanishing Mark // past the peak, where the lever falls through zero

	// Area is the work over the weight, m rad, from Rest (or the first angle) to
	// Vanishing (or the last): the area under the curve where the other turn is
	// small.
	Area float64

	Notices []string // see Platform.Notices
}

// A Point of a righting curve.
type Point struct {
	Angle  float64 // rad about the axis; for axis 0 the heel
	Lever  float64 // horizontal distance of buoyancy from gravity that rights, m
	Moment float64 // righting moment, N·m
	Other  float64 // the free turn, rad; for axis 0 the trim
	Level  float64 // height of the platform's origin above the water, m
	Edge   float64 // height of the lowest corner above the water, m; 0 without Corners

	work float64 // potential energy over gravity, kg m
	mass float64
}

// A Mark is a place on a righting curve, if there is one.
type Mark struct {
	Found        bool
	Angle, Lever float64 // rad, m
}

// Righting returns the righting curve, by equilibrium of weights and pressure, about
// a horizontal axis that makes the angle axis, rad, with the platform's x axis (0
// heels, toward +y; π/2 turns the -x end down), at the given angles in rad, which
// must rise and stay within the tilt stop. Marks and area are solved for, not
// interpolated. Over a wave the angles count from its mean slope.
//
// Where the other turn finds no balance, the platform goes over that way: the
// error is a [*Failure] of class [ErrCapsizes] and the curve up to there comes
// with it.
// A barge is within 3.1 units in the last place, two drums, whose search ends at 1e-12
// of the weight, within 1693 of the lever of the weight.
// Worst at (0.6674, 1.536, 3.531, 730.2, 0.1268, 1000, 0.1), ordered as in testdata/accuracy.csv.
func (p *Platform) Righting(axis float64, angles []float64) (Curve, error) {
	curve := Curve{Axis: axis, Notices: p.Notices()}
	if err := headingRange.Check("axis", axis); err != nil {
		return curve, err
	}
	var buf [stackSize]part
	m, err := p.model(buf[:0])
	if err != nil {
		return curve, err
	}
	if f := m.carries(); f != nil {
		return curve, f
	}
	if !(m.mass > 0) {
		return curve, massless(m.mass)
	}
	if len(angles) == 0 {
		return curve, &measure.Error{Field: "angles", Class: measure.ErrUnknown, Want: "at least one angle"}
	}
	last := -p.stop()
	for _, a := range angles {
		if err := (measure.Range{Kind: measure.Angle, Lo: last, Hi: p.stop()}).Check("angles", a); err != nil {
			return curve, err
		}
		last = a
	}

	h := holder{model: &m, platform: p}
	h.sin, h.cos = math.Sincos(axis)
	x, y, z := h.up(angles[0], 0)
	h.d = m.guess(x, y, z)
	curve.Points = make([]Point, 0, len(angles))
	for i, a := range angles {
		h.predict(curve.Points, a)
		pt, ok := h.hold(a)
		if !ok {
			heel, trim := attitude(h.up(a, pt.Other))
			return curve, &Failure{Class: ErrCapsizes, Heel: heel, Trim: trim}
		}
		curve.Points = append(curve.Points, pt)
		if i > 0 {
			curve.see(&h, curve.Points[i-1], pt)
		} else if pt.Edge < 0 {
			curve.Under = Mark{true, pt.Angle, pt.Lever}
		}
	}
	curve.finish(&h)
	return curve, nil
}
