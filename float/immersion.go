package float

import "math"

// A cut holds the integrals over the wet part of a tilted cylinder and over its
// waterplane. x runs along the axis a from the centre, e points up across it;
// τ runs from the foot of the centre along the axis laid in the waterplane, y
// across.
//
//	v, s, t          ∫dV, ∫x dV, ∫(r·e) dV
//	w0, w1, w2, wb   ∫dA, ∫τ dA, ∫τ² dA, ∫y² dA
type cut struct{ v, s, t, w0, w1, w2, wb float64 }

// cutCylinder cuts a cylinder of radius r and length l whose centre stands h
// above the water; s = n·a is the sine of its axis's slope, m ≥ 0 the cosine.
//
// A slice at x has its centre (h + s x)/m above the water across the axis. With
// u = (h + s x)/(m r) it is dry for u ≥ 1, full for u ≤ -1; between, with
// q = √(1-u²), its area is r²(acos u - u q), its moment along e is -⅔ r³ q³, and
// its chord 2 r q stands on dx/m of the waterplane.
func cutCylinder(h, s, m, r, l float64) cut {
	turned := s < 0
	if turned { // so that x grows toward the dry end
		s = -s
	}
	mr, rise := m*r, s*l/2
	if h >= mr+rise {
		return cut{}
	}
	if h <= -(mr + rise) {
		return cut{v: math.Pi * r * r * l}
	}
	var c cut
	switch near := mr - rise - math.Abs(h); {
	case 2*rise <= near:
		// The surface leaves through neither top nor bottom line, and u varies
		// by no more than its distance to ±1: the integrands are smooth.
		c = cutInside(h, s, m, r, l, near)
	case h >= 0:
		c = cutTail(h, s, m, r, l)
	default: // the dry part, seen upside down, taken from the whole
		c = cutTail(-h, s, m, r, l)
		c.v = math.Pi*r*r*l - c.v
		c.w1 = -c.w1
	}
	if turned {
		c.s, c.w1 = -c.s, -c.w1
	}
	return c
}

// A pair is one abscissa ξ > 0 of Gauss-Legendre quadrature on (-1, 1), its
// weight, and both combined as cutInside needs them.
type pair struct{ at, by float64 }

// Rules of four, six, eight and twelve points (Abramowitz & Stegun, Handbook of
// Mathematical Functions, 1964, Table 25.4; the digits computed anew).
var (
	gauss4 = [...]pair{
		{0.33998104358485626480266575910324469, 0.65214515486254614262693605077800059},
		{0.86113631159405257522394648889280951, 0.34785484513745385737306394922199941},
	}
	gauss6 = [...]pair{
		{0.23861918608319690863050172168071194, 0.46791393457269104738987034398955099},
		{0.66120938646626451366139959501990535, 0.36076157304813860756983351383771611},
		{0.93246951420315202781230155449399461, 0.17132449237917034504029614217273290},
	}
	gauss8 = [...]pair{
		{0.18343464249564980493947614236018398, 0.36268378337836198296515044927719561},
		{0.52553240991632898581773904918924635, 0.31370664587788728733796220198660132},
		{0.79666647741362673959155393647583044, 0.22238103445337447054435599442624088},
		{0.96028985649753623168356086856947300, 0.10122853629037625915253135430996219},
	}
	gauss12 = [...]pair{
		{0.12523340851146891547244136946385313, 0.24914704581340278500056243604295121},
		{0.36783149899818019375269153664371756, 0.23349253653835480876084989892487806},
		{0.58731795428661744729670241894053428, 0.20316742672306592174906445580979838},
		{0.76990267419430468703689383321281808, 0.16007832854334622633465252954335907},
		{0.90411725637047485667846586611909619, 0.10693932599531843096025471819399622},
		{0.98156063424671925069054909014928082, 0.04717533638651182719461596148501706},
	}
)

