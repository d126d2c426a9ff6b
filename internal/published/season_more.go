package published

import (
	"time"

	"example.org/floewright/ice"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// seasonMore has remembered dates, the rules' thickness, and what is read between holes.
func seasonMore() ([]Check, error) {
	rules, err := seasonRules()
	if err != nil {
		return nil, err
	}
	return append(append(append(seasonGuesses(), seasonStates()...), seasonRuns()...), rules...), nil
}

// seasonGuesses checks the odds of ice-out by five remembered dates, four days apart, none in a
// leap year: mean 18 April, standard deviation √40 days.
func seasonGuesses() []Check {
	on := func(year, day int) time.Time { return time.Date(year, time.April, day, 0, 0, 0, 0, time.UTC) }
	dates := []time.Time{on(2011, 26), on(2013, 10), on(2014, 18), on(2015, 14), on(2017, 22)}
	guess := func(of func(season.Guess) float64) func() (float64, error) {
		return func() (float64, error) {
			g, err := season.FromDates(dates, 2018)
			return of(g), err
		}
	}
	by := func(day int) func() (float64, error) {
		return guess(func(g season.Guess) float64 { return g.By(on(2018, day)) })
	}
	day := func(of func(season.Guess) time.Time) func() (float64, error) {
		return guess(func(g season.Guess) float64 { return of(g).Sub(on(2018, 1)).Hours()/24 + 1 })
	}
	student := independent("Student's t for one more draw, 50 digits", "4 degrees of freedom, scale √(40 + 2²) √(1 + 1/5) days about 18 April, to the end of the day")
	out := share("ice/season", student, 1e-9,
		one{"chance by 25 April", "0.819841201854", "", by(25)},
		one{"chance by 15 April", "0.374066683625", "", by(15)},
		one{"standard deviation of the dates", "6.32455532033676", "days", guess(func(g season.Guess) float64 { return g.SD })},
	)
	// t at 0.90 is 1.533: 11.14 days.
	table := measure.Source{Title: "NIST/SEMATECH e-Handbook of Statistical Methods", Locator: "1.3.6.7.2, critical values of Student's t, 0.90 and 4: 1.533", Status: measure.Memory}
	out = append(out, share("ice/season", table, 0,
		one{"day of April until which nine winters of ten are open", "29", "", day(func(g season.Guess) time.Time { return g.P90 })},
		one{"day of April before which one winter of ten opens", "7", "", day(func(g season.Guess) time.Time { return g.P10 })},
	)...)
	return append(out, share("ice/season", exactly("Mean of five dates", "10, 14, 18, 22 and 26 April; the mean splits the odds, half a day before its end"), 1e-12,
		one{"day of April that is as likely before as after", "18", "", day(func(g season.Guess) time.Time { return g.P50 })},
		one{"mean day of April", "18", "", day(func(g season.Guess) time.Time { return g.Mean })},
		one{"chance by 13 April and by 22 April together", "1", "", guess(func(g season.Guess) float64 { return g.By(on(2018, 13)) + g.By(on(2018, 22)) })},
	)...)
}

// seasonStates checks what is read of holes and states without a law of growth.
func seasonStates() []Check {
	on := func(day int) time.Time { return time.Date(2030, time.January, day, 0, 0, 0, 0, time.UTC) }
	holes := []season.Hole{{Date: on(3), Clear: 0.10, White: 0.02}, {Date: on(13), Clear: 0.20, White: 0.04}}
	between := func(day int) func() (float64, error) {
		return func() (float64, error) {
			h, _ := season.Between(holes, on(day))
			return h, nil
		}
	}
	state := season.State{Date: on(10), Ice: true, Clear: 0.25, White: 0.05}
	usual := season.Usual{Weight: 0.75}
	usual.Thickness[0], usual.N[0] = 0.18, 9
	need := func(stands bool) func() (float64, error) {
		return func() (float64, error) { return season.NeedFor(ice.Crossing{Mass: 100, People: 1}, stands) }
	}
	red := measure.Source{Title: "Canadian Red Cross, ice thickness advice, as quoted in 2022", Locator: "walking or skating alone: 15 cm", Status: measure.Quoted}
	out := carried(share("ice/season", red, 1e-12,
		one{"ice that the strictest source asks for one person", "0.15", "m", need(false)},
		one{"twice that where the load stands", "0.30", "m", need(true)},
	)...)
	return append(out, share("ice/season", exactly("Straight lines and sums", "0.12 m and 0.24 m ten days apart; 0.25 + 0.05 m; three parts of the model to one of the usual 0.18 m; (high + low)/2"), 1e-12,
		one{"thickness four days after a hole", "0.168", "m", between(7)},
		one{"thickness on the day of a hole", "0.240", "m", between(13)},
		one{"clear and white ice", "0.300", "m", func() (float64, error) { return state.Total(), nil }},
		one{"model drawn to the usual by a quarter", "0.270", "m", func() (float64, error) { return usual.Of(state), nil }},
		one{"mean of a day of -3 and -12 °C", "-7.5", "°C", func() (float64, error) { return season.HighLow(on(1), -3, -12).Mean, nil }},
	)...)
}

// seasonRules checks the thickness that the rules give after 100 °C·day of frost, ten times their
// converted α, and the named law after frosts that its table has.
func seasonRules() ([]Check, error) {
	table, err := rows("season_alpha")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		if r["converted_lo_cm"] == "" {
			continue
		}
		for _, high := range []bool{false, true} {
			c := Check{
				Package: "ice/season", Quantity: "least thickness after 100 °C·day, over ten: " + r["rule"],
				Source: independent("α times the root of frost", r["source"]), Printed: r["converted_lo_cm"], Unit: "cm",
			}
			if high {
				c.Quantity, c.Printed = "greatest thickness after 100 °C·day, over ten: "+r["rule"], r["converted_hi_cm"]
			}
			c.Compute = func() (float64, error) {
				for _, rule := range season.Rules() {
					if rule.Name == r["rule"] {
						lo, hi, err := rule.Thickness(100)
						if high {
							lo = hi
						}
						return 10 * lo, err
					}
				}
				return 0, nil
			}
			out = append(out, c)
		}
	}
	growth := measure.Source{Title: "G. D. Ashton's growth law with its constants", Locator: "40 digits, by another program, bare ice at 20 W/(m² K)", Status: measure.Independent}
	law := func(frost float64) func() (float64, error) {
		return func() (float64, error) { return season.Ashton().Thickness(0, frost) }
	}
	return append(out, share("ice/season", growth, 0,
		one{"thickness after 10 °C·day", "0.046731620", "m", law(10)},
		one{"thickness after 50 °C·day", "0.163322784", "m", law(50)},
		one{"thickness after 500 °C·day", "0.691200072", "m", law(500)},
	)...), nil
}

