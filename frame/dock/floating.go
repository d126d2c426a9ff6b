package dock

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// A floating is a loading with the rest position the dock finds under it, or the
// failure to find one.
type floating struct {
	loading
	base  *float.Platform
	state float.State
	err   error

	edge    float64 // lowest corner of the deck above the water
	share   float64 // of the most immersed float
	deepest int     // which it is
}

// settle floats the dock under a loading.
func settle(base *float.Platform, l loading) floating {
	p := *base
	p.Weights = append(append([]float.Weight(nil), base.Weights...), l.weights...)
	fl := floating{loading: l, base: &p}
	fl.state, fl.err = p.Settle()
	fl.look()
	return fl
}

// look measures the dock at rest.
func (fl *floating) look() {
	if fl.err != nil {
		return
	}
	p := fl.base
	fl.edge = math.Inf(1)
	for _, c := range p.Corners {
		fl.edge = min(fl.edge, fl.state.Height(c))
	}
	for i := range p.Units {
		u, err := fl.state.Unit(i)
		if err != nil {
			fl.err = err
			return
		}
		if u.Share > fl.share {
			fl.share, fl.deepest = u.Share, i
		}
	}
}

// worse reports whether a tilts more than b, by more than rounding so that of equal
// ones the first stays on every machine, or fails where b does not.
func worse(a, b floating) bool {
	if (a.err != nil) != (b.err != nil) {
		return a.err != nil
	}
	return a.err == nil && a.state.Tilt() > b.state.Tilt()*(1+1e-9)
}

// fill puts a value into a check, or, where the dock found no rest, the failure:
// a dock that sinks or capsizes under a load is short of it, not unanswered, and has no
// number ([float.Failure.Check]).
func (fl floating) fill(c measure.Check, value float64) measure.Check {
	c.Value = value
	c.Notes = append(c.Notes, fl.notes...)
	if fl.err == nil {
		return c
	}
	if lost, ok := gone(c, fl.err); ok {
		lost.Notes = append(lost.Notes, "found no rest: "+fl.err.Error())
		return lost
	}
	c.Value, c.Err = math.NaN(), fl.err
	return c
}

// gone returns a check of a dock that sinks, capsizes or has no float, whichever package
// found it so, and whether it does.
func gone(c measure.Check, err error) (measure.Check, bool) {
	for _, state := range []error{float.ErrSinks, float.ErrCapsizes, float.ErrNoFloat} {
		if errors.Is(err, state) {
			return (&float.Failure{Class: state}).Check(c), true
		}
	}
	return c, false
}

// edgeDry checks that the deck's lowest edge stays above the water.
func (d *Dock) edgeDry(fl floating) measure.Check {
	return fl.fill(limit("Lowest deck edge above the water "+fl.name, deckDry), fl.edge)
}

// immersion checks the share of the most immersed float.
func (d *Dock) immersion(fl floating) measure.Check {
	c := fl.fill(limit("Most immersed float "+fl.name, immersed), fl.share)
	if fl.err == nil {
		c.Notes = append(c.Notes, d.at(fl.deepest))
	}
	return c
}

// tilt checks the deck's tilt.
func (d *Dock) tilt(fl floating) measure.Check {
	return fl.fill(limit("Tilt of the deck "+fl.name, tiltMost), fl.state.Tilt())
}

// frameDry checks the height of the frame's underside over the water: of the joists or,
// where they reach lower, of the rims.
func (d *Dock) frameDry(fl floating) measure.Check {
	low := math.NaN()
	if fl.err == nil {
		low = math.Inf(1)
		for _, c := range fl.base.Corners {
			c.Z = min(0, d.joist.section.Depth-d.rim.section.Depth)
			low = min(low, fl.state.Height(c))
		}
	}
	return fl.fill(limit("Water to the frame's underside "+fl.name, frameFree), low)
}

// deckHigh checks the height of the deck over the water.
func (d *Dock) deckHigh(fl floating) measure.Check {
	return fl.fill(limit("Water to the deck's lowest corner "+fl.name, deckFree), fl.edge)
}

