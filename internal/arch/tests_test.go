package arch

import (
	"fmt"
	"go/ast"
	"go/doc"
	"slices"
	"strings"
	"testing"
)

// checkedOutside lists the packages whose formulas outside values check, once
// they exist: each runs the table of internal/published in TestPublished. gathering are
// those that put the others together, and whose own formulas are few.
var (
	checkedOutside = []string{
		"float", "float/moor", "frame", "frame/dock", "frame/layout", "frame/rack", "frame/sheet", "ice", "ice/action", "ice/season", "lumber", "lumber/fasten", "lumber/measure",
	}
	gathering = []string{"frame/dock", "frame/plan", "frame/sheet"}
)

// takesData returns the name of an exported function or method that takes
// data, "" if the package has none.
func takesData(p *pkg) string {
	for _, f := range p.code {
		for _, d := range f.Decls {
			if d, ok := d.(*ast.FuncDecl); ok && reachable(d) && d.Type.Params.NumFields() > 0 {
				return strings.TrimPrefix(receiver(d)+"."+d.Name.Name, ".")
			}
		}
	}
	return ""
}

// missingTests returns one line per kind of test that a package owes and lacks.
func missingTests(p *pkg) []string {
	var fuzz, published bool
	for _, f := range slices.Concat(p.tests, p.xtest) {
		for _, d := range f.Decls {
			d, ok := d.(*ast.FuncDecl)
			if !ok || d.Recv != nil {
				continue
			}
			fuzz = fuzz || strings.HasPrefix(d.Name.Name, "Fuzz") && calls(d, "Fuzz")
		}
	}
	for _, f := range p.xtest {
		uses := slices.ContainsFunc(f.Imports, func(i *ast.ImportSpec) bool {
			return strings.HasSuffix(i.Path.Value, `/internal/published"`)
		})
		for _, d := range f.Decls {
			d, ok := d.(*ast.FuncDecl)
			published = published || ok && d.Name.Name == "TestPublished" && uses && calls(d, "Of")
		}
	}
	example := slices.ContainsFunc(doc.Examples(p.xtest...), func(e *doc.Example) bool {
		return e.Output != "" // one without output is compiled and never run
	})

	var out []string
	if name := takesData(p); name != "" {
		if !fuzz {
			out = append(out, fmt.Sprintf("%s: %s takes data, and no fuzz target tries it", p.rel, name))
		}
		if !example {
			out = append(out, fmt.Sprintf("%s: %s takes data, and no Example with output shows its use in the external test package", p.rel, name))
		}
	}
	if slices.Contains(checkedOutside, p.rel) && !published {
		out = append(out, fmt.Sprintf("%s: no TestPublished in the external test package that runs published.Of", p.rel))
	}
	return out
}

// calls reports whether a function's body calls a method or a package's
// function of the given name.
func calls(d *ast.FuncDecl, name string) bool {
	found := false
	ast.Inspect(d, func(n ast.Node) bool {
		if call, ok := n.(*ast.CallExpr); ok {
			if s, ok := call.Fun.(*ast.SelectorExpr); ok && s.Sel.Name == name {
				found = true
			}
		}
		return true
	})
	return found
}

func TestTestsPresent(t *testing.T) {
	for _, p := range module(t).packages {
		if !p.public() {
			continue
		}
		for _, line := range missingTests(p) {
			t.Error(line)
		}
	}
}

func TestTestsPresentCatches(t *testing.T) {
	const (
		code      = "package fake\nfunc F(x float64) float64 { return x }"
		method    = "package fake\ntype T int\nfunc (T) F(x int) {}"
		silent    = "package fake\nfunc F() {}\ntype t int\nfunc (t) F(x int) {}"
		fuzz      = "package fake_test\nfunc FuzzF(f *testing.F) { f.Fuzz(func(t *testing.T, x float64) {}) }"
		emptyFuzz = "package fake_test\nfunc FuzzF(f *testing.F) {}"
		example   = "package fake_test\nimport \"fmt\"\nfunc ExampleF() {\n\tfmt.Println(1)\n\t// Output: 1\n}"
		mute      = "package fake_test\nimport \"fmt\"\nfunc ExampleF() {\n\tfmt.Println(1)\n}"
		outside   = "package fake_test\nimport \"example.org/floewright/internal/published\"\nfunc TestPublished(t *testing.T) { published.Of(\"float\") }"
		idle      = "package fake_test\nfunc TestPublished(t *testing.T) {}"
	)
	for _, c := range []struct {
		rel, code string
		tests     []string
		want      int
	}{
		{"other", code, nil, 2},
		{"other", method, nil, 2},
		{"other", silent, nil, 0},
		{"other", code, []string{fuzz}, 1},
		{"other", code, []string{example}, 1},
		{"other", code, []string{emptyFuzz, mute}, 2},
		{"other", code, []string{fuzz, example}, 0},
		{"float", code, []string{fuzz, example}, 1},
		{"float", code, []string{fuzz, example, idle}, 1},
		{"float", code, []string{fuzz, example, outside}, 0},
		{"float", silent, nil, 1},
	} {
		p := parsed(t, c.code)
		p.rel = c.rel
		for _, source := range c.tests {
			p.xtest = append(p.xtest, parsed(t, source).code...)
		}
		if got := missingTests(p); len(got) != c.want {
			t.Errorf("%s with %d tests: want %d lines, got %q", c.rel, len(c.tests), c.want, got)
		}
	}
}
