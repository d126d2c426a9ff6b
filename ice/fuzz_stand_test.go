package ice_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// A standing is a situation with a load that stands, people beside it, and a
// haul.
type standing struct {
	situation
	stand ice.Stand
	haul  ice.Haul
}

func (c standing) clone() standing {
	c.situation = c.situation.clone()
	c.stand.Loads = append([]ice.Patch(nil), c.stand.Loads...)
	c.stand.Gauge = append(ice.Gauge(nil), c.stand.Gauge...)
	c.load.Others = append([]ice.Other(nil), c.load.Others...)
	return c
}

var standingNames = []string{"crossing", "parked", "flooding", "beside", "hauling", "gauge"}

// verdicts of everything, and the soonest flood.
func (c standing) verdicts() (out [6]measure.Verdict, soonest float64) {
	two := c.situation.verdicts()
	out[0], out[1] = two[0], two[1]
	f, _ := c.sheet.Flooding(c.stand)
	out[2] = f.Check.Verdict()
	b, _ := c.sheet.Beside(c.stand, c.load)
	out[3] = b.Verdict()
	c.haul.Load = c.load
	h, _ := c.sheet.Hauling(c.haul)
	out[4] = h.Verdict()
	g, _ := c.stand.Gauge.Check(measure.Day)
	out[5] = g.Verdict()
	return out, f.Soonest
}

func (c standing) contradicted() bool {
	f, _ := c.sheet.Flooding(c.stand)
	g, _ := c.stand.Gauge.Check(measure.Day)
	return c.situation.contradicted() || contradicted(f.Check) || contradicted(g)
}

func newest(c *standing) *ice.Reading {
	best := -1
	for i, r := range c.stand.Gauge {
		if best < 0 || r.Age < c.stand.Gauge[best].Age {
			best = i
		}
	}
	if best < 0 {
		return &ice.Reading{}
	}
	return &c.stand.Gauge[best]
}

func other(c *standing) *ice.Other {
	if len(c.load.Others) == 0 {
		return &ice.Other{}
	}
	return &c.load.Others[0]
}

