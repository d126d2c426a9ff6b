package lumber_test

import (
	"testing"

	"example.org/floewright/internal/ulp"
	"example.org/floewright/lumber"
)

// TestAccuracy compares the closed forms with references of 25 digits
// (independent computation, 50 digits, from the formulas as printed). The bounds
// lie just above what was measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")
	r.Within(4.5, "BeamStability", func(x []float64) (float64, error) {
		f, err := lumber.BeamStability(x[0], x[1], x[2], x[3], x[4])
		return f.Value, err
	})
	r.Within(3, "ColumnStability", func(x []float64) (float64, error) {
		f, err := lumber.ColumnStability(x[0], x[1], x[2])
		return f.Value, err
	})
	section := func(of func(lumber.Section) float64) func(x []float64) (float64, error) {
		return func(x []float64) (float64, error) { return of(lumber.Section{Width: x[0], Depth: x[1]}), nil }
	}
	r.Within(1, "Section.Area", section(lumber.Section.Area))
	r.Within(2, "Section.Modulus", section(lumber.Section.Modulus))
	r.Within(2.5, "Section.Inertia", section(lumber.Section.Inertia))
	r.Within(4.5, "Section.Torsion", section(lumber.Section.Torsion))
	r.Within(4.5, "Section.TorsionModulus", section(lumber.Section.TorsionModulus))
	r.Within(1.5, "Shrinkage width", func(x []float64) (float64, error) {
		w, _, err := lumber.Shrinkage(x[0])
		return w, err
	})
	r.Within(1.5, "Shrinkage thickness", func(x []float64) (float64, error) {
		_, d, err := lumber.Shrinkage(x[0])
		return d, err
	})
	r.Within(1, "Gap", func(x []float64) (float64, error) { return lumber.Gap(x[0], x[1], x[2], x[3]) })
	r.Within(3.5, "Density", func(x []float64) (float64, error) { return lumber.Density(x[0], x[1]) })
	r.Within(4, "PoreFull moisture", func(x []float64) (float64, error) {
		m, _, err := lumber.PoreFull(x[0])
		return m, err
	})
	r.Within(2.5, "PoreFull density", func(x []float64) (float64, error) {
		_, d, err := lumber.PoreFull(x[0])
		return d, err
	})
	r.Within(1, "ShearRelief", func(x []float64) (float64, error) { return lumber.ShearRelief(x[0], x[1], x[2], x[3]) })
	r.Within(2, "HoleArea", func(x []float64) (float64, error) { return lumber.HoleArea(x[0], x[1]) })
}
