package dock

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// shoulders is what one of a crowd takes of the edge, m (our choice: a person's
// breadth, side by side).
const shoulders = 18 * measure.Inch

var srcPost = &measure.Source{
	Title: "as many as may stand together at any place of the edge with the deck's tilt, its edge and the floats within their limits", Status: measure.OwnChoice,
}

// posting returns how many people, each as heavy as the heaviest and no less than a grown one, may stand together
// along any one edge, side by side.
func (d *Dock) posting(base *float.Platform) (float.Posting, error) {
	l := &d.plan.Loads
	crowd := float.Crowd{Each: d.grown(), Height: l.Centre.Value, Inset: l.FromEdge.Value, Room: shoulders}
	if d.trial != nil && d.trial.path != "" {
		return d.triedPosting(base, crowd)
	}
	return base.Post(crowd, d.bearable)
}

// triedPosting answers for another plausible value, where only the verdict counts:
// whether everyone may stand at the place where a corner comes lowest.
func (d *Dock) triedPosting(base *float.Platform, crowd float.Crowd) (float.Posting, error) {
	crowd.People = int(math.Ceil(d.people()/d.grown() - 1e-9))
	w, err := base.WorstCrowd(crowd)
	var none *float.Failure
	switch {
	case errors.Is(err, measure.ErrRange): // there is no room for so many
		return float.Posting{People: crowd.People - 1, Full: true}, nil
	case err != nil && !errors.As(err, &none):
		return float.Posting{}, err
	}
	fl := floating{base: base, state: w.State, err: err}
	fl.look()
	if fl.err != nil || d.firstBroken(fl).Verdict() != measure.Holds {
		return float.Posting{People: crowd.People - 1, Full: true}, nil
	}
	return float.Posting{People: crowd.People, Full: true}, nil
}

// bearable is the rule of tilt, edge and immersion in one: the first that does not
// hold, or the last.
func (d *Dock) bearable(p *float.Platform) (measure.Check, error) {
	fl := settle(p, loading{})
	if fl.err != nil {
		return measure.Check{}, fl.err
	}
	c := d.firstBroken(fl)
	c.Name = strings.TrimSpace(c.Name)
	return c, nil
}

// firstBroken returns the first check that does not hold, or the last.
func (d *Dock) firstBroken(fl floating) measure.Check {
	var c measure.Check
	for _, made := range []func(floating) measure.Check{d.tilt, d.edgeDry, d.immersion} {
		if c = made(fl); c.Verdict() != measure.Holds {
			break
		}
	}
	return c
}

// posted holds the people of the plan against the number for the sign.
func (d *Dock) posted() measure.Check {
	c := measure.Check{Name: "Everyone together at one edge, in people as heavy as the heaviest, against what the floats bear there", Kind: measure.Count, Rule: srcPost, Limit: math.NaN()}
	mass := 0.0
	base, rs, err := d.platform()
	rs = append(rs, on(d.plan.Loads.FromEdge), on(d.plan.Loads.Centre))
	if len(d.plan.People) == 0 {
		rs = append(rs, rest{path: "people", missing: true})
	}
	for i := range d.plan.People {
		p := &d.plan.People[i]
		rs = append(rs, on(p.Count), on(p.Mass))
		mass += float64(p.Count.Value) * p.Mass.Value
	}
	c.Value = math.Ceil(mass/d.grown() - 1e-9)
	rs = dedupe(rs)
	c.Rests = rs.assumptions()
	if err == nil {
		err = rs.err()
	}
	var post float.Posting
	if err == nil {
		post, err = d.posting(base)
	}
	if err != nil {
		c.Err, c.Value = err, math.NaN()
		return c
	}
	c.Limit = float64(max(0, post.People))
	each := measure.Mass.Format(d.grown(), d.system())
	switch {
	case post.People < 0:
		c.Notes = append(c.Notes, "post: nobody; the empty dock breaks a limit already")
	case post.Full:
		c.Notes = append(c.Notes, fmt.Sprintf("the floats alone bear %s at any one edge with nobody else aboard; it has no room for more", headsOf(post.People, each)))
	default:
		c.Notes = append(c.Notes, fmt.Sprintf("the floats alone bear %s at any one edge with nobody else aboard; one more, and %s", headsOf(post.People, each), d.broken(post)))
	}
	return c
}

