package arch

import (
	"bytes"
	"fmt"
	"go/ast"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// maxLines is the length past which a file holds more than one subject.
const maxLines = 420

// maxTestLines is the same for tests, whose tables are long.
const maxTestLines = 600

// foreign matches what belongs to somebody's desk and not to the library: marks
// of unfinished work, numbers of a tracker, folders of one machine.
var foreign = []*regexp.Regexp{
	regexp.MustCompile(`\b(TO` + `DO|FIX` + `ME|X` + `XX)\b`),
	regexp.MustCompile(`(?i)\b(iss` + `ue|tick` + `et|bug) ?#?\d`),
	regexp.MustCompile(`(^|[^\w./:)-])/(home|root|Users|work|workspace|tmp|mnt|opt|srv)/`),
	regexp.MustCompile(`(?i)\b[a-z]:\\+(users|temp|windows)\b`),
	regexp.MustCompile(`\b(local` + `host|127\.0\.0\.1)|fi` + `le:///`),
}

// marks returns one line per foreign mark in a text.
func marks(name string, data []byte) []string {
	var out []string
	for i, line := range bytes.Split(data, []byte("\n")) {
		for _, re := range foreign {
			if m := re.Find(line); m != nil {
				out = append(out, fmt.Sprintf("%s:%d: %q does not belong in the library", name, i+1, m))
			}
		}
	}
	return out
}

// written reports whether people wrote the file; corpora of the fuzzer and
// checksums are machine text.
func written(name string) bool {
	if strings.Contains(name, "testdata/fuzz/") {
		return false
	}
	switch path.Ext(name) {
	case ".go", ".md", ".csv", ".cff", ".json", ".mod", ".txt", ".svg", ".sh", "":
		return true
	}
	return false
}

func TestNoForeignMarks(t *testing.T) {
	n := 0
	for name, data := range module(t).files {
		if !written(name) {
			continue
		}
		n++
		for _, line := range marks(name, data) {
			t.Error(line)
		}
	}
	if n < 2 {
		t.Errorf("only %d files were read", n)
	}
}

func TestNoForeignMarksCatches(t *testing.T) {
	for _, text := range []string{
		"// TO" + "DO: later", "see iss" + "ue 7", "Bu" + "g #12", "open(\"/ho" + "me/me/plan.json\")",
		"cd /wo" + "rk/x", `C:` + `\Users\me`, "http://local" + "host:80",
	} {
		if len(marks("x", []byte("fine\n"+text))) == 0 {
			t.Errorf("not seen: %s", text)
		}
	}
	for _, text := range []string{"either/or/home/run", "https://example.org/work/x", "10 lb/ft2", "../opt/x", "the issue is settled", "d:\\n", `A:\temperature`} {
		if got := marks("x", []byte(text)); len(got) > 0 {
			t.Errorf("reported: %q", got)
		}
	}
}

func TestFileLength(t *testing.T) {
	n := 0
	for name, data := range module(t).files {
		if path.Ext(name) != ".go" {
			continue
		}
		n++
		most := maxLines
		if strings.HasSuffix(name, "_test.go") {
			most = maxTestLines
		}
		if lines := bytes.Count(data, []byte("\n")); lines > most {
			t.Errorf("%s has %d lines, at most %d: look for the file that wants to be its own", name, lines, most)
		}
	}
	if n < 2 {
		t.Errorf("only %d Go files were read", n)
	}
}

// excuse marks a panic that no input reaches.
const excuse = "// unreachable:"

// panics returns one line per call in a package's code that would end or unwind
// the caller's program, unless its line says why no data reaches it.
func panics(p *pkg) []string {
	var out []string
	for _, f := range p.code {
		excused := map[int]bool{}
		for _, g := range f.Comments {
			for _, c := range g.List {
				if strings.HasPrefix(c.Text, excuse) && len(c.Text) > len(excuse)+1 {
					excused[p.fset.Position(c.Pos()).Line] = true
				}
			}
		}
		ast.Inspect(f, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			pos := p.fset.Position(call.Pos())
			if name := ends(call.Fun); name != "" && !excused[pos.Line] {
				out = append(out, fmt.Sprintf("%s: %s: bad data gives an error; a line no data reaches ends with %q and the reason", pos, name, excuse))
			}
			return true
		})
	}
	return out
}

// ends returns the name of a called function that does not return.
func ends(fun ast.Expr) string {
	switch f := fun.(type) {
	case *ast.Ident:
		if f.Name == "panic" {
			return f.Name
		}
	case *ast.SelectorExpr:
		x, ok := f.X.(*ast.Ident)
		if !ok {
			return ""
		}
		name := x.Name + "." + f.Sel.Name
		if slices.Contains([]string{
			"os.Exit", "runtime.Goexit",
			"log.Fatal", "log.Fatalf", "log.Fatalln", "log.Panic", "log.Panicf", "log.Panicln",
		}, name) {
			return name
		}
	}
	return ""
}

func TestNoPanic(t *testing.T) {
	for _, p := range module(t).packages {
		if !p.public() {
			continue
		}
		for _, line := range panics(p) {
			t.Error(line)
		}
	}
}

func TestNoPanicCatches(t *testing.T) {
	for body, want := range map[string]int{
		"panic(1)":                                   1,
		"panic(1) // because":                        1,
		"panic(1) // unreachable:":                   1,
		"panic(1) // unreachable: i is 0 or 1":       0,
		"// unreachable: i is 0 or 1\n panic(1)":     1,
		"func() { panic(1) }()":                      1,
		"os.Exit(1)":                                 1,
		"log.Fatalf(\"\")":                           1,
		"_ = \"panic(\" // no panic(1) in a text":    0,
		"if x { panic(1) } else { log.Panic(\"\") }": 2,
		"os.Getenv(\"panic\")":                       0,
	} {
		if got := panics(parsed(t, "package fake\nfunc f() {\n"+body+"\n}")); len(got) != want {
			t.Errorf("%s: want %d, got %q", body, want, got)
		}
	}
}
