package ice

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Creep is columnar lake ice that yields with time, by Sinha's law: the
// strain under a stress σ that is held for a time t,
//
//	ε = σ/E + (9/d) (σ/E₀) [1 - exp(-(a t)^0.34)] + 1.76e-7 S t σ³
//	a = 2.5e-4 S 1/s,  S = exp(Q/R (1/263.15 - 1/T)),  Q = 67 kJ/mol,  E₀ = 9.5 GPa
//
// with σ in MPa and the grain d in mm. E is E₀ in the law; a lower one stands
// for the modulus of a sheet in place, cracks and all, and counts in the first
// term alone: our choice. The law is for pure bending or pressing of ice with
// upright columns, cold, and strained less than 1e-3; it is an estimate. Under
// some hundredths of a MPa, as below a light dock, ice may flow faster than the
// cube says (from memory): hence the gauge.
// Source: N. K. Sinha 1978, from memory.
type Creep struct {
	Temperature float64 // °C, mean through the thickness; the bottom is always at 0 °C
	Grain       float64 // m, across the columns
	E           float64 // Pa; 0 is 9.5 GPa
}

// sinha is the creep law; frederking the criterion for loads that stand.
var (
	sinha = &measure.Source{
		Title: "N. K. Sinha, creep law of columnar-grained ice", Edition: "1978", Status: measure.Memory,
	}
	frederking = &measure.Source{
		Title:   "R. Frederking and L. W. Gold, NRC 15253, criterion for static loads on ice: the sag stays below the freeboard",
		Edition: "1976", Locator: "abstract", Status: measure.Read,
	}
)

// The constants of the law, with σ in MPa and d in mm.
const (
	sinhaE     = 9.5e9
	grainShare = 9.0
	delayPower = 0.34
	delayRate  = 2.5e-4
	flowRate   = 1.76e-7
	activation = 67e3 / 8.314
	smallest   = 1e-3 // the strain up to which the law and the criterion speak
)

// The ranges of the law. Their soft ends are what unknown ice counts as.
var (
	rangeMean    = measure.Range{Kind: measure.Temperature, Lo: -40, Hi: -1, Source: own("the law is for cold ice, not for ice near melting")}
	rangeGrain   = measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: 0.05, Source: own("columns of lake ice")}
	rangeElastic = measure.Range{Kind: measure.Stress, Lo: 1e9, Hi: 1e10, Source: own("a sheet in place, 1 GPa, to sound ice under sound waves, 10 GPa")}
	rangeStress  = measure.Range{Kind: measure.Stress, Lo: 1e-6, Hi: 2e6, Source: own("ice breaks before")}
	rangeHeld    = measure.Range{Kind: measure.Time, Lo: 0, Hi: 1e8, Source: sizeRange}
)

// softest and stiffest are the ends that stand in for ice that nobody looked at.
var (
	softest  = Creep{Temperature: rangeMean.Hi, Grain: rangeGrain.Lo, E: rangeElastic.Lo}
	stiffest = Creep{Temperature: -5, Grain: 0.01, E: sinhaE}
)

// or returns the ice with what stands in for it where it is not given.
func (c Creep) or(standIn Creep) Creep {
	if c == (Creep{}) {
		return standIn
	}
	if c.E == 0 {
		c.E = sinhaE
	}
	return c
}

func (c Creep) check() error {
	if err := rangeMean.Check("mean temperature of the ice", c.Temperature); err != nil {
		return err
	}
	if err := rangeGrain.Check("grain of the ice", c.Grain); err != nil {
		return err
	}
	return rangeElastic.Check("modulus E of the ice", c.E)
}

// Strain returns the strain, a ratio, under a stress in Pa held for a time in s, by
// Sinha's law, from memory. Within says that it is small enough, below 1e-3, for the law
// to mean it. Within 6.9 units in the last place, worst at -37 °C.
// Worst at (-37.12, 0.03831, 9.554e+05, 1.751e+05), ordered as in testdata/accuracy.csv.
func (c Creep) Strain(stress, seconds float64) (strain float64, within bool, err error) {
	if c.E == 0 {
		c.E = sinhaE
	}
	if err := c.check(); err != nil {
		return math.NaN(), false, err
	}
	if err := rangeStress.Check("stress", stress); err != nil {
		return math.NaN(), false, err
	}
	if err := rangeHeld.Check("time under load", seconds); err != nil {
		return math.NaN(), false, err
	}
	strain = stress * c.compliance(stress, seconds)
	return strain, strain < smallest, nil
}

// Modulus returns the secant modulus in Pa under a stress in Pa held for a time in s,
// stress over strain: what an elastic plate is given in its place. Errors and within as
// for [Creep.Strain].
func (c Creep) Modulus(stress, seconds float64) (modulus float64, within bool, err error) {
	strain, within, err := c.Strain(stress, seconds)
	return stress / strain, within, err
}

// shift is S, 1 at -10 °C and more when warmer.
func (c Creep) shift() float64 {
	return math.Exp(activation * (c.Temperature + 10) / (263.15 * (c.Temperature + 273.15)))
}

// compliance returns strain over stress, 1/Pa, after a time.
func (c Creep) compliance(stress, seconds float64) float64 {
	s, mpa := c.shift(), stress/measure.Megapascal
	delayed := grainShare / (c.Grain / measure.Millimetre) / sinhaE * -math.Expm1(-math.Pow(delayRate*s*seconds, delayPower))
	return 1/c.E + delayed + flowRate*s*seconds*mpa*mpa/measure.Megapascal
}

// transformed returns p J̃(p), the compliance that the correspondence principle
// puts into the elastic plate in place of 1/E, for a rate p in 1/s:
//
//	p ∫ J(t) exp(-p t) dt = ∫ J(u/p) exp(-u) du
//
// The elastic and the flowing part are closed; the delayed one is summed over
// v = ln u by equal steps, whose error falls as exp(-π²/step): below 1e-12.
func (c Creep) transformed(stress, p float64) float64 {
	s, mpa := c.shift(), stress/measure.Megapascal
	scale, sum := -math.Pow(delayRate*s/p, delayPower), 0.0
	for _, n := range delayNodes {
		sum -= n.weight * math.Expm1(scale*n.power)
	}
	delayed := grainShare / (c.Grain / measure.Millimetre) / sinhaE * sum
	return 1/c.E + delayed + flowRate*s/p*mpa*mpa/measure.Megapascal
}

// delayNodes are the steps of v, with u exp(-u) and u^0.34.
var delayNodes = func() (out []struct{ weight, power float64 }) {
	const step = 0.35
	for v := -20.0; v < 4.2; v += step {
		u := math.Exp(v)
		out = append(out, struct{ weight, power float64 }{step * u * math.Exp(-u), math.Pow(u, delayPower)})
	}
	return out
}()

// reaches returns the time in s at which the strain under a held stress reaches
// the end of the law, 1e-3, and +Inf where it does not within the horizon.
func (c Creep) reaches(stress float64) float64 {
	strained := func(t float64) bool { return stress*c.compliance(stress, t) >= smallest }
	if strained(0) {
		return 0
	}
	return first(strained, 1, horizon)
}

// first returns the time from which a condition that stays holds, between lo
// and hi by halving their logarithms, to a millionth; lo where it holds there
// already, +Inf where it does not at hi.
func first(holds func(t float64) bool, lo, hi float64) float64 {
	if !holds(hi) {
		return math.Inf(1)
	}
	if holds(lo) {
		return lo
	}
	for hi > lo*(1+1e-6) {
		if mid := math.Sqrt(lo * hi); holds(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}
