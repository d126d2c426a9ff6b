package ice_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// bad fails on an error that is neither of the measure's classes nor the package's own.
func bad(t *testing.T, err error) {
	t.Helper()
	var e *measure.Error
	if !errors.As(err, &e) && !errors.Is(err, ice.ErrUnfit) {
		t.Fatalf("an error of no class: %v", err)
	}
}

// finite reports whether all of them are numbers.
func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// FuzzCreep: ice yields more under more stress, for longer and when warmer, its modulus
// is stress over strain and no more than that of the ice at once.
func FuzzCreep(f *testing.F) {
	f.Add(-5.0, 0.003, 9e9, 2e5, 86400.0)
	f.Add(-40.0, 0.05, 0.0, 5e-324, 0.0)
	f.Add(-1.0, 1e-3, 1e9, 2e6, 1e8)
	f.Add(math.NaN(), -1.0, math.Inf(1), 0.0, -1.0)
	f.Fuzz(func(t *testing.T, celsius, grain, e, stress, seconds float64) {
		c := ice.Creep{Temperature: celsius, Grain: grain, E: e}
		strain, within, err := c.Strain(stress, seconds)
		modulus, also, err2 := c.Modulus(stress, seconds)
		if (err == nil) != (err2 == nil) {
			t.Fatalf("%v, and the modulus %v", err, err2)
		}
		if err != nil {
			bad(t, err)
			return
		}
		if !finite(strain) || strain < 0 || within != (strain < 1e-3) || within != also {
			t.Fatalf("%+v: %g, %v", c, strain, within)
		}
		if !(finite(modulus) && math.Abs(modulus*strain-stress) <= 1e-9*stress && modulus <= 1e10*(1+1e-9)) {
			t.Fatalf("%+v: %g Pa over %g is %g Pa", c, stress, strain, modulus)
		}
		for _, more := range []struct {
			c               ice.Creep
			stress, seconds float64
		}{{c, stress * 1.1, seconds}, {c, stress, seconds*1.1 + 1}, {ice.Creep{Temperature: celsius + 0.5, Grain: grain, E: e}, stress, seconds}} {
			if s, _, err := more.c.Strain(more.stress, more.seconds); err == nil && s < strain*(1-1e-12) {
				t.Fatalf("%g, and of %+v %g", strain, more, s)
			}
		}
	})
}

// FuzzPlate: thicker ice is stiffer, at a free edge it gives way more than a plate
// everywhere, a point's deflection is the bowl's, and principal moments are those of the
// plate turned either way.
func FuzzPlate(f *testing.F) {
	f.Add(0.3, 1e9, 0.33, 0.0, 0.5, 6000.0, 0.4, -0.2)
	f.Add(0.05, 9e9, 0.3, 10055.0, 1e-3, 1.0, 100.0, 0.0)
	f.Add(math.NaN(), 0.0, -1.0, 5e-324, math.Inf(1), -1.0, math.NaN(), 0.0)
	f.Fuzz(func(t *testing.T, thickness, e, nu, foundation, a, force, x, y float64) {
		p := ice.Plate{Thickness: thickness, E: e, Nu: nu, Foundation: foundation}
		d, err := p.Rigidity()
		if err != nil {
			bad(t, err)
			return
		}
		l, err := p.CharacteristicLength()
		if err != nil || !finite(d, l) || !(d > 0 && l > 0) {
			t.Fatalf("%+v: %g N·m, %g m, %v", p, d, l, err)
		}
		thick := p
		thick.Thickness *= 1.1
		if more, err := thick.Rigidity(); err == nil && !(more > d) {
			t.Fatalf("%g N·m, and thicker %g", d, more)
		}
		if r, src, err := p.FictitiousRadius(a); err != nil {
			bad(t, err)
		} else if !finite(r) || r < 0.3*thickness*(1-1e-9) || a >= 1.724*thickness && r != a || src == nil {
			t.Fatalf("radius %g for %g on %g m", r, a, thickness)
		}
		edge, src, err := p.EdgeDeflection(force)
		if err != nil {
			bad(t, err)
			return
		}
		if !finite(edge) || edge < 0 || src == nil {
			t.Fatalf("%g m at the edge", edge)
		}
		loads := []ice.Patch{{A: a, Force: force}}
		at, err := p.At(loads, x, y)
		if err != nil {
			bad(t, err)
			return
		}
		b, err := p.Bowl(loads)
		if err != nil {
			t.Fatal(err)
		}
		if same, err := b.At(x, y); err != nil || same != at {
			t.Fatalf("%+v, of the bowl %+v, %v", at, same, err)
		}
		if !finite(at.Deflection, at.Mx, at.My, at.Mxy) || at.Deflection > edge*(1+1e-6) {
			t.Fatalf("%+v under the load, %g at an edge", at, edge)
		}
		big, small := at.Principal()
		size := math.Abs(at.Mx) + math.Abs(at.My) + math.Abs(at.Mxy)
		if !(big >= small) || math.Abs(big+small-at.Mx-at.My) > 1e-9*size+1e-300 || big < math.Max(at.Mx, at.My)-1e-9*size-1e-300 {
			t.Fatalf("%+v has %g and %g", at, big, small)
		}
	})
}

