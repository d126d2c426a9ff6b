package rack

import "math"

// A segment is a piece of a member or a board between two points, with the
// joints at its ends if it is the first or the last of its member. Its own x runs
// from a to b.
type segment struct {
	a, b       int // points
	member     int // -1: a board
	x          float64
	h          float64
	cos, sin   float64
	ea, ei, ga float64
	ends       [2]End
	points     []Load  // forces and couples on it, by its own x
	spreads    []Load  // spread loads on it, by its own x
	plain      lying   // what the loads do to it, simply held
	forms      [3]form // stretch and the two turns off the chord, of movements
}

// A form is a sum of unknowns with coefficients.
type form struct {
	dof [6]int
	c   [6]float64
}

// of returns the form's value at movements x.
func (f *form) of(x []float64) float64 {
	var sum float64
	for k, i := range f.dof {
		sum += f.c[k] * x[i]
	}
	return sum
}

// onto adds a force that works on the form.
func (f *form) onto(out []float64, force float64) {
	for k, i := range f.dof {
		out[i] += f.c[k] * force
	}
}

// lying is what loads do to a segment held like a simple beam, along at its near
// end: totals and reactions, stretch and turns of its ends. The turns are those
// times EI and, of shear, times GA; the stretch is that times EA.
type lying struct {
	along     float64 // sum of the forces along
	near, far float64 // reactions across
	stretch   float64
	turn      [2]float64
	shear     float64
}

// spread lays the part of a spread load that lies on the segment on it.
func (s *segment) spread(l Load) {
	from, to := math.Max(l.From, s.x), math.Min(l.To, s.x+s.h)
	if !(to > from) {
		return
	}
	share := func(rise, x float64) float64 { return rise * (x - l.From) / (l.To - l.From) }
	s.spreads = append(s.spreads, Load{
		From: from - s.x, To: to - s.x,
		Along: l.Along + share(l.AlongRise, from), AlongRise: share(l.AlongRise, to) - share(l.AlongRise, from),
		Across: l.Across + share(l.AcrossRise, from), AcrossRise: share(l.AcrossRise, to) - share(l.AcrossRise, from),
	})
}

// lay finds what the loads do to the segment simply held.
func (s *segment) lay() {
	p := &s.plain
	var across, moment float64 // sum across, and about the far end
	for _, l := range s.points {
		p.along += l.Along
		p.stretch += l.Along * l.From
		across += l.Across
		moment += l.Couple - l.Across*(s.h-l.From)
		p.shear += l.Couple / s.h
	}
	for _, l := range s.spreads {
		w := l.To - l.From
		n, q := w*(l.Along+l.AlongRise/2), w*(l.Across+l.AcrossRise/2)
		p.along += n
		p.stretch += float64(n*l.From) + w*w*(l.Along+2*(l.Along+l.AlongRise))/6
		across += q
		moment -= float64(q*(s.h-l.From)) - w*w*(l.Across+2*(l.Across+l.AcrossRise))/6
	}
	if len(s.points)+len(s.spreads) == 0 {
		return
	}
	p.near = moment / s.h
	p.far = -across - p.near
	// Turns of the ends by virtual work. The moments are cubic at most, and
	// three Gauss points are exact for them times a straight line.
	s.pieces(func(from, to float64) {
		for k, t := range gauss {
			x := from + (to-from)*t
			m := s.inside(x, false, [3]float64{0, p.near, 0})[2] * gaussWeight[k] * (to - from)
			p.turn[0] -= m * (1 - x/s.h)
			p.turn[1] += m * x / s.h
		}
	})
}

var (
	gauss       = [3]float64{0.5 - 0.3872983346207417, 0.5, 0.5 + 0.3872983346207417} // sqrt(15)/10 off the middle
	gaussWeight = [3]float64{5.0 / 18, 8.0 / 18, 5.0 / 18}
)

// pieces calls f for each stretch of the segment over which its diagrams are
// polynomials, in order.
func (s *segment) pieces(f func(from, to float64)) {
	var few [8]float64
	cuts := few[:0]
	for _, l := range s.points {
		cuts = append(cuts, l.From)
	}
	for _, l := range s.spreads {
		cuts = append(cuts, l.From, l.To)
	}
	from := 0.0
	for from < s.h {
		to := s.h
		for _, x := range cuts {
			if x > from && x < to {
				to = x
			}
		}
		f(from, to)
		from = to
	}
}

