package published

import (
	"fmt"
	"math"
	"strconv"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// iceCreep checks strain and secant modulus of the creep law.
func iceCreep() ([]Check, error) {
	table, err := rows("ice_creep")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		v, err := r.nums("T_C", "t_s", "sigma_MPa", "grain_mm")
		if err != nil {
			return nil, err
		}
		c := ice.Creep{Temperature: v[0], Grain: v[3] * measure.Millimetre}
		src := measure.Source{Title: "N. K. Sinha, creep law of columnar-grained ice", Edition: "1978, evaluated with R = 8.314 J/(mol K)", Status: st}
		what := fmt.Sprintf("%s °C, %s s, %s MPa, %s mm", r["T_C"], r["t_s"], r["sigma_MPa"], r["grain_mm"])
		out = append(out,
			Check{
				Quantity: "strain at " + what, Source: src, Printed: r["strain"],
				Compute: func() (float64, error) {
					e, _, err := c.Strain(v[2]*measure.Megapascal, v[1])
					return e, err
				},
			},
			Check{
				Quantity: "secant modulus at " + what, Source: src, Printed: r["E_eff_MPa"], Unit: "MPa",
				Compute: func() (float64, error) {
					e, _, err := c.Modulus(v[2]*measure.Megapascal, v[1])
					return e / measure.Megapascal, err
				},
			})
	}
	return out, nil
}

// iceFreeboard checks the load whose sag uses up the freeboard of bare ice.
func iceFreeboard() ([]Check, error) {
	table, err := rows("ice_freeboard")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		v, err := r.nums("h_m", "E_eff_Pa")
		if err != nil {
			return nil, err
		}
		p := ice.Plate{Thickness: v[0], E: v[1], Nu: 0.33, Foundation: 9810}
		src := measure.Source{Title: "Load that floods, 8 ρ l² f, clear ice without snow", Status: st}
		what := fmt.Sprintf("%s m, %s Pa", r["h_m"], r["E_eff_Pa"])
		mass := func() (float64, error) {
			f, err := ice.Cover{Ice: v[0]}.Freeboard()
			if err != nil {
				return 0, err
			}
			force, err := p.FloodLoad(f)
			return force / 9.81, err
		}
		out = append(out,
			Check{Quantity: "characteristic length, " + what, Source: src, Printed: r["l_m"], Unit: "m", Compute: p.CharacteristicLength},
			Check{Quantity: "freeboard, " + what, Source: src, Printed: r["freeboard_m_rho917_nosnow"], Unit: "m", Compute: ice.Cover{Ice: v[0]}.Freeboard},
			Check{Quantity: "load that floods, " + what, Source: src, Printed: r["load_kg_for_w0_eq_freeboard"], Unit: "kg", Compute: mass},
			Check{
				Quantity: "its A, " + what, Source: src, Printed: r["equivalent_A_kg_cm2"], Unit: "kg/cm2",
				Compute: func() (float64, error) {
					m, err := mass()
					return m / (v[0] * v[0] * 1e4), err
				},
			})
	}
	for _, c := range []struct{ gpa, kg, a string }{{"5", "7146", "7.94"}, {"1", "3196", "3.55"}, {"0.2", "1429", "1.59"}} {
		mass := func() (float64, error) {
			e, err := strconv.ParseFloat(c.gpa, 64)
			if err != nil {
				return 0, err
			}
			force, err := ice.Plate{Thickness: 0.3, E: e * 1e9, Nu: 0.33, Foundation: 9810}.FloodLoad(0.0249)
			return force / 9.81, err
		}
		src := measure.Source{Title: "Load that floods 0.30 m of clear ice, worked by hand", Status: measure.Independent}
		out = append(out,
			Check{Quantity: "load that floods 0.30 m, " + c.gpa + " GPa", Source: src, Printed: c.kg, Unit: "kg", Compute: mass},
			Check{
				Quantity: "its A on 0.30 m, " + c.gpa + " GPa", Source: src, Printed: c.a, Unit: "kg/cm2",
				Compute: func() (float64, error) {
					m, err := mass()
					return m / 900, err
				},
			})
	}
	return out, nil
}

// iceDock checks a dock on a circle as the modulus falls, and the days that the
// creep law takes at a held stress until it floods.
func iceDock() ([]Check, error) {
	table, err := rows("ice_dock")
	if err != nil {
		return nil, err
	}
	load := []ice.Patch{{A: 2.394, Force: 2500 * 9.81}}
	src := measure.Source{Title: "2500 kg over 18 m² of floating ice, closed form", Status: measure.Independent}
	var out []Check
	for _, r := range table {
		v, err := r.nums("h_m", "E_Pa")
		if err != nil {
			return nil, err
		}
		p := ice.Plate{Thickness: v[0], E: v[1], Nu: 0.33, Foundation: 9810, Thin: true}
		what := fmt.Sprintf(", %s m, %s Pa", r["h_m"], r["E_Pa"])
		out = append(out, Check{
			Quantity: "sag" + what, Source: src, Printed: r["w0_mm"], Unit: "mm",
			Compute: func() (float64, error) {
				b, err := p.At(load, 0, 0)
				return b.Deflection / measure.Millimetre, err
			},
		})
		if r["l_m"] == "" {
			continue
		}
		out = append(out,
			Check{Quantity: "characteristic length" + what, Source: src, Printed: r["l_m"], Unit: "m", Compute: p.CharacteristicLength},
			Check{
				Quantity: "tension" + what, Source: src, Printed: r["sigma_kPa"], Unit: "kPa",
				Compute: func() (float64, error) {
					b, err := p.At(load, 0, 0)
					if err != nil {
						return 0, err
					}
					s, err := p.Stress(b)
					return s / measure.Kilopascal, err
				},
			})
	}
	for _, c := range []struct {
		mpa, celsius float64
		printed      string
	}{{0.115, -10, "23"}, {0.115, -5, "13"}, {0.115, -2, "9"}, {0.2, -10, "7.5"}, {0.2, -5, "4.3"}, {0.2, -2, "3.1"}} {
		out = append(out, Check{
			Quantity: fmt.Sprintf("days until the modulus is 0.2 GPa, %g MPa held at %g °C", c.mpa, c.celsius), Source: src, Printed: c.printed, Unit: "days",
			Compute: func() (float64, error) { return iceDays(c.mpa*measure.Megapascal, c.celsius) },
		})
	}
	return out, nil
}

