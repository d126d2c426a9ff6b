package published

import (
	"errors"
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

func moorLoadValues() map[string]moorWorked {
	gust := func(v, moorHeight, air float64) moor.Wind {
		return moor.Wind{Speed: v, Height: moorHeight, Averaging: 3, Air: air}
	}
	ratio := func(moorHeight, averaging float64) moorWorked {
		return moorWindTo(moor.Wind{Speed: 1}, moorHeight, averaging)
	}
	pressure := func(w moor.Wind, unit float64) moorWorked {
		return func() (float64, error) {
			q, err := w.Pressure()
			return q / unit, err
		}
	}
	current := func(c moor.Current, f moor.Face, unit float64) moorWorked {
		return func() (float64, error) {
			l, err := c.Load(math.Pi/2, f)
			return l.Y / unit, err
		}
	}
	asQuoted := func(k float64) moorWorked {
		return func() (float64, error) {
			a, err1 := (moor.Wind{Speed: 15 * measure.Knot}).Pressure()
			b, err2 := (moor.Wind{Speed: k * 15 * measure.Knot}).Pressure()
			if err1 != nil {
				return 0, err1
			}
			return 90 * b / a, err2
		}
	}
	long := moor.Wind{Speed: 1, Averaging: 10800}
	return map[string]moorWorked{
		"W01 1": func() (float64, error) { // psf; the SI constant has its own row
			q, err := (moor.Wind{Speed: 77 * measure.MPH}).Pressure()
			return q / measure.PSF, err
		},
		"W03 1": pressure(moor.Wind{Speed: 1}, 1),
		"W05 1": func() (float64, error) {
			l, err := gust(20, 0.45, 2*0.613).Load(math.Pi/2, moor.Face{Side: 6 * 0.45, Height: 0.45, Shape: 1.2})
			return l.Y, err
		},
		"W06 1": moorWindTo(moor.Wind{Speed: 20}, 2, 3600),
		"W07 1": func() (float64, error) {
			r, err := (moor.Wind{Speed: 1, Air: 1.2}).To(2, 3600)
			if err != nil {
				return 0, err
			}
			q, err := r.Pressure()
			return q / 0.6, err
		},
		"W09 1": moorWindTo(moor.Wind{Speed: 19.9, Averaging: 10800}, 10, 5400),
		"W09 2": moorWindTo(long, 10, 5400),
		"W10 1": ratio(10, 300),
		"W12 1": ratio(10, 600),
		"W13 1": func() (float64, error) {
			face := moor.Face{Side: 1, Shape: 1}
			one, err1 := (moor.Wind{Speed: 20}).Load(math.Pi/2, face)
			face.Row = 4
			row, err2 := (moor.Wind{Speed: 20}).Load(math.Pi/2, face)
			if err1 != nil {
				return 0, err1
			}
			return 600 * row.Y / one.Y, err2
		},
		"W08 1": moorExposed("D"), "K06 1": moorExposed("C"),
		"W02 1": pressure(moor.Wind{Speed: measure.MPH}, measure.PSF),
		"W02 2": pressure(moor.Wind{Speed: measure.MPH, Air: 0.0765 * measure.PCF * measure.Gravity / (32.2 * moorFoot)}, measure.PSF),
		"W11 1": moorWindTo(moor.Wind{Speed: 1, Averaging: measure.Mile / 35}, 10, 3600),
		"W15 1": moorWindTo(moor.Wind{Speed: 1, Averaging: 600}, 10, 3),
		"W14 1": asQuoted(2),
		"W14 2": asQuoted(4),
		"K03 1": ratio(10, 3),
		"C01 1": current(moor.Current{Speed: 0.5}, moor.Face{Side: 6 * 0.35, Shape: 1}, 1),
		"C02 1": current(moor.Current{Speed: 1, Depth: 1, Draft: 0.576}, moor.Face{Side: 1, Shape: 0.85}, 500),
		"K02 1": current(moor.Current{Speed: 1, Depth: 1, Draft: 1}, moor.Face{Side: 1, Shape: 0.85}, 500),
		"C04 1": func() (float64, error) { // at 10 °C, 1.307 m at 1 m/s
			f, err := (moor.Current{Speed: 1}).Friction(1, 1.307)
			return f / 500, err
		},
		"I01 1": moorEnergy(moor.Impact{Mass: 2, Speed: 1, Draft: 15.5, Beam: 57}, 1),
		"I02 1": moorEnergy(moor.Impact{Mass: 2, Speed: 1, Along: 1, Gyration: 85, Arm: 74.52, Angle: 61.52 * moorDegree}, 1),
		"I03 1": moorEnergy(moor.Impact{Mass: 208e6, Speed: 0.1, Draft: 15.5, Beam: 57, Gyration: 85, Arm: 74.52, Angle: 61.52 * moorDegree, Soft: 0.9}, 1000),
		"I04 1": moorEnergy(moor.Impact{Mass: 2, Speed: 1, Draft: 13.72, Beam: 51}, 1),
		"I05 1": moorEnergy(moor.Impact{Mass: 1500, Speed: 0.46, Along: 1}, 1),
		"I06 1": moorEnergy(moor.Impact{Mass: 1500, Speed: 0.46, Draft: 0.4, Beam: 2.2, Length: 6, Block: 0.45, Arm: 1.5, Angle: math.Pi / 2}, 1),
		"I07 1": func() (float64, error) { // the mean is half of a spring's peak
			f, _, err := (moor.Fender{Stroke: 0.1}).Stop(158.7)
			return f / 2, err
		},
		"I08 1": func() (float64, error) {
			f, _, err := (moor.Fender{Stiffness: 20000}).Stop(158.7)
			return f, err
		},
		"I09 1": moorEnergy(moor.Impact{Mass: 1500, Speed: 0.46, Along: 1, Dock: 2000}, 1),
	}
}

func moorWaveValues() map[string]moorWorked {
	lake := moor.Fetch{Wind: 15, Length: 2000, Gravity: moorOldGravity}
	shallow := lake
	shallow.Depth = 3
	big := moor.Fetch{Wind: 15, Length: 200e3, Gravity: moorOldGravity}
	full := moor.Fetch{Wind: 15, Length: 1e6, Gravity: moorOldGravity}
	example := moor.Fetch{Wind: math.Pow(22.4/0.71, 1/1.23), Length: 24.4e3, Depth: 10.7, Gravity: moorOldGravity}
	stevenson := func(f float64) moorWorked { return moorSea("Stevenson", moor.Fetch{Wind: 15, Length: f}, moorHeight) }
	brief := shallow
	brief.Duration = 600
	briefDeep := lake
	briefDeep.Duration = 600
	wake := func(boat float64, of func(moor.Sea) float64) moorWorked {
		return func() (float64, error) {
			s, err := (moor.Wake{Boat: boat, Height: 0.3, Distance: 30}).At(30, 100)
			return of(s), err
		}
	}
	celerity := func(s moor.Sea) float64 { return measure.Gravity * s.Period / (2 * math.Pi) }
	fifteen := 15 * measure.Knot
	float := moor.Sea{Height: 0.30, Period: 2}
	return map[string]moorWorked{
		"V01 1": moorSea("JONSWAP", big, moorHeight), "V02 1": moorSea("JONSWAP", big, moorPeriod), "V04 1": moorSea("JONSWAP", full, moorGrown),
		"V03 1": func() (float64, error) { // the least fetch with the full height, by halving
			all, err := full.Waves("JONSWAP")
			if err != nil {
				return 0, err
			}
			lo, hi := 1e5, 1e6
			for range 60 {
				mid := (lo + hi) / 2
				s, err := (moor.Fetch{Wind: 15, Length: mid, Gravity: moorOldGravity}).Waves("JONSWAP")
				if err != nil {
					return 0, err
				}
				if s.Height < all.Height {
					lo = mid
				} else {
					hi = mid
				}
			}
			return hi, nil
		},
		"R01 1": moorSea("revised SMB", lake, moorHeight), "R01 2": moorSea("revised SMB", lake, moorPeriod),
		"R02 1": moorSea("revised SMB", brief, moorHeight), "R02 2": moorSea("revised SMB", brief, moorPeriod),
		"R03 1": moorSea("CEM", briefDeep, moorHeight), "R03 2": moorSea("CEM", briefDeep, moorPeriod),
		"R04 1": moorSea("SPM 1984", brief, moorHeight), "R04 2": moorSea("SPM 1984", brief, moorPeriod),
		"V06 1": moorSea("SPM 1984", lake, moorHeight), "V07 1": moorSea("SPM 1984", lake, moorPeriod), "V08 1": moorSea("SPM 1984", lake, moorGrown),
		"V09 1": moorSea("SPM 1984", shallow, moorHeight), "V10 1": moorSea("SPM 1984", shallow, moorPeriod),
		"V11 1": moorSea("SPM 1984", example, moorHeight), "V12 1": moorSea("SPM 1984", example, moorPeriod),
		"V14 1": moorSea("CEM", lake, moorHeight), "V15 1": moorSea("CEM", lake, moorPeriod), "V16 1": moorSea("CEM", lake, moorGrown),
		"V19 1": stevenson(2000), "V19 2": stevenson(100e3),
		"V20 1": func() (float64, error) { return (moor.Sea{Period: 2}).Length(100) },
		"V22 1": func() (float64, error) { // gT² decides; the source's g is 9.81
			return (moor.Sea{Period: 10 * math.Sqrt(moorOldGravity/measure.Gravity)}).Length(3)
		},
		"V23 1": func() (float64, error) { return (moor.Sea{Period: 2}).Length(3) },
		"V24 1": wake(fifteen, func(s moor.Sea) float64 { return math.Acos(celerity(s)/fifteen) / moorDegree }),
		"V25 1": wake(fifteen, func(s moor.Sea) float64 { return celerity(s) / measure.Knot }),
		"V26 1": wake(fifteen, moorPeriod),
		"V27 1": wake(fifteen, func(s moor.Sea) float64 { return celerity(s) * s.Period / measure.Foot }),
		"V28 1": func() (float64, error) { // the fastest boat that is accepted in 3 m
			lo, hi := 1.0, 10.0
			for range 60 {
				mid := (lo + hi) / 2
				if _, err := (moor.Wake{Boat: mid, Height: 0.3, Distance: 30}).At(30, 3); err == nil {
					lo = mid
				} else {
					hi = mid
				}
			}
			return lo, nil
		},
		"F01 1": func() (float64, error) { // below still water: no freeboard cuts the rest to none
			crest, _, err := float.Push(3, 0.30, 0)
			return crest, err
		},
		"F02 1": func() (float64, error) {
			dry, _, err1 := float.Push(3, 0.30, 0)
			full, _, err2 := float.Push(3, 0.30, 1)
			if err1 != nil {
				return 0, err1
			}
			return full - dry, err2
		},
		"F03 1": func() (float64, error) {
			_, drift, err := float.Push(3, 0.30, 1)
			return drift, err
		},
		"F04 1": func() (float64, error) { // the drift per width is the energy per area, here of water of 62.29 lb/ft³
			_, drift, err := (moor.Sea{Height: measure.Foot, Period: 3}).Push(10, 0.3, 1)
			return drift * 62.29 * measure.PCF / 1000 / measure.PLF, err
		},
		"V05 1": moorSea("SPM 1984", lake, func(s moor.Sea) float64 { // back from the height
			return moorOldGravity * s.Height / (0.0016 * math.Sqrt(moorOldGravity*lake.Length))
		}),
		"V13 1": moorSea("CEM", lake, func(s moor.Sea) float64 {
			return moorOldGravity * s.Height / (0.0413 * math.Sqrt(moorOldGravity*lake.Length))
		}),
	}
}

func moorLineValues() map[string]moorWorked {
	reach := func(h moor.Hang) float64 { return h.Reach }
	wire := moorCable(2, 625)
	textbook := moorCable(3, 549.859104)
	hung := func(of func(moor.Hang) (float64, error)) moorWorked {
		return func() (float64, error) {
			h, err := textbook.At(500, 0, moor.Hang{})
			if err != nil {
				return 0, err
			}
			return of(h)
		}
	}
	plain := func(of func(moor.Hang) float64) func(moor.Hang) (float64, error) {
		return func(h moor.Hang) (float64, error) { return of(h), nil }
	}
	c1, c7 := moorChain(20, 12, 0), moorChain(30, 20, 0)
	slack := moorChain(376*moorOldGravity, 600, 0)
	return map[string]moorWorked{
		"M01 1": func() (float64, error) { // the pull at which it sags 25 ft, by halving
			lo, hi := 100.0, 1e5
			for range 80 {
				mid := (lo + hi) / 2
				h, err1 := wire.Pull(mid, 0)
				sag, err2 := wire.Dip(h)
				if err1 != nil || err2 != nil {
					return 0, errors.Join(err1, err2)
				}
				if sag > 25 {
					lo = mid
				} else {
					hi = mid
				}
			}
			return lo / 2, nil
		},
		"M05 1": hung(plain(func(h moor.Hang) float64 { return h.Pull / 3 })),
		"M02 1": moorPulled(wire, 2*1940.625, 0, reach),
		"M03 1": moorPulled(wire, 2*1940.625, 0, moor.Hang.Tension),
		"M04 1": moorPulled(wire, 2*1940.625, 0, func(h moor.Hang) float64 { return h.Angle() / moorDegree }),
		"M06 1": hung(plain(func(h moor.Hang) float64 { return h.Pull })),
		"M06 2": hung(plain(moor.Hang.Tension)),
		"M07 1": moorPulled(moorCable(3, 549.859104), 3*327.931293, 0, func(h moor.Hang) float64 { return 2 * h.Down / 3 }),
		"M07 2": hung(textbook.Dip),
		"M08 1": moorPulled(c1, 100, 3, func(h moor.Hang) float64 { return 12 - h.Lying }),
		"M09 1": moorPulled(c7, 600, 5, func(h moor.Hang) float64 { return 20 - h.Lying }),
		"M09 2": moorPulled(c7, 600, 5, moor.Hang.Tension),
		"M09 3": moorPulled(c7, 600, 5, func(h moor.Hang) float64 { return h.Down }),
		"M10 1": func() (float64, error) { // the pull at which the last link lifts, by halving
			l := moorChain(15, 10, 0)
			lo, hi := 100.0, 1000.0
			for range 60 {
				mid := (lo + hi) / 2
				h, err := l.Pull(mid, 2.5)
				if err != nil {
					return 0, err
				}
				if h.Lying > 0 {
					lo = mid
				} else {
					hi = mid
				}
			}
			return lo, nil
		},
		"M11 1": moorPulled(moorChain(20, 100, 0), 1000, 3, func(h moor.Hang) float64 { return (100 - h.Lying) / 3 }),
		"M13 1": moorPulled(slack, 0, 200, func(h moor.Hang) float64 { return h.Lying }),
		"M13 2": moorPulled(slack, 0, 200, func(h moor.Hang) float64 { return h.Down }),
		"M14 1": moorTon1200(0), "M14 2": moorTon1200(1850e6),
		"M15 1": moorPulled(slack, 1.2e6-376*moorOldGravity*200, 200, func(h moor.Hang) float64 { return h.Stiffness[0][0] / 1000 }),
	}
}

func moorGroundValues() map[string]moorWorked {
	of := func(change func(*moor.DeadWeight), lift float64, unit float64) moorWorked {
		return func() (float64, error) {
			b := moorBlock
			change(&b)
			l, err := moorLimit(b.Check(0, lift))
			return l / unit, err
		}
	}
	// The US rows give concrete and water as 150 and 62.4 lb per cubic foot.
	us := moor.DeadWeight{Mass: 8000 * measure.Pound, Density: 150 * measure.PCF, Water: 62.4 * measure.PCF, Friction: 0.40, Design: measure.Factor{Value: 1}}
	weight := func(d moor.DeadWeight, unit float64) moorWorked {
		return func() (float64, error) {
			w, err := d.Weight()
			return w / unit, err
		}
	}
	small := us
	small.Mass = 300 * measure.Pound
	gangway := moor.Ramp{Length: 20 * moorFoot, Width: 3 * moorFoot, Mass: 200 * measure.Pound}
	out := map[string]moorWorked{
		"A02 1": weight(moorBlock, 1),
		"A04 1": of(func(b *moor.DeadWeight) { b.Design.Value = 1.5 }, 400, 1),
		"A05 1": func() (float64, error) { // along the slope: the pull that is just held, by halving
			b := moorBlock
			b.Slope = 10 * moorDegree
			lo, hi := 0.0, 3000.0
			for range 60 {
				p := (lo + hi) / 2
				c, err := b.Check(p*math.Cos(b.Slope), -p*math.Sin(b.Slope))
				if err != nil {
					return 0, err
				}
				if c.Verdict() == measure.Holds {
					lo = p
				} else {
					hi = p
				}
			}
			return lo, nil
		},
		"A06 1": func() (float64, error) {
			b := moorBlock
			b.Design.Value = 1.5
			return b.Needed(1200, 0)
		},
		"A07 1": weight(us, moorPound),
		"A08 1": func() (float64, error) {
			l, err := moorLimit(us.Check(0, 0))
			return l / moorPound, err
		},
		"A09 1": weight(small, moorPound),
		"G02 1": moorAngle(1, 12), "G02 2": moorAngle(1, 3), "G02 3": moorAngle(1, 1.5),
		"G03 1": func() (float64, error) { return moorRamp(1, 1.5).Needed(0, 0) },
		"G10 1": func() (float64, error) {
			r := moorRamp(1, 6*moorFoot)
			r.Limit = "accessible"
			l, err := r.Needed(0, 0)
			return l / moorFoot, err
		},
		"G10 2": func() (float64, error) {
			r := moorRamp(1, 10*moorFoot)
			r.Limit = "accessible"
			l, err := r.Needed(0, 0)
			return l / moorFoot, err
		},
		"G09 1": func() (float64, error) { return (moor.Ramp{Length: 12, Width: 1}).Moment(400) }, // the same w L²/8
		"H01 1": func() (float64, error) {
			c, err := (moor.Haul{Mass: 2000 * measure.Pound, Friction: 0.5, Parts: 4}).Check()
			if err != nil {
				return 0, err
			}
			return c[0].Value / moorPound, nil
		},
		"G04 1": func() (float64, error) { return moorRamp(6, 1.2).Slide(0, 1) },
		"G05 1": func() (float64, error) {
			r, err := gangway.Reaction(25*measure.PSF, 0)
			return r / moorPound, err
		},
		"G06 1": func() (float64, error) {
			m, err := gangway.Moment(50 * measure.PSF)
			return m / (moorPound * moorFoot), err
		},
		"G07 1": func() (float64, error) {
			h := moor.Hinge{Width: 2, Pins: 2, Diameter: 0.016, Plate: 0.01}
			j, err := h.Tie(moor.Side{}, moor.Side{}, 10000, 0, 0)
			return j.Shear / 1e6, err
		},
		"G08 1": func() (float64, error) {
			s, err := (moor.Post{}).Stress(2000, 3, 0.2)
			return s / 1e6, err
		},
		"K04 1": moorSlopeLimit("accessible"), "K04 2": moorSlopeLimit("common"), "K04 3": moorSlopeLimit("navy"),
	}
	for i, use := range []string{
		"anchor stockless", "anchor high-efficiency drag", "anchor pile or plate", "chain, straight", "chain",
		"wire rope, mooring", "rope, mooring", "anchor dead weight, least", "wire rope",
	} {
		out["K01 "+string(rune('1'+i))] = moorDesign(use)
	}
	for i, e := range [][2]string{
		{"wire rope", "wire rope clips"},
		{"wire rope", "mechanical sleeve, steel core"},
		{"wire rope", "mechanical sleeve, fibre core"},
		{"wire rope", "tucked splice"},
		{"wire rope", "tucked splice, stainless"},
		{"wire rope", "wedge socket"},
		{"rope", "knot"},
		{"rope", "figure-eight knot"},
	} {
		out["K05 "+string(rune('1'+i))] = moorEnd(e[0], e[1])
	}
	return out
}
