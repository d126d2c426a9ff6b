package float_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// The dock of these tests is one box, so that every criterion has a closed form:
// length l, width b, height h, its bottom at z = 0, the deck edge at its top, the
// dead mass spread over the deck at the height zg.
const (
	boxL, boxB, boxH = 6.0, 4.0, 0.9
	boxMass, boxZG   = 5000.0, 0.7
	boxRho           = 1000.0
)

func boxDock() *float.Platform {
	return &float.Platform{
		Units:   []float.Unit{{Body: float.Block{Length: boxL, Width: boxB, Height: boxH}, At: r3.Vec{Z: boxH / 2}}},
		Weights: []float.Weight{{Mass: boxMass, At: r3.Vec{Z: boxZG}}},
		Corners: []r3.Vec{
			{X: -boxL / 2, Y: -boxB / 2, Z: boxH},
			{X: boxL / 2, Y: -boxB / 2, Z: boxH},
			{X: boxL / 2, Y: boxB / 2, Z: boxH},
			{X: -boxL / 2, Y: boxB / 2, Z: boxH},
		},
		Density: boxRho,
	}
}

// boxTilt returns the tilt of the box about one axis under a load m at the lever y
// and height z, by the wall-sided formula (exact while the bilge is wet and the
// deck edge dry): righting lever sin(t) (GM + BM tan²t / 2) = y' cos t. across is
// the breadth at right angles to the axis, along the other one.
func boxTilt(m, y, z, across, along float64) float64 {
	total := boxMass + m
	v := total / boxRho
	draft := v / (across * along)
	bm := along * across * across * across / 12 / v
	kg := (boxMass*boxZG + m*z) / total
	gm := draft/2 + bm - kg
	lever := m * y / total
	lo, hi := 0.0, 1.0
	for range 80 {
		t := (lo + hi) / 2
		if math.Sin(t)*(gm+bm*math.Tan(t)*math.Tan(t)/2) < lever*math.Cos(t) {
			lo = t
		} else {
			hi = t
		}
	}
	return lo
}

func ruleOf(t *testing.T, name string, d float.Deck) float.Rule {
	t.Helper()
	c, err := float.LookupCriterion(name)
	if err != nil {
		t.Fatal(err)
	}
	return c.Rule(d)
}

// TestCriteriaBox compares every criterion that has a closed form on the box with
// that form, worked out here without the package.
func TestCriteriaBox(t *testing.T) {
	const g, lb, inch, ft = 9.80665, 0.45359237, 0.0254, 0.3048
	draft := boxMass / (boxRho * boxL * boxB)
	crowd := 3.75 * 75 * g
	under := func(q float64) float64 { return (boxMass + q*boxL*boxB/g) / (boxRho * boxL * boxB) } // draft
	gm := func(q float64) float64 {
		d := under(q)
		v := d * boxL * boxB
		m := q * boxL * boxB / g
		kg := (boxMass*boxZG + m*(boxH+1)) / (boxMass + m)
		return d/2 + boxL*boxB*boxB*boxB/12/v - kg
	}
	halfTilt := boxTilt(crowd*boxL*boxB/2/g, boxB/4, boxH+1, boxB, boxL)
	endTilt := boxTilt(400*lb, boxL/2-2*ft, boxH+1, boxL, boxB)
	// With the load the middle sinks by m/(ρLB)·cos(t) or so: heights are measured
	// to the level at which the wet volume is right, v = LB (draft at the centre
	// line) cos t for a wall-sided box.
	endFreeboard := func(tilt, m float64) float64 {
		centre := (boxMass + m) / (boxRho * boxL * boxB) // depth of the bottom's middle along the box's own z
		return (boxH-centre)*math.Cos(tilt) - boxL/2*math.Sin(tilt)
	}
	deck := float.Deck{Depth: 9 * inch, Drawn: 0.6, Walk: 0.5}
	for _, c := range []struct {
		name  string
		value float64
		tol   float64
	}{
		{"20 psf over the deck", (boxH - draft) * boxRho * g, 1e-6},
		{"7 in from water to frame", boxH - draft - 9*inch, 1e-12},
		{"10 in to the deck", boxH - draft, 1e-12},
		{"cross level 3/8 in in 3 ft", 0, 1e-12},
		{"end loses at most 4 in", boxH - draft - endFreeboard(endTilt, 400*lb), 1e-9},
		{"freeboard within 2 in of the drawing", math.Abs(boxH - draft - 0.6), 1e-12},
		{"end level with the walk within 3 in", boxH - draft - 0.5, 1e-12},
		{"50 psf over the deck", (boxH - draft) * boxRho * g, 1e-6},
		{"crowd of 3.75 persons/m² over the deck", (boxH - draft) * boxRho * g, 1e-6},
		{"100 psf over the deck", (boxH - draft) * boxRho * g, 1e-6},
		{"freeboard 0.15 m", boxH - under(crowd), 1e-12},
		{"metacentric height 0.15 m", gm(crowd), 1e-9},
		{"heel at most 10 deg", halfTilt, 1e-9},
		{"deck at least 4 ft wide", boxB, 0},
		{"deck at most twice as long as wide", boxL / boxB, 1e-15},
		{"steady dock, 6 ft wide", boxB, 0},
		{"steady dock, 20 ft long", boxL, 0},
		{"steady dock, 450 kg", boxMass, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			check, err := ruleOf(t, c.name, deck)(boxDock())
			if err != nil || check.Err != nil {
				t.Fatal(err, check.Err)
			}
			if math.Abs(check.Value-c.value) > c.tol*math.Max(1, math.Abs(c.value)) {
				t.Errorf("value %.12g, by hand %.12g", check.Value, c.value)
			}
			good := c.value <= check.Limit
			if check.AtLeast {
				good = c.value >= check.Limit
			}
			if (check.Verdict() == measure.Holds) != good || check.Verdict() == measure.NoAnswer {
				t.Errorf("verdict %v: %v", check.Verdict(), check)
			}
			if check.Rule == nil || check.Rule.Status == measure.Unstated {
				t.Error("no source")
			}
		})
	}
}

