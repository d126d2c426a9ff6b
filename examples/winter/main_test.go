package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func TestRun(t *testing.T) {
	var out, errs bytes.Buffer
	if code := run(nil, &out, &errs); code != 0 {
		t.Fatalf("exit status %d: %s", code, errs.String())
	}
	text := out.String()
	for _, want := range []string{"THIS WINTER SO FAR", "a pad kept bare", "average lake with snow", "ODDS FROM", "CALENDAR OF THE WORK", "carry the pieces out", "no permission", "Drill."} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not print %q", want)
		}
	}
	if word := regexp.MustCompile(`(?i)\b(go|safe|allowed)\b`).FindString(text); word != "" {
		t.Errorf("it prints %q", word)
	}
	if strings.Contains(text, "NaN") {
		t.Error("it prints NaN")
	}
	// The same from a file; more ice needed is had later.
	name := filepath.Join(t.TempDir(), "shore.csv")
	if err := os.WriteFile(name, []byte(invented), 0o644); err != nil {
		t.Fatal(err)
	}
	var same bytes.Buffer
	if code := run([]string{"-temps", name}, &same, &errs); code != 0 || same.String() != text {
		t.Errorf("from a file: exit status %d, %s", code, errs.String())
	}
	for _, args := range [][]string{{"-depth", "9"}, {"-temps", "nowhere.csv"}, {"-latitude", "95"}, {"-nonsense"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d, %q", args, code, errs.String())
		}
	}
}
