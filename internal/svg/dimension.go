package svg

import (
	"fmt"
	"math"
)

// Parts of a dimension, in drawing units.
const (
	gap    = 1.0 // between the part and its extension line
	past   = 1.2 // of the extension line beyond the dimension line
	tick   = 0.9 // half of the stroke across the dimension line, each way
	offset = 0.5 // between the dimension line and its text
)

// Across dimensions the distance from x0 to x1 on a line at height y; the
// extension lines come from the height from. A text that does not fit between
// them stands beside.
func (d *Drawing) Across(x0, x1, y, from float64, s string, o TextStyle) Box {
	if !d.finite("dimension", x0, x1, y, from) {
		return Box{}
	}
	x0, x1 = min(x0, x1), max(x0, x1)
	for _, x := range []float64{x0, x1} {
		d.extend(Point{x, from}, Point{x, y})
		d.Line(Point{x - tick, y + tick}, Point{x + tick, y - tick}, Outline)
	}
	d.Line(Point{x0, y}, Point{x1, y}, Dimension)
	d.BlockLine(Point{x0, y}, Point{x1, y})
	o.Up, o.Anchor = false, Middle
	h := Height(o)
	above, below := y-h/2-offset, y+h/2+offset
	right, left := o, o
	right.Anchor, left.Anchor = Start, End
	m := (x0 + x1) / 2
	if Width(s, o) <= x1-x0-2 {
		return d.Place(s, Spot{Point{m, above}, o}, Spot{Point{m, below}, o})
	}
	return d.Place(s, Spot{Point{x1 + 1.8, y}, right}, Spot{Point{x0 - 1.8, y}, left}, Spot{Point{m, above}, o}, Spot{Point{m, below}, o})
}

// Upright dimensions the distance from y0 to y1 on a line at x; the extension
// lines come from the x from. The text reads from the right where it fits along
// the line, and stands level beside it where it does not.
func (d *Drawing) Upright(y0, y1, x, from float64, s string, o TextStyle) Box {
	if !d.finite("dimension", y0, y1, x, from) {
		return Box{}
	}
	y0, y1 = min(y0, y1), max(y0, y1)
	for _, y := range []float64{y0, y1} {
		d.extend(Point{from, y}, Point{x, y})
		d.Line(Point{x - tick, y + tick}, Point{x + tick, y - tick}, Outline)
	}
	d.Line(Point{x, y0}, Point{x, y1}, Dimension)
	d.BlockLine(Point{x, y0}, Point{x, y1})
	m, h := (y0+y1)/2, Height(o)
	o.Anchor = Middle
	up, right, left := o, o, o
	up.Up = true
	right.Anchor, left.Anchor = Start, End
	level := []Spot{
		{Point{x - 1.5, m}, left},
		{Point{x + 1.5, m}, right},
		{Point{x, y0 - h/2 - past}, o},
		{Point{x, y1 + h/2 + past}, o},
		{Point{x - 1.5, y0 - h/2}, left},
		{Point{x + 1.5, y0 - h/2}, right},
		{Point{x - 1.5, y1 + h/2}, left},
		{Point{x + 1.5, y1 + h/2}, right},
	}
	if x > from {
		level[0], level[1] = level[1], level[0]
	}
	// The side of the part comes last.
	level = append(append(level[:1:1], level[2:]...), level[1])
	if Width(s, o) <= y1-y0-2 {
		return d.Place(s, append([]Spot{{Point{x - h/2 - offset, m}, up}, {Point{x + h/2 + offset, m}, up}}, level...)...)
	}
	return d.Place(s, level...)
}

// extend draws an extension line from a part to a dimension line and a little
// past it.
func (d *Drawing) extend(part, line Point) {
	dx, dy := line.X-part.X, line.Y-part.Y
	l := math.Hypot(dx, dy)
	if l <= gap {
		return
	}
	ux, uy := dx/l, dy/l
	d.Line(Point{part.X + gap*ux, part.Y + gap*uy}, Point{line.X + past*ux, line.Y + past*uy}, Dimension)
}

// A Mark is a place on a running dimension, which counts everything from one
// end.
type Mark struct {
	At   float64 // coordinate on the sheet
	Text string
}

// bend is the height of the part of a running dimension in which its lines lead
// to texts that had to move aside.
const bend = 3.0

// RunningRoom returns the room that the texts of a running dimension take away
// from the part.
func RunningRoom(marks []Mark, o TextStyle) float64 {
	w := 0.0
	for _, m := range marks {
		w = max(w, Width(m.Text, o))
	}
	return w + 2*gap + bend
}

// RunningX writes a running dimension along x: a short line from the height
// from at each mark, and its text turned upright on the side of to, where the
// texts begin or end. Texts that would touch move aside within lo..hi; without
// room for all the drawing fails with [ErrRoom].
func (d *Drawing) RunningX(marks []Mark, from, to, lo, hi float64, o TextStyle) {
	o.Up = true
	o.Anchor = End
	if to < from {
		o.Anchor = Start
	}
	d.running(marks, lo, hi, o, func(at, moved float64) (line []Point, text Point) {
		s := math.Copysign(1, to-from)
		return []Point{{at, from + s*gap/2}, {at, to - s*(bend+gap)}, {moved, to - s*gap}, {moved, to - s*gap/2}}, Point{moved, to}
	})
}

// RunningY writes a running dimension along y, its texts level. See
// [Drawing.RunningX].
func (d *Drawing) RunningY(marks []Mark, from, to, lo, hi float64, o TextStyle) {
	o.Up = false
	o.Anchor = Start
	if to < from {
		o.Anchor = End
	}
	d.running(marks, lo, hi, o, func(at, moved float64) (line []Point, text Point) {
		s := math.Copysign(1, to-from)
		return []Point{{from + s*gap/2, at}, {to - s*(bend+gap), at}, {to - s*gap, moved}, {to - s*gap/2, moved}}, Point{to, moved}
	})
}

func (d *Drawing) running(marks []Mark, lo, hi float64, o TextStyle, lay func(at, moved float64) ([]Point, Point)) {
	var at, size []float64
	for _, m := range marks {
		if !d.finite("mark", m.At) {
			return
		}
		at = append(at, m.At)
		size = append(size, Height(o))
	}
	moved, ok := Spread(at, size, lo, hi)
	if !ok {
		d.fail(fmt.Errorf("%w: %d marks on %.0f units", ErrRoom, len(marks), hi-lo))
		return
	}
	for i, m := range marks {
		line, text := lay(m.At, moved[i])
		d.Polyline(Dimension, line...)
		d.Text(text, m.Text, o)
	}
}
