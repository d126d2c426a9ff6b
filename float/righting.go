package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// A Curve is the righting lever of a platform turned about a horizontal axis by
// an outside couple, with sinkage and the turn about the other axis free.
type Curve struct {
	Axis   float64 // rad from the platform's x axis toward y
	Points []Point // in the order of the angles asked for

	// What was found between the first and the last angle.
	Rest      Mark // where the lever rises through zero: a rest position
	Under     Mark // where the deck's edge (Corners) first goes under water; the first angle if it is
	Peak      Mark // the greatest lever; at the last angle it may rise on
	Vanishing Mark // past the peak, where the lever falls through zero

	// Area is the work over the weight, m rad, from Rest (or the first angle) to
	// Vanishing (or the last): the area under the curve where the other turn is
	// small.
	Area float64
}

// A Point of a righting curve.
type Point struct {
	Angle  float64 // rad about the axis; for axis 0 the heel
	Lever  float64 // horizontal distance of buoyancy from gravity that rights, m
	Moment float64 // righting moment, N·m
	Other  float64 // the free turn, rad; for axis 0 the trim
	Level  float64 // height of the platform's origin above the water, m
	Edge   float64 // height of the lowest corner above the water, m; 0 without Corners

	work float64 // potential energy over gravity, kg m
	mass float64
}

// A Mark is a place on a righting curve, if there is one.
type Mark struct {
	Found        bool
	Angle, Lever float64 // rad, m
}

// Righting returns the righting curve about a horizontal axis that makes the
// angle axis with the platform's x axis (0 heels, toward +y; π/2 turns the -x
// end down), at the given angles in rad, which must rise and stay within the
// tilt stop. Marks and area are solved for, not interpolated. Over a wave the
// angles count from its mean slope.
//
// Where the other turn finds no balance, the platform goes over that way: the
// error is a [*Failure] of class [ErrCapsizes] and the curve up to there comes
// with it.
func (p *Platform) Righting(axis float64, angles []float64) (Curve, error) {
	curve := Curve{Axis: axis}
	if err := headingRange.Check("axis", axis); err != nil {
		return curve, err
	}
	var buf [stackSize]part
	m, err := p.model(buf[:0])
	if err != nil {
		return curve, err
	}
	if f := m.carries(); f != nil {
		return curve, f
	}
	if !(m.mass > 0) {
		return curve, massless(m.mass)
	}
	if len(angles) == 0 {
		return curve, &measure.Error{Field: "angles", Class: measure.ErrUnknown, Want: "at least one angle"}
	}
	last := -p.stop()
	for _, a := range angles {
		if err := (measure.Range{Kind: measure.Angle, Lo: last, Hi: p.stop()}).Check("angles", a); err != nil {
			return curve, err
		}
		last = a
	}

	h := holder{model: &m, platform: p}
	h.sin, h.cos = math.Sincos(axis)
	x, y, z := h.up(angles[0], 0)
	h.d = m.guess(x, y, z)
	curve.Points = make([]Point, 0, len(angles))
	for i, a := range angles {
		h.predict(curve.Points, a)
		pt, ok := h.hold(a)
		if !ok {
			heel, trim := attitude(h.up(a, pt.Other))
			return curve, &Failure{Class: ErrCapsizes, Heel: heel, Trim: trim}
		}
		curve.Points = append(curve.Points, pt)
		if i > 0 {
			curve.see(&h, curve.Points[i-1], pt)
		} else if pt.Edge < 0 {
			curve.Under = Mark{true, pt.Angle, pt.Lever}
		}
	}
	curve.finish(&h)
	return curve, nil
}

// A holder holds the platform at an angle about one axis and lets it find its
// level and the other turn.
type holder struct {
	*model
	platform *Platform
	sin, cos float64 // of the axis
	d, other float64 // last found
	s        sums
}

// up returns the up direction at the angle about the axis and the turn of it.
func (h *holder) up(angle, other float64) (x, y, z float64) {
	a, b, z := upright(angle, other) // in axes turned with the axis
	return a*h.cos - b*h.sin, a*h.sin + b*h.cos, z
}

// predict extrapolates level and turn from the last points, up to four, by
// divided differences.
func (h *holder) predict(points []Point, angle float64) {
	n := len(points)
	if n == 0 {
		return
	}
	if n > 4 {
		points, n = points[n-4:], 4
	}
	var level, other [4]float64
	for i, p := range points {
		level[i], other[i] = p.Level, p.Other
	}
	for k := 1; k < n; k++ {
		for i := n - 1; i >= k; i-- {
			f := points[i].Angle - points[i-k].Angle
			if !(f > 0) { // the same angle twice
				h.d, h.other = points[n-1].Level, points[n-1].Other
				return
			}
			level[i] = (level[i] - level[i-1]) / f
			other[i] = (other[i] - other[i-1]) / f
		}
	}
	h.d, h.other = level[n-1], other[n-1]
	for i := n - 2; i >= 0; i-- {
		f := angle - points[i].Angle
		h.d = h.d*f + level[i]
		h.other = h.other*f + other[i]
	}
}

