package float

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// outline is the deck's edge seen from above, counter-clockwise.
type outline struct {
	ring       []r3.Vec
	area       float64
	centre     r3.Vec // of the area, at the corners' mean height
	x0, x1     float64
	y0, y1     float64
	meanHeight float64
}

// deckOutline checks the corners and returns the outline. Three corners or more,
// named in order around the deck.
func deckOutline(corners []r3.Vec) (outline, error) {
	bad := func(why string) (outline, error) {
		return outline{}, &measure.Error{
			Field: "Corners", Class: measure.ErrUnknown, Why: why,
			Want: "three corners of the deck or more, in order around it",
		}
	}
	if len(corners) < 3 {
		return bad("no deck edge is given")
	}
	o := outline{
		ring: append([]r3.Vec(nil), corners...),
		x0:   math.Inf(1), x1: math.Inf(-1), y0: math.Inf(1), y1: math.Inf(-1),
	}
	place := measure.Range{Kind: measure.Length, Lo: -1e4, Hi: 1e4}
	for _, c := range corners {
		for _, v := range []float64{c.X, c.Y, c.Z} {
			if err := place.Check("Corners", v); err != nil {
				return outline{}, err
			}
		}
		o.x0, o.x1 = min(o.x0, c.X), max(o.x1, c.X)
		o.y0, o.y1 = min(o.y0, c.Y), max(o.y1, c.Y)
		o.meanHeight += c.Z / float64(len(corners))
	}
	if crosses(o.ring) {
		return bad("its edges cross")
	}
	area, x, y := moments(o.ring)
	if area < 0 {
		for i, j := 0, len(o.ring)-1; i < j; i, j = i+1, j-1 {
			o.ring[i], o.ring[j] = o.ring[j], o.ring[i]
		}
		area = -area
	}
	if !(area > 1e-9*(o.x1-o.x0)*(o.y1-o.y0) && area > 1e-4) {
		return bad("the deck has no area")
	}
	o.area, o.centre = area, r3.Vec{X: x, Y: y, Z: o.meanHeight}
	return o, nil
}

// moments returns the signed area of a ring and the centre of its area.
func moments(ring []r3.Vec) (area, x, y float64) {
	if len(ring) == 0 {
		return 0, 0, 0
	}
	o := ring[0] // near the ring, so that little cancels
	for i := range ring {
		a, b := r3.Sub(ring[i], o), r3.Sub(ring[(i+1)%len(ring)], o)
		t := a.X*b.Y - b.X*a.Y
		area += t / 2
		x += t * (a.X + b.X) / 6
		y += t * (a.Y + b.Y) / 6
	}
	if area == 0 {
		return 0, o.X, o.Y
	}
	return area, o.X + x/area, o.Y + y/area
}

// crosses reports whether two edges of a ring that share no corner cross.
func crosses(ring []r3.Vec) bool {
	side := func(a, b, c r3.Vec) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }
	n := len(ring)
	for i := range n {
		for j := i + 2; j < n; j++ {
			if i == 0 && j == n-1 {
				continue
			}
			a, b, c, d := ring[i], ring[i+1], ring[j], ring[(j+1)%n]
			if side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0 {
				return true
			}
		}
	}
	return false
}

// half returns area and centre of the deck on one side of the middle of its
// width: y above it for positive sign, below it for negative.
func (o outline) half(sign float64) (area float64, centre r3.Vec) {
	middle := (o.y0 + o.y1) / 2
	var ring []r3.Vec
	for i := range o.ring {
		a, b := o.ring[i], o.ring[(i+1)%len(o.ring)]
		da, db := sign*(a.Y-middle), sign*(b.Y-middle)
		if da >= 0 {
			ring = append(ring, a)
		}
		if da*db < 0 {
			t := da / (da - db)
			ring = append(ring, r3.Add(a, r3.Scale(t, r3.Sub(b, a))))
		}
	}
	area, x, y := moments(ring)
	return math.Abs(area), r3.Vec{X: x, Y: y, Z: o.meanHeight}
}

// spots returns places along the edge, inset metres inside it: the corners of the
// smaller outline and points between them. A load's worst place is among the
// corners on any ordinary dock; the points between are for the others.
func (o outline) spots(inset float64) ([]r3.Vec, error) {
	n := len(o.ring)
	inner := make([]r3.Vec, n)
	for i := range n {
		before, here, after := o.ring[(i+n-1)%n], o.ring[i], o.ring[(i+1)%n]
		ux, uy := unit2(before, here)
		vx, vy := unit2(here, after)
		// Both edges move inward, to their left; their crossing is the new corner.
		cross := ux*vy - uy*vx
		if math.Abs(cross) < 1e-9 {
			inner[i] = r3.Vec{X: here.X - uy*inset, Y: here.Y + ux*inset, Z: here.Z}
			continue
		}
		t := inset * (1 - (ux*vx + uy*vy)) / cross
		inner[i] = r3.Vec{X: here.X - uy*inset - ux*t, Y: here.Y + ux*inset - uy*t, Z: here.Z}
	}
	const between = 4
	var out []r3.Vec
	for i := range n {
		a, b := inner[i], inner[(i+1)%n]
		ux, uy := unit2(o.ring[i], o.ring[(i+1)%n])
		if !((b.X-a.X)*ux+(b.Y-a.Y)*uy >= 0) {
			return nil, &measure.Error{
				Field: "Inset", Kind: measure.Length, Value: inset, Class: measure.ErrRange,
				Want: "less than half the deck's width",
			}
		}
		for k := range between {
			out = append(out, r3.Add(a, r3.Scale(float64(k)/between, r3.Sub(b, a))))
		}
	}
	return out, nil
}

// unit2 returns the direction from a to b, seen from above.
func unit2(a, b r3.Vec) (x, y float64) {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l == 0 {
		return 0, 0
	}
	return (b.X - a.X) / l, (b.Y - a.Y) / l
}

// middle returns the point of the deck midway across at a place along it.
func (o outline) middle(x float64) r3.Vec {
	var ys []float64
	for i := range o.ring {
		a, b := o.ring[i], o.ring[(i+1)%len(o.ring)]
		if (a.X <= x) != (b.X <= x) {
			ys = append(ys, a.Y+(x-a.X)/(b.X-a.X)*(b.Y-a.Y))
		}
	}
	y := o.centre.Y
	if len(ys) > 0 {
		sort.Float64s(ys)
		y = (ys[0] + ys[len(ys)-1]) / 2
	}
	return r3.Vec{X: x, Y: y, Z: o.meanHeight}
}
