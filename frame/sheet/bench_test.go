package sheet_test

import (
	"testing"

	"example.org/floewright/lumber/measure"
)

// The whole set of an ordinary dock, pictures and pages, is drawn while a builder
// waits for the key to come up.
func BenchmarkDocument(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := demoDocument(b, measure.US).Files(); err != nil {
			b.Fatal(err)
		}
	}
}
