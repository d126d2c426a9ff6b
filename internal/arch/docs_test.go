package arch

import (
	"fmt"
	"go/ast"
	"go/token"
	"strings"
	"testing"
)

// undocumented returns one line per exported name of a package that has no doc
// comment, and one if the package itself has none. A comment on a group of
// constants or variables documents all of them.
func undocumented(p *pkg) []string {
	var out []string
	miss := func(pos token.Pos, what string) {
		out = append(out, fmt.Sprintf("%s: %s has no doc comment", p.fset.Position(pos), what))
	}
	says := false
	for _, f := range p.code {
		if strings.HasPrefix(f.Doc.Text(), "Package "+p.Name+" ") {
			says = true
		}
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if reachable(d) && d.Doc.Text() == "" {
					miss(d.Pos(), d.Name.Name)
				}
			case *ast.GenDecl:
				group := d.Doc.Text() != ""
				for _, s := range d.Specs {
					switch s := s.(type) {
					case *ast.TypeSpec:
						alone := group && !d.Lparen.IsValid()
						if s.Name.IsExported() && !alone && s.Doc.Text() == "" {
							miss(s.Pos(), s.Name.Name)
						}
					case *ast.ValueSpec:
						for _, n := range s.Names {
							if n.IsExported() && !group && s.Doc.Text() == "" && s.Comment.Text() == "" {
								miss(n.Pos(), n.Name)
							}
						}
					}
				}
			}
		}
	}
	if !says {
		out = append(out, fmt.Sprintf("%s: no package comment that begins %q", p.rel, "Package "+p.Name))
	}
	return out
}

// reachable reports whether a function is exported, or a method that a caller
// can name: exported, on an exported type.
func reachable(d *ast.FuncDecl) bool {
	if !d.Name.IsExported() {
		return false
	}
	r := receiver(d)
	return r == "" || ast.IsExported(r)
}

// receiver returns the name of a method's type, "" for a function.
func receiver(d *ast.FuncDecl) string {
	if d.Recv == nil || len(d.Recv.List) == 0 {
		return ""
	}
	e := d.Recv.List[0].Type
	for {
		switch t := e.(type) {
		case *ast.StarExpr:
			e = t.X
		case *ast.ParenExpr:
			e = t.X
		case *ast.IndexExpr:
			e = t.X
		case *ast.IndexListExpr:
			e = t.X
		case *ast.Ident:
			return t.Name
		default:
			return ""
		}
	}
}

func TestDocumented(t *testing.T) {
	for _, p := range module(t).packages {
		if !p.public() {
			continue
		}
		for _, line := range undocumented(p) {
			t.Error(line)
		}
	}
}

func TestDocumentedCatches(t *testing.T) {
	for source, want := range map[string]int{
		"package fake":                                                                                          1,
		"// About nothing.\npackage fake":                                                                       1,
		"// Package other is.\npackage fake":                                                                    1,
		"// Package fake is.\npackage fake":                                                                     0,
		"// Package fake is.\npackage fake\nfunc F() {}\nfunc f() {}":                                           1,
		"// Package fake is.\npackage fake\n// F is.\nfunc F() {}":                                              0,
		"// Package fake is.\npackage fake\ntype T struct{}\nfunc (T) M() {}":                                   2,
		"// Package fake is.\npackage fake\n// T is.\ntype T[E any] struct{}\nfunc (*T[E]) M() {}":              1,
		"// Package fake is.\npackage fake\ntype t struct{}\nfunc (t) M() {}":                                   0,
		"// Package fake is.\npackage fake\n// Types.\ntype (\nT int\n)":                                        1,
		"// Package fake is.\npackage fake\nvar A, B int":                                                       2,
		"// Package fake is.\npackage fake\nconst (\nA = 1 // of A\nB = 2\n)":                                   1,
		"// Package fake is.\npackage fake\n// Both.\nconst (\nA = 1\nB = 2\n)":                                 0,
		"// Package fake is.\npackage fake\n//go:noinline\nfunc F() {}":                                         1,
		"// Package fake is.\npackage fake\nvar a int\nconst (\n// B is.\nB = 1\nc = 2\n)\n//nolint\nvar d = 1": 0,
	} {
		if got := undocumented(parsed(t, source)); len(got) != want {
			t.Errorf("%q: want %d lines, got %q", source, want, got)
		}
	}
}
