package kelvin_test

import (
	"math"
	"testing"

	"example.org/floewright/internal/kelvin"
	"example.org/floewright/internal/published"
)

// TestPublished runs the outside checks: 25-digit values, with the error
// counted against the modulus of the pair.
func TestPublished(t *testing.T) {
	checks, err := published.Of("internal/kelvin")
	if err != nil {
		t.Fatal(err)
	}
	if len(checks) < 350 {
		t.Fatalf("only %d outside checks", len(checks))
	}
	for _, c := range checks {
		t.Run(c.Name(), func(t *testing.T) {
			if err := c.Verify(); err != nil {
				t.Error(err)
			}
		})
	}
}

// each calls f over 1e-6 to 50, with the neighbours of every switch of method.
func each(f func(x float64)) {
	for x := 1e-6; x < 50; x *= 1.013 {
		f(x)
	}
	for _, x := range []float64{1.25, 2, 4, 8, 10} {
		f(math.Nextafter(x, 0))
		f(x)
		f(math.Nextafter(x, 100))
	}
}

// TestWronskian: ber kei' - ber' kei + ... With I0, K0 of z = x exp(iπ/4) the
// Wronskian I0 K0' - I0' K0 = -1/z, times dz/dx, is -1/x.
func TestWronskian(t *testing.T) {
	each(func(x float64) {
		br, bi, dbr, dbi := kelvin.B(x)
		kr, ki, dkr, dki := kelvin.K(x)
		i, di, k, dk := complex(br, bi), complex(dbr, dbi), complex(kr, ki), complex(dkr, dki)
		w := i*dk - di*k
		size := math.Max(modulus(i)*modulus(dk), modulus(di)*modulus(k))
		if e := modulus(w + complex(1/x, 0)); e > 3e-14*size {
			t.Errorf("x = %g: Wronskian off by %g of %g", x, e, size)
		}
	})
}

func modulus(z complex128) float64 { return math.Hypot(real(z), imag(z)) }

// TestDifferentialEquation: y” + y'/x = i y for ber + i bei and for ker + i kei;
// the second derivative comes from differences of the first, of fourth order.
func TestDifferentialEquation(t *testing.T) {
	for name, f := range map[string]func(float64) (a, b, da, db float64){"B": kelvin.B, "K": kelvin.K} {
		for x := 0.05; x < 45; x *= 1.07 {
			h := 1e-3 * math.Min(x, 1)
			d := func(s float64) complex128 {
				_, _, a, b := f(x + s*h)
				return complex(a, b)
			}
			second := (d(-2) - 8*d(-1) + 8*d(1) - d(2)) / complex(12*h, 0)
			a, b, da, db := f(x)
			left := second + complex(da, db)/complex(x, 0)
			right := complex(-b, a)
			if e := modulus(left - right); e > 1e-9*(modulus(second)+modulus(right)) {
				t.Errorf("%s(%g): equation off by %g of %g", name, x, e, modulus(right))
			}
		}
	}
}

// TestParts: the functions that return a part of the values agree with K and B.
func TestParts(t *testing.T) {
	each(func(x float64) {
		kr, ki, dkr, dki := kelvin.K(x)
		if a, b := kelvin.Pair(x); a != kr || b != ki {
			t.Errorf("Pair(%g) = %g, %g, not %g, %g", x, a, b, kr, ki)
		}
		if a, b := kelvin.Slopes(x); a != dkr || b != dki {
			t.Errorf("Slopes(%g) = %g, %g, not %g, %g", x, a, b, dkr, dki)
		}
		g, h := kelvin.Edge(x)
		if e := math.Abs(1 + x*dkr - x*x*g); e > 1e-15*(1+math.Abs(x*dkr)) {
			t.Errorf("Edge(%g): g off by %g", x, e)
		}
		if e := math.Abs(dki - x*h); e > 1e-14*math.Hypot(dkr, dki) {
			t.Errorf("Edge(%g): h off by %g", x, e)
		}
		br, _, _, _ := kelvin.B(x)
		if e := math.Abs(1 - br - kelvin.BerLess(x)); e > 3e-16*(1+math.Abs(br)) {
			t.Errorf("BerLess(%g) off by %g", x, e)
		}
	})
}

