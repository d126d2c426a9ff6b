package frame

import (
	"fmt"
	"math"
	"strconv"
)

func itoa(i int) string { return strconv.Itoa(i) }

// Solve finds the equilibrium by beam theory: the movements, forces and diagrams
// under the beam's loads. Rigid rests are taken out of the unknowns, not made stiff;
// springs and supports that let go are met by Newton's method with a step that
// never climbs the energy. The result is exact up to rounding, which Residual
// reports.
//
// Bad data gives a [*measure.Error], a beam that can move freely a
// [*MechanismError], and a state that could not be found [ErrUnsettled].
func (b *Beam) Solve() (*Line, error) {
	s, err := b.assemble(nil)
	if err != nil {
		return nil, err
	}
	t, err := s.settle()
	if err != nil {
		return nil, err
	}
	return s.line(t)
}

// bend returns shear and moment at the near end of span p, whose far end has
// turned by turn and moved off its near end's tangent by off, beyond what its
// loads alone do.
func (s *system) bend(p *span, turn, off float64) (shear, moment float64) {
	shear = 12 * p.e * (float64(p.h*turn/2) - off)
	return shear, float64(s.ei*turn/p.h) - float64(shear*p.h/2)
}

// ends returns shear and moment at the near end of span i at movements x.
func (s *system) ends(i int, x []two) (shear, moment float64) {
	p, a, b := &s.spans[i], &s.joints[i], &s.joints[i+1]
	turn := x[b.left].minus(x[a.right]) - p.turn
	return s.bend(p, turn, offLine(x[b.w], x[a.w], x[a.right], p.h)-p.fall)
}

// forces implements body.
func (s *system) forces(t *trial) {
	for i := range s.joints {
		j := &s.joints[i]
		t.out[j.w] -= j.force
		t.out[j.left] += j.couple
	}
	for i := range s.spans {
		p, a, b := &s.spans[i], &s.joints[i], &s.joints[i+1]
		shear, moment := s.ends(i, t.x)
		farShear := shear + p.shear
		farMoment := moment + float64(shear*p.h) + p.moment
		t.out[a.w] -= shear
		t.out[a.right] += moment
		t.out[b.w] += farShear
		t.out[b.left] -= farMoment
		t.scale = max(t.scale, math.Abs(shear), math.Abs(farShear), math.Abs(moment)/s.length, math.Abs(farMoment)/s.length)
	}
}

// stored implements body.
func (s *system) stored(v []float64) float64 {
	var sum float64
	for i := range s.spans {
		p, a, b := &s.spans[i], &s.joints[i], &s.joints[i+1]
		turn := v[b.left] - v[a.right]
		off := offLine(two{hi: v[b.w]}, two{hi: v[a.w]}, two{hi: v[a.right]}, p.h)
		shear, moment := s.bend(p, turn, off)
		sum += -shear*off + float64(moment+shear*p.h)*turn
	}
	return sum
}

// called implements body.
func (s *system) called(i int) string {
	for k, r := range s.beam.Rests {
		if r.Support == nil {
			continue
		}
		if i == 0 {
			return s.beam.name(k)
		}
		i--
	}
	return ""
}

// describe implements body.
func (s *system) describe(v []float64) error {
	best, top := 0, 0.0
	for i := range s.joints {
		if w := math.Abs(v[s.joints[i].w]); w > top*(1+1e-9) {
			best, top = i, w
		}
	}
	j := &s.joints[best]
	e := &MechanismError{Place: fmt.Sprintf("x = %.3f m", noMinus(j.x, 3)), X: j.x}
	turn := v[j.left]
	if best == 0 {
		turn = v[j.right]
	}
	fold := -1
	for i := range s.joints {
		if h := &s.joints[i]; h.hinged && math.Abs(v[h.left]-v[h.right])*s.length > 1e-6*top {
			fold = i
			break
		}
	}
	switch {
	case fold >= 0:
		e.Motion = fmt.Sprintf("folds at the hinge at x = %.3f m", s.joints[fold].x)
	case math.Abs(turn)*s.length <= 0.1*top:
		e.Motion = "moves up or down"
	default:
		about := j.x - v[j.w]/turn
		e.Motion = fmt.Sprintf("turns about x = %.3f m", noMinus(about, 3))
	}
	return e
}

// line writes down the diagrams of the state t.
func (s *system) line(t *trial) (*Line, error) {
	b := s.beam
	l := &Line{
		EI: b.EI, GA: b.GA, Residual: t.residual(),
		Push: make([]float64, len(b.Rests)), Couple: make([]float64, len(b.Rests)), Places: make([]string, len(b.Rests)),
		Pieces: make([]Piece, 0, len(s.stretches)),
	}
	next := 0 // bearing
	for i, r := range b.Rests {
		l.Places[i] = r.Name
		if r.Name == "" {
			l.Places[i] = "rest at " + strconv.FormatFloat(noMinus(r.At, 3), 'f', 3, 64) + " m"
		}
		j := &s.joints[s.at[i]]
		if r.Support == nil {
			l.Push[i] = -t.out[j.w] + 0
		} else {
			l.Push[i] = t.push[next]
			l.Energy += t.energy[next]
			next++
		}
		if j.clamp == i {
			l.Couple[i] = -t.out[j.left] + 0
		}
	}
	for i := range s.spans {
		p, a := &s.spans[i], &s.joints[i]
		shear, moment := s.ends(i, t.x)
		d := Diagram{X: a.x, Shear: shear, Moment: moment, Slope: t.x[a.right].hi, Deflection: t.x[a.w].hi}
		l.Pieces = trace(l.Pieces, s.stretches[p.first:p.after], d, s.ei, s.ga)
	}
	if err := l.finite(); err != nil {
		return nil, err
	}
	l.Energy += l.strain()
	return l, nil
}

// trace appends the pieces of a row of stretches that begins in state d.
func trace(pieces []Piece, row []stretch, d Diagram, ei, ga float64) []Piece {
	for k := range row {
		st := &row[k]
		d = st.begin(d)
		pieces = append(pieces, Piece{Start: d, To: st.x + st.h, Q: st.q, QTo: st.q + float64(st.rise*st.h)})
		d = st.march(d, ei, ga)
	}
	return pieces
}

// finite returns an error if the numbers have overflowed.
func (l *Line) finite() error {
	for i := range l.Pieces {
		d := &l.Pieces[i].Start
		if sum := d.Shear + d.Moment + d.Slope + d.Deflection; math.IsNaN(sum) || math.IsInf(sum, 0) {
			return fmt.Errorf("frame: %w: the numbers overflow", ErrUnsettled)
		}
	}
	return nil
}

// strain returns the energy stored in the beam, J. Moments are cubic, so four
// Gauss points are exact.
func (l *Line) strain() float64 {
	x := [4]float64{-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526}
	w := [4]float64{0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538}
	var sum float64
	for i := range l.Pieces {
		c := l.curves(i)
		h := l.Pieces[i].To - l.Pieces[i].Start.X
		for k := range x {
			t := h / 2 * (1 + x[k])
			m, v := poly(c.moment[:]).at(t), poly(c.shear[:]).at(t)
			e := m * m / (2 * l.EI)
			if l.GA > 0 {
				e += v * v / (2 * l.GA)
			}
			sum += h / 2 * w[k] * e
		}
	}
	return sum
}
