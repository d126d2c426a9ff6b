package lumber

import (
	"math"
	"slices"
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

// A component is one cyclic part of the group: the remainder of a vector is
// weight·v modulo modulus, and counts stride in the number of an element.
type component struct {
	modulus int64
	stride  int
	weight  []int64
}

// Largest numbers the relaxation is set up with; beyond them it is left out.
const (
	cornerDet   = 1 << 40
	cornerExact = 1 << 31
	cornerSize  = 1 << 20
	cornerArcs  = 4_000_000
)

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

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// decompose brings the basis to diagonal form by whole row and column steps,
// modulo D: the diagonal has the cyclic parts of the group, the row steps the
// weights. Of a group too large the largest parts are kept: a coarser bound.
func (c *cutCorner) decompose(cols [][]float64) {
	n, d := len(cols), c.det
	c.size = 1
	if d > cornerExact {
		return
	}
	mod := func(x int64) int64 { // the remainder of least size
		if x %= d; x > d/2 {
			return x - d
		} else if x < -d/2 {
			return x + d
		}
		return x
	}
	a, u := make([][]int64, n), make([][]int64, n)
	for r := range n {
		a[r], u[r] = make([]int64, n), make([]int64, n)
		u[r][r] = 1
		for k := range n {
			a[r][k] = mod(int64(cols[k][r]))
		}
	}
	for k := range n {
		for done := false; !done; {
			row, col := least(a, k)
			if row == none {
				break
			}
			a[k], a[row], u[k], u[row] = a[row], a[k], u[row], u[k]
			for r := range a {
				a[r][k], a[r][col] = a[r][col], a[r][k]
			}
			done = true
			for r := k + 1; r < n; r++ {
				q := a[r][k] / a[k][k]
				if q != 0 {
					for j := range n {
						a[r][j] = mod(a[r][j] - q*a[k][j])
						u[r][j] = mod(u[r][j] - q*u[k][j])
					}
				}
				done = done && a[r][k] == 0
			}
			for j := k + 1; j < n; j++ {
				if q := a[k][j] / a[k][k]; q != 0 {
					for r := k; r < n; r++ {
						a[r][j] = mod(a[r][j] - q*a[r][k])
					}
				}
				done = done && a[k][j] == 0
			}
		}
	}
	whole := int64(1)
	for k := range n {
		m := gcd(a[k][k], d)
		whole *= m
		if m > 1 {
			c.group = append(c.group, component{modulus: m, weight: u[k]})
		}
		if whole > d {
			break
		}
	}
	if whole != d { // lost in the remainders: no group is a bound too
		c.group = nil
		return
	}
	slices.SortStableFunc(c.group, func(a, b component) int { return int(b.modulus - a.modulus) })
	for k := range c.group {
		g := &c.group[k]
		if int64(c.size)*g.modulus > cornerSize {
			c.group = c.group[:k]
			break
		}
		g.stride = c.size
		c.size *= int(g.modulus)
		for j, w := range g.weight {
			g.weight[j] = (w%g.modulus + g.modulus) % g.modulus
		}
	}
}

// least returns the place of the entry of least size, not zero, at or behind
// row and column k.
func least(a [][]int64, k int) (row, col int) {
	row, col = none, none
	var best int64
	for r := k; r < len(a); r++ {
		for j := k; j < len(a); j++ {
			if v := max(a[r][j], -a[r][j]); v > 0 && (best == 0 || v < best) {
				row, col, best = r, j, v
			}
		}
	}
	return row, col
}

// remainder returns the number of a vector's element of the group.
func (c *cutCorner) remainder(v []int64) int {
	at := 0
	for _, g := range c.group {
		var sum int64
		for j, x := range v {
			sum = (sum + x%g.modulus*g.weight[j]) % g.modulus
		}
		at += int((sum+g.modulus)%g.modulus) * g.stride
	}
	return at
}

// sum and difference add and subtract two elements of the group.
func (c *cutCorner) sum(a, b int) int {
	at := 0
	for _, g := range c.group {
		m := int(g.modulus)
		x := a/g.stride%m + b/g.stride%m
		if x >= m {
			x -= m
		}
		at += x * g.stride
	}
	return at
}

func (c *cutCorner) difference(a, b int) int {
	at := 0
	for _, g := range c.group {
		m := int(g.modulus)
		x := a/g.stride%m - b/g.stride%m
		if x < 0 {
			x += m
		}
		at += x * g.stride
	}
	return at
}

// turns reports whether a column with the remainder r may be the next on the way
// from at to zero: some column must turn the first part that is not zero.
func (c *cutCorner) turns(r, at int) bool {
	for _, g := range c.group {
		m := int(g.modulus)
		if at/g.stride%m != 0 {
			return r/g.stride%m != 0
		}
	}
	return true
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

// reach finds the least reduced cost of every remainder up to a budget.
func (c *cutCorner) reach(columns []*searchColumn, budget int64) {
	c.dist = make([]int64, c.size)
	for i := range c.dist {
		c.dist[i] = math.MaxInt64
	}
	var arcs []arc // columns are sorted by reduced cost: the first of a remainder is its least
	seen := make([]bool, c.size)
	seen[0] = true
	for _, s := range columns {
		if !seen[s.residue] {
			seen[s.residue] = true
			arcs = append(arcs, arc{s.residue, s.reduced})
		}
	}
	c.radius = budget + 1
	c.dist[0] = 0
	queue := arcHeap{{0, 0}}
	for work := 0; len(queue) > 0; {
		a := queue.pop()
		if a.cost > c.dist[a.to] {
			continue
		}
		if work > cornerArcs {
			c.radius = a.cost
			break
		}
		for _, b := range arcs {
			cost := a.cost + b.cost
			if cost > budget {
				break
			}
			work++
			if to := c.sum(a.to, b.to); cost < c.dist[to] {
				c.dist[to] = cost
				queue.push(arc{to, cost})
			}
		}
	}
	for i, d := range c.dist {
		c.dist[i] = min(d, c.radius)
	}
}

// An arc leads to a remainder at a cost.
type arc struct {
	to   int
	cost int64
}

// An arcHeap is a binary heap, the cheapest arc first.
type arcHeap []arc

func (h *arcHeap) push(a arc) {
	q := append(*h, a)
	i := len(q) - 1
	for i > 0 {
		up := (i - 1) / 2
		if q[up].cost <= a.cost {
			break
		}
		q[i], i = q[up], up
	}
	q[i] = a
	*h = q
}

func (h *arcHeap) pop() arc {
	q := *h
	top, last := q[0], q[len(q)-1]
	q = q[:len(q)-1]
	i := 0
	for {
		down := 2*i + 1
		if down >= len(q) {
			break
		}
		if down+1 < len(q) && q[down+1].cost < q[down].cost {
			down++
		}
		if q[down].cost >= last.cost {
			break
		}
		q[i], i = q[down], down
	}
	if len(q) > 0 {
		q[i] = last
	}
	*h = q
	return top
}
