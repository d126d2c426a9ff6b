package published

import (
	"context"
	"fmt"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// An order is a published cutting problem with one width of stock: how many
// rolls it takes at least. A roll costs 1, so that the cost counts them.
type order struct {
	about  string
	source measure.Source
	unit   float64 // m
	roll   float64 // width of the stock, in units
	pieces [][2]float64
	rolls  string // as printed
	bound  string // rounded-up bound, where one is printed; the plan must prove it too
}

var orders = []order{
	{
		about: "rolls of 5600 mm cut into 13 widths",
		source: measure.Source{
			Title: "Cutting stock problem (public encyclopedia article)", Locator: "illustration",
			Status: measure.Quoted,
		},
		unit: 1e-3, roll: 5600,
		pieces: [][2]float64{
			{1380, 22},
			{1520, 25},
			{1560, 12},
			{1710, 14},
			{1820, 18},
			{1880, 18},
			{1930, 20},
			{2000, 10},
			{2050, 12},
			{2100, 14},
			{2140, 16},
			{2150, 18},
			{2200, 20},
		},
		rolls: "73", bound: "73",
	},
	{
		// Only the data were read, as quoted by others; the answer is recalled.
		about: "raws of 100 in. cut into 4 widths",
		source: measure.Source{
			Title: "V. Chvátal, Linear Programming", Edition: "1983", Locator: "chapter 13",
			Status: measure.Memory,
		},
		unit: measure.Inch, roll: 100,
		pieces: [][2]float64{{45, 97}, {36, 610}, {31, 395}, {14, 211}},
		rolls:  "453", bound: "453",
	},
}

func (o order) cut() (*lumber.Cuts, error) {
	var wants []lumber.Want
	for i, p := range o.pieces {
		wants = append(wants, lumber.Want{Name: fmt.Sprint("width ", i+1), Section: "roll", Length: p[0] * o.unit, Count: int(p[1])})
	}
	stock := []lumber.Stock{{Section: "roll", Length: o.roll * o.unit, Price: 1}}
	return lumber.Cut(context.Background(), wants, stock, lumber.Saw{})
}

// lumberCutChecks has the outside values for cutting and for decking rows.
func lumberCutChecks() ([]Check, error) {
	var out []Check
	for _, o := range orders {
		out = append(out, Check{
			Package: "lumber", Quantity: "least number of stock rolls, " + o.about,
			Source: o.source, Printed: o.rolls, Unit: "rolls",
			Compute: func() (float64, error) {
				c, err := o.cut()
				if err != nil {
					return 0, err
				}
				return c.Total.Cost, nil
			},
		}, Check{
			Package: "lumber", Quantity: "lower bound on the stock rolls, " + o.about,
			Source: o.source, Printed: o.bound, Unit: "rolls",
			Compute: func() (float64, error) {
				c, err := o.cut()
				if err != nil {
					return 0, err
				}
				return c.Total.Bound, nil
			},
		})
	}
	out = append(out, Check{
		Package: "lumber", Quantity: "waste, " + orders[0].about,
		Source: orders[0].source, Printed: "0.401", Unit: "%",
		Compute: func() (float64, error) {
			c, err := orders[0].cut()
			if err != nil {
				return 0, err
			}
			return (1 - c.Total.Pieces/c.Total.Length) * 100, nil
		},
	})
	return append(out, deckChecks()...), nil
}

// deckChecks has the arithmetic of the trade for decking, worked by hand.
func deckChecks() []Check {
	hand := func(locator string) measure.Source {
		return measure.Source{Title: "arithmetic of the trade, worked by hand", Locator: locator, Status: measure.Independent}
	}
	rows := func(length, width float64) (*lumber.Rows, error) {
		joists, err := lumber.JoistLines(length, 16*measure.Inch, 1.5*measure.Inch)
		if err != nil {
			return nil, err
		}
		return lumber.Deck{Length: length, Width: width, Joists: joists, Board: "5/4x6", Gap: measure.Inch / 8}.Rows()
	}
	const ft = measure.Foot
	return []Check{
		{
			Package: "lumber", Quantity: "5/4x6 boards for 100 ft² at a 1/8 in. gap, before edges and waste",
			Source: hand("100 × 12/(5.5 + 1/8)"), Printed: "213.3", Unit: "ft",
			Compute: func() (float64, error) {
				r, err := rows(10*ft, 10*ft)
				if err != nil {
					return 0, err
				}
				return r.Net / ft, nil
			},
		},
		{
			Package: "lumber", Quantity: "rows of 5/4x6 over 10 ft at a 1/8 in. gap",
			Source: hand("(120 + 1/8)/(5.5 + 1/8), rounded up"), Printed: "22", Unit: "rows",
			Compute: func() (float64, error) {
				r, err := rows(12*ft, 10*ft)
				if err != nil {
					return 0, err
				}
				return float64(len(r.Rows)), nil
			},
		},
		{
			Package: "lumber", Quantity: "board feet of one 5/4x6 of 16 ft",
			Source: hand("1.25 × 6 × 16/12"), Printed: "10", Unit: "board feet",
			Compute: func() (float64, error) {
				r, err := rows(16*ft, 5.5*measure.Inch)
				if err != nil {
					return 0, err
				}
				return r.BoardFeet, nil
			},
		},
		{
			Package: "lumber", Quantity: "screws of one row of 16 ft on joists 16 in. apart",
			Source: hand("two on each of 13 joists"), Printed: "26", Unit: "screws",
			Compute: func() (float64, error) {
				r, err := rows(16*ft, 5.5*measure.Inch)
				if err != nil {
					return 0, err
				}
				return float64(r.Screws), nil
			},
		},
	}
}
