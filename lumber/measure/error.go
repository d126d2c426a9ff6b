package measure

import (
	"errors"
	"math"
	"strconv"
	"strings"
)

// The classes of error that bad input gives. An [*Error] belongs to one of
// them; errors.Is finds it.
var (
	ErrSyntax      = errors.New("cannot be read")
	ErrName        = errors.New("unknown name")
	ErrRange       = errors.New("out of range")
	ErrUnknown     = errors.New("not known")
	ErrNotComputed = errors.New("not computed yet")
)

// A Range is the interval a value may lie in and who set it. The bounds belong
// to the range unless said otherwise.
type Range struct {
	Kind           Kind
	Lo, Hi         float64 // in the SI unit of Kind; an infinity leaves that side open
	OpenLo, OpenHi bool    // the bound itself is outside
	Source         *Source
}

// Has reports whether x is a number inside the range. NaN never is; an infinity
// never is.
func (r Range) Has(x float64) bool {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return false
	}
	lo, hi := x >= r.Lo, x <= r.Hi
	if r.OpenLo {
		lo = x > r.Lo
	}
	if r.OpenHi {
		hi = x < r.Hi
	}
	return lo && hi
}

// Check returns nil if x, in the SI unit of Kind, lies in the range and an [*Error]
// of class [ErrRange] naming the field otherwise.
func (r Range) Check(field string, x float64) error {
	if r.Has(x) {
		return nil
	}
	return &Error{Field: field, Kind: r.Kind, Value: x, Range: r, Class: ErrRange}
}

// String returns the range in words, in SI, but times of an hour and more in hours or days: "more than 0 m, at most 3 m".
func (r Range) String() string { return r.words(r.Kind.si) }

// words returns the range with its ends as they are printed. An end that prints as
// nothing but is more is told by "more than".
func (r Range) words(print func(float64) string) string {
	var parts []string
	if !math.IsInf(r.Lo, -1) {
		word, lo := "at least ", print(r.Lo)
		if r.OpenLo || r.Lo > 0 && lo == print(0) {
			word = "more than "
		}
		parts = append(parts, word+lo)
	}
	if !math.IsInf(r.Hi, 1) {
		word := "at most "
		if r.OpenHi {
			word = "less than "
		}
		parts = append(parts, word+print(r.Hi))
	}
	if len(parts) == 0 {
		return "a finite number"
	}
	return strings.Join(parts, ", ")
}

// An Error reports one bad input: which field, what was given, what is
// accepted, and who set that range.
type Error struct {
	Field string  // the name the doc comment or the plan uses
	Text  string  // what was given, where it was text
	Kind  Kind    // of Value
	Value float64 // what was given, where it was a number
	Range Range   // accepted, where Class is ErrRange
	Why   string  // what is wrong with it, in words, where Class does not say it
	Want  string  // what is accepted, in words, where a Range does not say it
	Class error   // ErrSyntax, ErrName, ErrRange, ErrUnknown or ErrNotComputed
}

// Error returns field, value, and what was wanted, in SI, numbers to six digits or as many
// as tell the value from the end of the range that it passes. [RestateError] has it in the
// units of a reader.
func (e *Error) Error() string {
	return e.text(func(k Kind, x float64, more int) string {
		if more > 0 {
			return k.si(x)
		}
		return k.si(sixDigits(x))
	})
}

// in returns the text of [Error.Error] in the units of a system, from the numbers.
func (e *Error) in(s System) string {
	return e.text(func(k Kind, x float64, more int) string { return k.told(x, s, more) })
}

func (e *Error) text(print func(k Kind, x float64, more int) string) string {
	var what string
	want := e.Want
	switch e.Class {
	case nil:
	case ErrRange:
		value, accepted := e.apart(print)
		what = value
		if e.Text != "" {
			what = strconv.Quote(e.Text)
		}
		what += " is out of range"
		if want == "" {
			want = accepted
		}
		if s := e.Range.Source; s != nil {
			want += " (" + s.String() + ")"
		}
	case ErrUnknown, ErrNotComputed:
		what = e.Class.Error()
	default:
		what = strconv.Quote(e.Text) + " " + e.Class.Error()
	}
	parts := make([]string, 0, 3)
	for _, p := range []string{e.Field, what, e.Why} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	text := strings.Join(parts, ": ")
	if want != "" {
		text += "; want " + want
	}
	return text
}

// apart prints the value and the range with the fewest digits, four more at most, with
// which the value does not read like the end that it passes; closer ones are "just over" or
// "just under" it.
func (e *Error) apart(print func(k Kind, x float64, more int) string) (value, accepted string) {
	end := e.Range.Hi
	if !(e.Value >= end) {
		end = e.Range.Lo
	}
	for more := range 5 {
		value = print(e.Kind, e.Value, more)
		if e.Value == end || value != print(e.Range.Kind, end, more) {
			return value, e.Range.words(func(x float64) string { return print(e.Range.Kind, x, more) })
		}
	}
	side := "just under "
	if e.Value > end {
		side = "just over "
	}
	return side + print(e.Kind, e.Value, 0), e.Range.words(func(x float64) string { return print(e.Range.Kind, x, 0) })
}

// Unwrap returns the class, for errors.Is.
func (e *Error) Unwrap() error { return e.Class }

// sixDigits rounds a number to six significant digits.
func sixDigits(x float64) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 6, 64), 64)
	if err != nil {
		return x
	}
	return rounded
}

// shortest prints a number with the fewest digits that return it.
func shortest(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
