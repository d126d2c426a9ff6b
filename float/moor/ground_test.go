package moor_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// A dropped block never counts on more friction than one cast in place; a
// bottom without a row for it takes a finer one's.
func TestFriction(t *testing.T) {
	for _, bottom := range []string{"rock", "gravel", "coarse sand", "sand", "fine sand", "silt", "stiff clay", "medium clay"} {
		cast, err1 := moor.Factor("cast on", bottom)
		dropped, err2 := moor.Factor("dropped on", bottom)
		if err1 != nil || err2 != nil || !(dropped.Value > 0 && dropped.Value <= cast.Value) || dropped.Source == nil {
			t.Errorf("%s: %v, %v; %v, %v", bottom, cast, dropped, err1, err2)
		}
	}
	// The stand-ins are those of a finer bottom.
	for bottom, finer := range map[string]string{"rock": "gravel", "coarse sand": "sand", "stiff clay": "silt", "medium clay": "silt"} {
		a, err1 := moor.Factor("dropped on", bottom)
		b, err2 := moor.Factor("dropped on", finer)
		if err1 != nil || err2 != nil || a.Value != b.Value || a.Source.Status != measure.OwnChoice {
			t.Errorf("%s: %v, %s: %v, %v, %v", bottom, a, finer, b, err1, err2)
		}
	}
	if _, err := moor.Factor("dropped on", "soft mud"); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("soft mud: %v", err)
	}
	if _, err := moor.Factor("cast on", ""); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no bottom: %v", err)
	}
	if _, err := moor.Factor("cast on", "jelly"); !errors.Is(err, measure.ErrName) {
		t.Errorf("jelly: %v", err)
	}
}

