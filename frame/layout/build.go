package layout

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// merge is the least distance of two nodes on a piece: shorter members only
// spoil the digits of a solution. Our choice.
const merge = measure.Inch / 4

// A station is a node on a piece, at a distance from its From.
type station struct {
	s    float64
	node int
}

// A spot is a place on a piece that wants a node.
type spot struct {
	piece int
	s     float64 // distance from its From
	at    Point
	firm  bool // a joint: the node lies here, whatever else it takes in
}

// build makes nodes where pieces meet, end, are spliced, or take a push, and
// members between them.
func (l *Layout) build() error {
	spots, ties, err := l.spots()
	if err != nil {
		return err
	}
	group := newGroups(len(spots))
	for _, t := range ties {
		group.tie(t[0], t[1])
	}
	byPiece := make([][]int, len(l.bars))
	for i, s := range spots {
		byPiece[s.piece] = append(byPiece[s.piece], i)
	}
	for _, on := range byPiece {
		slices.SortStableFunc(on, func(a, b int) int { return cmp.Compare(spots[a].s, spots[b].s) })
		for k, first := 1, 0; k < len(on); k++ {
			if spots[on[k]].s-spots[on[first]].s <= merge {
				group.tie(on[first], on[k])
			} else {
				first = k
			}
		}
	}
	l.nodes(spots, group, byPiece)
	l.members()
	l.release()
	l.pins()
	l.sections()
	for i := range l.Bearings {
		l.Bearings[i].Contacts = l.settle(l.Bearings[i].Contacts)
	}
	return nil
}

// settle finds the node of every contact, and makes one contact of those that share
// a node.
func (l *Layout) settle(all []Contact) []Contact {
	var out []Contact
	for _, c := range all {
		l.locate(&c)
		c.Node = l.nearest(c.Piece, c.At)
		k := slices.IndexFunc(out, func(o Contact) bool { return o.Node == c.Node })
		if k >= 0 {
			out[k].Share += c.Share
			continue
		}
		out = append(out, c)
	}
	return out
}

// spots lists the places that want a node, and which of them are one.
func (l *Layout) spots() (spots []spot, ties [][2]int, err error) {
	add := func(piece int, coordinate float64, firm bool) int {
		b := l.bars[piece]
		spots = append(spots, spot{piece, b.along(coordinate), b.point(coordinate), firm})
		return len(spots) - 1
	}
	ends := make([][2]float64, len(l.bars)) // how far joints reach towards both ends
	for i := range ends {
		ends[i] = [2]float64{math.Inf(1), math.Inf(-1)}
	}
	for _, j := range l.joints {
		var tie [2]int
		for k, piece := range [2]int{j.p, j.q} {
			b, o := l.bars[piece], l.bars[[2]int{j.q, j.p}[k]]
			tie[k] = add(piece, o.c, true)
			spots[tie[k]].at = j.at
			reach := o.h + l.Drawing.Room.Butt + tiny
			ends[piece][0] = math.Min(ends[piece][0], math.Max(b.lo, o.c-reach))
			ends[piece][1] = math.Max(ends[piece][1], math.Min(b.hi, o.c+reach))
		}
		ties = append(ties, tie)
	}
	for i := range l.Drawing.Pieces {
		p, b := &l.Drawing.Pieces[i], l.bars[i]
		if !p.Kind.carries() {
			continue
		}
		// What sticks out past the last joint by more than that piece is wide ends
		// in a node of its own.
		if ends[i][0] > b.lo {
			add(i, b.lo, false)
		}
		if ends[i][1] < b.hi {
			add(i, b.hi, false)
		}
		for _, s := range p.Splices {
			if p.hinged(s) {
				add(i, b.coordinate(s.At), false)
			}
		}
	}
	for i := range l.Bearings {
		for _, c := range l.Bearings[i].Contacts {
			add(c.Piece, l.bars[c.Piece].coordinate(c.At), false)
		}
	}
	for _, p := range l.Drawing.Pins {
		for k, on := range p.On {
			i := l.Drawing.piece(on)
			b := l.bars[i]
			s, c := p.At.on(b.axis), p.At.on(1-b.axis)
			if past := math.Max(b.lo-s, s-b.hi); past > tiny {
				l.conflict(Apart, p.Name, on, past, "the pin lies past its end")
			}
			arm := measure.Range{Kind: measure.Length, Lo: merge, Hi: 2, Source: srcFrame}
			if err := arm.Check(fmt.Sprintf("pin %s, distance from the axis of On[%d]", p.Name, k), math.Abs(c-b.c)); err != nil {
				return nil, nil, err
			}
			add(i, math.Min(b.hi, math.Max(b.lo, s)), false)
		}
	}
	return spots, ties, nil
}

// hinged reports whether a splice makes a hinge.
func (p *Piece) hinged(s Splice) bool { return !s.Carries && (s.Ply == 0 || p.Plies <= 1) }

