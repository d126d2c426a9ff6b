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

// TestPontoonHeel finds the same by Settle: the crowd of 20 psf, 18 m² of deck,
// 1757.7 kg, stands 0.5 m off the middle.
func TestPontoonHeel(t *testing.T) {
	p := tubeDock()
	crowd := 20 * measure.PSF * 18 / measure.Gravity
	at := func(y float64) float.State {
		q := *p
		q.Weights = append(slices.Clone(p.Weights), float.Weight{Mass: crowd, At: r3.Vec{Y: y, Z: 1.6}})
		s, err := q.Settle()
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	level, err := at(0).Unit(0)
	low, err2 := at(0.5).Unit(0)
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	want := 1 - low.Share - math.Max(0.25, low.Share-level.Share)
	check, err := ruleOf(t, "pontoon heel", float.Deck{})(p)
	if err != nil || math.Abs(check.Value-want) > 1e-9 {
		t.Errorf("%v, %v; by hand %g", check, err, want)
	}

	q := *p
	q.Weights = append(slices.Clone(p.Weights), float.Weight{Mass: crowd, At: r3.Vec{X: 3, Z: 1.6}})
	s, err := q.Settle()
	if err != nil {
		// Everybody at the end is too much: the rule must say so, not hold.
		check, err := ruleOf(t, "pontoon trim", float.Deck{})(p)
		if err != nil || check.Verdict() == measure.Holds {
			t.Errorf("%v, %v", check, err)
		}
		return
	}
	want = s.Height(r3.Vec{X: 3, Y: 1.2}) + 0.35*math.Hypot(s.Up.Y, s.Up.Z)
	check, err = ruleOf(t, "pontoon trim", float.Deck{})(p)
	if err != nil || math.Abs(check.Value-want) > 1e-9 {
		t.Errorf("%v, %v; by hand %g", check, err, want)
	}
}

// TestPontoonTrim uses a light crowd, so that the tubes' tops can be followed.
func TestPontoonTrim(t *testing.T) {
	p := tubeDock()
	c, err := float.CriterionNamed("pontoon trim")
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
	c, err := float.CriterionNamed("freeboard 0.10 m with one drum lost")
	if err != nil {
		t.Fatal(err)
	}
	c.Pressure = 5 * measure.PSF
	loaded, err := c.Rule(float.Deck{})(drumDock(0))
	if err != nil || loaded.Err == nil && !(loaded.Value < low) {
		t.Errorf("under load %v, without %g m; %v", loaded, low, err)
	}
}
