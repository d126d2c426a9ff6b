package frame

// A poly is a polynomial by rising powers.
type poly []float64

func (p poly) at(t float64) float64 {
	var s float64
	for i := len(p) - 1; i >= 0; i-- {
		s = float64(s*t) + p[i]
	}
	return s
}

func (p poly) derivative() poly {
	if len(p) < 2 {
		return nil
	}
	d := make(poly, len(p)-1)
	for i := range d {
		d[i] = float64(i+1) * p[i+1]
	}
	return d
}

// crossings returns where p changes sign within lo..hi, rising. Between two
// neighbouring turning points a polynomial is monotone, so each crossing is
// bracketed and none is missed.
func (p poly) crossings(lo, hi float64) []float64 {
	if len(p) < 2 || !(lo < hi) {
		return nil
	}
	var out []float64
	a := lo
	fa := p.at(a)
	for _, b := range append(p.derivative().crossings(lo, hi), hi) {
		fb := p.at(b)
		if fa == 0 && a > lo {
			out = append(out, a)
		} else if fa < 0 && fb > 0 || fa > 0 && fb < 0 {
			out = append(out, p.root(a, b, fa))
		}
		a, fa = b, fb
	}
	return out
}

// root narrows a sign change down to neighbouring numbers, by Newton's steps and,
// where these leave the bracket, by halves.
func (p poly) root(a, b, fa float64) float64 {
	t := a + (b-a)/2
	for range 200 {
		var f, slope float64
		for i := len(p) - 1; i >= 0; i-- {
			slope = float64(slope*t) + f
			f = float64(f*t) + p[i]
		}
		if f == 0 {
			return t
		}
		if f < 0 == (fa < 0) {
			a = t
		} else {
			b = t
		}
		next := t - f/slope
		if !(next > a && next < b) {
			next = a + (b-a)/2
		}
		if next <= a || next >= b {
			break
		}
		t = next
	}
	return a + (b-a)/2
}
