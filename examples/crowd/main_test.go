package main

import (
	"bytes"
	"strings"
	"testing"
)

func TestRun(t *testing.T) {
	people := func(args ...string) int {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 0 {
			t.Fatalf("%q: exit status %d: %s", args, code, errs.String())
		}
		var n int
		for _, r := range strings.TrimPrefix(out.String(), "Post: ") {
			if r < '0' || r > '9' {
				break
			}
			n = 10*n + int(r-'0')
		}
		if !strings.Contains(out.String(), "not a permit drawing") {
			t.Errorf("no caution:\n%s", out.String())
		}
		return n
	}
	grown, heavy := people("-each", "185 lb"), people("-each", "250 lb")
	if !(grown > heavy && heavy >= 1) {
		t.Errorf("%d people, %d heavy ones", grown, heavy)
	}
	for _, light := range []string{"120 lb", "5 lb", "0 lb"} { // whoever comes next may be grown
		if n := people("-each", light); n != grown {
			t.Errorf("%d people of %s, %d grown ones", n, light, grown)
		}
	}
	var sunk, errs bytes.Buffer
	if code := run([]string{"-dock", "20000 lb"}, &sunk, &errs); code != 0 || !strings.Contains(sunk.String(), "nobody") || !strings.Contains(sunk.String(), "sinks") {
		t.Errorf("a dock that sinks: %d\n%s", code, sunk.String())
	}
	if !strings.Contains(sunk.String(), " lb of buoyancy") {
		t.Errorf("not in pounds:\n%s", sunk.String())
	}
	if code := run([]string{"-dock", "-5 lb"}, &sunk, &errs); code != 2 || !strings.Contains(errs.String(), "-5.0 lb is out of range") {
		t.Errorf("a dock of less than nothing: %d, %s", code, errs.String())
	}
	for _, args := range [][]string{{"-each", "185"}, {"-dock", "9 ft"}, {"-nonsense"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d, %q", args, code, errs.String())
		}
	}
}