// TestSmallArguments: limits that hold to the last digits, where the plain
// forms have lost them: 1 - ber x → x⁴/64, (1 + x ker' x)/x² → π/8,
// kei' x/x → -½ (ln(x/2) + γ) + ¼.
func TestSmallArguments(t *testing.T) {
	const euler = 0.5772156649015329
	for _, x := range []float64{1e-6, 1e-4, 1e-3} {
		if r := kelvin.BerLess(x) / (x * x * x * x / 64); math.Abs(r-1) > x {
			t.Errorf("1 - ber %g: ratio %g", x, r)
		}
		g, h := kelvin.Edge(x)
		if math.Abs(g-math.Pi/8) > x*x*10 {
			t.Errorf("g(%g) = %.17g", x, g)
		}
		if want := -(math.Log(x/2)+euler)/2 + 0.25; math.Abs(h-want) > 1e-14*math.Abs(want)+x*x {
			t.Errorf("h(%g) = %.17g, want %.17g", x, h, want)
		}
	}
}

func TestSpecialCases(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	same := func(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }
	for _, c := range []struct {
		x float64
		k [4]float64
	}{{0, [4]float64{inf, -math.Pi / 4, -inf, 0}}, {inf, [4]float64{}}, {2000, [4]float64{}}, {-1, [4]float64{nan, nan, nan, nan}}, {nan, [4]float64{nan, nan, nan, nan}}} {
		a, b, da, db := kelvin.K(c.x)
		for i, v := range []float64{a, b, da, db} {
			if !same(v, c.k[i]) {
				t.Errorf("K(%g)[%d] = %g, want %g", c.x, i, v, c.k[i])
			}
		}
		p, q := kelvin.Pair(c.x)
		s, u := kelvin.Slopes(c.x)
		if !same(p, a) || !same(q, b) || !same(s, da) || !same(u, db) {
			t.Errorf("Pair, Slopes(%g) = %g, %g, %g, %g", c.x, p, q, s, u)
		}
	}
	if a, b, da, db := kelvin.B(0); a != 1 || b != 0 || da != 0 || db != 0 {
		t.Errorf("B(0) = %g, %g, %g, %g", a, b, da, db)
	}
	for _, x := range []float64{-1, nan} {
		a, b, da, db := kelvin.B(x)
		g, h := kelvin.Edge(x)
		if !same(a, nan) || !same(b, nan) || !same(da, nan) || !same(db, nan) || !same(g, nan) || !same(h, nan) || !same(kelvin.BerLess(x), nan) {
			t.Errorf("x = %g is not answered with NaN", x)
		}
	}
	if g, h := kelvin.Edge(0); g != math.Pi/8 || !math.IsInf(h, 1) {
		t.Errorf("Edge(0) = %g, %g", g, h)
	}
	if kelvin.BerLess(0) != 0 {
		t.Error("1 - ber 0 is not 0")
	}
}

// FuzzWronskian: for any x in range the Wronskian holds; outside, no panic.
func FuzzWronskian(f *testing.F) {
	for _, x := range []float64{1e-6, 1.25, 2, 4, 8, 10, 50, 0, -1, math.NaN(), math.Inf(1), 1e308, 5e-324} {
		f.Add(x)
	}
	f.Fuzz(func(t *testing.T, x float64) {
		br, bi, dbr, dbi := kelvin.B(x)
		kr, ki, dkr, dki := kelvin.K(x)
		kelvin.Edge(x)
		kelvin.BerLess(x)
		if !(x >= 1e-6 && x <= 50) {
			return
		}
		i, di, k, dk := complex(br, bi), complex(dbr, dbi), complex(kr, ki), complex(dkr, dki)
		size := math.Max(modulus(i)*modulus(dk), modulus(di)*modulus(k))
		if e := modulus(i*dk - di*k + complex(1/x, 0)); !(e <= 3e-14*size) {
			t.Errorf("x = %g: Wronskian off by %g of %g", x, e, size)
		}
	})
}

var sink float64

func BenchmarkPair(b *testing.B) {
	for _, c := range []struct {
		name string
		x    float64
	}{{"series", 0.7}, {"above", 3.3}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				k, l := kelvin.Pair(c.x)
				sink += k + l
			}
		})
	}
}

func BenchmarkEdge(b *testing.B) {
	for _, c := range []struct {
		name string
		x    float64
	}{{"series", 0.7}, {"above", 3.3}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				k, l := kelvin.Edge(c.x)
				sink += k + l
			}
		})
	}
}
