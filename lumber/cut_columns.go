package lumber

import (
	"cmp"
	"math"
	"slices"
)

// searchColumns is how many ways of cutting a board are looked at together.
const searchColumns = 20_000

// A searchColumn is a way of cutting with what the search needs of it.
type searchColumn struct {
	cutColumn
	reduced int64   // what it costs above the dual prices of its pieces
	row     []int64 // over the rows of the relaxation
	spread  []int64 // D·B⁻¹ of row
	residue int
	state   state
	slack   int64 // length left over
}

// A touched row has n of a column.
type touched struct {
	row int
	n   int64
}

// A slab hands out short slices from long ones.
type slab struct{ free []int64 }

func (s *slab) take(n int) []int64 {
	if len(s.free) < n {
		s.free = make([]int64, max(n, 4096))
	}
	out := s.free[:n:n]
	s.free = s.free[n:]
	return out
}

// prepare lists every way of cutting whose reduced cost is within the budget,
// and the bounds that follow. It is false if they are too many.
func (s *cutSearch) prepare(budget int64) bool {
	p, l := s.p, s.l
	n := len(p.size)
	var mem slab
	s.columns = s.columns[:0]
	add := func(c cutColumn, reduced int64) {
		row := mem.take(l.rows)
		for i, k := range c.take {
			row[i] = int64(k)
		}
		if c.bin != none && l.rowOf[c.bin] != none {
			row[l.rowOf[c.bin]] = 1
		}
		s.columns = append(s.columns, searchColumn{cutColumn: c, reduced: reduced, row: row})
	}
	for b, bin := range p.bins {
		cost := bin.price * scale
		if bin.limit != none {
			if cost = l.sigma[b]; cost <= budget { // left whole
				add(cutColumn{bin: b, take: make([]int32, n)}, cost)
			}
		}
		l.sack.price(l.pi)
		ok := l.sack.list(bin.room, cost-budget, func(value, left int64) bool {
			if left == bin.room || p.cheaper(b, bin.room-left) {
				return true
			}
			add(cutColumn{bin: b, cost: bin.price, take: slices.Clone(l.sack.take)}, cost-value)
			return len(s.columns) <= searchColumns
		})
		if s.nodes += l.sack.nodes / 16; !ok {
			return false
		}
	}
	for i, miss := range p.miss {
		if reduced := miss*scale - l.pi[i]; miss > 0 && reduced <= budget {
			c := cutColumn{bin: none, cost: miss, take: make([]int32, n)}
			c.take[i] = 1
			add(c, reduced)
		}
	}
	slices.SortStableFunc(s.columns, func(a, b searchColumn) int { return cmp.Compare(a.reduced, b.reduced) })
	s.rate(&mem)
	s.corner.reach(s.other, budget)
	s.ways = make([][]way, s.corner.size)
	return true
}

// cheaper reports whether another length for sale holds as much for less: only
// the cheapest counts.
func (p *cutProblem) cheaper(b int, used int64) bool {
	if p.bins[b].limit != none {
		return false
	}
	for o, bin := range p.bins {
		if bin.limit == none && bin.room >= used &&
			(bin.price < p.bins[b].price || (bin.price == p.bins[b].price && o < b)) {
			return true
		}
	}
	return false
}

// rate sets which columns are outside the basis, and what it costs at least to
// change a row of D·B⁻¹v by one.
func (s *cutSearch) rate(mem *slab) {
	s.other = s.other[:0]
	s.low, s.high = make([]float64, s.l.rows), make([]float64, s.l.rows)
	s.mends = make([]int, s.l.rows)
	s.lead = make([][]*searchColumn, len(s.p.size))
	s.touch = make([][]touched, s.l.rows)
	for r, c := range s.l.basis {
		s.low[r], s.high[r] = math.Inf(1), math.Inf(1)
		for j, v := range s.l.column(c, s.l.slack[r]) {
			if v > 0 {
				s.touch[r] = append(s.touch[r], touched{j, int64(v)})
			}
		}
	}
	for k := range s.columns {
		c := &s.columns[k]
		c.spread = mem.take(s.l.rows)
		s.corner.product(c.spread, c.row)
		c.residue = s.corner.remainder(c.row)
		c.state = s.stateOf(c.row)
		if c.bin != none {
			c.slack = s.p.bins[c.bin].room
			for i, n := range c.take {
				c.slack -= int64(n) * s.p.size[i]
			}
		}
		if i := slices.IndexFunc(c.take, func(n int32) bool { return n > 0 }); i >= 0 {
			s.lead[i] = append(s.lead[i], c)
		}
		if s.basic(c.spread) {
			continue
		}
		s.other = append(s.other, c)
		for r, v := range c.spread {
			switch {
			case v < 0:
				s.mends[r]++
				s.low[r] = min(s.low[r], float64(c.reduced)/float64(-v))
			case v > 0:
				s.high[r] = min(s.high[r], float64(c.reduced)/float64(v))
			}
		}
	}
}

// basic reports whether a column is one of the basis.
func (s *cutSearch) basic(spread []int64) bool {
	ones := 0
	for _, v := range spread {
		switch v {
		case 0:
		case s.corner.det:
			ones++
		default:
			return false
		}
	}
	return ones == 1
}
