package fasten

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Mode is one yield mode: Im and Is crush the main or the side member, II turns
// the fastener as a stiff whole, IIIm and IIIs bend it once, IV twice.
type Mode struct {
	Name string
	Load float64 // before the reduction term, N
	Rd   float64 // reduction term, a ratio
	Z    float64 // Load/Rd, N
}

// A Yield is the reference lateral design value of one fastener and where it
// comes from.
type Yield struct {
	Z         float64 // N, one fastener, before adjustment: the lower of the two rules
	Equations float64 // N, the least mode at the true penetration
	Table     float64 // N, the least mode at the tables' penetration times the share that is there
	Governing string  // "IIIs"
	Modes     []Mode  // at the true penetration; double shear has no II and IIIm

	Diameter    float64 // in the equations, m
	Body        string  // why it is that diameter
	Main, Side  float64 // dowel bearing strengths, Pa
	Bending     float64 // bending yield strength, Pa
	InMain      float64 // bearing length in the main piece, m
	InSide      float64 // bearing length in the side piece, m
	Penetration float64 // as the rules count it, m; 0 for bolts
	Share       float64 // a share of the tables' penetration (8D lag screws, 10D others), at most 1
	Rule        *measure.Source
	Notes       []string
}

// String returns the value with all modes, each in lbf.
func (y Yield) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Z %s, mode %s (", measure.Force.Format(y.Z, measure.US), y.Governing)
	for i, m := range y.Modes {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(m.Name + " " + measure.Force.Format(m.Z, measure.US))
	}
	b.WriteString(")")
	if y.Share < 1 {
		b.WriteString(fmt.Sprintf("; %.0f %% of the tables' penetration: equations %s, table %s",
			100*y.Share, measure.Force.Format(y.Equations, measure.US), measure.Force.Format(y.Table, measure.US)))
	}
	return b.String()
}

// Yield returns the reference lateral design value of one fastener by the yield
// limit equations, every mode with it. A driven fastener that goes less deep than
// the tables ask for gets both rules, and the lower: the equations at the true
// penetration, and the tables' reduction by the share. In double shear Z is for
// both planes and the lesser side bearing counts twice. Too little penetration,
// and pieces no rule covers, are errors. NDS 12.3. The modes are within 4.4 units in
// the last place, worst mode II.
// Worst at (0.2818, 1.368, 0.06882, 7.31e+04, 1279, 3.559e+04), ordered as in testdata/accuracy.csv.
// Worst at (0.2057, 0.7628, 0.05829, 2321, 9653, 4.043e+04, 2.727e-05), ordered as in testdata/accuracy.csv.
func (j Joint) Yield() (Yield, error) {
	g, err := j.sit()
	if err != nil {
		return Yield{}, err
	}
	kt := 1 + 0.25*max(j.Main.theta(), j.Side.theta())/(math.Pi/2)
	sh := shank{
		d: g.d, lm: g.lm, ls: g.ls, fem: j.Main.bearing(g.s.d), fes: j.Side.bearing(g.s.d),
		fyb: g.s.fyb, gap: inches(j.Gap), double: j.Double,
	}
	rd := reductions(g.d, g.s.d, kt)
	y := Yield{
		Diameter: g.d * measure.Inch, Body: g.bodySource, Main: sh.fem * measure.PSI, Side: sh.fes * measure.PSI,
		Bending: g.s.fyb * measure.PSI, InMain: g.lm * measure.Inch, InSide: g.ls * measure.Inch,
		Penetration: g.depth * measure.Inch, Share: 1, Rule: srcYield,
	}
	loads := sh.loads()
	z := divided(loads, rd)
	for i := range z {
		if !math.IsNaN(z[i]) {
			y.Modes = append(y.Modes, Mode{modeNames[i], loads[i] * measure.PoundForce, rd[i], z[i] * measure.PoundForce})
		}
	}
	best := least(z)
	y.Governing, y.Equations = modeNames[best], z[best]*measure.PoundForce
	y.Table = y.Equations
	if g.full > 0 {
		y.Share = math.Min(1, g.depth/g.full)
		full := sh
		full.lm, full.ls = j.tabled(g)
		z := divided(full.loads(), rd)
		y.Table = z[least(z)] * measure.PoundForce * y.Share
	}
	y.Z = min(y.Equations, y.Table)
	if y.Share < 1 {
		y.Notes = append(y.Notes, "less deep than the tables ask for: the lower of equations and table ("+srcReduced.String()+")")
	}
	if j.Gap > 0 {
		y.Rule = srcGap
		y.Notes = append(y.Notes, "faces "+measure.FeetInches(j.Gap, 32)+" apart: outside the standard, which asks for contact; no tabulated value exists")
	}
	if s := j.Fastener.Source; s != nil && s.Status == measure.Memory {
		y.Notes = append(y.Notes, "sizes of the fastener from memory: measure it")
	}
	return y, nil
}

// tabled returns the bearing lengths at the penetration of the tables: 8D without
// its point for a lag screw, 10D with it for nails and wood screws.
func (j Joint) tabled(g grip) (lm, ls float64) {
	far := g.full - g.s.tip/2
	if g.s.kind == LagScrew {
		far = g.full + g.s.tip/2
	}
	if j.Double {
		return g.lm, math.Min(inches(j.Side.Thickness), far)
	}
	return far, g.ls
}

func divided(loads, rd [modes]float64) [modes]float64 {
	for i := range loads {
		loads[i] /= rd[i]
	}
	return loads
}
