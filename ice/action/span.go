package action

import (
	"fmt"
	"math"
	"strconv"

	"example.org/floewright/lumber/measure"
)

// A Span is a range within which a value lies, and who says so. Both ends
// equal is a single value. As an input, the zero Span takes the published one,
// and a nil Source is the caller's own.
type Span struct {
	Name      string
	Low, High float64 // in the SI unit of what Name says
	Source    *measure.Source
}

// caller is the source of what the caller gives: it defines itself.
var caller = &measure.Source{Title: "given by the caller", Status: measure.Exact}

// slip bounds what no source bounds.
var slip = &measure.Source{Title: "a value beyond this is taken for a slip of the pen", Status: measure.OwnChoice}

// or returns the span, the published one for the zero Span, and how it is known.
func (s Span) or(published Span, r measure.Range) (Span, measure.Knowledge, error) {
	if s.Low == 0 && s.High == 0 {
		return published, measure.Assumed, nil
	}
	if err := check(published.Name+", low end", s.Low, r); err != nil {
		return Span{}, measure.Unknown, err
	}
	if err := check(published.Name+", high end", s.High, r); err != nil {
		return Span{}, measure.Unknown, err
	}
	if s.High < s.Low {
		r.Lo, r.OpenLo, r.Source = s.Low, false, caller
		return Span{}, measure.Unknown, r.Check(published.Name+", high end", s.High)
	}
	if s.Source == nil {
		s.Source = caller
	}
	s.Name = published.Name
	return s, measure.Measured, nil
}

// rest tells what a check rests on.
func (s Span) rest(known measure.Knowledge, k measure.Kind) measure.Assumption {
	print := func(x float64) string {
		if k == measure.Ratio {
			return strconv.FormatFloat(x, 'g', 4, 64)
		}
		return k.Format(x, measure.SI)
	}
	text := fmt.Sprintf("%s to %s (%s)", print(s.Low), print(s.High), s.Source)
	return measure.Assumption{Name: s.Name, Text: text, Known: known, Decides: true}
}

// check refuses NaN as not known and the rest out of the range.
func check(field string, x float64, r measure.Range) error {
	if math.IsNaN(x) {
		return unknown(field)
	}
	return r.Check(field, x)
}

func unknown(field string) error {
	return &measure.Error{Field: field, Value: math.NaN(), Class: measure.ErrUnknown}
}

// lesser returns the least of the low ends and the least of the high ends, the
// latter with its name and source: that part governs.
func lesser(first Span, caps []Span) Span {
	out := first
	for _, c := range caps {
		out.Low = math.Min(out.Low, c.Low)
		if c.High < out.High {
			out.High, out.Name, out.Source = c.High, c.Name, c.Source
		}
	}
	return out
}
