package published

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// statuses are those of a line, best first.
var statuses = []measure.Status{
	measure.Exact, measure.Read, measure.Quoted, measure.Independent,
	measure.OwnChoice, measure.CommonPractice, measure.Memory,
}

// Page returns the handbook's summary as Markdown: totals, one line per source, and every
// limit of its own with its reason. The single lines are what examples/handbook prints.
func Page(lines []Line) string {
	var b strings.Builder
	all := Total(lines)
	fmt.Fprintf(&b, `# Outside checks

Written by `+"`go test ./internal/published -run PageIsCurrent -update`"+`; edit the data, not this page.
`+"`go run ./examples/handbook`"+` prints every single value.

%s

"Digit" is the unit of the last digit that the source printed; half of it is its own rounding. A
value that was computed independently to more digits than a float64 holds is compared as a share
of itself instead.

`, all.Sentence())

	b.WriteString("## By package and status\n\n| package |")
	for _, s := range statuses {
		b.WriteString(" " + s.String() + " |")
	}
	b.WriteString(" values | of them carried | sources | own limit | doubted | out |\n|---|" + strings.Repeat("---:|", len(statuses)+6) + "\n")
	packages := TallyBy(lines, func(l Line) string { return l.Package })
	for _, t := range append(packages, all) {
		fmt.Fprintf(&b, "| %s |", t.Name)
		for _, s := range statuses {
			fmt.Fprintf(&b, " %s |", count(t.Of(s)))
		}
		fmt.Fprintf(&b, " %d | %s | %d | %s | %s | %s |\n", t.Values, count(t.Carried), t.Sources, count(t.Known), count(t.Doubted), count(t.Out))
	}

	for _, p := range packages {
		own := of(lines, p.Name)
		fmt.Fprintf(&b, "\n## %s\n\n| source | status | values | of them carried | farthest from the printed value | own limit | doubted | out |\n|---|---|---:|---:|---|---:|---:|---:|\n", p.Name)
		for _, t := range TallyBySource(own) {
			fmt.Fprintf(&b, "| %s | %s | %d | %s | %s | %s | %s | %s |\n",
				inCell(t.Name), t.Status, t.Values, count(t.Carried), t.Largest(), count(t.Known), count(t.Doubted), count(t.Out))
		}
		deviations(&b, own)
		doubts(&b, own)
	}
	return b.String()
}

// of returns the lines of one package.
func of(lines []Line, pkg string) []Line {
	var own []Line
	for _, l := range lines {
		if l.Package == pkg {
			own = append(own, l)
		}
	}
	return own
}

// deviations lists the checks with a limit of their own, those of one source and one reason together.
func deviations(b *strings.Builder, lines []Line) {
	var known []Line
	for _, l := range lines {
		if l.Because != "" {
			known = append(known, l)
		}
	}
	if len(known) == 0 {
		return
	}
	b.WriteString("\n| limit of its own for | values | limit | reason |\n|---|---:|---|---|\n")
	name := func(l Line) string { return l.Cited() + "\x00" + l.Because }
	for _, t := range TallyBy(known, name) {
		var first Line
		limit := 0.0 // as a share, where the rows differ
		for _, l := range known {
			if name(l) != t.Name {
				continue
			}
			if first.Printed() == "" {
				first = l
			}
			limit = max(limit, l.Limit/math.Abs(l.Result.Printed))
		}
		what, within := first.Cited(), ""
		switch {
		case t.Values == 1:
			what += ": " + first.Quantity + ", printed " + strings.TrimSpace(first.Printed()+" "+first.Unit)
			within = strings.TrimSpace(fmt.Sprintf("%.3g %s", first.Limit, first.Unit))
		case limit > 0 && limit < 1:
			within = fmt.Sprintf("%.2g of the value at most", limit)
		default:
			within = "of each its own" // some are printed as 0, or near it
		}
		fmt.Fprintf(b, "| %s | %d | %s | %s |\n", inCell(what), t.Values, within, inCell(first.Because))
	}
}

// doubts lists the checks that are compared with nothing.
func doubts(b *strings.Builder, lines []Line) {
	head := "\n| doubted, compared with nothing | printed | computed | why |\n|---|---:|---:|---|\n"
	for _, l := range lines {
		if l.Doubted() {
			fmt.Fprintf(b, "%s| %s: %s | %s | %s | %s |\n", head, inCell(l.Cited()), inCell(l.Quantity),
				l.Printed(), strings.TrimSpace(fmt.Sprintf("%.4g %s", l.Computed, l.Unit)), inCell(l.Doubt))
			head = ""
		}
	}
}

// Printed returns the digits as the source printed them.
func (l Line) Printed() string { return l.Check.Printed }

// count prints a number, and none as nothing.
func count(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

// inCell keeps a text inside its cell of a table.
func inCell(text string) string { return strings.ReplaceAll(text, "|", `\|`) }
