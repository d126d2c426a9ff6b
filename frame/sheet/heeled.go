package sheet

import (
	"fmt"
	"math"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Heeled is the dock from its end, heeled under people. Lengths are in metres
// and angles in radians; y runs across the dock from its middle, z up from the
// frame's underside.
type Heeled struct {
	Units  measure.System
	Width  float64
	Depth  float64 // of the frame, without the decking
	Deck   float64 // thickness of the decking
	Rim    float64 // how far the rims reach below the frame's underside
	Broad  float64 // of the rims at either side, seen from their ends; 0 where a rim is seen from its side
	Floats []Endwise
	Heel   float64   // positive: the side of positive y down
	Height float64   // of the frame's underside, in its middle, above the water
	People []float64 // where they stand, y
	Load   string    // the load in words: "5 people at one edge, 560 lb"
	Along  bool      // seen from the side: y runs along the dock, and Width is its length
	Sides  [2]string // what lies at the side of negative y and at the other
	From   string    // from where one looks
}

// An Endwise is a float from the end of the dock: its middle and its size, in m.
type Endwise struct {
	Y, Z        float64
	Broad, High float64
	Round       bool // its end is seen: a circle
}

func (e Heeled) check() error {
	var g gate
	g.in(lengths, "Heeled.Width", e.Width)
	g.in(lengths, "Heeled.Depth", e.Depth)
	g.in(lengths, "Heeled.Deck", e.Deck)
	g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: 2, Source: srcPicture}, "Heeled.Rim", e.Rim)
	g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: e.Width / 2, Source: srcPicture}, "Heeled.Broad", e.Broad)
	g.in(angles, "Heeled.Heel", e.Heel)
	near := measure.Range{Kind: measure.Length, Lo: -200, Hi: 200, Source: srcPicture}
	g.in(near, "Heeled.Height", e.Height)
	g.in(near, "Heeled.People", e.People...)
	for i, f := range e.Floats {
		g.in(near, fmt.Sprintf("Heeled.Floats[%d] middle", i), f.Y, f.Z)
		g.in(lengths, fmt.Sprintf("Heeled.Floats[%d] size", i), f.Broad, f.High)
	}
	g.count("Heeled.People", len(e.People), 0, 60)
	g.count("Heeled.Floats", len(e.Floats), 0, 60)
	return g.err
}

// turned returns where a point of the dock lies: across from the point of the
// water under its middle, and above the water.
func (e Heeled) turned(y, z float64) (across, above float64) {
	s, c := math.Sincos(e.Heel)
	return y*c + z*s, e.Height - y*s + z*c
}

// Edges returns the heights of the deck's two edges above the water, both in metres
// and by geometry: on the side of negative y and on that of positive y. Below the
// water they are
// negative. They are 0 for sizes that no dock has: over 10 km.
func (e Heeled) Edges() (negative, positive float64) {
	if !(math.Abs(e.Width)+math.Abs(e.Depth)+math.Abs(e.Deck)+math.Abs(e.Height) <= 1e4) {
		return 0, 0
	}
	_, negative = e.turned(-e.Width/2, e.Depth+e.Deck)
	_, positive = e.turned(e.Width/2, e.Depth+e.Deck)
	return negative, positive
}

const personTall = 1.7 // m, of the figures on the deck

