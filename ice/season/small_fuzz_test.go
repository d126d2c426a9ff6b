package season_test

import (
	"math"
	"testing"
	"time"

	"example.org/floewright/ice/season"
)

// FuzzAlpha: α of what a rule grows lies in the rule's range, and the snow that ice just
// lifts floods nothing while more of it does.
func FuzzAlpha(f *testing.F) {
	f.Add(0.3, 400.0, 250.0, 0.5, 0.7)
	f.Add(5.0, 5e-324, 10.0, 0.0, 0.0)
	f.Add(math.NaN(), -1.0, math.Inf(1), 5.0, 1.0)
	f.Fuzz(func(t *testing.T, thickness, frost, density, lo, hi float64) {
		if a, err := season.AlphaOf(thickness, frost); err != nil {
			classed(t, err)
		} else if !(a >= 0) || math.IsInf(a, 0) || math.Abs(a*math.Sqrt(frost)-thickness) > 1e-9*thickness {
			t.Fatalf("α %g of %g m in %g °C·d", a, thickness, frost)
		}
		r := season.Rule{Lo: lo, Hi: hi}
		if least, most, err := r.Thickness(frost); err != nil {
			classed(t, err)
		} else if from, to := r.Alpha(); frost > 1e-6 && to < 1e3 {
			for _, h := range []float64{least, most} {
				if a, err := season.AlphaOf(h, frost); err == nil && !(a >= from*(1-1e-9) && a <= to*(1+1e-9)) {
					t.Fatalf("α %g of %g to %g", a, from, to)
				}
			}
		}
	})
}

// FuzzBetween: between two holes the ice is no thinner and no thicker than in them, and
// outside there is none to tell.
func FuzzBetween(f *testing.F) {
	f.Add(0.2, 0.05, 0.3, 0.0, 20, 10)
	f.Add(math.NaN(), -1.0, math.Inf(1), 0.0, -3, 0)
	f.Add(0.2, 0.0, 0.2, 0.0, 0, 0)
	f.Fuzz(func(t *testing.T, clear1, white1, clear2, white2 float64, apart, on int) {
		if apart < -1e6 || apart > 1e6 || on < -1e6 || on > 1e6 {
			return
		}
		holes := []season.Hole{{Date: autumn, Clear: clear1, White: white1}, {Date: autumn.AddDate(0, 0, apart), Clear: clear2, White: white2}}
		h, ok := season.Between(holes, autumn.AddDate(0, 0, on))
		if inside := on == 0 || on == apart || on > 0 && on < apart; ok != inside {
			t.Fatalf("day %d of %d: %v", on, apart, ok)
		}
		a, b := clear1+white1, clear2+white2
		if ok && math.Abs(a) < 100 && math.Abs(b) < 100 && !(h >= math.Min(a, b)-1e-9 && h <= math.Max(a, b)+1e-9) {
			t.Fatalf("%g m between %g and %g", h, a, b)
		}
		if !ok && !math.IsNaN(h) {
			t.Fatalf("%g m where there is none", h)
		}
	})
}

// FuzzContinue: a lake that is run on from a day is what one run over all of it gives, a
// state that no lake has is refused, and what the fit expects is no thinner than nothing.
func FuzzContinue(f *testing.F) {
	f.Add(uint64(1), -15.0, uint16(120), 0.0, 0.2, 0.4, 3)
	f.Add(uint64(2), -3.0, uint16(7), math.NaN(), -1.0, 2.0, 0)
	f.Add(uint64(3), -30.0, uint16(299), 1e300, 0.3, math.NaN(), -9)
	f.Fuzz(func(t *testing.T, seed uint64, coldest float64, on uint16, clear, usual, weight float64, n int) {
		m, err := season.New(season.Lake{Latitude: 46, MeanDepth: 9}, season.Default().Pad())
		if err != nil {
			t.Fatal(err)
		}
		days := winter(seed, coldest, 4, 300)
		for i := range days {
			days[i] = season.HighLow(days[i].Date, days[i].Mean+4, days[i].Mean-4)
		}
		all, err := m.Run(days)
		if err != nil {
			classed(t, err)
			return
		}
		k := 1 + int(on)%298
		rest, err := m.Continue(all[k-1], days[k:])
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range rest {
			if w := all[k+i]; math.Abs(s.Clear-w.Clear) > 1e-9 || math.Abs(s.White-w.White) > 1e-9 || s.Ice != w.Ice {
				t.Fatalf("run on from day %d: %+v, in one run %+v", k, s, w)
			}
		}
		other := all[k-1]
		other.Clear = clear
		if rest, err = m.Continue(other, days[k:]); err != nil {
			classed(t, err)
		} else if clear < 5 { // no lake has more, though it is run
			sane(t, rest)
		}
		u := season.Usual{Weight: weight}
		for i := range u.Thickness {
			u.Thickness[i], u.N[i] = usual, n
		}
		for _, s := range all[:k] {
			if h := u.Of(s); !(h >= 0) || math.IsInf(h, 0) {
				if !math.IsNaN(usual) && !math.IsInf(usual, 0) && math.Abs(usual) < 1e300 {
					t.Fatalf("%+v expects %g m of %+v", u, h, s)
				}
			}
		}
	})
}

// FuzzFits: a task fits where nine winters in ten leave it days, and the odds of a day are
// those of that day or none.
func FuzzFits(f *testing.F) {
	f.Add(10, 30, 12, 0.5)
	f.Add(30, 10, -400, math.NaN())
	f.Add(0, 0, 0, 0.0)
	f.Fuzz(func(t *testing.T, sure, latest, day int, chance float64) {
		if max(sure, latest, day) > 1e6 || min(sure, latest, day) < -1e6 {
			return
		}
		date := func(n int) time.Time {
			if n == 0 {
				return time.Time{}
			}
			return autumn.AddDate(0, 0, n)
		}
		s := season.Slot{Sure: date(sure), Latest: date(latest), Chance: chance}
		if want := sure != 0 && (latest == 0 || latest >= sure); s.Fits() != want {
			t.Fatalf("%+v fits: %v", s, s.Fits())
		}
		o := season.Odds{Days: []season.DayOdds{{Date: date(sure), On: chance}, {Date: date(latest)}}}
		at := autumn.AddDate(0, 0, day)
		if d, ok := o.At(at); ok && (d.Date.Month() != at.Month() || d.Date.Day() != at.Day()) {
			t.Fatalf("%v of %v", d, at)
		} else if !ok && (day == sure && sure != 0 || day == latest && latest != 0) {
			t.Fatalf("no odds of day %d", day)
		}
	})
}
