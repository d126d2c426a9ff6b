package plan_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"example.org/floewright/frame/plan"
)

// demoBytes is an embedded plan's text.
func demoBytes(b *testing.B) []byte {
	b.Helper()
	in, err := plan.Demo("swim")
	if err != nil {
		b.Fatal(err)
	}
	var text bytes.Buffer
	if _, err := text.ReadFrom(in); err != nil {
		b.Fatal(err)
	}
	return text.Bytes()
}

// BenchmarkRead reads a plan with the place of every value.
func BenchmarkRead(b *testing.B) {
	text := demoBytes(b)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := plan.Read("swim.json", bytes.NewReader(text)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkReadJSON is the baseline: the standard library takes the same text apart,
// without places, units, ranges or names.
func BenchmarkReadJSON(b *testing.B) {
	text := demoBytes(b)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		var all any
		if err := json.Unmarshal(text, &all); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkVary puts another value into one field, as the search for what decides a
// verdict does some hundred times.
func BenchmarkVary(b *testing.B) {
	p, err := plan.Read("swim.json", bytes.NewReader(demoBytes(b)))
	if err != nil {
		b.Fatal(err)
	}
	values := plan.Plausible("loads.deck")
	if len(values) == 0 {
		b.Fatal("no plausible values")
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Vary("loads.deck", values[0]); err != nil {
			b.Fatal(err)
		}
	}
}
