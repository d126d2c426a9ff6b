package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Lines is the dock at its mooring from the side, at several water levels.
// Lengths are in metres; x runs along the dock from one end, y across it, heights
// count from the water level the plan was made at, up.
type Lines struct {
	Units  measure.System
	Length float64 // of the dock
	Deck   float64 // height of the deck over the water
	Draft  float64 // of the floats
	Bed    float64 // depth of the lake bed under the plan's level
	Levels []Level // low, today's, high water: from the lowest up
	Ties   []Tie
}

// A Level is a water level against the plan's, and its name.
type Level struct {
	Name string
	Rise float64 // m
}

// A Tie is a straight line from the dock to a fixed point, in m.
type Tie struct {
	Name             string
	X, Y, Over       float64 // where it leaves the dock; Over counts from the water
	FarX, FarY, FarZ float64 // the fixed point; FarZ counts as the heights do
	Spare            float64 // length kept in hand, m
	Made             float64 // length of the line as it is made, m; 0 is not known
}

// At returns the length of the line at a water level, in metres: straight (geometry),
// with what is kept in hand.
func (t Tie) At(l Level) float64 {
	return math.Sqrt((t.FarX-t.X)*(t.FarX-t.X)+(t.FarY-t.Y)*(t.FarY-t.Y)+(t.FarZ-t.Over-l.Rise)*(t.FarZ-t.Over-l.Rise)) + t.Spare
}

func (l Lines) check() error {
	var g gate
	g.in(lengths, "Lines.Length", l.Length)
	g.in(depths, "Lines.Deck", l.Deck)
	g.in(depths, "Lines.Draft", l.Draft)
	g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: 200, Source: srcPicture}, "Lines.Bed", l.Bed)
	g.count("Lines.Levels", len(l.Levels), 1, 4)
	g.count("Lines.Ties", len(l.Ties), 0, 16)
	near := measure.Range{Kind: measure.Length, Lo: -500, Hi: 500, Source: srcPicture}
	for i, v := range l.Levels {
		g.in(near, fmt.Sprintf("Lines.Levels[%d]", i), v.Rise)
	}
	for i, t := range l.Ties {
		g.in(near, fmt.Sprintf("Lines.Ties[%d]", i), t.X, t.Y, t.Over, t.FarX, t.FarY, t.FarZ)
		g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: 500, Source: srcPicture}, fmt.Sprintf("Lines.Ties[%d].Spare", i), t.Spare)
		g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: 500, Source: srcPicture}, fmt.Sprintf("Lines.Ties[%d].Made", i), t.Made)
	}
	return g.err
}

// Draw draws the dock at each level, the lines straight, and writes each line's
// length at each level under the drawing.
func (l Lines) Draw() (Picture, error) {
	if err := l.check(); err != nil {
		return Picture{}, err
	}
	xs := []float64{l.Length}
	zs := []float64{-l.Bed}
	for _, v := range l.Levels {
		zs = append(zs, v.Rise+l.Deck, v.Rise-l.Draft)
	}
	for _, t := range l.Ties {
		xs = append(xs, t.X, t.FarX)
		zs = append(zs, t.FarZ)
	}
	x0, x1 := span(xs)
	z0, z1 := span(zs)
	// Heights are drawn larger where the lines run far and flat.
	const left, right = 8.0, 36.0
	across := wide - left - right
	scale := across / (x1 - x0)
	tall := min(60, max(30, scale*(z1-z0)))
	up := tall / (z1 - z0)
	at := func(x, z float64) svg.Point { return pt(left+scale*(x-x0), titleRow+5+up*(z1-z)) }

	table := l.table()
	desc := fmt.Sprintf("The dock from the side at %s, with %s to fixed points.", count(len(l.Levels), "water level"), count(len(l.Ties), "line"))
	note := "Lengths from point to point, straight"
	if slices.ContainsFunc(l.Ties, func(t Tie) bool { return t.Spare > 0 }) {
		note += ", with what is kept in hand"
	}
	note += ". "
	if math.Abs(up/scale-1) > 0.02 {
		note += "Heights and lengths are drawn to different scales."
	} else {
		note += "Heights and lengths are drawn to one scale."
	}
	notes := []string{note}
	if s := l.short(); s != "" {
		notes = append(notes, s)
	}
	h := tall + 9
	c := begin("lines", "Lines at low and high water", desc, l.Units, wide, h+row*1.2*float64(len(table))+2, notes...)
	c.table(table, titleRow+h)
	c.Block(svg.Box{Y0: titleRow + h, X1: wide, Y1: c.h})
	pens := []svg.Weight{svg.Phantom, svg.Outline, svg.Hidden, svg.Dimension}
	var list []callout
	for i, v := range l.Levels {
		pen := pens[i]
		hull := svg.Box{X0: at(0, 0).X, Y0: at(0, v.Rise+l.Deck).Y, X1: at(l.Length, 0).X, Y1: at(0, v.Rise-l.Draft).Y}
		c.Rect(hull, line(pen))
		surface := at(x1, v.Rise)
		c.Line(pt(left, surface.Y), pt(surface.X+3, surface.Y), svg.Dimension)
		c.BlockLine(pt(left, surface.Y), pt(surface.X+3, surface.Y))
		c.water(pt(surface.X+1-5*float64(i), surface.Y))
		k := callout{pt(surface.X+3, surface.Y), []string{svg.Shorten(v.Name, right-9, start)}}
		if v.Rise != 0 {
			k.lines = append(k.lines, signed(v.Rise, l.Units))
		}
		list = append(list, k)
		for _, t := range l.Ties {
			c.Line(at(t.X, v.Rise+t.Over), at(t.FarX, t.FarZ), pen)
			c.BlockLine(at(t.X, v.Rise+t.Over), at(t.FarX, t.FarZ))
		}
	}
	bed := at(0, -l.Bed).Y
	c.Line(pt(left, bed), pt(wide-right+3, bed), svg.Outline)
	c.Rect(svg.Box{X0: left, Y0: bed, X1: wide - right + 3, Y1: bed + 2.2}, filled(svg.NoLine, svg.Ground))
	c.Block(svg.Box{X0: left, Y0: bed, X1: wide - right + 3, Y1: bed + 2.2})
	for i, t := range l.Ties {
		c.balloon(at(t.FarX, t.FarZ), letter(i), at(l.Length/2, (z0+z1)/2))
	}
	c.column(wide-right+8, titleRow, titleRow+h, list)
	return c.picture()
}

