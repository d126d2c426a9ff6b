package lumber

import (
	"context"
	"math"
)

// A cutLP solves the linear relaxation, boards in any fractions, by the simplex
// method with columns generated as they are needed. A row is a kind (all its
// pieces, exactly) or a bin there are only so many of (no more than those).
// Products are rounded before they are added, so that every machine takes the
// same pivots.
type cutLP struct {
	p     *cutProblem
	rows  int
	rowOf []int // row of a bin; none: there is any number
	basis []cutColumn
	slack []bool // of the row's bin, left whole
	inv   [][]float64
	x     []float64
	rhs   []float64
	pi    []int64 // dual price of a kind, in 1/scale cent
	sigma []int64 // dual price of a bin's row, by bin
	sack  *knapsack
}

const pivotTiny = 1e-9

func newCutLP(p *cutProblem) *cutLP {
	n := len(p.size)
	l := &cutLP{
		p: p, rows: n, rowOf: make([]int, len(p.bins)),
		pi: make([]int64, n), sigma: make([]int64, len(p.bins)), sack: newKnapsack(p),
	}
	for b, bin := range p.bins {
		l.rowOf[b] = none
		if bin.limit != none {
			l.rowOf[b] = l.rows
			l.rows++
		}
	}
	l.rhs = make([]float64, l.rows)
	for i, d := range p.need {
		l.rhs[i] = float64(d)
		l.basis = append(l.basis, l.alone(i))
		l.slack = append(l.slack, false)
	}
	for b, bin := range p.bins {
		if r := l.rowOf[b]; r != none {
			l.rhs[r] = float64(bin.limit)
			l.basis = append(l.basis, cutColumn{bin: b, take: make([]int32, n)})
			l.slack = append(l.slack, true)
		}
	}
	l.inv = make([][]float64, l.rows)
	for r := range l.inv {
		l.inv[r] = make([]float64, l.rows)
		l.inv[r][r] = 1
		if r < n {
			l.inv[r][r] = 1 / float64(l.basis[r].take[r])
		}
	}
	l.x = make([]float64, l.rows)
	for r := range l.x {
		l.x[r] = l.rhs[r] * l.inv[r][r]
	}
	return l
}

// alone returns the cheapest way to have pieces of one kind by themselves.
func (l *cutLP) alone(i int) cutColumn {
	c := cutColumn{bin: none, cost: l.p.miss[i], take: make([]int32, len(l.p.size))}
	c.take[i] = 1
	for b, bin := range l.p.bins {
		if bin.limit != none || bin.room < l.p.size[i] {
			continue
		}
		n := max(1, min(l.p.need[i], bin.room/l.p.size[i]))
		if c.bin == none || bin.price*int64(c.take[i]) < c.cost*n {
			c.bin, c.cost, c.take[i] = b, bin.price, int32(n)
		}
	}
	return c
}

// duals sets pi and sigma from the basis.
func (l *cutLP) duals() {
	n := len(l.p.size)
	y := make([]float64, l.rows)
	for r, c := range l.basis {
		if c.cost == 0 {
			continue
		}
		for j, v := range l.inv[r] {
			y[j] += float64(float64(c.cost) * v)
		}
	}
	for i := range n {
		l.pi[i] = int64(math.Floor(max(0, y[i]) * scale))
	}
	for b, r := range l.rowOf {
		if r != none {
			l.sigma[b] = int64(math.Floor(-y[r] * scale)) // negative: the slack enters
		}
	}
}

// column returns a column's entries on the rows.
func (l *cutLP) column(c cutColumn, whole bool) []float64 {
	a := make([]float64, l.rows)
	if !whole {
		for i, n := range c.take {
			a[i] = float64(n)
		}
	}
	if c.bin != none && l.rowOf[c.bin] != none {
		a[l.rowOf[c.bin]] = 1
	}
	return a
}

