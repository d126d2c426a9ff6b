package main

import (
	"fmt"
	"io"

	"example.org/floewright/lumber/measure"
)

// table prints which share of the docks of each width holds each rule, and all.
func table(out io.Writer, judged []judgement) {
	fmt.Fprintf(out, "%d invented docks: which share holds, by width\n%-8s", len(judged), "")
	for _, r := range rules {
		fmt.Fprintf(out, "%15s", r.short)
	}
	fmt.Fprintf(out, "%9s\n", "all")
	open := 0
	for _, width := range widths {
		n, all := 0, 0
		holds := make([]int, len(rules))
		for _, j := range judged {
			if j.width != width {
				continue
			}
			n++
			every := true
			for i, v := range j.verdicts {
				if v == measure.Holds {
					holds[i]++
				} else {
					every = false
				}
				if v == measure.NoAnswer {
					open++
				}
			}
			if every {
				all++
			}
		}
		fmt.Fprintf(out, "%-8s", measure.Length.Format(width, measure.US))
		for _, h := range holds {
			fmt.Fprintf(out, "%15s", share(h, n))
		}
		fmt.Fprintf(out, "%9s\n", share(all, n))
	}
	for _, r := range rules {
		fmt.Fprintf(out, "%s: %s", r.short, r.name)
		if r.under != "" {
			fmt.Fprintf(out, ", under %s", r.under)
		}
		fmt.Fprintln(out)
	}
	fmt.Fprintf(out, "No answer, as where a dock turns over: %d verdicts, counted as not holding.\n", open)
	fmt.Fprintln(out, "Invented sizes, weights and drums: no word about any real dock. Not sealed, not a permit drawing.")
}

// share prints a part of a number in whole per cent.
func share(part, of int) string {
	if of == 0 {
		return "none"
	}
	return fmt.Sprintf("%.0f %%", 100*float64(part)/float64(of))
}
