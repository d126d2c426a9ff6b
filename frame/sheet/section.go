package sheet

import (
	"fmt"
	"math"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Section is a cut through one bay: two joists, the deck over them and the
// float between or under them. Lengths are in metres; heights count from the
// joists' underside, up.
type Section struct {
	Units      measure.System
	Clear      float64 // between the joists' faces
	JoistThick float64
	JoistDepth float64
	Deck       float64   // thickness of the decking
	Rim        float64   // how far the rim behind reaches below the joists
	Broad      float64   // the float's width in the cut
	High       float64   // its height; of a drum both are its diameter
	Round      bool      // a drum
	Middle     float64   // height of the float's middle
	Aside      float64   // of the float's middle from the middle of the bay
	Others     []float64 // middles of further joists over the float, from the middle of the bay
	Name       string    // of the float, "plastic drum"
	Bears      string    // on what it bears, in words; pointed to where it touches
	Water      []Waterline
	Where      string // what is cut, and what is not known
}

// A Waterline is where the water stands against the frame in one condition.
type Waterline struct {
	Name   string  // "nobody aboard"
	Height float64 // over the joists' underside, m
}

func (s Section) check() error {
	var g gate
	for _, l := range []struct {
		field string
		x     float64
	}{
		{"Clear", s.Clear},
		{"JoistThick", s.JoistThick},
		{"JoistDepth", s.JoistDepth},
		{"Deck", s.Deck},
		{"Broad", s.Broad},
		{"High", s.High},
	} {
		g.in(measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: 20, Source: srcPicture}, "Section."+l.field, l.x)
	}
	near := measure.Range{Kind: measure.Length, Lo: -20, Hi: 20, Source: srcPicture}
	g.in(measure.Range{Kind: measure.Length, Lo: 0, Hi: 2, Source: srcPicture}, "Section.Rim", s.Rim)
	g.in(near, "Section.Middle", s.Middle)
	g.in(near, "Section.Aside", s.Aside)
	g.in(near, "Section.Others", s.Others...)
	g.count("Section.Others", len(s.Others), 0, 60)
	for i, w := range s.Water {
		g.in(near, fmt.Sprintf("Section.Water[%d]", i), w.Height)
	}
	g.count("Section.Water", len(s.Water), 0, 6)
	return g.err
}

// contacts returns where the float touches frame or deck, to within 3 mm: the
// joists' lower edges, the deck's underside, the joists' underside.
func (s Section) contacts() [][2]float64 {
	const near = 3e-3
	half, top := s.Clear/2, s.Middle+s.High/2
	touches := func(a, b float64) bool { return math.Abs(a-b) <= near }
	switch {
	case s.Round && touches(s.Aside, 0) && touches(math.Hypot(half, s.Middle), s.High/2) && s.Middle <= 0:
		return [][2]float64{{-half, 0}, {half, 0}}
	case math.Abs(s.Aside)+s.Broad/2 <= half && touches(top, s.JoistDepth):
		return [][2]float64{{s.Aside, s.JoistDepth}}
	case touches(top, 0):
		var out [][2]float64
		reach := s.Broad / 2
		if s.Round {
			reach = 0 // its crown
		}
		for _, m := range s.joists() {
			if lo, hi := max(m-s.JoistThick/2, s.Aside-reach), min(m+s.JoistThick/2, s.Aside+reach); lo <= hi {
				out = append(out, [2]float64{(lo + hi) / 2, 0})
			}
		}
		return out
	}
	return nil
}

// joists returns the middles of the joists that are cut, the bay's right one last.
func (s Section) joists() []float64 {
	side := (s.Clear + s.JoistThick) / 2
	return append(append([]float64{-side}, s.Others...), side)
}

