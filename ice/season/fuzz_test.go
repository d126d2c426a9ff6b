package season_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// classed fails unless an error is of a class that measure names.
func classed(t *testing.T, err error) {
	t.Helper()
	for _, c := range []error{measure.ErrRange, measure.ErrName, measure.ErrSyntax, measure.ErrUnknown, measure.ErrNotComputed} {
		if errors.Is(err, c) {
			return
		}
	}
	t.Errorf("an error of no class: %v", err)
}

func FuzzRun(f *testing.F) {
	f.Add(uint64(1), 46.0, 9.0, -15.0, 4.0, 1.0)
	f.Add(uint64(2), 69.0, 19.5, -25.0, 6.0, 0.2)
	f.Add(uint64(3), -45.0, 0.5, -2.0, 9.0, 3.0)
	f.Add(uint64(4), 90.0, 300.0, -70.0, 0.0, 0.0)
	f.Add(uint64(5), math.NaN(), 9.0, math.Inf(-1), 4.0, 1.0)
	f.Fuzz(func(t *testing.T, seed uint64, latitude, depth, coldest, noise, snow float64) {
		days := winter(seed, coldest, noise, 330)
		for i := range days {
			days[i].Snowfall, days[i].Has = math.Abs(snow)*float64(i%7), season.HasSnowfall
		}
		s, err := season.Run(season.Lake{Latitude: latitude, MeanDepth: depth}, season.Default(), days)
		if err != nil {
			classed(t, err)
			return
		}
		sane(t, s)
	})
}

func FuzzColder(f *testing.F) {
	f.Add(uint64(1), -12.0, 4.0, 3.0, uint8(100), 0.3)
	f.Add(uint64(9), -4.0, 8.0, 0.01, uint8(3), 0.0)
	f.Add(uint64(7), -22.0, 2.0, 20.0, uint8(1), 1.5)
	f.Fuzz(func(t *testing.T, seed uint64, coldest, noise, by float64, every uint8, snow float64) {
		if !(coldest > -45 && coldest < 30 && noise >= 0 && noise < 8 && math.Abs(by) < 30 && snow >= 0 && snow < 3) {
			return
		}
		days := withDepth(winter(seed, coldest, noise, 300), seed, snow)
		less := func(i int) float64 {
			if i%(int(every)+1) == 0 {
				return by
			}
			return 0
		}
		colder(t, days, less)
	})
}

func FuzzSnowier(f *testing.F) {
	f.Add(uint64(1), 0.1, uint8(5), 0.4)
	f.Add(uint64(2), 0.001, uint8(0), 0.0)
	f.Fuzz(func(t *testing.T, seed uint64, more float64, every uint8, snow float64) {
		if !(math.Abs(more) < 3 && snow >= 0 && snow < 3) {
			return
		}
		snowier(t, withDepth(frost(seed, 90), seed, snow), func(i int) float64 {
			if i%(int(every)+1) == 0 {
				return more
			}
			return 0
		}, true)
	})
}

func FuzzParams(f *testing.F) {
	f.Add(0.5, 2.0, 0.7, 1.3)
	f.Add(20.0, 0.01, 1.0, 1.0)
	f.Add(math.NaN(), 1.0, 1.0, math.Inf(1))
	f.Fuzz(func(t *testing.T, exchange, snow, conductivity, melt float64) {
		p := season.Default()
		p.Exchange *= exchange
		p.IceExchange *= exchange
		p.Catch *= snow
		p.OldConductivity *= conductivity
		p.MeltExchange *= melt
		p.IceSun *= melt
		s, err := season.Run(season.Lake{Latitude: 60, MeanDepth: 5}, p, winter(1, -15, 5, 330))
		if err != nil {
			classed(t, err)
			return
		}
		sane(t, s)
	})
}

