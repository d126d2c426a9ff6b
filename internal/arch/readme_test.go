package arch

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
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
