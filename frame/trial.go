package frame

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A trial is the state of balance at given movements.
type trial struct {
	x          []two
	out        []float64 // force not balanced, by unknown
	push       []float64 // by bearing
	stiffness  []float64 // by bearing
	energy     []float64 // by bearing
	left       float64   // largest imbalance, N
	scale      float64   // largest force, N
	moved      float64   // without loads, stiffest resistance times largest movement, N
	badSupport error
}

func (e *engine) newTrial() *trial {
	n, m := len(e.x), len(e.bearings)
	numbers := make([]float64, n+3*m)
	return &trial{
		x: make([]two, n), out: numbers[:n:n],
		push: numbers[n : n+m : n+m], stiffness: numbers[n+m : n+2*m : n+2*m], energy: numbers[n+2*m:],
	}
}

// balance fills in forces and imbalance at the movements t.x.
func (e *engine) balance(t *trial) {
	clear(t.out)
	t.badSupport = nil
	t.scale = e.load
	e.body.forces(t)
	stiffest := e.stiffest
	for i := range e.bearings {
		b := &e.bearings[i]
		var sunk two
		for _, s := range b.shares {
			sunk = sunk.plus(float64(-s.part * t.x[s.dof].hi)).plus(float64(-s.part * t.x[s.dof].lo))
		}
		for _, a := range b.tilts {
			turn := a.turn(t.x)
			sunk = sunk.plus(a.height / 2 * turn * turn)
		}
		sink := sunk.plus(-b.down).sum()
		f, k, u := b.support(sink)
		if math.IsNaN(f) || math.IsInf(f, 0) || !(k >= 0) || math.IsInf(k, 1) {
			t.badSupport = &measure.Error{
				Field: e.body.called(i) + ".Support",
				Text:  fmt.Sprintf("force %g N, stiffness %g N/m at a sinkage of %g m", f, k, sink),
				Class: measure.ErrRange,
				Want:  "a finite force and a finite stiffness of at least 0 N/m",
			}
			return
		}
		t.push[i], t.stiffness[i], t.energy[i] = f, k, u
		for _, s := range b.shares {
			t.out[s.dof] += f * s.part
		}
		for _, a := range b.tilts {
			turn := a.turn(t.x)
			for _, s := range a.shares {
				t.out[s.dof] -= f * a.height * turn * s.part
			}
		}
		t.scale = max(t.scale, math.Abs(f))
		stiffest = max(stiffest, k)
	}
	for _, p := range e.tops {
		t.out[p.dof] += p.moment * t.x[p.dof].hi
	}
	t.left, t.moved = 0, 0
	for i, turn := range e.turns {
		arm := 1.0
		if turn {
			arm = e.length
		}
		if !e.fixed[i] {
			t.left = max(t.left, math.Abs(t.out[i])/arm)
		}
		if e.load == 0 {
			t.moved = max(t.moved, stiffest*math.Abs(t.x[i].hi)*arm)
		}
	}
}

// balanced reports whether the imbalance is at most a part of the largest force.
func (t *trial) balanced(part float64) bool { return t.left <= part*t.scale }

// settled reports whether the state is as good as can be had. Where no forces
// are needed (an unloaded simple beam whose support has settled) all forces are
// rounding; then the measure is the rounding of the movements.
func (t *trial) settled() bool { return t.balanced(good) || t.left <= leftover*t.moved }

// residual returns the imbalance relative to the largest force, or to the force
// of one rounding of the movements where there are none.
func (t *trial) residual() float64 {
	if t.left == 0 {
		return 0
	}
	return t.left / max(t.scale, rounding*t.moved)
}

func (t *trial) copyFrom(o *trial) {
	copy(t.x, o.x)
	copy(t.out, o.out)
	copy(t.push, o.push)
	copy(t.stiffness, o.stiffness)
	copy(t.energy, o.energy)
	t.left, t.scale, t.moved = o.left, o.scale, o.moved
}

// float begins with the body flat at the level at which its bearings carry the
// load: with all of them idle there would be no stiffness to begin with. A body
// on rigid rests begins where it is.
func (e *engine) float(t *trial) {
	e.balance(t)
	if len(e.bearings) == 0 || e.load == 0 {
		return
	}
	for i, f := range e.fixed {
		if f && !e.turns[i] {
			return
		}
	}
	var load float64 // what the bearings must carry
	for i, turn := range e.turns {
		if !turn {
			load -= t.out[i]
		}
	}
	for _, p := range t.push {
		load += p
	}
	// The level is sought between lo, where too little bears, and hi, where too
	// much does, by Newton's step or halving.
	level, lo, hi := 0.0, math.Inf(-1), math.Inf(1)
	for range 60 {
		missing, stiff := load, 0.0
		for i := range e.bearings {
			b := &e.bearings[i]
			f, k, _ := b.support(level - b.down)
			missing -= f
			stiff += k
		}
		if math.IsNaN(missing) {
			return
		}
		if math.Abs(missing) <= 1e-3*e.load {
			break
		}
		if missing > 0 {
			lo = level
		} else {
			hi = level
		}
		next := level + missing/stiff
		switch bracketed := !math.IsInf(lo, 0) && !math.IsInf(hi, 0); {
		case bracketed && !(next > lo && next < hi):
			next = lo + (hi-lo)/2
		case !bracketed && !(math.Abs(next-level) <= 0.1*e.length):
			next = level + math.Copysign(max(0.01*e.length, math.Abs(level)), missing)
		}
		if math.Abs(next) > e.length {
			return
		}
		level = next
	}
	for i, turn := range e.turns {
		if !turn {
			t.x[i] = two{hi: -level}
		}
	}
	e.balance(t)
}
