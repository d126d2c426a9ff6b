package lumber

import (
	"cmp"
	"context"
	"math"
	"slices"
)

// A way is a column out of a remainder, and the least that it and what must
// follow it cost.
type way struct {
	column *searchColumn
	least  int64
	rest   int
}

// A cutSearch looks for a plan that spends no more than a budget above the
// bound of the relaxation. It chooses the boards that are not of the last basis,
// few as they are; those of the basis follow from them. While the basis would
// have to be used a negative number of times, a board is chosen that mends this;
// otherwise one that leads on to whole boards. What was reached as cheaply
// before is not entered again.
type cutSearch struct {
	ctx  context.Context
	p    *cutProblem
	l    *cutLP
	base int64 // bound of the relaxation, in 1/scale cent
	best cutPlan

	nodes, turn, limit int // steps: done, halting this try, halting all
	halted             bool

	corner  *cutCorner
	columns []searchColumn
	other   []*searchColumn   // those outside the basis, by reduced cost
	low     []float64         // least reduced cost for a unit of D·B⁻¹v, per row
	mends   []int             // how many columns lessen a row
	lead    [][]*searchColumn // all, by the longest piece on them
	high    []float64         // as low, for less of it
	touch   [][]touched       // the rows of a column of the basis
	ways    [][]way           // by remainder, as needed

	digit []state // worth of one of a row in a state; nil: they do not fit
	memo  cutMemo

	ceiling int64 // no column costs more, none is looked for
	budget  int64
	next    int64   // least spending that was turned away
	left    []int64 // demand, and bins in hand, by row
	spread  []int64 // D·B⁻¹left
	path    []*searchColumn
	found   bool
	vague   bool // a plan was met that its budget does not account for
}

// start sets the search on the whole demand and returns its remainder.
func (s *cutSearch) start() int {
	s.left = make([]int64, s.l.rows)
	copy(s.left, s.p.need)
	for b, r := range s.l.rowOf {
		if r != none {
			s.left[r] = s.p.bins[b].limit
		}
	}
	s.spread = s.corner.times(s.left)
	s.digit = make([]state, s.l.rows)
	one, ok := state{0, 1}, true
	for r, n := range s.left {
		if !ok {
			s.digit = nil
			break
		}
		s.digit[r] = one
		one, ok = one.times(uint64(n) + 1)
	}
	return s.corner.remainder(s.left)
}

func (s *cutSearch) stateOf(row []int64) state {
	var sum state
	if s.digit == nil {
		return sum
	}
	for r, n := range row {
		if n > 0 {
			part, _ := s.digit[r].times(uint64(n))
			sum = sum.plus(part)
		}
	}
	return sum
}

// run searches with growing budgets until the plan is proven or the count of
// nodes is up.
func (s *cutSearch) run() error {
	at := s.start()
	total := s.stateOf(s.left)
	full := func() int64 { return (s.best.cost-s.p.step)*scale - s.base }
	raise := func(least int64) { // any plan spends at least so much
		s.best.bound = min(s.best.cost, max(s.best.bound, s.p.roundUp(s.base+least)))
	}
	s.ceiling = max(full()/8, s.best.bound*scale-s.base)
	for s.best.bound < s.best.cost {
		s.ceiling = min(s.ceiling, full())
		ceiling := s.ceiling
		if !s.prepare(ceiling) {
			return s.ctx.Err()
		}
		least := s.corner.dist[at] // of what any plan spends
		for raise(min(least, ceiling+1)); least <= ceiling && s.best.bound < s.best.cost; raise(min(least, ceiling+1)) {
			// The budget lets in more than the next plan, since costs a hair apart would
			// make a try each.
			least = max(least, s.best.bound*scale-s.base)
			level := min(ceiling, full(), max(least+least/8, least+scale))
			s.try(level, at, total)
			if err := s.ctx.Err(); err != nil || s.halted {
				return err
			}
			if s.found {
				s.best.bound = s.best.cost
				return nil
			}
			least = max(s.next, level+1)
		}
		s.ceiling = max(2*ceiling, ceiling+scale)
	}
	return s.ctx.Err()
}

// Both ways to search are tried by turns, with more steps each time. It is a
// variable for the tests.
var turns = []turn{{steps: 20_000}, {true, 20_000}, {steps: 200_000}, {true, 200_000}, {steps: 1_000_000}, {true, 1_000_000}}

// A turn is a try of a number of steps, by [cutSearch.fill] or else by
// [cutSearch.descend].
type turn struct {
	fill  bool
	steps int
}

