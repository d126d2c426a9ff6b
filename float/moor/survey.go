package moor

import (
	"errors"
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// An Extreme is the worst that one tie or post meets in a survey.
type Extreme struct {
	Name      string
	Tension   float64 // N, at the dock; on a post the force
	Level     float64 // m
	Direction float64 // rad, the argument of the storm
	Hang      Hang    // of the tie then
}

// A Survey is a mooring under loads from all directions at all levels.
type Survey struct {
	Ties  []Extreme
	Posts []Extreme

	Offset          float64 // m, the farthest any corner of the dock's fittings moves
	OffsetLevel     float64 // m
	OffsetDirection float64 // rad
	Turn            float64 // rad, the most it turns either way

	// Checks follow every force to ground: fitting, each piece, each link and
	// ground of each tie, and fitting, post and ground of each post, each at its own
	// worst. One that ends in something undescribed has no answer.
	Checks []measure.Check
	Notes  []string
	Lost   string // the tie left out, if one was
	Err    error  // why there is no survey of a mooring with a lost tie
}

// A Storm returns the load on the dock of weather towards a direction, rad from
// the x axis to the y axis.
type Storm func(θ float64) (Load, error)

var (
	directionRange = measure.Range{Lo: 1, Hi: 3600, Source: srcOwn}
	levelRange     = measure.Range{Lo: 1, Hi: 10000, Source: srcOwn}
)

// Survey moors the dock under the storm from the given number of directions,
// evenly spread from 0, at each level, m over the datum: [Mooring.Rest] in each, and
// a check, whose rule names its source, of each part on the way to ground.
func (m *Mooring) Survey(levels []float64, storm Storm, directions int) (*Survey, error) {
	s, err := newTide(m)
	if err != nil {
		return nil, err
	}
	return s.survey(levels, storm, directions)
}

func (s *tide) survey(levels []float64, storm Storm, directions int) (*Survey, error) {
	if err := first(
		directionRange.Check("directions", float64(directions)), levelRange.Check("levels", float64(len(levels))),
	); err != nil {
		return nil, err
	}
	if storm == nil {
		return nil, unknown("storm", "the load from each direction")
	}
	loads := make([]Load, directions)
	for k := range loads {
		var err error
		if loads[k], err = storm(2 * math.Pi * float64(k) / float64(directions)); err != nil {
			return nil, err
		}
		if err := loads[k].check(); err != nil {
			return nil, err
		}
	}
	m := s.m
	out := &Survey{Ties: make([]Extreme, len(m.Ties)), Posts: make([]Extreme, len(m.Posts))}
	fronts := make([]front, len(m.Ties))
	pieces := make([][maxPieces]float64, len(m.Ties))
	for i := range out.Ties {
		out.Ties[i] = Extreme{Name: m.Ties[i].Name, Tension: -1}
	}
	for i := range out.Posts {
		out.Posts[i] = Extreme{Name: m.Posts[i].Name, Tension: -1}
	}
	out.Offset = -1
	wet := make([]bool, len(m.Ties)) // hangs in the water, though made for air
	for _, level := range levels {
		if err := s.set(level); err != nil {
			return nil, err
		}
		for k, load := range loads {
			if err := s.find(load); err != nil {
				return nil, err
			}
			θ := 2 * math.Pi * float64(k) / float64(directions)
			for i := range s.hangs {
				h := &s.hangs[i]
				e := &out.Ties[i]
				if t := h.Tension(); t > e.Tension {
					e.Tension, e.Level, e.Direction, e.Hang = t, level, θ, *h
				}
				fronts[i].add(pair{h.Pull, h.Lift})
				l := &m.Ties[i].Line
				if l.Shore && !wet[i] {
					wet[i] = l.dip(*h) > m.Ties[i].Height
				}
				for n := range l.Pieces {
					pieces[i][n] = math.Max(pieces[i][n], l.tension(n, *h))
				}
			}
			for i := range m.Posts {
				fx, fy, _, _, _, _, _, _ := m.Posts[i].push(s.q)
				if f := math.Hypot(fx, fy); f > out.Posts[i].Tension {
					out.Posts[i].Tension, out.Posts[i].Level, out.Posts[i].Direction = f, level, θ
				}
			}
			if far := s.farthest(); far > out.Offset {
				out.Offset, out.OffsetLevel, out.OffsetDirection = far, level, θ
			}
			out.Turn = math.Max(out.Turn, math.Abs(s.q[2]))
		}
	}
	if out.Turn > turns {
		out.Notes = append(out.Notes, "the dock turns by "+measure.Angle.Format(out.Turn, measure.US)+": the storm's load is that on the unturned dock")
	}
	for i := range wet {
		if wet[i] {
			out.Notes = append(out.Notes, m.Ties[i].Name+": hangs into the water, where it weighs less than in air and a boat may foul it")
		}
	}
	if err := m.follow(out, fronts, pieces); err != nil {
		return nil, err
	}
	return out, nil
}

// turns is the turn, rad, past which the dock shows the storm another side.
const turns = 0.35

// farthest returns how far the fitting that moves most has moved.
func (s *tide) farthest() float64 {
	far := math.Hypot(s.q[0], s.q[1])
	sin, cos := math.Sincos(s.q[2])
	move := func(a [2]float64) {
		far = math.Max(far, math.Hypot(s.q[0]+(cos-1)*a[0]-sin*a[1], s.q[1]+sin*a[0]+(cos-1)*a[1]))
	}
	for i := range s.m.Ties {
		move(s.m.Ties[i].At)
	}
	for i := range s.m.Posts {
		move(s.m.Posts[i].At)
	}
	return far
}

// follow makes the checks along each path to ground.
func (m *Mooring) follow(out *Survey, fronts []front, pieces [][maxPieces]float64) error {
	add := func(tie, part string, c measure.Check, err error) error {
		if err != nil {
			return named(tie, err)
		}
		c.Name = strings.TrimPrefix(tie+", ", ", ") + part + ": " + c.Name
		out.Checks = append(out.Checks, c)
		return nil
	}
	for i := range m.Ties {
		t := &m.Ties[i]
		e := &out.Ties[i]
		c, err := t.Fitting.Check(e.Tension)
		if err := add(t.Name, "fitting", c, err); err != nil {
			return err
		}
		most := e.Tension
		for n := len(t.Line.Pieces) - 1; n >= 0; n-- {
			most = math.Max(most, pieces[i][n])
			c, err := t.Line.Pieces[n].Gear.Check(pieces[i][n])
			if err := add(t.Name, "piece "+string(rune('1'+n))+" from the ground", c, err); err != nil {
				return err
			}
		}
		for _, g := range t.Links {
			c, err := g.Check(most)
			if err := add(t.Name, "link", c, err); err != nil {
				return err
			}
		}
		if t.Ground == nil {
			c := measure.Refuse("holding", unknown("what "+t.Name+" ends in", "an anchor, a tree or a bolt with its holding"))
			if err := add(t.Name, "ground", c, nil); err != nil {
				return err
			}
			continue
		}
		var worst measure.Check
		for n, p := range fronts[i].worst() {
			c, err := t.Ground.Check(p.pull, p.lift)
			if err != nil {
				return named(t.Name, err)
			}
			if n == 0 || worse(c, worst) {
				worst = c
			}
		}
		if err := add(t.Name, "ground", worst, nil); err != nil {
			return err
		}
	}
	for i := range m.Posts {
		p, force := &m.Posts[i], out.Posts[i].Tension
		for _, g := range []struct {
			part string
			gear Gear
		}{{"fitting", p.Fitting}, {"post", p.Hold}} {
			c, err := g.gear.Check(force)
			if err := add(p.Name, g.part, c, err); err != nil {
				return err
			}
		}
		c := measure.Refuse("holding", unknown("what "+p.Name+" stands in", "the ground's holding, or that of the neighbour's mooring"))
		var err error
		if p.Ground != nil {
			c, err = p.Ground.Check(force, 0)
		}
		if err := add(p.Name, "ground", c, err); err != nil {
			return err
		}
	}
	return nil
}

// worse reports whether check a is worse than b: no answer, then short, then
// the one with less to spare.
func worse(a, b measure.Check) bool {
	if va, vb := a.Verdict(), b.Verdict(); va != vb {
		return va < vb
	}
	return a.Limit-a.Value < b.Limit-b.Value
}

// Worst returns the worst check of a [Mooring.Survey]: one without an answer, else one
// that is short, else the one nearest to its limit. Parts keep it to some of
// "fitting", "piece", "link", "ground" and "post"; where the mooring has none of
// them it is the zero Check, no answer.
func (s *Survey) Worst(parts ...string) measure.Check {
	var worst measure.Check
	found := false
	for _, c := range s.Checks {
		if len(parts) > 0 && !slices.ContainsFunc(parts, func(p string) bool { return isPart(c.Name, p) }) {
			continue
		}
		switch {
		case !found, c.Verdict() < worst.Verdict():
			worst = c
		case c.Verdict() == worst.Verdict() && used(c) > used(worst)*(1+1e-9): // of equal ones the first, on every machine
			worst = c
		}
		found = true
	}
	return worst
}

// isPart reports whether a check's name, "tie, part: what", is of a part.
func isPart(name, part string) bool {
	head, _, _ := strings.Cut(name, ": ")
	if i := strings.LastIndex(head, ", "); i >= 0 {
		head = head[i+2:]
	}
	return strings.HasPrefix(head, part)
}

// used returns the share of its limit a check uses, infinite where the limit is
// none.
func used(c measure.Check) float64 {
	if !(c.Limit > 0) {
		return math.Inf(1)
	}
	return c.Value / c.Limit
}

// Losses surveys the mooring, as [Mooring.Survey] does at levels in m, once for each
// tie with that tie lost. Where the
// rest does not hold the dock the survey carries the error.
func (m *Mooring) Losses(levels []float64, storm Storm, directions int) ([]Survey, error) {
	var all []Survey
	for i := range m.Ties {
		left := Mooring{Posts: m.Posts}
		left.Ties = append(left.Ties, m.Ties[:i]...)
		left.Ties = append(left.Ties, m.Ties[i+1:]...)
		s, err := left.Survey(levels, storm, directions)
		switch {
		case errors.Is(err, ErrAdrift):
			s = &Survey{Err: err}
		case err != nil:
			return nil, err
		}
		s.Lost = m.Ties[i].Name
		all = append(all, *s)
	}
	return all, nil
}
