package arch

import (
	"flag"
	"fmt"
	"go/types"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the listing of exported names")

// listingFile holds every exported name of the public packages, one a line with its
// signature, so that a change of the API shows as a change of this file.
const listingFile = "API.txt"

// exportedLines returns one line per exported name of a package: functions, types, their
// exported fields and methods, variables, and constants with their values.
func exportedLines(rel string, p *types.Package) []string {
	qualify := func(other *types.Package) string {
		if other == p {
			return ""
		}
		return other.Name()
	}
	var out []string
	add := func(format string, args ...any) { out = append(out, rel+": "+fmt.Sprintf(format, args...)) }
	for _, name := range p.Scope().Names() {
		obj := p.Scope().Lookup(name)
		if !obj.Exported() {
			continue
		}
		switch obj := obj.(type) {
		case *types.Const:
			add("const %s %s = %s", name, types.TypeString(obj.Type(), qualify), obj.Val().ExactString())
		case *types.Var:
			add("var %s %s", name, types.TypeString(obj.Type(), qualify))
		case *types.Func:
			add("func %s%s", name, signature(obj, qualify))
		case *types.TypeName:
			if obj.IsAlias() {
				add("type %s = %s", name, types.TypeString(types.Unalias(obj.Type()), qualify))
				continue
			}
			named := obj.Type().(*types.Named)
			head := name + typeParams(named.TypeParams(), qualify)
			members(add, head, name, named.Underlying(), qualify)
			methods := make([]*types.Func, 0, named.NumMethods())
			for m := range named.Methods() {
				if m.Exported() {
					methods = append(methods, m)
				}
			}
			slices.SortFunc(methods, func(a, b *types.Func) int { return strings.Compare(a.Name(), b.Name()) })
			for _, m := range methods {
				star := ""
				if _, ok := types.Unalias(m.Signature().Recv().Type()).(*types.Pointer); ok {
					star = "*"
				}
				add("method (%s%s) %s%s", star, name, m.Name(), signature(m, qualify))
			}
		}
	}
	return out
}

// members lists a type and, line by line, what a caller can name inside it.
func members(add func(string, ...any), head, name string, under types.Type, qualify types.Qualifier) {
	switch under := under.(type) {
	case *types.Struct:
		hidden := ""
		for f := range under.Fields() {
			if !f.Exported() {
				hidden = ", with fields of its own" // a literal without keys, or a comparison, may break
			}
		}
		add("type %s struct%s", head, hidden)
		for f := range under.Fields() {
			if f.Exported() {
				add("field %s.%s %s", name, f.Name(), types.TypeString(f.Type(), qualify))
			}
		}
	case *types.Interface:
		add("type %s interface", head)
		for m := range under.Methods() {
			if m.Exported() {
				add("method (%s) %s%s", name, m.Name(), signature(m, qualify))
			} else {
				add("method (%s) of its own: no other package can implement it", name)
			}
		}
	default:
		add("type %s %s", head, types.TypeString(under, qualify))
	}
}

func signature(f *types.Func, qualify types.Qualifier) string {
	s := f.Signature()
	return typeParams(s.TypeParams(), qualify) +
		strings.TrimPrefix(types.TypeString(types.NewSignatureType(nil, nil, nil, s.Params(), s.Results(), s.Variadic()), qualify), "func")
}

func typeParams(list *types.TypeParamList, qualify types.Qualifier) string {
	if list.Len() == 0 {
		return ""
	}
	var parts []string
	for p := range list.TypeParams() {
		parts = append(parts, p.Obj().Name()+" "+types.TypeString(p.Constraint(), qualify))
	}
	return "[" + strings.Join(parts, ", ") + "]"
}

// apiListing returns the whole listing.
func apiListing(m *tree, packages []*types.Package) string {
	var b strings.Builder
	for _, p := range packages {
		for _, line := range exportedLines(strings.TrimPrefix(p.Path(), m.module+"/"), p) {
			b.WriteString(line + "\n")
		}
	}
	return b.String()
}

// changed returns the lines that only one of two listings has, marked - and +.
func changed(before, after string) []string {
	was, is := strings.Split(strings.TrimSpace(before), "\n"), strings.Split(strings.TrimSpace(after), "\n")
	var out []string
	for _, line := range was {
		if !slices.Contains(is, line) {
			out = append(out, "- "+line)
		}
	}
	for _, line := range is {
		if !slices.Contains(was, line) {
			out = append(out, "+ "+line)
		}
	}
	if len(out) == 0 && before != after {
		out = append(out, "only the order of the lines")
	}
	return out
}

// TestListingIsCurrent fails when the exported names are not those of API.txt. A line that
// goes or changes breaks importers; one that comes does not.
func TestListingIsCurrent(t *testing.T) {
	m := module(t)
	got := apiListing(m, typedPackages(t))
	file := filepath.Join(m.root, listingFile)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want := string(m.files[listingFile])
	for _, line := range changed(want, got) {
		t.Errorf("%s", line)
	}
	if got != want {
		t.Errorf("%s is not the API (lines with - are gone, with + are new). If that is meant, say so in CHANGELOG and run: go test ./internal/arch -run ListingIsCurrent -update", listingFile)
	}
}

// TestListingCatches proves on an invented package that each kind of change shows.
func TestListingCatches(t *testing.T) {
	list := func(body string) string {
		return strings.Join(exportedLines("fake", imports{}.check(t, "example.org/m/fake", "package fake\n"+body)), "\n") + "\n"
	}
	for _, c := range []struct{ was, is string }{
		{"func F(x float64) {}", "func F(x int) {}"},
		{"func F(width float64) {}", "func F(depth float64) {}"},
		{"func F() {}", "func F() error { return nil }"},
		{"func F(x []int) {}", "func F(x ...int) {}"},
		{"func F() {}", "func f() {}"},
		{"const C = 1", "const C = 2"},
		{"const C = 1.0", "const C = 1"},
		{"var V int", "var V float64"},
		{"type T struct{ A int }", "type T struct{ B int }"},
		{"type T struct{ A int }", "type T struct{ A float64 }"},
		{"type T struct{ A int }", "type T struct{ A int; b int }"},
		{"type T struct{ A, B int }", "type T struct{ B, A int }"},
		{"type T struct{}\nfunc (T) M() {}", "type T struct{}\nfunc (*T) M() {}"},
		{"type T struct{}\nfunc (T) M() {}", "type T struct{}\nfunc (T) m() {}"},
		{"type T float64", "type T int"},
		{"type T float64", "type T = float64"},
		{"type T interface{ M() }", "type T interface{ M(int) }"},
		{"type T interface{ M() }", "type T interface{ M(); m() }"},
		{"type T[E any] struct{ X E }", "type T[E comparable] struct{ X E }"},
		{"func F[E any](E) {}", "func F[E ~int](E) {}"},
	} {
		before, after := list(c.was), list(c.is)
		if before == after || len(changed(before, after)) == 0 {
			t.Errorf("not seen: %s\nturned into: %s", c.was, c.is)
		}
	}
	for _, c := range []struct{ was, is string }{
		{"func F() {}", "// F is.\nfunc F() { f() }\nfunc f() {}"},
		{"type T struct{ a int }", "type T struct{ b float64 }"},
		{"type T struct{}\nfunc (T) A() {}\nfunc (T) B() {}", "type T struct{}\nfunc (T) B() {}\nfunc (T) A() {}"},
	} {
		if before, after := list(c.was), list(c.is); before != after {
			t.Errorf("the lawful change %s to %s shows as %q", c.was, c.is, changed(before, after))
		}
	}
}
