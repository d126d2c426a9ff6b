package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// gauss holds the points of Gauss's rules on -1 to 1 and the share of each.
var gauss = [3][]struct{ at, share float64 }{
	{{0, 1}},
	{{-0.5773502691896257, 0.5}, {0.5773502691896257, 0.5}},
	{{-0.7745966692414834, 5. / 18}, {0, 8. / 18}, {0.7745966692414834, 5. / 18}},
}

// Slices cuts a unit into parts for a frame that bends under it: along its length
// and, a [Block], across it, 1 to 3 each. A part stands at a point of Gauss's
// rule and has the point's share of length, mass and leak. From two parts on they have, level, the
// volume, waterplane and second moments of the whole: a stiff frame on the
// parts answers a small turn as on the whole.
//
// The error is for bad data, and of class [measure.ErrNotComputed] for a body
// that is neither Cylinder nor Block, or for a Cylinder cut across.
func (u Unit) Slices(along, across int) ([]Unit, error) {
	if err := u.check("Unit."); err != nil {
		return nil, err
	}
	parts := measure.Range{Lo: 1, Hi: float64(len(gauss)), Source: ownBound}
	if err := parts.Check("along", float64(along)); err != nil {
		return nil, err
	}
	if err := parts.Check("across", float64(across)); err != nil {
		return nil, err
	}
	if along == 1 && across == 1 {
		return []Unit{u}, nil
	}
	var length, width float64
	switch b := u.Body.(type) {
	case Cylinder:
		length = b.Length
		if across > 1 {
			return nil, &measure.Error{Field: "across", Value: float64(across), Class: measure.ErrNotComputed, Want: "1 for a Cylinder, whose push goes through its axis"}
		}
	case Block:
		length, width = b.Length, b.Width
	default:
		return nil, &measure.Error{Field: "Unit.Body", Class: measure.ErrNotComputed, Want: "a Cylinder or a Block, or one part"}
	}
	sin, cos := math.Sincos(u.Heading)
	out := make([]Unit, 0, along*across)
	for _, p := range gauss[along-1] {
		for _, q := range gauss[across-1] {
			s, share := u, p.share*q.share
			x, y := p.at*length/2, q.at*width/2
			s.At = r3.Add(u.At, r3.Vec{X: float64(x*cos) - float64(y*sin), Y: float64(x*sin) + float64(y*cos)})
			switch b := u.Body.(type) {
			case Cylinder:
				b.Length *= p.share
				s.Body = b
			case Block:
				b.Length *= p.share
				b.Width *= q.share
				s.Body = b
			}
			s.Mass *= share
			s.Leak *= share
			out = append(out, s)
		}
	}
	return out, nil
}
