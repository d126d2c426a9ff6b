package season_test

import (
	"context"
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"example.org/floewright/ice/season"
)

var dataDir = flag.String("season-data", "", "folder with the open records of lake ice that the model is measured on")

// A place is one lake's record and the first winter that no fit may see.
type place struct {
	name  string
	lake  season.Lake
	days  []season.Day
	seen  season.Seen
	split int
	from  int // first winter of holes that a fit sees

	aims []aim // what simpler methods reached on the same winters
}

// An aim is the mean absolute error, in days or cm, that an independent program
// reached on winters it was not fitted to: the best of degree-days, regression
// on mean temperature, and half-month means.
type aim struct {
	name  string
	limit float64
	of    func(score) float64
}

func aims(on, out, length, thick float64) []aim {
	return []aim{
		{"ice-on", on, func(s score) float64 { return s.on.MAE }},
		{"ice-out", out, func(s score) float64 { return s.out.MAE }},
		{"duration", length, func(s score) float64 { return s.length.MAE }},
		{"thickness", thick, func(s score) float64 {
			if s.thick.N == 0 {
				return 0
			}
			return 100 * s.thick.MAE
		}},
	}
}

func table(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join(*dataDir, name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

func day(s string) time.Time {
	d, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return time.Time{}
	}
	return d
}

func number(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// mendota returns Lake Mendota with the air of Madison. Mean depth 12.8 m.
func mendota(t *testing.T) place {
	p := place{name: "Mendota", lake: season.Lake{Latitude: 43.1, MeanDepth: 12.8}, split: 1959, aims: aims(4.1, 5.8, 7.5, 1)}
	for _, r := range table(t, "madison_airtemp.csv") {
		if d := day(r[0]); d.Year() >= 1884 {
			p.days = append(p.days, season.Day{Date: d, Mean: number(r[1])})
		}
	}
	for _, r := range table(t, "mendota_ice_dates.csv") {
		y, _ := strconv.Atoi(r[0][:4])
		if y >= 1884 && y < 2019 && y != 1959 {
			p.seen.Winters = append(p.seen.Winters, season.Winter{Year: y, On: day(r[2]), Out: day(r[3])})
		}
	}
	p.seen.HalfLife = 20
	return p
}

// kilpisjarvi returns Lake Kilpisjärvi with the air, snow and rain of a
// reanalysis, which is sounder from 1979 on. Mean depth 19.5 m.
func kilpisjarvi(t *testing.T) place {
	p := place{name: "Kilpisjärvi", lake: season.Lake{Latitude: 69.05, MeanDepth: 19.5}, split: 1988, from: 1978, aims: aims(3.2, 3.6, 100, 6.8)}
	for _, r := range table(t, "finland_kilpisjarvi_daily.csv") {
		snow := number(r[3])
		p.days = append(p.days, season.Day{
			Date: day(r[0]), Mean: number(r[1]), Snowfall: snow, Rain: math.Max(0, number(r[2])-snow),
			Has: season.HasSnowfall | season.HasRain,
		})
	}
	for _, r := range table(t, "kilpisjarvi_ice_dates.csv") {
		if y, _ := strconv.Atoi(r[5][:4]); y >= 1964 {
			p.seen.Winters = append(p.seen.Winters, season.Winter{Year: y, On: day(r[6]), Out: day(r[7])})
		}
	}
	for _, r := range table(t, "kilpisjarvi_ice_thickness.csv") {
		p.seen.Holes = append(p.seen.Holes, season.Hole{Date: day(r[1]), Clear: number(r[2]), Whole: true})
	}
	p.seen.HalfLife = 12
	return p
}

func winterOf(d time.Time) int { return d.AddDate(0, -8, 0).Year() }

// first returns what a fit may see.
func (p place) first() season.Seen {
	s := season.Seen{HalfLife: p.seen.HalfLife}
	for _, w := range p.seen.Winters {
		if w.Year < p.split {
			s.Winters = append(s.Winters, w)
		}
	}
	for _, h := range p.seen.Holes {
		if y := winterOf(h.Date); y < p.split && y >= p.from {
			s.Holes = append(s.Holes, h)
		}
	}
	return s
}

// A score is the misfit on winters from the split on.
type score struct{ on, out, length, thick season.Misfit }

type sums struct{ n, bias, abs, square float64 }

func (s *sums) add(x float64) { s.n++; s.bias += x; s.abs += math.Abs(x); s.square += x * x }

func (s sums) misfit() season.Misfit {
	return season.Misfit{N: int(s.n), Bias: s.bias / s.n, MAE: s.abs / s.n, SD: math.Sqrt(s.square / s.n)}
}

func days(a, b time.Time) float64 { return math.Round(a.Sub(b).Hours() / 24) }

// measured scores a set on the winters that no fit saw.
func (p place) measured(t *testing.T, params season.Params, usual season.Usual) score {
	m, err := season.New(p.lake, params)
	if err != nil {
		t.Fatal(err)
	}
	states, err := m.Run(p.days)
	if err != nil {
		t.Fatal(err)
	}
	model := map[int]season.Winter{}
	for _, w := range m.Winters(states) {
		model[w.Year] = w
	}
	var on, out, length, thick sums
	for _, w := range p.seen.Winters {
		if w.Year < p.split {
			continue
		}
		g := model[w.Year]
		if g.On.IsZero() {
			t.Errorf("%s: no ice in winter %d", p.name, w.Year)
			continue
		}
		on.add(days(g.On, w.On))
		if !w.Out.IsZero() {
			out.add(days(g.Out, w.Out))
			length.add(days(g.Out, g.On) - days(w.Out, w.On))
		}
	}
	for _, h := range p.seen.Holes {
		if winterOf(h.Date) < p.split {
			continue
		}
		thick.add(usual.Of(states[int(days(h.Date, states[0].Date))]) - h.Clear)
	}
	return score{on.misfit(), out.misfit(), length.misfit(), thick.misfit()}
}

func (s score) log(t *testing.T, who string) {
	line := func(name string, m season.Misfit, unit float64, u string) {
		if m.N > 0 {
			t.Logf("%-30s %-10s n %3d  mean absolute %5.2f %s  mean %+5.2f %s", who, name, m.N, m.MAE*unit, u, m.Bias*unit, u)
		}
	}
	line("ice-on", s.on, 1, "d")
	line("ice-out", s.out, 1, "d")
	line("duration", s.length, 1, "d")
	line("thickness", s.thick, 100, "cm")
}

// TestSeasonData measures the model on open records. Nothing of them is part of
// the library; without the flag there is nothing to measure.
func TestSeasonData(t *testing.T) {
	if *dataDir == "" {
		t.Skip("no records of lake ice: give their folder as -season-data=DIR")
	}
	for _, p := range []place{mendota(t), kilpisjarvi(t)} {
		p.measured(t, season.Default(), season.Usual{Weight: 1}).log(t, p.name+", default set")
		f, err := season.Fit(context.Background(), p.lake, season.Default(), p.days, p.first())
		if err != nil {
			t.Fatal(err)
		}
		s := p.measured(t, f.Params, f.Usual)
		s.log(t, p.name+", fitted")
		t.Logf("%s: weight of the model's own winter %.2f", p.name, f.Usual.Weight)
		p.holes(t, f)
		for _, n := range []int{10, 30} {
			p.spread(t, n)
		}
		for _, w := range p.aims {
			if got := w.of(s); !(got < w.limit) {
				t.Errorf("%s, fitted: %s %.2f, to beat: %.2f", p.name, w.name, got, w.limit)
			}
		}
		if s.thick.N > 0 && s.thick.Bias > 0 {
			t.Errorf("%s, fitted: thickness %.1f cm too much on average", p.name, 100*s.thick.Bias)
		}
	}
}

// holes measures what the first three holes of a winter do for the forecast of
// the later ones, beside the fitted model alone and last year's holes.
func (p place) holes(t *testing.T, f season.Fitted) {
	if len(p.seen.Holes) == 0 {
		return
	}
	m, err := season.New(p.lake, f.Params)
	if err != nil {
		t.Fatal(err)
	}
	by := map[int][]season.Hole{}
	for _, h := range p.seen.Holes {
		if mo := h.Date.Month(); mo <= time.May || mo >= time.September {
			by[winterOf(h.Date)] = append(by[winterOf(h.Date)], h)
		}
	}
	var corrected, model, habit, inside sums
	for year := p.split; year < 2023; year++ {
		holes := by[year]
		if len(holes) < 6 {
			continue
		}
		a := int(days(time.Date(year, 9, 1, 0, 0, 0, 0, time.UTC), p.days[0].Date))
		part := p.days[a : a+300]
		c, err := m.Correct(part, holes[:3])
		if err != nil {
			t.Fatal(err)
		}
		for _, h := range holes[3:] {
			last, ok := season.Between(by[year-1], h.Date.AddDate(-1, 0, 0))
			if !ok {
				continue
			}
			e := c.Days[int(days(h.Date, part[0].Date))]
			plain, err := m.Run(part)
			if err != nil {
				t.Fatal(err)
			}
			corrected.add(e.Total() - h.Clear)
			model.add(plain[int(days(h.Date, part[0].Date))].Total() - h.Clear)
			habit.add(last - h.Clear)
			in := 0.0
			if math.Abs(e.Total()-h.Clear) < 1.28*math.Hypot(e.SD, 0.04) {
				in = 1
			}
			inside.add(in)
		}
	}
	for _, l := range []struct {
		name string
		s    sums
	}{{"after three holes", corrected}, {"the fitted model alone", model}, {"last year's holes", habit}} {
		g := l.s.misfit()
		t.Logf("%-30s %-10s n %3d  mean absolute %5.2f cm  mean %+5.2f cm", p.name+", "+l.name, "later holes", g.N, 100*g.MAE, 100*g.Bias)
	}
	t.Logf("%s: %.0f %% of later holes lie in the band that should hold 80 %%", p.name, 100*inside.misfit().Bias)
	if !(corrected.abs < model.abs && corrected.abs < habit.abs) {
		t.Errorf("%s: three holes do not beat the model and last year's habit", p.name)
	}
}

// spread measures how often ice-on and ice-out of a winter fell between the dates of
// which ten winters before it made them one in ten and nine in ten, by the default set:
// eight times in ten, if the odds are honest.
func (p place) spread(t *testing.T, n int) {
	m, err := season.New(p.lake, season.Default())
	if err != nil {
		t.Fatal(err)
	}
	inside, early, wide := map[string]*sums{"ice-on": {}, "ice-out": {}}, map[string]*sums{"ice-on": {}, "ice-out": {}}, map[string]*sums{"ice-on": {}, "ice-out": {}}
	for _, w := range p.seen.Winters {
		at := func(year int) int {
			return int(days(time.Date(year, 9, 1, 0, 0, 0, 0, time.UTC), p.days[0].Date))
		}
		if w.Year < p.split || at(w.Year-n) < 0 || at(w.Year) >= len(p.days) {
			continue
		}
		o, err := m.Odds(context.Background(), nil, p.days[at(w.Year-n):at(w.Year)], season.Question{Need: 0.2})
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range []struct {
			name string
			was  time.Time
			s    season.Span
		}{{"ice-on", w.On, o.On}, {"ice-out", w.Out, o.Out}} {
			if d.was.IsZero() {
				continue
			}
			in := 0.0
			if !d.was.Before(d.s.P10) && !d.was.After(d.s.P90) {
				in = 1
			}
			inside[d.name].add(in)
			before := 0.0
			if d.was.Before(d.s.P10) {
				before = 1
			}
			early[d.name].add(before)
			wide[d.name].add(days(d.s.P90, d.s.P10))
		}
	}
	for _, name := range []string{"ice-on", "ice-out"} {
		g := inside[name].misfit()
		t.Logf("%-30s %-10s n %3d  %.0f %% between the dates of one and nine in ten, %.0f %% before, the dates %.0f d apart", fmt.Sprintf("%s, odds of %d winters", p.name, n), name, g.N, 100*g.Bias, 100*early[name].misfit().Bias, wide[name].misfit().Bias)
		if !(g.Bias > 0.65) {
			t.Errorf("%s: odds of %d winters: %.0f %% of %s between the dates that should hold 80 %%", p.name, n, 100*g.Bias, name)
		}
	}
}
