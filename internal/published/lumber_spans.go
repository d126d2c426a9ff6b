package published

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// lumberJoists checks the tables of floor and ceiling joists.
func lumberJoists() ([]Check, error) {
	table, err := rows("lumber_joists")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		x, err := r.nums("spacing", "dead", "live", "fraction")
		if err != nil {
			return nil, err
		}
		src, err := lumberSource(r["table"], r["edition"], "", r["status"])
		if err != nil {
			return nil, err
		}
		c := Check{
			Package: lumberPackage, Source: src, Printed: r["printed"], Unit: "in",
			Quantity: fmt.Sprintf("%s %s %s at %g in.", r["species"], r["grade"], r["size"], x[0]),
			Compute: func() (float64, error) {
				m, err := lumberMember(r["species"], r["grade"], r["size"])
				if err != nil {
					return 0, err
				}
				m.Dry, m.Smooth, m.Repetitive = true, true, true
				if r["Fb"] != "" {
					if m.Grade.Fb.Printed, err = r.num("Fb"); err != nil {
						return 0, err
					}
				}
				span, _, err := m.SpanWithin(x[3], x[0]*measure.Inch, x[1]*measure.PSF, x[2]*measure.PSF)
				return span / measure.Inch, err
			},
		}
		if err := r.deviation(&c); err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

func lumberMember(species, grade, size string) (lumber.Member, error) {
	s, err := lumber.Size(size)
	if err != nil {
		return lumber.Member{}, err
	}
	g, err := lumber.Lookup(species, grade, s)
	return lumber.Member{Section: s, Grade: g}, err
}

// lumberDeckCap is the longest span the tables of deck joists print.
const lumberDeckCap = 18 * measure.Foot

// lumberDeckJoists checks the deck joists of a group: the least of its species.
func lumberDeckJoists() ([]Check, error) {
	table, err := rows("lumber_deck_joists")
	if err != nil {
		return nil, err
	}
	dca := measure.Source{Title: "DCA 6, residential wood deck construction (American Wood Council)", Edition: "2015", Locator: "Table 2", Status: measure.Quoted}
	irc := measure.Source{Title: "International Residential Code", Edition: "2018", Locator: "Table R507.6, cantilevers", Status: measure.Memory}
	var out []Check
	for _, r := range table {
		spacing, err := r.num("spacing")
		if err != nil {
			return nil, err
		}
		// least returns the least over the species of the group, in inches.
		least := func(of func(m lumber.Member, span float64) (float64, error)) (float64, error) {
			best := math.Inf(1)
			for _, species := range strings.Split(r["species"], ";") {
				m, err := lumberMember(species, "No.2", r["size"])
				if err != nil {
					return 0, err
				}
				m.Repetitive, m.Smooth = true, r["incised"] == ""
				span, _, err := m.Span(spacing*measure.Inch, 10*measure.PSF, 40*measure.PSF)
				if err != nil {
					return 0, err
				}
				x, err := of(m, math.Min(span, lumberDeckCap))
				if err != nil {
					return 0, err
				}
				best = math.Min(best, x/measure.Inch)
			}
			return best, nil
		}
		overhang := func(less float64) func(lumber.Member, float64) (float64, error) {
			return func(m lumber.Member, span float64) (float64, error) {
				a, _, err := m.Overhang(span, 220*measure.PoundForce, less)
				return a, err
			}
		}
		of := fmt.Sprintf(" of %s %s at %g in.", r["species"], r["size"], spacing)
		out = append(
			out,
			Check{
				Package: lumberPackage, Source: dca, Quantity: "span" + of, Printed: r["span"], Unit: "in",
				Compute: func() (float64, error) {
					return least(func(_ lumber.Member, span float64) (float64, error) { return span, nil })
				},
			},
			Check{
				Package: lumberPackage, Source: dca, Quantity: "overhang" + of, Printed: r["overhang"], Unit: "in",
				Compute: func() (float64, error) { return least(overhang(3 * measure.Inch)) },
			},
			Check{
				Package: lumberPackage, Source: irc, Quantity: "cantilever" + of, Printed: r["cantilever"], Unit: "in",
				Compute: func() (float64, error) { return least(overhang(0)) },
			},
		)
	}
	return out, nil
}

// lumberDeckBeams checks the deck beams of Southern Pine.
func lumberDeckBeams() ([]Check, error) {
	table, err := rows("lumber_deck_beams")
	if err != nil {
		return nil, err
	}
	src := measure.Source{Title: "International Residential Code", Edition: "2018", Locator: "Table R507.5, deck beams", Status: measure.Memory}
	worked := independent("Deck beams of two plies", "IRC 2018 loads, NDS without the inferred 1.10")
	var out []Check
	for _, r := range table {
		x, err := r.nums("plies", "joist")
		if err != nil {
			return nil, err
		}
		span := func(paired bool) func() (float64, error) {
			return func() (float64, error) {
				m, err := lumberMember("Southern Pine", "No.2", r["size"])
				if err != nil {
					return 0, err
				}
				m.Smooth, m.Plies, m.Paired = true, int(x[0]), paired
				joist := x[1] * measure.Foot
				span, _, err := m.BeamSpan(joist, joist/4, 10*measure.PSF, 40*measure.PSF)
				return span / measure.Inch, err
			}
		}
		c := Check{
			Package: lumberPackage, Source: src, Printed: r["printed"], Unit: "in",
			Quantity: fmt.Sprintf("beam of %g %s under joists of %g ft", x[0], r["size"], x[1]),
			Compute:  span(true),
		}
		if r["strict"] != "" {
			out = append(out, Check{
				Package: lumberPackage, Source: worked, Printed: r["strict"], Unit: "in",
				Quantity: c.Quantity, Compute: span(false),
			})
		}
		if err := r.deviation(&c); err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}
