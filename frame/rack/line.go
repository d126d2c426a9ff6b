package rack

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Diagram is what a member carries at one place.
type Diagram struct {
	X      float64 // m
	Axial  float64 // N, positive where it stretches the member
	Shear  float64 // N: the sum of the forces to the left that act before X
	Moment float64 // N·m, positive where it bends the middle to the right
}

// String returns the diagram on one line in SI.
func (d Diagram) String() string {
	return fmt.Sprintf("x = %.3f m: axial %s, shear %s, moment %s", tidy(d.X, 3),
		print(measure.Force, d.Axial), print(measure.Force, d.Shear), print(measure.Moment, d.Moment))
}

// A Piece is a stretch of a member on which the diagrams are polynomials: between
// neighbouring nodes, boards, and places where a load begins, ends or stands.
type Piece struct {
	To            float64    // m; it begins at Start.X
	Along, Across [2]float64 // N/m, the spread load at its two ends
	Start         Diagram    // just past its beginning
}

// A Line is a solved member: exact polynomials from place to place.
type Line struct {
	EA, EI, GA float64    // N, N·m², N, as given
	Start      [3]float64 // m, m, rad: movement of its near end along and across, and turn
	Unknown    []string   // what is not known of the slips; then Start is zero and [Line.Moved] an error
	Pieces     []Piece
}

// at returns the diagram at distance t into the piece.
func (p *Piece) at(t float64) Diagram {
	h := p.To - p.Start.X
	var rn, rq float64
	if h > 0 {
		rn, rq = (p.Along[1]-p.Along[0])/h, (p.Across[1]-p.Across[0])/h
	}
	s := &p.Start
	return Diagram{
		X:      s.X + t,
		Axial:  s.Axial - (p.Along[0]+float64(rn*t/2))*t,
		Shear:  s.Shear + (p.Across[0]+float64(rq*t/2))*t,
		Moment: s.Moment + (s.Shear+(p.Across[0]/2+float64(rq*t/6))*t)*t,
	}
}

// find returns the piece in which x lies, of two that meet there the later one
// unless before.
func (l *Line) find(x float64, before bool) (*Piece, float64) {
	last := len(l.Pieces) - 1
	x = math.Min(math.Max(x, 0), l.Pieces[last].To)
	lo, hi := 0, last
	for lo < hi {
		k := (lo + hi) / 2
		if to := l.Pieces[k].To; x < to || before && x == to {
			hi = k
		} else {
			lo = k + 1
		}
	}
	return &l.Pieces[lo], x
}

// At returns what the member carries at x, m, exact to rounding. Where it jumps (at a
// node, a board or a force) it is what holds just past x; at the far end, just before
// it. [Line.Before] gives the other side. An x off the member counts as the nearer
// end; NaN, and a line without pieces, give NaN.
func (l *Line) At(x float64) Diagram { return l.side(x, false) }

// Before returns what the member carries just before x, m, and at the near end just
// past it, exact to rounding.
func (l *Line) Before(x float64) Diagram { return l.side(x, true) }

func (l *Line) side(x float64, before bool) Diagram {
	if math.IsNaN(x) || len(l.Pieces) == 0 {
		nan := math.NaN()
		return Diagram{nan, nan, nan, nan}
	}
	p, x := l.find(x, before)
	return p.at(x - p.Start.X)
}

// Moved returns how the member's axis moves at x, m: along it and to its left, m, and
// its section's turn, rad, its joints' slips counted in, exact for [Frame.Solve]. Where
// a slip is not known it is an error of class [measure.ErrUnknown]; an x off the member
// is one of class [measure.ErrRange]. A cantilever, a bar and a simple beam are within
// 9.4 units in the last place of their largest movement.
// Worst at (9.108, 3.129e+04, 4.846, 8.094), ordered as in testdata/accuracy.csv.
func (l *Line) Moved(x float64) (along, left, turn float64, err error) {
	if len(l.Unknown) > 0 {
		return 0, 0, 0, unknown("movement", l.Unknown)
	}
	length := 0.0
	if n := len(l.Pieces); n > 0 {
		length = l.Pieces[n-1].To
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: length}).Check("x", x); err != nil {
		return 0, 0, 0, err
	}
	along, left, turn = l.Start[0], l.Start[1], l.Start[2]
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if i > 0 && p.Start.X >= x {
			break
		}
		t := math.Min(x, p.To) - p.Start.X
		n, v, m := p.Start.Axial, p.Start.Shear, p.Start.Moment
		var rn, rq float64
		if h := p.To - p.Start.X; h > 0 {
			rn, rq = (p.Along[1]-p.Along[0])/h, (p.Across[1]-p.Across[0])/h
		}
		a, q := p.Along[0], p.Across[0]
		along += (n - (a/2+float64(rn*t/6))*t) * t / l.EA
		left += float64(turn*t) + (m/2+(v/6+(q/24+float64(rq*t/120))*t)*t)*t*t/l.EI
		if l.GA > 0 {
			left -= (v + (q/2+float64(rq*t/6))*t) * t / l.GA
		}
		turn += (m + (v/2+(q/6+float64(rq*t/24))*t)*t) * t / l.EI
	}
	if !finite(along, left, turn) {
		return 0, 0, 0, wrong("line", "not all its numbers are finite, or its stiffness is none", "one that Frame.Solve found")
	}
	return along, left, turn, nil
}

