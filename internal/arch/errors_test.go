package arch

import (
	"fmt"
	"go/ast"
	"testing"
)

// classless returns one line for every measure.Error of a package that is written
// without a class: errors.Is finds nothing in it.
func classless(p *pkg) []string {
	var out []string
	for _, f := range p.code {
		ast.Inspect(f, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok {
				return true
			}
			s, ok := lit.Type.(*ast.SelectorExpr)
			if !ok || s.Sel.Name != "Error" || fmt.Sprint(s.X) != "measure" {
				return true
			}
			for _, e := range lit.Elts {
				if kv, ok := e.(*ast.KeyValueExpr); ok && fmt.Sprint(kv.Key) == "Class" {
					return true
				}
			}
			out = append(out, fmt.Sprintf("%s: a measure.Error without a Class", p.rel))
			return true
		})
	}
	return out
}

func TestErrorsHaveClass(t *testing.T) {
	for _, p := range module(t).packages {
		for _, line := range classless(p) {
			t.Error(line)
		}
	}
	const code = "package fake\nvar a = &measure.Error{Field: \"x\"}\nvar b = measure.Error{Class: measure.ErrName}\nvar c = &other.Error{}"
	if got := classless(parsed(t, code)); len(got) != 1 {
		t.Errorf("of three errors, one without a class: %q", got)
	}
}
