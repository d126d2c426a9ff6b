package rack

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Between is a force that may lie anywhere between two values: the least and
// the greatest found among the slips tried. Where equilibrium alone decides, and
// where all slips are known, the two are equal. N of a force, N·m of a couple, J of
// an energy.
type Between struct{ Least, Most float64 }

// Peak returns the end that is larger, whatever its sign, in the unit of [Between], N
// of a force; exact.
func (b Between) Peak() float64 {
	if math.Abs(b.Least) > math.Abs(b.Most) {
		return b.Least
	}
	return b.Most
}

// Sure reports whether there is one value.
func (b Between) Sure() bool { return b.Least == b.Most }

// Format returns the value, or both ends, with the unit.
func (b Between) Format(k measure.Kind, s measure.System) string {
	least, most := k.Format(b.Least, s), k.Format(b.Most, s)
	if least == most {
		return most
	}
	return least + " to " + most
}

// A Joint is what one end of a member and its node do to each other.
type Joint struct {
	Place  string
	Member int     // by index
	End    int     // 0 its first node, 1 its last
	Node   int     // by index
	Axial  Between // N along the member, positive pulls it off the node
	Pull   Between // N, the pull-out: Axial where it pulls, 0 where it pushes
	Across Between // N, of the node on the member, to its left
	Couple Between // N·m, of the node on the member, counter-clockwise
}

// String returns the joint's forces with their units.
func (j Joint) String() string {
	return fmt.Sprintf("%s: axial %s, across %s, couple %s", j.Place, j.Axial.Format(measure.Force, measure.SI),
		j.Across.Format(measure.Force, measure.SI), j.Couple.Format(measure.Moment, measure.SI))
}

// A ScrewForce is what a screw of a board carries.
type ScrewForce struct {
	Place        string
	Board, Screw int     // by index
	X, Y         Between // N, of the member on the board
	Force        Between // N, whatever its direction
}

// String returns the screw's force with its unit.
func (f ScrewForce) String() string {
	return f.Place + ": " + f.Force.Format(measure.Force, measure.SI)
}

// A Reaction is what a hold does to the frame.
type Reaction struct {
	Place  string
	Along  Between // N along the hold's Angle; of a line, its pull
	Across Between // N
	Couple Between // N·m
}

// String returns the reaction with its units.
func (r Reaction) String() string {
	return fmt.Sprintf("%s holds with %s along, %s across, %s", r.Place, r.Along.Format(measure.Force, measure.SI),
		r.Across.Format(measure.Force, measure.SI), r.Couple.Format(measure.Moment, measure.SI))
}

// A Case is one set of stiffnesses that stood in for slips that are not known.
type Case struct {
	Slips     Slips
	Scattered bool // joint by joint from a third of these to three times as much
	Lines     []Line
}

// A Solution is a solved frame.
type Solution struct {
	Move      [][3]float64 // by node: along x and y (m), turn (rad; 0 where all members turn freely); nil where a slip is not known
	Joints    []Joint      // two for each member, in order
	Screws    []ScrewForce // by board, by screw
	Reactions []Reaction   // by hold
	Lines     []Line       // by member: its diagrams; those of the first case where a slip is not known
	Worst     []Extremes   // by member: of all cases
	Cases     []Case       // what stood in for slips that are not known; nil where all are known
	Unknown   []string     // what is not known of the slips
	Imbalance Resultant    // of the loads of a frame afloat, about the middle of what carries it
	Residual  float64      // largest imbalance left at a node, a share of the largest force
	Energy    Between      // J stored in members and joints
	Notes     []string     // warnings that belong to the result
	Places    [][2]float64 // m, by node: where it is
	Names     []string     // what each node is called
}

// unknown returns the error of a movement that needs slips that are not known.
func unknown(field string, what []string) error {
	return &measure.Error{
		Field: field, Why: strings.Join(what, ", "), Class: measure.ErrUnknown,
		Want: "a stiffness for every screw and joint; forces are given all the same",
	}
}