// seasonRuns checks a run of the model under a dark sky, where its parts are closed: a pad without
// snow at 80° north from 1 November on, seven days of 8 °C, three of 2 °C, and frost of -10 °C.
func seasonRuns() []Check {
	p := season.Default().Pad()
	p.Exchange, p.WaterLoss, p.IceExchange, p.WaterHeat = 20, 0, 20, 0
	lake := season.Lake{Latitude: 80, MeanDepth: 4}
	var days []season.Day
	for i := range 60 {
		t := -10.0
		switch {
		case i < 7:
			t = 8
		case i < 10:
			t = 2
		}
		days = append(days, season.Day{Date: time.Date(2030, time.November, 1+i, 0, 0, 0, 0, time.UTC), Mean: t})
	}
	run := func(of func([]season.State) float64) func() (float64, error) {
		return func() (float64, error) {
			s, err := season.Run(lake, p, days)
			if err != nil {
				return 0, err
			}
			return of(s), nil
		}
	}
	// The last twenty days once more, from the state before them.
	again := func(of func([]season.State) float64) func() (float64, error) {
		return func() (float64, error) {
			m, err := season.New(lake, p)
			if err != nil {
				return 0, err
			}
			s, err := m.Run(days[:40])
			if err != nil {
				return 0, err
			}
			last := s[len(s)-1]
			if s, err = m.Continue(last, days[40:]); err != nil {
				return 0, err
			}
			return of(append([]season.State{last}, s...)), nil
		}
	}
	// (h + k/H)² grows by 2kS/(ρL), whatever the day on which the lake closed.
	grown := func(s []season.State) float64 {
		const c = 2.24 / 20
		a, b := s[len(s)-21].Total()+c, s[len(s)-1].Total()+c
		return b*b - a*a
	}
	frost := func(s []season.State) float64 { return s[len(s)-1].FrostDays - s[len(s)-21].FrostDays }
	closed := independent("Square-root growth and a mixed lake that cools, 50 digits", "(h + k/H)² + 2kS/(ρL) with S = 200 °C·day, k = 2.24, ρ = 917, L = 334 kJ/kg; T + (W - T) exp(-H t/(ρ c D)), 20 W/(m² K), 4186 J/(kg K), 4 m")
	out := share("ice/season", closed, 1e-11,
		one{"growth of the squared thickness in twenty days of -10 °C", "0.252758604927549", "m²", run(grown)},
		one{"the same, gone on from a state", "0.252758604927549", "m²", again(grown)},
		one{"water after three days of 2 °C", "6.40242721759821", "°C", run(func(s []season.State) float64 { return s[9].Water })},
	)
	return append(out, share("ice/season", exactly("Days of frost", "twenty of -10 °C"), 1e-12,
		one{"frost of twenty days", "200", "°C day", run(frost)},
		one{"frost of twenty days, gone on from a state", "200", "°C day", again(frost)},
	)...)
}
