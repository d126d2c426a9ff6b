package lumber_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// TestWetter: density rises with moisture, to the pore-full limit and no further.
func TestWetter(t *testing.T) {
	for g := 0.3; g <= 0.7; g += 0.05 {
		full, rho, err := lumber.PoreFull(g)
		if err != nil || rho <= 1000 {
			t.Fatalf("G %g: %g kg/m³ with the pores full, %v", g, rho, err)
		}
		last := 0.0
		for m := 0.0; m < full; m += 0.01 {
			x, err := lumber.Density(g, m)
			if err != nil || x <= last {
				t.Fatalf("G %g at %g: %g after %g, %v", g, m, x, last, err)
			}
			last = x
		}
		at, err := lumber.Density(g, full)
		if err != nil || math.Abs(at/rho-1) > 1e-9 {
			t.Errorf("G %g: %g at the limit, %g (%v)", g, at, rho, err)
		}
		if _, err := lumber.Density(g, full+0.01); !errors.Is(err, measure.ErrRange) {
			t.Errorf("wetter than full: %v", err)
		}
	}
	for _, g := range []float64{0.2, 0.5, 0.9} {
		for _, percent := range []float64{5, 19, 60} {
			if _, err := lumber.Density(g, percent); !errors.Is(err, measure.ErrRange) {
				t.Errorf("G %g: %g, percent, passes for a share: %v", g, percent, err)
			}
		}
	}
}

// TestWeights: light, bought, damp and soaked in order, heavier for all plies,
// and the scale has the last word.
func TestWeights(t *testing.T) {
	m := piece(t, "redwood", "2", "2x8")
	m.Length, m.Plies = 3, 2
	w, err := m.Weights()
	if err != nil {
		t.Fatal(err)
	}
	if !(w.Light < w.Bought && w.Bought < w.Damp && w.Damp < w.Soaked) {
		t.Errorf("%+v", w)
	}
	volume := 2 * m.Section.Area() * 3
	for got, gm := range map[float64][2]float64{w.Light: {0.37, 0.19}, w.Bought: {0.44, 0.19}, w.Damp: {0.44, 0.60}} {
		rho, err := lumber.Density(gm[0], gm[1])
		if err != nil {
			t.Fatal(err)
		}
		near(t, "weight", got, rho*volume)
	}
	_, full, err := lumber.PoreFull(0.44)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "soaked", w.Soaked, full*volume)
	mixed, err := lumber.Weakest("2", m.Section, "syp", "spf")
	if err != nil {
		t.Fatal(err)
	}
	m.Grade = mixed
	if w, err = m.Weights(); err != nil {
		t.Fatal(err)
	}
	if _, full, err = lumber.PoreFull(0.55); err != nil {
		t.Fatal(err)
	}
	near(t, "soaked, species not known", w.Soaked, full*volume)
	for _, mass := range []float64{1, 20, 500} {
		s, err := w.Weighed(mass)
		if err != nil || s.Bought != mass || s.Light > mass || s.Damp < mass || s.Soaked < mass ||
			s.Light > w.Light || s.Damp < w.Damp || s.Soaked < w.Soaked {
			t.Errorf("weighed %g: %+v, %v", mass, s, err)
		}
	}
}

// TestWeighedAlone: a weight without bounds gives none.
func TestWeighedAlone(t *testing.T) {
	if w, err := (lumber.Weights{}).Weighed(20); !errors.Is(err, measure.ErrUnknown) || w != (lumber.Weights{}) {
		t.Errorf("%+v, %v", w, err)
	}
}

// TestGap: a gap comes back when the moisture does, opens by drying and closes
// by swelling.
func TestGap(t *testing.T) {
	const width = 0.14
	for _, laid := range []float64{0.08, 0.12, 0.19, 0.30, 0.80} {
		for _, now := range []float64{0.08, 0.12, 0.19, 0.30, 0.80} {
			g, err := lumber.Gap(width, laid, 0.004, now)
			if err != nil {
				t.Fatal(err)
			}
			switch {
			case laid > now && laid < 0.28 && !(g > 0.004), laid < now && now < 0.28 && !(g < 0.004):
				t.Errorf("laid at %g, now %g: gap %g", laid, now, g)
			}
			if g < 0 {
				continue // pressed together: no gap to lay with
			}
			// The board is narrower by what the gap has gained.
			if back, err := lumber.Gap(width-(g-0.004), now, g, laid); err != nil || math.Abs(back-0.004) > 1e-12 {
				t.Errorf("laid at %g, now %g: comes back to %g, %v", laid, now, back, err)
			}
		}
	}
	if _, err := lumber.Gap(width, 0.22, 0, 0.15); !errors.Is(err, measure.ErrRange) {
		t.Errorf("22 %%: %v", err)
	}
}

// TestTrees: shrinkage by species, each row with source and status; the two ways
// bracket the average of lumber.
func TestTrees(t *testing.T) {
	trees := lumber.Trees()
	if len(trees) < 25 {
		t.Fatal(len(trees))
	}
	for _, tree := range trees {
		for what, v := range map[string]lumber.Value{
			"radial": tree.Radial, "tangential": tree.Tangential, "volumetric": tree.Volumetric, "basic": tree.Basic,
		} {
			if !(v.SI() > 0) || v.Source == nil || v.Source.Status == measure.Unstated {
				t.Errorf("%s %s: %+v", tree.Name, what, v)
			}
		}
		r, tg, err := tree.Shrunk(0)
		if err != nil || !(r < tg) {
			t.Errorf("%s: %g radial, %g tangential, %v", tree.Name, r, tg, err)
		}
		near(t, tree.Name, r, tree.Radial.Printed/100)
		near(t, tree.Name, tg, tree.Tangential.Printed/100)
		if r, tg, err := tree.Shrunk(0.30); r != 0 || tg != 0 || err != nil {
			t.Errorf("%s green: %g, %g, %v", tree.Name, r, tg, err)
		}
		for _, wet := range []float64{0.31, 1, 19, 30} {
			if _, _, err := tree.Shrunk(wet); !errors.Is(err, measure.ErrRange) {
				t.Errorf("%s at %g: %v", tree.Name, wet, err)
			}
		}
	}
}

// TestTreatment: two coats at 100 ft² a gallon, and the rule that it is not done
// over water.
func TestTreatment(t *testing.T) {
	got, err := lumber.FieldTreatment(50 * measure.Foot * measure.Foot)
	if err != nil || got.Coats != 2 || len(got.Rules) == 0 || got.Source == nil || got.Spread.Status != measure.CommonPractice {
		t.Fatalf("%+v, %v", got, err)
	}
	near(t, "volume", got.Volume, measure.USGallon)
	wall, err := lumber.HoleArea(0.013, 0.038)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "hole", wall, math.Pi*0.013*0.038)
}

// TestMoistureAsWritten: a moisture content as it is written on a label means the same to
// measure and to every function of the wood.
func TestMoistureAsWritten(t *testing.T) {
	for _, text := range []string{"8 %", "12 %", "15 %", "19 %", "28.1 %", "30 %"} {
		m, err := measure.Percent.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := lumber.Density(0.5, m); err != nil {
			t.Errorf("density at %s: %v", text, err)
		}
		if _, _, err := lumber.Shrinkage(m); err != nil {
			t.Errorf("shrinkage at %s: %v", text, err)
		}
		if _, _, err := lumber.Trees()[0].Shrunk(m); err != nil {
			t.Errorf("shrinkage of a tree at %s: %v", text, err)
		}
	}
}
