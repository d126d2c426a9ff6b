package frame

import (
	"math"
	"sort"

	"example.org/floewright/lumber/measure"
)

// A joint is a place where a beam is held, hinged or ends. At a hinge the turns
// of its two sides are two unknowns.
type joint struct {
	x              float64
	w, left, right int     // unknowns: deflection, turn of the left and of the right side
	force, couple  float64 // loads that stand right here: down, counter-clockwise
	rigid          int     // rest that holds it rigidly, or -1
	clamp          int     // rest that holds its turn, or -1
	hinged         bool
	settled        float64 // of the rigid rest, down
}

// A span joins two neighbouring joints.
type span struct {
	h, e, phi    float64 // length, EI/(h³(1+φ)), φ = 12EI/(GA h²)
	first, after int     // its stretches
	// What the loads alone would do to a piece held at its near end: shear,
	// moment, turn and deflection at the far end.
	shear, moment, turn, fall float64
}

// A system is a beam prepared for solving.
type system struct {
	engine
	beam      *Beam
	ei, ga    float64
	joints    []joint
	spans     []span
	stretches []stretch
	end       jump  // imposed at the far end
	at        []int // joint of each rest
}

// places returns sorted places, one of each within the slack.
func places(xs []float64, tol float64) []float64 {
	sort.Float64s(xs)
	out := xs[:0]
	for _, x := range xs {
		if len(out) == 0 || x-out[len(out)-1] > tol {
			out = append(out, x)
		}
	}
	return out
}

// assemble prepares the beam. Extra jumps are imposed kinks and steps.
func (b *Beam) assemble(extra map[float64]jump) (*system, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	s := &system{beam: b, ei: b.EI, ga: b.GA}
	s.body, s.half, s.length = s, 3, b.Length
	s.soft = b.EI / (b.Length * b.Length * b.Length)
	if err := s.setJoints(b); err != nil {
		return nil, err
	}
	if err := s.setStretches(b, extra); err != nil {
		return nil, err
	}
	s.setSpans()
	return s, nil
}

// nearest returns the joint at x, or -1.
func (s *system) nearest(x, tol float64) int {
	i := sort.Search(len(s.joints), func(i int) bool { return s.joints[i].x >= x-tol })
	if i < len(s.joints) && math.Abs(s.joints[i].x-x) <= tol {
		return i
	}
	return -1
}

func (s *system) setJoints(b *Beam) error {
	tol := slack * b.Length
	xs := make([]float64, 0, 2+len(b.Rests)+len(b.Hinges))
	xs = append(xs, 0, b.Length)
	for _, r := range b.Rests {
		xs = append(xs, math.Min(math.Max(r.At, 0), b.Length))
	}
	xs = append(xs, b.Hinges...)
	xs = places(xs, tol)
	// The far end is a joint itself, never a rest just short of it.
	xs[len(xs)-1] = b.Length
	s.joints = make([]joint, len(xs))
	for i, x := range xs {
		s.joints[i] = joint{x: x, rigid: -1, clamp: -1}
	}
	tol *= 2 // the far end may have moved by one slack
	for _, h := range b.Hinges {
		s.joints[s.nearest(h, tol)].hinged = true
	}
	n := 0
	for i := range s.joints {
		j := &s.joints[i]
		if j.hinged {
			j.left, j.w, j.right = n, n+1, n+2
			n += 3
		} else {
			j.w, j.left, j.right = n, n+1, n+1
			n += 2
		}
	}
	s.fixed = make([]bool, n)
	s.x = make([]two, n)
	s.turns = make([]bool, n)
	for i := range s.joints {
		s.turns[s.joints[i].left], s.turns[s.joints[i].right] = true, true
	}
	s.at = make([]int, len(b.Rests))
	s.bearings = make([]bearing, 0, len(b.Rests))
	shares := make([]share, len(b.Rests))
	for i, r := range b.Rests {
		s.at[i] = s.nearest(math.Min(math.Max(r.At, 0), b.Length), tol)
		j := &s.joints[s.at[i]]
		if r.Support == nil {
			if j.rigid >= 0 {
				return &measure.Error{
					Field: b.name(i) + ".At", Text: "a second rigid rest at one place", Class: measure.ErrRange,
					Why: "they share the force in no definite way", Want: "one of them, or springs",
				}
			}
			j.rigid, j.settled = i, r.Settlement
			s.fixed[j.w] = true
			s.x[j.w] = two{hi: -r.Settlement}
		} else {
			s.bearings = append(s.bearings, bearing{
				support: r.Support, shares: shares[i : i+1 : i+1], down: r.Settlement,
			})
			shares[i] = share{j.w, 1}
		}
		if r.Clamped {
			if j.hinged || j.clamp >= 0 {
				return &measure.Error{
					Field: b.name(i) + ".Clamped", Text: "a second clamp at one place, or a clamp on a hinge",
					Class: measure.ErrRange, Want: "one clamp, beside the hinge",
				}
			}
			j.clamp = i
			s.fixed[j.left] = true
		}
	}
	return nil
}

