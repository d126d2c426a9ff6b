package dock

import (
	"testing"
	"time"
)

// Water over the ice has days only where the law reaches them and there may be ice.
func TestFlooded(t *testing.T) {
	now := time.Date(2027, 2, 6, 12, 0, 0, 0, time.UTC)
	day := func(n int) time.Time { return now.AddDate(0, 0, n) }
	for _, c := range []struct {
		soonest, latest time.Time
		want            string
	}{
		{day(3), day(20), "water over the ice between 2027-02-09 and 2027-02-26"},
		{day(3), time.Time{}, "water over the ice from 2027-02-09 at the soonest, at the latest on no day that the creep law reaches"},
		{day(3), day(200), "water over the ice from 2027-02-09 at the soonest, at the latest on no day that the creep law reaches"},
		{day(180), time.Time{}, "the creep law reaches no day within four months on which water comes over the ice"},
		{time.Time{}, time.Time{}, "the creep law reaches no day within four months on which water comes over the ice"},
	} {
		if got := flooded(c.soonest, c.latest, now); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	for n, want := range map[int]string{0: "0 people", 1: "1 person", 2: "2 people"} {
		if got := heads(n); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
