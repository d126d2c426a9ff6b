package lumber

import "example.org/floewright/lumber/measure"

// A Value is one printed number of a table of design values: its digits, the
// printed unit in SI, and where it stands. The zero Value is no value.
type Value struct {
	Printed float64         // as printed, in the printed unit: psi, percent, a ratio
	Unit    float64         // SI unit per printed unit: measure.PSI for stresses, 1 for specific gravity
	Source  *measure.Source // table and row
}

// SI returns the value in SI: pascals for a stress. It is 0 where there is none.
func (v Value) SI() float64 { return v.Printed * v.Unit }

// none reports whether the value is missing or not a positive number.
func (v Value) none() bool { return !(v.SI() > 0) || v.SI() > 1e15 }

// A Grade holds the reference design values of one species group and grade, as
// printed. [Lookup] fills it from the tables of the NDS Supplement; a user adds a
// graded value by writing one. A value that is missing gives no answer where it
// is needed, never a zero that passes.
type Grade struct {
	Species, Name string

	Fb     Value // bending
	Ft     Value // tension along the grain
	Fv     Value // shear along the grain
	FcPerp Value // compression across the grain
	Fc     Value // compression along the grain
	E      Value // modulus of elasticity, for deflection
	Emin   Value // modulus of elasticity, for buckling
	G      Value // specific gravity, oven-dry; unit 1

	// Light and Heavy replace G for weights on the light and the heavy side,
	// where sources differ or the species is not known.
	Light, Heavy Value

	// Table is where the values come from and so which factors belong to them:
	// "4A", "4B", "4D Beams & Stringers", "4D Posts & Timbers" or
	// "4D 5x5 and larger". Empty, for values of one's own, takes the size factor
	// only where it is below 1.
	Table string

	// Widest is the greatest dressed width, m, that the values hold for; 0 is
	// any.
	Widest float64
}

// psi returns a printed stress.
func psi(printed float64, src *measure.Source) Value {
	return Value{Printed: printed, Unit: measure.PSI, Source: src}
}

// strength returns the reference value of a property.
func (g Grade) value(p Property) Value {
	switch p {
	case Fb:
		return g.Fb
	case Ft:
		return g.Ft
	case Fv:
		return g.Fv
	case FcPerp:
		return g.FcPerp
	case Fc:
		return g.Fc
	case E:
		return g.E
	case Emin:
		return g.Emin
	}
	return Value{}
}

// A Property is one of the reference design values a factor applies to.
type Property int

// The properties, by the symbols of the NDS.
const (
	Fb Property = iota
	Ft
	Fv
	FcPerp
	Fc
	E
	Emin
	properties
)

var propertyNames = [properties]string{"Fb", "Ft", "Fv", "Fc⊥", "Fc", "E", "Emin"}

// String returns the symbol, such as "Fb".
func (p Property) String() string {
	if p < 0 || p >= properties {
		return "no property"
	}
	return propertyNames[p]
}

func (p Property) check() error {
	if p < 0 || p >= properties {
		return &measure.Error{
			Field: "property", Text: "out of the list", Class: measure.ErrName,
			Want: "Fb, Ft, Fv, FcPerp, Fc, E or Emin",
		}
	}
	return nil
}
