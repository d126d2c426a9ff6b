package svg

import (
	"encoding/xml"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ErrNumber is the class of every error about a coordinate that is no finite
// number or lies far off the sheet.
var ErrNumber = errors.New("no number for a drawing")

// ErrRoom is the class of the error of a text for which no room was left.
var ErrRoom = errors.New("no room for a text")

// farthest is the largest coordinate, in drawing units, that is written.
const farthest = 1e6

// A Point is a place on the sheet: x to the right, y down, in drawing units.
type Point struct{ X, Y float64 }

// A Drawing collects elements. Make one with [New]; the first error is kept and
// the elements after it are dropped.
type Drawing struct {
	id, title, desc string
	w, h            float64
	shapes, texts   strings.Builder
	hatched         [fills]bool
	clips, open     int
	labels          []Label
	blocked         []Box
	err             error
}

// New returns an empty drawing of w by h units on a white ground. The id, a
// lower-case letter followed by such letters, digits and hyphens, sets the
// drawing's own names apart from those of others on the same page. Title and
// desc are what a screen reader says.
func New(id, title, desc string, w, h float64) *Drawing {
	d := &Drawing{id: id, title: clean(title), desc: clean(desc), w: w, h: h}
	switch {
	case !goodID(id):
		d.err = fmt.Errorf("a drawing's id %q: want a lower-case letter, then letters, digits and hyphens", id)
	case d.title == "":
		d.err = fmt.Errorf("drawing %s has no title", id)
	case !d.finite("size", w, h):
	case !(w > 0 && h > 0):
		d.err = fmt.Errorf("%w: size %g by %g", ErrNumber, w, h)
	}
	return d
}

func goodID(id string) bool {
	for i, r := range id {
		letter := 'a' <= r && r <= 'z'
		if !letter && (i == 0 || (r < '0' || r > '9') && r != '-') {
			return false
		}
	}
	return id != ""
}

// Err returns the first error, nil if there was none.
func (d *Drawing) Err() error { return d.err }

// Size returns the drawing's width and height in units.
func (d *Drawing) Size() (w, h float64) { return d.w, d.h }

// fail keeps the first error.
func (d *Drawing) fail(err error) {
	if d.err == nil {
		d.err = err
	}
}

// finite reports whether all coordinates can be written, and keeps an error
// otherwise. Nothing is written after an error.
func (d *Drawing) finite(what string, xs ...float64) bool { return d.within(what, farthest, xs) }

// numbers is finite for values that are no coordinates yet.
func (d *Drawing) numbers(what string, xs ...float64) bool {
	return d.within(what, math.MaxFloat64, xs)
}

func (d *Drawing) within(what string, most float64, xs []float64) bool {
	for _, x := range xs {
		if !(math.Abs(x) <= most) { // also NaN
			d.fail(fmt.Errorf("%w: %s %g", ErrNumber, what, x))
		}
	}
	return d.err == nil
}

// Group opens a group of elements; [Drawing.End] closes it.
func (d *Drawing) Group() {
	d.open++
	d.shapes.WriteString("<g>\n")
}

// Clip opens a group of which only the part inside the box is shown;
// [Drawing.End] closes it. Texts are not clipped.
func (d *Drawing) Clip(b Box) {
	if !d.finite("clip", b.X0, b.Y0, b.X1, b.Y1) {
		return
	}
	d.clips++
	d.open++
	name := d.id + "-clip" + strconv.Itoa(d.clips)
	d.shapes.WriteString(`<clipPath id="` + name + `">`)
	d.element("rect", attr{"x", num(b.X0)}, attr{"y", num(b.Y0)}, attr{"width", num(b.X1 - b.X0)}, attr{"height", num(b.Y1 - b.Y0)})
	d.shapes.WriteString(`</clipPath><g clip-path="url(#` + name + `)">` + "\n")
}

// End closes the group opened last.
func (d *Drawing) End() {
	if d.open == 0 {
		d.fail(errors.New("a group is closed that was not opened"))
		return
	}
	d.open--
	d.shapes.WriteString("</g>\n")
}

// SVG returns the drawing as one svg element, or the first error.
func (d *Drawing) SVG() (string, error) {
	if d.open > 0 {
		d.fail(errors.New("a group is not closed"))
	}
	if d.err != nil {
		return "", d.err
	}
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 ` + num(d.w) + " " + num(d.h) + `"`)
	b.WriteString(` width="` + num(d.w*pixels) + `" height="` + num(d.h*pixels) + `"`)
	b.WriteString(` aria-labelledby="` + d.id + `-title ` + d.id + `-desc" font-family="Arial, Helvetica, sans-serif">` + "\n")
	b.WriteString(`<title id="` + d.id + `-title">` + escape(d.title) + "</title>\n")
	b.WriteString(`<desc id="` + d.id + `-desc">` + escape(d.desc) + "</desc>\n")
	b.WriteString(d.defs())
	b.WriteString(`<rect width="` + num(d.w) + `" height="` + num(d.h) + `" fill="#fff"/>` + "\n")
	b.WriteString(d.shapes.String())
	b.WriteString(d.texts.String())
	b.WriteString("</svg>\n")
	return b.String(), nil
}

// pixels is the width of a drawing unit on a screen that sets no other.
const pixels = 6

// An attr is one attribute of an element.
type attr struct{ name, value string }

// element writes an element without content.
func (d *Drawing) element(name string, attrs ...attr) {
	d.shapes.WriteString("<" + name)
	for _, a := range attrs {
		if a.value != "" {
			d.shapes.WriteString(" " + a.name + `="` + escape(a.value) + `"`)
		}
	}
	d.shapes.WriteString("/>\n")
}

// num prints a coordinate with at most two decimals, never as a negative zero.
// The small bias keeps a tie from falling either way by a last bit that differs
// between machines.
func num(x float64) string {
	s := strconv.FormatFloat(math.Floor(float64(x*100)+0.500001)/100, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// escape returns a text fit for XML content and quoted attributes; characters
// that XML does not allow become U+FFFD.
func escape(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(s)) // a Builder returns no error
	return b.String()
}

// clean returns a text with each run of white space made one space.
func clean(s string) string { return strings.Join(strings.Fields(s), " ") }