// The block that is needed just holds; a heavier pull, a lift, a slope and a
// lighter stone each take from it.
func TestDeadWeight(t *testing.T) {
	d := moor.DeadWeight{Density: 2400, Bottom: "sand", Slope: 0.1}
	mass, err := d.Needed(800, 300)
	if err != nil {
		t.Fatal(err)
	}
	d.Mass = mass
	c, err := d.Check(800, 300)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "just holds", c.Limit, 800, 1e-9)
	holding := func(d moor.DeadWeight, lift float64) float64 {
		c, err := d.Check(1, lift)
		if err != nil {
			t.Fatal(err)
		}
		return c.Limit
	}
	less := d
	less.Slope = 0.2
	if holding(less, 300) >= holding(d, 300) || holding(d, 301) >= holding(d, 300) || holding(d, -50) <= holding(d, 0) {
		t.Error("slope or lift takes nothing")
	}
	less = d
	less.Density = 2000
	if holding(less, 0) >= holding(d, 0) {
		t.Error("a lighter stone holds as much")
	}
	if c, err := d.Check(0.001, 1e5); err != nil || c.Verdict() != measure.Short {
		t.Errorf("lifted off: %v, %v", c, err)
	}
	if c.Rests[0].Name != "friction on sand" || c.Rests[0].Text != c.Factors[0].Why || c.Rests[0].Known != measure.Assumed {
		t.Errorf("rests on %+v", c.Rests)
	}
	measured := d
	measured.Friction = 0.5
	if c, err := measured.Check(1, 0); err != nil || c.Rests[0].Known != measure.Measured {
		t.Errorf("%+v, %v", c, err)
	}
	steep := d
	steep.Slope = 0.5
	if _, err := steep.Needed(1, 0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("slides by itself: %v", err)
	}
	for name, d := range map[string]moor.DeadWeight{
		"material": {Mass: 100, Bottom: "sand"}, "bottom": {Mass: 100, Density: 2400}, "mud": {Mass: 100, Density: 2400, Bottom: "soft mud"},
	} {
		if c, err := d.Check(1, 0); err != nil || c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
			t.Errorf("%s unknown: %v, %v", name, c, err)
		}
		if _, err := d.Needed(1, 0); !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%s unknown: %v", name, err)
		}
	}
	nan := math.NaN()
	for name, f := range map[string]func() error{
		"mass": func() error {
			_, err := moor.DeadWeight{Mass: nan, Density: 2400, Bottom: "sand"}.Check(1, 0)
			return err
		},
		"floats": func() error { _, err := moor.DeadWeight{Mass: 1, Density: 900, Bottom: "sand"}.Check(1, 0); return err },
		"water":  func() error { _, err := moor.DeadWeight{Mass: 1, Density: 2400, Water: 1}.Weight(); return err },
		"slope": func() error {
			_, err := moor.DeadWeight{Mass: 1, Density: 2400, Bottom: "sand", Slope: 2}.Check(1, 0)
			return err
		},
		"friction": func() error { _, err := moor.DeadWeight{Mass: 1, Density: 2400, Friction: 9}.Check(1, 0); return err },
		"design": func() error {
			_, err := moor.DeadWeight{Mass: 1, Density: 2400, Friction: 0.4, Design: measure.Factor{Value: 0.5}}.Check(1, 0)
			return err
		},
		"pull":        func() error { _, err := d.Check(nan, 0); return err },
		"lift needed": func() error { _, err := d.Needed(1, nan); return err },
		"rated pull":  func() error { _, err := moor.Rated{Hold: 1}.Check(-1, 0); return err },
		"rated factor": func() error {
			_, err := moor.Rated{Hold: 1, Design: measure.Factor{Value: nan}}.Check(1, 0)
			return err
		},
	} {
		if err := f(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// On a slope the greatest pull is where friction on what presses the block to the
// slope equals what drags it down, with every force resolved along and across it.
func TestDeadWeightSlope(t *testing.T) {
	for _, β := range []float64{0, 0.05, 0.2, 0.35} {
		for _, lift := range []float64{-300, 0, 700} {
			d := moor.DeadWeight{Mass: 800, Density: 2400, Friction: 0.45, Slope: β, Design: measure.Factor{Value: 1}}
			c, err := d.Check(1, lift)
			if err != nil {
				t.Fatal(err)
			}
			w, err := d.Weight()
			if err != nil {
				t.Fatal(err)
			}
			sin, cos := math.Sincos(β)
			normal := (w-lift)*cos - c.Limit*sin
			along := (w-lift)*sin + c.Limit*cos
			almost(t, "friction", along, 0.45*normal, 1e-9*w)
		}
	}
	// Lifted off, a block on a slope it slides down by itself holds nothing either.
	d := moor.DeadWeight{Mass: 800, Density: 2400, Friction: 0.3, Slope: 0.6}
	if c, err := d.Check(0, 1e4); err != nil || c.Verdict() != measure.Short || len(c.Steps) != 2 {
		t.Errorf("%v, %v", c, err)
	}
}

func TestRated(t *testing.T) {
	oak := moor.Rated{Name: "oak", Hold: 9000, Steepest: 1}
	if c, err := oak.Check(2400, 1800); err != nil || c.Verdict() != measure.Holds || c.Value != 3000 || c.Limit != 3000 {
		t.Errorf("%v, %v", c, err)
	}
	if c, err := oak.Check(2401, 1800); err != nil || c.Verdict() != measure.Short {
		t.Errorf("%v, %v", c, err)
	}
	if c, err := oak.Check(100, 1800); err != nil || c.Verdict() != measure.NoAnswer || !strings.Contains(c.Err.Error(), "steeper") {
		t.Errorf("steeper than known: %v, %v", c, err)
	}
	if c, err := oak.Check(100*math.Cos(1.02), 100*math.Sin(1.02)); err != nil || c.Verdict() != measure.NoAnswer {
		t.Errorf("a degree steeper than known: %v, %v", c, err)
	}
	if c, err := (moor.Rated{}).Check(1, 0); err != nil || c.Verdict() != measure.NoAnswer {
		t.Errorf("holding unknown: %v, %v", c, err)
	}
	oak.Design, oak.Source = measure.Factor{Value: 2}, source
	if c, err := oak.Check(4500, 0); err != nil || c.Verdict() != measure.Holds || c.Rule != source {
		t.Errorf("%v, %v", c, err)
	}
}

// Two floats share a step by how much each gives; a fixed pier takes none of
// it; pins share what passes.
func TestHinge(t *testing.T) {
	h := moor.Hinge{Width: 1.5, Pins: 3, Diameter: 0.02, Plate: 0.01, Strength: strong("pin")}
	dock, err1 := moor.Afloat(0, 0.40, 10, 30, 12, 2.5)
	old, err2 := moor.Afloat(0, 0.34, 20, 60, 20, 3)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	j, err := h.Tie(dock, old, 600, 200, 90)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "step", j.Step, 0.06, 1e-12)
	almost(t, "dock goes down to", dock.Height-j.Lift*dock.Give, j.Line, 1e-12)
	almost(t, "neighbour comes up to", old.Height+j.Lift*old.Give, j.Line, 1e-12)
	if !(j.Line > 0.34 && j.Line < 0.40 && j.Lift > 0) {
		t.Errorf("%+v", j)
	}
	almost(t, "pin", j.Pin, math.Sqrt(260*260+200.*200/9+j.Lift*j.Lift/9), 1e-9)
	almost(t, "bearing", j.Bearing, j.Pin/0.0002, 1e-6)
	// A push at the end of a float turns it by the same coefficient by which a
	// moment there lifts it: arm/(ρgI). The dock's far end rises, the neighbour's
	// falls.
	almost(t, "bend", j.Bend, j.Lift*(2.5/30-3./60)/(1000*measure.Gravity), 1e-12)
	crowd := dock
	crowd.Tilt = 0.03
	if k, err := h.Tie(crowd, old, 0, 0, 0); err != nil || math.Abs(k.Bend-j.Bend-0.03) > 1e-12 {
		t.Errorf("crowded: %+v, %v", k, err)
	}
	// The same step again with the water two feet lower: both float.
	dock2, _ := moor.Afloat(-0.61, 0.40, 10, 30, 12, 2.5)
	old2, _ := moor.Afloat(-0.61, 0.34, 20, 60, 20, 3)
	if k, err := h.Tie(dock2, old2, 600, 200, 90); err != nil || math.Abs(k.Lift-j.Lift) > 1e-9*j.Lift {
		t.Errorf("%+v, %v", k, err)
	}
	// A fixed pier holds its height; the force is the step over the dock's give.
	k, err := h.Tie(dock2, moor.Side{Height: 0.34}, 0, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "hung on the pier", k.Lift, (-0.61+0.06)/dock.Give, 1e-9*math.Abs(k.Lift))
	almost(t, "pin line of the pier", k.Line, 0.34, 0)
	if _, err := h.Tie(moor.Side{Height: 0.4}, moor.Side{Height: 0.3}, 0, 0, 0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("two walls with a step: %v", err)
	}
	if j, err := h.Tie(moor.Side{Height: 0.4}, moor.Side{Height: 0.4}, 0, 0, 0); err != nil || j.Pin != 0 {
		t.Errorf("two walls without: %+v, %v", j, err)
	}
	c, err := h.Check(j)
	if err != nil || c.Verdict() != measure.Holds {
		t.Errorf("%v, %v", c, err)
	}
	h.Strength = moor.Gear{}
	if c, err := h.Check(j); err != nil || c.Verdict() != measure.NoAnswer {
		t.Errorf("strength unknown: %v, %v", c, err)
	}
	if _, err := h.Check(moor.Joint{Pin: math.NaN()}); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no force: %v", err)
	}
	h.Pins = 1
	if _, err := h.Tie(dock, old, 0, 0, 0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("one pin: %v", err)
	}
	if _, err := moor.Afloat(0, 0.4, 0, 1, 1, 1); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no waterplane: %v", err)
	}
}

