package measure

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
)

// The types below are the forms in which results go out as JSON, in the order of their
// fields. Lists are never null.
type (
	checkJSON struct {
		Name    string       `json:"name"`
		Kind    string       `json:"kind"`
		Unit    string       `json:"unit"`
		Value   Number       `json:"value"`
		Limit   Number       `json:"limit"`
		Steps   []string     `json:"steps"`
		Side    string       `json:"side"`
		Verdict string       `json:"verdict"`
		Rule    *Source      `json:"rule"`
		Factors []Factor     `json:"factors"`
		Rests   []Assumption `json:"rests"`
		Notes   []string     `json:"notes"`
		Error   *errorJSON   `json:"error"`
	}
	sourceJSON struct {
		Title   string `json:"title"`
		Edition string `json:"edition"`
		Locator string `json:"locator"`
		Status  string `json:"status"`
	}
	factorJSON struct {
		Symbol string  `json:"symbol"`
		Name   string  `json:"name"`
		Value  Number  `json:"value"`
		Why    string  `json:"why"`
		Source *Source `json:"source"`
	}
	restJSON struct {
		Path    string `json:"path"`
		Text    string `json:"text"`
		Known   string `json:"known"`
		Decides bool   `json:"decides"`
	}
	errorJSON struct {
		Class string `json:"class"`
		Text  string `json:"text"`
	}
)

// MarshalJSON returns the check as an object: name; kind, of value and limit, and their
// SI unit; value and limit, to six significant digits, null where they are not finite; steps;
// side: "at most" or "at least"; verdict: that of [Check.Verdict], made before rounding,
// and "not ruled out" where Hazard is set and it holds; rule, factors, rests and notes;
// error: its class ([Class]) and text, null where there is none.
func (c Check) MarshalJSON() ([]byte, error) {
	out := checkJSON{
		Name: c.Name, Kind: c.Kind.String(), Unit: c.Kind.Unit(), Value: Number(c.Value), Limit: Number(c.Limit), Steps: append([]string{}, c.Steps...),
		Side: "at most", Verdict: c.Verdict().String(), Rule: c.Rule, Factors: append([]Factor{}, c.Factors...), Rests: append([]Assumption{}, c.Rests...),
		Notes: append([]string{}, c.Notes...),
	}
	if c.AtLeast {
		out.Side = "at least"
	}
	if c.Hazard && c.Verdict() == Holds {
		out.Verdict = "not ruled out"
	}
	if c.Err != nil {
		out.Error = &errorJSON{Class(c.Err), c.Err.Error()}
	}
	return marshal(out)
}

// MarshalJSON returns the source as an object of title, edition, locator and status, the
// last in words.
func (s Source) MarshalJSON() ([]byte, error) {
	return marshal(sourceJSON{s.Title, s.Edition, s.Locator, s.Status.String()})
}

// MarshalJSON returns the factor as an object of symbol, name, value, why and source;
// its value is null where it is no number.
func (f Factor) MarshalJSON() ([]byte, error) {
	return marshal(factorJSON{f.Symbol, f.Name, Number(f.Value), f.Why, f.Source})
}

// MarshalJSON returns the assumption as an object: path: its name; text; known, in words;
// decides.
func (a Assumption) MarshalJSON() ([]byte, error) {
	return marshal(restJSON{a.Name, a.Text, a.Known.String(), a.Decides})
}

// marshal leaves it to who writes the whole whether <, > and & are escaped.
func marshal(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSuffix(b.Bytes(), []byte("\n")), err
}

// Class returns the name of an error's class for programs that pass it on: "syntax",
// "name", "range", "unknown" or "not computed"; "" for nil. "other" is an error of none of
// them: what is no bad input, such as a dock that sinks or capsizes or a frame that falls
// down, and what a file, a context or another library says. The errors of package float and
// of the frames tell theirs by errors.Is.
func Class(err error) string {
	switch {
	case err == nil:
		return ""
	case errors.Is(err, ErrSyntax):
		return "syntax"
	case errors.Is(err, ErrName):
		return "name"
	case errors.Is(err, ErrRange):
		return "range"
	case errors.Is(err, ErrNotComputed):
		return "not computed"
	case errors.Is(err, ErrUnknown):
		return "unknown"
	}
	return "other"
}

// A Number, in the SI unit of what it measures, goes out as JSON with six significant
// digits, as 0 where it is smaller than 1e-9, and as null where it is not finite: what is
// not known has no number.
type Number float64

// MarshalJSON returns the number as JSON; the error is nil.
func (n Number) MarshalJSON() ([]byte, error) {
	x := float64(n)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return []byte("null"), nil
	case math.Abs(x) < 1e-9:
		return []byte("0"), nil
	}
	return json.Marshal(rounded(x))
}

// rounded keeps six significant digits.
func rounded(x float64) float64 {
	p := math.Pow10(5 - int(math.Floor(math.Log10(math.Abs(x)))))
	if math.IsInf(p, 0) || p == 0 {
		return x
	}
	if p < 1 { // powers below one are not exact
		q := math.Round(1 / p)
		return math.Round(x/q) * q
	}
	return math.Round(x*p) / p
}
