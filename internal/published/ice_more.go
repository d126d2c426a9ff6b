package published

import (
	"fmt"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// iceMore has the edge of a sheet, its waves, a shovelled pad, the gauge, and what stands for
// days.
func iceMore() ([]Check, error) {
	waves, err := iceSpeeds()
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, set := range [][]Check{waves, iceFreeEdge(), iceShovelled(), iceGauge(), iceStands(), iceCompared()} {
		out = append(out, set...)
	}
	return out, nil
}

// iceSpeeds checks the speed of waves by their length, and that the slowest found by another
// program's search is one of them.
func iceSpeeds() ([]Check, error) {
	table, err := rows("ice_critical")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		v, err := r.nums("h_m", "H_m", "E_Pa", "nu", "rho_w", "rho_i", "g", "wavelength_m")
		if err != nil {
			return nil, err
		}
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		w := ice.Wave{
			Plate: ice.Plate{Thickness: v[0], E: v[2], Nu: v[3], Foundation: v[4] * v[6]},
			Depth: v[1], Gravity: v[6], IceDensity: v[5],
		}
		out = append(out, Check{
			Quantity: fmt.Sprintf("speed of waves of %s m, %s m of ice, %s m of water, %s Pa", r["wavelength_m"], r["h_m"], r["H_m"], r["E_Pa"]),
			Source:   measure.Source{Title: "Dispersion of waves in floating ice, minimum by search", Status: st},
			Printed:  r["critical"], Unit: "m/s",
			Compute: func() (float64, error) { return w.Speed(v[7]) },
		})
	}
	thin := ice.Wave{Plate: ice.Plate{Thickness: 0.3, E: 5e9, Nu: 0.33}, Depth: 3}
	deep := ice.Wave{Plate: ice.Plate{Thickness: 0.5, E: 3e9, Nu: 0.33}, Depth: 30, Massless: true}
	speed := func(w ice.Wave, length float64) func() (float64, error) {
		return func() (float64, error) { return w.Speed(length) }
	}
	src := independent("Dispersion of waves in floating ice, 50 digits", "c² = (Dκ⁴/ρw + g)/κ tanh κH/(1 + ρi h/ρw κ tanh κH), κ = 2π/length")
	out = append(out, share("", src, 1e-11,
		one{"speed of waves of 20 m, 0.3 m of ice, 3 m of water", "17.1058831812", "m/s", speed(thin, 20)},
		one{"speed of waves of 200 m, 0.3 m of ice, 3 m of water", "5.41720415011", "m/s", speed(thin, 200)},
		one{"speed of waves of 60 m, 0.5 m of ice without mass, 30 m of water", "11.5507552521", "m/s", speed(deep, 60)},
	)...)
	return append(out, share("", exactly("Long waves", "√(gH), whatever covers the water"), 1e-7,
		one{"speed of waves of 1000 km, 3 m of water", "5.4240160398", "m/s", speed(thin, 1e6)},
	)...), nil
}

// iceFreeEdge checks the deflection at a free edge against the half plane solved by Fourier's
// integral, and the figure printed for pavements.
func iceFreeEdge() []Check {
	edge := func(nu float64) func() (float64, error) {
		return func() (float64, error) {
			p := ice.Plate{Thickness: 0.3, E: 5e9, Nu: nu}
			l, err := p.CharacteristicLength()
			if err != nil {
				return 0, err
			}
			w, _, err := p.EdgeDeflection(1e4)
			return w * 1000 * measure.Gravity * l * l / 1e4, err
		}
	}
	half := independent("Half plane on water under a force at its edge, Fourier's integral at 60 digits", "(1/π)∫ W dξ, each W from moment and shear at the edge, P/(kl²)")
	const rounded = "the formula is linear in ν and its factor rounded to three digits"
	return append(
		share("", measure.Source{Title: "H. M. Westergaard, stresses in concrete pavements", Edition: "1926", Locator: "deflection at the edge, 1/√6 (1 + 0.4 ν)", Status: measure.Memory}, 2e-3,
			one{"deflection at the edge, ν = 0.15, P/(kl²)", "0.432743187892", "", edge(0.15)},
			one{"deflection at the edge, ν = 0.33, P/(kl²)", "0.462137064806", "", edge(0.33)},
		),
		Check{Quantity: "deflection at the edge, ν = 0, P/(kl²)", Source: half, Printed: "0.408248290464", Because: rounded, Within: 0.0003, Compute: edge(0)},
		Check{Quantity: "deflection at the edge, ν = 0.15, P/(kl²)", Source: half, Printed: "0.43143802052", Because: rounded, Within: 0.0012, Compute: edge(0.15)},
		Check{Quantity: "deflection at the edge, ν = 0.33, P/(kl²)", Source: half, Printed: "0.469305498279", Because: rounded + ": 1.6 % little at the ν of ice", Within: 0.0076, Compute: edge(0.33)},
	)
}

