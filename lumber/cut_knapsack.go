package lumber

import "slices"

// scale is how many units of a dual price make a cent. Dual prices are whole
// numbers, so that a bound owes nothing to rounding.
const scale = 1 << 20

// A knapsack packs pieces worth whole numbers into one bin, by depth-first
// search in the order of worth per length; the rest of the bin filled with the
// best of the kinds left bounds what is still to gain.
type knapsack struct {
	p       *cutProblem
	order   []int     // kinds, by falling worth per length
	value   []int64   // of a kind, by kind
	density []float64 // by position in order

	take, best []int32
	top        int64
	nodes      int

	least   int64 // enumerate: patterns worth at least this
	emit    func(value, left int64) bool
	stopped bool
}

// packNodes and listNodes stop one packing and one enumeration. They are
// variables for the tests.
var (
	packNodes = 100_000
	listNodes = 3_000_000
)

func newKnapsack(p *cutProblem) *knapsack {
	n := len(p.size)
	return &knapsack{
		p: p, value: make([]int64, n), density: make([]float64, n),
		take: make([]int32, n), best: make([]int32, n),
	}
}

// price sets the worth of the kinds.
func (k *knapsack) price(value []int64) {
	copy(k.value, value)
	k.order = k.order[:0]
	for i, v := range value {
		if v > 0 && k.p.need[i] > 0 {
			k.order = append(k.order, i)
		}
	}
	d := func(i int) float64 { return float64(k.value[i]) / float64(k.p.size[i]) }
	slices.SortStableFunc(k.order, func(a, b int) int {
		switch x, y := d(a), d(b); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	for pos, i := range k.order {
		k.density[pos] = d(i)
	}
}

// rest bounds what room can still gain from the kinds at pos and behind.
func (k *knapsack) rest(pos int, room int64) int64 {
	if pos >= len(k.order) {
		return 0
	}
	// One unit more covers the rounding of the quotient.
	return int64(float64(room)*k.density[pos]*(1+1e-12)) + 1
}

// pack returns the greatest worth that room holds and a number it surely does
// not exceed; they are equal unless the search was stopped. The pattern is in
// k.best.
func (k *knapsack) pack(room int64, need []int64) (value, bound int64) {
	k.top, k.nodes, k.stopped = 0, 0, false
	clear(k.take)
	clear(k.best)
	k.search(0, room, 0, need)
	if k.stopped {
		return k.top, k.rest(0, room)
	}
	return k.top, k.top
}

func (k *knapsack) search(pos int, room, value int64, need []int64) {
	if value > k.top {
		k.top = value
		copy(k.best, k.take)
	}
	if pos == len(k.order) || k.stopped {
		return
	}
	if k.nodes++; k.nodes > packNodes {
		k.stopped = true
		return
	}
	i := k.order[pos]
	size, worth := k.p.size[i], k.value[i]
	n := min(need[i], room/size)
	for ; n >= 0; n-- {
		left := room - n*size
		v := value + n*worth
		if v+k.rest(pos+1, left) <= k.top {
			// Fewer of this kind bound no better: its worth per length is the highest.
			break
		}
		k.take[i] = int32(n)
		k.search(pos+1, left, v, need)
	}
	k.take[i] = 0
}

// list calls emit with every pattern of the bin worth at least least, in k.take,
// and the room it leaves, and reports whether it came to the end. Kinds worth
// nothing are included. It ends when emit returns false.
func (k *knapsack) list(room, least int64, emit func(value, left int64) bool) bool {
	k.nodes, k.stopped, k.least, k.emit = 0, false, least, emit
	clear(k.take)
	for i, v := range k.value { // the worthless last
		if v <= 0 && k.p.need[i] > 0 && !slices.Contains(k.order, i) {
			k.order = append(k.order, i)
			k.density[len(k.order)-1] = 0
		}
	}
	k.walk(0, room, 0)
	return !k.stopped
}

func (k *knapsack) walk(pos int, room, value int64) {
	if k.nodes++; k.nodes > listNodes {
		k.stopped = true
	}
	if k.stopped {
		return
	}
	if pos == len(k.order) {
		if value >= k.least && !k.emit(value, room) {
			k.stopped = true
		}
		return
	}
	i := k.order[pos]
	size, worth := k.p.size[i], k.value[i]
	for n := min(k.p.need[i], room/size); n >= 0; n-- {
		left := room - n*size
		v := value + n*worth
		if v+k.rest(pos+1, left) < k.least {
			break
		}
		k.take[i] = int32(n)
		k.walk(pos+1, left, v)
	}
	k.take[i] = 0
}
