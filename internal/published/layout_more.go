package published

import (
	"math"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// layoutMore has wedged drums' forces, frames of two rectangles, decks by area, and supports
// read for level.
func layoutMore() []Check {
	var out []Check
	for _, set := range [][]Check{layoutPress(), layoutPieces(), layoutAreas(), layoutLevels()} {
		out = append(out, set...)
	}
	return out
}

// layoutPress checks the forces of a round drum between two edges.
func layoutPress() []Check {
	press := func(a, b float64, of func(edges [2]float64, spread float64) float64) func() (float64, error) {
		return func() (float64, error) {
			edges, spread, err := layout.Bearing{Seat: layout.Wedged, Angle: [2]float64{a * math.Pi / 180, b * math.Pi / 180}}.Press(1000)
			return of(edges, spread) / 1000, err
		}
	}
	first := func(e [2]float64, _ float64) float64 { return e[0] }
	second := func(e [2]float64, _ float64) float64 { return e[1] }
	spread := func(_ [2]float64, s float64) float64 { return s }
	// Three forces through one point: P : N1 : N2 = sin(θ1 + θ2) : sin θ2 : sin θ1.
	lami := independent("Lami's theorem on a drum between two edges, 50 digits", "contacts at 25° and 40° from the vertical")
	out := share("frame/layout", lami, 1e-12,
		one{"force on the edge at 25°, P", "0.709237655110808", "", press(25, 40, first)},
		one{"force on the edge at 40°, P", "0.466307658154999", "", press(25, 40, second)},
		one{"spread, P", "0.299736784963979", "", press(25, 40, spread)},
	)
	right := exactly("Smooth drum on two edges at right angles", "30° and 60°: P cos 30°, P cos 60°, P sin 30° cos 30°, squared")
	square := func(f func() (float64, error)) func() (float64, error) {
		return func() (float64, error) {
			x, err := f()
			return x * x, err
		}
	}
	return append(out, share("frame/layout", right, 1e-12,
		one{"square of the force on the edge at 30°, P²", "0.750000000000", "", square(press(30, 60, first))},
		one{"square of the force on the edge at 60°, P²", "0.250000000000", "", square(press(30, 60, second))},
		one{"square of the spread, P²", "0.187500000000", "", square(press(30, 60, spread))},
		one{"spread of a drum at 45° on both sides, P", "0.500000000000", "", press(45, 45, spread)},
	)...)
}

// layoutPieces checks an L of two frames and the diagonals of nominal lengths.
func layoutPieces() []Check {
	const in = measure.Inch
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	// 16 ft by 8 ft, and a wing of 6 ft along it by 5 ft out, from 2 ft on.
	main := layout.Rectangle{Name: "main", Length: 192 * in, Width: 96 * in, Across: true, Marks: []float64{0, 95.25 * in, 190.5 * in}, Joist: s, Rim: s}
	wing := layout.Rectangle{
		Name: "wing", Corner: layout.Point{X: 24 * in}, Length: 72 * in, Width: 60 * in, Across: true,
		Marks: []float64{0, 35.25 * in, 70.5 * in}, Joist: s, Rim: s,
	}
	ell := func(of func([]layout.Piece) float64) func() (float64, error) {
		return func() (float64, error) {
			pieces, err := layout.Ell(main, wing)
			return of(pieces) / in, err
		}
	}
	far := func(pieces []layout.Piece) float64 {
		y := 0.0
		for _, p := range pieces {
			y = math.Max(y, p.To.Y)
		}
		return y
	}
	length := func(pieces []layout.Piece) float64 {
		sum := 0.0
		for _, p := range pieces {
			sum += math.Hypot(p.To.X-p.From.X, p.To.Y-p.From.Y)
		}
		return sum
	}
	stiff := func(pieces []layout.Piece) float64 {
		n := 0.0
		for _, p := range pieces {
			if p.Stiff {
				n += in
			}
		}
		return n
	}
	// Two rims of 192 and three joists of 93; one rim of 72 and three joists of 58.5, which reach
	// from the main frame to the far rim.
	out := share("frame/layout", exactly("Frame of 16 ft by 8 ft with a wing of 6 ft by 5 ft", "lengths added by hand; rims run through, the wing has none at the main frame"), 1e-12,
		one{"axes of all pieces together", "910.500000000", "in", ell(length)},
		one{"axis of the farthest rim from the corner", "155.250000000", "in", ell(far)},
		one{"pieces that need corner irons", "2.00000000000", "", ell(stiff)},
	)
	nominal := func(a, b float64, most bool) func() (float64, error) {
		return func() (float64, error) {
			least, greatest, err := layout.FromNominal(a*in, b*in)
			if most {
				return greatest / in, err
			}
			return least / in, err
		}
	}
	return append(out, share("frame/layout", independent("Pythagoras on nominal lengths and 1/2 in more, 50 digits", "√(108.5² + 144.5²), √(96² + 192²), √(96.5² + 192.5²)"), 1e-12,
		one{"least diagonal of 9 by 12 ft", "180.000000000", "in", nominal(108, 144, false)},
		one{"greatest diagonal of 9 by 12 ft", "180.700027670169", "in", nominal(108, 144, true)},
		one{"least diagonal of 8 by 16 ft", "214.66252583998", "in", nominal(96, 192, false)},
		one{"greatest diagonal of 8 by 16 ft", "215.333462332263", "in", nominal(96, 192, true)},
	)...)
}

// layoutAreas checks what area of deck each piece carries: from the middle of one bay to the
// middle of the next, what lies over a rim by the rim.
func layoutAreas() []Check {
	const in = measure.Inch
	area := func(of func(layout.Piece) bool) func() (float64, error) {
		return func() (float64, error) {
			l, err := layoutBoards(4, 1)
			if err != nil {
				return 0, err
			}
			sum := 0.0
			for i, p := range l.Drawing.Pieces {
				if of(p) {
					sum += l.Area(i)
				}
			}
			return sum / (in * in), nil
		}
	}
	named := func(name string) func(layout.Piece) bool {
		return func(p layout.Piece) bool { return p.Name == name }
	}
	return share("frame/layout", exactly("Tributary areas of a deck of 79.5 in by 96 in", "joists 26 in apart between rims of 1.5 in: 26 × 93, 13.75 × 93, 1.5 × 79.5"), 1e-12,
		one{"area on an inner joist", "2418.00000000", "in²", area(named("joist 2"))},
		one{"area on an outer joist", "1278.75000000", "in²", area(named("joist 4"))},
		one{"area on a rim", "119.250000000", "in²", area(named("rim 1"))},
		one{"area on all pieces", "7632.00000000", "in²", area(func(layout.Piece) bool { return true })},
	)
}

// layoutLevels checks supports whose planes are found by hand.
func layoutLevels() []Check {
	at := func(heights []float64, centre layout.Point, of func(*layout.Levelling) float64) func() (float64, error) {
		places := []layout.Point{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 2}, {X: 0, Y: 2}}
		return func() (float64, error) {
			var all []layout.Support
			for i, h := range heights {
				all = append(all, layout.Support{At: places[i], Height: h / 1000})
			}
			l, err := layout.Level(all, centre)
			if err != nil {
				return 0, err
			}
			return of(l) * 1000, nil
		}
	}
	// Tops at 0, 0, 0 and 8 mm of a rectangle of 4 m by 2 m. Least squares: mean 2, slopes ∓; each
	// top is 2 mm off its plane. The stiff frame stands on the diagonal of corners 2 and 4, the
	// higher of the two, and tips to the side of its centre, on corner 1: 0, 0 and 8 mm there are
	// 8 mm over corner 3.
	one8 := []float64{0, 0, 0, 8}
	middle, near := layout.Point{X: 2, Y: 1}, layout.Point{X: 1, Y: 0.9}
	return share("frame/layout", exactly("Planes through three of four tops of a rectangle", "4 m by 2 m, the fourth top 8 mm high"), 1e-9,
		one{"twist", "-8.00000000000", "mm", at(one8, middle, func(l *layout.Levelling) float64 { return l.Twist })},
		one{"top off the best plane", "2.00000000000", "mm", at(one8, middle, func(l *layout.Levelling) float64 { return l.Off[3] })},
		one{"best plane at the first corner", "2.00000000000", "mm", at(one8, middle, func(l *layout.Levelling) float64 { return l.Plane[0] })},
		// From 0, 0 to 0, 8 mm over 2 m, halved by the other side: 2 mm/m.
		one{"slope of the best plane across, per m", "2.00000000000", "mm", at(one8, middle, func(l *layout.Levelling) float64 { return l.Plane[2] })},
		one{"shim to level the first corner", "8.00000000000", "mm", at(one8, middle, func(l *layout.Levelling) float64 { return l.Level[0] })},
		one{"shim to level the high corner", "0", "mm", at(one8, middle, func(l *layout.Levelling) float64 { return l.Level[3] })},
		one{"gap over the third corner", "8.00000000000", "mm", at(one8, near, func(l *layout.Levelling) float64 { return l.Gap[2] })},
		one{"gap over the first corner", "0", "mm", at(one8, near, func(l *layout.Levelling) float64 { return l.Gap[0] })},
		// Read -3, 1, 5 and 1 mm, the tops lie in one plane that leans: no twist, nothing clear.
		one{"twist of tops in one plane", "0", "mm", at([]float64{-3, 1, 5, 1}, middle, func(l *layout.Levelling) float64 { return l.Twist })},
		one{"slope of tops in one plane along, per m", "1.00000000000", "mm", at([]float64{-3, 1, 5, 1}, middle, func(l *layout.Levelling) float64 { return l.Plane[1] })},
	)
}
