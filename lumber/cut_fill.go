package lumber

import (
	"math"
	"slices"
)

// fill is the other way to search: board by board, each with the longest piece
// that is left, every way of cutting within the budget. A way is passed over if
// a piece on it could be changed for a longer one that is left, or one be added:
// the plan with the two changed about costs the same. It does better than
// [cutSearch.descend] where boards hold few pieces, worse where they hold many.
func (s *cutSearch) fill(spent int64, at int, now state) {
	i := slices.IndexFunc(s.left[:len(s.lead)], func(n int64) bool { return n > 0 })
	if i < 0 {
		s.filled(spent)
		return
	}
	for _, c := range s.lead[i] {
		if spent+c.reduced > s.budget {
			s.next = min(s.next, spent+c.reduced)
			return
		}
		rest := s.corner.difference(at, c.residue)
		if least := spent + c.reduced + s.corner.dist[rest]; least > s.budget {
			s.next = min(s.next, least)
			continue
		}
		if s.step(); s.halted {
			return
		}
		if !s.within(c.row) || s.improvable(c) {
			continue
		}
		next := now.minus(c.state)
		if s.digit != nil && !s.memo.better(next, spent+c.reduced) {
			continue
		}
		s.move(c, -1)
		if most := s.misfit(); most <= float64(s.budget-spent-c.reduced) {
			s.path = append(s.path, c)
			s.fill(spent+c.reduced, rest, next)
			s.path = s.path[:len(s.path)-1]
		} else if !math.IsInf(most, 1) {
			s.next = min(s.next, spent+c.reduced+int64(most))
		}
		s.move(c, 1)
		if s.halted {
			return
		}
	}
}

// misfit is what it costs at least that some board of the basis would be used a
// negative number of times, or more often than its pieces are left.
func (s *cutSearch) misfit() float64 {
	most := 0.0
	for r, v := range s.spread {
		switch {
		case v < 0:
			most = max(most, float64(float64(-v)*s.low[r]))
		case v > 0:
			use := int64(math.MaxInt64)
			for _, j := range s.touch[r] {
				use = min(use, s.left[j.row]/j.n)
			}
			if v -= use * s.corner.det; v > 0 {
				most = max(most, float64(float64(v)*s.high[r]))
			}
		}
	}
	return most * (1 - 1e-9)
}

// improvable reports whether a longer piece that is left fits in the place of one
// on the board, or any beside them. Kinds run from the longest down.
func (s *cutSearch) improvable(c *searchColumn) bool {
	if c.bin == none {
		return false
	}
	size := s.p.size
	for b := range c.take {
		if s.left[b] > int64(c.take[b]) && size[b] <= c.slack {
			return true
		}
		if c.take[b] == 0 {
			continue
		}
		for a := b - 1; a >= 0 && size[a]-size[b] <= c.slack; a-- {
			if s.left[a] > int64(c.take[a]) {
				return true
			}
		}
	}
	return false
}

// filled takes the path as the best plan if it is one.
func (s *cutSearch) filled(spent int64) {
	for b, r := range s.l.rowOf { // boards in hand left whole
		if r != none {
			spent += s.l.sigma[b] * s.left[r]
		}
	}
	if spent > s.budget {
		s.next = min(s.next, spent)
		return
	}
	plan := cutPlan{bound: s.best.bound}
	for _, c := range s.path {
		plan.boards = append(plan.boards, c.cutColumn)
		plan.cost += c.cost
	}
	s.take(plan)
}
