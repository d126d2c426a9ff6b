package float_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// tubeDock is an invented raft on two tubes 0.7 m across, 2.4 m apart.
func tubeDock() *float.Platform {
	tube := float.Cylinder{Diameter: 0.7, Length: 6}
	return &float.Platform{
		Units:   []float.Unit{{Body: tube, At: r3.Vec{Y: 1.2}, Mass: 120}, {Body: tube, At: r3.Vec{Y: -1.2}, Mass: 120}},
		Weights: []float.Weight{{Mass: 800, At: r3.Vec{Z: 0.5}}},
		Corners: []r3.Vec{{X: -3, Y: -1.5, Z: 0.6}, {X: 3, Y: -1.5, Z: 0.6}, {X: 3, Y: 1.5, Z: 0.6}, {X: -3, Y: 1.5, Z: 0.6}},
		Density: 1000,
	}
}

// TestPontoonHeel finds the same by Settle: the crowd on 18 m² of deck stands a sixth
// of its 3 m width, 0.5 m, off the middle. Under 20 psf the tube must keep a quarter
// of its section, under 22 psf as much as the shift put under.
func TestPontoonHeel(t *testing.T) {
	p := tubeDock()
	c, err := float.LookupCriterion("pontoon heel")
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []struct {
		psf     float64
		quarter bool
	}{{20, true}, {22, false}} {
		c.Pressure = v.psf * measure.PSF
		crowd := c.Pressure * 18 / measure.Gravity
		share := func(y float64) float64 {
			s, err := p.With(float.Weight{Mass: crowd, At: r3.Vec{Y: y, Z: 1.6}}).Settle()
			if err != nil {
				t.Fatal(err)
			}
			u, err := s.Unit(0)
			if err != nil {
				t.Fatal(err)
			}
			return u.Share
		}
		level, low := share(0), share(0.5)
		if (low-level < 0.25) != v.quarter {
			t.Fatalf("%g psf: the shift put %g under", v.psf, low-level)
		}
		want := 1 - low - math.Max(0.25, low-level)
		check, err := c.Rule(float.Deck{})(p)
		if err != nil || math.Abs(check.Value-want) > 1e-9 {
			t.Errorf("%g psf: %v, %v; by hand %g", v.psf, check, err, want)
		}
	}
	c.Pressure = 30 * measure.PSF // capsizes with everybody in the middle or near it
	check, err := c.Rule(float.Deck{})(p)
	if err != nil || check.Verdict() != measure.Short {
		t.Errorf("capsizing: %v, %v", check, err)
	}
}

// TestPontoonTrim uses a light crowd, so that the tubes' tops can be followed.
func TestPontoonTrim(t *testing.T) {
	p := tubeDock()
	c, err := float.LookupCriterion("pontoon trim")
	if err != nil {
		t.Fatal(err)
	}
	c.Pressure = 2 * measure.PSF
	q := *p
	q.Weights = append(slices.Clone(p.Weights), float.Weight{Mass: 2 * measure.PSF * 18 / measure.Gravity, At: r3.Vec{X: 3, Z: 1.6}})
	s, err := q.Settle()
	if err != nil {
		t.Fatal(err)
	}
	// The tube's end at x = 3, its top across the axis.
	want := s.Height(r3.Vec{X: 3, Y: 1.2}) + 0.35*math.Hypot(s.Up.Y, s.Up.Z)
	check, err := c.Rule(float.Deck{})(p)
	if err != nil || math.Abs(check.Value-want) > 1e-9 || check.Verdict() != measure.Holds {
		t.Errorf("%v, %v; by hand %g", check, err, want)
	}
}

// TestPontoonScope checks both sides of the range the rules are for.
func TestPontoonScope(t *testing.T) {
	for _, name := range []string{"pontoon heel", "pontoon trim"} {
		for _, c := range []struct {
			what   string
			change func(*float.Platform)
			ok     bool
		}{
			{"2 ft tubes 6 ft apart", func(p *float.Platform) {
				for i := range p.Units {
					p.Units[i].Body = float.Cylinder{Diameter: 2 * measure.Foot, Length: 6}
					p.Units[i].At.Y = math.Copysign(3*measure.Foot, p.Units[i].At.Y)
				}
			}, true},
			{"drums of 23 in", func(p *float.Platform) { p.Units[0].Body = float.Cylinder{Diameter: 23 * measure.Inch, Length: 6} }, false},
			{"too close", func(p *float.Platform) { p.Units[0].At.Y = 0.5 }, false},
			{"three rows", func(p *float.Platform) { p.Units = append(p.Units, float.Unit{Body: p.Units[0].Body}) }, false},
			{"across", func(p *float.Platform) { p.Units[0].Heading = math.Pi / 2 }, false},
			{"boxes", func(p *float.Platform) { p.Units[0].Body = float.Block{Length: 6, Width: 0.7, Height: 0.7} }, false},
		} {
			p := tubeDock()
			p.Units = slices.Clone(p.Units)
			c.change(p)
			check, err := ruleOf(t, name, float.Deck{})(p)
			refused := errors.Is(check.Err, measure.ErrRange) || errors.Is(check.Err, measure.ErrUnknown)
			if err != nil || refused == c.ok {
				t.Errorf("%s, %s: %v, %v", name, c.what, check, err)
			}
		}
	}
}

// TestCriteriaLost floods each drum by hand and compares.
func TestCriteriaLost(t *testing.T) {
	p := drumDock(0)
	low, most := math.Inf(1), 0.0
	for i := range p.Units {
		q := *p
		q.Units = slices.Clone(p.Units)
		q.Units[i].Flooded = true
		s, err := q.Settle()
		if err != nil {
			t.Fatal(err)
		}
		_, h, err := s.Lowest()
		if err != nil {
			t.Fatal(err)
		}
		low, most = math.Min(low, h), math.Max(most, s.Tilt())
	}
	edge, err := ruleOf(t, "freeboard 0.10 m with one drum lost", float.Deck{})(p)
	tilt, err2 := ruleOf(t, "tilt at most 10 deg with one drum lost", float.Deck{})(p)
	if err != nil || err2 != nil || edge.Value != low || tilt.Value != most {
		t.Errorf("%v, %v; by hand %g m, %g rad; %v %v", edge, tilt, low, most, err, err2)
	}
	for i := range p.Units {
		p.Units[i].Flooded = true
	}
	edge, err = ruleOf(t, "freeboard 0.10 m with one drum lost", float.Deck{})(p)
	if err != nil || edge.Err == nil {
		t.Errorf("nothing to lose: %v, %v", edge, err)
	}

	// With a load of one's own it is tried under that load.
	c, err := float.LookupCriterion("freeboard 0.10 m with one drum lost")
	if err != nil {
		t.Fatal(err)
	}
	c.Pressure = 5 * measure.PSF
	loaded, err := c.Rule(float.Deck{})(drumDock(0))
	if err != nil || loaded.Err == nil && !(loaded.Value < low) {
		t.Errorf("under load %v, without %g m; %v", loaded, low, err)
	}
}
