package moor

import "math"

// straight is a line without weight: nothing until it is stretched, then a
// spring.
func straight(t *totals, chord, reach, rise float64, out *Hang) {
	*out = Hang{Reach: reach, Rise: rise}
	if chord <= t.length {
		return
	}
	tension := (chord - t.length) / t.give
	c, s := reach/chord, rise/chord
	out.Regime = Taut
	out.Pull, out.Down, out.Lift = tension*c, tension*s, tension*s
	along, across := 1/t.give, tension/chord
	out.Stiffness = [2][2]float64{
		{along*c*c + across*s*s, (along - across) * s * c},
		{(along - across) * s * c, along*s*s + across*c*c},
	}
}

// pullStraight is the inverse of straight: the downward pull v at which
// v (L/T + give) is the rise, a rising concave function that Newton climbs from
// the left.
func pullStraight(t *totals, pull, rise float64) Hang {
	v := 0.0
	for range maxSteps {
		tension := math.Hypot(pull, v)
		step := (math.Abs(rise) - v*(t.length/tension+t.give)) / (t.length*pull*pull/(tension*tension*tension) + t.give)
		v += step
		if math.Abs(step) <= 1e-15*(v+pull) {
			break
		}
	}
	var h Hang
	reach := pull * (t.length/math.Hypot(pull, v) + t.give)
	straight(t, math.Hypot(reach, rise), reach, rise, &h)
	return h
}

// slack returns the line hanging straight down from the dock end, at the
// greatest reach where it does; false if all of it is lifted even so.
func (l *Line) slack(t *totals, rise float64) (Hang, bool) {
	h := Hang{Rise: rise}
	if t.weight == 0 {
		if rise > t.length {
			return h, false
		}
		h.Reach = math.Sqrt(t.length*t.length - rise*rise)
		return h, true
	}
	// above: length, own stretch, weight and give of the pieces that hang whole.
	var above, stretch, weight, give float64
	for i := len(l.Pieces) - 1; i >= 0; i-- {
		p := &l.Pieces[i]
		w := p.load()
		left := rise - above - stretch
		hung := 0.0 // of this piece
		hold := math.Inf(1)
		if give > 0 {
			hold = left / give // the pull under the pieces above that lets them reach
		}
		switch {
		case hold <= p.Clump:
			// They reach before the weight at this piece's dock end lifts.
			h.Down, h.Lying = weight+hold, t.length-above
			h.Reach = h.Lying
			h.Stiffness[1][1] = 1 / give
			return h, true
		default:
			left -= p.Clump * give
			// x + w give x + w x²/(2 EA) = left, for the hanging part x.
			b := 1 + w*give
			a := 0.0
			if p.Stretch > 0 {
				a = w / p.Stretch
			}
			hung = 2 * left / (b + math.Sqrt(b*b+2*a*left))
		}
		if hung <= p.Length {
			pull := p.Clump + w*hung
			h.Down, h.Lying = weight+pull, t.length-above-hung
			h.Reach = h.Lying
			give += ratio(hung, p.Stretch)
			h.Stiffness[1][1] = 1 / (give + 1/w)
			return h, true
		}
		// It hangs whole: its own weight stretches it, what hangs below stretches
		// it and all above.
		own := p.Clump + w*p.Length
		stretch += own*give + w*p.Length*ratio(p.Length, p.Stretch)/2
		give += ratio(p.Length, p.Stretch)
		weight += own
		above += p.Length
	}
	return h, false
}

// ratio returns a/b, 0 where b is the 0 of something that does not stretch.
func ratio(a, b float64) float64 {
	if b == 0 {
		return 0
	}
	return a / b
}
