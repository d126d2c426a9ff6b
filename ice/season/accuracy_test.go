package season_test

import (
	"testing"

	"example.org/floewright/ice/season"
	"example.org/floewright/internal/ulp"
)

// TestAccuracy compares the closed forms with references of 25 digits
// (independent computation, 50 digits, from the formulas as printed). The bounds
// lie just above what was measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")
	r.Within(2, "Rule.Thickness", func(x []float64) (float64, error) {
		h, _, err := season.Rule{Lo: x[0], Hi: x[0]}.Thickness(x[1])
		return h, err
	})
	r.Within(1.5, "AlphaOf", func(x []float64) (float64, error) { return season.AlphaOf(x[0], x[1]) })
	r.Within(3, "Growth.Thickness", func(x []float64) (float64, error) {
		g := season.Ashton()
		g.Exchange, g.SnowDepth, g.SnowConductivity = x[2], x[3], x[4]
		return g.Thickness(x[0], x[1])
	})
	r.Within(2, "Growth.Ideal", func(x []float64) (float64, error) { return season.Ashton().Ideal(x[0]) })
	r.Within(14, "Sun", func(x []float64) (float64, error) { return season.Sun(x[0], int(x[1])) })
}
