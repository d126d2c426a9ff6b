package arch

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"slices"
	"strings"
	"testing"
)

// data reports whether a value of a type brings data along: numbers, texts, readers,
// structs of exported fields, and lists and pointers of such.
func data(t types.Type) bool {
	switch u := t.Underlying().(type) {
	case *types.Basic:
		return u.Info()&(types.IsNumeric|types.IsString) != 0
	case *types.Struct:
		for f := range u.Fields() {
			if f.Exported() {
				return true
			}
		}
	case *types.Pointer:
		return data(u.Elem())
	case *types.Slice, *types.Array, *types.Map:
		return true
	case *types.Interface: // a reader does, a writer and a context do not
		for m := range u.Methods() {
			if m.Name() == "Read" {
				return true
			}
		}
	}
	return false
}

// entryName returns how the tests call a function: "float.Period", "float.Cylinder.Draft".
func entryName(module string, f *types.Func) string {
	f = f.Origin()
	if f.Pkg() == nil {
		return ""
	}
	rel := strings.TrimPrefix(strings.TrimPrefix(f.Pkg().Path(), module), "/")
	recv := f.Signature().Recv()
	if recv == nil {
		return rel + "." + f.Name()
	}
	t := types.Unalias(recv.Type())
	if p, ok := t.(*types.Pointer); ok {
		t = types.Unalias(p.Elem())
	}
	n, ok := t.(*types.Named)
	if !ok {
		return ""
	}
	return rel + "." + n.Obj().Name() + "." + f.Name()
}

// says are methods that put in words what their receiver holds.
var says = []string{"String", "Error", "Unwrap"}

// dataEntries returns the exported functions and methods of a package that take data, as
// arguments or as the exported fields of a receiver.
func dataEntries(module string, p *types.Package) []string {
	var out []string
	add := func(f *types.Func) {
		sig := f.Signature()
		takes := sig.Recv() != nil && data(sig.Recv().Type()) && !slices.Contains(says, f.Name())
		for v := range sig.Params().Variables() {
			takes = takes || data(v.Type())
		}
		if f.Exported() && takes {
			out = append(out, entryName(module, f))
		}
	}
	for _, name := range p.Scope().Names() {
		switch obj := p.Scope().Lookup(name).(type) {
		case *types.Func:
			add(obj)
		case *types.TypeName:
			if n, ok := obj.Type().(*types.Named); ok && obj.Exported() && !obj.IsAlias() && !types.IsInterface(n) {
				for m := range n.Methods() {
					add(m)
				}
			}
		}
	}
	return out
}

// A bench is the tests of one package, type-checked as far as they go: a test file sees
// its own package with what export_test.go adds, others see it without, and where the two
// meet the checker complains and goes on.
type bench struct {
	module string
	info   types.Info
	funcs  map[types.Object]*ast.FuncDecl
	vars   map[types.Object]ast.Expr
	fuzz   []*ast.FuncDecl
	typed  []*types.Package // whose types may satisfy an interface
}

// laid type-checks a package's tests; from imports what they use.
func laid(module string, p *pkg, from types.Importer, typed []*types.Package) *bench {
	b := &bench{
		module: module, typed: typed, funcs: map[types.Object]*ast.FuncDecl{}, vars: map[types.Object]ast.Expr{},
		info: types.Info{Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}},
	}
	for _, part := range []struct {
		path  string
		files []*ast.File
	}{{p.ImportPath, slices.Concat(p.code, p.tests)}, {p.ImportPath + "_test", p.xtest}} {
		conf := types.Config{Importer: from, Error: func(error) {}}
		own, _ := conf.Check(part.path, p.fset, part.files, &b.info)
		from = mixed{from, part.path, own}
		for _, f := range part.files {
			if slices.Contains(p.code, f) {
				continue
			}
			for _, d := range f.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					b.funcs[b.info.Defs[d.Name]] = d
					if d.Recv == nil && strings.HasPrefix(d.Name.Name, "Fuzz") && calls(d, "Fuzz") {
						b.fuzz = append(b.fuzz, d)
					}
				case *ast.GenDecl:
					for _, s := range d.Specs {
						if v, ok := s.(*ast.ValueSpec); ok {
							for i, n := range v.Names {
								if len(v.Values) > 0 {
									b.vars[b.info.Defs[n]] = v.Values[min(i, len(v.Values)-1)]
								}
							}
						}
					}
				}
			}
		}
	}
	return b
}

// mixed imports one package as it was checked, and all others as before.
type mixed struct {
	types.Importer
	path string
	own  *types.Package
}

func (m mixed) Import(path string) (*types.Package, error) {
	if path == m.path && m.own != nil {
		return m.own, nil
	}
	return m.Importer.Import(path)
}

// reach marks the names that the fuzz targets mention, in their bodies or in the helpers
// and variables of the tests that these mention. A method of an interface stands for the
// methods of the types that have them all.
func (b *bench) reach(marked map[string]bool) {
	seen := map[types.Object]bool{}
	var walk func(n ast.Node)
	walk = func(n ast.Node) {
		ast.Inspect(n, func(n ast.Node) bool {
			id, ok := n.(*ast.Ident)
			if !ok {
				return true
			}
			obj := b.info.Uses[id]
			if obj == nil || seen[obj] {
				return true
			}
			seen[obj] = true
			if d := b.funcs[obj]; d != nil && d.Body != nil {
				walk(d.Body)
			}
			if v := b.vars[obj]; v != nil {
				walk(v)
			}
			if f, ok := obj.(*types.Func); ok {
				marked[entryName(b.module, f)] = true
				b.implement(f, marked)
			}
			return true
		})
	}
	for _, d := range b.fuzz {
		walk(d.Body)
	}
}

