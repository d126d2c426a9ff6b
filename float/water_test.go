package float_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// TestWaterRanges checks both sides of each end of the two formulas.
func TestWaterRanges(t *testing.T) {
	for _, c := range []struct {
		name  string
		water float64
		salt  float64
		ok    bool
	}{
		{"ice-out", 0, 0, true},
		{"fresh, below freezing", -0.001, 0, false},
		{"fresh, top", 40, 0, true},
		{"fresh, above top", 40.001, 0, false},
		{"brackish, below 0 °C but liquid", -0.2, 5, true},
		{"brackish, frozen", -0.3, 5, false},
		{"sea, winter", -1.9, 35, true},
		{"sea, frozen", -1.95, 35, false},
		{"salt pond, at the end of EOS-80", -2, 42, true},
		{"salt pond, below the end", -2.001, 42, false},
		{"sea, top", 40, 35, true},
		{"sea, above top", 40.1, 35, false},
		{"too salt", 10, 42.1, false},
		{"negative salt", 10, -1, false},
		{"NaN temperature", math.NaN(), 0, false},
		{"NaN temperature at sea", math.NaN(), 35, false},
		{"infinite temperature at sea", math.Inf(1), 35, false},
		{"NaN salt", 10, math.NaN(), false},
	} {
		t.Run(c.name, func(t *testing.T) {
			rho, err := float.Water{Celsius: c.water, Salinity: c.salt}.Density()
			if c.ok != (err == nil) {
				t.Fatalf("density %g, error %v", rho, err)
			}
			var e *measure.Error
			if err != nil && (!errors.As(err, &e) || !errors.Is(err, measure.ErrRange) || e.Range.Source == nil) {
				t.Errorf("error %#v names no range and who set it", err)
			}
			if err == nil && !(rho > 990 && rho < 1040) {
				t.Errorf("density %g kg/m³", rho)
			}
		})
	}
}

// TestWaterFreezes checks the freezing point against seawater's -1.92 °C at 35,
// a round value of the oceanographic tables (from memory).
func TestWaterFreezes(t *testing.T) {
	rho, err := float.Water{Celsius: -1.92, Salinity: 35}.Density()
	if err != nil {
		t.Fatal(rho, err)
	}
	if _, err = (float.Water{Celsius: -1.93, Salinity: 35}).Density(); err == nil {
		t.Error("sea water of salinity 35 at -1.93 °C is ice")
	}
}

// TestWaterDensest checks that fresh water is densest at 3.98 °C (Tanaka 2001:
// 3.983035 °C, 999.974950 kg/m³, printed in the formula itself).
func TestWaterDensest(t *testing.T) {
	top, err := float.Water{Celsius: 3.983035}.Density()
	if err != nil || math.Abs(top-999.974950) > 1e-9 {
		t.Fatal(top, err)
	}
	for celsius := 0.0; celsius <= 40; celsius += 0.25 {
		if rho, _ := (float.Water{Celsius: celsius}).Density(); rho > top {
			t.Errorf("%g °C: %.6f above the densest", celsius, rho)
		}
	}
}

// TestWaterFormulasMeet checks that the two formulas agree where they meet, at a
// vanishing salinity, within the two parts in a million the doc promises.
func TestWaterFormulasMeet(t *testing.T) {
	for celsius := 0.0; celsius <= 40; celsius++ {
		fresh, err := float.Water{Celsius: celsius}.Density()
		sea, err2 := float.Water{Celsius: celsius, Salinity: 1e-9}.Density()
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if math.Abs(fresh/sea-1) > 2e-6 {
			t.Errorf("%g °C: fresh %.6f, EOS-80 %.6f", celsius, fresh, sea)
		}
	}
}
