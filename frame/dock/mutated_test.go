package dock_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// twists are values that nobody means, or that somebody might.
var twists = []any{
	"unknown", "", "NaN", "inf", "-1 in", "0 in", "1e300 m", "3,660 mm", "12", "12 ft 6", "99 kg", "-40 F", "2x8", "no", "yes", "across", "drum", "block",
	"2026-13-40", "2027-01-16", 0, -1, 3, 1e9, 1.5, true, nil,
	[]any{},
	map[string]any{},
	[]any{"1 ft", "2 ft"},
	strings.Repeat("x", 300), "\u0000", "½ in",
}

// copied returns a value that shares nothing with another.
func copied(v any) any {
	switch v := v.(type) {
	case map[string]any:
		out := make(map[string]any, len(v))
		for k, x := range v {
			out[k] = copied(x)
		}
		return out
	case []any:
		out := make([]any, len(v))
		for i, x := range v {
			out[i] = copied(x)
		}
		return out
	}
	return v
}

// twist changes one value somewhere in a plan: another one, none, twice, or another's.
func twist(r *rand.Rand, v any) any {
	var holders []func()
	var values []any
	var walk func(any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			keys := make([]string, 0, len(v))
			for k := range v {
				keys = append(keys, k)
			}
			slices.Sort(keys)
			for _, k := range keys {
				values = append(values, v[k])
				holders = append(holders, func() {
					switch r.IntN(9) {
					case 0:
						delete(v, k)
					case 1:
						v[k+"x"] = v[k]
					case 2:
						v[k] = copied(values[r.IntN(len(values))]) // it may hold this very place
					case 3, 4:
						v[k] = "unknown"
					default:
						v[k] = twists[r.IntN(len(twists))]
					}
				})
				walk(v[k])
			}
		case []any:
			for i := range v {
				values = append(values, v[i])
				holders = append(holders, func() {
					if r.IntN(3) == 0 {
						v[i] = v[r.IntN(len(v))]
						return
					}
					v[i] = twists[r.IntN(len(twists))]
				})
				walk(v[i])
			}
		}
	}
	walk(v)
	for range 1 + r.IntN(3) {
		holders[r.IntN(len(holders))]()
	}
	return v
}

// mutable returns the plans that are twisted: both demos, and a new one.
func mutable(t testing.TB) []string {
	t.Helper()
	var texts []string
	for _, name := range plan.Demos() {
		texts = append(texts, demoText(t, name))
	}
	fresh, err := plan.Start{Length: 5, Width: 3, Girth: 1.85, Long: 0.9, Mass: 10, Drums: 6, Units: measure.SI}.JSON()
	if err != nil {
		t.Fatal(err)
	}
	return append(texts, string(fresh))
}

// mutate twists a plan and reports whether it could be read: it has mistakes that are
// named, or a report without a number that is none, in every form.
func mutate(t *testing.T, texts []string, seed uint64) bool {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 11))
	var v any
	if err := json.Unmarshal([]byte(texts[seed%uint64(len(texts))]), &v); err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(twist(r, v))
	if err != nil {
		t.Fatal(err)
	}
	if r.IntN(12) == 0 {
		text = text[:r.IntN(len(text))]
	}
	d, err := dock.Read("mutated", bytes.NewReader(text))
	if err != nil {
		if !strings.HasPrefix(err.Error(), "mutated:") {
			t.Errorf("plan %d: %v", seed, err)
		}
		return false
	}
	report := reported(t, d, d.Units())
	for name, write := range map[string]func(io.Writer) error{
		"text": report.WriteText, "json": report.WriteJSON, "cut": report.WriteCutList, "purchase": report.WritePurchaseList,
		"hardware": report.WriteHardwareList, "carry": report.WriteCarryList, "comparison": dock.Compare(report, report).WriteText,
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Errorf("plan %d, %s: %v", seed, name, err)
		}
		for _, bad := range []string{"NaN", "+Inf", "-Inf", "no number", "no finite number", "%!"} {
			if at := strings.Index(b.String(), bad); at >= 0 && !bytes.Contains(text, []byte(bad)) {
				t.Errorf("plan %d, %s holds %q: %s", seed, name, bad, around(b.String(), at))
			}
		}
	}
	return true
}

// TestMutatedPlans twists two hundred plans.
func TestMutatedPlans(t *testing.T) {
	n := uint64(200)
	if testing.Short() {
		n = 24
	}
	texts := mutable(t)
	read := uint64(0)
	for seed := range n {
		if mutate(t, texts, seed) {
			read++
		}
	}
	if 5*read < n {
		t.Errorf("only %d of %d could be read", read, n)
	}
}

// FuzzMutated twists further ones.
func FuzzMutated(f *testing.F) {
	texts := mutable(f)
	f.Add(uint64(1000))
	f.Add(uint64(2001))
	f.Fuzz(func(t *testing.T, seed uint64) { mutate(t, texts, seed) })
}

func around(s string, at int) string {
	return fmt.Sprintf("...%s...", s[max(0, at-200):min(len(s), at+100)])
}
