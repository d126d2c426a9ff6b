package plan_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// FuzzParts: a quantity is there where it is a number, a date where it is one and no
// earlier than its day, and a path has other values only where the tables name it.
func FuzzParts(f *testing.F) {
	f.Add("frame.joists.size", "2027-01-15", 0.3, 1, 2)
	f.Add("", "2027-01-15 14:05", math.NaN(), -5, 0)
	f.Add("site[1].\x00", "0000-00-00", math.Inf(1), 9, 1)
	paths := map[string]bool{}
	for _, e := range plan.Explain() {
		paths[e.Path] = true
		f.Add(e.Path, "", 0.0, 0, 0)
	}
	f.Fuzz(func(t *testing.T, path, text string, x float64, line, column int) {
		q := plan.Quantity{Value: x, Path: path, At: plan.Position{Line: line, Column: column}}
		if plan.Has(q) != !math.IsNaN(x) {
			t.Fatalf("%g is there: %v", x, plan.Has(q))
		}
		var fetch plan.Fetch
		fetch.N, fetch.E = q, plan.Quantity{Value: 2}
		if all := fetch.All(); all[0].Path != path || all[2].Value != 2 {
			t.Fatalf("%+v", all)
		}
		if day, ok := plan.Time(plan.Name{Value: text}); ok && !strings.HasPrefix(text, day.Format("2006-01-02")) || !ok && !day.IsZero() {
			t.Fatalf("%q is %v", text, day)
		}
		for _, other := range plan.Plausible(path) {
			if other == "" {
				t.Fatalf("%q might be nothing", path)
			}
		}
		if len(plan.Plausible(path)) > 0 && !paths[path] && !strings.ContainsAny(path, "[]0123456789") {
			t.Fatalf("%q, which no table has, might be %q", path, plan.Plausible(path))
		}
	})
}

// FuzzEntry: an entry in a system's units says no less than before, and once there it stays
// there.
func FuzzEntry(f *testing.F) {
	for i, e := range plan.Explain() {
		if i%9 == 0 {
			f.Add(e.Path, e.Means, e.Accepts, e.Default, 0)
			f.Add(e.Path, e.Means, e.Accepts, e.Default, 1)
		}
	}
	f.Add("", "\x00 3 m", "at least 1e400 m, at most NaN", "-0 in", -3)
	f.Fuzz(func(t *testing.T, path, means, accepts, standIn string, system int) {
		e := plan.Entry{Path: path, Means: means, Accepts: accepts, Default: standIn, Plausible: []string{standIn}}
		in := e.In(measure.System(system))
		if in.Path != path || (in.Accepts == "") != (accepts == "") || (in.Means == "") != (means == "") || len(in.Plausible) != 1 {
			t.Fatalf("%+v in system %d is %+v", e, system, in)
		}
	})
}

// FuzzErrors: mistakes come in the order of their lines, none is lost, and no mistake is no
// error.
func FuzzErrors(f *testing.F) {
	f.Add(3, 1, 1, 9, 3, 0, "frame.length", 0.5)
	f.Add(0, 0, -1, -1, math.MaxInt, 0, "", math.NaN())
	f.Fuzz(func(t *testing.T, l1, c1, l2, c2, l3, c3 int, path string, x float64) {
		why := measure.Range{Lo: 0, Hi: 1}.Check(path, x)
		if why == nil {
			why = errors.New("unwanted")
		}
		at := func(line, column int) *plan.Error {
			return plan.Wrong("f.json", plan.Quantity{Value: x, Path: path, At: plan.Position{Line: line, Column: column}}, why)
		}
		es := plan.Errors{at(l1, c1), nil, at(l2, c2), at(l3, c3)}
		es.Sort()
		if es[3] != nil {
			t.Fatalf("nothing stands before a mistake: %v", es)
		}
		for i := 1; i < 3; i++ {
			a, b := es[i-1].At, es[i].At
			if a.Line > b.Line || a.Line == b.Line && a.Column > b.Column || es[i].Path != path || !errors.Is(es[i], why) {
				t.Fatalf("%+v before %+v", es[i-1], es[i])
			}
		}
		if err := es.OrNil(); err == nil || !errors.Is(err, why) || (plan.Errors{}).OrNil() != nil {
			t.Fatalf("%v, and without mistakes %v", err, (plan.Errors{}).OrNil())
		}
	})
}

// FuzzFingerprint: the same text has the same twelve digits, another text others, and a
// varied plan has none.
func FuzzFingerprint(f *testing.F) {
	f.Add(" ", "frame.length", "25 ft")
	f.Add("", "\x00", "")
	f.Fuzz(func(t *testing.T, more, path, value string) {
		if strings.Trim(more, " \n\t") != "" {
			more = "  "
		}
		read := func(text string) *plan.Plan {
			p, err := plan.Read("f", strings.NewReader(text))
			if err != nil {
				t.Fatal(err)
			}
			return p
		}
		p := read(small)
		print := p.Fingerprint()
		if len(print) != 12 || strings.Trim(print, "0123456789abcdef") != "" || (read(small+more).Fingerprint() == print) != (more == "") {
			t.Fatalf("%q", print)
		}
		v, err := p.Vary(path, value)
		if err != nil {
			return
		}
		if v.Fingerprint() != "" {
			t.Fatalf("varied, it is still %q", v.Fingerprint())
		}
	})
}
