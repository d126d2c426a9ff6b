package fasten_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// hanger is invented.
func hanger() fasten.Connector {
	f := fasten.Forces{Down: 900 * lb, Up: 500 * lb, Lateral: 200 * lb, Along: 150 * lb, Reversal: 100 * lb}
	return fasten.Connector{
		Printed: f, For: fasten.Forces{Down: 1, Up: 1, Lateral: 1, Along: 1, Reversal: 1}, Basis: 0.5,
		Nail: must(fasten.Lookup("10d common nail")), HeaderNails: 12, JoistNails: 8, Steel: 0.06 * in,
	}
}

var dry = fasten.Service{Dry: true, Seasoned: true}

func asked(c fasten.Connector, f fasten.Forces, g float64, s fasten.Service, d lumber.Duration) measure.Check {
	return must(c.Check(f, wood(g), s, d))[0]
}

// What is printed is adjusted by duration, species and moisture, never upward,
// and bounded by the nails.
func TestConnectorAdjusted(t *testing.T) {
	down := fasten.Forces{Down: 1}
	if c := asked(hanger(), down, 0.5, dry, lumber.TenYears); math.Abs(c.Limit/lb-900) > 1e-9 || c.Verdict() != measure.Holds {
		t.Errorf("as printed: %v", c)
	}
	if c := asked(hanger(), down, 0.55, dry, lumber.TenMinutes); math.Abs(c.Limit/lb-900) > 1e-9 {
		t.Errorf("denser wood and a short load raise a tested figure: %v", c)
	}
	if c := asked(hanger(), down, 0.5, dry, lumber.Permanent); math.Abs(c.Limit/lb-810) > 1e-9 {
		t.Errorf("permanent load: %v, want 0.9 of the figure", c)
	}
	if c := asked(hanger(), down, 0.5, fasten.Service{}, lumber.TenYears); math.Abs(c.Limit/lb-630) > 1e-9 {
		t.Errorf("wet: %v, want 0.7 of the figure", c)
	}
	// Lighter wood by the step of the nails' own value.
	z := func(g float64) float64 {
		j := fasten.Joint{Fastener: hanger().Nail, Main: fasten.Piece{Grade: wood(g), Thickness: 3 * in}, Side: fasten.Piece{Material: fasten.Sheet, Thickness: 0.06 * in}}
		return must(j.Yield()).Z
	}
	if c := asked(hanger(), down, 0.42, dry, lumber.TenYears); math.Abs(c.Limit/lb-900*z(0.42)/z(0.5)) > 1e-6 {
		t.Errorf("lighter wood: %v, want %g", c, 900*z(0.42)/z(0.5))
	}
	// Few nails bound it.
	few := hanger()
	few.HeaderNails = 4
	if c := asked(few, down, 0.5, dry, lumber.TenYears); math.Abs(c.Limit-4*z(0.5)) > 1e-6 || len(c.Notes) == 0 {
		t.Errorf("four nails: %v, want %g N", c, 4*z(0.5))
	}
	few.JoistNails, few.HeaderNails = 1, 12
	for f, want := range map[fasten.Forces]float64{{Up: 1}: z(0.5) * 1.6, {Along: 1}: 150 * lb, {Reversal: 1}: 100 * lb} {
		if c := asked(few, f, 0.5, dry, lumber.TenMinutes); math.Abs(c.Limit-want) > 1e-6 {
			t.Errorf("one joist nail: %v, want %g N", c, want)
		}
	}
	few.Printed.Along, few.Printed.Reversal = 900*lb, 900*lb
	for _, f := range []fasten.Forces{{Along: 1}, {Reversal: 1}} {
		if c := asked(few, f, 0.5, dry, lumber.TenMinutes); math.Abs(c.Limit-z(0.5)*1.6) > 1e-6 {
			t.Errorf("one joist nail bounds it: %v, want %g N", c, z(0.5)*1.6)
		}
	}
	if c := asked(few, fasten.Forces{Lateral: 1}, 0.5, dry, lumber.TenYears); math.Abs(c.Limit/lb-200) > 1e-9 {
		t.Errorf("sideways: %v", c)
	}
	// Pulled out, wet smooth nails of the header give 0.25 of their withdrawal: 12
	// nails of 1380 G^2.5 D on 2.94 in.
	want := 0.25 * 12 * 1380 * math.Pow(0.5, 2.5) * 0.148 * 2.94
	strong := hanger()
	strong.Printed.Along = 5000 * lb
	if c := asked(strong, fasten.Forces{Along: 1}, 0.5, fasten.Service{}, lumber.TenYears); math.Abs(c.Limit/lb-want) > 1e-6*want {
		t.Errorf("pulled out of its header: %v, want %.1f lbf", c, want)
	}
}

