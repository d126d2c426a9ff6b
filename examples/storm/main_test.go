package main

import (
	"bytes"
	"strings"
	"testing"
)

func TestRun(t *testing.T) {
	storm := func(args ...string) string {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 0 {
			t.Fatalf("%q: exit status %d: %s", args, code, errs.String())
		}
		for _, want := range []string{"Lake down 0", "Lake down 2 ft", "ground", "Without lake right", "The cleat shore left", "local rules"} {
			if !strings.Contains(out.String(), want) {
				t.Errorf("%q: no %q in\n%s", args, want, out.String())
			}
		}
		return out.String()
	}
	if s := storm(); strings.Contains(strings.Split(s, "Without")[0], "short") {
		t.Errorf("the usual storm:\n%s", s)
	}
	if s := storm("-wind", "60 mph"); !strings.Contains(strings.Split(s, "Without")[0], "short") {
		t.Errorf("a hurricane:\n%s", s)
	}
	for _, args := range [][]string{{"-wind", "25"}, {"-down", "x"}, {"-nonsense"}, {"-down", "20 ft"}, {"-wind", "400 mph"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d, %q", args, code, errs.String())
		}
	}
}
