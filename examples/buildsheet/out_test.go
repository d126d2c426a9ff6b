package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/dock"
)

func init() {
	today = func() time.Time { return time.Date(2027, time.February, 6, 12, 0, 0, 0, time.UTC) }
}

// listed returns the names in a folder.
func listed(t *testing.T, dir string) []string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

// TestOut writes the pages of a demo twice: the same bytes, all files, each of its form.
func TestOut(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "pages")
	var before map[string][]byte
	for range 2 {
		var out, errs bytes.Buffer
		if status := run([]string{"-out", dir}, &out, &errs); status != dock.SomeShort || errs.Len() > 0 {
			t.Fatalf("status %d, %s", status, errs.String())
		}
		names := listed(t, dir)
		for _, want := range []string{"sheet.html", "plan.svg", "section.svg", "report.json", "cut.csv", "purchase.csv", "hardware.csv", "carry.csv"} {
			if !slices.Contains(names, want) {
				t.Errorf("no %s among %v", want, names)
			}
		}
		now := map[string][]byte{}
		for _, name := range names {
			data, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil {
				t.Fatal(err)
			}
			now[name] = data
			if before != nil && !bytes.Equal(before[name], data) {
				t.Errorf("%s differs when written again", name)
			}
			switch filepath.Ext(name) {
			case ".json":
				if !json.Valid(data) {
					t.Errorf("%s is no JSON", name)
				}
			case ".csv":
				if rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll(); err != nil || len(rows) < 2 {
					t.Errorf("%s: %d rows, %v", name, len(rows), err)
				}
			case ".svg":
				if !bytes.HasPrefix(data, []byte("<svg ")) {
					t.Errorf("%s begins %.20q", name, data)
				}
			}
		}
		before = now
	}
}

// TestOutRefused: where a file is in the way nothing is written, and the folder is as
// it was.
func TestOutRefused(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "cut.csv"), 0o755); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(dir, "note.txt")
	if err := os.WriteFile(file, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	before := listed(t, dir)
	for _, at := range []string{dir, file, filepath.Join(file, "under"), filepath.Join(dir, "none", "here")} {
		var out, errs bytes.Buffer
		status := run([]string{"-demo", "work", "-out", at}, &out, &errs)
		if status != dock.Unusable || out.Len() > 0 || !strings.Contains(errs.String(), "nothing was written") {
			t.Errorf("%s: status %d, %d bytes, %s", at, status, out.Len(), errs.String())
		}
		if now := listed(t, dir); !slices.Equal(now, before) {
			t.Errorf("%s: the folder holds %v, before %v", at, now, before)
		}
	}
}
