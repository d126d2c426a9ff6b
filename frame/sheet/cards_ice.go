package sheet

import (
	"fmt"
	"strings"

	"example.org/floewright/frame/plan"
	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// iceCard is the card for the pocket, to fill in at the holes.
func (c *cards) iceCard() Card {
	t := Table{
		Caption: "Clear ice of the thinnest hole, at least, for what the rules then do not rule out: winter, a cold lake, six holes and more" + c.cracked(),
		Head:    []string{"load", "clear ice", "white on it", "after thaw", "today"},
	}
	note := func(text string) string {
		for _, n := range t.Notes {
			if n.Text == text {
				return n.Code
			}
		}
		t.Notes = append(t.Notes, Note{fmt.Sprint(len(t.Notes) + 1), text})
		return t.Notes[len(t.Notes)-1].Code
	}
	row := func(load, why string, rule *measure.Source, thick ...float64) {
		r := Row{Cells: []string{load}}
		for _, x := range thick {
			if x > 0 {
				r.Cells = append(r.Cells, c.atLeast(x))
			} else {
				r.Cells = append(r.Cells, WriteIn)
			}
		}
		r.Cells = append(r.Cells, WriteIn)
		if rule != nil {
			r.Notes = append(r.Notes, note("Rule: "+rule.String()+"."))
		}
		if why != "" {
			r.Notes = append(r.Notes, note(why))
		}
		t.Rows = append(t.Rows, r)
	}
	asked := c.dock.IceAsked()
	for i, a := range append(asked, c.dock.IceBeside()) {
		if i > 0 && i < len(asked)-1 && a.Hours > 0 && a.Mass == asked[i+1].Mass { // one row for both
			continue
		}
		if i == len(asked)-1 && a.Hours > 0 && a.Mass == asked[i-1].Mass {
			a.Load = "one stack of all, or the whole dock, and the crew, some hours"
		}
		why := ""
		if i == len(asked) {
			why = "All as one load; the ice under the dock has a check of its own."
		}
		if a.Err != nil {
			row(a.Load, "Not known: "+c.why(a.Err)+".", nil, 0, 0, 0)
			continue
		}
		row(a.Load+", "+c.mass(a.Mass), why, a.Check.Rule, a.Check.Limit, a.White, a.Thawed)
	}
	var figures Block = t
	if len(asked) > 0 && asked[0].Err != nil { // there is none for anything else either
		figures = Stop("No thickness, however thick the ice: " + c.why(asked[0].Err) + ".")
	}
	said := "The thinnest hole counts, of it clear ice alone. Nothing on this card clears anybody onto the ice."
	for _, k := range ice.Counted() { // as text: with a list the card takes a second side
		said += " " + sentence(measure.Restate(k.Text, c.units)+" ("+k.Publisher+")")
	}
	return Card{Name: "ice-card", Title: "Ice card for the pocket", Blocks: []Block{
		Blanks{{"Drilled on, at; void 24 hours later" + c.void(), ""}},
		figures,
		Stop("Back to shore at once: water on the ice or in a crack, a crack that works, thaw, rain or fresh snow since drilling, a changed water level, candled or grey ice, an inlet, narrows, ridge or log near, a thinner hole."),
		Paragraph(said),
	}}
}

// sentence begins with a capital letter and ends with a full stop.
func sentence(text string) string { return strings.ToUpper(text[:1]) + text[1:] + "." }

// cracked says which cracks of the plan the figures count already.
func (c *cards) cracked() string {
	k := c.check("Ice for one crossing")
	for _, f := range k.Factors {
		if f.Symbol == "crack" {
			return fmt.Sprintf("; %s counted, %.2f times", f.Name, f.Value)
		}
	}
	return ""
}

// void says from which hour on the report's word of the plan's own holes is void,
// nothing where it is not known.
func (c *cards) void() string {
	const begin = "EXPIRY: 24 hours after drilling: "
	for _, n := range c.check("Ice for one crossing").Notes {
		if strings.HasPrefix(n, begin) {
			void, _, _ := strings.Cut(strings.TrimPrefix(n, begin), ",")
			return " (the plan's own: " + void + ")"
		}
	}
	return ""
}

// iceHoles is the other side of it: the holes of the day.
func (c *cards) iceHoles() Card {
	holes := Table{
		Caption: "Holes of today: the pad's corners as seen from where the tape hooks, its middle, the walk from shore",
		Head:    []string{"hole", "hour", "along", "across", "clear", "white", "gap", "layer", "water", "snow"},
	}
	for _, where := range []string{"near left", "near right", "far right", "far left", "middle", "walk", "walk"} {
		holes.Rows = append(holes.Rows, Row{Cells: []string{where, WriteIn, WriteIn, WriteIn, WriteIn, WriteIn, WriteIn, WriteIn, WriteIn, WriteIn}})
	}
	var what List
	for _, key := range []string{"along", "clear", "gap", "layer", "water_below_top"} {
		name, _, _ := strings.Cut(key, "_")
		what.Items = append(what.Items, name+": "+c.means("ice.holes[]."+key))
	}
	return Card{Name: "ice-holes", Title: "Holes of the day", Blocks: []Block{
		Blanks{{"Who drilled, and when", ""}, {"Who knows we are here, and when we are back", ""}}, holes, what,
	}}
}

// means returns what a field of the plan means, in the plan's own words.
func (c *cards) means(path string) string {
	for _, e := range plan.Explain() {
		if e.Path == path {
			return e.In(c.units).Means
		}
	}
	return ""
}

// iceAdvice is what the public bodies say.
func (c *cards) iceAdvice() Card {
	var items []string
	for _, k := range ice.Cautions() {
		items = append(items, measure.Restate(k.Text, c.units)+" ("+k.Publisher+", "+k.Status.String()+")")
	}
	return Card{Name: "ice-advice", Title: "What public bodies say of ice", Blocks: []Block{List{Items: items}}}
}

// steps returns the steps of a stage as blocks, numbered as in the report, up to
// each stop in one list. A gate that a step before has is named by it.
func (c *cards) steps(stage string) []Block {
	var out []Block
	first := map[string]int{} // step, by its gates
	now := List{Ordered: true, Tick: true}
	for i, s := range c.report.Steps {
		if s.Stage != stage {
			continue
		}
		text := s.Do
		gates := strings.Join(s.Gates, "; and ")
		switch at, twice := first[gates]; {
		case gates == "":
		case twice:
			text += fmt.Sprintf(" OPENS AS %d.", at)
		default:
			first[gates] = i + 1
			text += " OPENS WHEN: " + strings.TrimSuffix(gates, ".") + "."
		}
		if len(now.Items) == 0 {
			now.From = i + 1
		}
		now.Items = append(now.Items, text)
		if len(s.Stops) > 0 {
			out = append(out, now, Stop(strings.Join(s.Stops, "; ")+"."))
			now.Items = nil
		}
	}
	if len(now.Items) > 0 {
		out = append(out, now)
	}
	return out
}

// office is what comes before the first cut.
func (c *cards) office() Card {
	return Card{Name: "office", Title: "Order of work: before the first cut", Blocks: c.steps("Before the first cut")}
}

// garage is the work in the garage.
func (c *cards) garage() Card {
	return Card{Name: "garage", Title: "Order of work: in the garage", Blocks: c.steps("In the garage")}
}

// assembly is the card for the ice: numbered steps, gates and stops.
func (c *cards) assembly() Card {
	return Card{Name: "assembly", Title: "Order of work: on the ice", Blocks: c.steps("On the ice")}
}

// assembled is what is written down on the ice, and which boards are on when.
func (c *cards) assembled() Card {
	boards := c.check("Boards that must be on over each float")
	text := "Boards that must be on over a float before the ice may go: "
	switch {
	case boards.Err != nil:
		text += "not known, " + c.why(boards.Err)
	case len(boards.Steps) == 1: // there is nothing to ask
		text += boards.Steps[0]
	default:
		text += strings.Join(boards.Notes, "; ")
	}
	return Card{Name: "assembled", Title: "Written down on the ice", Blocks: []Block{
		Paragraph(text + "."),
		Blanks{
			{"Diagonal from where the tape hooks", c.unit()},
			{"The other diagonal", c.unit()},
			{"Shims under floats, number and thickness", c.unit()},
			{"", c.unit()},
			{"", c.unit()},
			{"First board on, date", ""},
			{"All ties on, date", ""},
			{"All boards on, date", ""},
		},
		Table{Caption: "Water in the hole beside the dock, below the ice's top", Head: []string{"date", "water", "date", "water"}, Rows: []Row{
			{Cells: []string{WriteIn, WriteIn, WriteIn, WriteIn}},
			{Cells: []string{WriteIn, WriteIn, WriteIn, WriteIn}},
			{Cells: []string{WriteIn, WriteIn, WriteIn, WriteIn}},
			{Cells: []string{WriteIn, WriteIn, WriteIn, WriteIn}},
		}},
	}}
}

// breakUp is the work from the last days of the ice to the first people aboard.
func (c *cards) breakUp() Card {
	return Card{Name: "break-up", Title: "Order of work: break-up and launch", Blocks: c.steps("Break-up and launch")}
}

// launch is the card for the day it floats.
func (c *cards) launch() Card {
	out := Card{Name: "launch", Title: "The day it floats"}
	if l, err := c.dock.Launch(); err != nil {
		t := Table{Caption: "Corners of the deck over still water, nobody aboard", Head: []string{"corner", "measured", "a week later"}}
		for _, name := range []string{"near end, near side", "far end, near side", "far end, far side", "near end, far side"} {
			t.Rows = append(t.Rows, Row{Cells: []string{name, WriteIn, WriteIn}})
		}
		out.Blocks = append(out.Blocks, c.missing("How the dock floats", err), t, Stop("No floating out: the wind in which it can be held is not known."))
	} else {
		t := Table{
			Caption: "Corners of the deck over still water, nobody aboard",
			Head:    []string{"corner", "expected", "19 of 20 within", "measured", "with a float full"},
		}
		notes := map[string]string{}
		for _, k := range l.Corners {
			r := Row{Cells: []string{k.Name, c.length(k.Height), "+/- " + c.length(k.Within), WriteIn, c.length(k.Leak)}}
			if k.Float != "" {
				text := "Lowest there when full of water: " + k.Float + "."
				if notes[text] == "" {
					notes[text] = fmt.Sprint(len(notes) + 1)
					t.Notes = append(t.Notes, Note{notes[text], text})
				}
				r.Notes = []string{notes[text]}
			}
			t.Rows = append(t.Rows, r)
		}
		out.Blocks = append(out.Blocks, t, List{Items: []string{
			"All within their range: as planned.",
			"All low by as much: heavier than planned; weigh a joist, look at the water in the wood and at what lies on deck.",
			"One corner low, as in the last column: that float takes in water or has come loose. Nobody aboard.",
			"One corner up and its two neighbours down: the frame is twisted or a shim is still in it.",
		}})
		if l.Err != nil {
			out.Blocks = append(out.Blocks, c.missing("The wind in which it can be held", l.Err))
		} else {
			out.Blocks = append(out.Blocks, Stop(fmt.Sprintf("No floating out in gusts over %s: %s with %s each can no longer hold it by hand with its long side to the wind, in still water.",
				measure.Speed.Format(l.Gust, c.units), people(l.Hands), c.force(100))))
		}
	}
	return out
}

// lines is the dock in its lines.
func (c *cards) lines() Card {
	out := Card{Name: "mooring", Title: "Lines at high and at low water"}
	lines, err := c.dock.Lines()
	if err != nil {
		t := Table{Caption: "From cleat to end, straight", Head: []string{"line", "low", "today", "high", "by tape", "let out"}}
		for i := range 4 {
			t.Rows = append(t.Rows, Row{Cells: []string{fmt.Sprint(i + 1), WriteIn, WriteIn, WriteIn, WriteIn, WriteIn}})
		}
		out.Blocks = append(out.Blocks, c.missing("The way of the lines", err), t)
		return out
	}
	t := Table{
		Caption: "From cleat to end, straight, by water level", Head: []string{"line", "low", "today", "high", "by tape", "let out"},
	}
	for _, k := range lines.Leads {
		made := WriteIn
		if k.Made > 0 {
			made = c.length(k.Made)
		}
		t.Rows = append(t.Rows, Row{Cells: []string{k.Name, c.length(k.At(lines.Low)), c.length(k.At(0)), c.length(k.At(lines.High)), made, WriteIn}})
	}
	out.Blocks = []Block{c.picture("lines"), t, Paragraph("A line shorter than the longest of these ways pulls the dock under or parts; one much longer lets it wander. Today is the water at which the plan was measured.")}
	for _, s := range lines.Storm {
		out.Blocks = append(out.Blocks, Paragraph(strings.ToUpper(s[:1])+measure.Restate(s[1:], c.units)+"."))
	}
	return out
}
