package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// An edge is the line along which people stand: the deck's outline, drawn in by
// an inset.
type edge struct {
	corners []r3.Vec
	along   []float64 // way from the first corner to each, and around at the end
	turn    float64   // +1 counter-clockwise seen from above, -1 clockwise
}

// edge returns the deck's outline, drawn in by inset.
func (p *Platform) edge(inset float64) (*edge, error) {
	n := len(p.Corners)
	if n < 3 {
		return nil, errEdge
	}
	area := 0.0
	for i, a := range p.Corners {
		b := p.Corners[(i+1)%n]
		area += a.X*b.Y - b.X*a.Y
	}
	if area == 0 {
		return nil, &measure.Error{Field: "Corners", Class: measure.ErrUnknown, Why: "they enclose no deck", Want: "the corners in order around the edge"}
	}
	e := &edge{turn: math.Copysign(1, area)}
	for i, b := range p.Corners {
		a, c := p.Corners[(i+n-1)%n], p.Corners[(i+1)%n]
		v, ok := e.drawn(a, b, c, inset)
		if !ok {
			return nil, &measure.Error{Field: "Corners", Class: measure.ErrUnknown, Why: "two of them coincide", Want: "the corners in order around the edge"}
		}
		e.corners = append(e.corners, v)
	}
	e.along = make([]float64, n+1)
	for i, a := range e.corners {
		b := e.corners[(i+1)%n]
		way := r3.Sub(p.Corners[(i+1)%n], p.Corners[i])
		if d := r3.Sub(b, a); d.X*way.X+d.Y*way.Y <= 0 && inset > 0 {
			return nil, (measure.Range{Kind: measure.Length, Lo: 0, Hi: 0, Source: &measure.Source{
				Title: "narrower than the deck", Status: measure.Exact,
			}}).Check("Inset", inset)
		}
		e.along[i+1] = e.along[i] + r3.Norm(r3.Sub(b, a))
	}
	return e, nil
}

// drawn moves the corner b between a and c inward from both its edges.
func (e *edge) drawn(a, b, c r3.Vec, inset float64) (r3.Vec, bool) {
	n1, ok1 := e.normal(a, b)
	n2, ok2 := e.normal(b, c)
	if !ok1 || !ok2 {
		return b, false
	}
	f := 1 + n1.X*n2.X + n1.Y*n2.Y
	if f < 1e-3 { // a spike
		return b, true
	}
	b.X += inset * (n1.X + n2.X) / f
	b.Y += inset * (n1.Y + n2.Y) / f
	return b, true
}

// normal returns the horizontal inward direction of the edge from a to b.
func (e *edge) normal(a, b r3.Vec) (r3.Vec, bool) {
	x, y := b.X-a.X, b.Y-a.Y
	n := math.Hypot(x, y)
	if !(n > 0) {
		return r3.Vec{}, false
	}
	return r3.Vec{X: -e.turn * y / n, Y: e.turn * x / n}, true
}

// inward returns the inward direction of the edge nearest to a place.
func (e *edge) inward(at r3.Vec) r3.Vec {
	best, dir := math.Inf(1), r3.Vec{}
	for i, a := range e.corners {
		b := e.corners[(i+1)%len(e.corners)]
		x, y := b.X-a.X, b.Y-a.Y
		t := ((at.X-a.X)*x + (at.Y-a.Y)*y) / (x*x + y*y)
		t = min(max(t, 0), 1)
		if d := math.Hypot(at.X-a.X-t*x, at.Y-a.Y-t*y); d < best-1e-12 {
			if n, ok := e.normal(a, b); ok {
				best, dir = d, n
			}
		}
	}
	return dir
}

// length returns the way around.
func (e *edge) length() float64 { return e.along[len(e.along)-1] }

// at returns the place at a way along the edge, which may run around.
func (e *edge) at(s float64) r3.Vec {
	all := e.length()
	if s = math.Mod(s, all); s < 0 {
		s += all
	}
	n := len(e.corners)
	for i := range n {
		if s <= e.along[i+1] || i == n-1 {
			a, b := e.corners[i], e.corners[(i+1)%n]
			t := 0.0
			if d := e.along[i+1] - e.along[i]; d > 0 {
				t = min((s-e.along[i])/d, 1)
			}
			return r3.Add(a, r3.Scale(t, r3.Sub(b, a)))
		}
	}
	return e.corners[0]
}

// stations returns places to try: every corner, and along every edge.
func (e *edge) stations() []float64 {
	const pieces = 12
	var out []float64
	for i := range e.corners {
		for k := range pieces {
			out = append(out, e.along[i]+float64(k)/pieces*(e.along[i+1]-e.along[i]))
		}
	}
	return out
}
