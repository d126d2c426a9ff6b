package published

import (
	"fmt"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// fastenMore has how far joints slip and the jerk in a tie that comes taut.
func fastenMore() ([]Check, error) {
	return append(append(fastenSlips(), fastenJerks()...), fastenLimits()...), nil
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

// fastenLimits checks what joints, pins and ties are held against, by the name of the check.
func fastenLimits() []Check {
	pick := func(name string, of func(measure.Check) float64, all func() ([]measure.Check, error)) func() (float64, error) {
		return func() (float64, error) {
			checks, err := all()
			if err != nil {
				return 0, err
			}
			for _, c := range checks {
				if c.Name == name {
					return of(c), c.Err
				}
			}
			return 0, fmt.Errorf("no check is named %q", name)
		}
	}
	limit := func(unit float64) func(measure.Check) float64 {
		return func(c measure.Check) float64 { return c.Limit / unit }
	}
	value := func(unit float64) func(measure.Check) float64 {
		return func(c measure.Check) float64 { return c.Value / unit }
	}
	joint := bolted(0.5, 1.5, 1.5)
	joint.Service = dryJoint
	for _, p := range []*fasten.Piece{&joint.Main, &joint.Side} {
		p.Width, p.End, p.Edge = 5.5*measure.Inch, 0.1, 0.05
	}
	rows := joint
	rows.PerRow, rows.Rows, rows.Spacing, rows.Between = 2, 2, 0.06, 0.05
	whole := func(j fasten.Joint) func() ([]measure.Check, error) {
		return func() ([]measure.Check, error) { return j.Check(fasten.Demand{Lateral: 100}, lumber.TenYears) }
	}
	out := share(fastenPackage, connectionTable("12A", "bolts in single shear, 1-1/2 in and 1-1/2 in, G = 0.50", measure.Quoted), 0,
		one{"lateral value of a 1/2 in bolt, in ten pounds", "48", "10 lbf", pick("lateral", limit(10*lbf), whole(joint))},
	)
	out = append(out, share(fastenPackage, connectionTable("12.5.1", "least distances in diameters: 3.5, 1.5, 3 and 1.5; spread of 5 in", measure.Quoted), 1e-9,
		one{"end distance of a 1/2 in bolt", "1.75", "in", pick("end distance, main", limit(measure.Inch), whole(rows))},
		one{"edge distance of a 1/2 in bolt", "0.75", "in", pick("edge distance, main", limit(measure.Inch), whole(rows))},
		one{"spacing in the row of 1/2 in bolts", "1.5", "in", pick("spacing in the row", limit(measure.Inch), rows.Geometry)},
		one{"spacing of rows of 1/2 in bolts", "0.75", "in", pick("spacing of rows", limit(measure.Inch), rows.Geometry)},
		one{"spread across the grain", "5", "in", pick("spread across the grain, main", limit(measure.Inch), rows.Geometry)},
	)...)
	// A pin of A36 steel between plates of the same.
	pin := fasten.Pin{Diameter: 0.02, Lug: 0.01, Leaf: 0.008, Yield: 36 * measure.KSI, Plates: 36 * measure.KSI}
	pins := func() ([]measure.Check, error) { return pin.Check(1000) }
	steel := measure.Source{Title: "AISC, Specification for Structural Steel Buildings, allowable stress design", Edition: "1989", Locator: "0.40 Fy in shear, 0.75 Fy in bending of solid rounds, 0.90 Fy in bearing on pins", Status: measure.Memory}
	out = append(out, share(fastenPackage, steel, 0,
		one{"shear allowed in a pin of 36 ksi", "14.4", "ksi", pick("pin in double shear", limit(measure.KSI), pins)},
		one{"bending allowed in a pin of 36 ksi", "27.0", "ksi", pick("pin in bending", limit(measure.KSI), pins)},
		one{"bearing allowed on a pin of 36 ksi", "32.4", "ksi", pick("pin bearing on its plates", limit(measure.KSI), pins)},
	)...)
	// Printed for wind, 1.6, and asked for ten years, 1.0; in wood as heavy as printed for, dry.
	hanger := fasten.Connector{
		Name: "hanger", Printed: fasten.Forces{Down: 500 * lbf, Up: 400 * lbf}, For: fasten.Forces{Down: 1, Up: 1.6}, Basis: 0.5,
		Nail: listed("10d common", 0), HeaderNails: 10, JoistNails: 6, Steel: 0.06 * measure.Inch,
	}
	hangers := func() ([]measure.Check, error) {
		return hanger.Check(fasten.Forces{Down: 100 * lbf, Up: 100 * lbf}, wood(0.5), dryJoint, lumber.TenYears)
	}
	out = append(out, share(fastenPackage, exactly("Printed value by its duration factor", "500 × 1.0/1.0, 400 × 1.0/1.6"), 1e-12,
		one{"hanger pushed down", "500", "lbf", pick("hanger, down", limit(lbf), hangers)},
		one{"hanger lifted", "250", "lbf", pick("hanger, uplift", limit(lbf), hangers)},
	)...)
	// Put on at once a drum of 20 kg hangs with twice its weight, and 30 N of drag; held down it
	// pushes with 1500 N less its weight.
	tie := fasten.Tie{Strength: 12000, Efficiency: 0.8, Rounded: true, Point: 5000}
	ties := func() ([]measure.Check, error) {
		return tie.Check(fasten.Drum{Mass: 20, Watched: true, Push: 1500, Drag: 30})
	}
	return append(out, share(fastenPackage, exactly("Drum on its tie", "2 m g + drag; 0.8 × 12 kN over a design factor of 12"), 1e-12,
		one{"force of a drum of 20 kg hanging on its tie", "422.266", "N", pick("drum hanging on its tie", value(1), ties)},
		one{"what its tie is allowed", "800", "N", pick("drum hanging on its tie", limit(1), ties)},
	)...)
}
