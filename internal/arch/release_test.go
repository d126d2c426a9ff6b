package arch

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

// TestRelease holds the first version of the changelog to the one by which the library is
// cited, day and all; changes since then stand over it as "Unreleased".
func TestRelease(t *testing.T) {
	read := func(name string) []byte {
		data, err := os.ReadFile(filepath.Join("..", "..", name))
		if err != nil {
			t.Fatal(err)
		}
		return data
	}
	first := regexp.MustCompile(`(?m)^## (\d+\.\d+\.\d+) - (\d{4}-\d{2}-\d{2})$`).FindSubmatch(read("CHANGELOG.md"))
	if first == nil {
		t.Fatal("CHANGELOG.md has no line such as: ## 0.1.0 - 2026-11-25")
	}
	cited := read("CITATION.cff")
	for what, is := range map[string]string{"version": string(first[1]), "date-released": `"` + string(first[2]) + `"`} {
		if !regexp.MustCompile(`(?m)^` + what + `: ` + regexp.QuoteMeta(is) + `$`).Match(cited) {
			t.Errorf("CITATION.cff does not say %s: %s, as CHANGELOG.md does", what, is)
		}
	}
	if len(regexp.MustCompile(`(?m)^### Numbers that changed$`).FindAll(read("CHANGELOG.md"), -1)) == 0 {
		t.Error(`CHANGELOG.md has no section "Numbers that changed"`)
	}
}