// TestCriteriaShare checks our own two rules on the box under the loads of the
// rules beside them: 20 psf on the deck puts (draft)/(height) under; the lowest
// edge is where the tilt rule's loads put it.
func TestCriteriaShare(t *testing.T) {
	const g, lb, ft = 9.80665, 0.45359237, 0.3048
	rules, err := float.Rules(float.Deck{Depth: 0.2}, "20 psf over the deck", "drums at most 85 % immersed", "deck edge dry")
	if err != nil {
		t.Fatal(err)
	}
	m := 20 * lb / (ft * ft) * boxL * boxB
	want := (boxMass + m) / (boxRho * boxL * boxB * boxH)
	check, err := rules[1](boxDock())
	if err != nil || math.Abs(check.Value-want) > 1e-12 || check.Verdict() != measure.Holds {
		t.Errorf("share %v, by hand %.6f; %v", check, want, err)
	}
	if !slices.ContainsFunc(check.Notes, func(s string) bool { return strings.Contains(s, "worst under 0.958 kPa over the deck") }) {
		t.Errorf("notes %q do not say which load decides", check.Notes)
	}
	dry, err := rules[2](boxDock())
	if err != nil || math.Abs(dry.Value-boxH*(1-want)) > 1e-12 {
		t.Errorf("edge %v, by hand %g m; %v", dry, boxH*(1-want), err)
	}

	// With the tilt rule beside them its one-sided loads count too.
	rules, err = float.Rules(float.Deck{}, "tilt at most 5 deg", "deck edge dry")
	if err != nil {
		t.Fatal(err)
	}
	tilt, err := rules[0](boxDock())
	lower, err2 := rules[1](boxDock())
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	half := boxTilt(m/2, boxB/4, boxH+1, boxB, boxL)
	edge := (boxH-(boxMass+m/2)/(boxRho*boxL*boxB))*math.Cos(half) - boxB/2*math.Sin(half)
	if tilt.Value < half-1e-9 || lower.Value > edge+1e-9 {
		t.Errorf("tilt %v, half the deck loaded gives %.6f; edge %v, by hand at most %.6f", tilt, half, lower, edge)
	}
}

