package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
)

// TestNewPlan: a plan to start from goes straight into a sheet that lacks nothing but
// what only the builder can know.
func TestNewPlan(t *testing.T) {
	for _, units := range []string{"us", "si"} {
		var text, errs bytes.Buffer
		if status := run([]string{"-new", "-length", "24 ft", "-width", "10 ft", "-units", units}, &text, &errs); status != dock.AllHold || errs.Len() > 0 {
			t.Fatalf("status %d, %s", status, errs.String())
		}
		file := filepath.Join(t.TempDir(), "mydock.json")
		if err := os.WriteFile(file, text.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		var sheet bytes.Buffer
		if status := run([]string{"-plan", file}, &sheet, &errs); status == dock.Unusable || errs.Len() > 0 {
			t.Fatalf("status %d, %s", status, errs.String())
		}
		for _, want := range []string{"New dock", "NO ANSWER      Ice for one crossing", "Every", "ORDER OF WORK"} {
			if !strings.Contains(sheet.String(), want) {
				t.Errorf("%s: the sheet lacks %q", units, want)
			}
		}
	}
	for _, wrong := range [][]string{{"-new", "-drum", "tin can"}, {"-new", "-width", "3 ft"}, {"-new", "-girth", "six"}, {"-new", "-count", "900"}} {
		var out, errs bytes.Buffer
		if status := run(wrong, &out, &errs); status != dock.Unusable || out.Len() > 0 || errs.Len() == 0 {
			t.Errorf("%v: status %d, %d bytes, %s", wrong, status, out.Len(), errs.String())
		}
	}
}

// The names that are offered for a drum are taken, whatever the units.
func TestNewDrumNames(t *testing.T) {
	for _, units := range []string{"us", "si"} {
		var out, errs bytes.Buffer
		run([]string{"-new", "-drum", "foam", "-units", units}, &out, &errs)
		_, list, ok := strings.Cut(errs.String(), "one of ")
		names := strings.Split(strings.TrimSpace(list), "; ")
		if !ok || len(names) < 3 || !strings.Contains(list, `"220 L plastic"`) {
			t.Fatalf("%s: %s", units, errs.String())
		}
		for _, name := range names {
			var out, errs bytes.Buffer
			if status := run([]string{"-new", "-drum", strings.Trim(name, `"`), "-units", units}, &out, &errs); status != dock.AllHold {
				t.Errorf("%s: %s is offered and refused: %s", units, name, errs.String())
			}
		}
	}
}
