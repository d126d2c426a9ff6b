package sheet

import (
	"fmt"
	"strings"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// iceCard is the card for the pocket, to fill in at the holes.
func (c *cards) iceCard() Card {
	t := Table{
		Caption: "What the rules do not rule out on clear, cold, sound lake ice in winter, drilled at five places and more",
		Head:    []string{"load", "weight", "thinnest hole at least", "today's thinnest", "initials"},
	}
	seen := map[string]string{}
	for _, a := range c.dock.IceAsked() {
		if a.Err != nil {
			t.Rows = append(t.Rows, Row{Cells: []string{a.Load, WriteIn, "not known: " + a.Err.Error(), WriteIn, WriteIn}})
			continue
		}
		r := Row{Cells: []string{a.Load, c.mass(a.Mass), c.length(a.Check.Limit), WriteIn, WriteIn}}
		if a.Check.Rule != nil {
			text := "Rule: " + a.Check.Rule.String() + "."
			if seen[text] == "" {
				seen[text] = fmt.Sprint(len(seen) + 1)
				t.Notes = append(t.Notes, Note{seen[text], text})
			}
			r.Notes = []string{seen[text]}
		}
		t.Rows = append(t.Rows, r)
	}
	holes := Table{Caption: "Holes of today", Head: []string{"where", "clear ice", "white ice", "water below top", "snow"}}
	for _, where := range []string{"pad, near left", "pad, near right", "pad, far right", "pad, far left", "pad, middle", "walk from shore", "walk from shore"} {
		holes.Rows = append(holes.Rows, Row{Cells: []string{where, WriteIn, WriteIn, WriteIn, WriteIn}})
	}
	return Card{Name: "ice-card", Title: "Ice card for the pocket", Blocks: []Block{
		Blanks{{"Date and hour of drilling; void 24 hours later", ""}, {"Who drilled, and who knows we are here", ""}},
		t,
		Paragraph("The thinnest hole counts. White ice counts half of its thickness at best, and then everything is doubled; slush and snow count nothing. A thaw triples what is asked. Nothing on this card clears anybody onto the ice."),
		Stop("Back to shore at once: water on the ice or in a crack, a crack that works, thaw, rain or fresh snow since drilling, a changed water level, candled or grey ice, a hole thinner than the last."),
		holes,
	}}
}

// iceAdvice is what the public bodies say.
func (c *cards) iceAdvice() Card {
	var items []string
	for _, k := range ice.Cautions() {
		items = append(items, k.Text+" ("+k.Publisher+", "+k.Status.String()+")")
	}
	return Card{Name: "ice-advice", Title: "What public bodies say of ice", Blocks: []Block{List{Items: items}}}
}

// steps returns the steps of some stages as blocks, numbered as in the report.
func (c *cards) steps(stages ...string) []Block {
	var out []Block
	stage := ""
	for i, s := range c.report.Steps {
		if !contains(stages, s.Stage) {
			continue
		}
		if s.Stage != stage {
			stage = s.Stage
			out = append(out, Heading(stage))
		}
		text := s.Do
		for k, g := range s.Gates {
			if k == 0 {
				text += " OPENS WHEN: "
			} else {
				text += "; and "
			}
			text += strings.TrimSuffix(g, ".")
			if k == len(s.Gates)-1 {
				text += "."
			}
		}
		out = append(out, List{Ordered: true, From: i + 1, Tick: true, Items: []string{text}})
		if len(s.Stops) > 0 {
			out = append(out, Stop(strings.Join(s.Stops, "; ")+"."))
		}
	}
	return out
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// garage is the order of work up to the ice.
func (c *cards) garage() Card {
	return Card{Name: "garage", Title: "Order of work: office and garage", Blocks: c.steps("Before the first cut", "In the garage")}
}

// assembly is the card for the ice: numbered steps, gates and stops.
func (c *cards) assembly() Card {
	blocks := c.steps("On the ice")
	boards := c.check("Boards that must be on over each float")
	text := "Boards that must be on over a float before the ice may go: "
	if boards.Err != nil {
		text += "not known, " + boards.Err.Error()
	} else {
		text += strings.Join(boards.Notes, "; ")
	}
	return Card{Name: "assembly", Title: "Assembly on the ice", Blocks: append(blocks,
		Paragraph(text+"."),
		Blanks{{"Shims: float, and how thick", c.unit()}, {"", c.unit()}, {"", c.unit()}, {"First diagonal on the ice", c.unit()}, {"Second diagonal on the ice", c.unit()}},
	)}
}

// launch is the card for break-up and the day it floats.
func (c *cards) launch() Card {
	out := Card{Name: "launch", Title: "Break-up and launch"}
	out.Blocks = c.steps("Break-up and launch")
	if l, err := c.dock.Launch(); err != nil {
		out.Blocks = append(out.Blocks, missing("How the dock floats", err))
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
			out.Blocks = append(out.Blocks, missing("The wind in which it can be held", l.Err))
		} else {
			out.Blocks = append(out.Blocks, Stop(fmt.Sprintf("No floating out in gusts over %s: %d people with %s each no longer hold it by hand with its long side to the wind.",
				measure.Speed.Print(l.Gust, c.units), l.Hands, c.force(100))))
		}
	}
	lines, err := c.dock.Lines()
	if err != nil {
		out.Blocks = append(out.Blocks, missing("Lengths of lines", err))
		return out
	}
	t := Table{
		Caption: "Lines: from cleat to end, straight, by water level", Head: []string{"line", "low", "today", "high", "made of, by tape", "let out"},
	}
	for _, k := range lines.Leads {
		made := WriteIn
		if k.Made > 0 {
			made = c.length(k.Made)
		}
		t.Rows = append(t.Rows, Row{Cells: []string{k.Name + " to " + k.To, c.length(k.At(lines.Low)), c.length(k.At(0)), c.length(k.At(lines.High)), made, WriteIn}})
	}
	out.Blocks = append(out.Blocks, t, Paragraph("A line shorter than the way at high water pulls the dock under or parts; one much longer lets it wander."))
	return out
}

// lines is the dock in its lines.
func (c *cards) lines() Card {
	if _, ok := c.drawn.Picture("lines"); !ok {
		return Card{}
	}
	return Card{Name: "mooring", Title: "Lines at high and at low water", Blocks: []Block{c.picture("lines")}}
}