// iceShovelled checks a shovelled pad against the point load's deflection summed over its parts.
func iceShovelled() []Check {
	pad := ice.Pad{A: 5, B: 3, Snow: 60, Bank: 0.8}
	plate := ice.Plate{Thickness: 0.3, E: 5e9, Nu: 0.33}
	at := func(x, y float64) func() (float64, error) {
		return func() (float64, error) {
			b, err := pad.Shovelled(plate, x, y)
			return b.Deflection / measure.Millimetre, err
		}
	}
	src := independent("Snow moved on a plate, 15 digits", "∫∫ -q kei(r/l)/(2πkl²) over bank and pad; 5 m by 3 m, 60 kg/m², bank 0.8 m")
	return share("", src, 1e-6,
		one{"deflection in the middle of the pad", "-0.22715011905", "mm", at(0, 0)},
		one{"deflection under its bank", "-0.17000733694", "mm", at(0, 1.9)},
		one{"deflection 9 m off its middle", "1.80796782e-4", "mm", at(9, 0)},
	)
}

// iceGauge checks the trend of readings by least squares and Student's t.
func iceGauge() []Check {
	gauge := func(days, mm []float64) ice.Gauge {
		var g ice.Gauge
		for i, d := range days {
			g = append(g, ice.Reading{Age: d * measure.Day, Freeboard: mm[i] / 1000})
		}
		return g
	}
	fall := func(g ice.Gauge, of func(ice.Fall) float64) func() (float64, error) {
		return func() (float64, error) {
			f, err := g.Fall()
			return of(f), err
		}
	}
	days := func(of func(ice.Fall) float64) func(ice.Fall) float64 {
		return func(f ice.Fall) float64 { return of(f) / measure.Day }
	}
	rate := func(f ice.Fall) float64 { return f.Rate * measure.Day * 1000 }
	zero := days(func(f ice.Fall) float64 { return f.Zero })
	early := days(func(f ice.Fall) float64 { return f.Early })
	late := days(func(f ice.Fall) float64 { return f.Late })
	five := gauge([]float64{8, 6, 5, 3, 1}, []float64{42, 37, 36, 25, 22})
	line := gauge([]float64{2, 1, 0}, []float64{30, 20, 10})
	src := independent("Line of least squares and its band by Student's t, 50 digits", "b = Σxy/Σx²; y + t s √(1/n + x²/Σx²) = 0 with t at 0.95; 42, 37, 36, 25, 22 mm at 8, 6, 5, 3, 1 days ago")
	out := share("", src, 1e-9,
		one{"rate of fall of five readings", "3.07534246575342", "mm/day", fall(five, rate)},
		one{"days until the line reaches zero", "5.93541202673", "days", fall(five, zero)},
		one{"days until the band reaches zero", "10.428508752", "days", fall(five, late)},
		// From 42 mm 8 days ago to 22 mm a day ago... the steepest is from 36 mm 5 days ago, all 3 mm wrong.
		one{"days by the steepest fall from a reading to the last", "3.47058823529412", "days", fall(five, early)},
		// On a line; t of one degree of freedom is tan(0.45π), s half of what a reading may be wrong by.
		one{"days until the band reaches zero, three readings on a line", "5.16379256829", "days", fall(line, late)},
	)
	// 10 mm a day from 10 mm; and 7 mm left at (10 + 3) mm a day from the reading before.
	return append(out, share("", exactly("Three readings on a line", "30, 20 and 10 mm, one a day, the last one now"), 1e-9,
		one{"rate of fall", "10.0000000000", "mm/day", fall(line, rate)},
		one{"days until zero", "1.00000000000", "days", fall(line, zero)},
		one{"days by the steepest fall, 7 mm at 13 mm a day", "0.538461538462", "days", fall(line, early)},
		one{"last reading", "0.010000000000", "m", fall(line, func(f ice.Fall) float64 { return f.Newest })},
	)...)
}

