package ice

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// A Stand is what stands on the ice for days and weeks: the dock on its drums,
// the lumber, the snow on both. Patches and holes share one system of axes.
type Stand struct {
	Loads []Patch // everything that stands there; people are not part of it
	Since float64 // s that it has stood; NaN is not known, 0 is about to be set
	Stay  float64 // s that it is to stand in all, counted from the day it was set
	Snow  float64 // m of further snow that may fall on the ice around meanwhile

	// Soft and Stiff bound what the ice may be: temperature, grain and modulus.
	// Their zero values are -1 °C, 1 mm, 1 GPa and -5 °C, 10 mm, 9.5 GPa (our
	// choice). Verdicts rest on Soft alone.
	Soft, Stiff Creep

	// Gauge is the water read in a hole at the dock since it stands: needed as
	// soon as it does, daily of late, with a trend from the third day on.
	Gauge Gauge
}

// horizon is how far ahead a sag is looked for: half a year.
const horizon = 180 * measure.Day

// mostLoads bounds the work: a hundred patches are a large dock.
const mostLoads = 100

var rangeStay = measure.Range{Kind: measure.Time, Lo: 0, Hi: horizon, OpenLo: true, Source: own("half a year, one winter")}

// mass returns all that stands there in kg.
func (t Stand) mass() float64 {
	sum := 0.0
	for _, p := range t.Loads {
		sum += p.Force / measure.Gravity
	}
	return sum
}

// settled fills in what is not given and refuses what is none.
func (t Stand) settled() (Stand, error) {
	t.Soft, t.Stiff = t.Soft.or(softest), t.Stiff.or(stiffest)
	if len(t.Loads) == 0 {
		return t, unknown("loads", "nothing stands there")
	}
	if err := (measure.Range{Lo: 1, Hi: mostLoads, Source: own("every two loads are looked between")}).Check("loads", float64(len(t.Loads))); err != nil {
		return t, err
	}
	for i, p := range t.Loads {
		if err := p.check(i, rangeSide.Hi/widest); err != nil {
			return t, err
		}
	}
	if !math.IsNaN(t.Since) {
		if err := rangeHeld.Check("time that it has stood", t.Since); err != nil {
			return t, err
		}
	}
	if err := rangeStay.Check("time that it is to stand", t.Stay); err != nil {
		return t, err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: thickest, Source: sizeRange}).Check("further snow", t.Snow); err != nil {
		return t, err
	}
	for _, c := range []Creep{t.Soft, t.Stiff} {
		if err := c.check(); err != nil {
			return t, err
		}
	}
	if t.Soft.Temperature < t.Stiff.Temperature || t.Soft.Grain > t.Stiff.Grain || t.Soft.E > t.Stiff.E {
		return t, &measure.Error{
			Field: "soft and stiff ice", Class: measure.ErrRange, Text: fmt.Sprintf("%v and %v", t.Soft, t.Stiff),
			Want: "soft ice no colder, no coarser and of no higher modulus than stiff ice",
		}
	}
	if err := t.Gauge.check(); err != nil {
		return t, err
	}
	for i, r := range t.Gauge {
		if r.Age > t.Since {
			return t, (measure.Range{Kind: measure.Time, Lo: 0, Hi: t.Since, Source: own("the time that it has stood")}).Check(fmt.Sprintf("reading %d, age", i+1), r.Age)
		}
	}
	return t, nil
}

// unwatched lists why a load that stands already cannot be answered for; highest is
// the most that the water may stand below the top of ice that rests on it.
func (t Stand) unwatched(highest float64) []error {
	switch {
	case math.IsNaN(t.Since):
		return []error{unknown("time that it has stood", "the sag grows from the day it was set")}
	case t.Since > 0 && len(t.Gauge) == 0:
		return []error{unknown("gauge", "the water in a hole at the dock must be read daily")}
	case t.Since == 0:
		return nil
	}
	out := t.Gauge.doubts(t.Since)
	if last := t.Gauge.newest(); last.Freeboard > highest {
		out = append(out, unfit("gauge", "ice that does not rest on the water", fmt.Sprintf("it stands %s below the top in the hole at the dock, more than such ice floats (%s)",
			measure.Length.Format(last.Freeboard, measure.SI), levelDrop)))
	}
	if _, err := t.Gauge.Fall(); err != nil && t.Since > 3*measure.Day {
		out = append(out, err)
	}
	return out
}

// A sinking is a stand on a plate of one thickness, ready to be asked how deep
// it lies after a time. Each patch's own sag is kept apart: where one lifts the
// place of another, which it does beyond four characteristic lengths, that
// is not counted, so that a further load never helps.
type sinking struct {
	plate  Plate
	loads  []Patch
	places [][2]float64 // under each patch, and midway between every two
	peak   float64      // Pa, greatest tension before any creep
	least  float64      // Pa, modulus below which the widest patch lies on water alone

	// passed are the sags at the moduli of a ladder from the stiffest ice down: a
	// sheet that softens passes them all. Under a load wider than its bowl the
	// sag is not deepest at the softest end, by up to a tenth.
	passed []float64
}

// ladder is the modulus of a step in Pa.
func ladder(step int) float64 { return rangeElastic.Hi * math.Pow(10, -float64(step)/4) }