// Draw draws the section.
func (s Section) Draw() (Picture, error) {
	if err := s.check(); err != nil {
		return Picture{}, err
	}
	deck := s.JoistDepth + s.Deck
	first, last := min(-s.Clear/2, s.Aside-s.Broad/2), max(s.Clear/2, s.Aside+s.Broad/2)
	for _, m := range s.joists() {
		first, last = min(first, m-s.JoistThick/2-s.Clear/8), max(last, m+s.JoistThick/2+s.Clear/8)
	}
	low, high := min(-s.Rim, s.Middle-s.High/2), max(deck, s.Middle+s.High/2)
	for _, w := range s.Water {
		low, high = min(low, w.Height), max(high, w.Height)
	}
	const left, right, tall = 24.0, 48.0, 62.0
	// A broad float makes a low drawing.
	natural := min(tall, (wide-right-6-left)*(high-low)/(last-first))
	var list []callout
	lines := 0
	for _, w := range s.Water {
		k := callout{lines: append(svg.Fold(svg.Shorten(w.Name, 2*(right-9), start), right-4, start), "deck "+level(math.Abs(deck-w.Height), s.Units), over(deck-w.Height))}
		list = append(list, k)
		lines += len(k.lines) + 1
	}
	h := max(natural, row*float64(lines+4))
	desc := fmt.Sprintf("A cut through one bay, %s between the joists, with %s and %s.", measure.Length.Format(s.Clear, s.Units), s.float(), count(len(s.Water), "water line"))
	c := begin("section", "Section through a bay", desc, s.Units, wide, h+21, s.notes()...)

	area := svg.Box{X0: left, Y0: titleRow + 10, X1: wide - right - 6, Y1: titleRow + 10 + h}
	v := svg.Fit(first, low, last, high, area)
	edge := svg.Box{X0: v.At(first, 0).X, X1: v.At(last, 0).X}
	for i := range list {
		list[i].from = pt(edge.X1+3, v.At(0, s.Water[i].Height).Y)
	}
	body := v.Box(s.Aside-s.Broad/2, s.Middle-s.High/2, s.Aside+s.Broad/2, s.Middle+s.High/2)
	if s.Rim > 0 { // it is seen behind the joists
		c.Rect(v.Box(first, -s.Rim, last, s.JoistDepth), line(svg.Dimension))
	}
	if s.Round {
		c.Circle(v.At(s.Aside, s.Middle), v.Scale*s.High/2, filled(svg.Outline, svg.White))
	} else {
		c.Rect(body, filled(svg.Outline, svg.White))
	}
	m := v.At(s.Aside, s.Middle)
	c.Line(pt(m.X-3, m.Y), pt(m.X+3, m.Y), svg.Dimension)
	c.Line(pt(m.X, m.Y-3), pt(m.X, m.Y+3), svg.Dimension)
	for i, w := range s.Water {
		y := v.At(0, w.Height).Y
		weight := svg.Dimension
		if i > 0 {
			weight = svg.Hidden
		}
		c.Line(pt(edge.X0-3, y), pt(edge.X1+3, y), weight)
		c.BlockLine(pt(edge.X0-3, y), pt(edge.X1+3, y))
		c.water(pt(edge.X1+0.5-4.5*float64(i), y))
	}
	for _, m := range s.joists() {
		b := v.Box(m-s.JoistThick/2, 0, m+s.JoistThick/2, s.JoistDepth)
		c.Rect(b, filled(svg.Heavy, svg.White))
		c.Rect(b, filled(svg.Heavy, svg.Wood))
	}
	planks := v.Box(first, s.JoistDepth, last, deck)
	c.Rect(planks, filled(svg.Heavy, svg.White))
	c.Rect(planks, filled(svg.Heavy, svg.Wood))

	touch := s.contacts()
	for _, at := range touch {
		c.Circle(v.At(at[0], at[1]), 0.9, filled(svg.NoLine, svg.Black))
	}
	if len(touch) > 0 && s.Bears != "" {
		last := touch[len(touch)-1]
		list = append(list, callout{v.At(last[0], last[1]), svg.Fold(svg.Shorten(s.Bears, 2*(right-4), start), right-3, start)})
	}
	c.column(wide-right+2, titleRow+2, titleRow+19+h, list)

	c.Across(v.At(-s.Clear/2, 0).X, v.At(s.Clear/2, 0).X, planks.Y0-5, planks.Y0, "clear "+c.length(s.Clear), small)
	foot := max(body.Y1, v.At(0, low).Y) + 7
	c.Across(body.X0, body.X1, foot, body.Y1, c.length(s.Broad), small)
	x := edge.X0 - 6
	under := v.At(0, 0).Y
	c.Upright(planks.Y0, under, x, edge.X0, c.length(deck), small)
	if body.Y1 > under+0.1 {
		c.Upright(under, body.Y1, x, edge.X0, c.length((body.Y1-under)/v.Scale), small)
	}
	c.Place(svg.Shorten(s.float(), 40, small), svg.Spot{At: pt(m.X, m.Y+7), Style: small})
	return c.picture()
}

func (s Section) notes() []string {
	out := []string{"Hatched: lumber that is cut. Do not measure from the drawing; the figures govern."}
	if s.Where != "" {
		out = append(out, svg.Shorten(s.Where, 400, start))
	}
	return out
}

// over says on which side of the water a height is.
func over(height float64) string {
	if height < 0 {
		return "under water"
	}
	return "above the water"
}

// float names the float.
func (s Section) float() string {
	switch {
	case s.Name != "":
		return s.Name
	case s.Round:
		return "a drum"
	}
	return "a float"
}
