package moor

import "math"

// A span is where a line pulled with given forces at its dock end puts that
// end, and how that changes with the forces: the symmetric positive matrix
//
//	| xx xv |
//	| xv vv |  =  ∂(reach, rise)/∂(pull, down)
//
// with its determinant summed without cancellation.
type span struct {
	reach, rise     float64
	xx, xv, vv, det float64
	lift, lying     float64
}

// eval hangs the line from its dock end with the level pull h > 0 and the
// downward pull v.
//
// Over a lifted piece the upward pull falls from a to b = a - wL. With
// S = √(h²+a²) + √(h²+b²) and u = wL/S,
//
//	rise = L(a+b)/S,  reach = (2h/w) atanh u
//
// are the catenary's closed forms, without cancellation from slack to
// bar-tight and with the straight line as w → 0. Their changes are
//
//	(2/w)(atanh u - u) x xᵀ + (2L/(S P)) n nᵀ,  n = (c(a+b)/2, -h/c)
//
// with x the level direction, P the product of the two tensions and c² = 1-u².
// A piece with b < 0 over a bottom lies on it from where the pull is 0.
func (l *Line) eval(h, v float64, f *span) {
	var n [maxPieces]struct{ b, x, y float64 }
	k := 0
	var reach, rise, alpha, giveX, giveV, lying float64
	down := false // the rest lies on the bottom
	for i := len(l.Pieces) - 1; i >= 0; i-- {
		p := &l.Pieces[i]
		v -= p.Clump
		if down || !l.Shore && v <= 0 {
			down = true
			lying += p.Length
			reach += p.Length
			if p.Stretch > 0 {
				give := p.Length / p.Stretch
				reach += h * give
				giveX += give
			}
			continue
		}
		w := p.load()
		a, b := v, v-w*p.Length
		if !l.Shore && b < 0 {
			down = true
			t := math.Sqrt(h*h + a*a)
			s := t + h
			u := a / s
			d := 2 / w * atanhLess(u, 2*h/s)
			lifted := a / w
			alpha += d
			reach += 2*lifted*h/s + h*d + (p.Length - lifted)
			rise += a * u / w
			n[k].b, n[k].x, n[k].y = a/(w*t), u, -1
			k++
			lying += p.Length - lifted
			if p.Stretch > 0 {
				give := p.Length / p.Stretch
				reach += h * give
				giveX += give
				rise += a * a / (2 * p.Stretch * w)
				giveV += a / (p.Stretch * w)
			}
			v = 0
			continue
		}
		ta, tb := math.Sqrt(h*h+a*a), math.Sqrt(h*h+b*b)
		s, prod := ta+tb, ta*tb
		q := a * b // P + ab, without cancellation where ab < 0
		if q >= 0 {
			q += prod
		} else {
			q = h * h * (h*h + a*a + b*b) / (prod - q)
		}
		c2 := 2 * (h*h + q) / (s * s)
		c := math.Sqrt(c2)
		reach += 2 * p.Length * h / s
		d := 2 / w * atanhLess(w*p.Length/s, c2)
		alpha += d
		reach += h * d
		rise += p.Length * (a + b) / s
		n[k].b, n[k].x, n[k].y = 2*p.Length/(s*prod), c*(a+b)/2, -h/c
		k++
		if p.Stretch > 0 {
			give := p.Length / p.Stretch
			reach += h * give
			giveX += give
			rise += (a + b) / 2 * give
			giveV += give
		}
		v = b
	}
	var xx, xv, vv, det float64
	for i := range k {
		m := &n[i]
		xx += m.b * m.x * m.x
		xv += m.b * m.x * m.y
		vv += m.b * m.y * m.y
		for j := range i {
			// Cauchy and Binet: minors of a sum of n nᵀ are squares.
			cross := m.x*n[j].y - m.y*n[j].x
			det += m.b * n[j].b * cross * cross
		}
	}
	e := alpha + giveX
	f.det = det + xx*giveV + e*(vv+giveV)
	f.xx, f.xv, f.vv = xx+e, xv, vv+giveV
	f.reach, f.rise = reach, rise
	f.lift, f.lying = v, lying
	if down {
		f.lift = 0
	}
}

// atanhLess returns atanh u - u, given 1-u² too, which would be lost as u nears
// 1.
func atanhLess(u, c2 float64) float64 {
	if u < 0.15 {
		z := u * u
		return u * z * (1./3 + z*(1./5+z*(1./7+z*(1./9+z*(1./11+z*(1./13+z*(1./15+z*(1./17+z/19))))))))
	}
	return math.Log((1+u)/math.Sqrt(c2)) - u
}
