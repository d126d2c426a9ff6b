package fasten

import (
	"math"
	"math/rand/v2"
	"testing"
)

// random returns a dowel in wood or steel, all sizes that joints have.
func random(r *rand.Rand) shank {
	between := func(lo, hi float64) float64 { return lo * math.Pow(hi/lo, r.Float64()) }
	return shank{
		d: between(0.09, 1), lm: between(0.2, 12), ls: between(0.05, 12),
		fem: between(1000, 90000), fes: between(1000, 90000), fyb: between(30000, 130000),
	}
}

// The closed equations of the standard are the roots of the quadratic form of
// Technical Report 12 without a gap.
func TestModesAreRootsOfQuadratics(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 12))
	worst := 0.0
	for range 20000 {
		s := random(r)
		a, b := s.touching(), s.apart()
		for i := range a {
			if e := math.Abs(a[i]-b[i]) / a[i]; !(e <= 1e-12) {
				t.Fatalf("mode %s of %+v: %.16g by the equations, %.16g by the quadratic", modeNames[i], s, a[i], b[i])
			} else {
				worst = math.Max(worst, e)
			}
		}
	}
	t.Logf("largest relative difference %.2g", worst)
}

// k1 is written without the printed form's difference; both agree where that
// difference keeps its digits.
func TestModeIIAsPrinted(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 12))
	for range 2000 {
		s := random(r)
		re, rt := s.fem/s.fes, s.lm/s.ls
		printed := (math.Sqrt(re+2*re*re*(1+rt+rt*rt)+rt*rt*re*re*re) - re*(1+rt)) / (1 + re) * s.d * s.ls * s.fes
		if got := s.touching()[ii]; math.Abs(got-printed) > 1e-9*printed {
			t.Fatalf("mode II of %+v: %.15g, printed form %.15g", s, got, printed)
		}
	}
}

// Main and side changed about, modes Im and Is, IIIm and IIIs change about, II and
// IV stay: the proof of mode IIIm, which governs no printed cell.
func TestModesMirror(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 12))
	for range 2000 {
		s := random(r)
		if r.IntN(2) == 0 {
			s.gap = r.Float64()
		}
		m := s
		m.lm, m.ls, m.fem, m.fes = s.ls, s.lm, s.fes, s.fem
		a, b := s.loads(), m.loads()
		for i, j := range [modes]int{im: is, is: im, ii: ii, iiim: iiis, iiis: iiim, iv: iv} {
			if math.Abs(a[i]-b[j]) > 1e-12*a[i] {
				t.Fatalf("mode %s is %.16g, mirrored %s %.16g", modeNames[i], a[i], modeNames[j], b[j])
			}
		}
	}
}

// All lengths doubled, every mode carries four times as much.
func TestModesScale(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 12))
	for range 500 {
		s := random(r)
		s.gap = r.Float64()
		big := s
		big.d, big.lm, big.ls, big.gap = 2*s.d, 2*s.lm, 2*s.ls, 2*s.gap
		a, b := s.loads(), big.loads()
		for i := range a {
			if math.Abs(b[i]-4*a[i]) > 1e-12*b[i] {
				t.Fatalf("mode %s: %g, doubled %g", modeNames[i], a[i], b[i])
			}
		}
	}
}

// A wider gap never carries more, and in touch it is the limit of a small gap.
func TestGapWeakens(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 12))
	for range 500 {
		s := random(r)
		was := s.loads()
		s.gap = 1e-12
		for i, x := range s.loads() {
			if math.Abs(x-was[i]) > 1e-9*x {
				t.Fatalf("mode %s jumps from %g to %g as a gap opens", modeNames[i], was[i], x)
			}
		}
		for s.gap = 0.01; s.gap < 3; s.gap *= 2 {
			now := s.loads()
			for i := range now {
				if now[i] > was[i]*(1+1e-12) {
					t.Fatalf("mode %s carries more over a wider gap: %g, then %g", modeNames[i], was[i], now[i])
				}
			}
			was = now
		}
	}
}

// Double shear has no modes II and IIIm and never carries less than single.
func TestDoubleShear(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 12))
	for range 500 {
		s := random(r)
		single := s.loads()
		s.double = true
		z := s.loads()
		if !math.IsNaN(z[ii]) || !math.IsNaN(z[iiim]) {
			t.Fatal("double shear has modes II and IIIm")
		}
		if z[im] != single[im] || z[is] != 2*single[is] || z[iiis] != 2*single[iiis] || z[iv] != 2*single[iv] {
			t.Fatalf("double shear: %v of single %v", z, single)
		}
		if z[least(z)] < single[least(single)] {
			t.Fatal("double shear is weaker than single")
		}
	}
}

// Both sides of each switch of the reduction term.
func TestReductions(t *testing.T) {
	same := func(x float64) [modes]float64 { return [modes]float64{x, x, x, x, x, x} }
	for _, c := range []struct {
		d, nominal, kt float64
		want           [modes]float64
	}{
		{0.17, 0.17, 1.25, same(2.2)},
		{0.18, 0.18, 1.25, same(2.3)},
		{0.2499, 0.2499, 1.25, same(2.999)},
		{0.173, 0.25, 1.25, same(2.23 * 1.25)}, // a small root of a 1/4 in screw takes Kθ
		{0.25, 0.25, 1, [modes]float64{4, 4, 3.6, 3.2, 3.2, 3.2}},
		{0.371, 0.5, 1.25, [modes]float64{5, 5, 4.5, 4, 4, 4}},
	} {
		got := reductions(c.d, c.nominal, c.kt)
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-12 {
				t.Errorf("Rd at D %g of nominal %g: %v, want %v", c.d, c.nominal, got, c.want)
				break
			}
		}
	}
}

// Every cell of the embedded tables reads, and every row has a status.
func TestTablesAreWhole(t *testing.T) {
	for _, c := range []struct {
		name    string
		numbers []string
		empty   []string // may be empty
	}{
		{"fasteners", []string{"D", "root", "Fyb", "head", "tip", "length"}, []string{"head", "tip", "length"}},
		{"yield", []string{"from", "to", "Fyb"}, nil},
		{"hardware", []string{"D", "threads", "nut", "locknut", "washer", "thick"}, nil},
		{"finishes", []string{"level"}, nil},
	} {
		rows, err := lines(c.name)
		if err != nil || len(rows) == 0 {
			t.Fatalf("%s: %d rows, %v", c.name, len(rows), err)
		}
		for _, r := range rows {
			if _, err := r.status(); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			for _, n := range c.numbers {
				optional := false
				for _, e := range c.empty {
					optional = optional || e == n
				}
				if r[n] == "" && optional {
					continue
				}
				if x := r.num(n); !(x > 0) && !(c.name == "finishes" && r[n] == "0") {
					t.Errorf("%s: column %s of %v is no number", c.name, n, r)
				}
			}
		}
	}
	if _, err := lines("nothing"); err == nil {
		t.Error("a table that is not there gives no error")
	}
	if _, err := (line{"status": "hearsay"}).status(); err == nil {
		t.Error("an unknown status gives no error")
	}
	known, err := loaded()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range known.fasteners {
		s, err := f.resolve()
		if err != nil {
			t.Errorf("%s: %v", f.Name, err)
			continue
		}
		// Appendix I's class is the row's own value.
		if class := known.class(f.Kind, false, s.d); class != s.fyb {
			t.Errorf("%s: Fyb %g, class %g", f.Name, s.fyb, class)
		}
	}
	seen := map[string]bool{}
	for _, k := range known.keys {
		if seen[k] {
			t.Errorf("two fasteners are called %q", k)
		}
		seen[k] = true
	}
}
