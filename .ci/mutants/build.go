package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A built is the tests of a package, built with mutants that can be told to run, each by
// its number, from 1.
type built struct {
	dir     string
	sets    []set
	mutants []mutant
	scratch string
	broken  map[int]bool // these do not compile
	alone   map[int]bool // these cannot be built beside the others
	sources map[string]*source
}

// A source is a file of the package.
type source struct {
	path  string
	text  []byte
	lines []int // where each begins
	set   *token.FileSet
	tree  *ast.File
}

const variable = "MUTANT"

// build builds the tests with all of the mutants that compile.
func build(dir string, sets []set, mutants []mutant) (*built, error) {
	scratch, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return nil, err
	}
	b := &built{dir: dir, sets: sets, mutants: mutants, scratch: scratch, broken: map[int]bool{}, alone: map[int]bool{}, sources: map[string]*source{}}
	for _, m := range mutants {
		if b.sources[m.file] == nil {
			if b.sources[m.file], err = read(filepath.Join(dir, m.file)); err != nil {
				return nil, err
			}
		}
	}
	for tries := 0; ; tries++ {
		if err := b.overlay(); err != nil {
			return nil, err
		}
		out, err := exec.Command("go", "build", "-gcflags=-e", "-overlay", b.file("overlay.json"), dir).CombinedOutput()
		if err == nil {
			break
		}
		n := len(b.broken) + len(b.alone)
		for _, m := range complaint.FindAllSubmatch(out, -1) {
			if id, err := strconv.Atoi(string(m[1])); err == nil {
				b.broken[id] = true
			}
		}
		for i, m := range mutants { // a whole expression of a variable, in its own place
			if bytes.Contains(out, fmt.Appendf(nil, "%s:%d:", m.file, m.Line)) {
				b.alone[i+1] = true
			}
		}
		if len(b.broken)+len(b.alone) == n || tries > 20 {
			return nil, fmt.Errorf("%w\n%s", err, out)
		}
	}
	for i, s := range sets {
		if out, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay", b.file("overlay.json"), "-o", b.file(strconv.Itoa(i)), s.dir).CombinedOutput(); err != nil {
			return nil, fmt.Errorf("%w\n%s", err, out)
		}
	}
	return b, nil
}

var complaint = regexp.MustCompile(`mutant(\d+)\.go:`)

func (b *built) file(name string) string { return filepath.Join(b.scratch, name) }

func read(path string) (*source, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	s := &source{path: path, set: token.NewFileSet(), lines: []int{0}}
	if s.text, err = os.ReadFile(path); err != nil {
		return nil, err
	}
	for i, c := range s.text {
		if c == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
	s.tree, err = parser.ParseFile(s.set, path, s.text, 0)
	return s, err
}

func (s *source) at(p token.Pos) int { return s.set.Position(p).Offset }

// changed returns the text between two places with the mutant's operator in it.
func (s *source) changed(m mutant, from, to int) (string, error) {
	at := s.lines[m.Line-1] + m.Column - 1
	old, op, err := m.operators(s.text[at:])
	return string(s.text[from:at]) + op + string(s.text[min(at+len(old), to):to]), err
}

// overlay writes the sources with their mutants beside them.
func (b *built) overlay() error {
	abs, err := filepath.Abs(b.dir)
	if err != nil {
		return err
	}
	replace := map[string]string{filepath.Join(abs, "mutant.go"): b.file("mutant.go")}
	var name string
	for file, s := range b.sources {
		name = s.tree.Name.Name
		text, err := b.rewrite(file, s)
		if err != nil {
			return err
		}
		replace[s.path] = b.file(file)
		if err := os.WriteFile(b.file(file), text, 0o644); err != nil {
			return err
		}
	}
	list, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return err
	}
	return errors.Join(
		os.WriteFile(b.file("overlay.json"), list, 0o644),
		os.WriteFile(b.file("mutant.go"), fmt.Appendf(nil, `package %s

import (
	"os"
	"strconv"
)

var mutant, _ = strconv.Atoi(os.Getenv(%q))

func mutantOr[T any](id int, mutated, as T) T {
	if mutant == id {
		return mutated
	}
	return as
}
`, name, variable), 0o644))
}

