package lumber

// A cutProblem is one section's cutting in whole numbers: kinds of pieces to be
// cut from bins, a bin being a length to buy or a clear stretch in hand. A piece
// counts with one kerf, a bin with one kerf more than it has, so that k pieces
// need k-1 cuts between them and none behind the last if it ends flush.
type cutProblem struct {
	size []int64 // of each kind, kerf included, longest first
	need []int64 // how many of each kind
	bins []cutBin
	miss []int64 // price of leaving one piece of the kind uncut; 0: it is not left
	step int64   // every price is a multiple of it, and so is every cost
}

// A cutBin is one sort of bin. Those in hand cost nothing.
type cutBin struct {
	room  int64
	price int64 // cents
	limit int64 // how many there are; none: any number
}

const none = -1

// A cutColumn is one way to cut a bin: how many of each kind.
type cutColumn struct {
	bin  int // none: one piece is left uncut
	cost int64
	take []int32
}

// A cutPlan is a list of cut bins and what they cost. Bound is no more than any
// plan can cost.
type cutPlan struct {
	boards []cutColumn
	cost   int64
	bound  int64
}

// holds reports whether a way of cutting fits its bin.
func (p *cutProblem) holds(c cutColumn) bool {
	if c.bin == none {
		return true
	}
	var sum int64
	for i, n := range c.take {
		sum += int64(n) * p.size[i]
	}
	return sum <= p.bins[c.bin].room
}

// roundUp returns the least multiple of step that is no less than x units of
// 1/scale cent: a bound on any cost.
func (p *cutProblem) roundUp(x int64) int64 {
	if x <= 0 {
		return 0
	}
	unit := p.step * scale
	return (x + unit - 1) / unit * p.step
}
