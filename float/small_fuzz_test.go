package float_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
)

// FuzzNames: a name gives a criterion, or a drum, of that name, or an error; rules are
// made of the names that there are, and of no others.
func FuzzNames(f *testing.F) {
	f.Add("20 psf over the deck", 0.2, 0.3, 0.9)
	f.Add(" TILT at most 10 deg ", 0.2, 0.0, 0.0)
	f.Add("deck edge dry", math.NaN(), -1.0, math.Inf(1))
	f.Add("", 0.2, 0.2, 0.9)
	for _, d := range float.Drums() {
		f.Add(d.Name, 0.1, 0.1, 0.1)
	}
	f.Fuzz(func(t *testing.T, name string, depth, drawn, walk float64) {
		same := func(got string) bool { return strings.EqualFold(got, strings.TrimSpace(name)) }
		if d, err := float.LookupDrum(name); err != nil {
			expected(t, err)
		} else if !same(d.Name) || !(d.Body().Volume() > 0) {
			t.Fatalf("%q is %+v", name, d)
		}
		deck := float.Deck{Depth: depth, Drawn: drawn, Walk: walk}
		c, err := float.LookupCriterion(name)
		rules, ruled := float.Rules(deck, name)
		if err != nil {
			expected(t, err)
			if ruled == nil {
				t.Fatalf("%q is no criterion and makes %d rules", name, len(rules))
			}
			return
		}
		if !same(c.Name) || c.Source == nil || len(rules) != 1 && ruled == nil {
			t.Fatalf("%q is %+v, %d rules, %v", name, c, len(rules), ruled)
		}
		light := raft(300)
		for _, rule := range []float.Rule{c.Rule(deck), c.AsLoaded().Rule(deck)} {
			check, err := rule(light)
			if err != nil {
				expected(t, err)
				continue
			}
			if check.Err == nil {
				finite(t, c.Name, check.Value, check.Limit)
			}
		}
		// Without a load of its own it judges no more than what is there.
		if l := c.AsLoaded(); l.Name == "" || l.Limit != c.Limit || l.AtLeast != c.AtLeast {
			t.Fatalf("%+v as loaded is %+v", c, l)
		}
	})
}

// raft is an invented dock of four blocks.
func raft(load float64) *float.Platform {
	p := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: load, At: r3.Vec{Z: 0.1}}}}
	for _, x := range []float64{-1.5, 1.5} {
		for _, y := range []float64{-1, 1} {
			p.Units = append(p.Units, float.Unit{Body: float.Block{Length: 0.9, Width: 0.6, Height: 0.5}, At: r3.Vec{X: x, Y: y, Z: -0.25}, Mass: 10})
			p.Corners = append(p.Corners, r3.Vec{X: x * 1.3, Y: x * y * 0.9, Z: 0.2})
		}
	}
	return p
}

// FuzzSizes: no edge of a body is longer than its extent, the cube of which holds it; a
// drum displaces what it is said to, floats where it is put, and its notice goes with it.
func FuzzSizes(f *testing.F) {
	f.Add(0.58, 0.88, 0.5, 0.22, 10.0, 0.3)
	f.Add(1e-3, 1e4, 1e-3, 1e-9, 0.0, 0.0)
	f.Add(-1.0, math.NaN(), math.Inf(1), -0.1, -5.0, 1e9)
	f.Fuzz(func(t *testing.T, a, b, c, volume, mass, heading float64) {
		for _, body := range []struct {
			float.Body
			edges  []float64
			extent float64
		}{
			{float.Block{Length: a, Width: b, Height: c}, []float64{a, b, c}, float.Block{Length: a, Width: b, Height: c}.Extent()},
			{float.Cylinder{Diameter: a, Length: b}, []float64{a, b}, float.Cylinder{Diameter: a, Length: b}.Extent()},
		} {
			v := body.Volume()
			finite(t, "volume", v)
			if v < 0 {
				t.Fatalf("%+v displaces %g m³", body, v)
			}
			if v == 0 {
				continue
			}
			if e := body.extent; !(e >= slices.Max(body.edges)) || v > e*e*e*(1+1e-12) {
				t.Fatalf("%+v: extent %g, %g m³", body, e, v)
			}
		}
		d := float.Drum{Name: "drum", Diameter: float.Figure{Value: a}, Length: float.Figure{Value: b}, Displacement: float.Figure{Value: volume}, Mass: float.Figure{Value: mass}}
		body := d.Body()
		if v := body.Volume(); v > 0 && math.Abs(v-volume) > 1e-9*volume {
			t.Fatalf("%+v displaces %g m³, and its body %g", d, volume, v)
		}
		u := d.Unit(r3.Vec{X: b, Z: -0.2}, heading)
		if u.Body != float.Body(body) || !(u.Mass == mass || math.IsNaN(mass)) {
			t.Fatalf("%+v of %+v", u, d)
		}
		p := raft(100)
		p.Units = append(p.Units, u)
		if !slices.Contains(p.Notices(), float.DrumNotice) {
			t.Fatal("a drum without its notice")
		}
		s, err := p.Settle()
		if err != nil {
			expected(t, err)
			return
		}
		if !slices.Contains(s.Notices(), float.DrumNotice) {
			t.Fatal("a state on drums without their notice")
		}
	})
}

// FuzzPeriod: four times the inertia takes twice the time, a stiffer one less; waves near
// a natural period are warned of, and a sealed drum's pressure grows with its warmth.
func FuzzPeriod(f *testing.F) {
	f.Add(900.0, 2e4, 1.1, 1.6, 1.3, 20.0, 101325.0, 45.0)
	f.Add(1e-300, 1e300, 0.0, 0.0, 0.0, -60.0, 5e4, 60.0)
	f.Add(math.NaN(), -1.0, 2.0, 1.0, math.Inf(1), 99.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, inertia, stiffness, shortest, longest, wave, celsius, air, later float64) {
		if p, err := float.Period(inertia, stiffness); err != nil {
			expected(t, err)
		} else {
			finite(t, "period", p)
			if four, err := float.Period(4*inertia, stiffness); !(p > 0) || err == nil && math.Abs(four-2*p) > 1e-12*p {
				t.Fatalf("%g s, and of four times the inertia %g, %v", p, four, err)
			}
			if stiffer, err := float.Period(inertia, 2*stiffness); err == nil && !(stiffer < p) {
				t.Fatalf("%g s, and stiffer %g", p, stiffer)
			}
		}
		band := float.Band{Shortest: shortest, Longest: longest}
		warned, err := float.Motion{Heave: band, Roll: band, Pitch: float.Band{Shortest: 2 * longest, Longest: 3 * longest}}.Near(wave)
		if err != nil {
			expected(t, err)
		} else if within := wave >= shortest && wave <= longest; len(warned) > 3 || within && len(warned) < 2 {
			t.Fatalf("waves of %g s on %+v: %q", wave, band, warned)
		}
		for _, dry := range []bool{true, false} {
			s := float.Seal{Celsius: celsius, Atmosphere: air, Dry: dry}
			p, err := s.Pressure(later)
			if err != nil {
				expected(t, err)
				continue
			}
			finite(t, "pressure", p)
			if warmer, err := s.Pressure(later + 1); err == nil && !(warmer > p) {
				t.Fatalf("%+v has %g Pa at %g °C, and warmer %g", s, p, later, warmer)
			}
			if same, err := s.Pressure(celsius); err == nil && air > 0 && math.Abs(same-air) > 1e-9*air {
				t.Fatalf("%+v has %g Pa where it was closed", s, same)
			}
		}
	})
}