// try searches with one budget, in one way after the other until one comes to an
// end.
func (s *cutSearch) try(level int64, at int, total state) {
	for _, way := range turns {
		s.budget, s.next, s.found, s.halted, s.vague = level, math.MaxInt64, false, false, false
		s.turn = min(s.limit, s.nodes+way.steps)
		s.memo.clear()
		if way.fill {
			s.fill(0, at, total)
		} else {
			s.descend(0, at, total)
			s.halted = s.halted || s.vague
		}
		if !s.halted || s.nodes >= s.limit || s.ctx.Err() != nil {
			return
		}
		level = min(level, (s.best.cost-s.p.step)*scale-s.base)
	}
}

// step counts a step of the search and halts it in time.
func (s *cutSearch) step() {
	s.nodes++
	s.halted = s.nodes > s.turn || (s.nodes&0xfff == 0 && s.ctx.Err() != nil)
}

// worst returns the row that is most expensive to mend, none if none is
// negative, and what mending it costs at least.
func (s *cutSearch) worst() (row int, most float64) {
	row = none
	for r, v := range s.spread {
		if v >= 0 {
			continue
		}
		cost := float64(float64(-v) * s.low[r])
		if row == none || cost > most || (cost == most && s.mends[r] < s.mends[row]) {
			row, most = r, cost
		}
	}
	return row, most * (1 - 1e-9)
}

func (s *cutSearch) descend(spent int64, at int, now state) {
	row, most := s.worst()
	if most > float64(s.budget-spent) {
		if !math.IsInf(most, 1) {
			s.next = min(s.next, spent+int64(most))
		}
		return
	}
	if row == none && at == 0 && s.whole() {
		s.arrive(spent)
		return
	}
	for _, w := range s.toward(at) {
		if spent+w.least > s.budget {
			s.next = min(s.next, spent+w.least)
			return
		}
		c := w.column
		if row != none && c.spread[row] >= 0 || row == none && !s.corner.turns(c.residue, at) {
			continue
		}
		if s.step(); s.halted {
			return
		}
		if !s.within(c.row) {
			continue
		}
		next := now.minus(c.state)
		if s.digit != nil {
			if !s.memo.better(next, spent+c.reduced) {
				continue
			}
		}
		s.move(c, -1)
		s.path = append(s.path, c)
		s.descend(spent+c.reduced, w.rest, next)
		s.path = s.path[:len(s.path)-1]
		s.move(c, 1)
		if s.halted {
			return
		}
	}
}

// toward returns the columns that lead from a remainder to whole boards, the
// cheapest way first.
func (s *cutSearch) toward(at int) []way {
	if l := s.ways[at]; l != nil {
		return l
	}
	l := make([]way, 0, 8)
	for _, c := range s.other {
		rest := s.corner.difference(at, c.residue)
		if least := c.reduced + s.corner.dist[rest]; least <= s.ceiling {
			l = append(l, way{c, least, rest})
		}
	}
	slices.SortStableFunc(l, func(a, b way) int { return cmp.Compare(a.least, b.least) })
	s.ways[at] = l
	return l
}

// whole reports whether the boards of the basis come out whole: they do where
// the remainder is zero, unless the group was too large to be told apart.
func (s *cutSearch) whole() bool {
	if int64(s.corner.size) == s.corner.det {
		return true
	}
	for _, v := range s.spread {
		if v%s.corner.det != 0 {
			return false
		}
	}
	return true
}

func (s *cutSearch) within(row []int64) bool {
	for r, n := range row {
		if n > s.left[r] {
			return false
		}
	}
	return true
}

func (s *cutSearch) move(c *searchColumn, by int64) {
	for r, n := range c.row {
		s.left[r] += by * n
	}
	for r, v := range c.spread {
		s.spread[r] += by * v
	}
}

// arrive takes the boards chosen, and those of the basis that follow, as the
// best plan if they are. Nothing further on is cheaper as long as the boards of
// the basis cost no more than their pieces are worth; where the relaxation was
// stopped before that, the try proves nothing.
func (s *cutSearch) arrive(spent int64) {
	plan := cutPlan{bound: s.best.bound}
	add := func(c cutColumn) {
		if slices.Max(c.take) > 0 {
			plan.boards = append(plan.boards, c)
			plan.cost += c.cost
		}
	}
	for _, c := range s.path {
		add(c.cutColumn)
	}
	for r, v := range s.spread {
		for range v / s.corner.det {
			add(s.l.basis[r])
		}
	}
	s.vague = s.vague || s.p.roundUp(s.base+spent) < min(plan.cost, s.best.cost)
	s.take(plan)
}

// take takes a plan that is better than the best.
func (s *cutSearch) take(plan cutPlan) {
	if plan.cost < s.best.cost {
		s.best, s.found = plan, true
		s.budget = min(s.budget, (plan.cost-s.p.step)*scale-s.base)
	}
}
