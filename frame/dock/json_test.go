package dock_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the lists under testdata anew")

// golden compares an output with a file of our own making: it pins the form, not
// the numbers, which other tests check by hand.
func golden(t *testing.T, name string, write func(io.Writer) error) {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), b.String()); d != "" {
		t.Errorf("%s (-want +got):\n%s", name, d)
	}
}

// TestGolden pins the forms in which reports and their lists are written.
func TestGolden(t *testing.T) {
	for _, name := range []string{"swim", "work"} {
		s := listsOf(t, demoText(t, name))
		r := &dock.Report{Name: name, Units: s.Units, Shop: s}
		golden(t, name+"_lists.json", r.WriteJSON)
		golden(t, name+"_cut.csv", r.WriteCutList)
		golden(t, name+"_purchase.csv", r.WritePurchaseList)
		golden(t, name+"_carry.csv", r.WriteCarryList)
		golden(t, name+"_lists.txt", s.WriteText)
	}
	short := listsOf(t, demoText(t, "swim", `"count": 14, "price": 14.5`, `"count": 13, "price": 14.5`, `"stock": [`,
		`"shop": { "tax": "7 %", "delivery": 85, "items": [ { "name": "bolt, \"long\"", "need": 24, "have": "unknown", "price": 3 },
		{ "name": "a name that goes on and on, well past the forty columns of the list", "need": 3, "lot": 2, "price": 1.5, "mass": "1 lb" } ] }, "stock": [`))
	r := &dock.Report{Shop: short}
	golden(t, "short_hardware.csv", r.WriteHardwareList)
	golden(t, "short_cut.csv", r.WriteCutList)
	golden(t, "short_lists.txt", short.WriteText)
	golden(t, "check.json", invented().WriteJSON)
	golden(t, "empty_purchase.csv", (&dock.Report{}).WritePurchaseList)
}

// invented is a report with everything that a check may hold.
func invented() *dock.Report {
	rule := &measure.Source{Title: "A rule <&>", Edition: "2020", Locator: "Table 1", Status: measure.Read}
	rests := []measure.Assumption{{Name: "frame.moisture", Text: "60 %", Known: measure.Assumed, Decides: true}, {Name: "site.water", Known: measure.Unknown}}
	return &dock.Report{
		Name: "Invented", Units: measure.SI, Deciding: rests[:1], Assumed: rests[1:], Cautions: []dock.Caution{{Text: "wear a life jacket", Source: "us"}},
		Topics: []dock.Topic{{Title: "EVERYTHING", Checks: []measure.Check{
			{
				Name: "holds", Kind: measure.Length, Value: 0.123456789, Limit: 1e-12, AtLeast: true, Rule: rule, Rests: rests, Notes: []string{"a note"},
				Factors: []measure.Factor{{Symbol: "CM", Name: "wet service", Value: 0.85, Why: "soaked", Source: rule}, {Symbol: "x", Value: math.NaN()}},
			},
			{Name: "short", Kind: measure.Stress, Value: 12345678.9, Limit: 1e6, Rule: rule},
			{Name: "ice", Kind: measure.Length, Value: 0.3, Limit: 0.2, AtLeast: true, Rule: rule, Hazard: true},
			{Name: "infinite", Value: math.Inf(1), Limit: math.Inf(-1), Rule: rule},
			measure.Refuse("refused", &measure.Error{Field: "x", Class: measure.ErrNotComputed}),
			measure.Refuse("other", errors.New("something else")),
		}}},
	}
}

