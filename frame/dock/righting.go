package dock

import (
	"errors"
	"math"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// A Crowd is everyone at the worst of the deck's four edges, and how the dock floats
// under them.
type Crowd struct {
	Edge   string // "near side"
	People int
	Mass   float64     // of all, kg
	X, Y   float64     // where they stand, from the dock's middle, m
	Height float64     // of their centres over the underside of the joists, m
	Rest   float.State // at rest, where Err is nil
	Err    error       // a [float.Failure] where it finds none
	Deep   int         // the float that lies deepest, from 0
}

// A Righting is the moment that turns the dock back, by its heel toward the crowd,
// and the moment with which the crowd heels it: that of its weight, moved from the
// middle to where it stands. Where both are alike the dock rests.
type Righting struct {
	Crowd
	Heel   []float64 // rad, from 0 on
	Rights []float64 // N·m, by heel, with the crowd's weight in the middle
	Heels  []float64 // N·m, by heel
	AtRest float64   // rad; 0 where it finds no rest
	Wet    float64   // rad, at which the deck's edge goes under; 0 where it does not
}

// The curve goes on in steps of a degree to 45: past what anybody stands on (our
// choice).
const (
	rightTo   = 45
	rightStep = degree
)

// afloat returns the dock with nobody aboard.
func (d *Dock) afloat() (floating, error) {
	if d.plan == nil {
		return floating{}, &measure.Error{Field: "plan", Class: measure.ErrUnknown, Want: "a plan"}
	}
	base, _, err := d.platform()
	if err != nil {
		return floating{}, err
	}
	fl := settle(base, loading{})
	return fl, fl.err
}

// Empty returns how the dock floats with nobody aboard, in axes from its middle, x
// along it and y across, and z up from the underside of the joists, by
// [float.Platform.Settle]. The error is for
// a plan that does not say enough, or a [float.Failure].
func (d *Dock) Empty() (float.State, error) {
	fl, err := d.afloat()
	return fl.state, err
}

// Crowded returns everyone at the edge where they tilt the dock most, by
// [float.Platform.Settle]. The error is
// for a plan that does not say enough.
func (d *Dock) Crowded() (*Crowd, error) {
	_, c, err := d.crowding()
	return c, err
}

// crowding returns the dock without people, and the crowd.
func (d *Dock) crowding() (*float.Platform, *Crowd, error) {
	if d.plan == nil {
		return nil, nil, &measure.Error{Field: "plan", Class: measure.ErrUnknown, Want: "a plan"}
	}
	base, _, err := d.platform()
	if err != nil {
		return nil, nil, err
	}
	var worst floating
	edge := 0
	for i, l := range d.crowd() {
		if err := l.rests.err(); err != nil {
			return nil, nil, err
		}
		if fl := settle(base, l); i == 0 || worse(fl, worst) {
			worst, edge = fl, i
		}
	}
	w := worst.weights[0]
	c := &Crowd{
		Edge: [4]string{sides[0], sides[1], ends[0], ends[1]}[edge], Mass: w.Mass, X: w.At.X, Y: w.At.Y, Height: w.At.Z,
		Rest: worst.state, Err: worst.err, Deep: worst.deepest,
	}
	for i := range d.plan.People {
		c.People += d.plan.People[i].Count.Value
	}
	if c.Err != nil {
		c.Rest = float.State{}
	}
	return base, c, nil
}

// Righting returns the righting curve toward the worst crowd, by
// [float.Platform.Righting]. The error is for a plan
// that does not say enough; a dock that turns over under the crowd has its curve, and
// no rest.
func (d *Dock) Righting() (*Righting, error) {
	base, c, err := d.crowding()
	if err != nil {
		return nil, err
	}
	out := &Righting{Crowd: *c}
	middle := float.Weight{Mass: c.Mass, At: d.crowd()[0].weights[0].At}
	middle.At.X, middle.At.Y = 0, 0
	arm, axis := math.Abs(c.Y), 0.0
	switch c.Edge { // which way down: toward +y by 0, toward -x by a quarter turn
	case sides[0]:
		axis = math.Pi
	case ends[0]:
		arm, axis = math.Abs(c.X), math.Pi/2
	case ends[1]:
		arm, axis = math.Abs(c.X), -math.Pi/2
	}
	var angles []float64
	for i := range rightTo + 1 {
		angles = append(angles, float64(i)*rightStep)
	}
	curve, err := base.With(middle).Righting(axis, angles)
	var gone *float.Failure
	if err != nil && (!errors.As(err, &gone) || len(curve.Points) < 2) {
		return nil, err
	}
	for _, p := range curve.Points {
		out.Heel = append(out.Heel, p.Angle)
		out.Rights = append(out.Rights, p.Moment)
		out.Heels = append(out.Heels, c.Mass*measure.Gravity*arm*math.Cos(p.Angle))
	}
	if curve.Under.Found {
		out.Wet = curve.Under.Angle
	}
	if c.Err == nil {
		out.AtRest = math.Abs(c.Rest.Heel)
		if c.Edge == ends[0] || c.Edge == ends[1] {
			out.AtRest = math.Abs(c.Rest.Trim)
		}
	}
	return out, nil
}
