package published

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// A ship is a lone tube whose metacentre lies on its axis at every angle, so
// that what a textbook says of a ship with a fixed metacentre holds for it
// exactly: r = KM, the keel at its bottom, half under water.
type ship struct {
	mass, km, kg float64 // kg, m above the keel
	density      float64
	weights      []float.Weight // z above the keel, of mass and kg apart
	tanks        []float.Unit
}

func (s ship) platform() *float.Platform {
	total := s.mass
	for _, w := range s.weights {
		total += w.Mass
	}
	for _, t := range s.tanks {
		total += t.Leak * s.density
	}
	p := &float.Platform{
		Density: s.density,
		Units: append([]float.Unit{{
			Body: float.Cylinder{Diameter: 2 * s.km, Length: 2 * total / s.density / (math.Pi * s.km * s.km)},
			At:   r3.Vec{Z: s.km},
		}}, s.tanks...),
		Weights: append([]float.Weight{{Mass: s.mass, At: r3.Vec{Z: s.kg}}}, s.weights...),
	}
	return p
}

// box returns a floating box with its keel at z = 0.
func box(length, width, height, mass, kg, density float64) *float.Platform {
	return &float.Platform{
		Density: density,
		Units:   []float.Unit{{Body: float.Block{Length: length, Width: width, Height: height}, At: r3.Vec{Z: height / 2}}},
		Weights: []float.Weight{{Mass: mass, At: r3.Vec{Z: kg}}},
	}
}

// A wallSided body is a long vertical-sided hull known by its waterplane only:
// area, and inertia about its own long axis. It serves upright.
type wallSided struct{ area, inertia, depth float64 }

func (w wallSided) Volume() float64 { return w.area * w.depth }

func (w wallSided) Wet(height float64, _ r3.Vec) float.Wet {
	draft := min(max(w.depth/2-height, 0), w.depth)
	v := w.area * draft
	k := float.Wet{Volume: v, VolumeMoment: r3.Vec{Z: v * (draft - w.depth) / 2}}
	if draft > 0 && draft < w.depth {
		k.Plane = w.area
		k.PlaneMoment = r3.Vec{Z: -height * w.area}
		k.PlaneInertia = [6]float64{w.area * 100, w.inertia, height * height * w.area, 0, 0, 0}
	}
	return k
}

const (
	degree  = math.Pi / 180
	tonne   = measure.Tonne
	longTon = 2240 * measure.Pound
)

// settled returns a computation on the rest position.
func settled(p *float.Platform, of func(float.State) float64) func() (float64, error) {
	return func() (float64, error) {
		s, err := p.Settle()
		if err != nil {
			return 0, err
		}
		return of(s), nil
	}
}

// most returns the largest n for which the platform floats.
func most(of func(n int) *float.Platform) func() (float64, error) {
	return func() (float64, error) {
		for n := range 1000 {
			if _, err := of(n).Settle(); errors.Is(err, float.ErrSinks) {
				return float64(n - 1), nil
			} else if err != nil {
				return 0, err
			}
		}
		return 0, errors.New("floats whatever it carries")
	}
}

func gm(s float.State) float64      { return s.GM[0][0] }
func heel(s float.State) float64    { return s.Heel / degree }
func draft(s float.State) float64   { return -s.Level } // with the keel at z = 0
func km(s float.State) float64      { return s.GM[0][0] + s.Gravity.Z }
func bm(s float.State) float64      { return km(s) - s.Buoyancy.Z }
func gravity(s float.State) float64 { return s.Gravity.Z }

// raft returns level bodies side by side, lightly loaded low, with a load.
func raft(n int, body float.Body, mass, load, density float64) *float.Platform {
	p := &float.Platform{Density: density, Weights: []float.Weight{{Mass: load, At: r3.Vec{Z: -0.1}}}}
	for i := range n {
		p.Units = append(p.Units, float.Unit{Body: body, At: r3.Vec{Y: float64(i) - float64(n-1)/2}, Mass: mass})
	}
	return p
}

