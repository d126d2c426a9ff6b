package published

import (
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// fastenMore has how far joints slip and the jerk in a tie that comes taut.
func fastenMore() ([]Check, error) {
	return append(fastenSlips(), fastenJerks()...), nil
}

// fastenSlips checks joints by the load/slip modulus.
func fastenSlips() []Check {
	tight := func(d float64) fasten.Joint { // the hole is the bolt's
		j := bolted(d, 3.5, 3.5)
		j.Hole = d * measure.Inch
		return j
	}
	metal := tight(0.5)
	metal.Side = fasten.Piece{Material: fasten.Plate, Thickness: 0.25 * measure.Inch}
	two := bolted(0.5, 3.5, 1.5)
	two.PerRow = 2
	modulus := func(j fasten.Joint) func() (float64, error) {
		return func() (float64, error) {
			s, err := fasten.Slip(1000*lbf, j)
			return 1000 / (s / measure.Inch), err
		}
	}
	slip := func(force float64, path ...fasten.Joint) func() (float64, error) {
		return func() (float64, error) {
			s, err := fasten.Slip(force*lbf, path...)
			return s / measure.Inch, err
		}
	}
	standard := measure.Source{Title: "NDS 2018", Locator: "11.3.6, load/slip modulus 180,000 D^1.5 and 270,000 D^1.5", Status: measure.Quoted}
	out := share(fastenPackage, standard, 1e-9,
		one{"load over slip, bolt of 1 in, wood to wood", "180000", "lbf/in", modulus(tight(1))},
		one{"load over slip, bolt of 1/2 in, wood to wood", "63639.6103068", "lbf/in", modulus(tight(0.5))},
		one{"load over slip, bolt of 1/2 in, wood to metal", "95459.4154602", "lbf/in", modulus(metal)},
	)
	path := independent("Play of the holes, and force over modulus, one joint after the other, 50 digits", "1/16 in + 1500/(2·180000·0.5^1.5) in; the same again and one of 1 in without play")
	return append(out, share(fastenPackage, path, 1e-9,
		one{"slip of two bolts of 1/2 in under 1500 lbf", "0.0742851130198", "in", slip(1500, two)},
		one{"slip of two such joints and one of 1 in", "0.156903559373", "in", slip(1500, two, two, tight(1))},
		one{"play alone", "0.0625", "in", slip(0, two)},
	)...)
}

// fastenJerks checks a weight that drops before its tie is taut.
func fastenJerks() []Check {
	// A collar of 20 kg that falls 150 mm on the end of a bar of 2 m, 15 mm thick, 210 GPa.
	const w, area, length, modulus = 20 * 9.81, 3.14159265358979 / 4 * 15e-3 * 15e-3, 2.0, 210e9
	bar := fasten.Tie{Strength: 1e5, Stiffness: modulus * area / length, Slack: 0.15}
	jerk := func(tie fasten.Tie, weight, unit float64) func() (float64, error) {
		return func() (float64, error) {
			f, err := tie.Jerk(weight)
			return f / unit, err
		}
	}
	book := measure.Source{Title: "J. M. Gere and B. J. Goodno, Mechanics of Materials", Locator: "impact loading, a collar dropped on a bar", Status: measure.Memory}
	out := share(fastenPackage, book, 0,
		one{"greatest elongation of the bar", "1.79", "mm", jerk(bar, w, bar.Stiffness*measure.Millimetre)},
		one{"greatest stress in the bar", "188", "MPa", jerk(bar, w, area*measure.Megapascal)},
	)
	// 2 k s/W = 8: four times the weight. Without slack twice.
	rope := fasten.Tie{Strength: 1e5, Stiffness: 40000, Slack: 0.05}
	sudden := fasten.Tie{Strength: 1e5}
	return append(out, share(fastenPackage, exactly("Energy of a falling weight", "W(1 + √(1 + 2ks/W)), with 8 and 0 under the root"), 1e-12,
		one{"jerk of 500 N through 50 mm on 40 kN/m", "2000.00000000", "N", jerk(rope, 500, 1)},
		one{"jerk of 500 N put on at once", "1000.00000000", "N", jerk(sudden, 500, 1)},
	)...)
}
