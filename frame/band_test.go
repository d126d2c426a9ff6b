package frame

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// randomBand returns a positive definite band and its copy in gonum's layout.
func randomBand(r *rand.Rand, n, k int) (*band, blas64.SymmetricBand) {
	m := newBand(n, k)
	for i := range n {
		for j := max(0, i-k); j < i; j++ {
			*m.at(i, j) = r.NormFloat64()
		}
	}
	for i := range n {
		sum := 0.5
		for j := max(0, i-k); j < min(n, i+k+1); j++ {
			if j != i {
				sum += math.Abs(*m.at(i, j))
			}
		}
		*m.at(i, i) = sum * (1 + r.Float64())
	}
	return m, upper(m)
}

func upper(m *band) blas64.SymmetricBand {
	s := blas64.SymmetricBand{Uplo: blas.Upper, N: m.n, K: m.k, Stride: m.k + 1, Data: make([]float64, m.n*(m.k+1))}
	for i := range m.n {
		for j := i; j < min(m.n, i+m.k+1); j++ {
			s.Data[i*s.Stride+j-i] = *m.at(i, j)
		}
	}
	return s
}

// TestBandAgainstLapack has gonum's banded Cholesky as referee.
func TestBandAgainstLapack(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		n, k := 1+r.IntN(40), r.IntN(6)
		k = min(k, n-1)
		m, s := randomBand(r, n, k)
		b := make([]float64, n)
		for i := range b {
			b[i] = r.NormFloat64()
		}
		want := append([]float64(nil), b...)
		factor, ok := lapack64.Pbtrf(s)
		if !ok {
			t.Fatal("the referee finds it not positive definite")
		}
		lapack64.Pbtrs(factor, blas64.General{Rows: n, Cols: 1, Stride: 1, Data: want})
		weakest, row := m.factor()
		if !(weakest > 0.01) || row < 0 || row >= n {
			t.Errorf("weakest pivot %g in row %d", weakest, row)
		}
		// The pivots are the squares of the referee's.
		for i := range n {
			u := factor.Data[i*factor.Stride]
			if d := m.a[i*(k+1)+k]; math.Abs(d-u*u) > 1e-12*d {
				t.Errorf("pivot %d: %g, referee %g", i, d, u*u)
			}
		}
		m.solve(b)
		for i := range b {
			if math.Abs(b[i]-want[i]) > 1e-12 {
				t.Errorf("x[%d] = %g, referee %g", i, b[i], want[i])
			}
		}
	}
}

// TestWeakestPivot names the row at which a motion comes free.
func TestWeakestPivot(t *testing.T) {
	// A chain of springs that is held nowhere: the last pivot vanishes.
	m := newBand(5, 1)
	for i := range 4 {
		*m.at(i, i)++
		*m.at(i+1, i+1)++
		*m.at(i+1, i)--
	}
	held := newBand(5, 1)
	held.copyFrom(m)
	*held.at(2, 2) += 1e-6
	if weakest, row := m.factor(); !(weakest < 1e-15) || row != 4 {
		t.Errorf("free chain: %g in row %d", weakest, row)
	}
	if weakest, _ := held.factor(); math.Abs(weakest-1e-6) > 1e-8 {
		t.Errorf("chain held by 1e-6: %g", weakest)
	}
	empty := newBand(2, 1)
	if weakest, row := empty.factor(); weakest != 0 || row != 0 {
		t.Errorf("nothing at all: %g in row %d", weakest, row)
	}
	x := []float64{1, 1}
	if empty.solve(x); math.IsNaN(x[0]) {
		t.Error("NaN from an empty matrix")
	}
	nan := newBand(2, 1)
	*nan.at(0, 0), *nan.at(1, 1) = math.NaN(), 1
	if weakest, _ := nan.factor(); weakest > 0 {
		t.Errorf("NaN counts as a pivot of %g", weakest)
	}
}

func TestFix(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	m, _ := randomBand(r, 6, 2)
	m.fix(3)
	for j := range 6 {
		want := 0.0
		if j == 3 {
			want = 1
		}
		if math.Abs(float64(j-3)) <= 2 && *m.at(3, j) != want {
			t.Errorf("element (3, %d) = %g", j, *m.at(3, j))
		}
	}
}

// TestTwo checks the arithmetic in two parts against cases that are exact.
func TestTwo(t *testing.T) {
	tiny := 0x1p-80
	a := two{hi: 1}.plus(tiny)
	if a.hi != 1 || a.lo != tiny {
		t.Errorf("1 + 2^-80 = %v", a)
	}
	if d := a.minus(two{hi: 1}); d != tiny {
		t.Errorf("(1 + 2^-80) - 1 = %g", d)
	}
	if s := a.plus(-1).sum(); s != tiny {
		t.Errorf("(1 + 2^-80) - 1 = %g", s)
	}
	// A straight line is straight to the last of 32 digits.
	slope, h := 0.1, 0.3
	p := h * slope
	w := two{p, math.FMA(h, slope, -p)}.plus(0.7)
	if d := offLine(w, two{hi: 0.7}, two{hi: slope}, h); math.Abs(d) > 1e-32 {
		t.Errorf("a straight line bends by %g", d)
	}
}

// TestTwoAgainstBig has arithmetic of 300 bits as referee.
func TestTwoAgainstBig(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	big300 := func(x two) *big.Float {
		s := new(big.Float).SetPrec(300).SetFloat64(x.hi)
		return s.Add(s, new(big.Float).SetFloat64(x.lo))
	}
	number := func() two { return two{hi: r.NormFloat64()}.plus(r.NormFloat64() * 0x1p-55) }
	for range 500 {
		wi, slope := number(), number()
		h := math.Exp(8 * (r.Float64() - 1))
		wj := wi.plus(h * slope.hi).plus(1e-14 * r.NormFloat64())
		want := big300(wj)
		want.Sub(want, big300(wi))
		step := new(big.Float).SetPrec(300).SetFloat64(h)
		want.Sub(want, step.Mul(step, big300(slope)))
		exact, _ := want.Float64()
		if got := offLine(wj, wi, slope, h); math.Abs(got-exact) > 1e-30 {
			t.Errorf("off the line by %g, referee %g", got, exact)
		}
		want = big300(wi)
		want.Sub(want, big300(slope))
		exact, _ = want.Float64()
		if got := wi.minus(slope); math.Abs(got-exact) > 4e-16*math.Abs(exact) {
			t.Errorf("difference %g, referee %g", got, exact)
		}
	}
}

func TestPolynomials(t *testing.T) {
	p := poly{-6, 11, -6, 1} // (t-1)(t-2)(t-3)
	got := p.crossings(0, 4)
	if len(got) != 3 {
		t.Fatalf("roots %v", got)
	}
	for i, want := range []float64{1, 2, 3} {
		if math.Abs(got[i]-want) > 1e-14 {
			t.Errorf("root %g, want %g", got[i], want)
		}
	}
	if got := (poly{1, -2, 1}).crossings(0, 2); len(got) > 1 {
		t.Errorf("a touch crosses at %v", got)
	}
	if got := (poly{0, 0, 0}).crossings(0, 1); len(got) != 0 {
		t.Errorf("nothing crosses at %v", got)
	}
	if got := (poly{1, 1}).crossings(0, 1); got != nil {
		t.Errorf("no root, got %v", got)
	}
	if d := (poly{3}).derivative(); d != nil {
		t.Errorf("a constant grows by %v", d)
	}
}
