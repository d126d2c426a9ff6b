package lumber

import "math"

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
