package svg

import (
	"strings"
	"unicode"
)

// Sizes of type in drawing units.
const (
	Small  = 3.4
	Normal = 4
	Large  = 4.8
)

// lead is the height of a text's box and of a line of text over its size;
// belowLine is the part of the box under the baseline.
const (
	lead      = 1.14
	belowLine = 0.27
)

// An Anchor is the part of a text that lies at its place.
type Anchor int

// The anchors.
const (
	Middle Anchor = iota
	Start
	End
)

// A TextStyle is how a text is set.
type TextStyle struct {
	Size   float64 // 0 is Normal
	Anchor Anchor
	Bold   bool
	Up     bool // turned to be read from the right
}

func (o TextStyle) size() float64 {
	if !(o.Size > 0) {
		return Normal
	}
	return o.Size
}

// A Box is a rectangle on the sheet; X0 <= X1 and Y0 <= Y1.
type Box struct{ X0, Y0, X1, Y1 float64 }

func (b Box) upright() Box {
	return Box{min(b.X0, b.X1), min(b.Y0, b.Y1), max(b.X0, b.X1), max(b.Y0, b.Y1)}
}

// Overlaps reports whether two boxes share an area.
func (b Box) Overlaps(c Box) bool {
	const touch = 1e-6
	return b.X0 < c.X1-touch && c.X0 < b.X1-touch && b.Y0 < c.Y1-touch && c.Y0 < b.Y1-touch
}

// Inside reports whether b lies in c.
func (b Box) Inside(c Box) bool {
	const touch = 1e-6
	return b.X0 >= c.X0-touch && b.Y0 >= c.Y0-touch && b.X1 <= c.X1+touch && b.Y1 <= c.Y1+touch
}

// A Label is a text that was drawn, and the box it keeps.
type Label struct {
	Text string
	Box  Box
}

// Labels returns the texts drawn so far.
func (d *Drawing) Labels() []Label { return append([]Label(nil), d.labels...) }

// widths holds the advance of printable ASCII in thousandths of the size: for
// each character the wider of the common sans-serif faces, which are the ones
// drawn for screens.
var widths = [...]int16{
	352, 402, 460, 838, 640, 1077, 780, 275, 454, 454, 640, 838, 364, 454, 364, 454, // space to /
	640, 640, 640, 640, 640, 640, 640, 640, 640, 640, 454, 454, 838, 838, 838, 556, // 0 to ?
	1015, 723, 722, 722, 771, 684, 611, 778, 752, 421, 556, 722, 611, 863, 752, 788, // @ to O
	684, 788, 722, 685, 640, 733, 723, 989, 722, 723, 685, 454, 454, 454, 838, 640, // P to _
	640, 613, 635, 556, 635, 615, 356, 635, 634, 278, 344, 592, 278, 974, 634, 612, // ` to o
	635, 635, 427, 556, 394, 634, 592, 818, 592, 592, 556, 640, 454, 640, 838, // p to ~
}

// margin is the part by which a text may be wider than the table says.
const margin = 1.03

// advance returns the width of a character over the size of the type.
func advance(r rune) float64 {
	if i := int(r) - ' '; i >= 0 && i < len(widths) {
		return float64(widths[i]) / 1000
	}
	switch {
	case strings.ContainsRune("·’‘ʼıìíîï", r):
		return 0.37
	case strings.ContainsRune("°²³“”–", r):
		return 0.55
	case r == '×' || r == '≥' || r == '≤' || r == '−' || r == '±':
		return 0.85
	case strings.ContainsRune("æœÆŒ", r):
		return 1.1
	case r < 0x250 && unicode.IsLower(r):
		return 0.72
	case unicode.Is(unicode.Mn, r):
		return 0
	}
	return 1.1
}

// Width returns the room a text takes on its line, in drawing units. Bold type
// adds most to the narrow letters.
func Width(s string, o TextStyle) float64 {
	w := 0.0
	for _, r := range clean(s) {
		w += o.advance(r)
	}
	return w
}