// standWorsenings make one input of a standing worse or unknown.
var standWorsenings = []struct {
	name string
	do   func(c *standing, i int, d float64)
}{
	{"heavier dock", func(c *standing, _ int, d float64) {
		for i := range c.stand.Loads {
			c.stand.Loads[i].Force *= 1 + d
		}
	}},
	{"one drum heavier", func(c *standing, i int, d float64) { c.stand.Loads[i%len(c.stand.Loads)].Force *= 1 + 4*d }},
	{"one more load", func(c *standing, i int, d float64) {
		c.stand.Loads = append(c.stand.Loads, ice.Patch{X: float64(i%7)*4 - 12, Y: float64(i%5) - 2, A: 0.2, Force: 1 + 5000*d})
	}},
	{"load off the pad", func(c *standing, i int, d float64) { c.stand.Loads[i%len(c.stand.Loads)].X = 4.01 + 1 + d }},
	{"longer stay", func(c *standing, _ int, d float64) { c.stand.Stay *= 1 + 20*d }},
	{"stood longer", func(c *standing, _ int, d float64) {
		c.stand.Since, c.stand.Stay = c.stand.Since+1e6*d, c.stand.Stay+1e6*d
	}},
	{"time not known", func(c *standing, _ int, _ float64) { c.stand.Since = math.NaN() }},
	{"snow to come", func(c *standing, _ int, d float64) { c.stand.Snow += d }},
	{"snow heavier", func(c *standing, _ int, d float64) {
		if c.sheet.SnowDensity > 0 {
			c.sheet.SnowDensity = math.Min(400, c.sheet.SnowDensity*(1+d))
		}
	}},
	{"snow not weighed", func(c *standing, _ int, _ float64) { c.sheet.SnowDensity = 0 }},
	{"warmer ice", func(c *standing, _ int, d float64) {
		if c.stand.Soft != (ice.Creep{}) {
			c.stand.Soft.Temperature = math.Min(-1, c.stand.Soft.Temperature+10*d)
		}
	}},
	{"finer ice", func(c *standing, _ int, d float64) {
		if c.stand.Soft != (ice.Creep{}) {
			c.stand.Soft.Grain = math.Max(1e-3, c.stand.Soft.Grain/(1+d))
		}
	}},
	{"lower modulus", func(c *standing, _ int, d float64) {
		if c.stand.Soft != (ice.Creep{}) {
			c.stand.Soft.E = math.Max(1e9, c.stand.Soft.E/(1+d))
		}
	}},
	{"ice not looked at", func(c *standing, _ int, _ float64) { c.stand.Soft = ice.Creep{} }},
	{"lower reading", func(c *standing, _ int, d float64) { newest(c).Freeboard -= d * 0.1 }},
	{"older readings", func(c *standing, _ int, d float64) {
		for i := range c.stand.Gauge {
			c.stand.Gauge[i].Age += 1e5 * d
		}
	}},
	{"no readings", func(c *standing, _ int, _ float64) { c.stand.Gauge = nil }},
	{"corner not placed", func(c *standing, i int, _ float64) {
		for k := range c.sheet.Holes {
			if k%2 == i%2 {
				c.sheet.Holes[k].X = math.NaN()
			}
		}
	}},
	{"place not said", func(c *standing, i int, _ float64) { h := hole(&c.situation, i); h.Name, h.Spot = "", ice.ByName }},
	{"nearer", func(c *standing, _ int, d float64) { other(c).Distance /= 1 + 10*d }},
	{"distance unknown", func(c *standing, _ int, _ float64) { other(c).Distance = math.NaN() }},
	{"other heavier", func(c *standing, _ int, d float64) { other(c).Mass *= 1 + 10*d }},
	{"people at the other", func(c *standing, i int, _ float64) { other(c).People += 1 + i }},
	{"one more other", func(c *standing, i int, d float64) {
		c.load.Others = append(c.load.Others, ice.Other{Mass: 1 + 1000*d, Distance: float64(i)})
	}},
	{"faster", func(c *standing, _ int, d float64) { c.haul.Speed += 3 * d }},
	{"near the shore", func(c *standing, _ int, _ float64) { c.haul.Offshore = false }},
	{"shallower", func(c *standing, _ int, d float64) { c.sheet.Depth /= 1 + 20*d }},
	{"depth unknown", func(c *standing, i int, _ float64) { c.sheet.Depth = []float64{0, math.NaN()}[i%2] }},
}

// worsen applies one of all worsenings, those of the sheet first.
func worsen(c *standing, which, i int, d float64) string {
	which %= len(worsenings) + len(standWorsenings)
	if which < len(worsenings) {
		w := worsenings[which]
		w.do(&c.situation, i, d)
		return w.name
	}
	w := standWorsenings[which-len(worsenings)]
	w.do(c, i, d)
	return w.name
}

// stands makes a standing from numbers; many of them hold.
func stands(clear, snow, mass, days, newest, fall, distance, speed float64, choices uint32) (standing, bool) {
	base, ok := build(clear, 0, snow, mass, 3600, 2, -3, choices/64)
	for _, x := range []float64{days, newest, fall, distance, speed} {
		if math.IsNaN(x) || math.Abs(x) > 1e9 {
			return standing{}, false
		}
	}
	if !ok {
		return standing{}, false
	}
	pick := func(n uint32) int { k := choices % n; choices /= n; return int(k) }
	c := standing{situation: base}
	c.sheet.Depth = 0.5 + math.Mod(math.Abs(distance), 20)
	c.sheet.SnowDensity = []float64{0, 150, 300}[pick(3)]
	c.load.Mass, c.load.Machine = 20+math.Mod(math.Abs(mass), 900), min(c.load.Machine, ice.Snowmobile)
	c.stand = frame(10 + math.Mod(math.Abs(mass), 1500))
	c.stand.Loads = c.stand.Loads[:2+pick(3)]
	if pick(4) == 0 {
		c.stand.Loads[0].A, c.stand.Loads[0].B = 0.5, 2
	}
	c.stand.Stay = (0.5 + math.Mod(math.Abs(days), 60)) * measure.Day
	if pick(2) == 1 {
		c.stand.Soft = ice.Creep{Temperature: -4, Grain: 5e-3, E: 4e9}
		c.stand.Stiff = ice.Creep{Temperature: -20, Grain: 0.02, E: 9e9}
	}
	if stood := float64(pick(5)); stood > 0 {
		c.stand = watched(c.stand, stood, math.Mod(math.Abs(newest), 0.15), math.Mod(fall, 0.02))
	}
	if pick(2) == 1 {
		c.load.Others = []ice.Other{{Mass: 10 + math.Mod(math.Abs(fall)*1e5, 2000), People: pick(3), Distance: math.Mod(math.Abs(distance), 120)}}
	}
	c.haul = ice.Haul{Speed: math.Mod(math.Abs(speed), 6), Offshore: pick(2) == 1}
	return c, true
}

