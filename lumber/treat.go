package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

var (
	srcField = &measure.Source{
		Title:   "AWPA Standard M4, care of preservative-treated wood; International Residential Code R317.1.1",
		Locator: "field treatment of cuts and holes", Status: measure.Memory,
	}
	srcSpread = &measure.Source{Title: "spread of brushed preservative on end grain", Status: measure.CommonPractice}
)

// coverage is the surface that a volume of preservative covers once on cut ends,
// m² per m³: 100 ft² a US gallon, on the thirsty side. Common practice.
const coverage = 100 * measure.Foot * measure.Foot / measure.USGallon

// A Treatment is what cut ends and bored holes need before they are built in.
type Treatment struct {
	Area   float64         // m²
	Coats  int             // brushed on until no more is taken up
	Volume float64         // m³ of preservative
	Rules  []string        // what, when, where
	Source *measure.Source // of the duty to treat
	Spread *measure.Source // of the quantity
}

// FieldTreatment returns the treatment of an area of cut ends and holes, m², with the
// source of the duty and of the quantity.
// Treated wood is treated in a shell: every cut and hole opens it.
func FieldTreatment(area float64) (Treatment, error) {
	if err := (measure.Range{Kind: measure.Area, Hi: 1e4}).Check("area", area); err != nil {
		return Treatment{}, err
	}
	const coats = 2
	return Treatment{
		Area: area, Coats: coats, Volume: coats * area / coverage,
		Rules: []string{
			"copper naphthenate with 2 % copper (1 % where 2 % is not sold), brushed on cuts, notches and holes",
			"after cutting and before assembly; let each coat soak in and the last one dry",
			"on shore, over a sheet that catches drips: never on the ice or over the water",
			"uncut ends of the pieces go downward or into the ground; cut ends upward",
			"gloves, goggles, air; keep the can's label and what local rules say about water",
		},
		Source: srcField, Spread: srcSpread,
	}, nil
}

// HoleArea returns the wall of a hole bored through wood of a thickness, both in
// m, m²: π d t, exact.
// Within 1.3 units in the last place.
// Worst at (0.04623, 0.1971), ordered as in testdata/accuracy.csv.
func HoleArea(diameter, thickness float64) (float64, error) {
	r := measure.Range{Kind: measure.Length, Hi: 1, OpenLo: true}
	if err := r.Check("diameter", diameter); err != nil {
		return 0, err
	}
	if err := r.Check("thickness", thickness); err != nil {
		return 0, err
	}
	return math.Pi * diameter * thickness, nil
}
