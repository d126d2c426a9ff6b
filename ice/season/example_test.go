package season_test

import (
	"context"
	"fmt"
	"log"
	"strings"
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// pond is an invented lake, 46° north and 9 m deep in the mean.
var pond = season.Lake{Latitude: 46, MeanDepth: 9}

// years returns invented weather without a gap, one winter after another.
func years(n int) []season.Day {
	var out []season.Day
	for y := range n {
		from := autumn.AddDate(y-n, 0, 0)
		for i, d := range winter(uint64(y+1), -13-float64(y%5), 3.5, int(autumn.AddDate(y-n+1, 0, 0).Sub(from).Hours()/24)) {
			d.Date = from.AddDate(0, 0, i)
			out = append(out, d)
		}
	}
	return out
}

// A winter from its daily means: when the ice comes, how thick it gets, when it goes.
func ExampleRun() {
	days := winter(3, -15, 3, 300)
	states, err := season.Run(pond, season.Default(), days)
	if err != nil {
		log.Fatal(err)
	}
	m, err := season.New(pond, season.Default())
	if err != nil {
		log.Fatal(err)
	}
	for _, w := range m.Winters(states) {
		fmt.Printf("on %s, out %s, %.0f cm at most, %.0f cm of it white\n", w.On.Format("2 Jan"), w.Out.Format("2 Jan"), 100*w.Thickest, 100*w.WhiteMost)
	}
	// Output:
	// on 15 Nov, out 12 May, 77 cm at most, 11 cm of it white
}

// Handbook rules beside the growth law: 500 °C·day of frost.
func ExampleRules() {
	for _, r := range season.Rules()[:2] {
		lo, hi, err := r.Thickness(500)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %.0f to %.0f cm\n", r.Name, 100*lo, 100*hi)
	}
	h, err := season.Ashton().Thickness(0, 500)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("bare ice by the growth law: %.0f cm\n", 100*h)
	// Output:
	// windy lake, no snow: 61 to 61 cm
	// average lake with snow: 38 to 53 cm
	// bare ice by the growth law: 69 cm
}

// Drilled holes pull the model to the lake.
func ExampleModel_Correct() {
	m, err := season.New(pond, season.Default())
	if err != nil {
		log.Fatal(err)
	}
	days := winter(3, -15, 3, 200)
	plain, err := m.Run(days)
	if err != nil {
		log.Fatal(err)
	}
	c, err := m.Correct(days, []season.Hole{
		{Date: autumn.AddDate(0, 0, 130), Clear: 0.22}, {Date: autumn.AddDate(0, 0, 140), Clear: 0.25}, {Date: autumn.AddDate(0, 0, 150), Clear: 0.28},
	})
	if err != nil {
		log.Fatal(err)
	}
	last := len(days) - 1
	fmt.Printf("the model alone %.0f cm, corrected %.0f cm, give or take %.0f cm\n", 100*plain[last].Total(), 100*c.Days[last].Total(), 100*c.Days[last].SD)
	// Output:
	// the model alone 72 cm, corrected 49 cm, give or take 5 cm
}

// Odds for the diary from twelve invented winters: a sled of 600 lb and three people.
func ExampleModel_Odds() {
	m, err := season.New(pond, season.Default())
	if err != nil {
		log.Fatal(err)
	}
	need, err := season.NeedFor(ice.Crossing{Mass: 600 * measure.Pound, People: 3}, false)
	if err != nil {
		log.Fatal(err)
	}
	o, err := m.Odds(context.Background(), nil, years(12), season.Question{Need: need})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("ice-on %v; thick enough from %v; ice-out %v\n", o.On, o.First, o.Out)
	fmt.Println(season.Caution)
	// Output:
	// ice-on 29 Oct, 11 Nov, 24 Nov 2025; thick enough from 12 Nov, 26 Nov, 10 Dec 2025; ice-out 22 Apr, 3 May, 14 May 2026
	// Odds and dates for the diary only. They are no permission for anything on ice: drill, measure, and ask those who know this ice.
}

// Ice-out from seven remembered dates: wide, as so few are.
func ExampleFromDates() {
	var dates []time.Time
	for i, day := range []int{12, 20, 5, 17, 25, 9, 15} {
		dates = append(dates, time.Date(2018+i, time.April, day, 0, 0, 0, 0, time.UTC))
	}
	g, err := season.FromDates(dates, 2027)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(g.Span)
	// Output:
	// 4 Apr, 15 Apr, 26 Apr 2027
}

// The calendar of the work.
func ExampleModel_Calendar() {
	m, err := season.New(pond, season.Default())
	if err != nil {
		log.Fatal(err)
	}
	p, err := m.Calendar(context.Background(), nil, years(12), season.Question{}, season.Tasks(0.2, 0.4)[:2])
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range p.Slots {
		fmt.Println(s)
	}
	// Output:
	// carry the pieces out               earliest 12 Nov 2025, usual 26 Nov 2025, in 9 of 10 from 10 Dec 2025, begin by 27 Mar 2026, room in 100 %
	// assemble the frame over its drums  earliest 17 Dec 2025, usual 30 Dec 2025, in 9 of 10 from 12 Jan 2026, begin by 17 Mar 2026, room in 100 %
}

// A table of weather, in °F by declaration, with a gap.
func ExampleReadCSV() {
	r, err := season.ReadCSV("shore.csv", strings.NewReader("date,high,low\n2026-12-01,30,12\n2026-12-02,28,10\n2026-12-04,25,5\n"), season.Options{Fahrenheit: true})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d days, the last at %.1f °C\n", len(r.Days), r.Days[len(r.Days)-1].Mean)
	for _, g := range r.Gaps {
		fmt.Println(g)
	}
	// Output:
	// 4 days, the last at -9.4 °C
	// 2026-12-03 to 2026-12-03: 1 day missing, interpolated
}

// Bend the model to a lake whose people wrote down when it froze and opened: nine invented
// winters in which it opened ten days later than the default set has it.
func ExampleFit() {
	days := years(9)
	states, err := season.Run(pond, season.Default(), days)
	if err != nil {
		log.Fatal(err)
	}
	m, err := season.New(pond, season.Default())
	if err != nil {
		log.Fatal(err)
	}
	var diary season.Seen
	for _, w := range m.Winters(states) {
		diary.Winters = append(diary.Winters, season.Winter{Year: w.Year, On: w.On, Out: w.Out.AddDate(0, 0, 10)})
	}
	f, err := season.Fit(context.Background(), pond, season.Default(), days, diary)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d winters: ice-out missed by 10 days before, by %.0f after\n", f.Out.N, f.Out.MAE)
	// Output:
	// 9 winters: ice-out missed by 10 days before, by 2 after
}