// compare reports what improved over the verdicts and the flood before.
func compare(t *testing.T, before, after standing, was [6]measure.Verdict, soonest float64, name string, d float64) (changed bool) {
	t.Helper()
	now, then := after.verdicts()
	for i := range was {
		if now[i] == measure.Holds && was[i] != measure.Holds && !before.contradicted() {
			t.Errorf("%s improves from %v to %v when the input gets worse: %s by %g\n%+v\n%+v\n%+v\n%+v", standingNames[i], was[i], now[i], name, d, before.sheet, before.load, before.stand, before.haul)
		}
		changed = changed || was[i] != now[i]
	}
	// A gauge that nobody read cannot hasten a flood, nor a load set further off;
	// they take the answer away.
	known := name != "no readings" && name != "load off the pad" && name != "time not known" && name != "stood longer"
	if known && then > soonest*1.01+1 {
		t.Errorf("it floods after %g s, and after %g s when the input gets worse: %s by %g\n%+v\n%+v", soonest, then, name, d, before.sheet, before.stand)
	}
	return changed
}

// FuzzStandingNeverImproves: no verdict on what stands, on the people beside it,
// on a haul or by the gauge improves when any input gets worse or becomes
// unknown, and no flood comes later.
func FuzzStandingNeverImproves(f *testing.F) {
	for k := range len(worsenings) + len(standWorsenings) {
		f.Add(0.99, 0.0, 100.0, 3.0, 0.08, 0.001, 60.0, 1.0, uint32(k*7919), uint8(k), uint8(k), 0.2)
		f.Add(0.6, 0.01, 400.0, 9.0, 0.03, 0.004, 20.0, 2.5, uint32(k*104729+5), uint8(k), uint8(1), 0.01)
		f.Add(1.9, 0.03, 1400.0, 40.0, 0.11, 0.0, 5.0, 0.5, uint32(k*15485863+11), uint8(k), uint8(4), 2.0)
	}
	f.Fuzz(func(t *testing.T, clear, snow, mass, days, newest, fall, distance, speed float64, choices uint32, which, index uint8, d float64) {
		c, ok := stands(clear, snow, mass, days, newest, fall, distance, speed, choices)
		if !ok || !(d > 0 && d < 1e6) {
			return
		}
		worse := c.clone()
		name := worsen(&worse, int(which), int(index), d)
		was, soonest := c.verdicts()
		compare(t, c, worse, was, soonest, name, d)
		for i, v := range was[:5] {
			if v == measure.Holds && c.sheet.Barred() != nil {
				t.Errorf("%s holds on ice that is barred: %v", standingNames[i], c.sheet.Barred())
			}
		}
	})
}

// marginal returns standings that hold by little in one verdict or other.
func marginal(t *testing.T) []standing {
	t.Helper()
	soft := standing{situation: situation{sheet: drilled(0.5), load: ice.Crossing{Mass: 90, People: 1}}, stand: frame(1500)}
	soft.sheet.Holes[1].Snow, soft.sheet.SnowDensity = 0.05, 200
	soft.stand.Soft = ice.Creep{Temperature: -4, Grain: 4e-3, E: 6e9}
	soft.stand.Stay = 100 * measure.Day
	soft.stand.Stay = 0.98 * flooding(t, soft.sheet, soft.stand).Soonest

	freeboard := soft.clone()
	freeboard.stand = frame(2600)
	freeboard.sheet = drilled(0.6)
	freeboard.sheet.Holes[1].Snow, freeboard.sheet.SnowDensity = 0.19, 200
	f := flooding(t, freeboard.sheet, freeboard.stand)
	if f.Governs != "the freeboard" || !(f.Soonest > 0) {
		t.Fatalf("%+v: the freeboard does not govern", f)
	}
	freeboard.stand.Stay = 0.98 * f.Soonest

	far := standing{situation: situation{sheet: drilled(0.15), load: ice.Crossing{Mass: 90, People: 1, Others: []ice.Other{{Mass: 2000, Distance: 100}}}}, stand: frame(10)}
	far.haul = ice.Haul{Speed: 2.9, Offshore: true} // between the limits at the shore and off it
	far.sheet.Depth = 100
	near := far.clone()
	near.load.Others[0] = ice.Other{Mass: 50, Distance: 5}
	return []standing{soft, freeboard, far, near}
}

