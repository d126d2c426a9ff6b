package ice

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Plate is a floating sheet as a thin elastic plate of wide extent on water:
// for loads of seconds to minutes on sound ice. It says how the sheet bends; it
// is no rule for what may stand on it.
//
//	D ∇⁴w + k w = q,  D = E h³/(12 (1 - ν²)),  l = (D/k)^¼
//
// Sources: H. Hertz 1884; M. Wyman, Canadian Journal of Research, 1950 (circular
// load; from memory, checked against independent integration).
type Plate struct {
	Thickness  float64 // h, m
	E          float64 // modulus, Pa; the shorter the load, the higher
	Nu         float64 // Poisson's ratio, 0.33 for ice
	Foundation float64 // k = ρ g of the water, N/m³; 0 is fresh water at standard gravity

	// Thin leaves out the correction of stresses under patches that are small
	// beside the thickness.
	Thin bool
}

// The ranges of a plate are those of ice, with room.
var (
	rangeE          = measure.Range{Kind: measure.Stress, Lo: 1e6, Hi: 2e10, Source: own("ice, from creep over weeks to sound waves")}
	rangeNu         = measure.Range{Lo: 0, Hi: 0.5, OpenHi: true, Source: own("elastic solids")}
	rangeFoundation = measure.Range{Kind: measure.Density, Lo: 5000, Hi: 15000, Source: own("water")}
)

// foundation is k in N/m³.
func (p Plate) foundation() float64 {
	if p.Foundation == 0 {
		return freshWater * measure.Gravity
	}
	return p.Foundation
}

func (p Plate) check() error {
	if err := openThickness(sizeRange).Check("thickness of the plate", p.Thickness); err != nil {
		return err
	}
	if err := rangeE.Check("modulus E of the plate", p.E); err != nil {
		return err
	}
	if err := rangeNu.Check("Poisson's ratio of the plate", p.Nu); err != nil {
		return err
	}
	if err := (measure.Range{Lo: rangeFoundation.Lo, Hi: rangeFoundation.Hi, Source: rangeFoundation.Source}).Check("foundation modulus in N/m³", p.foundation()); err != nil {
		return err
	}
	return nil
}

// Rigidity returns D = E h³/[12 (1 - ν²)] in N·m, thin-plate theory. Within 3.0 units in
// the last place.
// Worst at (0.02126, 1.483e+08, 0.1997), ordered as in testdata/accuracy.csv.
func (p Plate) Rigidity() (float64, error) {
	if err := p.check(); err != nil {
		return math.NaN(), err
	}
	return p.rigidity(), nil
}

func (p Plate) rigidity() float64 {
	return p.E * p.Thickness * p.Thickness * p.Thickness / (12 * (1 - float64(p.Nu*p.Nu)))
}

// CharacteristicLength returns l = ∜(D/k) in m (Hertz 1884). Loads within 4
// l of each other deepen each other's bowl and count together; a single load's bowl ends
// at 3.915 l. Within 1.5 units in the last place.
// Worst at (0.1506, 8.246e+09, 0.1039), ordered as in testdata/accuracy.csv.
func (p Plate) CharacteristicLength() (float64, error) {
	if err := p.check(); err != nil {
		return math.NaN(), err
	}
	return p.length(), nil
}

func (p Plate) length() float64 { return math.Sqrt(math.Sqrt(p.rigidity() / p.foundation())) }

// freeEdge is the deflection of a load at a free edge.
var freeEdge = &measure.Source{Title: "H. M. Westergaard, plates on a dense liquid, load at a free edge", Status: measure.Memory}

// EdgeDeflection returns the deflection in m under a concentrated force in N at
// a straight free edge, 0.408 (1 + 0.4 ν) P/(k l²), 3.3 to 3.9 times that
// within the sheet, and its source: the figure is from memory. The half plane by
// Fourier's integral gives 1.6 % more at ν = 0.33 (independent computation). Within
// 3.7 units in the last place.
// Worst at (0.07763, 4.007e+08, 0.272, 3308), ordered as in testdata/accuracy.csv.
func (p Plate) EdgeDeflection(force float64) (float64, *measure.Source, error) {
	if err := p.check(); err != nil {
		return math.NaN(), freeEdge, err
	}
	if err := rangeForce.Check("force", force); err != nil {
		return math.NaN(), freeEdge, err
	}
	l := p.length()
	return 0.408 * (1 + 0.4*p.Nu) * force / (p.foundation() * l * l), freeEdge, nil
}

var rangeForce = measure.Range{Kind: measure.Force, Lo: 0, Hi: 1e7, OpenLo: true, Source: sizeRange}

// westergaard is the correction for patches that are small beside the
// thickness.
var westergaard = &measure.Source{
	Title:   "H. M. Westergaard, as used by Nevel, Journal of Glaciology, Concentrated loads on a floating ice sheet",
	Locator: "fictitious radius", Status: measure.Memory,
}

// FictitiousRadius returns the radius in m that replaces the radius a of a
// circular patch for stresses, and its source: √(1.6 a² + h²) - 0.675 h below
// a = 1.724 h, a above. Thin-plate theory alone makes the stress under a point
// infinite. Within 2.6 units in the last place, worst for small patches.
// Worst at (0.3479, 0.006835), ordered as in testdata/accuracy.csv.
func (p Plate) FictitiousRadius(a float64) (float64, *measure.Source, error) {
	if err := p.check(); err != nil {
		return math.NaN(), westergaard, err
	}
	if err := rangeSide.Check("radius", a); err != nil {
		return math.NaN(), westergaard, err
	}
	return p.stressRadius(a), westergaard, nil
}

func (p Plate) stressRadius(a float64) float64 {
	h := p.Thickness
	if p.Thin || a >= 1.724*h {
		return a
	}
	// Less 0.675 h, without a difference: 1 - 0.675² = 0.544375.
	return (1.6*a*a + 0.544375*h*h) / (math.Sqrt(1.6*a*a+h*h) + 0.675*h)
}

// A Bend is the state of the plate at a point: deflection in m, down; moments
// per metre in N, positive with tension below.
type Bend struct{ Deflection, Mx, My, Mxy float64 }

// Principal returns the greater and the smaller principal moment, both in N, exact.
func (b Bend) Principal() (greater, smaller float64) {
	mean, half := (b.Mx+b.My)/2, math.Hypot((b.Mx-b.My)/2, b.Mxy)
	return mean + half, mean - half
}

// Stress returns the greatest tension at the point in Pa, 6 M/h² by thin-plate
// theory, below or above: 0 where neither face is in tension.
func (p Plate) Stress(b Bend) (float64, error) {
	if err := p.check(); err != nil {
		return math.NaN(), err
	}
	greater, smaller := b.Principal()
	s := 6 * math.Max(math.Max(greater, -smaller), 0) / (p.Thickness * p.Thickness)
	if math.IsNaN(s) || math.IsInf(s, 0) {
		return math.NaN(), unknown("moments", "not finite")
	}
	return s, nil
}