// upTo returns the sum and the moment about x of the part before x of a spread
// load, of value a at From and so much more at To.
func upTo(l *Load, a, rise, x float64) (sum, about float64) {
	w := math.Min(x, l.To) - l.From
	if w <= 0 {
		return 0, 0
	}
	end := a + rise*w/(l.To-l.From)
	sum = w * (a + end) / 2
	return sum, float64(sum*(x-l.From)) - w*w*(a+2*end)/6
}

// inside returns axial force, shear and moment at x of a segment whose near end
// has those given. Forces and couples right at x count as passed unless before.
func (s *segment) inside(x float64, before bool, near [3]float64) [3]float64 {
	axial, shear, moment := near[0], near[1], near[2]+float64(near[1]*x)
	for i := range s.points {
		if l := &s.points[i]; l.From < x || l.From == x && !before {
			axial -= l.Along
			shear += l.Across
			moment += float64(l.Across*(x-l.From)) - l.Couple
		}
	}
	for i := range s.spreads {
		l := &s.spreads[i]
		n, _ := upTo(l, l.Along, l.AlongRise, x)
		q, about := upTo(l, l.Across, l.AcrossRise, x)
		axial -= n
		shear += q
		moment += about
	}
	return [3]float64{axial, shear, moment}
}

// springs are how a segment resists its stretch and its two turns, with the joints
// at its ends, and how far the loads alone move them.
type springs struct {
	along float64
	turn  [2][2]float64
	free  [3]float64
	slip  [2][2]float64 // compliance of the two ends along and across
	turns [2]float64    // stiffness of the two ends against turning
}

// stiffness returns the segment's springs, its ends as given.
func (s *segment) stiffness(ends [2]End) springs {
	var k springs
	for e := range ends {
		k.slip[e] = [2]float64{1 / ends[e].Along, 1 / ends[e].Across}
		k.turns[e] = ends[e].Turn
	}
	p := &s.plain
	k.along = 1 / (s.h/s.ea + k.slip[0][0] + k.slip[1][0])
	k.free[0] = p.stretch/s.ea + p.along*k.slip[0][0]

	tilt := (float64(p.near*k.slip[0][1]) - float64(p.far*k.slip[1][1])) / s.h
	slide := (k.slip[0][1] + k.slip[1][1]) / (s.h * s.h)
	if s.ga > 0 {
		slide += 1 / (s.ga * s.h)
		tilt += p.shear / s.ga
	}
	k.free[1] = p.turn[0]/s.ei + tilt
	k.free[2] = p.turn[1]/s.ei + tilt

	bend := s.h / s.ei
	switch a, b := ends[0].Turn, ends[1].Turn; {
	case a > 0 && b > 0:
		f1, f2, f12 := bend/3+1/a, bend/3+1/b, -bend/6
		det := f1*f2 - f12*f12 + slide*(f1+f2-2*f12)
		k.turn = [2][2]float64{{(f2 + slide) / det, -(f12 + slide) / det}, {-(f12 + slide) / det, (f1 + slide) / det}}
	case a > 0:
		k.turn[0][0] = 1 / (bend/3 + 1/a + slide)
	case b > 0:
		k.turn[1][1] = 1 / (bend/3 + 1/b + slide)
	}
	return k
}

// inner returns the axial force at the far end and the couples, counter-clockwise,
// that the nodes exert on the ends, at a stretch and two turns.
func (k *springs) inner(stretch, turn1, turn2 float64) (axial, m1, m2 float64) {
	d1, d2 := turn1-k.free[1], turn2-k.free[2]
	return k.along * (stretch - k.free[0]), float64(k.turn[0][0]*d1) + float64(k.turn[0][1]*d2), float64(k.turn[1][0]*d1) + float64(k.turn[1][1]*d2)
}

// setForms writes the segment's stretch and turns as sums of the unknowns.
func (s *segment) setForms(points []point) {
	a, b := &points[s.a], &points[s.b]
	for i := range s.forms {
		s.forms[i].dof = [6]int{a.first, a.first + 1, a.first + 2, b.first, b.first + 1, b.first + 2}
	}
	put := func(f *form, end int, p *point, gx, gy, turn float64) {
		f.c[3*end] = float64(gx*p.cos) + float64(gy*p.sin)
		f.c[3*end+1] = float64(gy*p.cos) - float64(gx*p.sin)
		f.c[3*end+2] = turn
	}
	put(&s.forms[0], 0, a, -s.cos, -s.sin, 0)
	put(&s.forms[0], 1, b, s.cos, s.sin, 0)
	for i, turns := range [2][2]float64{{1, 0}, {0, 1}} {
		f := &s.forms[1+i]
		put(f, 0, a, -s.sin/s.h, s.cos/s.h, turns[0])
		put(f, 1, b, s.sin/s.h, -s.cos/s.h, turns[1])
	}
}
