package svg

import (
	"fmt"
	"math"
	"strings"
)

// Line draws a straight line.
func (d *Drawing) Line(a, b Point, w Weight) {
	if !d.finite("line", a.X, a.Y, b.X, b.Y) {
		return
	}
	attrs := []attr{{"x1", num(a.X)}, {"y1", num(a.Y)}, {"x2", num(b.X)}, {"y2", num(b.Y)}}
	d.element("line", append(attrs, d.pen(Style{Weight: w}, false)[1:]...)...)
}

// Polyline draws straight lines through the points.
func (d *Drawing) Polyline(w Weight, at ...Point) { d.points("polyline", Style{Weight: w}, at) }

// Polygon draws a closed area.
func (d *Drawing) Polygon(s Style, at ...Point) { d.points("polygon", s, at) }

func (d *Drawing) points(name string, s Style, at []Point) {
	var list []string
	for _, p := range at {
		if !d.finite(name, p.X, p.Y) {
			return
		}
		list = append(list, num(p.X)+","+num(p.Y))
	}
	if len(list) < 2 {
		return
	}
	d.element(name, append([]attr{{"points", strings.Join(list, " ")}}, d.pen(s, name == "polygon")...)...)
}

// Rect draws a rectangle.
func (d *Drawing) Rect(b Box, s Style) {
	b = b.upright()
	if !d.finite("rectangle", b.X0, b.Y0, b.X1, b.Y1) {
		return
	}
	attrs := []attr{{"x", num(b.X0)}, {"y", num(b.Y0)}, {"width", num(b.X1 - b.X0)}, {"height", num(b.Y1 - b.Y0)}}
	d.element("rect", append(attrs, d.pen(s, true)...)...)
}

// Circle draws a circle of radius r, which must not be negative.
func (d *Drawing) Circle(c Point, r float64, s Style) {
	if r < 0 {
		d.fail(fmt.Errorf("%w: a circle's radius %g", ErrNumber, r))
	}
	if !d.finite("circle", c.X, c.Y, r) {
		return
	}
	attrs := []attr{{"cx", num(c.X)}, {"cy", num(c.Y)}, {"r", num(r)}}
	d.element("circle", append(attrs, d.pen(s, true)...)...)
}

// Arc draws the part of a circle from one angle to another, in radians from the
// positive x axis towards positive y, which on a sheet is clockwise. It spans
// less than a whole turn.
func (d *Drawing) Arc(c Point, r, from, to float64, w Weight) {
	var p Path
	at := func(a float64) Point { return Point{c.X + r*math.Cos(a), c.Y + r*math.Sin(a)} }
	p.Move(at(from))
	p.Arc(r, math.Abs(to-from) > math.Pi, to > from, at(to))
	d.Path(&p, Style{Weight: w})
}

// A Path is an outline of lines and arcs, for [Drawing.Path].
type Path struct {
	text    []string
	numbers []float64
}

func (p *Path) add(letter string, xs ...float64) {
	parts := []string{letter}
	for _, x := range xs {
		parts = append(parts, num(x))
	}
	p.text = append(p.text, strings.Join(parts, " "))
	p.numbers = append(p.numbers, xs...)
}

// Move begins a line at a point.
func (p *Path) Move(to Point) { p.add("M", to.X, to.Y) }

// To continues straight to a point.
func (p *Path) To(to Point) { p.add("L", to.X, to.Y) }

// Arc continues along a circle of radius r: the longer way round if long is set,
// clockwise on the sheet if clockwise is set.
func (p *Path) Arc(r float64, long, clockwise bool, to Point) {
	flag := map[bool]float64{true: 1}
	p.add("A", r, r, 0, flag[long], flag[clockwise], to.X, to.Y)
}

// Close returns to where the line began.
func (p *Path) Close() { p.add("Z") }

// Path draws an outline. Only a closed one is filled.
func (d *Drawing) Path(p *Path, s Style) {
	if !d.finite("path", p.numbers...) || len(p.text) == 0 {
		return
	}
	closed := p.text[len(p.text)-1] == "Z"
	d.element("path", append([]attr{{"d", strings.Join(p.text, " ")}}, d.pen(s, closed)...)...)
}

// The head of an arrow, in drawing units.
const (
	headLength = 2.4
	headWidth  = 1.5
)

// Arrow draws a line with a filled head at its end. A line shorter than the head
// is drawn without one.
func (d *Drawing) Arrow(from, to Point, w Weight) {
	dx, dy := to.X-from.X, to.Y-from.Y
	l := math.Hypot(dx, dy)
	if !(l > headLength) {
		d.Line(from, to, w)
		return
	}
	ux, uy := dx/l, dy/l
	neck := Point{to.X - headLength*ux, to.Y - headLength*uy}
	d.Line(from, neck, w)
	var p Path
	p.Move(to)
	p.To(Point{neck.X - headWidth/2*uy, neck.Y + headWidth/2*ux})
	p.To(Point{neck.X + headWidth/2*uy, neck.Y - headWidth/2*ux})
	p.Close()
	d.Path(&p, Style{Fill: Black})
}

// A View carries metres, y up, to the sheet.
type View struct {
	Scale  float64 // drawing units per metre
	Origin Point   // where (0, 0) lies on the sheet
}

// Fit returns the view that shows the metres x0..x1 and y0..y1 as large as the
// box allows, in its middle. An empty span counts as one metre.
func Fit(x0, y0, x1, y1 float64, b Box) View {
	w, h := x1-x0, y1-y0
	if !(w > 0) && !(h > 0) {
		w, h = 1, 1
	}
	s := (b.X1 - b.X0) / w
	if !(w > 0) || h > 0 && (b.Y1-b.Y0)/h < s {
		s = (b.Y1 - b.Y0) / h
	}
	return View{s, Point{(b.X0+b.X1)/2 - s*(x0+x1)/2, (b.Y0+b.Y1)/2 + s*(y0+y1)/2}}
}

// At returns the place of a point in metres.
func (v View) At(x, y float64) Point {
	return Point{v.Origin.X + float64(v.Scale*x), v.Origin.Y - float64(v.Scale*y)}
}

// Box returns the place of a rectangle in metres.
func (v View) Box(x0, y0, x1, y1 float64) Box {
	a, b := v.At(x0, y0), v.At(x1, y1)
	return Box{a.X, a.Y, b.X, b.Y}.upright()
}
