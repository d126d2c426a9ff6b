package dock

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// strength returns the checks of the frame over all that it meets.
func (d *Dock) strength() []measure.Check {
	rs := d.frameRests()
	names := []string{
		"Situations in which the dock finds no rest",
		"Worst joist, whatever the dock meets: bending", "Worst joist, whatever the dock meets: shear",
		"Worst rim, whatever the dock meets: bending", "Worst rim, whatever the dock meets: shear",
		"Worst rim, bent sideways",
		"Sag of joists and rims between the floats, uniform load", "Give of the springiest joist under the heaviest person",
		"Lowest deck corner with everyone at one place of the edge, the frame bending",
	}
	e, err := d.tried()
	out := make([]measure.Check, len(names))
	for i, name := range names {
		switch {
		case err != nil:
			out[i] = measure.Refuse(name, err)
		case i == 0:
			out[i] = e.restless(name)
		case i <= 4:
			out[i] = d.worstMember(e, name, i > 2, []string{"shear", "bending"}[i%2])
		case i == 5:
			out[i] = d.worstMember(e, name, true, "sideways")
		case i == 6:
			out[i] = d.sags(e, name)
		case i == 7:
			out[i] = d.gives(e, name)
		default:
			out[i] = d.dips(e, name)
		}
		out[i].Rests = rs.assumptions()
	}
	return out
}

// tried returns the envelope of all situations; of a trial, of those that governed
// and of the first of each kind that its path makes. Within a report each dock is
// solved once; hardware bears no load by itself, so that another kind of it leaves
// the forces as they are.
func (d *Dock) tried() (*Envelope, error) {
	ctx := d.trial.context()
	if d.trial == nil {
		return d.Envelope(ctx)
	}
	of := &d.trial.own
	if d.trial.path == "" || strings.HasPrefix(d.trial.path, "hardware.") {
		of = &d.trial.all
	}
	of.once.Do(func() { of.envelope, of.err = d.solve(ctx) })
	return of.envelope, of.err
}

// solve solves the situations that a dock is tried in.
func (d *Dock) solve(ctx context.Context) (*Envelope, error) {
	if len(d.trial.names) == 0 && d.trial.path != "" {
		return d.Envelope(ctx)
	}
	if d.trial.path == "" {
		e, err := d.Envelope(ctx)
		if err == nil {
			d.trial.names = e.governing()
		}
		return e, err
	}
	if err := d.frameRests().err(); err != nil {
		return nil, err
	}
	met, err := d.situations()
	if err != nil {
		return nil, err
	}
	reasons := map[string]bool{}
	return d.envelope(ctx, slices.DeleteFunc(met, func(s Situation) bool {
		keep := s.bare || s.uniform || slices.Contains(d.trial.names, s.Name) ||
			slices.Contains(s.inputs, d.trial.path) && (!reasons[s.Why] || d.trial.path == "site.wave_height" || d.trial.path == "site.ten_crests")
		reasons[s.Why] = true
		return !keep
	}))
}