// An edit puts a text in place of another.
type edit struct {
	from, to int
	text     string
}

// rewrite returns a source with its mutants: a function is copied for each of them, and
// goes to the copy that is asked for; a variable's expression becomes a choice.
func (b *built) rewrite(file string, s *source) ([]byte, error) {
	of := func(from, to token.Pos) (ids []int) {
		for i, m := range b.mutants {
			if m.file != file || b.broken[i+1] || b.alone[i+1] {
				continue
			}
			if at := s.lines[m.Line-1] + m.Column - 1; s.at(from) <= at && at < s.at(to) {
				ids = append(ids, i+1)
			}
		}
		return ids
	}
	placed := map[int]bool{}
	var edits []edit
	var copies strings.Builder
	for _, d := range s.tree.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if d.Body == nil {
				continue
			}
			ids := of(d.Body.Pos(), d.Body.End())
			if len(ids) == 0 {
				continue
			}
			from, to := s.at(d.Body.Pos()), s.at(d.Body.End())
			e := edit{from: s.at(d.Pos()), to: from + 1}
			head, call, err := named(s.set, d, "")
			if err != nil {
				return nil, err
			}
			e.text = head + "{ switch mutant {"
			for _, id := range ids {
				placed[id] = true
				head, call, err = named(s.set, d, "mutant"+strconv.Itoa(id))
				if err != nil {
					return nil, err
				}
				body, err := s.changed(b.mutants[id-1], from, to)
				if err != nil {
					return nil, err
				}
				e.text += fmt.Sprintf("case %d: %s; ", id, call)
				fmt.Fprintf(&copies, "\n//line mutant%d.go:1\n%s %s\n", id, head, body)
			}
			e.text += "}; "
			edits = append(edits, e)
		case *ast.GenDecl:
			if d.Tok != token.VAR {
				continue
			}
			var at []edit // the expressions, the outer instead of the inner
			ast.Inspect(d, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.BinaryExpr, *ast.UnaryExpr:
					if len(of(n.Pos(), n.End())) > 0 {
						at = append(at, edit{from: s.at(n.Pos()), to: s.at(n.End())})
						return false
					}
				}
				return true
			})
			for _, e := range at {
				e.text = string(s.text[e.from:e.to])
				for i, m := range b.mutants {
					where := s.lines[min(m.Line, len(s.lines))-1] + m.Column - 1
					if m.file != file || b.broken[i+1] || b.alone[i+1] || where < e.from || where >= e.to {
						continue
					}
					placed[i+1] = true
					mutated, err := s.changed(m, e.from, e.to)
					if err != nil {
						return nil, err
					}
					e.text = fmt.Sprintf("mutantOr(%d, %s, %s)", i+1, mutated, e.text)
				}
				edits = append(edits, e)
			}
		}
	}
	for i, m := range b.mutants {
		if m.file == file && !b.broken[i+1] && !placed[i+1] {
			b.alone[i+1] = true
		}
	}
	slices.SortFunc(edits, func(a, b edit) int { return a.from - b.from })
	var out bytes.Buffer
	at := 0
	for _, e := range edits {
		out.Write(s.text[at:e.from])
		out.WriteString(e.text)
		at = e.to
	}
	out.Write(s.text[at:])
	out.WriteString(copies.String())
	return out.Bytes(), nil
}

