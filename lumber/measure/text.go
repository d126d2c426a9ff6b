package measure

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
)

// errOneWay is why a check is not read back.
var errOneWay = errors.New("measure: a check goes out as JSON and is not read back: its numbers are rounded, its verdict was made before")

// UnmarshalJSON refuses: value and limit go out rounded, so a check read back might have
// another verdict than the one that went out. Read the object into a type of your own.
func (*Check) UnmarshalJSON([]byte) error { return errOneWay }

// UnmarshalJSON reads the object that [Assumption.MarshalJSON] writes. The error is
// encoding/json's, or of class [ErrName].
func (a *Assumption) UnmarshalJSON(data []byte) error {
	var in restJSON
	if err := json.Unmarshal(data, &in); err != nil {
		return err
	}
	known := Unknown // the cautious one, where nothing is said
	if in.Known != "" {
		if err := known.UnmarshalText([]byte(in.Known)); err != nil {
			return err
		}
	}
	*a = Assumption{in.Path, in.Text, known, in.Decides}
	return nil
}

// UnmarshalJSON reads the object that [Factor.MarshalJSON] writes, its value NaN where that is
// null. The error is encoding/json's, or of class [ErrName].
func (f *Factor) UnmarshalJSON(data []byte) error {
	in := factorJSON{Value: Number(math.NaN())} // null leaves it
	if err := json.Unmarshal(data, &in); err != nil {
		return err
	}
	*f = Factor{in.Symbol, in.Name, float64(in.Value), in.Why, in.Source}
	return nil
}

// MarshalText returns the words that [Verdict.String] does; the error is nil.
func (v Verdict) MarshalText() ([]byte, error) { return []byte(v.String()), nil }

// UnmarshalText reads the words of [Verdict.String], and "not ruled out", as which a check
// of a hazard that holds goes out. The error is of class [ErrName].
func (v *Verdict) UnmarshalText(text []byte) error {
	if string(text) == "not ruled out" {
		*v = Holds
		return nil
	}
	return named(v, "verdict", text, []Verdict{NoAnswer, Short, Holds})
}

// MarshalText returns the words that [Knowledge.String] does; the error is nil.
func (k Knowledge) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads the words of [Knowledge.String]. The error is of class [ErrName].
func (k *Knowledge) UnmarshalText(text []byte) error {
	return named(k, "knowledge", text, []Knowledge{Unknown, Assumed, Measured})
}

// MarshalText returns the words that [Status.String] does; the error is nil.
func (s Status) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the words of [Status.String]. The error is of class [ErrName].
func (s *Status) UnmarshalText(text []byte) error {
	return named(s, "status", text, []Status{Unstated, Memory, CommonPractice, OwnChoice, Independent, Quoted, Read, Exact})
}

// MarshalText returns the words that [Kind.String] does; the error is nil.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads the words of [Kind.String]. The error is of class [ErrName].
func (k *Kind) UnmarshalText(text []byte) error {
	all := make([]Kind, kinds)
	for i := range all {
		all[i] = Kind(i)
	}
	return named(k, "kind of quantity", text, all)
}

// String returns "us" or "si", as a plan names its units.
func (s System) String() string {
	if s == SI {
		return "si"
	}
	return "us"
}

// MarshalText returns what [System.String] does; the error is nil.
func (s System) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "us" or "si". The error is of class [ErrName].
func (s *System) UnmarshalText(text []byte) error {
	return named(s, "units", text, []System{US, SI})
}

// named sets a value to the one of all that has the given words.
func named[T interface{ String() string }](to *T, field string, text []byte, all []T) error {
	words := string(text)
	i := slices.IndexFunc(all, func(v T) bool { return v.String() == words })
	if i < 0 {
		want := make([]string, len(all))
		for k, v := range all {
			want[k] = v.String()
		}
		return &Error{Field: field, Text: words, Class: ErrName, Want: strings.Join(want, ", ")}
	}
	*to = all[i]
	return nil
}
