package arch

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// rooms are what the page of a public package must have, each the word of a heading.
var rooms = []string{"model", "assumptions", "limits", "sources", "example"}

// page returns the package's comment and the file that holds it.
func page(p *pkg) (text, file string) {
	for _, f := range p.code {
		if strings.HasPrefix(f.Doc.Text(), "Package "+p.Name+" ") {
			return f.Doc.Text(), path.Base(p.fset.Position(f.Package).Filename)
		}
	}
	return "", ""
}

// under returns the text below each heading of a comment, by the heading in small letters.
func under(text string) map[string]string {
	out := map[string]string{}
	at := ""
	for line := range strings.Lines(text) {
		if head, ok := strings.CutPrefix(line, "# "); ok {
			at = strings.ToLower(strings.TrimSpace(head))
			continue
		}
		out[at] += line
	}
	return out
}

// absent returns the rooms that a page lacks, or that say less than a sentence.
func absent(text string) []string {
	var out []string
	for _, room := range rooms {
		found := false
		for head, body := range under(text) {
			found = found || slices.Contains(strings.Fields(head), room) && len(strings.TrimSpace(body)) > 20
		}
		if !found {
			out = append(out, room)
		}
	}
	return out
}

// example returns the code of a page's example.
func example(text string) string {
	var b strings.Builder
	for line := range strings.Lines(under(text)["example"]) {
		if code, ok := strings.CutPrefix(line, "\t"); ok {
			b.WriteString(code)
		} else if strings.TrimSpace(line) == "" {
			b.WriteString("\n")
		}
	}
	return strings.TrimSpace(b.String())
}

// errNoUse is the error of an example that does not use its package.
var errNoUse = errors.New("it does not use its package")

// compiles type-checks the code of an example as the body of a function that returns an
// error. Variables that nothing uses are lawful: an example may end before their use.
func compiles(m *tree, gc types.Importer, packages []*types.Package, of, code string) error {
	var b strings.Builder
	b.WriteString("package main\nimport (\n")
	for _, std := range []string{"context", "fmt", "math", "os", "strings", "time"} {
		fmt.Fprintf(&b, "%q\n", std)
	}
	for _, p := range packages {
		fmt.Fprintf(&b, "%q\n", p.Path())
	}
	fmt.Fprintf(&b, "%q\n)\nfunc _() error {\n%s\nreturn nil\n}\n", "gonum.org/v1/gonum/spatial/r3", code)
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, "example.go", b.String(), 0)
	if err != nil {
		return err
	}
	var first error
	conf := types.Config{Importer: gc, Error: func(err error) {
		var e types.Error
		if first == nil && !(errors.As(err, &e) && e.Soft) {
			first = err
		}
	}}
	info := &types.Info{Uses: map[*ast.Ident]types.Object{}}
	_, _ = conf.Check("main", fset, []*ast.File{f}, info) // its errors went to first
	if first != nil {
		return first
	}
	for _, obj := range info.Uses {
		if obj.Pkg() != nil && obj.Pkg().Path() == of {
			return nil
		}
	}
	return errNoUse
}

// exampleImporter returns what the examples import.
func exampleImporter(t *testing.T) types.Importer {
	t.Helper()
	gc, err := exported()
	if err != nil {
		t.Fatal(err)
	}
	return gc
}

// TestPagesHaveRooms: doc.go of every public package has the package's comment with its
// model, assumptions, limits, sources and an example that compiles.
func TestPagesHaveRooms(t *testing.T) {
	m, gc := module(t), exampleImporter(t)
	for _, p := range m.packages {
		if !p.public() {
			continue
		}
		text, file := page(p)
		if file != "doc.go" {
			t.Errorf("%s: the package's comment is in %q, not in doc.go", p.rel, file)
		}
		for _, room := range absent(text) {
			t.Errorf("%s/doc.go: no heading %q, or nothing below it", p.rel, room)
		}
		if err := compiles(m, gc, typedPackages(t), p.ImportPath, example(text)); err != nil {
			t.Errorf("%s/doc.go: example: %v\n%s", p.rel, err, example(text))
		}
	}
}

func TestPagesHaveRoomsCatches(t *testing.T) {
	const whole = "Package fake is.\n\n# Model\n\nIt is a stiff body on water.\n\n# Assumptions and limits\n\nNeither wind nor waves.\n\n" +
		"# Sources\n\nArchimedes, On Floating Bodies.\n\n# Example\n\nThus:\n\n\tx := 2\n\n\t_ = x\n"
	if got := absent(whole); len(got) > 0 {
		t.Errorf("the whole page lacks %q", got)
	}
	for _, room := range rooms {
		bare := regexp.MustCompile(`(?i)`+room).ReplaceAllString(whole, "thing")
		if got := absent(bare); !slices.Contains(got, room) {
			t.Errorf("without %s: %q", room, got)
		}
	}
	if got := absent(strings.Replace(whole, "Archimedes, On Floating Bodies.", "None.", 1)); !slices.Equal(got, []string{"sources"}) {
		t.Errorf("with empty sources: %q", got)
	}
	if got, want := example(whole), "x := 2\n\n_ = x"; got != want {
		t.Errorf("example %q, want %q", got, want)
	}
	m, gc := module(t), exampleImporter(t)
	measure := m.module + "/lumber/measure"
	for code, lawful := range map[string]bool{
		"x := 2 * measure.Inch": true,
		"x, err := measure.Length.Parse(\"2 in\")\nif err != nil {\nreturn err\n}": true,
		"x := 2 * measure.Inches":             false,
		"x := measure.Length.Parse(\"2 in\")": false,
		"x := 2":                              false,
		"x :=":                                false,
		"":                                    false,
	} {
		if err := compiles(m, gc, typedPackages(t), measure, code); (err == nil) != lawful {
			t.Errorf("%q: %v", code, err)
		}
	}
}