// What is not printed or not listed is 0; what is not known is no answer.
func TestConnectorCaution(t *testing.T) {
	c := hanger()
	c.Printed.Along = 0
	if k := asked(c, fasten.Forces{Along: 1}, 0.5, dry, lumber.TenYears); k.Limit != 0 || k.Verdict() != measure.Short || !strings.Contains(strings.Join(k.Notes, ""), "angles or bolts") {
		t.Errorf("not printed: %v", k)
	}
	c = hanger()
	c.Screws = true
	if k := asked(c, fasten.Forces{Down: 1}, 0.5, dry, lumber.TenYears); k.Limit != 0 || k.Verdict() != measure.Short {
		t.Errorf("screws: %v", k)
	}
	c.ScrewsListed = true
	if k := asked(c, fasten.Forces{Down: 1}, 0.5, dry, lumber.TenYears); k.Verdict() != measure.Holds {
		t.Errorf("listed screws: %v", k)
	}
	for name, change := range map[string]func(c *fasten.Connector){
		"nails":        func(c *fasten.Connector) { c.Nail = fasten.Fastener{} },
		"a screw":      func(c *fasten.Connector) { c.Nail = must(fasten.Lookup("No.10 x 3 wood screw")) },
		"sheet":        func(c *fasten.Connector) { c.Steel = 0 },
		"header nails": func(c *fasten.Connector) { c.HeaderNails = 0 },
		"joist nails":  func(c *fasten.Connector) { c.JoistNails = 0 },
	} {
		c := hanger()
		change(&c)
		if k := asked(c, fasten.Forces{Up: 1}, 0.42, dry, lumber.TenYears); k.Verdict() != measure.NoAnswer || k.Err == nil {
			t.Errorf("%s: %v", name, k)
		}
	}
	// A figure whose duration and species are not said counts as the longest and densest.
	c = hanger()
	c.For, c.Basis = fasten.Forces{}, 0
	k := asked(c, fasten.Forces{Down: 1}, 0.5, dry, lumber.TenYears)
	z := func(g float64) float64 {
		j := fasten.Joint{Fastener: hanger().Nail, Main: fasten.Piece{Grade: wood(g), Thickness: 3 * in}, Side: fasten.Piece{Material: fasten.Sheet, Thickness: 0.06 * in}}
		return must(j.Yield()).Z
	}
	if want := 900 / 1.6 * z(0.5) / z(0.55); math.Abs(k.Limit/lb-want) > 1e-6 || len(k.Rests) < 3 {
		t.Errorf("basis not said: %v, want %g lbf", k, want)
	}
	if k := asked(hanger(), fasten.Forces{Down: 1}, 0, dry, lumber.TenYears); k.Verdict() != measure.NoAnswer {
		t.Errorf("wood not known: %v", k)
	}
	if k := asked(hanger(), fasten.Forces{Down: 1}, 0.5, fasten.Service{Temperature: 90}, lumber.TenYears); k.Verdict() != measure.NoAnswer {
		t.Errorf("too hot: %v", k)
	}
	for name, change := range map[string]func(c *fasten.Connector){
		"negative figure": func(c *fasten.Connector) { c.Printed.Up = -1 },
		"factor over 1.6": func(c *fasten.Connector) { c.For.Down = 2 },
		"NaN basis":       func(c *fasten.Connector) { c.Basis = math.NaN() },
		"nails":           func(c *fasten.Connector) { c.JoistNails = -1 },
	} {
		c := hanger()
		change(&c)
		if _, err := c.Check(fasten.Forces{Down: 1}, wood(0.5), dry, lumber.TenYears); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := hanger().Check(fasten.Forces{Down: math.NaN()}, wood(0.5), dry, lumber.TenYears); !errors.Is(err, measure.ErrRange) {
		t.Errorf("NaN asked: %v", err)
	}
	if _, err := hanger().Check(fasten.Forces{Down: 1}, wood(0.5), dry, 99); err == nil {
		t.Error("an unknown duration passes")
	}
}

// The tie: what is not known gives no answer, each loss counts, both ways that a
// drum can go are checked.
func TestTie(t *testing.T) {
	tie := fasten.Tie{Strength: 10000, Efficiency: 0.8, Point: 5000}
	x, factors, err := tie.Allowable()
	if err != nil || math.Abs(x-10000*0.8*0.5/12) > 1e-9 || len(factors) != 4 {
		t.Errorf("square edge, no factor given: %g, %v, %v", x, factors, err)
	}
	tie.Rounded, tie.DesignFactor, tie.Parts = true, 5, 2
	if x, _, _ := tie.Allowable(); math.Abs(x-3200) > 1e-9 {
		t.Errorf("rounded, two parts: %g", x)
	}
	drum := fasten.Drum{Mass: 10, Leak: 20, Drag: 100, Push: 2000, Above: true, Watched: true}
	checks := must(tie.Check(drum))
	if len(checks) != 2 {
		t.Fatalf("a drum under joists is only hung: %v", checks)
	}
	if want := 2*30*measure.Gravity + 100; math.Abs(checks[0].Value-want) > 1e-9 || checks[0].Verdict() != measure.Holds {
		t.Errorf("%v, want %g N", checks[0], want)
	}
	drum.Above = false
	checks = must(tie.Check(drum))
	if want := 2000 - 10*measure.Gravity + 100; len(checks) != 4 || math.Abs(checks[2].Value-want) > 1e-9 {
		t.Errorf("nothing above: %v, want %g N", checks, want)
	}
	drum.Push = 0
	checks = must(tie.Check(drum))
	if checks[2].Verdict() != measure.NoAnswer || checks[3].Verdict() != measure.NoAnswer || checks[0].Verdict() != measure.Holds {
		t.Errorf("push not known: %v", checks)
	}
	for name, change := range map[string]func(tie *fasten.Tie){
		"efficiency": func(tie *fasten.Tie) { tie.Efficiency = 0 },
		"stiffness":  func(tie *fasten.Tie) { tie.Slack = 0.02 },
	} {
		u := tie
		change(&u)
		if c := must(u.Check(drum))[0]; c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
			t.Errorf("%s not known: %v", name, c)
		}
	}
	drum.Watched = false
	if c := must(tie.Check(drum))[0]; c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
		t.Errorf("neither its water nor its size known: %v", c)
	}
	drum.Push = 2000
	if c, want := must(tie.Check(drum))[0], 2*(10*measure.Gravity+2000)+100; math.Abs(c.Value-want) > 1e-9 {
		t.Errorf("nobody looks into the drum: %v, want %g N", c, want)
	}
	u := tie
	u.Point = 0
	if c := must(u.Check(drum))[1]; c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
		t.Errorf("lip not known: %v", c)
	}
	for _, bad := range []fasten.Tie{{}, {Strength: math.NaN()}, {Strength: 1, Efficiency: 1.1}, {Strength: 1, DesignFactor: 0.5}, {Strength: 1, DesignFactor: math.NaN()}, {Strength: 1, Slack: -1}, {Strength: 1, Parts: -1}} {
		if _, err := bad.Check(drum); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", bad, err)
		}
		if _, _, err := bad.Allowable(); err == nil {
			t.Errorf("%+v: allowable without error", bad)
		}
		if _, err := bad.Jerk(1); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: jerk %v", bad, err)
		}
	}
	if _, err := tie.Jerk(math.NaN()); err == nil {
		t.Error("jerk of NaN")
	}
	for _, bad := range []fasten.Drum{{}, {Mass: 1, Leak: -1}, {Mass: 1, Drag: math.NaN()}, {Mass: 1, Push: math.Inf(1)}} {
		if _, err := tie.Check(bad); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", bad, err)
		}
	}
}

