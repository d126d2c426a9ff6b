package ice_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// TestPlaces: holes that lie where no pad and no way to it is say nothing of it,
// and holes at one place count once: no check of the sheet holds.
func TestPlaces(t *testing.T) {
	one := ice.Crossing{Mass: 90, People: 1}
	move := func(by func(i int, h *ice.Hole)) func(*ice.Sheet) {
		return func(s *ice.Sheet) {
			for i := range s.Holes {
				by(i, &s.Holes[i])
			}
		}
	}
	put := func(n int, x, y float64) func(*ice.Sheet) {
		return func(s *ice.Sheet) { s.Holes[n].X, s.Holes[n].Y = x, y }
	}
	for name, c := range map[string]struct {
		change func(*ice.Sheet)
		want   measure.Verdict
	}{
		"as drilled":                {func(*ice.Sheet) {}, measure.Holds},
		"in another order":          {func(s *ice.Sheet) { slices.Reverse(s.Holes) }, measure.Holds},
		"a fifth corner on a side":  {func(s *ice.Sheet) { s.Holes = append(s.Holes, s.Holes[0]); s.Holes[6].X = 0 }, measure.Holds},
		"one listed twice":          {func(s *ice.Sheet) { s.Holes = append(s.Holes, s.Holes[0]) }, measure.Holds},
		"a second walk hole inside": {func(s *ice.Sheet) { s.Holes = append(s.Holes, s.Holes[5]); s.Holes[6].Y = 1 }, measure.Holds},
		"a second one not placed":   {func(s *ice.Sheet) { s.Holes = append(s.Holes, s.Holes[5]); s.Holes[6].Y = math.NaN() }, measure.Holds},
		"all at one place":          {move(func(_ int, h *ice.Hole) { h.X, h.Y = 0, 0 }), measure.NoAnswer},
		"one corner four times":     {move(func(i int, h *ice.Hole) { h.X, h.Y = [2]float64{-4, h.X}[i/4], [2]float64{-3, h.Y}[i/4] }), measure.NoAnswer},
		"two corners nearly one":    {put(3, -3.7, -2.8), measure.NoAnswer},
		"corners in a line":         {move(func(i int, h *ice.Hole) { h.Y *= [2]float64{0.05, 1}[i/4] }), measure.NoAnswer},
		"a corner inside the three": {put(3, -1, -1), measure.NoAnswer},
		"the middle beside it":      {put(4, 6, 0), measure.NoAnswer},
		"the middle at a corner":    {put(4, 3.7, 2.8), measure.NoAnswer},
		"the walk on the pad":       {put(5, 0, -2.4), measure.NoAnswer},
		"the walk at its edge":      {put(5, 0, -2.6), measure.Holds},
		"the walk at a corner":      {put(5, 4.2, 3.2), measure.NoAnswer},
		"the walk at the middle":    {put(5, 0, 0.1), measure.NoAnswer},
		"the walk 31 m off":         {put(5, 0, -34), measure.NoAnswer},
		"the walk 30 m off":         {put(5, 0, -33), measure.Holds},
		"a corner not placed":       {put(0, math.NaN(), -3), measure.NoAnswer},
		"the walk not placed":       {put(5, 0, math.NaN()), measure.NoAnswer},
		"a wide pad":                {move(func(_ int, h *ice.Hole) { h.X, h.Y = 6*h.X, 6*h.Y+[2]float64{0, 110}[b2i(h.Name == "walk")] }), measure.Holds},
		"a pad of 64 m":             {move(func(_ int, h *ice.Hole) { h.X, h.Y = 8*h.X, 6*h.Y+[2]float64{0, 110}[b2i(h.Name == "walk")] }), measure.NoAnswer},
		"what stands there inside":  {func(s *ice.Sheet) { s.Outline = []ice.Patch{{A: 8, B: 6}} }, measure.Holds},
		"half a metre over":         {func(s *ice.Sheet) { s.Outline = []ice.Patch{{A: 8.9, B: 6.9}} }, measure.Holds},
		"more than that":            {func(s *ice.Sheet) { s.Outline = []ice.Patch{{A: 8.9, B: 7.1}} }, measure.NoAnswer},
		"turned":                    {func(s *ice.Sheet) { s.Outline = []ice.Patch{{A: 8.9, B: 6.9, Turn: 1}} }, measure.NoAnswer},
		"a round one":               {func(s *ice.Sheet) { s.Outline = []ice.Patch{{X: 1, A: 3.4}} }, measure.Holds},
		"a round one too wide":      {func(s *ice.Sheet) { s.Outline = []ice.Patch{{X: 1, A: 3.6}} }, measure.NoAnswer},
		"far from what stands":      {func(s *ice.Sheet) { s.Outline = []ice.Patch{{X: 300, A: 8, B: 6}} }, measure.NoAnswer},
		"what stands is nowhere":    {func(s *ice.Sheet) { s.Outline = []ice.Patch{{A: 8, B: math.NaN()}} }, measure.NoAnswer},
	} {
		t.Run(name, func(t *testing.T) {
			s := drilled(2.9)
			c.change(&s)
			stand := frame(300)
			f, _ := s.Flooding(stand)
			crossing, _ := s.Crossing(one)
			parked, _ := s.ParkedHours(ice.Crossing{Mass: 90, People: 1}, 3)
			beside, _ := s.Beside(stand, one)
			haul, _ := s.Hauling(ice.Haul{Load: one, Speed: 1})
			for _, k := range []measure.Check{crossing, parked, beside, haul, f.Check} {
				if k.Verdict() != c.want {
					t.Errorf("%v, want %v: %v", k, c.want, k.Err)
				}
			}
			// Thin ice is short whatever the places say.
			for i := range s.Holes {
				s.Holes[i].Clear = 0.05
			}
			if k, err := s.Crossing(one); err == nil && k.Verdict() != measure.Short {
				t.Errorf("thin: %v", k)
			}
		})
	}
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// TestPadSurroundsLoad: of what stands there every corner must lie on the pad,
// not its centre alone.
func TestPadSurroundsLoad(t *testing.T) {
	one := ice.Crossing{Mass: 90, People: 1}
	stand := ice.Stand{Loads: []ice.Patch{{A: 7, B: 5, Force: 3000}}, Stay: 7 * measure.Day}
	small := func() ice.Sheet {
		s := drilled(2.9)
		for i := range s.Holes {
			s.Holes[i].X, s.Holes[i].Y = s.Holes[i].X/2, s.Holes[i].Y/2
		}
		return s
	}
	for _, c := range []struct {
		sheet ice.Sheet
		want  measure.Verdict
	}{{drilled(2.9), measure.Holds}, {small(), measure.NoAnswer}} {
		f, k := flooding(t, c.sheet, stand), beside(t, c.sheet, stand, one)
		if f.Check.Verdict() != c.want || k.Verdict() != c.want {
			t.Errorf("the dock %v, people %v, want %v", f.Check, k, c.want)
		}
	}
}

// asked is the sound sheet with its days dated, asked on a morning.
func asked(h float64) ice.Sheet {
	s := sound(h)
	s.Now = time.Date(2031, time.March, 3, 9, 0, 0, 0, time.FixedZone("lake", -6*3600))
	for i := range s.Air {
		s.Air[i].Date = time.Date(2031, time.February, 26+i, 0, 0, 0, 0, time.UTC)
	}
	return s
}

// TestDays: the five days right before are there, each once, in any order; else
// there is no answer, and the error names the day that is amiss and those wanted.
func TestDays(t *testing.T) {
	day := func(m time.Month, d int) time.Time { return time.Date(2031, m, d, 0, 0, 0, 0, time.UTC) }
	cold := ice.Air{High: -6, Low: -14}
	on := func(a ice.Air, date time.Time) ice.Air { a.Date = date; return a }
	const wanted = "want the 5 days before 2031-03-03, 2031-02-26 to 2031-03-02, each once"
	for name, c := range map[string]struct {
		change func(*ice.Sheet)
		want   measure.Verdict
		says   []string
	}{
		"as they are":        {func(*ice.Sheet) {}, measure.Holds, nil},
		"newest first":       {func(s *ice.Sheet) { slices.Reverse(s.Air) }, measure.Holds, nil},
		"and those before":   {func(s *ice.Sheet) { s.Air = append(s.Air, on(cold, day(1, 9)), on(cold, day(1, 9))) }, measure.Holds, nil},
		"a thaw before":      {func(s *ice.Sheet) { s.Air = append(s.Air, ice.Air{Date: day(2, 25), High: 9, Low: 4}) }, measure.Holds, nil},
		"and today, cold":    {func(s *ice.Sheet) { s.Air = append(s.Air, on(cold, day(3, 3))) }, measure.Holds, nil},
		"today thaws":        {func(s *ice.Sheet) { s.Air = append(s.Air, ice.Air{Date: day(3, 3), High: 0, Low: -4}) }, measure.NoAnswer, []string{"thawing ice"}},
		"yesterday thaws":    {func(s *ice.Sheet) { s.Air[4].High = 2; s.Air = append(s.Air, on(cold, day(3, 3))) }, measure.NoAnswer, []string{"thawing ice"}},
		"thaw, newest first": {func(s *ice.Sheet) { s.Air[4].High = 2; slices.Reverse(s.Air) }, measure.NoAnswer, []string{"thawing ice"}},
		"snap, newest first": {func(s *ice.Sheet) { s.Air[3].Low, s.Air[4].Low = -25.5, -25.5; slices.Reverse(s.Air) }, measure.NoAnswer, []string{"sudden drop"}},
		"snap before yesterday, and today": {
			func(s *ice.Sheet) {
				s.Air[3].Low, s.Air[4].Low = -25.5, -25.5
				s.Air = append(s.Air, on(ice.Air{High: -8, Low: -25}, day(3, 3)))
			}, measure.NoAnswer, []string{"sudden drop"},
		},
		"of another year": {
			func(s *ice.Sheet) {
				for i := range s.Air {
					s.Air[i].Date = s.Air[i].Date.AddDate(-1, 0, 0)
				}
			}, measure.NoAnswer, []string{"air, day 1 of 5, date", `"2030-02-26"`, wanted},
		},
		"one of a month before": {func(s *ice.Sheet) { s.Air[2].Date = day(1, 28) }, measure.NoAnswer, []string{"air, day 3 of 5, date", `"2031-01-28"`, wanted}},
		"to come":               {func(s *ice.Sheet) { s.Air = append(s.Air, on(cold, day(3, 4))) }, measure.NoAnswer, []string{"air, day 6 of 6, date", `"2031-03-04"`, "to come", wanted}},
		"one twice":             {func(s *ice.Sheet) { s.Air = append(s.Air, s.Air[1]) }, measure.NoAnswer, []string{"air, day 6 of 6, date", `"2031-02-27"`, "twice", wanted}},
		"today twice":           {func(s *ice.Sheet) { s.Air = append(s.Air, on(cold, day(3, 3)), on(cold, day(3, 3))) }, measure.NoAnswer, []string{"twice"}},
		"five times the same": {
			func(s *ice.Sheet) {
				for i := range s.Air {
					s.Air[i].Date = day(3, 1)
				}
			}, measure.NoAnswer, []string{"air, day 2 of 5, date", `"2031-03-01"`, "twice", wanted},
		},
		"one missing":       {func(s *ice.Sheet) { s.Air = slices.Delete(s.Air, 1, 2) }, measure.NoAnswer, []string{"air: ", "2031-02-27", "missing", wanted}},
		"one without date":  {func(s *ice.Sheet) { s.Air = append(s.Air, cold) }, measure.NoAnswer, []string{"air, day 6 of 6, date", "not known", wanted}},
		"none":              {func(s *ice.Sheet) { s.Air = nil }, measure.NoAnswer, []string{"2031-02-26, 2031-02-27, 2031-02-28, 2031-03-01, 2031-03-02 are missing"}},
		"asked a day later": {func(s *ice.Sheet) { s.Now = s.Now.AddDate(0, 0, 1) }, measure.NoAnswer, []string{"air, day 1 of 5, date", `"2031-02-26"`, "want the 5 days before 2031-03-04"}},
		"asked at no time":  {func(s *ice.Sheet) { s.Now = time.Time{} }, measure.NoAnswer, []string{"now: not known"}},
	} {
		t.Run(name, func(t *testing.T) {
			s := asked(1)
			c.change(&s)
			k := crossing(t, s, ice.Crossing{Mass: 90, People: 1})
			if k.Verdict() != c.want {
				t.Fatalf("%v, want %v: %v", k, c.want, k.Err)
			}
			for _, says := range c.says {
				if k.Err == nil || !strings.Contains(k.Err.Error(), says) {
					t.Errorf("%v does not say %q", k.Err, says)
				}
			}
		})
	}
	// A thaw among the days raises what thin ice would need, whatever else is amiss.
	s := asked(0.3)
	s.Air[0].High = 1
	s.Air = slices.Delete(s.Air, 2, 3)
	if k := crossing(t, s, ice.Crossing{Mass: 90, People: 1}); k.Verdict() != measure.Short || math.Abs(k.Limit-0.45) > 1e-9 {
		t.Errorf("a thaw and a day missing: %v", k)
	}
}

// TestVoidHour: the word of the ice ends at an hour of the lake's own clock, a day
// after the first hole, and says so for good.
func TestVoidHour(t *testing.T) {
	for _, c := range []struct {
		age  float64
		says string
	}{
		{3600 + 55*60, "EXPIRY: 24 hours after drilling: void from 2031-03-04 07:05, or at once"},
		{measure.Day, "EXPIRY: 24 hours after drilling: void from 2031-03-03 09:00, or at once"},
		{measure.Day + 60, "EXPIRY: 24 hours after drilling: void since 2031-03-03 08:59, or at once"},
		{0, "EXPIRY: 24 hours after drilling, or at once"},
		{math.NaN(), "EXPIRY: 24 hours after drilling, or at once"},
	} {
		s := asked(1)
		s.Age = c.age
		if notes := strings.Join(crossing(t, s, ice.Crossing{Mass: 90}).Notes, "\n"); !strings.Contains(notes, c.says) {
			t.Errorf("%g s: no %q in\n%s", c.age, c.says, notes)
		}
	}
	s := sound(1)
	s.Age = 82800
	if notes := strings.Join(crossing(t, s, ice.Crossing{Mass: 90}).Notes, "\n"); !strings.Contains(notes, "EXPIRY: 24 hours after drilling, 1 hour from now, or at once") {
		t.Errorf("no hour known: %s", notes)
	}
}

// TestThawFactor: a rule of one's own gives no NaN without an error.
func TestThawFactor(t *testing.T) {
	rule := ice.Thaws()[1]
	if f, err := rule.Factor(8); err != nil || math.Abs(f*f-1.3) > 1e-12 {
		t.Errorf("%g, %v", f, err)
	}
	for name, spoil := range map[string]func(*ice.Thaw){
		"load": func(r *ice.Thaw) { r.Load = -1 }, "no load": func(r *ice.Thaw) { r.Load = math.NaN() },
		"thickness": func(r *ice.Thaw) { r.Thickness = math.NaN() }, "much": func(r *ice.Thaw) { r.Load = math.Inf(1) },
	} {
		r := rule
		spoil(&r)
		for _, h := range []float64{0, 6, 8, 24} {
			if f, err := r.Factor(h); !errors.Is(err, measure.ErrRange) || !math.IsNaN(f) {
				t.Errorf("%s, %g h: %g, %v", name, h, f, err)
			}
		}
	}
}

// TestLongPad: what stands on a pad drilled at both ends alone is far from every
// hole, though the corners surround it; a hole without a place is named.
func TestLongPad(t *testing.T) {
	long := drilled(2.9)
	for i := range long.Holes {
		long.Holes[i].X *= 25
	}
	long.Holes[4].X, long.Holes[5].X = -80, -90
	long.Holes = append(long.Holes, long.Holes[4])
	long.Holes[6].X = 80
	for _, c := range []struct {
		at   float64
		want measure.Verdict
	}{{-80, measure.Holds}, {80, measure.Holds}, {0, measure.NoAnswer}} {
		s := long
		s.Outline = []ice.Patch{{X: c.at, A: 8, B: 5}}
		if k := crossing(t, s, ice.Crossing{Mass: 90, People: 1}); k.Verdict() != c.want {
			t.Errorf("at %g m: %v", c.at, k)
		}
	}
	s := drilled(2.9)
	s.Holes[5].X = math.NaN()
	if k := crossing(t, s, ice.Crossing{Mass: 90, People: 1}); k.Err == nil || !strings.HasPrefix(k.Err.Error(), "hole 6 (walk), place: not known") {
		t.Errorf("%v", k.Err)
	}
}
