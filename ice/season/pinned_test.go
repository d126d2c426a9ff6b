package season_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.org/floewright/ice/season"
	"example.org/floewright/internal/pinned"
)

// pinnedYears is an invented record from the August of a year on, with what the fields
// say besides the air, and an air so warm or cold.
func pinnedYears(r *rand.Rand, from, years int, has season.Field, warm float64) []season.Day {
	var days []season.Day
	end := time.Date(from+years, 8, 1, 0, 0, 0, 0, time.UTC)
	weather := 0.0
	for d := time.Date(from, 8, 1, 0, 0, 0, 0, time.UTC); d.Before(end); d = d.AddDate(0, 0, 1) {
		weather = 0.8*weather + 2.2*r.NormFloat64()
		mean := warm - 17*math.Cos(2*math.Pi*(float64(d.YearDay())-20)/365) + weather
		day := season.Day{Date: d, Mean: mean, High: mean + 3 + 3*r.Float64(), Low: mean - 3 - 3*r.Float64(), Has: has}
		if r.IntN(3) == 0 {
			day.Rain = 9 * r.Float64()
			if mean < 0 {
				day.Snowfall, day.Rain = day.Rain, 0
			} else if mean < 2 {
				day.Snowfall = day.Rain / 2
			}
		}
		day.Wind = 1 + 6*r.Float64()
		day.Depth = max(0, 0.2*r.Float64()-0.05)
		days = append(days, day)
	}
	return days
}

func pinnedLake(r *rand.Rand) season.Lake {
	return season.Lake{Latitude: 42 + 20*r.Float64(), MeanDepth: 1 + 14*r.Float64()}
}

var pinnedFields = []season.Field{
	0, season.HasRange, season.HasRain, season.HasSnowfall | season.HasRain, season.HasSnowfall, season.HasWind | season.HasRange | season.HasRain,
	season.HasDepth | season.HasRange,
}

// TestPinnedWinters compares winters of invented lakes with what they were before.
func TestPinnedWinters(t *testing.T) {
	winters := 0
	pinned.Check(t, "winters", 42, func(r *rand.Rand) []any {
		p := season.Default()
		if r.IntN(2) == 0 {
			p.Bridge, p.Catch, p.SunPower = 4*r.Float64(), 0.3+0.7*r.Float64(), 0.6*r.Float64()
		}
		p.Cleared = r.IntN(4) == 0
		m, err := season.New(pinnedLake(r), p)
		if err != nil {
			t.Fatal(err)
		}
		states, err := m.Run(pinnedYears(r, 2001, 2, pinnedFields[r.IntN(len(pinnedFields))], 5*r.Float64()))
		if err != nil {
			t.Fatal(err)
		}
		out := []any{m.Winters(states)}
		for i := 0; i < len(states); i += 5 {
			out = append(out, states[i])
		}
		winters += len(m.Winters(states))
		return out
	})
	if winters < 60 {
		t.Errorf("only %d winters", winters)
	}
}

// TestPinnedOdds does the same for odds, calendars, corrections and fits.
func TestPinnedOdds(t *testing.T) {
	ctx := context.Background()
	pinned.Check(t, "odds", 10, func(r *rand.Rand) []any {
		lake := pinnedLake(r)
		m, err := season.New(lake, season.Default())
		if err != nil {
			t.Fatal(err)
		}
		warm := 5.0
		if r.IntN(4) == 0 {
			warm = 12 // winters without ice among them
		}
		past := pinnedYears(r, 2001, 7, season.HasRange|season.HasRain, warm)
		so := past[6*365+1:][:60+r.IntN(120)]
		past = past[:6*365+1]
		q := season.Question{Need: 0.05 + 0.2*r.Float64()}
		if r.IntN(2) == 0 {
			q.On, q.Out = season.Misfit{Bias: 2, SD: 5}, season.Misfit{Bias: -3, SD: 6}
			q.Thickness = season.Misfit{Bias: 0.04, SD: 0.07}
		}
		odds, err := m.Odds(ctx, so, past, q)
		if err != nil {
			return []any{err.Error()}
		}
		calendar, err := m.Calendar(ctx, so, past, q, season.Tasks(0.1+0.1*r.Float64(), 0.2))
		out := []any{odds, odds.String(), calendar, err}
		states, err := m.Run(so)
		if err != nil {
			t.Fatal(err)
		}
		var holes []season.Hole
		for i := 20; i < len(states); i += 17 {
			if s := states[i]; s.Ice {
				holes = append(holes, season.Hole{Date: s.Date, Clear: s.Clear * (0.8 + 0.4*r.Float64()), White: s.White * (0.8 + 0.4*r.Float64())})
			}
		}
		if len(holes) > 0 {
			c, err := m.Correct(so, holes)
			out = append(out, c, err)
		}
		all, err := m.Run(past)
		if err != nil {
			t.Fatal(err)
		}
		seen := season.Seen{Winters: m.Winters(all), HalfLife: float64(r.IntN(2) * 4)}
		for i := range seen.Winters {
			w := &seen.Winters[i]
			if !w.On.IsZero() {
				w.On = w.On.AddDate(0, 0, r.IntN(9)-6)
			}
			if !w.Out.IsZero() {
				w.Out = w.Out.AddDate(0, 0, r.IntN(9)-3)
			}
		}
		for i := 7; i < len(all); i += 13 {
			if s := all[i]; s.Ice && s.Rot == 0 {
				seen.Holes = append(seen.Holes, season.Hole{Date: s.Date, Clear: s.Clear * (0.7 + 0.5*r.Float64()), White: s.White})
			}
		}
		if r.IntN(3) == 0 {
			fitted, err := season.Fit(ctx, lake, season.Default(), past, seen)
			out = append(out, fitted.On, fitted.Out, fitted.Thickness, fitted.Usual, err)
			for i := 20; i < len(states); i += 9 {
				out = append(out, fitted.Usual.Of(states[i]))
			}
		}
		var dates []time.Time
		for i := range 5 + r.IntN(6) {
			dates = append(dates, time.Date(2010+i, 4, 1+r.IntN(40), 0, 0, 0, 0, time.UTC))
		}
		if r.IntN(2) == 0 { // around the turn of the year
			for i := range dates {
				dates[i] = dates[i].AddDate(0, -4, 10)
			}
		}
		g, err := season.FromDates(dates, 2027)
		return append(out, g, err, g.By(time.Date(2027, 4, 14, 0, 0, 0, 0, time.UTC)))
	})
}
