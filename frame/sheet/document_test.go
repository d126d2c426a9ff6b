package sheet_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/sheet"
	"example.org/floewright/lumber/measure"
)

// demoDocument is an invented set of cards with a block of every kind.
func demoDocument(t testing.TB, u measure.System) *sheet.Document {
	t.Helper()
	var pics []sheet.Picture
	for _, d := range demos(u) {
		p, err := d.Draw()
		if err != nil {
			t.Fatal(err)
		}
		pics = append(pics, p)
	}
	cuts := sheet.Table{
		Caption: "Pieces", Tick: true, Head: []string{"piece", "from", "length", "cut end"},
		Notes: []sheet.Note{{"1", "Coat the cut end before it leaves the bench."}, {"2", "Never used in this table."}, {"b*", "Fits the drum; measure the drum first."}},
	}
	for i := range 42 {
		r := sheet.Row{Cells: []string{fmt.Sprintf("piece %d", i+1), "2x8, 12 ft", measure.Length.Format(float64(20+i)*in, u), sheet.WriteIn}}
		if i%5 == 0 {
			r.Notes = []string{"1"}
		}
		if i == 40 {
			r.Notes = []string{"b*", "1"}
		}
		cuts.Rows = append(cuts.Rows, r)
	}
	return &sheet.Document{
		Title: "Otter Point camp swim platform (invented)", Fingerprint: "5f1c-09ab-77e2", Date: time.Date(2027, time.February, 6, 0, 0, 0, 0, time.UTC),
		Units: u, Method: "Floewright, an invented edition",
		NotChecked: []string{"the frame's racking while it is pulled", "the mooring in a storm from the north", "joints of a make that prints no strength"},
		Cards: []sheet.Card{
			{Name: "layout", Title: "Layout", Blocks: []sheet.Block{pics[0], sheet.Paragraph("Measure every mark from the same end, with the tape hooked once. Then measure both diagonals."), sheet.Blanks{{"First diagonal", "ft, in"}, {"Second diagonal", "ft, in"}}}},
			{Name: "section", Title: "Bay, drum and water", Blocks: []sheet.Block{pics[1], pics[2]}},
			{Name: "cut-list", Title: "Cut list", Blocks: []sheet.Block{pics[4], sheet.Heading("By piece"), cuts}},
			{Name: "ice", Title: "Assembly on the ice", Blocks: []sheet.Block{
				sheet.Stop("until two holes at the pad were drilled today and both are written down here."),
				sheet.Blanks{{"Thinnest hole, clear ice", "in"}, {"Drilled at", "o'clock"}},
				sheet.List{Ordered: true, Items: []string{"Lay the rims on blocks, crowns up.", "Stand the joists at their marks and fasten the ends.", "Bring one drum at a time; nobody stands where a drum waits.", "Lay every fourth deck board."}},
				sheet.Stop("if water stands on the ice or a crack runs wet."),
				sheet.List{Ordered: true, From: 5, Tick: true, Items: []string{"Measure the diagonals.", "Lay the other boards."}},
				sheet.Heading("Take along"),
				sheet.List{Tick: true, Items: []string{"ice picks, on every neck", "a rope of 60 ft", "the drill and this card"}},
			}},
			{Name: "winter", Title: "The winter", Blocks: []sheet.Block{pics[6]}},
			{Name: "launch", Title: "Break-up and launch", Blocks: []sheet.Block{pics[7], sheet.Table{
				Caption: "After launch", Head: []string{"corner", "expected over water", "measured", "what it means"},
				Rows: []sheet.Row{{Cells: []string{"shore, north", "1 ft 4 in", sheet.WriteIn, "2 in lower: look for water in the drum nearest to it & pump"}}, {Cells: []string{"lake, south"}}},
			}}},
			{Name: "engineer", Title: "For an engineer", Blocks: []sheet.Block{pics[3], pics[5]}},
		},
	}
}

func TestDocument(t *testing.T) {
	for name, u := range map[string]measure.System{"us": measure.US, "si": measure.SI} {
		d := demoDocument(t, u)
		page, err := d.HTML()
		if err != nil {
			t.Fatal(err)
		}
		golden(t, name+"-sheet.html", page)
		wellFormed(t, strings.TrimPrefix(page, "<!DOCTYPE html>"))
		for _, bad := range []string{"<script", "http://", "https://", "url(\"", "@import", "onclick", "<img"} {
			if strings.Contains(strings.ReplaceAll(page, `xmlns="http://www.w3.org/2000/svg"`, ""), bad) {
				t.Errorf("%s: the page holds %s", name, bad)
			}
		}
		n := strings.Count(page, `<section class="sheet"`)
		for _, every := range []string{sheet.NotSealed, "Not checked: the frame&#39;s racking", "Plan 5f1c-09ab-77e2; 6 February 2027; "} {
			if got := strings.Count(page, every); got != n+1 {
				t.Errorf("%s: %q stands %d times on %d sides", name, every, got, n)
			}
		}
		for _, id := range links(page) {
			if strings.Count(page, `id="`+id+`"`) != 1 {
				t.Errorf("%s: a link to %s, which is there %d times", name, id, strings.Count(page, `id="`+id+`"`))
			}
		}
		if strings.Contains(page, "Never used") {
			t.Error("a note without a row is printed")
		}
		if strings.Count(page, "piece 17</th>")+strings.Count(page, "piece 17 <") != 1 {
			t.Error("a row was lost or doubled")
		}
		if !strings.Contains(page, "Cut list (2 of ") || !strings.Contains(page, "Pieces (continued)") || strings.Contains(page, "(continued) (continued)") {
			t.Error("the cut list is not carried on as it should be")
		}
		again, _ := demoDocument(t, u).HTML()
		if again != page {
			t.Error("the same data give another page")
		}
		files, err := d.Files()
		if err != nil || len(files) != 9 || files[0].Name != "sheet.html" || files[1].Name != "plan.svg" {
			t.Errorf("%d files, %v", len(files), err)
		}
	}
}

