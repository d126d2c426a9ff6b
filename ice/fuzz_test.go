package ice_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// A situation is a sheet, a load and a time on the spot, all of which can get worse.
type situation struct {
	sheet ice.Sheet
	load  ice.Crossing
	hours float64
}

func (c situation) clone() situation {
	c.sheet.Holes = append([]ice.Hole(nil), c.sheet.Holes...)
	c.sheet.Air = append([]ice.Air(nil), c.sheet.Air...)
	return c
}

// verdicts of the crossing and of the parked load; bad data is no answer.
func (c situation) verdicts() [2]measure.Verdict {
	crossing, _ := c.sheet.Crossing(c.load)
	parked, _ := c.sheet.ParkedHours(ice.Crossing{Mass: c.load.Mass, People: 1}, c.hours)
	return [2]measure.Verdict{crossing.Verdict(), parked.Verdict()}
}

// contradicted reports whether a check has no answer since two inputs contradict each
// other: then less of one may make sense of it.
func contradicted(c measure.Check) bool {
	text := strings.Join(append(c.Notes, fmt.Sprint(c.Err)), "\n")
	for _, s := range []string{"lies deeper than it floats", "in the hole at the dock it stands", "below the top in the hole at the dock"} {
		if strings.Contains(text, s) {
			return true
		}
	}
	return false
}

func (c situation) contradicted() bool {
	crossing, _ := c.sheet.Crossing(c.load)
	return contradicted(crossing)
}