// solution writes down the states, the first of them in full.
func (m *mesh) solution(trials []trial, states []*state, what []string) *Solution {
	f := m.f
	r := &Solution{Unknown: what, Imbalance: m.rest, Lines: states[0].lines(), Places: append([][2]float64(nil), f.Nodes...)}
	r.Names = make([]string, len(f.Nodes))
	for i := range f.Nodes {
		r.Names[i] = f.node(i)
	}
	if what == nil {
		r.Move = make([][3]float64, len(f.Nodes))
		for i := range r.Move {
			p := &m.points[i]
			dx, dy := p.moved(states[0].x)
			r.Move[i] = [3]float64{dx, dy, states[0].x[p.first+2]}
		}
	}
	for i, t := range states {
		r.Residual = math.Max(r.Residual, t.residual)
		lines := r.Lines
		if i > 0 {
			lines = t.lines()
		}
		r.Energy.take(t.energy(lines), i == 0)
		for k := range lines {
			e := lines[k].Extremes()
			if i == 0 {
				r.Worst = append(r.Worst, e)
			} else {
				w := &r.Worst[k]
				for _, d := range [5]Diagram{e.Pull, e.Push, e.Shear, e.Right, e.Left} {
					w.take(d, false)
				}
			}
			if what != nil {
				lines[k].Unknown, lines[k].Start = what, [3]float64{}
			}
		}
		if what != nil {
			r.Cases = append(r.Cases, Case{trials[i].Slips, trials[i].scatter > 0, lines})
		}
	}
	m.joints(r, states)
	m.screws(r, states)
	m.reactions(r, states)
	m.note(r)
	return r
}

// take widens the range to a value.
func (b *Between) take(x float64, first bool) {
	if first {
		*b = Between{x, x}
		return
	}
	b.Least, b.Most = math.Min(b.Least, x), math.Max(b.Most, x)
}

// same is how near, relative to the largest force, values of different cases
// count as one.
const same = 1e-7

// between returns the range of a value over all states, and that of the first
// where they agree; long is the lever that makes a couple of a force.
func between(states []*state, long float64, of func(t *state) float64) Between {
	var b Between
	scale := 0.0
	for i, t := range states {
		b.take(of(t), i == 0)
		scale = math.Max(scale, t.scale)
	}
	if b.Most-b.Least <= same*scale*long {
		x := of(states[0])
		return Between{x, x}
	}
	return b
}

func (m *mesh) joints(r *Solution, states []*state) {
	f, size := m.f, m.size()
	r.Joints = make([]Joint, 0, 2*len(f.Members))
	for i := range f.Members {
		nodes := f.Members[i].Nodes
		for e, k := range [2]int{m.first[i], m.first[i+1] - 1} {
			n := nodes[e*(len(nodes)-1)]
			j := Joint{
				Place: f.member(i) + " at " + r.Names[n], Member: i, End: e, Node: n,
				Axial:  between(states, 1, func(t *state) float64 { return t.ends[k].axial[e] }),
				Across: between(states, 1, func(t *state) float64 { return t.ends[k].across[e] }),
				Couple: between(states, size, func(t *state) float64 { return t.ends[k].couple[e] }),
			}
			j.Pull = Between{math.Max(0, j.Axial.Least), math.Max(0, j.Axial.Most)}
			r.Joints = append(r.Joints, j)
		}
	}
}

func (m *mesh) screws(r *Solution, states []*state) {
	r.Screws = make([]ScrewForce, 0, len(m.ties))
	for i := range m.ties {
		d := &m.ties[i]
		x := func(t *state) float64 { return -t.pulls[2*i] }
		y := func(t *state) float64 { return -t.pulls[2*i+1] }
		r.Screws = append(r.Screws, ScrewForce{
			Place: fmt.Sprintf("screw %d of %s in %s", d.screw, m.f.board(d.board), m.f.member(m.f.Boards[d.board].Screws[d.screw].Member)),
			Board: d.board, Screw: d.screw,
			X:     between(states, 1, x),
			Y:     between(states, 1, y),
			Force: between(states, 1, func(t *state) float64 { return math.Hypot(x(t), y(t)) }),
		})
	}
}

