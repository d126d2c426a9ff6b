package rack

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"
)

// A point has three unknowns: a node of the frame, a place on a member where
// boards are screwed on, or one on a board.
type point struct {
	x, y          float64
	member, board int     // where it lies beside the nodes; else -1
	at            float64 // along that member or board
	cos, sin      float64 // the axes of its movements, turned with a hold
	first         int     // of its unknowns: two movements, a turn
}

// A tie is one screw between a point of a member and one of a board.
type tie struct {
	board, screw int
	a, b         int        // points of the member and of the board
	armA, armB   [2]float64 // from the points to the screw
	slip         float64
}

// A mesh is a frame cut into segments between points.
type mesh struct {
	f        *Frame
	points   []point
	segments []segment
	first    []int // of each member's segments; one more at the end
	ties     []tie
	loads    [][3]float64 // on points: x, y, couple
	holds    []int        // by point: the hold that turns its axes, or -1
	half     int          // half band width
	afloat   bool         // nothing holds it: its loads balance
	rest     Resultant    // of the loads, afloat: what the drag carries
	drag     [][]Load     // by member, afloat
	pins     [2]int       // the points that hold its numbers, afloat
}

// A cut is a point on a member or a board.
type cut struct {
	x float64
	p int
}

// cutting prepares the frame for solving.
func (f *Frame) cutting() (*mesh, error) {
	if err := f.check(); err != nil {
		return nil, err
	}
	m := &mesh{f: f, points: make([]point, len(f.Nodes), 2*len(f.Nodes)+8)}
	for i, n := range f.Nodes {
		m.points[i] = point{x: n[0], y: n[1], member: -1, board: -1}
	}
	cuts := make([][]cut, len(f.Members))
	for i := range f.Members {
		m.through(i, cuts)
	}
	var decks [][]cut
	for i := range f.Boards {
		row, err := m.screwed(i, cuts)
		if err != nil {
			return nil, err
		}
		decks = append(decks, row)
	}
	m.loads = make([][3]float64, len(m.points))
	if err := m.float(); err != nil {
		return nil, err
	}
	for i := range f.Members {
		m.first = append(m.first, len(m.segments))
		m.divide(i, cuts[i])
	}
	m.first = append(m.first, len(m.segments))
	for i, row := range decks {
		_, cos, sin, _ := f.Boards[i].line()
		for k := 1; k < len(row); k++ {
			m.segments = append(m.segments, segment{
				a: row[k-1].p, b: row[k].p, member: -1, x: row[k-1].x, h: row[k].x - row[k-1].x, cos: cos, sin: sin,
				ea: f.Boards[i].EA, ei: f.Boards[i].EI, ends: [2]End{Rigid(), Rigid()},
			})
		}
	}
	for _, p := range f.Forces {
		l := &m.loads[p.Node]
		l[0] += p.X
		l[1] += p.Y
		l[2] += p.Couple
	}
	m.setAxes()
	m.order()
	return m, nil
}

// through notes the nodes that member i runs through.
func (m *mesh) through(i int, cuts [][]cut) {
	f := m.f
	start, cos, sin, _ := f.line(&f.Members[i])
	cuts[i] = make([]cut, 0, len(f.Members[i].Nodes))
	for _, n := range f.Members[i].Nodes {
		x, _ := along(start, cos, sin, f.Nodes[n])
		cuts[i] = append(cuts[i], cut{x, n})
	}
}

// near is how close together, on a member of length 1, a screwed board and a
// node count as one place: between closer ones the member would be so short that
// its stiffness drowns the rest.
const near = 1e-3

// screwed puts board i on: points on it and on the members under it, and ties.
func (m *mesh) screwed(i int, cuts [][]cut) ([]cut, error) {
	f, b := m.f, &m.f.Boards[i]
	crossed, err := f.crossings(i)
	if err != nil {
		return nil, err
	}
	start, cos, sin, length := b.line()
	var row []cut
	for _, c := range crossed {
		under, err := m.under(c, cuts)
		if err != nil {
			return nil, err
		}
		over := -1
		if k := len(row) - 1; k >= 0 && c.x-row[k].x <= near*length {
			over = row[k].p
		} else {
			over = len(m.points)
			m.points = append(m.points, point{
				x: start[0] + float64(c.x*cos), y: start[1] + float64(c.x*sin), member: -1, board: i, at: c.x,
			})
			row = append(row, cut{c.x, over})
		}
		for _, k := range c.screws {
			at := b.Screws[k].At
			p, q := &m.points[under], &m.points[over]
			m.ties = append(m.ties, tie{
				board: i, screw: k, a: under, b: over, slip: b.Screws[k].Slip,
				armA: [2]float64{at[0] - p.x, at[1] - p.y}, armB: [2]float64{at[0] - q.x, at[1] - q.y},
			})
		}
	}
	return row, nil
}

