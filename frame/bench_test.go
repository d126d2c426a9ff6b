package frame

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// bays is a stringer on a one-way support every 2 m, a load in each bay.
func bays(n int) Beam {
	b := Beam{Length: 2 * float64(n), EI: 1.9e5}
	for i := range n + 1 {
		b.Rests = append(b.Rests, Rest{At: 2 * float64(i), Support: OneWay(5000)})
	}
	for i := range n {
		x := 2 * float64(i)
		b.Loads = append(b.Loads, Uniform(x, x+2, 300), Point(x+0.7, 500))
	}
	return b
}

// exponent reports how the time grows between two sizes: 1 where it grows as they do.
func exponent(b *testing.B, each map[int]float64, small, large, n int) {
	each[n] = float64(b.Elapsed().Nanoseconds()) / float64(b.N)
	if n == large && each[small] > 0 {
		b.ReportMetric(math.Log(each[large]/each[small])/math.Log(float64(large)/float64(small)), "exponent")
	}
}

func BenchmarkSolve(b *testing.B) {
	each := map[int]float64{}
	for _, n := range []int{3, 10, 100, 1000} {
		b.Run(fmt.Sprintf("bays=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			beam := bays(n)
			for b.Loop() {
				if _, err := beam.Solve(); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/bay")
			exponent(b, each, 10, 1000, n)
		})
	}
}

// stiffness returns the loaded beam's system, with the supports' stiffness in.
func stiffness(b *testing.B, n int) (*band, []float64) {
	beam := bays(n)
	s, err := beam.assemble(nil)
	if err != nil {
		b.Fatal(err)
	}
	t := s.newTrial()
	s.balance(t)
	k := newBand(len(s.x), 3)
	s.tangentInto(k, t, 0)
	return k, t.out
}

// BenchmarkFactor is one factorisation and solution: the band of this package,
// gonum's band as referee, gonum's dense Cholesky as baseline.
func BenchmarkFactor(b *testing.B) {
	for _, n := range []int{10, 100} {
		k, load := stiffness(b, n)
		b.Run(fmt.Sprintf("band/bays=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			f, x := newBand(k.n, k.k), make([]float64, k.n)
			for b.Loop() {
				f.copyFrom(k)
				copy(x, load)
				if weakest, _ := f.factor(); !(weakest > 0) {
					b.Fatal("loose")
				}
				f.solve(x)
			}
		})
		b.Run(fmt.Sprintf("pbtrf/bays=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			s := upper(k)
			f := blas64.SymmetricBand{Uplo: blas.Upper, N: s.N, K: s.K, Stride: s.Stride, Data: make([]float64, len(s.Data))}
			x := make([]float64, k.n)
			for b.Loop() {
				copy(f.Data, s.Data)
				copy(x, load)
				t, ok := lapack64.Pbtrf(f)
				if !ok {
					b.Fatal("loose")
				}
				lapack64.Pbtrs(t, blas64.General{Rows: k.n, Cols: 1, Stride: 1, Data: x})
			}
		})
		b.Run(fmt.Sprintf("dense/bays=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			d := mat.NewSymDense(k.n, nil)
			for i := range k.n {
				for j := max(0, i-k.k); j <= i; j++ {
					d.SetSym(i, j, *k.at(i, j))
				}
			}
			var c mat.Cholesky
			x := mat.NewVecDense(k.n, nil)
			for b.Loop() {
				if !c.Factorize(d) {
					b.Fatal("loose")
				}
				if err := c.SolveVecTo(x, mat.NewVecDense(k.n, load)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkWalk(b *testing.B) {
	b.ReportAllocs()
	beam := bays(4)
	for b.Loop() {
		if _, err := beam.Walk([]Load{Point(0, 800)}, 0.1); err != nil {
			b.Fatal(err)
		}
	}
}

// TestDenseReferee solves the same stiffness by gonum's dense Cholesky: the
// movements must be those of the beam.
func TestDenseReferee(t *testing.T) {
	beam := bays(7)
	s, err := beam.assemble(nil)
	if err != nil {
		t.Fatal(err)
	}
	zero := s.newTrial()
	s.balance(zero)
	k := newBand(len(s.x), 3)
	s.tangentInto(k, zero, 0)
	d := mat.NewSymDense(k.n, nil)
	for i := range k.n {
		for j := max(0, i-k.k); j <= i; j++ {
			d.SetSym(i, j, *k.at(i, j))
		}
	}
	var c mat.Cholesky
	if !c.Factorize(d) {
		t.Fatal("not positive definite")
	}
	x := mat.NewVecDense(k.n, nil)
	if err := c.SolveVecTo(x, mat.NewVecDense(k.n, zero.out)); err != nil {
		t.Fatal(err)
	}
	l, err := beam.Solve()
	if err != nil {
		t.Fatal(err)
	}
	for i := range s.joints {
		j := &s.joints[i]
		if got, want := l.At(j.x).Deflection, x.AtVec(j.w); math.Abs(got-want) > 1e-10*math.Abs(want) {
			t.Errorf("x = %g: %g, referee %g", j.x, got, want)
		}
	}
}
