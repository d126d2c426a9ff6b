package frame

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Solve finds the equilibrium of the frame under its loads, as [Beam.Solve] does
// for a beam: rigid seats are taken out of the unknowns,
// supports that let go are met by Newton's method on the energy, and the
// diagrams of every member are exact.
//
// Bad data gives a [*measure.Error]; a frame, or a loose part of it, that can
// move freely a [*MechanismError] that names the node and the motion; one that
// has lost its stability, with the heights of its weights, a [*CapsizeError]; a
// state that could not be found [ErrUnsettled].
func (g *Grillage) Solve() (*Solution, error) { return g.solve(nil) }

// SolveFrom is [Grillage.Solve] from the movements of an earlier solution of the
// same nodes, which it may be near: it is faster, and of several states of balance
// of a frame afloat it finds the one near by.
func (g *Grillage) SolveFrom(earlier *Solution) (*Solution, error) {
	if earlier == nil || len(earlier.Move) != len(g.Nodes) {
		return nil, &measure.Error{Field: "earlier", Class: measure.ErrRange, Want: "a solution with the movements of " + itoa(len(g.Nodes)) + " nodes"}
	}
	return g.solve(earlier.Move)
}

func (g *Grillage) solve(from [][3]float64) (*Solution, error) {
	s, err := g.assemble()
	if err != nil {
		return nil, err
	}
	defer s.free()
	if err := s.begin(from); err != nil {
		return nil, err
	}
	t, err := s.settle()
	if err != nil {
		return nil, err
	}
	return s.solution(t)
}

// begin sets the movements to start from; given ones stay.
func (s *grid) begin(from [][3]float64) error {
	for i, m := range from {
		for k, v := range m {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return &measure.Error{Field: "earlier.Move[" + itoa(i) + "]", Value: m[k], Class: measure.ErrRange, Want: "finite movements"}
			}
		}
		c := &s.corners[i]
		for _, x := range []struct {
			dof int
			v   float64
		}{{c.w, m[0]}, {c.r1, m[1]*c.cos + m[2]*c.sin}, {c.r2, m[2]*c.cos - m[1]*c.sin}} {
			if !s.fixed[x.dof] {
				s.x[x.dof] = two{hi: x.v}
			}
		}
	}
	s.began = from != nil
	return nil
}

// forces implements body.
func (s *grid) forces(t *trial) {
	for i, f := range s.forces3 {
		c := &s.corners[i]
		t.out[c.w] += f[0]
		t.out[c.r1] += f[1]
		t.out[c.r2] += f[2]
	}
	for i := range s.bars {
		p := &s.bars[i]
		shear, moment, _, torque := p.inner(t.x, 1)
		farShear := shear + p.load.Shear
		farMoment := moment + float64(shear*p.h) + p.load.Moment
		if p.HingeJ {
			farMoment = 0
		}
		t.out[p.a.w] -= shear
		t.out[p.b.w] += farShear
		t.out[p.a.r1] += float64(moment*p.a.slope1) + float64(torque*p.a.twist1)
		t.out[p.a.r2] += float64(moment*p.a.slope2) + float64(torque*p.a.twist2)
		t.out[p.b.r1] -= float64(farMoment*p.b.slope1) + float64(torque*p.b.twist1)
		t.out[p.b.r2] -= float64(farMoment*p.b.slope2) + float64(torque*p.b.twist2)
		t.scale = max(t.scale, math.Abs(shear), math.Abs(farShear), max(math.Abs(moment), math.Abs(farMoment), math.Abs(torque))/s.length)
	}
}

// stored implements body.
func (s *grid) stored(v []float64) float64 {
	x := make([]two, len(v))
	for i := range v {
		x[i].hi = v[i]
	}
	var sum float64
	for i := range s.bars {
		p := &s.bars[i]
		shear, moment, _, torque := p.inner(x, 0)
		// A bar without loads: the energy from its end forces.
		sum += moment*moment*p.h/p.EI + moment*shear*p.h*p.h/p.EI + shear*shear*p.h*p.h*p.h/(3*p.EI)
		if p.GA > 0 {
			sum += shear * shear * p.h / p.GA
		}
		if p.twist > 0 {
			sum += torque * torque / p.twist
		}
	}
	return sum
}

// called implements body.
func (s *grid) called(i int) string { return s.of.seat(s.seats[i]) }
