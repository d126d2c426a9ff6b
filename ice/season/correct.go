package season

import (
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/mat"
)

// An Estimate is the lake at the end of a day as model and holes together see
// it.
type Estimate struct {
	State
	SD float64 // m, of the total thickness; 0 on open water
}

// A Correction is a winter that drilled holes have corrected.
type Correction struct {
	Days   []Estimate
	Params Params // with the season's own catch of snow and conductivity

	// CatchSD and SnowSD are what is left of the uncertainty of the catch of
	// snow and of its conductivity, each a share; they begin at 0.35 and 0.3.
	CatchSD, SnowSD float64
}

// The filter's state: what a hole can tell, and what explains it.
const (
	ofClear = iota // m
	ofWhite        // m
	ofSnow         // kg/m² on the ice
	ofCatch        // natural logarithm of the factor on the catch of snow
	ofSnowK        // the same on the conductivity of snow
	ofSize
)

// The filter's own numbers, our choice: the start from the spread of the model
// between winters, the noise from the growth of its error through a winter.
var (
	firstSD = [ofSize]float64{0.02, 0.005, 3, 0.35, 0.3} // at ice-on
	daySD   = [ofSize]float64{0.0035, 0.002, 0.8, 0.01, 0.01}
)

const holeSD = 0.04 // m: how well a hole is read, and how well it stands for the lake

// Correct runs the model through the days and lets each drilled hole correct the
// ice, the snow on it, and the season's catch and conductivity of snow: an
// extended Kalman filter whose derivatives are taken through each day's step.
// Days after the last hole, forecast or taken from another winter, are the
// forecast. Holes before ice-on in the model start the ice; a hole on a day
// that is not in the record is an error.
func (m *Model) Correct(days []Day, holes []Hole) (Correction, error) {
	if _, err := m.Run(days); err != nil {
		return Correction{}, err
	}
	holes = slices.Clone(holes)
	slices.SortStableFunc(holes, func(a, b Hole) int { return a.Date.Compare(b.Date) })
	for _, h := range holes {
		if err := h.check(); err != nil {
			return Correction{}, err
		}
		if len(days) == 0 || number(h.Date) < number(days[0].Date) || number(h.Date) > number(days[len(days)-1].Date) {
			return Correction{}, order(h.Date, "a hole was drilled on it, but the record of the air does not hold it")
		}
	}
	f := filter{m: m, s: begin(days)}
	out := Correction{Days: make([]Estimate, len(days))}
	for i := range days {
		d := &days[i]
		f.day(d)
		n := number(d.Date)
		for len(holes) > 0 && number(holes[0].Date) == n {
			f.hole(holes[0])
			holes = holes[1:]
		}
		e := &out.Days[i]
		f.m.state(&e.State, &f.s, d)
		if f.s.ice {
			e.SD = math.Sqrt(math.Max(0, f.p.At(ofClear, ofClear)+2*f.p.At(ofClear, ofWhite)+f.p.At(ofWhite, ofWhite)))
		}
	}
	out.Params = f.params(0, 0)
	out.CatchSD, out.SnowSD = firstSD[ofCatch], firstSD[ofSnowK]
	if f.p != nil {
		out.CatchSD, out.SnowSD = math.Sqrt(f.p.At(ofCatch, ofCatch)), math.Sqrt(f.p.At(ofSnowK, ofSnowK))
	}
	return out, nil
}

// filter is the Kalman filter of one season.
type filter struct {
	m           *Model
	s           sheet
	catch, snow float64    // logarithms of the season's factors
	p           *mat.Dense // covariance; nil before the first ice
}

// params returns the season's params with the factors moved by so much.
func (f *filter) params(catch, snow float64) Params {
	p := f.m.c.p
	p.Catch *= math.Exp(f.catch + catch)
	k := math.Exp(f.snow + snow)
	p.OldConductivity *= k
	p.NewConductivity *= k
	return p
}

