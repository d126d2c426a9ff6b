package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// A Moments is a member with its supports and loads, and the bending moment
// along it. Places are in metres from the member's left end, forces in newtons
// and moments in newton metres; down is positive for loads.
type Moments struct {
	Units    measure.System
	Member   string // "near rim"
	When     string // "second drum lost"
	From     string // what lies at its left end: "near side"
	Length   float64
	Supports []float64
	Points   []PointLoad
	Lines    []LineLoad
	X        []float64 // stations, rising
	Moment   []float64 // at each; positive where the member sags
	Limit    float64   // the moment the member may carry; 0 is not drawn
	LimitHog float64   // that where it bends up over a support, if it is another; 0 is none
}

// A PointLoad is a force, N, at a place, m.
type PointLoad struct{ X, Force float64 }

// A LineLoad is spread evenly from X0 to X1, in newtons per metre.
type LineLoad struct{ X0, X1, Load float64 }

func (m Moments) check() error {
	var g gate
	g.in(lengths, "Moments.Length", m.Length)
	along := measure.Range{Kind: measure.Length, Lo: 0, Hi: m.Length * (1 + 1e-9), Source: srcPicture}
	g.in(along, "Moments.Supports", m.Supports...)
	for i, p := range m.Points {
		g.in(along, fmt.Sprintf("Moments.Points[%d].X", i), p.X)
		g.in(forces, fmt.Sprintf("Moments.Points[%d].Force", i), p.Force)
	}
	for i, l := range m.Lines {
		g.in(along, fmt.Sprintf("Moments.Lines[%d] ends", i), l.X0, l.X1)
		g.in(loads, fmt.Sprintf("Moments.Lines[%d].Load", i), l.Load)
	}
	g.in(along, "Moments.X", m.X...)
	g.rise("Moments.X", m.X)
	g.in(moments, "Moments.Moment", m.Moment...)
	g.in(measure.Range{Kind: measure.Moment, Lo: 0, Hi: 1e9, Source: srcPicture}, "Moments.Limit", m.Limit)
	g.in(measure.Range{Kind: measure.Moment, Lo: 0, Hi: 1e9, Source: srcPicture}, "Moments.LimitHog", m.LimitHog)
	g.count("Moments.Supports", len(m.Supports), 0, 100)
	g.count("Moments.Points", len(m.Points), 0, 200)
	g.count("Moments.Lines", len(m.Lines), 0, 12)
	g.count("Moments.X", len(m.X), 2, 5000)
	if g.err == nil && len(m.X) != len(m.Moment) {
		g.count("Moments.Moment", len(m.Moment), len(m.X), len(m.X))
	}
	return g.err
}

// in returns a moment in the unit it is plotted in, and that unit.
func inMoment(x float64, s measure.System) (float64, string) {
	if s == measure.US {
		return x / (measure.PoundForce * measure.Foot), "lbf·ft"
	}
	return x, "N·m"
}

// inLength returns a length in the unit it is plotted in, and that unit.
func inLength(x float64, s measure.System) (float64, string) {
	if s == measure.US {
		return x / measure.Foot, "ft"
	}
	return x, "m"
}

// worst returns the station where the moment is greatest either way.
func (m Moments) worst() int {
	at := 0
	for i, x := range m.Moment {
		if math.Abs(x) > math.Abs(m.Moment[at]) {
			at = i
		}
	}
	return at
}

// sides returns the forces drawn over the member and those that push from below.
func (m Moments) sides(x func(float64) float64) (over, under []svg.Mark) {
	points, _ := m.shown()
	for _, p := range points {
		to := &over
		if p.Force < 0 {
			to = &under
		}
		*to = append(*to, svg.Mark{At: x(p.X), Text: measure.Force.Format(math.Abs(p.Force), m.Units)})
	}
	return over, under
}

// shown returns the forces from left to right, those at one place together, without
// the small ones, and what is the least that is shown; 0 where all are.
func (m Moments) shown() (points []PointLoad, least float64) {
	sorted := slices.Clone(m.Points)
	slices.SortStableFunc(sorted, func(a, b PointLoad) int { return cmp.Compare(a.X, b.X) })
	most := 0.0
	for _, p := range sorted {
		if n := len(points) - 1; n >= 0 && p.X-points[n].X < 1e-3 {
			points[n].Force += p.Force
		} else {
			points = append(points, p)
		}
	}
	for _, p := range points {
		most = max(most, math.Abs(p.Force))
	}
	n := len(points)
	points = slices.DeleteFunc(points, func(p PointLoad) bool { return math.Abs(p.Force) < most/100 })
	if len(points) < n {
		least = most / 100
	}
	return points, least
}

