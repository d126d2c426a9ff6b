package moor

import (
	"math"
)

// A tide finds rests of one mooring at one level after another; it keeps the
// lines as they hung last.
type tide struct {
	m      *Mooring
	totals []totals
	level  float64
	hangs  []Hang
	trial  []Hang
	q      [3]float64    // x, y, turn
	k      [3][3]float64 // stiffness there
}

func newTide(m *Mooring) (*tide, error) {
	if err := m.check(); err != nil {
		return nil, err
	}
	s := &tide{m: m, totals: make([]totals, len(m.Ties)), hangs: make([]Hang, len(m.Ties)), trial: make([]Hang, len(m.Ties))}
	for i := range m.Ties {
		s.totals[i], _ = m.Ties[i].Line.check()
	}
	return s, nil
}

// set moves to a level with the dock unmoved. It fails where a line's end would
// lie above its fitting, or does not reach.
func (s *tide) set(level float64) error {
	if err := anyLength.Check("level", level); err != nil {
		return err
	}
	s.level = level
	for i := range s.m.Ties {
		t := &s.m.Ties[i]
		if err := t.Line.checkRise(level + t.Height - t.FootZ); err != nil {
			return named(t.Name, err)
		}
	}
	s.q = [3]float64{}
	return nil
}

// eval returns what is left of a load with the dock at q, and the stiffness;
// -1, or the tie that does not reach.
func (s *tide) eval(q [3]float64, load Load, r *[3]float64, k *[3][3]float64) int {
	*r = [3]float64{load.X, load.Y, load.Turn}
	*k = [3][3]float64{}
	for i := range s.m.Ties {
		t := &s.m.Ties[i]
		ux, uy, reach, ax, ay := t.toward(q[0], q[1], q[2])
		h := &s.trial[i]
		if t.Line.Shore && reach == 0 || !t.Line.hang(&s.totals[i], reach, s.level+t.Height-t.FootZ, s.hangs[i], h) {
			return i
		}
		across := 0.0
		if reach > 0 {
			across = h.Pull / reach
		}
		add(r, k, ax, ay, h.Pull*ux, h.Pull*uy, ux, uy, h.Stiffness[0][0], across)
	}
	for i := range s.m.Posts {
		p := &s.m.Posts[i]
		fx, fy, ux, uy, along, across, ax, ay := p.push(q)
		add(r, k, ax, ay, fx, fy, ux, uy, along, across)
	}
	return -1
}

// find moves the dock to rest under a load, from where it is.
//
// Lines, posts and load have an energy, convex but for large turns: Newton steps
// run down it, with a shift where it is flat (all slack) and shortened where it
// is steep or a line would not reach. Where that stalls, as on a dock that swings
// round a tight line, the dock drifts to rest instead.
func (s *tide) find(load Load) error {
	arm := s.arm()
	pushed := math.Abs(load.X) + math.Abs(load.Y) + math.Abs(load.Turn)/arm + 1e-6
	start := s.q
	var r [3]float64
	if i := s.eval(s.q, load, &r, &s.k); i >= 0 {
		return &ReachError{s.m.Ties[i].Name, s.level}
	}
	copy(s.hangs, s.trial)
	if s.newton(load, r, pushed, arm) {
		return nil
	}
	s.q = start
	s.eval(s.q, load, &r, &s.k)
	copy(s.hangs, s.trial)
	if s.drift(load, r, pushed, arm) {
		return nil
	}
	return ErrAdrift
}

// balanced reports whether what is left of the load is nothing beside what the
// lines pull.
func (s *tide) balanced(r [3]float64, pushed, arm float64) (scale float64, ok bool) {
	scale = pushed
	for i := range s.hangs {
		scale += s.hangs[i].Pull
	}
	return scale, math.Abs(r[0]) <= 1e-10*scale && math.Abs(r[1]) <= 1e-10*scale && math.Abs(r[2]) <= 1e-10*scale*arm
}

func left(r [3]float64, arm float64) float64 {
	return math.Abs(r[0]) + math.Abs(r[1]) + math.Abs(r[2])/arm
}

// finest reports whether a step is below what places resolve, on a dock between
// bar-tight lines, with little left of the load.
func finest(d, r [3]float64, size, arm, scale float64) bool {
	return left(d, 1/arm) <= 1e-12*size && left(r, arm) <= 1e-5*scale
}