func floatWorkedChecks() ([]Check, error) {
	var out []Check
	add := func(c Check, title, locator string, st measure.Status) {
		c.Package = "float"
		c.Source = measure.Source{Title: title, Locator: locator, Status: st}
		out = append(out, c)
	}
	const (
		hamill   = "Hamill, Understanding Hydraulics (as worked on a study page)"
		bansal   = "Bansal, A Textbook of Fluid Mechanics"
		masters  = "Barrass and Derrett, Ship Stability for Masters and Mates, 6th ed."
		study    = "Study pages for mates, worked examples"
		exercise = "Engineering exercise page"
		crc      = "CRC Standard Mathematical Tables"
	)

	// A log of 0.6 m, specific gravity 0.7: the half angle of the dry segment is
	// bracketed between 71 and 71.5 degrees.
	log := float.Cylinder{Diameter: 0.6, Length: 5}
	add(Check{
		Quantity: "half angle of a log's dry segment, specific gravity 0.7", Printed: "71.25", Step: 0.5, Unit: "deg",
		Compute: func() (float64, error) {
			h, err := log.Draft(0.7 * log.Volume())
			return math.Acos((h-0.3)/0.3) / degree, err
		},
	}, exercise, "draft of a floating horizontal log", measure.Read)
	add(Check{
		Quantity: "draft over diameter of that log", Printed: "0.659846",
		Compute: func() (float64, error) {
			h, err := log.Draft(0.7 * log.Volume())
			return h / 0.6, err
		},
	}, "Recomputation by another program", "log of specific gravity 0.7", measure.Independent)

	// Four barrels of 21 in by 3 ft, 30 lb each, a deck of 179 lb.
	add(Check{
		Quantity: "draft of a raft on four barrels", Printed: "4.6785", Unit: "in",
		Compute: func() (float64, error) {
			p := raft(4, float.Cylinder{Diameter: 21 * measure.Inch, Length: 3 * measure.Foot}, 30*measure.Pound, 179*measure.Pound, 62.38*measure.PCF)
			s, err := p.Settle()
			if err != nil {
				return 0, err
			}
			draft, err := s.Draft()
			return draft / measure.Inch, err
		},
	}, "Recomputation by another program", "raft on four barrels", measure.Independent)

	// A raft on drums: people 925 lb, vehicle 450, gear 315, twenty planks of 45 lb.
	add(Check{
		Quantity: "drums that a raft of 2590 lb needs", Printed: "6",
		Compute: func() (float64, error) {
			n, err := most(func(n int) *float.Platform { // units fewer than a hundred
				return raft(100-n, float.Cylinder{Diameter: 22.5 * measure.Inch, Length: 33.5 * measure.Inch}, 35*measure.Pound, 2590*measure.Pound, 62.4*measure.PCF)
			})()
			return 100 - n, err
		},
	}, "General physics text, 11th ed., chapter 11", "problem 108 (a)", measure.Read)

	add(Check{
		Quantity: "persons of 69 kg on eleven logs just awash", Printed: "31",
		Compute: most(func(n int) *float.Platform {
			c := float.Cylinder{Diameter: 0.34, Length: 5.5}
			return raft(11, c, 600*c.Volume(), 1e-9+69*float64(n), 1000)
		}),
	}, exercise, "raft of logs", measure.Read)

	add(Check{
		Quantity: "beams 0.3 by 0.3 by 3 m for six of 65 kg and 3 cm freeboard", Printed: "15",
		Compute: func() (float64, error) {
			b := float.Block{Length: 3, Width: 0.3, Height: 0.3}
			for n := 12; n < 30; n++ {
				s, err := raft(n, b, 800*b.Volume(), 6*65, 1000).Settle()
				if errors.Is(err, float.ErrSinks) {
					continue
				}
				if err != nil {
					return 0, err
				}
				if s.Height(r3.Vec{Z: 0.15}) >= 0.03 {
					return float64(n), nil
				}
			}
			return 0, errors.New("no number of beams will do")
		},
	}, exercise, "raft of beams", measure.Read)

	pontoon := box(8, 5, 1.5, 15*tonne, 0.75, 1025)
	add(Check{Quantity: "draft of a pontoon 8 by 5 m of 15 t", Printed: "0.37", Unit: "m", Compute: settled(pontoon, draft)},
		hamill, "example 3.1", measure.Read)
	add(Check{
		Quantity: "load that leaves 0.5 m of freeboard", Printed: "26", Unit: "t",
		Compute: func() (float64, error) {
			w := float.Block{Length: 8, Width: 5, Height: 1.5}.Wet(-0.25, r3.Vec{Z: 1})
			return 1025*w.Volume/tonne - 15, nil
		},
	}, hamill, "example 3.1", measure.Read)

	high := box(20, 9, 3, 200*tonne, 5.6, 1025)
	add(Check{Quantity: "draft of a pontoon 20 by 9 m of 200 t", Printed: "1.08", Unit: "m", Compute: settled(high, draft)}, hamill, "example 3.2", measure.Read)
	add(Check{Quantity: "BM of that pontoon", Printed: "6.23", Unit: "m", Compute: settled(high, bm)}, hamill, "example 3.2", measure.Read)
	add(Check{Quantity: "KM of that pontoon", Printed: "6.77", Unit: "m", Compute: settled(high, km)}, hamill, "example 3.2", measure.Read)
	add(Check{Quantity: "GM of that pontoon, KG 5.6 m", Printed: "1.17", Unit: "m", Compute: settled(high, gm)}, hamill, "example 3.2", measure.Read)

	const cut = "the source goes on with a draft cut to 1.45"
	small := box(7, 3, 2, 30*tonne, 1, 980)
	add(Check{Quantity: "draft of a pontoon 7 by 3 m of 30 t in water of 980 kg/m³, as printed", Printed: "1.45", Unit: "m", Because: cut, Within: 0.008, Compute: settled(small, draft)}, study, "neutral KG of a pontoon", measure.Read)
	add(Check{Quantity: "BM of that pontoon", Printed: "0.517", Unit: "m", Because: cut, Within: 0.003, Compute: settled(small, bm)}, study, "neutral KG of a pontoon", measure.Read)
	add(Check{Quantity: "KM of that pontoon", Printed: "1.242", Unit: "m", Because: cut, Within: 0.002, Compute: settled(small, km)}, study, "neutral KG of a pontoon", measure.Read)

	// Lists of ships with a fixed metacentre: tan(list) = w d/(W GM).
	listed := func(mass, gm, moment float64) *float.Platform {
		const m = 1e-3 // of the mass is moved, at G
		return ship{
			mass: mass * (1 - m), km: 8, kg: 8 - gm, density: 1025,
			weights: []float.Weight{{Mass: mass * m, At: r3.Vec{Y: moment / (mass * m), Z: 8 - gm}}},
		}.platform()
	}
	add(Check{Quantity: "list of 5000 t, GM 0.3 m, by 100 t m", Printed: "3.8", Unit: "deg", Compute: settled(listed(5000*tonne, 0.3, 100*tonne), heel)}, study, "chapter 11, example 1", measure.Read)
	add(Check{Quantity: "list of 10 000 t, GM 0.6 m, by 1000 t m", Printed: "9.46", Unit: "deg", Compute: settled(listed(10000*tonne, 0.6, 1000*tonne), heel)}, study, "chapter 11, example 3", measure.Read)
	add(Check{
		Quantity: "list of 1500 t, GM 0.4 m, by 100 t m", Printed: "9.45", Unit: "deg",
		Because: "9 deg 27 min, cut from 27.7 min", Within: 1. / 60,
		Compute: settled(listed(1500*tonne, 0.4, 100*tonne), heel),
	}, masters, "example 14.4", measure.Read)

	loaded := ship{
		mass: 7950 * tonne, km: 8.70, kg: (8000*7.6 - 50*1.2) / 7950, density: 1025,
		weights: []float.Weight{
			{Mass: 250 * tonne, At: r3.Vec{Y: 7.6, Z: 6.1}},
			{Mass: 300 * tonne, At: r3.Vec{Y: -6.1, Z: 0.6}},
			// The 50 t that went left from 4.6 m to port: a couple of as much to starboard.
			{Mass: 1 * tonne, At: r3.Vec{Y: 50 * 4.6 / 1, Z: 7.6}},
		},
	}
	loaded.mass -= 1 * tonne
	ship16 := loaded.platform()
	add(Check{Quantity: "KG after loading", Printed: "7.35", Unit: "m", Compute: settled(ship16, gravity)}, masters, "pp. 116-117", measure.Read)
	add(Check{Quantity: "GM after loading", Printed: "1.35", Unit: "m", Compute: settled(ship16, func(s float.State) float64 { return 8.70 - s.Gravity.Z })}, masters, "pp. 116-117", measure.Read)
	add(Check{Quantity: "G off the centre line after loading", Printed: "0.035", Unit: "m", Compute: settled(ship16, func(s float.State) float64 { return s.Gravity.Y })}, masters, "pp. 116-117", measure.Read)
	add(Check{Quantity: "list after loading", Printed: "1.4937", Unit: "deg", Within: 2e-3, Because: "a tonne stands in for the couple of the weight that left", Compute: settled(ship16, heel)}, "Recomputation by another program", "list of the same ship", measure.Independent)

	add(Check{
		Quantity: "righting moment of 10 000 t, GM 0.5 m, at 7.75 deg", Printed: "674.25", Unit: "t m", Step: 0.011,
		Compute: func() (float64, error) {
			c, err := ship{mass: 10000 * tonne, km: 8, kg: 7.5, density: 1025}.platform().Righting(0, []float64{7.75 * degree})
			if err != nil {
				return 0, err
			}
			return c.Points[0].Moment / (measure.Gravity * tonne), nil
		},
	}, masters, "example 15.1", measure.Read)

	// A box 40 by 6 m on 2 m draft with its middle 10 m open to the sea.
	bilged := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 480 * tonne, At: r3.Vec{Z: 1 + 1.5 - 0.6}}}}
	for _, b := range []struct{ x, l float64 }{{-12.5, 15}, {0, 10}, {12.5, 15}} {
		bilged.Units = append(bilged.Units, float.Unit{Body: float.Block{Length: b.l, Width: 6, Height: 4}, At: r3.Vec{X: b.x, Z: 2}, Flooded: b.x == 0})
	}
	add(Check{Quantity: "draft of a bilged box", Printed: "2.66667", Unit: "m", Compute: settled(bilged, draft)}, "Recomputation by another program", "lost buoyancy, box 40 by 6 m", measure.Independent)
	add(Check{Quantity: "GM of a bilged box", Printed: "0.55833", Unit: "m", Compute: settled(bilged, gm)}, "Recomputation by another program", "lost buoyancy, box 40 by 6 m", measure.Independent)

	// Free surfaces: the tank stands in the air, so that only its water counts.
	tanked := func(mass, km, kg, density, length, width, fill float64, n int) *float.Platform {
		s := ship{mass: mass, km: km, density: density}
		water := 0.0
		for i := range n {
			v := fill * length * width * 2
			water += v * density
			s.tanks = append(s.tanks, float.Unit{Body: float.Block{Length: length, Width: width, Height: 2}, At: r3.Vec{X: length * (float64(i) - float64(n-1)/2), Z: 4 * km}, Leak: v})
		}
		s.mass -= water
		// All masses together at kg: the water stands at 4 km + the half full tank's -0.5.
		s.kg = (mass*kg - water*(4*km+fill-1)) / s.mass
		return s.platform()
	}
	loss := func(km, unit float64) func(float.State) float64 {
		return func(s float.State) float64 { return (km - s.Gravity.Z - s.GM[0][0]) / unit }
	}
	half := tanked(8000*tonne, 8, 7.61531, 1025, 15, 10, 0.5, 1)
	add(Check{Quantity: "loss of GM by a half full tank 15 by 10 m in 8000 t", Printed: "0.16016", Unit: "m", Compute: settled(half, loss(8, 1))}, "Recomputation by another program", "free surface, after Barrass and Derrett p. 195", measure.Independent)
	add(Check{Quantity: "GM with that tank, KG 7.61531 m", Printed: "0.22453", Unit: "m", Compute: settled(half, gm)}, "Recomputation by another program", "free surface, after Barrass and Derrett p. 195", measure.Independent)

	// Other liquids: a tank shortened in the ratio of the densities has the same
	// free-surface moment, filled with the water it floats in.
	const ft = measure.Foot
	sea := longTon / (35 * ft * ft * ft) // 35 cubic feet to the long ton
	const km1 = 4                        // of the tube that stands in for the ship
	liquid := func(mass, length, width, sg, of float64) *float.Platform {
		return tanked(mass*longTon, km1, 1, sea, length*ft*sg/of, width*ft, 0.5, 2)
	}
	add(Check{Quantity: "loss of GM by two tanks 40 by 30 ft, 0.86 in 1.025, 9000 tons", Printed: "0.48", Unit: "ft", Compute: settled(liquid(9000, 40, 30, 0.86, 1.025), loss(km1, ft))}, study, "free surface, question 0449", measure.Read)
	add(Check{Quantity: "loss of GM by two tanks 50 by 30 ft, 0.8 in 1.026, 7000 tons", Printed: "0.72", Unit: "ft", Compute: settled(liquid(7000, 50, 30, 0.8, 1.026), loss(km1, ft))}, study, "free surface, 7000 tons", measure.Read)
	add(Check{Quantity: "loss of GM by two tanks 30 by 15 ft, 1.8 in 1.025, 968 tons", Printed: "0.87", Unit: "ft", Compute: settled(liquid(968, 30, 15, 1.8, 1.025), loss(km1, ft))}, study, "free surface, 968 tons", measure.Read)

	// Two boxes of beam b, 6 b over all, draft T: BM T/b².
	twin := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 2 * 10 * 1 * 0.5 * 1000, At: r3.Vec{Z: 1}}}}
	for _, y := range []float64{-2.5, 2.5} {
		twin.Units = append(twin.Units, float.Unit{Body: float.Block{Length: 10, Width: 1, Height: 2}, At: r3.Vec{Y: y, Z: 1}})
	}
	add(Check{
		Quantity: "BM of a catamaran in b²/T", Printed: "6.25", Because: "the source leaves out the hulls' own inertia, 1/12", Within: 0.09,
		Compute: settled(twin, func(s float.State) float64 { return bm(s) * 0.5 }),
	}, "MIT 2.017J, Fall 2009", "problem 40", measure.Read)

	// Hulls of 18 m with half-ordinates in cm at stations 1 2 3 4 5 5.5 6.
	half1 := func(power float64) float64 { // Simpson's rule, 3.6 m and then 1.8 m apart
		y := func(cm float64) float64 { return math.Pow(cm/100, power) }
		return 3.6/3*(y(0)+4*y(4)+2*y(6.2)+4*y(7.2)+y(6.4)) + 1.8/3*(y(6.4)+4*y(4.9)+y(0))
	}
	slender := wallSided{area: 2 * half1(1), inertia: 2. / 3 * half1(3), depth: 6}
	hulls := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 2 * 5300, At: r3.Vec{Z: 1}}}}
	for _, y := range []float64{-3, 3} {
		hulls.Units = append(hulls.Units, float.Unit{Body: slender, At: r3.Vec{Y: y, Z: 3}})
	}
	add(Check{Quantity: "BM of a catamaran of slender hulls 6 m apart", Printed: "3.12", Unit: "m", Compute: settled(hulls, bm)}, "Exercise quoted in a boat design forum", "thread 55276", measure.Quoted)

	add(Check{
		Quantity: "GM of a solid cylinder on end, 4 by 4 m, specific gravity 0.6", Printed: "-0.383", Unit: "m",
		Compute: func() (float64, error) {
			// Draft 2.4 m: the surface 0.4 m above the centre.
			w := float.Cylinder{Diameter: 4, Length: 4}.Wet(-0.4, r3.Vec{X: 1})
			return (w.VolumeMoment.X + w.PlaneInertia[1]) / w.Volume, nil
		},
	}, exercise, "upright solid cylinder", measure.Read)

	const rounded = "its figures need a volume of 0.0293 for 0.02925 m³"
	lab := box(1, 0.5, 0.3, 29.25, 0.1385, 1000)
	add(Check{Quantity: "GM of a laboratory pontoon", Printed: "0.2464", Unit: "m", Because: rounded, Within: 6e-4, Compute: settled(lab, gm)}, "Student laboratory report", "pontoon 1.0 by 0.5 m", measure.Read)
	add(Check{Quantity: "BM of a laboratory pontoon", Printed: "0.3556", Unit: "m", Because: rounded, Within: 6e-4, Compute: settled(lab, bm)}, "Student laboratory report", "pontoon 1.0 by 0.5 m", measure.Read)

	for _, b := range []struct {
		l, b, draft, kg float64
		printed         string
	}{{5, 3, 0.8, 0.6, "0.7375"}, {3, 2, 0.8, 0.5, "0.3167"}, {2, 1, 0.56, 0.4, "0.0288"}} {
		add(Check{
			Quantity: "GM of a box", Printed: b.printed, Unit: "m",
			Compute: settled(box(b.l, b.b, 1.2, 1000*b.l*b.b*b.draft, b.kg, 1000), gm),
		}, bansal, "chapter 4, GM "+b.printed, measure.Memory)
	}

	for _, e := range []struct {
		printed string
		draft   float64
	}{{"0.05", 0.3}, {"0.05", 0.5}, {"0.05", 0.75}} {
		c := float.Cylinder{Diameter: 1, Length: 3}
		add(Check{
			Quantity: fmt.Sprintf("GM of a cylinder 1 m across, draft %g m, its centre of gravity 0.05 m below the axis", e.draft), Printed: e.printed, Unit: "m", Relative: 1e-12,
			Compute: func() (float64, error) {
				v, err := c.Displaced(e.draft)
				if err != nil {
					return 0, err
				}
				p := &float.Platform{Density: 1000, Units: []float.Unit{{Body: c}}, Weights: []float.Weight{{Mass: 1000 * v, At: r3.Vec{Z: -0.05}}}}
				return settled(p, gm)()
			},
		}, "Pressure on a round hull passes through its axis", "GM = depth of G, at any draft", measure.Exact)
	}

	// Hoofs: the surface leaves through the bottom line H from the end, whose wet
	// segment is b high.
	hoof := func(r, b, h float64) float.Wet {
		slope := math.Atan2(b, h)
		c := float.Cylinder{Diameter: 2 * r, Length: 4 * h}
		// The bottom line is at r cos(slope) below the axis; the deep end at -x.
		up := r3.Vec{X: math.Sin(slope), Z: math.Cos(slope)}
		height := r*up.Z + (2*h-h)*up.X // the bottom line is awash at x = -2h + h
		return c.Wet(height, up)
	}
	add(Check{Quantity: "volume of a hoof, base through the axis, r 0.4, H 0.5", Printed: "0.0533333", Unit: "m3", Compute: func() (float64, error) { return hoof(0.4, 0.4, 0.5).Volume, nil }}, crc, "ungula, 2 r² H/3", measure.Memory)
	add(Check{Quantity: "centroid of that hoof from its base", Printed: "0.1472622", Unit: "m", Compute: func() (float64, error) {
		w := hoof(0.4, 0.4, 0.5)
		return w.VolumeMoment.X/w.Volume + 1, nil
	}}, crc, "ungula, 3 π H/32", measure.Memory)
	add(Check{Quantity: "volume of an ungula, b 0.2", Printed: "0.0201472444", Unit: "m3", Compute: func() (float64, error) { return hoof(0.4, 0.2, 0.5).Volume, nil }}, crc, "ungula, b 0.2", measure.Memory)
	add(Check{Quantity: "volume of an ungula, b 0.6", Printed: "0.0904915522", Unit: "m3", Compute: func() (float64, error) { return hoof(0.4, 0.6, 0.5).Volume, nil }}, crc, "ungula, b 0.6", measure.Memory)
	return out, nil
}