func FuzzReadCSV(f *testing.F) {
	f.Add("date,temp\n2026-01-01,-3\n2026-01-02,-4.5\n2026-01-05,1\n", false, 3)
	f.Add("\ufeffdate;high;low;forecast\n20260101;30;20;\n20260102;35;10;x\n", true, 0)
	f.Add("# remark\nDate,Mean,snow_depth_cm,rain_mm\n2026-01-01,-3,,\n2026-01-02,,4,1\n", false, -1)
	f.Add("date,temp\n2026-01-02,1\n2026-01-01,1\n", false, 0)
	f.Fuzz(func(t *testing.T, text string, fahrenheit bool, gap int) {
		r, err := season.ReadCSV("t.csv", strings.NewReader(text), season.Options{Fahrenheit: fahrenheit, MaxGap: gap})
		if err != nil {
			if !strings.HasPrefix(err.Error(), "t.csv") {
				t.Errorf("no name and line: %v", err)
			}
			return
		}
		if len(r.Days) == 0 {
			t.Fatal("no day and no error")
		}
		open := 0
		for _, g := range r.Gaps {
			if !g.Filled {
				open++
			}
			_ = g.String()
		}
		for i, d := range r.Days {
			if !(d.Mean >= -75 && d.Mean <= 55) {
				t.Fatalf("day %+v", d)
			}
			if i > 0 {
				switch n := int(math.Round(d.Date.Sub(r.Days[i-1].Date).Hours() / 24)); {
				case n < 1:
					t.Fatalf("%s after %s", d.Date, r.Days[i-1].Date)
				case n > 1:
					open--
				}
			}
		}
		if open != 0 {
			t.Fatalf("%d gaps are not told as they are", open)
		}
	})
}

func FuzzDegreeDays(f *testing.F) {
	f.Add(0.1, 300.0, 20.0, 0.1, 0.2)
	f.Add(0.0, 0.0, 1e9, -1.0, math.NaN())
	f.Fuzz(func(t *testing.T, h0, frost, exchange, snow, k float64) {
		g := season.Ashton()
		g.Exchange, g.SnowDepth, g.SnowConductivity = exchange, snow, k
		h, err := g.Thickness(h0, frost)
		if err != nil {
			classed(t, err)
			return
		}
		ideal, err := g.Ideal(frost)
		if err != nil {
			t.Fatal(err)
		}
		if !(h >= h0 && h <= math.Hypot(h0, ideal)*(1+1e-9)+1e-12) {
			t.Errorf("%g m from %g m, the ideal law gives %g m", h, h0, ideal)
		}
		for _, r := range season.Rules() {
			lo, hi, err := r.Thickness(frost)
			if err != nil || !(lo <= hi) {
				t.Errorf("%s: %g to %g, %v", r.Name, lo, hi, err)
			}
		}
	})
}

func FuzzSun(f *testing.F) {
	f.Add(46.0, 80)
	f.Add(-90.0, 1)
	f.Add(math.NaN(), 0)
	f.Fuzz(func(t *testing.T, latitude float64, day int) {
		s, err := season.Sun(latitude, day)
		if err != nil {
			classed(t, err)
			return
		}
		if !(s >= 0 && s < 600) {
			t.Errorf("%g W/m² at %g on day %d", s, latitude, day)
		}
	})
}

func FuzzCorrect(f *testing.F) {
	f.Add(uint64(1), uint16(120), 0.2, 0.05, false)
	f.Add(uint64(2), uint16(10), 0.1, 0.0, true)
	f.Add(uint64(3), uint16(999), math.NaN(), -1.0, false)
	f.Fuzz(func(t *testing.T, seed uint64, on uint16, clear, white float64, whole bool) {
		m, err := season.New(season.Lake{Latitude: 46, MeanDepth: 9}, season.Default())
		if err != nil {
			t.Fatal(err)
		}
		days := winter(seed, -15, 4, 300)
		c, err := m.Correct(days, []season.Hole{{Date: autumn.AddDate(0, 0, int(on)), Clear: clear, White: white, Whole: whole}})
		if err != nil {
			classed(t, err)
			return
		}
		for _, e := range c.Days {
			if !(e.SD >= 0 && e.Clear >= 0 && e.White >= 0 && e.Snow >= 0 && e.Clear < 12) {
				t.Fatalf("%+v", e)
			}
		}
	})
}

func FuzzOdds(f *testing.F) {
	f.Add(uint64(1), uint8(8), 0.15, uint16(0))
	f.Add(uint64(2), uint8(5), 0.4, uint16(140))
	f.Add(uint64(3), uint8(2), math.NaN(), uint16(400))
	f.Fuzz(func(t *testing.T, seed uint64, years uint8, need float64, done uint16) {
		m, err := season.New(season.Lake{Latitude: 46, MeanDepth: 9}, season.Default())
		if err != nil {
			t.Fatal(err)
		}
		o, err := m.Odds(context.Background(), winter(seed, -12, 4, int(done)%360), past(seed, int(years)%12), season.Question{Need: need})
		if err != nil {
			classed(t, err)
			return
		}
		for i, d := range o.Days {
			for _, p := range []float64{d.On, d.Out, d.Carries} {
				if !(p >= 0 && p <= 1+1e-12) {
					t.Fatalf("%+v", d)
				}
			}
			if d.Out > d.On || i > 0 && (d.On < o.Days[i-1].On-1e-12 || d.Out < o.Days[i-1].Out-1e-12) {
				t.Fatalf("chances fall back: %+v after %+v", d, o.Days[i-1])
			}
		}
	})
}

