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

// TestRun: a deeper joist spans further, a wider spacing less, and a board on wide
// joists is short.
func TestRun(t *testing.T) {
	if got := output(t); !strings.Contains(got, "2x8 Southern Pine No.2") || !strings.Contains(got, "holds") || !strings.Contains(got, "not a permit drawing") {
		t.Error(got)
	}
	// DCA 6 prints 11 ft 10 in, which holds for faces without slits: each line says which it is.
	if got := output(t); !strings.Contains(got, "wet, incised, every 16 in: spans 10 ft 6-7/8 in") || !strings.Contains(got, "no slits, as tables of Southern Pine take it (-smooth): 11 ft 9-7/8 in") {
		t.Error(got)
	}
	if got := output(t, "-smooth"); !strings.Contains(got, "wet, smooth, every 16 in: spans 11 ft 9-7/8 in") || strings.Contains(got, "slits") {
		t.Error(got)
	}
	if got := output(t, "-spacing", "30 in"); !strings.Contains(got, "short") {
		t.Error(got)
	}
	if a, b := output(t, "-size", "2x6"), output(t, "-size", "2x10"); a == b {
		t.Error(a)
	}
	for _, args := range [][]string{{"-size", "large"}, {"-species", "teak"}, {"-load", "much"}, {"-board", "tin"}, {"-nosuch"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d: %s", args, code, errs.String())
		}
	}
}
