package frame

import (
	"fmt"
	"math"
	"strconv"

	"example.org/floewright/lumber/measure"
)

func itoa(i int) string { return strconv.Itoa(i) }

// Limits of the solver, all counts or pure numbers.
const (
	fine     = 2e-14 // imbalance, relative, that counts as none
	good     = 1e-9  // imbalance that a result may be left with
	maxSteps = 200
	rounding = 0x1p-53
	leftover = 0x1p-96 // rounding of a movement kept in two parts, with room
	doubtful = 1e-9    // relative pivot below which a motion is examined
)

// A trial is the state of balance at given movements.
type trial struct {
	x          []two
	out        []float64 // force not balanced, by unknown
	push       []float64 // by rest; of a rigid one at the end only
	stiffness  []float64 // by rest
	energy     []float64 // by rest
	ends       [][2]float64
	left       float64 // largest imbalance, N
	scale      float64 // largest force, N
	moved      float64 // without loads, stiffest resistance times largest movement, N
	badSupport error
}

func (s *system) newTrial() *trial {
	return &trial{
		x: make([]two, len(s.x)), out: make([]float64, len(s.x)),
		push: make([]float64, len(s.rests)), stiffness: make([]float64, len(s.rests)), energy: make([]float64, len(s.rests)),
		ends: make([][2]float64, len(s.spans)),
	}
}

