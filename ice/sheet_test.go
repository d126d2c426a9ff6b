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

// cold is five days of steady frost.
func cold() []ice.Air {
	return []ice.Air{{High: -6, Low: -14}, {High: -5, Low: -13}, {High: -7, Low: -15}, {High: -6, Low: -14}, {High: -8, Low: -15}}
}

// sound returns a sheet of clear lake ice h thick on which nothing is amiss:
// every other sheet of the tests is worse in some field.
func sound(h float64) ice.Sheet {
	places := [][2]float64{{-4, -3}, {4, -3}, {4, 3}, {-4, 3}, {0, 0}, {0, -25}} // a pad of 8 by 6 m about the origin
	var holes []ice.Hole
	for i, name := range []string{"north corner", "east corner", "south corner", "west corner", "middle", "walk"} {
		holes = append(holes, ice.Hole{Name: name, X: places[i][0], Y: places[i][1], Clear: h, Water: 0.08 * h, Looked: true})
	}
	return ice.Sheet{
		Place: "demo bay", Holes: holes, Water: ice.Lake, Air: cold(), Age: 3600, Season: ice.Winter,
		Cracks: ice.NoCracks, Wet: ice.NotFound, Inlets: ice.NotFound, Changed: ice.NotFound,
	}
}

func crossing(t *testing.T, s ice.Sheet, load ice.Crossing) measure.Check {
	t.Helper()
	c, err := s.Crossing(load)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestPeople reads the strictest rows for people: Red Cross 15 cm alone and
// 20 cm in a group, Lifesaving Society 20 to 30 cm for a group.
func TestPeople(t *testing.T) {
	for _, c := range []struct {
		people int
		limit  float64
	}{{0, 0.15}, {1, 0.15}, {2, 0.20}, {3, 0.20}, {4, 0.30}, {12, 0.30}} {
		for _, h := range []float64{c.limit - 1e-3, c.limit} {
			got := crossing(t, sound(h), ice.Crossing{Mass: 90, People: c.people})
			want := measure.Holds
			if h < c.limit {
				want = measure.Short
			}
			if got.Limit != c.limit || got.Verdict() != want {
				t.Errorf("%d people on %g m: limit %g, %v; want %g, %v", c.people, h, got.Limit, got.Verdict(), c.limit, want)
			}
		}
	}
}

// TestClassGoverns: 50 psi under 7200 lb is 12 in by the weight table, more
// than any row for one person. With no class named the tables by weight count
// too: 2 tons to 10 tons take the row of 43 cm (Pounder); near the end of its
// own table the class asks for more than any of them.
func TestClassGoverns(t *testing.T) {
	load := ice.Crossing{Mass: 7200 * measure.Pound, People: 1}
	s := sound(12 * measure.Inch)
	s.Class = &ice.Classes()[1]
	if c := crossing(t, s, load); c.Limit != math.Round(12*measure.Inch*1e9)/1e9 || c.Verdict() != measure.Holds || c.Rule != s.Class.Source {
		t.Errorf("class named: %v, limit %g", c, c.Limit)
	}
	if c := crossing(t, sound(0.43), load); c.Limit != 0.43 || c.Verdict() != measure.Holds {
		t.Errorf("no class named: %v, limit %g", c, c.Limit)
	}
	load.Mass = 20000 * measure.Pound
	if c := crossing(t, sound(0.5), load); math.Abs(c.Limit-20*measure.Inch) > 1e-9 || !strings.Contains(c.Rule.String(), "weight table") {
		t.Errorf("limit %g by %v", c.Limit, c.Rule)
	}
	c := crossing(t, sound(2), ice.Crossing{Mass: 20001 * measure.Pound})
	if c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrRange) {
		t.Errorf("beyond the weight table: %v", c)
	}
	// A class that asks for less is the caller's own choice, by name; the rows
	// for people stay.
	s = sound(0.2)
	guide := ice.Classes()[len(ice.Classes())-2]
	s.Class = &guide
	if c := crossing(t, s, ice.Crossing{Mass: 3000, People: 1}); c.Verdict() != measure.Holds || c.Rule != guide.Source {
		t.Errorf("rough guide: %v, limit %g", c, c.Limit)
	}
	if c := crossing(t, s, ice.Crossing{Mass: 100, People: 4}); c.Limit != 0.30 {
		t.Errorf("rough guide, four people: limit %g", c.Limit)
	}
}