func listsOf(t testing.TB, text string) *dock.Shop {
	t.Helper()
	d, err := dock.Read("test.json", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	s, err := d.Shop(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestJSONHasItsSchema: what is written is what the schema's file says, key by key.
func TestJSONHasItsSchema(t *testing.T) {
	b, err := os.ReadFile("report.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	var schema map[string]any
	if err := json.Unmarshal(b, &schema); err != nil {
		t.Fatal(err)
	}
	if n := schema["properties"].(map[string]any)["schema"].(map[string]any)["enum"].([]any)[0]; n != float64(dock.Schema) {
		t.Errorf("the file describes schema %v", n)
	}
	for name, r := range map[string]*dock.Report{
		"swim": report(t, demoText(t, "swim")), "work": report(t, demoText(t, "work")), "invented": invented(), "none": {},
	} {
		var first, again bytes.Buffer
		if err := errors.Join(r.WriteJSON(&first), r.WriteJSON(&again)); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first.Bytes(), again.Bytes()) {
			t.Errorf("%s: written twice, it differs", name)
		}
		var v map[string]any
		if err := json.Unmarshal(first.Bytes(), &v); err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults(schema, schema, v, name) {
			t.Error(fault)
		}
		n := len(r.Twelve)
		for _, topic := range r.Topics {
			n += len(topic.Checks)
		}
		if got := strings.Count(first.String(), `"verdict"`); got != n {
			t.Errorf("%s: %d verdicts, want %d", name, got, n)
		}
		if bytes.Contains(first.Bytes(), []byte("NaN")) {
			t.Errorf("%s: a number that is none", name)
		}
	}
	for _, bad := range []string{`{}`, `{"schema": 2}`} {
		var v map[string]any
		_ = json.Unmarshal([]byte(bad), &v)
		if len(faults(schema, schema, v, "bad")) == 0 {
			t.Errorf("%s passes", bad)
		}
	}
}

// faults checks a value by the few words of JSON Schema that the file uses; a key
// that it does not name is a fault here.
func faults(root, s map[string]any, v any, at string) (out []string) {
	if ref, ok := s["$ref"].(string); ok {
		return faults(root, root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any), v, at)
	}
	form := map[bool]string{true: "null"}[v == nil]
	switch v := v.(type) {
	case map[string]any:
		form = "object"
		props := s["properties"].(map[string]any)
		for _, key := range s["required"].([]any) {
			if _, ok := v[key.(string)]; !ok {
				out = append(out, fmt.Sprintf("%s has no %v", at, key))
			}
		}
		for key, inner := range v {
			if p, ok := props[key].(map[string]any); ok {
				out = append(out, faults(root, p, inner, at+"."+key)...)
			} else {
				out = append(out, fmt.Sprintf("%s: the schema has no %q", at, key))
			}
		}
	case []any:
		form = "array"
		for i, inner := range v {
			out = append(out, faults(root, s["items"].(map[string]any), inner, fmt.Sprintf("%s[%d]", at, i))...)
		}
	case string:
		form = "string"
	case bool:
		form = "boolean"
	case float64:
		form = "number"
		if fmt.Sprint(s["type"]) == "integer" || fmt.Sprint(s["type"]) == "[integer null]" {
			if v == math.Trunc(v) {
				form = "integer"
			}
		}
	}
	types, many := s["type"].([]any)
	if !many {
		types = []any{s["type"]}
	}
	if !slices.Contains(types, any(form)) {
		out = append(out, fmt.Sprintf("%s is %s, want %v", at, form, types))
	}
	if enum, ok := s["enum"].([]any); ok && !slices.Contains(enum, v) {
		out = append(out, fmt.Sprintf("%s is %v, want one of %v", at, v, enum))
	}
	return out
}

// TestUnitsOfKinds: a unit that JSON names reads as one of its kind.
func TestUnitsOfKinds(t *testing.T) {
	for k := measure.Length; k < measure.Percent; k++ {
		var b bytes.Buffer
		r := &dock.Report{Topics: []dock.Topic{{Checks: []measure.Check{{Kind: k}}}}}
		if err := r.WriteJSON(&b); err != nil {
			t.Fatal(err)
		}
		_, unit, _ := strings.Cut(b.String(), `"unit": "`)
		unit, _, _ = strings.Cut(unit, `"`)
		if k == measure.Angle && unit == "rad" {
			continue // nobody writes radians into a plan
		}
		if x, err := k.Parse("1 " + unit); err != nil || math.Abs(x-1) > 1e-12 {
			t.Errorf("%v: %q reads %g, %v", k, unit, x, err)
		}
	}
}

// FuzzShop: whatever stands in the shop or the stock, no list holds a number that
// is none, nothing is cut twice or longer than its board, and the bill adds up.
func FuzzShop(f *testing.F) {
	f.Add("10 ft 0-1/2 in", 14, 14.5, "1/8 in", "0 in", 1, "200 lb")
	f.Add("11 in", 200, 0.0, "10 mm", "300 mm", 7, "5 kg")
	f.Add("9 ft 6-1/4 in", 3, 99999.0, "0 mm", "1/8 in", 999, "unknown")
	f.Fuzz(func(t *testing.T, length string, count int, price float64, kerf, trim string, lot int, sled string) {
		text := demoText(t, "swim", `"length": "10 ft 0-1/2 in", "count": 14, "price": 14.5`,
			fmt.Sprintf(`"length": %q, "count": %d, "lot": %d, "price": %g`, length, count, lot, price),
			`"stock": [`, fmt.Sprintf(`"shop": { "kerf": %q, "trim": %q, "sled_load": %q, "tax": "7 %%", "delivery": 3 }, "stock": [`, kerf, trim, sled))
		d, err := dock.Read("f", strings.NewReader(text))
		if err != nil {
			return
		}
		s, err := d.Shop(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		c := &s.Cutting
		pieces := 0
		for _, b := range c.Boards {
			end := 0.0
			for _, p := range b.Pieces {
				if p.At < end-1e-9 || p.At+p.Length > b.Length+1e-9 {
					t.Fatalf("%+v does not lie on %+v", p, b)
				}
				end, pieces = p.At+p.Length, pieces+1
			}
		}
		for _, w := range c.Uncut {
			pieces += w.Count
		}
		for _, w := range c.Wants {
			pieces -= w.Count
		}
		if c.Err == nil && pieces != 0 {
			t.Errorf("%d pieces too many", pieces)
		}
		sum := 0.0
		for _, r := range s.Bill.Rows {
			sum += r.Cost
			if r.Err == nil && r.Have+r.Buy-r.Spare != r.Need {
				t.Errorf("%+v does not add up", r)
			}
		}
		if math.Abs(sum-s.Bill.Goods) > 0.006 || (s.Bill.Err == nil) == math.IsNaN(s.Bill.Total) {
			t.Errorf("rows come to %g: %+v", sum, s.Bill)
		}
		r := &dock.Report{Shop: s}
		for _, write := range []func(io.Writer) error{r.WriteJSON, r.WriteCutList, r.WritePurchaseList, r.WriteHardwareList, r.WriteCarryList, s.WriteText} {
			var b bytes.Buffer
			if err := write(&b); err != nil || strings.Contains(b.String(), "NaN") {
				t.Fatalf("%v:\n%s", err, b.String())
			}
		}
	})
}

// TestMarshalJSON: a report within another value is the object that WriteJSON writes,
// with what is not known null.
func TestMarshalJSON(t *testing.T) {
	for _, r := range []*dock.Report{invented(), {}, report(t, demoText(t, "work"))} {
		var want bytes.Buffer
		if err := r.WriteJSON(&want); err != nil {
			t.Fatal(err)
		}
		whole, err := json.MarshalIndent(map[string]any{"report": r}, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		var got struct{ Report any }
		var direct any
		if err := json.Unmarshal(whole, &got); err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(want.Bytes(), &direct); err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(direct, got.Report); d != "" {
			t.Errorf("%s (-written +within):\n%s", r.Name, d)
		}
	}
}
