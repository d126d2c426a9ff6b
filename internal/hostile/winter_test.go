package hostile

import (
	"math"
	"time"

	"example.org/floewright/ice/season"
)

// The winter, the lake and the dates below are invented.

var lake = season.Lake{Latitude: 46, MeanDepth: 6}

const record = "date,high,low\n2026-12-01,-1,-11\n2026-12-02,-2,-12\n2026-12-03,-4,-15\n"

// winter is sixty days from the first of November.
func winter() []season.Day {
	var days []season.Day
	for i := range 60 {
		mean := 4 - 0.3*float64(i) + 3*math.Sin(float64(i))
		days = append(days, season.HighLow(time.Date(2026, 11, 1+i, 0, 0, 0, 0, time.UTC), mean+4, mean-4))
	}
	return days
}

// past is four years up to the first of November.
func past() []season.Day { return years(4) }

func years(n int) []season.Day {
	var days []season.Day
	for d := time.Date(2026-n, 8, 1, 0, 0, 0, 0, time.UTC); d.Before(time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)); d = d.AddDate(0, 0, 1) {
		mean := 6 - 16*math.Cos(2*math.Pi*(float64(d.YearDay())-20)/365) + 3*math.Sin(float64(d.YearDay()))
		days = append(days, season.HighLow(d, mean+4, mean-4))
	}
	return days
}

// seen is what the model itself makes of those years: three winters to fit.
func seen() season.Seen {
	model := must(season.New(lake, season.Default()))
	return season.Seen{Winters: model.Winters(must(model.Run(past())))}
}

// start is the lake after forty of those days.
func start() season.State {
	model := must(season.New(lake, season.Default()))
	return must(model.Run(winter()[:40]))[39]
}

func autumns() []time.Time {
	var dates []time.Time
	for i, day := range []int{21, 25, 2, 17, 28} {
		dates = append(dates, time.Date(2020+i, time.November, day, 0, 0, 0, 0, time.UTC))
	}
	return dates
}
