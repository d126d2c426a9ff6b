package float

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Water is the water at the surface of the lake or bay. The zero value is fresh
// water at 0 °C, as at ice-out.
type Water struct {
	Celsius  float64 // °C on the ITS-90
	Salinity float64 // practical salinity (PSS-78), about grams of salt in a kilogram; 0 is fresh
}

var (
	tanaka = &measure.Source{
		Title: "Tanaka et al., Recommended table for the density of water, Metrologia 38", Edition: "2001",
		Locator: "p. 301", Status: measure.Read,
	}
	eos80 = &measure.Source{
		Title: "UNESCO Technical Papers in Marine Science 44 (EOS-80)", Edition: "1983",
		Locator: "one-atmosphere equation of state", Status: measure.Read,
	}
	freezing = &measure.Source{
		Title: "UNESCO Technical Papers in Marine Science 44", Edition: "1983",
		Locator: "freezing point of seawater", Status: measure.Memory,
	}
)

var (
	freshRange    = measure.Range{Kind: measure.Temperature, Lo: 0, Hi: 40, Source: tanaka}
	salinityRange = measure.Range{Lo: 0, Hi: 42, Source: eos80}
)

// Density returns the density in kg/m³ at atmospheric pressure.
//
// Fresh water (salinity 0) follows Tanaka 2001, air-free, 0 to 40 °C; the other
// formulas in use differ from it by 3 parts in a million at most. Brackish
// and sea water follow EOS-80 (UNESCO 1983) for salinities to 42, from the
// freezing point to 40 °C; its value at a salinity near 0 differs from Tanaka's
// by less than 2 parts in a million. Outside these ranges the error is a
// [measure.Error].
//
// Both are computed within 1.3 units in the last place.
//
// Density is never what decides whether a dock floats well: from ice-out to the
// warmest day it changes by 0.5 %, from a lake to the sea by 2.8 %.
// Worst at (0.002693, 28.94), ordered as in testdata/accuracy.csv.
func (w Water) Density() (float64, error) {
	if err := salinityRange.Check("Salinity", w.Salinity); err != nil {
		return 0, err
	}
	if w.Salinity == 0 {
		if err := freshRange.Check("Celsius", w.Celsius); err != nil {
			return 0, err
		}
		return freshDensity(w.Celsius), nil
	}
	liquid := measure.Range{Kind: measure.Temperature, Lo: w.freezes(), Hi: 40, Source: freezing}
	if !(w.Celsius < liquid.Lo) {
		liquid.Source = eos80 // who set the upper end
	}
	if err := liquid.Check("Celsius", w.Celsius); err != nil {
		return 0, err
	}
	return seaDensity(w.Salinity, w.Celsius*ipts68), nil
}

// freezes returns the freezing point in °C at atmospheric pressure, never below
// the -2 °C at which EOS-80 ends.
func (w Water) freezes() float64 {
	s := w.Salinity
	return max(-2, -0.0575*s+1.710523e-3*s*math.Sqrt(s)-2.154996e-4*s*s)
}

// freshDensity is equation 1 of Tanaka 2001, t in °C on the ITS-90.
func freshDensity(t float64) float64 {
	d := t - 3.983035
	return 999.974950 * (1 - d*d*(t+301.797)/(522528.9*(t+69.34881)))
}

// ipts68 turns °C on the ITS-90 into °C on the IPTS-68, the scale of EOS-80.
const ipts68 = 1.00024

// seaDensity is the one-atmosphere equation of EOS-80, t in °C on the IPTS-68.
func seaDensity(s, t float64) float64 {
	pure := polynomial(t, 999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9)
	a := polynomial(t, 8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9)
	b := polynomial(t, -5.72466e-3, 1.0227e-4, -1.6546e-6)
	return pure + s*(a+math.Sqrt(s)*b+4.8314e-4*s)
}

// polynomial returns c[0] + c[1] x + c[2] x² + ..., by Horner's rule.
func polynomial(x float64, c ...float64) float64 {
	sum := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		sum = sum*x + c[i]
	}
	return sum
}
