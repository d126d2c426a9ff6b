package sheet

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

// method names the rules that all numbers come from; each bears its own source.
const method = "Floewright, allowable stress design, NDS 2018"

// cards is a dock whose cards are written.
type cards struct {
	dock    *dock.Dock
	report  *dock.Report
	units   measure.System
	date    time.Time
	shape   *dock.Shape
	noShape error
	drawn   *Drawn
}

// Of returns a dock's pages: what the builder holds in the garage, on the ice and in
// summer, and one for an engineer. The report is the dock's own ([dock.Dock.Report]);
// its units are the pages'. What is not known is a line to write on, or says why.
func Of(d *dock.Dock, r *dock.Report, date time.Time) (Document, error) {
	drawn, err := Draw(d, r)
	if err != nil {
		return Document{}, err
	}
	c := &cards{dock: d, report: r, units: r.Units, date: date, drawn: drawn}
	c.shape, c.noShape = d.Shape()
	out := Document{
		Title: r.Name, Fingerprint: d.Fingerprint(), Date: date, Units: r.Units, Method: method, NotChecked: c.notChecked(),
	}
	for _, make := range []func() Card{
		c.front, c.office, c.garage, c.layout, c.joistMarks, c.floatMarks, c.bay, c.cut, c.shopping, c.finish, c.hardware, c.carry,
		c.iceCard, c.iceHoles, c.iceAdvice, c.assembly, c.assembled, c.breakUp, c.launch, c.lines,
		c.plate, c.heeled, c.righting, c.season, c.winter, c.year, c.autumn, c.engineer, c.inputs, c.member,
	} {
		if card := make(); len(card.Blocks) > 0 {
			out.Cards = append(out.Cards, out.fit(card))
		}
	}
	return out, nil
}

// leastShrunk is how far a picture gives way so that its card fits one side.
const leastShrunk = 0.8

// fit makes a card's picture smaller where that makes one side of two.
func (d Document) fit(card Card) Card {
	const rounding = 0.5
	at, total := -1, 0.0
	for i, b := range card.Blocks {
		total += b.height()
		if _, ok := b.(Picture); ok {
			if at >= 0 {
				return card
			}
			at = i
		}
	}
	over := total - d.room(&card) + rounding
	if at < 0 || over <= 0 {
		return card
	}
	p, _ := card.Blocks[at].(Picture)
	if _, h := p.printed(); h-over >= leastShrunk*h {
		p.most = h - over
		card.Blocks[at] = p
	}
	return card
}

// notChecked says what stands outside of the sheets.
func (c *cards) notChecked() []string {
	open := 0
	for _, t := range c.report.Topics {
		for _, k := range t.Checks {
			if k.Verdict() == measure.NoAnswer {
				open++
			}
		}
	}
	out := []string{"the lumber on sight", "rot and wear", "the ice on the day"}
	if open > 0 {
		out = append(out, count(open, "check")+" without an answer")
	}
	return out
}

func (c *cards) length(x float64) string { return measure.Length.Format(x, c.units) }
func (c *cards) mass(x float64) string   { return measure.Mass.Format(x, c.units) }
func (c *cards) force(x float64) string  { return measure.Force.Format(x, c.units) }

// atLeast prints a thickness that is asked for, rounded up as the check has it.
func (c *cards) atLeast(x float64) string {
	return measure.Upward(x, c.units)
}

// unit names the unit to write a length in.
func (c *cards) unit() string {
	if c.units == measure.US {
		return "ft in"
	}
	return "m"
}

// picture returns a picture, or a line that says why there is none.
func (c *cards) picture(name string) Block {
	if p, ok := c.drawn.Picture(name); ok {
		return p
	}
	for _, n := range c.drawn.Missing {
		if n.Code == name {
			return Paragraph("Not drawn (" + name + "): " + n.Text + ".")
		}
	}
	return Paragraph("Not drawn: " + name + ".")
}

// missing says that a card, or a part of it, cannot be filled.
func (c *cards) missing(what string, err error) Block {
	return Paragraph(what + " is not known: " + c.why(err) + ".")
}

// why returns an error's text in the units of the pages.
func (c *cards) why(err error) string { return measure.RestateError(err, c.units).Error() }

// check returns the first check whose name begins so.
func (c *cards) check(begin string) measure.Check {
	for _, t := range c.report.Topics {
		for _, k := range t.Checks {
			if strings.HasPrefix(k.Name, begin) {
				return k
			}
		}
	}
	return measure.Refuse(begin, &measure.Error{Field: "report", Class: measure.ErrUnknown, Want: "a dock's report"})
}

