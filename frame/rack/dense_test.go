package rack

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// ladder is a frame of two rims and a cross piece with brackets in each bay, on
// springs.
func ladder(bays int) *Frame {
	f := &Frame{}
	var rims [2][]int
	for i := range bays + 1 {
		for j := range 2 {
			rims[j] = append(rims[j], len(f.Nodes))
			f.Nodes = append(f.Nodes, [2]float64{1.5 * float64(i), 2 * float64(j)})
		}
	}
	bracket := End{Turn: 4e3, Along: 2e6, Across: 2e6}
	for j := range 2 {
		f.Members = append(f.Members, Member{Nodes: rims[j], EA: 7e7, EI: 8e3, Ends: [2]End{Rigid(), Rigid()}})
	}
	for i := range bays + 1 {
		f.Members = append(f.Members, Member{Nodes: []int{2 * i, 2*i + 1}, EA: 7e7, EI: 8e3, Ends: [2]End{bracket, bracket}})
		f.Holds = append(f.Holds, Hold{Node: 2*i + 1, Along: 1e4, Across: 2e5})
		f.Forces = append(f.Forces, Force{Node: 2 * i, X: 100, Y: float64(100 * i)})
	}
	return f
}

// system returns a frame's stiffness, and the same as a dense matrix.
func (f *Frame) system() (*system, *mat.SymDense, error) {
	m, err := f.cutting()
	if err != nil {
		return nil, nil, err
	}
	for i := range m.segments {
		m.segments[i].setForms(m.points)
	}
	trials, _ := m.trials()
	s := m.assemble(&trials[0], make([]bool, len(f.Holds)))
	d := mat.NewSymDense(s.band.N, nil)
	for i := range s.band.N {
		for j := i; j < min(s.band.N, i+s.band.K+1); j++ {
			d.SetSym(i, j, *s.at(i, j))
		}
	}
	return s, d, nil
}

// TestDenseReferee solves the same stiffness by gonum's dense Cholesky: the
// movements must be those of the frame.
func TestDenseReferee(t *testing.T) {
	for _, n := range []int{1, 2, 9} {
		f := ladder(n)
		s, d, err := f.system()
		if err != nil {
			t.Fatal(err)
		}
		load := mat.NewVecDense(s.band.N, nil)
		for _, p := range f.Forces {
			k := s.points[p.Node].first
			load.SetVec(k, p.X)
			load.SetVec(k+1, p.Y)
		}
		var c mat.Cholesky
		var x mat.VecDense
		if !c.Factorize(d) {
			t.Fatal("not positive definite")
		}
		if err := c.SolveVecTo(&x, load); err != nil {
			t.Fatal(err)
		}
		sol, err := f.Solve()
		if err != nil {
			t.Fatal(err)
		}
		for i := range f.Nodes {
			for k := range 3 {
				got, want := sol.Move[i][k], x.AtVec(s.points[i].first+k)
				if math.Abs(got-want) > 1e-9*(math.Abs(want)+1e-3) {
					t.Errorf("%d bays, node %d: %g, dense %g", n, i, got, want)
				}
			}
		}
	}
}

// The band is as narrow for a frame that runs along y as for one along x.
func TestOrder(t *testing.T) {
	f := ladder(9)
	along, err := f.cutting()
	if err != nil {
		t.Fatal(err)
	}
	for i, n := range f.Nodes {
		f.Nodes[i] = [2]float64{-n[1], n[0]}
	}
	across, err := f.cutting()
	if err != nil {
		t.Fatal(err)
	}
	if along.half != across.half || along.half > 11 {
		t.Errorf("half band %d along x, %d along y, want 8 to 11", along.half, across.half)
	}
}

// BenchmarkFactor is one factorisation and solution: the band, and gonum's dense
// Cholesky as baseline.
func BenchmarkFactor(b *testing.B) {
	for _, n := range []int{8, 100} { // 18 nodes and 202
		s, d, err := ladder(n).system()
		if err != nil {
			b.Fatal(err)
		}
		s.measure()
		x := make([]float64, s.band.N)
		b.Run(fmt.Sprintf("band/bays=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if !s.decompose(0) {
					b.Fatal("loose")
				}
				lapack64.Pbtrs(s.factored, blas64.General{Rows: len(x), Cols: 1, Stride: 1, Data: x})
			}
		})
		b.Run(fmt.Sprintf("dense/bays=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			var c mat.Cholesky
			v := mat.NewVecDense(len(x), nil)
			for b.Loop() {
				if !c.Factorize(d) {
					b.Fatal("loose")
				}
				if err := c.SolveVecTo(v, mat.NewVecDense(len(x), x)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
