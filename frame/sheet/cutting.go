package sheet

import (
	"fmt"
	"strings"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Cutting is how pieces are cut from stock boards.
type Cutting struct {
	Units  measure.System
	Boards []Board
}

// A Board is one stock board, or several that are cut alike, with its pieces in
// the order they are cut from the left.
type Board struct {
	Size   string  // "2x8"
	Length float64 // m
	Count  int     // boards cut alike; 0 counts as 1
	Pieces []Piece
	Kerf   float64 // width of a saw cut, m
	Trim   float64 // cut off either end to square it, m
}

// A Piece is a part of a board.
type Piece struct {
	Name   string
	Length float64 // m
}

func (k Cutting) check() error {
	var g gate
	g.count("Cutting.Boards", len(k.Boards), 1, 60)
	for i, b := range k.Boards {
		field := fmt.Sprintf("Cutting.Boards[%d]", i)
		g.in(lengths, field+".Length", b.Length)
		g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: 0.02, Source: srcPicture}, field+".Kerf", b.Kerf)
		g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: 0.5, Source: srcPicture}, field+".Trim", b.Trim)
		g.count(field+".Pieces", len(b.Pieces), 0, 60)
		for j, p := range b.Pieces {
			g.in(lengths, fmt.Sprintf("%s.Pieces[%d]", field, j), p.Length)
		}
		if g.err == nil && b.left() < -1e-6 {
			g.err = measure.Range{Kind: measure.Length, Lo: 0, Hi: b.Length, Source: &measure.Source{Title: "the board's own length", Status: measure.Exact}}.Check(field+": pieces and saw cuts", b.Length-b.left())
		}
	}
	return g.err
}

// left returns what remains of the board, in metres: its length less what
// squares its ends, pieces and saw cuts, one cut a piece but for a piece that ends with
// the board.
func (b Board) left() float64 {
	used := 2 * b.Trim
	for _, p := range b.Pieces {
		used += p.Length + b.Kerf
	}
	if rest := b.Length - used; rest < 0 && rest > -b.Kerf-1e-9 {
		return 0
	}
	return b.Length - used
}

const barHigh = 9.0

// A barPart is a piece drawn on its bar, or what is left of the board.
type barPart struct {
	x0, x1 float64
	lines  []string // written inside; empty where they do not fit
	key    string   // stands for the text under the bar
	text   string
	waste  bool
}

// parts lays out a board whose metre is drawn scale units long.
func (b Board) parts(scale, x0 float64, units measure.System) []barPart {
	var out []barPart
	at := b.Trim
	if at > 0 {
		out = append(out, barPart{x0: x0, x1: x0 + scale*at, waste: true})
	}
	add := func(name string, length float64) {
		p := barPart{x0: x0 + scale*at, x1: x0 + scale*(at+length)}
		size := measure.Length.Format(length, units)
		p.text = size
		if name != "" {
			p.text = name + ": " + size
		}
		room := p.x1 - p.x0 - 1.2
		switch {
		case svg.Width(p.text, small) <= room:
			p.lines = []string{p.text}
		case max(svg.Width(name, small), svg.Width(size, small)) <= room:
			p.lines = []string{name, size}
		}
		out = append(out, p)
		at += length + b.Kerf
	}
	for _, p := range b.Pieces {
		add(svg.Shorten(p.Name, 60, small), p.Length)
	}
	if rest := b.left(); rest > 0 {
		out = append(out, barPart{x0: x0 + scale*at, x1: x0 + scale*b.Length, waste: true})
	}
	keys := map[string]string{}
	for i := range out {
		p := &out[i]
		if len(p.lines) > 0 || p.waste {
			continue
		}
		if keys[p.text] == "" {
			keys[p.text] = strings.ToLower(letter(len(keys)))
		}
		p.key = keys[p.text]
	}
	return out
}

// A bar is a board laid out: its parts, the keys that stand under it, and the
// lines that explain them.
type bar struct {
	head  []string // the heading, folded
	parts []barPart
	under bool // some keys do not fit into their parts
	notes []string
}

const barLeft, barWide = 2.0, wide - 4

