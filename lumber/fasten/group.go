package fasten

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// steelE is the modulus of elasticity, psi, that the standard's group action
// tables are computed with.
const steelE = 30e6

// GroupAction returns the group action factor Cg of n fasteners in a row, of a
// nominal diameter and a spacing in m, between members of axial stiffness EA, N
// (all side members together). Steel says that the side is metal.
//
//	γ = 180 000 D^1.5 lbf/in wood to wood, 270 000 D^1.5 wood to metal
//	u = 1 + γ (s/2)(1/EAm + 1/EAs),  m = u - √(u² - 1)
//	Cg = m(1 - m²ⁿ)/(n[(1 + REA mⁿ)(1 + m) - 1 + m²ⁿ]) · (1 + REA)/(1 - m)
//
// It is 1 for one fastener and for those thinner than 1/4 in. NDS 11.3.6. Lengths
// count in billionths of an inch; within 6.1 units in the last place, worst for two
// stiff members.
// Worst at (2, 0.01905, 0.04427, 2.494e+09, 1.564e+08, 0), ordered as in testdata/accuracy.csv.
func GroupAction(n int, diameter, spacing, main, side float64, steel bool) (measure.Factor, error) {
	f := measure.Factor{Symbol: "Cg", Name: "group action", Value: 1, Why: "one fastener in a row", Source: srcCg}
	stiff := measure.Range{Kind: measure.Force, Hi: 1e12, OpenLo: true}
	if err := checkAll(
		ranged{"n", float64(n), measure.Range{Kind: measure.Ratio, Lo: 1, Hi: 1000}},
		ranged{"diameter", diameter, measure.Range{Kind: measure.Length, Hi: 1.25 * measure.Inch * (1 + 1e-9), OpenLo: true}},
	); err != nil {
		return measure.Factor{}, err
	}
	d := inches(diameter)
	if n == 1 {
		return f, nil
	}
	if d < 0.25-hair {
		f.Why = "thinner than 1/4 in"
		return f, nil
	}
	if err := checkAll(
		ranged{"spacing", spacing, measure.Range{Kind: measure.Length, Hi: 5, OpenLo: true}},
		ranged{"main EA", main, stiff},
		ranged{"side EA", side, stiff},
	); err != nil {
		return measure.Factor{}, err
	}
	gamma := modulus(d, steel)
	em, es := main/measure.PoundForce, side/measure.PoundForce
	// u - 1 is tiny for stiff members, so that m, 1 - m and 1 - m²ⁿ are formed
	// from it without differences of near equals.
	x := gamma * inches(spacing) / 2 * (1/em + 1/es)
	root := math.Sqrt(x * (2 + x))
	m, away := 1/(1+x+root), 2*x/(root+x)
	power := -float64(n) * math.Log1p(x+root) // n ln m
	mn, less := math.Exp(power), -math.Expm1(2*power)
	rea := math.Min(em/es, es/em)
	f.Value = m * less / (float64(n) * (m + rea*mn*(1+m) + mn*mn)) * (1 + rea) / away
	if f.Value = math.Min(f.Value, 1); !(f.Value > 0) {
		return measure.Factor{}, &measure.Error{Field: "Cg", Why: "the row is too long and too soft for the equation", Class: measure.ErrNotComputed}
	}
	f.Why = "fasteners in a row share unequally"
	return f, nil
}

// modulus returns the load/slip modulus γ of one fastener, lbf/in, of a nominal
// diameter in inches. NDS 11.3.6.
func modulus(d float64, metal bool) float64 {
	gamma := 180000.0
	if metal {
		gamma = 270000
	}
	return gamma * math.Pow(d, 1.5)
}

// axial returns the axial stiffness E·A of a piece, N, as the group action
// factor counts it; a piece loaded across its grain counts by the width of the
// group, one row by its least spacing of 3D along the grain. NDS 11.3.6.
func (j Joint) axial(p Piece, count float64) (float64, error) {
	area := p.Thickness * p.Width
	if p.Material == Wood && !p.along() {
		wide := float64(j.rows()-1) * j.Between
		if j.rows() == 1 {
			wide = 3 * j.Fastener.Diameter
		}
		area = p.Thickness * wide
	}
	if !(area > 0) {
		return 0, unknown("Width", "the width of the piece, to know how it stretches")
	}
	e := steelE * measure.PSI
	switch p.Material {
	case Wood:
		e = p.Grade.E.SI()
		if !(e > 0) {
			return 0, unknown("Grade.E", "the modulus of elasticity of the wood")
		}
	case Concrete:
		return 0, &measure.Error{Field: "group action", Why: "not covered in concrete", Class: measure.ErrNotComputed}
	}
	return e * area * count, nil
}

// group returns Cg of the joint.
func (j Joint) group() (measure.Factor, error) {
	n := j.perRow()
	if n == 1 || inches(j.Fastener.Diameter) < 0.25-hair {
		return GroupAction(n, j.Fastener.Diameter, 1, 1, 1, false)
	}
	if !(j.Spacing > 0) {
		return measure.Factor{}, unknown("Spacing", "the spacing of the fasteners in a row")
	}
	sides := 1.0
	if j.Double {
		sides = 2
	}
	m, err := j.axial(j.Main, 1)
	if err != nil {
		return measure.Factor{}, err
	}
	s, err := j.axial(j.Side, sides)
	if err != nil {
		return measure.Factor{}, err
	}
	return GroupAction(n, j.Fastener.Diameter, j.Spacing, m, s, j.Side.Material.steel() || j.Main.Material.steel())
}
