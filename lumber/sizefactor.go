package lumber

import (
	"math"
	"strconv"
	"strings"

	"example.org/floewright/lumber/measure"
)

// notFor begins the reason of a factor that does not concern a property; such a
// factor is left out of the lists.
const notFor = "does not apply to "

// number prints a number shortly, for reasons.
func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// sizeRow is a line of Table 4A's size factors: for bending of lumber 2 or 3 in.
// thick and 4 in. thick, for tension, for compression.
type sizeRow struct{ fb, fb4, ft, fc float64 }

// sizeRows is by nominal width, in inches, for the grades Select Structural to
// No.3.
var sizeRows = map[float64]sizeRow{
	2:  {1.5, 1.5, 1.5, 1.15},
	3:  {1.5, 1.5, 1.5, 1.15},
	4:  {1.5, 1.5, 1.5, 1.15},
	5:  {1.4, 1.4, 1.4, 1.1},
	6:  {1.3, 1.3, 1.3, 1.1},
	8:  {1.2, 1.3, 1.2, 1.05},
	10: {1.1, 1.2, 1.1, 1.0},
	12: {1.0, 1.1, 1.0, 1.0},
	14: {0.9, 1.0, 0.9, 0.9},
}

// SizeFactor returns the size factor CF of a property. It is read by nominal
// width; a width between two takes the wider. Southern Pine's values by width
// contain it, but for 4 in. thick lumber and widths above 12 in.; timbers follow
// (12 in./d)^(1/9) beyond 12 in. of depth. Values of one's own and mixtures get
// no factor above 1. NDS Supplement Tables 4A and 4B, NDS 4.3.6.
func SizeFactor(p Property, g Grade, s Section) (measure.Factor, error) {
	if err := p.check(); err != nil {
		return measure.Factor{}, err
	}
	if err := s.check(); err != nil {
		return measure.Factor{}, err
	}
	f := measure.Factor{Symbol: "CF", Name: "size", Value: 1, Source: srcCF}
	if p != Fb && p != Ft && p != Fc {
		f.Why = "does not apply to " + p.String()
		return f, nil
	}
	n := nominalAbove(s.wide())
	f.Why = number(n) + " in. wide"
	if n == 14 {
		f.Why = "wider than 12 in."
	}
	switch {
	case classOf(s) == heavySize:
		f.Source, f.Why = srcCFTimb, "timber, at most 12 in. deep"
		if s.Depth > 12*measure.Inch && p == Fb {
			f.Value, f.Why = math.Pow(12*measure.Inch/s.Depth, 1.0/9), "timber, deeper than 12 in."
		}
	case g.Table == "4B":
		f.Source, f.Why = srcCFPine, "contained in the values by width"
		if n == 14 {
			f.Value, f.Why = 0.9, "wider than 12 in."
		}
		if p == Fb && fourThick(s) && n >= 8 && ordinary(g.Name) {
			f.Value *= 1.1
			f.Why += "; 4 in. thick, 8 in. or wider"
		}
	case strings.HasPrefix(g.Table, "4A"):
		f.Value, f.Why = size4A(p, g.Name, s, n), f.Why+", "+g.Name
	default:
		f.Value = min(1, size4A(p, g.Name, s, n), size4A(p, "", s, n))
		f.Why += "; no factor above 1 for values of one's own or a mixture"
	}
	return f, nil
}

// size4A is the factor of Table 4A by grade.
func size4A(p Property, grade string, s Section, n float64) float64 {
	r := sizeRows[n]
	switch gradeName(grade) {
	case "stud":
		switch {
		case n >= 5:
			return 1
		case p == Fc:
			return 1.05
		}
		return 1.1
	case "construction", "standard":
		return 1
	case "utility":
		switch {
		case n >= 4:
			return 1
		case p == Fc:
			return 0.6
		}
		return 0.4
	}
	switch {
	case p == Fc:
		return r.fc
	case p == Ft:
		return r.ft
	case fourThick(s):
		return r.fb4
	}
	return r.fb
}

// ordinary reports whether a grade is one of Select Structural to No.3.
func ordinary(grade string) bool {
	switch gradeName(grade) {
	case "construction", "standard", "utility", "stud":
		return false
	}
	return true
}

// FlatUse returns the flat use factor Cfu of a section as it stands, for Fb
// under load on the wide face; it is 1 on edge and for a square. It is read by
// nominal width; a width between two takes the narrower. Beams and stringers on
// their wide face lose strength, and No.1 stiffness too. NDS Supplement Tables
// 4A, 4B and 4D.
func FlatUse(p Property, g Grade, s Section) (measure.Factor, error) {
	if err := p.check(); err != nil {
		return measure.Factor{}, err
	}
	if err := s.check(); err != nil {
		return measure.Factor{}, err
	}
	f := measure.Factor{Symbol: "Cfu", Name: "flat use", Value: 1, Why: "loaded on the narrow face", Source: srcCfu}
	stringer := classOf(s) == heavySize && strings.HasSuffix(g.Table, "Beams & Stringers")
	if p != Fb && !(stringer && (p == E || p == Emin)) {
		f.Why = notFor + p.String()
		return f, nil
	}
	if !(s.Width > s.Depth) {
		return f, nil
	}
	if classOf(s) == heavySize {
		f.Source, f.Why = srcCfuTimb, "timber"
		if !stringer {
			return f, nil
		}
		f.Why = "beams and stringers on the wide face, " + g.Name
		switch name := gradeName(g.Name); {
		case p == Fb && name == "selectstructural":
			f.Value = 0.86
		case p == Fb && name == "no1":
			f.Value = 0.74
		case (p == E || p == Emin) && name == "no1":
			f.Value = 0.9
		}
		return f, nil
	}
	if p != Fb {
		f.Why = "does not apply to " + p.String()
		return f, nil
	}
	n := nominalBelow(s.wide())
	f.Why = "loaded on the wide face, " + number(n) + " in. wide"
	thick := s.thin() > widestOf(thicknesses[5]) // past 3 in. nominal counts as 4
	switch {
	case n >= 10:
		f.Value = 1.2
	case n >= 6:
		f.Value = 1.15
	case n >= 4:
		f.Value = 1.1
	}
	if thick && f.Value > 1 {
		f.Value = map[float64]float64{4: 1, 5: 1.05, 6: 1.05, 8: 1.05}[n]
		if n >= 10 {
			f.Value = 1.1
		}
	}
	return f, nil
}
