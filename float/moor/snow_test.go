package moor_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// Snow of unknown density is old and wet; by the ground load it is never denser
// than 30 lb/ft³; more of it never weighs less.
func TestSnow(t *testing.T) {
	p, err := moor.Snow{Depth: 0.5}.Pressure()
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "half a metre of who knows what", p, 250*measure.Gravity, 1e-9)
	known, err := moor.Snow{Ground: 1000, Depth: 0.5, Density: 100}.Pressure()
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "weighed", known, 50*measure.Gravity, 1e-9)
	last := 0.0
	for g := 100.0; g < 14e3; g += 100 {
		p, err1 := moor.Snow{Ground: g}.Pressure()
		h, d, err2 := moor.Snow{Ground: g}.Drift(15)
		if err1 != nil || err2 != nil || !(p > last) || !(h > 0) || math.Abs(p-0.7*g) > 1e-9 {
			t.Fatalf("%g Pa on the ground: %g Pa on deck after %g, drift %g m, %v, %v", g, p, last, h, err1, err2)
		}
		if ρ := d / h / measure.Gravity; ρ > 30*measure.PCF*(1+1e-12) || ρ < 14*measure.PCF {
			t.Errorf("density %g kg/m³ at %g Pa", ρ, g)
		}
		last = p
	}
	short, _, err1 := moor.Snow{Ground: 2000}.Drift(1)
	floor, _, err2 := moor.Snow{Ground: 2000}.Drift(20 * measure.Foot)
	long, _, err3 := moor.Snow{Ground: 2000}.Drift(25 * measure.Foot)
	if err := errors.Join(err1, err2, err3); err != nil || short != floor || !(long > floor) {
		t.Errorf("drifts %g, %g, %g m, %v", short, floor, long, err)
	}
	if _, _, err := (moor.Snow{Ground: 2000}).Drift(600 * measure.Foot); err != nil {
		t.Error(err)
	}
	if _, _, err := (moor.Snow{Ground: 2000}).Drift(601 * measure.Foot); !errors.Is(err, measure.ErrRange) {
		t.Error(err)
	}
	for name, f := range map[string]func() error{
		"nothing":   func() error { _, err := moor.Snow{}.Pressure(); return err },
		"no ground": func() error { _, _, err := moor.Snow{Depth: 1}.Drift(5); return err },
	} {
		if err := f(); !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%s: %v", name, err)
		}
	}
	nan := math.NaN()
	for name, f := range map[string]func() error{
		"depth":   func() error { _, err := moor.Snow{Depth: nan}.Pressure(); return err },
		"ground":  func() error { _, err := moor.Snow{Ground: -1}.Pressure(); return err },
		"density": func() error { _, err := moor.Snow{Depth: 1, Density: 2000}.Pressure(); return err },
		"upwind":  func() error { _, _, err := moor.Snow{Ground: 1000}.Drift(nan); return err },
		"drift":   func() error { _, _, err := moor.Snow{Ground: 1000, Density: nan}.Drift(5); return err },
	} {
		if err := f(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Clips of a size between two listed ones are those of the greater; beyond the
// table there is no answer.
func TestClips(t *testing.T) {
	last := moor.Clips{}
	for _, d := range []float64{1. / 8, 5. / 32, 3. / 16, 7. / 32, 1. / 4, 9. / 32, 5. / 16, 11. / 32, 3. / 8, 7. / 16, 1. / 2} {
		c, err := moor.ClipsFor(d * measure.Inch)
		if err != nil {
			t.Fatal(err)
		}
		rule := int(math.Ceil(3*d + 1))
		if c.Number < rule || c.Number < 2 || c.Number > 3 || c.Turnback < last.Turnback || c.Torque < last.Torque || len(c.Sources) != 2 || c.Turnback < c.Spacing*float64(c.Number-1) {
			t.Errorf("%g in: %+v after %+v", d, c, last)
		}
		last = c
	}
	between, err1 := moor.ClipsFor(0.3 * measure.Inch)
	listed, err2 := moor.ClipsFor(5. / 16 * measure.Inch)
	if err1 != nil || err2 != nil || between.Torque != listed.Torque || between.Turnback != listed.Turnback {
		t.Errorf("%+v, %+v, %v, %v", between, listed, err1, err2)
	}
	for _, d := range []float64{0, 0.1 * measure.Inch, 0.51 * measure.Inch, math.NaN()} {
		if _, err := moor.ClipsFor(d); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%g m: %v", d, err)
		}
	}
}

// Every usual figure has a span the right way round and a source.
func TestUsual(t *testing.T) {
	width, err := moor.Usual("ramp width")
	if err != nil || !math.IsInf(width.Hi, 1) || width.Check("width", 0.9) == nil || width.Check("width", 0.92) != nil {
		t.Errorf("%v, %v", width, err)
	}
	tilt, err := moor.Usual("landing float tilt")
	if err != nil || !math.IsInf(tilt.Lo, -1) || tilt.Check("tilt", 0.11) == nil || tilt.Check("tilt", 0.1) != nil || tilt.Source == nil {
		t.Errorf("%v, %v", tilt, err)
	}
	// The added mass that impacts count by default is the most of it.
	along, err := moor.Usual("boat and water along over the boat")
	if err != nil {
		t.Fatal(err)
	}
	e, err := moor.Impact{Mass: 2, Speed: 1}.Energy()
	if err != nil || e != along.Hi {
		t.Errorf("%g, most %g, %v", e, along.Hi, err)
	}
	wet, err := moor.Usual("snow, old and wet")
	if p, err2 := (moor.Snow{Depth: 1}).Pressure(); err != nil || err2 != nil || math.Abs(p-wet.Hi*measure.Gravity) > 1e-9 {
		t.Errorf("%g, %v, %v, %v", p, wet, err, err2)
	}
	// Ramps that the accessible rule lets be steeper are of the length listed.
	for slips, name := range map[int]string{0: "accessible ramp, any slope from", 25: "accessible ramp, any slope from", 24: "accessible ramp, any slope from, under 25 slips", 1: "accessible ramp, any slope from, under 25 slips"} {
		u, err := moor.Usual(name)
		if err != nil {
			t.Fatal(err)
		}
		r := moor.Ramp{Length: u.Lo, Width: 1, Shore: 7.2, Limit: "accessible", Slips: slips}
		if c, err := r.Check(0, 3); err != nil || c.Verdict() != measure.Holds || c.Limit != u.Lo || !c.AtLeast {
			t.Errorf("%d slips: %v, %v", slips, c, err)
		}
		r.Length *= 0.99
		if c, err := r.Check(0, 3); err != nil || c.Verdict() != measure.Short || c.Kind != measure.Ratio {
			t.Errorf("%d slips, a little shorter: %v, %v", slips, c, err)
		}
	}
	if _, err := moor.Usual("luck"); !errors.Is(err, measure.ErrName) {
		t.Errorf("luck: %v", err)
	}
	if _, err := moor.Factor("luck", "rope"); !errors.Is(err, measure.ErrName) {
		t.Errorf("factor of luck: %v", err)
	}
}

// A ramp of the length needed just keeps its limit, whichever end is worse.
func TestRampNeeded(t *testing.T) {
	for _, limit := range []string{"", "common", "navy", "accessible"} {
		for _, levels := range [][2]float64{{-0.7, 0.5}, {0, 2.5}, {0.4, 0.9}} {
			r := moor.Ramp{Width: 1, Shore: 1.2, Deck: 0.4, Limit: limit}
			l, err := r.Needed(levels[0], levels[1])
			if err != nil {
				t.Fatal(err)
			}
			r.Length = l
			c, err := r.Check(levels[0], levels[1])
			if err != nil {
				t.Fatal(err)
			}
			almost(t, limit+" ramp", c.Value, c.Limit, 1e-12)
		}
	}
	r := moor.Ramp{Width: 1, Shore: 4, Limit: "accessible", Slips: 10}
	if l, err := r.Needed(0, 3); err != nil || math.Abs(l-30*measure.Foot) > 1e-12 {
		t.Errorf("a small marina needs %g m, %v", l, err)
	}
	r.Shore = 20
	l, err := r.Needed(0, 3)
	if err != nil || !(l > 20) {
		t.Errorf("it has to reach: %g m, %v", l, err)
	}
	r.Length = l
	if c, err := r.Check(0, 3); err != nil || c.Verdict() != measure.Holds {
		t.Errorf("%v, %v", c, err)
	}
	for name, f := range map[string]func() error{
		"level": func() error { _, err := r.Needed(math.NaN(), 0); return err },
		"high":  func() error { _, err := r.Needed(0, math.Inf(1)); return err },
		"width": func() error { _, err := moor.Ramp{}.Needed(0, 1); return err },
		"slips": func() error { _, err := moor.Ramp{Width: 1, Slips: -1}.Needed(0, 1); return err },
	} {
		if err := f(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	r.Limit = "steep"
	if _, err := r.Needed(0, 1); !errors.Is(err, measure.ErrName) {
		t.Errorf("limit: %v", err)
	}
}
