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

// TestRun: thick ice is not ruled out, thin ice is short, white ice is worse, and no
// answer is a clearance.
func TestRun(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{nil, "not ruled out by"},
		{[]string{"-thinnest", "2 in"}, "short"},
		{[]string{"-thinnest", "6 in", "-load", "3000 lb"}, "short"},
		{[]string{"-thinnest", "0 in", "-white", "7 in"}, "short"},
	} {
		got := output(t, c.args...)
		if !strings.Contains(got, c.want) || !strings.Contains(got, "No clearance") {
			t.Errorf("%q: %s", c.args, got)
		}
		for _, never := range []string{" safe", "allowed", "go ahead"} {
			if strings.Contains(got, never) {
				t.Errorf("%q: it says %q", c.args, never)
			}
		}
	}
	for _, args := range [][]string{{"-thinnest", "thick"}, {"-load", "-5 lb"}, {"-nosuch"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d: %s", args, code, errs.String())
		}
	}
}