// heads says how many people.
func heads(n int) string {
	if n == 1 {
		return "1 person"
	}
	return fmt.Sprintf("%d people", n)
}

// headsOf says how many people of a mass: "1 person of 84 kg", "2 people of 84 kg each".
func headsOf(n int, mass string) string {
	if n == 1 {
		return heads(n) + " of " + mass
	}
	return heads(n) + " of " + mass + " each"
}

// sign adds the number of the sign to the check of everyone together: what is posted is
// that and not what the floats alone bear.
func (d *Dock) sign(r *Report) {
	p := r.plate
	if p == nil {
		return
	}
	note := fmt.Sprintf("post what the sign says: %s, in all, wherever they stand", headsOf(p.People, measure.Mass.Format(p.Each, d.system())))
	if p.Limit != "" {
		note += "; one more: " + p.Limit
	}
	if r.Status() != AllHold {
		note += "; and nobody while anything that it rests on is short or has no answer"
	}
	for _, t := range r.Topics {
		for i := range t.Checks {
			if c := &t.Checks[i]; strings.HasPrefix(c.Name, "Everyone together") && c.Verdict() != measure.NoAnswer {
				said := note
				if c.Limit > float64(p.People) {
					said += fmt.Sprintf("; that is fewer than the %s that the floats alone bear at an edge, which is what is held against here: the sign counts corners, a frame that bends, and no more people than the plan's", heads(int(c.Limit)))
				}
				c.Notes = append([]string{said}, c.Notes...)
			}
		}
	}
}

// broken says what the next one of a crowd does.
func (d *Dock) broken(post float.Posting) string {
	switch {
	case post.Failure != nil:
		return "the dock finds no rest"
	case post.Wet:
		return "a corner goes under water"
	}
	return fmt.Sprintf("it breaks %q: %s", post.Breaks.Name, post.Breaks.Numbers(d.system()))
}

// leaking returns the checks of the dock with everyone spread over it and the float
// full of water that is missed most.
func (d *Dock) leaking() []measure.Check {
	base, rs, err := d.platform()
	l := loading{name: "with everyone spread and one float full of water", rests: rests{on(d.plan.Loads.Centre)}}
	mass := 0.0
	if len(d.plan.People) == 0 {
		l.rests = append(l.rests, rest{path: "people", missing: true})
	}
	for i := range d.plan.People {
		p := &d.plan.People[i]
		l.rests = append(l.rests, on(p.Count), on(p.Mass))
		if plan.Has(p.Mass) {
			mass += float64(p.Count.Value) * p.Mass.Value
		}
	}
	rs = dedupe(append(rs, l.rests...))
	if err == nil {
		err = rs.err()
	}
	l.weights = []float.Weight{{Mass: mass, At: r3.Vec{Z: d.deckTop() + d.plan.Loads.Centre.Value}}}
	l.notes = []string{measure.Mass.Format(mass, d.system()) + " of people spread over the deck"}
	out := worstChecks(d.leaks(base, err, l), rs, d.tilt, d.edgeDry)

	// Somebody will walk to the side that is low: then the deck's edge still stays dry.
	var all []floating
	for _, at := range d.crowd() {
		if err == nil {
			err = at.rests.err()
		}
		at.name, at.notes = "with everyone at one edge and one float full of water", nil
		all = append(all, d.leaks(base, err, at)...)
	}
	return append(out, worstChecks(all, dedupe(append(rs, d.crowd()[0].rests...)), d.edgeDry)...)
}

// leaks floats the dock under a loading with each float full of water in turn; there is
// one, with the error, where the dock is not known.
func (d *Dock) leaks(base *float.Platform, err error, l loading) []floating {
	if err != nil {
		return []floating{{loading: l, err: err}}
	}
	out := make([]floating, len(base.Units))
	for i := range base.Units {
		p := *base
		p.Units = append([]float.Unit(nil), base.Units...)
		p.Units[i].Flooded = true
		one := l
		one.notes = append(slices.Clone(l.notes), "full of water: "+d.at(i))
		out[i] = settle(&p, one)
	}
	return out
}