// worsenings makes one input worse or unknown. i picks a hole or a day, d is
// how much, in metres or what fits the field.
var worsenings = []struct {
	name string
	do   func(c *situation, i int, d float64)
}{
	{"thinner", func(c *situation, i int, d float64) { h := hole(c, i); h.Clear = math.Max(0, h.Clear-d) }},
	{"thinner everywhere", func(c *situation, _ int, d float64) {
		for i := range c.sheet.Holes {
			c.sheet.Holes[i].Clear = math.Max(0, c.sheet.Holes[i].Clear-d)
		}
	}},
	{"whiter", func(c *situation, i int, d float64) { // clear turned to white
		h := hole(c, i)
		d = math.Min(d, h.Clear)
		h.Clear, h.White = h.Clear-d, h.White+d
	}},
	{"more white", func(c *situation, i int, d float64) {
		if c.sheet.Scheme == ice.Strictest || c.sheet.Scheme == ice.ClearAlone {
			hole(c, i).White += d
		}
	}},
	{"softer", func(c *situation, i int, _ float64) { hole(c, i).Hard = false }},
	{"wider gap", func(c *situation, i int, d float64) { hole(c, i).Gap += d }},
	{"more snow", func(c *situation, i int, d float64) { hole(c, i).Snow += d }},
	{"flooded", func(c *situation, i int, d float64) { hole(c, i).Water = -d }},
	{"hanging", func(c *situation, i int, d float64) {
		if h := hole(c, i); h.Water > 0 {
			h.Water = h.Clear*0.125 + 0.02 + d
		}
	}},
	{"clear unknown", func(c *situation, i int, _ float64) { hole(c, i).Clear = math.NaN() }},
	{"white unknown", func(c *situation, i int, _ float64) { hole(c, i).White = math.NaN() }},
	{"gap unknown", func(c *situation, i int, _ float64) { hole(c, i).Gap = math.NaN() }},
	{"level unknown", func(c *situation, i int, _ float64) { hole(c, i).Water = math.NaN() }},
	{"snow unknown", func(c *situation, i int, _ float64) { hole(c, i).Snow = math.NaN() }},
	{"fewer holes", func(c *situation, i int, _ float64) {
		// A hole that nobody knows of cannot be missed: the thinnest stays,
		// and so does one that shows white ice, snow or a bad level.
		hs := c.sheet.Holes
		n := i % len(hs)
		for k, h := range hs {
			if k != n && h.Clear <= hs[n].Clear && hs[n].White == 0 && hs[n].Snow == 0 && hs[n].Water == h.Water {
				c.sheet.Holes = append(hs[:n:n], hs[n+1:]...)
				return
			}
		}
		c.sheet.Holes = hs[:min(4, len(hs))]
	}},
	{"warmer", func(c *situation, _ int, d float64) {
		for i := range c.sheet.Air {
			c.sheet.Air[i].High += 10 * d
			c.sheet.Air[i].Low += 10 * d
		}
	}},
	{"warmer highs", func(c *situation, _ int, d float64) {
		for i := range c.sheet.Air {
			c.sheet.Air[i].High += 10 * d
		}
	}},
	{"one warm day", func(c *situation, i int, d float64) {
		a := &c.sheet.Air[i%len(c.sheet.Air)]
		a.High = math.Max(a.High, d)
	}},
	{"cold snap", func(c *situation, _ int, d float64) {
		n := len(c.sheet.Air) - 1
		c.sheet.Air[n] = ice.Air{High: c.sheet.Air[n-1].High - 10 - d, Low: c.sheet.Air[n-1].Low - 10 - d}
	}},
	{"high unknown", func(c *situation, i int, _ float64) { c.sheet.Air[i%len(c.sheet.Air)].High = math.NaN() }},
	{"low unknown", func(c *situation, i int, _ float64) { c.sheet.Air[i%len(c.sheet.Air)].Low = math.NaN() }},
	{"fewer days", func(c *situation, i int, _ float64) { c.sheet.Air = c.sheet.Air[1+i%len(c.sheet.Air):] }},
	{"older", func(c *situation, _ int, d float64) {
		if c.sheet.Age > 0 { // 0 is not known
			c.sheet.Age += 1e5 * d
		}
	}},
	{"not looked", func(c *situation, i int, _ float64) { hole(c, i).Looked = false }},
	{"place unknown", func(c *situation, i int, _ float64) { hole(c, i).Y = math.NaN() }},
	{"two at one place", func(c *situation, i int, _ float64) {
		h := hole(c, i+1)
		h.X, h.Y = hole(c, i).X, hole(c, i).Y
	}},
	{"far off", func(c *situation, i int, d float64) { hole(c, i).Y += 64 + d }},
	{"age unknown", func(c *situation, _ int, _ float64) { c.sheet.Age = math.NaN() }},
	{"more cracks", func(c *situation, _ int, _ float64) {
		if c.sheet.Cracks != ice.UnknownCracks {
			c.sheet.Cracks = min(c.sheet.Cracks+1, ice.CrossingCracks)
		}
	}},
	{"cracks unknown", func(c *situation, _ int, _ float64) { c.sheet.Cracks = ice.UnknownCracks }},
	{"river", func(c *situation, _ int, _ float64) { c.sheet.Water = ice.River }},
	{"water unknown", func(c *situation, _ int, _ float64) { c.sheet.Water = ice.UnknownWater }},
	{"spring", func(c *situation, _ int, _ float64) { c.sheet.Season = ice.Spring }},
	{"season unknown", func(c *situation, _ int, _ float64) { c.sheet.Season = ice.UnknownSeason }},
	{"wet", func(c *situation, _ int, _ float64) { c.sheet.Wet = ice.Found }},
	{"wet unknown", func(c *situation, _ int, _ float64) { c.sheet.Wet = ice.NotLooked }},
	{"inlet", func(c *situation, _ int, _ float64) { c.sheet.Inlets = ice.Found }},
	{"inlet unknown", func(c *situation, _ int, _ float64) { c.sheet.Inlets = ice.NotLooked }},
	{"changed", func(c *situation, _ int, _ float64) { c.sheet.Changed = ice.Found }},
	{"change unknown", func(c *situation, _ int, _ float64) { c.sheet.Changed = ice.NotLooked }},
	{"heavier", func(c *situation, _ int, d float64) { c.load.Mass *= 1 + d }},
	{"more people", func(c *situation, i int, _ float64) { c.load.People += 1 + i }},
	{"heavier machine", func(c *situation, _ int, _ float64) { c.load.Machine = min(c.load.Machine+1, ice.Truck) }},
	{"longer", func(c *situation, _ int, d float64) { c.hours += 10 * d }},
	{"strictest scheme", func(c *situation, _ int, _ float64) { c.sheet.Scheme = ice.Strictest }},
	{"stricter class", func(c *situation, i int, _ float64) {
		if c.sheet.Class != nil {
			class := ice.Classes()[i%4] // all are 4 kg/cm² or less
			c.sheet.Class = &class
		}
	}},
	{"class not named", func(c *situation, _ int, _ float64) { c.sheet.Class = nil }},
}