// iceStands checks what stands for days on 18 in of ice over a round of 1.2 m, by the closed
// deflection of a plate under a circle.
func iceStands() []Check {
	sheet := ice.Sheet{
		Water: ice.Lake, Season: ice.Winter, Age: 7200, Depth: 4,
		Cracks: ice.NoCracks, Wet: ice.NotFound, Inlets: ice.NotFound, Changed: ice.NotFound,
		Air: []ice.Air{{High: -5, Low: -10}, {High: -5, Low: -10}, {High: -5, Low: -10}, {High: -5, Low: -10}, {High: -5, Low: -10}},
	}
	for i, at := range [][2]float64{{-4, 3}, {4, 3}, {4, -3}, {-4, -3}, {0, 0}, {0, -20}} {
		sheet.Holes = append(sheet.Holes, ice.Hole{
			Name: []string{"pad, NW corner", "pad, NE corner", "pad, SE corner", "pad, SW corner", "pad, middle", "walk"}[i],
			X:    at[0], Y: at[1], Clear: 18 * measure.Inch, Water: 0.038, Looked: true,
		})
	}
	load := ice.Stand{Loads: []ice.Patch{{A: 1.2, Force: 15000}}, Stay: 21 * measure.Day}
	sag := func(days float64, most bool) func() (float64, error) {
		return func() (float64, error) {
			least, deep, err := sheet.Sag(load, days*measure.Day)
			if most {
				least = deep
			}
			return least / measure.Millimetre, err
		}
	}
	flood := func(load ice.Stand, of func(ice.Flood) float64) func() (float64, error) {
		return func() (float64, error) {
			f, err := sheet.Flooding(load)
			return of(f), err
		}
	}
	elastic := independent("Plate on water under a circle, 40 digits", "w = q/k (1 + a/l ker'(a/l)); 15 kN on a radius of 1.2 m, 18 in, E of 1 and 9.5 GPa")
	out := share("", elastic, 1e-5,
		one{"sag of the softest ice when it is set", "6.19447759837", "mm", sag(0, true)},
		one{"sag of the stiffest ice when it is set", "2.03735495758", "mm", sag(0, false)},
	)
	held := independent("The same with the creep law's secant modulus, 40 digits", "E J(σ(E), t) = 1 by root finding, σ = 6M/h², M = (1+ν)/2 q l² a/l kei'(a/l); -5 °C, 10 mm")
	out = append(out, share("", held, 1e-4,
		one{"sag of the stiffest ice after a day", "4.390377136", "mm", sag(1, false)},
		one{"sag of the stiffest ice after 7 days", "8.185023466", "mm", sag(7, false)},
	)...)
	flows := independent("The same by Laplace's transform of the creep law, turned back at 40 digits", "w(1/(p J(p)))/p, flow at the stress before any creep; -1 °C, 1 mm, 1 GPa")
	out = append(out, share("", flows, 1e-3,
		one{"sag of the softest ice after a day", "9.889688402", "mm", sag(1, true)},
		one{"sag of the softest ice after 7 days", "16.14861416", "mm", sag(7, true)},
	)...)
	// Under 50 mm of snow to come 17.9476 mm are left: for soft ice by the transform, for stiff ice by
	// the secant modulus. Without that snow the law ends first, where its strain reaches 1e-3.
	covered := load
	covered.Snow = 0.05
	soonest := func(f ice.Flood) float64 { return f.Soonest / measure.Day }
	out = append(out, share("", flows, 1e-3,
		one{"days until water comes over the softest ice under 50 mm of snow", "9.190838025", "days", flood(covered, soonest)},
	)...)
	out = append(out, share("", held, 1e-4,
		one{"days until water comes over the stiffest ice under 50 mm of snow", "60.9963937", "days", flood(covered, func(f ice.Flood) float64 { return f.Latest / measure.Day })},
		one{"days until the softest ice is strained by 1e-3", "9.58076683614", "days", flood(load, soonest)},
	)...)
	// Clear ice floats 0.083 of itself high; 50 mm of snow of 400 kg/m³ press it down by 20 mm.
	return append(out, share("", exactly("Freeboard of clear ice", "(1 - 0.917) h; snow of 400 kg/m³ takes 0.4 of its depth"), 1e-9,
		one{"freeboard of 18 in before anything stands there", "37.9476000000", "mm", flood(load, func(f ice.Flood) float64 { return f.Freeboard * 1000 })},
		one{"freeboard under 50 mm of snow to come", "17.9476000000", "mm", flood(covered, func(f ice.Flood) float64 { return f.Freeboard * 1000 })},
	)...)
}

