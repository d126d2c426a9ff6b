package published

import (
	"fmt"
	"strconv"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// moorSets lists the checks of package moor by subject.
var moorSets = []func() ([]Check, error){
	moorCatenaryChecks,
	moorInverseChecks,
	moorWaveChecks,
	moorGearChecks,
	moorWorkedChecks,
	moorUsualChecks,
	moorMoreChecks,
}

func moorChecks() ([]Check, error) {
	var all []Check
	for _, set := range moorSets {
		checks, err := set()
		if err != nil {
			return nil, err
		}
		all = append(all, checks...)
	}
	return all, nil
}

// moorNear returns a check of an independent computation to a relative 1e-8; what
// is 0 there must be 0 here to a billionth of the unit.
func moorNear(quantity string, src measure.Source, printed, unit string, compute func() (float64, error)) Check {
	c := Check{Package: "float/moor", Quantity: quantity, Source: src, Printed: printed, Unit: unit, Relative: 1e-8, Compute: compute}
	if v, err := strconv.ParseFloat(printed, 64); err == nil && v == 0 {
		c.Relative, c.Step = 0, 2e-9
	}
	return c
}

// moorNumbers returns several columns of a row.
func moorNumbers(r row, columns ...string) ([]float64, error) {
	out := make([]float64, len(columns))
	for i, c := range columns {
		x, err := r.num(c)
		if err != nil {
			return nil, err
		}
		out[i] = x
	}
	return out, nil
}

func moorCatenaryChecks() ([]Check, error) {
	table, err := rows("moor_catenary")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		src := measure.Source{
			Title: "Catenary by closed forms at 30 digits, elastic cases by integrating the line", Locator: r["case"] + ", " + r["description"],
			Status: measure.Independent,
		}
		if r["EA"] == "inf" {
			r["EA"] = "0"
		}
		in, err := moorNumbers(r, "w_per_len_in_water", "depth_h", "line_len_L", "EA", "horiz_force_H", "X_anchor_to_fairlead")
		if err != nil {
			return nil, fmt.Errorf("moor_catenary %s: %w", r["case"], err)
		}
		// The equations are the same in any consistent units.
		w, h, l, ea, pull := in[0], in[1], in[2], in[3], in[4]
		line := &moor.Line{Pieces: []moor.Piece{{Length: l, Weight: w, Stretch: ea}}}
		const degree = 0.017453292519943295
		for _, q := range []struct {
			column, unit string
			of           func(moor.Hang) float64
		}{
			{"len_lifted", "m", func(s moor.Hang) float64 { return l - s.Lying }},
			{"len_on_bottom", "m", func(s moor.Hang) float64 { return s.Lying }},
			{"T_top", "N", moor.Hang.Tension},
			{"angle_top_deg_from_horiz", "deg", func(s moor.Hang) float64 { return s.Angle() / degree }},
			{"V_top", "N", func(s moor.Hang) float64 { return s.Down }},
			{"V_anchor_uplift", "N", func(s moor.Hang) float64 { return s.Lift }},
			{"T_anchor", "N", moor.Hang.GroundTension},
			{"angle_anchor_deg", "deg", func(s moor.Hang) float64 { return s.GroundAngle() / degree }},
			{"X_anchor_to_fairlead", "m", func(s moor.Hang) float64 { return s.Reach }},
			{"excursion_from_slack_X_minus_(L-h)", "m", func(s moor.Hang) float64 { return s.Reach - (l - h) }},
		} {
			out = append(out, moorNear(q.column+" under a given pull", src, r[q.column], q.unit, func() (float64, error) {
				s, err := line.Pull(pull, h)
				return q.of(s), err
			}))
		}
	}
	return out, nil
}

func moorInverseChecks() ([]Check, error) {
	table, err := rows("moor_catenary_inverse")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		src := measure.Source{
			Title: "Catenary with its span given, solved at 30 digits", Locator: r["case"] + ", " + r["regime"], Status: measure.Independent,
		}
		in, err := moorNumbers(r, "w_N_per_m", "depth_h_m", "line_len_L_m", "given_X_m")
		if err != nil {
			return nil, fmt.Errorf("moor_catenary_inverse %s: %w", r["case"], err)
		}
		line := &moor.Line{Pieces: []moor.Piece{{Length: in[2], Weight: in[0]}}}
		const degree = 0.017453292519943295
		for _, q := range []struct {
			column, unit string
			of           func(moor.Hang) float64
		}{
			{"H_N", "N", func(s moor.Hang) float64 { return s.Pull }},
			{"len_lifted_m", "m", func(s moor.Hang) float64 { return in[2] - s.Lying }},
			{"T_top_N", "N", moor.Hang.Tension},
			{"angle_top_deg", "deg", func(s moor.Hang) float64 { return s.Angle() / degree }},
			{"V_anchor_uplift_N", "N", func(s moor.Hang) float64 { return s.Lift }},
		} {
			out = append(out, moorNear(q.column+" at a given reach", src, r[q.column], q.unit, func() (float64, error) {
				s, err := line.At(in[3], in[1], moor.Hang{})
				return q.of(s), err
			}))
		}
	}
	return out, nil
}
