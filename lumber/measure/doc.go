// Package measure is the leaf that every other package shares: a builder's
// units and their parsing and printing, sources, ranges of validity, errors,
// and [Check], the one shape in which a verdict is given.
//
// # Units
//
// Every exported number of the library is SI (m, kg, N, Pa, rad, s, degrees
// Celsius). The constants of this package turn a builder's figures into SI and
// back, exactly by definition:
//
//	draft := 7.25 * measure.Inch  // m
//	load := 50 * measure.PSF      // Pa
//	inches := draft / measure.Inch
//
// A pound is a mass, a pound-force a force; a "ton" is the short ton of 2000 lb
// that the guides for ice mean. [Kind] reads and prints text with units in
// both systems and refuses a number that has none.
//
// # Model
//
// A [Check] compares a value with a limit in the direction that is good, names
// the rule and its [Source], lists every factor, and says what it rests on. Its
// zero value, a missing rule, a number that is not finite, and an unknown that
// decides all give [NoAnswer]. Nothing ever turns a refusal into a permission
// but a better input.
//
// # Assumptions and limits
//
// Measure does not convert between mass and force behind the caller's back:
// multiply by [Gravity]. Numbers are plain float64: the compiler does not know a metre
// from a newton, so each comment names its unit.
//
// # Sources
//
// Inch, pound, gallon and degree are exact by the definitions of 1959 and of their
// scales, standard gravity by the 3rd CGPM, 1901. A [Range] and a [Factor] carry the
// source of whoever set them.
//
// # Example
//
//	length, err := measure.Length.Parse("12 ft 6 in")
//	if err != nil {
//		return err
//	}
//	fmt.Println(measure.Length.Format(length, measure.SI))
package measure
