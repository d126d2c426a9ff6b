package frame

import (
	"fmt"
	"math"
)

// Limits of the solver, all counts or pure numbers.
const (
	fine     = 2e-14 // imbalance, relative, that counts as none
	good     = 1e-9  // imbalance that a result may be left with
	maxSteps = 200
	rounding = 0x1p-53
	leftover = 0x1p-96 // rounding of a movement kept in two parts, with room
	doubtful = 1e-9    // relative pivot below which a motion is examined
	alike    = 1e-3    // change of a stiffness for which the factors still serve
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
// deflections, taken downward, less down, and what its tilts add.
type bearing struct {
	support Support
	shares  []share
	down    float64
	tilts   []tilt
}

// A tilt is how a support whose push acts at a height above its nodes sinks by
// their turning: half the height times the square of its shares of the turns.
type tilt struct {
	height float64
	shares []share
}

// A top is a weight at a height above its node: a turn lowers it by half the
// height times its square. Moment is weight times height, N·m.
type top struct {
	dof    int
	moment float64
}

// An engine finds the state of balance of a body on its bearings.
type engine struct {
	body     body
	half     int       // half band of the stiffness
	fixed    []bool    // unknowns that are given
	turns    []bool    // unknowns that are rotations, not deflections
	x        []two     // given movements; the rest zero, or where it begins
	began    bool      // x says where it begins
	base     *band     // stiffness of the body alone
	diagonal []float64 // of the stiffness as last factored
	bearings []bearing
	tops     []top
	tilting  bool    // there are tops or tilts: the energy need not be convex
	last     *trial  // examined last, for putting its loss of balance into words
	length   float64 // size of the body, m
	soft     float64 // N/m, a stiffness of the body as a whole: EI over length cubed
	load     float64 // sum of the loads' sizes, N
	stiffest float64 // largest resistance of an unknown to moving, N/m
}

// settle finds the movements at which everything balances.
func (e *engine) settle() (*trial, error) {
	now, next, best := e.newTrial(), e.newTrial(), e.newTrial()
	copy(now.x, e.x)
	n := len(e.x)
	k := newBand(n, e.half)
	defer k.free()
	e.diagonal = make([]float64, n)
	step := make([]float64, n)
	factored := make([]float64, 2*len(e.bearings)) // stiffness in k, and pushes at heights
	have := false
	best.left = math.Inf(1)
	stalled := 0
	soften := 1.0
	if e.began {
		e.balance(now)
	} else {
		e.float(now)
	}
	for count := range maxSteps {
		if now.badSupport != nil {
			return nil, now.badSupport
		}
		same := have
		for i, v := range now.stiffness {
			same = same && math.Abs(v-factored[i]) <= alike*factored[i]
		}
		if e.tilting {
			for i, v := range now.push {
				same = same && math.Abs(v-factored[len(now.stiffness)+i]) <= alike*now.scale
			}
		}
		shifted := false
		if !same {
			var err error
			shifted, err = e.tangent(k, now, soften, count == 0)
			if err != nil {
				return nil, err
			}
			copy(factored[copy(factored, now.stiffness):], now.push)
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

// tangent factors the stiffness at the state t. Where supports have let go and
// leave a motion free, those are given a small stiffness, less from step to step
// (soften), so that the step moves towards them; shifted says so. So are all
// supports of a body that is tipping over. A motion that no support could hold is
// an error.
func (e *engine) tangent(k *band, t *trial, soften float64, first bool) (shifted bool, err error) {
	e.last = t
	e.tangentInto(k, t, 0)
	weakest, _ := k.factor()
	if weakest > doubtful || !e.loose(k, t, 0) {
		return false, nil
	}
	if first {
		if v, over := e.topple(t); over {
			// It has no stability even before it tilts.
			return false, e.body.describe(v)
		}
	}
	shift := max(e.load/(0.1*e.length)*soften, 1e-6*e.soft)
	for range 8 {
		e.tangentInto(k, t, shift)
		weakest, _ = k.factor()
		if weakest > doubtful || !e.loose(k, t, shift) {
			return true, nil
		}
		if !e.tilting {
			break
		}
		shift *= 10
	}
	return false, e.free(k, t)
}

// tangentInto fills k with the stiffness of the body and its bearings. Those
// that have none at present are given shift.
func (e *engine) tangentInto(k *band, t *trial, shift float64) {
	k.copyFrom(e.base)
	for i := range e.bearings {
		k.addSquare(e.tangentOf(t, i, shift), e.bearings[i].shares)
	}
	for i := range e.diagonal {
		e.diagonal[i] = *k.at(i, i)
	}
	if e.tilting {
		e.tiltInto(k, t, shift)
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
