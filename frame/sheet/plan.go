package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Plan is the frame and its floats from above, the decking taken off. Lengths
// are in metres, x along the dock from one end and y across it from one side.
type Plan struct {
	Units         measure.System
	Length, Width float64
	Members       []Rectangle // joists and rims
	Stays         []Rectangle // stops and blocks between the joists
	Floats        []Afloat
	Things        []Thing   // what is fixed to the dock
	Along         []float64 // running marks along the dock, from the end
	Across        []float64 // running marks across it, from the side
	FloatsAlong   []float64 // running marks of the floats' middles, on the frame's other sides
	FloatsAcross  []float64
	Middles       bool      // Along and Across are the middles of joists, else their faces
	Diagonal      float64   // of the square frame, corner to corner; 0 is left out
	Ends          [2]string // what lies at x = 0 and at the other end
	Sides         [2]string // what lies at y = 0 and at the other side
	Without       string    // what is not drawn, and why
}

// A Rectangle has two opposite corners, in metres.
type Rectangle struct{ X0, Y0, X1, Y1 float64 }

// An Afloat is a float from above: its middle, and its sizes along and across
// the dock, in metres.
type Afloat struct {
	Name        string // short: "7"
	X, Y        float64
	Long, Broad float64
}

// A Thing is a weight fixed to the dock, at a place in metres.
type Thing struct {
	Name string
	X, Y float64
}

func (p Plan) check() error {
	var g gate
	g.in(lengths, "Plan.Length", p.Length)
	g.in(lengths, "Plan.Width", p.Width)
	// A tenth beyond the frame is as far as the sheet shows.
	along := measure.Range{Kind: measure.Length, Lo: -0.1 * p.Length, Hi: 1.1 * p.Length, Source: srcPicture}
	across := measure.Range{Kind: measure.Length, Lo: -0.1 * p.Width, Hi: 1.1 * p.Width, Source: srcPicture}
	g.in(along, "Plan.Along", p.Along...)
	g.in(across, "Plan.Across", p.Across...)
	g.in(along, "Plan.FloatsAlong", p.FloatsAlong...)
	g.in(across, "Plan.FloatsAcross", p.FloatsAcross...)
	for i, m := range p.Members {
		field := fmt.Sprintf("Plan.Members[%d]", i)
		g.in(along, field+" along", m.X0, m.X1)
		g.in(across, field+" across", m.Y0, m.Y1)
	}
	for i, m := range p.Stays {
		field := fmt.Sprintf("Plan.Stays[%d]", i)
		g.in(along, field+" along", m.X0, m.X1)
		g.in(across, field+" across", m.Y0, m.Y1)
	}
	for i, f := range p.Floats {
		field := fmt.Sprintf("Plan.Floats[%d]", i)
		g.in(along, field+".X", f.X)
		g.in(across, field+".Y", f.Y)
		g.in(lengths, field+" size", f.Long, f.Broad)
	}
	for i, t := range p.Things {
		field := fmt.Sprintf("Plan.Things[%d]", i)
		g.in(along, field+".X", t.X)
		g.in(across, field+".Y", t.Y)
	}
	g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: 400, Source: srcPicture}, "Plan.Diagonal", p.Diagonal)
	g.count("Plan.Members", len(p.Members), 0, 400)
	g.count("Plan.Stays", len(p.Stays), 0, 400)
	g.count("Plan.Floats", len(p.Floats), 0, 200)
	g.count("Plan.Along", len(p.Along), 0, 120)
	g.count("Plan.Across", len(p.Across), 0, 40)
	g.count("Plan.FloatsAlong", len(p.FloatsAlong), 0, 60)
	g.count("Plan.FloatsAcross", len(p.FloatsAcross), 0, 40)
	g.count("Plan.Things", len(p.Things), 0, 40)
	return g.err
}

