package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
)

func TestRun(t *testing.T) {
	dir := t.TempDir()
	bad := filepath.Join(dir, "bad.json")
	if err := os.WriteFile(bad, []byte("{\n\"name\": \"x\", \"frame\": {\"length\": \"24\"}}"), 0o600); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile("../../frame/plan/demo/swim.json")
	if err != nil {
		t.Fatal(err)
	}
	crowd := filepath.Join(dir, "crowd.json")
	if err := os.WriteFile(crowd, bytes.Replace(text, []byte(`"count": 2, "mass": "185 lb"`), []byte(`"count": 12, "mass": "185 lb"`), 1), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args      []string
		want      dock.Status
		out, errs string
	}{
		{nil, dock.SomeShort, "Otter Point", ""},
		{[]string{"-demo", "work"}, dock.SomeOpen, "Yard work float", ""},
		{[]string{"-units", "si"}, dock.SomeShort, "7.315 m", ""},
		{[]string{"-demo", "work", "-units", "us"}, dock.SomeOpen, " lb, at most", ""},
		{[]string{"-plan", crowd}, dock.SomeShort, "SHORT", ""},
		{[]string{"-plan", bad}, dock.Unusable, "", "bad.json:2:"},
		{[]string{"-plan", filepath.Join(dir, "none.json")}, dock.Unusable, "", "none.json"},
		{[]string{"-demo", "raft"}, dock.Unusable, "", `"raft" unknown name; want swim or work`},
		{[]string{"-units", "feet"}, dock.Unusable, "", "us or si"},
		{[]string{"plan.json"}, dock.Unusable, "", "-plan"},
		{[]string{"-nonsense"}, dock.Unusable, "", "nonsense"},
		{[]string{"-explain"}, dock.AllHold, "floats[].girth", ""},
	} {
		var out, errs bytes.Buffer
		if got := run(c.args, &out, &errs); got != c.want {
			t.Errorf("%q: status %d, want %d\n%s", c.args, got, c.want, errs.String())
		}
		if !strings.Contains(out.String(), c.out) || !strings.Contains(errs.String(), c.errs) {
			t.Errorf("%q: does not print %q or %q", c.args, c.out, c.errs)
		}
		if c.want == dock.Unusable && out.Len() > 0 {
			t.Errorf("%q: prints half a sheet", c.args)
		}
	}
}

func TestExplainFits(t *testing.T) {
	var out, errs bytes.Buffer
	run([]string{"-explain"}, &out, &errs)
	for _, line := range strings.Split(out.String(), "\n") {
		if len(line) > 80 {
			t.Errorf("%d columns: %s", len(line), line)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestFullDisk(t *testing.T) {
	var errs bytes.Buffer
	if got := run(nil, full{}, &errs); got != dock.Unusable || errs.Len() == 0 {
		t.Errorf("status %d, %q", got, errs.String())
	}
}
