package float

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Criterion is one row of the table of criteria: a limit for what is measured
// on a floating dock under a load, and who set it. A copy may be given another
// limit, load or source; a criterion of another make is a [Rule] of one's own.
type Criterion struct {
	Name string
	What string // what is measured, where, under which load

	Kind    measure.Kind // of Limit
	Limit   float64      // in the SI unit of Kind
	AtLeast bool         // the value must be at least Limit; otherwise at most

	// The load, where the criterion has one; What says which counts.
	Pressure float64 // laid evenly, Pa
	Mass     float64 // on one spot, kg
	Inset    float64 // of that spot, from the deck's edge or end, m
	Above    float64 // of the load's centre of gravity over the deck, m

	Default bool   // of the set that [Rules] takes by itself
	Reading string // how the rule was read where its text leaves it open
	Source  *measure.Source

	loads func(*trial) ([]loading, error)
	value func(*trial) (float64, error)
	every bool // holds at every selected load
	lost  bool // holds with any one drum lost
}

// A Deck holds what a criterion must know of the dock beyond its [Platform]. Zero
// is not known; a criterion that needs it then has no answer.
type Deck struct {
	Depth float64 // from the deck's corners down to the underside of the frame, m
	Drawn float64 // freeboard of the deck on the drawing, under dead load, m
	Walk  float64 // height over water of the walk that the +x end joins, m
}

// DrumNotice goes with every result of a dock on cylinders.
const DrumNotice = "Several authorities forbid reused drums as floats: on lakes of the US Army Corps of Engineers " +
	"(63 FR 35826, 1998; ER 1130-2-406, 1999), on reservoirs of the Tennessee Valley Authority (18 CFR 1304.400: " +
	"any previously used drum, and metal drums in any form); others ask for floats made for marine use " +
	"(Grand River Dam Authority, residential dock standards, 2017). Ask the authority of your lake first."

// Notices returns what must be told with any result of the platform: the
// [DrumNotice] if it floats on cylinders.
func (p *Platform) Notices() []string {
	if p == nil {
		return nil
	}
	return notices(p.Units)
}

// Notices returns what must be told with the state: see [Platform.Notices].
func (s State) Notices() []string { return notices(s.units) }

func notices(units []Unit) []string {
	for i := range units {
		if _, ok := units[i].Body.(Cylinder); ok {
			return []string{DrumNotice}
		}
	}
	return nil
}

// Criteria returns the table: the default set first, then the rows that are taken
// only by name. It holds only rows whose text was read, or read as quoted, and two
// of our own choice; limits known from memory alone are left out.
func Criteria() []Criterion {
	out := make([]Criterion, len(criteria))
	copy(out, criteria)
	return out
}

// LookupCriterion returns the row of that name, with its source; upper and lower case
// are alike. The error, of class [measure.ErrName], lists the names there are.
func LookupCriterion(name string) (Criterion, error) {
	names := make([]string, len(criteria))
	for i, c := range criteria {
		if strings.EqualFold(c.Name, strings.TrimSpace(name)) {
			return c, nil
		}
		names[i] = c.Name
	}
	return Criterion{}, &measure.Error{
		Field: "criterion", Text: name, Class: measure.ErrName,
		Want: "one of \"" + strings.Join(names, "\"; \"") + "\"",
	}
}

// Rules makes rules of the named criteria, or of the default set where none is named,
// each with its source. Each knows the others' loads: those that hold "at every
// selected load" are tried under all of them. The error names a criterion that is not
// there.
func Rules(d Deck, names ...string) ([]Rule, error) {
	var chosen []Criterion
	if len(names) == 0 {
		for _, c := range criteria {
			if c.Default {
				chosen = append(chosen, c)
			}
		}
	}
	for _, name := range names {
		c, err := LookupCriterion(name)
		if err != nil {
			return nil, err
		}
		chosen = append(chosen, c)
	}
	rules := make([]Rule, len(chosen))
	for i, c := range chosen {
		rules[i] = c.Rule(d, chosen...)
	}
	return rules, nil
}

