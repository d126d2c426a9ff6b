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
	if s := storm("-down", "2 ft"); !strings.Contains(s, "25.0 mph") || !strings.Contains(s, "77.0 mph") {
		t.Errorf("the wind and a guideline's are not told:\n%s", s)
	}
	for _, down := range []string{"25 ft", "12 ft", "11 ft", "10 ft 8-3/8 in"} {
		var out, errs bytes.Buffer
		code := run([]string{"-down", down}, &out, &errs)
		_, low, _ := strings.Cut(out.String(), "Lake down "+down+":")
		low, _, _ = strings.Cut(low, "Without")
		if code != 0 || !strings.Contains(low, "aground") || strings.Contains(low, "holds") {
			t.Errorf("aground at %s: exit status %d, %s\n%s", down, code, errs.String(), out.String())
		}
	}
	for _, c := range [][2]string{{"1 mph", "no storm"}, {"22 mph", "force 6"}, {"22 mph", " mph"}, {"400 mph", "mph is out of range"}} {
		var out, errs bytes.Buffer
		if code := run([]string{"-wind", c[0]}, &out, &errs); code != 2 || !strings.Contains(errs.String(), c[1]) || strings.Contains(errs.String(), "m/s") {
			t.Errorf("%s: exit status %d, %q", c[0], code, errs.String())
		}
	}
	for _, args := range [][]string{{"-down", "-1000 ft"}, {"-wind", "25"}, {"-down", "x"}, {"-nonsense"}, {"-wind", "400 mph"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d, %q", args, code, errs.String())
		}
	}
}
