package published

import (
	"fmt"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// frameInfluence compares influence lines of a simple span with statics worked by hand, and
// with the deflection of the beam tables (Maxwell: the place and the load may be exchanged).
func frameInfluence() ([]Check, error) {
	const span, ei, at = 6.0, 1e5, 1.5
	beam := &frame.Beam{Length: span, EI: ei, Rests: []frame.Rest{{At: 0}, {At: span}}}
	statics := measure.Source{Title: "Simple beam under a moving force of 1 N, by its two equations of balance", Status: measure.Independent}
	tables := measure.Source{Title: "Simple beam under a force: deflection P b x (L² - b² - x²)/(6 E I L)", Status: measure.Memory}
	of := func(line func(float64) (*frame.Influence, error), x float64, read func(*frame.Influence) float64) func() (float64, error) {
		return func() (float64, error) {
			l, err := line(x)
			if err != nil {
				return 0, err
			}
			return read(l), nil
		}
	}
	atX := func(x float64) func(*frame.Influence) float64 {
		return func(l *frame.Influence) float64 { return l.At(x) }
	}
	push := func(float64) (*frame.Influence, error) { return beam.PushInfluence(0) }
	area := func(from, to float64, plus bool) func(*frame.Influence) float64 {
		return func(l *frame.Influence) float64 {
			p, m := l.Area(from, to)
			if plus {
				return p
			}
			return m
		}
	}
	most := func(l *frame.Influence) float64 { _, effect := l.Most(); return effect }
	place := func(l *frame.Influence) float64 { x, _ := l.Most(); return x }
	var out []Check
	for _, c := range []struct {
		quantity string
		value    float64
		unit     string
		source   measure.Source
		compute  func() (float64, error)
	}{
		{"moment at 1.5 m of 6 m, load there", at * (span - at) / span, "N m", statics, of(beam.MomentInfluence, at, most)},
		{"place of the load for that moment", at, "m", statics, of(beam.MomentInfluence, at, place)},
		{"moment at 1.5 m of 6 m, load at 4 m", at * 2 / span, "N m", statics, of(beam.MomentInfluence, at, atX(4))},
		{"moment at 1.5 m of 6 m, 1 N/m all along", at * (span - at) / 2, "N m", statics, of(beam.MomentInfluence, at, area(0, span, true))},
		{"push at the near end, load at 4 m", 2 / span, "N", statics, of(push, 0, atX(4))},
		{"shear at 1.5 m of 6 m, load right of it", (span - at) / span, "N", statics, of(beam.ShearInfluence, at, atX(at))},
		{"shear at 1.5 m of 6 m, load left of it", -at / span, "N", statics, of(beam.ShearInfluence, at, func(l *frame.Influence) float64 { return l.Before(at) })},
		{"shear at 1.5 m of 6 m, 1 N/m to its left", -at * at / span / 2, "N", statics, of(beam.ShearInfluence, at, area(0, span, false))},
		{"deflection at 1.5 m of 6 m, load at 4 m", -2 * at * (span*span - 4 - at*at) / (6 * ei * span), "m", tables, of(beam.DeflectionInfluence, at, atX(4))},
		{"deflection at mid span, load there", -span * span * span / (48 * ei), "m", tables, of(beam.DeflectionInfluence, span/2, atX(span/2))},
	} {
		out = append(out, Check{
			Package: "frame", Source: c.source, Quantity: c.quantity,
			Printed: fmt.Sprintf("%.12g", c.value), Unit: c.unit, Relative: 1e-9, Compute: c.compute,
		})
	}
	return out, nil
}
