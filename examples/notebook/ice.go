package main

import (
	"context"
	"math"
	"math/rand/v2"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// onIce is the second half: a frame of some mass and its heaviest piece on the lake.
func onIce(say func(string, ...any), mass float64, rim lumber.Member) {
	pounds := printer(measure.Mass)

	say("5. WHAT DO PUBLIC RULES ASK OF THE ICE?")
	sled := ice.Crossing{Mass: crew*person + must(rim.Weights()).Damp, People: crew}
	stack := ice.Crossing{Mass: mass + 2*person, People: 2}
	carry := must(ice.Sheet{Water: ice.Lake}.Required(sled, 0)).Limit
	stand := must(ice.Sheet{Water: ice.Lake}.Required(stack, 5)).Limit
	say("   %d people with a rim on a sled, %s: %s", crew, pounds(sled.Mass), measure.Upward(carry, measure.US))
	say("   the frame and two people for five hours, %s: %s", pounds(stack.Mass), measure.Upward(stand, measure.US))
	say("   of clear, cold, sound ice; white ice, thaw and cracks ask for more")

	say("6. WHEN WAS THERE SO MUCH, IN TEN INVENTED WINTERS?")
	model := must(season.New(season.Lake{Latitude: 46, MeanDepth: 6}, season.Default()))
	for _, need := range []float64{carry, stand} {
		odds := must(model.Odds(context.Background(), nil, winters(10), season.Question{Need: need}))
		say("   %s: first on %v; last on %v", measure.Upward(need, measure.US), odds.First, odds.Last)
	}
	say("   %s", season.Caution)
}

// winters invents daily means, year after year: a cosine, some winters colder, and
// weather that lasts some days.
func winters(n int) []season.Day {
	var out []season.Day
	from := time.Date(2026-n, time.September, 1, 0, 0, 0, 0, time.UTC)
	r := rand.New(rand.NewPCG(46, 6))
	weather, colder := 0.0, 0.0
	for date := from; date.Year() < 2026 || date.Month() < time.September; date = date.AddDate(0, 0, 1) {
		if date.Month() == time.September && date.Day() == 1 {
			colder = 6*r.Float64() - 3
		}
		weather = 0.8*weather + 6*r.Float64() - 3
		day := float64(date.YearDay()) / 365
		mean := 4 - (15+colder/2)*math.Cos(2*math.Pi*(day-0.06)) + weather
		out = append(out, season.Day{Date: date, Mean: mean})
	}
	return out
}
