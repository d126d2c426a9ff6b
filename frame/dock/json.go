package dock

import (
	"encoding/json"
	"errors"
	"io"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// Schema is the number of the form in which [Report.WriteJSON] writes. It grows by
// one when a field is taken away or changes its meaning; fields may be added
// without. A reader refuses a number that it does not know.
const Schema = 1

// WriteJSON writes the report as one JSON object, with two blanks of indent. The
// error is the writer's. report.schema.json beside the source of this package
// describes it in the terms of JSON Schema, draft 2020-12:
//
//   - schema: the number [Schema]; name; status: the exit status of [Report.Status]
//     as a number; printed: "us" or "si", the units of the texts;
//   - twelve: the twelve checks, the worst first: name, verdict, and the names of the
//     checks that answer, the worst first;
//   - steps: the order of work: stage, do, gates, stops and rests;
//   - topics: title and checks. A check has name; kind, of value and limit, and their
//     SI unit; value and limit; steps: what the values 0, 1, ... are called where they
//     are steps of a scale, else empty; side: "at most" or "at least"; verdict: "holds",
//     "short", "no answer", or "not ruled out" where nobody's life may be staked on
//     it; rule, factors with their sources, rests (plan path, text, known and
//     decides), notes, and error;
//   - deciding and assumed: the inputs that were not measured, as in rests;
//   - cautions: text and source;
//   - season: the year in which the winter begins, how many winters of temperatures are
//     behind it, dates of ice-on and ice-out, loads with the ice they ask for and when
//     it is there, the calendar, and why a part of it is missing;
//   - cutting, bill, finish and carry: the lists of [Shop].
//
// Numbers are SI, prices in the plan's currency, rounded to six significant digits;
// what is smaller than 1e-9 is 0. A number that is not known is null, never absent.
// A verdict was made before rounding. The same report gives the same bytes.
func (r *Report) WriteJSON(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(r.json())
}

// MarshalJSON returns the object that [Report.WriteJSON] writes, for a report within
// another JSON value.
func (r *Report) MarshalJSON() ([]byte, error) { return json.Marshal(r.json()) }

// A number is written as null where it is not finite, and rounded.
type number float64

// MarshalJSON writes the number.
func (n number) MarshalJSON() ([]byte, error) {
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

// The types below are the fields of the schema, in the order in which they are
// written.
type (
	reportJSON struct {
		Schema   int           `json:"schema"`
		Name     string        `json:"name"`
		Status   int           `json:"status"`
		Printed  string        `json:"printed"`
		Twelve   []twelveJSON  `json:"twelve"`
		Topics   []topicJSON   `json:"topics"`
		Deciding []restJSON    `json:"deciding"`
		Assumed  []restJSON    `json:"assumed"`
		Cautions []cautionJSON `json:"cautions"`
		Cutting  *cuttingJSON  `json:"cutting"`
		Bill     *billJSON     `json:"bill"`
		Finish   []coatJSON    `json:"finish"`
		Carry    []haulJSON    `json:"carry"`
		Steps    []stepJSON    `json:"steps"`
		Season   *seasonJSON   `json:"season"`
	}
	twelveJSON struct {
		Name    string   `json:"name"`
		Verdict string   `json:"verdict"`
		Checks  []string `json:"checks"`
	}
	stepJSON struct {
		Stage string   `json:"stage"`
		Do    string   `json:"do"`
		Gates []string `json:"gates"`
		Stops []string `json:"stops"`
		Rests []string `json:"rests"`
	}
	topicJSON struct {
		Title  string      `json:"title"`
		Checks []checkJSON `json:"checks"`
	}
	checkJSON struct {
		Name    string       `json:"name"`
		Kind    string       `json:"kind"`
		Unit    string       `json:"unit"`
		Value   number       `json:"value"`
		Limit   number       `json:"limit"`
		Steps   []string     `json:"steps"`
		Side    string       `json:"side"`
		Verdict string       `json:"verdict"`
		Rule    *sourceJSON  `json:"rule"`
		Factors []factorJSON `json:"factors"`
		Rests   []restJSON   `json:"rests"`
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
		Symbol string      `json:"symbol"`
		Name   string      `json:"name"`
		Value  number      `json:"value"`
		Why    string      `json:"why"`
		Source *sourceJSON `json:"source"`
	}
	restJSON struct {
		Path    string `json:"path"`
		Text    string `json:"text"`
		Known   string `json:"known"`
		Decides bool   `json:"decides"`
	}
	cautionJSON struct {
		Text   string `json:"text"`
		Source string `json:"source"`
	}
	errorJSON struct {
		Class string `json:"class"`
		Text  string `json:"text"`
	}
)

func (r *Report) json() reportJSON {
	out := reportJSON{
		Schema: Schema, Name: r.Name, Status: int(r.Status()), Printed: "us",
		Twelve: []twelveJSON{}, Steps: []stepJSON{}, Topics: []topicJSON{}, Deciding: restsJSON(r.Deciding), Assumed: restsJSON(r.Assumed), Cautions: []cautionJSON{},
		Finish: []coatJSON{}, Carry: []haulJSON{},
	}
	if r.Units == measure.SI {
		out.Printed = "si"
	}
	for _, t := range r.Topics {
		topic := topicJSON{Title: t.Title, Checks: []checkJSON{}}
		for _, c := range t.Checks {
			topic.Checks = append(topic.Checks, checkOf(c))
		}
		out.Topics = append(out.Topics, topic)
	}
	for _, h := range r.Twelve {
		one := twelveJSON{Name: h.Name, Verdict: strings.ToLower(words(h.worst())), Checks: []string{}}
		for _, c := range h.Checks {
			one.Checks = append(one.Checks, c.Name)
		}
		out.Twelve = append(out.Twelve, one)
	}
	for _, s := range r.Steps {
		out.Steps = append(out.Steps, stepJSON{s.Stage, s.Do, texts(s.Gates), texts(s.Stops), texts(s.Rests)})
	}
	for _, c := range r.Cautions {
		out.Cautions = append(out.Cautions, cautionJSON(c))
	}
	if r.Shop != nil {
		out.shop(r.Shop)
	}
	if r.Season != nil {
		out.Season = seasonOf(r.Season)
	}
	return out
}

// texts is never null.
func texts(s []string) []string { return append([]string{}, s...) }

func checkOf(c measure.Check) checkJSON {
	out := checkJSON{
		Name: c.Name, Kind: c.Kind.String(), Unit: unitOf(c.Kind), Value: number(c.Value), Limit: number(c.Limit), Steps: texts(c.Steps), Side: "at most",
		Verdict: strings.ToLower(words(c)), Rule: sourceOf(c.Rule), Factors: []factorJSON{}, Rests: restsJSON(c.Rests),
		Notes: texts(c.Notes), Error: errorOf(c.Err),
	}
	if c.AtLeast {
		out.Side = "at least"
	}
	for _, f := range c.Factors {
		out.Factors = append(out.Factors, factorJSON{f.Symbol, f.Name, number(f.Value), f.Why, sourceOf(f.Source)})
	}
	return out
}

func restsJSON(as []measure.Assumption) []restJSON {
	out := make([]restJSON, len(as))
	for i, a := range as {
		out[i] = restJSON{a.Name, a.Text, a.Known.String(), a.Decides}
	}
	return out
}

func sourceOf(s *measure.Source) *sourceJSON {
	if s == nil {
		return nil
	}
	return &sourceJSON{s.Title, s.Edition, s.Locator, s.Status.String()}
}

// errorOf names the class by its first word in the list of package measure.
func errorOf(err error) *errorJSON {
	if err == nil {
		return nil
	}
	out := &errorJSON{Class: "other", Text: err.Error()}
	for _, c := range []struct {
		class error
		name  string
	}{
		{measure.ErrSyntax, "syntax"},
		{measure.ErrName, "name"},
		{measure.ErrRange, "range"},
		{measure.ErrNotComputed, "not computed"},
		{measure.ErrUnknown, "unknown"},
	} {
		if errors.Is(err, c.class) {
			out.Class = c.name
			break
		}
	}
	return out
}

// unitOf returns the SI unit of a kind as the documentation of package measure
// has it, 1 for a bare number and for a share.
func unitOf(k measure.Kind) string {
	return map[measure.Kind]string{
		measure.Length: "m", measure.Area: "m²", measure.Volume: "m³", measure.Mass: "kg", measure.Force: "N",
		measure.Pressure: "Pa", measure.Stress: "Pa", measure.LineLoad: "N/m", measure.Moment: "N·m", measure.Density: "kg/m³",
		measure.Speed: "m/s", measure.Temperature: "°C", measure.TemperatureDifference: "C deg", measure.DegreeDays: "C-days",
		measure.Angle: "rad", measure.Time: "s", measure.Ratio: "1", measure.Percent: "1", measure.Count: "1",
	}[k]
}
