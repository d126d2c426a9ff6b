package dock

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/frame"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A stand is one joist as it stands: on the floats that bear on it, taken as
// firm (on the ice, on blocks), or on the rims at its ends where it has fewer
// than two floats.
type stand struct {
	number int // from the end or side the tape hooks on
	rests  []float64
	onRims bool
	width  float64 // of the deck it carries
}

// like reports whether another joist stands and carries alike.
func (s stand) like(o stand) bool {
	return slices.Equal(s.rests, o.rests) && s.onRims == o.onRims && math.Abs(s.width-o.width) < 1e-9
}

// stands returns every joist with what it stands on.
func (d *Dock) stands() []stand {
	var out []stand
	for k, c := range d.centres {
		s := stand{number: k + 1}
		for _, m := range d.floats {
			if t, ok := d.bears(m, k, c); ok && t > 0 && t < d.clear {
				s.rests = append(s.rests, t)
			}
		}
		slices.Sort(s.rests)
		s.rests = slices.CompactFunc(s.rests, func(a, b float64) bool { return math.Abs(a-b) < 0.05 })
		if len(s.rests) < 2 {
			s.rests, s.onRims = []float64{0, d.clear}, true
		}
		if k > 0 {
			s.width += (c - d.centres[k-1]) / 2
		} else {
			s.width += d.joist.section.Width / 2
		}
		if k < len(d.centres)-1 {
			s.width += (d.centres[k+1] - c) / 2
		} else {
			s.width += d.joist.section.Width / 2
		}
		out = append(out, s)
	}
	return out
}

// bears returns where along joist k, from its end, a float bears on it.
func (d *Dock) bears(m mount, k int, centre float64) (t float64, ok bool) {
	along, across := m.x+d.length/2, m.y+d.width/2
	s, t := along, across
	if !d.across {
		s, t = across, along
	}
	t -= float64(d.rimPlies) * d.rim.section.Width
	switch m.seat {
	case wedged:
		return t, m.bay == k || m.bay == k+1
	case underJoists:
		size := d.floatSize(m.set)
		reach := size.breadth
		if (m.set.Lies.Value == "along") == d.across {
			reach = size.long
		}
		return t, math.Abs(s-centre) <= (reach+d.joist.section.Width)/2
	}
	return t, false
}

// spots returns where the load on one spot is tried: at both tips, and in each
// stretch a depth from its ends, where it shears most, and about the middle,
// where it bends most.
func spots(edges []float64, depth float64) []float64 {
	last := len(edges) - 1
	out := []float64{edges[0], edges[last]}
	for i := 1; i <= last; i++ {
		from, size := edges[i-1], edges[i]-edges[i-1]
		for _, share := range []float64{0.25, 0.4, 0.5, 0.6, 0.75} {
			out = append(out, from+share*size)
		}
		if size > 2*depth {
			out = append(out, from+depth, edges[i]-depth)
		}
	}
	return out
}

// A demand is what a joist is asked over one stretch between rests, or over an
// overhang.
type demand struct {
	from, to    float64
	tip         bool
	sag, hog    float64
	shear       float64
	long, short float64
	spotGoverns bool
}

