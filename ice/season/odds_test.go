package season_test

import (
	"context"
	"testing"
	"time"

	"example.org/floewright/ice/season"
)

// TestOddsAfterHoles: thin holes make thick ice less likely and later, a hole that reads
// what the model has changes little, and a hole of a day ahead is an error.
func TestOddsAfterHoles(t *testing.T) {
	m, now, before := model(t), winter(99, -15, 3, 140), years(12)
	states, err := m.Run(now)
	if err != nil {
		t.Fatal(err)
	}
	ask := func(share float64) season.Odds {
		q := season.Question{Need: 0.38}
		for _, i := range []int{110, 120, 130} {
			q.Holes = append(q.Holes, season.Hole{Date: states[i].Date, Clear: share * states[i].Clear, White: share * states[i].White})
		}
		o, err := m.Odds(context.Background(), now, before, q)
		if err != nil {
			t.Fatal(err)
		}
		return o
	}
	plain, err := m.Odds(context.Background(), now, before, season.Question{Need: 0.38})
	if err != nil {
		t.Fatal(err)
	}
	same, thin, thick := ask(1), ask(0.5), ask(1.5)
	at := states[139].Date.AddDate(0, 0, 15)
	chance := func(o season.Odds) float64 {
		d, ok := o.At(at)
		if !ok {
			t.Fatal(at)
		}
		return d.Carries
	}
	if a, b := chance(plain), chance(same); a-b > 0.1 || b-a > 0.1 {
		t.Errorf("%.2f without holes, %.2f with holes that read as the model", a, b)
	}
	if !(chance(thin) < chance(same)-0.2 && chance(thick) >= chance(same)) {
		t.Errorf("%.2f after thin holes, %.2f, %.2f after thick ones", chance(thin), chance(same), chance(thick))
	}
	if !thin.First.P50.IsZero() && thin.First.P50.Before(same.First.P50) {
		t.Errorf("thin ice has it on %v, other ice on %v", thin.First, same.First)
	}
	if _, err := m.Odds(context.Background(), now, before, season.Question{Need: 0.4, Holes: []season.Hole{{Date: at, Clear: 0.3}}}); err == nil {
		t.Error("a hole of a day ahead")
	}
}

// TestCalendarFromToday: with ice that came long ago, no work begins on a day that is
// over, and the first day with it is the one that had it.
func TestCalendarFromToday(t *testing.T) {
	m, now := model(t), winter(99, -15, 3, 140)
	today := now[len(now)-1].Date
	states, err := m.Run(now)
	if err != nil {
		t.Fatal(err)
	}
	var had time.Time
	for _, s := range states {
		if s.Effective >= 0.15 && !s.Thaw {
			had = s.Date
			break
		}
	}
	o, err := m.Odds(context.Background(), now, years(12), season.Question{Need: 0.15})
	if err != nil {
		t.Fatal(err)
	}
	if off := o.First.P50.Sub(had).Hours() / 24; had.IsZero() || off < -2 || off > 2 {
		t.Errorf("first had on %v, said %v", had, o.First)
	}
	p, err := m.Calendar(context.Background(), now, years(12), season.Question{}, season.Tasks(0.15, 0.15)[:2])
	if err != nil {
		t.Fatal(err)
	}
	for i, s := range p.Slots {
		if want := today.AddDate(0, 0, 1+2*i); !s.Earliest.Equal(want) || !s.Usual.Equal(want) {
			t.Errorf("%v, the first day that is left is %v", s, want)
		}
	}
	// From when the ice had it to spring there are 110 days, from today on there are not.
	p, err = m.Calendar(context.Background(), now, years(12), season.Question{}, []season.Task{{Name: "long", Days: 110, Need: 0.15}})
	if err != nil {
		t.Fatal(err)
	}
	if days := o.Last.P90.Sub(had).Hours() / 24; days < 115 || p.Slots[0].Chance > 0.2 {
		t.Errorf("%.0f days with it in all, 110 of them left in %.0f %% of winters", days, 100*p.Slots[0].Chance)
	}
}