// The pin: stresses against shares of the yield strength; unknown steel no answer.
func TestPin(t *testing.T) {
	p := fasten.Pin{Diameter: 0.016, Lug: 0.010, Leaf: 0.006, Yield: 300 * measure.Megapascal}
	checks := must(p.Check(1000))
	for i, want := range []float64{120, 225, 225} { // bearing on plates of 250 MPa
		if math.Abs(checks[i].Limit/measure.Megapascal-want) > 1e-9 || checks[i].Verdict() != measure.Holds {
			t.Errorf("%v, want a limit of %g MPa", checks[i], want)
		}
	}
	thin := p
	thin.Leaf = 0.004 // both leaves together are less than the lug
	if c := must(thin.Check(1000))[2]; math.Abs(c.Value-1000/(0.016*0.008)) > 1e-3 {
		t.Errorf("thin leaves: %v", c)
	}
	p.Plates = 200 * measure.Megapascal
	if c := must(p.Check(1000))[2]; math.Abs(c.Limit/measure.Megapascal-180) > 1e-9 {
		t.Errorf("weaker plates: %v", c)
	}
	p.Yield = 0
	for _, c := range must(p.Check(1000)) {
		if c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
			t.Errorf("steel not known: %v", c)
		}
	}
	for _, bad := range []fasten.Pin{{}, {Diameter: 0.01, Lug: 0.01}, {Diameter: 0.01, Lug: math.NaN(), Leaf: 0.01}} {
		if _, err := bad.Check(1); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", bad, err)
		}
	}
	if _, err := p.Check(-1); err == nil {
		t.Error("a negative force passes")
	}
}