// day takes state and covariance through one day: P = F P Fᵀ + Q.
func (f *filter) day(d *Day) {
	sun := f.m.sun[d.Date.YearDay()]
	was := f.s
	c := coefficientsOf(f.m.lake, f.params(0, 0))
	c.step(&f.s, d, sun)
	switch {
	case !f.s.ice:
		f.p = nil
		return
	case !was.ice || f.p == nil:
		f.start()
		return
	}
	jacobian := mat.NewDense(ofSize, ofSize, nil)
	for j := range ofSize {
		s, δ := was, 1e-4
		k := &c
		switch j {
		case ofClear:
			s.clear += δ
		case ofWhite:
			s.white += δ
		case ofSnow:
			δ = 0.01
			if s.mass > 0 {
				r := 1 + δ/s.mass
				s.depth, s.resist = s.depth*r, s.resist*r
			} else {
				s.depth, s.resist = δ/c.p.OldDensity, δ*c.oldR
			}
			s.mass += δ
		case ofCatch:
			q := coefficientsOf(f.m.lake, f.params(δ, 0))
			k = &q
		case ofSnowK:
			// Snow that lies there conducts better, too.
			q := coefficientsOf(f.m.lake, f.params(0, δ))
			k = &q
			s.resist *= math.Exp(-δ)
		}
		k.step(&s, d, sun)
		jacobian.Set(ofClear, j, (s.clear-f.s.clear)/δ)
		jacobian.Set(ofWhite, j, (s.white-f.s.white)/δ)
		jacobian.Set(ofSnow, j, (s.mass-f.s.mass)/δ)
	}
	jacobian.Set(ofCatch, ofCatch, 1)
	jacobian.Set(ofSnowK, ofSnowK, 1)
	var fp, next mat.Dense
	fp.Mul(jacobian, f.p)
	next.Mul(&fp, jacobian.T())
	for i, sd := range daySD {
		next.Set(i, i, next.At(i, i)+sd*sd)
	}
	f.p = &next
}

// start sets the covariance of new ice. What was learned of snow stays.
func (f *filter) start() {
	f.p = mat.NewDense(ofSize, ofSize, nil)
	for i, sd := range firstSD {
		f.p.Set(i, i, sd*sd)
	}
}

// hole lets one hole correct the state.
func (f *filter) hole(h Hole) {
	if !f.s.ice {
		if h.total() == 0 {
			return
		}
		f.s = sheet{ice: true, skin: f.s.skin}
		f.start()
		f.p.Set(ofClear, ofClear, 1) // the model knew nothing of this ice
	}
	if h.Whole {
		row := mat.NewDense(1, ofSize, nil)
		row.Set(0, ofClear, 1)
		row.Set(0, ofWhite, 1)
		f.update(row, []float64{h.Clear - f.s.clear - f.s.white}, h.SD)
		return
	}
	rows := mat.NewDense(2, ofSize, nil)
	rows.Set(0, ofClear, 1)
	rows.Set(1, ofWhite, 1)
	f.update(rows, []float64{h.Clear - f.s.clear, h.White - f.s.white}, h.SD)
}

// update is the measurement's half of the filter, in Joseph's form, which keeps
// the covariance positive.
func (f *filter) update(h *mat.Dense, miss []float64, sd float64) {
	if sd == 0 {
		sd = holeSD
	}
	n, _ := h.Dims()
	var hp, s mat.Dense
	hp.Mul(h, f.p)
	s.Mul(&hp, h.T())
	for i := range n {
		s.Set(i, i, s.At(i, i)+sd*sd)
	}
	var inverse mat.Dense
	if inverse.Inverse(&s) != nil {
		return // the hole's scatter keeps s from being singular
	}
	var gain mat.Dense
	gain.Product(f.p, h.T(), &inverse)
	var step mat.VecDense
	step.MulVec(&gain, mat.NewVecDense(n, miss))
	f.s.clear = math.Max(0, f.s.clear+step.AtVec(ofClear))
	f.s.white = math.Max(0, f.s.white+step.AtVec(ofWhite))
	mass := math.Max(0, f.s.mass+step.AtVec(ofSnow))
	k := math.Max(-1, math.Min(1, step.AtVec(ofSnowK)))
	if f.s.mass > 0 {
		r := mass / f.s.mass
		f.s.depth *= r
		f.s.resist *= r * math.Exp(-k)
		f.s.fell += mass - f.s.mass
		f.s.mass = mass
	}
	f.catch = math.Max(-1.5, math.Min(1.5, f.catch+step.AtVec(ofCatch)))
	f.snow = math.Max(-1.5, math.Min(1.5, f.snow+k))

	keep := mat.NewDense(ofSize, ofSize, nil)
	keep.Mul(&gain, h)
	keep.Scale(-1, keep)
	for i := range ofSize {
		keep.Set(i, i, keep.At(i, i)+1)
	}
	var a, b, next mat.Dense
	a.Product(keep, f.p, keep.T())
	b.Mul(&gain, gain.T())
	b.Scale(sd*sd, &b)
	next.Add(&a, &b)
	f.p = &next
}

// Between returns the thickness in m that holes show on a date by straight lines
// between them (our choice): last year's habit. It is false outside them.
func Between(holes []Hole, date time.Time) (float64, bool) {
	n := number(date)
	for i := range holes {
		a := number(holes[i].Date)
		if a == n {
			return holes[i].total(), true
		}
		if i+1 < len(holes) {
			if b := number(holes[i+1].Date); a < n && n < b {
				x := float64(n-a) / float64(b-a)
				return holes[i].total()*(1-x) + holes[i+1].total()*x, true
			}
		}
	}
	return math.NaN(), false
}