// governing returns the names of the situations that decided something.
func (e *Envelope) governing() []string {
	var out []string
	add := func(i int) {
		if e.Situations[i].swings && i > 0 { // the crest that the trough swings from
			if name := e.Situations[i-1].Name; !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
		if name := e.Situations[i].Name; !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	for _, members := range [2][]Worst{e.Members[:len(e.Members)-2], e.Members[len(e.Members)-2:]} {
		for k := range 2 { // bending, shear
			worst := members[0]
			for _, w := range members[1:] {
				if worseRatio(w.Checks[k], worst.Checks[k]) {
					worst = w
				}
			}
			add(worst.Sag.Situation)
			add(worst.Hog.Situation)
			add(worst.Shear.Situation)
		}
	}
	for _, i := range e.holding() {
		add(i)
	}
	if i, _ := e.lowest(); i >= 0 {
		add(i)
	}
	for i, o := range e.Situations {
		if o.Err != nil {
			add(i)
		}
	}
	return out
}

// restless checks that the dock finds a rest whatever it meets.
func (e *Envelope) restless(name string) measure.Check {
	c := measure.Check{Name: name, Kind: measure.Count, Rule: srcRest}
	for _, o := range e.Situations {
		if o.Err != nil {
			c.Value++
			c.Notes = append(c.Notes, o.Name+": "+o.Err.Error())
		}
	}
	return c
}

// worstMember returns the check that uses the largest share of its limit.
func (d *Dock) worstMember(e *Envelope, name string, rims bool, what string) measure.Check {
	n := len(d.centres)
	of := e.Members[:n]
	if rims {
		of = e.Members[n:]
	}
	var worst measure.Check
	for _, w := range of {
		for _, c := range w.Checks {
			if strings.HasSuffix(c.Name, what) && (worst.Name == "" || worseRatio(c, worst)) {
				worst = c
			}
		}
	}
	worst.Notes = append([]string{worst.Name}, worst.Notes...)
	worst.Name = name
	return worst
}

// sags holds the bend of joists and rims under the uniform load against the limit
// for a passing load.
func (d *Dock) sags(e *Envelope, name string) measure.Check {
	length := d.clear
	if strings.Contains(e.Comfort.Bends, "rim") {
		length = d.run()
	}
	m := lumber.Member{Section: d.joist.section, Grade: d.joist.grade, Length: length}
	checks, err := m.Check(lumber.Demand{Short: math.Max(e.Comfort.Sag.Value, 1e-9), Span: length}, lumber.TenYears)
	i := slices.IndexFunc(checks, func(c measure.Check) bool { return c.Name == joistChecks[2] })
	if err != nil || i < 0 {
		return measure.Refuse(name, err)
	}
	c := checks[i]
	c.Name = name
	if e.Comfort.Bends == "" {
		at := slices.IndexFunc(e.Situations, func(o Outcome) bool { return o.uniform && o.Err != nil })
		return e.unrested(c, at, "the dock finds no rest under the uniform load")
	}
	c.Notes = append(c.Notes, fmt.Sprintf("%s; twist between corners %s, %s", e.Comfort.Bends,
		measure.Length.Format(e.Comfort.Twist.Value, d.system()), e.Situations[e.Comfort.Twist.Situation].Name))
	return c
}

// lowest returns the afloat situation with everyone at one place of the edge that puts
// a corner of the frame lowest, and how high that is; -1 where one finds no rest.
func (e *Envelope) lowest() (situation int, height float64) {
	situation, height = -1, math.Inf(1)
	for i, o := range e.Situations {
		if !o.edge {
			continue
		}
		if o.Err != nil {
			return -1, math.NaN()
		}
		if low := slices.Min(o.Corners[:]); low < height-1e-9 {
			situation, height = i, low
		}
	}
	return situation, height
}

// unrested returns a check of a situation in which the dock found no rest: short, where
// it sinks or capsizes there, else without an answer.
func (e *Envelope) unrested(c measure.Check, situation int, why string) measure.Check {
	var err error
	if situation >= 0 {
		err = e.Situations[situation].Err
		c.Notes = append(c.Notes, e.Situations[situation].Name)
	}
	if err != nil {
		c.Notes = append(c.Notes, "found no rest: "+err.Error())
	}
	if lost, ok := gone(c, err); ok {
		return lost
	}
	c.Value, c.Err = math.NaN(), &measure.Error{Why: why, Class: measure.ErrUnknown}
	return c
}

// dips holds the deck's lowest corner over the water with everyone at one place: a
// frame that bends and twists goes further down there than one that does not.
func (d *Dock) dips(e *Envelope, name string) measure.Check {
	c := limit(name, deckDry)
	i, low := e.lowest()
	if i < 0 {
		at := slices.IndexFunc(e.Situations, func(o Outcome) bool { return o.edge && o.Err != nil })
		return e.unrested(c, at, "the dock finds no rest with everyone at one place")
	}
	c.Value = low + d.deckTop()
	c.Notes = append(c.Notes, e.Situations[i].Name, "boards count as beams from joist to joist: what they do against twisting is left out")
	return c
}

// gives holds the deck's give under one person against a rule for floors.
func (d *Dock) gives(e *Envelope, name string) measure.Check {
	const perNewton = 2e-3 / 1e3
	c := measure.Check{
		Name: name, Kind: measure.Length, Value: e.Comfort.Dip, Limit: perNewton * d.heaviest() * measure.Gravity, Rule: srcGive,
		Notes: []string{"the middle of " + e.Comfort.Springs + " against its ends"},
	}
	if e.Comfort.Springs == "" {
		c.Value, c.Err = math.NaN(), &measure.Error{Why: "it finds no rest with one person there", Class: measure.ErrUnknown}
	}
	return c
}
