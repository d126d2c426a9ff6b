package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// A Table has a head and rows; the first cell of a row names it. It is carried
// on over sides with its head, each side with the notes its rows use.
type Table struct {
	Caption string
	Head    []string
	Rows    []Row
	Notes   []Note
	Tick    bool // a box before each row

	cols []float64 // of a table that is carried on: the widths stay
}

// A Row is one line of a table. Cells beyond the head are dropped and missing
// ones stay empty; a cell that is [WriteIn] is a line to write on.
type Row struct {
	Cells []string
	Notes []string // codes of the notes that belong to it
}

// A Note explains a code that rows bear.
type Note struct{ Code, Text string }

// WriteIn, as the text of a cell, leaves a line to write on.
const WriteIn = "____"

const (
	cellPad  = 4.0 // millimetres to the left and right of a cell's text
	cellHigh = 2.4 // and over and under it
	tickWide = 15.0
)

// text returns what a row's cell holds, without its codes.
func (r Row) text(j int) string {
	if j < len(r.Cells) {
		return r.Cells[j]
	}
	return ""
}

// codes returns the row's codes as they are printed: " [1] [2]".
func (r Row) codes() string {
	s := ""
	for _, c := range r.Notes {
		s += " [" + c + "]"
	}
	return s
}

// columns returns the width of each column in millimetres: what its longest
// text asks for, the wide ones giving way to the narrow.
func (b Table) columns() []float64 {
	n := len(b.Head)
	if n == 0 || b.cols != nil {
		return b.cols
	}
	ask := make([]float64, n)
	for j := range ask {
		ask[j] = widthOf(b.Head[j], true) + cellPad
		for _, r := range b.Rows {
			w := widthOf(r.text(j), j == 0) + cellPad
			if j == 0 {
				w += widthOf(r.codes(), true)
			}
			if r.text(j) == WriteIn {
				w = 30
			}
			ask[j] = max(ask[j], w)
		}
	}
	left := pageWide
	if b.Tick {
		left -= tickWide
	}
	// A column that asks for less than an even share of what is left gets it,
	// the narrowest first; the others share the rest evenly.
	order := make([]int, n)
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(a, c int) int {
		switch {
		case ask[a] < ask[c]:
			return -1
		case ask[a] > ask[c]:
			return 1
		}
		return 0
	})
	out := make([]float64, n)
	for k, j := range order {
		out[j] = min(ask[j], left/float64(n-k))
		left -= out[j]
	}
	if left > 0 { // spare width goes to the first column, half of it
		out[0] += left / 2
		for j := range out {
			out[j] += left / 2 / float64(n)
		}
	}
	return out
}

func (b Table) rowHeight(cols []float64, r Row) float64 {
	lines := 1.0
	for j, w := range cols {
		text := r.text(j)
		if j == 0 {
			text += r.codes()
		}
		lines = max(lines, folded(bodySize, w-cellPad, j == 0, text))
	}
	h := bodyLine*lines + cellHigh
	for _, c := range r.Cells {
		if c == WriteIn {
			h = max(h, blankHigh)
		}
	}
	return h
}

// top returns the height of caption and head.
func (b Table) top(cols []float64) float64 {
	h := bodyLine + cellHigh + 4
	for j, w := range cols {
		h = max(h, bodyLine*folded(bodySize, w-cellPad, true, b.Head[j])+cellHigh+4)
	}
	if b.Caption != "" {
		h += bodyLine*folded(bodySize, pageWide, true, b.Caption+" (continued)") + 2
	}
	return h
}

// used returns the notes that rows refer to, in the order of the table's notes.
func (b Table) used(rows []Row) []Note {
	var out []Note
	for _, n := range b.Notes {
		if slices.ContainsFunc(rows, func(r Row) bool { return slices.Contains(r.Notes, n.Code) }) {
			out = append(out, n)
		}
	}
	return out
}

func noteHeight(notes []Note) float64 {
	h := 0.0
	for _, n := range notes {
		h += footLine*1.1*folded(footSize*1.1, pageWide, false, "["+n.Code+"] "+n.Text) + 0.5
	}
	return h
}