// solve pivots until no column gains, or for as many rounds as it is given; the
// duals bound the cost either way.
func (l *cutLP) solve(ctx context.Context, rounds int) {
	n := len(l.p.size)
	for range rounds {
		if ctx.Err() != nil {
			return
		}
		l.duals()
		gained := false
		tolerance := int64(scale >> 10)
		for b, bin := range l.p.bins {
			if bin.limit != none && l.sigma[b] < -tolerance {
				gained = l.enter(cutColumn{bin: b, take: make([]int32, n)}, true) || gained
				l.duals()
			}
		}
		for i, miss := range l.p.miss {
			if miss > 0 && miss*scale-l.pi[i] < -tolerance {
				c := cutColumn{bin: none, cost: miss, take: make([]int32, n)}
				c.take[i] = 1
				gained = l.enter(c, false) || gained
				l.duals()
			}
		}
		l.sack.price(l.pi)
		for b, bin := range l.p.bins {
			value, _ := l.sack.pack(bin.room, l.p.need)
			if bin.price*scale+max(0, l.sigma[b])-value >= -tolerance {
				continue
			}
			c := cutColumn{bin: b, cost: bin.price, take: append([]int32(nil), l.sack.best...)}
			if l.enter(c, false) {
				gained = true
				l.duals()
				l.sack.price(l.pi)
			}
		}
		if !gained {
			break
		}
	}
}

// enter brings a column into the basis.
func (l *cutLP) enter(c cutColumn, whole bool) bool {
	a := l.column(c, whole)
	w := make([]float64, l.rows)
	for r, row := range l.inv {
		for j, v := range a {
			if v != 0 {
				w[r] += float64(row[j] * v)
			}
		}
	}
	out, best := none, math.Inf(1)
	for r, v := range w {
		if v <= pivotTiny {
			continue
		}
		t := l.x[r] / v
		if t < best-pivotTiny || (t < best+pivotTiny && v > w[out]) {
			out, best = r, t
		}
	}
	if out == none {
		return false
	}
	best = max(0, best)
	pivot := l.inv[out]
	for j := range pivot {
		pivot[j] /= w[out]
	}
	for r, row := range l.inv {
		if r == out {
			continue
		}
		l.x[r] = max(0, l.x[r]-float64(best*w[r]))
		if w[r] == 0 {
			continue
		}
		for j, v := range pivot {
			if v != 0 {
				row[j] -= float64(w[r] * v)
			}
		}
	}
	l.x[out] = best
	l.basis[out], l.slack[out] = c, whole
	return true
}

// bound turns the duals into prices that no bin can beat and returns the least
// any plan can cost, in 1/scale cent. Prices are scaled down until no bin for
// sale holds more than it costs; a bin in hand is charged what it holds.
func (l *cutLP) bound() int64 {
	p := l.p
	l.duals()
	for i, miss := range p.miss {
		if miss > 0 {
			l.pi[i] = min(l.pi[i], miss*scale)
		}
	}
	for range 8 {
		l.sack.price(l.pi)
		share := 1.0
		for b, bin := range p.bins {
			_, most := l.sack.pack(bin.room, p.need)
			if bin.limit != none {
				l.sigma[b] = most
			} else if most > bin.price*scale {
				share = min(share, float64(bin.price*scale)/float64(most))
			}
		}
		if share == 1 {
			return l.worth(p.need, func(b int) int64 { return p.bins[b].limit })
		}
		for i := range l.pi {
			l.pi[i] = int64(float64(float64(l.pi[i])*share) * (1 - 1e-12))
		}
	}
	clear(l.pi) // worth nothing: a bound all the same
	clear(l.sigma)
	return 0
}

// worth is the dual value of a demand and of bins in hand.
func (l *cutLP) worth(need []int64, limit func(b int) int64) int64 {
	var sum int64
	for i, d := range need {
		sum += l.pi[i] * d
	}
	for b, bin := range l.p.bins {
		if bin.limit != none {
			sum -= l.sigma[b] * limit(b)
		}
	}
	return sum
}
