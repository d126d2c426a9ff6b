package layout

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Support is a place that the frame stands on, with the height of its top as read
// from a string or a water hose, m, upwards. What is measured down from the string
// has a minus.
type Support struct {
	Name   string
	At     Point
	Height float64
}

// A Levelling is what the heights of supports say.
type Levelling struct {
	// Level are the shims that make all tops as high as the highest: the least that
	// are level. Flat are the least that only take the twist out and let the frame
	// lean as it likes. Both are in m, in the supports' order, none below 0.
	Level, Flat []float64
	// Gap is what stays open over each support without shims, m, under a stiff frame
	// whose weight has its centre where it was said to be.
	Gap []float64
	// Idle are the supports that a gap leaves without load, by index.
	Idle []int
	// Rocks says that no three supports off one line touch the stiff frame.
	Rocks bool
	// Plane is the best plane through the tops by least squares: height at X 0 and
	// Y 0, and slopes along x and y. Off are the tops above it, m.
	Plane [3]float64
	Off   []float64
	// Twist is how far one corner of the supports' outline lies out of the plane of
	// the other three, m: positive where that of least and that of greatest
	// coordinates are high. 0 for three supports.
	Twist float64
}

// mostSupports bounds the search over triples of supports.
const mostSupports = 60

// Level reads the heights of three supports or more, not all on one line, under a
// frame whose weight has its centre at a place in plan. A centre outside the
// supports tips the frame, an error.
//
// The stiff frame rests in the plane that lies on or above all tops and is lowest
// under its centre; the flat shims make the same plane lowest under the supports'
// middle. Both touch three tops, found among all triples; where several planes are
// as low, between which the frame rocks, their mean is taken. It is geometry and
// the statics of a weight on three points.
func Level(supports []Support, centre Point) (*Levelling, error) {
	n := len(supports)
	if err := (measure.Range{Lo: 3, Hi: mostSupports, Source: srcFrame}).Check("number of supports", float64(n)); err != nil {
		return nil, err
	}
	if err := places.Check("centre, X", centre.X); err != nil {
		return nil, err
	}
	if err := places.Check("centre, Y", centre.Y); err != nil {
		return nil, err
	}
	var middle Point
	top := math.Inf(-1)
	for i, s := range supports {
		field := fmt.Sprintf("support %d %s", i+1, s.Name)
		for _, c := range []struct {
			what string
			r    measure.Range
			x    float64
		}{{", X", places, s.At.X}, {", Y", places, s.At.Y}, {", height", heights, s.Height}} {
			if err := c.r.Check(field+c.what, c.x); err != nil {
				return nil, err
			}
		}
		middle.X, middle.Y = middle.X+s.At.X/float64(n), middle.Y+s.At.Y/float64(n)
		top = math.Max(top, s.Height)
	}
	l := &Levelling{Level: make([]float64, n), Flat: make([]float64, n), Gap: make([]float64, n), Off: make([]float64, n)}
	if err := l.fit(supports, middle); err != nil {
		return nil, err
	}
	stand, ok := lowest(supports, centre)
	if !ok {
		return nil, &measure.Error{Field: "centre of the weight", Text: "outside the supports", Class: measure.ErrRange, Want: "a centre that the supports go round"}
	}
	flat, _ := lowest(supports, middle)
	for i, s := range supports {
		l.Level[i] = top - s.Height
		l.Flat[i] = above(flat, s)
		l.Gap[i] = above(stand, s)
		if l.Gap[i] > 0 {
			l.Idle = append(l.Idle, i)
		}
	}
	l.Rocks = true
	for i := range n {
		for j := range i {
			for k := range j {
				a, b, c := supports[i].At, supports[j].At, supports[k].At
				size := span3(a, b, c)
				if l.Gap[i]+l.Gap[j]+l.Gap[k] == 0 && math.Abs(cross(a, b, c)) > 1e-9*size*size {
					l.Rocks = false
				}
			}
		}
	}
	return l, nil
}

// plane is height = p[0] + p[1] x + p[2] y.
type plane [3]float64

// above returns how far a plane lies over a top; what is only rounding is none.
func above(p plane, s Support) float64 {
	if g := p[0] + p[1]*s.At.X + p[2]*s.At.Y - s.Height; g > 1e-9 {
		return g
	}
	return 0
}