// words returns a verdict as it may be printed.
func words(k measure.Check) string {
	if k.Hazard && k.Verdict() == measure.Holds {
		return "not ruled out"
	}
	return k.Verdict().String()
}

// front is the page on top: the twelve checks.
func (c *cards) front() Card {
	t := Table{Head: []string{"question", "worst check", "verdict"}}
	for _, h := range c.report.Twelve {
		row := Row{Cells: []string{h.Name, "", words(measure.Check{})}}
		if len(h.Checks) > 0 {
			k := h.Checks[0]
			row.Cells[1], row.Cells[2] = c.said(k), words(k)
		}
		t.Rows = append(t.Rows, row)
	}
	return Card{Name: "twelve-checks", Title: "The twelve checks, worst first", Blocks: []Block{t}}
}

// said returns a check's name and numbers, or why it has none, cut short.
func (c *cards) said(k measure.Check) string {
	text := k.Name + ": "
	if k.Err == nil {
		return text + k.Numbers(c.units)
	}
	var e *measure.Error
	if errors.As(k.Err, &e) && e.Field != "" && errors.Is(e, measure.ErrUnknown) {
		if strings.Contains(e.Want, ", and with it ") {
			return text + e.Field + " and more are not known"
		}
		return text + e.Field + " is not known"
	}
	return text + c.why(k.Err)
}

// layout is the page to lay the frame out by.
func (c *cards) layout() Card {
	out := Card{Name: "layout", Title: "Layout of the frame"}
	if c.noShape != nil {
		out.Blocks = []Block{c.missing("The frame", c.noShape)}
		return out
	}
	out.Blocks = []Block{
		c.picture("plan"),
		Paragraph(fmt.Sprintf("Both diagonals of the square frame: %s. They agree within %s before a board goes on (common practice, no source).", c.length(c.shape.Diagonal), c.length(measure.Inch/4))),
		Table{Head: []string{"diagonal from where the tape hooks", "the other one"}, Rows: []Row{{Cells: []string{WriteIn, WriteIn}}}},
	}
	if c.shape.Err != nil {
		out.Blocks = append(out.Blocks, c.missing("A part of it", c.shape.Err))
	}
	return out
}

// joistMarks are the running marks of the joists.
func (c *cards) joistMarks() Card {
	if c.noShape != nil {
		return Card{}
	}
	s := c.shape
	side, face := "near end", "near face"
	if !s.Across {
		side = "near side"
	}
	if s.Centre {
		face = "middle"
	}
	t := Table{Caption: fmt.Sprintf("Joists: each one's %s, from the %s", face, side), Head: []string{"joist", "mark", "struck at"}, Tick: true}
	for i, m := range s.Marks {
		t.Rows = append(t.Rows, Row{Cells: []string{strconv.Itoa(i + 1), c.length(m), WriteIn}})
	}
	return Card{Name: "joist-marks", Title: "Running marks of the joists", Blocks: []Block{t}}
}

// floatMarks are the places of the floats.
func (c *cards) floatMarks() Card {
	if c.noShape != nil || len(c.shape.Floats) == 0 {
		return Card{}
	}
	s := c.shape
	floats := Table{Caption: "Floats: their middles, from the near end and the near side", Head: []string{"floats", "along", "across", "bear on", "shims"}, Tick: true}
	for i := 0; i < len(s.Floats); {
		f := s.Floats[i]
		n, across := 1, c.length(f.Y)
		for i+n < len(s.Floats) && math.Abs(s.Floats[i+n].X-f.X) < 1e-6 && s.Floats[i+n].Bears == f.Bears {
			across += ", " + c.length(s.Floats[i+n].Y)
			n++
		}
		name := strconv.Itoa(i + 1)
		if n > 1 {
			name += " to " + strconv.Itoa(i+n)
		}
		i += n
		floats.Rows = append(floats.Rows, Row{Cells: []string{name, c.length(f.X), across, f.Bears, WriteIn}})
	}
	return Card{Name: "float-marks", Title: "Places of the floats", Blocks: []Block{floats}}
}

// bay is the section through a bay.
func (c *cards) bay() Card {
	if c.noShape != nil {
		return Card{}
	}
	return Card{Name: "bay", Title: "Section through a bay", Blocks: []Block{c.picture("section")}}
}