func (s *tide) newton(load Load, r [3]float64, pushed, arm float64) bool {
	size := s.size()
	var r1 [3]float64
	var k1 [3][3]float64
	for range 60 {
		scale, ok := s.balanced(r, pushed, arm)
		if ok {
			return true
		}
		d := downhill(s.k, r, arm, scale/size, 0)
		if finest(d, r, size, arm, scale) {
			return true
		}
		if far := math.Max(math.Hypot(d[0], d[1])/(size/4), math.Abs(d[2])/0.3); far > 1 {
			for i := range d {
				d[i] /= far
			}
		}
		slope := r[0]*d[0] + r[1]*d[1] + r[2]*d[2]
		step, done := 1.0, false
		for range 50 {
			q := [3]float64{s.q[0] + step*d[0], s.q[1] + step*d[1], s.q[2] + step*d[2]}
			if s.eval(q, load, &r1, &k1) >= 0 {
				step /= 2
				continue
			}
			past := -(r1[0]*d[0] + r1[1]*d[1] + r1[2]*d[2])
			if past > 0.7*slope && step > 1e-12 {
				step *= math.Max(0.1, math.Min(0.8, slope/(slope+past)))
				continue
			}
			s.q, r, s.k, done = q, r1, k1, true
			copy(s.hangs, s.trial)
			break
		}
		if !done {
			return false
		}
	}
	return false
}

// drift lets the dock move as through honey, with a resistance per step that
// falls as long as the lines stay about as tight as the load makes them. A
// larger resistance shortens the way along a tight line and leaves the way off
// it, which shortening the whole step would not.
func (s *tide) drift(load Load, r [3]float64, pushed, arm float64) bool {
	size := s.size()
	var r1 [3]float64
	var k1 [3][3]float64
	drag := left(r, arm) / (size / 4)
	for range 4000 {
		scale, ok := s.balanced(r, pushed, arm)
		if ok {
			return true
		}
		d := downhill(s.k, r, arm, scale/size, drag)
		if drag == 0 && finest(d, r, size, arm, scale) {
			return true
		}
		q := [3]float64{s.q[0] + d[0], s.q[1] + d[1], s.q[2] + d[2]}
		if math.Hypot(d[0], d[1]) > size/4 || math.Abs(d[2]) > 0.3 || s.eval(q, load, &r1, &k1) >= 0 || !(left(r1, arm) <= math.Max(2*pushed, 0.99*left(r, arm))) {
			if drag = 4*drag + 1e-9*scale/size; drag > 1e15*scale/size {
				return false
			}
			continue
		}
		s.q, r, s.k = q, r1, k1
		copy(s.hangs, s.trial)
		drag /= 2
		if drag < 1e-9*scale/size {
			drag = 0
		}
	}
	return false
}

// size returns the size of the mooring, which bounds a step.
func (s *tide) size() float64 {
	size := 1.0
	for i := range s.totals {
		size = math.Max(size, s.totals[i].length)
	}
	return size
}

// arm returns the size of the dock, which compares a turn with a move.
func (s *tide) arm() float64 {
	arm := 1.0
	for i := range s.m.Ties {
		arm = math.Max(arm, math.Hypot(s.m.Ties[i].At[0], s.m.Ties[i].At[1]))
	}
	for i := range s.m.Posts {
		arm = math.Max(arm, math.Hypot(s.m.Posts[i].At[0], s.m.Posts[i].At[1]))
	}
	return arm
}

// Rest returns where the dock comes to rest with the water at the given level, m over
// the datum, under a load in unmoved axes, by equilibrium on plan. The dock's turn
// does not turn the load.
//
// It fails with a [ReachError] where a line does not reach the unmoved dock, and
// with ErrAdrift where nothing holds.
func (m *Mooring) Rest(level float64, load Load) (Position, error) {
	s, err := newTide(m)
	if err != nil {
		return Position{}, err
	}
	if err := first(s.set(level), load.check()); err != nil {
		return Position{}, err
	}
	if err := s.find(load); err != nil {
		return Position{}, err
	}
	return s.position(), nil
}

func (l Load) check() error {
	return first(anyForce.Check("load along", l.X), anyForce.Check("load across", l.Y), anyMoment.Check("turning load", l.Turn))
}

// position writes the rest down.
func (s *tide) position() Position {
	p := Position{Level: s.level, X: s.q[0], Y: s.q[1], Turn: s.q[2], Stiffness: s.k}
	for i := range 3 {
		for j := range i {
			p.Stiffness[i][j] = p.Stiffness[j][i]
		}
	}
	p.Hangs = append(p.Hangs, s.hangs...)
	for i := range s.m.Posts {
		fx, fy, _, _, _, _, _, _ := s.m.Posts[i].push(s.q)
		p.Pushes = append(p.Pushes, [2]float64{fx, fy})
	}
	return p
}
