package sheet

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/floewright/ice/action"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// plate is the sign for the dock.
func (c *cards) plate() Card {
	out := Card{Name: "capacity-plate", Title: "Capacity plate"}
	e, _ := c.report.Envelope() // without it the plate says so
	p, err := c.dock.Plate(e)
	if err != nil {
		out.Blocks = []Block{Stop("Nobody aboard: how many people it carries is not known: " + c.why(err) + ".")}
		return out
	}
	short, open := c.unsettled()
	var not []string
	if len(short) > 0 {
		not = append(not, "while this is short: "+few(short))
	}
	if len(open) > 0 {
		not = append(not, "while this has no answer: "+few(open))
	}
	if len(not) > 0 {
		out.Blocks = append(out.Blocks, Stop("Not to be put up "+strings.Join(not, "; nor ")+"."))
	}
	if len(not) > 0 || p.People == 0 {
		out.Blocks = append(out.Blocks, Sign("NOBODY ABOARD"))
	} else {
		out.Blocks = append(out.Blocks, Sign(fmt.Sprintf("%d PEOPLE", p.People)), Sign("in all, at any one edge, or in any one corner"))
	}
	out.Blocks = append(out.Blocks, Paragraph(fmt.Sprintf("Floats and frame were checked for %s, all at any one edge or in any one corner, and nobody else aboard. One more: %s.",
		peopleOf(p.People, "up to "+c.mass(p.Each)), cmp.Or(p.Limit, "has no room along the edge"))))
	if guessed := c.guessed("people["); len(guessed) > 0 {
		out.Blocks = append(out.Blocks, Stop("Nobody said, and a guess stands in: "+few(guessed)+"."))
	}
	dive := fmt.Sprintf("Dive only where the water is at least %s deep (%s).", c.length(9*measure.Foot), p.DiveSource)
	switch {
	case p.Level != nil:
		dive += " How deep it is here is not known: " + c.why(p.Level) + "."
	case p.Dive:
		dive = fmt.Sprintf("At its lowest the water under the dock is %s deep. Dive only where it was measured to be so too, after looking (%s).", c.length(p.Depth), p.DiveSource)
	default:
		dive += fmt.Sprintf(" At its lowest it is %s deep here.", c.length(p.Depth))
	}
	if p.Level != nil || !p.Dive {
		out.Blocks = append(out.Blocks, Sign("NO DIVING"))
	}
	out.Blocks = append(out.Blocks, Paragraph(dive))
	if p.Level == nil {
		out.Blocks = append(out.Blocks, Paragraph(fmt.Sprintf("Made for water from %s to %s against the level of the plan.", c.length(p.Low), c.length(p.High))))
	}
	out.Blocks = append(out.Blocks,
		List{Items: []string{
			"Calm water, every float sound, nobody jumping; children count as one each.",
			"No grill, no cord, no cable: mains electricity near water kills.",
			"Life jackets for whoever does not swim well; the ladder stays free.",
			"In a storm, with ice about, or with a corner lower than usual: nobody aboard.",
		}},
	)
	return out
}

// unsettled are the checks that a dock afloat with people on it rests on and that are
// short or have no answer: all but those of the ice, of weights and of what is bought.
func (c *cards) unsettled() (short, open []string) {
	for _, t := range c.report.Topics {
		switch t.Title {
		case "WEIGHTS", "STOCK", "ICE", "THE SEASON":
			continue
		}
		for _, k := range t.Checks {
			switch k.Verdict() {
			case measure.Short:
				short = append(short, k.Name)
			case measure.NoAnswer:
				open = append(open, k.Name)
			}
		}
	}
	return short, open
}

// guessed are the inputs, their names beginning so, that nobody knows.
func (c *cards) guessed(begin string) []string {
	var out []string
	for _, list := range [][]measure.Assumption{c.report.Deciding, c.report.Assumed} {
		for _, a := range list {
			if strings.HasPrefix(a.Name, begin) && a.Known == measure.Unknown {
				out = append(out, a.Name+": "+a.Text)
			}
		}
	}
	return out
}

