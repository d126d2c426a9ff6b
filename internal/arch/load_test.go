package arch

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
)

// A listed is what `go list -json` says of one package.
type listed struct {
	ImportPath, Name, Dir              string
	Module                             struct{ Path, Dir string }
	GoFiles, TestGoFiles, XTestGoFiles []string
	IgnoredGoFiles, CgoFiles           []string
	Imports, TestImports, XTestImports []string
}

// A tree is the module as the tests see it.
type tree struct {
	module   string // its path
	root     string // its folder
	packages []*pkg
	files    map[string][]byte // every text file, by slash path from the root
}

// A pkg is one package of the module with its parsed files.
type pkg struct {
	listed
	rel                string // path inside the module; "" is the root
	fset               *token.FileSet
	code, tests, xtest []*ast.File
}

// public reports whether other modules may import the package.
func (p *pkg) public() bool {
	return p.Name != "main" && !isInternal(p.rel) && !strings.HasPrefix(p.rel, "examples/")
}

func isInternal(path string) bool { return slices.Contains(strings.Split(path, "/"), "internal") }

// load reads the module once for all tests. It opens every file itself, so that
// the go command's cached verdict on these tests goes stale with any of them.
var load = sync.OnceValues(func() (*tree, error) {
	root, err := moduleRoot()
	if err != nil {
		return nil, err
	}
	t := &tree{root: root, files: map[string][]byte{}}
	if err := t.readFiles(); err != nil {
		return nil, err
	}
	out, err := t.goList("-json", "./...")
	if err != nil {
		return nil, err
	}
	for dec := json.NewDecoder(bytes.NewReader(out)); ; {
		p := &pkg{fset: token.NewFileSet()}
		if err := dec.Decode(&p.listed); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		t.module = p.Module.Path
		p.rel = strings.TrimPrefix(strings.TrimPrefix(p.ImportPath, t.module), "/")
		if err := p.parse(t); err != nil {
			return nil, err
		}
		t.packages = append(t.packages, p)
	}
	if len(t.packages) == 0 {
		return nil, errors.New("go list named no package of the module")
	}
	slices.SortFunc(t.packages, func(a, b *pkg) int { return strings.Compare(a.rel, b.rel) })
	return t, nil
})

// goList asks the go command about packages, from the root.
func (t *tree) goList(args ...string) ([]byte, error) {
	cmd := exec.Command("go", append([]string{"list"}, args...)...)
	cmd.Dir = t.root
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w\n%s", err, &stderr)
	}
	return out, nil
}

// module returns the loaded module or ends the test.
func module(t *testing.T) *tree {
	t.Helper()
	native(t)
	m, err := load()
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// native skips a test that runs the go command or its programs where the test
// itself runs for another machine: in an emulator, or in wasm.
func native(t *testing.T) {
	t.Helper()
	out, err := exec.Command("go", "env", "GOHOSTOS", "GOHOSTARCH").Output()
	if want := runtime.GOOS + "\n" + runtime.GOARCH + "\n"; errors.Is(err, exec.ErrNotFound) || err == nil && string(out) != want {
		t.Skipf("built for %s/%s, which is not this machine", runtime.GOOS, runtime.GOARCH)
	}
}

// moduleRoot climbs from the test's folder to the one that holds go.mod.
func moduleRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return filepath.EvalSymlinks(dir)
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("no go.mod above the test")
		}
		dir = up
	}
}

// readFiles reads every regular file below the root that is text.
func (t *tree) readFiles() error {
	return filepath.WalkDir(t.root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == ".git":
			return filepath.SkipDir
		case !d.Type().IsRegular() || d.Name() == ".git": // a linked checkout has a .git file
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil || bytes.IndexByte(data, 0) >= 0 {
			return err
		}
		rel, err := filepath.Rel(t.root, path)
		t.files[filepath.ToSlash(rel)] = data
		return err
	})
}

// parse reads the package's files, tests included, with their comments.
func (p *pkg) parse(t *tree) error {
	for _, set := range []struct {
		names []string
		into  *[]*ast.File
	}{
		{append(slices.Clone(p.GoFiles), p.CgoFiles...), &p.code},
		{p.TestGoFiles, &p.tests},
		{p.XTestGoFiles, &p.xtest},
	} {
		for _, name := range set.names {
			path := strings.TrimPrefix(p.rel+"/"+name, "/")
			f, err := parser.ParseFile(p.fset, path, t.files[path], parser.ParseComments|parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			*set.into = append(*set.into, f)
		}
	}
	return nil
}

// parsed returns a package made of one text, for the tests of the tests.
func parsed(t *testing.T, source string) *pkg {
	t.Helper()
	p := &pkg{rel: "fake", fset: token.NewFileSet()}
	f, err := parser.ParseFile(p.fset, "fake.go", source, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	p.Name = f.Name.Name
	p.code = []*ast.File{f}
	return p
}
