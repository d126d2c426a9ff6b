package sheet

import (
	"errors"
	"fmt"
	"strings"

	"example.org/floewright/internal/svg"
)

// A Block is a part of a card: [Heading], [Paragraph], [Stop], [List], [Table],
// [Blanks], [Sign] or [Picture].
type Block interface {
	// height returns the printed height in millimetres, never too small.
	height() float64
	// split returns the longest beginning that fits into left millimetres, nil
	// if none does, and the rest, nil if there is none. A side holds full.
	split(left, full float64) (head, rest Block)
	// write writes the block; ids begin with the prefix.
	write(h *html, prefix string)
}

// ErrTall is the class of the error for a part of a card that is taller than a side of paper
// and cannot be split, such as one row of a table with pages of text; errors.Is finds it.
var ErrTall = errors.New("does not fit a page")

// whole splits a block that stays together.
func whole(b Block, left float64) (head, rest Block) {
	if b.height() <= left {
		return b, nil
	}
	return nil, b
}

// A Heading opens a part of a card.
type Heading string

func (b Heading) height() float64 {
	return bodyLine*1.15*folded(bodySize*1.15, pageWide, true, string(b)) + 5
}
func (b Heading) split(left, _ float64) (head, rest Block) { return whole(b, left) }
func (b Heading) write(h *html, _ string)                  { h.element("h3", "", string(b)) }

// A Paragraph is running text.
type Paragraph string

func (b Paragraph) height() float64                          { return bodyLine*folded(bodySize, pageWide, false, string(b)) + 3 }
func (b Paragraph) split(left, _ float64) (head, rest Block) { return whole(b, left) }
func (b Paragraph) write(h *html, _ string)                  { h.element("p", "", string(b)) }

// A Stop is a line at which work stops until it is met, framed and headed STOP.
type Stop string

const stopWord = "STOP"

func (b Stop) height() float64 {
	return bodyLine*folded(bodySize, pageWide-12, true, stopWord+" "+string(b)) + 6
}
func (b Stop) split(left, _ float64) (head, rest Block) { return whole(b, left) }
func (b Stop) write(h *html, _ string) {
	h.raw(`<p class="stop"><strong>` + stopWord + `</strong> ` + escape(string(b)) + "</p>\n")
}

// A List is numbered steps or items with boxes to tick.
type List struct {
	Items   []string
	Ordered bool // numbered
	From    int  // number of the first item; 0 counts as 1
	Tick    bool // a box before each item
}

const (
	listIndent = 13.0
	boxInLine  = "MM " // as wide as a box before the text of a numbered item
)

func (b List) item(i int) float64 {
	text := b.Items[i]
	if b.Tick && b.Ordered {
		text = boxInLine + text
	}
	return bodyLine*folded(bodySize, pageWide-listIndent, false, text) + 1.4
}

func (b List) height() float64 {
	h := 1.5
	for i := range b.Items {
		h += b.item(i)
	}
	return h
}

func (b List) split(left, _ float64) (head, rest Block) {
	h := 1.5
	for i := range b.Items {
		if h += b.item(i); h > left {
			if i == 0 {
				return nil, b
			}
			first, second := b, b
			first.Items, second.Items, second.From = b.Items[:i], b.Items[i:], max(b.From, 1)+i
			return first, second
		}
	}
	return b, nil
}

const tickBox = `<span class="tick" role="img" aria-label="box to tick"></span> `

func (b List) write(h *html, _ string) {
	name := "ul"
	if b.Ordered {
		name = "ol"
	}
	h.raw("<" + name)
	if b.Ordered && b.From > 1 {
		h.raw(fmt.Sprintf(` start="%d"`, b.From))
	}
	if b.Tick && !b.Ordered {
		h.raw(` class="boxes"`)
	}
	h.raw(">\n")
	for _, s := range b.Items {
		h.raw("<li>")
		if b.Tick {
			h.raw(tickBox)
		}
		h.raw(escape(s) + "</li>\n")
	}
	h.raw("</" + name + ">\n")
}

// Blanks are lines to write on.
type Blanks []Blank

// A Blank is a line to write on: what belongs there, and in which unit.
type Blank struct{ Label, Unit string }

const blankHigh = 11.0

func (b Blank) height() float64 {
	return max(blankHigh, bodyLine*folded(bodySize, pageWide-70, false, b.Label+" "+b.Unit)+4)
}

func (b Blanks) height() float64 {
	h := 3.0
	for _, x := range b {
		h += x.height()
	}
	return h
}

func (b Blanks) split(left, _ float64) (head, rest Block) {
	h := 3.0
	for i, x := range b {
		if h += x.height(); h > left {
			if i == 0 {
				return nil, b
			}
			return b[:i:i], b[i:]
		}
	}
	return b, nil
}

func (b Blanks) write(h *html, _ string) {
	h.raw(`<div class="blanks">` + "\n")
	for _, x := range b {
		h.raw(`<p class="fill"><span>` + escape(x.Label) + `</span><span class="line" role="img" aria-label="line to write on"></span>`)
		if strings.TrimSpace(x.Unit) != "" {
			h.raw("<span>" + escape(x.Unit) + "</span>")
		}
		h.raw("</p>\n")
	}
	h.raw("</div>\n")
}

// printed returns the width and height of a picture in print: as wide as the
// page unless it would be too tall.
func (p Picture) printed() (w, h float64) {
	most := pictureMost
	if p.most > 0 {
		most = min(most, p.most)
	}
	w = pageWide
	h = w * p.Height / p.Width
	if h > most {
		w, h = most*p.Width/p.Height, most
	}
	return w, h
}

// pictureMost is the height in millimetres that a picture takes at most.
const pictureMost = 190.0

func (p Picture) height() float64 {
	_, h := p.printed()
	return h + 4
}
func (p Picture) split(left, _ float64) (head, rest Block) { return whole(p, left) }

func (p Picture) write(h *html, _ string) {
	w, _ := p.printed()
	h.raw(fmt.Sprintf(`<figure style="max-width:%.1fmm">`, w) + "\n" + p.SVG + "</figure>\n")
}

// clean returns a text on one line with single spaces.
func clean(s string) string { return strings.Join(strings.Fields(s), " ") }

// widthOf returns the width of a text in print.
func widthOf(s string, isBold bool) float64 {
	return svg.Width(s, svg.TextStyle{Size: bodySize, Bold: isBold}) / narrow
}
