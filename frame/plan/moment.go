package plan

import (
	"strings"
	"time"

	"example.org/floewright/lumber/measure"
)

// The forms of a day and of a minute in a plan file. Times are local to the
// lake; a plan knows no zones.
const (
	dayForm    = "2006-01-02"
	minuteForm = "2006-01-02 15:04"
)

// moment is a date or a date with a time. Its text is kept; Time reads it.
func moment[T any](key, accepts, means, layout string, get func(*T) *Name) field[T] {
	parse := func(s string) (string, error) {
		s = strings.TrimSpace(s)
		t, err := time.Parse(layout, s)
		if err != nil || t.Year() < 1900 || t.Year() > 2200 {
			return "", &measure.Error{Text: s, Why: "it is no such day or time", Want: accepts, Class: measure.ErrSyntax}
		}
		return s, nil
	}
	return field[T]{
		key: key, means: means, accepts: accepts,
		fill: func(r *reader, n *node, path string, into *T) {
			*get(into) = given(r, n, path, "", "", text, accepts, parse)
		},
	}
}

// Time returns a date, or a date and time, of a plan. The second result is false
// where it is not known.
func Time(n Name) (time.Time, bool) {
	for _, layout := range []string{minuteForm, dayForm} {
		if t, err := time.Parse(layout, n.Value); err == nil {
			return t, true
		}
	}
	return time.Time{}, false
}
