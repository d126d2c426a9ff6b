package published

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
)

// floatMotionChecks compares natural periods.
func floatMotionChecks() ([]Check, error) {
	table, err := rows("float_motion")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		x, err := r.nums("x", "y", "gravity")
		if err != nil {
			return nil, err
		}
		c, err := r.cited("float", fmt.Sprintf("%s period, %g and %g", r["motion"], x[0], x[1]))
		if err != nil {
			return nil, err
		}
		unit := 1.0
		if r["unit"] == "pi s" {
			unit = math.Pi
		}
		c.Compute = func() (float64, error) {
			var t float64
			var err error
			switch r["motion"] {
			case "heave": // per metre of length and of density
				radius, added := x[0], x[1]
				t, err = float.Period(math.Pi*radius*radius/2*(1+added), 2*radius*x[2])
			case "roll":
				t, err = float.Period(x[1]*x[1], x[2]*x[0])
			case "platform":
				t, err = heaveOfTwo(x[0], x[1])
			default:
				err = fmt.Errorf("float_motion: no motion %q", r["motion"])
			}
			return t / unit, err
		}
		out = append(out, c)
	}
	return out, nil
}

// heaveOfTwo returns the heave period of two half-immersed drums of radius r side
// by side, at one end of the range of the added mass.
func heaveOfTwo(r, added float64) (float64, error) {
	drum := float.Cylinder{Diameter: 2 * r, Length: 0.9}
	deck, err := float.Weight{Mass: 1000 * drum.Volume()}.Spread(2, 2)
	if err != nil {
		return 0, err
	}
	p := &float.Platform{
		Units:   []float.Unit{{Body: drum, At: r3.Vec{Y: 1}}, {Body: drum, At: r3.Vec{Y: -1}}},
		Weights: deck, Density: 1000,
	}
	m, err := p.Motion()
	switch added {
	case 0.5:
		return m.Heave.Shortest, err
	case 1:
		return m.Heave.Longest, err
	}
	return 0, fmt.Errorf("float_motion: the platform's added mass is 0.5 or 1, not %g", added)
}
