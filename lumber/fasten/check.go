package fasten

import (
	"errors"
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A Demand is what a joint is asked, all fasteners together, N.
type Demand struct {
	Lateral    float64 // across the fasteners, in the direction of the pieces' Angle
	Withdrawal float64 // along them, pulling the pieces apart
}

func (d Demand) check() error {
	return checkAll(ranged{"Lateral", d.Lateral, forces}, ranged{"Withdrawal", d.Withdrawal, forces})
}

// Check compares a demand with all that the joint carries: lateral load, each way
// to be pulled apart, both at once, distances, tearing of the wood around the
// group, and shear in a piece loaded across its grain. What the demand does not
// ask is left out. What is not known, or not covered, is a check without an
// answer that says so; malformed data is an error. Each check names its rule; most
// are of NDS 11 and 12.
func (j Joint) Check(d Demand, t lumber.Duration) ([]measure.Check, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	if err := j.check(); err != nil {
		return nil, err
	}
	if _, err := duration(t); err != nil {
		return nil, err
	}
	if _, err := j.Fastener.resolve(); err != nil && !errors.Is(err, measure.ErrUnknown) {
		return nil, err
	}
	lateral, err := j.Lateral(t)
	if err != nil {
		return []measure.Check{ruled(measure.Refuse("joint", err), srcYield)}, nil
	}
	var out []measure.Check
	if d.Lateral > 0 {
		out = append(out, lateral.against(d.Lateral))
	}
	if d.Withdrawal > 0 {
		pulls, err := j.Pull(t)
		if err != nil {
			return nil, err
		}
		for _, c := range pulls {
			out = append(out, c.against(d.Withdrawal))
		}
		if d.Lateral > 0 {
			out = append(out, j.both(d, lateral, pulls))
		}
	}
	geometry, err := j.Geometry()
	if err != nil {
		return nil, err
	}
	out = append(out, geometry...)
	if d.Withdrawal > 0 && j.Fastener.Kind == LagScrew {
		out = append(out, j.lagRoom()...)
	}
	if d.Lateral > 0 {
		out = append(out, j.tearing(d.Lateral, t)...)
		out = append(out, j.crossShear(d.Lateral, t)...)
	}
	return out, nil
}

// ruled gives a refused check its rule.
func ruled(c measure.Check, rule *measure.Source) measure.Check {
	c.Rule = rule
	return c
}

// Combined returns the design value, N, of a screw or nail under a load at an
// angle (rad, 0 to π/2) from the wood's surface, from its adjusted lateral and
// withdrawal values, N:
//
//	screws  Zα = W Z/(W cos²α + Z sin²α)
//	nails   Zα = W Z/(W cos α + Z sin α)
//
// A bolt has no such rule: an error. NDS 12.4. Within 2.1 units in the last place.
// Worst at (41.38, 669.2, 0.9785), ordered as in testdata/accuracy.csv.
func (f Fastener) Combined(lateral, withdrawal, angle float64) (float64, error) {
	if err := checkAll(
		ranged{"lateral", lateral, forces},
		ranged{"withdrawal", withdrawal, forces},
		ranged{"angle", angle, rightTurn},
	); err != nil {
		return 0, err
	}
	sin, cos := math.Sincos(math.Min(angle, math.Pi/2))
	switch {
	case f.Kind == LagScrew || f.Kind == WoodScrew:
		sin, cos = sin*sin, cos*cos
	case !f.Kind.nail():
		return 0, &measure.Error{Field: "Kind", Text: f.Kind.String(), Class: measure.ErrName, Want: "a screw or a nail"}
	}
	under := withdrawal*cos + lateral*sin
	if under == 0 {
		return 0, nil
	}
	return withdrawal * lateral / under, nil
}

// both checks lateral load and withdrawal together. Bolts have no rule of their
// own: the shares of lateral and steel are added squared, which is our choice.
func (j Joint) both(d Demand, lateral Capacity, pulls []Capacity) measure.Check {
	c := measure.Check{
		Name: "lateral and pull together", Kind: measure.Force, Value: math.Hypot(d.Lateral, d.Withdrawal),
		Rule: srcCombined, Rests: lateral.Rests, Limit: math.NaN(),
	}
	weakest, err := math.Inf(1), lateral.Err
	for _, p := range pulls {
		if err == nil {
			err = p.Err
		}
		weakest = math.Min(weakest, p.Value)
	}
	if c.Err = err; err != nil {
		return c
	}
	switch {
	case j.Fastener.Kind == Bolt:
		c.Rule = srcBoth
		c.Limit = 0
		if lateral.Value > 0 && weakest > 0 {
			c.Limit = c.Value / math.Hypot(d.Lateral/lateral.Value, d.Withdrawal/weakest)
		}
		return c
	case j.Fastener.Kind.nail():
		c.Rule = srcCombinedNl
	}
	c.Limit, c.Err = j.Fastener.Combined(lateral.Value, weakest, math.Atan2(d.Withdrawal, d.Lateral))
	return c
}

var srcBoth = choice("Shares of lateral load and of tension of a bolt added as squares")

// lagRoom holds lag screws that are pulled to distances of their own.
func (j Joint) lagRoom() []measure.Check {
	d := inches(j.Fastener.Diameter)
	holder := j.pieces()[0]
	if j.Double {
		holder = j.pieces()[1]
	}
	if holder.EndGrain {
		return nil
	}
	list := []room{
		{"pulled: end distance", orUnknown(holder.End), 4 * d, 4 * d, false, srcLagW, "how far the lag screw is from the end"},
		{"pulled: edge distance", orUnknown(holder.Edge), 1.5 * d, 1.5 * d, false, srcLagW, "how far the lag screw is from the edge"},
	}
	if j.perRow() > 1 {
		list = append(list, room{"pulled: spacing", orUnknown(j.Spacing), 4 * d, 4 * d, false, srcLagW, "the spacing of the lag screws"})
	}
	var out []measure.Check
	for _, r := range list {
		out = append(out, r.check())
	}
	return out
}
