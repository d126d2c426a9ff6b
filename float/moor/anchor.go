package moor

import (
	"errors"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Ground is what a line ends in. Its check compares a level pull and a lift,
// both N, with what holds; strength unknown is no answer.
type Ground interface {
	Check(pull, lift float64) (measure.Check, error) // both N, upward lift
}

// friction returns the friction of a concrete block dropped or cast on a bottom,
// the least of its class. For "soft mud" no source has a value: an error of
// class measure.ErrUnknown, as adhesion and suction hold only for a while.
func friction(bottom string, cast bool) (measure.Factor, error) {
	t, err := load()
	if err != nil {
		return measure.Factor{}, err
	}
	if bottom == "" {
		return measure.Factor{}, unknown("bottom", "what the block lies on")
	}
	var names []string
	for _, g := range t.bottoms {
		names = append(names, g.name)
		if g.name != bottom {
			continue
		}
		f := measure.Factor{
			Symbol: "μ", Name: "friction on " + bottom, Value: g.precast[0], Why: "precast concrete, least of the class",
			Source: src("Textbook table adapted from the US Navy", "1982", "formed concrete", measure.Read),
		}
		switch {
		case g.cast[0] == 0:
			return measure.Factor{}, unknown("friction on "+bottom, "a pull test of this anchor in this mud, or a bottom with friction")
		case cast:
			f.Value, f.Why = g.cast[0], "mass concrete cast on it, least of the class"
			f.Source = src(navfac, "September 1986", "Chapter 3, Table 1", measure.Read)
		case f.Value == 0:
			// Precast on a finer bottom of the same kind stands in.
			f.Value, f.Why, f.Source = standIn[bottom], "no row for precast concrete: the row of a finer bottom", srcOwn
		}
		return f, nil
	}
	return measure.Factor{}, &measure.Error{Field: "bottom", Text: bottom, Class: measure.ErrName, Want: strings.Join(names, ", ")}
}

// standIn serves bottoms without a row for precast concrete: those of gravel,
// sand and silt.
var standIn = map[string]float64{"rock": 0.40, "coarse sand": 0.30, "stiff clay": 0.25, "medium clay": 0.25}

// A DeadWeight is a block lying on the bottom.
type DeadWeight struct {
	Mass     float64 // kg, dry
	Density  float64 // kg/m³ of the block: concrete 2300 to 2400, granite 2650; 0: unknown, no answer
	Water    float64 // kg/m³; 0: 1000
	Bottom   string  // "rock", "gravel", "coarse sand", "sand", "fine sand", "silt", "stiff clay", "medium clay"; "soft mud" has no answer
	Cast     bool    // cast on the spot
	Friction float64 // a ratio, measured by a pull test; 0: that of Bottom
	Slope    float64 // rad, of the bottom, falling the way the line pulls

	// Design divides the holding; its zero value is 2.0, the most of 1.5 to 2.0
	// in use. Navy practice leaves the factor of dead weights blank.
	Design measure.Factor
}

var floats = measure.Range{Kind: measure.Density, Lo: 900, Hi: 1100, Source: srcSense}

// Weight returns the weight under water, N: m g (1 - ρw/ρ), after Archimedes.
func (d DeadWeight) Weight() (float64, error) {
	if d.Water == 0 {
		d.Water = fresh
	}
	if d.Density == 0 {
		return 0, unknown("density of the block", "what it is made of")
	}
	if err := first(positiveMass.Check("mass of the block", d.Mass), floats.Check("density of the water", d.Water)); err != nil {
		return 0, err
	}
	sinks := measure.Range{Kind: measure.Density, Lo: d.Water, Hi: 3e4, OpenLo: true, Source: srcSense}
	if err := sinks.Check("density of the block", d.Density); err != nil {
		return 0, err
	}
	return d.Mass * measure.Gravity * (1 - d.Water/d.Density), nil
}

// slides returns friction, design factor and the check's parts they share.
func (d DeadWeight) slides() (μ, design measure.Factor, err error) {
	if err := steepness.Check("slope", d.Slope); err != nil {
		return μ, design, err
	}
	if d.Friction != 0 {
		if err := (measure.Range{Lo: 1e-6, Hi: 2, Source: srcSense}).Check("friction", d.Friction); err != nil {
			return μ, design, err
		}
		μ = measure.Factor{Symbol: "μ", Name: "friction", Value: d.Friction, Why: "as given", Source: srcUser}
	} else if μ, err = friction(d.Bottom, d.Cast); err != nil {
		return μ, design, err
	}
	design = d.Design
	if design.Value == 0 {
		if design, err = Factor("design", "anchor dead weight"); err != nil {
			return μ, design, err
		}
	}
	return μ, design, designRange.Check("design factor", design.Value)
}

// grip returns the level pull a block holds per newton that it presses down with:
// (μ - tan β)/(1 + μ tan β), as a level pull down a slope also takes from what
// presses it there.
func (d DeadWeight) grip(μ float64) float64 {
	t := math.Tan(d.Slope)
	return (μ - t) / (1 + μ*t)
}

// holding returns the level pull that the block holds against a lift V:
//
//	(W - V) (μ - tan β)/(1 + μ tan β) / design
//
// A pull down along the slope itself is the pair P cos β, -P sin β and gives the
// usual W (μ cos β - sin β).
func (d DeadWeight) holding(lift float64) (float64, []measure.Factor, error) {
	w, err := d.Weight()
	if err != nil {
		return 0, nil, err
	}
	μ, design, err := d.slides()
	if err != nil {
		return 0, nil, err
	}
	limit := w - lift // lifted off it holds nothing
	if limit > 0 {
		limit *= d.grip(μ.Value) / design.Value
	}
	design.Symbol, design.Value = "1/DF", 1/design.Value
	return limit, []measure.Factor{μ, design}, nil
}

// Check compares the level pull, N, down the slope, with the block's friction under
// its weight in water less the lift, N; a negative lift presses it down. A block that is
// lifted off the bottom is short, whatever the pull, with that in the place of a number.
// Friction is that of [Factor], statics the rest.
func (d DeadWeight) Check(pull, lift float64) (measure.Check, error) {
	const name = "dead weight sliding"
	if err := first(forceOrZero.Check("pull", pull), anyForce.Check("lift", lift)); err != nil {
		return measure.Check{}, err
	}
	limit, factors, err := d.holding(lift)
	if err != nil {
		return refusal(name, measure.Force, pull, err)
	}
	w, err := d.Weight()
	if err != nil {
		return refusal(name, measure.Force, pull, err)
	}
	if lift >= w {
		return measure.Check{
			Name: name, Kind: measure.Count, Limit: 1, AtLeast: true, Rule: srcStatics, Steps: []string{"lifted off the bottom", "on the bottom"},
			Notes: []string{"the line lifts it by " + measure.Force.Format(lift, measure.SI) + " and pulls along by " + measure.Force.Format(pull, measure.SI) +
				"; it weighs " + measure.Force.Format(w, measure.SI) + " in water: a longer line or a chain lifts less, a heavier block stays"},
		}, nil
	}
	known := measure.Measured
	text := "as given"
	if d.Friction == 0 {
		known, text = measure.Assumed, factors[0].Why
	}
	return measure.Check{
		Name: name, Kind: measure.Force, Value: pull, Limit: limit, Rule: srcStatics, Factors: factors,
		Rests: []measure.Assumption{{Name: factors[0].Name, Text: text, Known: known, Decides: true}},
		Notes: []string{"a dead weight that has begun to slide keeps sliding: pull it in hard and look where it lies every spring"},
	}, nil
}

// Needed returns the dry mass, kg, of a block of this material on this bottom
// that holds a pull and a lift, N, by the statics of [DeadWeight.Check]. Without a
// pull it is what the lift just balances: a block has to be heavier to stay down.
func (d DeadWeight) Needed(pull, lift float64) (float64, error) {
	if err := first(forceOrZero.Check("pull", pull), forceOrZero.Check("lift", lift)); err != nil {
		return 0, err
	}
	d.Mass = 1
	w, err := d.Weight()
	if err != nil {
		return 0, err
	}
	μ, design, err := d.slides()
	if err != nil {
		return 0, err
	}
	grip := d.grip(μ.Value)
	if !(grip > 0) {
		return 0, &measure.Error{
			Field: "slope", Kind: measure.Angle, Value: d.Slope, Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Angle, Hi: math.Atan(μ.Value), OpenHi: true, Source: srcStatics},
		}
	}
	return (pull*design.Value/grip + lift) / w, nil
}

