package published

import (
	"fmt"
	"math"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// iceCritical checks the slowest wave over depth, its length and its bounds.
func iceCritical() ([]Check, error) {
	table, err := rows("ice_critical")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		v, err := r.nums("h_m", "H_m", "E_Pa", "nu", "rho_w", "rho_i", "g", "sqrt_gH", "deep")
		if err != nil {
			return nil, err
		}
		w := ice.Wave{
			Plate: ice.Plate{Thickness: v[0], E: v[2], Nu: v[3], Foundation: v[4] * v[6]},
			Depth: v[1], Gravity: v[6], IceDensity: v[5],
		}
		light := w
		light.Massless = true
		src := measure.Source{Title: "Dispersion of waves in floating ice, minimum by search", Status: st}
		what := fmt.Sprintf(", %s m of ice, %s m of water, %s Pa", r["h_m"], r["H_m"], r["E_Pa"])
		speed := func(w ice.Wave, unit float64) func() (float64, error) {
			return func() (float64, error) {
				c, _, err := w.Critical()
				return c / unit, err
			}
		}
		bound, lesser := r["sqrt_gH"], "√(gH)"
		if v[8] < v[7] {
			bound, lesser = r["deep"], "1.3247 √(gl)"
		}
		out = append(out,
			Check{Quantity: "characteristic length" + what, Source: src, Printed: r["l_m"], Unit: "m", Compute: w.Plate.CharacteristicLength},
			Check{Quantity: "critical speed" + what, Source: src, Printed: r["critical"], Unit: "m/s", Compute: speed(w, 1)},
			Check{Quantity: "critical speed" + what, Source: src, Printed: r["km_h"], Unit: "km/h", Compute: speed(w, measure.KPH)},
			Check{Quantity: "critical speed, ice without mass" + what, Source: src, Printed: r["massless"], Unit: "m/s", Compute: speed(light, 1)},
			Check{Quantity: "lesser bound, " + lesser + what, Source: src, Printed: bound, Unit: "m/s", Compute: w.Bound},
			Check{
				Quantity: "length of the slowest wave" + what, Source: src, Printed: r["wavelength_m"], Unit: "m",
				Compute: func() (float64, error) {
					_, l, err := w.Critical()
					return l, err
				},
			})
	}
	for _, c := range []struct {
		depth   float64 // in characteristic lengths
		printed string
	}{{0.5, "0.9991"}, {1, "0.9870"}, {2, "0.8838"}, {3, "0.7562"}, {5, "0.5921"}} {
		w := ice.Wave{Plate: ice.Plate{Thickness: 0.4, E: 3e9, Nu: 0.33}, Massless: true}
		out = append(out, Check{
			Quantity: fmt.Sprintf("critical speed over √(gH), ice without mass, H/l = %g", c.depth),
			Source:   measure.Source{Title: "Dispersion of waves in floating ice, minimum by search", Status: measure.Independent}, Printed: c.printed,
			Compute: func() (float64, error) {
				l, err := w.Plate.CharacteristicLength()
				if err != nil {
					return 0, err
				}
				w.Depth = c.depth * l
				speed, _, err := w.Critical()
				return speed / math.Sqrt(measure.Gravity*w.Depth), err
			},
		})
	}
	measured := func(name, unit, printed, because string, within, h, depth, e float64) Check {
		w := ice.Wave{Plate: ice.Plate{Thickness: h, E: e, Nu: 0.33, Foundation: 1026 * 9.81}, Depth: depth, Gravity: 9.81}
		scale := 1.0
		if unit == "km/h" {
			scale = measure.KPH
		}
		return Check{
			Quantity: fmt.Sprintf("critical speed on sea ice of %g m over %g m", h, depth), Source: measure.Source{Title: name, Status: measure.Read},
			Printed: printed, Unit: unit, Because: because, Within: within,
			Compute: func() (float64, error) {
				c, _, err := w.Critical()
				return c / scale, err
			},
		}
	}
	return append(out,
		measured("Saroma field study, abstract, 1988", "m/s", "5.8", "measured; its modulus, 0.51 GPa, is from memory", 0.25, 0.175, 6.8, 0.51e9),
		measured("Alaska Science Forum", "km/h", "32", "called typical; the modulus, 5 GPa, is assumed, and shallow water alone bounds it to 29.8 km/h", 3.1, 0.30, 7, 5e9)), nil
}

