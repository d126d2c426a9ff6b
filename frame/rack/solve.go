package rack

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"

	"example.org/floewright/lumber/measure"
)

// A bond is a screw or a hold as a spring on sums of the unknowns.
type bond struct {
	form form
	k    float64
}

// A system is a mesh with every stiffness known.
type system struct {
	*mesh
	springs  []springs // by segment
	bonds    []bond    // two for each tie, then those of the holds
	diagonal []float64
	fixed    []bool
	band     blas64.SymmetricBand
	factored blas64.TriangularBand
	scale    float64 // of the forces met in balancing
	holding  [][3]int
}

// A state is a system in balance.
type state struct {
	*system
	x        []float64
	ends     []ends    // by segment
	pulls    []float64 // by bond
	left     []float64 // by unknown: what is out of balance; fixed ones carry it
	residual float64
}

// ends are what holds a segment: its diagrams at the near end, and the couples
// and forces of its nodes on it.
type ends struct {
	near   [3]float64 // axial force, shear, moment
	axial  [2]float64 // stretching
	across [2]float64 // of the nodes, to the left
	couple [2]float64 // of the nodes, counter-clockwise
}

// Solve finds the equilibrium of the frame under its loads, by beam theory in its
// plane: movements, the forces of every joint, screw and hold, and the diagrams of the
// members.
//
// Bad data gives a [*measure.Error]; a frame, or a part of it, that can move
// without resistance a [*MechanismError] that names the node and the motion; a
// frame afloat whose loads do not balance an [*ImbalanceError];
// stiffnesses so far apart that nothing is left of the small ones [ErrUnsettled].
func (f *Frame) Solve() (*Solution, error) {
	m, err := f.cutting()
	if err != nil {
		return nil, err
	}
	for i := range m.segments {
		m.segments[i].setForms(m.points)
	}
	trials, unknown := m.trials()
	states := make([]*state, len(trials))
	for i := range trials {
		if states[i], err = m.try(&trials[i]); err != nil {
			return nil, err
		}
	}
	return m.solution(trials, states, unknown), nil
}

// try solves for one trial. Lines that would have to push hang slack: the one that
// would push most is let go, and what was let go taken up again where it is
// stretched, until nothing changes.
func (m *mesh) try(t *trial) (*state, error) {
	slack := make([]bool, len(m.f.Holds))
	for range 4*len(slack) + 1 {
		s := m.assemble(t, slack)
		if err := first(s.couples(), s.factor()); err != nil {
			return nil, err
		}
		r, err := s.settle()
		if err != nil {
			return nil, err
		}
		worst, least, changed := -1, 0.0, false
		for i := range m.f.Holds {
			if !m.f.Holds[i].Line || s.holding[i][0] < 0 {
				continue
			}
			stretched := -s.bonds[s.holding[i][0]].form.of(r.x)
			switch {
			case slack[i] && stretched > 0:
				slack[i], changed = false, true
			case !slack[i] && stretched*m.f.Holds[i].Along < least:
				worst, least = i, stretched*m.f.Holds[i].Along
			}
		}
		if !changed && (worst < 0 || least >= -1e-12*s.scale) {
			return r, nil
		}
		if worst >= 0 {
			slack[worst] = true
		}
	}
	return nil, fmt.Errorf("rack: %w: which lines hang slack", ErrUnsettled)
}

// put writes a movement of point p, and a turn about it, into a form's end.
func (f *form) put(end int, p *point, gx, gy, turn float64) {
	f.dof[3*end], f.dof[3*end+1], f.dof[3*end+2] = p.first, p.first+1, p.first+2
	f.c[3*end] += float64(gx*p.cos) + float64(gy*p.sin)
	f.c[3*end+1] += float64(gy*p.cos) - float64(gx*p.sin)
	f.c[3*end+2] += turn
}