// TestCriteriaDefaultSet holds the default set, by name, and the statuses under which
// rows enter the table.
func TestCriteriaDefaultSet(t *testing.T) {
	want := []string{
		"20 psf over the deck", "400 lb on one spot", "7 in from water to frame", "end loses at most 4 in",
		"cross level 3/8 in in 3 ft", "tilt at most 5 deg", "10 in to the deck", "drums at most 85 % immersed", "deck edge dry",
	}
	var got []string
	seen := map[string]bool{}
	for _, c := range float.Criteria() {
		if c.Default {
			got = append(got, c.Name)
		}
		if seen[c.Name] {
			t.Errorf("%q twice", c.Name)
		}
		seen[c.Name] = true
		if c.Source == nil || c.What == "" {
			t.Errorf("%q has no source or does not say what it measures", c.Name)
			continue
		}
		switch c.Source.Status {
		case measure.Read, measure.Quoted, measure.OwnChoice:
		default:
			t.Errorf("%q enters with status %v", c.Name, c.Source.Status)
		}
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("default set (-want +got):\n%s", d)
	}
	rules, err := float.Rules(float.Deck{Depth: 0.25})
	if err != nil || len(rules) != len(want) {
		t.Fatalf("%d rules, %v", len(rules), err)
	}
	for i, r := range rules {
		check, err := r(boxDock())
		if err != nil || check.Name != want[i] || check.Verdict() == measure.NoAnswer {
			t.Errorf("%s: %v, %v", want[i], check, err)
		}
	}
	tilt, err := float.LookupCriterion("TILT at most 5 deg ")
	if err != nil || tilt.Source.Status != measure.Quoted || !strings.Contains(tilt.Source.String(), "as quoted") {
		t.Errorf("the tilt rule is second-hand: %v, %v", tilt.Source, err)
	}
	if _, err := float.LookupCriterion("3 deg"); !errors.Is(err, measure.ErrName) {
		t.Errorf("unknown name: %v", err)
	}
	if _, err := float.Rules(float.Deck{}, "10 in to the deck", "3 deg"); !errors.Is(err, measure.ErrName) {
		t.Errorf("unknown name among others: %v", err)
	}
	all := float.Criteria()
	all[0].Limit = 1
	if again := float.Criteria(); again[0].Limit == 1 {
		t.Error("a caller can change the table")
	}
}

// TestCriteriaOwn gives a row another limit, as a town with a rule of its own.
func TestCriteriaOwn(t *testing.T) {
	c, err := float.LookupCriterion("10 in to the deck")
	if err != nil {
		t.Fatal(err)
	}
	c.Name, c.Limit = "28 in to the deck", 28*measure.Inch
	c.Source = &measure.Source{Title: "an invented town", Status: measure.OwnChoice}
	check, err := c.Rule(float.Deck{})(boxDock()) // 0.9 - 5000/24000 = 0.6917 m = 27.2 in
	if err != nil || check.Verdict() != measure.Short || check.Name != "28 in to the deck" {
		t.Errorf("%v, %v", check, err)
	}
}

