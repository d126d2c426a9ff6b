package lumber

import (
	"cmp"
	"slices"
)

// A component is one cyclic part of the group: the remainder of a vector is
// weight·v modulo modulus, and counts stride in the number of an element.
type component struct {
	modulus int64
	stride  int
	weight  []int64
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
	slices.SortStableFunc(c.group, func(a, b component) int { return cmp.Compare(b.modulus, a.modulus) })
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
