package season

import (
	"math"
	"time"
)

// Usual is the thickness that holes of past winters showed by half-month, less
// one standard error so that a short record errs thin, and how much the
// model's own winter counts beside it.
type Usual struct {
	Thickness [24]float64 // m, from the first half of January
	N         [24]int     // holes behind it; without any, the model stands alone
	Weight    float64     // share of the model, 0 to 1; 1 leaves the model as it is
}

// unseen is what a winter's thickness differs from the usual by, in m: our
// choice, of the order that lakes with long records show.
const unseen = 0.08

// half returns the half-month of a date.
func half(t time.Time) int {
	i := 2 * (int(t.Month()) - 1)
	if t.Day() > 15 {
		i++
	}
	return i
}

// usual gathers the holes and finds the weight with the least squares over
// them. Ice that snow makes and frost makes trade places from winter to winter,
// so a lake's thickness varies less than its weather; the weight says how much.
func (f *fitting) usual(p Params) Usual {
	u := Usual{Weight: 1}
	if len(f.inYear) < fewestWinters {
		return u
	}
	var sum, weight, square [24]float64
	for n, hs := range f.holes {
		i := half(dateOf(n))
		g := f.weight(f.m.lake.year(n))
		for _, h := range hs {
			sum[i] += g * h.total()
			square[i] += g * h.total() * h.total()
			weight[i] += g
			u.N[i]++
		}
	}
	for i := range sum {
		if weight[i] > 0 {
			mean := sum[i] / weight[i]
			scatter := math.Max(0, square[i]/weight[i]-mean*mean)
			n := float64(u.N[i])
			// One more winter, off by what winters differ by, stands for those not seen.
			error2 := (n*scatter + unseen*unseen) / (n + 1) / n
			u.Thickness[i] = math.Max(0, mean-math.Sqrt(error2))
		}
	}
	m := f.m.with(p)
	var top, bottom float64
	for k, part := range f.parts {
		s := begin(part)
		for i := range part {
			m.c.step(&s, &part[i], m.sun[f.doy[k][i]])
			n := f.first[k] + i
			for _, h := range f.holes[n] {
				if s.rot > 0 {
					continue
				}
				t := u.Thickness[half(dateOf(n))]
				d := s.clear + s.white - t
				g := f.weight(f.m.lake.year(n))
				top += g * d * (h.total() - t)
				bottom += g * d * d
			}
		}
	}
	if bottom > 0 {
		u.Weight = math.Max(0, math.Min(1, top/bottom))
	}
	return u
}

// Of returns the thickness in m of clear and white ice that the fit expects:
// the model's, drawn towards the usual (our choice). Where the model has no ice there
// is none.
func (u Usual) Of(s State) float64 {
	t := s.Total()
	i := half(s.Date)
	if !s.Ice || s.Rot > 0 || u.N[i] == 0 || !(u.Weight >= 0 && u.Weight < 1) {
		return t
	}
	return math.Max(0, u.Weight*t+(1-u.Weight)*u.Thickness[i])
}