// TestStandingNeverImproves runs every worsening over a fixed set of standings;
// each of those of its own must show in a verdict of some.
func TestStandingNeverImproves(t *testing.T) {
	holds := [6]int{}
	changed := make([]int, len(standWorsenings))
	cases := marginal(t)
	for k := range uint32(12) {
		x := float64(k)
		c, ok := stands(0.5+0.15*x, 0.001*x, 40+110*x, 4*x+1, 0.02+0.011*x, 0.002*x-0.004, 9*x+1, 0.4+0.2*x, k*2654435761)
		if !ok {
			t.Fatal("no standing")
		}
		cases = append(cases, c)
	}
	for k, c := range cases {
		was, soonest := c.verdicts()
		for i, v := range was {
			if v == measure.Holds {
				holds[i]++
			}
		}
		for which := range len(worsenings) + len(standWorsenings) {
			if which < len(worsenings) && which%4 != k%4 { // a fourth of them each time
				continue
			}
			for _, d := range []float64{0.05, 1.5} {
				worse := c.clone()
				name := worsen(&worse, which, k, d)
				if compare(t, c, worse, was, soonest, name, d) && which >= len(worsenings) {
					changed[which-len(worsenings)]++
				}
			}
		}
	}
	for i, n := range holds {
		if n < 3 {
			t.Errorf("%s holds %d times: too few to see an improvement and its absence", standingNames[i], n)
		}
	}
	for n, w := range standWorsenings {
		if changed[n] == 0 {
			t.Errorf("%s never changes a verdict: it tests nothing", w.name)
		}
	}
}

// FuzzStanding: any numbers at all give a verdict or an error that names a
// field, and a check that holds rests on finite numbers.
func FuzzStanding(f *testing.F) {
	f.Add(0.5, 0.3, 0.0, 900.0, 86400.0, 0.0, -4.0, 3e-3, 4e9, 0.03, 1e5, 2.0, 5.0)
	f.Add(math.NaN(), -1.0, 2.0, math.Inf(1), -1.0, 1e300, 5.0, 0.0, -1.0, 7.0, 1e12, 1e9, -3.0)
	f.Add(0.05, 40.0, 40.0, 1e6, 1e7, 1e6, -1.0, 1e-3, 1e9, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, clear, a, b, force, stay, since, celsius, grain, e, free, age, depth, speed float64) {
		s := drilled(1)
		for i := range s.Holes {
			s.Holes[i].Clear, s.Holes[i].Water = clear, 0.08*clear
		}
		s.Depth = depth
		load := ice.Stand{Loads: []ice.Patch{{A: a, B: b, Force: force}, {X: 1, A: 0.3, Force: 100}}, Stay: stay, Since: since, Soft: ice.Creep{Temperature: celsius, Grain: grain, E: e}}
		load.Stiff = load.Soft
		load.Gauge = ice.Gauge{{Age: age, Freeboard: free}, {Age: age / 2, Freeboard: free}, {Freeboard: free / 2}}
		people := ice.Crossing{Mass: 90, People: 1}
		flood, err := s.Flooding(load)
		checks, errs := []measure.Check{flood.Check}, []error{err}
		for _, call := range []func() (measure.Check, error){
			func() (measure.Check, error) { return s.Beside(load, people) },
			func() (measure.Check, error) { return s.Hauling(ice.Haul{Load: people, Speed: speed}) },
			func() (measure.Check, error) { return load.Gauge.Check(stay) },
		} {
			c, err := call()
			checks, errs = append(checks, c), append(errs, err)
		}
		for i, c := range checks {
			var e *measure.Error
			if err := errs[i]; err != nil && (!errors.As(err, &e) || e.Field == "" || c.Verdict() != measure.NoAnswer) {
				t.Errorf("check %d: %v, error %v", i, c, err)
			}
			if c.Verdict() == measure.Holds && (!c.Hazard || c.Rule == nil) {
				t.Errorf("check %d holds without hazard or rule: %v", i, c)
			}
		}
		if flood.Check.Verdict() == measure.Holds && !(flood.Freeboard > 0 && flood.Soonest >= stay && flood.Latest >= flood.Soonest) {
			t.Errorf("%+v", flood)
		}
		least, most, err := s.Sag(load, since)
		if err == nil && !(0 <= least && least <= most*(1+1e-9)) {
			t.Errorf("sag %g to %g m", least, most)
		}
		if fall, err := load.Gauge.Fall(); err == nil && !(0 <= fall.Early && fall.Early <= fall.Zero && fall.Zero <= fall.Late) {
			t.Errorf("%+v", fall)
		}
	})
}

