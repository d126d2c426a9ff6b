package ice_test

import (
	"testing"

	"example.org/floewright/ice"
	"example.org/floewright/internal/ulp"
	"example.org/floewright/lumber/measure"
)

// TestAccuracy compares the closed forms with references of 25 digits
// (independent computation, 50 digits; the plate from Bessel functions of complex
// argument). The bounds lie just above what was measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")
	plate := func(x []float64) ice.Plate { return ice.Plate{Thickness: x[0], E: x[1], Nu: x[2]} }
	r.Within(3, "Plate.Rigidity", func(x []float64) (float64, error) { return plate(x).Rigidity() })
	r.Within(1.5, "Plate.CharacteristicLength", func(x []float64) (float64, error) { return plate(x).CharacteristicLength() })
	r.Within(4.5, "Plate.EdgeDeflection", func(x []float64) (float64, error) {
		w, _, err := plate(x).EdgeDeflection(x[3])
		return w, err
	})
	r.Within(3.5, "Plate.FictitiousRadius", func(x []float64) (float64, error) {
		a, _, err := ice.Plate{Thickness: x[0], E: 5e9}.FictitiousRadius(x[1])
		return a, err
	})
	at := func(x []float64) (ice.Bend, error) {
		p := plate(x)
		p.Thin = true
		return p.At([]ice.Patch{{A: x[3], Force: 1000}}, x[4], 0)
	}
	r.Within(8.5, "Bowl.At deflection", func(x []float64) (float64, error) {
		b, err := at(x)
		return b.Deflection, err
	})
	r.Within(15.5, "Bowl.At radial moment", func(x []float64) (float64, error) {
		b, err := at(x)
		return b.Mx, err
	})
	r.Within(14, "Bowl.At tangential moment", func(x []float64) (float64, error) {
		b, err := at(x)
		return b.My, err
	})
	r.Within(4, "Breakthrough wedges", func(x []float64) (float64, error) {
		b, err := plate(x).Breakthrough(ice.Patch{A: x[3]}, x[4], int(x[5]))
		return b.Wedges, err
	})
	r.Within(3.5, "Wave.Speed", func(x []float64) (float64, error) {
		return ice.Wave{Plate: plate(x), Depth: x[3]}.Speed(x[4])
	})
	r.Within(8, "Creep.Strain", func(x []float64) (float64, error) {
		s, _, err := ice.Creep{Temperature: x[0], Grain: x[1]}.Strain(x[2], x[3])
		return s, err
	})
	cover := func(x []float64) ice.Cover {
		return ice.Cover{Ice: x[0], Snow: x[1], IceDensity: x[2], SnowDensity: x[3]}
	}
	r.Within(1, "Cover.Freeboard", func(x []float64) (float64, error) { return cover(x).Freeboard() })
	r.Within(1.5, "Cover.MostSnow", func(x []float64) (float64, error) { return cover(x).MostSnow() })
	r.Within(3, "Cover.Slush", func(x []float64) (float64, error) { return cover(x).Slush(x[4]) })
	r.Within(1.5, "MeltIn", func(x []float64) (float64, error) { return ice.MeltIn(x[0], x[1]) })
	r.Within(1, "Class.Thickness", func(x []float64) (float64, error) {
		return ice.Class{Name: "invented", A: x[0], Source: &measure.Source{Title: "invented"}}.Thickness(x[1])
	})
}