// A Rated is an anchor or a point on the shore with a holding that somebody
// knows: a screw anchor by its torque, a mushroom or a plate by a pull test, a
// tree, a bolt in rock. It has no default holding: rules of thumb (a mushroom
// 2.4 times its weight, or 10 times well buried; a pyramid 10 times) differ too
// much to stand on.
type Rated struct {
	Name     string
	Hold     float64         // N; 0: unknown, no answer
	Steepest float64         // rad above the level at which it holds that; 0: level pulls only
	Design   measure.Factor  // divides Hold; its zero value is 3.0, that of piles and plates
	Source   *measure.Source // who says so; nil: the user
}

// Check compares the tension of a pull and a lift, N, with the holding, whose source
// is the user's; a steeper pull than the holding is known for is no answer.
func (r Rated) Check(pull, lift float64) (measure.Check, error) {
	name := r.Name
	if name == "" {
		name = "anchor"
	}
	if err := first(
		forceOrZero.Check("pull", pull), anyForce.Check("lift", lift), forceOrZero.Check("holding of "+name, r.Hold),
		measure.Range{Kind: measure.Angle, Lo: 0, Hi: math.Pi / 2, Source: srcSense}.Check("steepest pull on "+name, r.Steepest),
	); err != nil {
		return measure.Check{}, err
	}
	tension := math.Hypot(pull, lift)
	if r.Hold == 0 {
		return refusal(name, measure.Force, tension, unknown("holding of "+name, "a pull test, or who vouches for it"))
	}
	if angle := math.Atan2(lift, pull); angle > r.Steepest+1e-9 {
		c := measure.Refuse(name, &measure.Error{
			Field: "pull on " + name, Kind: measure.Angle, Value: angle, Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Angle, Lo: -math.Pi / 2, Hi: r.Steepest, Source: srcUser},
			Why:   "steeper than its holding is known for; an embedded anchor lets go fast above 25 degrees",
		})
		c.Kind, c.Value = measure.Force, tension
		return c, nil
	}
	design := r.Design
	if design.Value == 0 {
		var err error
		if design, err = Factor("design", "anchor pile or plate"); err != nil {
			return measure.Check{}, err
		}
	}
	if err := designRange.Check("design factor of "+name, design.Value); err != nil {
		return measure.Check{}, err
	}
	limit := r.Hold / design.Value
	design.Symbol, design.Value = "1/DF", 1/design.Value
	rule := r.Source
	if rule == nil {
		rule = srcUser
	}
	return measure.Check{Name: name, Kind: measure.Force, Value: tension, Limit: limit, Rule: rule, Factors: []measure.Factor{design}}, nil
}

// refusal turns an unknown input into no answer; a malformed one stays an error.
func refusal(name string, kind measure.Kind, value float64, err error) (measure.Check, error) {
	if !errors.Is(err, measure.ErrUnknown) {
		return measure.Check{}, err
	}
	c := measure.Refuse(name, err)
	c.Kind, c.Value = kind, value
	return c, nil
}