// Rule makes a rule of the criterion. Where it holds "at every selected load",
// the loads of the criteria in selected are tried, and its own if there are none.
//
// The rule's error is for malformed data: of the platform, of the criterion, of
// the deck. A dock that sinks or capsizes under the load is short, with that in the
// place of a number ([Failure.Check]); something that is not known gives a check
// without an answer that carries the reason.
func (c Criterion) Rule(d Deck, selected ...Criterion) Rule {
	return func(p *Platform) (measure.Check, error) {
		if err := p.check(); err != nil {
			return measure.Check{}, err
		}
		if err := c.check(); err != nil {
			return measure.Check{}, err
		}
		if err := d.check(); err != nil {
			return measure.Check{}, err
		}
		for _, s := range selected {
			if err := s.check(); err != nil {
				return measure.Check{}, err
			}
		}
		t := &trial{platform: p, deck: d, criterion: c, selected: selected}
		t.outline, t.outlineErr = deckOutline(p.Corners)
		out := measure.Check{
			Name: c.Name, Kind: c.Kind, Limit: c.Limit, AtLeast: c.AtLeast, Rule: c.Source,
			Rests: c.rests(),
		}
		value, err := c.value(t)
		out.Notes = append(t.notes, p.Notices()...)
		out.Value = value
		var failed *Failure
		switch {
		case errors.As(err, &failed):
			out = failed.Check(out)
		case err != nil:
			out.Value, out.Err = math.NaN(), err
		}
		return out, nil
	}
}

// AsLoaded returns the criterion without a load of its own: it judges the platform
// with the weights it is given, as [Platform.Post] does with a crowd aboard. It is
// of use for a tilt, a freeboard, a share of the drums; what a deck carries is then
// what it carries beyond the weights aboard.
func (c Criterion) AsLoaded() Criterion {
	c.Pressure, c.Mass = 0, 0
	return c
}

// rests says how the load was placed and the rule read.
func (c Criterion) rests() []measure.Assumption {
	var out []measure.Assumption
	if c.Reading != "" {
		out = append(out, measure.Assumption{Name: "reading of the rule", Text: c.Reading, Known: measure.Assumed})
	}
	if c.Pressure > 0 || c.Mass > 0 {
		text := measure.Length.Format(c.Above, measure.SI) + " over the deck"
		if c.Above == stands {
			text += ", as standing people (" + imo.String() + ")"
		}
		out = append(out, measure.Assumption{Name: "height of the load's centre of gravity", Text: text, Known: measure.Assumed})
	}
	return out
}

func (c Criterion) check() error {
	if c.value == nil {
		return &measure.Error{Field: "criterion", Text: c.Name, Class: measure.ErrName, Want: "a row of Criteria, or a copy of one"}
	}
	bound := &measure.Source{Title: "bound against slips of the pen", Status: measure.OwnChoice}
	for _, f := range []struct {
		field  string
		value  float64
		lo, hi float64
		kind   measure.Kind
	}{
		{"Limit", c.Limit, -1e9, 1e9, c.Kind},
		{"Pressure", c.Pressure, 0, 1e5, measure.Pressure},
		{"Mass", c.Mass, 0, 1e6, measure.Mass},
		{"Inset", c.Inset, 0, 100, measure.Length},
		{"Above", c.Above, 0, 10, measure.Length},
	} {
		r := measure.Range{Kind: f.kind, Lo: f.lo, Hi: f.hi, Source: bound}
		if err := r.Check(fmt.Sprintf("criterion %q, %s", c.Name, f.field), f.value); err != nil {
			return err
		}
	}
	return nil
}

func (d Deck) check() error {
	bound := &measure.Source{Title: "bound against slips of the pen", Status: measure.OwnChoice}
	for _, f := range []struct {
		field  string
		value  float64
		lo, hi float64
	}{{"Deck.Depth", d.Depth, 0, 5}, {"Deck.Drawn", d.Drawn, 0, 10}, {"Deck.Walk", d.Walk, -10, 10}} {
		r := measure.Range{Kind: measure.Length, Lo: f.lo, Hi: f.hi, Source: bound}
		if err := r.Check(f.field, f.value); err != nil {
			return err
		}
	}
	return nil
}

// fails reports whether err is the dock's failure to float rather than bad data.
func fails(err error) bool {
	var f *Failure
	return errors.As(err, &f)
}
