package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

func TestRun(t *testing.T) {
	var out, errs bytes.Buffer
	if code := run(nil, &out, &errs); code != 0 {
		t.Fatalf("exit status %d: %s", code, errs.String())
	}
	text := out.String()
	for _, want := range []string{"THE RECORD ends on 20 Jan 2027", "asked on 21 Jan 2027", "THE WINTER OF 2026/27 SO FAR", "ON 20 Jan 2027", "a pad kept bare", "average lake with snow", "ODDS FROM", "CALENDAR OF THE WORK", "carry the pieces out", "no permission", "Drill."} {
		if !strings.Contains(text, want) {
			t.Errorf("it does not print %q", want)
		}
	}
	if word := regexp.MustCompile(`(?i)\b(go|safe|allowed)\b`).FindString(text); word != "" {
		t.Errorf("it prints %q", word)
	}
	if strings.Contains(text, "NaN") {
		t.Error("it prints NaN")
	}
	// The same from a file; more ice needed is had later.
	name := filepath.Join(t.TempDir(), "shore.csv")
	if err := os.WriteFile(name, []byte(invented), 0o644); err != nil {
		t.Fatal(err)
	}
	var same bytes.Buffer
	if code := run([]string{"-temps", name, "-now", "2027-01-21"}, &same, &errs); code != 0 || same.String() != text {
		t.Errorf("from a file: exit status %d, %s", code, errs.String())
	}
	for _, args := range [][]string{{"-depth", "9"}, {"-temps", "nowhere.csv"}, {"-latitude", "95"}, {"-nonsense"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d, %q", args, code, errs.String())
		}
	}
}

// TestAsked: a record of another age is refused, one whose days are to come too; of another
// winter or of weeks ago it says so, and no day of the work is before the day of asking.
// A table of one's own is asked on the day that the computer has.
func TestAsked(t *testing.T) {
	defer func(was func() time.Time) { today = was }(today)
	table := func(from string, back int) string {
		rows := regexp.MustCompile(`(?m)^(20\d\d)-`).ReplaceAllStringFunc(from, func(y string) string {
			year, err := time.Parse("2006-", y)
			if err != nil {
				t.Fatal(err)
			}
			return year.AddDate(-back, 0, 0).Format("2006-")
		})
		name := filepath.Join(t.TempDir(), "shore.csv")
		if err := os.WriteFile(name, []byte(rows), 0o644); err != nil {
			t.Fatal(err)
		}
		return name
	}
	autumn, _, _ := strings.Cut(invented, "2026-09-01")
	for _, c := range []struct {
		name, table, now string
		code             int
		says             []string
	}{
		{"its own day", table(invented, 0), "2027-01-20", 0, []string{"asked on 20 Jan 2027", "earliest 21 Jan 2027"}},
		{"weeks on", table(invented, 0), "2027-02-20", 0, []string{"The last 31 days are not in the record", "earliest 20 Feb 2027"}},
		{"after the work", table(invented, 0), "2027-04-20", 0, []string{"NOT AS THINGS ARE: the last day to begin it, 25 Mar 2027, is over"}},
		{"the next autumn", table(invented, 0), "2027-10-20", 0, []string{"ends on 20 Jan 2027, in the winter of 2026/27; asked on 20 Oct 2027, in that of 2027/28", "THE WINTER OF 2027/28: the record has no day of it"}},
		{"before its last day", table(invented, 0), "2027-01-19", 2, []string{"2027-01-20", "2027-01-19"}},
		{"sixty years on", table(invented, 60), "2027-01-21", 2, []string{"1967-01-20", "2026"}},
		{"in autumn", table(autumn, 0), "2026-10-20", 0, []string{"ends on 31 Aug 2026, in the winter of 2025/26", "asked on 20 Oct 2026", "Dec 2026"}},
	} {
		now, err := time.Parse(time.DateOnly, c.now)
		if err != nil {
			t.Fatal(err)
		}
		today = func() time.Time { return now.Add(20 * time.Hour) }
		var out, errs, flagged bytes.Buffer
		code := run([]string{"-temps", c.table}, &out, &errs)
		if code != c.code || code != 0 && out.Len() > 0 {
			t.Errorf("%s: exit status %d: %s", c.name, code, errs.String())
		}
		text := strings.Join(strings.Fields(out.String()+errs.String()), " ")
		for _, say := range c.says {
			if !strings.Contains(text, say) {
				t.Errorf("%s: it does not say %q", c.name, say)
			}
		}
		today = func() time.Time { t.Error("it asks the computer"); return now }
		if run([]string{"-temps", c.table, "-now", c.now}, &flagged, &errs); flagged.String() != out.String() {
			t.Errorf("%s: not the same by -now", c.name)
		}
	}
	for _, args := range [][]string{{"-now", "21 Jan"}, {"-now", "2026-12-21"}} {
		if code := run(args, &bytes.Buffer{}, &bytes.Buffer{}); code != 2 {
			t.Errorf("%q: exit status %d", args, code)
		}
	}
}

// TestSouth: in the south the winter begins in March, and has one year.
func TestSouth(t *testing.T) {
	a := asking{now: time.Date(2027, time.February, 3, 0, 0, 0, 0, time.UTC)}
	a.Latitude = -46
	if got := winter(a.opens(a.now)); got != "2026" {
		t.Errorf("February 2027 is of the winter of %s", got)
	}
	a.Latitude = 46
	if got := winter(a.opens(a.now)); got != "2026/27" {
		t.Errorf("February 2027 is of the winter of %s", got)
	}
}
