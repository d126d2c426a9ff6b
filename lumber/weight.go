package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Weights are the masses of one piece, kg. Floating checks use the heavy ones,
// ties and wind the light.
type Weights struct {
	Light  float64 // the least it will weigh: dry, or as weighed if that is less
	Bought float64 // as weighed; else as bought, 19 % moisture
	Damp   float64 // in service, 60 % moisture, or as weighed if that is more
	Soaked float64 // bound: pores full of water; it sinks
}

// Weights returns the masses of the member, all plies, over its Length, from the
// specific gravity of its Grade: Light from the light side of the species, Damp
// and Soaked from the heavy. Preservative adds at most 1.5 % when dry and is not
// counted. Fresh from treatment, lumber can hold 32 or 38 lb of water a cubic foot
// (sources differ), which lies between Damp and Soaked: weigh it. Sources as for
// [Density].
func (m Member) Weights() (Weights, error) {
	var w Weights
	if err := m.Section.check(); err != nil {
		return w, err
	}
	if err := pliesRange.Check("Plies", float64(m.Plies)); err != nil {
		return w, err
	}
	if err := lengths.Check("Length", m.Length); err != nil {
		return w, err
	}
	volume := m.Whole().Area() * m.Length
	for _, c := range []struct {
		to       *float64
		g        Value
		moisture float64
	}{
		{&w.Light, light(m.Grade), asBought},
		{&w.Bought, m.Grade.G, asBought},
		{&w.Damp, heavy(m.Grade), damp},
	} {
		rho, err := Density(c.g.SI(), c.moisture)
		if err != nil {
			return Weights{}, err
		}
		*c.to = rho * volume
	}
	_, full, err := PoreFull(heavy(m.Grade).SI())
	if err != nil {
		return Weights{}, err
	}
	w.Soaked = full * volume
	return w, nil
}

// Weighed returns the masses after the piece was put on a scale, kg: the weight
// replaces the one as bought; the light bound comes down to it and the heavy ones
// go up to it. Without the bounds of [Member.Weights] it is an error: a weight
// alone does not say what the piece weighs soaked.
func (w Weights) Weighed(mass float64) (Weights, error) {
	r := measure.Range{Kind: measure.Mass, Hi: 1e4, OpenLo: true}
	if err := r.Check("weighed mass", mass); err != nil {
		return w, err
	}
	if !(w.Light > 0 && w.Damp >= 0 && w.Soaked > 0) {
		return w, &measure.Error{Field: "Weights", Class: measure.ErrUnknown, Want: "the bounds that Member.Weights gives"}
	}
	w.Bought = mass
	w.Light = math.Min(w.Light, mass)
	w.Damp = math.Max(w.Damp, mass)
	w.Soaked = math.Max(w.Soaked, mass)
	return w, nil
}