func hole(c *situation, i int) *ice.Hole { return &c.sheet.Holes[i%len(c.sheet.Holes)] }

// build makes a situation from numbers; many of them hold.
func build(clear, white, snow, mass, age, hours, high float64, choices uint32) (situation, bool) {
	for _, x := range []float64{clear, white, snow, mass, age, hours, high} {
		if math.IsNaN(x) || math.Abs(x) > 1e9 {
			return situation{}, false
		}
	}
	pick := func(n uint32) int { k := choices % n; choices /= n; return int(k) }
	c := situation{sheet: sound(math.Mod(math.Abs(clear), 2.5))}
	c.load = ice.Crossing{Mass: 20 + math.Mod(math.Abs(mass), 9000), People: pick(7), Machine: ice.Machine(pick(5))}
	c.hours = math.Mod(math.Abs(hours), 30)
	s := &c.sheet
	s.Scheme = ice.Scheme(pick(4))
	if k := pick(6); k > 0 {
		class := ice.Classes()[3+k]
		s.Class = &class
	}
	s.Cracks = []ice.Cracks{ice.NoCracks, ice.OneCrack, ice.CrossingCracks, ice.NoCracks}[pick(4)]
	s.Age = math.Mod(math.Abs(age), 1e5)
	w := &s.Holes[pick(6)]
	if pick(2) == 1 {
		w.White, w.Hard = math.Mod(math.Abs(white), 0.5), pick(2) == 1
	}
	if pick(3) == 1 {
		w.Gap = 0.02
	}
	w.Snow = math.Mod(math.Abs(snow), 0.05)
	for i := range s.Air {
		s.Air[i].High = math.Max(s.Air[i].Low, s.Air[i].High+math.Mod(high, 7))
	}
	return c, true
}

// FuzzNeverImproves: a verdict never improves when any input gets worse or
// becomes unknown. Holding is the only verdict better than another.
func FuzzNeverImproves(f *testing.F) {
	for k := range worsenings {
		f.Add(0.9, 0.0, 0.0, 200.0, 100.0, 2.0, 0.0, uint32(0), uint8(k), uint8(k), 0.3)
		f.Add(2.4, 0.1, 0.01, 90.0, 86000.0, 23.5, 5.9, uint32(7*5*3), uint8(k), uint8(1), 2.0)
		f.Add(0.3, 0.2, 0.0, 100.0, 0.0, 0.0, -3.0, uint32(2+7*5*2), uint8(k), uint8(3), 0.001)
		f.Add(0.15, 0.0, 0.0, 80.0, 0.0, 0.0, 0.0, uint32(1), uint8(k), uint8(0), 1e-6)
	}
	f.Fuzz(func(t *testing.T, clear, white, snow, mass, age, hours, high float64, choices uint32, which, index uint8, d float64) {
		c, ok := build(clear, white, snow, mass, age, hours, high, choices)
		if !ok || !(d > 0 && d < 1e6) {
			return
		}
		before := c.verdicts()
		w := worsenings[int(which)%len(worsenings)]
		worse := c.clone()
		w.do(&worse, int(index), d)
		after := worse.verdicts()
		for i, name := range []string{"crossing", "parked"} {
			if after[i] == measure.Holds && before[i] != measure.Holds && !c.contradicted() {
				t.Errorf("%s improves from %v to %v when the input gets worse: %s by %g\n%+v %+v %g h", name, before[i], after[i], w.name, d, c.sheet, c.load, c.hours)
			}
		}
	})
}