// cutInside integrates with x = ξ l/2, u = u₀ + δ ξ by Gauss points in pairs ±ξ
// on q alone. The nearest singularity of q, u = ±1, lies at |ξ| = 1 + near/rise;
// the rule is chosen so that the remainder stays below 1e-16. What q's integrals
// leave is exact: by parts, since dA/du = -2q,
//
//	mean A  = A(top) + δ ∫(1 + ξ) q dξ
//	mean ξA = -(δ/2) ∫(1 - ξ²) q dξ
//
// with no difference of nearly equal numbers, down to δ = 0.
func cutInside(h, s, m, r, l, near float64) cut {
	mr, half := m*r, l/2
	inv := 1 / mr
	u0, d := h*inv, s*half*inv
	air, water := (mr-h)*inv, (mr+h)*inv // 1 - u₀ and 1 + u₀, exact where one is small
	rule := gauss12[:]
	switch rise := s * half; {
	case near >= 150*rise:
		rule = gauss4[:]
	case near >= 16*rise:
		rule = gauss6[:]
	case near >= 5*rise:
		rule = gauss8[:]
	}
	var q0, q1, q2, q3 float64 // ∫q, ∫ξq, ∫ξ²q, ∫q³ dξ
	for i := range rule {
		x, w := rule[i].at, rule[i].by
		dx := d * x
		aa, bb := (air-dx)*(water+dx), (air+dx)*(water-dx)
		qa, qb := math.Sqrt(aa), math.Sqrt(bb)
		sum := qa + qb
		ws := w * sum
		q0 += ws
		q1 += w * x * dx / sum // qa - qb = -4 u₀ δ ξ/(qa + qb)
		q2 += ws * x * x
		q3 += w * (qa*aa + qb*bb)
	}
	q1 *= -4 * u0
	im := 1 / m
	rl := r * l
	c := cut{
		v:  r * rl * (segmentArea((mr-h-s*half)*inv) + d*(q0+q1)),
		s:  r * rl * half * -0.5 * d * (q0 - q2),
		t:  -r * r * rl * q3 / 3,
		w0: rl * q0 * im,
		wb: r * r * rl * q3 * im / 3,
	}
	x1, x2 := rl*half*q1*im, rl*half*half*q2*im
	sh := s * h // τ = (x + s h)/m
	c.w1 = (x1 + sh*c.w0) * im
	c.w2 = (x2 + sh*(2*x1+sh*c.w0)) * im * im
	return c
}

// cutTail integrates in closed form over y = 1 - u, from the tip where the
// surface leaves through the top line (y = 0), or from the dry end if it lies
// below the tip, to the deep end or to where the slices are full (y = 2). Along
// the axis y changes by 1 in k = m r/s, in the waterplane in r/s. Moments are
// taken about the deep end where that is near, about the tip on a steep axis.
func cutTail(h, s, m, r, l float64) cut {
	mr, half := m*r, l/2
	rise := s * half
	k, deep := mr/s, mr-h+rise
	reach := deep / s // from the deep end to the tip
	full := 0.0       // length of full slices
	to := 2.0
	if deep > 2*mr {
		full = min((deep-2*mr)/s, l)
	} else {
		to = deep / mr
	}
	q := tailTo(to)
	a0 := 2 * (to*q.q0 - q.q1) // ∫A dy = yA - 2∫yq
	a1 := to*to*q.q0 - q.q2    // ∫yA dy = y²A/2 - ∫y²q
	if top := mr - h - rise; top > 0 {
		from := top / mr
		o := tailTo(from)
		a0 -= 2 * (from*o.q0 - o.q1)
		a1 -= from*from*o.q0 - o.q2
		q = tail{q.q0 - o.q0, q.q1 - o.q1, q.q2 - o.q2}
	}
	q3 := 2*q.q1 - q.q2 // ∫q³ = ∫y(2-y)q
	r2, g := r*r, r/s
	f := 2 * r2 / s
	c := cut{
		v:  r2 * (k*a0 + math.Pi*full),
		t:  -2. / 3 * r * r2 * k * q3,
		w0: f * q.q0,
		wb: 2. / 3 * r * r2 * g * q3,
	}
	c.s = r2*(k*(reach*a0-k*a1)+math.Pi*full*full/2) - half*c.v
	if s < 0.5 {
		end, y := (s*h-half)/m, deep/mr // τ and y of the deep end
		w1 := f * g * (y*q.q0 - q.q1)
		w2 := f * g * g * (y*(y*q.q0-2*q.q1) + q.q2)
		c.w1 = end*c.w0 + w1
		c.w2 = end*(end*c.w0+2*w1) + w2
		return c
	}
	tip := (r - m*h) / s
	c.w1 = f * (tip*q.q0 - g*q.q1)
	c.w2 = f * (tip*(tip*q.q0-2*g*q.q1) + g*g*q.q2)
	return c
}
