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

// TestRun: both demos side by side, as text and as a table; a file that is not there.
func TestRun(t *testing.T) {
	got := output(t)
	for _, want := range []string{"A  Otter Point", "B  Yard work", "Weight", "Worst member", "WHY THERE IS NO ANSWER"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
	if got := output(t, "-csv"); strings.Count(got, "\n") < 12 || !strings.HasPrefix(got, "question,unit,") {
		t.Error(got)
	}
	for _, args := range [][]string{{"none.json"}, {"-nosuch"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || out.Len() > 0 {
			t.Errorf("%q: exit status %d: %s", args, code, errs.String())
		}
	}
}
