package frame

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// Limits of the solver, all counts or pure numbers.
const (
	fine     = 2e-14 // imbalance, relative, that counts as none
	good     = 1e-9  // imbalance that a result may be left with
	maxSteps = 200
	rounding = 0x1p-53
	leftover = 0x1p-96 // rounding of a movement kept in two parts, with room
	doubtful = 1e-9    // relative pivot below which a motion is examined
)

// A body is what the solver moves: a beam or a grillage, without the supports
// that give.
type body interface {
	// forces adds to t.out what the loads and the bent members do to each
	// unknown at the movements t.x, and raises t.scale to the largest of them.
	forces(t *trial)
	// stored returns twice the energy that the members store in a motion.
	stored(v []float64) float64
	// called returns the name of a bearing.
	called(i int) string
	// describe puts a free motion into words.
	describe(v []float64) error
}

// A share is a part that one unknown deflection has in a support's sinkage.
type share struct {
	dof  int
	part float64
}

// A bearing is a support that gives. Its sinkage is the sum of its shares of the
// deflections, taken downward, less down.
type bearing struct {
	support Support
	shares  []share
	down    float64
}

// An engine finds the state of balance of a body on its bearings.
type engine struct {
	body     body
	half     int       // half band of the stiffness
	fixed    []bool    // unknowns that are given
	turns    []bool    // unknowns that are rotations, not deflections
	x        []two     // given movements; the rest zero
	base     *band     // stiffness of the body alone
	diagonal []float64 // of the stiffness as last factored
	bearings []bearing
	length   float64 // size of the body, m
	soft     float64 // N/m, a stiffness of the body as a whole: EI over length cubed
	load     float64 // sum of the loads' sizes, N
	stiffest float64 // largest resistance of an unknown to moving, N/m
}

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
		t.scale = max(t.scale, math.Abs(f))
		stiffest = max(stiffest, k)
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

// tangent returns the stiffness of bearing i, or shift where it has none.
func (t *trial) tangent(i int, shift float64) float64 {
	if t.stiffness[i] > 0 {
		return t.stiffness[i]
	}
	return shift
}

// settle finds the movements at which everything balances.
func (e *engine) settle() (*trial, error) {
	now, next, best := e.newTrial(), e.newTrial(), e.newTrial()
	copy(now.x, e.x)
	n := len(e.x)
	k := newBand(n, e.half)
	e.diagonal = make([]float64, n)
	step := make([]float64, n)
	factored := make([]float64, len(e.bearings)) // stiffness in k
	have := false
	best.left = math.Inf(1)
	stalled := 0
	soften := 1.0
	e.float(now)
	for range maxSteps {
		if now.badSupport != nil {
			return nil, now.badSupport
		}
		same := have
		for i, v := range now.stiffness {
			same = same && v == factored[i]
		}
		shifted := false
		if !same {
			var err error
			shifted, err = e.tangent(k, now, soften)
			if err != nil {
				return nil, err
			}
			copy(factored, now.stiffness)
			have = !shifted
		}
		if shifted {
			soften /= 10
			if e.adrift(now.x) {
				return nil, e.body.describe(step)
			}
		} else {
			soften = 1
		}
		stalled++
		if !(now.left >= best.left) {
			if now.left < best.left/4 {
				stalled = 0
			}
			best.copyFrom(now)
		}
		// The tangent was examined above, so balance on it is a real rest.
		if !shifted && (now.balanced(fine) || stalled >= 2 && best.settled()) {
			return best, e.within(best.x)
		}
		if shifted && now.balanced(fine) {
			// Balanced, but nothing would bring it back.
			return nil, e.free(k, now)
		}
		copy(step, now.out)
		for i, f := range e.fixed {
			if f {
				step[i] = 0
			}
		}
		k.solve(step)
		if err := e.advance(now, next, step); err != nil {
			return nil, err
		}
		now, next = next, now
	}
	return nil, fmt.Errorf("frame: %w: %d steps left an imbalance of %.1g of the largest force", ErrUnsettled, maxSteps, best.residual())
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
	// The level is sought between lo, where too little bears, and hi, where too
	// much does, by Newton's step or halving.
	level, lo, hi := 0.0, math.Inf(-1), math.Inf(1)
	for range 60 {
		if t.badSupport != nil {
			break
		}
		var missing, stiff float64
		for i, turn := range e.turns {
			if !turn {
				missing -= t.out[i]
			}
		}
		for _, k := range t.stiffness {
			stiff += k
		}
		if math.Abs(missing) <= 1e-3*e.load {
			return
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
			break
		}
		level = next
		for i, turn := range e.turns {
			if !turn {
				t.x[i] = two{hi: -level}
			}
		}
		e.balance(t)
	}
	copy(t.x, e.x)
	e.balance(t)
}

