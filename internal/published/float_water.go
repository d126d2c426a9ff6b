package published

import (
	"fmt"
	"math"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// cited returns the check that a row of a table describes, without its Compute:
// title, edition, locator and status make the source; because and within, where
// the table has them, a known deviation.
func (r row) cited(pkg, quantity string) (Check, error) {
	st, err := status(r["status"])
	if err != nil {
		return Check{}, fmt.Errorf("%s: %w", quantity, err)
	}
	c := Check{
		Package: pkg, Quantity: quantity, Printed: r["printed"], Unit: r["unit"],
		Source:  measure.Source{Title: r["title"], Edition: r["edition"], Locator: r["locator"], Status: st},
		Because: r["because"],
	}
	if c.Because != "" {
		c.Within, err = r.num("within")
	}
	return c, err
}

// floatWaterChecks compares the density of water.
func floatWaterChecks() ([]Check, error) {
	table, err := rows("float_water")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		x, err := r.nums("temperature", "salinity")
		if err != nil {
			return nil, err
		}
		c, err := r.cited("float", fmt.Sprintf("density at %g %s, salinity %g", x[0], r["scale"], x[1]))
		if err != nil {
			return nil, err
		}
		w := float.Water{Celsius: x[0], Salinity: x[1]}
		switch r["scale"] {
		case "degF":
			w.Celsius = measure.Fahrenheit(x[0])
		case "IPTS-68":
			w.Celsius = x[0] / 1.00024
		}
		if r["kind"] == "sea" {
			w.Salinity = math.Max(w.Salinity, 1e-9) // 0 would be fresh water's own formula
		}
		unit := 1.0
		if r["unit"] == "lb/ft3" {
			unit = measure.PCF
		}
		c.Compute = func() (float64, error) {
			rho, err := w.Density()
			return rho / unit, err
		}
		out = append(out, c)
	}
	return out, nil
}

// floatDrumChecks compares the presets with the figures of the trade.
func floatDrumChecks() ([]Check, error) {
	table, err := rows("float_drums")
	if err != nil {
		return nil, err
	}
	units := map[string]float64{
		"L": measure.Litre, "gal": measure.USGallon, "lb": measure.Pound, "kg": 1,
		"in": measure.Inch, "cm": 0.01, "mm": measure.Millimetre,
	}
	var out []Check
	for _, r := range table {
		c, err := r.cited("float", r["quantity"]+" of "+r["preset"])
		if err != nil {
			return nil, err
		}
		unit, ok := units[r["unit"]]
		if !ok {
			return nil, fmt.Errorf("float_drums: no unit %q", r["unit"])
		}
		c.Carried = r["quantity"] != "inside volume"
		c.Compute = func() (float64, error) {
			d, err := float.LookupDrum(r["preset"])
			if err != nil {
				return 0, err
			}
			switch r["quantity"] {
			case "mass":
				return d.Mass.Value / unit, nil
			case "outside diameter":
				return d.Diameter.Value / unit, nil
			case "outside height":
				return d.Length.Value / unit, nil
			case "inside volume":
				return insideVolume(d) / unit, nil
			}
			return 0, fmt.Errorf("float_drums: no quantity %q", r["quantity"])
		}
		out = append(out, c)
	}
	return out, nil
}

// insideVolume takes the sheet of a steel drum, 0.9 mm round the body and 1.2 mm
// in the heads, off its outside size. The 30 gal row gives its displacement
// outright; its sheet is 11.8 kg of steel.
func insideVolume(d float.Drum) float64 {
	if d.Name == "30 gal steel" {
		return d.Displacement.Value - d.Mass.Value/7850
	}
	across := d.Diameter.Value - 2*0.9e-3
	return math.Pi / 4 * across * across * (d.Length.Value - 2*1.2e-3)
}

// floatSealChecks compares the pressure in a sealed drum.
func floatSealChecks() ([]Check, error) {
	table, err := rows("float_seal")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		x, err := r.nums("closed", "now", "depth")
		if err != nil {
			return nil, err
		}
		quantity := fmt.Sprintf("%s in a drum closed at %g °C, now %g °C, %g m deep", r["quantity"], x[0], x[1], x[2])
		c, err := r.cited("float", quantity)
		if err != nil {
			return nil, err
		}
		s := float.Seal{Celsius: x[0], Dry: r["dry"] == "yes"}
		c.Compute = func() (float64, error) {
			switch r["quantity"] {
			case "squeeze":
				return s.Squeeze(x[1], x[2], 1000)
			case "vapour":
				return vapour(x[0], x[1])
			}
			return s.Pressure(x[1])
		}
		out = append(out, c)
	}
	return out, nil
}

// vapour returns the saturation pressure at the temperature now, as what damp air
// adds to dry air in a drum closed at -60 °C, where the vapour's pressure is
// 1.08 Pa (from memory).
func vapour(closed, now float64) (float64, error) {
	damp, err := float.Seal{Celsius: closed}.Pressure(now)
	if err != nil {
		return 0, err
	}
	dry, err := float.Seal{Celsius: closed, Dry: true}.Pressure(now)
	return damp - dry + 1.08*(now+273.15)/(closed+273.15), err
}