// Draw draws the end view. The heights of both deck edges are the dock's own
// geometry, computed from Heel and Height.
func (e Heeled) Draw() (Picture, error) {
	if err := e.check(); err != nil {
		return Picture{}, err
	}
	deck := e.Depth + e.Deck
	var ys, zs []float64
	take := func(y, z float64) {
		a, b := e.turned(y, z)
		ys, zs = append(ys, a), append(zs, b)
	}
	for _, y := range []float64{-e.Width / 2, e.Width / 2} {
		take(y, -e.Rim)
		take(y, deck)
	}
	for _, f := range e.Floats {
		for _, k := range [][2]float64{{-1, -1}, {-1, 1}, {1, -1}, {1, 1}} {
			take(f.Y+k[0]*f.Broad/2, f.Z+k[1]*f.High/2)
		}
	}
	for _, y := range e.People {
		a, b := e.turned(y, deck)
		ys, zs = append(ys, a), append(zs, b+personTall)
	}
	y0, y1 := span(ys)
	z0, z1 := span(zs)

	const side, top = 27.0, titleRow + 3
	h := max(24, min(85, (wide-2*side)*(z1-z0)/(y1-y0)))
	negative, positive := e.Edges()
	title, from := "End view under the worst crowd", "end"
	if e.Along {
		title, from = "Side view under the worst crowd", "side"
	}
	desc := fmt.Sprintf("The dock from its "+from+", heeled %s. One deck edge is %s above the water, the other %s.",
		measure.Angle.Format(math.Abs(e.Heel), e.Units), level(max(negative, positive), e.Units), level(min(negative, positive), e.Units))
	c := begin("heeled", title, desc, e.Units, wide, h+10, e.note())
	v := svg.Fit(y0, z0, y1, z1, svg.Box{X0: side, Y0: top, X1: wide - side, Y1: top + h})
	at := func(y, z float64) svg.Point { return v.At(e.turned(y, z)) }

	surface := v.At(0, 0).Y
	for _, f := range e.Floats {
		if f.Round {
			c.Circle(at(f.Y, f.Z), v.Scale*f.Broad/2, filled(svg.Outline, svg.White))
			continue
		}
		c.Polygon(filled(svg.Outline, svg.White), at(f.Y-f.Broad/2, f.Z-f.High/2), at(f.Y+f.Broad/2, f.Z-f.High/2), at(f.Y+f.Broad/2, f.Z+f.High/2), at(f.Y-f.Broad/2, f.Z+f.High/2))
	}
	for _, f := range e.Floats { // heights stand beside them
		y0, y1, z0, z1 := f.Y-f.Broad/2, f.Y+f.Broad/2, f.Z-f.High/2, f.Z+f.High/2
		c.BlockLine(at(y0, z0), at(y1, z0), at(y1, z1), at(y0, z1), at(y0, z0))
		c.BlockLine(at(y0, f.Z), at(y1, f.Z))
	}
	slab := func(y0, y1, z0, z1 float64, f svg.Fill) {
		corners := []svg.Point{at(y0, z0), at(y1, z0), at(y1, z1), at(y0, z1)}
		c.Polygon(filled(svg.Outline, svg.White), corners...)
		c.Polygon(filled(svg.Outline, f), corners...)
	}
	c.BlockLine(at(-e.Width/2, e.Depth/2), at(e.Width/2, e.Depth/2))
	c.BlockLine(at(-e.Width/2, deck), at(-e.Width/2, -e.Rim))
	c.BlockLine(at(e.Width/2, deck), at(e.Width/2, -e.Rim))
	half := e.Width / 2
	if e.Broad > 0 {
		slab(-half, half, 0, e.Depth, svg.Open)
		slab(-half, e.Broad-half, -e.Rim, e.Depth, svg.Wood)
		slab(half-e.Broad, half, -e.Rim, e.Depth, svg.Wood)
	} else {
		slab(-half, half, -e.Rim, e.Depth, svg.Open)
	}
	slab(-half, half, e.Depth, deck, svg.Wood)
	for _, y := range e.People {
		c.person(at(y, deck), v.Scale)
	}
	c.Line(pt(2, surface), pt(wide-2, surface), svg.Outline)
	c.BlockLine(pt(2, surface), pt(wide-2, surface))
	mark := 5.0 // on the side of the higher edge, where the heights have more room
	if positive > negative {
		mark = wide - 5
	}
	c.water(pt(mark, surface))
	c.Block(svg.Box{X0: mark - 2.4, Y0: surface - 2.8, X1: mark + 2.4, Y1: surface + 3})

	left, right := at(-e.Width/2, deck), at(e.Width/2, deck)
	c.Upright(left.Y, surface, v.At(y0, 0).X-7, left.X, level(negative, e.Units), small)
	c.Upright(right.Y, surface, v.At(y1, 0).X+7, right.X, level(positive, e.Units), small)
	c.heelMark(left, right, e.Heel)
	return c.picture()
}

func (e Heeled) note() string {
	s := "Heights: from the water to the deck's upper edge; a minus sign means under water."
	if e.Load != "" {
		s = "Load: " + e.Load + ". " + s
	}
	if e.From != "" {
		s += " " + svg.Shorten(e.From, 90, small) + "."
	}
	if e.Sides != [2]string{} {
		s += " On the left: " + svg.Shorten(e.Sides[0], 40, small) + "; on the right: " + svg.Shorten(e.Sides[1], 40, small) + "."
	}
	return s
}

// heelMark draws the angle between the deck and the level at the higher edge.
func (c *canvas) heelMark(left, right svg.Point, heel float64) {
	text := "heel " + measure.Angle.Format(math.Abs(heel), c.units)
	hub, way := left, 1.0
	if heel < 0 {
		hub, way = right, -1
	}
	r := 0.45 * math.Abs(right.X-left.X)
	tip := pt(hub.X+way*r*1.1, hub.Y)
	c.Line(hub, tip, svg.Centre)
	from, to := 0.0, heel
	if way < 0 {
		from, to = math.Pi, math.Pi+heel
	}
	if heel != 0 {
		c.Arc(hub, r, from, to, svg.Dimension)
	}
	c.BlockLine(hub, tip)
	anchor := small
	c.Place(text, svg.Spot{At: pt(hub.X+way*r*0.5, hub.Y-row/2-0.8), Style: anchor}, svg.Spot{At: pt((left.X+right.X)/2, hub.Y-row), Style: anchor})
}

// person draws somebody standing, feet at a place.
func (c *canvas) person(feet svg.Point, scale float64) {
	m := func(x, y float64) svg.Point { return pt(feet.X+x*scale, feet.Y-y*scale) }
	skin := filled(svg.Dimension, svg.Pale)
	c.Polygon(skin, m(-0.15, 0), m(-0.15, 0.75), m(-0.23, 0.75), m(-0.21, 1.38), m(0.21, 1.38), m(0.23, 0.75), m(0.15, 0.75), m(0.15, 0), m(0.02, 0), m(0, 0.7), m(-0.02, 0))
	c.Circle(m(0, 1.54), 0.12*scale, skin)
	a, b := m(-0.25, personTall), m(0.25, 0)
	c.Block(svg.Box{X0: a.X, Y0: a.Y, X1: b.X, Y1: b.Y})
}