// FuzzParts: the pieces give finite numbers or an error that names its field.
func FuzzParts(f *testing.F) {
	f.Add(0.3, 1e9, 0.33, 0.5, 0.5e6, 5.0, 9.8, 917.0, 20.0, 1e4, 0.2, 250.0)
	f.Add(math.NaN(), 1e6, 0.49, 100.0, 3e6, 1000.0, 9.81, 800.0, 1e-2, 1e7, 3.0, 50.0)
	f.Add(3.0, 2e10, 0.0, 1e-3, 1.0, 0.05, 9.7, 920.0, 1e6, 1.0, 0.0, 400.0)
	f.Add(0.01, 1e6, 0.33, 0.5, 0.5e6, 1000.0, 9.8, 917.0, 20.0, 1e4, 0.2, 250.0)
	f.Fuzz(func(t *testing.T, h, e, nu, a, strength, depth, g, density, length, force, snow, snowDensity float64) {
		check := func(what string, err error, xs ...float64) {
			var field *measure.Error
			if err != nil {
				if !errors.As(err, &field) || field.Field == "" {
					t.Errorf("%s: the error names no field: %v", what, err)
				}
				return
			}
			for _, x := range xs {
				if math.IsNaN(x) || math.IsInf(x, 0) {
					t.Errorf("%s: %v", what, xs)
				}
			}
		}
		p := ice.Plate{Thickness: h, E: e, Nu: nu}
		w := ice.Wave{Plate: p, Depth: depth, Gravity: g, IceDensity: density}
		c, l, err := w.Critical()
		check("critical", err, c, l)
		v, err2 := w.Speed(length)
		check("speed", err2, v)
		bound, err3 := w.Bound()
		check("bound", err3, bound)
		if err == nil && (bound < c*(1-1e-9) || err2 == nil && v < c*(1-1e-9)) {
			t.Errorf("critical %g m/s, bound %g, a wave of %g", c, bound, v)
		}
		b, err := p.Breakthrough(ice.Patch{A: a}, strength, 0)
		check("breakthrough", err, b.FirstCrack, b.Wedges, b.Margin)
		rim, err := p.Edge(force, a)
		check("edge", err, rim.Deflection, rim.Mx)
		// A few lengths out, a long line's own ends lift its middle.
		if err == nil && !(rim.Deflection > 0) {
			t.Errorf("edge: %+v", rim)
		}
		load, err := p.FloodLoad(snow)
		check("flood load", err, load)
		cover := ice.Cover{Ice: h, Snow: snow, IceDensity: density, SnowDensity: snowDensity}
		free, err := cover.Freeboard()
		check("freeboard", err, free)
		most, err := cover.MostSnow()
		check("most snow", err, most)
		slush, err := cover.Slush(920)
		check("slush", err, slush)
		if err == nil && (slush > 0) != (free < 0) && math.Abs(free) > 1e-12 && snow > 0 {
			t.Errorf("freeboard %g m, slush %g m", free, slush)
		}
		melt, err := ice.MeltIn(force, length)
		check("melt", err, melt)
		state, err := ice.Pad{A: a, B: a, Snow: snowDensity, Bank: 1}.Shovelled(p, length, 0)
		check("pad", err, state.Deflection, state.Mx, state.My, state.Mxy)
		share, source := ice.Cracks(int(snow)).Share()
		if source == nil || !(share > 0 && share <= 1) {
			t.Errorf("share %g by %v", share, source)
		}
	})
}
