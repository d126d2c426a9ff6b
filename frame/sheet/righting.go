package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

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
	desc := fmt.Sprintf("The righting moment over the heel. Its greatest value is %s at %s.", measure.Moment.Format(r.Rights[top], r.Units), measure.Angle.Format(r.Heel[top], r.Units))
	var notes []string
	if len(heels) > 0 {
		if r.Rest > 0 {
			notes = append(notes, "Where the curves first cross the dock comes to rest. Under that load, heeled past where they cross again, it turns over.")
		} else {
			notes = append(notes, "Under that load the dock finds no rest.")
		}
		if r.Load != "" {
			notes = append(notes, "Heeling moment: "+svg.Shorten(r.Load, 200, start)+".")
		}
	}
	if r.Rest > 0 {
		desc += " Under the load it rests at " + measure.Angle.Format(r.Rest, r.Units) + "."
	}
	const plot = 58.0
	header := uprightsRoom(2)
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
	var ups []svg.Mark
	if r.Rest > 0 {
		ups = append(ups, svg.Mark{At: r.Rest / degree, Text: "rests at " + measure.Angle.Format(r.Rest, r.Units)})
	}
	if r.DeckWet > 0 {
		ups = append(ups, svg.Mark{At: r.DeckWet / degree, Text: "deck edge under at " + measure.Angle.Format(r.DeckWet, r.Units)})
	}
	c.uprights(p, ups)
	c.Leader(p.At(deg[top], rights[top]), 6, "righting moment", small)
	if len(heels) > 0 {
		k := len(deg) * 4 / 5
		c.Leader(p.At(deg[k], heels[k]), 5, "heeling moment", small)
	}
	return c.picture()
}

// uprights marks values of x with their texts over the axes: in one row where
// they have room beside each other, else one under the other from the left, so
// that no line runs through a text that is not its own.
func (c *canvas) uprights(p *svg.Plot, ups []svg.Mark) {
	slices.SortStableFunc(ups, func(a, b svg.Mark) int { return cmp.Compare(a.At, b.At) })
	b := p.Box()
	var at, size []float64
	for _, u := range ups {
		p.Upright(u.At, svg.Hidden)
		at, size = append(at, p.At(u.At, 0).X), append(size, svg.Width(u.Text, small)+3)
	}
	moved, ok := svg.Spread(at, size, 0, c.w)
	for i, u := range ups {
		y := b.Y0 - 5.5 - row*1.5
		if !ok {
			y -= row * float64(len(ups)-1-i)
			half := size[i]/2 - 1
			moved[i] = min(at[i]+half, c.w-half)
		}
		bend := y + row/2 + 1.2
		if !ok {
			bend = y + row/2
			c.Polyline(svg.Dimension, pt(at[i], b.Y0), pt(at[i], bend))
		} else {
			c.Polyline(svg.Dimension, pt(at[i], b.Y0), pt(at[i], bend), pt(moved[i], y+row/2))
		}
		c.Place(u.Text, svg.Spot{At: pt(moved[i], y), Style: small})
	}
}

// uprightsRoom is the height that the texts of so many uprights may take.
func uprightsRoom(n int) float64 { return 5.5 + row*float64(max(n, 1)+1) }
