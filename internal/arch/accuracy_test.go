package arch

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// measured is a row of DEVELOPERS' table of accuracy: a closed form, its largest error in
// units in the last place, and the inputs at which it was found.
type measured struct {
	pkg, form, at string
	ulp           float64
}

var (
	tableRow  = regexp.MustCompile(`(?m)^\| ([a-z/]*) +\| (.+?) \| ([0-9.]+) \| ([0-9.e+, -]+) \|$`)
	footnotes = strings.NewReplacer(" ¹", "", " ²", "")
	figure    = regexp.MustCompile(`\b[0-9]+(\.[0-9]+)?\b`)
)

// readMeasured returns the worst row of each closed form: one whose name goes on after a comma
// or a colon is a case of the form before it.
func readMeasured(text string) ([]measured, error) {
	var out []measured
	pkg, at := "", map[string]int{}
	for _, row := range tableRow.FindAllStringSubmatch(text, -1) {
		if row[1] != "" {
			pkg = row[1]
		}
		x, err := strconv.ParseFloat(row[3], 64)
		if err != nil {
			return nil, err
		}
		form := strings.FieldsFunc(footnotes.Replace(row[2]), func(r rune) bool { return r == ',' || r == ':' })[0]
		m := measured{pkg, form, row[4], x}
		key := pkg + "." + form
		if k, ok := at[key]; !ok {
			at[key] = len(out)
			out = append(out, m)
		} else if x > out[k].ulp {
			out[k] = m
		}
	}
	return out, nil
}

// says reports whether a comment names the place of the largest error and, before it, a
// bound that is the error or rounds it up.
func (m measured) says(comment string) bool {
	comment = strings.Join(strings.Fields(comment), " ")
	before, _, ok := strings.Cut(strings.ReplaceAll(comment, "Worst at", "worst at"), "worst at ("+m.at+")")
	if !ok {
		return false
	}
	for _, text := range figure.FindAllString(before, -1) {
		if x, err := strconv.ParseFloat(text, 64); err == nil && x >= m.ulp && x <= 1.05*m.ulp+0.3 {
			return true
		}
	}
	return false
}

// TestAccuracyInComments: the comment of each closed form says how far it was found off at most
// and where, as the table of DEVELOPERS has it.
func TestAccuracyInComments(t *testing.T) {
	m := module(t)
	text, err := os.ReadFile(filepath.Join(m.root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	all, err := readMeasured(string(text))
	if err != nil || len(all) < 60 {
		t.Fatalf("%d closed forms, %v", len(all), err)
	}
	for _, one := range all {
		found := false
		for _, p := range m.packages {
			if p.rel != one.pkg {
				continue
			}
			for _, f := range p.code {
				for _, c := range f.Comments {
					found = found || one.says(c.Text())
				}
			}
		}
		if !found {
			t.Errorf("%s, %s: no comment says within %.4g units in the last place, worst at (%s)", one.pkg, one.form, one.ulp, one.at)
		}
	}
}

func TestAccuracyInCommentsCatches(t *testing.T) {
	all, err := readMeasured("| float | Wet, level | 4.8 | 0.5, 0.2 |\n|  | Wet, tilted ¹ | 8.5 | 1, 2e+06, -3 |\n|  | Period ² | 1.4 | 4 |\n| what | time |\n")
	if got, want := fmt.Sprint(all), "[{float Wet 1, 2e+06, -3 8.5} {float Period 4 1.4}]"; err != nil || got != want {
		t.Fatalf("%v, %v, want %s", got, err, want)
	}
	for comment, holds := range map[string]bool{
		"Within 8.5 units in the last place, worst at (1, 2e+06, -3).":  true,
		"Within 8.6 units in\nthe last place. Worst at (1, 2e+06, -3).": true,
		"Within 9.6 units, worst at (1, 2e+06, -3).":                    false,
		"Within 8.4 units, worst at (1, 2e+06, -3).":                    false,
		"Within 8.5 units, worst at (1, 2e+06, -4).":                    false,
		"Worst at (1, 2e+06, -3), within 8.5.":                          false,
	} {
		if all[0].says(comment) != holds {
			t.Errorf("%q: %v", comment, !holds)
		}
	}
}
