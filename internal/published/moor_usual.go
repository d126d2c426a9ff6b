package published

import (
	"fmt"
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

func moorSnowValues() map[string]moorWorked {
	ground := moor.Snow{Ground: 25 * measure.PSF}
	weighs := func(s moor.Snow, unit float64) moorWorked {
		return func() (float64, error) {
			p, err := s.Pressure()
			return p / unit, err
		}
	}
	deep := func(depth float64) moor.Snow { s := ground; s.Depth = depth * moorFoot; return s }
	return map[string]moorWorked{
		"S01 1": weighs(moor.Snow{Depth: 2 * moorFoot, Density: 6 * measure.PCF}, measure.PSF/600),
		"S02 1": weighs(deep(1), measure.PSF),
		"S03 1": func() (float64, error) {
			h, _, err := ground.Drift(40 * moorFoot)
			return h / moorFoot, err
		},
		"S04 1": weighs(deep(2.08), measure.PSF),
		"S05 1": func() (float64, error) { // the least ground load with the full density, by halving
			lo, hi := 10.0, 290.0
			for range 60 {
				mid := (lo + hi) / 2
				p, err := (moor.Snow{Ground: mid * measure.PSF, Depth: moorFoot}).Pressure()
				if err != nil {
					return 0, err
				}
				if p < 30*measure.PSF*(1-1e-12) {
					lo = mid
				} else {
					hi = mid
				}
			}
			return hi, nil
		},
		"S06 1": weighs(ground, measure.PSF),
		"S07 1": weighs(moor.Snow{Depth: 0.5 * moorFoot, Density: 20 * measure.PCF}, measure.PSF/90),
	}
}

// moorRestValues are of a dock at rest on four chains.
func moorRestValues() map[string]moorWorked {
	m := &moor.Mooring{}
	for _, c := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		m.Ties = append(m.Ties, moor.Tie{
			Line: moorChain(20, 12, 0), At: [2]float64{3 * c[0], 1.5 * c[1]}, Height: 0.3,
			Foot: [2]float64{10.9 * c[0], 9.4 * c[1]}, FootZ: -3,
		})
	}
	of := func(pick func(moor.Position) float64) moorWorked {
		return func() (float64, error) {
			p, err := m.Rest(0, moor.Load{X: 800, Y: 300, Turn: 500})
			if err != nil {
				return 0, err
			}
			return pick(p), nil
		}
	}
	out := map[string]moorWorked{
		"Q01 1": of(func(p moor.Position) float64 { return p.X }),
		"Q01 2": of(func(p moor.Position) float64 { return p.Y }),
		"Q01 3": of(func(p moor.Position) float64 { return p.Turn }),
	}
	for i := range m.Ties {
		out[fmt.Sprintf("Q01 %d", 4+i)] = of(func(p moor.Position) float64 { return p.Hangs[i].Tension() })
	}
	return out
}

// moorUsualChecks reads the usual figures and the clips back, as printed.
func moorUsualChecks() ([]Check, error) {
	table, err := rows("moor_usual")
	if err != nil {
		return nil, err
	}
	units := map[string]float64{
		"": 1, "psf": measure.PSF, "lbf": moorPound, "lbf/ft": measure.PLF, "lbf/ft³": measure.PCF, "kg/m³": 1,
		"in": measure.Inch, "ft": moorFoot, "ft/s": moorFoot, "m/s": 1, "mph": measure.MPH, "deg": moorDegree, "lbf·ft": moorPound * moorFoot,
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		unit, ok := units[r["unit"]]
		if !ok {
			return nil, fmt.Errorf("moor_usual %s: no unit %q", r["name"], r["unit"])
		}
		c := Check{
			Package: "float/moor", Quantity: r["name"] + ", " + r["end"], Source: measure.Source{Title: r["source"], Status: st},
			Printed: r["printed"], Unit: r["unit"],
		}
		c.Compute = func() (float64, error) {
			if d, ok := moorClipSizes[r["name"]]; ok {
				clips, err := moor.ClipsFor(d * measure.Inch)
				of := map[string]float64{
					"number": float64(clips.Number), "spacing": clips.Spacing, "turnback": clips.Turnback, "torque": clips.Torque,
				}
				return of[r["end"]] / unit, err
			}
			span, err := moor.Usual(r["name"])
			if err != nil {
				return 0, err
			}
			switch r["end"] {
			case "least":
				return span.Lo / unit, nil
			case "most":
				return span.Hi / unit, nil
			case "as printed":
				if span.Lo == span.Hi {
					return span.Lo / unit, nil
				}
			}
			return math.NaN(), fmt.Errorf("moor_usual %s has no %s", r["name"], r["end"])
		}
		out = append(out, c)
	}
	return carried(out...), nil
}

// moorClipSizes are wire ropes with clips, inches.
var moorClipSizes = map[string]float64{
	"clips on 1/8 in wire": 1. / 8, "clips on 1/4 in wire": 1. / 4, "clips on 3/8 in wire": 3. / 8, "clips on 7/16 in wire": 7. / 16, "clips on 1/2 in wire": 1. / 2,
}
