package published

import (
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// lumberColumns checks the column stability factor on a table of column loads.
func lumberColumns() ([]Check, error) {
	table, err := rows("lumber_columns")
	if err != nil {
		return nil, err
	}
	src := measure.Source{
		Title: "Peurifoy and Oberlender, Formwork for Concrete Structures", Edition: "4th ed.", Locator: "Table 5-5, p. 133", Status: measure.Read,
	}
	var out []Check
	for _, r := range table {
		x, err := r.nums("FcStar", "Emin", "le")
		if err != nil {
			return nil, err
		}
		c := Check{
			Package: lumberPackage, Source: src, Printed: r["printed"], Unit: "lbf",
			Quantity: "column load, " + r["size"] + ", Fc* " + r["FcStar"] + " psi, " + r["le"] + " ft",
			Compute: func() (float64, error) {
				s, err := lumber.Size(r["size"])
				if err != nil {
					return 0, err
				}
				f, err := lumber.ColumnStability(x[0]*measure.PSI, x[1]*measure.PSI, x[2]*measure.Foot/s.Width)
				return f.Value * x[0] * measure.PSI * s.Area() / measure.PoundForce, err
			},
		}
		if err := r.deviation(&c); err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// lumberLengths checks the table of effective lengths, coefficient by
// coefficient.
func lumberLengths() ([]Check, error) {
	table, err := rows("lumber_lengths")
	if err != nil {
		return nil, err
	}
	src := measure.Source{Title: "NDS", Edition: "2018", Locator: "Table 3.3.3", Status: measure.Quoted}
	const d = 0.2
	le := func(loading string, depths float64) (float64, error) {
		x, err := lumber.EffectiveLength(loading, depths*d, d)
		return x / d, err
	}
	var out []Check
	for _, r := range table {
		add := func(column, what string, compute func() (float64, error)) {
			out = append(out, Check{
				Package: lumberPackage, Quantity: "effective length, " + what + " (" + r["loading"] + ")", Source: src,
				Printed: r[column], Compute: compute, Carried: true, // the coefficients, read back
			})
		}
		add("low", "le/lu at lu/d = 6.9", func() (float64, error) {
			x, err := le(r["loading"], 6.9)
			return x / 6.9, err
		})
		add("high", "slope of le/lu between lu/d = 7 and 14", func() (float64, error) {
			a, err := le(r["loading"], 7)
			if err != nil {
				return 0, err
			}
			b, err := le(r["loading"], 14)
			return (b - a) / 7, err
		})
		add("depths", "depths added to le at lu/d = 7", func() (float64, error) {
			a, err := le(r["loading"], 7)
			if err != nil {
				return 0, err
			}
			b, err := le(r["loading"], 14)
			return 2*a - b, err
		})
		if r["slender"] != "" {
			add("slender", "le/lu at lu/d = 14.4", func() (float64, error) {
				x, err := le(r["loading"], 14.4)
				return x / 14.4, err
			})
		}
	}
	return out, nil
}
