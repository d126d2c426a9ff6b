package ice_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// drilled is the sound sheet over water of known depth.
func drilled(h float64) ice.Sheet {
	s := sound(h)
	s.Depth = 6
	return s
}

// frame is a dock of the tests, about to be set on four drums.
func frame(mass float64) ice.Stand {
	t := ice.Stand{Stay: 7 * measure.Day}
	for _, o := range [][2]float64{{-2, -1}, {2, -1}, {2, 1}, {-2, 1}} {
		t.Loads = append(t.Loads, ice.Patch{X: o[0], Y: o[1], A: 0.3, Force: mass / 4 * measure.Gravity})
	}
	return t
}

// watched lets the dock have stood for some days, with a gauge that falls by a
// rate in m a day to the newest reading.
func watched(t ice.Stand, days, newest, rate float64) ice.Stand {
	t.Since = days * measure.Day
	for d := 0.0; d <= days; d++ {
		t.Gauge = append(t.Gauge, ice.Reading{Age: d * measure.Day, Freeboard: newest + d*rate})
	}
	return t
}

func flooding(t testing.TB, s ice.Sheet, load ice.Stand) ice.Flood {
	t.Helper()
	f, err := s.Flooding(load)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func beside(t testing.TB, s ice.Sheet, load ice.Stand, people ice.Crossing) measure.Check {
	t.Helper()
	c, err := s.Beside(load, people)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestTwoVerdicts: every pair of verdicts on the dock and on people beside it
// occurs, so that neither can be read off the other.
func TestTwoVerdicts(t *testing.T) {
	one, crowd := ice.Crossing{Mass: 90, People: 1}, ice.Crossing{Mass: 600, People: 6}
	snowy := frame(300)
	snowy.Snow = 0.2
	unplaced := drilled(1.2)
	unplaced.Holes[0].X = math.NaN()
	for _, c := range []struct {
		name        string
		sheet       ice.Sheet
		load        ice.Stand
		people      ice.Crossing
		stay, stand measure.Verdict
	}{
		{"light dock on thick ice", drilled(1), frame(300), one, measure.Holds, measure.Holds},
		{"the dock may stay, a crowd not", drilled(0.5), frame(300), crowd, measure.Holds, measure.Short},
		{"people today, the dock not under the snow to come", drilled(0.5), snowy, one, measure.Short, measure.Holds},
		{"thin ice", drilled(0.12), frame(1500), one, measure.Short, measure.Short},
		{"corners not in place", unplaced, frame(300), one, measure.NoAnswer, measure.NoAnswer},
		{"stood for two days, read daily", drilled(1), watched(frame(300), 2, 0.07, 0.0005), one, measure.Holds, measure.Holds},
		{"stood for two days, falling fast", drilled(1), watched(frame(300), 2, 0.02, 0.015), one, measure.Short, measure.NoAnswer},
	} {
		f, b := flooding(t, c.sheet, c.load), beside(t, c.sheet, c.load, c.people)
		if f.Check.Verdict() != c.stay || b.Verdict() != c.stand {
			t.Errorf("%s: the dock %v, want %v; people %v, want %v (%v)", c.name, f.Check, c.stay, b, c.stand, f.Governs)
		}
	}
}

// TestStandBarred: what takes every answer away from dock and people, though the
// same sheet and load hold without it.
func TestStandBarred(t *testing.T) {
	one := ice.Crossing{Mass: 90, People: 1}
	for name, spoil := range map[string]func(*ice.Sheet, *ice.Stand){
		"time not known":     func(_ *ice.Sheet, l *ice.Stand) { l.Since = math.NaN() },
		"stands, no gauge":   func(_ *ice.Sheet, l *ice.Stand) { l.Since = 3600 },
		"gauge of two days":  func(_ *ice.Sheet, l *ice.Stand) { *l = watched(*l, 3, 0.07, 0); l.Gauge = l.Gauge[2:] },
		"no trend after 4 d": func(_ *ice.Sheet, l *ice.Stand) { *l = watched(*l, 4, 0.07, 0); l.Gauge = l.Gauge[:2] },
		"outside the pad":    func(_ *ice.Sheet, l *ice.Stand) { l.Loads[2].Y = 5 },
		"corners at one place": func(s *ice.Sheet, _ *ice.Stand) {
			s.Holes[0], s.Holes[1], s.Holes[2] = s.Holes[3], s.Holes[3], s.Holes[3]
		},
		"thaw":              func(s *ice.Sheet, _ *ice.Stand) { s.Air[4].High = 1 },
		"old survey":        func(s *ice.Sheet, _ *ice.Stand) { s.Age = 90000 },
		"river":             func(s *ice.Sheet, _ *ice.Stand) { s.Water = ice.River },
		"spring":            func(s *ice.Sheet, _ *ice.Stand) { s.Season = ice.Spring },
		"a hole unmeasured": func(s *ice.Sheet, _ *ice.Stand) { s.Holes[3].Clear = math.NaN() },
		"no walk drilled":   func(s *ice.Sheet, _ *ice.Stand) { s.Holes[5].Spot = ice.PadMiddle },
	} {
		s, l := drilled(2.9), frame(300)
		spoil(&s, &l)
		f, b := flooding(t, s, l), beside(t, s, l, one)
		if f.Check.Verdict() != measure.NoAnswer || f.Check.Err == nil || b.Verdict() != measure.NoAnswer || b.Err == nil {
			t.Errorf("%s: the dock %v, people %v", name, f.Check, b)
		}
	}
}

// TestFreeboardUsedUp: snow that takes the freeboard, now or later, floods at
// once; the level in a hole counts where it is lower, but not in the bowl of the
// dock.
func TestFreeboardUsedUp(t *testing.T) {
	base := flooding(t, drilled(0.6), frame(300))
	if math.Abs(base.Freeboard-0.08*0.6) > 1e-12 {
		t.Errorf("freeboard %g m, want the level read in the holes, 48 mm", base.Freeboard)
	}
	for name, worsen := range map[string]func(*ice.Sheet, *ice.Stand){
		"snow":      func(s *ice.Sheet, _ *ice.Stand) { s.Holes[1].Snow = 0.2 },
		"more snow": func(_ *ice.Sheet, l *ice.Stand) { l.Snow = 0.2 },
		"level":     func(s *ice.Sheet, _ *ice.Stand) { s.Holes[1].Water = 0 },
	} {
		s, l := drilled(0.6), frame(300)
		worsen(&s, &l)
		if f := flooding(t, s, l); f.Soonest != 0 || f.Freeboard > 0 || f.Check.Verdict() != measure.Short {
			t.Errorf("%s: %v, freeboard %g m", name, f.Check, f.Freeboard)
		}
	}
	s := drilled(0.6)
	s.SnowDensity = 200
	s.Holes[1].Snow = 0.1
	if f := flooding(t, s, frame(300)); math.Abs(f.Freeboard-(0.083*0.6-0.02)) > 1e-12 {
		t.Errorf("freeboard %g m under 10 cm of snow of 200 kg/m³", f.Freeboard)
	}
	s = drilled(0.6)
	s.Holes = append(s.Holes, ice.Hole{Name: "gauge beside the float", X: 1, Clear: 0.6, Water: 0.01, Looked: true})
	if f := flooding(t, s, frame(300)); f.Freeboard != base.Freeboard {
		t.Errorf("the hole at the dock sets the freeboard of the sheet to %g m", f.Freeboard)
	}
	s.Holes[6].Spot = ice.PadMiddle // beside the one there
	if f := flooding(t, s, frame(300)); f.Freeboard != 0.01 {
		t.Errorf("a hole on the pad gives %g m, want 10 mm", f.Freeboard)
	}
}

// TestSag: it grows with time and load, shrinks with thickness, and the soft end
// is the deeper; a load far wider than its bowl sinks to its own weight in water.
func TestSag(t *testing.T) {
	last := [2]float64{}
	for _, hours := range []float64{0, 0.1, 1, 10, 100} {
		least, most, err := drilled(0.5).Sag(frame(500), hours*3600)
		if err != nil || !(least > last[0] && most > last[1] && most > least) {
			t.Fatalf("after %g h %g to %g m, %v; before %v", hours, least, most, err, last)
		}
		last = [2]float64{least, most}
		a, b, err := drilled(0.5).Sag(frame(250), hours*3600)
		if err != nil || !(a < least && b < most) {
			t.Errorf("half the load sags %g to %g m, %v", a, b, err)
		}
		a, b, err = drilled(0.6).Sag(frame(500), hours*3600)
		if err != nil || !(a < least && b < most) {
			t.Errorf("thicker ice sags %g to %g m, %v", a, b, err)
		}
	}
	wide := ice.Stand{Loads: []ice.Patch{{A: 90, B: 90, Force: 50 * measure.Gravity * 8100}}, Stay: measure.Day}
	least, most, err := drilled(0.3).Sag(wide, 0)
	if err != nil || math.Abs(least-0.05) > 2e-3 || math.Abs(most-0.05) > 2e-3 {
		t.Errorf("50 kg/m² sinks %g to %g m, %v", least, most, err)
	}
	if _, _, err := drilled(0.2).Sag(frame(2000), 60*measure.Day); !errors.Is(err, measure.ErrRange) {
		t.Errorf("past the law: %v", err)
	}
	if _, _, err := drilled(0.5).Sag(frame(500), -1); !errors.Is(err, measure.ErrRange) {
		t.Errorf("before it was set: %v", err)
	}
	s := drilled(0.5)
	s.Holes[0].Gap = math.NaN()
	if _, _, err := s.Sag(frame(500), 0); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("not measured: %v", err)
	}
}

// TestFreeboardForPeople: today's people need freeboard tomorrow, and more than
// none of it, by the sag and by the gauge alike.
func TestFreeboardForPeople(t *testing.T) {
	one := ice.Crossing{Mass: 90, People: 1}
	_, now, err := drilled(1).Sag(frame(300), 0)
	if err != nil {
		t.Fatal(err)
	}
	_, tomorrow, err := drilled(1).Sag(frame(300), measure.Day)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name  string
		water float64
		want  measure.Verdict
	}{
		{"enough today", (now + tomorrow) / 2, measure.NoAnswer},
		{"enough for the dock tomorrow", tomorrow + 5e-5, measure.NoAnswer},
		{"enough for both", tomorrow + 5e-4, measure.Holds},
	} {
		s := drilled(1)
		for i := range s.Holes {
			s.Holes[i].Water, s.Holes[i].Snow = c.water, 0.16 // under so much snow it lies so deep
		}
		if got := beside(t, s, frame(300), one); got.Verdict() != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	for _, c := range []struct {
		reading float64
		want    measure.Verdict
	}{{0.00305, measure.NoAnswer}, {0.0035, measure.Holds}} {
		l := frame(300)
		l.Since, l.Gauge = 2*measure.Day, ice.Gauge{{Age: measure.Day, Freeboard: c.reading}, {Freeboard: c.reading}}
		if got := beside(t, drilled(1), l, one); got.Verdict() != c.want {
			t.Errorf("%g m in the hole: %v", c.reading, got)
		}
	}
}

// TestFarLoadNeverHelps: a load beyond four characteristic lengths lifts the
// dock a little; that is not counted, soon or late.
func TestFarLoadNeverHelps(t *testing.T) {
	for _, hours := range []float64{0, 24} {
		least, most, err := drilled(0.5).Sag(frame(500), hours*3600)
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range []float64{20, 26, 32, 40} {
			l := frame(500)
			l.Loads = append(l.Loads, ice.Patch{X: x, A: 0.3, Force: 500})
			a, b, err := drilled(0.5).Sag(l, hours*3600)
			if err != nil || a < least*(1-1e-9) || b < most*(1-1e-9) {
				t.Errorf("after %g h with a load at %g m: %g to %g m, %v; without %g to %g m", hours, x, a, b, err, least, most)
			}
		}
	}
}

// TestWideLoad: under a load wider than its bowl the sag passes its deepest as
// the sheet softens; what it has passed is not forgotten.
func TestWideLoad(t *testing.T) {
	wide := ice.Stand{Loads: []ice.Patch{{A: 24, Force: 1e5}}, Stay: measure.Day}
	last, flat := 0.0, 0
	for _, hours := range []float64{0, 0.1, 1, 3, 10, 30, 100, 300, 1000} {
		least, most, err := drilled(0.5).Sag(wide, hours*3600)
		if errors.Is(err, measure.ErrRange) {
			break
		}
		if err != nil || most < last || most < least {
			t.Errorf("after %g h %g to %g m, %v, before %g m", hours, least, most, err, last)
		}
		if most < last*(1+1e-9) {
			flat++
		}
		last = most
	}
	if flat == 0 {
		t.Error("the sag never passed its deepest: the test shows nothing")
	}
}

// TestFloodRange: softest ice floods first, and what is known of the ice brings
// the ends together; the dates are days after the setting.
func TestFloodRange(t *testing.T) {
	load := frame(1500)
	wide := flooding(t, drilled(0.35), load)
	load.Soft, load.Stiff = ice.Creep{Temperature: -4, Grain: 3e-3}, ice.Creep{Temperature: -6, Grain: 5e-3}
	known := flooding(t, drilled(0.35), load)
	if !(0 < wide.Soonest && wide.Soonest < known.Soonest && known.Soonest < known.Latest) {
		t.Errorf("unknown ice %g to %g s, known %g to %g s", wide.Soonest, wide.Latest, known.Soonest, known.Latest)
	}
	set := time.Date(2031, 1, 10, 12, 0, 0, 0, time.UTC)
	from, to := (ice.Flood{Soonest: 2 * measure.Day, Latest: 5 * measure.Day}).Dates(set)
	if from.Day() != 12 || to.Day() != 15 {
		t.Errorf("from %v to %v", from, to)
	}
	from, to = (ice.Flood{Soonest: math.NaN(), Latest: math.Inf(1)}).Dates(set)
	if !from.IsZero() || !to.IsZero() {
		t.Errorf("from %v to %v", from, to)
	}
	if from, _ := wide.Dates(time.Time{}); !from.IsZero() {
		t.Errorf("a day set on no day floods on %v", from)
	}
}

// TestEveryVerdictExpires: every check of a sheet says when it ends, where and
// when was measured, and its cautions with their publishers.
func TestEveryVerdictExpires(t *testing.T) {
	one := ice.Crossing{Mass: 90, People: 1}
	for _, s := range []ice.Sheet{drilled(1), {}} {
		crossing, err1 := s.Crossing(one)
		parked, err2 := s.ParkedHours(ice.Crossing{Mass: 90, People: 1}, 3)
		weeks, err3 := s.ParkedHours(ice.Crossing{Mass: 90, People: 1}, 300)
		standing, err4 := s.Beside(frame(300), one)
		haul, err5 := s.Hauling(ice.Haul{Load: one, Speed: 1})
		f, err6 := s.Flooding(frame(300))
		if err := errors.Join(err1, err2, err3, err4, err5, err6); err != nil {
			t.Fatal(err)
		}
		for _, c := range []measure.Check{crossing, parked, weeks, standing, haul, f.Check} {
			notes := strings.Join(c.Notes, "\n")
			for _, want := range []string{"EXPIRY: 24 hours", "or at once on thaw, rain, snow or a change of the water level", "measured: ", "(Maine Warden Service)", "drill at least every 30 m", "never alone"} {
				if !strings.Contains(notes, want) {
					t.Errorf("%s does not say %q:\n%s", c.Name, want, notes)
				}
			}
		}
	}
	c, err := watched(frame(1), 3, 0.03, 0).Gauge.Check(measure.Day)
	if err != nil || !strings.Contains(strings.Join(c.Notes, "\n"), "EXPIRY: 24 hours") {
		t.Errorf("%v, %q", err, c.Notes)
	}
}

func TestStandBadData(t *testing.T) {
	for name, spoil := range map[string]func(*ice.Stand, *ice.Crossing){
		"no load":       func(l *ice.Stand, _ *ice.Crossing) { l.Loads = nil },
		"many loads":    func(l *ice.Stand, _ *ice.Crossing) { l.Loads = make([]ice.Patch, 101) },
		"force":         func(l *ice.Stand, _ *ice.Crossing) { l.Loads[0].Force = math.NaN() },
		"since":         func(l *ice.Stand, _ *ice.Crossing) { l.Since = -1 },
		"stay":          func(l *ice.Stand, _ *ice.Crossing) { l.Stay = 0 },
		"a year":        func(l *ice.Stand, _ *ice.Crossing) { l.Stay = 365 * measure.Day },
		"snow":          func(l *ice.Stand, _ *ice.Crossing) { l.Snow = math.NaN() },
		"soft":          func(l *ice.Stand, _ *ice.Crossing) { l.Soft = ice.Creep{Temperature: 0, Grain: 3e-3} },
		"grain":         func(l *ice.Stand, _ *ice.Crossing) { l.Stiff = ice.Creep{Temperature: -5, Grain: 1} },
		"modulus":       func(l *ice.Stand, _ *ice.Crossing) { l.Soft = ice.Creep{Temperature: -5, Grain: 3e-3, E: 1e8} },
		"soft is stiff": func(l *ice.Stand, _ *ice.Crossing) { l.Soft = ice.Creep{Temperature: -20, Grain: 3e-3} },
		"old reading":   func(l *ice.Stand, _ *ice.Crossing) { l.Gauge = ice.Gauge{{Age: 60, Freeboard: 0.02}} },
		"reading":       func(l *ice.Stand, _ *ice.Crossing) { l.Gauge = ice.Gauge{{Freeboard: math.NaN()}} },
	} {
		l, people := frame(300), ice.Crossing{Mass: 90, People: 1}
		spoil(&l, &people)
		f, err := drilled(1).Flooding(l)
		var e *measure.Error
		if !errors.As(err, &e) || e.Field == "" || f.Check.Verdict() != measure.NoAnswer {
			t.Errorf("%s: the dock %v, %v", name, f.Check, err)
		}
		if c, err := drilled(1).Beside(l, people); err == nil && c.Verdict() != measure.NoAnswer {
			t.Errorf("%s: people %v, %v", name, c, err)
		}
		if _, _, err := drilled(1).Sag(l, 60); err == nil && name != "soft is stiff" {
			t.Errorf("%s: a sag", name)
		}
	}
	if _, err := drilled(1).Beside(frame(300), ice.Crossing{Mass: -1}); err == nil {
		t.Error("people without mass")
	}
	if _, err := (ice.Sheet{Depth: -1}).Flooding(frame(300)); !errors.Is(err, measure.ErrRange) {
		t.Errorf("depth: %v", err)
	}
	if _, _, err := (ice.Sheet{SnowDensity: 500}).Sag(frame(300), 0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("density of snow: %v", err)
	}
	for _, c := range []struct{ stress, seconds float64 }{{0, 1}, {math.NaN(), 1}, {3e6, 1}, {1e5, -1}, {1e5, math.Inf(1)}} {
		if _, _, err := (ice.Creep{Temperature: -5, Grain: 3e-3}).Modulus(c.stress, c.seconds); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	if _, within, err := (ice.Creep{Temperature: -2, Grain: 3e-3}).Strain(2e5, 7*measure.Day); err != nil || within {
		t.Errorf("a strain of 2e-3 passes as small: %v", err)
	}
}

// TestGauge: a straight fall ends where it points, a rising or level one never;
// what scatters ends later at the far side and sooner for verdicts.
func TestGauge(t *testing.T) {
	day := measure.Day
	straight := watched(frame(1), 5, 0.030, 0.002).Gauge
	f, err := straight.Fall()
	if err != nil || math.Abs(f.Zero-15*day) > 1 || math.Abs(f.Rate*day-0.002) > 1e-12 || f.Newest != 0.030 {
		t.Errorf("%+v, %v", f, err)
	}
	if !(0 < f.Early && f.Early < f.Zero && f.Zero < f.Late) {
		t.Errorf("%+v are in no order", f)
	}
	if steepest := 0.027 / (0.005 / day); math.Abs(f.Early-steepest) > 1 {
		t.Errorf("early %g s, want the last day's fall read 3 mm wrong, %g s", f.Early, steepest)
	}
	level := watched(frame(1), 5, 0.030, 0).Gauge
	if f, err := level.Fall(); err != nil || !math.IsInf(f.Zero, 1) || !math.IsInf(f.Late, 1) || !(f.Early > 5*day) {
		t.Errorf("level: %+v, %v", f, err)
	}
	shuffled := ice.Gauge{straight[3], straight[0], straight[5], straight[1], straight[4], straight[2]}
	if g, err := shuffled.Fall(); err != nil || math.Abs(g.Zero-f.Zero) > 1 || g.Early != f.Early {
		t.Errorf("in another order: %+v", g)
	}
	noisy := append(ice.Gauge(nil), straight...)
	noisy[2].Freeboard += 0.01
	if g, err := noisy.Fall(); err != nil || !(g.Late > f.Late) {
		t.Errorf("scatter: %+v, %v", g, err)
	}
	for name, c := range map[string]struct {
		gauge ice.Gauge
		stay  float64
		want  measure.Verdict
	}{
		"holds":        {straight, 4 * day, measure.Holds},
		"too long":     {straight, 6 * day, measure.Short},
		"level":        {level, 7 * day, measure.Holds},
		"flooded":      {ice.Gauge{{Freeboard: -0.01}}, day, measure.Short},
		"flooded, old": {ice.Gauge{{Age: 5 * day, Freeboard: 0}}, day, measure.Short},
		"two readings": {straight[:2], day, measure.NoAnswer},
		"one time":     {ice.Gauge{{0, 0.1}, {0, 0.2}, {0, 0.3}}, day, measure.NoAnswer},
		"none":         {nil, day, measure.NoAnswer},
		"not today":    {straight[2:], day, measure.NoAnswer},
	} {
		got, err := c.gauge.Check(c.stay)
		if err != nil || got.Verdict() != c.want {
			t.Errorf("%s: %v, %v, want %v", name, got, err, c.want)
		}
	}
	for _, c := range []struct {
		gauge ice.Gauge
		stay  float64
	}{{straight, 0}, {straight, math.NaN()}, {ice.Gauge{{Age: -1}}, day}, {ice.Gauge{{Freeboard: 2}}, day}} {
		if got, err := c.gauge.Check(c.stay); !errors.Is(err, measure.ErrRange) || got.Verdict() != measure.NoAnswer {
			t.Errorf("%+v: %v, %v", c, got, err)
		}
	}
	c, _ := straight.Check(4 * day)
	if !strings.Contains(strings.Join(c.Notes, "\n"), "falling 2.0 mm a day: move the dock") {
		t.Errorf("%q", c.Notes)
	}
}
