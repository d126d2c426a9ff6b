package plan

import (
	"math"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"example.org/floewright/lumber/measure"
)

// A field is one line of a table: a key that an object of type T may have, what
// it means, and how it is read into T.
type field[T any] struct {
	key     string
	means   string   // what it is and how a builder measures it
	accepts string   // what is accepted, in words
	def     string   // default as written; "" is none
	must    bool     // an object without it is a mistake
	others  []string // other plausible values, as written, where it is not known
	fill    func(r *reader, n *node, path string, into *T)
	inner   func(prefix string) []Entry // the fields of an object or of a list's objects
	span    span                        // of a quantity
}

// reader collects the mistakes of one file.
type reader struct {
	file   string
	units  []measure.System // in which mistakes are told
	errors Errors

	swaps map[string]string // values that stand in place of the file's, by path
	found map[string]bool   // of them, the paths that this plan has
}

func (r *reader) fail(at Position, path string, err error) {
	r.errors = append(r.errors, &Error{File: r.file, At: at, Path: path, Err: err})
}

// isUnknown reports whether a node is the word that is legal everywhere.
func isUnknown(n *node) bool {
	return n.form == text && strings.EqualFold(strings.TrimSpace(n.text), "unknown")
}

// read fills an object from a node by its table. The node's form may be absent:
// then every field is, and the defaults stand in.
func read[T any](r *reader, n *node, path string, into *T, table []field[T]) {
	given := map[string]*node{}
	switch {
	case n.form == object:
		for _, m := range n.members {
			if m.key == "_note" {
				continue
			}
			if _, twice := given[m.key]; twice {
				r.fail(m.at, join(path, m.key), &measure.Error{Text: m.key, Why: "it is given twice in one object", Class: measure.ErrName})
				continue
			}
			given[m.key] = m.value
			if !known(table, m.key) {
				r.fail(m.at, join(path, m.key), &measure.Error{
					Text: m.key, Want: "one of " + strings.Join(keys(table), ", "), Class: measure.ErrName,
				})
			}
		}
	case n.form != absent && !isUnknown(n):
		r.fail(n.at, path, formError(n, "an object { }"))
		return
	}
	for _, f := range table {
		v := given[f.key]
		if v == nil {
			v = &node{at: n.at}
			if f.must && n.form == object {
				r.fail(n.at, join(path, f.key), &measure.Error{Class: measure.ErrUnknown, Why: "it is missing", Want: f.accepted(r.units...) + `, or "unknown"`})
			}
		}
		f.fill(r, v, join(path, f.key), into)
	}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func known[T any](table []field[T], key string) bool {
	for _, f := range table {
		if f.key == key {
			return true
		}
	}
	return false
}

func keys[T any](table []field[T]) []string {
	out := make([]string, len(table))
	for i, f := range table {
		out[i] = f.key
	}
	return out
}

func formError(n *node, want string) error {
	return &measure.Error{Text: n.text, Why: "it is " + n.form.String(), Want: want, Class: measure.ErrSyntax}
}

// given reads one value: unknown, left out, or whatever the parse makes of its
// text, which must stand in the file as the wanted form. none is the value of
// what is not known.
func given[V any](r *reader, n *node, path, def string, none V, want form, accepts string, parse func(string) (V, error)) Given[V] {
	if value, swapped := r.swaps[path]; swapped {
		r.found[path] = true
		n = &node{form: want, text: value, at: n.at}
		if u := (&node{form: text, text: n.text}); isUnknown(u) {
			n.form = text
		}
	}
	g := Given[V]{Value: none, Path: path, At: n.at}
	if n.form == absent || isUnknown(n) {
		if n.form == absent {
			g.At = Position{}
		}
		if def == "" {
			return g
		}
		g.Text = def
		if v, err := parse(def); err == nil {
			g.Value = v
		}
		if n.form == absent {
			g.Known = measure.Assumed
		}
		return g
	}
	g.Text = n.text
	if n.form != want {
		if want == text {
			accepts += ", in quotes"
		}
		r.fail(n.at, path, formError(n, accepts))
		return g
	}
	v, err := parse(n.text)
	if err != nil {
		r.fail(n.at, path, err)
		return g
	}
	g.Value, g.Known = v, measure.Measured
	return g
}

// A span is the interval a field accepts, as a builder writes it.
type span struct {
	kind   measure.Kind
	lo, hi string
}

// rng turns a span into a range, once for each. The spans are those of the tables; a
// test reads them all.
func (s span) rng() measure.Range {
	if r, ok := ranges.Load(s); ok {
		return r.(measure.Range)
	}
	r := measure.Range{Kind: s.kind, Lo: math.Inf(-1), Hi: math.Inf(1)}
	if x, err := s.kind.Parse(s.lo); err == nil {
		r.Lo = x
	}
	if x, err := s.kind.Parse(s.hi); err == nil {
		r.Hi = x
	}
	ranges.Store(s, r)
	return r
}

var ranges sync.Map // of spans

// words says what the span is in the units of a system, or of one and in brackets of
// another, its ends rounded inward: "a length from 4 ft (1 m) to 196 ft (60 m)".
func (s span) words(of ...measure.System) string {
	return article(s.kind.String()) + " from " + s.ends(s.lo, of, math.Ceil) + " to " + s.ends(s.hi, of, math.Floor)
}

// ends is one end of the span in the units of each system, once where they are the same.
func (s span) ends(text string, of []measure.System, round func(float64) float64) string {
	out := s.end(text, of[0], round)
	for _, other := range of[1:] {
		if said := s.end(text, other, round); said != out {
			out += " (" + said + ")"
		}
	}
	return out
}

// parse reads a number with a unit inside the span.
func (s span) parse(text string, of []measure.System) (float64, error) {
	x, err := s.kind.Parse(text)
	if err != nil {
		return math.NaN(), err
	}
	if !s.rng().Has(x) {
		return math.NaN(), &measure.Error{Text: text, Value: x, Kind: s.kind, Want: s.words(of...), Class: measure.ErrRange}
	}
	return x, nil
}

// accepted is what a field accepts in words, quantities in the units of these systems.
func (f field[T]) accepted(of ...measure.System) string {
	if f.span.lo == "" {
		return f.accepts
	}
	return f.accepts + f.span.words(of...)
}

func (r *reader) quantity(n *node, path, def string, s span) Quantity {
	accepts := ""
	if n.form != text && n.form != absent {
		accepts = s.words(r.units...)
	}
	return given(r, n, path, def, math.NaN(), text, accepts, func(text string) (float64, error) { return s.parse(text, r.units) })
}

func quantity[T any](key string, kind measure.Kind, lo, hi, def, means string, get func(*T) *Quantity) field[T] {
	s := span{kind, lo, hi}
	return field[T]{
		key: key, means: means, span: s, def: def,
		fill: func(r *reader, n *node, path string, into *T) {
			*get(into) = r.quantity(n, path, def, s)
		},
	}
}

func quantities[T any](key string, kind measure.Kind, lo, hi, means string, get func(*T) *[]Quantity) field[T] {
	s := span{kind, lo, hi}
	return field[T]{
		key: key, means: means, accepts: "a list [ ] of texts, each ", span: s,
		fill: func(r *reader, n *node, path string, into *T) {
			each(r, n, path, func(item *node, path string) {
				*get(into) = append(*get(into), r.quantity(item, path, "", s))
			})
		},
	}
}

// each calls f for every item of a list; a list left out or unknown has none.
func each(r *reader, n *node, path string, f func(item *node, path string)) {
	switch {
	case n.form == list:
		for i, item := range n.items {
			f(item, path+"["+strconv.Itoa(i+1)+"]")
		}
	case n.form != absent && !isUnknown(n):
		r.fail(n.at, path, formError(n, "a list [ ]"))
	}
}

func choice[T any](key, def, means string, options []string, get func(*T) *Name) field[T] {
	return named(key, def, means, options, nil, get)
}

// named is a choice whose options need a word of what they are.
func named[T any](key, def, means string, options, names []string, get func(*T) *Name) field[T] {
	accepts := `"` + strings.Join(options, `" or "`) + `"`
	if names != nil {
		var parts []string
		for i, o := range options {
			parts = append(parts, `"`+o+`" (`+names[i]+`)`)
		}
		accepts = strings.Join(parts, " or ")
	}
	parse := func(s string) (string, error) {
		for _, o := range options {
			if strings.EqualFold(o, strings.TrimSpace(s)) {
				return o, nil
			}
		}
		return "", &measure.Error{Text: s, Want: accepts, Class: measure.ErrName}
	}
	return field[T]{
		key: key, means: means, accepts: accepts, def: def,
		fill: func(r *reader, n *node, path string, into *T) {
			*get(into) = given(r, n, path, def, "", text, accepts, parse)
		},
	}
}

const longestText = 200

func word[T any](key, accepts, def, means string, get func(*T) *Name) field[T] {
	parse := func(s string) (string, error) {
		s = strings.TrimSpace(s)
		if s == "" || len(s) > longestText || strings.ContainsFunc(s, unicode.IsControl) {
			return "", &measure.Error{Text: s, Why: "it is empty, too long or not one line", Want: accepts, Class: measure.ErrSyntax}
		}
		return s, nil
	}
	return field[T]{
		key: key, means: means, accepts: accepts, def: def,
		fill: func(r *reader, n *node, path string, into *T) {
			*get(into) = given(r, n, path, def, "", text, accepts, parse)
		},
	}
}

// whole reads a whole number from lo to hi.
func whole(lo, hi int) (accepts string, parse func(string) (int, error)) {
	accepts = "a whole number from " + strconv.Itoa(lo) + " to " + strconv.Itoa(hi)
	return accepts, func(s string) (int, error) {
		i, err := strconv.Atoi(s)
		if err != nil || i < lo || i > hi {
			return 0, &measure.Error{Text: s, Want: accepts, Class: measure.ErrRange}
		}
		return i, nil
	}
}

// count is a whole number. Its default is for a count that is left out: nothing
// stands in for one that is unknown.
func count[T any](key string, lo, hi int, def, means string, get func(*T) *Count) field[T] {
	accepts, parse := whole(lo, hi)
	return field[T]{
		key: key, means: means, accepts: accepts, def: def,
		fill: func(r *reader, n *node, path string, into *T) {
			def := def
			if isUnknown(n) || strings.EqualFold(r.swaps[path], "unknown") {
				def = ""
			}
			*get(into) = given(r, n, path, def, 0, number, accepts, parse)
		},
	}
}

func counts[T any](key string, lo, hi int, means string, get func(*T) *[]Count) field[T] {
	accepts, parse := whole(lo, hi)
	return field[T]{
		key: key, means: means, accepts: "a list [ ], each " + accepts,
		fill: func(r *reader, n *node, path string, into *T) {
			each(r, n, path, func(item *node, path string) {
				*get(into) = append(*get(into), given(r, item, path, "", 0, number, accepts, parse))
			})
		},
	}
}

func price[T any](key, means string, get func(*T) *Quantity) field[T] {
	const accepts = "a number from 0 to 1000000 without unit"
	parse := func(s string) (float64, error) {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil || !(x >= 0 && x <= 1e6) {
			return math.NaN(), &measure.Error{Text: s, Want: accepts, Class: measure.ErrRange}
		}
		return x, nil
	}
	return field[T]{
		key: key, means: means, accepts: accepts,
		fill: func(r *reader, n *node, path string, into *T) {
			*get(into) = given(r, n, path, "", math.NaN(), number, accepts, parse)
		},
	}
}

// section is an object within an object.
func section[T, S any](key, means string, table []field[S], get func(*T) *S) field[T] {
	return field[T]{
		key: key, means: means, accepts: "an object { }",
		fill: func(r *reader, n *node, path string, into *T) {
			read(r, n, path, get(into), table)
		},
		inner: func(prefix string) []Entry { return entries(prefix+key+".", table) },
	}
}

// sections is a list of objects.
func sections[T, S any](key, means string, table []field[S], get func(*T) *[]S) field[T] {
	return field[T]{
		key: key, means: means, accepts: "a list [ ] of objects { }",
		fill: func(r *reader, n *node, path string, into *T) {
			each(r, n, path, func(item *node, path string) {
				var s S
				read(r, item, path, &s, table)
				*get(into) = append(*get(into), s)
			})
		},
		inner: func(prefix string) []Entry { return entries(prefix+key+"[].", table) },
	}
}

// plausible names values that a field might as well have where the file does not
// give it, for finding out whether it decides a verdict.
func plausible[T any](f field[T], others ...string) field[T] {
	f.others = others
	return f
}

// required marks a field without which its object cannot be read.
func required[T any](f field[T]) field[T] {
	f.must = true
	return f
}