// TestFuzzStartsHolding: enough of the fuzz target's own situations hold, so
// that an improvement and its absence would both be seen.
func TestFuzzStartsHolding(t *testing.T) {
	holds, other := 0, 0
	for k := uint32(0); k < 4000; k++ {
		x := float64(k)
		c, _ := build(x*0.0137, x*0.003, x*0.0001, 40+x/3, 21*x, 0.007*x, math.Sin(x), k*7919)
		for _, v := range c.verdicts() {
			if v == measure.Holds {
				holds++
			} else {
				other++
			}
		}
	}
	if holds < 800 || other < 800 {
		t.Errorf("%d hold, %d do not", holds, other)
	}
}

// FuzzSurvey: any numbers at all give a verdict or an error that names a field,
// and hold only where every promise of the package is kept.
func FuzzSurvey(f *testing.F) {
	f.Add(0.3, 0.0, 0.0, 0.02, 0.0, -5.0, -12.0, 3600.0, 90.0, 3.0, uint8(1), uint8(2), uint8(2), uint8(1), uint8(0), uint8(6))
	f.Add(math.NaN(), 0.1, -1.0, math.Inf(1), 0.0, 5.0, 12.0, -1.0, -90.0, 300.0, uint8(9), uint8(1), uint8(0), uint8(7), uint8(3), uint8(2))
	f.Add(0.3, 0.0, 0.0, 0.02, 0.0, -5.0, -12.0, 90000.0, 90.0, 25.0, uint8(0), uint8(2), uint8(2), uint8(1), uint8(0), uint8(5))
	f.Fuzz(func(t *testing.T, clear, white, gap, water, snow, high, low, age, mass, hours float64, people, body, season, cracks, scheme, holes uint8) {
		s := ice.Sheet{
			Water: ice.Water(body), Season: ice.Season(season), Cracks: ice.Cracks(cracks), Scheme: ice.Scheme(scheme), Age: age,
			Wet: ice.NotFound, Inlets: ice.NotFound, Changed: ice.NotFound,
		}
		for i := range int(holes % 9) {
			h := sound(1).Holes[i%6]
			h.Clear, h.White, h.Gap, h.Water, h.Snow = clear, white, gap, water, snow
			s.Holes = append(s.Holes, h)
		}
		for range 5 {
			s.Air = append(s.Air, ice.Air{High: high, Low: low})
		}
		load := ice.Crossing{Mass: mass, People: int(people)}
		for i, call := range []func() (measure.Check, error){
			func() (measure.Check, error) { return s.Crossing(load) },
			func() (measure.Check, error) { return s.ParkedHours(ice.Crossing{Mass: mass, People: 1}, hours) },
			func() (measure.Check, error) { return s.Required(load, hours) },
		} {
			c, err := call()
			if err != nil {
				var e *measure.Error
				if !errors.As(err, &e) || e.Field == "" {
					t.Errorf("call %d: the error names no field: %v", i, err)
				}
			}
			if c.Verdict() != measure.Holds {
				continue
			}
			switch {
			case err != nil, i == 2, len(s.Holes) < 6, s.Water != ice.Lake, s.Season != ice.Winter, s.Cracks == ice.UnknownCracks:
				t.Errorf("call %d holds without its conditions: %+v, %v", i, s, err)
			case !(age > 0 && age <= 86400), !(high < 0), !(water > 0), i == 1 && !(hours <= 24):
				t.Errorf("call %d holds on old, thawing or flooded ice, or for days: %+v", i, s)
			case !(clear+white >= 0.15), !c.Hazard, c.Rule == nil:
				t.Errorf("call %d holds on %g m of ice, hazard %v, rule %v", i, clear, c.Hazard, c.Rule)
			}
		}
	})
}