func (t *trial) copyFrom(o *trial) {
	copy(t.x, o.x)
	copy(t.out, o.out)
	copy(t.push, o.push)
	copy(t.stiffness, o.stiffness)
	copy(t.energy, o.energy)
	t.left, t.scale, t.moved = o.left, o.scale, o.moved
}

// tangent factors the stiffness at the state t. Where supports have let go and
// leave a motion free, those are given a small stiffness, less from step to step
// (soften), so that the step moves towards them; shifted says so. A motion that
// no support could hold is an error.
func (e *engine) tangent(k *band, t *trial, soften float64) (shifted bool, err error) {
	e.tangentInto(k, t, 0)
	weakest, _ := k.factor()
	if weakest > doubtful || !e.loose(k, t, 0) {
		return false, nil
	}
	shift := max(e.load/(0.1*e.length)*soften, 1e-6*e.soft)
	e.tangentInto(k, t, shift)
	weakest, _ = k.factor()
	if weakest > doubtful || !e.loose(k, t, shift) {
		return true, nil
	}
	return false, e.free(k, t)
}

// tangentInto fills k with the stiffness of the body and its bearings. Those
// that have none at present are given shift.
func (e *engine) tangentInto(k *band, t *trial, shift float64) {
	k.copyFrom(e.base)
	for i := range e.bearings {
		stiff := t.tangent(i, shift)
		shares := e.bearings[i].shares
		for j, s := range shares {
			*k.at(s.dof, s.dof) += stiff * s.part * s.part
			for _, r := range shares[:j] {
				*k.at(s.dof, r.dof) += stiff * s.part * r.part
			}
		}
	}
	for i := range e.diagonal {
		e.diagonal[i] = *k.at(i, i)
	}
	for i, f := range e.fixed {
		if f {
			k.fix(i)
		}
	}
}

// advance sets next to the state a step ahead of now. The step is shortened or
// lengthened until the slope of the energy along it has dropped to half, which
// in a convex energy means that it never climbs.
func (e *engine) advance(now, next *trial, step []float64) error {
	slope := func(t *trial) float64 {
		var g float64
		for i, v := range t.out {
			if !e.fixed[i] {
				g -= float64(v * step[i])
			}
		}
		return g
	}
	try := func(a float64) float64 {
		for i := range now.x {
			if e.fixed[i] {
				next.x[i] = now.x[i]
			} else {
				next.x[i] = now.x[i].plus(float64(a * step[i]))
			}
		}
		e.balance(next)
		return slope(next)
	}
	g0 := slope(now)
	g1 := try(1)
	// Close to the end the slope is rounding: take the whole step.
	if next.badSupport != nil || now.balanced(1e-10) || now.settled() || !(math.Abs(g1) > 0.5*math.Abs(g0)) {
		return nil
	}
	lo, glo, hi, ghi := 0.0, g0, 1.0, g1
	for ghi < 0 {
		lo, glo = hi, ghi
		hi *= 2
		if hi > 0x1p50 {
			// The energy falls for ever along the step.
			return e.body.describe(step)
		}
		ghi = try(hi)
		if next.badSupport != nil || math.Abs(ghi) <= 0.5*math.Abs(g0) {
			return nil
		}
	}
	for range 100 {
		a := lo + (hi-lo)*glo/(glo-ghi)
		// Regula falsi, kept off the ends so that each try cuts the bracket.
		a = math.Min(math.Max(a, lo+0.1*(hi-lo)), hi-0.1*(hi-lo))
		g := try(a)
		if next.badSupport != nil || math.Abs(g) <= 0.5*math.Abs(g0) {
			return nil
		}
		if g < 0 {
			lo, glo = a, g
		} else {
			hi, ghi = a, g
		}
	}
	return nil
}