// few joins the first of a list and says how many more there are.
func few(names []string) string {
	const most = 2 // the sign is one side of paper
	if len(names) > most {
		return strings.Join(names[:most], "; ") + fmt.Sprintf("; and %d more, see the report", len(names)-most)
	}
	return strings.Join(names, "; ")
}

// heeled is the dock under the worst crowd.
func (c *cards) heeled() Card {
	return Card{Name: "worst-crowd", Title: "Under the worst crowd", Blocks: []Block{c.picture("heeled")}}
}

// righting is how it rights itself.
func (c *cards) righting() Card {
	return Card{Name: "righting-moment", Title: "How it rights itself", Blocks: []Block{c.picture("righting")}}
}

// winter is the picture of past winters.
func (c *cards) winter() Card {
	if _, ok := c.drawn.Picture("winter"); !ok {
		return Card{}
	}
	return Card{Name: "winters", Title: "Ice through the winter", Blocks: []Block{c.picture("winter")}}
}

// season is the card for autumn and spring: dates, windows of the work, and blanks.
func (c *cards) season() Card {
	out := Card{Name: "season", Title: "Season card"}
	s := c.report.Season
	if s != nil && (s.NoOn == nil || s.NoOut == nil) {
		t := Table{Caption: "For the diary, never permission: drill, measure, ask", Head: []string{"", "one in ten by", "half by", "nine in ten by"}}
		note := func(text string) string {
			code := strconv.Itoa(len(t.Notes) + 1)
			t.Notes = append(t.Notes, Note{code, text})
			return code
		}
		row := func(name string, span season.Span, codes ...string) {
			t.Rows = append(t.Rows, Row{Cells: []string{name, day(span.P10), day(span.P50), day(span.P90)}, Notes: codes})
		}
		// An event by the table of temperatures and as remembered, the one that counts first.
		event := func(name, counts string, span, table, recalled season.Span, err error) {
			if err != nil {
				return
			}
			if none := (season.Span{}); table == none || recalled == none || table == recalled {
				row(name, span)
				return
			}
			row(name, span, note("What counts here of the table of temperatures and of remembered dates: "+counts+"."))
			row(name+", by past temperatures", table)
			row(name+", as remembered", recalled)
		}
		switch {
		case !s.Came.IsZero():
			row("ice-on", s.On, note("It has come: one day, by this winter's own temperatures and the model, no odds any more."))
			if s.Memory.On != (season.Span{}) {
				row("ice-on, as remembered", s.Memory.On)
			}
		default:
			event("ice-on", "the later", s.On, s.Table.On, s.Memory.On, s.NoOn)
		}
		for _, l := range s.Loads {
			row(fmt.Sprintf("%s of ice: %s", c.atLeast(l.Need), l.Load), l.First)
		}
		event("ice-out", "the earlier, and of the late dates the later", s.Out, s.Table.Out, s.Memory.Out, s.NoOut)
		out.Blocks = append(out.Blocks, t)
	}
	if s == nil || s.NoOdds != nil {
		text := "Odds of thickness and windows of the work are not known: a table of daily temperatures of five winters or more says them."
		if s != nil {
			text = "Odds of thickness and windows of the work are not known: " + c.why(s.NoOdds) + "."
		}
		out.Blocks = append(out.Blocks, Paragraph(text))
	} else {
		t := Table{Caption: "The work", Head: []string{"task", "earliest", "usual", "9 of 10 from", "begin by"}}
		for i, w := range s.Calendar.Slots {
			r := Row{Cells: []string{w.Task.Name, begins(w, w.Earliest), begins(w, w.Usual), begins(w, w.Sure), lastDay(w)}}
			code, said := strconv.Itoa(i+1), ""
			if w.Against != "" {
				said = "Not as things are: " + w.Against + ". "
			}
			if w.Task.Early != "" {
				said += "If the window closes early: " + w.Task.Early + "."
			}
			if said != "" {
				t.Notes = append(t.Notes, Note{code, strings.TrimSpace(said)})
				r.Notes = []string{code}
			}
			t.Rows = append(t.Rows, r)
		}
		out.Blocks = append(out.Blocks, t)
	}
	return out
}

