package published

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Line is one check with its outcome, a line of the handbook.
type Line struct {
	Check
	Result
	Err error // why nothing was computed
}

// Evaluate runs the checks in their order.
func Evaluate(checks []Check) []Line {
	lines := make([]Line, len(checks))
	for i, c := range checks {
		r, err := c.Run()
		lines[i] = Line{Check: c, Result: r, Err: err}
	}
	return lines
}

// Met reports whether the check was computed and lies within its limit. One that is doubted
// never is.
func (l Line) Met() bool { return l.Err == nil && l.Doubt == "" && l.Result.Within }

// Doubted reports whether the check was computed and is compared with nothing.
func (l Line) Doubted() bool { return l.Err == nil && l.Doubt != "" }

// ByDigit reports whether half of the last printed digit is what the check is held to,
// and not a tolerance or the limit of a known deviation.
func (l Line) ByDigit() bool {
	return l.Err == nil && l.Because == "" && l.Relative == 0 && l.step()/2 > rounding*math.Abs(l.Result.Printed)
}

// Tolerance returns the share of the printed value that a check is held to where the last
// printed digit is finer than a computation can be.
func (l Line) Tolerance() float64 { return max(l.Relative, rounding) }

// Words says whether the check is met, and by what measure if not by the last printed digit.
func (l Line) Words() string {
	var by string
	switch {
	case l.Err != nil:
		return "OUT: " + l.Err.Error()
	case l.Doubt != "":
		return "doubted, compared with nothing: " + l.Doubt
	case l.Because != "":
		by = fmt.Sprintf("%.3g, since %s", l.Check.Within, l.Because)
	case l.ByDigit():
		by = "half a digit"
	default:
		by = fmt.Sprintf("%.0e of the value", l.Tolerance())
	}
	if !l.Met() {
		return "OUT of " + by
	}
	return "within " + by
}

// Cited returns title and edition, which is what counts as one source.
func (l Line) Cited() string {
	if l.Source.Edition == "" {
		return l.Source.Title
	}
	return l.Source.Title + ", " + l.Source.Edition
}

// A Tally counts lines.
type Tally struct {
	Name                       string
	Values, Known, Out         int
	Carried                    int     // cells that the library keeps or converts
	Doubted                    int     // compared with nothing
	Sources                    int     // distinct titles with their editions
	Digits                     float64 // largest deviation of the lines held to their digits, in digits
	Tolerance                  float64 // widest tolerance of the lines held to one, 0 if none is
	Status                     measure.Status
	byStatus                   [measure.Exact + 1]int
	cited                      map[string]bool
	heldToDigit, heldTolerance bool
}

func (t *Tally) add(l Line) {
	t.Values++
	t.Status = l.Source.Status
	t.byStatus[l.Source.Status]++
	if t.cited == nil {
		t.cited = map[string]bool{}
	}
	t.cited[l.Cited()] = true
	t.Sources = len(t.cited)
	if l.Carried {
		t.Carried++
	}
	switch {
	case l.Doubted():
		t.Doubted++
	case !l.Met():
		t.Out++
	case l.Because != "":
		t.Known++
	case l.ByDigit():
		t.heldToDigit = true
		t.Digits = max(t.Digits, math.Abs(l.Steps))
	default:
		t.heldTolerance = true
		t.Tolerance = max(t.Tolerance, l.Tolerance())
	}
}

// Of returns how many of the counted lines have a status.
func (t *Tally) Of(s measure.Status) int { return t.byStatus[s] }

// Sentence says what the counted lines are and how they fare.
func (t *Tally) Sentence() string {
	return fmt.Sprintf("%d values from %d sources: %d recomputed by a formula or a model, %d cells that the library carries as printed or in another unit. "+
		"%d lie within half of their last printed digit or within a tolerance stated for an independent computation, %d within a limit of their own whose reason is given, "+
		"%d are doubted and compared with nothing, %d are out.",
		t.Values, t.Sources, t.Values-t.Carried, t.Carried, t.Values-t.Known-t.Doubted-t.Out, t.Known, t.Doubted, t.Out)
}

// Largest says how far the counted lines are at most from what was printed, known
// deviations aside. It has few digits, so that it is the same on every machine.
func (t *Tally) Largest() string {
	var parts []string
	if t.heldToDigit {
		parts = append(parts, tenths(t.Digits)+" digit")
	}
	if t.heldTolerance {
		parts = append(parts, fmt.Sprintf("under %.0e of it", t.Tolerance))
	}
	return strings.Join(parts, "; ")
}

// tenths rounds to tenths, a tie up, whichever side of it the last bit lies.
func tenths(x float64) string {
	return strconv.FormatFloat(math.Floor(x*10+0.5+1e-6)/10, 'f', 1, 64)
}

// Total counts all lines.
func Total(lines []Line) *Tally {
	t := &Tally{Name: "all"}
	for _, l := range lines {
		t.add(l)
	}
	return t
}

// TallyBy counts lines that have the same name, in the order in which the names come first.
func TallyBy(lines []Line, name func(Line) string) []*Tally {
	var all []*Tally
	at := map[string]*Tally{}
	for _, l := range lines {
		n := name(l)
		if at[n] == nil {
			at[n] = &Tally{Name: n}
			all = append(all, at[n])
		}
		at[n].add(l)
	}
	return all
}

// TallyBySource counts lines by title, edition and status, those with most values first.
func TallyBySource(lines []Line) []*Tally {
	all := TallyBy(lines, func(l Line) string { return l.Cited() + "\x00" + l.Source.Status.String() })
	for _, t := range all {
		t.Name, _, _ = strings.Cut(t.Name, "\x00")
	}
	slices.SortFunc(all, func(a, b *Tally) int {
		return cmp.Or(cmp.Compare(b.Values, a.Values), strings.Compare(a.Name, b.Name), cmp.Compare(a.Status, b.Status))
	})
	return all
}
