package ice

import (
	"math"

	"example.org/floewright/internal/kelvin"
)

// A rectangle is a rectangular patch in its own axes. A load on an area is the
// integral of the point load, w = -q/(2π k) ∬ kei ρ dA in units of l. As
// ∇²ker = -kei but for the point itself, the integral is one along the
// boundary; taking the angle that the boundary subtends out of it leaves
//
//	w    =  q/(2π k) ∮ g(ρ) d ds,  g = (1 + ρ ker'ρ)/ρ²
//	w,xx = -q/(2π k) ∫ h(ρ) d ds over the edges x = const,  h = kei'ρ/ρ
//	w,xy = -q/(2π k) Σ ± kei ρ over the corners
//
// inside, outside and on the edges alike, where d is the distance from the point
// to the line of the edge, positive towards the outside of the patch.
type rectangle struct {
	x, y, cos, sin float64
	a, b           float64 // half sides in units of l
	sag, moment    float64 // q/(2π k) in m, q l²/(2π) in N
}

func (b *Bowl) newRectangle(c Patch) rectangle {
	sin, cos := math.Sincos(c.Turn)
	q := c.Force / (c.A * c.B)
	return rectangle{
		x: c.X, y: c.Y, cos: cos, sin: sin, a: c.A / 2 / b.l, b: c.B / 2 / b.l,
		sag: q / (2 * math.Pi * b.k), moment: q * b.l * b.l / (2 * math.Pi),
	}
}

// add adds the state at x, y to sum.
func (r *rectangle) add(sum *Bend, nu, l, x, y float64) {
	dx, dy := (x-r.x)/l, (y-r.y)/l
	u, v := dx*r.cos+dy*r.sin, dy*r.cos-dx*r.sin
	x1, x2, y1, y2 := -r.a-u, r.a-u, -r.b-v, r.b-v
	// How far the point is outside of the patch: there the plain kernels lose
	// nothing, and the bowl decays as they do.
	far := math.Hypot(math.Max(0, math.Max(x1, -x2)), math.Max(0, math.Max(y1, -y2))) >= plain
	gr, hr := edge(x2, y1, y2, far)
	gl, hl := edge(-x1, y1, y2, far)
	gt, ht := edge(y2, x1, x2, far)
	gb, hb := edge(-y1, x1, x2, far)
	_, k22 := kelvin.Pair(math.Hypot(x2, y2))
	_, k21 := kelvin.Pair(math.Hypot(x2, y1))
	_, k12 := kelvin.Pair(math.Hypot(x1, y2))
	_, k11 := kelvin.Pair(math.Hypot(x1, y1))

	sum.Deflection += r.sag * (gr + gl + gt + gb)
	hx, hy, twist := hr+hl, ht+hb, (1-nu)*(k22-k21-k12+k11)
	mu, mv, muv := r.moment*(hx+nu*hy), r.moment*(hy+nu*hx), r.moment*twist
	// Back to the axes of the plate.
	c, s := r.cos, r.sin
	sum.Mx += mu*c*c + mv*s*s - 2*muv*c*s
	sum.My += mu*s*s + mv*c*c + 2*muv*c*s
	sum.Mxy += (mu-mv)*c*s + muv*(c*c-s*s)
}

// plain is the distance, in units of l, from which the kernels need no
// subtraction.
const plain = 1.5

// longestPanel is the greatest length, in units of l, of a panel of the
// quadrature.
const longestPanel = 2.0

// edge integrates g d and h d along an edge from s1 to s2 at the distance d;
// far leaves the angle in, which sums to zero over the boundary.
func edge(d, s1, s2 float64, far bool) (g, h float64) {
	if math.Abs(d) < 1e-100 { // d ln d has vanished, and d² is about to
		return 0, 0
	}
	near := math.Hypot(d, math.Max(0, math.Max(s1, -s2))) < plain
	if near {
		g, h = logarithms(d, s1, s2)
	}
	n := math.Ceil((s2 - s1) / longestPanel)
	half := (s2 - s1) / 2 / n
	rule := &gauss[0]
	switch {
	case half > 0.5:
		rule = &gauss[2]
	case half > 0.15:
		rule = &gauss[1]
	}
	for k := 0.0; k < n; k++ {
		middle := s1 + (2*k+1)*half
		for i := range rule.x {
			a, b := kernels(d, middle+half*rule.x[i], near, far)
			w := rule.w[i] * half * d
			g += w * a
			h += w * b
		}
	}
	return g, h
}

// kernels returns g and h at a point of an edge, less their logarithms where
// the edge is near.
func kernels(d, s float64, near, far bool) (g, h float64) {
	square := d*d + s*s
	rho := math.Sqrt(square)
	if far {
		dker, dkei := kelvin.Slopes(rho)
		return dker / rho, dkei / rho
	}
	g, h = kelvin.Edge(rho)
	if near {
		l := math.Log(square) / 2
		g -= square / 16 * l
		h += (0.5 - square*square/384) * l
	}
	return g, h
}

// logarithms integrates the parts that vary fast near the point, with
// ρ² = d² + s², each times d:
//
//	g ~ (ρ²/16) ln ρ
//	h ~ (-½ + ρ⁴/384) ln ρ
//
//	∫ ln ρ ds    = s ln ρ - s + d a,                                              a = atan(s/d)
//	∫ ρ² ln ρ ds = (d² s + s³/3) ln ρ - s³/9 - ⅔ d² s + ⅔ d³ a
//	∫ ρ⁴ ln ρ ds = (d⁴ s + ⅔ d² s³ + s⁵/5) ln ρ - s⁵/25 - 7/45 d² s³ - 8/15 d⁴ s + 8/15 d⁵ a
//
// What is left is smooth: its logarithms begin with ρ⁶ and ρ⁸.
func logarithms(d, s1, s2 float64) (g, h float64) {
	at := func(s float64) (g, h float64) {
		d2, s2, l, a := d*d, s*s, 0.0, math.Atan(s/d)
		if d2+s2 > 0 {
			l = math.Log(d2+s2) / 2
		}
		log0 := s*l - s + d*a
		log2 := s*((d2+s2/3)*l-s2/9-2*d2/3) + 2*d*d2*a/3
		log4 := s*((d2*d2+2*d2*s2/3+s2*s2/5)*l-s2*s2/25-7*d2*s2/45-8*d2*d2/15) + 8*d2*d2*d*a/15
		return log2 / 16, -log0/2 + log4/384
	}
	gb, hb := at(s2)
	ga, ha := at(s1)
	return d * (gb - ga), d * (hb - ha)
}

// gauss holds the Gauss-Legendre rules of three orders, on -1 to 1.
var gauss = [3]struct{ x, w []float64 }{legendre(6), legendre(10), legendre(16)}

// legendre finds the nodes as zeros of the Legendre polynomial by Newton's
// method.
func legendre(n int) (r struct{ x, w []float64 }) {
	for i := range n {
		x := math.Cos(math.Pi * (float64(i) + 0.75) / (float64(n) + 0.5))
		var slope float64
		for range 8 {
			p, q := 1.0, 0.0
			for k := 1; k <= n; k++ {
				p, q = (float64(2*k-1)*x*p-float64(k-1)*q)/float64(k), p
			}
			slope = float64(n) * (x*p - q) / (x*x - 1)
			x -= p / slope
		}
		r.x = append(r.x, x)
		r.w = append(r.w, 2/((1-x*x)*slope*slope))
	}
	return r
}