func newSinking(thickness float64, loads []Patch) (*sinking, error) {
	s := &sinking{plate: Plate{Thickness: thickness, E: rangeElastic.Hi, Nu: poisson}, loads: loads}
	// A further load adds places and takes none away. Docks are regular: most of
	// the places midway are the same.
	seen := map[[2]float64]bool{}
	for i, p := range loads {
		for _, q := range loads[i:] {
			o := [2]float64{math.Round((p.X+q.X)/2*1e6) / 1e6, math.Round((p.Y+q.Y)/2*1e6) / 1e6}
			if !seen[o] {
				seen[o] = true
				s.places = append(s.places, o)
			}
		}
	}
	width := 0.0
	for _, p := range loads {
		width = max(width, p.A, p.B)
	}
	h, l := thickness, width/(0.99*widest)
	s.least = 12 * (1 - poisson*poisson) * s.plate.foundation() * l * l * l * l / (h * h * h)
	var err error
	if s.peak, err = s.tension(rangeElastic.Hi); err != nil {
		return nil, err
	}
	for k := 0; ladder(k) >= rangeE.Lo; k++ {
		w, err := s.secant(ladder(k))
		if err != nil {
			return nil, err
		}
		s.passed = append(s.passed, w)
	}
	return s, nil
}

// poisson is Poisson's ratio of ice (usual in practice, from memory).
const poisson = 0.33

// each calls f with the state that every patch alone makes at every place, for
// one modulus.
func (s *sinking) each(modulus float64, f func(place, patch int, b Bend)) error {
	p := s.plate
	p.E = min(max(modulus, rangeE.Lo, s.least), rangeE.Hi)
	for j := range s.loads {
		b, err := p.Bowl(s.loads[j : j+1])
		if err != nil {
			return err
		}
		for i, o := range s.places {
			state, err := b.At(o[0], o[1])
			if err != nil {
				return err
			}
			f(i, j, state)
		}
	}
	return nil
}

// tension returns the greatest sum, over the places, of the tensions that the
// patches make one by one: no less than the tension of all together.
func (s *sinking) tension(modulus float64) (float64, error) {
	sums := make([]float64, len(s.places))
	err := s.each(modulus, func(i, _ int, b Bend) {
		greater, smaller := b.Principal()
		sums[i] += 6 * math.Max(math.Abs(greater), math.Abs(smaller)) / (s.plate.Thickness * s.plate.Thickness)
	})
	return slices.Max(sums), err
}

// secant returns the greatest sag on an elastic plate of one modulus.
func (s *sinking) secant(modulus float64) (float64, error) {
	sums := make([]float64, len(s.places))
	err := s.each(modulus, func(i, _ int, b Bend) { sums[i] += math.Max(0, b.Deflection) })
	return slices.Max(sums), err
}

// stehfest are the weights of the inversion of a Laplace transform from ten
// real rates; for functions as smooth as a creeping sag they give four digits.
var stehfest = stehfestWeights(10)

func stehfestWeights(n int) []float64 {
	factorial := func(k int) float64 { return math.Gamma(float64(k) + 1) }
	out := make([]float64, n)
	for k := 1; k <= n; k++ {
		for j := (k + 1) / 2; j <= min(k, n/2); j++ {
			out[k-1] += math.Pow(float64(j), float64(n/2)) * factorial(2*j) /
				(factorial(n/2-j) * factorial(j) * factorial(j-1) * factorial(k-j) * factorial(2*j-k))
		}
		if (k+n/2)%2 == 1 {
			out[k-1] = -out[k-1]
		}
	}
	return out
}

// crept returns the greatest sag of the viscoelastic plate after a time, by the
// correspondence principle: the elastic solution with 1/(p J̃(p)) for E, turned
// back to time, and no less than any sag that it passed. The flow is that of the stress before any creep, which only
// falls later. Where everything flows it is 13 % deeper than the secant
// modulus says, so that the two together are no less than either.
func (s *sinking) crept(c Creep, seconds float64) (float64, error) {
	if seconds == 0 {
		return s.secant(c.E)
	}
	now := 1 / c.compliance(s.peak, seconds)
	deep, err := s.secant(now)
	if err != nil {
		return math.NaN(), err
	}
	for k, w := range s.passed {
		if ladder(k) >= now {
			deep = math.Max(deep, w)
		}
	}
	n := len(s.loads)
	sag := make([]float64, len(s.places)*n)
	for k, v := range stehfest {
		rate := float64(k+1) * math.Ln2 / seconds
		err := s.each(1/c.transformed(s.peak, rate), func(i, j int, b Bend) {
			sag[i*n+j] += v / float64(k+1) * b.Deflection
		})
		if err != nil {
			return math.NaN(), err
		}
	}
	for i := range s.places {
		sum := 0.0
		for _, w := range sag[i*n : (i+1)*n] {
			sum += math.Max(0, w)
		}
		deep = math.Max(deep, sum)
	}
	return deep, nil
}

// relaxed returns the greatest sag by the secant modulus under the stress that
// is left as the sheet gives way, and that stress: the shallow end.
func (s *sinking) relaxed(c Creep, seconds float64) (sag, stress float64, err error) {
	lo, hi := math.Log(rangeE.Lo), math.Log(c.E)
	for range 18 {
		mid := (lo + hi) / 2
		if stress, err = s.tension(math.Exp(mid)); err != nil {
			return math.NaN(), math.NaN(), err
		}
		if math.Exp(mid)*c.compliance(stress, seconds) < 1 {
			lo = mid
		} else {
			hi = mid
		}
	}
	sag, err = s.secant(math.Exp(hi))
	return sag, stress, err
}
