package sheet

import (
	"fmt"
	"math"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Righting is the moment with which the floats turn the dock back, by its
// heel, and the moment with which people heel it. Angles are in radians and
// moments in newton metres.
type Righting struct {
	Units   measure.System
	Heel    []float64 // from 0 on, rising
	Rights  []float64 // righting moment at each heel
	Heels   []float64 // heeling moment at each heel; empty is not drawn
	Rest    float64   // the heel at which it rests under that moment; 0 is not marked
	DeckWet float64   // the heel at which a deck edge goes under; 0 is not marked
	Load    string    // what heels it, in words
}

func (r Righting) check() error {
	var g gate
	g.count("Righting.Heel", len(r.Heel), 2, 2000)
	g.in(turns, "Righting.Heel", r.Heel...)
	g.rise("Righting.Heel", r.Heel)
	g.in(moments, "Righting.Rights", r.Rights...)
	g.in(moments, "Righting.Heels", r.Heels...)
	g.in(turns, "Righting.Rest", r.Rest)
	g.in(turns, "Righting.DeckWet", r.DeckWet)
	if g.err == nil && len(r.Rights) != len(r.Heel) {
		g.count("Righting.Rights", len(r.Rights), len(r.Heel), len(r.Heel))
	}
	if g.err == nil && len(r.Heels) != len(r.Heel) && len(r.Heels) > 0 {
		g.count("Righting.Heels", len(r.Heels), len(r.Heel), len(r.Heel))
	}
	return g.err
}

const degree = math.Pi / 180

// Draw draws both moments over the heel.
func (r Righting) Draw() (Picture, error) {
	if err := r.check(); err != nil {
		return Picture{}, err
	}
	scaled := func(xs []float64) (out []float64) {
		for _, x := range xs {
			y, _ := inMoment(x, r.Units)
			out = append(out, y)
		}
		return out
	}
	rights, heels := scaled(r.Rights), scaled(r.Heels)
	_, unit := inMoment(0, r.Units)
	var deg []float64
	for _, a := range r.Heel {
		deg = append(deg, a/degree)
	}
	lo, hi := span(rights, heels)
	if lo == hi {
		hi = 1
	}
	top := 0
	for i, x := range rights {
		if x > rights[top] {
			top = i
		}
	}
	desc := fmt.Sprintf("The righting moment over the heel. Its greatest value is %s at %s.", measure.Moment.Print(r.Rights[top], r.Units), measure.Angle.Print(r.Heel[top], r.Units))
	var notes []string
	if len(heels) > 0 {
		notes = append(notes, "Where the curves cross the dock comes to rest. Past the top of the thick curve it turns over.")
	}
	if r.Rest > 0 {
		desc += " Under the load it rests at " + measure.Angle.Print(r.Rest, r.Units) + "."
	}
	const plot = 58.0
	const header = 2*4 + svg.PlotAbove // two rows for the texts of the uprights
	c := begin("righting", "Righting curve", desc, r.Units, wide, plot+header+svg.PlotBelow, notes...)
	b := svg.Box{X0: svg.PlotLeft + 2, Y0: titleRow + header, X1: wide - 3, Y1: titleRow + header + plot}
	most := max(deg[len(deg)-1], r.Rest/degree, r.DeckWet/degree)
	p := c.Plot(b, svg.Axis{Hi: most, Ticks: svg.Ticks(0, most, 9), Title: "heel, deg"},
		svg.Axis{Lo: lo, Hi: hi * 1.08, Ticks: svg.Ticks(lo, hi*1.08, 6), Title: "moment, " + unit})
	if lo < 0 {
		p.Level(0, svg.Dimension)
	}
	p.Curve(deg, rights, svg.Curve)
	if len(heels) > 0 {
		p.Curve(deg, heels, svg.Outline)
	}
	for i, u := range []struct {
		at   float64
		text string
	}{{r.Rest, "rests at "}, {r.DeckWet, "deck edge under at "}} {
		if u.at > 0 {
			c.upright(p, u.at/degree, u.text+measure.Angle.Print(u.at, r.Units), i)
		}
	}
	c.Leader(p.At(deg[top], rights[top]), 6, "righting moment", small)
	if len(heels) > 0 {
		k := len(deg) * 4 / 5
		text := "heeling moment"
		if r.Load != "" {
			text += ": " + r.Load
		}
		c.Leader(p.At(deg[k], heels[k]), 5, svg.Shorten(text, 70, small), small)
	}
	return c.picture()
}

// upright marks a value of x over the axes, in one of the rows above them.
func (c *canvas) upright(p *svg.Plot, x float64, text string, i int) {
	b := p.Box()
	at := p.At(x, 0)
	y := b.Y0 - 2 - row*(float64(i)+0.5)
	p.Upright(x, svg.Hidden)
	c.Line(pt(at.X, y+row/2), pt(at.X, b.Y0), svg.Dimension)
	c.Place(text, svg.Spot{At: pt(at.X, y), Style: small}, svg.Spot{At: pt(at.X+1, y), Style: start}, svg.Spot{At: pt(at.X-1, y), Style: end})
}
