package sheet_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/sheet"
	"example.org/floewright/lumber/measure"
)

var rule = &measure.Source{Title: "An invented rule", Locator: "line 1", Status: measure.OwnChoice}

func verdicts() []measure.Check {
	return []measure.Check{
		{Name: "Deck edge over the water", Kind: measure.Length, Value: 11 * in, Limit: 10 * in, AtLeast: true, Rule: rule},
		{Name: "Tilt", Kind: measure.Angle, Value: 0.2, Limit: 0.1, Rule: rule, Rests: []measure.Assumption{
			{Name: "people", Text: "5 of 185 lb", Known: measure.Assumed, Decides: true}, {Name: "quiet", Text: "x"},
		}},
		measure.Refuse("Mooring", errors.New("nobody gave the wind")),
		{Name: "Ice under one person", Kind: measure.Length, Value: 5 * in, Limit: 4 * in, AtLeast: true, Rule: rule, Hazard: true},
		{Name: "Nothing"},
	}
}

func TestVerdicts(t *testing.T) {
	v := sheet.Verdicts("Checks", verdicts(), measure.US)
	want := []string{"holds", "short", "no answer", "not ruled out by the rule", "no answer"}
	// Codes count in the order in which they are met: the rule, what decides, the refusal.
	notes := []string{"[1]", "[1 2]", "[3]", "[1]", "[]"}
	for i, r := range v.Rows {
		if r.Cells[2] != want[i] || fmt.Sprint(r.Notes) != notes[i] {
			t.Errorf("%s: %q %v, want %q %s", r.Cells[0], r.Cells[2], r.Notes, want[i], notes[i])
		}
	}
	if len(v.Notes) != 3 || !strings.Contains(v.Notes[1].Text, "people: 5 of 185 lb (assumed)") {
		t.Errorf("notes %v", v.Notes)
	}
	d := sheet.Document{Title: "x", Date: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC), Cards: []sheet.Card{{Name: "a", Title: "a", Blocks: []sheet.Block{v}}}}
	page, err := d.HTML()
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{" go ", "safe", "allowed"} {
		if _, body, _ := strings.Cut(page, "</style>"); strings.Contains(body, word) {
			t.Errorf("the page says %q", word)
		}
	}
}

// Print checks as a table for a card.
func ExampleVerdicts() {
	t := sheet.Verdicts("Afloat", []measure.Check{{
		Name: "Deck edge over the water", Kind: measure.Length, Value: 0.28, Limit: 0.25, AtLeast: true,
		Rule: &measure.Source{Title: "An invented rule", Locator: "line 1", Status: measure.OwnChoice},
	}}, measure.SI)
	for _, r := range t.Rows {
		fmt.Println(r.Cells[0]+":", r.Cells[1]+":", r.Cells[2], r.Notes)
	}
	// Output: Deck edge over the water: 280 mm, at least 250 mm: holds [1]
}
