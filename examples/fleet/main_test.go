package main

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

func output(t *testing.T, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(context.Background(), args, &out, &errs); code != 0 || errs.Len() > 0 {
		t.Fatalf("%q: exit status %d: %s", args, code, errs.String())
	}
	return out.String()
}

// TestSameByAnyWorkers: the table does not depend on how many work on it, and does on
// what is invented.
func TestSameByAnyWorkers(t *testing.T) {
	one := output(t, "-docks", "600", "-workers", "1")
	for _, workers := range []string{"2", "7"} {
		if got := output(t, "-docks", "600", "-workers", workers); got != one {
			t.Errorf("with %s workers:\n%s\nwith one:\n%s", workers, got, one)
		}
	}
	if output(t, "-docks", "600", "-seed", "2") == one {
		t.Error("other docks, the same table")
	}
	if !strings.Contains(one, "600 invented docks") || !strings.Contains(one, "not a permit drawing") {
		t.Error(one)
	}
}

// TestTable: every dock is in one row, and the shares are those of an independent count.
func TestTable(t *testing.T) {
	judged, err := survey(context.Background(), 1, 400, 3)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	table(&out, judged)
	rows := 0
	for _, width := range widths {
		n, tilt := 0, 0
		for _, j := range judged {
			if len(j.verdicts) != len(rules) {
				t.Fatalf("%d verdicts", len(j.verdicts))
			}
			if j.width == width {
				n++
				if j.verdicts[2] == measure.Holds {
					tilt++
				}
			}
		}
		rows += n
		row := ""
		for _, line := range strings.Split(out.String(), "\n") {
			if strings.HasPrefix(line, measure.Length.Format(width, measure.US)+" ") {
				row = line
			}
		}
		if want := fmt.Sprintf("%.0f %%", 100*float64(tilt)/float64(n)); n == 0 || !strings.Contains(row, want) {
			t.Errorf("%d docks: no %s in %q", n, want, row)
		}
	}
	if rows != 400 {
		t.Errorf("%d docks are in the rows", rows)
	}
	if got := share(0, 0); got != "none" {
		t.Error(got)
	}
}

// TestRun: what cannot be, and a context that ended.
func TestRun(t *testing.T) {
	for _, args := range [][]string{{"-docks", "0"}, {"-workers", "0"}, {"-nosuch"}} {
		var out, errs bytes.Buffer
		if code := run(context.Background(), args, &out, &errs); code != 2 || errs.Len() == 0 || out.Len() > 0 {
			t.Errorf("%q: exit status %d, %q", args, code, errs.String())
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, errs bytes.Buffer
	if code := run(ctx, []string{"-docks", "50"}, &out, &errs); code != 1 || out.Len() > 0 {
		t.Errorf("after its context: exit status %d: %s", code, out.String())
	}
	errs.Reset()
	if code := run(context.Background(), []string{"-docks", "20", "-time"}, &out, &errs); code != 0 || !strings.Contains(errs.String(), "a dock") {
		t.Errorf("timed: exit status %d: %s", code, errs.String())
	}
}