// named returns the head of a function, its parameters named all, under its own name or
// another, and the statement that calls it.
func named(set *token.FileSet, d *ast.FuncDecl, name string) (head, call string, err error) {
	n := 0
	names := func(l *ast.FieldList) (all []string) {
		for _, f := range l.List {
			if len(f.Names) == 0 {
				f.Names = []*ast.Ident{{Name: "_"}}
			}
			for i, id := range f.Names {
				if id.Name == "_" {
					f.Names[i] = &ast.Ident{Name: "mutantOf" + strconv.Itoa(n)}
				}
				n++
				text := f.Names[i].Name
				if _, open := f.Type.(*ast.Ellipsis); open {
					text += "..."
				}
				all = append(all, text)
			}
		}
		return all
	}
	as := &ast.FuncDecl{Recv: d.Recv, Name: d.Name, Type: d.Type}
	if name != "" {
		as.Name = ast.NewIdent(name)
	}
	call = as.Name.Name
	if d.Recv != nil {
		call = names(d.Recv)[0] + "." + call
	} else if d.Type.TypeParams != nil {
		call += "[" + strings.Join(names(d.Type.TypeParams), ", ") + "]"
	}
	call += "(" + strings.Join(names(d.Type.Params), ", ") + ")"
	if d.Type.Results != nil && len(d.Type.Results.List) > 0 {
		call = "return " + call
	} else {
		call += "; return"
	}
	var b bytes.Buffer
	err = format.Node(&b, set, as)
	return b.String(), call, err
}

// fate tries a mutant.
func (b *built) fate(id int, limit time.Duration) fate {
	if b.broken[id] {
		return invalid
	}
	for i, s := range b.sets {
		switch _, f := b.test(i, id, limit); {
		case f == lived:
		case s.dir == b.dir:
			return f
		default:
			return pinned
		}
	}
	return lived
}

// line returns the source line of a mutant.
func (b *built) line(m mutant) string {
	s := b.sources[m.file]
	line, _, _ := bytes.Cut(s.text[s.lines[m.Line-1]:], []byte("\n"))
	return string(bytes.TrimSpace(line))
}

// test runs one of the sets of tests, short, with a mutant, or with none, and returns lived if they
// pass.
func (b *built) test(i, id int, limit time.Duration) (string, fate) {
	s := b.sets[i]
	ctx, cancel := context.WithTimeout(context.Background(), limit+time.Minute)
	defer cancel()
	var c *exec.Cmd
	if b.alone[id] {
		overlay, err := b.single(id)
		if err != nil {
			return err.Error(), invalid
		}
		defer os.RemoveAll(filepath.Dir(overlay))
		c = exec.CommandContext(ctx, "go", "test", "-short", "-failfast", "-count=1", "-vet=off", "-timeout", limit.String(), "-run", s.names, "-skip", s.skip, "-overlay", overlay, s.dir)
	} else {
		c = exec.CommandContext(ctx, b.file(strconv.Itoa(i)),
			"-test.short", "-test.failfast", "-test.timeout", limit.String(), "-test.run", s.names, "-test.skip", s.skip)
		c.Dir = s.dir
	}
	c.Env = append(os.Environ(), variable+"="+strconv.Itoa(id))
	c.WaitDelay = time.Second
	out, err := c.CombinedOutput()
	switch text := string(out); {
	case err == nil:
		return text, lived
	case strings.Contains(text, "[build failed]"):
		return text, invalid
	case strings.Contains(text, "panic: test timed out") || ctx.Err() != nil:
		return text, endless
	default:
		return text, caught
	}
}

// single writes an overlay of one mutant.
func (b *built) single(id int) (string, error) {
	m := b.mutants[id-1]
	s := b.sources[m.file]
	text, err := s.changed(m, 0, len(s.text))
	if err != nil {
		return "", err
	}
	dir, err := os.MkdirTemp(b.scratch, "alone")
	if err != nil {
		return "", err
	}
	file, overlay := filepath.Join(dir, "mutant.go"), filepath.Join(dir, "overlay.json")
	list, err := json.Marshal(map[string]any{"Replace": map[string]string{s.path: file}})
	return overlay, errors.Join(err, os.WriteFile(file, []byte(text), 0o644), os.WriteFile(overlay, list, 0o644))
}