// FuzzWhiteIce: white ice never counts for more than clear ice of its thickness, the
// strictest scheme never for more than another, and every scheme has its source.
func FuzzWhiteIce(f *testing.F) {
	f.Add(0, 0.3, 0.1, 0.0, true)
	f.Add(3, 0.0, 0.5, 0.02, false)
	f.Add(-1, math.NaN(), -1.0, math.Inf(1), true)
	f.Fuzz(func(t *testing.T, scheme int, clear, white, gap float64, hard bool) {
		h := ice.Hole{Clear: clear, White: white, Gap: gap, Hard: hard, Water: 0.02}
		s := ice.Scheme(scheme)
		thick, factor, err := s.Effective(h)
		if err != nil {
			bad(t, err)
			return
		}
		if !finite(thick, factor) || thick < 0 || thick > clear+white || factor < 1 || s.Source() == nil {
			t.Fatalf("%v of %+v: %g m, %g", s, h, thick, factor)
		}
		strict, most, err := ice.Strictest.Effective(h)
		if err != nil || strict/most > thick/factor*(1+1e-12) {
			t.Fatalf("the strictest has %g m by %g, %v has %g by %g, %v", strict, most, s, thick, factor, err)
		}
	})
}

// FuzzDates: the days of a flood lie in order after the setting, or are none; a thaw's
// factor is 1 or more, and no less after more hours.
func FuzzDates(f *testing.F) {
	f.Add(86400.0, 2e6, int64(1800000000), 6.0, 2.0, 1.3, 24.0, 7.0)
	f.Add(math.Inf(1), math.NaN(), int64(0), 0.0, 0.0, -1.0, 0.0, 8.0)
	f.Add(-1.0, 1e300, int64(math.MinInt64), math.NaN(), math.Inf(1), 1e300, 5e-324, 1e9)
	f.Fuzz(func(t *testing.T, soonest, latest float64, set int64, from, thickness, load, off, hours float64) {
		if set > -1e12 && set < 1e12 {
			day := time.Unix(set, 0).UTC()
			first, last := ice.Flood{Soonest: soonest, Latest: latest}.Dates(day)
			if !first.IsZero() && first.Before(day) || !last.IsZero() && last.Before(day) || soonest <= latest && !first.IsZero() && !last.IsZero() && last.Before(first) {
				t.Fatalf("%v and %v after %v", first, last, day)
			}
			if first.IsZero() != !(soonest >= 0 && soonest <= 1e9) && !day.IsZero() {
				t.Fatalf("%g s is %v", soonest, first)
			}
		}
		rules := ice.Thaws()
		if !(from > off) { // the factors may be anything
			rules = append(rules, ice.Thaw{From: from, Thickness: thickness, Load: load, Off: off, Source: rules[0].Source})
		}
		for _, r := range rules {
			x, err := r.Factor(hours)
			if err != nil {
				bad(t, err)
				continue
			}
			if !finite(x) || x < 1 {
				t.Fatalf("%+v after %g h: %g", r, hours, x)
			}
			if more, err := r.Factor(hours + 1); err == nil && more < x {
				t.Fatalf("%+v: %g, an hour later %g", r, x, more)
			}
		}
	})
}
