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
			Relative: 4e-15, Carried: true,
			Compute: func() (float64, error) { return value, nil },
		})
	}
	// Shares of a limit by hand: 3 of 4, and 4 asked of what must be at least that and is 3.
	ratio := func(value, limit float64, least bool) func() (float64, error) {
		return func() (float64, error) {
			return measure.Check{Value: value, Limit: limit, AtLeast: least}.Ratio(), nil
		}
	}
	return append(out, share("lumber/measure", exactly("Share of a limit", "value over limit; limit over value where it must be at least that"), 1e-15,
		one{"share of 4 that 3 uses", "0.75", "", ratio(3, 4, false)},
		one{"share of 5 at least that 8 uses", "0.625", "", ratio(8, 5, true)},
		one{"share of 5 at least that 4 uses", "1.25", "", ratio(4, 5, true)},
	)...), nil
}
