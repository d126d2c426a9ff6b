package float

import (
	"math"
)

// noLever is a lever that counts as none, m: a dock that rests upright has it.
const noLever = 1e-12

// see looks for marks between two neighbouring points.
func (c *Curve) see(h *holder, a, b Point) {
	if !c.Rest.Found && a.Lever <= noLever && b.Lever > noLever {
		m := h.solve(a, b, func(p Point) float64 { return p.Lever })
		// Where the free turn falls over to another balance the lever leaps past zero:
		// nothing rests there.
		if math.Abs(m.Lever) <= noLever+1e-9*(b.Lever-a.Lever) {
			c.Rest = m
		}
	}
	if !c.Under.Found && len(h.platform.Corners) > 0 && a.Edge >= 0 && b.Edge < 0 {
		c.Under = h.solve(a, b, func(p Point) float64 { return -p.Edge })
	}
	h.d, h.other = b.Level, b.Other
}

// solve finds where f rises through zero between two points, by the Illinois
// form of false position.
func (h *holder) solve(a, b Point, f func(Point) float64) Mark {
	fa, fb := f(a), f(b)
	if math.Abs(fa) <= noLever {
		return Mark{true, a.Angle, a.Lever}
	}
	side := 0
	best := b
	for range 60 {
		t := fa / (fa - fb)
		angle := a.Angle + t*(b.Angle-a.Angle)
		h.d = a.Level + t*(b.Level-a.Level)
		h.other = a.Other + t*(b.Other-a.Other)
		p, ok := h.hold(angle)
		if !ok {
			break
		}
		best = p
		v := f(p)
		if math.Abs(v) < 1e-13 || b.Angle-a.Angle < 1e-12 {
			break
		}
		if v < 0 {
			a, fa = p, v
			if side < 0 {
				fb /= 2
			}
			side = -1
		} else {
			b, fb = p, v
			if side > 0 {
				fa /= 2
			}
			side = 1
		}
	}
	return Mark{true, best.Angle, best.Lever}
}

// finish finds the peak, what comes past it, and the area.
func (c *Curve) finish(h *holder) {
	pts := c.Points
	k := 0
	for i := range pts {
		if pts[i].Lever > pts[k].Lever {
			k = i
		}
	}
	c.Peak = Mark{Found: len(pts) > 0, Angle: pts[k].Angle, Lever: pts[k].Lever}
	if k > 0 && k+1 < len(pts) {
		c.Peak = h.peak(pts[k-1], pts[k], pts[k+1])
	}
	for i := max(k, 1); i < len(pts); i++ {
		if pts[i-1].Lever > 0 && pts[i].Lever <= 0 {
			c.Vanishing = h.solve(pts[i-1], pts[i], func(p Point) float64 { return -p.Lever })
			break
		}
	}
	from, to := pts[0], pts[len(pts)-1]
	if c.Rest.Found {
		from = h.near(pts, c.Rest.Angle, from)
	}
	if c.Vanishing.Found {
		to = h.near(pts, c.Vanishing.Angle, to)
	}
	c.Area = (to.work - from.work) / from.mass
}

// near holds the platform at an angle, from the point next to it.
func (h *holder) near(pts []Point, angle float64, other Point) Point {
	b := pts[0]
	for _, p := range pts {
		if math.Abs(p.Angle-angle) < math.Abs(b.Angle-angle) {
			b = p
		}
	}
	h.d, h.other = b.Level, b.Other
	if p, ok := h.hold(angle); ok {
		return p
	}
	return other
}

// peak finds the greatest lever between a and b by parabolas through the three
// points around it, and by halving where they do not serve.
func (h *holder) peak(a, top, b Point) Mark {
	for range 16 {
		da, db := top.Angle-a.Angle, b.Angle-top.Angle
		if da+db < 1e-6 {
			break
		}
		ga, gb := (top.Lever-a.Lever)*db, (top.Lever-b.Lever)*da
		step := (ga*db - gb*da) / (2 * (ga + gb))
		if least := 1e-4 * (da + db); !(math.Abs(step) > least) {
			// Already there: look close by on the longer side.
			step = least
			if da > db {
				step = -least
			}
		}
		angle := top.Angle + step
		if !(angle > a.Angle && angle < b.Angle) {
			break
		}
		h.d, h.other = top.Level, top.Other
		p, ok := h.hold(angle)
		if !ok {
			break
		}
		switch left := step < 0; {
		case p.Lever > top.Lever && left:
			b, top = top, p
		case p.Lever > top.Lever:
			a, top = top, p
		case left:
			a = p
		default:
			b = p
		}
	}
	return Mark{true, top.Angle, top.Lever}
}
