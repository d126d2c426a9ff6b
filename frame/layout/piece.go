package layout

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Point is a place in plan, m: X along the dock from the end where the tape
// hooks, Y across it from the side where it hooks.
type Point struct{ X, Y float64 }

func (p Point) on(axis int) float64 {
	if axis == 0 {
		return p.X
	}
	return p.Y
}

// at returns the point with these coordinates along an axis and the other one.
func at(axis int, along, across float64) Point {
	if axis == 0 {
		return Point{along, across}
	}
	return Point{across, along}
}

// A Kind is what a piece of the frame is called.
type Kind int

// The kinds of piece. The first four carry and become members; the others are
// fixed to them and stand in a drum's way.
const (
	Rim      Kind = iota // an outer piece that others butt on
	Joist                // what the deck boards lie across
	Header               // a beam between or under joists
	Blocking             // short, between joists
	Strip                // nailed along another piece: for board ends, or to keep a drum
	Stop                 // keeps a drum from rolling or sliding
	Ladder               // hangs at a piece
)

var kindNames = [...]string{"rim", "joist", "header", "blocking", "strip", "stop", "ladder"}

// String returns the kind's name, such as "joist".
func (k Kind) String() string {
	if k < 0 || int(k) >= len(kindNames) {
		return "piece of no known kind"
	}
	return kindNames[k]
}

func (k Kind) carries() bool { return k <= Blocking }

// A Splice is a place where a piece is made of two lengths.
type Splice struct {
	At  float64 // m from the piece's From
	Ply int     // which ply, from 1; 0: all of them
	// Carries says that the joint was made to pass bending moment. Otherwise it
	// is a hinge, unless another ply runs past it.
	Carries bool
}

// A Piece is one length of lumber, or several plies side by side, along x or y.
type Piece struct {
	Name     string // unique; conflicts and results speak of it
	Kind     Kind
	From, To Point   // the ends of its axis as cut
	Width    float64 // m, of one ply, horizontal, as dressed or measured
	Depth    float64 // m, vertical
	Plies    int     // side by side; 0 counts as 1
	Bottom   float64 // m, its lower edge above the underside of the joists
	Splices  []Splice
	// Stiff says that its ends pass bending moment and torque to what they butt
	// on: corner irons bolted through. Otherwise they turn freely.
	Stiff bool
}

var (
	srcFrame = &measure.Source{Title: "sizes of a dock's frame", Status: measure.OwnChoice}
	places   = measure.Range{Kind: measure.Length, Lo: -1000, Hi: 1000, Source: srcFrame}
	sides    = measure.Range{Kind: measure.Length, Lo: 0, Hi: 2, OpenLo: true, Source: srcFrame}
	heights  = measure.Range{Kind: measure.Length, Lo: -10, Hi: 10, Source: srcFrame}
	lasts    = measure.Range{Kind: measure.Length, Lo: 2 * merge, Hi: 1000, Source: srcFrame}
	counts   = measure.Range{Lo: 0, Hi: 10, Source: srcFrame}
)

func (p *Piece) check() error {
	field := "piece " + p.Name
	if p.Name == "" {
		return &measure.Error{Field: "piece", Text: p.Name, Class: measure.ErrName, Want: "a name for every piece"}
	}
	if p.Kind < 0 || int(p.Kind) >= len(kindNames) {
		return &measure.Error{Field: field + ", kind", Text: p.Kind.String(), Class: measure.ErrName, Want: "rim to ladder"}
	}
	for _, c := range []struct {
		what string
		r    measure.Range
		x    float64
	}{
		{"From.X", places, p.From.X},
		{"From.Y", places, p.From.Y},
		{"To.X", places, p.To.X},
		{"To.Y", places, p.To.Y},
		{"Width", sides, p.Width},
		{"Depth", sides, p.Depth},
		{"Plies", counts, float64(p.Plies)},
		{"Bottom", heights, p.Bottom},
		{"length", lasts, math.Hypot(p.To.X-p.From.X, p.To.Y-p.From.Y)},
	} {
		if err := c.r.Check(field+", "+c.what, c.x); err != nil {
			return err
		}
	}
	if p.From.X != p.To.X && p.From.Y != p.To.Y {
		return &measure.Error{
			Field: field, Text: "slanted in plan", Class: measure.ErrRange,
			Want: "a piece along x or along y: both ends alike in one of them",
		}
	}
	length := math.Hypot(p.To.X-p.From.X, p.To.Y-p.From.Y)
	for _, s := range p.Splices {
		if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: length, OpenLo: true, OpenHi: true}).Check(field+", splice", s.At); err != nil {
			return err
		}
		if err := (measure.Range{Lo: 0, Hi: float64(max(1, p.Plies))}).Check(field+", ply of the splice", float64(s.Ply)); err != nil {
			return err
		}
	}
	return nil
}

// A bar is a piece as a box: its run along one axis, its footprint across it,
// its height.
type bar struct {
	axis   int     // 0 along x, 1 along y
	lo, hi float64 // along it
	c, h   float64 // axis across it, half of the width of all plies
	z0, z1 float64
	from   float64 // where the piece's From lies along the axis
	sign   float64 // of To past From
}

func (p *Piece) bar() bar {
	axis := 0
	if p.From.X == p.To.X {
		axis = 1
	}
	a, b := p.From.on(axis), p.To.on(axis)
	sign := 1.0
	if b < a {
		sign = -1
	}
	return bar{
		axis: axis, lo: math.Min(a, b), hi: math.Max(a, b), c: p.From.on(1 - axis), h: float64(max(1, p.Plies)) * p.Width / 2,
		z0: p.Bottom, z1: p.Bottom + p.Depth, from: a, sign: sign,
	}
}

// span returns the footprint's interval on an axis.
func (b bar) span(axis int) (lo, hi float64) {
	if axis == b.axis {
		return b.lo, b.hi
	}
	return b.c - b.h, b.c + b.h
}

// along turns a coordinate on the bar's axis into the distance from its From.
func (b bar) along(s float64) float64 { return (s - b.from) * b.sign }

// coordinate is the inverse of along.
func (b bar) coordinate(a float64) float64 { return b.from + a*b.sign }

func (b bar) point(s float64) Point { return at(b.axis, s, b.c) }

// apart returns the gap between two intervals, negative by how far they overlap.
func apart(a0, a1, b0, b1 float64) float64 { return math.Max(b0-a1, a0-b1) }

// gaps returns the gaps between two bars along x, y and z.
func gaps(a, b bar) (out [3]float64) {
	for axis := range 2 {
		a0, a1 := a.span(axis)
		b0, b1 := b.span(axis)
		out[axis] = apart(a0, a1, b0, b1)
	}
	out[2] = apart(a.z0, a.z1, b.z0, b.z1)
	return out
}
