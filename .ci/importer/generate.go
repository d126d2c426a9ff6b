// Generate prints the main file of a program that imports every package named
// on standard input, one "path folder" a line, and lists all their exported
// functions, types, constants and variables, generic ones aside.
package main

import (
	"bufio"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"log"
	"os"
	"path/filepath"
	"strings"
)

func main() {
	log.SetFlags(0)
	var imports, functions, types, values strings.Builder
	in := bufio.NewScanner(os.Stdin)
	for n := 0; in.Scan(); n++ {
		path, dir, _ := strings.Cut(in.Text(), " ")
		alias := fmt.Sprintf("p%d", n)
		fmt.Fprintf(&imports, "%s %q\n", alias, path)
		files, err := filepath.Glob(filepath.Join(dir, "*.go"))
		if err != nil {
			log.Fatal(err)
		}
		found := 0
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
			if err != nil {
				log.Fatal(err)
			}
			for _, d := range f.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					if d.Recv == nil && d.Name.IsExported() && d.Type.TypeParams == nil {
						fmt.Fprintf(&functions, "{\"%s.%s\", %s.%[2]s},\n", path, d.Name, alias)
						found++
					}
				case *ast.GenDecl:
					for _, s := range d.Specs {
						switch s := s.(type) {
						case *ast.TypeSpec:
							if s.Name.IsExported() && s.TypeParams == nil {
								fmt.Fprintf(&types, "{\"%s.%s\", new(%s.%[2]s)},\n", path, s.Name, alias)
								found++
							}
						case *ast.ValueSpec:
							for _, name := range s.Names {
								if name.IsExported() {
									fmt.Fprintf(&values, "_ = %s.%s\n", alias, name)
									found++
								}
							}
						}
					}
				}
			}
		}
		if found == 0 {
			log.Fatalf("%s exports nothing", path)
		}
	}
	if err := in.Err(); err != nil {
		log.Fatal(err)
	}
	source, err := format.Source([]byte(fmt.Sprintf(`package main

import (
%s)

var functions = []named{
%s}

var types = []named{
%s}

func init() {
%s}
`, &imports, &functions, &types, &values)))
	if err != nil {
		log.Fatal(err)
	}
	os.Stdout.Write(source)
}
