package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

func TestRun(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(bad, []byte(`{"name": 3}`), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args []string
		code int
		want string // on the output, or among the errors
	}{
		{nil, 0, "- 14 x 2x8, 10 ft 0-1/2 in, in hand: joist: 9 ft 6 in"},
		{[]string{"-demo", "work"}, 0, "EUR"},
		{[]string{"-plan", "../../frame/plan/demo/swim.json"}, 0, "866.00"},
		{[]string{"-csv", "cut"}, 0, "\"2x8, 10 ft 0-1/2 in, in hand 1\",2x8,120.5,no,joist,0.125,114\n"},
		{[]string{"-csv", "purchase"}, 0, "\"2x10, 24 ft 0-3/4 in\",lumber,4,0,1,4,4,0,57.00,228.00,USD\n"},
		{[]string{"-csv", "hardware"}, 0, "item,need"},
		{[]string{"-csv", "carry"}, 0, "plastic drum,drum,18,22.0,1,9"},
		{[]string{"-csv", "paint"}, 2, "no list"},
		{[]string{"-plan", bad}, 2, "bad.json:1:"},
		{[]string{"-plan", bad + "x"}, 2, "open " + bad + "x: "},
		{[]string{"-demo", "raft"}, 2, `"raft" unknown name; want swim or work`},
		{[]string{"-nonsense"}, 2, "nonsense"},
		{[]string{"x"}, 2, ""},
	} {
		var out, errs bytes.Buffer
		code := run(c.args, &out, &errs)
		if code != c.code {
			t.Errorf("%q: exit status %d, want %d: %s", c.args, code, c.code, errs.String())
		}
		if !strings.Contains(out.String()+errs.String(), c.want) {
			t.Errorf("%q: no %q in\n%s%s", c.args, c.want, out.String(), errs.String())
		}
		if code == 2 && out.Len() > 0 {
			t.Errorf("%q: prints half a list", c.args)
		}
		if len(c.args) < 3 && (len(c.args) == 0 || c.args[0] != "-csv") {
			for _, line := range strings.Split(out.String(), "\n") {
				if utf8.RuneCountInString(line) > 80 {
					t.Errorf("%q: more than 80 columns: %q", c.args, line)
				}
			}
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestFullDisk(t *testing.T) {
	for _, list := range []string{"", "cut", "purchase", "hardware", "carry"} {
		var errs bytes.Buffer
		if code := run([]string{"-csv", list}, full{}, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d, %q", list, code, errs.String())
		}
	}
}
