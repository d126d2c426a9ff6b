package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/floewright/internal/published"
	"example.org/floewright/lumber/measure"
)

// handbook runs the program on given checks.
func handbook(all func() ([]published.Check, error), args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = run(args, &o, &e, all)
	return code, o.String(), e.String()
}

func TestEveryPublishedValue(t *testing.T) {
	code, out, errs := handbook(published.All)
	if code != 0 || errs != "" {
		t.Fatalf("exit status %d: %s", code, errs)
	}
	checks, err := published.All()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Count(out, "\n  "); got < len(checks) {
		t.Errorf("%d lines for %d values", got, len(checks))
	}
	for _, want := range []string{"lumber | ", "By source", "By status", "By package", " 0 are out.\n", "since "} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q", want)
		}
	}
}

// A deviation is counted in digits only where the last digit measures something, and what is
// carried is told from what is recomputed.
func TestDigits(t *testing.T) {
	_, out, _ := handbook(published.All, "-csv")
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	dashes, carried := 0, 0
	for _, r := range rows[1:] {
		if r[6] == "carried" {
			carried++
		}
		if r[10] == "-" {
			dashes++
			continue
		}
		most := 20.0
		if strings.HasPrefix(r[11], "doubted") {
			most = 200
		}
		if off, err := strconv.ParseFloat(r[10], 64); err != nil || !(math.Abs(off) < most) {
			t.Errorf("%q is off by %q digits", r[1], r[10])
		}
	}
	if dashes < 1000 || carried < 1000 || carried > 2000 {
		t.Errorf("%d dashes, %d carried of %d", dashes, carried, len(rows))
	}
}

func TestFilters(t *testing.T) {
	_, whole, _ := handbook(published.All, "-totals")
	code, one, _ := handbook(published.All, "-totals", "-package", "frame/layout")
	if code != 0 || len(one) >= len(whole) || strings.Contains(one, "  ice ") {
		t.Errorf("-package: exit status %d:\n%s", code, one)
	}
	code, out, _ := handbook(published.All, "-csv", "-source", "TM 5-852", "-package", "ice")
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if code != 0 || err != nil || len(rows) < 100 {
		t.Fatalf("-csv: exit status %d, %d rows, %v", code, len(rows), err)
	}
	for _, r := range rows[1:] {
		if r[0] != "ice" || !strings.Contains(strings.Join(r[2:5], ", "), "TM 5-852") {
			t.Errorf("row %q passes both filters", r)
		}
	}
	for _, args := range [][]string{{"-package", "boats"}, {"-source", "nobody at all"}, {"-nonsense"}, {"word"}} {
		if code, out, errs := handbook(published.All, args...); code != 2 || out != "" || errs == "" {
			t.Errorf("%q: exit status %d, %q, %q", args, code, out, errs)
		}
	}
}

// invented returns one check with a given computed value, of a source that is invented.
func invented(x float64, err error) func() ([]published.Check, error) {
	return func() ([]published.Check, error) {
		return []published.Check{{
			Package: "p", Quantity: "length", Printed: "1.250e1", Unit: "m",
			Source:  measure.Source{Title: "An invented book", Edition: "1st ed.", Locator: "page 1", Status: measure.Quoted},
			Compute: func() (float64, error) { return x, err },
		}}, nil
	}
}

func TestExitStatus(t *testing.T) {
	for _, c := range []struct {
		all  func() ([]published.Check, error)
		code int
		want string
	}{
		{invented(12.504, nil), 0, "length    1.250e1 m  12.504    0.4         recomputed  within half a digit"},
		{invented(12.506, nil), 1, "OUT of half a digit"},
		{invented(0, errors.New("no way")), 1, "none"},
		{func() ([]published.Check, error) { return nil, errors.New("no table") }, 2, ""},
	} {
		code, out, _ := handbook(c.all)
		if code != c.code || !strings.Contains(out, c.want) {
			t.Errorf("exit status %d, want %d with %q:\n%s", code, c.code, c.want, out)
		}
	}
	if _, out, _ := handbook(invented(12.5, nil)); !strings.Contains(out, "p | An invented book, 1st ed., page 1 | as quoted") {
		t.Errorf("no head with package, source, place and status:\n%s", out)
	}
}

// broken is a pipe whose reader went away.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("broken pipe") }

func TestWriteError(t *testing.T) {
	for _, args := range [][]string{nil, {"-totals"}, {"-csv"}} {
		var errs bytes.Buffer
		if code := run(args, broken{}, &errs, published.All); code != 2 || !strings.Contains(errs.String(), "broken pipe") {
			t.Errorf("%q: exit status %d: %s", args, code, errs.String())
		}
	}
}
