package season_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// seen returns five remembered dates about one of 2026, a step of days apart.
func seen(t *testing.T, month time.Month, day, step int) season.Guess {
	t.Helper()
	var dates []time.Time
	for i := -2; i <= 2; i++ {
		dates = append(dates, time.Date(2020+i, month, day+i*step, 0, 0, 0, 0, time.UTC))
	}
	year := 2026
	if month > time.August {
		year = 2025
	}
	g, err := season.FromDates(dates, year)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func oddsOf(t *testing.T, now []season.Day, q season.Question) season.Odds {
	t.Helper()
	o, err := model(t).Odds(context.Background(), now, years(12), q)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// TestFirstDayNotBeforeIceOn: no odds of thick ice are before those of any ice, from thin
// to thick, before the season and in it.
func TestFirstDayNotBeforeIceOn(t *testing.T) {
	thin := 0
	for _, days := range []int{0, 60, 72, 80, 140} {
		for _, need := range []float64{0.005, 0.02, 0.05, 0.1, 0.3} {
			o := oddsOf(t, winter(99, -15, 3, 140)[:days], season.Question{Need: need})
			for _, two := range [][2]time.Time{{o.On.P10, o.First.P10}, {o.On.P50, o.First.P50}, {o.On.P90, o.First.P90}} {
				if !two[1].IsZero() && two[1].Before(two[0]) {
					t.Errorf("%d days, %g m: first day %v, ice-on %v", days, need, o.First, o.On)
				}
				if two[1].Equal(two[0]) {
					thin++
				}
			}
		}
	}
	if thin == 0 {
		t.Error("no first day on that of ice-on: the test tries nothing")
	}
}

// TestIceHasCome: while it has not, ice-on has three dates; once it has, one, and that
// is said.
func TestIceHasCome(t *testing.T) {
	all := winter(99, -15, 3, 140)
	before, after := oddsOf(t, all[:60], season.Question{Need: 0.1}), oddsOf(t, all, season.Question{Need: 0.1})
	if !before.Came.IsZero() || !before.On.P10.Before(before.On.P90) || strings.Contains(before.String(), "has come") {
		t.Errorf("in October: %v, %v", before.Came, before.On)
	}
	if after.Came.IsZero() || !after.On.P10.Equal(after.Came) || !after.On.P90.Equal(after.Came) || !strings.Contains(after.String(), "ice-on             "+after.Came.Format("2 Jan 2006")+": it has come") {
		t.Errorf("in January: %v, %v\n%v", after.Came, after.On, after)
	}
}

// TestSeenDates: remembered dates earlier than the record's end the work two weeks before
// the early one, and take from the chance; later ones change nothing. A late ice-on keeps
// the first days back until a hole has ice.
func TestSeenDates(t *testing.T) {
	m, ctx := model(t), context.Background()
	calendar := func(q season.Question) season.Calendar {
		t.Helper()
		c, err := m.Calendar(ctx, nil, years(12), q, season.Tasks(0.15, 0.3)[:3])
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	plain, early, late := season.Question{}, season.Question{SeenOut: seen(t, time.March, 10, 3)}, season.Question{SeenOut: seen(t, time.June, 25, 1)}
	a, b, c := calendar(plain), calendar(early), calendar(late)
	left := 7
	for i := range a.Slots {
		// By hand: the last day of the work, two weeks before the early ice-out.
		if want := early.SeenOut.P10.AddDate(0, 0, -14+1-left); !b.Slots[i].Latest.Equal(want) {
			t.Errorf("%s: begin by %v, want %v", b.Slots[i].Task.Name, b.Slots[i].Latest, want)
		}
		if !(b.Slots[i].Chance < a.Slots[i].Chance && b.Slots[i].Chance > 0) {
			t.Errorf("%s: room in %g, without remembered dates in %g", b.Slots[i].Task.Name, b.Slots[i].Chance, a.Slots[i].Chance)
		}
		if !c.Slots[i].Latest.Equal(a.Slots[i].Latest) || math.Abs(c.Slots[i].Chance-a.Slots[i].Chance) > 0.01 {
			t.Errorf("%s: %v with later dates, %v without", c.Slots[i].Task.Name, c.Slots[i], a.Slots[i])
		}
		left -= a.Slots[i].Task.Days
	}
	if !strings.Contains(b.String(), "as remembered "+early.SeenOut.Span.String()) {
		t.Errorf("%v", b)
	}
	early.Need = 0.15
	if o := oddsOf(t, nil, early); !o.Last.P10.Equal(early.SeenOut.P10) || !o.Last.P90.Equal(early.SeenOut.P90) {
		t.Errorf("last day %v, ice-out as remembered %v", o.Last, early.SeenOut.Span)
	}

	now := winter(99, -15, 3, 140)
	q := season.Question{Need: 0.05, SeenOn: seen(t, time.December, 28, 2)}
	if o := oddsOf(t, now, q); !o.First.P10.Equal(q.SeenOn.P10) || !o.First.P90.Equal(q.SeenOn.P90) {
		t.Errorf("first day %v, ice-on as remembered %v", o.First, q.SeenOn.Span)
	}
	q.Holes = []season.Hole{{Date: now[130].Date, Clear: 0.4}}
	if o := oddsOf(t, now, q); !o.First.P90.Before(q.SeenOn.P10) {
		t.Errorf("with a hole in the ice, first day %v", o.First)
	}
}

// TestCalendarAsked: nothing begins before the day of asking, whatever the record ends
// with; what had to begin before it does not begin at all; and the day says which winter.
func TestCalendarAsked(t *testing.T) {
	m, ctx, all := model(t), context.Background(), winter(99, -15, 3, 140)
	for _, days := range []int{0, 80, 140} {
		for _, c := range []struct {
			now  time.Time
			over bool
		}{{autumn.AddDate(0, 0, 150), false}, {autumn.AddDate(0, 0, 225), true}} {
			got, err := m.Calendar(ctx, all[:days], years(12), season.Question{Now: c.now}, season.Tasks(0.1, 0.2))
			if err != nil {
				t.Fatal(err)
			}
			for i, s := range got.Slots {
				for _, day := range []time.Time{s.Earliest, s.Usual, s.Sure} {
					if !day.IsZero() && day.Before(c.now) {
						t.Errorf("%d days, asked on %v: %v", days, c.now, s)
					}
				}
				if i > 0 {
					continue
				}
				if over := s.Against != ""; over != c.over || over && (!s.Earliest.IsZero() || !strings.Contains(s.String(), "NOT AS THINGS ARE: the last day to begin it, "+s.Latest.Format("2 Jan 2006")+", is over")) {
					t.Errorf("%d days, asked on %v: %v", days, c.now, s)
				}
			}
			if dry := got.Slots[3]; dry.Earliest.IsZero() || dry.Against != "" {
				t.Errorf("%v", dry)
			}
		}
	}
	// Five years after the record: the dates are those of the winter that is asked for.
	later := time.Date(2030, time.December, 24, 0, 0, 0, 0, time.UTC)
	o := oddsOf(t, nil, season.Question{Need: 0.1, Now: later})
	if o.Out.P50.Year() != 2031 || o.On.P50.Year() != 2030 {
		t.Errorf("on %v, out %v", o.On.P50, o.Out.P50)
	}
	if _, err := m.Odds(ctx, all, years(12), season.Question{Need: 0.1, Now: later}); !errors.Is(err, measure.ErrRange) {
		t.Errorf("asked of another winter than its days: %v", err)
	}
}

// TestBar: what speaks against a task takes the days up to one, and is said first.
func TestBar(t *testing.T) {
	day := func(n int) time.Time { return time.Date(2027, time.January, n, 0, 0, 0, 0, time.UTC) }
	s := season.Slot{Task: season.Task{Name: "carry", Need: 0.2}, Earliest: day(3), Usual: day(4), Sure: day(9), Latest: day(20)}
	s.Bar(day(4), "thin ice")
	if !s.Earliest.IsZero() || !s.Usual.IsZero() || !s.Sure.Equal(day(9)) || s.Against != "thin ice" {
		t.Errorf("%+v", s)
	}
	if text := strings.Join(strings.Fields(s.String()), " "); !strings.Contains(text, "earliest not now, usual not now, in 9 of 10 from 9 Jan 2027") || !strings.HasSuffix(text, "; NOT AS THINGS ARE: thin ice") {
		t.Errorf("%s", text)
	}
	s.Bar(time.Time{}, "and late")
	if text := s.String(); !s.Sure.IsZero() || !strings.HasSuffix(text, "NOT AS THINGS ARE: thin ice; and late; begin by 20 Jan 2027") {
		t.Errorf("%s", text)
	}
	for need, want := range map[float64]string{0: "no last day,", 0.1: "no day to begin by,"} {
		if text := (season.Slot{Task: season.Task{Need: need}}).String(); !strings.Contains(text, want) {
			t.Errorf("%s", text)
		}
	}
}

// FuzzCalendarAsked: whenever it is asked and whatever is remembered, no work begins before
// that day or after ice-out as remembered, shares are shares, and first days are not before
// ice-on.
func FuzzCalendarAsked(f *testing.F) {
	f.Add(150, 140, 190, 3, 100)
	f.Add(150, 140, 90, 3, 100)
	f.Add(30, 0, 200, 9, 70)
	f.Add(300, 80, 260, 1, 130)
	past, this := years(8), winter(99, -15, 3, 200)
	m, err := season.New(pond, season.Default())
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, asked, days, out, step, on int) {
		if days < 0 || days > len(this) || asked < days || asked > 360 {
			return
		}
		recall := func(day int) (g season.Guess) {
			var dates []time.Time
			for i := range 5 {
				dates = append(dates, autumn.AddDate(i-9, 0, day+(i-2)*step))
			}
			if day < 0 || day > 360 || step < 0 || step > 40 {
				return g
			}
			g, _ = season.FromDates(dates, autumn.AddDate(0, 0, day-2*step).Year()) // of a date like the first
			return g
		}
		q := season.Question{Need: 0.15, Now: autumn.AddDate(0, 0, asked), SeenOn: recall(on), SeenOut: recall(out)}
		o, err := m.Odds(context.Background(), this[:days], past, q)
		if q.SeenOn.N > 0 && q.SeenOut.N > 0 && !q.SeenOn.P50.Before(q.SeenOut.P50) {
			if !errors.Is(err, measure.ErrRange) || !strings.Contains(err.Error(), q.SeenOn.P50.Format(time.DateOnly)) || !strings.Contains(err.Error(), q.SeenOut.P50.Format(time.DateOnly)) {
				t.Fatalf("ice-on %v, ice-out %v: %v", q.SeenOn, q.SeenOut, err)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, two := range [][2]time.Time{{o.On.P10, o.First.P10}, {o.On.P90, o.First.P90}, {q.SeenOn.P10, o.First.P10}, {q.SeenOn.P90, o.First.P90}} {
			if !two[1].IsZero() && two[1].Before(two[0]) {
				t.Errorf("first day %v, ice-on %v, remembered %v", o.First, o.On, q.SeenOn.Span)
			}
		}
		c, err := m.Calendar(context.Background(), this[:days], past, q, season.Tasks(0.15, 0.3))
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range c.Slots {
			for _, day := range []time.Time{s.Earliest, s.Usual, s.Sure} {
				if !day.IsZero() && day.Before(q.Now) {
					t.Errorf("asked on %v: %v", q.Now, s)
				}
			}
			if !(s.Chance >= 0 && s.Chance <= 1+1e-9) {
				t.Errorf("room in %g", s.Chance)
			}
			if end := s.Latest.AddDate(0, 0, s.Task.Days-1); s.Task.Need > 0 && q.SeenOut.N > 0 && !s.Latest.IsZero() && end.After(q.SeenOut.P10) {
				t.Errorf("it ends on %v, the ice is out by %v", end, q.SeenOut.P10)
			}
		}
	})
}