// iceDays returns the days until the secant modulus has fallen to 0.2 GPa, at
// which the dock on 0.35 m has about used up its freeboard.
func iceDays(stress, celsius float64) (float64, error) {
	lo, hi := 3600.0, 100*measure.Day
	for range 60 {
		mid := math.Sqrt(lo * hi)
		e, _, err := ice.Creep{Temperature: celsius, Grain: 3 * measure.Millimetre}.Modulus(stress, mid)
		if err != nil {
			return 0, err
		}
		if e > 0.2e9 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo / measure.Day, nil
}

// iceCover checks snow against freeboard, slush, and heat against ice.
func iceCover() ([]Check, error) {
	independent := func(title string) measure.Source {
		return measure.Source{Title: title, Status: measure.Independent}
	}
	out := []Check{
		{
			Quantity: "snow of 100 kg/m³ that submerges 10 cm of ice of 900 kg/m³",
			Source:   measure.Source{Title: "lakeice.squarespace.com, blog of 2013", Status: measure.Read}, Printed: "10", Unit: "cm",
			Compute: func() (float64, error) {
				d, err := ice.Cover{Ice: 0.1, IceDensity: 900, SnowDensity: 100}.MostSnow()
				return d * 100, err
			},
		},
		{
			Quantity: "snow that submerges, in thicknesses of ice: about half",
			Source:   measure.Source{Title: "G. D. Ashton, Ice in lakes and rivers", Status: measure.Read}, Printed: "0.5", Relative: 1e-2,
			Compute: func() (float64, error) { return ice.Cover{Ice: 1, SnowDensity: 166}.MostSnow() },
		},
		{
			Quantity: "snow that just floods 0.40 m of ice of 917 kg/m³", Source: independent("(1000 - 917) × 0.40"), Printed: "33.2", Unit: "kg/m²",
			Compute: func() (float64, error) {
				d, err := ice.Cover{Ice: 0.4}.MostSnow()
				return d * 400, err // packed snow, the default
			},
		},
		{
			Quantity: "freeboard that 10 cm of snow of 250 kg/m³ takes", Source: independent("Snow on floating ice"), Printed: "25", Unit: "mm",
			Compute: func() (float64, error) {
				f, err := ice.Cover{Snow: 0.1, SnowDensity: 250}.Freeboard()
				return -f / measure.Millimetre, err
			},
		},
		{
			Quantity: "slush on 0.25 m of ice under 0.20 m of snow of 250 kg/m³, slush 920 kg/m³", Source: independent("Slush after the level has balanced"), Printed: "88.6", Unit: "mm",
			Compute: func() (float64, error) {
				z, err := ice.Cover{Ice: 0.25, Snow: 0.20, SnowDensity: 250}.Slush(920)
				return z / measure.Millimetre, err
			},
		},
		{
			Quantity: "slush on 0.3 m of ice under 0.5 m of snow of 300 kg/m³", Source: independent("[300 × 0.5 - 83 × 0.3]/(1000 + 300 - 920)"), Printed: "0.3292", Unit: "m",
			Compute: func() (float64, error) { return ice.Cover{Ice: 0.3, Snow: 0.5, SnowDensity: 300}.Slush(920) },
		},
		{
			Quantity: "snow of 200 kg/m³ that 0.40 m of clear ice just lifts", Source: independent("(1000 - 917) × 0.40 / 200"), Printed: "0.1660", Unit: "m",
			Compute: func() (float64, error) { return ice.Cover{Ice: 0.4, SnowDensity: 200}.MostSnow() },
		},
		{
			Quantity: "melt by 20 W/m² in a day", Source: independent("Heat of melting, 334 kJ/kg"), Printed: "0.5648", Unit: "cm",
			Because: "worked out with 916 kg/m³, here 917", Within: 0.0008,
			Compute: func() (float64, error) {
				d, err := ice.MeltIn(20, measure.Day)
				return d * 100, err
			},
		},
	}
	for _, c := range []struct {
		density float64
		printed string
	}{{100, "0.83"}, {200, "0.415"}, {300, "0.277"}} {
		out = append(out, Check{
			Quantity: fmt.Sprintf("snow of %g kg/m³ that submerges, in thicknesses of ice", c.density), Source: independent("83/ρ for ice of 917 kg/m³"), Printed: c.printed,
			Compute: func() (float64, error) { return ice.Cover{Ice: 1, SnowDensity: c.density}.MostSnow() },
		})
	}
	for _, h := range []struct {
		ice     float64
		printed string
	}{{0.25, "20.75"}, {0.35, "29.05"}, {0.45, "37.35"}} {
		out = append(out, Check{
			Quantity: fmt.Sprintf("freeboard of %g m of clear ice", h.ice), Source: independent("Floating ice of 917 kg/m³"), Printed: h.printed, Unit: "mm",
			Compute: func() (float64, error) {
				f, err := ice.Cover{Ice: h.ice}.Freeboard()
				return f / measure.Millimetre, err
			},
		})
	}
	return out, nil
}
