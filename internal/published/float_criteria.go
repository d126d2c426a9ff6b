package published

import (
	"fmt"
	"math"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// floatCriteriaChecks compares the criteria with what their sources print: limit,
// load, which side is good, whether the row is in the default set, and the status.
func floatCriteriaChecks() ([]Check, error) {
	table, err := rows("float_criteria")
	if err != nil {
		return nil, err
	}
	units := map[string]float64{
		"psf": measure.PSF, "kPa": measure.Kilopascal, "lb": measure.Pound, "kg": 1, "in": measure.Inch,
		"ft": measure.Foot, "mm": measure.Millimetre, "m": 1, "deg": math.Pi / 180, "": 1,
	}
	var out []Check
	for _, r := range table {
		c, err := r.cited("float", fmt.Sprintf("%s of %q", r["field"], r["name"]))
		if err != nil {
			return nil, err
		}
		unit, ok := units[r["unit"]]
		if !ok {
			return nil, fmt.Errorf("float_criteria: no unit %q", r["unit"])
		}
		converted := c.Source.Status == measure.Independent
		c.Compute = func() (float64, error) {
			row, err := float.LookupCriterion(r["name"])
			if err != nil {
				return 0, err
			}
			if row.AtLeast != (r["atleast"] == "yes") || row.Default != (r["default"] == "yes") {
				return 0, fmt.Errorf("at least %v, default %v", row.AtLeast, row.Default)
			}
			if !converted && row.Source.Status != c.Source.Status {
				return 0, fmt.Errorf("status %v, want %v", row.Source.Status, c.Source.Status)
			}
			value, ok := map[string]float64{"limit": row.Limit, "mass": row.Mass, "inset": row.Inset, "above": row.Above}[r["field"]]
			if !ok {
				return 0, fmt.Errorf("no field %q", r["field"])
			}
			return value / unit, nil
		}
		out = append(out, c)
	}
	return carried(out...), nil
}
