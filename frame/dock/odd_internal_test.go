package dock

import (
	"errors"
	"testing"
	"time"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
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

// What the frame says in metres from its middle, the report says along the tape, and the
// error stays what it is.
func TestPlaced(t *testing.T) {
	d := &Dock{length: 16 * measure.Foot, width: 8 * measure.Foot, units: measure.US}
	err := d.placed(&frame.CapsizeError{Place: "node joist 1 at 1-1/2 in at (-2.419, -1.181) m", Motion: "turns about a line through (1.219, 0.610) m"})
	const want = "frame: it capsizes: node joist 1 at 1-1/2 in turns about a line through 12 ft along, 6 ft across"
	if err.Error() != want || !errors.Is(err, frame.ErrCapsizes) {
		t.Errorf("%v", err)
	}
	if plain := errors.New("nothing of it"); d.placed(plain) != plain || d.placed(nil) != nil {
		t.Error("changed what has no place")
	}
}
