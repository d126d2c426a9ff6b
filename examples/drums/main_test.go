package main

import (
	"bytes"
	"strings"
	"testing"
)

func output(t *testing.T, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(args, &out, &errs); code != 0 || errs.Len() > 0 {
		t.Fatalf("%q: exit status %d: %s", args, code, errs.String())
	}
	return out.String()
}

// TestRun: a heavier dock takes more drums, and one too small for its load none.
func TestRun(t *testing.T) {
	count := func(args ...string) int { return strings.Count(output(t, args...), " across\n") }
	light, heavy := count("-dock", "300 lb", "-length", "12 ft", "-people", "1"), count("-dock", "700 lb", "-length", "12 ft", "-people", "1")
	if !(light > 3 && heavy > light) {
		t.Errorf("%d drums under 300 lb, %d under 700 lb", light, heavy)
	}
	for _, args := range [][]string{{"-length", "16"}, {"-drum", "tin can"}, {"-dock", "9000 lb", "-length", "6 ft"}, {"-nosuch"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d: %s", args, code, errs.String())
		}
	}
}
