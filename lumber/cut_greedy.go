package lumber

import (
	"math"
	"slices"
)

// roundings are the shares of a fractional board from which it is cut whole when
// a plan is rounded from the linear relaxation; above 1, none is cut from it.
var roundings = []float64{2, 1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4}

// greedy returns the best of several plans made without search.
func (p *cutProblem) greedy(l *cutLP) cutPlan {
	best := p.firstFit()
	value := make([]int64, len(p.size))
	var longest int64
	for _, s := range p.size {
		longest = max(longest, s)
	}
	for i := range value {
		// Pieces that cost nothing more still have to be cut, the longest first.
		value[i] = l.pi[i] + 1 + p.size[i]*scale/(1000*longest)
	}
	for _, t := range roundings {
		if plan := p.complete(l.rounded(t), value, l.sack); plan.cost < best.cost {
			best = plan
		}
	}
	return best
}

// rounded returns the whole boards of the linear relaxation, a fraction of at
// least t counting as one, the largest fractions first.
func (l *cutLP) rounded(t float64) []cutColumn {
	var rows []int
	for r := range l.basis {
		if !l.slack[r] {
			rows = append(rows, r)
		}
	}
	frac := func(r int) float64 { return l.x[r] - math.Floor(l.x[r]+1e-6) }
	slices.SortStableFunc(rows, func(a, b int) int {
		switch x, y := frac(a), frac(b); {
		case x > y+1e-9:
			return -1
		case x < y-1e-9:
			return 1
		}
		return 0
	})
	var out []cutColumn
	if t > 1 {
		return nil
	}
	for _, r := range rows {
		n := int(math.Floor(l.x[r] + 1e-6))
		if frac(r) >= t {
			n++
		}
		for range n {
			out = append(out, l.basis[r])
		}
	}
	return out
}

// complete keeps the boards whose pieces are wanted still, and cuts what is left
// of the wants by packing the bin that gives the most worth for its price, those
// in hand before any other.
func (p *cutProblem) complete(start []cutColumn, value []int64, sack *knapsack) cutPlan {
	need := slices.Clone(p.need)
	left := make([]int64, len(p.bins))
	for b, bin := range p.bins {
		left[b] = bin.limit
	}
	var plan cutPlan
	add := func(c cutColumn) {
		plan.boards = append(plan.boards, c)
		plan.cost += c.cost
		if c.bin != none && left[c.bin] != none {
			left[c.bin]--
		}
		for i, n := range c.take {
			need[i] -= int64(n)
		}
	}
	for _, c := range start {
		if fits(c.take, need) && (c.bin == none || left[c.bin] != 0) {
			add(c)
		}
	}
	for {
		sack.price(value)
		for i, n := range need {
			if n == 0 {
				sack.value[i] = 0
			}
		}
		best, most := cutColumn{bin: none}, 0.0
		for b, bin := range p.bins {
			if left[b] == 0 {
				continue
			}
			v, _ := sack.pack(bin.room, need)
			share := float64(v)
			if bin.limit == none {
				share /= float64(bin.price)
			} else if v > 0 { // in hand: before all others, the fullest first
				share = 1e18 + float64(v)/float64(bin.room)
			}
			if share > most {
				best, most = cutColumn{bin: b, cost: bin.price, take: slices.Clone(sack.best)}, share
			}
		}
		if best.bin == none {
			break
		}
		add(best)
	}
	p.leave(&plan, need)
	p.settle(&plan)
	return plan
}

// leave counts what no bin is left for as uncut; what is for sale, and was not
// packed because the packing was stopped, gets a board for itself.
func (p *cutProblem) leave(plan *cutPlan, need []int64) {
	for i := range need {
		for ; need[i] > 0; need[i]-- {
			c := cutColumn{bin: none, cost: p.miss[i], take: make([]int32, len(need))}
			c.take[i] = 1
			for b, bin := range p.bins {
				if bin.limit == none && bin.room >= p.size[i] && (c.bin == none || bin.price < c.cost) {
					c.bin, c.cost = b, bin.price
				}
			}
			plan.boards = append(plan.boards, c)
			plan.cost += c.cost
		}
	}
}

// fits reports whether all the pieces of a board are wanted.
func fits(take []int32, need []int64) bool {
	for i, n := range take {
		if int64(n) > need[i] {
			return false
		}
	}
	return true
}

// settle moves every board's pieces to the cheapest bin that holds them, and to
// the shortest of equal ones: what is spare stays whole.
func (p *cutProblem) settle(plan *cutPlan) {
	left := make([]int64, len(p.bins))
	for b, bin := range p.bins {
		left[b] = bin.limit
	}
	for _, c := range plan.boards {
		if c.bin != none && left[c.bin] != none {
			left[c.bin]--
		}
	}
	for k := range plan.boards {
		c := &plan.boards[k]
		if c.bin == none {
			continue
		}
		for b, bin := range p.bins {
			now := p.bins[c.bin]
			if left[b] == 0 || bin.price > now.price || (bin.price == now.price && bin.room >= now.room) {
				continue
			}
			if moved := (cutColumn{bin: b, cost: bin.price, take: c.take}); p.holds(moved) {
				if left[c.bin] != none {
					left[c.bin]++
				}
				if left[b] != none {
					left[b]--
				}
				plan.cost += moved.cost - c.cost
				*c = moved
			}
		}
	}
}

// firstFit is the plan of the saw bench: pieces from the longest down, each into
// the first board with room for it, bins in hand before new boards, and a new
// board of the length that is cheapest for its length; at the end every board
// moves to the cheapest length that holds it.
func (p *cutProblem) firstFit() cutPlan {
	type open struct {
		bin  int
		room int64
		take []int32
	}
	var boards []open
	for b, bin := range p.bins {
		for range bin.limit {
			boards = append(boards, open{b, bin.room, make([]int32, len(p.size))})
		}
	}
	var plan cutPlan
	short := make([]int64, len(p.size))
	for i, size := range p.size {
		for range p.need[i] {
			at := slices.IndexFunc(boards, func(o open) bool { return o.room >= size })
			if at < 0 {
				bin := none
				for b, n := range p.bins {
					if n.limit != none || n.room < size {
						continue
					}
					if bin == none || float64(n.price)/float64(n.room) < float64(p.bins[bin].price)/float64(p.bins[bin].room) {
						bin = b
					}
				}
				if bin == none {
					short[i]++
					continue
				}
				at = len(boards)
				boards = append(boards, open{bin, p.bins[bin].room, make([]int32, len(p.size))})
			}
			boards[at].room -= size
			boards[at].take[i]++
		}
	}
	for _, o := range boards {
		if slices.Max(o.take) > 0 {
			plan.boards = append(plan.boards, cutColumn{o.bin, p.bins[o.bin].price, o.take})
			plan.cost += p.bins[o.bin].price
		}
	}
	p.leave(&plan, short)
	p.settle(&plan)
	return plan
}
