package sheet

import (
	"fmt"
	"math"
	"strconv"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Picture is one drawing. It is black on white, needs no script and no font of
// its own, and carries its title and description for those who do not see it.
type Picture struct {
	Name  string // fit for a file's name, without its ending: "plan"
	Title string
	Desc  string // what the picture shows, in words
	SVG   string // one svg element

	Width, Height float64 // in drawing units; only their ratio has a meaning

	most float64 // mm, of its height in print; 0 is pictureMost
}

var srcPicture = &measure.Source{Title: "Floewright", Locator: "what one drawing can show", Status: measure.OwnChoice}

// Ranges of what is drawn: past anything a family builds.
var (
	lengths = measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: 200, Source: srcPicture}
	angles  = measure.Range{Kind: measure.Angle, Lo: -math.Pi / 3, Hi: math.Pi / 3, Source: srcPicture}
	turns   = measure.Range{Kind: measure.Angle, Lo: 0, Hi: math.Pi, Source: srcPicture}
	moments = measure.Range{Kind: measure.Moment, Lo: -1e9, Hi: 1e9, Source: srcPicture}
	forces  = measure.Range{Kind: measure.Force, Lo: -1e9, Hi: 1e9, Source: srcPicture}
	loads   = measure.Range{Kind: measure.LineLoad, Lo: -1e9, Hi: 1e9, Source: srcPicture}
	shares  = measure.Range{Kind: measure.Percent, Lo: 0, Hi: 1, Source: srcPicture}
	depths  = measure.Range{Kind: measure.Length, Lo: 0, Hi: 10, Source: srcPicture}
)

// A gate lets numbers pass and keeps the first error.
type gate struct{ err error }

func (g *gate) in(r measure.Range, field string, xs ...float64) {
	for i, x := range xs {
		if g.err != nil {
			return
		}
		if len(xs) > 1 {
			g.err = r.Check(fmt.Sprintf("%s[%d]", field, i), x)
		} else {
			g.err = r.Check(field, x)
		}
	}
}

// count refuses lists that no sheet of paper can hold.
func (g *gate) count(field string, n, lo, hi int) {
	if g.err == nil {
		g.err = measure.Range{Lo: float64(lo), Hi: float64(hi), Source: srcPicture}.Check("number of "+field, float64(n))
	}
}

// rise refuses a list that does not rise from item to item.
func (g *gate) rise(field string, xs []float64) {
	for i := 1; i < len(xs) && g.err == nil; i++ {
		if !(xs[i] > xs[i-1]) {
			g.err = &measure.Error{Field: fmt.Sprintf("%s[%d]", field, i), Class: measure.ErrRange, Value: xs[i], Want: "more than the one before"}
		}
	}
}

// Sizes of every picture, in drawing units. A unit is about 1.4 mm on paper and
// 2.8 pixels on a phone.
const (
	wide     = 130.0
	titleRow = 7.0
)

// Type sizes: small for figures, the usual one for names.
var (
	small = svg.TextStyle{Size: svg.Small}
	start = svg.TextStyle{Size: svg.Small, Anchor: svg.Start}
	end   = svg.TextStyle{Size: svg.Small, Anchor: svg.End}
	bold  = svg.TextStyle{Size: svg.Small, Bold: true}
	row   = svg.Height(small) // of one line of small type
)

func pt(x, y float64) svg.Point { return svg.Point{X: x, Y: y} }

func line(w svg.Weight) svg.Style { return svg.Style{Weight: w} }

func filled(w svg.Weight, f svg.Fill) svg.Style { return svg.Style{Weight: w, Fill: f} }

// A canvas is a picture in the making: a title at the top, notes at the foot,
// what is drawn between them.
type canvas struct {
	*svg.Drawing
	name, title, desc string
	units             measure.System
	w, h              float64
	notes             []string // folded
}

