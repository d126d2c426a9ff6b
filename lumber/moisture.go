package lumber

import (
	"example.org/floewright/lumber/measure"
)

// Moisture contents, as shares of the oven-dry weight.
const (
	asBought   = 0.19 // surfaced dry, or treated and dried again
	damp       = 0.60 // treated lumber in service on the water: our choice
	saturation = 0.30 // fibre saturation, where wood stops swelling
	substance  = 1.54 // specific gravity of wood substance
	water      = 62.4 // lb/ft³, as the source prints it
)

var (
	srcDensity = supplement("3.1.3", measure.Quoted)
	srcFull    = &measure.Source{
		Title: "Wood Handbook (Forest Products Laboratory, FPL-GTR-190)", Edition: "2010",
		Locator: "chapter 4, maximum moisture content", Status: measure.Memory,
	}
	gravities = measure.Range{Lo: 0.2, Hi: 0.9, Source: srcDensity}
)

// Density returns the density of wood, kg/m³, from its specific gravity G (oven
// dry weight and volume, 0.2 to 0.9) and its moisture content m, a share of the dry
// weight as [measure.Percent] parses it, 0.19 for 19 %:
//
//	ρ = 62.4 lb/ft³ · G/(1 + 0.9 G m) · (1 + m)
//
// Above fibre saturation the volume stops growing: m is held at 0.30 in the
// denominator. m ends where the pores are full ([PoreFull]). NDS Supplement 3.1.3. Within 3.2 units in the last place.
// Worst at (0.319, 0.5007), ordered as in testdata/accuracy.csv.
func Density(g, moisture float64) (float64, error) {
	full, _, err := PoreFull(g)
	if err != nil {
		return 0, err
	}
	r := measure.Range{Kind: measure.Percent, Hi: full * (1 + 1e-9), Source: srcFull}
	if err := r.Check("moisture content", moisture); err != nil {
		return 0, err
	}
	swollen := min(moisture, saturation)
	return water * measure.PCF * g / (1 + float64(0.9*g*swollen)) * (1 + moisture), nil
}

// PoreFull returns the moisture content, a share of the dry weight, at which the pores
// of a wood are full of water, and its density then, kg/m³, always above that of water:
//
//	Gb = G/(1 + 0.27 G),  m = (1.54 - Gb)/(1.54 Gb)
//
// Wood Handbook, chapter 4. Within 3.6 units in the last place.
// Worst at (0.8152), ordered as in testdata/accuracy.csv.
func PoreFull(g float64) (moisture, density float64, err error) {
	if err := gravities.Check("specific gravity", g); err != nil {
		return 0, 0, err
	}
	basic := g / (1 + float64(0.9*saturation*g))
	moisture = (substance - basic) / (substance * basic)
	return moisture, water * measure.PCF * basic * (1 + moisture), nil
}