// setStretches cuts the beam at joints and loads and lays the loads on.
func (s *system) setStretches(b *Beam, extra map[float64]jump) error {
	tol := slack * b.Length
	cuts := make([]float64, 0, len(s.joints)+2*len(b.Loads)+len(extra))
	inside := func(x float64) float64 {
		x = math.Min(math.Max(x, 0), b.Length)
		if i := s.nearest(x, tol); i >= 0 {
			return s.joints[i].x
		}
		return x
	}
	for _, j := range s.joints {
		cuts = append(cuts, j.x)
	}
	for _, l := range b.Loads {
		cuts = append(cuts, inside(l.From))
		if l.spread() {
			cuts = append(cuts, inside(l.To))
		}
	}
	for x := range extra {
		cuts = append(cuts, inside(x))
	}
	cuts = places(cuts, 0)
	s.stretches = make([]stretch, len(cuts)-1)
	for i := range s.stretches {
		s.stretches[i].x = cuts[i]
		s.stretches[i].h = cuts[i+1] - cuts[i]
	}
	find := func(x float64) int { return sort.SearchFloat64s(cuts, x) }
	for i, l := range b.Loads {
		s.load += l.size(b.Length)
		if l.spread() {
			l.over(s.stretches, inside(l.From), inside(l.To))
			continue
		}
		x := inside(l.From)
		if k := s.nearest(x, 0); k >= 0 {
			if l.M != 0 && s.joints[k].hinged {
				return &measure.Error{
					Field: "Loads[" + itoa(i) + "].M", Text: "a couple on a hinge", Class: measure.ErrRange,
					Why: "it belongs to one side of it", Want: "a place beside the hinge",
				}
			}
			s.joints[k].force += l.P
			s.joints[k].couple += l.M
			continue
		}
		st := &s.stretches[find(x)]
		st.force += l.P
		st.couple += l.M
	}
	for x, j := range extra {
		k := find(inside(x))
		if k == len(s.stretches) {
			s.end = j
			continue
		}
		s.stretches[k].kink += j.kink
		s.stretches[k].step += j.step
	}
	return nil
}

// setSpans finds each span's stiffness and what its loads do, and adds up the
// stiffness of the beam alone.
func (s *system) setSpans() {
	s.spans = make([]span, len(s.joints)-1)
	s.base = newBand(len(s.fixed), 3)
	k := 0
	for i := range s.spans {
		a, b := &s.joints[i], &s.joints[i+1]
		p := &s.spans[i]
		p.h = b.x - a.x
		if s.ga > 0 {
			p.phi = 12 * s.ei / (s.ga * p.h * p.h)
		}
		p.e = s.ei / (p.h * p.h * p.h * (1 + p.phi))
		p.first = k
		var d Diagram
		for ; k < len(s.stretches) && s.stretches[k].x < b.x; k++ {
			d = s.stretches[k].begin(d)
			d = s.stretches[k].march(d, s.ei, s.ga)
		}
		p.after = k
		if i == len(s.spans)-1 {
			d.Slope += s.end.kink
			d.Deflection += s.end.step
		}
		p.shear, p.moment, p.turn, p.fall = d.Shear, d.Moment, d.Slope, d.Deflection

		w, t := 12*p.e, 6*p.e*p.h
		s.stiffest = max(s.stiffest, w)
		near, far := (4+p.phi)*p.e*p.h*p.h, (2-p.phi)*p.e*p.h*p.h
		*s.base.at(a.w, a.w) += w
		*s.base.at(b.w, b.w) += w
		*s.base.at(a.w, b.w) -= w
		*s.base.at(a.w, a.right) += t
		*s.base.at(a.w, b.left) += t
		*s.base.at(b.w, a.right) -= t
		*s.base.at(b.w, b.left) -= t
		*s.base.at(a.right, a.right) += near
		*s.base.at(b.left, b.left) += near
		*s.base.at(a.right, b.left) += far
	}
}
