package lumber

import (
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A lateral is a line of the table of effective lengths: le = A lu + B d below
// lu/d = 7 and above.
type lateral struct {
	name         string
	low          float64 // below 7: low lu
	high, depths float64 // from 7 on: high lu + depths d
}

var laterals = []lateral{
	{"uniform", 2.06, 1.63, 3},
	{"point at mid span", 1.80, 1.37, 3},
	{"point at mid span, held there", 1.11, 1.11, 0},
	{"points at thirds, held there", 1.68, 1.68, 0},
	{"points at quarters, held there", 1.54, 1.54, 0},
	{"points at fifths, held there", 1.68, 1.68, 0},
	{"points at sixths, held there", 1.73, 1.73, 0},
	{"points at sevenths, held there", 1.78, 1.78, 0},
	{"many points, held there", 1.84, 1.84, 0},
	{"equal end moments", 1.84, 1.84, 0},
	{"cantilever, uniform", 1.33, 0.90, 3},
	{"cantilever, point at the tip", 1.87, 1.44, 3},
}

// EffectiveLength returns the effective length le, m, of a bending member whose
// compression edge is held sideways every unbraced metres, for a loading by name:
// "uniform", "point at mid span", "equal end moments", "cantilever, uniform",
// "cantilever, point at the tip", "many points, held there" and so on; an unknown
// name is an error that lists them. The empty name takes the line for any other
// loading:
//
//	le = 2.06 lu (lu/d < 7), 1.63 lu + 3d (to 14.3), 1.84 lu (beyond)
//
// For a cantilever's tip load one reprint has 1.83 for 1.87. NDS Table 3.3.3.
func EffectiveLength(loading string, unbraced, depth float64) (float64, error) {
	if err := lengths.Check("Unbraced", unbraced); err != nil {
		return 0, err
	}
	if err := (Section{Width: depth, Depth: depth}).check(); err != nil {
		return 0, err
	}
	slender := unbraced / depth
	if loading == "" {
		switch {
		case slender < 7:
			return 2.06 * unbraced, nil
		case slender <= 14.3:
			return 1.63*unbraced + 3*depth, nil
		}
		return 1.84 * unbraced, nil
	}
	i := slices.IndexFunc(laterals, func(l lateral) bool { return squeeze(l.name) == squeeze(loading) })
	if i < 0 {
		var names []string
		for _, l := range laterals {
			names = append(names, l.name)
		}
		return 0, &measure.Error{
			Field: "Loading", Text: loading, Class: measure.ErrName,
			Want: strings.Join(names, "; ") + "; or none, for any other",
		}
	}
	l := laterals[i]
	if slender < 7 {
		return l.low * unbraced, nil
	}
	return l.high*unbraced + l.depths*depth, nil
}

// stability is the form CL and CP share: a is the buckling stress over the
// reference stress, c the curve's constant.
func stability(a, c float64) float64 {
	// h - √(h² - a/c) with h = (1+a)/2c, written without a difference of near
	// equals, as (1+a)² - 4ac = (1-a)² + 4a(1-c), and without overflow where a is
	// large.
	if a > 1 {
		b := 1 / a
		return 2 / (1 + b + math.Sqrt(float64((1-b)*(1-b))+float64(4*b*(1-c))))
	}
	return 2 * a / (1 + a + math.Sqrt(float64((1-a)*(1-a))+float64(4*a*(1-c))))
}

var (
	slenderBeam   = measure.Range{Hi: 50, OpenLo: true, Source: srcCL}
	slenderColumn = measure.Range{Hi: 50, OpenLo: true, Source: srcCP}
	stresses      = measure.Range{Kind: measure.Stress, Hi: 1e12, OpenLo: true}
)

// BeamStability returns the beam stability factor CL from Fb* (Fb' without CL
// and Cfu) and Emin', Pa, and the effective length, depth and width, m:
//
//	RB = √(le d/b²) ≤ 50,  FbE = 1.20 Emin'/RB²,  a = FbE/Fb*
//	CL = (1+a)/1.9 - √[((1+a)/1.9)² - a/0.95]
//
// It is 1 where the depth is at most the width. NDS 3.3.3. Within 4.8 units in the
// last place.
// Worst at (1.769e+07, 5.929e+08, 11.62, 0.2128, 0.08452), ordered as in testdata/accuracy.csv.
func BeamStability(fbStar, emin, le, depth, width float64) (measure.Factor, error) {
	var f measure.Factor
	if err := (Section{Width: width, Depth: depth}).check(); err != nil {
		return f, err
	}
	if err := stresses.Check("Fb*", fbStar); err != nil {
		return f, err
	}
	fbe, rb, err := beamBuckling(emin, le, depth, width)
	f = measure.Factor{Symbol: "CL", Name: "beam stability", Value: 1, Source: srcCL}
	switch {
	case depth <= width && !math.IsNaN(rb):
		f.Why = "not deeper than wide"
		return f, nil
	case err != nil:
		return measure.Factor{}, err
	}
	f.Value = stability(fbe/fbStar, 0.95)
	f.Why = "RB " + number(math.Round(rb*100)/100)
	return f, nil
}

// beamBuckling returns FbE and RB. RB is NaN where the data is malformed.
func beamBuckling(emin, le, depth, width float64) (fbe, rb float64, err error) {
	if err := stresses.Check("Emin'", emin); err != nil {
		return 0, math.NaN(), err
	}
	long := lengths
	long.Hi *= 3 // effective lengths exceed the member's
	if err := long.Check("effective length", le); err != nil {
		return 0, math.NaN(), err
	}
	rb = math.Sqrt(le*depth) / width
	if err := slenderBeam.Check("slenderness RB", rb); err != nil {
		return 0, rb, err
	}
	return 1.20 * emin / (rb * rb), rb, nil
}

// ColumnStability returns the column stability factor CP of sawn lumber from Fc*
// (Fc' without CP) and Emin', Pa, and the slenderness le/d:
//
//	FcE = 0.822 Emin'/(le/d)²,  a = FcE/Fc*,  le/d ≤ 50
//	CP = (1+a)/1.6 - √[((1+a)/1.6)² - a/0.8]
//
// NDS 3.7.1. The effective length le is the buckling length: 1.0 times the
// length between pinned ends, 2.0 for a free-standing post. Within 3.6 units in the
// last place.
// Worst at (1.11e+06, 1.172e+08, 18.09), ordered as in testdata/accuracy.csv.
func ColumnStability(fcStar, emin, slenderness float64) (measure.Factor, error) {
	f := measure.Factor{Symbol: "CP", Name: "column stability", Source: srcCP}
	if err := stresses.Check("Fc*", fcStar); err != nil {
		return f, err
	}
	if err := stresses.Check("Emin'", emin); err != nil {
		return f, err
	}
	if err := slenderColumn.Check("slenderness le/d", slenderness); err != nil {
		return f, err
	}
	f.Value = stability(eulerStress(emin, slenderness)/fcStar, 0.8)
	f.Why = "le/d " + number(math.Round(slenderness*100)/100)
	return f, nil
}

// eulerStress is FcE of NDS 3.7.1.
func eulerStress(emin, slenderness float64) float64 {
	return 0.822 * emin / (slenderness * slenderness)
}