// barred makes a sheet worse in one way that denies any answer, whatever the
// thickness.
var barred = map[string]func(*ice.Sheet){
	"zero value":      func(s *ice.Sheet) { *s = ice.Sheet{} },
	"four holes":      func(s *ice.Sheet) { s.Holes = s.Holes[:4] },
	"five holes":      func(s *ice.Sheet) { s.Holes = s.Holes[1:] },
	"no holes":        func(s *ice.Sheet) { s.Holes = nil },
	"clear unknown":   func(s *ice.Sheet) { s.Holes[2].Clear = math.NaN() },
	"white unknown":   func(s *ice.Sheet) { s.Holes[5].White = math.NaN() },
	"gap unknown":     func(s *ice.Sheet) { s.Holes[0].Gap = math.NaN() },
	"level unknown":   func(s *ice.Sheet) { s.Holes[0].Water = math.NaN() },
	"snow unknown":    func(s *ice.Sheet) { s.Holes[0].Snow = math.NaN() },
	"flooded":         func(s *ice.Sheet) { s.Holes[0].Water = 0 },
	"water over ice":  func(s *ice.Sheet) { s.Holes[0].Water = -0.02 },
	"hanging":         func(s *ice.Sheet) { s.Holes[0].Water = 0.4 },
	"much snow":       func(s *ice.Sheet) { s.Holes[0].Snow = 1 },
	"river":           func(s *ice.Sheet) { s.Water = ice.River },
	"unknown water":   func(s *ice.Sheet) { s.Water = ice.UnknownWater },
	"spring":          func(s *ice.Sheet) { s.Season = ice.Spring },
	"unknown season":  func(s *ice.Sheet) { s.Season = ice.UnknownSeason },
	"four days":       func(s *ice.Sheet) { s.Air = s.Air[1:] },
	"no air":          func(s *ice.Sheet) { s.Air = nil },
	"high unknown":    func(s *ice.Sheet) { s.Air[1].High = math.NaN() },
	"low unknown":     func(s *ice.Sheet) { s.Air[4].Low = math.NaN() },
	"thaw today":      func(s *ice.Sheet) { s.Air[4].High = 0 },
	"warm mean":       func(s *ice.Sheet) { s.Air[0] = ice.Air{High: 3, Low: -3} },
	"cold snap":       func(s *ice.Sheet) { s.Air[4] = ice.Air{High: -17.5, Low: -24} },
	"snap yesterday":  func(s *ice.Sheet) { s.Air[3].Low, s.Air[4].Low = -25.5, -25.5 },
	"25 hours":        func(s *ice.Sheet) { s.Age = 25 * 3600 },
	"age unknown":     func(s *ice.Sheet) { s.Age = math.NaN() },
	"age not said":    func(s *ice.Sheet) { s.Age = 0 },
	"not looked for":  func(s *ice.Sheet) { s.Holes[1].Looked = false },
	"no place":        func(s *ice.Sheet) { s.Holes[4].Y = math.NaN() },
	"one place":       func(s *ice.Sheet) { s.Holes[3].X, s.Holes[3].Y = s.Holes[0].X, s.Holes[0].Y },
	"dates, no day":   func(s *ice.Sheet) { s.Air[0].Date = time.Date(2031, 1, 10, 0, 0, 0, 0, time.UTC) },
	"day, no dates":   func(s *ice.Sheet) { s.Now = time.Date(2031, 1, 15, 9, 0, 0, 0, time.UTC) },
	"changed":         func(s *ice.Sheet) { s.Changed = ice.Found },
	"changes unknown": func(s *ice.Sheet) { s.Changed = ice.NotLooked },
	"cracks unknown":  func(s *ice.Sheet) { s.Cracks = ice.UnknownCracks },
	"wet place":       func(s *ice.Sheet) { s.Wet = ice.Found },
	"wet unknown":     func(s *ice.Sheet) { s.Wet = ice.NotLooked },
	"inlet":           func(s *ice.Sheet) { s.Inlets = ice.Found },
	"inlets unknown":  func(s *ice.Sheet) { s.Inlets = ice.NotLooked },
}

func TestBarredWhateverTheThickness(t *testing.T) {
	load := ice.Crossing{Mass: 100, People: 1}
	if c := crossing(t, sound(2.9), load); c.Verdict() != measure.Holds {
		t.Fatalf("the sound sheet does not hold, so that the test would show nothing: %v", c)
	}
	for name, worsen := range barred {
		t.Run(name, func(t *testing.T) {
			s := sound(2.9)
			worsen(&s)
			c := crossing(t, s, load)
			if c.Verdict() != measure.NoAnswer || c.Err == nil {
				t.Errorf("crossing: %v", c)
			}
			p, err := s.ParkedHours(ice.Crossing{Mass: 100, People: 1}, 3)
			if err != nil || p.Verdict() != measure.NoAnswer {
				t.Errorf("parked: %v, %v", p, err)
			}
			// Thin ice is not called anything better for it.
			thin := sound(0.05)
			worsen(&thin)
			got := crossing(t, thin, load)
			if got.Verdict() == measure.Holds {
				t.Errorf("thin: %v", got)
			}
			// Without all its holes a sheet is not even short.
			if strings.Contains("zero value, four holes, five holes, not looked for, no holes, clear unknown, white unknown, gap unknown, level unknown, snow unknown", name) && got.Verdict() != measure.NoAnswer {
				t.Errorf("thin and not measured: %v", got)
			}
		})
	}
}

