package ice_test

import (
	"errors"
	"math"
	"testing"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// demoPlate is 0.30 m of ice under a short load; l is near 4 m.
func demoPlate() ice.Plate {
	return ice.Plate{Thickness: 0.30, E: 1e9, Nu: 0.33, Foundation: 9810, Thin: true}
}

func bowl(t testing.TB, p ice.Plate, loads ...ice.Patch) *ice.Bowl {
	t.Helper()
	b, err := p.Bowl(loads)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func at(t testing.TB, b *ice.Bowl, x, y float64) ice.Bend {
	t.Helper()
	s, err := b.At(x, y)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func close(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

var shapes = map[string]ice.Patch{
	"small circle":     {A: 0.4, Force: 1e4},
	"large circle":     {A: 7, Force: 1e4},
	"square":           {A: 1, B: 1, Force: 1e4},
	"stack":            {A: 0.6, B: 4, Turn: 0.5, Force: 1e4},
	"large rectangle":  {A: 14, B: 9, Turn: -0.3, Force: 1e4},
	"narrow rectangle": {A: 9, B: 0.2, Force: 1e4},
}

// TestWaterCarriesTheLoad: the pressure of the water over the whole bowl, k w,
// is the load.
func TestWaterCarriesTheLoad(t *testing.T) {
	p := demoPlate()
	for name, c := range shapes {
		b := bowl(t, p, c)
		const step, reach = 0.5, 60.0
		sum := 0.0
		for x := -reach; x <= reach; x += step {
			for y := -reach; y <= reach; y += step {
				sum += at(t, b, x, y).Deflection
			}
		}
		if total := sum * step * step * 9810; !close(total, c.Force, 2e-3*c.Force) {
			t.Errorf("%s: the water carries %g N of %g N", name, total, c.Force)
		}
	}
}

// TestPlateEquation: ∂²Mx/∂x² + 2 ∂²Mxy/∂x∂y + ∂²My/∂y² = k w - q, and the
// moments belong to the deflection, by differences of fourth order.
func TestPlateEquation(t *testing.T) {
	p := demoPlate()
	d, err := p.Rigidity()
	if err != nil {
		t.Fatal(err)
	}
	second := func(f func(s float64) float64, h float64) float64 {
		return (-f(-2) + 16*f(-1) - 30*f(0) + 16*f(1) - f(2)) / (12 * h * h)
	}
	for name, c := range shapes {
		b := bowl(t, p, c)
		q := c.Force / (math.Pi * c.A * c.A)
		if c.B != 0 {
			q = c.Force / (c.A * c.B)
		}
		top := at(t, b, 0, 0)
		m0 := math.Abs(top.Mx) + math.Abs(top.My)
		for _, o := range [][2]float64{{0, 0}, {0.11, 0.005}, {2.3, -1.2}, {3.5, 1.1}, {-9, 12}, {30, 5}} {
			inside := math.Hypot(o[0], o[1]) < c.A
			if c.B != 0 {
				sin, cos := math.Sincos(c.Turn)
				inside = math.Abs(o[0]*cos+o[1]*sin) < c.A/2 && math.Abs(o[1]*cos-o[0]*sin) < c.B/2
			}
			const h = 0.004
			s := at(t, b, o[0], o[1])
			mxx := second(func(k float64) float64 { return at(t, b, o[0]+k*h, o[1]).Mx }, h)
			myy := second(func(k float64) float64 { return at(t, b, o[0], o[1]+k*h).My }, h)
			// 4 ∂²/∂x∂y is the second difference along one diagonal less the other.
			mxy := (second(func(k float64) float64 { return at(t, b, o[0]+k*h, o[1]+k*h).Mxy }, h) -
				second(func(k float64) float64 { return at(t, b, o[0]+k*h, o[1]-k*h).Mxy }, h)) / 4
			load := 0.0
			if inside {
				load = q
			}
			left, right := mxx+2*mxy+myy, 9810*s.Deflection-load
			if !close(left, right, 2e-5*q+2e-6*m0/(h*h)*1e-3) {
				t.Errorf("%s at %v: moments give %g Pa, water less load %g Pa", name, o, left, right)
			}
			const g = 0.02
			wxx := second(func(k float64) float64 { return at(t, b, o[0]+k*g, o[1]).Deflection }, g)
			wyy := second(func(k float64) float64 { return at(t, b, o[0], o[1]+k*g).Deflection }, g)
			wxy := (second(func(k float64) float64 { return at(t, b, o[0]+k*g, o[1]+k*g).Deflection }, g) -
				second(func(k float64) float64 { return at(t, b, o[0]+k*g, o[1]-k*g).Deflection }, g)) / 4
			for i, v := range [][2]float64{
				{s.Mx, -d * (wxx + 0.33*wyy)}, {s.My, -d * (wyy + 0.33*wxx)}, {s.Mxy, -d * 0.67 * wxy},
			} {
				if !close(v[0], v[1], 1e-5*m0) {
					t.Errorf("%s at %v: moment %d is %g N, from the deflection %g N", name, o, i, v[0], v[1])
				}
			}
		}
	}
}

// TestReciprocity: the mean sag that a circle's load makes under a rectangle is
// the mean sag that the rectangle's load makes under the circle. It ties the
// edge integrals to the closed form.
func TestReciprocity(t *testing.T) {
	p := demoPlate()
	rect := ice.Patch{A: 3, B: 1.5, Turn: 0.4, Force: 1000}
	for _, c := range []ice.Patch{{X: 0, Y: 0, A: 1, Force: 1000}, {X: 2, Y: 1, A: 1.5, Force: 1000}, {X: 9, Y: -4, A: 0.3, Force: 1000}} {
		fromCircle, fromRect := bowl(t, p, c), bowl(t, p, rect)
		const n = 60
		sin, cos := math.Sincos(rect.Turn)
		a, b := 0.0, 0.0
		for i := range n {
			for j := range n {
				u, v := (float64(i)+0.5)/n, (float64(j)+0.5)/n
				x, y := (u-0.5)*rect.A, (v-0.5)*rect.B
				a += at(t, fromCircle, x*cos-y*sin, x*sin+y*cos).Deflection
				r, s := c.A*math.Sqrt(u), 2*math.Pi*v // equal areas
				b += at(t, fromRect, c.X+r*math.Cos(s), c.Y+r*math.Sin(s)).Deflection
			}
		}
		if !close(a, b, 2e-4*math.Abs(a)) {
			t.Errorf("circle at %g, %g: %g and %g", c.X, c.Y, a/n/n, b/n/n)
		}
	}
}

// TestSuperposition: many patches are the sum of each, and twice the force
// bends twice as much.
func TestSuperposition(t *testing.T) {
	p := demoPlate()
	p.Thin = false
	var all []ice.Patch
	for _, c := range shapes {
		c.X, c.Y = c.A, -c.A/2
		all = append(all, c)
	}
	both := at(t, bowl(t, p, all...), 1.3, 0.7)
	var sum ice.Bend
	for _, c := range all {
		c.Force *= 2
		s := at(t, bowl(t, p, c), 1.3, 0.7)
		sum.Deflection += s.Deflection / 2
		sum.Mx += s.Mx / 2
		sum.My += s.My / 2
		sum.Mxy += s.Mxy / 2
	}
	for i, v := range [][2]float64{{both.Deflection, sum.Deflection}, {both.Mx, sum.Mx}, {both.My, sum.My}, {both.Mxy, sum.Mxy}} {
		if !close(v[0], v[1], 1e-12*(math.Abs(v[0])+1e-3)) {
			t.Errorf("component %d: %g together, %g one by one", i, v[0], v[1])
		}
	}
}

// TestScale: lengths in units of l and pressures in units of k l are all there
// is. A plate whose rigidity is 16 times has l twice as long; the same pressure
// over twice the sides sags the same, with 4 times the moments.
func TestScale(t *testing.T) {
	small := demoPlate()
	large := small
	large.E *= 16
	for name, c := range shapes {
		big := c
		big.A, big.B, big.Force = 2*c.A, 2*c.B, 4*c.Force
		for _, o := range [][2]float64{{0, 0}, {0.2, 0.1}, {3, 1}, {11, -7}} {
			a, b := at(t, bowl(t, small, c), o[0], o[1]), at(t, bowl(t, large, big), 2*o[0], 2*o[1])
			if !close(a.Deflection, b.Deflection, 1e-15) || !close(4*a.Mx, b.Mx, 1e-7) || !close(4*a.My, b.My, 1e-7) || !close(4*a.Mxy, b.Mxy, 1e-7) {
				t.Errorf("%s at %v: %+v, scaled %+v", name, o, a, b)
			}
		}
	}
}

// TestJoins: nothing jumps where one form takes over from another: at the rim of
// a circle, at the sides of a rectangle, and where the kernels of the edges
// change, 1.5 l from it.
func TestJoins(t *testing.T) {
	p := demoPlate()
	l, err := p.CharacteristicLength()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name  string
		patch ice.Patch
		x, y  float64
	}{
		{"rim", ice.Patch{A: 3, Force: 1e4}, 3, 0},
		{"rim of a small circle", ice.Patch{A: 0.2, Force: 1e4}, 0, 0.2},
		{"centre", ice.Patch{A: 3, Force: 1e4}, 0, 0},
		{"side", ice.Patch{A: 3, B: 2, Force: 1e4}, 1.5, 0.3},
		{"corner", ice.Patch{A: 3, B: 2, Force: 1e4}, 1.5, 1},
		{"kernels", ice.Patch{A: 3, B: 2, Force: 1e4}, 1.5 + 1.5*l, 0.3},
		{"kernels at a corner", ice.Patch{A: 3, B: 2, Force: 1e4}, 1.5 + 1.5*l/math.Sqrt2, 1 + 1.5*l/math.Sqrt2},
		{"opposite edge", ice.Patch{A: 3 * l, B: 2, Force: 1e4}, 0, 0.3},
		{"length of a panel", ice.Patch{A: 1, B: 2 * l, Force: 1e4}, 0.1, 0.3},
	} {
		b := bowl(t, p, c.patch)
		top := at(t, b, 0, 0)
		const e = 1e-9
		a, z := at(t, b, c.x-e, c.y-e), at(t, b, c.x+e, c.y+e)
		if !close(a.Deflection, z.Deflection, 1e-8*top.Deflection) || !close(a.Mx, z.Mx, 1e-6*top.Mx) ||
			!close(a.My, z.My, 1e-6*top.Mx) || !close(a.Mxy, z.Mxy, 1e-6*top.Mx) {
			t.Errorf("%s: %+v, beyond %+v", c.name, a, z)
		}
	}
}

// TestFarAway: far away only the force counts, and then the second moment of the
// patch: a circle of radius a/√3 has that of the square, and their bowls differ
// by the fourth power of their size alone.
func TestFarAway(t *testing.T) {
	p := demoPlate()
	square, circle := bowl(t, p, ice.Patch{A: 0.2, B: 0.2, Force: 1e4}), bowl(t, p, ice.Patch{A: 0.1, Force: 1e4})
	for _, x := range []float64{4, 8, 20, 40} {
		a, b := at(t, square, x, 1), at(t, circle, x, 1)
		size := math.Hypot(b.Mx, b.My)
		if !close(a.Deflection, b.Deflection, 1e-3*math.Abs(b.Deflection)+1e-9) || !close(a.Mx, b.Mx, 1e-3*size) || !close(a.Mxy, b.Mxy, 1e-3*size) {
			t.Errorf("%g m away: %+v, %+v", x, a, b)
		}
	}
}

// TestTiny: the same for patches of millimetres, where the integrals along the
// edges nearly cancel.
func TestTiny(t *testing.T) {
	p := demoPlate()
	square, circle := bowl(t, p, ice.Patch{A: 2e-3, B: 2e-3, Force: 1e4}), bowl(t, p, ice.Patch{A: 2e-3 / math.Sqrt(3), Force: 1e4})
	for _, x := range []float64{7, 20, 40, 60} {
		a, b := at(t, square, x, 1), at(t, circle, x, 1)
		if !close(a.Deflection, b.Deflection, 2e-11*math.Hypot(b.Deflection, b.Mx*1e-7)) {
			t.Errorf("%g m away: %g, %g", x, a.Deflection, b.Deflection)
		}
	}
}

// TestTiles: a large rectangle is the sum of the tiles it is cut into, whose
// edges are integrated by other rules and cancel in pairs.
func TestTiles(t *testing.T) {
	p := demoPlate()
	const a, b = 17.0, 11.0
	for _, n := range []int{2, 9, 40} {
		var tiles []ice.Patch
		for i := range n {
			for j := range n {
				tiles = append(tiles, ice.Patch{
					X: a * ((float64(i)+0.5)/float64(n) - 0.5), Y: b * ((float64(j)+0.5)/float64(n) - 0.5),
					A: a / float64(n), B: b / float64(n), Force: 1e4 / float64(n*n),
				})
			}
		}
		whole, cut := bowl(t, p, ice.Patch{A: a, B: b, Force: 1e4}), bowl(t, p, tiles...)
		for _, o := range [][2]float64{{0.3, 0.2}, {8.4, 5.3}, {8.6, 1}, {8.5, 5.5}, {10, 3}, {3, -9}, {20, 12}} {
			x, y := at(t, whole, o[0], o[1]), at(t, cut, o[0], o[1])
			size := math.Max(math.Hypot(x.Mx, x.My), math.Abs(x.Mxy))
			if !close(x.Deflection, y.Deflection, 1e-11*math.Abs(x.Deflection)) || !close(x.Mx, y.Mx, 1e-11*size) ||
				!close(x.My, y.My, 1e-11*size) || !close(x.Mxy, y.Mxy, 1e-11*size) {
				t.Errorf("%d tiles at %v: whole %+v, tiles %+v", n*n, o, x, y)
			}
		}
	}
}

// TestRadii: small and large circles, on both sides of the change of form at
// one l: the sag is smooth in the radius, tends to the point load's P/(8 k l²)
// and to the pressure over k.
func TestRadii(t *testing.T) {
	p := demoPlate()
	l, err := p.CharacteristicLength()
	if err != nil {
		t.Fatal(err)
	}
	sag := func(a float64) float64 { return at(t, bowl(t, p, ice.Patch{A: a, Force: 1000}), 0.1*a, 0).Deflection }
	if a, b := sag(l*(1-1e-12)), sag(l*(1+1e-12)); !close(a, b, 1e-11*a) {
		t.Errorf("at one l: %g, %g", a, b)
	}
	for _, a := range []float64{1e-3, 0.01, 0.1} {
		// w = P/(8 k l²) {1 + α²/(2π) [ln(α/2) + γ - 5/4]}
		alpha := a / l
		series := 1 + alpha*alpha/(2*math.Pi)*(math.Log(alpha/2)+0.5772156649015329-1.25)
		w := at(t, bowl(t, p, ice.Patch{A: a, Force: 1000}), 0, 0).Deflection * 8 * 9810 * l * l / 1000
		if !close(w, series, 1e-14+alpha*alpha*alpha*alpha) {
			t.Errorf("radius %g m sags %.15g of P/(8 k l²), by the series %.15g", a, w, series)
		}
	}
	wide := bowl(t, p, ice.Patch{A: 90 * l, Force: 1000})
	for _, x := range []float64{0, 9, 30, 55, 62} {
		if w := at(t, wide, x*l, 0).Deflection * 9810 * math.Pi * 8100 * l * l / 1000; !close(w, 1, 1e-6) {
			t.Errorf("a wide circle sags %g of q/k at %g l", w, x)
		}
	}
}

// TestTurn: a rectangle turned by 90 degrees is the one with its sides swapped,
// and turning patch and point together turns the moments.
func TestTurn(t *testing.T) {
	p := demoPlate()
	a := at(t, bowl(t, p, ice.Patch{A: 3, B: 1, Turn: math.Pi / 2, Force: 1e4}), 0.7, 2.1)
	b := at(t, bowl(t, p, ice.Patch{A: 1, B: 3, Force: 1e4}), 0.7, 2.1)
	if !close(a.Deflection, b.Deflection, 1e-15) || !close(a.Mx, b.Mx, 1e-9) || !close(a.My, b.My, 1e-9) || !close(a.Mxy, b.Mxy, 1e-9) {
		t.Errorf("%+v, swapped %+v", a, b)
	}
	sin, cos := math.Sincos(0.6)
	c := at(t, bowl(t, p, ice.Patch{A: 1, B: 3, Turn: 0.6, Force: 1e4}), 0.7*cos-2.1*sin, 0.7*sin+2.1*cos)
	g1, s1 := b.Principal()
	g2, s2 := c.Principal()
	if !close(b.Deflection, c.Deflection, 1e-15) || !close(g1, g2, 1e-9) || !close(s1, s2, 1e-9) {
		t.Errorf("turned: %g %g, %g %g", g1, g2, s1, s2)
	}
}

func TestPlateBadData(t *testing.T) {
	good, patch := demoPlate(), ice.Patch{A: 1, Force: 100}
	for name, spoil := range map[string]func(*ice.Plate, *ice.Patch){
		"thickness":  func(p *ice.Plate, _ *ice.Patch) { p.Thickness = 0 },
		"modulus":    func(p *ice.Plate, _ *ice.Patch) { p.E = math.NaN() },
		"nu":         func(p *ice.Plate, _ *ice.Patch) { p.Nu = 0.5 },
		"foundation": func(p *ice.Plate, _ *ice.Patch) { p.Foundation = -1 },
		"x":          func(_ *ice.Plate, c *ice.Patch) { c.X = math.Inf(1) },
		"y":          func(_ *ice.Plate, c *ice.Patch) { c.Y = math.NaN() },
		"radius":     func(_ *ice.Plate, c *ice.Patch) { c.A = 0 },
		"wide":       func(p *ice.Plate, c *ice.Patch) { c.A, p.Thickness = 100, 0.01 },
		"side":       func(_ *ice.Plate, c *ice.Patch) { c.B = -1 },
		"turn":       func(_ *ice.Plate, c *ice.Patch) { c.Turn = math.NaN() },
		"force":      func(_ *ice.Plate, c *ice.Patch) { c.Force = -100 },
	} {
		p, c := good, patch
		spoil(&p, &c)
		if _, err := p.At([]ice.Patch{c}, 0, 0); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	bad := ice.Plate{}
	if _, err := bad.CharacteristicLength(); err == nil {
		t.Error("length of no plate")
	}
	if _, err := bad.Rigidity(); err == nil {
		t.Error("rigidity of no plate")
	}
	if _, _, err := bad.EdgeDeflection(1); err == nil {
		t.Error("edge of no plate")
	}
	if _, _, err := good.EdgeDeflection(-1); err == nil {
		t.Error("negative force at the edge")
	}
	if _, _, err := bad.FictitiousRadius(1); err == nil {
		t.Error("radius on no plate")
	}
	if _, _, err := good.FictitiousRadius(-1); err == nil {
		t.Error("negative radius")
	}
	if _, err := bad.Stress(ice.Bend{}); err == nil {
		t.Error("stress of no plate")
	}
	if _, err := good.Stress(ice.Bend{Mx: math.NaN()}); err == nil {
		t.Error("stress of no moments")
	}
	for _, o := range [][2]float64{{math.NaN(), 0}, {0, math.Inf(-1)}} {
		if _, err := bowl(t, good, patch).At(o[0], o[1]); !errors.Is(err, measure.ErrRange) {
			t.Errorf("at %v: %v", o, err)
		}
	}
	if s, err := new(ice.Bowl).At(1, 2); err != nil || s != (ice.Bend{}) {
		t.Errorf("zero bowl: %+v, %v", s, err)
	}
}

// TestStress: the greatest tension on either face; none in a flat plate.
func TestStress(t *testing.T) {
	p := demoPlate()
	for _, c := range []struct {
		b      ice.Bend
		stress float64
	}{
		{ice.Bend{}, 0},
		{ice.Bend{Mx: 300, My: 100}, 6 * 300 / 0.09},
		{ice.Bend{Mx: -300, My: 100}, 6 * 300 / 0.09},
		{ice.Bend{Mx: 100, My: 100, Mxy: 200}, 6 * 300 / 0.09},
	} {
		if s, err := p.Stress(c.b); err != nil || !close(s, c.stress, 1e-9) {
			t.Errorf("%+v: %g Pa, %v, want %g", c.b, s, err, c.stress)
		}
	}
	// The zero foundation is fresh water.
	q := p
	p.Foundation, q.Foundation = 0, 1000*measure.Gravity
	a, err1 := p.CharacteristicLength()
	b, err2 := q.CharacteristicLength()
	if err1 != nil || err2 != nil || a != b {
		t.Errorf("l = %g, %v and %g, %v", a, err1, b, err2)
	}
}

// TestFictitiousRadius: 0.325 h under a point, a itself from 1.724 h on, with no
// step of more than the constants' own rounding between.
func TestFictitiousRadius(t *testing.T) {
	p := demoPlate()
	p.Thin = false
	small, _, err := p.FictitiousRadius(1e-3)
	if err != nil || !close(small, 0.325*0.3, 1e-5) {
		t.Errorf("under a point %g m, %v", small, err)
	}
	if b, _, _ := p.FictitiousRadius(1.8 * 0.3); b != 1.8*0.3 {
		t.Errorf("%g m for 1.8 h", b)
	}
	below, _, _ := p.FictitiousRadius(1.7239999 * 0.3)
	above, source, _ := p.FictitiousRadius(1.7240001 * 0.3)
	if !close(below, above, 2e-4) || source.Status != measure.Memory {
		t.Errorf("%g m below, %g m above 1.724 h, source %v", below, above, source)
	}
}

// TestEdgeDeflection: near four times the sag within the sheet, 1/8.
func TestEdgeDeflection(t *testing.T) {
	p := demoPlate()
	w, source, err := p.EdgeDeflection(9810)
	inner := at(t, bowl(t, p, ice.Patch{A: 0.01, Force: 9810}), 0, 0).Deflection
	if err != nil || source.Status != measure.Memory || !close(w/inner, 3.70, 0.01) {
		t.Errorf("ratio %g, %v, %v", w/inner, source, err)
	}
}

// FuzzBowl: finite numbers or an error that names its field; one patch sags
// deepest at its middle, but for the slight rim that a patch of many l has.
func FuzzBowl(f *testing.F) {
	f.Add(0.3, 1e9, 0.33, 1.0, 0.0, 1000.0, 0.0, 2.0, 1.0)
	f.Add(0.05, 5e9, 0.3, 2.0, 0.3, 800.0, 0.7, 0.0, 0.0)
	f.Add(2.0, 1e10, 0.0, 40.0, 30.0, 1e6, -3.0, 15.0, 20.0)
	f.Add(1.0, 1e6, 0.4, 100.0, 0.001, 5.0, 1.0, 0.0, -90.0)
	f.Add(math.NaN(), -1.0, 0.33, 1.0, 0.0, 1000.0, 0.0, 2.0, 1.0)
	f.Add(0.0043, 4.3e8, 0.33, 281.0, 0.0, 1028.0, -12.0, 25.0, 17426.0) // too wide for the functions
	f.Add(0.043, 1e9, 0.33, 74.0, 0.0, 1000.0, 0.0, 23.0, -48.8)         // many l wide
	f.Add(0.25, 1.5e10, 0.0, 40.0, 122.0, 1e6, -0.6, 15.0, 20.0)         // wider than its bowl
	f.Fuzz(func(t *testing.T, h, e, nu, a, b, force, turn, x, y float64) {
		p := ice.Plate{Thickness: h, E: e, Nu: nu}
		bowl, err := p.Bowl([]ice.Patch{{A: a, B: b, Turn: turn, Force: force}})
		if err != nil {
			var e *measure.Error
			if !errors.As(err, &e) || e.Field == "" {
				t.Errorf("the error names no field: %v", err)
			}
			return
		}
		top, err := bowl.At(0, 0)
		if err != nil {
			t.Fatal(err)
		}
		s, err := bowl.At(x, y)
		if err != nil {
			return
		}
		for _, v := range []float64{top.Deflection, top.Mx, top.My, top.Mxy, s.Deflection, s.Mx, s.My, s.Mxy} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v, %+v", top, s)
			}
		}
		if !(top.Deflection > 0) || s.Deflection > 1.1*top.Deflection {
			t.Errorf("sag %g m at the middle, %g m at %g, %g", top.Deflection, s.Deflection, x, y)
		}
		if stress, err := p.Stress(s); err != nil || !(stress >= 0) {
			t.Errorf("stress %g, %v", stress, err)
		}
	})
}

var sunk float64

// BenchmarkGrid is twelve drums and six people over 40 × 40 points, deflection
// and moments: budget 10 ms, 1.7 ms on one quiet core of 2026.
func BenchmarkGrid(b *testing.B) {
	var loads []ice.Patch
	for i := range 12 {
		loads = append(loads, ice.Patch{X: float64(i%4) * 1.8, Y: float64(i/4) * 1.5, A: 0.3, Force: 900})
	}
	for i := range 6 {
		loads = append(loads, ice.Patch{X: float64(i), Y: 5, A: 0.15, Force: 800})
	}
	p := demoPlate()
	p.Thin = false
	b.ReportAllocs()
	for b.Loop() {
		bowl, err := p.Bowl(loads)
		if err != nil {
			b.Fatal(err)
		}
		for i := range 40 {
			for j := range 40 {
				s, _ := bowl.At(float64(i)*0.25-2, float64(j)*0.25-2)
				sunk += s.Deflection + s.Mx
			}
		}
	}
}

// BenchmarkRectangle is one rectangle at one point, beside and under it: budget
// 5 µs, 1.7 µs on one quiet core of 2026.
func BenchmarkRectangle(b *testing.B) {
	bowl := bowl(b, demoPlate(), ice.Patch{A: 1.2, B: 4, Force: 5000})
	for name, x := range map[string]float64{"under": 0.3, "beside": 2, "far": 12} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				s, _ := bowl.At(x, 0.4)
				sunk += s.Deflection
			}
		})
	}
}
