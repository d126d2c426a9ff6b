package published

import (
	"fmt"

	"example.org/floewright/lumber/measure"
)

// unitValues maps the units of data/units.csv to the constants that hold them.
var unitValues = map[string]float64{
	"standard gravity":           measure.Gravity,
	"foot":                       measure.Foot,
	"inch":                       measure.Inch,
	"pound":                      measure.Pound,
	"pound-force":                measure.PoundForce,
	"US gallon":                  measure.USGallon,
	"imperial gallon":            measure.ImperialGallon,
	"psf":                        measure.PSF,
	"psi":                        measure.PSI,
	"lb/ft3":                     measure.PCF,
	"lbf/ft":                     measure.PLF,
	"kip":                        measure.Kip,
	"short ton":                  measure.Ton,
	"mph":                        measure.MPH,
	"knot":                       measure.Knot,
	"kgf":                        measure.KilogramForce,
	"kPa in psf":                 measure.Kilopascal / measure.PSF,
	"1000 kg/m3 in lb/ft3":       1000 / measure.PCF,
	"1000 kg/m3 in lb/US gal":    1000 * measure.USGallon / measure.Pound,
	"US gallons in a cubic foot": measure.Foot * measure.Foot * measure.Foot / measure.USGallon,
	"185 lb":                     185 * measure.Pound,
	"400 lb":                     400 * measure.Pound,
}

func measureChecks() ([]Check, error) {
	table, err := rows("units")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		value, ok := unitValues[r["unit"]]
		if !ok {
			return nil, fmt.Errorf("units: no constant for %q", r["unit"])
		}
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		out = append(out, Check{
			Package:  "lumber/measure",
			Quantity: r["unit"] + " in " + r["into"],
			Source:   measure.Source{Title: "Definitions of the units", Edition: "international yard and pound 1959; 3rd CGPM 1901", Status: st},
			Printed:  r["printed"], Unit: r["into"],
			Relative: 4e-15,
			Compute:  func() (float64, error) { return value, nil },
		})
	}
	return out, nil
}
