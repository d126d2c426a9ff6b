package published

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
	"example.org/floewright/lumber/measure"
)

// dockChecks checks what the packages dock and sheet work out by themselves: how a piece is
// lifted and drawn to the lake, how far apart the ends of a line lie, the edges of a deck that
// leans. All else they gather from the packages below.
func dockChecks() ([]Check, error) {
	slope := measure.Source{
		Title:   "Inclined plane with friction, by statics",
		Locator: "W (sin θ + μ cos θ) up, W (sin θ - μ cos θ) held back, 30 digits; rises of 0, 3 in 4 and 1 in 1",
		Status:  measure.Independent,
	}
	var out []Check
	for _, c := range []struct {
		rise, drag           string
		pull, brake, pullers string
	}{
		{"0 %", "30 %", "294.199500000", "0", "3"},
		{"75 %", "25 %", "784.532000000", "572.708360000", "8"},
		{"75 %", "1 %", "596.244320000", "572.708360000", "6"}, // glides easier than on ice
		{"100 %", "50 %", "1040.15230736", "679.566174141", "11"},
	} {
		haul := func(of func(dock.Haul) float64) func() (float64, error) {
			return func() (float64, error) {
				h, err := dockHaul("100 kg", c.rise, c.drag)
				return of(h), err
			}
		}
		at := fmt.Sprintf(" of 100 kg on a slope of %s, friction %s", c.rise, c.drag)
		out = append(out, share("frame/dock", slope, 1e-9,
			one{"pull" + at, c.pull, "N", haul(func(h dock.Haul) float64 { return h.Pull })},
			one{"brake" + at + ", on ice 2 %", c.brake, "N", haul(func(h dock.Haul) float64 { return h.Brake })},
			one{"crew of 100 N each" + at, c.pullers, "", haul(func(h dock.Haul) float64 { return float64(h.Crew) })},
		)...)
	}
	lift := measure.Source{
		Title: "NIOSH 94-110, applications manual for the revised lifting equation", Locator: "load constant 23 kg: 23 kg, 24 kg, 46 kg and 100 kg over it, rounded up",
		Status: measure.Memory,
	}
	for _, c := range [][2]string{{"23 kg", "1"}, {"24 kg", "2"}, {"46 kg", "2"}, {"100 kg", "5"}} {
		out = append(out, share("frame/dock", lift, 1e-12, one{"people who lift " + c[0], c[1], "", func() (float64, error) {
			h, err := dockHaul(c[0], "0 %", "30 %")
			return float64(h.People), err
		}})...)
	}
	box := exactly("Diagonal of a box", "3, 4 and 12 m: 13 m; half a metre is kept in hand")
	out = append(out, share("frame/dock", box, 1e-12,
		one{"between the ends of a line, water 2 m up", "13", "m", func() (float64, error) {
			return dock.Lead{Cleat: [3]float64{1, 2, 0.5}, Foot: [3]float64{-2, 6, -9.5}}.At(2), nil
		}},
	)...)
	out = append(out, share("frame/dock", exactly("Share of a cost", "(80 - 76)/80"), 1e-12,
		one{"gap of a cutting list of 80 over a bound of 76", "0.05", "", func() (float64, error) { return (&dock.Cutting{Cost: 80, Bound: 76}).Gap(), nil }},
	)...)
	out = append(out, share("frame/sheet", box, 1e-12,
		one{"line with half a metre kept in hand, water 2 m up", "13.5", "m", func() (float64, error) {
			return sheet.Tie{X: 1, Y: 2, Over: 0.5, FarX: -2, FarY: 6, FarZ: -9.5, Spare: 0.5}.At(sheet.Level{Rise: 2}), nil
		}},
	)...)
	edges := func(positive bool) func() (float64, error) {
		return func() (float64, error) {
			low, high := sheet.Heeled{Width: 2, Depth: 0.2, Deck: 0.05, Height: 0.5, Heel: math.Asin(0.6)}.Edges()
			if positive {
				return high, nil
			}
			return low, nil
		}
	}
	lean := exactly("Rectangle turned by the angle of 3, 4 and 5", "0.5 ± 1 × 3/5 + 0.25 × 4/5 m")
	return append(out, share("frame/sheet", lean, 1e-12,
		one{"edge that rises, deck of 2 m, heel of 3 in 5", "1.3", "m", edges(false)},
		one{"edge that sinks", "0.1", "m", edges(true)},
	)...), nil
}

// dockHaul returns how a thing of a mass gets to the lake by sled, alone on it: of the
// embedded work float, whose tool chest it replaces.
func dockHaul(mass, slope, drag string) (dock.Haul, error) {
	const chest = "vice and tool chest"
	demo, err := plan.Demo("work")
	if err != nil {
		return dock.Haul{}, err
	}
	text, err := io.ReadAll(demo)
	if err != nil {
		return dock.Haul{}, err
	}
	p := map[string]any{}
	if err := json.Unmarshal(text, &p); err != nil {
		return dock.Haul{}, err
	}
	for _, w := range p["weights"].([]any) {
		if w := w.(map[string]any); w["name"] == chest {
			w["mass"] = mass
		}
	}
	p["site"].(map[string]any)["slope"] = slope
	p["shop"] = map[string]any{"sled_load": "120 kg", "sled_friction": drag, "carriers": 6}
	if text, err = json.Marshal(p); err != nil {
		return dock.Haul{}, err
	}
	d, err := dock.Read("work float", strings.NewReader(string(text)))
	if err != nil {
		return dock.Haul{}, err
	}
	s, err := d.Shop(context.Background())
	if err != nil {
		return dock.Haul{}, err
	}
	for _, h := range s.Carry {
		if h.Piece == chest {
			return h, h.Err
		}
	}
	return dock.Haul{}, fmt.Errorf("nothing is carried that is called %q", chest)
}