// notes explains what the drawing does not say by itself.
func (p Plan) notes() []string {
	notes := []string{"Decking taken off. Every figure along the dock counts from the end with the ring, every one across it from the same corner."}
	if len(p.Floats) > 0 {
		notes[0] += " Dashed: floats under the deck, by number."
	}
	if len(p.Stays) > 0 {
		notes[0] += " Grey, between the joists: stops and blocks."
	}
	// A row of figures is named where there is one.
	where := func(what string, a, b []float64, atA, atB string) string {
		switch {
		case len(a) > 0 && len(b) > 0:
			return atA + " and " + atB + ": " + what
		case len(a) > 0:
			return atA + ": " + what
		case len(b) > 0:
			return atB + ": " + what
		}
		return ""
	}
	to := "joists' near faces"
	if p.Middles {
		to = "joists' middles"
	}
	joists := where(to, p.Along, p.Across, "at the foot", "on the right")
	floats := where("floats' middles", p.FloatsAlong, p.FloatsAcross, "at the top", "on the left")
	if joists != "" && floats != "" {
		notes[0] += " Figures " + joists + "; " + floats + "."
	}
	for i, s := range p.Sides {
		if s != "" {
			notes[0] += " " + [2]string{"Lower edge: ", "Upper edge: "}[i] + svg.Shorten(s, 60, small) + "."
		}
	}
	if p.Without != "" {
		notes = append(notes, svg.Shorten(p.Without, 300, start))
	}
	if p.Diagonal > 0 {
		notes = append(notes, "Square when both diagonals measure "+measure.Length.Format(p.Diagonal, p.Units)+".")
	}
	var things []string
	for i, t := range p.Things {
		things = append(things, letter(i)+": "+svg.Shorten(t.Name, 60, small))
	}
	if len(things) > 0 {
		notes = append(notes, strings.Join(things, ". ")+".")
	}
	return notes
}

// Draw draws the plan. A frame with many marks makes a wider sheet, so that no
// figure covers another.
func (p Plan) Draw() (Picture, error) {
	if err := p.check(); err != nil {
		return Picture{}, err
	}
	marks := func(at []float64) (out []svg.Mark) { // places follow once the scale is known
		for _, x := range at {
			out = append(out, svg.Mark{At: x, Text: mark(x, p.Units)})
		}
		return out
	}
	along, across, floatsAlong, floatsAcross := marks(p.Along), marks(p.Across), marks(p.FloatsAlong), marks(p.FloatsAcross)
	above, beside := 0.0, 0.0 // what the floats' marks take
	if len(floatsAlong) > 0 {
		above = svg.RunningRoom(floatsAlong, small) + 1
	}
	if len(floatsAcross) > 0 {
		beside = svg.RunningRoom(floatsAcross, small) + 1
	}
	left, top := 12+beside, titleRow+13+above
	right := svg.RunningRoom(across, small) + 3
	need := row * float64(max(len(along), len(floatsAlong)))
	w := max(wide, need+left+right-4)
	names := 7 * float64(len(p.Things)) // the rings, and what they push aside
	for _, f := range p.Floats {
		names += svg.Width(svg.Shorten(f.Name, 20, small), small)
	}
	h := max(12, min(90, (w-left-right)*p.Width/p.Length), row*float64(max(len(across), len(floatsAcross))), 2*row*names/(w-left-right))
	foot := svg.RunningRoom(along, small) + 2
	desc := fmt.Sprintf("The frame from above, %s long and %s wide, with %s and running marks along and across.",
		measure.Length.Format(p.Length, p.Units), measure.Length.Format(p.Width, p.Units), count(len(p.Floats), "float"))
	c := begin("plan", "Plan of frame and floats", desc, p.Units, w, top-titleRow+h+foot, p.notes()...)

	v := svg.Fit(0, 0, p.Length, p.Width, svg.Box{X0: left, Y0: top, X1: w - right, Y1: top + h})
	frame := v.Box(0, 0, p.Length, p.Width)
	// The marks have their fixed places; every other text goes where they leave room.
	for _, list := range [][]svg.Mark{along, floatsAlong} {
		for i := range list {
			list[i].At = v.At(list[i].At, 0).X
		}
	}
	for _, list := range [][]svg.Mark{across, floatsAcross} {
		for i := range list {
			list[i].At = v.At(0, list[i].At).Y
		}
	}
	c.RunningX(along, frame.Y1, top+h+6, 1, w-1, small)
	c.RunningY(across, frame.X1, frame.X1+6, top-row, top+h+row, small)
	c.RunningX(floatsAlong, frame.Y0, frame.Y0-5, 1, w-1, small)
	c.RunningY(floatsAcross, frame.X0, frame.X0-5, top-row, top+h+row, small)
	c.Rect(frame, line(svg.Outline))
	for _, m := range p.Members {
		c.Rect(v.Box(m.X0, m.Y0, m.X1, m.Y1), filled(svg.Dimension, svg.White))
	}
	for _, m := range p.Stays {
		c.Rect(v.Box(m.X0, m.Y0, m.X1, m.Y1), filled(svg.Dimension, svg.Pale))
	}
	c.Rect(frame, line(svg.Heavy))
	var dots []svg.Box // where things are: no float's name stands there
	for _, t := range p.Things {
		at := v.At(t.X, t.Y)
		dots = append(dots, svg.Box{X0: at.X - 1, Y0: at.Y - 1, X1: at.X + 1, Y1: at.Y + 1})
	}
	for _, f := range p.Floats {
		c.float(v, f, dots)
	}
	c.BlockLine(pt(frame.X0, frame.Y0), pt(frame.X1, frame.Y0), pt(frame.X1, frame.Y1), pt(frame.X0, frame.Y1), pt(frame.X0, frame.Y0))
	for i, t := range p.Things {
		c.balloon(v.At(t.X, t.Y), letter(i), v.At(p.Length/2, p.Width/2))
	}

	c.Across(frame.X0, frame.X1, frame.Y0-6-above, frame.Y0, c.length(p.Length), small)
	c.Upright(frame.Y0, frame.Y1, frame.X0-5-beside, frame.X0, c.length(p.Width), small)
	for i, s := range p.Ends {
		at, st := pt(frame.X0, titleRow+2), start
		if i == 1 {
			at, st = pt(frame.X1, titleRow+2), end
		}
		c.Place(svg.Shorten(s, (frame.X1-frame.X0)/2-2, st), svg.Spot{At: at, Style: st})
	}
	c.Circle(pt(frame.X0, frame.Y1), 1.1, filled(svg.Outline, svg.White))
	return c.picture()
}

