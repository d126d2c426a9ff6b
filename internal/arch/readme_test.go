package arch

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var shown = regexp.MustCompile("(?s)<!-- from ([a-z]+) -->\n```\n(.*?)```")

// TestReadmeShows: what the README shows of each program's output is what it prints,
// line by line, in that order.
func TestReadmeShows(t *testing.T) {
	native(t)
	root := filepath.Join("..", "..")
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	blocks := shown.FindAllStringSubmatch(string(text), -1)
	if len(blocks) < 8 {
		t.Errorf("the README shows %d programs", len(blocks))
	}
	dir := t.TempDir()
	for _, b := range blocks {
		program := filepath.Join(dir, b[1])
		build := exec.Command("go", "build", "-o", program, "./examples/"+b[1])
		build.Dir = root
		if out, err := build.CombinedOutput(); err != nil {
			t.Fatalf("%s: %v\n%s", b[1], err, out)
		}
		out, _ := exec.Command(program).Output() // a sheet that is short ends with 1
		rest := string(out)
		for _, line := range strings.Split(strings.TrimSpace(b[2]), "\n") {
			if line == "..." {
				continue
			}
			_, after, found := strings.Cut(rest, line+"\n")
			if !found {
				t.Errorf("%s no longer prints, after what came before, %q", b[1], line)
				break
			}
			rest = after
		}
	}
}

var spaces = regexp.MustCompile(`[ \t]+`)

// TestReadmeSnippet: the README's lines of Go are those of an Example that runs, in their
// order, with nothing between them but errors.
func TestReadmeSnippet(t *testing.T) {
	root := filepath.Join("..", "..")
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	code, err := os.ReadFile(filepath.Join(root, "frame", "dock", "example_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	_, example, _ := strings.Cut(string(code), "func ExampleDock_Plate() {\n")
	example, _, _ = strings.Cut(example, "\n}\n")
	var lines []string
	for line := range strings.Lines(example) {
		lines = append(lines, spaces.ReplaceAllString(strings.TrimSpace(line), " "))
	}
	n := 0
	for _, block := range regexp.MustCompile("(?s)```go\n(.*?)```").FindAllStringSubmatch(string(text), -1) {
		if strings.HasPrefix(block[1], "package main") { // examples/draft, held by a test of buildsheet
			continue
		}
		for line := range strings.Lines(block[1]) {
			line = spaces.ReplaceAllString(strings.TrimSpace(line), " ")
			at := slices.Index(lines, line)
			if at < 0 {
				t.Fatalf("no Example runs, after what came before, %q", line)
			}
			n++
			for _, between := range lines[:at] {
				if n > 1 && between != "if err != nil {" && between != "log.Fatal(err)" && between != "}" {
					t.Errorf("before %q the Example has %q, which the README leaves out", line, between)
				}
			}
			lines = lines[at+1:]
		}
	}
	if n < 4 {
		t.Errorf("%d lines of Go in the README", n)
	}
}