// nodes makes one node of each group of spots, in order along the dock, then
// across it, and puts them on the pieces.
func (l *Layout) nodes(spots []spot, group groups, byPiece [][]int) {
	type place struct {
		root   int
		x, y   float64
		n      float64
		firm   bool
		pieces []int
	}
	byRoot := map[int]*place{}
	var all []*place
	for i, s := range spots {
		r := group.root(i)
		p := byRoot[r]
		if p == nil {
			p = &place{root: r}
			byRoot[r] = p
			all = append(all, p)
		}
		if s.firm && !p.firm {
			p.x, p.y, p.n, p.firm = 0, 0, 0, true
		}
		if s.firm == p.firm {
			p.x, p.y, p.n = p.x+s.at.X, p.y+s.at.Y, p.n+1
		}
		if !slices.Contains(p.pieces, s.piece) {
			p.pieces = append(p.pieces, s.piece)
		}
	}
	for _, p := range all {
		p.x, p.y = p.x/p.n, p.y/p.n
	}
	// Sums of like numbers in another order differ in the last digit.
	slices.SortStableFunc(all, func(a, b *place) int {
		if math.Abs(a.x-b.x) > tiny {
			return cmp.Compare(a.x, b.x)
		}
		return cmp.Compare(a.y, b.y)
	})
	number := map[int]int{}
	for i, p := range all {
		number[p.root] = i
		slices.Sort(p.pieces)
		var names []string
		for _, k := range p.pieces {
			names = append(names, l.name(k))
		}
		if len(p.pieces) == 1 {
			b := l.bars[p.pieces[0]]
			names = append(names, measure.Length.Format(b.along(at(0, p.x, p.y).on(b.axis)), measure.SI))
		}
		l.Nodes = append(l.Nodes, Node{Name: strings.Join(names, ", "), At: Point{p.x, p.y}})
	}
	l.stations = make([][]station, len(l.bars))
	for piece, on := range byPiece {
		for _, i := range on {
			n := number[group.root(i)]
			last := len(l.stations[piece]) - 1
			if last >= 0 && l.stations[piece][last].node == n {
				continue
			}
			b := l.bars[piece]
			l.stations[piece] = append(l.stations[piece], station{b.along(l.Nodes[n].At.on(b.axis)), n})
		}
	}
}

// members puts one between every two neighbours on a piece.
func (l *Layout) members() {
	l.byPiece = make([][]int, len(l.bars))
	for piece, on := range l.stations {
		for k := 1; k < len(on); k++ {
			l.byPiece[piece] = append(l.byPiece[piece], len(l.Members))
			l.Members = append(l.Members, Member{I: on[k-1].node, J: on[k].node, Piece: piece, Pin: -1, From: on[k-1].s, To: on[k].s})
		}
	}
}

// pins adds a node for every pin and the two arms to it. The arm from the first
// piece turns about the pin; the other holds the pin, so that it is no mechanism.
func (l *Layout) pins() {
	for i, p := range l.Drawing.Pins {
		n := len(l.Nodes)
		l.Nodes = append(l.Nodes, Node{Name: p.Name, At: p.At})
		for k, on := range p.On {
			piece := l.Drawing.piece(on)
			b := l.bars[piece]
			from := l.nearest(piece, b.along(math.Min(b.hi, math.Max(b.lo, p.At.on(b.axis)))))
			l.Members = append(l.Members, Member{
				I: from, J: n, Piece: -1, Pin: i, To: math.Hypot(p.At.X-l.Nodes[from].At.X, p.At.Y-l.Nodes[from].At.Y),
				HingeJ: k == 0, Untwist: k == 0,
			})
		}
	}
}

// sections numbers the parts of the frame that pins alone join.
func (l *Layout) sections() {
	group := newGroups(len(l.Nodes))
	for _, m := range l.Members {
		if m.Pin < 0 || !m.HingeJ {
			group.tie(m.I, m.J)
		}
	}
	number := map[int]int{}
	for i := range l.Nodes {
		r := group.root(i)
		if _, ok := number[r]; !ok {
			number[r] = len(number)
		}
		l.Nodes[i].Section = number[r]
	}
	l.Sections = len(number)
}

// nearest returns the node of a piece nearest to a distance from its From.
func (l *Layout) nearest(piece int, s float64) int {
	node, gap := -1, math.Inf(1)
	for _, st := range l.stations[piece] {
		if d := math.Abs(st.s - s); d < gap {
			node, gap = st.node, d
		}
	}
	return node
}

// locate finds the member that a place on a piece belongs to; a place past the
// last node belongs to it.
func (l *Layout) locate(c *Contact) {
	c.Member, c.Node = -1, -1
	for _, m := range l.byPiece[c.Piece] {
		if m >= len(l.Members) { // cut off by the caller
			break
		}
		c.Member = m
		if c.At <= l.Members[m].To {
			break
		}
	}
	if c.Member < 0 {
		return
	}
	m := l.Members[c.Member]
	if at := math.Min(m.To-m.From, c.At-m.From); at > 0 {
		c.From = at
	}
}

// groups is a union-find over indices.
type groups []int

func newGroups(n int) groups {
	g := make(groups, n)
	for i := range g {
		g[i] = i
	}
	return g
}

func (g groups) root(i int) int {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

// tie makes two of one group; its root is its least index, whatever the order.
func (g groups) tie(i, j int) {
	i, j = g.root(i), g.root(j)
	g[max(i, j)] = min(i, j)
}
