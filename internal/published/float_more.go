package published

import (
	"context"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// floatMoreChecks has what single units, drums and small changes of a platform do.
func floatMoreChecks() ([]Check, error) {
	var out []Check
	for _, set := range [][]Check{floatGirths(), floatSlices(), floatSupports(), floatVaried(), floatExpected(), floatSurveys()} {
		out = append(out, set...)
	}
	return out, nil
}

// floatGirths checks drums by their girth.
func floatGirths() []Check {
	drum := func(girth, length float64, of func(float.Drum) float64) func() (float64, error) {
		return func() (float64, error) {
			d, err := float.MeasureDrum(
				float.Figure{Value: girth, Within: 0.002}, float.Figure{Value: length, Within: 0.003}, float.Figure{Value: 18, Within: 0.2},
			)
			return of(d), err
		}
	}
	diameter := func(d float.Drum) float64 { return d.Diameter.Value }
	// A table of circles gives the area as well: the volume of one foot of length.
	circles := measure.Source{Title: "Tables of circumferences and areas of circles", Locator: "diameter 22 1/2: 70.686, 397.61", Status: measure.Memory}
	out := share("float", circles, 0,
		one{"diameter of a girth of 70.686 in", "22.500", "in", drum(70.686*measure.Inch, 0.85, func(d float.Drum) float64 { return d.Diameter.Value / measure.Inch })},
		one{"area by a girth of 70.686 in", "397.61", "in²", drum(70.686*measure.Inch, 0.85, func(d float.Drum) float64 {
			return d.Displacement.Value / 0.85 / (measure.Inch * measure.Inch)
		})},
	)
	return append(out, share("float", independent("Circle of a known girth, 50 digits", "diameter C/π, volume C² L/(4π); girth 1.8 m ± 2 mm, length 0.88 m ± 3 mm"), 1e-12,
		one{"diameter", "0.572957795130823", "m", drum(1.8, 0.88, diameter)},
		one{"displacement", "226.891286871806", "L", drum(1.8, 0.88, func(d float.Drum) float64 { return d.Displacement.Value / measure.Litre })},
		// 2 dC/C + dL/L, and 1 % for hoops and dents.
		one{"accuracy of the displacement", "3.5466087518598", "L", drum(1.8, 0.88, func(d float.Drum) float64 { return d.Displacement.Within / measure.Litre })},
		one{"volume of the body that stands for the drum", "226.891286871806", "L", drum(1.8, 0.88, func(d float.Drum) float64 { return d.Body().Volume() / measure.Litre })},
		one{"length of its unit", "0.88", "m", drum(1.8, 0.88, func(d float.Drum) float64 { return d.Unit(r3.Vec{}, 0).Body.(float.Cylinder).Length })},
		one{"accuracy of the diameter", "6.36619772367581e-4", "m", drum(1.8, 0.88, func(d float.Drum) float64 { return d.Diameter.Within })},
	)...)
}

// floatSlices checks the moments of a unit's slices about its middle, each slice a point: the
// shares and places of Gauss's rule make those of the whole.
func floatSlices() []Check {
	// Powers of x and y, averaged over the slices by volume.
	mean := func(u float.Unit, along, across int, i, j float64) func() (float64, error) {
		return func() (float64, error) {
			parts, err := u.Slices(along, across)
			var v, m float64
			for _, s := range parts {
				v += s.Body.Volume()
				m += s.Body.Volume() * math.Pow(s.At.X-u.At.X, i) * math.Pow(s.At.Y-u.At.Y, j)
			}
			return m / v, err
		}
	}
	sum := func(u float.Unit, along, across int, of func(float.Unit) float64) func() (float64, error) {
		return func() (float64, error) {
			parts, err := u.Slices(along, across)
			total := 0.0
			for _, s := range parts {
				total += of(s)
			}
			return total, err
		}
	}
	block := float.Unit{Body: float.Block{Length: 6, Width: 3, Height: 0.4}, At: r3.Vec{X: 1, Y: -2}, Mass: 90, Leak: 0.3}
	turned := block
	turned.Heading = math.Pi / 6
	drum := float.Unit{Body: float.Cylinder{Diameter: 0.6, Length: 1.2}, Mass: 18}
	return share("float", exactly("Moments of a uniform rod and rectangle", "means of x², x⁴ and x²y² over length L and width B: L²/12, L⁴/80, L²B²/144"), 1e-12,
		one{"x² of a block of 6 m in 2 slices", "3.00000000000", "m²", mean(block, 2, 1, 2, 0)},
		one{"x² of a block of 6 m in 3 slices", "3.00000000000", "m²", mean(block, 3, 1, 2, 0)},
		one{"x⁴ of a block of 6 m in 3 slices", "16.2000000000", "m⁴", mean(block, 3, 2, 4, 0)},
		one{"x²y² of a block of 6 m by 3 m in 2 by 3 slices", "2.25000000000", "m⁴", mean(block, 2, 3, 2, 2)},
		// Turned by 30°: x² = (L² cos² + B² sin²)/12 = (27 + 2.25)/12, xy = (L² - B²) sin cos/12, whose √3 is left out.
		one{"x² of the block turned by 30°", "2.43750000000", "m²", mean(turned, 2, 2, 2, 0)},
		one{"xy over √3 of the block turned by 30°", "0.56250000000", "m²", func() (float64, error) {
			xy, err := mean(turned, 2, 2, 1, 1)()
			return xy / math.Sqrt(3), err
		}},
		one{"x² of a drum of 1.2 m in 2 slices", "0.12000000000", "m²", mean(drum, 2, 1, 2, 0)},
		one{"volume of the block in 3 by 2 slices", "7.20000000000", "m³", sum(block, 3, 2, func(u float.Unit) float64 { return u.Body.Volume() })},
		one{"mass of the block in 3 by 3 slices", "90.0000000000", "kg", sum(block, 3, 3, func(u float.Unit) float64 { return u.Mass })},
		one{"water in the block in 2 by 2 slices", "0.30000000000", "m³", sum(block, 2, 2, func(u float.Unit) float64 { return u.Leak })},
	)
}

// floatSupports checks what a level unit does to a frame that presses it down.
func floatSupports() []Check {
	drum := float.Unit{Body: float.Cylinder{Diameter: 0.6, Length: 0.9}, Mass: 20}
	at := func(u float.Unit, sink float64, pick int) func() (float64, error) {
		return func() (float64, error) {
			f, err := u.Support(1000)
			if err != nil {
				return 0, err
			}
			force, stiffness, energy := f(sink)
			return [3]float64{force, stiffness, energy}[pick], nil
		}
	}
	captive := drum
	captive.Captive = true
	block := float.Unit{Body: float.Block{Length: 2, Width: 1, Height: 0.5}, Mass: 40, Leak: 0.06}
	loose := block
	loose.Captive = true
	perG := func(f func() (float64, error)) func() (float64, error) {
		return func() (float64, error) {
			x, err := f()
			return x / measure.Gravity, err
		}
	}
	out := share("float", independent("Drum of 0.6 m by 0.9 m and 20 kg pressed under, 50 digits", "segment of a circle, r² acos((r-h)/r) - (r-h)√(2rh-h²), integrated over the draft h"), 1e-12,
		one{"force half under", "1051.61123365122", "N", at(drum, 0.3, 0)},
		one{"stiffness half under", "5295.591", "N/m", at(drum, 0.3, 1)},
		one{"work half under", "100.02783", "J", at(drum, 0.3, 2)},
		one{"force a third under", "532.029088009228", "N", at(drum, 0.2, 0)},
		one{"stiffness a third under", "4992.7310753206", "N/m", at(drum, 0.2, 1)},
		one{"work a third under", "21.0966865409599", "J", at(drum, 0.2, 2)},
		one{"work on a captive drum, from where it floats by itself", "109.310803568394", "J", at(captive, 0.3, 2)},
	)
	// 2 m² of waterplane, 40 kg and 60 kg of water: it floats by itself at 0.05 m.
	return append(out, share("float", exactly("Block pressed under", "ρAs - m, ρA, ρAs²/2 - ms; a captive one ρA(s-m/ρA)²/2"), 1e-12,
		one{"force of a block, over g", "300.000000000", "kg", perG(at(block, 0.2, 0))},
		one{"stiffness of a block, over g", "2000.00000000", "kg/m", perG(at(block, 0.2, 1))},
		one{"work on a block, over g", "20.0000000000", "kg m", perG(at(block, 0.2, 2))},
		one{"block hanging in the air, over g", "-100.000000000", "kg", perG(at(block, 0, 0))},
		one{"work on a captive block, over g", "22.5000000000", "kg m", perG(at(loose, 0.2, 2))},
		one{"captive block that floats by itself", "0", "N", at(loose, 0.04, 0)},
	)...)
}

// floatBox is a box with its deck's corners, its middle at the origin.
func floatBox(length, width, height, mass, up, deck float64) *float.Platform {
	p := &float.Platform{
		Density: 1000,
		Units:   []float.Unit{{Body: float.Block{Length: length, Width: width, Height: height}}},
		Weights: []float.Weight{{Mass: mass, At: r3.Vec{Z: up}}},
	}
	for _, c := range [][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		p.Corners = append(p.Corners, r3.Vec{X: c[0] * length / 2, Y: c[1] * width / 2, Z: deck})
	}
	return p
}

// floatVaried checks platforms with a swimmer, a weight or a flooded unit.
func floatVaried() []Check {
	dock := floatBox(6, 2.4, 0.5, 2000, 0.1, 0.25)
	climbing := func(of func(float.State, float.Ladder) float64) func() (float64, error) {
		l := float.Ladder{At: r3.Vec{Y: 1.2, Z: 0.25}, Mass: 84}
		return func() (float64, error) {
			s, err := dock.Swimmer(l)
			if err != nil {
				return 0, err
			}
			return of(s, l), nil
		}
	}
	read := func(criterion string) func() (float64, error) {
		return func() (float64, error) {
			c, err := float.LookupCriterion(criterion)
			if err != nil {
				return 0, err
			}
			check, err := c.AsLoaded().Rule(float.Deck{})(dock)
			if err != nil {
				return 0, err
			}
			return check.Value, check.Err
		}
	}
	out := share("float", independent("Wall-sided box in equilibrium, 50 digits", "B = (B²/12d tan φ, d/2 + B²/24d tan² φ) over the keel, on one vertical with G"), 1e-10,
		one{"heel of a box with a swimmer 0.3 m outside its edge", "0.0199272174480173", "rad", climbing(func(s float.State, _ float.Ladder) float64 { return s.Heel })},
		one{"height of the ladder's top with him", "0.331296162402516", "m", climbing(func(s float.State, l float.Ladder) float64 { return s.Height(l.At) })},
		one{"lowest of the deck's edge with 100 kg near it", "0.337032550466321", "m", func() (float64, error) {
			s, err := dock.With(float.Weight{Mass: 100, At: r3.Vec{Y: 0.9, Z: 0.25}}).Settle()
			if err != nil {
				return 0, err
			}
			_, h, err := s.Lowest()
			return h, err
		}},
		one{"lowest of the deck's edge with two of 80 kg at its corner", "0.278382840501223", "m", func() (float64, error) {
			w, err := dock.WorstCrowd(float.Crowd{People: 2, Each: 80, Height: 1})
			return w.Height, err
		}},
		one{"tilt with two of 80 kg at a corner", "0.0332410070408", "rad", func() (float64, error) {
			w, err := dock.WorstCrowd(float.Crowd{People: 2, Each: 80, Height: 1})
			return w.State.Tilt(), err
		}},
		// d/2 + B²/12d - KG, with 2000/14400 m of draft.
		one{"metacentric height that a criterion reads", "3.17544444444444", "m", read("metacentric height 0.15 m")},
		one{"freeboard that a criterion reads", "0.361111111111111", "m", read("freeboard 0.15 m")},
		one{"height of a box's deck with nobody on it", "0.361111111111111", "m", func() (float64, error) {
			s, err := dock.Settle() // draft 2000/(1000·6·2.4), of 0.5 m
			if err != nil {
				return 0, err
			}
			_, h, err := s.Lowest()
			return h, err
		}},
	)
	// One after another on a corner of a box of 4500 kg: with four the corner stands 15.7 mm over
	// water, with five 28.7 mm under it.
	posted := func(of func(float.Posting) float64) func() (float64, error) {
		return func() (float64, error) {
			p, err := floatBox(6, 2.4, 0.5, 4500, 0.1, 0.25).Post(float.Crowd{Each: 80, Height: 1})
			return of(p), err
		}
	}
	out = append(out, share("float", independent("Wall-sided box tilted both ways, 50 digits", "height of its corner with one to five of 80 kg there, 1 m over the deck: 0.1455, 0.1028, 0.0595, 0.0157, -0.0287 m"), 1e-9,
		one{"people on one spot with the deck dry", "4", "", posted(func(p float.Posting) float64 { return float64(p.People) })},
		one{"place along where one more is too many", "3", "m", posted(func(p float.Posting) float64 { return math.Abs(p.At.X) })},
	)...)
	// Boxes of 400 kg lift, all offered in one place, under 1000 kg: two sink, so that four are
	// needed to lose one. Four draw 0.25 m of 0.4 m, and the deck is 0.3 m over their middle.
	fewest := func(of func(float.Choice) float64) func() (float64, error) {
		return func() (float64, error) {
			base := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 1000, At: r3.Vec{Z: -0.1}}}}
			base.Corners = []r3.Vec{{X: -0.5, Y: -0.5, Z: 0.3}, {X: 0.5, Y: -0.5, Z: 0.3}, {X: 0.5, Y: 0.5, Z: 0.3}, {X: -0.5, Y: 0.5, Z: 0.3}}
			var places []float.Unit
			for range 6 {
				places = append(places, float.Unit{Body: float.Block{Length: 1, Width: 1, Height: 0.4}})
			}
			c, err := base.Fewest(context.Background(), places, float.Demand{})
			return of(c), err
		}
	}
	out = append(out, share("float", exactly("Boxes of 1 m² and 0.4 m in one place under 1000 kg", "three bear it, one of four may be lost"), 1e-9,
		one{"fewest boxes that may lose one", "4", "", fewest(func(c float.Choice) float64 { return float64(len(c.Places)) })},
		one{"height of the deck on them", "0.250000000000", "m", fewest(func(c float.Choice) float64 { return c.Margin })},
	)...)
	// Three boxes of 1 m² in a row under 300 kg: 0.1 m of draft on three. Flooded the middle one,
	// 0.15 m on two. Flooded an end one, the others displace as much all the same.
	row := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 300, At: r3.Vec{Z: -0.1}}}}
	for _, x := range []float64{-1.5, 0, 1.5} {
		row.Units = append(row.Units, float.Unit{Body: float.Block{Length: 1, Width: 1, Height: 0.4}, At: r3.Vec{X: x}})
	}
	loss := func(i int, of func(float.State) float64) func() (float64, error) {
		return func() (float64, error) {
			all, err := row.Losses()
			if err != nil {
				return 0, err
			}
			return of(all[i].State), all[i].Err
		}
	}
	return append(out, share("float", exactly("Boxes of 1 m² in a row, one flooded", "weight over density and what waterplane is left"), 1e-10,
		one{"draft with the middle of three flooded", "0.150000000000", "m", loss(1, func(s float.State) float64 { return 0.2 - s.Level })},
		one{"mass with the middle of three flooded", "300.000000000", "kg", loss(1, func(s float.State) float64 { return s.Mass })},
		one{"displaced with an end one of three flooded, by the other two", "0.300000000000", "m³", loss(0, func(s float.State) float64 {
			total := 0.0
			for _, i := range []int{1, 2} {
				u, err := s.Unit(i)
				if err != nil {
					return math.NaN()
				}
				total += u.Volume
			}
			return total
		})},
	)...)
}

