package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// split parts a record into the winters before and the one that is not over: the days
// from its last first of September on.
func split(days []season.Day) (past, now []season.Day) {
	for i := len(days) - 1; i >= 0; i-- {
		if d := days[i].Date; d.Month() == 9 && d.Day() == 1 {
			return days[:i], days[i:]
		}
	}
	return nil, days
}

// picture draws the ice on the first and the sixteenth of each month and today: # clear
// ice, o white ice, . snow, a mark for every inch.
func picture(out io.Writer, states []season.State) {
	inches := func(x float64) int { return int(x/measure.Inch + 0.5) }
	for i, s := range states {
		if last := i == len(states)-1; !last && s.Date.Day() != 1 && s.Date.Day() != 16 {
			continue
		}
		fmt.Fprintf(out, "%-7s %-11s %s%s%s\n", s.Date.Format("2 Jan"), measure.Length.Format(s.Total(), measure.US),
			strings.Repeat("#", inches(s.Clear)), strings.Repeat("o", inches(s.White)), strings.Repeat(".", inches(s.Snow)))
	}
	fmt.Fprintln(out, "# clear ice, o white ice, . snow: one mark an inch, by a model. Drill.")
}

// beside prints a pad kept bare and the square-root laws of the handbooks beside the
// model's ice of today.
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
	fmt.Fprintf(out, "\nTODAY, BESIDE IT\n%-42s %s\n%-42s %s\n", "by the model, clear and white ice", print(states[last].Total()),
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
func report(out io.Writer, record season.Record, lake season.Lake, carry, stand float64) error {
	m, err := season.New(lake, season.Default())
	if err != nil {
		return err
	}
	past, now := split(record.Days)
	states, err := m.Run(now)
	if err != nil {
		return err
	}
	fmt.Fprintln(out, "THIS WINTER SO FAR")
	picture(out, states)
	if err := beside(out, lake, now, states); err != nil {
		return err
	}
	odds, err := m.Odds(context.Background(), now, past, season.Question{Need: carry})
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "\nODDS FROM %d WINTERS: one in ten earlier, half, nine in ten\n", odds.Winters)
	on := odds.On.String()
	if !odds.Came.IsZero() {
		on = odds.Came.Format("2 Jan") + ": it has come, by this winter's own record"
	}
	fmt.Fprintf(out, "ice-on   %s\n%-8s %v\nice-out  %v\n", on, measure.Upward(carry, measure.US), odds.First, odds.Out)
	plan, err := m.Calendar(context.Background(), now, past, season.Question{}, season.Tasks(carry, stand))
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "\nCALENDAR OF THE WORK\n%v\n", plan)
	return nil
}
