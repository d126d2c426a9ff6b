package dock

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

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
		spans, err := d.demands(s, design.E.Value*m.Whole().Inertia(), dead, l.Deck.Value*s.width, l.Spot.Value*measure.Gravity)
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

// worseRatio reports whether a uses more of its limit than b, by more than rounding. A
// check without an answer is worse than any with one.
func worseRatio(a, b measure.Check) bool {
	if (a.Err != nil) != (b.Err != nil) {
		return a.Err != nil
	}
	return a.Value*b.Limit > b.Value*a.Limit*(1+1e-9)
}

// lumber returns the checks of the wood: deck boards and the worst joist.
func (d *Dock) lumber() []measure.Check { return append(d.decking(), d.joists()...) }

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
		measure.Length.Format(mark, sys), where, measure.Length.Format(o.to-o.from, sys), load)
}

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