// mark prints a running mark; the one that all count from is a bare 0.
func mark(x float64, units measure.System) string {
	if x == 0 {
		return "0"
	}
	return measure.Length.Format(x, units)
}

// balloon writes a letter in a ring at a place, or beside it with a line to it,
// rather on the side of toward.
func (c *canvas) balloon(at svg.Point, s string, toward svg.Point) {
	r := max(2.8, svg.Width(s, bold)/2+0.6)
	ring := func(p svg.Point) svg.Box { return svg.Box{X0: p.X - r, Y0: p.Y - r, X1: p.X + r, Y1: p.Y + r} }
	spots := []svg.Spot{{At: at, Style: bold}}
	x, y := math.Copysign(1, toward.X-at.X), math.Copysign(1, toward.Y-at.Y)
	for _, u := range []svg.Point{{X: x, Y: y}, {X: x, Y: -y}, {X: x}, {Y: y}, {X: -x, Y: y}, {X: -x, Y: -y}, {Y: -y}, {X: -x}} {
		for far := 4.0; far <= 10; far++ {
			spots = append(spots, svg.Spot{At: pt(at.X+far*u.X, at.Y+far*u.Y), Style: bold})
		}
	}
	for i, may := range []func(svg.Box) bool{c.Clear, c.Free} {
		if k := slices.IndexFunc(spots, func(p svg.Spot) bool { return may(ring(p.At)) }); k >= 0 {
			c.ringed(at, spots[k].At, r)
			c.Text(spots[k].At, s, bold)
			return
		}
		if i == 1 {
			b := c.Place(s, spots...)
			c.ringed(at, pt((b.X0+b.X1)/2, (b.Y0+b.Y1)/2), r)
		}
	}
}

// ringed draws the ring of a balloon and the line to what it stands for.
func (c *canvas) ringed(at, m svg.Point, r float64) {
	if math.Hypot(m.X-at.X, m.Y-at.Y) > 0.1 {
		c.Line(m, at, svg.Dimension)
		c.Circle(at, 0.7, filled(svg.NoLine, svg.Black))
	}
	c.Circle(m, r, filled(svg.Outline, svg.White))
	c.Block(svg.Box{X0: m.X - r, Y0: m.Y - r, X1: m.X + r, Y1: m.Y + r})
}

// float draws a float with its long axis and its name.
func (c *canvas) float(v svg.View, f Afloat, dots []svg.Box) {
	b := v.Box(f.X-f.Long/2, f.Y-f.Broad/2, f.X+f.Long/2, f.Y+f.Broad/2)
	c.Rect(b, line(svg.Hidden))
	m := v.At(f.X, f.Y)
	if f.Long > f.Broad {
		c.Line(pt(b.X0-1, m.Y), pt(b.X1+1, m.Y), svg.Centre)
	} else {
		c.Line(pt(m.X, b.Y0-1), pt(m.X, b.Y1+1), svg.Centre)
	}
	name := svg.Shorten(f.Name, 20, small)
	spots := []svg.Spot{{At: m, Style: small}}
	for _, u := range []svg.Point{{Y: -3.5}, {Y: 3.5}, {X: -3}, {X: 3}} {
		spots = append(spots, svg.Spot{At: pt(m.X+u.X, m.Y+u.Y), Style: small})
	}
	open := slices.DeleteFunc(slices.Clone(spots), func(s svg.Spot) bool { return slices.ContainsFunc(dots, svg.TextBox(s.At, name, small).Overlaps) })
	c.Place(name, append(open, spots[0])...)
}