func (b *bench) implement(f *types.Func, marked map[string]bool) {
	recv := f.Signature().Recv()
	if recv == nil || !types.IsInterface(recv.Type()) {
		return
	}
	i, ok := recv.Type().Underlying().(*types.Interface)
	if !ok {
		return
	}
	for _, p := range b.typed {
		for _, name := range p.Scope().Names() {
			t, ok := p.Scope().Lookup(name).(*types.TypeName)
			if !ok || !t.Exported() || types.IsInterface(t.Type()) {
				continue
			}
			if _, generic := t.Type().(*types.Named); !generic || !has(types.NewPointer(t.Type()), i) {
				continue
			}
			if m, _, _ := types.LookupFieldOrMethod(types.NewPointer(t.Type()), true, p, f.Name()); m != nil {
				if m, ok := m.(*types.Func); ok {
					marked[entryName(b.module, m)] = true
				}
			}
		}
	}
}

// has reports whether a type has methods of all the names of an interface. Their types may
// be those of the package seen with its tests, and so are not compared.
func has(t types.Type, i *types.Interface) bool {
	set := types.NewMethodSet(t)
	for m := range i.Methods() {
		if set.Lookup(m.Pkg(), m.Name()) == nil {
			return false
		}
	}
	return i.NumMethods() > 0
}

// unfuzzed returns the entries of packages that take data and that no fuzz target
// mentions.
func unfuzzed(module string, packages []*pkg, from types.Importer, typed []*types.Package) []string {
	marked := map[string]bool{}
	for _, p := range packages {
		laid(module, p, from, typed).reach(marked)
	}
	var out []string
	for _, p := range typed {
		for _, name := range dataEntries(module, p) {
			if !marked[name] {
				out = append(out, name)
			}
		}
	}
	return out
}

// notFuzzed lists the entries that take data and that no fuzz target mentions, with the
// reason. A name that is fuzzed after all, or is gone, has to leave it.
var notFuzzed = map[string]string{}

// TestEveryEntryIsFuzzed fails on an exported function or method that takes data and that
// no fuzz target of any package mentions, by itself or through helpers of the tests.
func TestEveryEntryIsFuzzed(t *testing.T) {
	m := module(t)
	gc, err := exported()
	if err != nil {
		t.Fatal(err)
	}
	var open []*pkg
	for _, p := range m.packages {
		if p.public() {
			open = append(open, p)
		}
	}
	left := unfuzzed(m.module, open, gc, typedPackages(t))
	for _, name := range left {
		if notFuzzed[name] == "" {
			t.Errorf("%s takes data, and no fuzz target mentions it: add one that holds an invariant", name)
		}
	}
	for name := range notFuzzed {
		if !slices.Contains(left, name) {
			t.Errorf("%s is excused, and takes no data, is fuzzed, or is gone", name)
		}
	}
}

// TestEveryEntryIsFuzzedCatches proves on an invented package which entries take data, and
// which mentions count: in a target's body, in a helper's, in a table's, by a method's
// value and through an interface; not in a test, nor in a target that fuzzes nothing.
func TestEveryEntryIsFuzzedCatches(t *testing.T) {
	const code = `package fake
type T struct{ X float64 }
type Closed struct{ x float64 }
type List []T
type Body interface{ Volume() float64 }
func Plain(x float64) float64 { return x }
func Helped(s string) {}
func Tabled(l List) {}
func Idle(x int) {}
func Tested(x int) {}
func Unrun(x int) {}
func Nothing() {}
func Cut(r interface{ Read([]byte) (int, error) }) {}
func Out(w interface{ Write([]byte) (int, error) }) {}
func (T) Volume() float64 { return 0 }
func (T) Valued() {}
func (T) Left() {}
func (T) String() string { return "" }
func (*Closed) None() {}
func (*Closed) Takes(x float64) {}
func (l List) Inside() {}
func Any[E any](e []E) {}
`
	const tests = `package fake
func TestX() { Tested(1) }
func FuzzEmpty(f int) { Unrun(1) }
func FuzzIn(f *testing.F) { f.Fuzz(func(x float64) { Plain(x); new(Closed).Takes(x) }) }
`
	const xtest = `package fake_test
import "example.org/m/fake"
var table = []func(fake.List){func(l fake.List) { fake.Tabled(l); deeper(l) }}
func helper(s string) { fake.Helped(s) }
func deeper(l fake.List) { l.Inside() }
func FuzzOut(f *testing.F) { f.Fuzz(func(s string, b fake.Body) { helper(s); table[0](nil); g := fake.T.Valued; _ = g; b.Volume(); fake.Any([]int{1}) }) }
`
	p := &pkg{listed: listed{ImportPath: "example.org/m/fake", Name: "fake"}, rel: "fake", fset: token.NewFileSet()}
	for _, f := range []struct {
		source string
		into   *[]*ast.File
	}{{code, &p.code}, {tests, &p.tests}, {xtest, &p.xtest}} {
		file, err := parser.ParseFile(p.fset, "fake.go", f.source, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		*f.into = append(*f.into, file)
	}
	known := imports{}
	fake := known.check(t, "example.org/m/fake", code)
	known["example.org/m/fake"] = fake
	got := unfuzzed("example.org/m", []*pkg{p}, known, []*types.Package{fake})
	if want := []string{"fake.Cut", "fake.Idle", "fake.T.Left", "fake.Tested", "fake.Unrun"}; !slices.Equal(got, want) {
		t.Errorf("not fuzzed: %q, want %q", got, want)
	}
	if got := dataEntries("example.org/m", fake); slices.Contains(got, "fake.Nothing") || slices.Contains(got, "fake.Out") || slices.Contains(got, "fake.T.String") || slices.Contains(got, "fake.Closed.None") {
		t.Errorf("%q take data", got)
	}
}