// begin opens a canvas for a drawing of w by h units with the title above and
// the notes below it. The drawing's own area begins under titleRow.
func begin(name, title, desc string, units measure.System, w, h float64, notes ...string) *canvas {
	c := &canvas{name: name, title: title, desc: desc, units: units, w: w}
	for _, n := range notes {
		c.notes = append(c.notes, svg.Fold(n, w-2, start)...)
	}
	c.h = titleRow + h + row*float64(len(c.notes)) + 2
	c.Drawing = svg.New(name, title, desc, c.w, c.h)
	heading := svg.TextStyle{Size: svg.Normal, Bold: true, Anchor: svg.Start}
	c.Text(pt(1, 3.4), svg.Shorten(title, w-2, heading), heading)
	for i, n := range c.notes {
		c.Text(pt(1, titleRow+h+row*(float64(i)+0.5)), n, start)
	}
	return c
}

// picture closes the canvas.
func (c *canvas) picture() (Picture, error) {
	text, err := c.SVG()
	if err != nil {
		return Picture{}, fmt.Errorf("picture %s: %w", c.name, err)
	}
	if watch != nil {
		watch(c.Drawing)
	}
	return Picture{Name: c.name, Title: c.title, Desc: c.desc, SVG: text, Width: c.w, Height: c.h}, nil
}

// watch, where a test sets it, sees every finished drawing.
var watch func(*svg.Drawing)

// length prints a length to build by.
func (c *canvas) length(x float64) string { return measure.Length.Format(x, c.units) }

// level prints a height over water or ice, which nobody reads closer than a
// quarter of an inch or 5 mm.
func level(x float64, units measure.System) string {
	if units == measure.US {
		return measure.FeetInches(x, 4)
	}
	return measure.Length.Format(math.Round(x/0.005)*0.005, units)
}

// A callout is a text in a column beside the drawing that belongs to a point.
type callout struct {
	from  svg.Point
	lines []string
}

// column writes callouts from x on, between lo and hi, each as near to the height
// of its point as the others allow, and leads a line to each.
func (c *canvas) column(x, lo, hi float64, list []callout) {
	var at, size []float64
	for _, k := range list {
		at = append(at, k.from.Y)
		size = append(size, row*float64(len(k.lines))+0.8)
	}
	moved, ok := svg.Spread(at, size, lo, hi)
	if !ok { // the drawing reports the first text for which there is no room
		moved = at
	}
	for i, k := range list {
		y := moved[i] - row*float64(len(k.lines)-1)/2
		c.Polyline(svg.Dimension, k.from, pt(x-3, moved[i]), pt(x-1, moved[i]))
		for j, s := range k.lines {
			c.Place(s, svg.Spot{At: pt(x, y+row*float64(j)), Style: start})
		}
	}
}

// water draws the trade's mark of a water surface with its point at a place.
func (c *canvas) water(at svg.Point) {
	c.Polygon(filled(svg.Outline, svg.White), at, pt(at.X-1.5, at.Y-2.6), pt(at.X+1.5, at.Y-2.6))
	for k, half := range []float64{2.2, 1.4, 0.6} {
		y := at.Y + 1 + 0.9*float64(k)
		c.Line(pt(at.X-half, y), pt(at.X+half, y), svg.Dimension)
	}
}

// count returns "1 float", "2 floats".
func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// people counts people.
func people(n int) string {
	if n == 1 {
		return "1 person"
	}
	return strconv.Itoa(n) + " people"
}

// peopleOf counts people of a mass: "1 person of 84 kg", "2 people of 84 kg each".
func peopleOf(n int, mass string) string {
	if n == 1 {
		return people(n) + " of " + mass
	}
	return people(n) + " of " + mass + " each"
}

// letter returns A, B, ... Z, AA, AB, ...
func letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letter(i/26-1) + letter(i%26)
}

// span returns the least and the greatest of lists of numbers and of zero.
func span(lists ...[]float64) (lo, hi float64) {
	for _, xs := range lists {
		for _, x := range xs {
			lo, hi = min(lo, x), max(hi, x)
		}
	}
	return lo, hi
}