// TestDrumNotice checks that the notice comes with every check of a dock on
// cylinders, names its regulations, and stays away from other floats.
func TestDrumNotice(t *testing.T) {
	for _, word := range []string{"63 FR 35826", "ER 1130-2-406", "18 CFR 1304.400"} {
		if !strings.Contains(float.DrumNotice, word) {
			t.Errorf("the notice does not name %s", word)
		}
	}
	p := drumDock(0)
	rules, err := float.Rules(float.Deck{Depth: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rules {
		check, err := r(p)
		if err != nil || !slices.Contains(check.Notes, float.DrumNotice) {
			t.Errorf("%v, %v: notes %q", check, err, check.Notes)
		}
		check, err = r(boxDock())
		if err != nil || slices.Contains(check.Notes, float.DrumNotice) {
			t.Errorf("box: %v, %v: notes %q", check, err, check.Notes)
		}
	}
	if (*float.Platform)(nil).Notices() != nil || (float.State{}).Notices() != nil {
		t.Error("no platform, yet a notice")
	}
	for _, c := range []struct {
		dock *float.Platform
		want []string
	}{{drumDock(0), []string{float.DrumNotice}}, {boxDock(), nil}} {
		s, err := c.dock.Settle()
		if err != nil {
			t.Fatal(err)
		}
		curve, err := c.dock.Righting(0, []float64{-0.1, 0, 0.1})
		if err != nil {
			t.Fatal(err)
		}
		post, err := c.dock.With().Post(float.Crowd{})
		if err != nil {
			t.Fatal(err)
		}
		for i, got := range [][]string{s.Notices(), curve.Notices, post.Notices} {
			if !slices.Equal(got, c.want) {
				t.Errorf("result %d: notices %q, want %q", i, got, c.want)
			}
		}
	}
}

// drumDock is an invented dock, 8 ft by 16 ft on eight drums, its frame of 420 kg
// and the extra mass at a corner.
func drumDock(extra float64) *float.Platform {
	p := &float.Platform{Density: 999.9}
	for _, x := range []float64{-1.9, -0.65, 0.65, 1.9} {
		for _, y := range []float64{-0.85, 0.85} {
			p.Units = append(p.Units, float.Unit{
				Body: float.Cylinder{Diameter: 0.5733, Length: 0.853}, At: r3.Vec{X: x, Y: y, Z: -0.45}, Mass: 18.1,
			})
		}
	}
	p.Weights = []float.Weight{{Mass: 420, At: r3.Vec{Z: -0.1}}, {Mass: extra, At: r3.Vec{X: 2.4, Y: 1.2}}}
	p.Corners = []r3.Vec{{X: -2.44, Y: -1.22}, {X: 2.44, Y: -1.22}, {X: 2.44, Y: 1.22}, {X: -2.44, Y: 1.22}}
	return p
}

// TestCriteriaSpot checks the load on one spot, and what ends it, by Settle itself:
// a little less leaves every place dry, a little more does not.
func TestCriteriaSpot(t *testing.T) {
	p := drumDock(0)
	check, err := ruleOf(t, "400 lb on one spot", float.Deck{})(p)
	if err != nil || check.Err != nil {
		t.Fatal(err, check)
	}
	dry := func(m float64) bool {
		for _, x := range []float64{-2.44 + 0.1524, 2.44 - 0.1524} {
			for _, y := range []float64{-1.22 + 0.1524, 1.22 - 0.1524} {
				q := *p
				q.Weights = append(slices.Clone(p.Weights), float.Weight{Mass: m, At: r3.Vec{X: x, Y: y, Z: 1}})
				s, err := q.Settle()
				if err != nil {
					return false
				}
				if _, h, err := s.Lowest(); err != nil || h < 0 {
					return false
				}
			}
		}
		return true
	}
	if !dry(check.Value*0.9999) || dry(check.Value*1.0001) {
		t.Errorf("carries %g kg on a corner: dry at a little less %v, at a little more %v",
			check.Value, dry(check.Value*0.9999), dry(check.Value*1.0001))
	}
}

// TestCriteriaFailures checks what a dock that fails gives: short, and how it fails in
// the place of a number.
func TestCriteriaFailures(t *testing.T) {
	sunk := boxDock()
	sunk.Weights[0].Mass = 30000
	tipsy := boxDock()
	tipsy.Weights[0].At.Z = 12
	over := boxDock() // floats, but not with the load
	over.Weights[0].Mass = 20500
	for _, c := range []struct {
		name string
		p    *float.Platform
		want measure.Verdict
		why  error
	}{
		{"20 psf over the deck", sunk, measure.Short, nil},
		{"400 lb on one spot", sunk, measure.Short, nil},
		{"tilt at most 5 deg", sunk, measure.Short, float.ErrSinks},
		{"drums at most 85 % immersed", sunk, measure.Short, float.ErrSinks},
		{"10 in to the deck", sunk, measure.Short, float.ErrSinks},
		{"end loses at most 4 in", sunk, measure.Short, float.ErrSinks},
		{"steady dock, 450 kg", sunk, measure.Short, float.ErrSinks},
		{"tilt at most 5 deg", tipsy, measure.Short, float.ErrCapsizes},
		{"deck edge dry", tipsy, measure.Short, float.ErrCapsizes},
		{"20 psf over the deck", over, measure.Short, nil},
		{"drums at most 85 % immersed", over, measure.Short, float.ErrSinks},
	} {
		check, err := ruleOf(t, c.name, float.Deck{Depth: 0.2})(c.p)
		if err != nil || check.Verdict() != c.want {
			t.Errorf("%s: %v, %v", c.name, check, err)
		}
		if c.why != nil && check.Numbers(measure.SI) != c.why.Error()+"; must be afloat" {
			t.Errorf("%s: %s, want it to say %v", c.name, check.Numbers(measure.SI), c.why)
		}
	}
}

// TestCriteriaUnknown checks that what is not known gives no answer, and that
// malformed data is an error.
func TestCriteriaUnknown(t *testing.T) {
	bare := boxDock()
	bare.Corners = nil
	bowtie := boxDock()
	bowtie.Corners[1], bowtie.Corners[2] = bowtie.Corners[2], bowtie.Corners[1]
	flat := boxDock()
	flat.Corners = flat.Corners[:2]
	line := boxDock()
	for i := range line.Corners {
		line.Corners[i].Y = 0
	}
	for _, c := range float.Criteria() {
		check, err := c.Rule(float.Deck{})(bare)
		if err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
		needs := !slices.Contains([]string{"cross level 3/8 in in 3 ft", "steady dock, 450 kg", "tilt at most 10 deg with one drum lost"}, c.Name)
		if needs != (check.Verdict() == measure.NoAnswer) || needs && !errors.Is(check.Err, measure.ErrUnknown) {
			// A box has one float; losing it is a failure of another kind.
			t.Errorf("%s without corners: %v", c.Name, check)
		}
	}
	for _, p := range []*float.Platform{bowtie, flat, line} {
		check, err := ruleOf(t, "20 psf over the deck", float.Deck{})(p)
		if err != nil || !errors.Is(check.Err, measure.ErrUnknown) {
			t.Errorf("corners %v: %v, %v", p.Corners, check, err)
		}
	}
	check, err := ruleOf(t, "7 in from water to frame", float.Deck{})(boxDock())
	if err != nil || !errors.Is(check.Err, measure.ErrUnknown) {
		t.Errorf("frame depth not known: %v, %v", check, err)
	}

	good, err := float.LookupCriterion("end loses at most 4 in")
	if err != nil {
		t.Fatal(err)
	}
	wide := good
	wide.Inset = 3.5
	check, err = wide.Rule(float.Deck{})(boxDock())
	if err != nil || !errors.Is(check.Err, measure.ErrRange) {
		t.Errorf("load past the middle: %v, %v", check, err)
	}
	spot, _ := float.LookupCriterion("400 lb on one spot")
	spot.Inset = 2.1
	check, err = spot.Rule(float.Deck{})(boxDock())
	if err != nil || !errors.Is(check.Err, measure.ErrRange) {
		t.Errorf("spot past the middle: %v, %v", check, err)
	}

	nan := math.NaN()
	badLimit, badLoad, badMass, badAbove := good, good, good, good
	badLimit.Limit, badLoad.Pressure, badMass.Mass, badAbove.Above = nan, -1, math.Inf(1), 11
	for _, c := range []float.Criterion{badLimit, badLoad, badMass, badAbove, {Name: "empty"}} {
		if _, err := c.Rule(float.Deck{})(boxDock()); err == nil {
			t.Errorf("%+v: no error", c)
		}
		if _, err := good.Rule(float.Deck{}, c)(boxDock()); err == nil {
			t.Errorf("%+v beside a good one: no error", c)
		}
	}
	for _, d := range []float.Deck{{Depth: nan}, {Depth: -0.1}, {Drawn: 100}, {Walk: math.Inf(-1)}} {
		if _, err := good.Rule(d)(boxDock()); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", d, err)
		}
	}
	if _, err := good.Rule(float.Deck{})(nil); err == nil {
		t.Error("no platform, yet no error")
	}
	sick := boxDock()
	sick.Density = nan
	if _, err := good.Rule(float.Deck{})(sick); !errors.Is(err, measure.ErrRange) {
		t.Errorf("NaN density: %v", err)
	}
}

// TestCriteriaAsLoaded judges the dock with what is aboard, and posts a number by
// it: with that many at the worst place the rules hold, with one more they do not.
func TestCriteriaAsLoaded(t *testing.T) {
	tilt, err := float.LookupCriterion("tilt at most 5 deg")
	if err != nil {
		t.Fatal(err)
	}
	p := drumDock(150)
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	rule := tilt.AsLoaded().Rule(float.Deck{})
	check, err := rule(p)
	if err != nil || check.Value != s.Tilt() {
		t.Errorf("%v, %v; settled at %g rad", check, err, s.Tilt())
	}
	every, err := float.LookupCriterion("deck edge dry")
	if err != nil {
		t.Fatal(err)
	}
	dry := every.AsLoaded().Rule(float.Deck{})
	check, err = dry(p)
	if _, h, _ := s.Lowest(); err != nil || check.Value != h {
		t.Errorf("%v, %v; lowest edge %g m", check, err, h)
	}

	bare := drumDock(0)
	post, err := bare.Post(float.Crowd{}, rule, dry)
	if err != nil || post.People < 1 {
		t.Fatalf("%+v, %v", post, err)
	}
	for extra, want := range []measure.Verdict{measure.Holds, measure.Short} {
		worst, err := bare.WorstCrowd(float.Crowd{People: post.People + extra})
		if err != nil {
			t.Fatal(err)
		}
		got := measure.Holds
		if worst.State.Tilt() > 5*math.Pi/180 || worst.Height < 0 {
			got = measure.Short
		}
		if got != want {
			t.Errorf("%d people: %v, tilt %g rad, edge %g m", post.People+extra, got, worst.State.Tilt(), worst.Height)
		}
	}
}

// TestCriteriaOwnLoad gives rows that have no load one: the freeboard of the box
// under 20 psf, and its tilt under a load on spots alone.
func TestCriteriaOwnLoad(t *testing.T) {
	const lb, ft = 0.45359237, 0.3048
	c, err := float.LookupCriterion("10 in to the deck")
	if err != nil {
		t.Fatal(err)
	}
	c.Pressure = 20 * measure.PSF
	want := boxH - (boxMass+20*lb/(ft*ft)*boxL*boxB)/(boxRho*boxL*boxB)
	check, err := c.Rule(float.Deck{})(boxDock())
	if err != nil || math.Abs(check.Value-want) > 1e-12 {
		t.Errorf("%v, %v; by hand %g m", check, err, want)
	}
	c.Mass, c.Inset = 2000, 0.1 // now in turn: a corner of the box is lower still
	both, err := c.Rule(float.Deck{})(boxDock())
	if err != nil || !(both.Value < want) {
		t.Errorf("%v, %v; under the even load alone %g m", both, err, want)
	}
	c, err = float.LookupCriterion("heel at most 10 deg")
	if err != nil {
		t.Fatal(err)
	}
	c.Pressure, c.Mass = 0, 200 // it is for the other kind of load
	check, err = c.Rule(float.Deck{})(boxDock())
	if err != nil || math.Abs(check.Value) > 1e-9 {
		t.Errorf("%v, %v; want the dead load's tilt, 0", check, err)
	}
}

// TestCriteriaCrossLevel puts a weight off the middle of the box: the rise in 3 ft
// of board is 3 ft times the sine of the heel, in closed form.
func TestCriteriaCrossLevel(t *testing.T) {
	p := boxDock()
	p.Weights = append(p.Weights, float.Weight{Mass: 350, At: r3.Vec{X: 0, Y: 1.1, Z: 1}})
	want := 3 * 0.3048 * math.Sin(boxTilt(350, 1.1, 1, boxB, boxL))
	check, err := ruleOf(t, "cross level 3/8 in in 3 ft", float.Deck{})(p)
	if err != nil || math.Abs(check.Value-want) > 1e-9 || check.Verdict() != measure.Short {
		t.Errorf("%v, %v; by hand %g m", check, err, want)
	}
}

// TestCriteriaLostIsNoLoad checks that losing a drum has limits of its own: it does
// not count among the loads under which the drums must stay 85 % or less.
func TestCriteriaLostIsNoLoad(t *testing.T) {
	alone, err := float.Rules(float.Deck{}, "drums at most 85 % immersed", "20 psf over the deck")
	beside, err2 := float.Rules(float.Deck{}, "drums at most 85 % immersed", "20 psf over the deck", "freeboard 0.10 m with one drum lost")
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	a, err := alone[0](drumDock(0))
	b, err2 := beside[0](drumDock(0))
	if err != nil || err2 != nil || a.Value != b.Value {
		t.Errorf("%v beside a lost drum %v; %v %v", a, b, err, err2)
	}
	// Nor does a lost drum under a load.
	c, err := float.LookupCriterion("freeboard 0.10 m with one drum lost")
	if err != nil {
		t.Fatal(err)
	}
	c.Pressure = 5 * measure.PSF
	every, err := float.LookupCriterion("drums at most 85 % immersed")
	if err != nil {
		t.Fatal(err)
	}
	d, err := every.Rule(float.Deck{}, every, c)(drumDock(0))
	s, err2 := drumDock(0).Settle()
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	u, err := s.Unit(0)
	if err != nil || math.Abs(d.Value-u.Share) > 1e-9 {
		t.Errorf("%v, %v; dead load alone %g", d, err, u.Share)
	}
}
