package float

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"example.org/floewright/lumber/measure"
)

var (
	oscillator = &measure.Source{Title: "undamped oscillator", Status: measure.Exact}
	positive   = measure.Range{Lo: 0, Hi: math.Inf(1), OpenLo: true, Source: oscillator}
)

// Period returns the natural period, s, of an undamped oscillator:
//
//	T = 2π √(inertia/stiffness)
//
// For heave the inertia is a mass with its added mass (kg), the stiffness ρ g A of the
// waterplane area A (N/m). For roll, with radius of gyration k and metacentric height
// GM, they are m k² (kg·m²) and m g GM (N·m/rad), so that T = 2π k/√(g GM). Both must be
// more than 0. It is exact for small motions, within 1.9 units in the last place.
// Worst at (189.5, 2314), ordered as in testdata/accuracy.csv.
func Period(inertia, stiffness float64) (float64, error) {
	if err := positive.Check("inertia", inertia); err != nil {
		return 0, err
	}
	if err := positive.Check("stiffness", stiffness); err != nil {
		return 0, err
	}
	t := 2 * math.Pi * math.Sqrt(inertia/stiffness)
	if math.IsInf(t, 0) || t == 0 {
		return 0, &measure.Error{Field: "inertia/stiffness", Class: measure.ErrRange, Value: inertia / stiffness, Range: positive}
	}
	return t, nil
}

// A Band is a natural period between the shortest and the longest that the added
// mass allows, s.
type Band struct {
	Shortest, Longest float64

	// Pure is the share of the motion's energy that the name tells: 1 for a dock
	// alike on all sides; below about 0.8 the dock heaves, rolls and pitches at
	// once and the name says only which is the largest.
	Pure float64
}

// Motion holds the natural periods of a floating dock. Roll turns about the
// dock's length, pitch about its width.
type Motion struct{ Heave, Roll, Pitch Band }

// nearFactor is the amplification from which a period counts as near: an undamped
// oscillator then answers twice as far as to a slow push of the same size. Our
// choice.
const nearFactor = 2

// Near returns a warning for each motion whose natural period lies near the
// period of a wave or wake, s: where an undamped oscillator would answer more
// than twice as far as to a slow push,
//
//	1/|1 - (T₀/T)²| > 2, that is 0.71 T < T₀ < 1.22 T.
//
// Drums near the surface make waves themselves, which damps heave well and roll
// little. The period must be more than 0 and at most 60 s.
//
// Wind waves on a small lake have 1 to 2 s, the wakes of ordinary boats 1.5 to
// 2.5 s (from memory).
func (m Motion) Near(period float64) ([]string, error) {
	waves := measure.Range{
		Kind: measure.Time, Lo: 0, Hi: 60, OpenLo: true,
		Source: &measure.Source{Title: "waves and wakes on lakes and in bays", Status: measure.OwnChoice},
	}
	if err := waves.Check("period", period); err != nil {
		return nil, err
	}
	lo, hi := period*math.Sqrt(1-1.0/nearFactor), period*math.Sqrt(1+1.0/nearFactor)
	var warnings []string
	for _, c := range []struct {
		name string
		band Band
	}{{"heave", m.Heave}, {"roll", m.Roll}, {"pitch", m.Pitch}} {
		if !(c.band.Shortest > 0 && c.band.Longest >= c.band.Shortest) {
			return nil, &measure.Error{
				Field: "Motion", Class: measure.ErrUnknown,
				Why: "no natural period of " + c.name, Want: "the result of State.Motion",
			}
		}
		if c.band.Longest > lo && c.band.Shortest < hi {
			warnings = append(warnings, fmt.Sprintf(
				"natural period of %s %.1f to %.1f s is near the %.1f s of the waves: they will be felt more than their height says",
				c.name, c.band.Shortest, c.band.Longest, period))
		}
	}
	return warnings, nil
}

// A matrix3 acts on heave (m) and the turns about two level axes (rad).
type matrix3 [3][3]float64

// add adds a v vᵀ.
func (m *matrix3) add(a float64, v [3]float64) {
	for i := range v {
		for j := range v {
			m[i][j] += a * v[i] * v[j]
		}
	}
}

// oscillate solves K q = ω² M q and returns the three periods, each given to the
// coordinate that moves most in it, with that coordinate's share of the energy.
// The error says that M or K is not positive definite.
func oscillate(inertia, stiffness matrix3) (period, share [3]float64, err error) {
	symmetric := func(m matrix3) *mat.SymDense {
		s := mat.NewSymDense(3, nil)
		for i := range m {
			for j := i; j < 3; j++ {
				s.SetSym(i, j, m[i][j])
			}
		}
		return s
	}
	for i := range inertia {
		for j := range inertia {
			if !(math.Abs(inertia[i][j]) <= math.MaxFloat64 && math.Abs(stiffness[i][j]) <= math.MaxFloat64) {
				return period, share, &measure.Error{Field: "motion", Class: measure.ErrRange, Value: math.NaN()}
			}
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(symmetric(inertia)) {
		return period, share, &measure.Error{
			Field: "motion", Class: measure.ErrUnknown,
			Why: "the masses have no inertia about some axis", Want: "weights spread as they lie on the dock",
		}
	}
	// With M = L Lᵀ and y = Lᵀ q, the problem is L⁻¹ K L⁻ᵀ y = ω² y.
	var lower mat.TriDense
	chol.LTo(&lower)
	var inverse, left, full mat.Dense
	if err := inverse.Inverse(&lower); err != nil {
		return period, share, &measure.Error{Field: "motion", Class: measure.ErrUnknown, Why: "the masses have next to no inertia about some axis"}
	}
	left.Mul(&inverse, symmetric(stiffness))
	full.Mul(&left, inverse.T())
	var reduced matrix3
	for i := range reduced {
		for j := range reduced[i] {
			reduced[i][j] = (full.At(i, j) + full.At(j, i)) / 2
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(symmetric(reduced), true) {
		return period, share, &measure.Error{Field: "motion", Class: measure.ErrUnknown, Why: "the natural periods were not found"}
	}
	squares := eigen.Values(nil)
	if !(squares[0] > 0) {
		return period, share, &measure.Error{Field: "motion", Class: measure.ErrUnknown, Why: "the dock does not return to this position by itself"}
	}
	var y, q mat.Dense
	eigen.VectorsTo(&y)
	q.Mul(inverse.T(), &y)
	// energy[d][k] is coordinate d's share of the kinetic energy of mode k, without
	// what two coordinates have in common.
	var energy matrix3
	for k := range 3 {
		sum := 0.0
		for d := range 3 {
			energy[d][k] = q.At(d, k) * q.At(d, k) * inertia[d][d]
			sum += energy[d][k]
		}
		for d := range 3 {
			energy[d][k] /= sum
		}
	}
	best := math.Inf(-1)
	for _, p := range [][3]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
		sum := energy[0][p[0]] + energy[1][p[1]] + energy[2][p[2]]
		if sum > best+1e-12 {
			best = sum
			for d, k := range p {
				period[d] = 2 * math.Pi / math.Sqrt(squares[k])
				share[d] = energy[d][k]
			}
		}
	}
	return period, share, nil
}
