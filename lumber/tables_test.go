package lumber_test

import (
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// TestRows walks every row of the tables of design values.
func TestRows(t *testing.T) {
	rows := lumber.Grades()
	if len(rows) < 170 {
		t.Fatalf("%d rows, want the tables whole", len(rows))
	}
	for _, g := range rows {
		name := g.Table + " " + g.Species + " " + g.Name
		for symbol, v := range map[string]lumber.Value{
			"Fb": g.Fb, "Ft": g.Ft, "Fv": g.Fv, "FcPerp": g.FcPerp, "Fc": g.Fc, "E": g.E, "Emin": g.Emin, "G": g.G,
		} {
			unit := measure.PSI
			if symbol == "G" {
				unit = 1
			}
			switch {
			case v.Source == nil || v.Source.Locator == "" || v.Source.Status == measure.Unstated:
				t.Errorf("%s %s: no source, place or status", name, symbol)
			case v.Unit != unit:
				t.Errorf("%s %s: unit %g", name, symbol, v.Unit)
			case !(v.Printed > 0):
				t.Errorf("%s %s: %g", name, symbol, v.Printed)
			}
		}
		// NDS Appendix D: Emin = 1.03 E (1 - 1.645 × 0.25)/1.66, to 10,000 psi.
		if want := math.Round(0.3652*g.E.Printed/1e4) * 1e4; g.Emin.Printed != want {
			t.Errorf("%s: Emin %g, from E %g", name, g.Emin.Printed, want)
		}
	}
}