const underNotes = 3.0 // millimetres between notes and what follows

func (b Table) height() float64 {
	cols := b.columns()
	h := b.top(cols) + noteHeight(b.used(b.Rows)) + 2
	if len(b.used(b.Rows)) > 0 {
		h += underNotes
	}
	for _, r := range b.Rows {
		h += b.rowHeight(cols, r)
	}
	return h
}

func (b Table) split(left, _ float64) (head, rest Block) {
	b.cols = b.columns()
	h := b.top(b.cols) + 2
	noted := map[string]bool{}
	for i, r := range b.Rows {
		h += b.rowHeight(b.cols, r)
		for _, n := range b.used(b.Rows[i : i+1]) {
			if !noted[n.Code] {
				h += noteHeight([]Note{n})
				if len(noted) == 0 {
					h += underNotes
				}
			}
			noted[n.Code] = true
		}
		if h > left {
			if i == 0 {
				return nil, b
			}
			first, second := b, b
			first.Rows, second.Rows = b.Rows[:i], b.Rows[i:]
			if b.Caption != "" && !strings.HasSuffix(b.Caption, tailContinued) {
				second.Caption += tailContinued
			}
			return first, second
		}
	}
	if h > left {
		return nil, b
	}
	return b, nil
}

const tailContinued = " (continued)"

func (b Table) write(h *html, prefix string) {
	cols := b.columns()
	h.tables++
	id := prefix + "-table" + strconv.Itoa(h.tables)
	if len(cols) > 4 { // on a phone it is moved under the finger, or with the arrow keys
		h.raw(`<div class="scroll" role="region" tabindex="0" aria-label="` + escape(b.Caption+" table") + `"><table class="broad">` + "\n")
	} else {
		h.raw(`<div class="scroll"><table>` + "\n")
	}
	if b.Caption != "" {
		h.element("caption", "", b.Caption)
	}
	h.raw("<colgroup>")
	if b.Tick {
		h.raw(col(tickWide))
	}
	for _, w := range cols {
		h.raw(col(w))
	}
	h.raw("</colgroup>\n<thead><tr>")
	if b.Tick {
		h.raw(`<th scope="col" class="ticks">done</th>`)
	}
	for _, s := range b.Head {
		h.raw(`<th scope="col">` + escape(s) + "</th>")
	}
	h.raw("</tr></thead>\n<tbody>\n")
	for _, r := range b.Rows {
		b.row(h, id, r)
	}
	h.raw("</tbody></table></div>\n")
	for _, n := range b.used(b.Rows) {
		h.raw(`<p class="note" id="` + id + "-" + noteID(n.Code) + `"><strong>[` + escape(n.Code) + "]</strong> " + escape(n.Text) + "</p>\n")
	}
}

func col(width float64) string {
	return fmt.Sprintf(`<col style="width:%.1f%%"/>`, 100*width/pageWide)
}

// noteID makes a code fit for a link: each byte that is no letter or digit
// becomes its number.
func noteID(code string) string {
	s := "note"
	for i := range len(code) {
		c := code[i]
		if 'a' <= c && c <= 'z' || '0' <= c && c <= '9' {
			s += string(rune(c))
		} else {
			s += "-" + strconv.Itoa(int(c)) + "-"
		}
	}
	return s
}

func (b Table) row(h *html, id string, r Row) {
	h.raw("<tr>")
	if b.Tick {
		h.raw("<td>" + tickBox + "</td>")
	}
	for j := range b.Head {
		text := escape(r.text(j))
		if r.text(j) == WriteIn {
			text = `<span class="line" role="img" aria-label="line to write on"></span>`
		}
		if j > 0 {
			h.raw("<td>" + text + "</td>")
			continue
		}
		h.raw(`<th scope="row">` + text)
		for _, c := range r.Notes {
			if slices.ContainsFunc(b.Notes, func(n Note) bool { return n.Code == c }) {
				h.raw(` <a class="code" href="#` + id + "-" + noteID(c) + `">` + "[" + escape(c) + "]</a>")
			}
		}
		h.raw("</th>")
	}
	h.raw("</tr>\n")
}
