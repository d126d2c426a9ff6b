package dock

import (
	"math"
	"slices"
	"strings"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A rest is one value of the plan that a check rests on.
type rest struct {
	path, text string
	known      measure.Knowledge
	missing    bool // nothing is known and nothing stands in
}

// rests are the values that a group of checks rests on.
type rests []rest

func on[T any](g plan.Given[T]) rest {
	r := rest{path: g.Path, text: g.Text, known: g.Known}
	switch v := any(g.Value).(type) {
	case float64:
		r.missing = math.IsNaN(v)
	case string:
		r.missing = v == ""
	case int:
		r.missing = v == 0
	}
	if g.Path == "" && g.Known == measure.Unknown { // never read from a file
		r.path, r.missing = "plan", true
	}
	return r
}

// standsIn says what is used where the plan says nothing.
func (r rest) standsIn(text string) rest {
	if r.missing {
		r.missing, r.text = false, text
	}
	return r
}

// err returns the values that are missing, all together, as one error of class
// measure.ErrUnknown whose field is the first of them; nil if there is none.
func (rs rests) err() error {
	for i, r := range rs {
		if r.missing {
			return &measure.Error{Field: r.path, Class: measure.ErrUnknown, Want: "it in the plan" + rs[i+1:].others(r.path)}
		}
	}
	return nil
}

// others names what is missing besides the value at a path: ", and with it a.b, c, d.e".
// Fields of one object follow each other by their own names alone.
func (rs rests) others(first string) string {
	var b strings.Builder
	seen := []string{first}
	under := first[:strings.LastIndexByte(first, '.')+1]
	for _, r := range rs {
		if !r.missing || slices.Contains(seen, r.path) {
			continue
		}
		b.WriteString([2]string{", ", ", and with it "}[max(0, 2-len(seen))])
		seen = append(seen, r.path)
		object := r.path[:strings.LastIndexByte(r.path, '.')+1]
		if object == under {
			b.WriteString(r.path[len(object):])
		} else {
			b.WriteString(r.path)
		}
		under = object
	}
	return b.String()
}

// assumptions returns what a check prints of them.
func (rs rests) assumptions() []measure.Assumption {
	out := make([]measure.Assumption, len(rs))
	for i, r := range rs {
		out[i] = measure.Assumption{Name: r.path, Text: r.text, Known: r.known}
	}
	return out
}

// called returns a name, or a word where there is none.
func called(n plan.Name, word string) string {
	if n.Value == "" {
		return word
	}
	return n.Value
}
