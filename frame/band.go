package frame

import (
	"math"
	"slices"
	"sync"
)

// A band is a symmetric matrix with k diagonals below the main one. Row i holds
// the columns i-k..i. Once factored, first holds the first column of each row
// that is not zero: rows of a frame are of uneven width.
type band struct {
	n, k  int
	a     []float64
	first []int
}

// spare holds bands that were given back: a frame is solved many times over.
var spare = sync.Pool{New: func() any { return new(band) }}

func newBand(n, k int) *band {
	m := spare.Get().(*band)
	m.n, m.k = n, k
	m.a = slices.Grow(m.a[:0], n*(k+1))[:n*(k+1)]
	m.first = slices.Grow(m.first[:0], n)[:n]
	clear(m.a)
	return m
}

// free gives a band back; it must not be used afterwards.
func (m *band) free() { spare.Put(m) }

// at returns the place of element (i, j), either order.
func (m *band) at(i, j int) *float64 {
	if j > i {
		i, j = j, i
	}
	return &m.a[i*(m.k+1)+j-i+m.k]
}

// copyFrom makes m equal to other, of the same shape.
func (m *band) copyFrom(other *band) { copy(m.a, other.a) }

// fix replaces row and column i by those of the unit matrix.
func (m *band) fix(i int) {
	for j := max(0, i-m.k); j < i; j++ {
		*m.at(i, j) = 0
	}
	for j := i + 1; j < m.n && j <= i+m.k; j++ {
		*m.at(j, i) = 0
	}
	*m.at(i, i) = 1
}

// addSquare adds stiff times the square of a sum of shares.
func (m *band) addSquare(stiff float64, shares []share) {
	for j, s := range shares {
		*m.at(s.dof, s.dof) += stiff * s.part * s.part
		for _, r := range shares[:j] {
			*m.at(s.dof, r.dof) += stiff * s.part * r.part
		}
	}
}

// times sets b to the product of the unfactored m and a.
func (m *band) times(a, b []float64) {
	clear(b)
	w := m.k + 1
	for i := 0; i < m.n; i++ {
		for j := max(0, i-m.k); j < i; j++ {
			v := m.a[i*w+j-i+m.k]
			b[i] += v * a[j]
			b[j] += v * a[i]
		}
		b[i] += m.a[i*w+m.k] * a[i]
	}
}

// leastPivot is the pivot, relative to its diagonal element, below which a
// pivot is nothing but rounding and is replaced.
const leastPivot = 4e-15

// factor overwrites m by its factors L and D. It returns the least pivot
// relative to the diagonal element it began as, and its row: next to nothing
// when a motion is free. A pivot lost in rounding is replaced by a tiny one, so
// that the factors can still show the free motion. NaN counts as
// nothing.
func (m *band) factor() (weakest float64, row int) {
	weakest = math.Inf(1)
	w := m.k + 1
	for i := 0; i < m.n; i++ {
		ri := m.a[i*w : i*w+w] // ri[j-i+k]
		lo := max(0, i-m.k)
		for lo < i && ri[lo-i+m.k] == 0 {
			lo++
		}
		m.first[i] = lo
		diagonal := ri[m.k]
		d := diagonal
		for j := lo; j < i; j++ {
			rj := m.a[j*w : j*w+w]
			s := ri[j-i+m.k]
			from := max(lo, m.first[j])
			x, y := ri[from-i+m.k:j-i+m.k], rj[from-j+m.k:m.k]
			for c := range x {
				s -= x[c] * y[c]
			}
			ri[j-i+m.k] = s // still l·d
		}
		for j := lo; j < i; j++ {
			s := ri[j-i+m.k]
			l := s / m.a[j*w+m.k]
			d -= l * s
			ri[j-i+m.k] = l
		}
		ratio := d / diagonal
		if !(diagonal > 0) || math.IsNaN(ratio) {
			ratio = 0
		}
		if ratio < weakest {
			weakest, row = ratio, i
		}
		if !(ratio > leastPivot) {
			d = leastPivot * diagonal
			if !(d > 0) {
				d = math.SmallestNonzeroFloat64 * 0x1p60
			}
		}
		ri[m.k] = d
	}
	return weakest, row
}

// solve overwrites b by the solution of the factored system.
func (m *band) solve(b []float64) {
	w := m.k + 1
	for i := 0; i < m.n; i++ {
		s := b[i]
		for j := m.first[i]; j < i; j++ {
			s -= m.a[i*w+j-i+m.k] * b[j]
		}
		b[i] = s
	}
	for i := 0; i < m.n; i++ {
		b[i] /= m.a[i*w+m.k]
	}
	for i := m.n - 1; i >= 0; i-- {
		s := b[i]
		for j := m.first[i]; j < i; j++ {
			b[j] -= m.a[i*w+j-i+m.k] * s
		}
	}
}
