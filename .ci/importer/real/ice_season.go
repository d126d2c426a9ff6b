package main

import (
	"fmt"
	"time"

	"example.org/floewright/ice/season"
)

func init() {
	calls = append(calls, call{"ice/season", func() (string, error) {
		// A week of frost on a lake that stands at the freezing point.
		var days []season.Day
		for i := range 40 {
			days = append(days, season.Day{Date: time.Date(2026, 12, 1+i, 0, 0, 0, 0, time.UTC), Mean: -8})
		}
		states, err := season.Run(season.Lake{Latitude: 46, MeanDepth: 3}, season.Default(), days)
		if err != nil {
			return "", err
		}
		last := states[len(states)-1]
		if !last.Ice || !(last.Total() > 0) {
			return "", fmt.Errorf("no ice after 40 days of frost")
		}
		if _, err := season.FromDates(nil, 2027); err == nil {
			return "", fmt.Errorf("odds from no dates")
		}
		return "a lake freezes over; no odds from nothing", nil
	}})
}
