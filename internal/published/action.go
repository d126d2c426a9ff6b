package published

import (
	"fmt"
	"math"

	"example.org/floewright/ice"
	"example.org/floewright/ice/action"
	"example.org/floewright/lumber/measure"
)

func actionChecks() ([]Check, error) {
	var out []Check
	for _, set := range []func() ([]Check, error){actionWalls, actionPiles, actionThrust, actionShortWalls, actionWorked, actionGrip} {
		checks, err := set()
		if err != nil {
			return nil, err
		}
		out = append(out, checks...)
	}
	for i := range out {
		out[i].Package = "ice/action"
	}
	return out, nil
}

// actionOne is a span of a single value.
func actionOne(x float64) action.Span { return action.Span{Low: x, High: x} }

// actionTiny is a level change in m that reaches no cap.
const actionTiny = 1e-6

// actionWalls checks a sheet raised along a wall, held and hinged, and around a
// thin pile.
func actionWalls() ([]Check, error) {
	table, err := rows("action_walls")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		v, err := r.nums("h_m", "E_Pa", "nu", "k_N_m3", "sigma_f_Pa")
		if err != nil {
			return nil, err
		}
		c := action.Cover{Thickness: v[0], Modulus: actionOne(v[1]), Flexure: actionOne(v[4]), Poisson: v[2], Foundation: v[3]}
		plate := ice.Plate{Thickness: v[0], E: v[1], Nu: v[2], Foundation: v[3]}
		wall := func(rise float64, of func(action.Lift) float64) func() (float64, error) {
			return func() (float64, error) {
				l, err := c.Wall(rise, action.Span{})
				return of(l), err
			}
		}
		held := func(l action.Lift) float64 { return l.Elastic.High }
		hinged := func(l action.Lift) float64 { return l.Elastic.Low }
		first := func(l action.Lift) float64 { return l.Crack.Low }
		second := func(l action.Lift) float64 { return l.Crack.High }
		at := func(rise, force func(action.Lift) float64) func() (float64, error) {
			return func() (float64, error) {
				l, err := c.Wall(actionTiny, action.Span{})
				if err != nil {
					return 0, err
				}
				l, err = c.Wall(rise(l), action.Span{})
				return force(l), err
			}
		}
		columns := []column{
			{"l_m", "m", 1e-8, plate.CharacteristicLength},
			{"wall_clamped_V_N_per_m_per_m_rise", "N/m2", 1e-8, wall(1, held)},
			{"wall_hinged_V_N_per_m_per_m_rise", "N/m2", 1e-8, wall(1, hinged)},
			{"wall_clamped_M_Nm_per_m_per_m_rise", "N/m", 1e-8, wall(actionTiny, func(l action.Lift) float64 { return l.Moment.High / actionTiny })},
			{"rise_at_first_crack_clamped_m", "m", 3e-6, wall(0, first)},
			{"V_at_first_crack_clamped_N_m", "N/m", 1e-7, at(first, held)},
			{"rise_at_first_crack_hinged_m", "m", 1e-6, wall(0, second)},
			{"V_at_first_crack_hinged_N_m", "N/m", 1e-7, at(second, hinged)},
			{"point_pile_F_N_per_m_rise_8kl2", "N/m", 1e-8, func() (float64, error) {
				l, err := c.Uplift(action.Body{Length: 1e-5}, actionTiny)
				return l.Elastic.Low / actionTiny, err
			}},
		}
		// The sheet hinged at the wall bears no more: its crack is the cap.
		limit := Check{
			Quantity: fmt.Sprintf("cap of bending, h %s m, E %s Pa", r["h_m"], r["E_Pa"]),
			Source:   measure.Source{Title: "Thin plate on water raised along a wall, closed form with 20 digits", Status: st},
			Printed:  r["V_at_first_crack_hinged_N_m"], Unit: "N/m", Relative: 1e-7,
			Compute: wall(1, func(l action.Lift) float64 { return l.Caps[0].High }),
		}
		out = append(out, limit)
		for _, k := range columns {
			out = append(out, Check{
				Quantity: fmt.Sprintf("%s, h %s m, E %s Pa", k.name, r["h_m"], r["E_Pa"]),
				Source:   measure.Source{Title: "Thin plate on water raised along a wall, closed form with 20 digits", Status: st},
				Printed:  r[k.name], Unit: k.unit, Relative: k.relative, Compute: k.compute,
			})
		}
	}
	return out, nil
}

// actionPiles checks a sheet raised around a pile: over the table's sizes the
// force of the held edge is the greater one, and its moment the lesser.
func actionPiles() ([]Check, error) {
	table, err := rows("action_piles")
	if err != nil {
		return nil, err
	}
	const k = 9810
	plate := ice.Plate{Thickness: 0.3, E: 1e9, Nu: 0.33, Foundation: k}
	c := action.Cover{Thickness: plate.Thickness, Modulus: actionOne(plate.E), Foundation: k, Poisson: plate.Nu}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		α, err := r.num("alpha_a_over_l")
		if err != nil {
			return nil, err
		}
		coefficient := func(of func(action.Lift) float64) func() (float64, error) {
			return func() (float64, error) {
				l, err := plate.CharacteristicLength()
				if err != nil {
					return 0, err
				}
				lift, err := c.Uplift(action.Body{Length: 2 * α * l}, actionTiny)
				return of(lift) / (k * l * l * actionTiny), err
			}
		}
		for _, col := range []column{
			{"F_over_k_l2_delta_clamped", "", 1e-11, coefficient(func(l action.Lift) float64 { return l.Elastic.High })},
			{"Mr_edge_over_k_l2_delta_clamped_abs", "", 1e-11, coefficient(func(l action.Lift) float64 { return l.Moment.Low })},
			{"F_over_k_l2_delta_free_rotation_nu0p33", "", 1e-11, coefficient(func(l action.Lift) float64 { return l.Elastic.Low })},
		} {
			out = append(out, Check{
				Quantity: col.name + ", a/l " + r["alpha_a_over_l"],
				Source:   measure.Source{Title: "Thin plate on water raised around a round pile, Kelvin functions", Status: st},
				Printed:  r[col.name], Relative: col.relative, Compute: col.compute,
			})
		}
	}
	return out, nil
}

// actionThrust checks the published thrusts by the force on one unit of wall.
func actionThrust() ([]Check, error) {
	table, err := rows("action_thrust")
	if err != nil {
		return nil, err
	}
	units := map[string]struct{ force, width float64 }{
		"kN/m": {measure.Kilonewton, 1}, "lb/ft": {measure.PoundForce, measure.Foot}, "kip/ft": {measure.Kip, measure.Foot},
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		unit, ok := units[r["unit"]]
		if !ok {
			return nil, fmt.Errorf("unit %q of a thrust is not known", r["unit"])
		}
		out = append(out, Check{
			Quantity: r["of"] + ", " + r["end"] + " end in " + r["unit"],
			Source:   measure.Source{Title: r["source"], Status: st},
			Printed:  r["printed"], Unit: r["unit"],
			Compute: func() (float64, error) {
				for _, t := range action.Thrusts() {
					if t.Of != r["of"] {
						continue
					}
					s, err := t.On(unit.width, 2*measure.Foot)
					if r["end"] == "low" {
						return s.Low / unit.force, err
					}
					return s.High / unit.force, err
				}
				return math.NaN(), fmt.Errorf("no thrust of %q", r["of"])
			},
		})
	}
	return carried(out...), nil
}
