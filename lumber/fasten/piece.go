package fasten

import (
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A Material is what a piece of a joint is made of. The zero value is wood.
type Material int

// The materials: wood; hot-rolled plate, A36, 1/4 in. and more; galvanized
// sheet, A653 Grade 33, below 1/4 in.; concrete of 2500 psi and more.
const (
	Wood Material = iota
	Plate
	Sheet
	Concrete
)

// String returns the material in words.
func (m Material) String() string {
	switch m {
	case Wood:
		return "wood"
	case Plate:
		return "steel plate"
	case Sheet:
		return "steel sheet"
	case Concrete:
		return "concrete"
	}
	return "no material"
}

// steel reports whether the material is steel.
func (m Material) steel() bool { return m == Plate || m == Sheet }

// A Piece is one member where a joint's fasteners pass through it.
type Piece struct {
	Material  Material
	Thickness float64 // along the fastener, m; of concrete: the embedment
	Width     float64 // across the grain on the face the fastener enters, m

	Grade    lumber.Grade // of wood; G is needed, E for groups, Fc⊥ under washers, Ft and Fv for tearing
	Angle    float64      // between load and grain, rad, 0 to π/2
	EndGrain bool         // the fastener goes into the end grain
	Hardwood bool         // shorter full end distance
	Smooth   bool         // not incised: the faces show no slits

	// End is the distance from the end of the piece to the nearest fastener, and
	// Edge that from the edge the fasteners press toward (the nearer edge where
	// they press along the grain), m. 0 is unknown.
	End, Edge float64
	Away      bool // the fasteners press away from the end, never toward it
}

func (p Piece) check(which string) error {
	switch p.Material {
	case Wood, Plate, Sheet, Concrete:
	default:
		return &measure.Error{Field: which + ": Material", Text: p.Material.String(), Class: measure.ErrName, Want: "Wood, Plate, Sheet or Concrete"}
	}
	thick := measure.Range{Kind: measure.Length, Hi: 2, OpenLo: true}
	switch p.Material {
	case Plate:
		thick.Lo, thick.OpenLo, thick.Source = 0.25*measure.Inch*(1-1e-9), false, srcBearing
	case Sheet:
		thick.Hi, thick.OpenHi, thick.Source = 0.25*measure.Inch, true, srcBearing
	}
	list := []ranged{
		{which + ": Thickness", p.Thickness, thick},
		{which + ": Width", p.Width, distances},
		{which + ": Angle", p.Angle, rightTurn},
		{which + ": End", p.End, distances},
		{which + ": Edge", p.Edge, distances},
	}
	if p.Material == Wood {
		if p.Grade.G == (lumber.Value{}) {
			return unknown(which+": Grade.G", "the specific gravity of the wood")
		}
		list = append(list, ranged{which + ": Grade.G", p.Grade.G.SI(), gravities})
	}
	return checkAll(list...)
}

// Dowel bearing strengths that do not depend on the fastener, psi.
const (
	plateFe    = 87000 // A36, 1.5 Fu
	sheetFe    = 61850 // A653 Grade 33, 1.375 Fu
	concreteFe = 7500
)

// Bearing returns the dowel bearing strength Fe, Pa, of the piece under a
// fastener of a nominal diameter, m:
//
//	D < 1/4 in   16600 G^1.84 psi in any direction
//	else         11200 G along the grain, 6100 G^1.45/√D across it
//
// each rounded to 50 psi, and between the two Fp Fq/(Fp sin² + Fq cos²) of the
// angle. Into end grain it is that across the grain. NDS 12.3.3 and 12.3.4. Within
// 2.6 units in the last place.
// Worst at (0.3695, 0.3185, 0.3969), ordered as in testdata/accuracy.csv.
func (p Piece) Bearing(diameter float64) (float64, error) {
	if err := p.check("Piece"); err != nil {
		return 0, err
	}
	if err := (measure.Range{Kind: measure.Length, Hi: 2 * measure.Inch, OpenLo: true}).Check("diameter", diameter); err != nil {
		return 0, err
	}
	return p.bearing(inches(diameter)) * measure.PSI, nil
}

// bearing is Bearing in psi and inches.
func (p Piece) bearing(d float64) float64 {
	switch p.Material {
	case Plate:
		return plateFe
	case Sheet:
		return sheetFe
	case Concrete:
		return concreteFe
	}
	g := p.Grade.G.SI()
	if d < 0.25-hair {
		return to50(16600 * math.Pow(g, 1.84))
	}
	along := to50(11200 * g)
	across := to50(6100 * math.Pow(g, 1.45) / math.Sqrt(d))
	switch {
	case p.EndGrain || p.across():
		return across
	case p.along():
		return along
	}
	sin, cos := math.Sincos(p.Angle)
	return along * across / (along*sin*sin + across*cos*cos)
}

func to50(psi float64) float64 { return 50 * math.Floor(psi/50+0.5) }

// along and across report whether the load runs along or across the grain, to
// a hair.
func (p Piece) along() bool  { return p.Angle < 1e-6 }
func (p Piece) across() bool { return p.Angle > math.Pi/2-1e-6 }

// theta is the angle that the reduction term Rd counts: π/2 for a fastener in
// end grain.
func (p Piece) theta() float64 {
	switch {
	case p.Material != Wood:
		return 0
	case p.EndGrain:
		return math.Pi / 2
	}
	return p.Angle
}
