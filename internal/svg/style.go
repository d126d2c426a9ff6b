package svg

import "strings"

// A Weight is a kind of line, by its place in a trade drawing.
type Weight int

// The kinds of line. The zero Weight draws none.
const (
	NoLine    Weight = iota
	Heavy            // what is cut, or must be seen first
	Outline          // visible edges
	Curve            // a curve on axes
	Dimension        // dimension, extension and leader lines, axes
	Hidden           // edges that something covers: dashed
	Centre           // axes of parts and diagonals: long and short dashes
	Phantom          // another position of the same part: long dash, two short
	Grid             // the lines behind a curve
	weights
)

// pens holds width and dashes of each weight, in drawing units.
var pens = [weights]struct {
	width  float64
	dashes string
	colour string
}{
	Heavy:     {0.9, "", "#000"},
	Outline:   {0.5, "", "#000"},
	Curve:     {0.8, "", "#000"},
	Dimension: {0.22, "", "#000"},
	Hidden:    {0.34, "1.8 0.9", "#000"},
	Centre:    {0.22, "4 0.8 0.8 0.8", "#000"},
	Phantom:   {0.34, "4.5 0.8 0.8 0.8 0.8 0.8", "#000"},
	Grid:      {0.16, "0.5 0.7", "#555"},
}

// A Fill is what covers an area.
type Fill int

// The fills. The zero Fill leaves the area open.
const (
	Open   Fill = iota
	White       // hides what lies under it
	Black       //
	Pale        // a light grey that a printer still shows
	Wood        // cut lumber: lines rising to the right
	Waste       // what is left over: lines rising both ways
	Ground      // short strokes
	fills
)

// hatches holds the tile of each hatching: its size and the path drawn on it.
var hatches = [fills]struct {
	size  float64
	path  string
	width float64
}{
	Wood:   {1.8, "M-0.45 0.45 L0.45 -0.45 M0 1.8 L1.8 0 M1.35 2.25 L2.25 1.35", 0.18},
	Waste:  {2, "M0 0 L2 2 M0 2 L2 0", 0.16},
	Ground: {2.4, "M0.2 2.2 L1 1.4 M1.5 0.9 L2.2 0.2", 0.22},
}

// A Style is how an area or a line is drawn.
type Style struct {
	Weight Weight
	Fill   Fill
}

// pen returns the attributes of a style; a closed shape has a fill.
func (d *Drawing) pen(s Style, closed bool) []attr {
	fill := "none"
	if closed {
		switch s.Fill {
		case White:
			fill = "#fff"
		case Black:
			fill = "#000"
		case Pale:
			fill = "#e4e4e4"
		case Wood, Waste, Ground:
			d.hatched[s.Fill] = true
			fill = "url(#" + d.id + "-" + hatchName(s.Fill) + ")"
		}
	}
	attrs := []attr{{"fill", fill}}
	if s.Weight <= NoLine || s.Weight >= weights {
		return attrs
	}
	p := pens[s.Weight]
	return append(attrs, attr{"stroke", p.colour}, attr{"stroke-width", num(p.width)}, attr{"stroke-dasharray", p.dashes})
}

func hatchName(f Fill) string {
	switch f {
	case Wood:
		return "wood"
	case Waste:
		return "waste"
	}
	return "ground"
}

// defs returns the hatchings that were used, in their fixed order.
func (d *Drawing) defs() string {
	var b strings.Builder
	for f, used := range d.hatched {
		if !used {
			continue
		}
		h := hatches[f]
		size := num(h.size)
		b.WriteString(`<pattern id="` + d.id + "-" + hatchName(Fill(f)) + `" patternUnits="userSpaceOnUse" width="` + size + `" height="` + size + `">`)
		b.WriteString(`<path d="` + h.path + `" fill="none" stroke="#000" stroke-width="` + num(h.width) + `"/></pattern>` + "\n")
	}
	if b.Len() == 0 {
		return ""
	}
	return "<defs>\n" + b.String() + "</defs>\n"
}
