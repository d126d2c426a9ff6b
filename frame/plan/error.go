package plan

import (
	"fmt"
	"sort"
	"strings"
)

// An Error is one mistake in a plan file.
type Error struct {
	File string
	At   Position
	Path string // the field: "frame.joists.size"; empty for the file as a whole
	Err  error  // what is wrong, and what is accepted
}

// Error returns "file:line:column: field: what is wrong; want what", without the file
// where it has no name, and without a place where it has none in the file.
func (e *Error) Error() string {
	var b strings.Builder
	if e.File != "" {
		b.WriteString(e.File + ":")
	}
	switch {
	case e.At != Position{} || e.Err == nil:
		fmt.Fprintf(&b, "%d:%d: ", e.At.Line, e.At.Column)
	case e.File != "":
		b.WriteString(" ")
	}
	if e.Path != "" {
		b.WriteString(e.Path + ": ")
	}
	if e.Err != nil {
		b.WriteString(e.Err.Error())
	}
	return b.String()
}

// Unwrap returns the cause, usually a [*measure.Error].
func (e *Error) Unwrap() error { return e.Err }

// Errors are all the mistakes of one file, in the order of their lines.
type Errors []*Error

// Error returns one line a mistake.
func (es Errors) Error() string {
	lines := make([]string, 0, len(es))
	for _, e := range es {
		if e != nil {
			lines = append(lines, e.Error())
		}
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the mistakes, for errors.Is and errors.As.
func (es Errors) Unwrap() []error {
	out := make([]error, 0, len(es))
	for _, e := range es {
		if e != nil {
			out = append(out, e)
		}
	}
	return out
}

// Sort puts the mistakes in the order of the file.
func (es Errors) Sort() {
	sort.SliceStable(es, func(i, j int) bool {
		if es[i] == nil || es[j] == nil {
			return es[i] != nil && es[j] == nil
		}
		a, b := es[i].At, es[j].At
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		return a.Column < b.Column
	})
}

// OrNil returns nil if there is no mistake and es otherwise, so that an empty
// list does not become an error.
func (es Errors) OrNil() error {
	if len(es) == 0 {
		return nil
	}
	return es
}

// Wrong returns the error of a value that a later stage refuses, such as an
// unknown size of lumber. Field and place are the value's own.
func Wrong[T any](file string, g Given[T], err error) *Error {
	return &Error{File: file, At: g.At, Path: g.Path, Err: err}
}
