package published

import (
	"fmt"
	"math"

	"example.org/floewright/ice/season"
	"example.org/floewright/lumber/measure"
)

// seasonChecks compares the growth laws and degree-day rules of the season.
func seasonChecks() ([]Check, error) {
	growth, err := seasonGrowth()
	if err != nil {
		return nil, err
	}
	alpha, err := seasonAlpha()
	if err != nil {
		return nil, err
	}
	more, err := seasonMore()
	if err != nil {
		return nil, err
	}
	growth = append(growth, more...)
	lake := measure.Source{Title: "Lakes of Barrow, 2.2 m at 4160 °C·day", Locator: "as carried with the table of α", Status: measure.Quoted}
	sun := measure.Source{Title: "FAO Irrigation and Drainage Paper 56", Edition: "1998", Locator: "example 8: 20° S on 3 September, 32.2 MJ/m² a day", Status: measure.Memory}
	return append(append(growth, alpha...),
		Check{
			Package: "ice/season", Quantity: "α of 2.2 m at 4160 °C·day", Source: lake, Printed: "3.4", Unit: "cm/√(°C·day)",
			Compute: func() (float64, error) {
				a, err := season.AlphaOf(2.2, 4160)
				return 100 * a, err
			},
		},
		Check{
			Package: "ice/season", Quantity: "sun above the air", Source: sun, Printed: "32.2", Unit: "MJ/m² a day",
			Compute: func() (float64, error) {
				s, err := season.Sun(-20, 246)
				return s * 86400 / 1e6, err
			},
		}), nil
}

// seasonGrowth checks the improved growth law and the ideal one.
func seasonGrowth() ([]Check, error) {
	table, err := rows("season_growth")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		v, err := r.nums("FDD_C_day", "h0_m", "Hia_W_m2K", "snow_m", "k_snow", "k_ice", "rho_i", "L_J_kg")
		if err != nil {
			return nil, err
		}
		g := season.Growth{Exchange: v[2], SnowDepth: v[3], SnowConductivity: v[4], Conductivity: v[5], Density: v[6], Latent: v[7]}
		src := measure.Source{Title: "G. D. Ashton's growth law with its constants", Locator: "40 digits, by another program", Status: st}
		what := fmt.Sprintf(" after %.4g °C·day from %g m, %g W/(m² K), %g m of snow of %g W/(m K)", v[0], v[1], v[2], v[3], v[4])
		out = append(out,
			Check{
				Package: "ice/season", Quantity: "thickness" + what, Source: src, Printed: r["h_m_improved"], Unit: "m",
				Compute: func() (float64, error) { return g.Thickness(v[1], v[0]) },
			},
			Check{
				Package: "ice/season", Quantity: "ideal thickness" + what, Source: src, Printed: r["h_m_stefan_from_zero_ideal"], Unit: "m",
				Compute: func() (float64, error) { return g.Ideal(v[0]) },
			})
	}
	return out, nil
}

// seasonAlpha checks the square-root laws against their metric figures as printed,
// which are rounded hard, and as converted.
func seasonAlpha() ([]Check, error) {
	table, err := rows("season_alpha")
	if err != nil {
		return nil, err
	}
	rule := func(name string, high bool) func() (float64, error) {
		return func() (float64, error) {
			for _, r := range season.Rules() {
				if r.Name == name {
					lo, hi := r.Alpha()
					if high {
						lo = hi
					}
					return 100 * lo, nil
				}
			}
			return math.NaN(), fmt.Errorf("no rule %q", name)
		}
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		src := measure.Source{Title: r["source"], Status: st}
		for _, c := range []struct {
			what, printed string
			high          bool
			status        measure.Status
		}{
			{"least α, metric as printed", r["lo_cm"], false, st},
			{"greatest α, metric as printed", r["hi_cm"], true, st},
			{"least α, converted", r["converted_lo_cm"], false, measure.Independent},
			{"greatest α, converted", r["converted_hi_cm"], true, measure.Independent},
		} {
			if c.printed == "" {
				continue
			}
			src.Status = c.status
			out = append(out, Check{
				Package: "ice/season", Quantity: c.what + ": " + r["rule"], Source: src, Printed: c.printed, Unit: "cm/√(°C·day)",
				Compute: rule(r["rule"], c.high),
			})
		}
	}
	return carried(out...), nil
}
