package frame

import "slices"

// narrow returns an order of n things, as the place of each, in which joined
// ones lie near each other: E. Cuthill and J. McKee's order, from a thing at the
// far end of each part, reversed. It keeps the band of the stiffness narrow.
func narrow(n int, joined [][]int) []int {
	place := make([]int, n)
	for i := range place {
		place[i] = -1
	}
	order := make([]int, 0, n)
	level := make([]int, n)
	for start := range n {
		if place[start] >= 0 {
			continue
		}
		// Walk to the far end of the part, twice.
		end := start
		for range 2 {
			end = farthest(end, joined, level)
		}
		first := len(order)
		place[end] = 0
		order = append(order, end)
		for k := first; k < len(order); k++ {
			from := len(order)
			for _, j := range joined[order[k]] {
				if place[j] < 0 {
					place[j] = 0
					order = append(order, j)
				}
			}
			next := order[from:]
			slices.SortStableFunc(next, func(a, b int) int { return len(joined[a]) - len(joined[b]) })
		}
	}
	for k, i := range order {
		place[i] = n - 1 - k
	}
	return place
}

// farthest returns a thing as many steps from start as any, one with few
// neighbours where there is a choice. Level is scratch.
func farthest(start int, joined [][]int, level []int) int {
	for i := range level {
		level[i] = -1
	}
	level[start] = 0
	queue := []int{start}
	best := start
	for k := 0; k < len(queue); k++ {
		i := queue[k]
		if level[i] > level[best] || level[i] == level[best] && len(joined[i]) < len(joined[best]) {
			best = i
		}
		for _, j := range joined[i] {
			if level[j] < 0 {
				level[j] = level[i] + 1
				queue = append(queue, j)
			}
		}
	}
	return best
}