// under returns the point of the member under a crossing.
func (m *mesh) under(c crossing, cuts [][]cut) (int, error) {
	f := m.f
	member := &f.Members[c.member]
	start, cos, sin, length := f.line(member)
	row := cuts[c.member]
	k := sort.Search(len(row), func(k int) bool { return row[k].x >= c.at })
	for _, j := range [2]int{k - 1, k} {
		if j < 0 || j >= len(row) || math.Abs(row[j].x-c.at) > near*length {
			continue
		}
		for e, last := range [2]int{0, len(row) - 1} {
			if j == last && !member.Ends[e].rigid() {
				return 0, wrong(f.board(c.board), "screws right on the joint at the end of "+f.member(c.member),
					fmt.Sprintf("screws %.3f m or more beside it", near*length))
			}
		}
		return row[j].p, nil
	}
	if k == 0 || k == len(row) {
		return 0, wrong(f.board(c.board), "screws beyond the end of "+f.member(c.member), "screws between its ends")
	}
	p := len(m.points)
	m.points = append(m.points, point{
		x: start[0] + float64(c.at*cos), y: start[1] + float64(c.at*sin), member: c.member, board: -1, at: c.at,
	})
	cuts[c.member] = slices.Insert(row, k, cut{c.at, p})
	return p, nil
}

// divide makes the segments of member i and lays its loads on.
func (m *mesh) divide(i int, row []cut) {
	f := m.f
	member := &f.Members[i]
	_, cos, sin, length := f.line(member)
	begin := len(m.segments)
	for k := 1; k < len(row); k++ {
		s := segment{
			a: row[k-1].p, b: row[k].p, member: i, x: row[k-1].x, h: row[k].x - row[k-1].x, cos: cos, sin: sin,
			ea: member.EA, ei: member.EI, ga: member.GA, ends: [2]End{Rigid(), Rigid()},
		}
		if k == 1 {
			s.ends[0] = member.Ends[0]
		}
		if k == len(row)-1 {
			s.ends[1] = member.Ends[1]
		}
		m.segments = append(m.segments, s)
	}
	loads := member.Loads
	if m.drag != nil {
		loads = slices.Concat(loads, m.drag[i])
	}
	for _, l := range loads {
		if l.spread() {
			for k := begin; k < len(m.segments); k++ {
				m.segments[k].spread(l)
			}
			continue
		}
		end := -1
		switch {
		case l.From <= slack*length:
			end = row[0].p
		case l.From >= length*(1-slack):
			end = row[len(row)-1].p
		}
		if end >= 0 {
			n := &m.loads[end]
			n[0] += float64(l.Along*cos) - float64(l.Across*sin)
			n[1] += float64(l.Along*sin) + float64(l.Across*cos)
			n[2] += l.Couple
			continue
		}
		k := begin
		for k+1 < len(m.segments) && l.From >= m.segments[k+1].x {
			k++
		}
		s := &m.segments[k]
		s.points = append(s.points, Load{From: l.From - s.x, Along: l.Along, Across: l.Across, Couple: l.Couple})
	}
	for k := begin; k < len(m.segments); k++ {
		m.segments[k].lay()
	}
}

// setAxes turns the axes of nodes that a hold does not let move in a direction.
func (m *mesh) setAxes() {
	m.holds = make([]int, len(m.points))
	for i := range m.points {
		m.points[i].cos = 1
		m.holds[i] = -1
	}
	for i := range m.f.Holds {
		h := &m.f.Holds[i]
		if firm(h.Along) || firm(h.Across) || firm(h.Turn) {
			p := &m.points[h.Node]
			p.sin, p.cos = math.Sincos(h.Angle)
			m.holds[h.Node] = i
		}
	}
	if m.afloat {
		p, q := &m.points[m.pins[0]], &m.points[m.pins[1]]
		d := math.Hypot(q.x-p.x, q.y-p.y)
		q.cos, q.sin = (q.x-p.x)/d, (q.y-p.y)/d
	}
}

// order numbers the unknowns row by row, along x or along y, whichever keeps the
// band of the stiffness narrower: boards or rims that run on make it wide.
func (m *mesh) order() {
	var best []int
	for _, along := range [2]bool{true, false} {
		row := m.sorted(along)
		half := 2
		place := make([]int, len(row))
		for k, i := range row {
			place[i] = k
		}
		wider := func(a, b int) {
			d := 3 * (place[a] - place[b])
			half = max(half, d+2, 2-d)
		}
		for i := range m.segments {
			wider(m.segments[i].a, m.segments[i].b)
		}
		for i := range m.ties {
			wider(m.ties[i].a, m.ties[i].b)
		}
		if best == nil || half < m.half {
			best, m.half = place, half
		}
	}
	for i, k := range best {
		m.points[i].first = 3 * k
	}
}

// sorted returns the points in order of x and then y, or of y and then x.
func (m *mesh) sorted(along bool) []int {
	row := make([]int, len(m.points))
	for i := range row {
		row[i] = i
	}
	slices.SortStableFunc(row, func(i, j int) int {
		p, q := &m.points[i], &m.points[j]
		x, y := cmp.Compare(p.x, q.x), cmp.Compare(p.y, q.y)
		if !along {
			x, y = y, x
		}
		return cmp.Or(x, y)
	})
	return row
}

// size returns the frame's extent, m.
func (m *mesh) size() float64 {
	size := 0.0
	for i := range m.points {
		size = math.Max(size, math.Hypot(m.points[i].x-m.points[0].x, m.points[i].y-m.points[0].y))
	}
	return size
}
