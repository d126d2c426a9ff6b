package moor

import (
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Gear is a piece of rope, chain, wire rope or a fitting by its strength; what a metre of
// it weighs and how it stretches is in its [Piece]. The
// zero value has no strength and answers nothing. [Lookup] fills one from the
// tables; a user's own needs Break, or Working, and Source.
type Gear struct {
	Name    string
	Kind    string          // decides ends, wetness and design factor: "nylon 3-strand", "wire rope 7x19 galvanized", "chain grade 30", "shackle", "cleat"
	Size    float64         // m, of rope, wire or chain stock
	Break   float64         // N, least breaking load, new and dry; 0: unknown
	Working float64         // N, working load as printed, never exceeded; 0: none printed
	Source  *measure.Source // who says so; nil is no answer

	// Ends are what the piece ends in and bends over; the weakest counts. None
	// named on a rope or wire rope counts as a knot or a bend without thimble.
	Ends []measure.Factor

	// Design divides the breaking load; its zero value is the cautious factor
	// of the kind: rope 12, wire rope 5, chain 4, shackle 5, anything else 5.
	Design measure.Factor

	Dry bool // never wet; otherwise nylon loses 15 %
}

// wetNylon is the share of strength that wet nylon keeps.
var wetNylon = measure.Factor{
	Symbol: "wet", Name: "wet nylon", Value: 0.85, Why: "15 % off when wet",
	Source: src(ufcMooring, "3 October 2005", "Table 3-7", measure.Read),
}

// Gears returns every row of a kind as the tables have it, its source with it,
// conflicting values of one size side by side; all kinds where kind is "".
func Gears(kind string) ([]Gear, error) {
	t, err := load()
	if err != nil {
		return nil, err
	}
	var out []Gear
	for _, g := range t.gear {
		if kind == "" || g.Kind == kind {
			out = append(out, g)
		}
	}
	if out == nil {
		return nil, &measure.Error{Field: "kind", Text: kind, Class: measure.ErrName, Want: strings.Join(kinds(t), ", ")}
	}
	return out, nil
}

func kinds(t *tables) []string {
	var out []string
	for _, g := range t.gear {
		if !slices.Contains(out, g.Kind) {
			out = append(out, g.Kind)
		}
	}
	return out
}

// Lookup returns the piece of a kind and a size such as "3/8 in", "3/8" (inches)
// or "12 mm". Where sources conflict it is the weakest.
func Lookup(kind, size string) (Gear, error) {
	all, err := Gears(kind)
	if err != nil {
		return Gear{}, err
	}
	text := strings.TrimSpace(size)
	if text != "" && strings.IndexFunc(text, func(r rune) bool { return r != '/' && r != '-' && r != '.' && (r < '0' || r > '9') }) < 0 {
		text += " in"
	}
	d, err := measure.Length.Parse(text)
	if err != nil {
		return Gear{}, err
	}
	var found Gear
	var sizes []string
	for _, g := range all {
		if math.Abs(g.Size-d) < 1e-6 && (found.Name == "" || g.Break < found.Break) {
			found = g
		}
		sizes = append(sizes, strings.TrimSuffix(g.Name, " "+kind))
	}
	if found.Name == "" {
		return Gear{}, &measure.Error{Field: "size of " + kind, Text: size, Class: measure.ErrName, Want: strings.Join(slices.Compact(sizes), ", ")}
	}
	return found, nil
}

// Factor returns a sourced factor by what it is of and its name, the most
// cautious where sources conflict; an unknown name lists the others.
//
//   - "design": what a breaking or holding load is divided by, "rope", "rope,
//     mooring", "wire rope", "chain", "chain, straight", "shackle", "anchor dead
//     weight", "anchor pile or plate" and others;
//   - "end of rope", "end of wire rope": the share of its strength that the piece
//     keeps with a knot, a splice, clips: 70 % of the 70, 75 and 80 % printed;
//   - "dropped on", "cast on": the friction of a concrete block on a bottom, the
//     least of its class;
//   - "shape in wind": force over pressure and area, all from memory: a known value
//     belongs into [Face].
func Factor(of, name string) (measure.Factor, error) {
	t, err := load()
	if err != nil {
		return measure.Factor{}, err
	}
	switch of {
	case "design":
		return pick("design factor", t.designs, "", name, func(a, b float64) bool { return a > b })
	case "end of rope", "end of wire rope":
		return pick(of, t.ends, strings.TrimPrefix(of, "end of "), name, func(a, b float64) bool { return a < b })
	case "dropped on", "cast on":
		return friction(name, of == "cast on")
	case "shape in wind":
		return pick(of, shapes, "", name, func(a, b float64) bool { return a > b })
	}
	return measure.Factor{}, &measure.Error{
		Field: "factor", Text: of, Class: measure.ErrName, Want: "design, end of rope, end of wire rope, dropped on, cast on or shape in wind",
	}
}

// pick returns the most cautious factor of a name.
func pick(field string, from []tabled, of, name string, worse func(a, b float64) bool) (measure.Factor, error) {
	var found measure.Factor
	var names []string
	for _, s := range from {
		if of != "" && s.of != of {
			continue
		}
		names = append(names, s.factor.Name)
		if s.factor.Name == name && (found.Name == "" || worse(s.factor.Value, found.Value)) {
			found = s.factor
		}
	}
	if found.Name == "" {
		return found, &measure.Error{Field: field, Text: name, Class: measure.ErrName, Want: strings.Join(slices.Compact(names), ", ")}
	}
	return found, nil
}

// class returns which ends and design factor govern a kind.
func (g Gear) class() string {
	switch {
	case strings.Contains(g.Kind, "wire rope"):
		return "wire rope"
	case strings.Contains(g.Kind, "chain"):
		return "chain"
	case strings.Contains(g.Kind, "shackle"):
		return "shackle"
	case strings.Contains(g.Kind, "strand"), strings.Contains(g.Kind, "rope"), strings.Contains(g.Kind, "braid"):
		return "rope"
	}
	return ""
}

var shareRange = measure.Range{Lo: 0, Hi: 1, OpenLo: true, Source: srcSense}

var designRange = measure.Range{Lo: 1, Hi: 100, Source: srcSense}

// limit returns the load the piece may bear, the factors applied and what it
// rests on.
func (g Gear) limit() (float64, []measure.Factor, []measure.Assumption, error) {
	name := g.Name
	if name == "" {
		name = "piece"
	}
	if err := first(forceOrZero.Check(name+": breaking load", g.Break), forceOrZero.Check(name+": working load", g.Working)); err != nil {
		return 0, nil, nil, err
	}
	class := g.class()
	var factors []measure.Factor
	var rests []measure.Assumption
	worst := measure.Factor{Value: 1}
	for _, e := range g.Ends {
		if err := shareRange.Check(name+": end "+e.Name, e.Value); err != nil {
			return 0, nil, nil, err
		}
		if e.Value < worst.Value {
			worst = e
		}
	}
	if len(g.Ends) == 0 && (class == "rope" || class == "wire rope") {
		end, err := Factor("end of "+class, "bend without thimble")
		if err != nil {
			return 0, nil, nil, err
		}
		worst = end
		rests = append(rests, measure.Assumption{Name: "ends of " + name, Text: "not said: a knot or a bend without thimble", Known: measure.Assumed, Decides: true})
	}
	if worst.Value < 1 {
		factors = append(factors, worst)
	}
	if strings.Contains(g.Kind, "nylon") && !g.Dry {
		factors = append(factors, wetNylon)
	}
	design := g.Design
	if design.Value == 0 {
		use := class
		if use == "" {
			use = "wire rope"
		}
		var err error
		if design, err = Factor("design", use); err != nil {
			return 0, nil, nil, err
		}
		if class == "" {
			design.Name, design.Why, design.Source = "fitting of another kind", "the design factor of wire rope stands in", srcOwn
		}
	}
	if err := designRange.Check(name+": design factor", design.Value); err != nil {
		return 0, nil, nil, err
	}
	limit := g.Break / design.Value
	for _, f := range factors {
		limit *= f.Value
	}
	design.Symbol, design.Value = "1/DF", 1/design.Value
	factors = append(factors, design)
	if g.Break == 0 {
		limit, factors = g.Working, nil
	} else if g.Working > 0 && g.Working < limit {
		limit, factors = g.Working, nil
	}
	return limit, factors, rests, nil
}

// Check compares the greatest tension in the piece, N, with what it may bear:
// the least breaking load times its weakest end and its wetness, over the
// design factor, and never more than the printed working load. A piece of
// unknown strength or source is no answer.
func (g Gear) Check(tension float64) (measure.Check, error) {
	if err := forceOrZero.Check("tension", tension); err != nil {
		return measure.Check{}, err
	}
	name := "tension in " + g.Name
	if g.Name == "" {
		name = "tension"
	}
	limit, factors, rests, err := g.limit()
	if err != nil {
		return measure.Check{}, err
	}
	if !(limit > 0) || g.Source == nil {
		c := measure.Refuse(name, unknown("strength of "+strings.TrimPrefix(name, "tension in "), "its least breaking or working load and who says so"))
		c.Kind, c.Value = measure.Force, tension
		return c, nil
	}
	c := measure.Check{
		Name: name, Kind: measure.Force, Value: tension, Limit: limit,
		Rule: g.Source, Factors: factors, Rests: rests,
		Notes: []string{"strength of new gear: wear, rust, sun and chafe take from it, so look at it every spring"},
	}
	if strings.Contains(g.Kind, "polypropylene") {
		c.Notes = append(c.Notes, "polypropylene floats into propellers and rots in sun")
	}
	if g.Source.Status <= measure.Memory {
		c.Notes = append(c.Notes, "this strength is from memory: read it off the maker's sheet")
	}
	return c, nil
}
