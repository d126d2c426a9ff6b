package published

import (
	"fmt"
	"math"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// layoutBearings compares what drums bear on, and what they do to boards, with
// plane geometry in more digits and with the theorem of three moments in fractions.
func layoutBearings() ([]Check, error) {
	const in = measure.Inch
	var out []Check
	table, err := rows("layout_wedge")
	if err != nil {
		return nil, err
	}
	circle := measure.Source{Title: "Circle through two points", Locator: "30-digit arithmetic", Status: measure.Independent}
	for _, r := range table {
		x, err := r.nums("diameter", "opening")
		if err != nil {
			return nil, err
		}
		unit := map[string]float64{"in": in, "m": 1}[r["unit"]]
		for k, column := range []string{"rise", "press", "spread"} {
			out = append(out, Check{
				Package: "frame/layout", Quantity: fmt.Sprintf("%s of a drum of %s in an opening of %s %s", column, r["diameter"], r["opening"], r["unit"]),
				Source: circle, Printed: r[column], Relative: 2e-9,
				Compute: func() (float64, error) {
					rise, press, spread, err := layout.Wedge(x[0]*unit, x[1]*unit)
					return []float64{rise / unit, press, spread}[k], err
				},
			})
		}
	}
	triple := measure.Source{Title: "Right triangle of 5, 12 and 13", Locator: "drum of 26 in an opening of 10", Status: measure.Exact}
	for k, printed := range []string{"1.0000000000", "0.5416666667", "0.2083333333"} {
		out = append(out, Check{
			Package: "frame/layout", Quantity: []string{"rise", "press", "spread"}[k], Source: triple, Printed: printed,
			Compute: func() (float64, error) {
				rise, press, spread, err := layout.Wedge(26*in, 10*in)
				return []float64{rise / in, press, spread}[k], err
			},
		})
	}

	// A board over joists 26 in. apart, pushed up half way between them.
	board := func(joists, bay int, pick func(layout.Lift) float64) func() (float64, error) {
		return func() (float64, error) {
			l, err := layoutBoards(joists, bay)
			if err != nil {
				return 0, err
			}
			lift, err := l.Lift(0, 1000, layout.Strength{Moment: 1e5, Screw: 1e5, Screws: 1})
			return pick(lift), err
		}
	}
	screw := func(l layout.Lift) float64 { return l.Screw / l.Board }
	moment := func(l layout.Lift) float64 { return l.Moment / (l.Board * 26 * in) }
	three := measure.Source{Title: "Theorem of three moments in fractions", Locator: "three equal spans, force at mid span", Status: measure.Independent}
	simple := measure.Source{Title: "Simple beam, force at mid span", Locator: "PL/4", Status: measure.Exact}
	out = append(
		out,
		Check{Package: "frame/layout", Quantity: "pull on the inner joist, force in the end span, P", Source: three, Printed: "0.7250000000", Compute: board(4, 1, screw)},
		Check{Package: "frame/layout", Quantity: "pull on the inner joists, force in the inner span, P", Source: three, Printed: "0.5750000000", Compute: board(4, 2, screw)},
		Check{Package: "frame/layout", Quantity: "moment of a board ended on the two joists, PL", Source: simple, Printed: "0.2500000000", Compute: board(4, 2, moment)},
		Check{Package: "frame/layout", Quantity: "pull on either joist of one bay, P", Source: simple, Printed: "0.5000000000", Compute: board(2, 1, screw)},
	)
	return out, nil
}

// layoutBoards lays out an invented frame with a drum under the boards of one bay.
func layoutBoards(joists, bay int) (*layout.Layout, error) {
	const in = measure.Inch
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	var marks []float64
	for i := range joists {
		marks = append(marks, float64(i)*26*in)
	}
	length := (float64(joists-1)*26 + 1.5) * in
	pieces, err := layout.Rectangle{Length: length, Width: 96 * in, Across: true, Marks: marks, Joist: s, Rim: s}.Pieces()
	if err != nil {
		return nil, err
	}
	return layout.New(layout.Drawing{
		Pieces: pieces,
		Drums:  []layout.Drum{{Name: "drum", At: layout.Point{X: (float64(bay)*26 - 12.25) * in, Y: 48 * in}, Diameter: 23.5 * in, Length: 35 * in}},
		Decks:  []layout.Deck{{Name: "deck", Max: layout.Point{X: length, Y: 96 * in}, Along: true, Face: 5.5 * in, Thickness: 1.5 * in}},
	})
}

// layoutFacts are facts of the trade and what else a frame's sides and supports
// say.
func layoutFacts() []Check {
	const in = measure.Inch
	trade := measure.Source{Title: "12 ft end members, 16 ft members between them, all 2x", Status: measure.CommonPractice}
	fold := measure.Source{Title: "Frame folded about its diagonal", Locator: "coordinates in space, 30 digits", Status: measure.Independent}
	cyclic := measure.Source{Title: "Four-sided figure whose opposite corners add up to half a turn", Locator: "root finder, 30 digits", Status: measure.Independent}
	sides := layout.Frame{A: 4.9, B: 2.4, C: 4.8, D: 2.45, P: 5.4227529908709653, Q: 5.4216004397570714}
	read := func(k int) func() (float64, error) {
		return func() (float64, error) {
			s, err := sides.Square(0.001)
			return s.Read[k], err
		}
	}
	return []Check{
		{Package: "frame/layout", Quantity: "diagonal by nominal lengths", Source: trade, Printed: "242.4", Unit: "in", Compute: func() (float64, error) {
			d, err := layout.Diagonal(144*in, (192+2*1.5)*in)
			return d / in, err
		}},
		{Package: "frame/layout", Quantity: "diagonal of stock 3/8 in. long, as measured both ways", Source: trade, Printed: "243", Unit: "in", Compute: func() (float64, error) {
			d, err := layout.Diagonal(144.375*in, 195.375*in)
			return d / in, err
		}},
		{Package: "frame/layout", Carried: true, Quantity: "bay at least, for a drum of 23.5 in", Source: trade, Printed: "24.0", Unit: "in", Compute: func() (float64, error) { return 23.5 + layout.Practice().Side[0]/in, nil }},
		{Package: "frame/layout", Carried: true, Quantity: "stops at most, for a drum of 35 in", Source: trade, Printed: "37.0", Unit: "in", Compute: func() (float64, error) { return 35 + layout.Practice().End[1]/in, nil }},
		{Package: "frame/layout", Quantity: "diagonal P once pushed", Source: cyclic, Printed: "5.42275299087", Unit: "m", Compute: read(0)},
		{Package: "frame/layout", Quantity: "diagonal Q once pushed", Source: cyclic, Printed: "5.42160043976", Unit: "m", Compute: read(1)},
		{Package: "frame/layout", Quantity: "corner 4 out of the plane, Q short by 0.0743 in", Source: fold, Printed: "6.000000", Unit: "in", Compute: func() (float64, error) {
			f := layout.Frame{A: 144 * in, B: 195 * in, C: 144 * in, D: 195 * in, P: math.Hypot(144, 195) * in, Q: 242.332366434708404 * in}
			s, err := f.Square(0.0001)
			return s.Twist / in, err
		}},
	}
}
