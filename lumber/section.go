package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Section is a rectangular cross-section as it stands: Width horizontal,
// Depth vertical, both dressed, in metres. [Size] gives the dressed sizes of the
// yard list; a measured or a sawn section is written as it is. The methods
// return 0 for a section whose sides are not both positive numbers: no side, no
// strength.
type Section struct{ Width, Depth float64 }

// largest is a side past any sawn timber, m: a slip of the unit.
const largest = 1.0

func (s Section) check() error {
	r := measure.Range{Kind: measure.Length, Lo: 1e-4, Hi: largest}
	if err := r.Check("Width", s.Width); err != nil {
		return err
	}
	return r.Check("Depth", s.Depth)
}

// ok is wider than check: plies side by side may exceed any single piece.
func (s Section) ok() bool {
	return s.Width > 0 && s.Depth > 0 && s.Width < 100 && s.Depth < 100
}

// thin and wide are the lesser and the greater side: what the trade calls
// thickness and width, however the piece stands.
func (s Section) thin() float64 { return math.Min(s.Width, s.Depth) }
func (s Section) wide() float64 { return math.Max(s.Width, s.Depth) }

// Turned returns the section turned by a right angle.
func (s Section) Turned() Section { return Section{Width: s.Depth, Depth: s.Width} }

// Area returns the area b d, m², exact: one product, within 0.5 units in the last place.
func (s Section) Area() float64 {
	if !s.ok() {
		return 0
	}
	return s.Width * s.Depth
}

// Modulus returns the section modulus b d²/6 about the horizontal axis, m³ (exact). About
// the vertical axis it is that of the section [Section.Turned]. Within 1.4 units in the
// last place.
func (s Section) Modulus() float64 {
	if !s.ok() {
		return 0
	}
	return s.Width * s.Depth * s.Depth / 6
}

// Inertia returns the second moment of area b d³/12 about the horizontal axis, m⁴
// (exact). Within 2.3 units in the last place.
// Worst at (0.01341, 0.07495), ordered as in testdata/accuracy.csv.
func (s Section) Inertia() float64 {
	if !s.ok() {
		return 0
	}
	return s.Width * s.Depth * s.Depth * s.Depth / 12
}

// zeta5 is the Riemann zeta function at 5, which sums the odd series exactly.
const zeta5 = 1.036927755143369926331365486457

// Torsion returns the torsion constant J, m⁴, such that a torque T twists the
// piece by T/(GJ) per metre: Saint-Venant's series, summed to the last digit.
//
//	J = b t³ [1/3 - (64/π⁵)(t/b) Σ tanh(nπb/2t)/n⁵],  n = 1, 3, 5, ...,  b ≥ t
//
// Within 3.9 units in the last place, worst near a square.
func (s Section) Torsion() float64 {
	if !s.ok() {
		return 0
	}
	b, t := s.wide(), s.thin()
	// tanh x = 1 - 2/(e^2x + 1): the ones sum to 31/32 ζ(5), the rest dies off as
	// e^-nπ, so that six terms leave less than the last digit.
	sum := 31.0 / 32 * zeta5
	for n := 1.0; n < 13; n += 2 {
		sum -= 2 / (math.Pow(n, 5) * (math.Exp(n*math.Pi*b/t) + 1))
	}
	return b * t * t * t * (1.0/3 - 64/math.Pow(math.Pi, 5)*(t/b)*sum)
}

// TorsionModulus returns T/τ, m³: the torque over the greatest shear stress it
// makes, at the middle of the wide faces, by Saint-Venant's series.
//
//	T/τ = (J/t) / [1 - (8/π²) Σ 1/(n² cosh(nπb/2t))],  n = 1, 3, 5, ...
//
// Within 3.9 units in the last place, worst near a square.
// Worst at (0.2073, 0.1991), ordered as in testdata/accuracy.csv.
func (s Section) TorsionModulus() float64 {
	if !s.ok() {
		return 0
	}
	b, t := s.wide(), s.thin()
	sum := 0.0
	for n := 1.0; n < 27; n += 2 {
		sum += 1 / (n * n * math.Cosh(n*math.Pi*b/(2*t)))
	}
	return s.Torsion() / t / (1 - 8/(math.Pi*math.Pi)*sum)
}
