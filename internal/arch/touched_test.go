package arch

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/types"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// gives reports whether a value of a type holds a number of floating point.
func gives(t types.Type, seen map[types.Type]bool) bool {
	if seen[t] {
		return false
	}
	seen[t] = true
	switch u := t.Underlying().(type) {
	case *types.Basic:
		return u.Info()&types.IsFloat != 0
	case *types.Pointer:
		return gives(u.Elem(), seen)
	case *types.Slice:
		return gives(u.Elem(), seen)
	case *types.Array:
		return gives(u.Elem(), seen)
	case *types.Map:
		return gives(u.Key(), seen) || gives(u.Elem(), seen)
	case *types.Tuple:
		for v := range u.Variables() {
			if gives(v.Type(), seen) {
				return true
			}
		}
	case *types.Signature: // a function that is returned computes later
		return gives(u.Results(), seen)
	case *types.Struct:
		for f := range u.Fields() {
			if gives(f.Type(), seen) {
				return true
			}
		}
	}
	return false
}

// givesNumbers reports whether an exported function or method of a package gives numbers.
func givesNumbers(p *types.Package, recv, name string) bool {
	obj := p.Scope().Lookup(name)
	if recv != "" {
		owner := p.Scope().Lookup(recv)
		if owner == nil {
			return false
		}
		obj, _, _ = types.LookupFieldOrMethod(owner.Type(), true, p, name)
	}
	f, ok := obj.(*types.Func)
	return ok && gives(f.Signature().Results(), map[types.Type]bool{})
}

// A stretch is a part of one file that a test ran or did not.
type stretch struct {
	line, column int // of its start
	ran          bool
}

// readProfile returns the stretches of each file, by its path in the module, from the text
// that go test -coverprofile writes.
func readProfile(module, text string) (map[string][]stretch, error) {
	files := map[string][]stretch{}
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "mode:") {
			continue
		}
		file, rest, ok := strings.Cut(strings.TrimPrefix(line, module+"/"), ":")
		span := strings.Fields(rest)
		if !ok || len(span) != 3 {
			return nil, fmt.Errorf("profile line %q", line)
		}
		from, _, _ := strings.Cut(span[0], ",")
		l, c, _ := strings.Cut(from, ".")
		row, err := strconv.Atoi(l)
		if err != nil {
			return nil, fmt.Errorf("profile line %q: %w", line, err)
		}
		column, err := strconv.Atoi(c)
		if err != nil {
			return nil, fmt.Errorf("profile line %q: %w", line, err)
		}
		files[file] = append(files[file], stretch{row, column, span[2] != "0"})
	}
	return files, nil
}

// idle returns the exported functions and methods of a package that give numbers and of
// which no stretch ran: "float.Period", "float.Cylinder.Draft".
func idle(p *pkg, typed *types.Package, files map[string][]stretch) []string {
	var out []string
	for _, f := range p.code {
		for _, d := range f.Decls {
			d, ok := d.(*ast.FuncDecl)
			if !ok || !reachable(d) || d.Body == nil || !givesNumbers(typed, receiver(d), d.Name.Name) {
				continue
			}
			from, to := p.fset.Position(d.Body.Lbrace), p.fset.Position(d.Body.Rbrace)
			ran := slices.ContainsFunc(files[from.Filename], func(s stretch) bool {
				after := s.line > from.Line || s.line == from.Line && s.column >= from.Column
				before := s.line < to.Line || s.line == to.Line && s.column <= to.Column
				return s.ran && after && before
			})
			if !ran {
				out = append(out, strings.TrimSuffix(p.rel+"."+receiver(d), ".")+"."+d.Name.Name)
			}
		}
	}
	return out
}

// profiled runs a part of the outside checks and returns which statements of some packages it
// ran.
func profiled(t *testing.T, m *tree, part string, packages []*pkg) map[string][]stretch {
	t.Helper()
	var paths []string
	for _, p := range packages {
		paths = append(paths, p.ImportPath)
	}
	profile := filepath.Join(t.TempDir(), "profile")
	cmd := exec.Command("go", "test", "-run=^TestRuns$/^"+part+"$", "-coverpkg="+strings.Join(paths, ","), "-coverprofile="+profile, "./internal/published")
	cmd.Dir = m.root
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %v\n%s", cmd.Args, err, out)
	}
	text, err := os.ReadFile(profile)
	if err != nil {
		t.Fatal(err)
	}
	files, err := readProfile(m.module, string(bytes.TrimSpace(text)))
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// TestEveryFormulaIsChecked runs the outside checks, counting which statements they run, and
// fails on an exported function or method that gives numbers and is not among them. What the
// checks of a dock run of the packages below does not count for those.
func TestEveryFormulaIsChecked(t *testing.T) {
	m := module(t)
	parts := map[string][]*pkg{}
	for _, p := range m.packages {
		switch {
		case slices.Contains(gathering, p.rel):
			parts["dock"] = append(parts["dock"], p)
		case slices.Contains(checkedOutside, p.rel):
			parts["below"] = append(parts["below"], p)
		case p.public():
			t.Errorf("%s is neither checked from outside nor one of those that gather", p.rel)
		}
	}
	excused := map[string]bool{}
	for part, packages := range parts {
		files := profiled(t, m, part, packages)
		for _, p := range packages {
			at := slices.IndexFunc(typedPackages(t), func(q *types.Package) bool { return q.Path() == p.ImportPath })
			for _, name := range idle(p, typedPackages(t)[at], files) {
				if untouched[name] == "" {
					t.Errorf("%s gives numbers, and no check of internal/published runs it: add one", name)
				}
				excused[name] = true
			}
		}
	}
	for name := range untouched {
		if !excused[name] {
			t.Errorf("%s is excused, and gives no numbers, is run by a check, or is gone", name)
		}
	}
}

func TestEveryFormulaIsCheckedCatches(t *testing.T) {
	const source = `package fake
type T struct{ X []float64 }
type U int
func Ran(x float64) float64 { return x }
func Idle(x float64) float64 { return x }
func Half(x float64) (*T, error) {
	if x > 0 {
		return nil, nil
	}
	return &T{}, nil
}
func Words() string { return "" }
func hidden() float64 { return 0 }
func (T) Idle() (map[string]T, error) { return nil, nil }
func (t *T) Ran() func() U2 { return nil }
func (T) Count() U { return 0 }
type U2 float64
`
	p := parsed(t, source)
	typed := imports{}.check(t, "example.org/m/fake", source)
	files, err := readProfile("example.org/m", `mode: set
example.org/m/fake.go:4.29,4.41 1 1
example.org/m/fake.go:5.30,5.42 1 0
example.org/m/fake.go:7.2,7.11 1 0
example.org/m/fake.go:10.2,10.18 1 3
example.org/m/fake.go:14.40,14.60 1 0
example.org/m/fake.go:15.29,15.43 1 1
`)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := idle(p, typed, files), []string{"fake.Idle", "fake.T.Idle"}; !slices.Equal(got, want) {
		t.Errorf("idle %q, want %q", got, want)
	}
	for _, bad := range []string{"x", "example.org/m/fake.go:1.2,3.4 1", "example.org/m/fake.go:a.2,3.4 1 1", "example.org/m/fake.go:1,3.4 1 1"} {
		if _, err := readProfile("example.org/m", bad); err == nil {
			t.Errorf("%q is read", bad)
		}
	}
}
