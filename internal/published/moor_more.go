package published

import (
	"errors"
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// moorMoreChecks has hinges, cleats, seas as they are judged, pieces of a line, and whole
// loads and moorings.
func moorMoreChecks() ([]Check, error) {
	var out []Check
	for _, set := range [][]Check{moorParts(), moorSeas(), moorPieces(), moorHeld(), moorWeather(), moorLimits()} {
		out = append(out, set...)
	}
	return out, nil
}

// moorParts checks the give of a float at its pins and what a cleat's bolts take.
func moorParts() []Check {
	side := func(area, along, across, arm float64, of func(moor.Side) float64) func() (float64, error) {
		return func() (float64, error) {
			s, err := moor.Afloat(0.1, 0.4, area, along, across, arm)
			return of(s), err
		}
	}
	give := func(s moor.Side) float64 { return s.Give * 1e6 }
	float := independent("Float pushed at its edge, 50 digits", "sinks by 1/ρgA, turns by arm/ρgI; 6 m², 2 and 18 m⁴, arm 1.1 m")
	out := share("float/moor", float, 1e-12,
		one{"rise of the pins per MN", "78.6881011014635", "m/MN", side(6, 2, 18, 1.1, give)},
		one{"lean per MN", "56.0843917137861", "rad/MN", side(6, 2, 18, 1.1, func(s moor.Side) float64 { return s.Lean * 1e6 })},
		one{"roll per MN m", "5.6650900720996", "rad/(MN m)", side(6, 2, 18, 1.1, func(s moor.Side) float64 { return s.Roll * 1e6 })},
	)
	// A rectangle 3 m by 2 m pushed at its end: 1/A + (L/2)²/(BL³/12) = 4/A.
	return append(out, share("float/moor", exactly("Rectangle pushed at its end, and bolts in two rows", "four times the mean sinking; pull times height over base, on half of the bolts"), 1e-12,
		one{"rise of the end of a box, as times the mean", "4.00000000000", "", func() (float64, error) {
			s, err := moor.Afloat(0, 0, 6, 2*27./12, 3*8./12, 1.5)
			return s.Give * 1000 * measure.Gravity * 6, err
		}},
		one{"pin line of a float 0.4 m over water at 0.1 m", "0.500000000000", "m", side(6, 2, 18, 0, func(s moor.Side) float64 { return s.Height })},
		// 1800 N at 50 mm on 150 mm: 600 N on two bolts, and 400 N up on four.
		one{"tension of one of four bolts of a cleat", "400.000000000", "N", func() (float64, error) {
			t, _, err := moor.Cleat{Height: 0.05, Base: 0.15, Bolts: 4}.On(1800, 400)
			return t, err
		}},
		one{"shear of one of four bolts of a cleat", "450.000000000", "N", func() (float64, error) {
			_, s, err := moor.Cleat{Height: 0.05, Base: 0.15, Bolts: 4}.On(1800, 400)
			return s, err
		}},
		// Pushed down, a line presses the base and pulls no bolt; two bolts leave one.
		one{"tension of one of two bolts, the line leading down", "600.000000000", "N", func() (float64, error) {
			t, _, err := moor.Cleat{Height: 0.05, Base: 0.15, Bolts: 2}.On(1800, -400)
			return t, err
		}},
	)...)
}

// moorSeas checks the highest wave of a sea, the angle at a hinge, the sea as seen, and which
// water a wind comes over.
func moorSeas() []Check {
	highest := func(h, t, depth float64) func() (float64, error) {
		return func() (float64, error) {
			s, err := moor.Sea{Height: h, Period: t}.Highest(depth)
			return s.Height, err
		}
	}
	swing := func(h, t, depth float64) func() (float64, error) {
		return func() (float64, error) { return moor.Sea{Height: h, Period: t}.Swing(depth) }
	}
	linear := independent("Linear dispersion and the formulas of wave heights, 50 digits", "1.859 H/√(1 + H/d); 0.142 L tanh kd; 2πH/L")
	out := share("float/moor", linear, 1e-11,
		one{"highest of 0.4 m and 2.5 s in 3 m", "0.698490574276376", "m", highest(0.4, 2.5, 3)},
		one{"highest of 0.3 m and 2.2 s in 1.5 m", "0.509108117201052", "m", highest(0.3, 2.2, 1.5)},
		one{"highest of 0.8 m and 2 s in 2 m, where it breaks", "0.832555814398035", "m", highest(0.8, 2, 2)},
		one{"turn of a hinge in 0.4 m and 2.5 s, 3 m of water", "0.26718191318277", "rad", swing(0.4, 2.5, 3)},
		one{"turn of a hinge in 0.8 m and 2 s, 2 m of water", "0.830820012606493", "rad", swing(0.8, 2, 2)},
	)
	out = append(out, Check{
		Package: "float/moor", Quantity: "one wave in a thousand over the significant height, deep water",
		Source:  measure.Source{Title: "M. S. Longuet-Higgins, heights by Rayleigh's distribution, 50 digits", Locator: "√(ln 1000/2)", Status: measure.Independent},
		Printed: "1.85846", Because: "the formula's source prints 1.859", Within: 0.001,
		Compute: func() (float64, error) {
			h, err := highest(0.1, 3, 1e4)()
			return h / 0.1, err
		},
	})
	seen := func(of func(moor.Sea) float64) func() (float64, error) {
		return func() (float64, error) {
			s, err := moor.Seen(0.35, 24)
			return of(s), err
		}
	}
	// N, NE, E and so on; a wind between two of them comes over the longer.
	fetches := moor.Fetches{100, 200, 900, 400, 300, 150, 800, 50}
	from := func(degrees float64) func() (float64, error) {
		return func() (float64, error) { return fetches.From(degrees * moorDegree) }
	}
	return append(out, share("float/moor", exactly("Points of the compass, and ten waves timed", "clockwise from north by 45°; period a tenth"), 1e-12,
		one{"period of ten crests in 24 s", "2.40000000000", "s", seen(moorPeriod)},
		one{"height of a sea seen", "0.350000000000", "m", seen(moorHeight)},
		one{"fetch of a wind from 0°", "100.000000000", "m", from(0)},
		one{"fetch of a wind from 90°", "900.000000000", "m", from(90)},
		one{"fetch of a wind from 150°", "400.000000000", "m", from(150)},
		one{"fetch of a wind from 340°", "100.000000000", "m", from(340)},
		one{"fetch of a wind from -80°", "800.000000000", "m", from(-80)},
	)...)
}

// moorPieces checks the tension in the pieces of a line.
func moorPieces() []Check {
	shore := &moor.Line{Shore: true, Pieces: []moor.Piece{{Length: 6, Weight: 20, Clump: 100}, {Length: 5, Weight: 8}}}
	chain := &moor.Line{Pieces: []moor.Piece{{Length: 6, Weight: 20}, {Length: 6, Weight: 20}}}
	tension := func(l *moor.Line, piece int, pull, rise float64) func() (float64, error) {
		return func() (float64, error) {
			h, err := l.Pull(pull, rise)
			if err != nil {
				return 0, err
			}
			return l.Tension(piece, h)
		}
	}
	two := independent("Two catenaries with a weight between, 50 digits", "Σ (√(H²+V_top²) - √(H²+V_low²))/w is the rise; 6 m of 20 N/m, 100 N, 5 m of 8 N/m, 300 N, 4 m up")
	out := share("float/moor", two, 1e-9,
		one{"tension of the piece at the ground", "319.433774749708", "N", tension(shore, 0, 300, 4)},
		one{"tension of the piece at the dock", "390.331711406312", "N", tension(shore, 1, 300, 4)},
		one{"pull of the line down", "249.717530280477", "N", func() (float64, error) {
			h, err := shore.Pull(300, 4)
			return h.Down, err
		}},
	)
	lifted := independent("Chain partly on the bottom, 50 digits", "lifts √(h² + 2hH/w) of its length; T = H + wh at the top; 20 N/m, 3 m up, 100 N")
	return append(out, share("float/moor", lifted, 1e-9,
		one{"tension of the lower half of 12 m of chain", "100.119976067155", "N", tension(chain, 0, 100, 3)},
		one{"tension of the upper half of 12 m of chain", "160", "N", tension(chain, 1, 100, 3)},
	)...)
}

// moorHeld checks what a mooring does to the dock at rest.
func moorHeld() []Check {
	// Springs of 1000 N/m, stretched by 1 m each before the load: it moves 100 N/(2·1000 N/m).
	spring := func(name string, at, foot [2]float64) moor.Tie {
		return moor.Tie{
			Name: name, At: at, Height: 1, Foot: foot, FootZ: 1,
			Line: moor.Line{Shore: true, Pieces: []moor.Piece{{Length: 5, Stretch: 5000}}},
		}
	}
	pair := &moor.Mooring{Ties: []moor.Tie{spring("right", [2]float64{2, 0}, [2]float64{8, 0}), spring("left", [2]float64{-2, 0}, [2]float64{-8, 0})}}
	// Four chains, none like another, under a load with a turning moment.
	chain := func(name string, x, y, weight float64) moor.Tie {
		return moor.Tie{
			Name: name, At: [2]float64{3 * x, y}, Height: 0.2, Foot: [2]float64{10 * x, 7 * y}, FootZ: -3,
			Line: moor.Line{Pieces: []moor.Piece{{Length: 11, Weight: weight}}},
		}
	}
	four := &moor.Mooring{Ties: []moor.Tie{chain("a", 1, 1, 20), chain("b", 1, -1, 30), chain("c", -1, 1, 25), chain("d", -1, -1, 35)}}
	force := func(m *moor.Mooring, load moor.Load, of func(moor.Position, []moor.FittingForce) float64) func() (float64, error) {
		return func() (float64, error) {
			p, err := m.Rest(0, load)
			if err != nil {
				return 0, err
			}
			f, err := m.Forces(p)
			if err != nil {
				return 0, err
			}
			return of(p, f), nil
		}
	}
	out := share("float/moor", exactly("Dock between two springs", "load over both stiffnesses; what the springs pull"), 1e-9,
		one{"pull of the spring that slackens", "950.000000000", "N", force(pair, moor.Load{X: 100}, func(_ moor.Position, f []moor.FittingForce) float64 { return f[0].X })},
		one{"pull of the spring that is stretched", "-1050.00000000", "N", force(pair, moor.Load{X: 100}, func(_ moor.Position, f []moor.FittingForce) float64 { return f[1].X })},
		one{"way the dock has moved", "0.050000000000", "m", force(pair, moor.Load{X: 100}, func(p moor.Position, _ []moor.FittingForce) float64 { return p.X })},
	)
	// In the axes of the turned dock, back into those of the load.
	sum := func(of func(x, y, px, py float64) float64) func(moor.Position, []moor.FittingForce) float64 {
		return func(p moor.Position, all []moor.FittingForce) float64 {
			total := 0.0
			sin, cos := math.Sincos(p.Turn)
			for _, f := range all {
				x, y := f.X*cos-f.Y*sin, f.X*sin+f.Y*cos
				px, py := f.At[0]*cos-f.At[1]*sin, f.At[0]*sin+f.At[1]*cos
				total += of(x, y, px, py)
			}
			return total
		}
	}
	load := moor.Load{X: 150, Y: -90, Turn: 200}
	return append(out, share("float/moor", exactly("Equilibrium of a dock on four chains", "forces and moments of the fittings are those of the load, reversed"), 1e-7,
		one{"sum of the forces along", "-150.000000000", "N", force(four, load, sum(func(x, _, _, _ float64) float64 { return x }))},
		one{"sum of the forces across", "90.0000000000", "N", force(four, load, sum(func(_, y, _, _ float64) float64 { return y }))},
		one{"sum of the moments", "-200.000000000", "N m", force(four, load, sum(func(x, y, px, py float64) float64 { return px*y - py*x }))},
	)...)
}

// moorWeather checks whole weathers by their parts, which have rows of their own.
func moorWeather() []Check {
	lake := moor.Weather{
		Wind: moor.Wind{Speed: 15}, North: math.Pi / 2, Depth: 4, Method: "SPM 1984", Length: 6, Breadth: 2, Draft: 0.3, Freeboard: 0.4,
		Fetches: moor.Fetches{2000, 2000, 2000, 2000, 2000, 2000, 2000, 2000},
	}
	north := lake
	north.Fetches = moor.Fetches{2000, 5, 5, 5, 5, 5, 5, 5} // waves come from the north alone
	sea := func(w moor.Weather, θ float64, of func(moor.Sea) float64) func() (float64, error) {
		return func() (float64, error) {
			s, err := w.Sea(θ)
			return of(s), err
		}
	}
	load := func(w moor.Weather, θ float64, of func(moor.Load) float64) func() (float64, error) {
		return func() (float64, error) {
			l, err := w.Load(θ)
			return of(l), err
		}
	}
	x := func(l moor.Load) float64 { return l.X }
	y := func(l moor.Load) float64 { return l.Y }
	grown := independent("Shore Protection Manual 1984, equations 3-39 and 3-40, 50 digits", "15 m/s over 2000 m and 4 m of water, g standard; drift ρgH²/8 on (b cos θ + l sin θ)")
	out := share("float/moor", grown, 1e-10,
		one{"waves of a wind towards the south", "0.427825066052903", "m", sea(north, -math.Pi/2, moorHeight)},
		one{"their period", "2.01429186637211", "s", sea(north, -math.Pi/2, moorPeriod)},
		one{"drift along, towards 30°", "919.48187208493", "N", load(lake, math.Pi/6, x)},
		one{"drift across, towards 30°", "530.863106363216", "N", load(lake, math.Pi/6, y)},
	)
	calm := moor.Weather{
		Wind:    moor.Wind{Speed: 20, Height: 10, Averaging: 3, Air: 1.25},
		Above:   []moor.Face{{End: 1.2, Side: 3, Height: 10, Shape: 1.3, At: [2]float64{0.5, -1}}},
		Current: moor.Current{Speed: 0.5}, Set: 100 * moorDegree,
		Below: []moor.Face{{End: 0.4, Side: 1.5, Shape: 0.9, At: [2]float64{-1, 0.2}}},
	}
	out = append(out, share("float/moor", independent("Wind and current on two faces, 50 digits", "ρ C A V²/2 along each, A = e |cos θ| + s |sin θ|; moments x F_y - y F_x"), 1e-11,
		one{"load along", "684.472518719493", "N", load(calm, math.Pi/6, x)},
		one{"load across", "583.981971841604", "N", load(calm, math.Pi/6, y)},
		one{"turning load", "755.685816235342", "N m", load(calm, math.Pi/6, func(l moor.Load) float64 { return l.Turn })},
	)...)
	// The spread holds every method: one by one they have rows of their own at this wind.
	in := func(pick func([]moor.Sea) moor.Sea) func() (float64, error) {
		return func() (float64, error) {
			all, err := moor.Fetch{Wind: 5, Length: 2000, Gravity: moorOldGravity}.Spread()
			if err != nil {
				return 0, err
			}
			return pick(all).Height, nil
		}
	}
	of := func(method string) func([]moor.Sea) moor.Sea {
		return func(all []moor.Sea) moor.Sea {
			for _, s := range all {
				if s.Method == method {
					return s
				}
			}
			return moor.Sea{Height: math.NaN()}
		}
	}
	return append(out, share("float/moor", independent("Wave growth by the published formulas at 30 digits", "U 5 m/s, F 2000 m, all methods together"), 1e-8,
		one{"SPM 1984 among all methods", "0.117433480", "m", in(of("SPM 1984"))},
		one{"SMB among all methods", "0.146121846", "m", in(of("SMB"))},
		one{"JONSWAP among all methods", "0.114227450", "m", in(of("JONSWAP"))},
		one{"lowest of all methods", "0.105282368", "m", in(func(all []moor.Sea) moor.Sea { return all[0] })},
		one{"highest of all methods", "0.480832611", "m", in(func(all []moor.Sea) moor.Sea { return all[len(all)-1] })},
	)...)
}

// moorLimits checks fenders, anchors and hinges against what they bear, a mooring that loses a
// line, one that pins a neighbour, and the levels between which a chain works.
func moorLimits() []Check {
	pick := func(of func(measure.Check) float64, check func() (measure.Check, error)) func() (float64, error) {
		return func() (float64, error) {
			c, err := check()
			if err != nil {
				return 0, err
			}
			return of(c), c.Err
		}
	}
	value := func(c measure.Check) float64 { return c.Value }
	limit := func(c measure.Check) float64 { return c.Limit }
	fender := func() (measure.Check, error) { return moor.Fender{Stroke: 0.15, Stiffness: 2e4}.Check(100) }
	anchor := func() (measure.Check, error) {
		return moor.Rated{Name: "auger", Hold: 15000, Steepest: 1, Design: measure.Factor{Value: 3}}.Check(3000, 4000)
	}
	hinge := func() (measure.Check, error) {
		h := moor.Hinge{Width: 2, Pins: 2, Diameter: 0.02, Plate: 0.008, Strength: moor.Gear{
			Name: "pin", Break: 40000, Design: measure.Factor{Value: 5}, Source: &measure.Source{Title: "invented", Status: measure.OwnChoice},
		}}
		j, err := h.Tie(moor.Side{Height: 0.4}, moor.Side{Height: 0.4, Give: 1e-5}, 600, 0, 400)
		if err != nil {
			return measure.Check{}, err
		}
		return h.Check(j)
	}
	out := share("float/moor", exactly("Statics of fenders, anchors and hinges", "√(2E/k); 3, 4 and 5; 600 N on two pins and 400 N m on 2 m between them"), 1e-12,
		one{"stroke of 100 J on 20 kN/m", "0.100000000000", "m", pick(value, fender)},
		one{"stroke that there is", "0.150000000000", "m", pick(limit, fender)},
		one{"tension of an anchor at 3 and 4 kN", "5000.00000000", "N", pick(value, anchor)},
		one{"a third of its holding of 15 kN", "5000.00000000", "N", pick(limit, anchor)},
		one{"force on a pin of a hinge", "500.000000000", "N", pick(value, hinge)},
		one{"a fifth of what breaks the pin", "8000.00000000", "N", pick(limit, hinge)},
	)

	// Springs of 1000 N/m, two to the right and one to the left, each stretched by 1 m: 1000 N more
	// to the right move the dock 1/3 m there, 100 N more 1/30. Without one of the two 100 N move
	// it by 1/20 m.
	spring := func(name string, side float64) moor.Tie {
		return moor.Tie{
			Name: name, At: [2]float64{2 * side, 0}, Height: 1, Foot: [2]float64{8 * side, 0}, FootZ: 1,
			Line: moor.Line{Shore: true, Pieces: []moor.Piece{{Length: 5, Stretch: 5000}}},
		}
	}
	three := &moor.Mooring{Ties: []moor.Tie{spring("right", 1), spring("left", -1), spring("right as well", 1)}}
	storm := func(θ float64) (moor.Load, error) { return moor.Load{X: 100 * math.Cos(θ), Y: 0}, nil }
	out = append(out, share("float/moor", exactly("Dock between springs", "1100/3000 m and 100/2000 m; the pull of a spring 1000 N/m by what it is stretched"), 1e-7,
		one{"way of a dock on three springs", "0.366666666667", "m", func() (float64, error) {
			s, err := three.Survey([]float64{0}, storm, 1)
			if err != nil {
				return 0, err
			}
			return s.Offset, nil
		}},
		one{"pull of the left one of three springs", "1366.66666667", "N", func() (float64, error) {
			s, err := three.Survey([]float64{0}, storm, 1)
			if err != nil {
				return 0, err
			}
			return s.Ties[1].Tension, nil
		}},
		one{"way of the dock with a spring lost", "0.050000000000", "m", func() (float64, error) {
			all, err := three.Losses([]float64{0}, storm, 1)
			if err != nil {
				return 0, err
			}
			return all[0].Offset, all[0].Err
		}},
	)...)

	// A pair of springs of 5000 N over length, 6 m between their ends, under 100 N to the right:
	// the left one pulls 30000/L + 50 - 5000 N, at most 2000 N from 30000/6950 m on, and the dock
	// moves L/100, at most 55 mm up to 5.5 m.
	described := moor.Gear{Name: "spring", Break: 10000, Design: measure.Factor{Value: 5}, Source: &measure.Source{Title: "invented", Status: measure.OwnChoice}}
	pulled := &moor.Mooring{Ties: []moor.Tie{spring("right", 1), spring("left", -1)}}
	for i := range pulled.Ties {
		t := &pulled.Ties[i]
		t.Line.Pieces[0].Gear = described
		t.Fitting = moor.Gear{Name: "cleat", Break: 1e5, Design: measure.Factor{Value: 5}, Source: described.Source}
		t.Ground = moor.Rated{Hold: 1e6, Steepest: 1, Design: measure.Factor{Value: 3}}
	}
	lengths := func(longest bool) func() (float64, error) {
		return func() (float64, error) {
			lo, hi, found, err := pulled.Lengths([]float64{0}, storm, 1, 0.055, 1)
			if err == nil && !found {
				err = errors.New("no length serves")
			}
			if longest {
				lo = hi
			}
			return 5 + lo, err
		}
	}
	out = append(out, share("float/moor", exactly("Dock between two springs by their length", "30000/6950 m and 5.5 m"), 1e-5,
		one{"shortest spring that bears 100 N", "4.31654676259", "m", lengths(false)},
		one{"longest spring that keeps the dock within 55 mm", "5.50000000000", "m", lengths(true)},
	)...)

	// Two posts 3 m apart hold a dock: they pass on all of its load, and what turns it.
	pinned := &moor.Mooring{Posts: []moor.Post{{Name: "a", At: [2]float64{0, 0}, Stiffness: 1e8}, {Name: "b", At: [2]float64{3, 0}, Stiffness: 1e8}}}
	passed := func(of func(moor.Load) float64, posts ...string) func() (float64, error) {
		return func() (float64, error) {
			l, err := pinned.Passed(0, func(float64) (moor.Load, error) { return moor.Load{X: 200, Y: 90, Turn: 60}, nil }, posts...)(0)
			return of(l), err
		}
	}
	out = append(out, share("float/moor", exactly("Dock on two pins 3 m apart", "moments about either: (60 N m)/3 m across on the far one, the rest on the near one"), 1e-5,
		one{"load passed on along", "200.000000000", "N", passed(func(l moor.Load) float64 { return l.X })},
		one{"turning load passed on", "60.0000000000", "N m", passed(func(l moor.Load) float64 { return l.Turn })},
		one{"load passed on across by the far pin", "20.0000000000", "N", passed(func(l moor.Load) float64 { return l.Y }, "b")},
		one{"load passed on across by the near pin", "70.0000000000", "N", passed(func(l moor.Load) float64 { return l.Y }, "a")},
	)...)

	// Chains of 9 m to both sides over 7 m of plan: slack while 9 m cover 7 m and the rise, taut
	// where √(7² + rise²) is 9; the fitting stands 3.2 m over the ground end at level 0.
	chain := func(name string, side float64) moor.Tie {
		return moor.Tie{
			Name: name, At: [2]float64{2 * side, 0}, Height: 0.2, Foot: [2]float64{9 * side, 0}, FootZ: -3,
			Line: moor.Line{Pieces: []moor.Piece{{Length: 9, Weight: 20}}},
		}
	}
	pair := &moor.Mooring{Ties: []moor.Tie{chain("east", 1), chain("west", -1)}}
	band := func(of func(moor.Band) float64) func() (float64, error) {
		return func() (float64, error) {
			all, err := pair.Bands(-3, 4)
			if err != nil {
				return 0, err
			}
			return of(all[0]) + 3.2, nil
		}
	}
	return append(out, share("float/moor", exactly("Chain of 9 m over 7 m of plan", "slack up to a rise of 2 m, taut at √32 m"), 1e-5,
		one{"rise from which the chain pulls", "2.00000000000", "m", band(func(b moor.Band) float64 { return b.Low })},
		one{"rise at which it is taut", "5.65685424949", "m", band(func(b moor.Band) float64 { return b.High })},
	)...)
}
