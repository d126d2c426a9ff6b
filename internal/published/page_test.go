package published

import (
	"errors"
	"flag"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

var update = flag.Bool("update", false, "rewrite the page of outside checks")

const page = "CHECKS.md"

// TestPageIsCurrent runs every check of the library, and compares the page beside the data
// with what they give.
func TestPageIsCurrent(t *testing.T) {
	checks, err := All()
	if err != nil {
		t.Fatal(err)
	}
	lines := Evaluate(checks)
	for _, l := range lines {
		if !l.Met() && !l.Doubted() {
			t.Errorf("%s: %s: printed %s, computed %.12g: %s", l.Package, l.Name(), l.Printed(), l.Computed, l.Words())
		}
		if bare := l.Check; l.Doubted() {
			if bare.Doubt = ""; bare.Verify() == nil || l.Because != "" {
				t.Errorf("%s: %s: doubted, though it is met, or has a limit of its own", l.Package, l.Name())
			}
		}
	}
	if all := Total(lines); all.Values < 1200 || all.Sources < 50 {
		t.Errorf("%d values from %d sources; promised are 1200 from 50", all.Values, all.Sources)
	}
	got := Page(lines)
	if *update {
		if err := os.WriteFile(page, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	if got == string(want) {
		return
	}
	old := strings.Split(string(want), "\n")
	for i, line := range strings.Split(got, "\n") {
		if i >= len(old) || line != old[i] {
			t.Fatalf("%s is stale from line %d on, which should be\n%s\nrun: go test ./internal/published -run PageIsCurrent -update", page, i+1, line)
		}
	}
	t.Fatalf("%s is stale: it goes on after its end", page)
}

// invented returns lines of every kind: met and missed, by digit, by tolerance, known, failed.
func invented() []Line {
	value := func(x float64) func() (float64, error) { return func() (float64, error) { return x, nil } }
	book := measure.Source{Title: "A book", Edition: "2nd ed.", Locator: "page 7", Status: measure.Read}
	other := measure.Source{Title: "A | program", Status: measure.Independent}
	return Evaluate([]Check{
		{Package: "p", Quantity: "a quarter", Source: book, Printed: "0.2", Unit: "m", Compute: value(0.225)},
		{Package: "p", Quantity: "missed", Source: book, Printed: "0.2", Unit: "m", Compute: value(0.26)},
		{Package: "q", Quantity: "fine", Source: other, Printed: "2.00000000000000001", Compute: value(2)},
		{Package: "q", Quantity: "close", Source: other, Printed: "2", Relative: 1e-12, Compute: value(2 + 1e-12)},
		{Package: "q", Quantity: "known", Source: book, Printed: "7", Because: "it rounds up", Within: 1, Compute: value(6.2)},
		{Package: "q", Quantity: "known, missed", Source: book, Printed: "7", Because: "it rounds up", Within: 1, Compute: value(5.9)},
		{Package: "q", Quantity: "failed", Source: book, Printed: "7", Compute: func() (float64, error) { return 0, errors.New("no way") }},
		{Package: "q", Quantity: "no number", Source: book, Printed: "7", Compute: value(math.NaN())},
		{Package: "q", Quantity: "doubted", Source: book, Printed: "7", Doubt: "nobody read it", Compute: value(9)},
		{Package: "q", Quantity: "doubted, failed", Source: book, Printed: "7", Doubt: "nobody read it", Compute: func() (float64, error) { return 0, errors.New("no way") }},
		{Package: "p", Quantity: "kept", Source: book, Printed: "10.16", Unit: "cm", Carried: true, Compute: value(10.16)},
	})
}

func TestWords(t *testing.T) {
	want := []string{
		"within half a digit", "OUT of half a digit", "within 1e-09 of the value", "within 1e-09 of the value",
		"within 1, since it rounds up", "OUT of 1, since it rounds up", "OUT: A book, 2nd ed., page 7: failed: no way", "OUT of half a digit",
		"doubted, compared with nothing: nobody read it", "OUT: A book, 2nd ed., page 7: doubted, failed: no way", "within half a digit",
	}
	for i, l := range invented() {
		if got := l.Words(); got != want[i] {
			t.Errorf("%s: %q, want %q", l.Quantity, got, want[i])
		}
		if l.Met() != strings.HasPrefix(want[i], "within") || l.Doubted() != strings.HasPrefix(want[i], "doubted") {
			t.Errorf("%s: met is %v, doubted %v", l.Quantity, l.Met(), l.Doubted())
		}
	}
}

func TestTallies(t *testing.T) {
	lines := invented()
	all := Total(lines)
	if all.Values != 11 || all.Out != 5 || all.Known != 1 || all.Doubted != 1 || all.Carried != 1 || all.Sources != 2 || all.Of(measure.Read) != 9 || all.Of(measure.Independent) != 2 {
		t.Errorf("total %+v", all)
	}
	if got, want := all.Largest(), "0.3 digit; under 1e-09 of it"; got != want {
		t.Errorf("largest %q, want %q", got, want)
	}
	by := TallyBySource(lines)
	if len(by) != 2 || by[0].Name != "A book, 2nd ed." || by[0].Values != 9 || by[1].Out != 0 {
		t.Errorf("by source %+v", by)
	}
	text := Page(lines)
	for _, want := range []string{
		"11 values from 2 sources: 10 recomputed by a formula or a model, 1 cells", "4 lie within half", "1 within a limit of their own", "1 are doubted", "5 are out",
		`| A \| program | independent computation | 2 |`, "| A book, 2nd ed. | read | 3 | 1 | 0.3 digit |  |  | 1 |", "it rounds up",
		"| A book, 2nd ed.: doubted | 7 | 9 | nobody read it |",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

// A tie rounds the same way whichever side of it the last bit lies.
func TestTenths(t *testing.T) {
	for x, want := range map[float64]string{
		0: "0.0", 0.25: "0.3", math.Nextafter(0.25, 0): "0.3", math.Nextafter(0.25, 1): "0.3", 0.2499: "0.2", 0.5: "0.5", 12.04: "12.0",
	} {
		if got := tenths(x); got != want {
			t.Errorf("%.17g rounds to %s, want %s", x, got, want)
		}
	}
}

// The README and DEVELOPERS say how many values are recomputed and how many cells are only
// carried, within a twentieth.
func TestCountsAreTold(t *testing.T) {
	checks, err := All()
	if err != nil {
		t.Fatal(err)
	}
	carried := 0
	for _, c := range checks {
		if c.Carried {
			carried++
		}
	}
	told := regexp.MustCompile(`([0-9,]+) (values|cells)\b`)
	for _, file := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile("../../" + file)
		if err != nil {
			t.Fatal(err)
		}
		found := map[string]float64{}
		for _, m := range told.FindAllStringSubmatch(string(text), -1) {
			n, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", ""), 64)
			if err == nil && n > found[m[2]] {
				found[m[2]] = n
			}
		}
		for what, want := range map[string]int{"values": len(checks) - carried, "cells": carried} {
			if n := found[what]; !(math.Abs(n-float64(want)) <= 0.05*float64(want)) {
				t.Errorf("%s says %.0f %s, there are %d", file, n, what, want)
			}
		}
	}
}
