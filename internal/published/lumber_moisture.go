package published

import (
	"fmt"
	"strconv"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// lumberDensity checks densities by moisture content.
func lumberDensity() ([]Check, error) {
	table, err := rows("lumber_density")
	if err != nil {
		return nil, err
	}
	book := measure.Source{Title: "Wood Structural Design Data (American Wood Council)", Edition: "1992", Locator: "weights at 15 %", Status: measure.Read}
	worked := independent("NDS Supplement 3.1.3", "62.4 G/(1 + 0.009 G m)(1 + m/100), m held at 30 below the line")
	var out []Check
	for _, r := range table {
		g, err := r.num("G")
		if err != nil {
			return nil, err
		}
		for _, column := range []string{"printed", "0", "12", "15", "19", "30", "40", "60", "80", "100"} {
			m, src := 15.0, book
			if column != "printed" {
				src = worked
				if m, err = strconv.ParseFloat(column, 64); err != nil {
					return nil, err
				}
			}
			printed := r[column]
			out = append(out, Check{
				Package: lumberPackage, Quantity: fmt.Sprintf("density of %s at %g %%", r["species"], m), Source: src,
				Printed: printed, Unit: "lb/ft³", Step: lumberStep(column),
				Compute: func() (float64, error) {
					rho, err := lumber.Density(g, m/100)
					return rho / measure.PCF, err
				},
			})
		}
	}
	return out, nil
}

// step restores the rounding step of columns that lost trailing zeros: the
// book's weights have one decimal, the computed ones two.
func lumberStep(column string) float64 {
	if column == "printed" {
		return 0.1
	}
	return 0.01
}

// lumberPoreFull checks the wettest state of wood.
func lumberPoreFull() ([]Check, error) {
	table, err := rows("lumber_porefull")
	if err != nil {
		return nil, err
	}
	src := independent("Wood Handbook, chapter 4", "100 (1.54 - Gb)/(1.54 Gb)")
	var out []Check
	for _, r := range table {
		basic, err := r.num("basic")
		if err != nil {
			return nil, err
		}
		g := basic / (1 - 0.27*basic)
		out = append(
			out,
			Check{
				Package: lumberPackage, Quantity: "moisture of " + r["species"] + ", pores full", Source: src, Printed: r["moisture"], Unit: "%", Step: 0.1,
				Compute: func() (float64, error) {
					m, _, err := lumber.PoreFull(g)
					return 100 * m, err
				},
			},
			Check{
				Package: lumberPackage, Quantity: "density of " + r["species"] + ", pores full", Source: src, Printed: r["density"], Unit: "lb/ft³", Step: 0.01,
				Compute: func() (float64, error) {
					_, rho, err := lumber.PoreFull(g)
					return rho / measure.PCF, err
				},
			},
		)
	}
	return out, nil
}