func (m *mesh) reactions(r *Solution, states []*state) {
	size := m.size()
	for i := range m.f.Holds {
		g := Reaction{Place: m.f.hold(i)}
		for k, into := range [3]*Between{&g.Along, &g.Across, &g.Couple} {
			long := 1.0
			if k == 2 {
				long = size
			}
			*into = between(states, long, func(t *state) float64 {
				if b := t.holding[i][k]; b >= 0 {
					return -t.pulls[b]
				}
				return -t.left[-1-t.holding[i][k]]
			})
		}
		r.Reactions = append(r.Reactions, g)
	}
}

// note writes down what is doubtful.
func (m *mesh) note(r *Solution) {
	switch {
	case r.Unknown == nil:
	case r.sure():
		r.Notes = append(r.Notes, strings.Join(r.Unknown, " and ")+" not known: every force of joints, screws and holds follows from equilibrium alone")
	default:
		r.Notes = append(r.Notes, fmt.Sprintf("%s not known: each force is what was found with %d sets of stiffnesses, softest %v, hardest %v, and may lie beyond",
			strings.Join(r.Unknown, " and "), len(r.Cases), soft, hard))
	}
	for i := range m.f.Holds {
		if g := &r.Reactions[i]; m.f.Holds[i].Line && g.Along.Least == 0 {
			r.Notes = append(r.Notes, "line "+g.Place+" hangs slack")
		}
	}
	far := 0.0
	for _, v := range r.Move {
		far = math.Max(far, math.Hypot(v[0], v[1]))
	}
	if size := m.size(); far > size/20 {
		r.Notes = append(r.Notes, fmt.Sprintf("movements of %s are not small beside the frame's %s: forces and movements are doubtful",
			print(measure.Length, far), print(measure.Length, size)))
	}
}

// sure reports whether every force of joints, screws and holds is one value.
func (s *Solution) sure() bool {
	ok := true
	for _, j := range s.Joints {
		ok = ok && j.Axial.Sure() && j.Across.Sure() && j.Couple.Sure()
	}
	for _, g := range s.Screws {
		ok = ok && g.X.Sure() && g.Y.Sure()
	}
	for _, g := range s.Reactions {
		ok = ok && g.Along.Sure() && g.Across.Sure() && g.Couple.Sure()
	}
	return ok
}

// energy returns what is stored in members, boards and joints.
func (t *state) energy(lines []Line) float64 {
	var sum float64
	for i := range t.segments {
		g := &t.segments[i]
		if g.member < 0 {
			a, b, c := g.forms[0].of(t.x), g.forms[1].of(t.x), g.forms[2].of(t.x)
			axial, m1, m2 := t.springs[i].inner(a, b, c)
			sum += (axial*a + m1*b + m2*c) / 2
			continue
		}
		e, k := &t.ends[i], &t.springs[i]
		for end := range 2 {
			sum += (e.axial[end]*e.axial[end]*k.slip[end][0] + e.across[end]*e.across[end]*k.slip[end][1]) / 2
			if c := k.turns[end]; c > 0 && !math.IsInf(c, 1) {
				sum += e.couple[end] * e.couple[end] / c / 2
			}
		}
	}
	for i := range lines {
		l := &lines[i]
		for j := range l.Pieces {
			p := &l.Pieces[j]
			h := p.To - p.Start.X
			for k := range gauss4 {
				d := p.at(h * gauss4[k])
				u := d.Axial*d.Axial/l.EA + d.Moment*d.Moment/l.EI
				if l.GA > 0 {
					u += d.Shear * d.Shear / l.GA
				}
				sum += weight4[k] * h * u / 2
			}
		}
	}
	for i := range t.bonds {
		if k := t.bonds[i].k; k > 0 {
			sum += t.pulls[i] * t.pulls[i] / k / 2
		}
	}
	return sum
}

// Four Gauss points on 0..1: exact to the seventh power.
var (
	gauss4  = [4]float64{0.06943184420297371, 0.33000947820757187, 0.66999052179242813, 0.93056815579702629}
	weight4 = [4]float64{0.17392742256872693, 0.32607257743127307, 0.32607257743127307, 0.17392742256872693}
)
