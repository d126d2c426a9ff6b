package published

import (
	"fmt"

	"example.org/floewright/ice/action"
	"example.org/floewright/lumber/measure"
)

// actionGrip checks what the ice does to one drum and its brackets.
func actionGrip() ([]Check, error) {
	cover := action.Cover{Thickness: 0.3, Modulus: actionOne(5e9), Flexure: actionOne(0.7e6), Crushing: actionOne(3e6)}
	drum := action.Body{Length: 0.9, Breadth: 0.6}
	grip := func(c action.Cover, b action.Body, level float64, of func(action.Grip) float64) func() (float64, error) {
		return func() (float64, error) {
			g, err := c.Grip(b, level, 4)
			return of(g) / measure.Kilonewton, err
		}
	}
	soft := cover
	soft.Crushing = actionOne(0.5e6)
	sideways := func(g action.Grip) float64 { return g.Sideways.High }
	squeeze := func(g action.Grip) float64 { return g.Squeeze.High }
	thrust := measure.Source{
		Title: "CEATI T192700 #0247, abstract: 378 kN/m once in 100 years, 15 % more on 5 m", Locator: "378 × 1.15 × 0.9 m", Status: measure.Quoted,
	}
	out := share("ice/action", thrust, 1e-12, one{"greatest thrust on a drum of 0.9 m", "391.23", "kN", grip(cover, drum, 0.1, sideways)})
	out = append(out, share("ice/action", exactly("Pressure times area", "0.5 MPa × 0.3 m × 0.9 m; half of it on one of four brackets"), 1e-12,
		one{"ice of 0.5 MPa crushed by a drum of 0.9 m", "135.000000000", "kN", grip(soft, drum, 0.1, sideways)},
		one{"ice crushed, on one of four brackets, if half of them take all", "67.5000000000", "kN", grip(soft, drum, 0.1, func(g action.Grip) float64 { return g.BracketSideways.High })},
		one{"squeeze of a drum, kPa", "500.000000000", "kN/m²", grip(soft, drum, 0.1, squeeze)},
	)...)
	// Without cracks a point load's deflection turned round: F = 8 k l² δ as a/l goes to 0. Per µm of
	// 0.3 m and 5 GPa, l² = 35.88002 m².
	hertz := independent("Wyman's plate under a point, 50 digits", "8 k l² δ, l⁴ = Eh³/12(1-ν²)k, ν = 0.33, k = 9806.65 N/m³; a quarter on one of four brackets at least")
	tiny := action.Body{Length: 1e-5}
	return append(append(out, share("ice/action", hertz, 1e-4,
		one{"lift per mm of a rising sheet", "2.81490254806", "kN", grip(cover, tiny, 1e-6, func(g action.Grip) float64 { return g.Up.High * 1000 })},
		one{"lift per mm of a falling sheet", "-2.81490254806", "kN", grip(cover, tiny, -1e-6, func(g action.Grip) float64 { return g.Up.Low * 1000 })},
		one{"greatest lift per mm on one of four brackets", "1.40745127403", "kN", grip(cover, tiny, 1e-6, func(g action.Grip) float64 { return g.BracketUp.High * 1000 })},
	)...), actionChecked(cover, soft)...), nil
}

// actionChecked checks what lines and joints are asked to bear by a lift and a push.
func actionChecked(cover, soft action.Cover) []Check {
	push := func() (float64, error) {
		p, err := action.Drift{Cover: soft, Wind: 10, Reach: 1000, Width: 1000, Face: action.Face{Width: 0.9, Height: 0.6}}.Push()
		if err != nil {
			return 0, err
		}
		c, err := p.Check("pile", 2e5)
		return c.Value / measure.Kilonewton, err
	}
	lift := func(of func(measure.Check) float64) func() (float64, error) {
		return func() (float64, error) {
			l, err := cover.Uplift(action.Body{Length: 1e-5}, 1e-6)
			if err != nil {
				return 0, err
			}
			c, err := l.Check("bracket", 2.5)
			return of(c), err
		}
	}
	return append(share("ice/action", exactly("Pressure times area", "0.5 MPa × 0.3 m × 0.9 m, whatever the wind"), 1e-12,
		one{"push of a sheet that gathers way, as checked", "135.000000000", "kN", push},
	), share("ice/action", independent("Wyman's plate under a point, 50 digits", "8 k l² δ per µm"), 1e-4,
		one{"lift as checked", "2.81490254806", "N", lift(func(c measure.Check) float64 { return c.Value })},
		one{"share of 2.5 N that it uses", "1.12596101922", "", lift(measure.Check.Ratio)},
	)...)
}

// actionShortWalls reads back how many times the thrust far off a short wall takes: the
// abstract gives 10 to 15 % more at 5 m and 5 to 10 % more at 10 m.
func actionShortWalls() ([]Check, error) {
	src := measure.Source{Title: "CEATI T192700 #0247, abstract", Locator: "walls of 5 m and 10 m against the far field", Status: measure.Read}
	var out []Check
	for _, c := range []struct {
		width     float64
		low, high string
	}{{5, "1.10", "1.15"}, {10, "1.05", "1.10"}} {
		for _, end := range []struct {
			name, printed string
			of            func(action.Span) float64
		}{
			{"least", c.low, func(s action.Span) float64 { return s.Low }},
			{"greatest", c.high, func(s action.Span) float64 { return s.High }},
		} {
			out = append(out, Check{
				Quantity: fmt.Sprintf("%s thrust on a wall of %g m, in thrusts far off", end.name, c.width), Source: src, Printed: end.printed,
				Compute: func() (float64, error) {
					s, err := action.ShortWall(c.width)
					return end.of(s), err
				},
			})
		}
	}
	return carried(out...), nil
}
