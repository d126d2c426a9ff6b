package dock

import (
	"fmt"
	"math"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A Coat is one coating: how much of it, and when it may be put on.
type Coat struct {
	Name   string
	On     string  // "cut ends", "deck" or "all faces"
	Area   float64 // m²
	Coats  int
	Volume float64         // m³ for all coats
	Cans   int             // to buy, beside what is in hand; 0 where no can is named
	Gate   []string        // what has to be so before and after
	Spread *measure.Source // whose the spread is
	Err    error           // why there is no quantity; the numbers it rests on are NaN or 0
}

var srcLabel = &measure.Source{Title: "the can's label, as the plan has it", Status: measure.Quoted}

// on names where a coating may go.
const (
	onEnds  = "cut ends"
	onDeck  = "deck"
	onFaces = "all faces"
)

// finish works out the coatings of the plan and, where none of them is for cut
// ends, what these need by common practice: lumber is treated in a shell, and every
// cut opens it.
func (d *Dock) finish() []Coat {
	var out []Coat
	ends := false
	for i := range d.plan.Shop.Coatings {
		g := &d.plan.Shop.Coatings[i]
		ends = ends || g.On.Value == onEnds
		out = append(out, d.coat(g))
	}
	if !ends {
		c := Coat{Name: "preservative for cuts in treated lumber", On: onEnds}
		c.Area, c.Err = d.coated(onEnds)
		c.Volume = math.NaN()
		if t, err := lumber.FieldTreatment(c.Area); c.Err == nil && err == nil {
			c.Coats, c.Volume, c.Gate, c.Spread = t.Coats, t.Volume, t.Rules, t.Spread
		}
		c.Gate = append(c.Gate, holesToo)
		out = append(out, c)
	}
	return out
}

const holesToo = "bored holes and notches come on top: the plan does not name them"

// coat works out one coating.
func (d *Dock) coat(g *plan.Coating) Coat {
	c := Coat{Name: called(g.Name, "a coating"), On: g.On.Value, Coats: g.Coats.Value, Volume: math.NaN(), Spread: srcLabel, Gate: d.gate(g)}
	c.Area, c.Err = d.coated(c.On)
	rs := rests{on(g.On), on(g.Coats), on(g.Can), on(g.Covers), on(g.Have)}
	if err := rs.err(); err != nil && c.Err == nil {
		c.Err = err
	}
	if c.Err != nil {
		return c
	}
	cans := float64(c.Area*float64(c.Coats)) / g.Covers.Value
	c.Volume = cans * g.Can.Value
	c.Cans = int(math.Ceil(math.Max(0, (c.Volume-g.Have.Value)/g.Can.Value) - 1e-9))
	return c
}

// gate says when a coating may go on.
func (d *Dock) gate(g *plan.Coating) []string {
	sys := d.system()
	say := func(known bool, text, otherwise string) string {
		if known {
			return text
		}
		return otherwise
	}
	out := []string{
		say(plan.Has(g.Moisture),
			fmt.Sprintf("wood at most %s by a pin meter in three boards", measure.Percent.Format(g.Moisture.Value, sys)),
			"how dry the wood must be: on the can's label, not in the plan; freshly treated lumber takes weeks under cover"),
		say(plan.Has(g.Air),
			fmt.Sprintf("air and wood at least %s while it goes on and dries", measure.Temperature.Format(g.Air.Value, sys)),
			"how warm it must be: on the can's label, not in the plan"),
		say(plan.Has(g.Dry),
			fmt.Sprintf("no rain, dew or frost for %s afterwards", measure.Time.Format(g.Dry.Value, sys)),
			"how long it must stay dry afterwards: on the can's label, not in the plan"),
		"on shore, over a sheet that catches drips: never on the ice or over the water",
	}
	if g.On.Value == onEnds {
		out = append(out, holesToo)
	}
	return out
}

// coated returns an area of the wood, m²: both ends of every piece and the ripped
// edge, the top of the deck, or every face of every piece, ends and all.
func (d *Dock) coated(on string) (float64, error) {
	if err := d.areaRests().err(); err != nil {
		return math.NaN(), err
	}
	rows, covered := d.boards()
	b := d.board.section
	last := float64(covered-float64(rows-1)) * b.Depth
	type lot struct {
		w      lumber.Section
		length float64
		n      float64
	}
	lots := []lot{
		{d.joist.section, d.clear, float64(len(d.centres))},
		{d.rim.section, d.run(), float64(2 * d.rimPlies)},
		{b, d.run(), float64(rows - 1)},
		{lumber.Section{Width: b.Width, Depth: last}, d.run(), 1},
	}
	ends, sides := 0.0, 0.0
	for _, l := range lots {
		ends += 2 * l.w.Area() * l.n
		sides += 2 * (l.w.Width + l.w.Depth) * l.length * l.n
	}
	if b.Depth-last > slack && on == onEnds {
		ends += b.Width * d.run() // ripping opens that edge
	}
	area := math.NaN()
	switch on {
	case onEnds:
		area = ends
	case onDeck:
		area = (float64(rows-1)*b.Depth + last) * d.run()
	case onFaces:
		area = ends + sides
	}
	if math.IsNaN(area) {
		return area, &measure.Error{Field: "shop.coatings", Class: measure.ErrUnknown, Want: "what the coating goes on, and a frame with boards"}
	}
	return area, nil
}

// areaRests are what the areas rest on: floats' stops are small and not counted.
func (d *Dock) areaRests() rests {
	f := &d.plan.Frame
	return rests{
		on(f.Length), on(f.Width), on(f.Joists.Size), on(f.Rims.Size), on(f.Rims.Plies), on(f.Decking.Size), on(f.Decking.Gap), d.marks(),
	}
}
