package action

import (
	"math"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// A Cover is the ice that acts on the dock. Where a Span is zero the published
// one stands in.
type Cover struct {
	Thickness  float64 // m
	Modulus    Span    // E, Pa; lower for slow changes
	Flexure    Span    // strength in bending, Pa
	Crushing   Span    // pressure on a vertical face at which the ice crushes, Pa
	Poisson    float64 // ν, a ratio; 0 is 0.33
	Foundation float64 // k = ρ g, N/m³; 0 is fresh water at standard gravity
}

var (
	modulus = Span{
		"modulus of the ice", 1e9, 5e9,
		&measure.Source{Title: "practice of bearing capacity, short static loads", Status: measure.Memory},
	}
	flexure = Span{
		"strength of the ice in bending", 0.4e6, 1.98e6,
		&measure.Source{
			Title:  "low end: A. J. Gow 1977 and others, lake ice in place; high end: G. W. Timco and S. O'Brien 1994, small freshwater beams, 1.73 + 0.25 MPa",
			Status: measure.Memory,
		},
	}
	crushing = Span{
		"pressure that crushes the ice", 8 * measure.Kip / (measure.Foot * measure.Foot), 5e6,
		&measure.Source{
			Title:   "high end: K. R. Croasdale, N. R. Morgenstern and J. B. Nuttall, Journal of Glaciology, indentation of lake ice 0.75 m wide, 2.5 to 5.0 MPa; low end: AASHTO LRFD 3.9.2.1, 8 ksf for ice falling apart at melting (from memory)",
			Locator: "abstract", Status: measure.Read,
		},
	}
)

// The ranges of a cover; those of the plate are package ice's.
var (
	thickRange    = measure.Range{Kind: measure.Length, Lo: 0, OpenLo: true, Hi: 3, Source: slip}
	modulusRange  = measure.Range{Kind: measure.Stress, Lo: 1e6, Hi: 2e10, Source: slip}
	strengthRange = measure.Range{Kind: measure.Stress, Lo: 1e3, Hi: 1e8, Source: slip}
)

// cover is a Cover filled in.
type cover struct {
	h, k, nu    float64
	e, σ, p     Span
	short, long float64 // characteristic length at the least and the greatest modulus
	kE, kσ, kp  measure.Knowledge
}

// fill checks a cover and fills in what is zero.
func (c Cover) fill() (cover, error) {
	f := cover{h: c.Thickness, k: c.Foundation, nu: c.Poisson}
	if err := check("thickness of the ice", c.Thickness, thickRange); err != nil {
		return f, err
	}
	var err error
	if f.e, f.kE, err = c.Modulus.or(modulus, modulusRange); err != nil {
		return f, err
	}
	if f.σ, f.kσ, err = c.Flexure.or(flexure, strengthRange); err != nil {
		return f, err
	}
	if f.p, f.kp, err = c.Crushing.or(crushing, strengthRange); err != nil {
		return f, err
	}
	switch {
	case math.IsNaN(c.Poisson):
		return f, unknown("Poisson's ratio of the ice")
	case math.IsNaN(c.Foundation):
		return f, unknown("foundation modulus of the water")
	}
	if f.nu == 0 {
		f.nu = 0.33
	}
	if f.k == 0 {
		f.k = 1000 * measure.Gravity
	}
	plate := ice.Plate{Thickness: f.h, E: f.e.Low, Nu: f.nu, Foundation: f.k}
	if f.short, err = plate.CharacteristicLength(); err != nil {
		return f, err
	}
	plate.E = f.e.High
	f.long, err = plate.CharacteristicLength()
	return f, err
}

// bends tells what a level change rests on, pushes what a push does.
func (f cover) bends() []measure.Assumption {
	return []measure.Assumption{f.e.rest(f.kE, measure.Stress), f.σ.rest(f.kσ, measure.Stress)}
}

func (f cover) pushes() []measure.Assumption {
	return append(f.bends(), f.p.rest(f.kp, measure.Stress))
}

// section is the moment per metre, N, at which the ice cracks.
func (f cover) section(σ float64) float64 { return σ * f.h * f.h / 6 }