// Draw draws member and moment one over the other, on the same scale. A member with
// many loads makes a wider sheet, so that no figure covers another.
func (m Moments) Draw() (Picture, error) {
	if err := m.check(); err != nil {
		return Picture{}, err
	}
	const left, right = svg.PlotLeft + 2.0, 4.0
	over, under := m.sides(func(float64) float64 { return 0 })
	w := max(wide, row*float64(max(len(over), len(under)))+left)
	x := func(at float64) float64 { return left + float64((w-left-right)*at/m.Length) }
	over, under = m.sides(x)
	room, below := 4.0, 7.0
	if len(over) > 0 {
		room = svg.RunningRoom(over, small)
	}
	const arrow = 8.0
	if len(under) > 0 {
		below = arrow + svg.RunningRoom(under, small) + 2
	}
	even := row + 5.5
	if len(m.Lines) == 0 {
		even = 0
	}
	beam := titleRow + room + arrow + even
	const plot = 46.0
	h := beam - titleRow + below + svg.PlotAbove + plot + svg.PlotBelow

	k := m.worst()
	peak := "greatest " + measure.Moment.Format(m.Moment[k], m.Units) + " at " + level(m.X[k], m.Units)
	desc := fmt.Sprintf("A member %s long with its supports and loads, and the bending moment along it: %s.", measure.Length.Format(m.Length, m.Units), peak)
	title := "Load and moment"
	if m.Member != "" {
		title += ": " + m.Member
	}
	c := begin("moments", title, desc, m.Units, w, h, m.notes()...)

	c.RunningX(over, beam-even-arrow, beam-even-arrow-2, left-8, w, small)
	for _, p := range over {
		top, foot := pt(p.At, beam-even-arrow), pt(p.At, beam-0.3)
		c.Arrow(top, foot, svg.Outline)
		c.BlockLine(top, foot)
	}
	const thick = 1.6
	c.RunningX(under, beam+thick+arrow, beam+thick+arrow+2, left-8, w, small)
	for _, p := range under {
		c.Arrow(pt(p.At, beam+thick+arrow), pt(p.At, beam+thick+0.3), svg.Outline)
		c.BlockLine(pt(p.At, beam+thick+arrow), pt(p.At, beam+thick+0.3))
	}
	c.even(m, x, beam)
	c.Rect(svg.Box{X0: x(0), Y0: beam, X1: x(m.Length), Y1: beam + thick}, filled(svg.Outline, svg.Wood))
	for _, s := range m.Supports {
		at := pt(x(s), beam+thick)
		c.Polygon(filled(svg.Outline, svg.White), at, pt(at.X-1.7, at.Y+3), pt(at.X+1.7, at.Y+3))
		c.Line(pt(at.X-2.4, at.Y+3.7), pt(at.X+2.4, at.Y+3.7), svg.Dimension)
	}
	m.plot(c, svg.Box{X0: left, Y0: beam + below + svg.PlotAbove, X1: w - right, Y1: beam + below + svg.PlotAbove + plot}, peak)
	return c.picture()
}

// notes explains what the drawing does not say by itself.
func (m Moments) notes() []string {
	var out []string
	if m.When != "" {
		out = append(out, "When: "+svg.Shorten(m.When, 300, start)+".")
	}
	if _, least := m.shown(); least > 0 {
		out = append(out, "Forces under "+measure.Force.Format(least, m.Units)+" are left out.")
	}
	note := "Over the line the member is bent like a hanging rope, under it like a hump over a support."
	if hog := m.hog(); m.Limit > 0 || hog > 0 {
		note += " Dashed: what the member may carry, " + measure.Moment.Format(m.Limit, m.Units)
		if hog == m.Limit {
			note += " either way."
		} else {
			note += " over the line and " + measure.Moment.Format(hog, m.Units) + " under it."
		}
	}
	return append(out, note)
}

// hog returns the limit of moments that bend the member up.
func (m Moments) hog() float64 {
	if m.LimitHog > 0 {
		return m.LimitHog
	}
	return m.Limit
}

// even draws the loads that are spread along the member.
func (c *canvas) even(m Moments, x func(float64) float64, beam float64) {
	for _, l := range m.Lines {
		b := svg.Box{X0: x(min(l.X0, l.X1)), Y0: beam - 5, X1: x(max(l.X0, l.X1)), Y1: beam - 0.3}
		c.Rect(b, line(svg.Dimension))
		n := math.Floor(max(1, (b.X1-b.X0)/5))
		for i := 0.0; i <= n; i++ {
			at := b.X0 + (b.X1-b.X0)*i/n
			from, to := pt(at, b.Y0), pt(at, b.Y1)
			if l.Load < 0 {
				from, to = to, from
			}
			c.Arrow(from, to, svg.Dimension)
		}
		var spots []svg.Spot
		for _, part := range []float64{0.5, 0.25, 0.75, 0.375, 0.625, 0.125, 0.875} {
			spots = append(spots, svg.Spot{At: pt(b.X0+part*(b.X1-b.X0), b.Y0-row/2-0.3), Style: small})
		}
		c.Place(measure.LineLoad.Format(l.Load, c.units), spots...)
	}
}

// plot draws the moment under the member.
func (m Moments) plot(c *canvas, b svg.Box, peak string) {
	var xs, ys []float64
	for i := range m.X {
		x, _ := inLength(m.X[i], m.Units)
		y, _ := inMoment(m.Moment[i], m.Units)
		xs, ys = append(xs, x), append(ys, y)
	}
	limit, unit := inMoment(m.Limit, m.Units)
	hog, _ := inMoment(m.hog(), m.Units)
	lo, hi := span(ys, []float64{limit, -hog})
	if lo == hi {
		hi = 1
	}
	lo, hi = lo-0.08*(hi-lo), hi+0.12*(hi-lo)
	most, foot := inLength(m.Length, m.Units)
	along := "along the member, "
	if m.From != "" {
		along = "from the axis at the " + svg.Shorten(m.From, 40, small) + ", "
	}
	p := c.Plot(b, svg.Axis{Hi: most, Ticks: svg.Ticks(0, most, 12), Title: along + foot},
		svg.Axis{Lo: lo, Hi: hi, Ticks: svg.Ticks(lo, hi, 6), Title: "bending moment, " + unit})
	p.Level(0, svg.Dimension)
	if limit > 0 {
		p.Level(limit, svg.Hidden)
	}
	if hog > 0 {
		p.Level(-hog, svg.Hidden)
	}
	p.Curve(xs, ys, svg.Curve)
	k := m.worst()
	at := p.At(xs[k], ys[k])
	c.Block(svg.Box{X0: b.X0, Y0: b.Y1 - 0.2, X1: c.w, Y1: b.Y1 + svg.PlotBelow})
	c.Circle(at, 0.9, filled(svg.NoLine, svg.Black))
	c.Leader(at, 6, peak, small)
}
