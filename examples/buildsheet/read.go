package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/ice/season"
)

// wrap prints a text in 80 columns, its further lines indented.
func wrap(out io.Writer, text string) {
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len(line)+1+len(word) > 80 {
			fmt.Fprintln(out, line)
			line = "   "
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	fmt.Fprintln(out, line)
}

// remember gives a dock the winters of a table.
func remember(d *dock.Dock, file string) (*dock.Dock, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return d.WithWinters(file, f, season.Options{})
}

func read(file, demo string) (*dock.Dock, error) {
	if file == "" {
		r, err := plan.Demo(demo)
		if err != nil {
			return nil, err
		}
		return dock.Read("demo "+demo, r)
	}
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return dock.Read(file, f)
}