// Slip adds up play and give over a path.
func TestSlip(t *testing.T) {
	j := bolted()
	if s := must(fasten.Slip(0, j, j, j)); math.Abs(s/in-3.0/16) > 1e-9 {
		t.Errorf("play of three joints %g in, want 3/16", s/in)
	}
	j.Hole = 0.5 * in
	if s := must(fasten.Slip(0, j)); s != 0 {
		t.Errorf("a tight hole plays %g", s)
	}
	j.PerRow = 2
	want := 1000 / (2 * 180000 * math.Pow(0.5, 1.5) * lb / in)
	if s := must(fasten.Slip(1000, j)); math.Abs(s-want) > 1e-12 {
		t.Errorf("give %g, want %g", s, want)
	}
	k := j
	k.Side.Material, k.Side.Thickness = fasten.Plate, 0.25*in
	if s := must(fasten.Slip(1000, k)); math.Abs(s-want*180/270) > 1e-12 {
		t.Errorf("give at steel %g, want %g", s, want*180/270)
	}
	quarter := bolted()
	quarter.Fastener = must(fasten.Lookup("1/4 bolt"))
	if s := must(fasten.Slip(1000, quarter)); !(s > in/16) {
		t.Errorf("a 1/4 in bolt gives %g", s)
	}
	nail := j
	nail.Fastener = must(fasten.Lookup("16d common nail"))
	if s := must(fasten.Slip(0, nail)); s != 0 {
		t.Errorf("nails play %g", s)
	}
	if _, err := fasten.Slip(1, nail); !errors.Is(err, measure.ErrNotComputed) {
		t.Errorf("nails' modulus: %v", err)
	}
	j.Hole = 0.3 * in
	for _, bad := range []fasten.Joint{j, {}, {Main: j.Main, Side: j.Side}} {
		if _, err := fasten.Slip(0, bad); err == nil {
			t.Errorf("no error for %+v", bad)
		}
	}
	if _, err := fasten.Slip(-1); err == nil {
		t.Error("a negative force passes")
	}
}

// Plates thinner than a foil are refused, not divided by.
func TestPinFoil(t *testing.T) {
	for _, p := range []fasten.Pin{{Diameter: 0.02, Lug: 5e-324, Leaf: 0.01}, {Diameter: 0.02, Lug: 0.01, Leaf: 5e-324}} {
		if _, _, bearing, err := p.Stresses(0); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %g, %v", p, bearing, err)
		}
	}
}
