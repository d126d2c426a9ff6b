package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

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