func TestParked(t *testing.T) {
	for _, hours := range []float64{0, 1, 2, 24} {
		c, err := sound(0.30).ParkedHours(ice.Crossing{Mass: 90, People: 1}, hours)
		if err != nil || c.Verdict() != measure.Holds || c.Limit != 0.30 {
			t.Errorf("%g h: %v, %v", hours, c, err)
		}
		if c, _ := sound(0.299).ParkedHours(ice.Crossing{Mass: 90, People: 1}, hours); c.Verdict() != measure.Short {
			t.Errorf("%g h on thinner ice: %v", hours, c)
		}
	}
	c, err := sound(2.9).ParkedHours(ice.Crossing{Mass: 90, People: 1}, 24.1)
	if err != nil || c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrNotComputed) {
		t.Errorf("a day and more: %v, %v", c, err)
	}
}

func TestRequired(t *testing.T) {
	c, err := ice.Sheet{Water: ice.Lake}.Required(ice.Crossing{Mass: 250, People: 3}, 0)
	if err != nil || c.Verdict() != measure.NoAnswer || !math.IsNaN(c.Value) || c.Limit != 0.20 {
		t.Errorf("crossing: %v (limit %g), %v", c, c.Limit, err)
	}
	if !strings.Contains(strings.Join(c.Notes, "\n"), "thickness required: 200 mm") {
		t.Errorf("the thickness is not printed: %q", c.Notes)
	}
	c, err = sound(0.5).Required(ice.Crossing{Mass: 250, People: 3}, 12)
	if err != nil || c.Verdict() != measure.NoAnswer || c.Limit != 0.40 || !errors.Is(c.Err, measure.ErrUnknown) {
		t.Errorf("parked: %v (limit %g), %v", c, c.Limit, err)
	}
	c, err = ice.Sheet{}.Required(ice.Crossing{Mass: 250, People: 3}, 500)
	if err != nil || !errors.Is(c.Err, measure.ErrNotComputed) {
		t.Errorf("weeks: %v, %v", c, err)
	}
}

// TestGapIsNamed: a layered hole says how its layers count.
func TestGapIsNamed(t *testing.T) {
	s := sound(0.5)
	s.Holes[4].Gap = 0.02
	notes := strings.Join(crossing(t, s, ice.Crossing{Mass: 90}).Notes, "\n")
	if !strings.Contains(notes, "layers with a gap never add: of middle the thickest single layer counts, 500 mm") {
		t.Errorf("%q", notes)
	}
}

func TestBadData(t *testing.T) {
	good := ice.Crossing{Mass: 100, People: 1}
	for name, spoil := range map[string]func(*ice.Sheet, *ice.Crossing, *float64){
		"mass":    func(_ *ice.Sheet, l *ice.Crossing, _ *float64) { l.Mass = math.NaN() },
		"no mass": func(_ *ice.Sheet, l *ice.Crossing, _ *float64) { l.Mass = 0 },
		"people":  func(_ *ice.Sheet, l *ice.Crossing, _ *float64) { l.People = -1 },
		"machine": func(_ *ice.Sheet, l *ice.Crossing, _ *float64) { l.Machine = 9 },
		"hours":   func(_ *ice.Sheet, _ *ice.Crossing, h *float64) { *h = math.NaN() },
		"past":    func(_ *ice.Sheet, _ *ice.Crossing, h *float64) { *h = -1 },
		"clear":   func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Holes[0].Clear = -0.1 },
		"inf":     func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Holes[0].Snow = math.Inf(1) },
		"age":     func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Age = -1 },
		"water":   func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Water = 7 },
		"season":  func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Season = -1 },
		"cracks":  func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Cracks = 4 },
		"finding": func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Inlets = 3 },
		"scheme":  func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Scheme = 4 },
		"class":   func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Class = &ice.Class{} },
		"air":     func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Air[0].Low = -200 },
		"swapped": func(s *ice.Sheet, _ *ice.Crossing, _ *float64) { s.Air[0] = ice.Air{High: -9, Low: -3} },
	} {
		t.Run(name, func(t *testing.T) {
			s, load, hours := sound(1), good, 3.0
			spoil(&s, &load, &hours)
			c, err := s.Required(load, hours)
			var e *measure.Error
			if !errors.As(err, &e) || e.Field == "" || c.Verdict() != measure.NoAnswer {
				t.Errorf("%v, error %v", c, err)
			}
		})
	}
}

// TestHours: one hour is no hours.
func TestHours(t *testing.T) {
	for age, want := range map[float64][2]string{
		3600: {"6 holes, 1 hour ago,", ", 23 hours from now"}, 3700: {"2 hours ago,", ", 22 hours from now"}, 22.5 * 3600: {"23 hours ago", ", 1 hour from now"},
	} {
		s := sound(0.4)
		s.Age = age
		notes := strings.Join(crossing(t, s, ice.Crossing{Mass: 100, People: 1}).Notes, "\n")
		if !strings.Contains(notes, want[0]) || !strings.Contains(notes, want[1]) {
			t.Errorf("%g s: %s", age, notes)
		}
	}
}
