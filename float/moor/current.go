package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// fresh is the density of fresh water at its densest, kg/m³, rounded up.
const fresh = 1000

// A Current is water flowing past the dock.
type Current struct {
	Speed   float64 // m/s
	Density float64 // kg/m³; 0: 1000
	Depth   float64 // m of water; with Draft it raises the force of a shallow place
	Draft   float64 // m of the dock
}

// currentSpeed is where the shallow-water coefficient was fitted.
var currentSpeed = measure.Range{
	Kind: measure.Speed, Lo: 0, Hi: 1.5, Source: src(ufcMooring, "3 October 2005", "equation 11, page 85", measure.Read),
}

const (
	// A bluff side in deep water (1.0 to 1.2, from memory).
	bluff = 1.2
	// The coefficient of a hull that reaches the bottom and the power towards
	// it, UFC 4-159-03, equation 11.
	shallow, shallowPower = 3.2, 2
)

func (c Current) filled() (Current, error) {
	if c.Density == 0 {
		c.Density = fresh
	}
	return c, first(
		currentSpeed.Check("current", c.Speed), densityRange.Check("density of the water", c.Density),
		lengthOrZero.Check("depth", c.Depth), lengthOrZero.Check("draft", c.Draft),
	)
}

// Load returns the push of the current on the faces under water, flowing
// towards θ, rad: ρ C A V²/2 with, in shallow water,
//
//	C = C₀ + (3.2 - C₀)(draft/depth)²
//
// Boats in a row do not shield each other from it. By UFC 4-159-03, equation 11, for currents up to 1.5 m/s.
func (c Current) Load(θ float64, faces ...Face) (Load, error) {
	c, err := c.filled()
	if err := first(err, anyAngle.Check("direction", θ)); err != nil {
		return Load{}, err
	}
	rise := 0.0
	if c.Depth > 0 {
		if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: c.Depth, Source: srcSense}).Check("draft", c.Draft); err != nil {
			return Load{}, err
		}
		rise = math.Pow(c.Draft/c.Depth, shallowPower)
	}
	var sum Load
	for _, f := range faces {
		if err := f.check(); err != nil {
			return Load{}, err
		}
		if f.Shape == 0 {
			f.Shape = bluff
		}
		shape := f.Shape + math.Max(shallow-f.Shape, 0)*rise
		sum = sum.Plus(at(c.Density/2*shape*f.area(θ)*c.Speed*c.Speed*float64(max(f.Row, 1)), θ, f.At))
	}
	return sum, nil
}

// viscosity of fresh water at 10 °C, m²/s.
const viscosity = 1.307e-6

// Friction returns the drag of the current along a smooth wetted area, m², of
// the given length, m: ρ S V²/2 · 0.075/(log₁₀ R - 2)², UFC 4-159-03, equation
// 19, where the flow is turbulent (R of 10⁵ at least, from memory). Weed and
// rough boards multiply it.
func (c Current) Friction(area, length float64) (float64, error) {
	c, err := c.filled()
	if err := first(err, areaOrZero.Check("wetted area", area), positiveLength.Check("length", length)); err != nil {
		return 0, err
	}
	r := c.Speed * length / viscosity
	if c.Speed == 0 {
		return 0, nil
	}
	turbulent := measure.Range{Lo: 1e5, Hi: 1e10, Source: src(ufcMooring, "3 October 2005", "equation 19", measure.Read)}
	if err := turbulent.Check("speed times length over viscosity", r); err != nil {
		return 0, err
	}
	d := math.Log10(r) - 2
	return c.Density / 2 * area * c.Speed * c.Speed * 0.075 / (d * d), nil
}
