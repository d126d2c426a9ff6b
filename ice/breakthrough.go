package ice

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Breakthrough is how a sheet fails under one patch: the first crack below
// it, and the load at which the wedges between the cracks break off. It makes no
// check and gives no permission: ice between the two is broken ice, and the
// strength is hardly ever known.
type Breakthrough struct {
	FirstCrack float64 // N
	Wedges     float64 // N
	Margin     float64 // Wedges over FirstCrack, a ratio
	Radius     float64 // m, of the circle that the wedges are loaded over
	Source     *measure.Source
}

// nevel is the source of the wedges.
var nevel = &measure.Source{
	Title: "D. E. Nevel, wedges of a broken ice sheet (the series was checked by solving the wedge's equation)", Status: measure.Memory,
}

// String prints both loads, and that neither is a permission.
func (b Breakthrough) String() string {
	return fmt.Sprintf("cracks at %s, breaks through near %s; no rule rests on this (%s)",
		measure.Force.Format(b.FirstCrack, measure.SI), measure.Force.Format(b.Wedges, measure.SI), b.Source)
}

// Breakthrough returns how the plate fails under a patch, given the flexural
// strength of the ice in Pa and the number of wedges (0 is 8):
//
//	first crack   the force whose greatest tension is the strength
//	wedges        P = 2 n tan(π/n) (σ h²/6) [1.05 + 2 α + ½ α³],  α = a/l
//
// For a rectangle the circle within it counts, which bears less. The series is 0.2 % off
// at α = 0.2 and 4 % low at 1, its end (Nevel, from memory). The patch's own Force and
// place do not matter. The wedges are within 3.3 units in the last place.
// Worst at (0.09866, 2.402e+09, 0.08004, 0.3577, 1.137e+06, 3), ordered as in testdata/accuracy.csv.
func (p Plate) Breakthrough(patch Patch, strength float64, wedges int) (Breakthrough, error) {
	none := Breakthrough{FirstCrack: math.NaN(), Wedges: math.NaN(), Margin: math.NaN(), Radius: math.NaN(), Source: nevel}
	if err := p.check(); err != nil {
		return none, err
	}
	if wedges == 0 {
		wedges = 8
	}
	if err := (measure.Range{Lo: 3, Hi: 1000, Source: own("a wedge is narrower than a third of the round")}).Check("wedges", float64(wedges)); err != nil {
		return none, err
	}
	r := measure.Range{Kind: measure.Stress, Lo: 1e3, Hi: 3e6, Source: own("small beams of fresh ice broke at 1.7 MPa, sheets in place at 0.4 to 0.8 MPa")}
	if err := r.Check("flexural strength", strength); err != nil {
		return none, err
	}
	patch.X, patch.Y, patch.Force = 0, 0, 1
	b, err := p.Bowl([]Patch{patch})
	if err != nil {
		return none, err
	}
	under, err := b.At(0, 0)
	if err != nil {
		return none, err
	}
	stress, err := p.Stress(under)
	if err != nil {
		return none, err
	}
	a := patch.A
	if patch.B != 0 {
		a = math.Min(patch.A, patch.B) / 2
	}
	reach := measure.Range{Kind: measure.Length, Lo: 0, Hi: b.l, Source: nevel}
	if err := reach.Check("radius of the patch", a); err != nil {
		return none, err
	}
	if !(stress > 0) {
		return none, unknown("patch", "it makes no tension at its middle")
	}
	alpha, n, h := a/b.l, float64(wedges), p.Thickness
	out := Breakthrough{FirstCrack: strength / stress, Radius: a, Source: nevel}
	out.Wedges = 2 * n * math.Tan(math.Pi/n) * strength * h * h / 6 * (1.05 + 2*alpha + alpha*alpha*alpha/2)
	out.Margin = out.Wedges / out.FirstCrack
	return out, nil
}

// FloodLoad returns the concentrated force in N whose sag, P/(8 k l²), uses up a
// freeboard in m: 8 k l² f, by plate theory. With the secant modulus of a creeping sheet it is
// the load that floods after that time.
func (p Plate) FloodLoad(freeboard float64) (float64, error) {
	if err := p.check(); err != nil {
		return math.NaN(), err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: thickest, Source: sizeRange}).Check("freeboard", freeboard); err != nil {
		return math.NaN(), err
	}
	l := p.length()
	return 8 * p.foundation() * l * l * freeboard, nil
}
