package season_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/floewright/ice/season"
)

// plainYears returns years of 20 °C by day and night, from 1 June on after frost, with
// changes made to each day.
func plainYears(change func(d *season.Day)) []season.Day {
	var out []season.Day
	for t := time.Date(2010, time.September, 1, 0, 0, 0, 0, time.UTC); t.Year() < 2018; t = t.AddDate(0, 0, 1) {
		d := season.HighLow(t, -5, -5)
		if m := t.Month(); m >= time.May && m <= time.August {
			d = season.HighLow(t, 20, 20)
		}
		d.Has |= season.HasRain
		change(&d)
		out = append(out, d)
	}
	return out
}

// TestDryWork: a task of two days and three of drying waits for five days together
// without frost at night or rain, by hand.
func TestDryWork(t *testing.T) {
	task := season.Task{Name: "paint", Days: 2, MinAir: 10, DryDays: 3, Film: true, Moisture: 0.16}
	for _, c := range []struct {
		name   string
		change func(d *season.Day)
		task   func(t *season.Task)
		want   string // the usual day
	}{
		{"warm from 1 May on", func(*season.Day) {}, nil, "1 May"},
		{"a cold night on 4 May", func(d *season.Day) {
			if d.Date.Month() == time.May && d.Date.Day() == 4 {
				d.Low, d.Mean = 9, 14.5
			}
		}, nil, "5 May"},
		{"rain on the last day of drying", func(d *season.Day) {
			if d.Date.Month() == time.May && d.Date.Day() == 5 {
				d.Rain = 0.2
			}
		}, nil, "6 May"},
		{"less rain than a gauge tells", func(d *season.Day) {
			if d.Date.Month() == time.May && d.Date.Day() == 5 {
				d.Rain = 0.19
			}
		}, nil, "1 May"},
		{"rain on the day after", func(d *season.Day) {
			if d.Date.Month() == time.May && d.Date.Day() == 6 {
				d.Rain = 9
			}
		}, nil, "1 May"},
		{"rain does not matter", func(d *season.Day) {
			if d.Date.Month() == time.May && d.Date.Day() == 2 {
				d.Rain = 9
			}
		}, func(t *season.Task) { t.Days, t.DryDays = 5, 0 }, "1 May"},
		{"wintered under snow", func(*season.Day) {}, func(t *season.Task) { t.Wintered = true }, "1 Jun"},
	} {
		one := task
		if c.task != nil {
			c.task(&one)
		}
		p, err := model(t).Calendar(context.Background(), nil, plainYears(c.change), season.Question{}, []season.Task{one})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		// A day is told by its end, give or take the smear of one: the next may come out.
		got := p.Slots[0].Usual.Format("2 Jan")
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
		if strings.Contains(p.String(), "does not know the rain") {
			t.Errorf("%s: %s", c.name, p)
		}
	}
	blind := plainYears(func(d *season.Day) { d.Has &^= season.HasRain })
	p, err := model(t).Calendar(context.Background(), nil, blind, season.Question{}, []season.Task{task})
	if err != nil {
		t.Fatal(err)
	}
	for _, say := range []string{"does not know the rain", "film at 10 °C or above for all 3 days of drying", "colder than the air", "wood at 16 % moisture or below, measured"} {
		if !strings.Contains(p.String(), say) {
			t.Errorf("it does not say %q:\n%s", say, p)
		}
	}
}