func (o TextStyle) advance(r rune) float64 {
	a := advance(r)
	if o.Bold && a > 0 {
		a = 1.1*a + 0.035
	}
	return a * o.size() * margin
}

// Height returns the height of a line of text.
func Height(o TextStyle) float64 { return o.size() * lead }

// TextBox returns the box a text would take: its middle, start or end, by the
// anchor, lies at the point, half its height to either side of it.
func TextBox(at Point, s string, o TextStyle) Box {
	w, h := Width(s, o), Height(o)
	lo := -w / 2
	switch o.Anchor {
	case Start:
		lo = 0
	case End:
		lo = -w
	}
	if o.Up {
		return Box{at.X - h/2, at.Y - lo - w, at.X + h/2, at.Y - lo}
	}
	return Box{at.X + lo, at.Y - h/2, at.X + lo + w, at.Y + h/2}
}

// Text writes a text where it is told, over all lines, and returns its box. The
// caller answers for what is there already; [Drawing.Place] looks.
func (d *Drawing) Text(at Point, s string, o TextStyle) Box {
	s = clean(s)
	b := TextBox(at, s, o)
	if s == "" || !d.finite("text", at.X, at.Y, o.Size, b.X0, b.Y1) {
		return b
	}
	d.labels = append(d.labels, Label{s, b})
	const rim = 0.1 // of the box that the white ground leaves
	d.texts.WriteString(`<rect x="` + num(b.X0+rim) + `" y="` + num(b.Y0+rim) + `" width="` + num(b.X1-b.X0-2*rim) +
		`" height="` + num(b.Y1-b.Y0-2*rim) + `" fill="#fff"/>` + "\n")
	base := o.size() * (lead/2 - belowLine)
	if o.Up {
		d.texts.WriteString(`<text transform="translate(` + num(at.X+base) + " " + num(at.Y) + `) rotate(-90)"`)
	} else {
		d.texts.WriteString(`<text x="` + num(at.X) + `" y="` + num(at.Y+base) + `"`)
	}
	d.texts.WriteString(` font-size="` + num(o.size()) + `"`)
	switch o.Anchor {
	case Middle:
		d.texts.WriteString(` text-anchor="middle"`)
	case End:
		d.texts.WriteString(` text-anchor="end"`)
	}
	if o.Bold {
		d.texts.WriteString(` font-weight="bold"`)
	}
	d.texts.WriteString(">" + escape(s) + "</text>\n")
	return b
}

// Fold breaks a text into lines that are at most width wide; a longer word is
// broken where the line ends.
func Fold(s string, width float64, o TextStyle) []string {
	var lines []string
	line, used := "", 0.0
	space := o.advance(' ')
	for _, word := range strings.Fields(s) {
		w := Width(word, o)
		if line != "" && used+space+w > width {
			lines = append(lines, line)
			line, used = "", 0
		}
		if line != "" {
			line, used = line+" ", used+space
		}
		for line == "" && w > width {
			head, rest := cut(word, width, o)
			if rest == "" {
				break
			}
			lines = append(lines, head)
			word, w = rest, w-Width(head, o)
		}
		line, used = line+word, used+w
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// cut returns the longest beginning of a text that fits, at least one
// character, and the rest.
func cut(s string, width float64, o TextStyle) (head, rest string) {
	w := 0.0
	for i, r := range s {
		w += o.advance(r)
		if i > 0 && w > width {
			return s[:i], s[i:]
		}
	}
	return s, ""
}

// Shorten returns the text, or its beginning and an ellipsis, at most width
// wide.
func Shorten(s string, width float64, o TextStyle) string {
	s = clean(s)
	if Width(s, o) <= width {
		return s
	}
	const dots = "..."
	head, _ := cut(s, width-Width(dots, o), o)
	return strings.TrimRight(head, " ") + dots
}
