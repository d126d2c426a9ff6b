package dock

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Comparison sets docks side by side, a row for each question.
type Comparison struct {
	Units measure.System
	Names []string
	Rows  []Compared
}

// Compared is one question and each dock's answer, in the order of the names.
type Compared struct {
	Question string
	Answers  []Answer
}

// An Answer is a number, and the words that go with it; Err says why there is none.
type Answer struct {
	Kind  measure.Kind
	Value float64 // in the SI unit of Kind; prices in the plan's currency
	Note  string  // which member, which currency, which verdict
	Words string  // in the place of the number, where a dock that found no rest has none: "capsizes"
	Err   error

	asked bool // of the ice: printed rounded up
}

// Compare asks each report the same: what the dock costs and weighs, how high and how
// level it floats, how many stand at one edge, which member is worst, and which ice it
// needs. Each answer comes from the checks of [Dock.Report], which name their
// sources. The first report's units are those of the texts.
func Compare(reports ...*Report) *Comparison {
	out := &Comparison{}
	for i, r := range reports {
		if r == nil {
			r = &Report{Name: "no report"}
		}
		if i == 0 {
			out.Units = r.Units
		}
		out.Names = append(out.Names, r.Name)
	}
	for _, q := range []struct {
		question string
		ask      func(*Report) Answer
	}{
		{"Cost of everything on the list", (*Report).cost},
		{"Weight", value("Weight of the whole dock")},
		{"Deck over water, nobody aboard", value("Water to the deck's lowest corner")},
		{"Deck over water, uniform load", value("Lowest deck edge above the water under")},
		{"Tilt, everyone at one edge", value("Tilt of the deck with everyone")},
		{"People that the sign has, wherever they stand", (*Report).posted},
		{"Heaviest people together at one edge, by the floats alone", most("Everyone together at one edge")},
		{"Tilt, one float full of water", value("Tilt of the deck with everyone spread and one float")},
		{"Worst member, share of its limit", (*Report).worstMember},
		{"Ice asked for, one crossing", most("Ice for one crossing")},
		{"Ice asked for, the finished dock some hours", most("Ice for the finished dock")},
		{"Checks that are short", count(measure.Short)},
		{"Checks without an answer", count(measure.NoAnswer)},
	} {
		row := Compared{Question: q.question}
		for _, r := range reports {
			if r == nil {
				row.Answers = append(row.Answers, Answer{Err: notKnown("report", "a report")})
				continue
			}
			row.Answers = append(row.Answers, q.ask(r))
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// find returns the check whose name begins so, an error where there is none.
func (r *Report) find(begin string) (measure.Check, error) {
	for _, t := range r.Topics {
		for _, c := range t.Checks {
			if strings.HasPrefix(c.Name, begin) {
				return c, nil
			}
		}
	}
	return measure.Check{}, notKnown(begin, "a dock's report")
}

// value answers with a check's value and how it stands.
func value(begin string) func(*Report) Answer {
	return func(r *Report) Answer {
		c, err := r.find(begin)
		if err == nil {
			err = c.Err
		}
		out := answer(c.Kind, c.Value, "", err).stands(c)
		if k := int(c.Value); out.Err == nil && k >= 0 && k < len(c.Steps) {
			out.Words = c.Steps[k]
		}
		return out
	}
}

// most answers with a check's limit.
func most(begin string) func(*Report) Answer {
	return func(r *Report) Answer {
		c, err := r.find(begin)
		if err == nil && !(math.Abs(c.Limit) < math.Inf(1)) {
			if err = c.Err; err == nil {
				err = notKnown(begin, "a number")
			}
		}
		out := answer(c.Kind, c.Limit, "", err)
		out.asked = c.Hazard && c.AtLeast && c.Kind == measure.Length
		return out
	}
}

// count answers with how many checks stand so.
func count(v measure.Verdict) func(*Report) Answer {
	return func(r *Report) Answer {
		n := 0
		for _, t := range r.Topics {
			for _, c := range t.Checks {
				if c.Verdict() == v {
					n++
				}
			}
		}
		return Answer{Kind: measure.Count, Value: float64(n)}
	}
}

// answer keeps numbers only.
func answer(k measure.Kind, x float64, note string, err error) Answer {
	if err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
		err = &measure.Error{Why: "no number came of it", Class: measure.ErrUnknown}
	}
	if err != nil {
		return Answer{Kind: k, Note: note, Err: err}
	}
	return Answer{Kind: k, Value: x, Note: note}
}

// stands adds that a check is short.
func (a Answer) stands(c measure.Check) Answer {
	if a.Err == nil && c.Verdict() == measure.Short {
		a.Note = "short"
	}
	return a
}

func (r *Report) cost() Answer {
	if r.Shop == nil {
		return Answer{Err: notKnown("report", "its shop")}
	}
	b := &r.Shop.Bill
	label := b.Currency
	if label == "" {
		label = "in " + currencyName(label)
	}
	return answer(measure.Ratio, b.Total, label, b.Err)
}

func (r *Report) worstMember() Answer {
	var worst measure.Check
	for _, begin := range []string{"Worst joist, ", "Worst rim, "} {
		for _, t := range r.Topics {
			for _, c := range t.Checks {
				if strings.HasPrefix(c.Name, begin) && (worst.Name == "" || worseRatio(c, worst)) {
					worst = c
				}
			}
		}
	}
	if worst.Name == "" || worst.Err != nil {
		err := worst.Err
		if err == nil {
			err = notKnown("frame", "a dock's report")
		}
		return Answer{Kind: measure.Percent, Err: err}
	}
	note := worst.Name
	if head, what, firm := strings.Cut(worst.Name, ", floats standing firm: "); firm {
		for _, n := range worst.Notes { // which one it is
			if strings.HasPrefix(n, "joist ") {
				head, _, _ = strings.Cut(n, ",")
			}
		}
		note = head + ", " + what + ", floats standing firm"
	} else if len(worst.Notes) > 0 {
		note = worst.Notes[0]
	}
	out := answer(measure.Percent, worst.Ratio(), note, nil).stands(worst)
	if worst.Verdict() == measure.Short {
		out.Note = note + ": short"
	}
	if out.Err == nil && worst.Verdict() == measure.NoAnswer {
		out.Note += "; no answer"
		for _, a := range worst.Rests {
			if a.Decides && a.Known == measure.Unknown {
				out.Note += ": turns on " + a.Name
				break
			}
		}
	}
	return out
}

// posted answers with the number on the sign, and what one more does.
func (r *Report) posted() Answer {
	if r.plate == nil {
		return Answer{Kind: measure.Count, Err: notKnown("sign", "a dock's report with a frame that is known")}
	}
	return answer(measure.Count, float64(r.plate.People), "one more: "+r.plate.Limit, nil)
}

// text returns an answer as it is printed.
func (a Answer) text(s measure.System) string {
	switch {
	case a.Err != nil:
		return "no answer"
	case a.Words != "" && a.Note != "":
		return a.Words + ", " + a.Note
	case a.Words != "":
		return a.Words
	case a.Kind == measure.Ratio:
		return fmt.Sprintf("%.2f %s", a.Value, a.Note)
	}
	text := a.Kind.Format(a.Value, s)
	if a.asked {
		text = measure.Upward(a.Value, s)
	}
	if a.Note != "" {
		text += ", " + a.Note
	}
	return text
}

// WriteText writes the comparison in 80 columns: each question with a line for each
// dock, and then why something has no answer. The error is the writer's.
func (c *Comparison) WriteText(w io.Writer) error {
	p := &page{w: bufio.NewWriter(w)}
	for i, n := range c.Names {
		p.flow(fmt.Sprintf("%c  ", 'A'+i%26), "   ", n)
	}
	p.line("")
	seen := map[string]bool{}
	var why []string
	for _, row := range c.Rows {
		p.line(row.Question)
		for i, a := range row.Answers {
			p.flow(fmt.Sprintf("   %c  ", 'A'+i%26), "      ", a.text(c.Units))
			if a.Err == nil {
				continue
			}
			if s := measure.RestateError(a.Err, c.Units).Error(); !seen[s] {
				seen[s] = true
				why = append(why, s)
			}
		}
	}
	if len(why) > 0 {
		p.heading("WHY THERE IS NO ANSWER")
		for _, s := range why {
			p.hang("", s)
		}
	}
	return p.w.Flush()
}

// WriteCSV writes the comparison for a spreadsheet: question, SI unit, and for each
// dock its value and a note; blank where there is no answer. The error is the writer's.
func (c *Comparison) WriteCSV(w io.Writer) error {
	head := []string{"question", "unit"}
	for _, n := range c.Names {
		head = append(head, n, "note")
	}
	rows := [][]string{head}
	for _, row := range c.Rows {
		line := []string{row.Question, ""}
		for _, a := range row.Answers {
			if a.Err != nil {
				line = append(line, "", a.Err.Error())
				continue
			}
			if a.Words != "" {
				line = append(line, "", strings.TrimSuffix(a.Words+", "+a.Note, ", "))
				continue
			}
			line[1] = a.Kind.Unit()
			line = append(line, decimals(a.Value, 4), a.Note)
		}
		rows = append(rows, line)
	}
	return writeCSV(w, rows)
}
