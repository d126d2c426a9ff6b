package lumber

import (
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// spareFb and spareFc are the limits, psi, up to which a value times its size
// factor is spared the wet service factor.
const (
	spareFb = 1150
	spareFc = 750
)

// wet holds CM of Tables 4A and 4B, and of Table 4D for species other than
// Southern Pine, whose timbers are listed wet or dry.
var wet = [properties]struct{ dimension, timber float64 }{
	Fb:     {0.85, 1},
	Ft:     {1, 1},
	Fv:     {0.97, 1},
	FcPerp: {0.67, 0.67},
	Fc:     {0.8, 0.91},
	E:      {0.9, 1},
	Emin:   {0.9, 1},
}

// WetService returns the wet service factor CM of a property: moisture above
// 19 % for long, as on any dock. Dimension lumber is spared it where Fb CF is at
// most 1150 psi, or Fc CF at most 750 psi; a mixture of species never is.
// Southern Pine timbers are listed wet or dry. NDS Supplement, Tables 4A, 4B, 4D.
func WetService(p Property, g Grade, s Section, dry bool) (measure.Factor, error) {
	if err := p.check(); err != nil {
		return measure.Factor{}, err
	}
	if err := s.check(); err != nil {
		return measure.Factor{}, err
	}
	f := measure.Factor{Symbol: "CM", Name: "wet service", Value: 1, Source: srcCM}
	timber := classOf(s) == heavySize
	if timber {
		f.Source = srcCMTimb
	}
	switch {
	case dry:
		f.Why = "stays at 19 % moisture or less"
	case timber && g.Species == "Southern Pine" && strings.HasPrefix(g.Table, "4D"):
		f.Why = "Southern Pine timbers are listed wet or dry"
	case timber:
		f.Value, f.Why = wet[p].timber, "wet timber"
	default:
		f.Value, f.Why = wet[p].dimension, "wet"
		limit := map[Property]float64{Fb: spareFb, Fc: spareFc}[p]
		if limit == 0 || strings.Contains(g.Table, tableMixed) {
			return f, nil
		}
		cf, err := SizeFactor(p, g, s)
		if err != nil {
			return measure.Factor{}, err
		}
		// A printed value times a printed factor: 1e-9 keeps a tie a tie.
		if x := g.value(p).SI() / measure.PSI * cf.Value; x <= limit*(1+1e-9) {
			f.Value, f.Why = 1, "wet, but "+p.String()+" CF is "+number(x)+" psi, at most "+number(limit)
		}
	}
	return f, nil
}

// Temperature returns the temperature factor Ct for a sustained temperature in
// °C: 1 up to 100 °F (37.8 °C), whatever the cold. Above 150 °F (65.6 °C) the
// table ends. NDS Table 2.3.3.
func Temperature(p Property, celsius float64, dry bool) (measure.Factor, error) {
	if err := p.check(); err != nil {
		return measure.Factor{}, err
	}
	r := measure.Range{Kind: measure.Temperature, Lo: -60, Hi: measure.Fahrenheit(150), Source: srcCt}
	if err := r.Check("Temperature", celsius); err != nil {
		return measure.Factor{}, err
	}
	f := measure.Factor{Symbol: "Ct", Name: "temperature", Value: 1, Why: "at most 100 °F (38 °C)", Source: srcCt}
	hot := celsius > measure.Fahrenheit(125)
	if celsius <= measure.Fahrenheit(100) {
		return f, nil
	}
	f.Why = "at most 125 °F (52 °C)"
	if hot {
		f.Why = "at most 150 °F (66 °C)"
	}
	switch {
	case p == Ft || p == E || p == Emin:
		f.Value = 0.9
	case hot && dry:
		f.Value = 0.7
	case hot:
		f.Value = 0.5
	case dry:
		f.Value = 0.8
	default:
		f.Value = 0.7
	}
	return f, nil
}

// Incising returns the incising factor Ci; smooth says that the faces show no
// slits. NDS Table 4.3.8, for dimension lumber; taken for timbers as well, which
// is our choice.
func Incising(p Property, smooth bool) (measure.Factor, error) {
	if err := p.check(); err != nil {
		return measure.Factor{}, err
	}
	f := measure.Factor{Symbol: "Ci", Name: "incising", Value: 1, Why: "not incised", Source: srcCi}
	if smooth {
		return f, nil
	}
	f.Why = "incised"
	switch p {
	case E, Emin:
		f.Value = 0.95
	case FcPerp:
	default:
		f.Value = 0.8
	}
	return f, nil
}

// RepetitiveMember returns the repetitive member factor Cr for Fb: 1.15 for
// dimension lumber where three or more act together, at most 24 in. apart and
// joined by boards, or nailed up as plies; two plies get 1. NDS 4.3.9.
func RepetitiveMember(s Section, repetitive bool, plies int) (measure.Factor, error) {
	if err := s.check(); err != nil {
		return measure.Factor{}, err
	}
	if err := pliesRange.Check("Plies", float64(plies)); err != nil {
		return measure.Factor{}, err
	}
	f := measure.Factor{Symbol: "Cr", Name: "repetitive member", Value: 1, Source: srcCr}
	switch {
	case classOf(s) != dimension:
		f.Why = "for lumber 2 to 4 in. thick alone"
	case repetitive:
		f.Value, f.Why = 1.15, "three or more, at most 24 in. apart, joined"
	case plies >= 3:
		f.Value, f.Why = 1.15, "three or more plies"
	case plies == 2:
		f.Why = "two plies are too few"
	default:
		f.Why = "a single member"
	}
	return f, nil
}

var pliesRange = measure.Range{Lo: 0, Hi: 6}

// BearingArea returns the bearing area factor Cb for Fc⊥ on a bearing of a
// length in metres along the grain: (lb + 3/8 in.)/lb below 6 in., where the
// bearing begins 3 in. or more from the member's end (inner); else 1.
// NDS 3.10.4.
func BearingArea(length float64, inner bool) (measure.Factor, error) {
	if err := lengths.Check("Bearing", length); err != nil {
		return measure.Factor{}, err
	}
	f := measure.Factor{Symbol: "Cb", Name: "bearing area", Value: 1, Why: "within 3 in. of the end", Source: srcCb}
	if !inner {
		return f, nil
	}
	const extra = 0.375 * measure.Inch
	lb := math.Max(length, 0.5*measure.Inch) // the table begins at a half inch
	f.Why = "6 in. or longer"
	if lb < 6*measure.Inch-1e-9 {
		f.Value, f.Why = (lb+extra)/lb, "shorter than 6 in., 3 in. or more from the end"
	}
	return f, nil
}
