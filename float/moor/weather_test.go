package moor_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// The wind over the long fetch raises the waves; towards it there are none.
// North lies along y here, so a wind from the south goes towards y.
func TestWeather(t *testing.T) {
	w := moor.Weather{
		Wind: moor.Wind{Speed: 12}, North: math.Pi / 2, Depth: 5, Length: 6, Breadth: 3, Draft: 0.3, Freeboard: 0.3,
	}
	w.Fetches[4] = 2000 // south
	s, err := w.Sea(math.Pi / 2)
	if err != nil {
		t.Fatal(err)
	}
	want, err := moor.Fetch{Wind: 12, Length: 2000, Depth: 5}.Waves("SMB")
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "the highest with a period", s.Height, want.Height, 1e-12)
	load, err := w.Load(math.Pi / 2)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "drift", load.Y, 1000*measure.Gravity*s.Height*s.Height/8*6, 1e-9*load.Y)
	w.Crests = true
	crests, err := w.Load(math.Pi / 2)
	if err != nil || !(crests.Y > 3*load.Y) {
		t.Errorf("crests %g N, drift %g N, %v", crests.Y, load.Y, err)
	}
	top, err := s.Highest(5)
	if err != nil {
		t.Fatal(err)
	}
	crest, _, err := top.Push(5, 0.3, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "the highest crest", crests.Y, crest*6, 1e-9*crests.Y)
	for _, θ := range []float64{0, math.Pi, -math.Pi / 2} { // from west, east, north
		if l, err := w.Load(θ); err != nil || l != (moor.Load{}) {
			t.Errorf("towards %g: %+v, %v", θ, l, err)
		}
	}
	// From the south-east the longer neighbour counts.
	if s, err := w.Sea(3 * math.Pi / 4); err != nil || s.Height != 0 {
		t.Errorf("from just the south-east: %+v, %v", s, err)
	}
	if s, err := w.Sea(3*math.Pi/4 - 0.1); err != nil || s.Height == 0 {
		t.Errorf("from between: %+v, %v", s, err)
	}
	w.Current, w.Set, w.Below = moor.Current{Speed: 0.3}, math.Pi, []moor.Face{{End: 1}}
	if l, err := w.Load(0); err != nil || math.Abs(l.X+500*0.09*1.2) > 1e-9 {
		t.Errorf("the current alone: %+v, %v", l, err)
	}
	w.Wind.Speed = 0.2
	if s, err := w.Sea(math.Pi / 2); err != nil || s.Height != 0 {
		t.Errorf("calm: %+v, %v", s, err)
	}
	w.Wind.Speed = 12
	w.Method = "JONSWAP"
	if s, err := w.Sea(math.Pi / 2); err != nil || s.Method != "JONSWAP" {
		t.Errorf("%+v, %v", s, err)
	}
	w.Method = "Stevenson"
	if _, err := w.Load(math.Pi / 2); !errors.Is(err, measure.ErrName) {
		t.Errorf("a method without a period: %v", err)
	}
	for name, spoil := range map[string]func(*moor.Weather){
		"north": func(w *moor.Weather) { w.North = math.NaN() }, "depth": func(w *moor.Weather) { w.Depth = 0 },
		"length": func(w *moor.Weather) { w.Length = math.NaN() }, "wind": func(w *moor.Weather) { w.Wind.Speed = -1 },
		"current": func(w *moor.Weather) { w.Current.Speed = 9 }, "draft": func(w *moor.Weather) { w.Draft = 9 },
		"fetch": func(w *moor.Weather) { w.Fetches[0] = math.NaN() }, "face": func(w *moor.Weather) { w.Above = []moor.Face{{End: -1}} },
	} {
		bad := w
		bad.Method = ""
		spoil(&bad)
		if _, err := bad.Load(math.Pi / 2); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	m := fourLines()
	w.Method = ""
	if s, err := m.Survey([]float64{0}, w.Load, 8); err != nil || !(s.Offset > 0) {
		t.Errorf("%v", err)
	}
}

// FuzzWeatherLoad holds that weather gives a finite load along
// itself, or an error.
func FuzzWeatherLoad(f *testing.F) {
	f.Add(12.0, 0.5, 2000.0, 5.0, 6.0, 0.3, 1.0)
	f.Add(math.NaN(), 0.0, 10.0, 0.1, 1.0, 0.2, 9.0)
	f.Fuzz(func(t *testing.T, speed, north, fetch, depth, length, draft, θ float64) {
		w := moor.Weather{
			Wind: moor.Wind{Speed: speed}, North: north, Fetches: moor.Fetches{fetch, 100, 200, fetch, 50, 0, 0, 30},
			Depth: depth, Length: length, Breadth: 2, Draft: draft, Freeboard: 0.3, Above: []moor.Face{{End: 1, Side: 2, Shape: 1}},
		}
		l, err := w.Load(θ)
		if err != nil {
			known(t, err)
			return
		}
		if !finite(l.X, l.Y, l.Turn) || l.X*math.Cos(θ)+l.Y*math.Sin(θ) < -1e-9 {
			t.Fatalf("%+v towards %g", l, θ)
		}
	})
}

// TestWeatherUnknown: a wind that nobody gave is no calm, which would hold any dock; a
// current alone is an answer.
func TestWeatherUnknown(t *testing.T) {
	face := []moor.Face{{End: 1, Side: 2, Shape: 1}}
	flow := moor.Current{Speed: 0.5}
	for name, w := range map[string]moor.Weather{
		"nothing":                    {},
		"faces without wind":         {Above: face},
		"a fetch without wind":       {Fetches: moor.Fetches{0, 2000}, Depth: 4, Current: flow, Below: face},
		"faces beside a current":     {Above: face, Current: flow, Below: face},
		"a current that has no face": {Current: flow},
		"a face without a current":   {Below: face},
	} {
		if l, err := w.Load(0.3); !errors.Is(err, measure.ErrUnknown) || l != (moor.Load{}) {
			t.Errorf("%s: %+v, %v", name, l, err)
		}
	}
	alone := moor.Weather{Current: flow, Below: face}
	want, err := flow.Load(0, face...)
	if err != nil {
		t.Fatal(err)
	}
	if l, err := alone.Load(1); err != nil || l != want || !(l.X > 0) {
		t.Errorf("a current alone: %+v, %v, want %+v", l, err, want)
	}
}