// short names the lines that are made shorter than the way at a level.
func (l Lines) short() string {
	var out []string
	for i, t := range l.Ties {
		if t.Made > 0 && slices.ContainsFunc(l.Levels, func(v Level) bool { return t.Made < t.At(v) }) {
			out = append(out, letter(i))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return "Shorter as made than the way at one of the levels: " + strings.Join(out, ", ") + "."
}

// signed prints a rise with its sign.
func signed(x float64, units measure.System) string {
	if x > 0 {
		return "+" + level(x, units)
	}
	return level(x, units)
}

// paid prints the length of a line: nobody pays out ten feet of it to the quarter of
// an inch.
func paid(x float64, units measure.System) string {
	if units == measure.US && x >= 10*measure.Foot {
		return measure.FeetInches(x, 1)
	}
	return level(x, units)
}

// table returns the rows under the drawing: a head, then each line's name and
// its lengths.
func (l Lines) table() [][]string {
	if len(l.Ties) == 0 {
		return nil
	}
	head := []string{"line"}
	for _, v := range l.Levels {
		head = append(head, v.Name)
	}
	made := slices.ContainsFunc(l.Ties, func(t Tie) bool { return t.Made > 0 })
	if made {
		head = append(head, "as made")
	}
	out := [][]string{head}
	for i, t := range l.Ties {
		r := []string{letter(i) + ": " + t.Name}
		for _, v := range l.Levels {
			r = append(r, paid(t.At(v), l.Units))
		}
		switch {
		case t.Made > 0:
			r = append(r, paid(t.Made, l.Units))
		case made:
			r = append(r, "not known")
		}
		out = append(out, r)
	}
	return out
}

// table writes rows in columns of equal width, the first one wider.
func (c *canvas) table(rows [][]string, y float64) {
	if len(rows) == 0 {
		return
	}
	// The columns take what they need, the names the rest.
	rest, columns := 0.0, float64(len(rows[0])-1)
	for i, r := range rows {
		o := start
		o.Bold = i == 0
		for _, s := range r[1:] {
			rest = max(rest, svg.Width(s, o)+1.5)
		}
	}
	rest = min(rest, (c.w-2-24)/columns)
	first := c.w - 2 - rest*columns
	for i, r := range rows {
		o := start
		o.Bold = i == 0
		at := y + row*1.2*(float64(i)+0.5)
		for j, s := range r {
			x, room := 1.0, first-1.5
			if j > 0 {
				x, room = 1+first+rest*float64(j-1), rest-1.5
			}
			c.Text(pt(x, at), svg.Shorten(s, room, o), o)
		}
		c.Line(pt(1, at+row*0.6), pt(c.w-1, at+row*0.6), svg.Dimension)
	}
}
