package frame

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Torsion returns the torsion constant J of a solid rectangle, m⁴, from its two
// sides in m, either order. With the shear modulus G it makes a member's GJ.
//
//	J = b t³ [1/3 - (64/π⁵)(t/b) Σ tanh(nπb/2t)/n⁵],  n = 1, 3, 5..., t ≤ b
//
// It is exact (B. de Saint-Venant), for a section that warps freely, which one of
// lumber does. The shear modulus of lumber is known far less well.
func Torsion(width, depth float64) (float64, error) {
	side := measure.Range{Kind: measure.Length, Lo: 1e-9, Hi: 1e9}
	if err := side.Check("width", width); err != nil {
		return 0, err
	}
	if err := side.Check("depth", depth); err != nil {
		return 0, err
	}
	t, b := math.Min(width, depth), math.Max(width, depth)
	// tanh is 1 from the third term on but for 1e-16; the sum of 1/n⁵ over odd n
	// is 31/32 ζ(5).
	const whole = 1.0045237627951384
	sum := whole
	for n := 1.0; n < 12; n += 2 {
		sum -= (1 - math.Tanh(n*math.Pi*b/(2*t))) / (n * n * n * n * n)
	}
	const pi5 = math.Pi * math.Pi * math.Pi * math.Pi * math.Pi
	return b * t * t * t * (1.0/3 - 64/pi5*(t/b)*sum), nil
}
