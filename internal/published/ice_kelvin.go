package published

import (
	"fmt"
	"math"

	"example.org/floewright/internal/kelvin"
	"example.org/floewright/lumber/measure"
)

// kelvinColumns pairs the columns of ice_kelvin.csv with the values of B and K.
var kelvinColumns = []string{"ber", "bei", "ber_prime", "bei_prime", "ker", "kei", "ker_prime", "kei_prime"}

// iceKelvin checks the Kelvin functions, the error counted against the modulus
// of the pair (ber, bei), (ber', bei') and so on: near a zero of one function
// no other bound makes sense.
func iceKelvin() ([]Check, error) {
	table, err := rows("ice_kelvin")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		x, err := r.num("x")
		if err != nil {
			return nil, err
		}
		for i, column := range kelvinColumns {
			own, err := r.num(column)
			if err != nil {
				return nil, err
			}
			other, err := r.num(kelvinColumns[i^1])
			if err != nil {
				return nil, err
			}
			out = append(out, Check{
				Package:  "internal/kelvin",
				Quantity: fmt.Sprintf("%s at x = %s", column, r["x"]),
				Source:   measure.Source{Title: "Kelvin functions from Bessel functions of complex argument, 50 digits", Edition: "mpmath", Status: st},
				Printed:  r[column],
				Because:  "the error counts against the modulus of the pair",
				Within:   2.5e-15 * math.Hypot(own, other),
				Compute: func() (float64, error) {
					var v [8]float64
					v[0], v[1], v[2], v[3] = kelvin.B(x)
					v[4], v[5], v[6], v[7] = kelvin.K(x)
					return v[i], nil
				},
			})
		}
	}
	return out, nil
}
