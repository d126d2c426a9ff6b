package dock_test

import (
	"bytes"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
)

// BenchmarkReport makes the whole report of both demos, beside what its envelope
// alone takes ([BenchmarkEnvelope]).
func BenchmarkReport(b *testing.B) {
	for _, demo := range plan.Demos() {
		b.Run(demo, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				in, err := plan.Demo(demo)
				if err != nil {
					b.Fatal(err)
				}
				d, err := dock.Read(demo, in)
				if err != nil {
					b.Fatal(err)
				}
				var out bytes.Buffer
				if err := reported(b, d, d.Units()).WriteText(&out); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