// floatExpected checks the range of freeboards to be found: for small doubts the root of the
// squares of the linear effects of each on a box, whose GM are known.
func floatExpected() []Check {
	// Mass and place turn the box about its middle; a corner is L/2 and B/2 from it.
	dock := floatBox(4, 2, 0.6, 1600, 0.1, 0.3)
	dock.Corners = append(dock.Corners, r3.Vec{Z: 0.3})
	figure := func(i int, of func(float.Figure) float64) func() (float64, error) {
		return func() (float64, error) {
			all, err := dock.Expect(float.Doubt{Mass: 0.01, Place: 0.001, Volume: 0.002, Each: 0.001})
			if err != nil {
				return 0, err
			}
			return of(all[i]), nil
		}
	}
	within := func(f float.Figure) float64 { return f.Within / measure.Millimetre }
	return share("float", independent("Linear effects of doubts on a box, 50 digits", "√((m d)² + (v d)² + (e d)² + (x L/2GM_L)² + (y B/2GM_T)²), GM = d/2 + L²/12d - KG"), 1e-5,
		one{"freeboard to expect", "0.4", "m", figure(0, func(f float.Figure) float64 { return f.Value })},
		one{"range of a corner's freeboard", "2.19865347503867", "mm", figure(2, within)},
		one{"range of the middle's freeboard", "2.04939015319192", "mm", figure(4, within)},
	)
}

