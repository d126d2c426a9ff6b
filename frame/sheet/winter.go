package sheet

import (
	"fmt"
	"math"
	"strconv"
	"time"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Winter is the thickness of the ice day by day, as past winters had it, and
// the share of them that had at least a thickness that a rule asks for.
// Thicknesses are in metres. It is a record of the past and no forecast.
type Winter struct {
	Units  measure.System
	First  time.Time // the first day; its time of day is dropped
	Thin   []float64 // day by day: a thickness that most winters had
	Middle []float64 // the middle one
	Thick  []float64 // one that few winters passed
	Band   string    // what thin and thick are: "9 and 1 winters in 10"
	Asked  []Asked
	Holes  []Drilled // what was measured this winter
	Marks  []Day     // days to point out
}

// An Asked is a thickness that a rule asks for and, day by day, the share of
// past winters that had it.
type Asked struct {
	Name  string    // "two people" and whose rule
	Thick float64   // m
	Odds  []float64 // shares, 0 to 1; empty is not drawn
}

// A Drilled is a hole drilled in the ice.
type Drilled struct {
	When  time.Time
	Thick float64 // m
}

// A Day is a day with a name: "assembly", "break-up, middle of the record".
type Day struct {
	When time.Time
	Name string
}

const dayLong = 24 * time.Hour

// day returns how many days after the first one a time lies.
func (w Winter) day(t time.Time) float64 {
	date := func(t time.Time) time.Time {
		y, m, d := t.Date()
		return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
	}
	return float64(date(t).Sub(date(w.First)) / dayLong)
}

func (w Winter) check() error {
	var g gate
	n := len(w.Middle)
	g.count("Winter.Middle", n, 2, 400)
	if g.err == nil {
		g.count("Winter.Thin", len(w.Thin), n, n)
		g.count("Winter.Thick", len(w.Thick), n, n)
	}
	g.in(depths, "Winter.Thin", w.Thin...)
	g.in(depths, "Winter.Middle", w.Middle...)
	g.in(depths, "Winter.Thick", w.Thick...)
	for i := range w.Middle {
		if g.err == nil && !(w.Thin[i] <= w.Middle[i] && w.Middle[i] <= w.Thick[i]) {
			g.err = &measure.Error{
				Field: fmt.Sprintf("Winter.Middle[%d]", i), Class: measure.ErrRange, Kind: measure.Length, Value: w.Middle[i],
				Range: measure.Range{Kind: measure.Length, Lo: w.Thin[i], Hi: w.Thick[i]},
			}
		}
	}
	for i, a := range w.Asked {
		g.in(depths, fmt.Sprintf("Winter.Asked[%d].Thick", i), a.Thick)
		g.in(shares, fmt.Sprintf("Winter.Asked[%d].Odds", i), a.Odds...)
		if g.err == nil && len(a.Odds) > 0 {
			g.count(fmt.Sprintf("Winter.Asked[%d].Odds", i), len(a.Odds), n, n)
		}
	}
	days := measure.Range{Lo: 0, Hi: float64(n - 1), Source: srcPicture}
	for i, h := range w.Holes {
		g.in(days, fmt.Sprintf("days from Winter.First to Holes[%d]", i), w.day(h.When))
		g.in(depths, fmt.Sprintf("Winter.Holes[%d].Thick", i), h.Thick)
	}
	for i, m := range w.Marks {
		g.in(days, fmt.Sprintf("days from Winter.First to Marks[%d]", i), w.day(m.When))
	}
	g.count("Winter.Asked", len(w.Asked), 0, 6)
	g.count("Winter.Holes", len(w.Holes), 0, 200)
	g.count("Winter.Marks", len(w.Marks), 0, 4)
	return g.err
}

// months returns a tick at the first of each month.
func (w Winter) months() []svg.Tick {
	var out []svg.Tick
	for i := range w.Middle {
		if t := w.First.AddDate(0, 0, i); t.Day() == 1 {
			out = append(out, svg.Tick{At: float64(i), Text: t.Format("2 Jan")})
		}
	}
	return out
}

// Draw draws thickness and odds one over the other, on the same days.
func (w Winter) Draw() (Picture, error) {
	if err := w.check(); err != nil {
		return Picture{}, err
	}
	scale, unit, step := measure.Inch, "in", 1.0
	if w.Units != measure.US {
		scale, unit, step = 0.01, "cm", 2.5
	}
	scaled := func(xs []float64) (out []float64) {
		for _, x := range xs {
			out = append(out, x/scale)
		}
		return out
	}
	thin, middle, thick := scaled(w.Thin), scaled(w.Middle), scaled(w.Thick)
	_, most := span(thick)
	for _, a := range w.Asked {
		most = max(most, a.Thick/scale)
	}
	for _, h := range w.Holes {
		most = max(most, h.Thick/scale)
	}
	most = max(step, most*1.1)
	var days []float64
	odds := false
	for i := range middle {
		days = append(days, float64(i))
	}
	for _, a := range w.Asked {
		odds = odds || len(a.Odds) > 0
	}

	const upper, lower = 46.0, 28.0
	const below = svg.PlotBelow - 5 // the days need no title
	head := uprightsRoom(len(w.Marks))
	h := head + upper + below
	if odds {
		h += svg.PlotAbove + lower + below
	}
	notes := []string{"Past winters, no forecast. Ice differs within a few steps: drill where you walk, every day."}
	if w.Band != "" {
		notes = append(notes, "Grey: between "+w.Band+". Thick line: the middle winter.")
	}
	if len(w.Holes) > 0 {
		notes = append(notes, "Rings: holes drilled this winter.")
	}
	for i, a := range w.Asked {
		notes = append(notes, fmt.Sprintf("%s: %s, %s.", letter(i), svg.Shorten(a.Name, 200, start), asked(a.Thick, w.Units)))
	}
	top := 0
	for i, x := range middle {
		if x > middle[top] {
			top = i
		}
	}
	desc := fmt.Sprintf("Ice thickness from %s on over %d days of past winters. The middle winter had its thickest ice, %s, on %s.",
		w.First.Format("2 January"), len(days), thickness(w.Middle[top], w.Units), w.First.AddDate(0, 0, top).Format("2 January"))
	c := begin("winter", "Ice through the winter", desc, w.Units, wide, h, notes...)

	b := svg.Box{X0: svg.PlotLeft, Y0: titleRow + head, X1: wide - 24, Y1: titleRow + head + upper}
	axis := svg.Axis{Hi: float64(len(days) - 1), Ticks: w.months()}
	p := c.Plot(b, axis, svg.Axis{Hi: most, Ticks: svg.Ticks(0, most, 6), Title: "ice, " + unit})
	p.Band(days, thin, thick, filled(svg.Dimension, svg.Pale))
	p.Curve(days, middle, svg.Curve)
	var ups []svg.Mark
	for _, m := range w.Marks {
		ups = append(ups, svg.Mark{At: w.day(m.When), Text: svg.Shorten(m.Name+", "+m.When.Format("2 Jan 2006"), 80, small)})
	}
	c.uprights(p, ups)
	for _, h := range w.Holes {
		at := p.At(w.day(h.When), h.Thick/scale)
		c.Circle(at, 0.9, filled(svg.Outline, svg.White))
		c.Block(svg.Box{X0: at.X - 1, Y0: at.Y - 1, X1: at.X + 1, Y1: at.Y + 1})
	}
	for _, a := range w.Asked {
		p.Level(a.Thick/scale, svg.Hidden)
	}
	c.askedKeys(w, b, func(x float64) float64 { return p.At(0, x/scale).Y })
	if odds {
		y := b.Y1 + below + svg.PlotAbove
		w.odds(c, svg.Box{X0: b.X0, Y0: y, X1: b.X1, Y1: y + lower}, axis, days)
	}
	return c.picture()
}

// askedKeys writes letter and thickness of what is asked for beside the axes.
func (c *canvas) askedKeys(w Winter, b svg.Box, height func(float64) float64) {
	var keys []svg.Mark
	for i, a := range w.Asked {
		keys = append(keys, svg.Mark{At: height(a.Thick), Text: letter(i) + " " + asked(a.Thick, w.Units)})
	}
	c.RunningY(keys, b.X1, b.X1+5, b.Y0-1, b.Y1+1, small)
}

// asked prints a thickness that a rule asks for, likewise, but never less.
func asked(x float64, units measure.System) string {
	step := 0.005
	if units == measure.US {
		step = measure.Inch / 4
	}
	return thickness(math.Ceil(x/step-1e-6)*step, units)
}

// thickness prints the thickness of ice: quarters of an inch, or half
// centimetres.
func thickness(x float64, units measure.System) string {
	if units == measure.US {
		return strconv.FormatFloat(math.Round(4*x/measure.Inch)/4, 'f', -1, 64) + " in"
	}
	return strconv.FormatFloat(math.Round(200*x)/2, 'f', -1, 64) + " cm"
}

// odds draws the shares of past winters under the thickness.
func (w Winter) odds(c *canvas, b svg.Box, x svg.Axis, days []float64) {
	q := c.Plot(b, x, svg.Axis{Hi: 1.02, Ticks: []svg.Tick{{At: 0, Text: "0"}, {At: 0.25, Text: "25"}, {At: 0.5, Text: "50"}, {At: 0.75, Text: "75"}, {At: 1, Text: "100"}}, Title: "winters of 100 that had it"})
	pens := []svg.Weight{svg.Curve, svg.Hidden, svg.Centre, svg.Phantom, svg.Outline, svg.Dimension}
	for i, a := range w.Asked {
		if len(a.Odds) > 0 {
			q.Curve(days, a.Odds, pens[i])
		}
	}
	for i, a := range w.Asked {
		if len(a.Odds) == 0 {
			continue
		}
		// The letter stands where the curve first passes the half, or at its top.
		k := 0
		for j, o := range a.Odds {
			if o > a.Odds[k] {
				k = j
			}
			if o >= 0.5 {
				k = j
				break
			}
		}
		at := q.At(float64(k), math.Min(a.Odds[k], 0.5))
		c.Leader(at, 4, letter(i), bold)
	}
}
