package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

const dayForm = "2 Jan 2006"

// An asking is what the record is asked for.
type asking struct {
	season.Lake
	carry, stand float64 // m of ice
	now          time.Time
}

// opens returns the first day of the winter of a day: 1 September, in the south 1 March.
func (a asking) opens(t time.Time) time.Time {
	month := time.September
	if a.Latitude < 0 {
		month = time.March
	}
	first := time.Date(t.Year(), month, 1, 0, 0, 0, 0, time.UTC)
	if t.Before(first) {
		first = first.AddDate(-1, 0, 0)
	}
	return first
}

// winter names the winter that begins on a day.
func winter(opens time.Time) string {
	if opens.Month() == time.March {
		return opens.Format("2006")
	}
	return fmt.Sprintf("%d/%02d", opens.Year(), (opens.Year()+1)%100)
}

// split parts a record into the winters before that of now and its own days.
func (a asking) split(days []season.Day) (past, now []season.Day) {
	i, _ := slices.BinarySearchFunc(days, a.opens(a.now), func(d season.Day, t time.Time) int { return d.Date.Compare(t) })
	return days[:i], days[i:]
}

// picture draws the ice on the first and the sixteenth of each month and on its last day: # clear
// ice, o white ice, . snow, a mark for every inch.
func picture(out io.Writer, states []season.State) {
	inches := func(x float64) int { return int(x/measure.Inch + 0.5) }
	for i, s := range states {
		if last := i == len(states)-1; !last && s.Date.Day() != 1 && s.Date.Day() != 16 {
			continue
		}
		fmt.Fprintf(out, "%-12s %-11s %s%s%s\n", s.Date.Format(dayForm), measure.Length.Format(s.Total(), measure.US),
			strings.Repeat("#", inches(s.Clear)), strings.Repeat("o", inches(s.White)), strings.Repeat(".", inches(s.Snow)))
	}
	fmt.Fprintln(out, "# clear ice, o white ice, . snow: one mark an inch, by a model. Drill.")
}

// beside prints a pad kept bare and the square-root laws of the handbooks beside the
// model's ice of the last day.
func beside(out io.Writer, lake season.Lake, now []season.Day, states []season.State) error {
	if len(states) == 0 {
		return nil
	}
	pad, err := season.Run(lake, season.Default().Pad(), now)
	if err != nil {
		return err
	}
	last := len(states) - 1
	print := func(x float64) string { return measure.Length.Format(x, measure.US) }
	fmt.Fprintf(out, "\nON %s, BESIDE IT\n%-42s %s\n%-42s %s\n", states[last].Date.Format(dayForm), "by the model, clear and white ice", print(states[last].Total()),
		"by the model, a pad kept bare of snow", print(pad[last].Total()))
	for _, r := range season.Rules() {
		lo, hi, err := r.Thickness(states[last].FrostDays)
		if err != nil {
			return err
		}
		fmt.Fprintf(out, "%-42s %s to %s\n", r.Name, print(lo), print(hi))
	}
	return nil
}

// report prints the season, the odds and the calendar.
func (a asking) report(out io.Writer, record season.Record) error {
	m, err := season.New(a.Lake, season.Default())
	if err != nil {
		return err
	}
	past, now := a.split(record.Days)
	this := winter(a.opens(a.now))
	last := record.Days[len(record.Days)-1].Date
	fmt.Fprintf(out, "THE RECORD ends on %s, in the winter of %s; asked on %s, in that of %s\n\n", last.Format(dayForm), winter(a.opens(last)), a.now.Format(dayForm), this)
	q := season.Question{Need: a.carry, Now: a.now}
	odds, err := m.Odds(context.Background(), now, past, q)
	if err != nil {
		return err
	}
	if len(now) == 0 {
		fmt.Fprintf(out, "THE WINTER OF %s: the record has no day of it\n", this)
	} else {
		states, err := m.Run(now)
		if err != nil {
			return err
		}
		fmt.Fprintf(out, "THE WINTER OF %s SO FAR\n", this)
		if days := int(a.now.Sub(last).Hours() / 24); days > 1 {
			fmt.Fprintf(out, "The last %d days are not in the record: what the ice did in them is not known.\n", days)
		}
		picture(out, states)
		if err := beside(out, a.Lake, now, states); err != nil {
			return err
		}
	}
	fmt.Fprintf(out, "\nODDS FROM %d WINTERS: one in ten earlier, half, nine in ten\n", odds.Winters)
	on := odds.On.String()
	if !odds.Came.IsZero() {
		on = odds.Came.Format(dayForm) + ": it has come, by the record of the winter of " + this
	}
	fmt.Fprintf(out, "ice-on   %s\n%-8s %v\nice-out  %v\n", on, measure.Upward(a.carry, measure.US), odds.First, odds.Out)
	plan, err := m.Calendar(context.Background(), now, past, q, season.Tasks(a.carry, a.stand))
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "\nCALENDAR OF THE WORK\n%v\n", plan)
	return nil
}
