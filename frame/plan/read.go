package plan

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.org/floewright/lumber/measure"
)

// Read reads a plan. The name stands for the file in errors.
//
// The error is an [Errors] with every mistake of the file; the plan returned
// beside it holds what could be read, its faulty values unknown, so that a later
// stage can add its own findings to the list. Only a file that is no JSON object
// ([ErrJSON]) and an error of the reader's end the reading; the plan is then nil.
func Read(name string, r io.Reader) (*Plan, error) {
	sum := sha256.New()
	root, err := parse(io.TeeReader(r, sum))
	if err != nil {
		at := Position{1, 1}
		var f *fault
		if errors.As(err, &f) {
			at = f.at
		}
		return nil, Errors{{File: name, At: at, Err: err}}
	}
	rd := &reader{file: name, units: printed(root)}
	p := &Plan{File: name, root: root, sum: hex.EncodeToString(sum.Sum(nil))[:fingerprint]}
	if root.form != object {
		rd.fail(root.at, "", wrong(root.at, formError(root, "an object { }")))
		return nil, rd.errors
	}
	read(rd, root, "", p, planFields)
	rd.errors.Sort()
	return p, rd.errors.OrNil()
}

// printed returns the units that a plan asks for, wherever they stand in it; both where
// it asks for none.
func printed(root *node) []measure.System {
	for _, m := range root.members {
		if m.key != "units" {
			continue
		}
		switch strings.ToLower(strings.TrimSpace(m.value.text)) {
		case "us":
			return []measure.System{measure.US}
		case "si":
			return []measure.System{measure.SI}
		}
	}
	return []measure.System{measure.US, measure.SI}
}

// fingerprint is how many hexadecimal digits a plan is told by.
const fingerprint = 12

// Fingerprint returns the first twelve hexadecimal digits of the SHA-256 of the plan's
// file, "" for a plan that was not read or was varied: a sheet that bears it was made from that
// file, to the byte.
func (p *Plan) Fingerprint() string {
	if p == nil {
		return ""
	}
	return p.sum
}

// An Entry explains one field of the plan file.
type Entry struct {
	Path     string // "frame.joists.size"; [] stands for a list's objects
	Means    string // what it is and how it is measured
	Accepts  string
	Default  string // "" is none
	Required bool

	// Plausible are other values it might have where it is not known.
	Plausible []string

	span   span // of a quantity
	before string
}

// Explain returns every field of the plan file in the order of its table; the ranges
// it accepts in feet and pounds, defaults as the table has them. See [Entry.In].
func Explain() []Entry { return entries("", planFields) }

func entries[T any](prefix string, table []field[T]) []Entry {
	var out []Entry
	for _, f := range table {
		out = append(out, Entry{
			Path: prefix + f.key, Means: f.means, Accepts: f.accepted(measure.US), Default: f.def, Required: f.must, Plausible: slices.Clone(f.others),
			span: f.span, before: f.accepts,
		})
		if f.inner != nil {
			out = append(out, f.inner(prefix)...)
		}
	}
	return out
}

var index = regexp.MustCompile(`\[\d+\]`)

// Plausible returns the other values that the field at a path might have where it
// is not known, as they would be written; none where the tables name none.
func Plausible(path string) []string {
	return slices.Clone(others()[index.ReplaceAllString(path, "[]")])
}

var others = sync.OnceValue(func() map[string][]string {
	out := map[string][]string{}
	for _, e := range Explain() {
		out[e.Path] = e.Plausible
	}
	return out
})

// Vary returns the plan as it would read with another value at one path, so that
// a caller can see what hangs on it; values varied before stay. A path is written as
// errors and [Given.Path] have it: names of fields with dots between, and places in
// lists, which count from 1, in brackets: "people[1].mass", "floats[2].bays[3]". It names
// one value, given or left out, of an object that the file has.
//
// A path that names none, such as a place that a list does not have, is an error of class
// [measure.ErrName], and the plan is nil. Other errors are those of [Read]; a plan that
// was not read from a file cannot be varied.
func (p *Plan) Vary(path, value string) (*Plan, error) {
	if p == nil || p.root == nil {
		return nil, Errors{{Err: &measure.Error{Class: measure.ErrUnknown, Want: "a plan that was read from a file"}}}
	}
	swaps := maps.Clone(p.swaps)
	if swaps == nil {
		swaps = map[string]string{}
	}
	swaps[path] = value
	rd := &reader{file: p.File, units: printed(p.root), swaps: swaps, found: map[string]bool{}}
	q := &Plan{File: p.File, root: p.root, swaps: swaps}
	read(rd, p.root, "", q, planFields)
	if !rd.found[path] {
		return nil, Errors{{File: p.File, Path: path, Err: p.root.lacks(path)}}
	}
	rd.errors.Sort()
	return q, rd.errors.OrNil()
}

// String returns the entry as one paragraph.
func (e Entry) String() string {
	s := e.Path + ": " + e.Means + " Accepts " + e.Accepts + "."
	switch {
	case e.Required:
		s += " Required."
	case strings.HasPrefix(e.Accepts, "a whole number"), strings.HasPrefix(e.Accepts, "a number"):
		if e.Default != "" {
			s += " Left out: " + e.Default + "."
		}
	case e.Default != "":
		s += " Left out: " + strconv.Quote(e.Default) + "."
	}
	return s
}
