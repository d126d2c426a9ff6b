package season_test

import (
	"testing"

	"example.org/floewright/ice/season"
)

// FuzzBar: a slot from which days are taken begins on none of them, and says why.
func FuzzBar(f *testing.F) {
	f.Add(10, 30, 12, "wet wood")
	f.Add(0, 0, 0, "")
	f.Add(-5, 400, 9999, "\x00")
	f.Fuzz(func(t *testing.T, sure, latest, until int, why string) {
		if max(sure, latest, until) > 1e6 || min(sure, latest, until) < -1e6 {
			return
		}
		s := season.Slot{Sure: autumn.AddDate(0, 0, sure), Usual: autumn.AddDate(0, 0, sure), Latest: autumn.AddDate(0, 0, latest)}
		to := autumn.AddDate(0, 0, until)
		s.Bar(to, why)
		if !s.Sure.IsZero() && s.Sure.Before(to) || s.Fits() && latest < until {
			t.Fatalf("barred until %v: %+v", to, s)
		}
	})
}
