package published

import (
	"fmt"
	"math"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// column is one compared value of a row.
type column struct {
	name, unit string
	relative   float64
	compute    func() (float64, error)
}

// icePlates checks circular loads on a plate: the values were computed with 20
// digits from the closed form, whose integrals were done independently.
func icePlates() ([]Check, error) {
	table, err := rows("ice_plates")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		v, err := r.nums("P_N", "a_m", "h_m", "E_Pa", "nu", "rho_w", "g")
		if err != nil {
			return nil, err
		}
		thin := ice.Plate{Thickness: v[2], E: v[3], Nu: v[4], Foundation: v[5] * v[6], Thin: true}
		thick := thin
		thick.Thin = false
		patch := ice.Patch{A: v[1], Force: v[0]}
		sag := func(lengths float64) func() (float64, error) {
			return func() (float64, error) {
				l, err := thin.CharacteristicLength()
				if err != nil {
					return 0, err
				}
				s, err := thin.At([]ice.Patch{patch}, lengths*l*0.6, lengths*l*0.8)
				return s.Deflection, err
			}
		}
		stress := func(p ice.Plate) func() (float64, error) {
			return func() (float64, error) {
				s, err := p.At([]ice.Patch{patch}, 0, 0)
				if err != nil {
					return 0, err
				}
				return p.Stress(s)
			}
		}
		for _, c := range []column{
			{"D_Nm", "N m", 1e-12, thin.Rigidity},
			{"l_m", "m", 1e-12, thin.CharacteristicLength},
			{"w0_m", "m", 1e-11, sag(0)},
			{"sigma_thinplate_Pa", "Pa", 1e-11, stress(thin)},
			{"b_westergaard_m", "m", 1e-12, func() (float64, error) {
				b, _, err := thick.FictitiousRadius(v[1])
				return b, err
			}},
			{"sigma_with_b_exact_kei_Pa", "Pa", 1e-11, stress(thick)},
			{"w_point_P_over_8kl2_m", "m", 1e-12, func() (float64, error) {
				perMetre, err := thin.FloodLoad(1)
				return v[0] / perMetre, err
			}},
			{"w_at_l", "m", 1e-11, sag(1)},
			{"w_at_2l", "m", 1e-11, sag(2)},
			{"w_at_4l", "m", 1e-10, sag(4)},
			{"w_at_5l", "m", 1e-11, sag(5)},
		} {
			check := Check{
				Quantity: fmt.Sprintf("%s, P %s N, a %s m, h %s m, E %s Pa", c.name, r["P_N"], r["a_m"], r["h_m"], r["E_Pa"]),
				Source:   measure.Source{Title: "Circular load on a floating plate, closed form with 20 digits and Hankel integrals", Status: st},
				Printed:  r[c.name], Unit: c.unit, Relative: c.relative, Compute: c.compute,
			}
			out = append(out, check)
		}
	}
	return append(out, iceTwins()...), nil
}

// iceTwins checks what two equal point loads add to each other's sag, and where
// one load's sag ends.
func iceTwins() []Check {
	src := measure.Source{Title: "Two equal point loads on a floating plate, -4/π kei(s/l)", Status: measure.Independent}
	p := ice.Plate{Thickness: 0.3, E: 1e9, Nu: 0.33}
	added := func(lengths float64) (float64, error) {
		l, err := p.CharacteristicLength()
		if err != nil {
			return 0, err
		}
		loads := []ice.Patch{{A: 0.001, Force: 100}}
		own, err := p.At(loads, 0, 0)
		if err != nil {
			return 0, err
		}
		other, err := p.At(loads, lengths*l, 0)
		return other.Deflection / own.Deflection, err
	}
	var out []Check
	for _, c := range []struct {
		lengths float64
		printed string
	}{{0.5, "0.855"}, {1, "0.630"}, {2, "0.258"}, {3, "0.065"}, {5, "-0.014"}} {
		out = append(out, Check{
			Quantity: fmt.Sprintf("added sag over own sag at %g l", c.lengths), Source: src, Printed: c.printed,
			Compute: func() (float64, error) { return added(c.lengths) },
		})
	}
	return append(out, Check{
		Quantity: "first zero of kei: end of the bowl over l", Source: src, Printed: "3.91466760684325", Relative: 1e-12,
		Compute: func() (float64, error) {
			lo, hi := 3.5, 4.5
			for range 60 {
				mid := (lo + hi) / 2
				x, err := added(mid)
				if err != nil {
					return 0, err
				}
				if x > 0 {
					lo = mid
				} else {
					hi = mid
				}
			}
			return lo, nil
		},
		Because: "a patch of 1 mm stands for a point", Within: 1e-6,
	})
}

// iceRectangles checks rectangular loads, inside, on the sides and outside. The
// error counts against the greatest of the state's own components.
func iceRectangles() ([]Check, error) {
	table, err := rows("ice_rectangles")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		v, err := r.nums("h_m", "E_Pa", "nu", "k_N_m3", "a_m", "b_m", "P_N", "x_m", "y_m")
		if err != nil {
			return nil, err
		}
		m, err := r.nums("w", "Mx", "My", "Mxy")
		if err != nil {
			return nil, err
		}
		p := ice.Plate{Thickness: v[0], E: v[1], Nu: v[2], Foundation: v[3], Thin: true}
		loads := []ice.Patch{{A: v[4], B: v[5], Force: v[6]}}
		size := math.Max(math.Max(math.Abs(m[1]), math.Abs(m[2])), math.Abs(m[3]))
		for i, name := range []string{"w", "Mx", "My", "Mxy"} {
			within, unit := 1e-10*size, "N"
			if i == 0 {
				within, unit = 1e-10*math.Abs(m[0]), "m"
			}
			out = append(out, Check{
				Quantity: fmt.Sprintf("%s at %s, %s of %s x %s m, h %s m, E %s Pa", name, r["x_m"], r["y_m"], r["a_m"], r["b_m"], r["h_m"], r["E_Pa"]),
				Source:   measure.Source{Title: "Rectangular load on a floating plate, point load integrated over the area with 22 digits", Status: st},
				Printed:  r[name], Unit: unit,
				Because: "the error counts against the greatest component", Within: within,
				Compute: func() (float64, error) {
					s, err := p.At(loads, v[7], v[8])
					return [4]float64{s.Deflection, s.Mx, s.My, s.Mxy}[i], err
				},
			})
		}
	}
	return out, nil
}
