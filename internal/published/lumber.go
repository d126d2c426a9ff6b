package published

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

const lumberPackage = "lumber"

// lumberChecks gathers the checks of package lumber, one function per table.
func lumberChecks() ([]Check, error) {
	var all []Check
	for _, set := range []func() ([]Check, error){
		lumberSizes, lumberTorsion, lumberFactors, lumberLengths, lumberColumns, lumberExamples,
		lumberJoists, lumberDeckJoists, lumberDeckBeams, lumberBoards, lumberDensity, lumberPoreFull,
	} {
		checks, err := set()
		if err != nil {
			return nil, fmt.Errorf("lumber: %w", err)
		}
		all = append(all, checks...)
	}
	return all, nil
}

// lumberSource returns a source with the status of a table's word.
func lumberSource(title, edition, locator, word string) (measure.Source, error) {
	st, err := status(word)
	return measure.Source{Title: title, Edition: edition, Locator: locator, Status: st}, err
}

// deviation sets a row's own limit where the table has one.
func (r row) deviation(c *Check) error {
	c.Because = r["because"]
	if c.Because == "" {
		return nil
	}
	within, err := r.num("within")
	c.Within = within
	return err
}

// nums returns several columns as numbers.
func (r row) nums(columns ...string) ([]float64, error) {
	out := make([]float64, len(columns))
	for i, c := range columns {
		x, err := r.num(c)
		if err != nil {
			return nil, err
		}
		out[i] = x
	}
	return out, nil
}

// independent is the status of values computed by another program.
func independent(title, locator string) measure.Source {
	return measure.Source{Title: title, Locator: locator, Status: measure.Independent}
}

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
				Printed: r[c.column], Unit: c.unit,
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
				Printed: r[column], Compute: compute,
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
				Printed: printed, Unit: "lb/ft³", Step: step(column),
				Compute: func() (float64, error) {
					rho, err := lumber.Density(g, m)
					return rho / measure.PCF, err
				},
			})
		}
	}
	return out, nil
}

// step restores the rounding step of columns that lost trailing zeros: the
// book's weights have one decimal, the computed ones two.
func step(column string) float64 {
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
					return m, err
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

// lumberBoards checks stress and deflection of deck boards under a point load.
func lumberBoards() ([]Check, error) {
	table, err := rows("lumber_boards")
	if err != nil {
		return nil, err
	}
	src := independent("Beams of one to three equal spans", "point load at mid span")
	var out []Check
	for _, r := range table {
		x, err := r.nums("spacing", "force", "spans")
		if err != nil {
			return nil, err
		}
		under := func() (stress, deflection float64, err error) {
			s, err := lumber.Size(r["board"])
			if err != nil {
				return 0, 0, err
			}
			return lumber.Board{Section: s}.Under(x[1]*measure.PoundForce, x[0]*measure.Inch, int(x[2]), r["inner"] != "", 1.26e6*measure.PSI)
		}
		name := fmt.Sprintf("%s under %g lbf, %g spans of %g in. %s", r["board"], x[1], x[2], x[0], strings.Repeat("(inner)", len(r["inner"])/3))
		out = append(
			out,
			Check{
				Package: lumberPackage, Quantity: "stress of a " + name, Source: src, Printed: r["stress"], Unit: "psi", Step: 0.1,
				Compute: func() (float64, error) {
					s, _, err := under()
					return s / measure.PSI, err
				},
			},
			Check{
				Package: lumberPackage, Quantity: "deflection of a " + name, Source: src, Printed: r["deflection"], Unit: "in", Step: 0.00001,
				Compute: func() (float64, error) {
					_, d, err := under()
					return d / measure.Inch, err
				},
			},
		)
	}
	return out, nil
}

// psiOf returns a value of one's own, for examples that give a stress.
func psiOf(x float64) lumber.Value {
	return lumber.Value{Printed: x, Unit: measure.PSI, Source: &measure.Source{Title: "the example", Status: measure.Read}}
}

// safe is the square root for spans by bending.
func safe(x float64) float64 { return math.Sqrt(math.Max(0, x)) }
