package published

import (
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// lumberSizes checks the dressed sizes and what follows from them.
func lumberSizes() ([]Check, error) {
	table, err := rows("lumber_sizes")
	if err != nil {
		return nil, err
	}
	ps20 := measure.Source{Title: "American Softwood Lumber Standard PS 20", Locator: "dressed sizes", Status: measure.Quoted}
	worked := independent("Section properties", "b d, b d²/6, b d³/12")
	const in = measure.Inch
	var out []Check
	for _, r := range table {
		for _, c := range []struct {
			column, unit string
			source       measure.Source
			compute      func(dry, green lumber.Section) float64
		}{
			{"b_dry", "in", ps20, func(d, _ lumber.Section) float64 { return d.Width / in }},
			{"d_dry", "in", ps20, func(d, _ lumber.Section) float64 { return d.Depth / in }},
			{"b_green", "in", ps20, func(_, g lumber.Section) float64 { return g.Width / in }},
			{"d_green", "in", ps20, func(_, g lumber.Section) float64 { return g.Depth / in }},
			{"A", "in²", worked, func(d, _ lumber.Section) float64 { return d.Area() / (in * in) }},
			{"Sx", "in³", worked, func(d, _ lumber.Section) float64 { return d.Modulus() / (in * in * in) }},
			{"Ix", "in⁴", worked, func(d, _ lumber.Section) float64 { return d.Inertia() / (in * in * in * in) }},
			{"Sy", "in³", worked, func(d, _ lumber.Section) float64 { return d.Turned().Modulus() / (in * in * in) }},
			{"Iy", "in⁴", worked, func(d, _ lumber.Section) float64 { return d.Turned().Inertia() / (in * in * in * in) }},
		} {
			out = append(out, Check{
				Package: lumberPackage, Quantity: r["nominal"] + " " + c.column, Source: c.source,
				Printed: r[c.column], Unit: c.unit, Carried: c.source.Status == measure.Quoted,
				Compute: func() (float64, error) {
					dry, err := lumber.Size(r["nominal"])
					if err != nil {
						return 0, err
					}
					green, err := lumber.GreenSize(r["nominal"])
					return c.compute(dry, green), err
				},
			})
		}
		out = append(out, Check{
			Package: lumberPackage, Quantity: r["nominal"] + " board feet a foot",
			Source: independent("Board measure", "nominal inches times nominal inches over 12"), Printed: r["bf"], Unit: "bf/ft",
			Compute: func() (float64, error) { return lumber.BoardFeet(r["nominal"], measure.Foot) },
		})
	}
	return out, nil
}

// lumberTorsion checks the torsion constant and the torsion modulus.
func lumberTorsion() ([]Check, error) {
	table, err := rows("lumber_torsion")
	if err != nil {
		return nil, err
	}
	series := independent("Saint-Venant's series for the torsion of rectangles", "summed at high precision")
	book := measure.Source{Title: "Textbooks on strength of materials", Locator: "appendix table of torsion of rectangles", Status: measure.Read}
	var out []Check
	for _, r := range table {
		ratio, err := r.num("ratio")
		if err != nil {
			return nil, err
		}
		const t = 0.038
		s := lumber.Section{Width: t, Depth: ratio * t}
		beta := func() (float64, error) { return s.Torsion() / (ratio * t * t * t * t), nil }
		at := " at b/t = " + r["ratio"]
		out = append(
			out,
			Check{Package: lumberPackage, Quantity: "torsion constant J/bt³" + at, Source: series, Printed: r["beta"], Compute: beta},
			Check{
				Package: lumberPackage, Quantity: "torsion modulus T/τbt²" + at, Source: series, Printed: r["alpha"],
				Compute: func() (float64, error) { return s.TorsionModulus() / (ratio * t * t * t), nil },
			},
		)
		if r["printed"] != "" {
			out = append(out, Check{Package: lumberPackage, Quantity: "torsion constant J/bt³" + at, Source: book, Printed: r["printed"], Compute: beta})
		}
	}
	return out, nil
}
