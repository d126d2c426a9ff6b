package measure_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/floewright/lumber/measure"
)

// there goes out as JSON by itself and comes back.
func there[T comparable](t *testing.T, v T, want string) {
	t.Helper()
	text, err := json.Marshal(map[string]T{"x": v})
	if err != nil || string(text) != `{"x":"`+want+`"}` {
		t.Errorf("%v goes out as %s, %v, want %q", v, text, err, want)
	}
	var back map[string]T
	if err := json.Unmarshal(text, &back); err != nil || back["x"] != v {
		t.Errorf("%s comes back as %v, %v, want %v", text, back["x"], err, v)
	}
}

// The words are those of a check's JSON, alone too, and come back.
func TestWordsThereAndBack(t *testing.T) {
	there(t, measure.NoAnswer, "no answer")
	there(t, measure.Short, "short")
	there(t, measure.Holds, "holds")
	there(t, measure.Unknown, "unknown")
	there(t, measure.Assumed, "assumed")
	there(t, measure.Measured, "measured")
	there(t, measure.US, "us")
	there(t, measure.SI, "si")
	for s := measure.Unstated; s <= measure.Exact; s++ {
		there(t, s, s.String())
	}
	seen := map[string]bool{}
	for k := measure.Ratio; k <= measure.Count; k++ {
		there(t, k, k.String())
		if seen[k.String()] {
			t.Errorf("two kinds are called %q", k)
		}
		seen[k.String()] = true
	}
	var v measure.Verdict
	if err := v.UnmarshalText([]byte("not ruled out")); err != nil || v != measure.Holds {
		t.Errorf("what a hazard's verdict goes out as is %v, %v", v, err)
	}
	for name, to := range map[string]encoding.TextUnmarshaler{
		"verdict": &v, "knowledge": new(measure.Knowledge), "status": new(measure.Status), "kind of quantity": new(measure.Kind), "units": new(measure.System),
	} {
		err := to.UnmarshalText([]byte("perhaps"))
		var e *measure.Error
		if !errors.As(err, &e) || !errors.Is(err, measure.ErrName) || e.Field != name || e.Text != "perhaps" || !strings.Contains(e.Want, ", ") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if v != measure.Holds {
		t.Errorf("a word that is none changes the value to %v", v)
	}
}

// Parts of a check come back as they went out; the check itself does not.
func TestPartsComeBack(t *testing.T) {
	source := &measure.Source{Title: "A table <&>", Edition: "2nd", Locator: "row 3", Status: measure.Quoted}
	want := struct {
		A []measure.Assumption
		F []measure.Factor
		S *measure.Source
	}{
		[]measure.Assumption{{Name: "ice.age", Text: "23 hours", Known: measure.Measured, Decides: true}, {Name: "snow"}},
		[]measure.Factor{{Symbol: "CM", Name: "wet", Value: 0.85, Why: "soaked", Source: source}, {Value: math.NaN()}},
		source,
	}
	text, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	got := want
	got.A, got.F, got.S = nil, nil, nil
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, got, cmpopts.EquateNaNs()); d != "" {
		t.Errorf("%s (-want +got):\n%s", text, d)
	}
	for _, bad := range []string{`{"known": "perhaps"}`, `{"known": 2}`, `[]`} {
		if err := json.Unmarshal([]byte(bad), new(measure.Assumption)); err == nil {
			t.Errorf("assumption %s is read", bad)
		}
	}
	for _, bad := range []string{`{"value": "much"}`, `{"source": {"status": "perhaps"}}`} {
		if err := json.Unmarshal([]byte(bad), new(measure.Factor)); err == nil {
			t.Errorf("factor %s is read", bad)
		}
	}
	var unsaid measure.Assumption
	if err := json.Unmarshal([]byte(`{"path": "x"}`), &unsaid); err != nil || unsaid.Known != measure.Unknown || unsaid.Name != "x" {
		t.Errorf("%+v, %v", unsaid, err)
	}
	var c measure.Check
	err = json.Unmarshal([]byte(`{"name": "span", "value": 1, "limit": 2}`), &c)
	if err == nil || c.Name != "" || !strings.Contains(err.Error(), "not read back") {
		t.Errorf("a check is read back: %+v, %v", c, err)
	}
}

// A zero check is taken at its word: it has no answer, and 0 for value and limit.
func TestZeroCheckAsJSON(t *testing.T) {
	text, err := json.Marshal(measure.Check{})
	if err != nil || !strings.Contains(string(text), `"value":0,"limit":0`) || !strings.Contains(string(text), `"verdict":"no answer"`) {
		t.Errorf("%s, %v", text, err)
	}
	text, err = json.Marshal(measure.Refuse("x", measure.ErrUnknown))
	if err != nil || !strings.Contains(string(text), `"value":null,"limit":null`) {
		t.Errorf("%s, %v", text, err)
	}
}

// FuzzText: a text is read as a value that goes out as the same text, or is refused with the
// class of an unknown name.
func FuzzText(f *testing.F) {
	for _, s := range []string{"holds", "no answer", "read", "from memory", "length", "C deg", "si", "US", "", "measured"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, v := range []interface {
			encoding.TextMarshaler
			encoding.TextUnmarshaler
		}{new(measure.Verdict), new(measure.Knowledge), new(measure.Status), new(measure.Kind), new(measure.System)} {
			err := v.UnmarshalText([]byte(text))
			if err != nil {
				if !errors.Is(err, measure.ErrName) {
					t.Fatalf("%T %q: %v", v, text, err)
				}
				continue
			}
			back, err := v.MarshalText()
			if err != nil || string(back) != text && text != "not ruled out" {
				t.Fatalf("%T: %q goes out as %q, %v", v, text, back, err)
			}
		}
		_ = json.Unmarshal([]byte(text), new(measure.Assumption)) // neither panics
		_ = json.Unmarshal([]byte(text), new(measure.Factor))
	})
}
