package lumber

import (
	"math"
)

// A cutCorner bounds what any plan must still spend above the linear relaxation
// to cut a demand in whole boards, and knows nothing but the last basis of it.
//
// With B the basis and D = |det B|, the demand v and every column a have the
// whole numbers D·B⁻¹v. Whole boards of the basis alone give multiples of D, so
// that the other columns must make up the remainder modulo D: the cheapest way
// to do so is a shortest path over remainders, one number for each (a character
// of the group ZⁿmodB: Gomory's relaxation, Linear Algebra and its Applications
// 2, 1969; from memory). And where D·B⁻¹v is negative, or
// more than the demand has room for, other columns must bring it back, at no
// less than the least reduced cost for that much.
type cutCorner struct {
	det  int64
	adj  [][]int64 // D·B⁻¹
	base []cutColumn

	group  []component
	size   int     // elements of the group that are told apart
	dist   []int64 // least reduced cost that makes up a remainder
	radius int64   // of those not reached
}

// Largest numbers the relaxation is set up with; beyond them it is left out, or
// coarser.
const (
	cornerDet   = 1 << 40
	cornerExact = 1 << 31
	cornerArcs  = 4_000_000
)

// cornerSize is how many remainders are told apart. It is a variable for the tests.
var cornerSize int64 = 1 << 20

// newCutCorner inverts the basis once more, in whole numbers that are verified;
// nil if they get too large.
func newCutCorner(l *cutLP) *cutCorner {
	n := l.rows
	m := make([][]float64, n) // B | 1
	for r := range m {
		m[r] = make([]float64, 2*n)
		m[r][n+r] = 1
	}
	cols := make([][]float64, n)
	for k, c := range l.basis {
		cols[k] = l.column(c, l.slack[k])
		for r, v := range cols[k] {
			m[r][k] = v
		}
	}
	det := 1.0
	for k := range n {
		at := k
		for r := k; r < n; r++ {
			if math.Abs(m[r][k]) > math.Abs(m[at][k]) {
				at = r
			}
		}
		m[k], m[at] = m[at], m[k]
		pivot := m[k][k]
		if math.Abs(pivot) < pivotTiny {
			return nil
		}
		if det *= math.Abs(pivot); det > cornerDet {
			return nil
		}
		for j := range m[k] {
			m[k][j] /= pivot
		}
		for r := range m {
			if f := m[r][k]; r != k && f != 0 {
				for j, v := range m[k] {
					m[r][j] -= float64(f * v)
				}
			}
		}
	}
	c := &cutCorner{det: int64(math.Round(det)), base: l.basis}
	for r := range m {
		row := make([]int64, n)
		for j := range row {
			v := m[r][n+j] * float64(c.det)
			if math.Abs(v) > cornerDet {
				return nil
			}
			row[j] = int64(math.Round(v))
		}
		c.adj = append(c.adj, row)
	}
	for r, row := range c.adj {
		for k, col := range cols {
			var sum int64
			for j, v := range col {
				sum += row[j] * int64(v)
			}
			if want := int64(0); (r == k && sum != c.det) || (r != k && sum != want) {
				return nil
			}
		}
	}
	c.decompose(cols)
	return c
}

// product sets out to D·B⁻¹v, times returns it.
func (c *cutCorner) product(out, v []int64) {
	for r, row := range c.adj {
		var sum int64
		for j, x := range v {
			sum += row[j] * x
		}
		out[r] = sum
	}
}

func (c *cutCorner) times(v []int64) []int64 {
	out := make([]int64, len(c.adj))
	c.product(out, v)
	return out
}
