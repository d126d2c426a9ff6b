package float

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// A hypothesis is one guess at what leaks, fitted.
type hypothesis struct {
	units    []int
	volume   []float64
	sd       []float64
	chi2     float64
	evidence float64 // logarithm of how likely the measurement is under it
}

// A leakFit compares plans with water in drums to a measured attitude.
type leakFit struct {
	plan    *Platform // with what is aboard
	target  [3]float64
	inverse matrix3 // of the covariance
}

// off returns how far the plan with these amounts of water is from the target.
func (f *leakFit) off(units []int, volume []float64) ([3]float64, bool) {
	q := *f.plan
	if len(units) > 0 {
		q.Units = append([]Unit(nil), f.plan.Units...)
	}
	for k, i := range units {
		q.Units[i].Leak += volume[k]
	}
	s, err := q.Settle()
	if err != nil {
		return [3]float64{}, false
	}
	return [3]float64{f.target[0] - s.Level, f.target[1] - s.Up.X, f.target[2] - s.Up.Y}, true
}

// most returns the greatest amount of water that a unit can take in.
func (f *leakFit) most(i int) float64 {
	u := &f.plan.Units[i]
	return 0.999 * (u.Body.Volume() - u.Leak)
}

// try fits the amounts of water in the units, at least 0, by Gauss's method with
// halved steps.
func (f *leakFit) try(units []int) (hypothesis, bool) {
	n := len(units)
	h := hypothesis{units: units, volume: make([]float64, n), sd: make([]float64, n)}
	e, ok := f.off(units, h.volume)
	if !ok {
		return h, false
	}
	h.chi2 = f.inverse.quadratic(e)
	if n == 0 {
		h.evidence = -h.chi2 / 2
		return h, true
	}
	var normal [2][2]float64
	for range 40 {
		slope := make([][3]float64, n)
		for k, i := range units {
			step := 1e-3 * f.most(i)
			if h.volume[k]+step > f.most(i) {
				step = -step
			}
			moved := append([]float64(nil), h.volume...)
			moved[k] += step
			d, ok := f.off(units, moved)
			if !ok {
				return h, false
			}
			for c := range d {
				slope[k][c] = (e[c] - d[c]) / step // of the prediction
			}
		}
		var right [2]float64
		normal = [2][2]float64{{1, 0}, {0, 1}}
		for k := range n {
			w := f.inverse.times(slope[k])
			right[k] = w[0]*e[0] + w[1]*e[1] + w[2]*e[2]
			for l := range n {
				normal[k][l] = w[0]*slope[l][0] + w[1]*slope[l][1] + w[2]*slope[l][2]
			}
			if !(normal[k][k] > 0) { // water in a captive unit that hangs free of the water moves nothing
				return h, false
			}
		}
		step := f.step(units, h.volume, normal, right)
		better := false
		for cut := 1.0; cut > 1e-3; cut /= 2 {
			moved := append([]float64(nil), h.volume...)
			for k, i := range units {
				moved[k] = min(max(h.volume[k]+cut*step[k], 0), f.most(i))
			}
			d, ok := f.off(units, moved)
			if !ok {
				continue
			}
			if chi2 := f.inverse.quadratic(d); chi2 < h.chi2 {
				better = h.chi2-chi2 > 1e-10*(1+h.chi2)
				e, h.chi2, h.volume = d, chi2, moved
				break
			}
		}
		if !better {
			break
		}
	}
	h.measureOf(f, normal)
	return h, true
}

// step solves the normal equations, holding amounts that would go out of bounds.
func (f *leakFit) step(units []int, volume []float64, normal [2][2]float64, right [2]float64) [2]float64 {
	single := func(k int) [2]float64 {
		var s [2]float64
		s[k] = right[k] / normal[k][k]
		return s
	}
	if len(units) == 1 {
		return single(0)
	}
	det := normal[0][0]*normal[1][1] - normal[0][1]*normal[1][0]
	if !(det > 1e-12*normal[0][0]*normal[1][1]) {
		return single(0)
	}
	s := [2]float64{
		(right[0]*normal[1][1] - right[1]*normal[0][1]) / det,
		(right[1]*normal[0][0] - right[0]*normal[1][0]) / det,
	}
	for k, i := range units {
		if volume[k] <= 0 && s[k] < 0 || volume[k] >= f.most(i) && s[k] > 0 {
			return single(1 - k)
		}
	}
	return s
}

// measureOf fills in accuracies and evidence: the likelihood, averaged over all
// amounts that the drums can hold, by the normal law about the best fit.
func (h *hypothesis) measureOf(f *leakFit, normal [2][2]float64) {
	h.evidence = -h.chi2 / 2
	det := normal[0][0]*normal[1][1] - normal[0][1]*normal[1][0]
	for k, i := range h.units {
		variance := 1 / normal[k][k]
		if len(h.units) == 2 && det > 1e-12*normal[0][0]*normal[1][1] {
			variance = normal[1-k][1-k] / det
		}
		h.sd[k] = math.Sqrt(variance)
		most := f.most(i)
		law := distuv.Normal{Mu: h.volume[k], Sigma: 1 / math.Sqrt(normal[k][k])}
		h.evidence += math.Log(min(1, (law.CDF(most)-law.CDF(0))*law.Sigma*math.Sqrt(2*math.Pi)/most))
	}
}
