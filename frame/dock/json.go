package dock

import (
	"encoding/json"
	"io"
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
//   - topics: title and checks, each as [measure.Check.MarshalJSON] has it; the rests of a
//     check are named by their path in the plan;
//   - deciding and assumed: the inputs that were not measured, as in rests;
//   - cautions: text and source;
//   - season: the year in which the winter begins, how many winters of temperatures are
//     behind it, the dates of ice-on and ice-out that count, those by the table and as
//     remembered, the day on which this winter's ice came, loads with the ice they ask
//     for and when it is there, the calendar with what speaks against a task, and why a
//     part of it is missing;
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

// The types below are the fields of the schema, in the order in which they are
// written.
type (
	reportJSON struct {
		Schema   int                  `json:"schema"`
		Name     string               `json:"name"`
		Status   int                  `json:"status"`
		Printed  string               `json:"printed"`
		Twelve   []twelveJSON         `json:"twelve"`
		Topics   []topicJSON          `json:"topics"`
		Deciding []measure.Assumption `json:"deciding"`
		Assumed  []measure.Assumption `json:"assumed"`
		Cautions []cautionJSON        `json:"cautions"`
		Cutting  *cuttingJSON         `json:"cutting"`
		Bill     *billJSON            `json:"bill"`
		Finish   []coatJSON           `json:"finish"`
		Carry    []haulJSON           `json:"carry"`
		Steps    []stepJSON           `json:"steps"`
		Season   *seasonJSON          `json:"season"`
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
		Title  string          `json:"title"`
		Checks []measure.Check `json:"checks"`
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
		Twelve: []twelveJSON{}, Steps: []stepJSON{}, Topics: []topicJSON{}, Deciding: append([]measure.Assumption{}, r.Deciding...), Assumed: append([]measure.Assumption{}, r.Assumed...), Cautions: []cautionJSON{},
		Finish: []coatJSON{}, Carry: []haulJSON{},
	}
	if r.Units == measure.SI {
		out.Printed = "si"
	}
	for _, t := range r.Topics {
		out.Topics = append(out.Topics, topicJSON{t.Title, append([]measure.Check{}, t.Checks...)})
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

func errorOf(err error) *errorJSON {
	if err == nil {
		return nil
	}
	return &errorJSON{measure.Class(err), err.Error()}
}