// draft checks the draft of the most immersed float against the one at which the
// share is reached.
func (d *Dock) draft(fl floating) measure.Check {
	c := limit("Draft of the deepest float "+fl.name, immersed)
	share := c.Limit
	c.Kind, c.Limit = measure.Length, math.NaN()
	if len(d.floats) == 0 {
		return fl.fill(c, math.NaN())
	}
	m := d.floats[fl.deepest]
	size := d.floatSize(m.set)
	c.Limit = share * size.height
	if size.drum && fl.err == nil {
		drum := float.Cylinder{Diameter: size.height, Length: size.pushes}
		c.Limit, c.Err = drum.Draft(share * drum.Volume())
	}
	value := math.NaN()
	if u, err := fl.state.Unit(fl.deepest); err == nil {
		value = u.Draft
	}
	c = fl.fill(c, value)
	if fl.err == nil {
		c.Notes = append(c.Notes, d.at(fl.deepest), "it sits "+m.seat.String())
	}
	return c
}

// at says which float is meant, by its running marks.
func (d *Dock) at(i int) string {
	m, sys := d.floats[i], d.system()
	return fmt.Sprintf("%s at %s along, %s across", called(m.set.Name, "float"),
		measure.Length.Format(m.x+d.length/2, sys), measure.Length.Format(m.y+d.width/2, sys))
}

// weight checks everything's weight against what the floats carry when held
// under.
func (d *Dock) weight(fl floating) measure.Check {
	c := measure.Check{Name: "Weight of the whole dock against its floats held under", Kind: measure.Mass, Rule: srcArchimedes}
	if fl.base == nil {
		c.Limit = math.NaN()
		return fl.fill(c, math.NaN())
	}
	var parts []string
	part := func(name string, mass float64) {
		parts = append(parts, name+" "+measure.Mass.Format(mass, d.system()))
	}
	for _, pc := range d.pieces() {
		part(pc.plural, pc.count*pc.each)
	}
	fixed, floats := 0.0, 0.0
	for i := range d.plan.Weights {
		fixed += d.plan.Weights[i].Mass.Value
	}
	for _, u := range fl.base.Units {
		floats += u.Mass
		c.Limit += u.Body.Volume() * fl.base.Density
	}
	part("things fixed to it", fixed)
	part("floats", floats)
	for _, w := range fl.base.Weights {
		c.Value += w.Mass
	}
	c.Value += floats
	c.Notes = append(c.Notes, strings.Join(parts, ", "))
	for i := range d.plan.Floats {
		s := &d.plan.Floats[i]
		if text := standIn(s); text != "" {
			c.Notes = append(c.Notes, fmt.Sprintf("%s: its outside volume is not known; %s", called(s.Name, "drum"), text))
		}
	}
	return c
}

// empty returns the checks of the dock with nobody aboard.
func (d *Dock) empty() []measure.Check {
	base, rs, err := d.platform()
	fl := floating{loading: loading{name: "with nobody aboard"}, err: err}
	if err == nil {
		fl = settle(base, fl.loading)
	}
	return fl.checks(rs, d.weight, d.frameDry, d.deckHigh, d.draft, d.immersion)
}

// standard holds the dock with nobody aboard against the rest of package float's
// default set: 20 psf over the deck and 400 lb on any one spot, each with the deck's
// edge dry and no float too deep, and the rules on level, ends and tilt.
func (d *Dock) standard() []measure.Check {
	base, rs, err := d.platform()
	var out []measure.Check
	for _, row := range []struct{ criterion, under string }{
		{deckDry, " under 20 psf, and under 400 lb on any spot"},
		{immersed, " under 20 psf, and under 400 lb on any spot"},
		{endDrop, ""},
		{crossLevel, ""},
		{tiltMost, ""},
	} {
		c := limit(row.criterion+row.under, row.criterion)
		c.Value = math.NaN()
		if err != nil {
			c.Err = err
		} else if c, err = d.criterion(base, row.criterion); err != nil {
			c, err = measure.Refuse(row.criterion, err), nil
		}
		c.Name, c.Rests = "Criterion: "+row.criterion+row.under, rs.assumptions()
		out = append(out, c)
	}
	return out
}