// FuzzTables: for any mass each table's thickness carries that mass, and the
// class's as well.
func FuzzTables(f *testing.F) {
	f.Add(500.0, 0.2)
	f.Add(-1.0, math.NaN())
	f.Add(60000.0, 1.05)
	f.Fuzz(func(t *testing.T, mass, h float64) {
		for _, table := range ice.Tables() {
			if x, err := table.Thickness(mass); err == nil {
				if back, err := table.Load(x); err != nil || !(back >= mass) {
					t.Errorf("%s: %g kg needs %g m, which carries %g kg, %v", table.Name, mass, x, back, err)
				}
			}
			if m, err := table.Load(h); err == nil {
				if x, err := table.Thickness(m); err != nil || !(x <= h) {
					t.Errorf("%s: %g m carries %g kg, which needs %g m, %v", table.Name, h, m, x, err)
				}
			}
		}
		for _, c := range ice.Classes() {
			if p, err := c.Load(h); err == nil {
				if x, err := c.Thickness(p); err != nil || math.Abs(x-h) > 1e-9 {
					t.Errorf("%s: %g m carries %g N, which needs %g m, %v", c.Name, h, p, x, err)
				}
			}
		}
		for _, c := range ice.StandingClasses() {
			if p, err := c.Thickness(mass * measure.Gravity); err == nil && !(p > 0) {
				t.Errorf("%g kg parked needs %g m", mass, p)
			}
		}
		load := ice.Crossing{Mass: mass}
		if d, source, err := load.Spacing(); err == nil && (!(d > 0) || source == nil) {
			t.Errorf("%g kg: %g m apart by %v", mass, d, source)
		}
		if c, err := ice.Compare(load); err == nil {
			if least, most := c.Spread(); !(0 < least && least <= most) {
				t.Errorf("%g kg: spread %g to %g", mass, least, most)
			}
		}
	})
}

// near returns situations that hold by little, so that each worsening shows.
func near() []situation {
	guide := ice.Classes()[len(ice.Classes())-1]
	half := situation{sheet: sound(0.13), load: ice.Crossing{Mass: 90, People: 1}}
	for i := range half.sheet.Holes {
		half.sheet.Holes[i].White, half.sheet.Holes[i].Hard = 0.1, true
	}
	half.sheet.Scheme = ice.HalfWhite
	class := situation{sheet: sound(0.2), load: ice.Crossing{Mass: 3000}}
	class.sheet.Class = &guide
	return []situation{half, class}
}

// TestNeverImproves runs every worsening over a fixed set of situations, by
// small steps and large.
func TestNeverImproves(t *testing.T) {
	cases := near()
	for k := uint32(0); k < 150; k++ {
		x := float64(k)
		c, _ := build(x*0.0337, x*0.013, x*0.0002, 40+7*x, 500*x, 0.15*x, math.Sin(x), k*7919)
		cases = append(cases, c)
	}
	changed := make([]int, len(worsenings))
	for k, c := range cases {
		before := c.verdicts()
		for n, w := range worsenings {
			for _, d := range []float64{1e-3, 0.1, 1.5} {
				worse := c.clone()
				w.do(&worse, k, d)
				after := worse.verdicts()
				for i := range after {
					if after[i] == measure.Holds && before[i] != measure.Holds && !c.contradicted() {
						t.Errorf("%s by %g improves %v to %v: %+v %+v %g h", w.name, d, before[i], after[i], c.sheet, c.load, c.hours)
					}
					if after[i] != before[i] {
						changed[n]++
					}
				}
			}
		}
	}
	for n, w := range worsenings {
		if changed[n] == 0 {
			t.Errorf("%s never changes a verdict: it tests nothing", w.name)
		}
	}
}
