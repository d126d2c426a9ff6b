package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// The README shows what the programs print and the program that it prints from.
func TestReadmeIsCurrent(t *testing.T) {
	b, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	readme := string(b)
	var out bytes.Buffer
	run(nil, &out, &out)
	_, shown, ok := strings.Cut(readme, "<!-- from buildsheet -->\n```\n")
	shown, _, closed := strings.Cut(shown, "```")
	if !ok || !closed {
		t.Fatal("the README shows no sheet")
	}
	sheet := out.String()
	for _, line := range strings.Split(strings.TrimSpace(shown), "\n") {
		if line == "..." {
			continue
		}
		_, rest, found := strings.Cut(sheet, line+"\n")
		if !found {
			t.Fatalf("the sheet no longer prints, after what came before, %q", line)
		}
		sheet = rest
	}
	program, err := os.ReadFile("../draft/main.go")
	if err != nil {
		t.Fatal(err)
	}
	_, code, _ := strings.Cut(string(program), "\n") // without its comment
	if !strings.Contains(readme, strings.TrimSpace(code)) {
		t.Error("the README's program is not examples/draft")
	}
}
