package arch

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"testing"
)

// A walk follows the types that one package's exported names mention.
type walk struct {
	pkg   *types.Package
	at    string // the exported name being followed
	seen  map[types.Type]bool
	found []string
}

// leaks returns one line per exported name of a package that mentions an
// internal type: in a signature, a field, a variable, a constant, a method, a
// constraint or behind an alias. Unexported types that an exported name
// mentions are followed too, since a caller reaches their fields and methods.
func leaks(p *types.Package) []string {
	w := &walk{pkg: p, seen: map[types.Type]bool{}}
	for _, name := range p.Scope().Names() {
		obj := p.Scope().Lookup(name)
		if !obj.Exported() {
			continue
		}
		w.at = p.Path() + "." + name
		if named, ok := obj.Type().(*types.Named); ok && named.Obj() == obj {
			w.declared(named)
			continue
		}
		w.typ(obj.Type())
	}
	return w.found
}

// declared follows a type's own declaration and its exported methods.
func (w *walk) declared(n *types.Named) {
	if w.seen[n] {
		return
	}
	w.seen[n] = true
	w.params(n.TypeParams())
	w.typ(n.Underlying())
	for m := range n.Methods() {
		if m.Exported() {
			w.typ(m.Type())
		}
	}
}

func (w *walk) params(list *types.TypeParamList) {
	for p := range list.TypeParams() {
		w.typ(p.Constraint())
	}
}

// mention records a named type that no exported name may mention.
func (w *walk) mention(obj *types.TypeName) bool {
	if obj.Pkg() == nil || obj.Pkg() == w.pkg || !isInternal(obj.Pkg().Path()) || !ours(w.pkg, obj.Pkg()) {
		return false
	}
	w.found = append(w.found, fmt.Sprintf("%s mentions the internal type %s.%s", w.at, obj.Pkg().Path(), obj.Name()))
	return true
}

// ours reports whether two packages share the first element of their paths: the
// internal packages of the standard library are its own affair.
func ours(a, b *types.Package) bool {
	first := func(p string) string {
		for i := range p {
			if p[i] == '/' {
				return p[:i]
			}
		}
		return p
	}
	return first(a.Path()) == first(b.Path())
}

func (w *walk) typ(t types.Type) {
	switch t := t.(type) {
	case *types.Alias:
		if !w.mention(t.Obj()) {
			w.args(t.TypeArgs())
			w.params(t.TypeParams())
			w.typ(t.Rhs())
		}
	case *types.Named:
		if !w.mention(t.Obj()) {
			w.args(t.TypeArgs())
			if t.Obj().Pkg() == w.pkg && !t.Obj().Exported() {
				w.declared(t.Origin())
			}
		}
	case *types.Pointer:
		w.typ(t.Elem())
	case *types.Slice:
		w.typ(t.Elem())
	case *types.Array:
		w.typ(t.Elem())
	case *types.Chan:
		w.typ(t.Elem())
	case *types.Map:
		w.typ(t.Key())
		w.typ(t.Elem())
	case *types.Signature:
		w.params(t.TypeParams())
		w.typ(t.Params())
		w.typ(t.Results())
	case *types.Tuple:
		for v := range t.Variables() {
			w.typ(v.Type())
		}
	case *types.Struct:
		for f := range t.Fields() {
			if f.Exported() || f.Embedded() {
				w.typ(f.Type())
			}
		}
	case *types.Interface:
		for m := range t.ExplicitMethods() {
			if m.Exported() {
				w.typ(m.Type())
			}
		}
		for e := range t.EmbeddedTypes() {
			w.typ(e)
		}
	case *types.Union:
		for term := range t.Terms() {
			w.typ(term.Type())
		}
	}
}

func (w *walk) args(list *types.TypeList) {
	for a := range list.Types() {
		w.typ(a)
	}
}

func TestNoInternalTypeExported(t *testing.T) {
	native(t)
	for _, p := range typedPackages(t) {
		for _, line := range leaks(p) {
			t.Error(line)
		}
	}
}

// imports resolves the import paths of invented packages.
type imports map[string]*types.Package

func (i imports) Import(path string) (*types.Package, error) {
	if p := i[path]; p != nil {
		return p, nil
	}
	return nil, fmt.Errorf("no package %s", path)
}

// check type-checks one text as the package at path.
func (i imports) check(t *testing.T, path, source string) *types.Package {
	t.Helper()
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, "fake.go", source, 0)
	if err != nil {
		t.Fatal(err)
	}
	p, err := (&types.Config{Importer: i}).Check(path, fset, []*ast.File{f}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestNoInternalTypeExportedCatches proves on invented packages that every way
// for an internal type to reach a caller is seen, and that hidden use is not.
func TestNoInternalTypeExportedCatches(t *testing.T) {
	known := imports{}
	known["example.org/m/internal/secret"] = known.check(t, "example.org/m/internal/secret",
		"package secret\ntype T struct{ X int }\nfunc (T) M() {}\ntype I interface{ M() }\nconst C T2 = 1\ntype T2 int\nfunc F() float64 { return 0 }\ntype G[E any] struct{ X E }")
	known["example.org/m/open"] = known.check(t, "example.org/m/open", "package open\ntype L[E any] []E")
	const head = "package fake\nimport \"example.org/m/internal/secret\"\nimport \"example.org/m/open\"\nvar _ secret.T\nvar _ open.L[int]\n"

	for _, body := range []string{
		"func F(secret.T) {}",
		"func F() *secret.T { return nil }",
		"func F(...[]secret.T) {}",
		"func F[E secret.I](E) {}",
		"func F(func(map[string]secret.T)) {}",
		"func F(open.L[secret.T]) {}",
		"var V secret.T",
		"var V = map[secret.T2]int{}",
		"var V [2]chan secret.T",
		"const C = secret.C",
		"type A = secret.T",
		"type A = []secret.T",
		"type D secret.G[secret.T2]",
		"type S struct{ F secret.T }",
		"type S struct{ secret.T }",
		"type S struct{ hidden }\ntype hidden struct{ F secret.T }",
		"type S struct{}\nfunc (*S) M(secret.T) {}",
		"type hidden struct{}\nfunc (hidden) M() (x secret.T) { return }\nfunc F() hidden { return hidden{} }",
		"type I interface{ M(secret.T) }",
		"type I interface{ secret.I }",
		"type C interface{ ~string | secret.T2 }",
		"type G[E secret.I] struct{ X E }",
		"type N struct{ next *N; F struct{ T secret.T } }",
	} {
		if got := leaks(known.check(t, "example.org/m/fake", head+body)); len(got) == 0 {
			t.Errorf("not seen: %s", body)
		}
	}
	for _, body := range []string{
		"func F() float64 { return secret.F() }",
		"type S struct{ inner secret.T }",
		"type S struct{}\nfunc (S) m(secret.T) {}",
		"func f(secret.T) {}",
		"type hidden struct{ F secret.T }\nvar v hidden",
		"type N struct{ Next *N; Kids []N }\nfunc (n N) Walk(func(N) error) error { return nil }",
		"type I interface{ M() I; error }",
		"var E error",
	} {
		if got := leaks(known.check(t, "example.org/m/fake", head+body)); len(got) > 0 {
			t.Errorf("lawful %s reported: %q", body, got)
		}
	}
}