// bars lays the boards out; rests are what a cut list says is left over of each, m.
func (k Cutting) bars(rests []float64) []bar {
	longest := 0.0
	for _, b := range k.Boards {
		longest = max(longest, b.Length)
	}
	var out []bar
	for i, b := range k.Boards {
		r := bar{parts: b.parts(barWide/longest, barLeft, k.Units)}
		tail := measure.Length.Format(b.Length, k.Units)
		if b.Count > 1 {
			tail += fmt.Sprintf(", %d boards alike", b.Count)
		}
		rest := b.left()
		if rests != nil {
			rest = rests[i]
		}
		if rest > 0.5e-3 {
			tail += ", left over " + measure.Length.Format(rest, k.Units)
		}
		if size := svg.Shorten(b.Size, barWide-10, bold); size != "" {
			tail = size + ", " + tail
		}
		r.head = svg.Fold(fmt.Sprintf("%d: %s", i+1, tail), barWide, bold)
		var said []string
		seen := map[string]bool{}
		for _, p := range r.parts {
			if p.key == "" {
				continue
			}
			r.under = r.under || svg.Width(p.key, small) > p.x1-p.x0-0.6
			if !seen[p.key] {
				said = append(said, p.key+" = "+p.text)
			}
			seen[p.key] = true
		}
		r.notes = svg.Fold(strings.Join(said, "; "), barWide, start)
		out = append(out, r)
	}
	return out
}

func (r bar) high() float64 {
	h := row*float64(len(r.head)) + 0.6 + barHigh + row*float64(len(r.notes)) + 2.5
	if r.under {
		h += row + 2.4
	}
	return h
}

// Draw draws the boards to one scale, what is left of each hatched.
func (k Cutting) Draw() (Picture, error) { return k.draw(nil) }

func (k Cutting) draw(rests []float64) (Picture, error) {
	if err := k.check(); err != nil {
		return Picture{}, err
	}
	h, boards, pieces := 0.0, 0, 0
	bars := k.bars(rests)
	for i, r := range bars {
		h += r.high()
		boards += max(1, k.Boards[i].Count)
		pieces += len(k.Boards[i].Pieces) * max(1, k.Boards[i].Count)
	}
	desc := fmt.Sprintf("The cuts on %s of stock, %s in all; the lengths stand on the pieces.", count(boards, "board"), count(pieces, "piece"))
	c := begin("cutting", "Cutting diagram", desc, k.Units, wide, h, "Cut from the left, each piece measured anew. Crossed: left over.")
	y := titleRow
	for _, r := range bars {
		c.bar(r, y)
		y += r.high()
	}
	return c.picture()
}

// bar draws a board from the height y down.
func (c *canvas) bar(r bar, y float64) {
	heading := bold
	heading.Anchor = svg.Start
	for i, l := range r.head {
		c.Text(pt(barLeft, y+row*(float64(i)+0.5)), l, heading)
	}
	top := y + row*float64(len(r.head)) + 0.6
	foot := top + barHigh
	var at, size []float64
	var keys []barPart
	for _, p := range r.parts {
		s := filled(svg.Outline, svg.White)
		if p.waste {
			s.Fill = svg.Waste
		}
		c.Rect(svg.Box{X0: p.x0, Y0: top, X1: p.x1, Y1: foot}, s)
		m := (p.x0 + p.x1) / 2
		for i, l := range p.lines {
			c.Text(pt(m, (top+foot)/2+(float64(i)-float64(len(p.lines)-1)/2)*row), l, small)
		}
		switch {
		case p.key == "":
		case r.under:
			at, size, keys = append(at, m), append(size, svg.Width(p.key, small)+0.8), append(keys, p)
		default:
			c.Text(pt(m, (top+foot)/2), p.key, small)
		}
	}
	if r.under {
		moved, ok := svg.Spread(at, size, 0, wide)
		if ok {
			for i, p := range keys {
				c.Polyline(svg.Dimension, pt(at[i], foot-1), pt(at[i], foot+0.6), pt(moved[i], foot+2.2))
				c.Text(pt(moved[i], foot+2.4+row/2), p.key, small)
			}
		}
		foot += row + 2.4
	}
	for i, l := range r.notes {
		c.Text(pt(barLeft, foot+0.8+row*(float64(i)+0.5)), l, start)
	}
}
