package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"example.org/floewright/internal/published"
	"example.org/floewright/lumber/measure"
)

// choose returns the checks of a package and of the sources that contain a text, whatever
// its case.
func choose(checks []published.Check, pkg, source string) ([]published.Check, error) {
	var packages []string
	var chosen []published.Check
	for _, c := range checks {
		if !slices.Contains(packages, c.Package) {
			packages = append(packages, c.Package)
		}
		if (pkg == "" || c.Package == pkg) && strings.Contains(strings.ToLower(c.Source.String()), strings.ToLower(source)) {
			chosen = append(chosen, c)
		}
	}
	if pkg != "" && !slices.Contains(packages, pkg) {
		return nil, fmt.Errorf("no check of a package %q; there are %s", pkg, strings.Join(packages, ", "))
	}
	if len(chosen) == 0 {
		return nil, fmt.Errorf("no source says %q", source)
	}
	return chosen, nil
}

// writeLines prints the lines under their package and source.
func writeLines(out io.Writer, lines []published.Line) error {
	var w *tabwriter.Writer
	before := ""
	for _, l := range lines {
		if head := fmt.Sprintf("%s | %s | %s", l.Package, place(l.Source), l.Source.Status); head != before {
			if w != nil {
				if err := w.Flush(); err != nil {
					return err
				}
			}
			fmt.Fprintf(out, "\n%s\n", head)
			w = tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
			fmt.Fprint(w, "  quantity\tprinted\tcomputed\tdigits off\t\t\n")
			before = head
		}
		fmt.Fprintf(w, "  %s\t%s %s\t%s\t%s\t%s\t%s\n", l.Quantity, l.Printed(), l.Unit, computed(l), steps(l), kept(l), l.Words())
	}
	return w.Flush()
}

// place returns title, edition and locator.
func place(s measure.Source) string {
	s.Status = measure.Exact // the status has a column of its own
	return s.String()
}

// computed prints the computed value with three digits more than were printed.
func computed(l published.Line) string {
	if l.Err != nil {
		return "none"
	}
	mantissa, _, _ := strings.Cut(strings.ToLower(l.Printed()), "e")
	digits := strings.TrimLeft(strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, mantissa), "0")
	return strconv.FormatFloat(l.Computed, 'g', min(len(digits)+3, 17), 64)
}

// steps prints the deviation in units of the last printed digit, a dash where the value is
// held to something else.
func steps(l published.Line) string {
	if !l.ByDigit() {
		return "-"
	}
	return strconv.FormatFloat(l.Steps, 'g', 2, 64)
}

// kept says whether the value is recomputed, or a cell that the library carries.
func kept(l published.Line) string {
	if l.Carried {
		return "carried"
	}
	return "recomputed"
}

// writeTotals prints the counts by package, by status and by source.
func writeTotals(out io.Writer, lines []published.Line) error {
	all := published.Total(lines)
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	for _, part := range []struct {
		name  string
		tally []*published.Tally
	}{
		{"source", published.TallyBySource(lines)},
		{"status", published.TallyBy(lines, func(l published.Line) string { return l.Source.Status.String() })},
		{"package", published.TallyBy(lines, func(l published.Line) string { return l.Package })},
	} {
		fmt.Fprintf(w, "\nBy %s\tvalues\tcarried\town limit\tdoubted\tout\tfarthest from the printed value\n", part.name)
		for _, t := range part.tally {
			name := t.Name
			if part.name == "source" {
				name += " (" + t.Status.String() + ")"
			}
			fmt.Fprintf(w, "  %s\t%d\t%d\t%d\t%d\t%d\t%s\n", name, t.Values, t.Carried, t.Known, t.Doubted, t.Out, t.Largest())
		}
	}
	if err := w.Flush(); err != nil {
		return err
	}
	_, err := fmt.Fprintf(out, "\n%s\n", all.Sentence())
	return err
}

// writeCSV prints one row per line with every column.
func writeCSV(out io.Writer, lines []published.Line) error {
	w := csv.NewWriter(out)
	rows := [][]string{{"package", "quantity", "title", "edition", "place", "status", "kept", "printed", "unit", "computed", "digits off", "verdict"}}
	for _, l := range lines {
		rows = append(rows, []string{
			l.Package, l.Quantity, l.Source.Title, l.Source.Edition, l.Source.Locator, l.Source.Status.String(),
			kept(l), l.Printed(), l.Unit, computed(l), steps(l), l.Words(),
		})
	}
	return w.WriteAll(rows)
}
