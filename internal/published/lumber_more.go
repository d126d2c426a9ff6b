package published

import (
	"fmt"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// lumberMore has pieces by weight, the shrinkage of species, field treatment, and what a plan of
// cutting leaves open.
func lumberMore() ([]Check, error) {
	var out []Check
	for _, set := range [][]Check{lumberWeights(), lumberTrees(), lumberTreated(), lumberGaps()} {
		out = append(out, set...)
	}
	return out, nil
}

// lumberWeights checks two plies of 2x8, 12 ft, of an invented wood.
func lumberWeights() []Check {
	g := func(x float64) lumber.Value { return lumber.Value{Printed: x, Unit: 1} }
	m := lumber.Member{
		Section: lumber.Section{Width: 1.5 * measure.Inch, Depth: 7.25 * measure.Inch}, Plies: 2, Length: 12 * measure.Foot,
		Grade: lumber.Grade{G: g(0.42), Light: g(0.40), Heavy: g(0.46)},
	}
	weight := func(weighed float64, of func(lumber.Weights) float64) func() (float64, error) {
		return func() (float64, error) {
			w, err := m.Weights()
			if err == nil && weighed > 0 {
				w, err = w.Weighed(weighed)
			}
			return of(w), err
		}
	}
	light := func(w lumber.Weights) float64 { return w.Light }
	bought := func(w lumber.Weights) float64 { return w.Bought }
	damp := func(w lumber.Weights) float64 { return w.Damp }
	soaked := func(w lumber.Weights) float64 { return w.Soaked }
	src := independent("NDS Supplement 3.1.3 and Wood Handbook, chapter 4, 50 digits", "62.4 lb/ft³ G/(1 + 0.009 G m)(1 + m/100), 19 % and 60 %; pores full at (1.54 - Gb)/(1.54 Gb); two plies 1.5 by 7.25 in by 12 ft")
	out := share(lumberPackage, src, 1e-11,
		one{"dry, G 0.40", "22.856062705328", "kg", weight(0, light)},
		one{"as bought, G 0.42", "23.922289436744", "kg", weight(0, bought)},
		one{"damp in service, G 0.46", "33.586332170959", "kg", weight(0, damp)},
		one{"pores full, G 0.46", "58.661938026025", "kg", weight(0, soaked)},
	)
	// A weight on the scale is the piece's own; the bounds give way to it and never cross it.
	bounds := exactly("Bounds widened by a weight", "the least of the bound and the weight, the greatest of both")
	return append(out, share(lumberPackage, bounds, 1e-12,
		one{"as bought, weighed at 40 kg", "40", "kg", weight(40, bought)},
		one{"damp, weighed at 40 kg", "40", "kg", weight(40, damp)},
		one{"soaked, weighed at 61.5 kg", "61.5", "kg", weight(61.5, soaked)},
		one{"dry, weighed at 20 kg", "20", "kg", weight(20, light)},
		one{"damp, weighed at 20 kg", "33.586332170959", "kg", weight(20, damp)},
	)...)
}

// lumberTrees checks how much species shrink: in proportion to what is missing to 30 %.
func lumberTrees() []Check {
	shrunk := func(name string, m float64, tangential bool) func() (float64, error) {
		return func() (float64, error) {
			all := lumber.Trees()
			for _, t := range all {
				if t.Name == name {
					r, s, err := t.Shrunk(m / 100)
					if tangential {
						r = s
					}
					return 100 * r, err
				}
			}
			return 0, fmt.Errorf("no species %q", name)
		}
	}
	table := measure.Source{Title: "Wood Handbook", Locator: "Table 4-3, green to oven dry", Status: measure.Read}
	out := carried(share(lumberPackage, table, 0,
		one{"radial shrinkage of Douglas-fir, coast", "4.8", "%", shrunk("Douglas-fir, coast", 0, false)},
		one{"tangential shrinkage of Douglas-fir, coast", "7.6", "%", shrunk("Douglas-fir, coast", 0, true)},
		one{"radial shrinkage of western redcedar", "2.4", "%", shrunk("Western redcedar", 0, false)},
		one{"tangential shrinkage of western redcedar", "5.0", "%", shrunk("Western redcedar", 0, true)},
	)...)
	share30 := exactly("Wood Handbook, chapter 4: S (30 - m)/30", "18/30, 12/30 and 11/30 of the table's shrinkage")
	return append(out, share(lumberPackage, share30, 1e-12,
		one{"tangential shrinkage of Douglas-fir, coast, at 12 %", "4.56000000000", "%", shrunk("Douglas-fir, coast", 12, true)},
		one{"radial shrinkage of Douglas-fir, coast, at 18 %", "1.92000000000", "%", shrunk("Douglas-fir, coast", 18, false)},
		one{"tangential shrinkage of western redcedar at 19 %", "1.83333333333333", "%", shrunk("Western redcedar", 19, true)},
		one{"radial shrinkage of western redcedar at 30 %", "0", "%", shrunk("Western redcedar", 30, false)},
	)...)
}

// lumberTreated checks the preservative for cuts and holes.
func lumberTreated() []Check {
	treat := func(squareFeet float64, of func(lumber.Treatment) float64) func() (float64, error) {
		return func() (float64, error) {
			t, err := lumber.FieldTreatment(squareFeet * measure.Foot * measure.Foot)
			return of(t), err
		}
	}
	spread := measure.Source{Title: "Brushed preservative on end grain", Locator: "100 ft² to the gallon, two coats", Status: measure.CommonPractice}
	return share(lumberPackage, spread, 1e-12,
		one{"preservative on 50 ft² of cuts", "1.00000000000", "gal", treat(50, func(t lumber.Treatment) float64 { return t.Volume / measure.USGallon })},
		one{"preservative on 2.5 ft² of cuts", "6.40000000000", "fl oz", treat(2.5, func(t lumber.Treatment) float64 { return t.Volume / measure.USGallon * 128 })},
		one{"coats", "2.00000000000", "", treat(5, func(t lumber.Treatment) float64 { return float64(t.Coats) })},
	)
}

// lumberGaps checks what a better plan might save.
func lumberGaps() []Check {
	gap := func(cost, bound float64) func() (float64, error) {
		return func() (float64, error) { return lumber.Outlay{Cost: cost, Bound: bound}.Gap(), nil }
	}
	book := measure.Source{Title: "V. Chvátal, Linear Programming", Edition: "1983", Locator: "chapter 13: 453 raws, 452.25 by fractions", Status: measure.Memory}
	return append(share(lumberPackage, book, 1e-9,
		one{"gap between whole and fractional raws", "0.00165562914", "", gap(453, 452.25)},
		one{"gap of the order itself, proven", "0", "", func() (float64, error) {
			c, err := orders[len(orders)-1].cut()
			if err != nil {
				return 0, err
			}
			return c.Total.Gap(), nil
		}},
	), share(lumberPackage, exactly("Share of a cost", "(80 - 76)/80; none without a cost"), 1e-12,
		one{"gap of 80 over a bound of 76", "0.050000000000", "", gap(80, 76)},
		one{"gap without a cost", "0", "", gap(0, 0)},
	)...)
}
