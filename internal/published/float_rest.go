package published

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

//go:embed data/float_rest.json
var restCases []byte

// A restCase is a platform and its rest position by an independent program:
// cylinders in slices, slices in strips, released and settling overdamped; no
// closed form of a segment or a hoof.
type restCase struct {
	Name, About string
	Density     float64
	Weights     []struct {
		Mass float64
		At   [3]float64
	}
	Deck  [5]float64
	Drums []struct {
		At                     [3]float64
		Along                  [2]float64
		Diameter, Length, Mass float64
		Flooded                bool
	}
	Level, Heel, Trim, Tilt json.Number // angles in degrees
	Up                      [3]json.Number
	Volume, Share, Draft    []json.Number
	Buoyancy, Gravity       [3]json.Number
	GMHeel                  json.Number `json:"gm_heel"`
	GMTrim                  json.Number `json:"gm_trim"`
	K12                     json.Number `json:"k12"` // right-handed axes: the sign is that of the package's reversed
	GMMin                   json.Number `json:"gm_min"`
	GMMax                   json.Number `json:"gm_max"`
	Freeboard               []json.Number
	HeldLevel               json.Number `json:"held_level"`
	HeldGM                  json.Number `json:"held_gm"`
	MatrixTolerance         float64     `json:"matrix_tolerance"`
}

func vec(v [3]float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }

func (c *restCase) platform() *float.Platform {
	p := &float.Platform{Density: c.Density}
	for _, w := range c.Weights {
		p.Weights = append(p.Weights, float.Weight{Mass: w.Mass, At: vec(w.At)})
	}
	for _, d := range c.Drums {
		p.Units = append(p.Units, float.Unit{
			Body:    float.Cylinder{Diameter: d.Diameter, Length: d.Length},
			At:      vec(d.At),
			Heading: math.Atan2(d.Along[1], d.Along[0]),
			Mass:    d.Mass,
			Flooded: d.Flooded,
		})
	}
	x0, x1, y0, y1, z := c.Deck[0], c.Deck[1], c.Deck[2], c.Deck[3], c.Deck[4]
	p.Corners = []r3.Vec{{X: x0, Y: y0, Z: z}, {X: x1, Y: y0, Z: z}, {X: x1, Y: y1, Z: z}, {X: x0, Y: y1, Z: z}}
	return p
}

func floatRestChecks() ([]Check, error) {
	var cases []restCase
	if err := json.Unmarshal(restCases, &cases); err != nil {
		return nil, fmt.Errorf("float_rest: %w", err)
	}
	var out []Check
	for i := range cases {
		c := &cases[i]
		p := c.platform()
		src := measure.Source{
			Title: "Rest positions by slices and strips, released from level", Locator: c.Name, Status: measure.Independent,
		}
		add := func(quantity string, printed json.Number, unit string, step float64, of func(float.State) (float64, error)) {
			k := Check{
				Package: "float", Quantity: quantity, Source: src, Printed: printed.String(), Unit: unit,
				Relative: 1e-6, Step: step,
				Compute: func() (float64, error) {
					s, err := p.Settle()
					if err != nil {
						return 0, err
					}
					return of(s)
				},
			}
			if want, _ := printed.Float64(); math.Abs(want) < 1e-9 {
				k.Step = 2e-9 // zero by symmetry
			}
			if k.Step > 0 {
				k.Relative = 0
			}
			out = append(out, k)
		}
		plain := func(quantity string, printed json.Number, unit string, of func(float.State) float64) {
			add(quantity, printed, unit, 0, func(s float.State) (float64, error) { return of(s), nil })
		}
		const degree = math.Pi / 180
		plain("height of the origin above water", c.Level, "m", func(s float.State) float64 { return s.Level })
		plain("heel", c.Heel, "deg", func(s float.State) float64 { return s.Heel / degree })
		plain("trim", c.Trim, "deg", func(s float.State) float64 { return s.Trim / degree })
		plain("tilt", c.Tilt, "deg", func(s float.State) float64 { return s.Tilt() / degree })
		for k, axis := range [3]string{"x", "y", "z"} {
			part := func(v r3.Vec) float64 { return [3]float64{v.X, v.Y, v.Z}[k] }
			plain("up, "+axis, c.Up[k], "", func(s float.State) float64 { return part(s.Up) })
			plain("centre of buoyancy, "+axis, c.Buoyancy[k], "m", func(s float.State) float64 { return part(s.Buoyancy) })
			plain("centre of gravity, "+axis, c.Gravity[k], "m", func(s float.State) float64 { return part(s.Gravity) })
		}
		for k := range c.Drums {
			of := func(pick func(float.UnitState) float64) func(float.State) (float64, error) {
				return func(s float.State) (float64, error) {
					u, err := s.Unit(k)
					return pick(u), err
				}
			}
			n := strconv.Itoa(k)
			add("volume of drum "+n, c.Volume[k], "m3", 0, of(func(u float.UnitState) float64 { return u.Volume }))
			add("immersed share of drum "+n, c.Share[k], "", 0, of(func(u float.UnitState) float64 { return u.Share }))
			add("draft of drum "+n, c.Draft[k], "m", 0, of(func(u float.UnitState) float64 { return u.Draft }))
		}
		for k := range c.Freeboard {
			plain("freeboard at corner "+strconv.Itoa(k), c.Freeboard[k], "m", func(s float.State) float64 { return s.Freeboards()[k] })
		}
		if c.HeldLevel.String() != "" { // by an outside couple; trim by itself
			held := func(quantity string, printed json.Number, step float64, of func(a, b, c float.Point) float64) {
				k := Check{
					Package: "float", Quantity: quantity, Source: src, Printed: printed.String(), Unit: "m", Relative: 1e-6, Step: step,
					Compute: func() (float64, error) {
						curve, err := p.Righting(0, []float64{-1e-4, 0, 1e-4})
						if err != nil {
							return 0, err
						}
						return of(curve.Points[0], curve.Points[1], curve.Points[2]), nil
					},
				}
				if step > 0 {
					k.Relative = 0
				}
				out = append(out, k)
			}
			held("height of the origin, held upright", c.HeldLevel, 0, func(_, b, _ float.Point) float64 { return b.Level })
			held("slope of the righting lever, held upright", c.HeldGM, 0.01, func(a, _, b float.Point) float64 { return (b.Lever - a.Lever) / 2e-4 })
		}
		largest, err := c.GMMax.Float64()
		if err != nil {
			return nil, fmt.Errorf("float_rest: %w", err)
		}
		matrix := func(quantity string, printed json.Number, of func(float.State) float64) {
			add(quantity, printed, "m", 2*c.MatrixTolerance*largest, func(s float.State) (float64, error) { return of(s), nil })
		}
		matrix("metacentric height for heel", c.GMHeel, func(s float.State) float64 { return s.GM[0][0] })
		matrix("metacentric height for trim", c.GMTrim, func(s float.State) float64 { return s.GM[1][1] })
		matrix("metacentric product", c.K12, func(s float.State) float64 { return -s.GM[0][1] })
		matrix("least metacentric height", c.GMMin, func(s float.State) float64 { return s.Principal()[0].Height })
		matrix("greatest metacentric height", c.GMMax, func(s float.State) float64 { return s.Principal()[1].Height })
	}
	return out, nil
}