// criterion runs one row of package float's table. Its remarks are replaced by
// what the row measures, since their details are in SI, but for a dock that finds no rest.
func (d *Dock) criterion(base *float.Platform, name string) (measure.Check, error) {
	var selected []float.Criterion
	for _, n := range []string{evenLoad, spotLoad} {
		s, err := float.LookupCriterion(n)
		if err != nil {
			return measure.Check{}, err
		}
		selected = append(selected, s)
	}
	row, err := float.LookupCriterion(name)
	if err != nil {
		return measure.Check{}, err
	}
	c, err := row.Rule(float.Deck{Depth: d.deckTop()}, selected...)(base)
	notes := []string{row.What}
	if row.Reading != "" {
		notes = append(notes, "read as: "+row.Reading)
	}
	if len(c.Steps) > 0 || errors.Is(c.Err, float.ErrUnsettled) {
		for _, n := range c.Notes {
			if n != float.DrumNotice { // the report says it once for all
				notes = append(notes, n)
			}
		}
	}
	c.Notes = notes
	return c, err
}

// loaded returns the checks under the uniform load.
func (d *Dock) loaded() []measure.Check {
	fl, rs := d.worst([]loading{d.uniform()})
	return fl.checks(rs, d.edgeDry, d.draft, d.immersion)
}

// crowded returns the checks with everyone at the worst edge.
func (d *Dock) crowded() []measure.Check {
	return append(d.worstOfEach(d.crowd(), d.tilt, d.edgeDry, d.draft, d.immersion), d.posted())
}

// settled floats the dock under each of the loadings, which rest on the same inputs;
// there is one, with the error, where they are not known.
func (d *Dock) settled(of []loading) ([]floating, rests) {
	base, rs, err := d.platform()
	rs = dedupe(append(rs, of[0].rests...))
	if err == nil {
		err = rs.err()
	}
	if err != nil {
		return []floating{{loading: of[0], err: err}}, rs
	}
	out := make([]floating, len(of))
	for i, l := range of {
		out[i] = settle(base, l)
	}
	return out, rs
}

// worst returns the worst of the loadings.
func (d *Dock) worst(of []loading) (floating, rests) {
	all, rs := d.settled(of)
	out := all[0]
	for _, fl := range all[1:] {
		if worse(fl, out) {
			out = fl
		}
	}
	return out, rs
}

// worstOfEach returns the worst of the loadings for each kind of check: the edge that
// tilts the dock most need not be the one that comes nearest the water.
func (d *Dock) worstOfEach(of []loading, made ...func(floating) measure.Check) []measure.Check {
	all, rs := d.settled(of)
	return worstChecks(all, rs, made...)
}

// worstChecks returns the worst of each kind of check.
func worstChecks(all []floating, rs rests, made ...func(floating) measure.Check) []measure.Check {
	out := all[0].checks(rs, made...)
	for _, fl := range all[1:] {
		for i, c := range fl.checks(rs, made...) {
			if beyond(c, out[i]) {
				out[i] = c
			}
		}
	}
	return out
}

// beyond reports whether a check is worse than one of its kind, by more than rounding.
func beyond(a, b measure.Check) bool {
	if a.Verdict() != b.Verdict() {
		return worseFirst(a, b) < 0
	}
	if x, y := a.Ratio(), b.Ratio(); a.Limit != b.Limit && !math.IsNaN(x) && !math.IsNaN(y) {
		return x > y*(1+1e-9) // each has a limit of its own
	}
	if failed := len(a.Steps) > 0; failed != (len(b.Steps) > 0) {
		return failed // it found no rest
	}
	more := a.Value - b.Value
	if a.AtLeast {
		more = -more
	}
	return more > 1e-9*math.Abs(b.Value)
}

// checks makes the checks of one floating.
func (fl floating) checks(rs rests, made ...func(floating) measure.Check) []measure.Check {
	var out []measure.Check
	for _, f := range made {
		c := f(fl)
		c.Rests = rs.assumptions()
		out = append(out, c)
	}
	return out
}