// links returns the targets of all links.
func links(page string) (out []string) {
	for _, part := range strings.Split(page, `href="#`)[1:] {
		id, _, _ := strings.Cut(part, `"`)
		out = append(out, id)
	}
	return out
}

func TestDocumentRefuses(t *testing.T) {
	day := time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC)
	pic := sheet.Picture{Name: "p", Title: "p", SVG: "<svg/>", Width: 10, Height: 5}
	with := func(cards ...sheet.Card) sheet.Document { return sheet.Document{Title: "x", Date: day, Cards: cards} }
	for name, c := range map[string]struct {
		doc  sheet.Document
		want error
	}{
		"no title":      {sheet.Document{Date: day}, measure.ErrUnknown},
		"no date":       {sheet.Document{Title: "x"}, measure.ErrUnknown},
		"card name":     {with(sheet.Card{Name: "A b"}), measure.ErrSyntax},
		"two cards":     {with(sheet.Card{Name: "a"}, sheet.Card{Name: "a"}), measure.ErrName},
		"nil block":     {with(sheet.Card{Name: "a", Blocks: []sheet.Block{nil}}), measure.ErrUnknown},
		"two pictures":  {with(sheet.Card{Name: "a", Blocks: []sheet.Block{pic, pic}}), measure.ErrName},
		"empty picture": {with(sheet.Card{Name: "a", Blocks: []sheet.Block{sheet.Picture{Name: "p"}}}), measure.ErrUnknown},
		"nan picture":   {with(sheet.Card{Name: "a", Blocks: []sheet.Block{sheet.Picture{Name: "p", SVG: "x", Width: math.NaN(), Height: 1}}}), measure.ErrUnknown},
		"long text":     {with(sheet.Card{Name: "a", Blocks: []sheet.Block{sheet.Paragraph(strings.Repeat("word ", 3000))}}), sheet.ErrTall},
		"tall row":      {with(sheet.Card{Name: "a", Blocks: []sheet.Block{sheet.Table{Head: []string{"h"}, Rows: []sheet.Row{{Cells: []string{strings.Repeat("word ", 3000)}}}}}}), sheet.ErrTall},
		"foot":          {sheet.Document{Title: "x", Date: day, Method: strings.Repeat("word ", 3000), Cards: []sheet.Card{{Name: "a", Blocks: []sheet.Block{sheet.Paragraph("x")}}}}, sheet.ErrTall},
	} {
		if page, err := c.doc.HTML(); !errors.Is(err, c.want) || page != "" {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
		if files, err := c.doc.Files(); !errors.Is(err, c.want) || files != nil {
			t.Errorf("%s: files: %v, want %v", name, err, c.want)
		}
	}
	empty := with(sheet.Card{Name: "a", Title: "A card with nothing on it yet", Blocks: []sheet.Block{sheet.List{}, sheet.Blanks{}, sheet.Table{}, sheet.Paragraph("")}})
	page, err := empty.HTML()
	if err != nil || !strings.Contains(page, "nothing on it yet") {
		t.Errorf("an empty card: %v", err)
	}
	wellFormed(t, strings.TrimPrefix(page, "<!DOCTYPE html>"))
}

// TestSplits lays out cards of growing length: no item is lost or doubled, and
// the steps' numbers go on where they stopped.
func TestSplits(t *testing.T) {
	for n := 1; n < 130; n += 16 {
		list := sheet.List{Ordered: true}
		rows := sheet.Table{Head: []string{"a", "b"}}
		var blanks sheet.Blanks
		for i := range n {
			list.Items = append(list.Items, fmt.Sprintf("step-%d- %s", i, strings.Repeat("long ", i%40)))
			rows.Rows = append(rows.Rows, sheet.Row{Cells: []string{fmt.Sprintf("row-%d-", i), strings.Repeat("wide ", i%60)}})
			blanks = append(blanks, sheet.Blank{Label: fmt.Sprintf("blank-%d-", i)})
		}
		d := sheet.Document{Title: "x", Date: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC), Cards: []sheet.Card{{Name: "a", Title: "a", Blocks: []sheet.Block{list, sheet.Heading("rows"), rows, blanks}}}}
		page, err := d.HTML()
		if err != nil {
			t.Fatal(err)
		}
		wellFormed(t, strings.TrimPrefix(page, "<!DOCTYPE html>"))
		for i := range n {
			for _, kind := range []string{"step", "row", "blank"} {
				if got := strings.Count(page, fmt.Sprintf("%s-%d-", kind, i)); got != 1 {
					t.Errorf("%d items: %s %d stands %d times", n, kind, i, got)
				}
			}
		}
		for _, part := range strings.Split(page, "<ol")[1:] {
			from, first := 1, 0
			fmt.Sscanf(part, " start=\"%d\"", &from)
			_, at, _ := strings.Cut(part, "step-")
			fmt.Sscanf(at, "%d-", &first)
			if from != first+1 {
				t.Errorf("a list that begins with step %d is numbered from %d", first, from)
			}
		}
		if strings.Contains(page, "rows</h3>\n</div>") {
			t.Error("a heading stands alone at the foot of a side")
		}
	}
}
