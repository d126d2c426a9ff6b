package svg

import (
	"fmt"
	"math"
	"strconv"
)

// A Tick is a mark on an axis.
type Tick struct {
	At   float64 // in the axis's own unit
	Text string
}

// An Axis is the scale of one direction.
type Axis struct {
	Lo, Hi float64
	Ticks  []Tick
	Title  string // with the unit
}

// Ticks returns about n round values from lo to hi with their texts: steps of 1,
// 2 or 5 times a power of ten. Without a span it returns none.
func Ticks(lo, hi float64, n int) []Tick {
	span := hi - lo
	if !(span > 0) || math.IsInf(span, 0) || n < 1 {
		return nil
	}
	raw := span / float64(n)
	pow := math.Pow(10, math.Floor(math.Log10(raw)))
	step := 10 * pow
	for _, m := range []float64{1, 2, 5} {
		if m*pow >= raw*(1-1e-9) {
			step = m * pow
			break
		}
	}
	decimals := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	if !(step > 0) || decimals > 15 {
		return nil
	}
	var out []Tick
	for k := math.Ceil(lo/step - 1e-9); k*step <= hi+1e-9*span && len(out) <= 2*n+2; k++ {
		text := strconv.FormatFloat(k*step, 'f', decimals, 64)
		if k == 0 {
			text = strconv.FormatFloat(0, 'f', decimals, 64)
		}
		out = append(out, Tick{k * step, text})
	}
	return out
}

// A Plot is a pair of axes on a drawing.
type Plot struct {
	d    *Drawing
	box  Box
	x, y Axis
}

// PlotRoom is the room that axes need around their box: for the texts of the y
// axis on the left, and for those of the x axis with its title below.
const (
	PlotLeft  = 17
	PlotAbove = 7
	PlotBelow = 12
)

// Plot draws axes at the left and the foot of a box and returns them. The title
// of the y axis stands over its top, that of the x axis below at the right. A
// tick's text that would touch its neighbour is left out.
func (d *Drawing) Plot(b Box, x, y Axis) *Plot {
	p := &Plot{d, b.upright(), x, y}
	if !d.numbers("axis", x.Lo, x.Hi, y.Lo, y.Hi) || !d.finite("axes", p.box.X0, p.box.Y0, p.box.X1, p.box.Y1) {
		return p
	}
	if !(x.Lo < x.Hi && y.Lo < y.Hi) {
		d.fail(fmt.Errorf("%w: an axis from %g to %g and one from %g to %g", ErrNumber, x.Lo, x.Hi, y.Lo, y.Hi))
		return p
	}
	small := TextStyle{Size: Small}
	start, end := small, small
	start.Anchor, end.Anchor = Start, End
	h := Height(small)
	d.Text(Point{p.box.X0 - PlotLeft + 1, p.box.Y0 - h/2 - 2.8}, y.Title, start)
	d.Text(Point{p.box.X1, p.box.Y1 + 1.8*h + 1.2}, x.Title, end)
	for _, t := range y.Ticks {
		at := p.At(x.Lo, t.At)
		d.Line(Point{at.X - 1, at.Y}, at, Dimension)
		d.Line(at, Point{p.box.X1, at.Y}, Grid)
		d.ticked(Point{at.X - 1.6, at.Y}, t.Text, end)
	}
	for _, t := range x.Ticks {
		at := p.At(t.At, y.Lo)
		d.Line(at, Point{at.X, at.Y + 1}, Dimension)
		d.Line(at, Point{at.X, p.box.Y0}, Grid)
		d.ticked(Point{at.X, at.Y + 1.2 + h/2}, t.Text, small)
	}
	d.Polyline(Outline, Point{p.box.X0, p.box.Y0}, Point{p.box.X0, p.box.Y1}, Point{p.box.X1, p.box.Y1})
	return p
}

// ticked writes the text of a tick if it stays clear of the others.
func (d *Drawing) ticked(at Point, s string, o TextStyle) {
	if b := TextBox(at, s, o); d.Free(b.grown(0.4)) {
		d.Text(at, s, o)
	}
}

// At returns the place of a pair of values on the sheet.
func (p *Plot) At(x, y float64) Point {
	return Point{
		p.box.X0 + float64((p.box.X1-p.box.X0)*(x-p.x.Lo)/(p.x.Hi-p.x.Lo)),
		p.box.Y1 - float64((p.box.Y1-p.box.Y0)*(y-p.y.Lo)/(p.y.Hi-p.y.Lo)),
	}
}

// Box returns the area between the axes.
func (p *Plot) Box() Box { return p.box }

// points returns the places of two lists of values, and whether there are any.
func (p *Plot) points(xs, ys []float64) ([]Point, bool) {
	if len(xs) != len(ys) {
		p.d.fail(fmt.Errorf("%w: a curve of %d by %d values", ErrNumber, len(xs), len(ys)))
	}
	if !p.d.numbers("curve", xs...) || !p.d.numbers("curve", ys...) {
		return nil, false
	}
	var at []Point
	for i := range xs {
		at = append(at, p.At(xs[i], ys[i]))
	}
	return at, len(at) > 0
}

// Curve draws straight lines through pairs of values, and keeps texts off them.
func (p *Plot) Curve(xs, ys []float64, w Weight) {
	at, ok := p.points(xs, ys)
	if !ok {
		return
	}
	p.d.Clip(p.box)
	p.d.Polyline(w, at...)
	p.d.End()
	p.d.BlockLine(at...)
}

// Band fills the area between two curves.
func (p *Plot) Band(xs, lo, hi []float64, s Style) {
	low, ok := p.points(xs, lo)
	high, ok2 := p.points(xs, hi)
	if !ok || !ok2 {
		return
	}
	for i := len(low) - 1; i >= 0; i-- {
		high = append(high, low[i])
	}
	p.d.Clip(p.box)
	p.d.Polygon(s, high...)
	p.d.End()
}

// Level draws a line across at a value of y.
func (p *Plot) Level(y float64, w Weight) { p.Curve([]float64{p.x.Lo, p.x.Hi}, []float64{y, y}, w) }

// Upright draws a line up at a value of x.
func (p *Plot) Upright(x float64, w Weight) { p.Curve([]float64{x, x}, []float64{p.y.Lo, p.y.Hi}, w) }
