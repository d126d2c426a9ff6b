package rack

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"

	"example.org/floewright/internal/fault"
)

// ErrMechanism is the class of every [*MechanismError]; package frame has the same value.
var ErrMechanism = fault.ErrMechanism

// ErrUnsettled is given when no state of balance was found within the rounding
// of the numbers: stiffnesses or lengths wildly apart. Package frame has the same value.
var ErrUnsettled = fault.ErrUnsettled

// A MechanismError says that a part is free to move: no brace and no stiff
// corner, a hinge too many, too few holds, lines that all hang slack.
type MechanismError struct {
	Place  string  // what moves most: "node corner at (0.000, 2.400) m"
	X, Y   float64 // where that is, m
	Motion string  // how it moves: "moves along x against the rest"
}

// Error names the place and the motion.
func (e *MechanismError) Error() string {
	return fmt.Sprintf("rack: %s at %s: it %s", ErrMechanism.Error(), e.Place, e.Motion)
}

// Unwrap returns [ErrMechanism].
func (e *MechanismError) Unwrap() error { return ErrMechanism }

// weak is how small a pivot, relative to its own diagonal, calls for a look at
// the softest motion; loose how small the energy of that motion is, relative to
// the unknowns each alone, when it is free. A free motion leaves 1e-30, the
// softest of a frame of a thousand bays some 1e-13.
const weak, loose = 1e-7, 1e-18

// factor factors the stiffness and looks for motions that nothing resists.
func (s *system) factor() error {
	s.measure()
	for i, d := range s.diagonal {
		if d == 0 && !s.fixed[i] {
			v := make([]float64, len(s.diagonal))
			v[i] = 1
			return s.describe(v)
		}
	}
	ok := s.decompose(0)
	least := math.Inf(1)
	for i, d := range s.diagonal {
		if ok && !s.fixed[i] {
			u := s.factored.Data[i*s.factored.Stride]
			least = math.Min(least, u*u/d)
		}
	}
	if ok && least >= weak {
		return nil
	}
	if !ok && !s.decompose(1e-11) {
		return fmt.Errorf("rack: %w: stiffnesses too far apart", ErrUnsettled)
	}
	v := s.softest()
	if s.stored(v) > loose {
		if ok {
			return nil
		}
		return fmt.Errorf("rack: %w: stiffnesses too far apart", ErrUnsettled)
	}
	return s.describe(v)
}

// measure brings the diagonal into the measure that pivots are held against: of
// a point's two movements the stiffer counts for both, so that rounding of a
// member's direction is no stiffness.
func (s *system) measure() {
	for i := range s.points {
		k := s.points[i].first
		top := math.Max(s.diagonal[k], s.diagonal[k+1])
		s.diagonal[k], s.diagonal[k+1] = top, top
	}
}

// decompose factors the stiffness with a part of its diagonal added.
func (s *system) decompose(shift float64) bool {
	data := make([]float64, len(s.band.Data))
	copy(data, s.band.Data)
	for i, d := range s.diagonal {
		data[i*s.band.Stride] += shift * d
	}
	t, ok := lapack64.Pbtrf(blas64.SymmetricBand{Uplo: blas.Upper, N: s.band.N, K: s.band.K, Stride: s.band.Stride, Data: data})
	s.factored = t
	return ok
}

// softest returns the motion that the factored stiffness resists least, each
// unknown measured by its own stiffness, its largest part 1: inverse iteration
// from a move as a whole with a little of everything.
func (s *system) softest() []float64 {
	v := make([]float64, len(s.diagonal))
	for i := range v {
		v[i] = 0.01 * math.Sin(float64(7*i+1))
		if i%3 != 2 {
			v[i]++
		}
	}
	for range 5 {
		for i := range v {
			v[i] *= s.diagonal[i]
			if s.fixed[i] {
				v[i] = 0
			}
		}
		lapack64.Pbtrs(s.factored, blas64.General{Rows: len(v), Cols: 1, Stride: 1, Data: v})
		top := 0.0
		for i := range v {
			top = max(top, math.Abs(v[i]))
		}
		if !(top > 0) || math.IsInf(top, 1) {
			break
		}
		for i := range v {
			v[i] /= top
		}
	}
	return v
}