// The ramp's free end stands where its length puts it.
func TestRamp(t *testing.T) {
	r := moor.Ramp{Length: 5, Width: 1, Mass: 90, Shore: 1.2, Deck: 0.4}
	a, err := r.Angle(-0.7)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "drop", 5*math.Sin(a), 1.5, 1e-12)
	if up, err := r.Angle(1.5); err != nil || !(up < 0) {
		t.Errorf("climbs: %g, %v", up, err)
	}
	slide, err := r.Slide(-0.7, 1.5)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "out and back over the level", slide, 5*(1-math.Cos(a)), 1e-12)
	c, err := r.Check(-0.7, 1.5)
	if err != nil || c.Verdict() != measure.Holds || c.Limit != 1./3 {
		t.Errorf("%v, %v", c, err)
	}
	r.Limit = "accessible"
	if c, err := r.Check(-0.7, 1.5); err != nil || c.Verdict() != measure.Short {
		t.Errorf("%v, %v", c, err)
	}
	r.Limit = "comfortable"
	if _, err := r.Check(0, 1); !errors.Is(err, measure.ErrName) {
		t.Errorf("limit: %v", err)
	}
	r.Limit = ""
	w, err := r.Reaction(0, 800)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "half of it and the person", w, 45*measure.Gravity+800, 1e-9)
	nan := math.NaN()
	for name, f := range map[string]func() error{
		"too short": func() error { _, err := r.Angle(-6); return err },
		"slide":     func() error { _, err := r.Slide(nan, 0); return err },
		"check":     func() error { _, err := r.Check(0, nan); return err },
		"live":      func() error { _, err := r.Reaction(-1, 0); return err },
		"moment":    func() error { _, err := moor.Ramp{}.Moment(0); return err },
		"haul":      func() error { _, err := moor.Haul{Mass: nan}.Pull(); return err },
		"hauls":     func() error { _, err := moor.Haul{}.Check(); return err },
		"parts":     func() error { _, err := moor.Haul{Mass: 1, Parts: -1}.Check(); return err },
		"line":      func() error { _, err := moor.Haul{Mass: 1, Line: moor.Gear{Break: nan}}.Check(); return err },
		"winch":     func() error { _, err := moor.Haul{Mass: 1, Anchor: moor.Rated{Hold: nan}}.Check(); return err },
		"cleat":     func() error { _, _, err := moor.Cleat{}.On(1, 1); return err },
	} {
		if err := f(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Skids on the level pull with friction alone; a tackle halves the line's share
// and adds it to the anchor; its sheaves take a tenth of the pull each.
func TestHaul(t *testing.T) {
	h := moor.Haul{Mass: 1000, Line: strong("line"), Anchor: moor.Rated{Name: "oak", Hold: 60e3}}
	p, err := h.Pull()
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "level skids", p, 500*measure.Gravity, 1e-9)
	h.Slope, h.Friction, h.Parts = math.Pi/6, 0.05, 2
	p, err = h.Pull()
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "rollers up a slope", p, 1000*measure.Gravity*(0.5+0.05*math.Sqrt(3)/2), 1e-6)
	cs, err := h.Check()
	if err != nil || len(cs) != 2 {
		t.Fatal(cs, err)
	}
	almost(t, "line", cs[0].Value, 1.2*p/2, 1e-9)
	almost(t, "anchor", cs[1].Value, 1.6*p, 1e-9)
	for _, none := range []int{0, 1} {
		h.Parts = none
		if cs, err := h.Check(); err != nil || cs[0].Value != p || cs[1].Value != p {
			t.Errorf("no tackle: %v, %v", cs, err)
		}
	}
	h.Anchor, h.Line = nil, moor.Gear{}
	cs, err = h.Check()
	if err != nil || cs[0].Verdict() != measure.NoAnswer || cs[1].Verdict() != measure.NoAnswer {
		t.Errorf("%v, %v", cs, err)
	}
}

func TestCleat(t *testing.T) {
	c := moor.Cleat{Height: 0.05, Base: 0.1, Bolts: 4}
	tension, shear, err := c.On(2000, 400)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "tension", tension, 100+500, 1e-9)
	almost(t, "shear", shear, 500, 1e-9)
	down, _, _ := c.On(2000, -400)
	almost(t, "pulled down", down, 500, 1e-9)
}
