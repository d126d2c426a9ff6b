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

// TestNewSaysCount: where full rows make another number of drums than asked for, that is
// said beside the plan, with why, and the plan is printed all the same.
func TestNewSaysCount(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"-new", "-length", "16 ft", "-width", "8 ft", "-count", "8"}, "buildsheet: 8 were asked for; 6 rows of 2 make it 12: so many hold up the deck with people on it"},
		{[]string{"-new", "-length", "16 ft", "-width", "8 ft", "-count", "12"}, ""},
		{[]string{"-new", "-length", "16 ft", "-width", "8 ft"}, ""},
	} {
		var out, errs bytes.Buffer
		status := run(c.args, &out, &errs)
		if status != dock.AllHold || !strings.HasPrefix(errs.String(), c.want) || c.want == "" && errs.Len() > 0 {
			t.Errorf("%v: status %d, %q", c.args, status, errs.String())
		}
		if said := strings.TrimPrefix(strings.TrimSpace(errs.String()), "buildsheet: "); !strings.Contains(out.String(), said) {
			t.Errorf("%v: the plan does not say %q", c.args, said)
		}
	}
}

// TestNewAsksForWeather: a new plan has room for the weather, without which no verdict on
// the ice has an answer, and for the currency.
func TestNewAsksForWeather(t *testing.T) {
	var out, errs bytes.Buffer
	run([]string{"-new"}, &out, &errs)
	for _, want := range []string{`"currency": "unknown"`, `"currency: Label printed`, `"weather": [`, `last five days before`, `"high: Highest air`} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("it lacks %s", want)
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