// Extremes are the places where a member carries most.
type Extremes struct {
	Pull  Diagram // the greatest axial force: the most stretched, or least pressed
	Push  Diagram // the least axial force
	Shear Diagram // the largest shear of either sign
	Right Diagram // the greatest moment: bends the middle to the right
	Left  Diagram // the least moment: bends the middle to the left
}

// Extremes returns the places of the extremes, exact to rounding: the ends of the
// pieces and the places between where a diagram turns. Of equal ones it is the
// first.
func (l *Line) Extremes() Extremes {
	if len(l.Pieces) == 0 {
		none := l.At(math.NaN())
		return Extremes{none, none, none, none, none}
	}
	var e Extremes
	first := true
	for i := range l.Pieces {
		p := &l.Pieces[i]
		h := p.To - p.Start.X
		var places [6]float64
		at := append(places[:0], 0, h)
		// Axial force turns where the load along it vanishes, shear where the load
		// across does, the moment where the shear does.
		at = within(at, h, p.Along[0], (p.Along[1]-p.Along[0])/h, 0)
		at = within(at, h, p.Across[0], (p.Across[1]-p.Across[0])/h, 0)
		at = within(at, h, p.Start.Shear, p.Across[0], (p.Across[1]-p.Across[0])/h/2)
		for _, t := range at {
			e.take(p.at(t), first)
			first = false
		}
	}
	return e
}

// within adds the roots of a + b t + c t² between 0 and h.
func within(at []float64, h, a, b, c float64) []float64 {
	add := func(t float64) {
		if t > 0 && t < h {
			at = append(at, t)
		}
	}
	if c == 0 {
		if b != 0 {
			add(-a / b)
		}
		return at
	}
	d := b*b - 4*a*c
	if !(d >= 0) {
		return at
	}
	q := -(b + math.Copysign(math.Sqrt(d), b)) / 2
	add(q / c)
	if q != 0 {
		add(a / q)
	}
	return at
}

// take takes a diagram into the extremes.
func (e *Extremes) take(d Diagram, first bool) {
	more := func(is bool, into *Diagram) {
		if first || is {
			*into = d
		}
	}
	more(d.Axial > e.Pull.Axial, &e.Pull)
	more(d.Axial < e.Push.Axial, &e.Push)
	more(math.Abs(d.Shear) > math.Abs(e.Shear.Shear), &e.Shear)
	more(d.Moment > e.Right.Moment, &e.Right)
	more(d.Moment < e.Left.Moment, &e.Left)
}

// lines returns the diagrams of all members.
func (t *state) lines() []Line {
	f := t.f
	out := make([]Line, len(f.Members))
	n := 0
	for k := range t.segments {
		n += 1 + len(t.segments[k].points) + 2*len(t.segments[k].spreads)
	}
	all := make([]Piece, 0, n)
	for i := range f.Members {
		m := &f.Members[i]
		l := &out[i]
		begin := len(all)
		l.EA, l.EI, l.GA = m.EA, m.EI, m.GA
		for k := t.mesh.first[i]; k < t.mesh.first[i+1]; k++ {
			g := &t.segments[k]
			if k == t.mesh.first[i] {
				l.Start = t.start(k)
			}
			g.pieces(func(from, to float64) {
				d := g.inside(from, false, t.ends[k].near)
				p := Piece{To: g.x + to, Start: Diagram{g.x + from, d[0], d[1], d[2]}}
				for _, s := range g.spreads {
					if s.From < to && s.To > from {
						for e, x := range [2]float64{from, to} {
							r := (x - s.From) / (s.To - s.From)
							p.Along[e] += s.Along + float64(s.AlongRise*r)
							p.Across[e] += s.Across + float64(s.AcrossRise*r)
						}
					}
				}
				all = append(all, p)
			})
		}
		l.Pieces = all[begin:len(all):len(all)]
	}
	return out
}

// start returns how the near end of segment k itself moves: its node, less what
// the joint gives.
func (t *state) start(k int) [3]float64 {
	g, s, e := &t.segments[k], &t.springs[k], &t.ends[k]
	a, b := &t.points[g.a], &t.points[g.b]
	ax, ay := a.moved(t.x)
	bx, by := b.moved(t.x)
	along := float64(ax*g.cos) + float64(ay*g.sin) + float64(e.axial[0]*s.slip[0][0])
	across := float64(ay*g.cos) - float64(ax*g.sin)
	chord := (float64(by*g.cos) - float64(bx*g.sin) - across) / g.h
	// Turn off the nodes' chord of a piece on two supports under the couples of
	// its ends.
	bend := g.h / g.ei
	slide := (s.slip[0][1] + s.slip[1][1]) / (g.h * g.h)
	if g.ga > 0 {
		slide += 1 / (g.ga * g.h)
	}
	turn := chord + s.free[1] + e.couple[0]*(bend/3+slide) + e.couple[1]*(slide-bend/6)
	return [3]float64{along, across - float64(e.across[0]*s.slip[0][1]), turn}
}
