package plan

import (
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

// Every line of the tables explains itself, its span reads, and its default lies
// inside what it accepts.
func TestTablesAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range Explain() {
		if e.Means == "" || e.Accepts == "" || !strings.HasSuffix(e.Means, ".") {
			t.Errorf("%s explains nothing: %q %q", e.Path, e.Means, e.Accepts)
		}
		if seen[e.Path] {
			t.Errorf("%s is listed twice", e.Path)
		}
		seen[e.Path] = true
		if e.Required && e.Default != "" {
			t.Errorf("%s is required and has a default", e.Path)
		}
		if _, bounds, ok := strings.Cut(e.Accepts, " from "); ok && !strings.Contains(e.Accepts, "number") {
			kind, _, _ := strings.Cut(strings.TrimPrefix(e.Accepts, "a list [ ] of texts, each "), " from ")
			lo, hi, _ := strings.Cut(bounds, " to ")
			for k := measure.Length; k <= measure.Percent; k++ {
				if article(k.String()) != kind {
					continue
				}
				a, err1 := k.Parse(lo)
				b, err2 := k.Parse(hi)
				if err1 != nil || err2 != nil || !(a < b) {
					t.Errorf("%s: span %q is no interval", e.Path, e.Accepts)
				}
				if e.Default != "" {
					if x, err := k.Parse(e.Default); err != nil || x < a || x > b {
						t.Errorf("%s: default %q is outside %q", e.Path, e.Default, e.Accepts)
					}
				}
			}
		}
	}
	for _, e := range Explain() {
		for _, v := range e.Plausible {
			one := func(key string) member {
				return member{key: key, value: &node{form: list, items: []*node{{form: object}}}}
			}
			p := Plan{root: &node{form: object, members: []member{
				one("people"), one("weights"), one("floats"),
				{key: "hardware", value: &node{form: object, members: []member{one("ties"), one("drums")}}},
			}}}
			path := strings.ReplaceAll(e.Path, "[]", "[1]")
			_, err := p.Vary(path, v)
			if err != nil && strings.Contains(err.Error(), path+": \"") {
				t.Errorf("%s: plausible value %q: %v", e.Path, v, err)
			}
		}
	}
	if len(seen) < 80 {
		t.Errorf("only %d fields", len(seen))
	}
}

// A plan without any optional field gets every default, none of them lost to a
// reading error.
func TestDefaultsRead(t *testing.T) {
	r := &reader{file: "none"}
	var p Plan
	read(r, &node{form: absent}, "", &p, planFields)
	if len(r.errors) != 0 {
		t.Fatal(r.errors)
	}
	if !Has(p.Loads.Flotation) || !Has(p.Loads.Deck) || !Has(p.Loads.Spot) || !Has(p.Frame.Moisture) || p.Units.Value != "us" || p.Frame.Rims.Plies.Value != 1 {
		t.Errorf("a default is missing: %+v", p)
	}
}