func FuzzFromDates(f *testing.F) {
	f.Add(100, 3, 7, 2, 11, 2027)
	f.Add(364, 3, 360, 2, 11, 2027)
	f.Add(1, 1, 1, 1, 1, -5)
	f.Fuzz(func(t *testing.T, a, b, c, d, e, year int) {
		var dates []time.Time
		for i, n := range []int{a, b, c, d, e} {
			dates = append(dates, time.Date(2010+i, 1, 1+(n%366+366)%366, 0, 0, 0, 0, time.UTC))
		}
		g, err := season.FromDates(dates, year)
		if err != nil {
			classed(t, err)
			return
		}
		if g.P10.After(g.P50) || g.P50.After(g.P90) || !(g.By(g.P10) <= g.By(g.P90)) {
			t.Errorf("%+v", g)
		}
	})
}

func FuzzCalendar(f *testing.F) {
	f.Add(0.15, 0.3, 2, 5.0, 3)
	f.Add(-1.0, math.Inf(1), 0, math.NaN(), -4)
	f.Fuzz(func(t *testing.T, carry, stand float64, effort int, air float64, dry int) {
		m, err := season.New(season.Lake{Latitude: 46, MeanDepth: 9}, season.Default())
		if err != nil {
			t.Fatal(err)
		}
		tasks := append(season.Tasks(carry, stand), season.Task{Name: "other", Days: effort, MinAir: air, DryDays: dry})
		p, err := m.Calendar(context.Background(), nil, past(1, 6), season.Question{}, tasks)
		if err != nil {
			classed(t, err)
			return
		}
		for _, s := range p.Slots {
			if !(s.Chance >= 0 && s.Chance <= 1+1e-9) || s.Earliest.After(s.Usual) && !s.Usual.IsZero() {
				t.Errorf("%+v", s)
			}
		}
	})
}

func FuzzNeedFor(f *testing.F) {
	f.Add(90.0, 1, 0, false)
	f.Add(math.NaN(), -1, 9, true)
	f.Fuzz(func(t *testing.T, mass float64, people, machine int, stands bool) {
		h, err := season.NeedFor(ice.Crossing{Mass: mass, People: people, Machine: ice.Machine(machine)}, stands)
		if err != nil {
			classed(t, err)
			return
		}
		if !(h > 0 && h < 20) {
			t.Errorf("%g m", h)
		}
	})
}

func FuzzFit(f *testing.F) {
	f.Add(uint64(1), 3, -4, 2.0)
	f.Add(uint64(2), 0, 0, math.NaN())
	f.Fuzz(func(t *testing.T, seed uint64, on, out int, half float64) {
		m, err := season.New(season.Lake{Latitude: 46, MeanDepth: 9}, season.Default())
		if err != nil {
			t.Fatal(err)
		}
		days := past(seed, 4)
		states, err := m.Run(days)
		if err != nil {
			t.Fatal(err)
		}
		seen := season.Seen{HalfLife: half}
		for _, w := range m.Winters(states) {
			if w.On.IsZero() || w.Out.IsZero() {
				continue
			}
			w.On, w.Out = w.On.AddDate(0, 0, on%20), w.Out.AddDate(0, 0, out%20)
			seen.Winters = append(seen.Winters, w)
		}
		got, err := season.Fit(context.Background(), season.Lake{Latitude: 46, MeanDepth: 9}, season.Default(), days, seen)
		if err != nil {
			classed(t, err)
			return
		}
		if _, err := season.New(season.Lake{Latitude: 46, MeanDepth: 9}, got.Params); err != nil {
			t.Errorf("a fit gave params that no model takes: %v", err)
		}
	})
}

// past returns so many whole winters before autumn, each with a climate of its own.
func past(seed uint64, years int) []season.Day {
	var days []season.Day
	for y := years; y > 0; y-- {
		from := autumn.AddDate(-y, 0, 0)
		n := int(math.Round(autumn.AddDate(-y+1, 0, 0).Sub(from).Hours() / 24))
		w := winter(seed+uint64(y), -9-float64((seed+uint64(y)*7)%9), 4, n)
		for i := range w {
			w[i].Date = from.AddDate(0, 0, i)
		}
		days = append(days, w...)
	}
	return days
}