// day prints a date of this winter.
func day(t time.Time) string {
	if t.IsZero() {
		return "never"
	}
	return t.Format("2 Jan 2006")
}

// begins prints a date on which a task may begin: never where there is none, not yet
// where what speaks against it as things are has taken it.
func begins(s season.Slot, t time.Time) string {
	switch {
	case !t.IsZero():
		return day(t)
	case s.Against != "":
		return "not as it is"
	}
	return "never"
}

// lastDay prints the day by which a task must begin.
func lastDay(s season.Slot) string {
	switch {
	case !s.Latest.IsZero():
		return day(s.Latest)
	case s.Task.Need > 0:
		return "never"
	}
	return "no last day"
}

// year is the work through the year.
func (c *cards) year() Card {
	return Card{Name: "year", Title: "Order of work: through the year", Blocks: c.steps("Through the year")}
}

// autumn is what others have seen.
func (c *cards) autumn() Card {
	var items []string
	for _, k := range action.Autumn() {
		if k.Status != measure.CommonPractice { // those are in the steps
			items = append(items, measure.Restate(k.Text, c.units)+" ("+k.Publisher+", "+k.Status.String()+")")
		}
	}
	return Card{Name: "autumn", Title: "Autumn: what others have seen", Blocks: []Block{
		List{Items: items},
		Heading("Dates of this year"),
		Table{Head: []string{"first ice", "ice all over", "first work", "last work", "open water", "afloat"}, Rows: []Row{{Cells: []string{WriteIn, WriteIn, WriteIn, WriteIn, WriteIn, WriteIn}}}},
	}}
}

// engineer is the page for whoever checks the numbers: how loads go, and what governs
// each part.
func (c *cards) engineer() Card {
	var worst []measure.Check
	for _, t := range c.report.Topics {
		if k := t.Worst(); k.Name != "" {
			worst = append(worst, k)
		}
	}
	return Card{Name: "engineer", Title: "For the engineer: what governs", Blocks: []Block{
		List{Items: []string{
			"Deck loads go through the boards, as beams from joist to joist, into the joists; from these into the floats and, at their ends, into the two rims.",
			"Floats push up by their immersion; ties and stops keep them there. Heights of weights and of buoyancy act at the joists' ends.",
			"Lines, boats, hauling and ice pull at the rims; joists' ends, boards and their screws pass it on in the frame's plane.",
			"On ice and blocks each float is a one-way support, one of them low; a frozen float holds both ways up to its grip.",
		}},
		Verdicts("The worst check of each part; all of them, with their rules, are in the report", worst, c.units),
	}}
}

// inputs are all assumptions.
func (c *cards) inputs() Card {
	out := Card{Name: "assumptions", Title: "Assumed and unknown"}
	list := func(title string, as []measure.Assumption) {
		if len(as) == 0 {
			return
		}
		t := Table{Caption: title, Head: []string{"input", "value", "known"}}
		for _, a := range as {
			text := a.Text
			if text == "" {
				text = "none"
			}
			t.Rows = append(t.Rows, Row{Cells: []string{a.Name, text, a.Known.String()}})
		}
		out.Blocks = append(out.Blocks, t)
	}
	list("A verdict turns on these", c.report.Deciding)
	list("No verdict turns on these", c.report.Assumed)
	return out
}

// member is the worst member with its loads and moments.
func (c *cards) member() Card {
	return Card{Name: "worst-member", Title: "The worst member", Blocks: []Block{c.picture("moments")}}
}
