package dock

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"example.org/floewright/lumber/measure"
)

const columns = 80

// WriteText writes the report for a person, in 80 columns: each topic with its
// checks, what decides them, and the cautions. The error is the writer's.
func (r *Report) WriteText(w io.Writer) error {
	p := &page{w: bufio.NewWriter(w)}
	p.line(r.Name)
	p.line(strings.Repeat("=", min(columns, utf8.RuneCountInString(r.Name))))
	p.wrap("", r.summary())
	p.heading("THE TWELVE CHECKS, WORST FIRST")
	for _, h := range r.Twelve {
		p.headline(h, r.Units)
	}
	for _, t := range r.Topics {
		p.heading(t.Title)
		said := map[string]bool{}
		for _, c := range t.Checks {
			p.check(c, r.Units, said)
		}
	}
	p.heading("ASSUMPTIONS THAT DECIDE SOMETHING")
	if len(r.Deciding) == 0 {
		p.wrap("  ", "None: no other plausible value of an assumed or unknown input turns a verdict.")
	}
	for _, a := range r.Deciding {
		p.hang("  ", assumption(a))
	}
	p.heading("ALSO ASSUMED OR UNKNOWN")
	if len(r.Assumed) == 0 {
		p.wrap("  ", "Nothing.")
	}
	for _, a := range r.Assumed {
		p.hang("  ", assumption(a))
	}
	if r.Shop != nil {
		r.Shop.text(p)
	}
	p.heading("ORDER OF WORK")
	stage := ""
	for i, s := range r.Steps {
		if s.Stage != stage {
			stage = s.Stage
			p.line(stage)
		}
		p.step(i+1, s)
	}
	p.heading("CAUTIONS")
	for _, c := range r.Cautions {
		p.hang("  ", c.Text+" ["+c.Source+"]")
	}
	return p.w.Flush()
}

// summary counts the verdicts.
func (r *Report) summary() string {
	var n [3]int
	nothing := 0
	for _, t := range r.Topics {
		for _, c := range t.Checks {
			if c.Verdict() == measure.Holds && len(c.Steps) == 1 {
				nothing++
				continue
			}
			n[c.Verdict()]++
		}
	}
	asked := "."
	if nothing > 0 {
		asked = fmt.Sprintf("; of %d more there is nothing to ask.", nothing)
	}
	return fmt.Sprintf("%d hold or are not ruled out, %d short, %d without an answer%s "+
		"Each line names its value, its limit and whose rule that is.", n[measure.Holds], n[measure.Short], n[measure.NoAnswer], asked)
}

// A page is a writer of lines of at most 80 columns. Errors are kept by w.
type page struct {
	w    *bufio.Writer
	rule string // of the check before, in the same topic
}

func (p *page) line(s string) {
	p.w.WriteString(strings.TrimRight(s, " "))
	p.w.WriteByte('\n')
}

func (p *page) heading(s string) {
	p.rule = ""
	p.line("")
	p.line(s)
	p.line(strings.Repeat("-", utf8.RuneCountInString(s)))
}

// wrap writes a text behind an indent, broken at spaces.
func (p *page) wrap(indent, text string) { p.flow(indent, indent, text) }

// hang writes a text as an item of a list.
func (p *page) hang(indent, text string) { p.flow(indent+"- ", indent+"  ", text) }

func (p *page) flow(first, rest, text string) {
	line := first
	empty := true
	for _, word := range strings.Fields(text) {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			p.line(line)
			line, empty = rest, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	p.line(line)
}

// headline writes one of the twelve checks with its worst part.
func (p *page) headline(h Headline, s measure.System) {
	p.flow(fmt.Sprintf("%-*s", len(margin), words(h.worst())), margin, h.Name)
	if len(h.Checks) == 0 {
		return
	}
	c := h.worst()
	text := c.Name + ": "
	switch {
	case c.Verdict() == measure.NoAnswer && c.Err != nil:
		text += c.Err.Error()
	default:
		text += c.Numbers(s)
	}
	for _, a := range c.Rests {
		if c.Verdict() == measure.NoAnswer && c.Err == nil && a.Decides && a.Known == measure.Unknown {
			text += "; turns on " + a.Name + ", which is unknown"
			break
		}
	}
	p.flow(margin, margin+"  ", text)
}

// step writes one step of the work.
func (p *page) step(n int, s Step) {
	p.flow(fmt.Sprintf("%3d. ", n), "     ", s.Do)
	for i, g := range s.Gates {
		p.flow([2]string{"     opens when: ", "       and: "}[min(i, 1)], "       ", g)
	}
	for _, x := range s.Stops {
		p.flow("     STOP: ", "       ", x)
	}
	if len(s.Rests) > 0 {
		p.flow("     rests on: ", "       ", strings.Join(s.Rests, "; "))
	}
}

// words returns a verdict as it is printed.
func words(c measure.Check) string {
	if c.Hazard && c.Verdict() == measure.Holds {
		return "NOT RULED OUT"
	}
	return strings.ToUpper(c.Verdict().String())
}

const margin = "               " // where a check's text begins

// check writes one check: verdict and name, the numbers, the rule, what decides
// it. A remark that was made in the topic is not repeated.
func (p *page) check(c measure.Check, s measure.System, said map[string]bool) {
	p.flow(fmt.Sprintf("%-*s", len(margin), words(c)), margin, c.Name)
	item := func(label, text string) {
		if text != "" {
			p.flow(margin+label, margin+"  ", text)
		}
	}
	if c.Err == nil || c.Numbers(s) != "no value" {
		item("", c.Numbers(s))
	}
	if c.Err != nil {
		item("why: ", c.Err.Error())
	}
	switch {
	case c.Rule == nil:
	case c.Hazard && c.Verdict() == measure.Holds:
		item("not ruled out by: ", c.Rule.String())
	case p.rule == c.Rule.String():
		item("rule: ", "the same")
	default:
		item("rule: ", c.Rule.String())
	}
	p.rule = c.Rule.String()
	item("factors: ", factors(c.Factors))
	for _, n := range c.Notes {
		if !said[n] {
			item("", n)
		}
		said[n] = true
	}
	for _, a := range c.Rests {
		if a.Decides && !c.Hazard { // of ice the remarks have said so
			item("turns on ", assumption(a))
		}
	}
}

// factors lists the factors that change something.
func factors(fs []measure.Factor) string {
	var parts []string
	for _, f := range fs {
		if f.Value != 1 {
			parts = append(parts, fmt.Sprintf("%s %.4g (%s)", f.Symbol, f.Value, f.Name))
		}
	}
	return strings.Join(parts, ", ")
}

// assumption returns an assumption as "frame.moisture 60 % (assumed)".
func assumption(a measure.Assumption) string {
	text := a.Name
	if a.Text != "" {
		text += ": " + a.Text
	}
	return text + " (" + a.Known.String() + ")"
}