// floatSurveys checks what a survey finds on a box whose attitude is given: volume and centre of
// buoyancy of a box between its keel and a plane that cuts its sides alone are closed.
func floatSurveys() []Check {
	// heights are those of a plane: n·r + d.
	survey := func(nx, ny, d, tape float64, aboard []float.Weight, off ...float64) float.Survey {
		s := float.Survey{
			Plan: floatBox(6, 2.4, 0.5, 2000, 0.1, 0.3), Aboard: aboard,
			Doubt: float.Doubt{Mass: 1e-9, Place: 1e-9, Volume: 1e-9, Each: 1e-9, Aboard: 1e-9},
		}
		n := r3.Vec{X: nx, Y: ny, Z: math.Sqrt(1 - nx*nx - ny*ny)}
		for i, c := range s.Plan.Corners {
			h := r3.Dot(n, c) + d
			if len(off) > 0 {
				h += off[i]
			}
			s.Freeboards = append(s.Freeboards, float.Figure{Value: h, Within: tape})
		}
		return s
	}
	found := func(s float.Survey, of func(float.Finding) float64) func() (float64, error) {
		return func() (float64, error) {
			f, err := s.Find()
			if err != nil {
				return 0, err
			}
			return of(f), nil
		}
	}
	heeled := survey(0, -math.Sin(0.05), 0.08, 0.004, nil)
	both := survey(0.01, -0.04, 0.07, 0.004, []float.Weight{{Mass: 90, At: r3.Vec{X: 1.5, Y: 0.5, Z: 1}}})
	box := independent("Box cut by a plane, 50 digits", "V = LB(H/2 - d/n_z), V B = ∫∫ over its bottom; G on the vertical through B, what is aboard taken off")
	mass := func(f float.Finding) float64 { return f.Mass.Value }
	out := share("float", box, 1e-11,
		one{"mass of a box heeled by 0.05", "2446.55849847345", "kg", found(heeled, mass)},
		one{"excess over the plan of a box heeled by 0.05", "446.55849847345", "kg", found(heeled, func(f float.Finding) float64 { return f.Excess.Value })},
		one{"centre across of a box heeled by 0.05", "0.128290944753488", "m", found(heeled, func(f float.Finding) float64 { return f.Centre.Y })},
		one{"heel of a box heeled by 0.05", "0.05", "rad", found(heeled, func(f float.Finding) float64 { return f.Heel.Value })},
		one{"mass of a box tilted both ways, 90 kg aboard", "2501.1421060301", "kg", found(both, mass)},
		one{"centre along of a box tilted both ways", "-0.223853972511355", "m", found(both, func(f float.Finding) float64 { return f.Centre.X })},
		one{"centre across of a box tilted both ways", "0.0806859463114121", "m", found(both, func(f float.Finding) float64 { return f.Centre.Y })},
		one{"heel of a box tilted both ways", "0.0400126761061244", "rad", found(both, func(f float.Finding) float64 { return f.Heel.Value })},
		one{"trim of a box tilted both ways", "-0.0100001666741671", "rad", found(both, func(f float.Finding) float64 { return f.Trim.Value })},
	)
	// One corner of four read high by t: every residual is t/4, χ² = 4·4 (t/4)²/w² = t²/w².
	twisted := survey(0, 0, 0.1, 0.01, nil, 0, 0, 0, 0.012)
	out = append(out, share("float", exactly("Plane through four corners by least squares", "one of them high by t: residuals ±t/4, twist t"), 1e-9,
		one{"twist of one corner high by 12 mm", "0.012", "m", found(twisted, func(f float.Finding) float64 { return f.Twist.Value })},
		one{"residual at the high corner", "0.003", "m", found(twisted, func(f float.Finding) float64 { return f.Residuals[3] })},
		one{"residual beside it", "-0.003", "m", found(twisted, func(f float.Finding) float64 { return f.Residuals[0] })},
	)...)
	// Beside the tape's, the doubts of the plan are a billionth.
	out = append(out, share("float", exactly("Mean of four readings", "half of the accuracy of one"), 1e-6,
		one{"level's accuracy by four corners read within 10 mm", "0.005", "m", found(twisted, func(f float.Finding) float64 { return f.Level.Within })},
	)...)
	fits := func(f float.Finding) float64 { return f.Fits }
	planned := func(f float.Finding) float64 { return f.AsPlanned }
	// Draft 2000/14400 m: the plan's origin lies 0.25 - 0.13889 m over the water.
	level := 0.25 - 2000./14400
	out = append(out, share("float", independent("χ² distribution, 50 digits", "one degree of freedom: erfc √(x/2); three: erfc √(x/2) + √(2x/π) exp(-x/2)"), 1e-5,
		one{"chance of a corner high by 1.2 times its accuracy", "0.230139340443417", "", found(twisted, fits)},
		// A level off by δ: χ² = δ²/(w²/16) = 4 with w = 4 mm, δ = 2 mm.
		one{"chance of a dock as planned 2 mm lower, four corners read within 4 mm", "0.261464129949111", "", found(survey(0, 0, level-0.002, 0.004, nil), planned)},
	)...)
	table := measure.Source{Title: "NIST/SEMATECH e-Handbook of Statistical Methods", Locator: "1.3.6.7.4, upper critical values of χ² at 0.05: 3.841 and 7.815", Status: measure.Memory}
	return append(out, share("float", table, 0,
		one{"chance of a corner high by √3.841 accuracies", "0.0500", "", found(survey(0, 0, 0.1, 0.01, nil, 0, 0, 0, 0.01*math.Sqrt(3.841)), fits)},
		one{"chance of a dock as planned that lies √7.815 standard deviations low", "0.0500", "", found(survey(0, 0, level-0.001*math.Sqrt(7.815), 0.004, nil), planned)},
	)...)
}
