package float_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// TestDrumPresets checks of every preset that each figure states its source, that
// its name finds it, and that its displacement fits between the nominal volume
// and the plain cylinder around it.
func TestDrumPresets(t *testing.T) {
	nominal := map[string]float64{
		"55 gal steel, tight head": 55 * measure.USGallon, "55 gal steel, tight head, heavy": 55 * measure.USGallon,
		"55 gal steel, open head": 55 * measure.USGallon, "220 L plastic": 220 * measure.Litre,
		"55 gal plastic, tight head": 55 * measure.USGallon, "30 gal steel": 30 * measure.USGallon,
		"30 gal plastic": 30 * measure.USGallon, "15 gal plastic": 15 * measure.USGallon,
	}
	all := float.Drums()
	if len(all) != len(nominal) {
		t.Errorf("%d presets, %d nominal volumes", len(all), len(nominal))
	}
	for _, d := range all {
		t.Run(d.Name, func(t *testing.T) {
			for name, f := range map[string]float.Figure{
				"diameter": d.Diameter, "length": d.Length, "displacement": d.Displacement, "mass": d.Mass,
			} {
				if f.Source == nil || f.Source.Status == measure.Unstated {
					t.Errorf("%s has no source", name)
				}
				if !(f.Value > 0 && f.Within > 0 && f.Within < 0.15*f.Value) {
					t.Errorf("%s %g ± %g", name, f.Value, f.Within)
				}
			}
			around := math.Pi / 4 * d.Diameter.Value * d.Diameter.Value * d.Length.Value
			if v := d.Displacement.Value; !(v > nominal[d.Name] && v < 1.0001*around) {
				t.Errorf("displacement %.1f L, nominal %.1f, cylinder around it %.1f",
					v*1e3, nominal[d.Name]*1e3, around*1e3)
			}
			found, err := float.LookupDrum(" " + d.Name)
			if err != nil || found != d {
				t.Errorf("LookupDrum(%q) = %+v, %v", d.Name, found, err)
			}
		})
	}
	all[0].Name = "changed"
	if float.Drums()[0].Name == "changed" {
		t.Error("a caller can change the presets")
	}
}

func TestLookupDrumUnknown(t *testing.T) {
	_, err := float.LookupDrum("5 gal pail")
	var e *measure.Error
	if !errors.As(err, &e) || !errors.Is(err, measure.ErrName) || e.Text != "5 gal pail" || e.Want == "" {
		t.Errorf("error %v", err)
	}
}

// TestMeasureDrum works the figures by hand: girth 1.8 m is 0.57296 m across, the
// section 0.257831 m², with 0.88 m of length 226.89 L. Accuracies of 2 mm in 1.8 m
// (twice) and 3 mm in 0.88 m, and 1 % for the shape: 1.5631 %, 3.547 L.
func TestMeasureDrum(t *testing.T) {
	d, err := float.MeasureDrum(float.Figure{Value: 1.8, Within: 2e-3}, float.Figure{Value: 0.88, Within: 3e-3}, float.Figure{Value: 18, Within: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what      string
		got, want float64
		tol       float64
	}{
		{"diameter", d.Diameter.Value, 0.57296, 5e-6},
		{"displacement", d.Displacement.Value, 0.22689, 5e-6},
		{"its range", d.Displacement.Within, 0.003547, 1e-6},
		{"mass", d.Mass.Value, 18, 0},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s %.8g, by hand %g", c.what, c.got, c.want)
		}
	}
}

func TestMeasureDrumRefuses(t *testing.T) {
	type f = float.Figure
	girth, length, mass := f{Value: 1.8}, f{Value: 0.88}, f{Value: 18}
	for _, c := range []struct {
		name  string
		g, l  f
		m     f
		field string
	}{
		{"radius for girth", f{Value: 0.28}, length, mass, "girth"},
		{"NaN girth", f{Value: math.NaN()}, length, mass, "girth"},
		{"negative accuracy", f{Value: 1.8, Within: -1e-3}, length, mass, "girth, accuracy"},
		{"NaN accuracy", f{Value: 1.8, Within: math.NaN()}, length, mass, "girth, accuracy"},
		{"inches for metres", girth, f{Value: 34.8}, mass, "length"},
		{"infinite length", girth, f{Value: math.Inf(1)}, mass, "length"},
		{"no mass", girth, length, f{}, "mass"},
		{"full of concrete", girth, length, f{Value: 400}, "mass"},
	} {
		_, err := float.MeasureDrum(c.g, c.l, c.m)
		var e *measure.Error
		if !errors.As(err, &e) || e.Field != c.field || !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: error %v", c.name, err)
		}
	}
}

func TestSealRefuses(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name                string
		seal                float.Seal
		now, depth, density float64
	}{
		{"closed too hot", float.Seal{Celsius: 61}, 0, 0, 1000},
		{"closed at NaN", float.Seal{Celsius: nan}, 0, 0, 1000},
		{"too cold now", float.Seal{}, -61, 0, 1000},
		{"NaN now", float.Seal{}, nan, 0, 1000},
		{"gauge pressure", float.Seal{Atmosphere: 1000}, 0, 0, 1000},
		{"NaN air", float.Seal{Atmosphere: nan}, 0, 0, 1000},
		{"above water", float.Seal{}, 0, -1, 1000},
		{"NaN depth", float.Seal{}, 0, nan, 1000},
		{"density in g/cm³", float.Seal{}, 0, 0, 1},
		{"NaN density", float.Seal{}, 0, 0, nan},
	} {
		p, err := c.seal.Squeeze(c.now, c.depth, c.density)
		if !errors.Is(err, measure.ErrRange) || p != 0 {
			t.Errorf("%s: %g, %v", c.name, p, err)
		}
	}
}

// TestSealDampFreezing checks that the vapour's two formulas meet at freezing,
// where both must give the triple point's 611 Pa (exact to 0.1 %).
func TestSealDampFreezing(t *testing.T) {
	s := float.Seal{Celsius: 10}
	below, err := s.Pressure(-1e-9)
	above, err2 := s.Pressure(0)
	if err != nil || err2 != nil || math.Abs(above-below) > 1e-3 {
		t.Errorf("%g Pa below freezing, %g above; %v, %v", below, above, err, err2)
	}
}
