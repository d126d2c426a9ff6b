package season

import (
	"testing"
	"time"
)

// TestHolesCarryTheSeasonsSnow: the past winters run on with the snow that the holes
// found, from the ice that they left.
func TestHolesCarryTheSeasonsSnow(t *testing.T) {
	m, err := New(Lake{Latitude: 46, MeanDepth: 9}, Default())
	if err != nil {
		t.Fatal(err)
	}
	var days []Day
	for i := range 150 {
		days = append(days, Day{Date: time.Date(2025, time.September, 1+i, 0, 0, 0, 0, time.UTC), Mean: 15 - 0.2*float64(i)})
	}
	holes := []Hole{{Date: days[120].Date, Clear: 0.1}, {Date: days[140].Date, Clear: 0.13}}
	c, err := m.Correct(days, holes)
	if err != nil {
		t.Fatal(err)
	}
	states, with, err := m.begun(days, holes)
	if err != nil {
		t.Fatal(err)
	}
	if with.Params() != c.Params || c.Params == m.Params() {
		t.Errorf("runs on with catch %g, the holes found %g, the model had %g", with.Params().Catch, c.Params.Catch, m.Params().Catch)
	}
	if states[149] != c.Days[149].State {
		t.Errorf("runs on from %+v, the holes left %+v", states[149], c.Days[149].State)
	}
	states, with, err = m.begun(days, nil)
	if err != nil || with != m || len(states) != len(days) {
		t.Errorf("without holes: %v", err)
	}
}

// TestWinterOfADate: the last day of August, of February in the south, belongs to the
// winter that ends, in leap years too.
func TestWinterOfADate(t *testing.T) {
	north, south := Lake{Latitude: 46, MeanDepth: 9}, Lake{Latitude: -46, MeanDepth: 9}
	for year := 1899; year < 2102; year++ {
		for _, l := range []Lake{north, south} {
			open := l.opening(year)
			if a, b := l.year(open-1), l.year(open); a != year-1 || b != year {
				t.Errorf("%g°, %s: winter %d, the day before %d", l.Latitude, dateOf(open).Format(time.DateOnly), b, a)
			}
		}
	}
}