// iceCompared checks the span of what the sources ask for one person, twice that for what stands
// for hours, and the time that a gauge leaves.
func iceCompared() []Check {
	person := ice.Crossing{Mass: 100, People: 1}
	spread := func(most bool) func() (float64, error) {
		return func() (float64, error) {
			c, err := ice.Compare(person)
			least, greatest := c.Spread()
			if most {
				least = greatest
			}
			return least / measure.Inch, err
		}
	}
	red := measure.Source{Title: "Canadian Red Cross, ice thickness advice, as quoted in 2022", Locator: "walking or skating alone: 15 cm", Status: measure.Quoted}
	out := carried(share("", red, 1e-12, one{"thickest ice that a source asks for one person", "15", "cm", func() (float64, error) {
		x, err := spread(true)()
		return x * measure.Inch * 100, err
	}})...)
	// The weakest of the bearing rules is h = 4 √W in inches and short tons, P = h²/16 turned round.
	out = append(out, share("", independent("US Army TM 5-852-1, P = h²/16 tons under 100 kg, 50 digits", "h = 4 √(100/907.18474)"), 1e-9,
		one{"thinnest ice that a source asks for one person", "1.32804295769", "in", spread(false)},
	)...)
	sheet := ice.Sheet{Water: ice.Lake, Cracks: ice.NoCracks}
	gauge := ice.Gauge{{Age: 2 * measure.Day, Freeboard: 0.03}, {Age: measure.Day, Freeboard: 0.02}, {Freeboard: 0.01}}
	check := func(of func(measure.Check) float64, c func() (measure.Check, error)) func() (float64, error) {
		return func() (float64, error) {
			checked, err := c()
			return of(checked), err
		}
	}
	beside := func(mass float64) func() (measure.Check, error) {
		return func() (measure.Check, error) {
			stand := ice.Stand{Loads: []ice.Patch{{A: 0.5, Force: mass * measure.Gravity}}, Stay: measure.Day}
			return sheet.Beside(stand, ice.Crossing{Mass: 80, People: 1})
		}
	}
	limit := func(c measure.Check) float64 { return c.Limit * 100 }
	// 2 short tons are 1814 kg: a stand of 1700 kg and a person, counted as 100 kg, are less,
	// 1730 kg and a person are more, though not with his own 80 kg.
	pounder := measure.Source{
		Title:   "National Research Council of Canada (Pounder), in the Canadian Ice Service archive, 2006",
		Locator: "2 ton 25 cm, 10 ton 43 cm, both moving; twice that for what stands", Status: measure.Read,
	}
	out = append(out, share("", pounder, 1e-12,
		one{"ice under 1700 kg that stand and a person beside", "50", "cm", check(limit, beside(1700))},
		one{"ice under 1730 kg that stand and a person beside", "86", "cm", check(limit, beside(1730))},
	)...)
	return append(out, share("", exactly("Twice what the strictest source asks, and 7 mm at 13 mm a day", "15 cm for one person, doubled for what stands; the gauge read 30, 20 and 10 mm"), 1e-9,
		one{"ice under 100 kg that stand for 4 hours", "30.0000000000", "cm", check(limit, func() (measure.Check, error) { return sheet.ParkedHours(ice.Crossing{Mass: 100, People: 1}, 4) })},
		one{"days that a gauge leaves", "0.538461538462", "days", check(func(c measure.Check) float64 { return c.Value / measure.Day }, func() (measure.Check, error) { return gauge.Check(measure.Day) })},
	)...)
}