// hold finds level and other turn at an angle, from the last ones found, and
// reports whether there is a balance within the tilt stop.
func (h *holder) hold(angle float64) (Point, bool) {
	m, s := h.model, &h.s
	sa, ca := math.Sincos(angle)
	cosStop := math.Cos(h.platform.stop())
	other, d := h.other, h.d
	x, y, z := h.up(angle, other)
	m.at(x, y, z, d, s)
	var t sums
	levelled, stuck := 0, false
	for range maxSteps {
		st, ct := math.Sincos(other)
		// The direction in which n turns as the other turn grows: (-ct, sa st, -ca st)
		// in axes turned with the axis; and across it, -(0, ca, sa).
		w := r3.Vec{X: -ct*h.cos - sa*st*h.sin, Y: -ct*h.sin + sa*st*h.cos, Z: -ca * st}
		g0, g1, g2, curve, _ := m.forces(x, y, z, s)
		w1 := w.X*s.e1x + w.Y*s.e1y + w.Z*s.e1z
		w2 := w.X*s.e2x + w.Y*s.e2y + w.Z*s.e2z
		gw := w1*g1 + w2*g2
		residual := max(math.Abs(g0), math.Abs(gw)/m.length) / s.mass
		if !(residual <= math.MaxFloat64) {
			return Point{Other: other}, false
		}
		if (!(s.i0 > 1e-6*m.plane) || math.Abs(g0) > 0.6*s.mass) && levelled < 8 && math.Abs(g0) > 1e-6*s.mass {
			levelled++
			d = m.levelled(x, y, z, d, s)
			continue
		}
		h00 := m.rho * max(s.i0, 1e-9*m.plane)
		h0w := m.rho * (w1*s.i1 + w2*s.i2)
		hww := m.rho*(w1*w1*s.i11+2*w1*w2*s.i12+w2*w2*s.i22) - curve - h0w*h0w/h00
		if residual <= 1e-12 || stuck && residual <= tolerated {
			if hww < -1e-9*s.mass*m.length {
				return Point{Other: other}, false
			}
			h.d, h.other = d, other
			// What rights: the moment across, along -(0, ca, sa).
			tx, ty, tz := s.gx-m.rho*s.bx, s.gy-m.rho*s.by, s.gz-m.rho*s.bz
			moment := ca*(h.sin*tx-h.cos*ty) - sa*tz
			pt := Point{
				Angle: angle, Lever: moment / s.mass, Moment: moment * measure.Gravity,
				Other: other, Level: d, Edge: h.edge(x, y, z, d), work: s.energy, mass: s.mass,
			}
			return pt, true
		}
		pw := -(gw - h0w*g0/h00) / max(math.Abs(hww), 1e-6*s.mass*m.length)
		p0 := -(g0 + h0w*pw) / h00
		cut := 1.0
		if math.Abs(pw) > maxTurn {
			cut = maxTurn / math.Abs(pw)
		}
		slope := g0*p0 + gw*pw
		slack := 1e-13 * s.mass * m.length
		taken := false
		for range 30 {
			to, td := other+cut*pw, d+cut*p0
			if x, y, z = h.up(angle, to); z < cosStop {
				return Point{Other: to}, false
			}
			m.at(x, y, z, td, &t)
			if residual < 1e-7 {
				g0, g1, g2, _, _ := m.forces(x, y, z, &t)
				now := max(math.Abs(g0), math.Abs(w1*g1+w2*g2)/m.length) / t.mass
				taken = now < residual
			}
			if taken || residual > tolerated && t.energy <= s.energy+1e-4*cut*slope+slack {
				other, d, taken = to, td, true
				*s = t
				break
			}
			cut /= 2
		}
		if !taken {
			if stuck || residual > tolerated {
				return Point{Other: other}, false
			}
			stuck = true
			x, y, z = h.up(angle, other)
		}
	}
	return Point{Other: other}, false
}

// edge returns the height of the lowest corner.
func (h *holder) edge(x, y, z, d float64) float64 {
	corners := h.platform.Corners
	if len(corners) == 0 {
		return 0
	}
	low := math.Inf(1)
	for _, c := range corners {
		low = min(low, (x+h.tx)*c.X+(y+h.ty)*c.Y+z*c.Z+d-h.platform.Wave.level(c))
	}
	return low
}

// noLever is a lever that counts as none, m: a dock that rests upright has it.
const noLever = 1e-12

// see looks for marks between two neighbouring points.
func (c *Curve) see(h *holder, a, b Point) {
	if !c.Rest.Found && a.Lever <= noLever && b.Lever > noLever {
		c.Rest = h.solve(a, b, func(p Point) float64 { return p.Lever })
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
