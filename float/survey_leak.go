package float

import (
	"errors"
	"math"
	"sort"

	"gonum.org/v1/gonum/stat/distuv"
)

// A Leak is one explanation of a survey: water in these drums.
type Leak struct {
	Units  []int    // in Plan.Units; one, or two where no single drum explains it
	Volume []Figure // of water in each of them, m³

	// Fits is the chance that the true amounts, under this explanation, give a
	// measurement as far off as this one; below 0.05 it is no explanation and is left
	// out. Sure is the chance that this is what happened, among all that were tried.
	Fits, Sure float64
}

// explains is the least Fits of an explanation: the usual one in twenty.
const explains = 0.05

// mostPairs bounds the work of looking at pairs of drums.
const mostPairs = 300

var errCovariance = errors.New("float: the accuracies leave no measure of the attitude")

// leaks fills in which drums' leaking would explain the attitude.
func (s Survey) leaks(out *Finding, plan *Platform, fit deckFit) error {
	see := func(st State) []float64 { return []float64{st.Level, st.Up.X, st.Up.Y} }
	columns, err := s.Doubt.columns(plan, s.Aboard, see)
	if err != nil {
		return err
	}
	covariance := fit.covariance
	for _, c := range columns {
		covariance.add(0.25, [3]float64(c)) // a doubt is two standard deviations
	}
	inverse, ok := covariance.inverse()
	if !ok {
		return errCovariance
	}
	f := leakFit{plan: plan.With(s.Aboard...), target: [3]float64{fit.level, fit.up.X, fit.up.Y}, inverse: inverse}

	none, ok := f.try(nil)
	if !ok {
		_, err := f.plan.Settle()
		return err
	}
	var drums []int
	for i := range plan.Units {
		if !plan.Units[i].Flooded {
			drums = append(drums, i)
		}
	}
	singles := f.all(drums, 1)
	out.AsPlanned = none.fits()
	fitting := out.AsPlanned >= explains
	for _, h := range singles {
		fitting = fitting || h.fits() >= explains
	}
	var pairs []hypothesis
	if n := len(drums); !fitting && n*(n-1)/2 <= mostPairs {
		pairs = f.all(drums, 2)
	}

	// As likely that none leaks as that some do; with pairs, a third of the rest.
	share := map[int]float64{1: 0.5}
	if len(pairs) > 0 {
		share = map[int]float64{1: 1.0 / 3, 2: 1.0 / 6}
	}
	count := map[int]int{1: len(singles), 2: len(pairs)}
	all := append(singles, pairs...)
	best := none.evidence
	for _, h := range all {
		best = max(best, h.evidence)
	}
	weight := func(h hypothesis) float64 {
		return share[len(h.units)] / float64(count[len(h.units)]) * math.Exp(h.evidence-best)
	}
	sound := math.Exp(none.evidence-best) / 2
	total := sound
	for _, h := range all {
		total += weight(h)
	}
	out.Sound = sound / total
	for _, h := range all {
		l := Leak{Units: h.units, Fits: h.fits(), Sure: weight(h) / total}
		water := true // an amount that may as well be none explains nothing
		for k, v := range h.volume {
			l.Volume = append(l.Volume, Figure{Value: v, Within: 2 * h.sd[k]})
			water = water && v > 0
		}
		if water && l.Fits >= explains {
			out.Leaks = append(out.Leaks, l)
		}
	}
	sort.SliceStable(out.Leaks, func(i, j int) bool { return out.Leaks[i].Sure > out.Leaks[j].Sure*(1+1e-9) })
	return nil
}

// fits returns the chance of a deviation as large.
func (h hypothesis) fits() float64 {
	return distuv.ChiSquared{K: float64(3 - len(h.units))}.Survival(h.chi2)
}

// all fits every choice of n of the drums; those with which the dock fails to
// float are left out, since it floats.
func (f *leakFit) all(drums []int, n int) []hypothesis {
	var out []hypothesis
	for a, i := range drums {
		if n == 1 {
			if h, ok := f.try([]int{i}); ok {
				out = append(out, h)
			}
			continue
		}
		for _, j := range drums[a+1:] {
			if h, ok := f.try([]int{i, j}); ok {
				out = append(out, h)
			}
		}
	}
	return out
}