// iceWedges checks the series for broken ice, against itself as printed and
// against the wedge's own equation solved.
func iceWedges() ([]Check, error) {
	table, err := rows("ice_wedges")
	if err != nil {
		return nil, err
	}
	p := ice.Plate{Thickness: 0.3, E: 1e9, Nu: 0.33, Foundation: 9810}
	l, err := p.CharacteristicLength()
	if err != nil {
		return nil, err
	}
	const strength = 0.7e6
	bearing := func(alpha float64, wedges int) (float64, error) {
		b, err := p.Breakthrough(ice.Patch{A: alpha * l}, strength, wedges)
		return b.Wedges / (strength * 0.3 * 0.3), err
	}
	// Four wedges bear 2 n tan(π/n)/6 = 4/3 times the bracket.
	bracket := func(alpha float64) func() (float64, error) {
		return func() (float64, error) {
			x, err := bearing(alpha, 4)
			return x * 3 / 4, err
		}
	}
	out := []Check{
		{
			Quantity: "2 n tan(π/n), 8 wedges", Source: measure.Source{Title: "D. E. Nevel, wedges of a broken ice sheet", Status: measure.Memory}, Printed: "6.627",
			Compute: func() (float64, error) {
				eight, err := bearing(0.1, 8)
				if err != nil {
					return 0, err
				}
				four, err := bearing(0.1, 4)
				return 8 * eight / four, err
			},
		},
		{
			Quantity: "P/(σ h²), 8 wedges, a small circle", Source: measure.Source{Title: "D. E. Nevel, wedges of a broken ice sheet", Status: measure.Memory}, Printed: "1.16",
			Compute: func() (float64, error) { return bearing(0.0003, 8) },
		},
	}
	for _, r := range table {
		a, err := r.num("alpha")
		if err != nil {
			return nil, err
		}
		out = append(out,
			Check{
				Quantity: "bracket at a/l = " + r["alpha"], Source: measure.Source{Title: "D. E. Nevel, wedges of a broken ice sheet", Status: measure.Memory},
				Printed: r["bracket"], Compute: bracket(a),
			},
			Check{
				Quantity: "bracket at a/l = " + r["alpha"], Source: measure.Source{Title: "Wedge on water, its differential equation solved", Status: measure.Independent},
				Printed: r["solved"], Because: "the series is an approximation: 0.6 % off up to half a length, 4.1 % low at one", Compute: bracket(a),
				Within: map[bool]float64{true: 0.155, false: 0.012}[a == 1],
			})
	}
	return out, nil
}

// iceEdges checks the free edge.
func iceEdges() ([]Check, error) {
	table, err := rows("ice_edges")
	if err != nil {
		return nil, err
	}
	const force = 9810.0
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		v, err := r.nums("nu", "a_over_l")
		if err != nil {
			return nil, err
		}
		p := ice.Plate{Thickness: 0.3, E: 1e9, Nu: v[0], Foundation: 9810}
		l, err := p.CharacteristicLength()
		if err != nil {
			return nil, err
		}
		src := measure.Source{Title: "Free edge of a floating plate, Fourier integral with 25 digits", Status: st}
		what := fmt.Sprintf(" at the edge, ν = %s, a/l = %s", r["nu"], r["a_over_l"])
		out = append(out,
			Check{
				Quantity: "w k l²/P" + what, Source: src, Printed: r["w"], Relative: 1e-9,
				Compute: func() (float64, error) {
					b, err := p.Edge(force, v[1]*l)
					return b.Deflection * 9810 * l * l / force, err
				},
			},
			Check{
				Quantity: "Mx/P" + what, Source: src, Printed: r["Mx"], Relative: 1e-8,
				Compute: func() (float64, error) {
					b, err := p.Edge(force, v[1]*l)
					return b.Mx / force, err
				},
			})
	}
	for _, c := range []struct {
		nu      float64
		printed string
	}{{0.15, "0.43248"}, {0.33, "0.461856"}} {
		p := ice.Plate{Thickness: 0.3, E: 1e9, Nu: c.nu, Foundation: 9810}
		out = append(out, Check{
			Quantity: fmt.Sprintf("0.408 (1 + 0.4 ν), ν = %g, against the integral", c.nu),
			Source:   measure.Source{Title: "H. M. Westergaard, load at a free edge", Status: measure.Memory}, Printed: c.printed,
			Because: "the figure fits a ν of 0.15", Within: 0.008,
			Compute: func() (float64, error) {
				l, err := p.CharacteristicLength()
				if err != nil {
					return 0, err
				}
				b, err := p.Edge(force, 0.001*l)
				return b.Deflection * 9810 * l * l / force, err
			},
		})
	}
	return out, nil
}

// iceHauls checks the published limits for hauling.
func iceHauls() ([]Check, error) {
	sheet := ice.Sheet{Water: ice.Lake, Depth: 400}
	for range 6 {
		sheet.Holes = append(sheet.Holes, ice.Hole{Clear: 2, Looked: true})
	}
	limit := func(mass float64, offshore bool) func() (float64, error) {
		return func() (float64, error) {
			c, err := sheet.Hauling(ice.Haul{Load: ice.Crossing{Mass: mass, Machine: ice.Truck}, Offshore: offshore})
			return c.Limit / measure.KPH, err
		}
	}
	quoted := measure.Source{Title: "Canadian Geographic, at privatefleetinfo.com", Status: measure.Quoted}
	return carried([]Check{
		{Quantity: "speed limit, 7 t and more", Source: measure.Source{Title: "Manitoba Transportation and Infrastructure", Status: measure.Read}, Printed: "15", Unit: "km/h", Compute: limit(7000, true)},
		{Quantity: "speed limit, over 7000 kg", Source: measure.Source{Title: "Saskatchewan Highways, winter roads", Status: measure.Read}, Printed: "15", Unit: "km/h", Compute: limit(8000, true)},
		{Quantity: "speed with a load", Source: quoted, Printed: "25", Unit: "km/h", Compute: limit(6900, true)},
		{Quantity: "speed on entering and leaving", Source: quoted, Printed: "10", Unit: "km/h", Compute: limit(6900, false)},
	}...), nil
}
