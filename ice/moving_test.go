package ice_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// TestCritical: no wave is slower than the critical one, the bound is above it,
// and it grows with depth and thickness.
func TestCritical(t *testing.T) {
	last := 0.0
	for _, depth := range []float64{0.05, 0.3, 1, 3, 9, 27, 300, 1000} {
		w := ice.Wave{Plate: ice.Plate{Thickness: 0.4, E: 2e9, Nu: 0.33}, Depth: depth}
		c, length, err := w.Critical()
		if err != nil || !(c >= last) {
			t.Fatalf("%g m deep: %g m/s, %v; shallower %g", depth, c, err, last)
		}
		last = c
		bound, err := w.Bound()
		if err != nil || bound < c {
			t.Errorf("%g m deep: bound %g m/s, critical %g, %v", depth, bound, c, err)
		}
		for _, k := range []float64{0.01, 0.3, 0.9, 1, 1.1, 3, 100} {
			if v, err := w.Speed(k * length); err != nil || v < c*(1-1e-12) {
				t.Errorf("%g m deep: a wave of %g times the length runs %g m/s, slower than %g, %v", depth, k, v, c, err)
			}
		}
		thicker := w
		thicker.Plate.Thickness = 0.5
		if v, _, err := thicker.Critical(); err != nil || v < c {
			t.Errorf("%g m deep: thicker ice %g m/s, %v", depth, v, err)
		}
	}
	for name, w := range map[string]ice.Wave{
		"plate":   {Depth: 3},
		"depth":   {Plate: demoPlate()},
		"gravity": {Plate: demoPlate(), Depth: 3, Gravity: 1.6},
		"density": {Plate: demoPlate(), Depth: 3, IceDensity: 1000},
	} {
		if _, _, err := w.Critical(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := w.Bound(); err == nil {
			t.Errorf("%s: a bound", name)
		}
		if _, err := w.Speed(10); err == nil {
			t.Errorf("%s: a speed", name)
		}
	}
	if _, err := (ice.Wave{Plate: demoPlate(), Depth: 3}).Speed(0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a wave of no length: %v", err)
	}
}

// TestSeries: both sides of the change to a series for shallow water give one
// critical speed.
func TestSeries(t *testing.T) {
	w := ice.Wave{Plate: ice.Plate{Thickness: 0.4, E: 2e9, Nu: 0.33}, Massless: true}
	l, err := w.Plate.CharacteristicLength()
	if err != nil {
		t.Fatal(err)
	}
	// Long waves on shallow water: κ² = H²/(6 l⁴), c² = g H (1 - H⁴/(36 l⁴)).
	for _, share := range []float64{0.05, 0.1, 0.2, 0.32, 0.34, 0.36} {
		w.Depth = share * l
		c, length, err := w.Critical()
		x := 2 * math.Pi / length * w.Depth // 0.05 at a share of 0.35
		want := math.Sqrt(measure.Gravity * w.Depth * (1 - math.Pow(share, 4)/36))
		if err != nil || math.Abs(c/want-1) > math.Pow(share, 8) || math.Abs(x/(share*share/math.Sqrt(6))-1) > 0.05*share*share {
			t.Errorf("share %g: %g m/s, want %g; κH %g, %v", share, c, want, x, err)
		}
	}
}

// TestSeriesJoins: the length of the slowest wave has no step where the series
// takes over: ln κH is smooth in the depth.
func TestSeriesJoins(t *testing.T) {
	w := ice.Wave{Plate: ice.Plate{Thickness: 0.4, E: 2e9, Nu: 0.33}, Massless: true}
	l, err := w.Plate.CharacteristicLength()
	if err != nil {
		t.Fatal(err)
	}
	var last [2]float64
	crossed := false
	for k := range 200 {
		w.Depth = (0.345 + 1e-4*float64(k)) * l
		_, length, err := w.Critical()
		if err != nil {
			t.Fatal(err)
		}
		x := 2 * math.Pi / length * w.Depth
		if bend := math.Log(x) - 2*last[1] + last[0]; k > 1 && math.Abs(bend) > 5e-7 {
			t.Errorf("κH = %g: ln κH bends by %g", x, bend)
		}
		crossed = crossed || k > 0 && x > 0.05 && math.Exp(last[1]) < 0.05
		last = [2]float64{last[1], math.Log(x)}
	}
	if !crossed {
		t.Error("the change at κH = 0.05 was not crossed")
	}
}

// TestHauling: the least of the limits rules, too fast is short whatever else,
// and nothing is better than the crossing.
func TestHauling(t *testing.T) {
	kmh := measure.KPH
	sled := ice.Crossing{Mass: 500, People: 1, Machine: ice.Snowmobile}
	thaw, dry, shallow, thin := drilled(1), drilled(1), drilled(1), drilled(0.2)
	thaw.Air[4].High = 1
	dry.Depth = 0
	shallow.Depth = 0.5
	for _, c := range []struct {
		name     string
		sheet    ice.Sheet
		speed    float64
		offshore bool
		want     measure.Verdict
		limit    float64 // km/h
	}{
		{"shore", drilled(1), 9, false, measure.Holds, 10},
		{"fast at the shore", drilled(1), 11, false, measure.Short, 10},
		{"offshore, half the critical speed", drilled(1), 11, true, measure.Holds, 13.8},
		{"fast offshore", drilled(1), 15, true, measure.Short, 13.8},
		{"shallow", shallow, 5, true, measure.Short, 4},
		{"thaw", thaw, 5, true, measure.NoAnswer, 13.8},
		{"thaw and fast", thaw, 20, true, measure.Short, 13.8},
		{"depth not measured", dry, 5, true, measure.NoAnswer, 25},
		{"depth not measured, fast", dry, 26, true, measure.Short, 25},
		{"thin", thin, 5, false, measure.NoAnswer, 10},
	} {
		got, err := c.sheet.Hauling(ice.Haul{Load: sled, Speed: c.speed * kmh, Offshore: c.offshore})
		if err != nil || got.Verdict() != c.want || math.Abs(got.Limit/kmh-c.limit) > 0.1 || !got.Hazard {
			t.Errorf("%s: %v (limit %.2f km/h), %v", c.name, got, got.Limit/kmh, err)
		}
	}
	for _, h := range []ice.Haul{{Load: sled, Speed: -1}, {Load: sled, Speed: math.NaN()}, {Speed: 1}} {
		if c, err := drilled(1).Hauling(h); err == nil || c.Verdict() != measure.NoAnswer {
			t.Errorf("%+v: %v, %v", h, c, err)
		}
	}
	grounded := drilled(1)
	grounded.Depth = 0.01
	if c, err := grounded.Hauling(ice.Haul{Load: sled, Speed: 0.1, Offshore: true}); err != nil || c.Verdict() != measure.Short {
		t.Errorf("ice that all but lies on the bottom: %v, %v", c, err)
	}
}

// TestBreakthrough: loads grow with strength as it, with thickness by more than
// the square of it at one radius; a rectangle bears what the circle within it
// bears; it never prints as a permission.
func TestBreakthrough(t *testing.T) {
	p := ice.Plate{Thickness: 0.3, E: 1e9, Nu: 0.33}
	base, err := p.Breakthrough(ice.Patch{A: 0.5}, 0.5e6, 0)
	if err != nil || !(base.Margin > 1) || base.Radius != 0.5 || base.Source.Status != measure.Memory {
		t.Fatalf("%+v, %v", base, err)
	}
	strong, err := p.Breakthrough(ice.Patch{A: 0.5, X: 9, Force: 7}, 1e6, 8)
	if err != nil || math.Abs(strong.FirstCrack/base.FirstCrack-2) > 1e-12 || math.Abs(strong.Wedges/base.Wedges-2) > 1e-12 {
		t.Errorf("twice as strong: %+v, %v", strong, err)
	}
	thick := p
	thick.Thickness = 0.6
	more, err := thick.Breakthrough(ice.Patch{A: 0.5}, 0.5e6, 0)
	if err != nil || !(more.FirstCrack > 3*base.FirstCrack && more.Wedges > 3*base.Wedges) {
		t.Errorf("twice as thick: %+v, %v", more, err)
	}
	plank, err := p.Breakthrough(ice.Patch{A: 1, B: 4}, 0.5e6, 0)
	if err != nil || math.Abs(plank.Wedges/base.Wedges-1) > 1e-12 || !(plank.FirstCrack > base.FirstCrack) {
		t.Errorf("plank: %+v, %v", plank, err)
	}
	if s := base.String(); !strings.Contains(s, "no rule rests on this") {
		t.Errorf("%q", s)
	}
	for name, call := range map[string]func() (ice.Breakthrough, error){
		"plate":    func() (ice.Breakthrough, error) { return ice.Plate{}.Breakthrough(ice.Patch{A: 1}, 1e6, 0) },
		"strength": func() (ice.Breakthrough, error) { return p.Breakthrough(ice.Patch{A: 1}, math.NaN(), 0) },
		"wedges":   func() (ice.Breakthrough, error) { return p.Breakthrough(ice.Patch{A: 1}, 1e6, 2) },
		"patch":    func() (ice.Breakthrough, error) { return p.Breakthrough(ice.Patch{}, 1e6, 0) },
		"wide":     func() (ice.Breakthrough, error) { return p.Breakthrough(ice.Patch{A: 5}, 1e6, 0) },
	} {
		if b, err := call(); !errors.Is(err, measure.ErrRange) || !math.IsNaN(b.Wedges) {
			t.Errorf("%s: %+v, %v", name, b, err)
		}
	}
	for _, f := range []float64{math.NaN(), -1} {
		if _, err := p.FloodLoad(f); !errors.Is(err, measure.ErrRange) {
			t.Errorf("freeboard %g: %v", f, err)
		}
	}
	if _, err := (ice.Plate{}).FloodLoad(0.02); err == nil {
		t.Error("no plate floods")
	}
}

// TestEdge: the longer the line, the less it bends; it is a sum of forces; a
// point at the edge sags near what the formula says.
func TestEdge(t *testing.T) {
	p := demoPlate()
	last := ice.Bend{Deflection: math.Inf(1), Mx: math.Inf(1)}
	for _, a := range []float64{0.001, 0.01, 0.1, 0.5, 2, 10, 30} {
		b, err := p.Edge(1e4, a)
		if err != nil || !(b.Deflection < last.Deflection && b.Mx < last.Mx && b.Deflection > 0) || b.My != 0 || b.Mxy != 0 {
			t.Errorf("half length %g m: %+v, %v; shorter %+v", a, b, err, last)
		}
		last = b
	}
	b, err := p.Edge(1e4, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	c, err := p.Edge(3e4, 0.01)
	if err != nil || !close(c.Mx, 3*b.Mx, 1e-9*c.Mx) || !close(c.Deflection, 3*b.Deflection, 1e-12) {
		t.Errorf("three times the force: %+v, %+v, %v", b, c, err)
	}
	if w, _, err := p.EdgeDeflection(1e4); err != nil || !close(b.Deflection, w, 0.02*w) {
		t.Errorf("%g m, by the formula %g m, %v", b.Deflection, w, err)
	}
	// The same force within the sheet bends it by half as much or less.
	q, inner := p, ice.Patch{A: 0.5, Force: 1e4}
	mid := at(t, bowl(t, q, inner), 0, 0)
	if edge, _ := p.Edge(1e4, 0.5); !(edge.Mx > 1.8*mid.Mx && edge.Deflection > 3*mid.Deflection) {
		t.Errorf("edge %+v, within %+v", edge, mid)
	}
	for _, c := range []struct {
		p        ice.Plate
		force, a float64
	}{{ice.Plate{}, 1, 1}, {p, -1, 1}, {p, math.NaN(), 1}, {p, 1, 0}, {p, 1, 1e4}} {
		if _, err := c.p.Edge(c.force, c.a); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// TestCover: at the deepest snow the freeboard is nil, beyond it the slush's top
// is level with the water.
func TestCover(t *testing.T) {
	for _, density := range []float64{100, 250, 400} {
		c := ice.Cover{Ice: 0.4, SnowDensity: density}
		most, err := c.MostSnow()
		if err != nil {
			t.Fatal(err)
		}
		c.Snow = most
		if f, err := c.Freeboard(); err != nil || math.Abs(f) > 1e-15 {
			t.Errorf("%g kg/m³: freeboard %g m under the most snow, %v", density, f, err)
		}
		if z, err := c.Slush(920); err != nil || z > 1e-15 {
			t.Errorf("%g kg/m³: %g m of slush, %v", density, z, err)
		}
		c.Snow = 1.5 * most
		z, err := c.Slush(920)
		// What floats: ice, slush and dry snow weigh what they displace, all of
		// the ice and of the slush.
		weight, displaced := 917*c.Ice+920*z+density*(c.Snow-z), 1000*(c.Ice+z)
		if err != nil || !(z > 0) || math.Abs(weight-displaced) > 1e-9 {
			t.Errorf("%g kg/m³: %g m of slush, %g kg on %g kg, %v", density, z, weight, displaced, err)
		}
	}
	if z, err := (ice.Cover{Ice: 0.01, Snow: 2}).Slush(1000); err != nil || math.Abs(z-(2-0.83/400)) > 1e-12 {
		t.Errorf("ice of a centimetre under two metres of snow: %g m of slush, %v", z, err)
	}
	for name, c := range map[string]ice.Cover{
		"ice": {Ice: math.NaN()}, "snow": {Snow: -1}, "ice's density": {IceDensity: 1000}, "snow's density": {SnowDensity: 500},
	} {
		if _, err := c.Freeboard(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := c.MostSnow(); err == nil {
			t.Errorf("%s: most snow", name)
		}
		if _, err := c.Slush(920); err == nil {
			t.Errorf("%s: slush", name)
		}
	}
	if _, err := (ice.Cover{Ice: 1}).Slush(500); !errors.Is(err, measure.ErrRange) {
		t.Error("slush lighter than ice with air")
	}
	for _, c := range [][2]float64{{-1, 1}, {math.NaN(), 1}, {100, -1}, {1e4, 1}} {
		if _, err := ice.MeltIn(c[0], c[1]); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%v: %v", c, err)
		}
	}
}

// TestShovelled: the snow stays on the ice, so that far away nothing changes;
// the middle of a wide pad on soft ice rises by all of its snow, the bank sinks.
func TestShovelled(t *testing.T) {
	pad := ice.Pad{A: 8, B: 6, Snow: 60, Bank: 1.5}
	p := demoPlate()
	far, err := pad.Shovelled(p, 60, 5)
	if err != nil || math.Abs(far.Deflection) > 1e-7 {
		t.Errorf("60 m away: %+v, %v", far, err)
	}
	soft := p
	soft.E = 2e6
	wide := pad
	wide.A, wide.B = 30, 20
	if b, err := wide.Shovelled(soft, 0, 0); err != nil || math.Abs(b.Deflection+60*measure.Gravity/9810) > 1e-3 {
		t.Errorf("a wide pad on soft ice rises %g m in the middle, %v", -b.Deflection, err)
	}
	middle, err := pad.Shovelled(soft, 0, 0)
	if err != nil || !(middle.Deflection < -0.05) || !(middle.Deflection > -0.08) {
		t.Errorf("soft ice rises %g m in the middle, %v", -middle.Deflection, err)
	}
	bank, err := pad.Shovelled(soft, 4.75, 0)
	if err != nil || !(bank.Deflection > 0) {
		t.Errorf("the bank sinks %g m, %v", bank.Deflection, err)
	}
	moved := pad
	moved.X, moved.Y = 3, -2
	there, err := moved.Shovelled(soft, 3, -2)
	if err != nil || !close(there.Deflection, middle.Deflection, 1e-12) {
		t.Errorf("moved: %+v, %+v, %v", there, middle, err)
	}
	for name, c := range map[string]ice.Pad{
		"A": {B: 6, Snow: 60, Bank: 1}, "B": {A: 8, Snow: 60, Bank: 1}, "bank": {A: 8, B: 6, Snow: 60}, "snow": {A: 8, B: 6, Bank: 1, Snow: math.NaN()},
	} {
		if _, err := c.Shovelled(p, 0, 0); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := pad.Shovelled(ice.Plate{}, 0, 0); err == nil {
		t.Error("a pad on no ice")
	}
}

// TestOthers: a load nearby counts with the load, one far off does not; where it
// is not known it is near.
func TestOthers(t *testing.T) {
	alone := ice.Crossing{Mass: 90, People: 1}
	need := func(d float64) float64 {
		c := alone
		c.Others = []ice.Other{{Mass: 2000, People: 3, Distance: d}}
		return crossing(t, sound(1), c).Limit
	}
	near, far := need(5), need(200)
	if both := crossing(t, sound(1), ice.Crossing{Mass: 2090, People: 4}).Limit; near != both {
		t.Errorf("beside it %g m, as one load %g m", near, both)
	}
	if own := crossing(t, sound(1), alone).Limit; far != own || !(near > far) {
		t.Errorf("200 m off %g m, alone %g m, beside it %g m", far, own, near)
	}
	if x := need(math.NaN()); x != near {
		t.Errorf("somewhere: %g m, want %g", x, near)
	}
	last := math.Inf(1)
	for d := 0.0; d < 300; d += 2.5 {
		if x := need(d); x > last {
			t.Errorf("%g m off needs %g m, nearer only %g m", d, x, last)
		} else {
			last = x
		}
	}
	notes := strings.Join(crossing(t, sound(1), alone).Notes, "\n")
	if !strings.Contains(notes, "everything within 29 m counts as one load") {
		t.Errorf("%q", notes)
	}
	heavy := ice.Crossing{Mass: 90, Others: []ice.Other{{Mass: 1e6, Distance: 900}}}
	if c := crossing(t, sound(1), heavy); c.Verdict() != measure.NoAnswer {
		t.Errorf("a load beyond all spacings: %v", c)
	}
	for _, o := range []ice.Other{{}, {Mass: -1}, {Mass: 1, People: -1}, {Mass: 1, Distance: -1}, {Mass: 1, Distance: math.Inf(1)}} {
		bad := alone
		bad.Others = []ice.Other{o}
		if _, err := sound(1).Crossing(bad); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", o, err)
		}
	}
}

// TestSpots: a hole's place is said or read from its name; every part of pad and
// walk must be there.
func TestSpots(t *testing.T) {
	load := ice.Crossing{Mass: 90, People: 1}
	for name, change := range map[string]func(*ice.Sheet){
		"no walk":       func(s *ice.Sheet) { s.Holes[5].Name = "beach" },
		"no middle":     func(s *ice.Sheet) { s.Holes[4].Name = "walk, in the middle" },
		"three corners": func(s *ice.Sheet) { s.Holes[2].Spot = ice.AtDock },
		"no names": func(s *ice.Sheet) {
			for i := range s.Holes {
				s.Holes[i].Name = ""
			}
		},
	} {
		s := sound(1)
		change(&s)
		if c := crossing(t, s, load); c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
			t.Errorf("%s: %v", name, c)
		}
	}
	s := sound(1)
	for i, spot := range []ice.Spot{ice.PadCorner, ice.PadCorner, ice.PadCorner, ice.PadCorner, ice.PadMiddle, ice.Walk} {
		s.Holes[i].Name, s.Holes[i].Spot = "", spot
	}
	if c := crossing(t, s, load); c.Verdict() != measure.Holds {
		t.Errorf("spots said: %v", c)
	}
	s.Holes[0].Spot = 9
	if _, err := s.Crossing(load); !errors.Is(err, measure.ErrName) {
		t.Errorf("no such spot: %v", err)
	}
	s.Holes[0].Spot, s.Holes[0].X = ice.PadCorner, math.Inf(1)
	if _, err := s.Crossing(load); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no such place: %v", err)
	}
	seen := map[string]bool{}
	for s := ice.ByName; s <= ice.AtDock; s++ {
		seen[s.String()] = true
	}
	if len(seen) != 5 {
		t.Errorf("spots %v", seen)
	}
}