// stored returns the energy of a motion relative to that of its unknowns each
// alone. It is taken from what members and joints suffer, in which a free motion
// leaves no rounding behind.
func (s *system) stored(v []float64) float64 {
	var energy, size float64
	for i := range s.segments {
		g, k := &s.segments[i], &s.springs[i]
		a, b, c := g.forms[0].of(v), g.forms[1].of(v), g.forms[2].of(v)
		energy += k.along*a*a + k.turn[0][0]*b*b + k.turn[1][1]*c*c + 2*k.turn[0][1]*b*c
	}
	for i := range s.bonds {
		d := s.bonds[i].form.of(v)
		energy += s.bonds[i].k * d * d
	}
	for i, v := range v {
		size += v * v * s.diagonal[i]
	}
	return energy / size
}

// place returns what a point is called, and where it is.
func (m *mesh) place(i int) string {
	p := &m.points[i]
	name := ""
	switch {
	case p.member >= 0:
		name = fmt.Sprintf("%s, %.3f m along", m.f.member(p.member), p.at)
	case p.board >= 0:
		name = fmt.Sprintf("%s, %.3f m along", m.f.board(p.board), p.at)
	default:
		name = m.f.node(i)
	}
	return fmt.Sprintf("%s at (%.3f, %.3f) m", name, tidy(p.x, 3), tidy(p.y, 3))
}

// tidy clears the sign of a number that prints as zero.
func tidy(x float64, decimals int) float64 {
	if math.Abs(x) < 0.5*math.Pow10(-decimals) {
		return 0
	}
	return x
}

// describe returns the error that says how v moves.
func (m *mesh) describe(v []float64) error {
	best, top, spin, turned := 0, 0.0, 0, 0.0
	for i := range m.points {
		if d := math.Hypot(m.points[i].moved(v)); d > top*(1+1e-6) {
			best, top = i, d
		}
		if r := math.Abs(v[m.points[i].first+2]); r > turned*(1+1e-6) {
			spin, turned = i, r
		}
	}
	e := &MechanismError{Motion: "turns on the spot"}
	if top <= 1e-6*turned*m.size() {
		best = spin
	} else {
		e.Motion = m.motion(v, best, top)
	}
	e.Place, e.X, e.Y = m.place(best), m.points[best].x, m.points[best].y
	return e
}

// motion says how the point that moves most moves, and whether all that moves
// does so as one.
func (m *mesh) motion(v []float64, best int, top float64) string {
	p := &m.points[best]
	u, w := p.moved(v)
	turn, one := m.asOne(v, top)
	way := fmt.Sprintf("moves at %.0f degrees from x", math.Mod(math.Atan2(w, u)*180/math.Pi+180, 180))
	switch {
	case math.Abs(w) <= 1e-3*top:
		way = "moves along x"
	case math.Abs(u) <= 1e-3*top:
		way = "moves along y"
	}
	switch {
	case !one:
		return way + " against the rest"
	case math.Abs(turn)*m.size() <= 0.01*top:
		return way
	}
	return fmt.Sprintf("turns about (%.3f, %.3f) m", tidy(p.x-w/turn, 3), tidy(p.y+u/turn, 3))
}

// asOne returns the turn of the rigid movement nearest to that of all points that
// move, and whether they move so.
func (m *mesh) asOne(v []float64, top float64) (turn float64, one bool) {
	var n, x, y, u, w, polar float64
	each := func(do func(p *point, du, dw float64)) {
		for i := range m.points {
			du, dw := m.points[i].moved(v)
			if math.Hypot(du, dw) > 1e-6*top {
				do(&m.points[i], du, dw)
			}
		}
	}
	each(func(p *point, du, dw float64) { n, x, y, u, w = n+1, x+p.x, y+p.y, u+du, w+dw })
	x, y, u, w = x/n, y/n, u/n, w/n
	each(func(p *point, du, dw float64) {
		dx, dy := p.x-x, p.y-y
		turn += float64(dx*(dw-w)) - float64(dy*(du-u))
		polar += float64(dx*dx) + float64(dy*dy)
	})
	if polar > 0 {
		turn /= polar
	}
	one = true
	each(func(p *point, du, dw float64) {
		off := math.Hypot(du-u+float64(turn*(p.y-y)), dw-w-float64(turn*(p.x-x)))
		one = one && off <= 1e-3*top
	})
	return turn, one
}
