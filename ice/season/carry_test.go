package season_test

import (
	"context"
	"testing"

	"example.org/floewright/ice/season"
)

// shifted returns what twelve invented winters would show if the ice came and
// went so many days later than the default set has it, by winter.
func shifted(t *testing.T, by func(i int) int) (season.Lake, []season.Day, season.Seen) {
	t.Helper()
	l := season.Lake{Latitude: 46, MeanDepth: 9}
	m, err := season.New(l, season.Default())
	if err != nil {
		t.Fatal(err)
	}
	record := past(11, 12)
	states, err := m.Run(record)
	if err != nil {
		t.Fatal(err)
	}
	var seen season.Seen
	for i, w := range m.Winters(states) {
		if w.On.IsZero() || w.Out.IsZero() {
			t.Fatalf("winter %d has no ice", w.Year)
		}
		w.On, w.Out = w.On.AddDate(0, 0, by(i)), w.Out.AddDate(0, 0, by(i))
		seen.Winters = append(seen.Winters, w)
	}
	if len(seen.Winters) != 12 {
		t.Fatalf("%d winters", len(seen.Winters))
	}
	return l, record, seen
}

// A bend that every winter asks for is made.
func TestFitFollowsALastingShift(t *testing.T) {
	l, record, seen := shifted(t, func(int) int { return 8 })
	f, err := season.Fit(context.Background(), l, season.Default(), record, seen)
	if err != nil {
		t.Fatal(err)
	}
	if f.Params == season.Default() || !(f.On.MAE < 5 && f.Out.MAE < 5) {
		t.Errorf("ice-on off by %.1f d, ice-out by %.1f d, 8 d before the fit", f.On.MAE, f.Out.MAE)
	}
}

// A bend that only the earlier two thirds ask for does not carry forward.
func TestFitKeepsItsStartWhereNothingCarriesForward(t *testing.T) {
	l, record, seen := shifted(t, func(i int) int {
		if i < 8 {
			return 8
		}
		return 0
	})
	f, err := season.Fit(context.Background(), l, season.Default(), record, seen)
	if err != nil {
		t.Fatal(err)
	}
	if f.Params != season.Default() {
		t.Errorf("bent by winters that the later ones contradict: %+v", f.Params)
	}
}

// The usual thickness of few winters is less than their mean, and comes
// nearer to it with more of them.
func TestUsualErrsThin(t *testing.T) {
	l, record, seen := shifted(t, func(int) int { return 0 })
	var short [2]float64
	for k, n := range []int{4, 12} {
		some := season.Seen{}
		for _, w := range seen.Winters[:n] {
			some.Holes = append(some.Holes, season.Hole{Date: w.On.AddDate(0, 0, 60), Clear: 0.4, Whole: true})
		}
		// One hole in the same half-month each winter.
		for i := range some.Holes {
			d := some.Holes[i].Date
			some.Holes[i].Date = d.AddDate(0, 2-int(d.Month()), 5-d.Day())
			if d.Month() > 8 {
				some.Holes[i].Date = some.Holes[i].Date.AddDate(1, 0, 0)
			}
		}
		f, err := season.Fit(context.Background(), l, season.Default(), record, some)
		if err != nil {
			t.Fatal(err)
		}
		short[k] = 0.4 - f.Usual.Thickness[2]
	}
	if !(short[0] > short[1] && short[1] > 0) {
		t.Errorf("below the mean by %.3f m of 4 winters, %.3f m of 12", short[0], short[1])
	}
}