// lowest returns the plane on or above all tops that is lowest at a place, and false
// where there is none.
func lowest(supports []Support, at Point) (plane, bool) {
	var best, sum plane
	least, found := math.Inf(1), 0.0
	n := len(supports)
	for i := range n {
		for j := range i {
			for k := range j {
				a, b, c := supports[i], supports[j], supports[k]
				// Shares of the three by areas.
				det := cross(a.At, b.At, c.At)
				scale := span3(a.At, b.At, c.At)
				if math.Abs(det) <= 1e-9*scale*scale {
					continue
				}
				w := [3]float64{cross(at, b.At, c.At) / det, cross(a.At, at, c.At) / det, cross(a.At, b.At, at) / det}
				if w[0] < -1e-9 || w[1] < -1e-9 || w[2] < -1e-9 {
					continue
				}
				p := through(a, b, c, det)
				h := p[0] + p[1]*at.X + p[2]*at.Y
				if h > least+1e-9 || below(p, supports) {
					continue
				}
				if h < least-1e-9 {
					least, found, sum = h, 0, plane{}
				}
				found++
				for m := range sum {
					sum[m] += p[m]
				}
			}
		}
	}
	for m := range best {
		best[m] = sum[m] / found
	}
	return best, found > 0
}

// below reports whether a plane lies below some top.
func below(p plane, supports []Support) bool {
	for _, s := range supports {
		if p[0]+p[1]*s.At.X+p[2]*s.At.Y < s.Height-1e-9 {
			return true
		}
	}
	return false
}

// cross returns twice the area of a triangle, signed.
func cross(a, b, c Point) float64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}

func span3(a, b, c Point) float64 {
	return math.Max(math.Hypot(a.X-b.X, a.Y-b.Y), math.Max(math.Hypot(b.X-c.X, b.Y-c.Y), math.Hypot(c.X-a.X, c.Y-a.Y)))
}

// through returns the plane through three tops; det is their cross.
func through(a, b, c Support, det float64) plane {
	u, v := b.Height-a.Height, c.Height-a.Height
	px := (u*(c.At.Y-a.At.Y) - v*(b.At.Y-a.At.Y)) / det
	py := (v*(b.At.X-a.At.X) - u*(c.At.X-a.At.X)) / det
	return plane{a.Height - px*a.At.X - py*a.At.Y, px, py}
}

// fit finds the best plane and the twist: least squares of height over 1, x, y and
// then of what is left over the part of xy that is square to those.
func (l *Levelling) fit(supports []Support, middle Point) error {
	n := float64(len(supports))
	lo, hi := supports[0].At, supports[0].At
	var xx, xy, yy, xh, yh, mean float64
	for _, s := range supports {
		x, y := s.At.X-middle.X, s.At.Y-middle.Y
		xx, xy, yy = xx+x*x, xy+x*y, yy+y*y
		xh, yh, mean = xh+x*s.Height, yh+y*s.Height, mean+s.Height/n
		lo = Point{math.Min(lo.X, s.At.X), math.Min(lo.Y, s.At.Y)}
		hi = Point{math.Max(hi.X, s.At.X), math.Max(hi.Y, s.At.Y)}
	}
	det := xx*yy - xy*xy
	if !(det > 1e-9*(xx+yy)*(xx+yy)) {
		return &measure.Error{Field: "supports", Text: "all on one line", Class: measure.ErrRange, Want: "supports that a frame cannot tip over"}
	}
	solve := func(xh, yh float64) (px, py float64) { return (xh*yy - yh*xy) / det, (yh*xx - xh*xy) / det }
	px, py := solve(xh, yh)
	l.Plane = [3]float64{mean - px*middle.X - py*middle.Y, px, py}
	var mx, my, m1 float64 // of xy
	for i, s := range supports {
		x, y := s.At.X-middle.X, s.At.Y-middle.Y
		l.Off[i] = s.Height - mean - px*x - py*y
		mx, my, m1 = mx+x*x*y, my+x*y*y, m1+x*y/n
	}
	qx, qy := solve(mx, my)
	var num, den float64
	for i, s := range supports {
		x, y := s.At.X-middle.X, s.At.Y-middle.Y
		z := x*y - m1 - qx*x - qy*y
		num, den = num+z*l.Off[i], den+z*z
	}
	if area := (hi.X - lo.X) * (hi.Y - lo.Y); den > 1e-9*area*area {
		l.Twist = num / den * area
	}
	return nil
}
