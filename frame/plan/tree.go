package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/floewright/lumber/measure"
)

// A form is what a JSON value is.
type form int

const (
	absent form = iota
	object
	list
	text
	number
	other // true, false, null
)

func (f form) String() string {
	return [...]string{"nothing", "an object", "a list", "a text", "a number", "true, false or null"}[f]
}

// A node is a JSON value with its place in the file.
type node struct {
	form    form
	at      Position
	text    string // of a text, a number, or another value, as written
	members []member
	items   []*node
}

type member struct {
	key   string
	at    Position
	value *node
}

// member returns what an object has by a name, nil if it has none.
func (n *node) member(key string) *node {
	for _, m := range n.members {
		if m.key == key {
			return m.value
		}
	}
	return nil
}

// lacks says what is wrong with a path that names no value of the file whose root is n:
// a place in a list that is not there, or no field with one value.
func (n *node) lacks(path string) error {
	e := &measure.Error{
		Text: path[strings.LastIndex(path, ".")+1:], Class: measure.ErrName,
		Want: `a field with one value, as Explain lists them, "floats[1].mass" for the first of a list`,
	}
	field := index.ReplaceAllString(path, "[]")
	if _, known := others()[strings.TrimSuffix(field, "[]")]; !known {
		return e
	}
	done := ""
	for step := range strings.SplitSeq(path, ".") {
		key, at, listed := strings.Cut(step, "[")
		if n = n.member(key); n == nil {
			n = &node{} // left out
		}
		if listed {
			i, err := strconv.Atoi(strings.TrimSuffix(at, "]"))
			if err != nil || i < 1 || i > len(n.items) {
				e.Text, e.Why = done+step, "there is no such place in the list"
				e.Want = "a place from 1 to " + strconv.Itoa(len(n.items))
				if len(n.items) == 0 {
					e.Want = "a list with something in it"
				}
				return e
			}
			n = n.items[i-1]
		}
		done += step + "."
	}
	return e
}

const (
	maxSize  = 1 << 20
	maxDepth = 16
)

// parser builds nodes from the tokens of encoding/json, which checks the
// syntax; it adds the place of each token.
type parser struct {
	data []byte
	dec  *json.Decoder
}

// parse reads one JSON value. The error is a *fault.
func parse(r io.Reader) (*node, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxSize+1))
	if err != nil {
		return nil, &fault{at: Position{1, 1}, err: err}
	}
	if len(data) > maxSize {
		return nil, wrong(Position{1, 1}, fmt.Errorf("the file is larger than %d bytes", maxSize))
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if i := invalidUTF8(data); i >= 0 {
		return nil, wrong(locate(data, i), errors.New("the file is not UTF-8 text"))
	}
	p := &parser{data: data, dec: json.NewDecoder(bytes.NewReader(data))}
	p.dec.UseNumber()
	n, err := p.value(0)
	if err != nil {
		return nil, err
	}
	if at := p.next(); at < len(data) {
		return nil, wrong(locate(data, at), errors.New("something follows the plan"))
	}
	return n, nil
}

// ErrJSON is the class of a file that is no plan at all: it is no JSON, no object, not
// UTF-8, cut short, too deep or too large. Such an error is of class [measure.ErrSyntax]
// too. A reader's own error is of neither; both end the reading.
var ErrJSON = errors.New("no JSON object")

// A fault is what ends the reading: the reader's error, or one of the form.
type fault struct {
	at   Position
	err  error
	form bool // of classes ErrJSON and measure.ErrSyntax
}

func (f *fault) Error() string { return f.err.Error() }
func (f *fault) Unwrap() []error {
	if !f.form {
		return []error{f.err}
	}
	return []error{f.err, ErrJSON, measure.ErrSyntax}
}

func wrong(at Position, err error) *fault { return &fault{at, err, true} }

// next returns the offset of the next token.
func (p *parser) next() int {
	i := int(p.dec.InputOffset())
	for i < len(p.data) && bytes.IndexByte([]byte(" \t\r\n,:"), p.data[i]) >= 0 {
		i++
	}
	return i
}

func (p *parser) token() (json.Token, Position, error) {
	at := p.next()
	tok, err := p.dec.Token()
	if err == nil {
		return tok, locate(p.data, at), nil
	}
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		at = p.offender(syntax, at)
		err = errors.New(syntax.Error() + hint(syntax.Error()))
	case errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF):
		at = len(p.data)
		err = errors.New("the file ends too early")
	}
	return nil, Position{}, wrong(locate(p.data, at), err)
}

// offender returns the offset of the character that a syntax error names, in or
// behind the token that starts at from: the error's own offset counts from where
// the decoder happened to start reading.
func (p *parser) offender(e *json.SyntaxError, from int) int {
	for at, r := range string(p.data[min(from, len(p.data)):]) {
		if strings.HasPrefix(e.Error(), "invalid character "+strconv.QuoteRune(r)) {
			return from + at
		}
	}
	return from
}

// hint says what a builder has most likely forgotten.
func hint(message string) string {
	switch {
	case strings.Contains(message, "after object key:value pair"), strings.Contains(message, "after array element"):
		return "; want a comma before it, or the closing bracket"
	case strings.Contains(message, "looking for beginning of object key"), strings.Contains(message, "looking for beginning of value"):
		return "; want a value or a name in quotes; is there a comma too many?"
	case strings.Contains(message, "after object key"):
		return "; want a colon"
	}
	return ""
}

func (p *parser) value(depth int) (*node, error) {
	tok, at, err := p.token()
	if err != nil {
		return nil, err
	}
	if depth > maxDepth {
		return nil, wrong(at, fmt.Errorf("nested deeper than %d levels", maxDepth))
	}
	n := &node{at: at}
	switch v := tok.(type) {
	case json.Delim:
		n.form = object
		if v == '[' {
			n.form = list
		}
		return n, p.children(n, depth)
	case string:
		n.form, n.text = text, v
	case json.Number:
		n.form, n.text = number, v.String()
	default:
		n.form, n.text = other, fmt.Sprint(v)
		if v == nil {
			n.text = "null"
		}
	}
	return n, nil
}

func (p *parser) children(n *node, depth int) error {
	for p.dec.More() {
		if n.form == list {
			item, err := p.value(depth + 1)
			if err != nil {
				return err
			}
			n.items = append(n.items, item)
			continue
		}
		key, at, err := p.token()
		if err != nil {
			return err
		}
		value, err := p.value(depth + 1)
		if err != nil {
			return err
		}
		name, _ := key.(string) // encoding/json lets nothing else stand for a key
		n.members = append(n.members, member{name, at, value})
	}
	_, _, err := p.token() // the closing bracket
	return err
}

// invalidUTF8 returns the offset of the first byte that is not UTF-8, or -1.
func invalidUTF8(data []byte) int {
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return -1
}

// locate turns an offset into line and column, in characters from 1.
func locate(data []byte, offset int) Position {
	offset = min(offset, len(data))
	before := data[:offset]
	line := bytes.Count(before, []byte("\n")) + 1
	start := bytes.LastIndexByte(before, '\n') + 1
	return Position{line, utf8.RuneCount(before[start:]) + 1}
}
