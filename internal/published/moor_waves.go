package published

import (
	"fmt"
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

func moorWaveChecks() ([]Check, error) {
	table, err := rows("moor_waves")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		in, err := moorNumbers(r, "U10_mps", "fetch_m")
		if err != nil {
			return nil, err
		}
		f := moor.Fetch{Wind: in[0], Length: in[1], Gravity: moorOldGravity}
		d := f
		d.Depth = 3
		src := measure.Source{Title: "Wave growth by the published formulas at 30 digits", Locator: fmt.Sprintf("U %g m/s, F %g m", in[0], in[1]), Status: measure.Independent}
		for _, q := range []struct {
			column, method, unit string
			fetch                moor.Fetch
			of                   func(moor.Sea) float64
		}{
			{"SPM84_deep_Hm0_m", "SPM 1984", "m", f, moorHeight},
			{"SPM84_deep_Tm_s", "SPM 1984", "s", f, moorPeriod},
			{"SPM84_deep_tmin_s", "SPM 1984", "s", f, moorGrown},
			{"SPM84_d3m_H_m", "SPM 1984", "m", d, moorHeight},
			{"SPM84_d3m_T_s", "SPM 1984", "s", d, moorPeriod},
			{"CEM_Hm0_m", "CEM", "m", f, moorHeight},
			{"CEM_Tp_s(0.651)", "CEM", "s", f, moorPeriod},
			{"CEM_tmin_s", "CEM", "s", f, moorGrown},
			{"SMB77_Hs_m", "SMB", "m", f, moorHeight},
			{"SMB77_Ts_s", "SMB", "s", f, moorPeriod},
			{"JONSWAP_U10_Hm0_m", "JONSWAP", "m", f, moorHeight},
			{"JONSWAP_U10_Tp_s", "JONSWAP", "s", f, moorPeriod},
		} {
			out = append(out, moorNear(q.column, src, r[q.column], q.unit, moorSea(q.method, q.fetch, q.of)))
		}
	}
	table, err = rows("moor_dispersion")
	if err != nil {
		return nil, err
	}
	for _, r := range table {
		in, err := moorNumbers(r, "T_s", "depth_m")
		if err != nil {
			return nil, err
		}
		src := measure.Source{Title: "Linear dispersion solved at 30 digits", Locator: fmt.Sprintf("T %g s, d %g m", in[0], in[1]), Status: measure.Independent}
		for column, of := range map[string]func(l float64) float64{
			"L_m":         func(l float64) float64 { return l },
			"k_rad_per_m": func(l float64) float64 { return 2 * math.Pi / l },
			"C_mps":       func(l float64) float64 { return l / in[0] },
		} {
			out = append(out, moorNear(column, src, r[column], "", func() (float64, error) {
				l, err := (moor.Sea{Period: in[0]}).Length(in[1])
				return of(l), err
			}))
		}
	}
	return out, nil
}

// moorGearChecks reads the strengths back, row by row, and the frictions.
func moorGearChecks() ([]Check, error) {
	table, err := rows("moor_gear")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		out = append(out, Check{
			Package: "float/moor", Quantity: r["what"] + " of " + r["kind"],
			Source:  measure.Source{Title: r["source"], Locator: r["size"] + " in", Status: st},
			Printed: r["printed"], Unit: r["unit"],
			Compute: func() (float64, error) {
				all, err := moor.Gears(r["kind"])
				if err != nil {
					return 0, err
				}
				d, err := measure.Length.Parse(r["size"] + " in")
				if err != nil {
					return 0, err
				}
				for _, g := range all {
					if g.Size != d || g.Source.Title != r["source"] || g.Source.Status != st {
						continue
					}
					if r["what"] == "break" {
						return g.Break / moorPound, nil
					}
					return g.Working / moorPound, nil
				}
				return 0, fmt.Errorf("%s in %s is not listed from %s", r["size"], r["kind"], r["source"])
			},
		})
	}
	table, err = rows("moor_friction")
	if err != nil {
		return nil, err
	}
	for _, r := range table {
		out = append(out, Check{
			Package: "float/moor", Quantity: "friction of " + r["cast"] + " concrete, least, on " + r["bottom"],
			Source: measure.Source{Title: r["source"], Status: measure.Read}, Printed: r["printed"],
			Compute: func() (float64, error) {
				of := "dropped on"
				if r["cast"] == "cast" {
					of = "cast on"
				}
				f, err := moor.Factor(of, r["bottom"])
				return f.Value, err
			},
		})
	}
	return carried(out...), nil
}