// balance fills in forces and imbalance at the movements t.x.
func (s *system) balance(t *trial) {
	clear(t.out)
	t.badSupport = nil
	t.scale = s.load
	stiffest := s.stiffest
	for i := range s.joints {
		j := &s.joints[i]
		t.out[j.w] -= j.force
		if j.couple != 0 {
			t.out[j.left] += j.couple
		}
	}
	for i := range s.spans {
		p := &s.spans[i]
		a, b := &s.joints[i], &s.joints[i+1]
		// The far end's turn and place, relative to the near end's tangent and
		// to what the loads alone would have done.
		turn := t.x[b.left].minus(t.x[a.right]) - p.turn
		off := offLine(t.x[b.w], t.x[a.w], t.x[a.right], p.h) - p.fall
		shear := 12 * p.e * (float64(p.h*turn/2) - off)
		moment := float64(s.ei*turn/p.h) - float64(shear*p.h/2)
		t.ends[i] = [2]float64{shear, moment}
		farShear := shear + p.shear
		farMoment := moment + float64(shear*p.h) + p.moment
		t.out[a.w] -= shear
		t.out[a.right] += moment
		t.out[b.w] += farShear
		t.out[b.left] -= farMoment
		t.scale = max(t.scale, math.Abs(shear), math.Abs(farShear), math.Abs(moment)/s.length, math.Abs(farMoment)/s.length)
	}
	for i := range s.rests {
		r := &s.rests[i]
		if r.Support == nil {
			continue
		}
		j := &s.joints[s.at[i]]
		sink := -t.x[j.w].plus(r.Settlement).sum()
		f, k, e := r.Support(sink)
		if math.IsNaN(f) || math.IsInf(f, 0) || !(k >= 0) || math.IsInf(k, 1) {
			t.badSupport = s.refuse(i, sink, f, k)
			return
		}
		t.push[i], t.stiffness[i], t.energy[i] = f, k, e
		t.out[j.w] += f
		t.scale = max(t.scale, math.Abs(f))
		stiffest = max(stiffest, k)
	}
	moved := 0.0
	for i := range s.joints {
		j := &s.joints[i]
		turned := max(math.Abs(t.x[j.left].hi), math.Abs(t.x[j.right].hi))
		moved = max(moved, math.Abs(t.x[j.w].hi), turned*s.length)
	}
	t.moved = 0
	if s.load == 0 {
		t.moved = stiffest * moved
	}
	t.left = 0
	for i := range s.joints {
		j := &s.joints[i]
		if !s.fixed[j.w] {
			t.left = max(t.left, math.Abs(t.out[j.w]))
		}
		for _, d := range [2]int{j.left, j.right} {
			if !s.fixed[d] {
				t.left = max(t.left, math.Abs(t.out[d])/s.length)
			}
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

func (s *system) refuse(i int, sink, force, stiffness float64) error {
	return &measure.Error{
		Field: s.beam.name(i) + ".Support",
		Text:  fmt.Sprintf("force %g N, stiffness %g N/m at a sinkage of %g m", force, stiffness, sink),
		Class: measure.ErrRange,
		Want:  "a finite force and a finite stiffness of at least 0 N/m",
	}
}

// Solve finds the state of balance: the movements, forces and diagrams under
// the beam's loads. Rigid rests are taken out of the unknowns, not made stiff;
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

// settle finds the movements at which everything balances.
func (s *system) settle() (*trial, error) {
	now, next := s.newTrial(), s.newTrial()
	best := s.newTrial()
	copy(now.x, s.x)
	n := len(s.x)
	k := newBand(n, 3)
	step := make([]float64, n)
	factored := make([]float64, len(s.rests)) // stiffness in k
	have := false
	best.left = math.Inf(1)
	stalled := 0
	soften := 1.0
	s.balance(now)
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
			shifted, err = s.tangent(k, now, soften)
			if err != nil {
				return nil, err
			}
			copy(factored, now.stiffness)
			have = !shifted
		}
		if shifted {
			soften /= 10
			if s.adrift(now.x) {
				return nil, s.describe(step)
			}
		} else {
			soften = 1
		}
		// The tangent was examined above, so balance on it is a real rest.
		stalled++
		if !(now.left >= best.left) {
			if now.left < best.left/4 {
				stalled = 0
			}
			copy(best.x, now.x)
			s.balance(best)
		}
		if !shifted && (now.balanced(fine) || stalled >= 2 && best.settled()) {
			return best, s.within(best.x)
		}
		if shifted && now.balanced(fine) {
			// Balanced, but nothing would bring it back.
			return nil, s.free(k, now)
		}
		copy(step, now.out)
		for i, f := range s.fixed {
			if f {
				step[i] = 0
			}
		}
		k.solve(step)
		if err := s.advance(now, next, step); err != nil {
			return nil, err
		}
		now, next = next, now
	}
	return nil, fmt.Errorf("frame: %w: %d steps left an imbalance of %.1g of the largest force", ErrUnsettled, maxSteps, best.residual())
}

// tangent factors the stiffness at the state t. Where supports have let go and
// leave a motion free, those are given a small stiffness, less from step to step
// (soften), so that the step moves towards them; shifted says so. A motion that
// no support could hold is an error.
func (s *system) tangent(k *band, t *trial, soften float64) (shifted bool, err error) {
	s.tangentInto(k, t, 0)
	weakest, _ := k.factor()
	if weakest > doubtful {
		return false, nil
	}
	if !s.loose(k, t, 0) {
		return false, nil
	}
	shift := max(s.load/(0.1*s.length)*soften, 1e-6*s.ei/(s.length*s.length*s.length))
	s.tangentInto(k, t, shift)
	weakest, _ = k.factor()
	if weakest > doubtful || !s.loose(k, t, shift) {
		return true, nil
	}
	return false, s.free(k, t)
}

// tangentInto fills k with the stiffness of the beam and its supports. Those
// that have none at present are given shift.
func (s *system) tangentInto(k *band, t *trial, shift float64) {
	k.copyFrom(s.base)
	for i := range s.rests {
		if s.rests[i].Support != nil {
			w := s.joints[s.at[i]].w
			*k.at(w, w) += t.tangent(i, shift)
		}
	}
	for i := range s.diagonal {
		s.diagonal[i] = *k.at(i, i)
	}
	for i, f := range s.fixed {
		if f {
			k.fix(i)
		}
	}
}

// tangent returns the stiffness of rest i, or shift where it has none.
func (t *trial) tangent(i int, shift float64) float64 {
	if t.stiffness[i] > 0 {
		return t.stiffness[i]
	}
	return shift
}

// within returns an error if the movements are beyond all bounds: what resists
// them is as good as nothing.
func (s *system) within(x []two) error {
	if !s.adrift(x) {
		return nil
	}
	v := make([]float64, len(x))
	for i := range x {
		v[i] = x[i].hi
	}
	return s.describe(v)
}

// adrift reports whether a movement is far past anything small: ten thousand
// times the beam's length.
func (s *system) adrift(x []two) bool {
	for i := range s.joints {
		if math.Abs(x[s.joints[i].w].hi) > 1e4*s.length {
			return true
		}
	}
	return false
}

// advance sets next to the state a step ahead of now. The step is shortened or
// lengthened until the slope of the energy along it has dropped to half, which
// in a convex energy means that it never climbs.
func (s *system) advance(now, next *trial, step []float64) error {
	slope := func(t *trial) float64 {
		var g float64
		for i, v := range t.out {
			if !s.fixed[i] {
				g -= float64(v * step[i])
			}
		}
		return g
	}
	try := func(a float64) float64 {
		for i := range now.x {
			if s.fixed[i] {
				next.x[i] = now.x[i]
			} else {
				next.x[i] = now.x[i].plus(float64(a * step[i]))
			}
		}
		s.balance(next)
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
			return s.describe(step)
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

// line writes down the diagrams of the state t.
func (s *system) line(t *trial) (*Line, error) {
	b := s.beam
	l := &Line{
		EI: b.EI, GA: b.GA, Residual: t.residual(),
		Push: t.push, Couple: make([]float64, len(s.rests)), Places: make([]string, len(s.rests)),
		Pieces: make([]Piece, 0, len(s.stretches)),
	}
	for i := range s.rests {
		l.Places[i] = b.Rests[i].Name
		if l.Places[i] == "" {
			l.Places[i] = "rest at " + strconv.FormatFloat(noMinus(b.Rests[i].At, 3), 'f', 3, 64) + " m"
		}
		if j := &s.joints[s.at[i]]; j.rigid == i {
			l.Push[i] = -t.out[j.w] + 0
		}
		if j := &s.joints[s.at[i]]; j.clamp == i {
			l.Couple[i] = -t.out[j.left] + 0
		}
		if s.rests[i].Support != nil {
			l.Energy += t.energy[i]
		}
	}
	for i := range s.spans {
		p := &s.spans[i]
		a := &s.joints[i]
		d := Diagram{X: a.x, Shear: t.ends[i][0], Moment: t.ends[i][1], Slope: t.x[a.right].hi, Deflection: t.x[a.w].hi}
		for k := p.first; k < p.after; k++ {
			d = s.stretches[k].begin(d)
			st := &s.stretches[k]
			l.Pieces = append(l.Pieces, Piece{Start: d, To: st.x + st.h, Q: st.q, QTo: st.q + float64(st.rise*st.h)})
			d = s.march(d, k)
		}
	}
	l.Energy += l.strain()
	for i := range l.Pieces {
		d := l.Pieces[i].Start
		if sum := d.Shear + d.Moment + d.Slope + d.Deflection; math.IsNaN(sum) || math.IsInf(sum, 0) {
			return nil, fmt.Errorf("frame: %w: the numbers overflow", ErrUnsettled)
		}
	}
	return l, nil
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
