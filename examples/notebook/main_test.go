package main

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"example.org/floewright/ice/season"
)

// TestExplore: each question is asked and answered, in order; nothing is short of the
// last joist tried; and nothing of the ice sounds like a permission.
func TestExplore(t *testing.T) {
	var out bytes.Buffer
	explore(&out)
	rest := out.String()
	for _, want := range []string{
		"1. WHICH JOISTS", "2x6", "short", "2x8", "holds", "2. WHAT DOES", "joists, 2 rims", "3. HOW MANY", "of 14 places", "tilt 0.0 deg",
		"4. DOES A RIM", "bending:", "holds", "5. WHAT DO", "for five hours", "6. WHEN", "first on", "first on", season.Caution, "invented", "not a permit drawing",
	} {
		_, after, found := strings.Cut(rest, want)
		if !found {
			t.Fatalf("after what came before, it does not print %q:\n%s", want, out.String())
		}
		rest = after
	}
	if word := regexp.MustCompile(`(?i)\b(go|safe|allowed|NaN)\b`).FindString(out.String()); word != "" {
		t.Errorf("it prints %q", word)
	}
}

// TestWinters: the invented record is ten winters long, without a gap, and freezes.
func TestWinters(t *testing.T) {
	days := winters(10)
	coldest := 0.0
	for i, d := range days {
		coldest = min(coldest, d.Mean)
		if i > 0 && !d.Date.Equal(days[i-1].Date.AddDate(0, 0, 1)) {
			t.Fatalf("%v follows %v", d.Date, days[i-1].Date)
		}
	}
	if n := len(days); n < 3650 || n > 3655 || coldest > -15 || coldest < -35 {
		t.Errorf("%d days, the coldest %.0f °C", n, coldest)
	}
}