// demands solves a joist under dead load with the uniform load on the stretches
// where it is worst, and with the load on one spot wherever it is worst, and
// returns the envelope.
func (d *Dock) demands(s stand, ei, dead, live, spot float64) ([]demand, error) {
	b := frame.Beam{Length: d.clear, EI: ei}
	for _, at := range s.rests {
		b.Rests = append(b.Rests, frame.Rest{At: at})
	}
	beam := func(loads ...frame.Load) (*frame.Line, error) {
		b := b
		b.Loads = loads
		return b.Solve()
	}
	lasting, err := beam(frame.Uniform(0, d.clear, dead))
	if err != nil {
		return nil, err
	}
	var out []demand
	edges := append(append([]float64{0}, s.rests...), d.clear)
	for i := 1; i < len(edges); i++ {
		if edges[i]-edges[i-1] < 1e-6 {
			continue
		}
		x := lasting.ExtremesWithin(edges[i-1], edges[i])
		out = append(out, demand{
			from: edges[i-1], to: edges[i], tip: i == 1 || i == len(edges)-1,
			long: max(x.Up.Deflection, -x.Down.Deflection),
		})
	}
	take := func(isSpot bool, passing ...frame.Load) error {
		all, err := beam(append(passing, frame.Uniform(0, d.clear, dead))...)
		if err != nil {
			return err
		}
		alone, err := beam(passing...)
		if err != nil {
			return err
		}
		for i := range out {
			o := &out[i]
			x, y := all.ExtremesWithin(o.from, o.to), alone.ExtremesWithin(o.from, o.to)
			if m := max(x.Sag.Moment, -x.Hog.Moment); m > max(o.sag, o.hog) {
				o.spotGoverns = isSpot
			}
			o.sag, o.hog = max(o.sag, x.Sag.Moment), max(o.hog, -x.Hog.Moment)
			o.shear = max(o.shear, math.Abs(x.Shear.Shear))
			o.short = max(o.short, y.Up.Deflection, -y.Down.Deflection)
		}
		return nil
	}
	patterns, err := b.Patterns(live)
	if err != nil {
		return nil, err
	}
	for _, p := range patterns {
		if err := take(false, p...); err != nil {
			return nil, err
		}
	}
	for _, at := range spots(edges, d.joist.section.Depth) {
		if err := take(true, frame.Point(at, spot)); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// joistChecks are the names package lumber gives to the checks of a member.
var joistChecks = []string{"bending", "shear", "deflection under the passing load", "deflection with creep"}

// joists returns the checks of the worst joist.
func (d *Dock) joists() []measure.Check {
	f, l := &d.plan.Frame, &d.plan.Loads
	rs := rests{on(f.Length), on(f.Width), on(f.Rims.Size), on(f.Rims.Plies), on(f.Joists.Size), on(f.Decking.Size), on(f.Moisture), on(l.Deck), on(l.Spot)}
	rs = append(rs, on(f.Joists.Species).standsIn("the weakest of "+yardNames), on(f.Joists.Grade), on(f.Joists.Incised))
	rs = append(rs, d.marks())
	for i := range d.plan.Floats {
		rs = append(rs, floatRests(&d.plan.Floats[i])...)
	}
	rs = dedupe(rs)
	worst := map[string]measure.Check{}
	err := rs.err()
	if err == nil {
		err = d.worstJoists(worst)
	}
	var out []measure.Check
	for _, name := range joistChecks {
		c, ok := worst[name]
		if !ok || err != nil {
			c = measure.Check{Err: err, Value: math.NaN(), Limit: math.NaN()}
			if err == nil {
				c.Err = &measure.Error{Field: name, Class: measure.ErrNotComputed}
			}
		}
		c.Name = "Worst joist, floats standing firm: " + name
		c.Rests = rs.assumptions()
		out = append(out, c)
	}
	return out
}

// worstJoists keeps, of every joist's checks, the one with the largest share of
// its limit.
func (d *Dock) worstJoists(worst map[string]measure.Check) error {
	f, l := &d.plan.Frame, &d.plan.Loads
	board, err := d.board.mass(d.run(), f.Moisture.Value)
	if err != nil {
		return err
	}
	own, err := d.joist.mass(d.clear, f.Moisture.Value)
	if err != nil {
		return err
	}
	deck := board / (d.run() * d.board.section.Depth) // kg/m², boards tight
	var done []stand
	for _, s := range d.stands() {
		if slices.ContainsFunc(done, s.like) {
			continue
		}
		done = append(done, s)
		m := lumber.Member{
			Section: d.joist.section, Grade: d.joist.grade, Length: d.clear, Smooth: d.joist.smooth(),
			Repetitive: d.repetitive(), Temperature: 20,
		}
		design, err := m.Adjusted(lumber.TenYears)
		if err != nil {
			return err
		}
		if design.E.Err != nil {
			return design.E.Err
		}
		dead := (deck*s.width + own/d.clear) * measure.Gravity
		spans, err := d.demands(s, design.E.Value*m.Inertia(), dead, l.Deck.Value*s.width, l.Spot.Value*measure.Gravity)
		if err != nil {
			return err
		}
		for _, o := range spans {
			if err := d.judge(m, s, o, worst); err != nil {
				return err
			}
		}
	}
	return nil
}

// judge compares one stretch of one joist with the lumber. Boards hold the upper
// edge, which is pressed where the joist sags; nothing holds the lower one, which
// is pressed where it hogs.
func (d *Dock) judge(m lumber.Member, s stand, o demand, worst map[string]measure.Check) error {
	sagging, hogging := m, m
	sagging.Held = true
	hogging.Unbraced = d.clear
	for _, side := range []struct {
		member lumber.Member
		demand lumber.Demand
	}{
		{sagging, lumber.Demand{Moment: o.sag, Shear: o.shear, Long: o.long, Short: o.short, Span: o.to - o.from, Tip: o.tip}},
		{hogging, lumber.Demand{Moment: o.hog}},
	} {
		checks, err := side.member.Check(side.demand, lumber.TenYears)
		if err != nil {
			return err
		}
		for _, c := range checks {
			if old, ok := worst[c.Name]; ok && !worseRatio(c, old) {
				continue
			}
			c.Notes = append(c.Notes, d.whichJoist(s, o))
			worst[c.Name] = c
		}
	}
	return nil
}

// worseRatio reports whether a uses more of its limit than b. A check without an
// answer is worse than any with one.
func worseRatio(a, b measure.Check) bool {
	if (a.Err != nil) != (b.Err != nil) {
		return a.Err != nil
	}
	return a.Value*b.Limit > b.Value*a.Limit
}

// lumber returns the checks of the wood: deck boards and the worst joist.
func (d *Dock) lumber() []measure.Check { return append(d.decking(), d.joists()...) }

// decking checks the span of the deck boards: the widest bay, centre to centre.
func (d *Dock) decking() []measure.Check {
	f := &d.plan.Frame
	const name = "Deck boards, from joist to joist"
	rs := rests{on(f.Decking.Size), on(f.Joists.Size), d.marks()}
	if err := rs.err(); err != nil {
		return []measure.Check{refuse(name, err, rs)}
	}
	c, err := lumber.Board{Section: d.board.section}.Check(d.widest())
	if err != nil {
		return []measure.Check{refuse(name, err, rs)}
	}
	c.Name, c.Rests = name, append(c.Rests, rs.assumptions()...)
	return []measure.Check{c}
}

// marks is what the joists' places rest on.
func (d *Dock) marks() rest {
	j := &d.plan.Frame.Joists
	if len(j.Marks) == 0 {
		return on(j.Spacing)
	}
	return rest{path: "frame.joists.marks", known: measure.Measured, missing: len(d.centres) == 0}
}

// repetitive reports whether the joists share loads as the code's factor asks.
func (d *Dock) repetitive() bool {
	return len(d.centres) >= 3 && d.widest() <= 24*measure.Inch+slack
}

// widest returns the largest distance between two joists, centre to centre.
func (d *Dock) widest() float64 {
	w := 0.0
	for k := 1; k < len(d.centres); k++ {
		w = max(w, d.centres[k]-d.centres[k-1])
	}
	return w
}

func (d *Dock) whichJoist(s stand, o demand) string {
	sys := d.system()
	where := fmt.Sprintf("stands on %d floats", len(s.rests))
	if s.onRims {
		where = "hangs on the rims at its ends"
	}
	load := "uniform load"
	if o.spotGoverns {
		load = "load on one spot"
	}
	mark := d.centres[s.number-1]
	if d.plan.Frame.Joists.MarksAt.Value != "centre" {
		mark -= d.joist.section.Width / 2
	}
	return fmt.Sprintf("joist %d, mark %s, %s; stretch of %s; %s governs", s.number,
		measure.Length.Print(mark, sys), where, measure.Length.Print(o.to-o.from, sys), load)
}
