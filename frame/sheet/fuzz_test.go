package sheet_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/sheet"
	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// FuzzPictures draws every picture from a few numbers and a name: either an
// error and no picture, or valid XML in which no text lies over another.
func FuzzPictures(f *testing.F) {
	f.Add(7.3, 3.0, 0.1, 0.5, -0.2, 5, "bench")
	f.Add(0.001, 200.0, 1.0, 0.0, 999.0, 40, strings.Repeat("long name ", 30))
	f.Add(math.NaN(), math.Inf(1), 0.0, 1e300, -1e-300, -1, "<&>\x00\xff")
	f.Add(24.0, 0.002, -1.0, 1.04, 0.3, 26, "")
	f.Fuzz(func(t *testing.T, a, b, c, e, g float64, n int, name string) {
		defer sheet.Watch(func(d *svg.Drawing) { apart(t, d) })()
		if len(name) > 500 {
			name = name[:500]
		}
		n = min(max(n, 0), 50)
		u := measure.System(n % 2)
		p := sheet.Plan{Units: u, Length: a, Width: b, Diagonal: c, Ends: [2]string{name, name}}
		m := sheet.Moments{Units: u, Member: name, Length: a, Limit: b, Supports: []float64{0, a}}
		k := sheet.Board{Size: name, Length: a, Kerf: c, Count: n}
		w := sheet.Winter{Units: u, First: time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC), Band: name, Asked: []sheet.Asked{{Name: name, Thick: e}}}
		r := sheet.Righting{Units: u, Rest: c, DeckWet: e, Load: name}
		l := sheet.Lines{Units: u, Length: a, Deck: c, Draft: e, Bed: b, Levels: []sheet.Level{{name, g}, {name, e}}}
		h := sheet.Heeled{Units: u, Width: b, Depth: c, Deck: e, Heel: g, Height: c, Load: name}
		s := sheet.Section{Units: u, Clear: a, JoistThick: b, JoistDepth: c, Deck: e, Broad: a, High: a, Round: n%3 == 0, Middle: g, Name: name, Bears: name, Water: []sheet.Waterline{{name, g}}}
		for i := range n {
			x := float64(i)
			p.Along = append(p.Along, a*x/float64(n))
			p.Floats = append(p.Floats, sheet.Afloat{Name: name, X: a * x / 50, Y: b, Long: e, Broad: c})
			p.Things = append(p.Things, sheet.Thing{Name: name, X: a, Y: b * x / 50})
			m.X, m.Moment = append(m.X, a*x/float64(n)), append(m.Moment, g*x)
			m.Points = append(m.Points, sheet.PointLoad{X: a / 2, Force: g})
			k.Pieces = append(k.Pieces, sheet.Piece{Name: name, Length: b})
			w.Thin, w.Middle, w.Thick = append(w.Thin, c*x), append(w.Middle, (c+e)*x), append(w.Thick, (c+e+e)*x)
			r.Heel, r.Rights = append(r.Heel, e*x/50), append(r.Rights, g*x)
			l.Ties = append(l.Ties, sheet.Tie{name, x, a, b, c, e, g, c, b})
			h.Floats = append(h.Floats, sheet.Endwise{Y: x - 1, Z: g, Broad: a, High: b, Round: n%2 == 0})
			h.People = append(h.People, x*e)
		}
		for _, d := range []drawer{p, m, sheet.Cutting{Units: u, Boards: []sheet.Board{k}}, w, r, l, h, s} {
			pic, err := d.Draw()
			switch {
			case err != nil && pic.SVG != "":
				t.Errorf("%T: a picture beside the error %v", d, err)
			case err != nil && !errors.Is(err, measure.ErrRange):
				t.Errorf("%T: %v", d, err)
			case err == nil:
				wellFormed(t, pic.SVG)
			}
		}
	})
}

// FuzzDocument: whatever the texts, the page is valid XML, and every side holds
// what it must.
func FuzzDocument(f *testing.F) {
	f.Add("dock", "words of a paragraph", "1", 3)
	f.Add("<b>&amp;\x00", "]]><script>alert(1)</script>", "\"'", 60)
	f.Add("x", strings.Repeat("w", 5000), "é*", 1)
	f.Fuzz(func(t *testing.T, title, text, code string, n int) {
		n = min(max(n, 0), 80)
		title, text, code = cutAt(title, 300), cutAt(text, 600), cutAt(code, 30)
		table := sheet.Table{Caption: title, Head: []string{code, text, title}, Notes: []sheet.Note{{code, text}}, Tick: n%2 == 0}
		list := sheet.List{Ordered: n%3 == 0, Tick: n%2 == 0, From: n}
		for range n {
			table.Rows = append(table.Rows, sheet.Row{Cells: []string{text, sheet.WriteIn}, Notes: []string{code}})
			list.Items = append(list.Items, text)
		}
		d := sheet.Document{
			Title: title, Fingerprint: code, Date: time.Date(2027, 1, 1, 0, 0, 0, 0, time.UTC), Method: title, NotChecked: []string{code},
			Cards: []sheet.Card{{Name: "a", Title: title, Blocks: []sheet.Block{sheet.Heading(text), sheet.Paragraph(text), sheet.Stop(code), list, table, sheet.Blanks{{text, code}}}}, {Name: "b"}},
		}
		page, err := d.HTML()
		if err != nil {
			if page != "" {
				t.Error("a page beside an error")
			}
			return
		}
		wellFormed(t, strings.TrimPrefix(page, "<!DOCTYPE html>"))
		if strings.Count(page, sheet.NotSealed) <= strings.Count(page, "<section") {
			t.Error("a side without its foot")
		}
		if strings.Contains(page, "<script") {
			t.Error("a text became an element")
		}
	})
}

func cutAt(s string, n int) string { return s[:min(n, len(s))] }

// FuzzOf: whatever plan can be read has its pages, whole and without a number that is
// none.
func FuzzOf(f *testing.F) {
	f.Add(`{"name": "Nothing known", "frame": "unknown", "floats": "unknown"}`)
	f.Add(`{"name": "Two blocks", "frame": {"length": "12 ft", "width": "6 ft", "joists": {"size": "2x6", "spacing": "24 in"}, "rims": {"size": "2x6"}, "decking": {"size": "2x6"}},
		"floats": [{"name": "block", "shape": "block", "length": "4 ft", "width": "2 ft", "height": "16 in", "mass": "40 lb", "places": [{"along": "3 ft", "across": "3 ft"}, {"along": "9 ft", "across": "3 ft"}], "bears": "under joists", "lies": "across"}]}`)
	f.Fuzz(func(t *testing.T, text string) {
		d, err := dock.Read("fuzz", strings.NewReader(text))
		if err != nil || strings.ContainsAny(text, "%<&+") || strings.Contains(text, "NaN") {
			return // signs that a page with a flaw would hold
		}
		doc, err := sheet.Of(d, reported(t, d, d.Units()), day())
		if err != nil {
			t.Fatal(err)
		}
		page, err := doc.HTML()
		if err != nil {
			t.Skip(err) // a name that fills a side
		}
		sound(t, "fuzz", page, doc)
	})
}
