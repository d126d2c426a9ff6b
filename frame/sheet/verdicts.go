package sheet

import (
	"strconv"

	"example.org/floewright/lumber/measure"
)

// Verdicts returns checks as a table: what was checked, value and limit, the
// verdict in the words that may be printed, and as notes whose rule each is and
// why a check has no answer. An assumption on which a verdict turns is named with
// it.
func Verdicts(caption string, checks []measure.Check, units measure.System) Table {
	t := Table{Caption: caption, Head: []string{"check", "value and limit", "verdict"}}
	codes := map[string]string{}
	note := func(text string) string {
		if codes[text] == "" {
			codes[text] = strconv.Itoa(len(codes) + 1)
			t.Notes = append(t.Notes, Note{codes[text], text})
		}
		return codes[text]
	}
	for _, c := range checks {
		r := Row{Cells: []string{c.Name, c.Numbers(units), c.Verdict().String()}}
		if c.Hazard && c.Verdict() == measure.Holds {
			r.Cells[2] = "not ruled out by the rule"
		}
		if c.Rule != nil {
			r.Notes = append(r.Notes, note("Rule: "+c.Rule.String()+"."))
		}
		if c.Err != nil {
			r.Notes = append(r.Notes, note("Why there is no answer: "+measure.RestateError(c.Err, units).Error()+"."))
		}
		for _, a := range c.Rests {
			if a.Decides {
				r.Notes = append(r.Notes, note("Turns on "+a.Name+": "+a.Text+" ("+a.Known.String()+")."))
			}
		}
		t.Rows = append(t.Rows, r)
	}
	return t
}
