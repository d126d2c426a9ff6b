package measure_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/floewright/lumber/measure"
)

// BenchmarkParse reads a builder's length.
func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := measure.Length.Parse("12 ft 6-1/4 in"); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkParseScan is the baseline: a scan for that one way of writing it, which says
// nothing of what it cannot read.
func BenchmarkParseScan(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		var ft, in, part, of int
		if n, err := fmt.Sscanf("12 ft 6-1/4 in", "%d ft %d-%d/%d in", &ft, &in, &part, &of); n != 4 || err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPrint prints a length to a sixteenth of an inch.
func BenchmarkPrint(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if !strings.HasPrefix(measure.Length.Format(3.8163, measure.US), "12 ft 6") {
			b.Fatal("another length")
		}
	}
}
