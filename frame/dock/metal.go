package dock

import (
	"errors"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// exposure is what the metal stands in.
func (d *Dock) exposure() (fasten.Exposure, rests) {
	h, w := &d.plan.Hardware, d.plan.Site.Water
	return fasten.Exposure{Treatment: h.Treatment.Value, Fresh: w.Value == "lake" || w.Value == "river", Drains: h.Dries.Value == "yes"},
		rests{on(h.Treatment).standsIn("taken as one with dissolved copper"), on(w).standsIn("taken as salt"), on(h.Dries)}
}

// coating checks one metal part by its finish.
func (d *Dock) coating(name string, finish plan.Name, m fasten.Metal) measure.Check {
	e, rs := d.exposure()
	rs = append(rs, on(finish))
	if err := rs.err(); err != nil {
		return refuse(name, err, rs)
	}
	m.Part, m.Finish = name, finish.Value
	checks, err := e.Check(m)
	if err != nil || len(checks) == 0 {
		return refuse(name, err, rs)
	}
	c := checks[0]
	c.Name, c.Rests = name, rs.assumptions()
	return c
}

// metal checks the named finishes of the joists' ends and of the deck's screws.
func (d *Dock) metal() []measure.Check {
	h := &d.plan.Hardware
	const bracket, mixed = "Coating of the hangers or angles", "Hangers or angles and their fasteners of one metal"
	nails := h.Ends.By.Value == "nails" || h.Ends.By.Value == "hanger"
	out := []measure.Check{
		d.coating("Coating of the fasteners at the joists' ends", h.Ends.Finish, fasten.Metal{Nail: nails}),
		{Name: bracket, Rule: srcAsked, Steps: []string{"no bracket at the joists' ends"}},
		{Name: mixed, Rule: srcAsked, Steps: []string{"no bracket at the joists' ends"}},
		d.coating("Coating of the screws through the boards", h.DeckFinish, fasten.Metal{}),
	}
	if by := h.Ends.By.Value; by == "nails" || by == "screws" {
		return out
	}
	out[1] = d.coating(bracket, h.Ends.Bracket, fasten.Metal{Connector: true})
	e, rs := d.exposure()
	rs = append(rs, on(h.Ends.By), on(h.Ends.Finish), on(h.Ends.Bracket))
	checks, err := e.Check(fasten.Metal{Part: "fastener", Finish: h.Ends.Finish.Value}, fasten.Metal{Part: "bracket", Finish: h.Ends.Bracket.Value, Connector: true})
	if missing := rs.err(); missing != nil {
		err = missing
	}
	if err != nil || len(checks) < 3 {
		out[2] = refuse(mixed, err, rs)
		return out
	}
	out[2] = checks[2]
	out[2].Name, out[2].Rests = mixed, rs.assumptions()
	return out
}

// Hardware returns the schedule of what holds the dock together, a row for each kind
// of joint that the plan knows, and the list to buy with spares: fasteners, brackets
// and ties. What the plan does not know is left out and named by the error beside the
// lists, so that a list with an error is not whole. It is [fasten.Schedule] of the
// plan's places.
func (d *Dock) Hardware() ([]fasten.Row, []fasten.Item, error) {
	if d.plan == nil {
		return nil, nil, &measure.Error{Field: "plan", Class: measure.ErrUnknown, Want: "a plan"}
	}
	if err := dedupe(d.layoutRests()).err(); err != nil {
		return nil, nil, err
	}
	var places []fasten.Place
	var more []fasten.Item
	var open []error
	h, deck := &d.plan.Hardware, &d.plan.Frame.Decking
	ends := 2 * len(d.centres)
	rs := append(endRests(&h.Ends), on(h.Ends.Finish))
	f, err := d.looked(rs, h.Ends.Fastener)
	switch by := h.Ends.By.Value; {
	case err != nil:
		open = append(open, err)
	case by == "nails" || by == "screws":
		places = append(places, fasten.Place{Name: "joists' ends", Joint: d.throughRim(f, false), Alike: ends, Finish: h.Ends.Finish.Value})
	default:
		side := fasten.Piece{Material: fasten.Sheet, Thickness: h.Ends.Steel.Value}
		if h.Ends.Steel.Value >= 0.25*measure.Inch*(1-1e-9) {
			side.Material = fasten.Plate
		}
		for _, leg := range []struct {
			name string
			main fasten.Piece
			n    int
		}{{by + " in the rim", d.rimPiece(false), h.Ends.Count.Value}, {by + " in the joist", d.joistPiece(false), h.Ends.InJoist.Value}} {
			j := upright(fasten.Joint{Fastener: f, Main: leg.main, Side: side}, leg.n, known(h.Ends.Spacing), false)
			places = append(places, fasten.Place{Name: leg.name, Joint: j, Alike: ends, Finish: h.Ends.Finish.Value})
		}
		more = append(more, fasten.Item{What: by + coated(h.Ends.Bracket), Count: spared(ends)})
	}
	rs = rests{on(deck.Screw), on(deck.Screws), on(h.DeckFinish)}
	if f, err := d.looked(rs, deck.Screw); err != nil {
		open = append(open, err)
	} else {
		boards, _ := d.boards()
		places = append(places, fasten.Place{Name: "deck boards", Joint: d.deckJoint(f), Alike: boards * len(d.centres), Finish: h.DeckFinish.Value})
	}
	for i := range d.plan.Floats {
		set := &d.plan.Floats[i]
		if set.Tied.Value != "yes" {
			continue
		}
		tie := d.tieOf(i)
		if tie == nil {
			open = append(open, noTie(set))
			continue
		}
		if err := (rests{on(tie.Of), on(tie.Parts)}).err(); err != nil {
			open = append(open, err)
			continue
		}
		n := 0
		for _, m := range d.floats {
			if m.set == set {
				n += tie.Parts.Value
			}
		}
		more = append(more, fasten.Item{What: "tie of " + tie.Of.Value + " for " + d.kind(i) + coated(tie.Finish), Count: spared(n)})
	}
	blocked := map[*plan.Floats]int{}
	for _, s := range d.stops() {
		blocked[s.set]++
	}
	for i := range d.plan.Floats {
		set := &d.plan.Floats[i]
		if blocked[set] == 0 {
			continue
		}
		nail, err := d.looked(rests{on(set.Nail), on(set.Nails)}, set.Nail)
		if err != nil {
			open = append(open, err)
			continue
		}
		places = append(places, fasten.Place{Name: "stops and blocks of " + d.kind(i), Joint: d.stopJoint(set, nail), Alike: 2 * blocked[set], Finish: h.Ends.Finish.Value})
	}
	e, _ := d.exposure()
	rows, buy, err := fasten.Schedule(places, e)
	if err != nil {
		open = append(open, err)
	}
	return rows, append(buy, more...), errors.Join(open...)
}

// looked looks a fastener up whose rests are known.
func (d *Dock) looked(rs rests, name plan.Name) (fasten.Fastener, error) {
	if err := rs.err(); err != nil {
		return fasten.Fastener{}, err
	}
	return fasten.Lookup(name.Value)
}

func coated(finish plan.Name) string {
	if finish.Value == "" {
		return ""
	}
	return ", " + finish.Value
}

// spared adds spares as the schedule of fasteners does: a tenth, two at least.
func spared(n int) int { return n + max(2, (n+9)/10) }