// assemble adds up the stiffness, slack lines left out.
func (m *mesh) assemble(t *trial, slack []bool) *system {
	n := 3 * len(m.points)
	k := min(m.half, n-1)
	s := &system{
		mesh: m, springs: make([]springs, len(m.segments)), diagonal: make([]float64, n), fixed: make([]bool, n),
		bonds: make([]bond, 0, 2*len(m.ties)+3*len(m.f.Holds)),
		band:  blas64.SymmetricBand{Uplo: blas.Upper, N: n, K: k, Stride: k + 1, Data: make([]float64, n*(k+1))},
	}
	for i := range m.segments {
		g := &m.segments[i]
		e := g.ends
		if g.member >= 0 {
			e = [2]End{t.end(e[0], 2*g.member), t.end(e[1], 2*g.member+1)}
		}
		k := g.stiffness(e)
		s.springs[i] = k
		a, b, c := &g.forms[0], &g.forms[1], &g.forms[2]
		for p := range a.dof {
			for q := range a.dof {
				if a.dof[q] >= a.dof[p] {
					s.add(a.dof[p], a.dof[q], k.along*a.c[p]*a.c[q]+
						k.turn[0][0]*b.c[p]*b.c[q]+k.turn[1][1]*c.c[p]*c.c[q]+
						k.turn[0][1]*(b.c[p]*c.c[q]+c.c[p]*b.c[q]))
				}
			}
		}
	}
	for i := range m.ties {
		d := &m.ties[i]
		k := t.slip(d.slip, i)
		a, b := &m.points[d.a], &m.points[d.b]
		var x, y form
		x.put(0, a, -1, 0, d.armA[1])
		x.put(1, b, 1, 0, -d.armB[1])
		y.put(0, a, 0, -1, -d.armA[0])
		y.put(1, b, 0, 1, d.armB[0])
		s.bonds = append(s.bonds, bond{x, k}, bond{y, k})
	}
	for i := range m.f.Holds {
		s.hold(&m.f.Holds[i], slack[i])
	}
	if m.afloat { // no force stays on these: the loads balance
		p, q := m.points[m.pins[0]].first, m.points[m.pins[1]].first
		s.fixed[p], s.fixed[p+1], s.fixed[q+1] = true, true, true
	}
	for i := range s.bonds {
		b := &s.bonds[i]
		for p := range b.form.dof {
			for q := range b.form.dof {
				if b.form.dof[q] >= b.form.dof[p] && b.form.c[p] != 0 && b.form.c[q] != 0 {
					s.add(b.form.dof[p], b.form.dof[q], b.k*b.form.c[p]*b.form.c[q])
				}
			}
		}
	}
	for i := range s.diagonal {
		s.diagonal[i] = *s.at(i, i)
		if i%3 == 2 && s.diagonal[i] == 0 { // every member turns freely here
			s.fixed[i] = true
		}
	}
	for i, is := range s.fixed {
		if is {
			s.fix(i)
		}
	}
	return s
}

// hold puts a hold on: springs, and unknowns that are fixed.
func (s *system) hold(h *Hold, slack bool) {
	p := &s.points[h.Node]
	sin, cos := math.Sincos(h.Angle)
	var by [3]int // the bond of each direction, or one less than minus the fixed unknown
	for k, give := range [3]float64{h.Along, h.Across, h.Turn} {
		if firm(give) {
			s.fixed[p.first+k] = true
			by[k] = -1 - (p.first + k)
			continue
		}
		var f form
		switch k {
		case 0:
			f.put(0, p, cos, sin, 0)
		case 1:
			f.put(0, p, -sin, cos, 0)
		case 2:
			f.put(0, p, 0, 0, 1)
		}
		f.dof[3], f.dof[4], f.dof[5] = p.first, p.first, p.first // of no account
		by[k] = len(s.bonds)
		if slack {
			give = 0
		}
		s.bonds = append(s.bonds, bond{f, give})
	}
	s.holding = append(s.holding, by)
}

// at returns the place of element (i, j), j not before i.
func (s *system) at(i, j int) *float64 { return &s.band.Data[i*s.band.Stride+j-i] }

func (s *system) add(i, j int, v float64) { *s.at(i, j) += v }

// fix replaces row and column i by those of the unit matrix.
func (s *system) fix(i int) {
	for j := max(0, i-s.band.K); j < i; j++ {
		*s.at(j, i) = 0
	}
	for j := i; j < min(s.band.N, i+s.band.K+1); j++ {
		*s.at(i, j) = 0
	}
	*s.at(i, i) = 1
}

