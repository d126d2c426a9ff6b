package published

import (
	"fmt"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

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

// lumberDecking checks the table of joist spacings under deck boards.
func lumberDecking() ([]Check, error) {
	table, err := rows("lumber_decking")
	if err != nil {
		return nil, err
	}
	src := measure.Source{
		Title: "International Residential Code", Edition: "2018 and 2021", Locator: "Table R507.7", Status: measure.Quoted,
	}
	var out []Check
	for _, r := range table {
		for _, slanted := range []bool{false, true} {
			column := "square"
			if slanted {
				column = "slanted"
			}
			out = append(out, Check{
				Package: lumberPackage, Source: src, Printed: r[column], Unit: "in", Step: lumberExact, Carried: true,
				Quantity: "joist spacing under a " + r["board"] + ", " + column,
				Compute: func() (float64, error) {
					s, err := lumber.Size(r["board"])
					if err != nil {
						return 0, err
					}
					c, err := lumber.Board{Section: s, Slanted: slanted}.Check(0.1)
					return c.Limit / measure.Inch, err
				},
			})
		}
	}
	return out, nil
}
