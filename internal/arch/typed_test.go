package arch

import (
	"errors"
	"go/importer"
	"go/token"
	"go/types"
	"io"
	"os"
	"strings"
	"sync"
	"testing"
)

// exported returns an importer of the module's packages and all that they import, from the
// compiler's export data.
var exported = sync.OnceValues(func() (types.Importer, error) {
	m, err := load()
	if err != nil {
		return nil, err
	}
	out, err := m.goList("-deps", "-export", "-f", "{{.ImportPath}} {{.Export}}", "./...")
	if err != nil {
		return nil, err
	}
	exports := map[string]string{} // import path to the compiler's export data
	for line := range strings.Lines(string(out)) {
		path, file, _ := strings.Cut(strings.TrimSpace(line), " ")
		exports[path] = file
	}
	return importer.ForCompiler(token.NewFileSet(), "gc", func(path string) (io.ReadCloser, error) {
		file := exports[path]
		if file == "" {
			return nil, errors.New("no export data for " + path)
		}
		return os.Open(file)
	}), nil
})

// typed loads the public packages once, type-checked, in the order of their paths.
var typed = sync.OnceValues(func() ([]*types.Package, error) {
	m, err := load()
	if err != nil {
		return nil, err
	}
	gc, err := exported()
	if err != nil {
		return nil, err
	}
	var all []*types.Package
	for _, p := range m.packages {
		if !p.public() {
			continue
		}
		t, err := gc.Import(p.ImportPath)
		if err != nil {
			return nil, err
		}
		all = append(all, t)
	}
	return all, nil
})

// typedPackages returns the public packages or ends the test.
func typedPackages(t *testing.T) []*types.Package {
	t.Helper()
	all, err := typed()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) == 0 {
		t.Fatal("the module has no public package")
	}
	return all
}