// couples returns an error if a couple acts where nothing takes it.
func (s *system) couples() error {
	for i := range s.points {
		dof := s.points[i].first + 2
		if s.diagonal[dof] == 0 && s.loads[i][2] != 0 && !s.heldTurn(i) {
			return &measure.Error{
				Field: "couple on " + s.place(i), Kind: measure.Moment, Value: s.loads[i][2], Class: measure.ErrRange,
				Why: "every member turns freely there", Want: "a couple on a member, or a joint that resists turning",
			}
		}
	}
	return nil
}

// heldTurn reports whether a hold prevents point i from turning.
func (s *system) heldTurn(i int) bool {
	return s.holds[i] >= 0 && firm(s.f.Holds[s.holds[i]].Turn)
}

// settle solves for the movements, and once more for what rounding has left.
func (s *system) settle() (*state, error) {
	n := len(s.diagonal)
	t := &state{system: s, x: make([]float64, n), ends: make([]ends, len(s.segments)), pulls: make([]float64, len(s.bonds))}
	out := make([]float64, n)
	for range 3 {
		s.balance(t, out)
		for i := range out {
			if s.fixed[i] {
				out[i] = 0
			}
		}
		lapack64.Pbtrs(s.factored, blas64.General{Rows: n, Cols: 1, Stride: 1, Data: out})
		for i := range out {
			t.x[i] += out[i]
		}
	}
	s.balance(t, out)
	t.left = out
	size := s.size()
	for i, r := range out {
		if i%3 == 2 {
			r /= size
		}
		if math.IsNaN(r) || math.IsInf(r, 0) || math.IsNaN(t.x[i]) {
			return nil, fmt.Errorf("rack: %w: the numbers overflow", ErrUnsettled)
		}
		if !s.fixed[i] {
			t.residual = math.Max(t.residual, math.Abs(r))
		}
	}
	if s.scale > 0 {
		t.residual /= s.scale
	}
	if t.residual > 1e-6 {
		return nil, fmt.Errorf("rack: %w: forces out of balance by a part of %.1g", ErrUnsettled, t.residual)
	}
	if s.afloat {
		s.center(t.x)
	}
	return t, nil
}

// balance finds all inner forces at the movements of t, and what is left over on
// every unknown.
func (s *system) balance(t *state, out []float64) {
	clear(out)
	s.scale = 0
	size := s.size()
	meet := func(force, couple float64) {
		s.scale = math.Max(s.scale, math.Max(math.Abs(force), math.Abs(couple)/size))
	}
	push := func(p *point, x, y, couple float64) {
		out[p.first] += float64(x*p.cos) + float64(y*p.sin)
		out[p.first+1] += float64(y*p.cos) - float64(x*p.sin)
		out[p.first+2] += couple
	}
	for i, l := range s.loads {
		push(&s.points[i], l[0], l[1], l[2])
		meet(math.Hypot(l[0], l[1]), l[2])
	}
	for i := range s.segments {
		g, k, e := &s.segments[i], &s.springs[i], &t.ends[i]
		axial, m1, m2 := k.inner(g.forms[0].of(t.x), g.forms[1].of(t.x), g.forms[2].of(t.x))
		shear := (m1 + m2) / g.h
		e.axial = [2]float64{axial + g.plain.along, axial}
		e.across = [2]float64{shear + g.plain.near, g.plain.far - shear}
		e.couple = [2]float64{m1, m2}
		e.near = [3]float64{e.axial[0], e.across[0], -m1}
		for end, p := range [2]*point{&s.points[g.a], &s.points[g.b]} {
			x := e.axial[end]
			if end == 1 {
				x = -x
			}
			y := -e.across[end]
			push(p, float64(x*g.cos)-float64(y*g.sin), float64(x*g.sin)+float64(y*g.cos), -e.couple[end])
			meet(x, e.couple[end])
			meet(y, 0)
		}
	}
	for i := range s.bonds {
		b := &s.bonds[i]
		t.pulls[i] = b.k * b.form.of(t.x)
		b.form.onto(out, -t.pulls[i])
		meet(t.pulls[i], 0)
	}
}
