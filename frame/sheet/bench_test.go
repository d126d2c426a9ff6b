package sheet_test

import (
	"html/template"
	"io"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
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

// All pages of a demo, from a report that was made, under 40 ms.
func BenchmarkOf(b *testing.B) {
	in, err := plan.Demo("swim")
	if err != nil {
		b.Fatal(err)
	}
	d, err := dock.Read("swim", in)
	if err != nil {
		b.Fatal(err)
	}
	r := reported(b, d, measure.US)
	b.ReportAllocs()
	for b.Loop() {
		doc, err := sheet.Of(d, r, day())
		if err != nil {
			b.Fatal(err)
		}
		if _, err := doc.Files(); err != nil {
			b.Fatal(err)
		}
	}
}

// The words of the same pages by html/template, neither folded nor laid out on sides.
func BenchmarkOfByTemplate(b *testing.B) {
	page, err := pagesOf(b, "swim", measure.US).HTML()
	if err != nil {
		b.Fatal(err)
	}
	words := strings.Split(plain(page), "\n")
	t := template.Must(template.New("page").Parse(`<!DOCTYPE html>{{range .}}<p>{{.}}</p>{{end}}`))
	b.ReportAllocs()
	for b.Loop() {
		if err := t.Execute(io.Discard, words); err != nil {
			b.Fatal(err)
		}
	}
}
