package frame

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Member is a straight piece of a grillage between two of its nodes. Its own
// x runs from node I to node J; its loads are placed along it, and its diagrams
// read as those of a [Beam] drawn with node I at the left.
type Member struct {
	I, J   int     // nodes, by index
	EI     float64 // N·m², bending in the vertical plane
	GJ     float64 // N·m², torsion; 0 only with Untwist
	GA     float64 // N, shear stiffness; 0: no shear deflection
	HingeI bool    // the end at I passes no bending moment
	HingeJ bool    // the end at J passes no bending moment
	// Untwist leaves the member without torque: an end that turns freely about
	// its axis, as a nailed joist does.
	Untwist bool
	Loads   []Load // m from node I, N, downward positive
	Name    string // for errors; may be empty
}

// A Seat is one support under one node of a grillage, or under several.
type Seat struct {
	Support Support // nil: rigid, pushing and pulling; under one node only
	Nodes   []int   // by index
	// Share says in which parts, a share each, the nodes have the support's sinkage
	// and take its force: 1 in all. Nil shares alike. A part below 0 is that of a node
	// which a support beyond the other nodes lifts, as by a lever.
	Share []float64
	// Level is how far the water, or the ground, under this seat stands above
	// the level at which the support was described, m: waves, uneven ice. The
	// sinkage is Level less the deflection of its nodes.
	Level float64
	// Heights says at which height above the plane of the nodes (m; negative
	// below) the push acts, for turns about x and about y: of a drum afloat, its
	// axis for turns about that axis and its centre of buoyancy for the other.
	// A centre that shifts with the sinkage is brought in by solving again.
	Heights [2]float64
	Clamped bool   // a rigid hold on the node's rotations as well; under one node only
	Name    string // for errors and printing; may be empty
}

// A Weight stands on a node, its centre at a height above the plane of the
// nodes: when the node turns, it tips it further. Only a frame afloat minds, and
// it minds: without the heights of weights and of buoyancy it answers a tilt too
// stiffly, and the more so the narrower it is.
type Weight struct {
	Node   int
	Force  float64 // N, downward
	Height float64 // m; negative below
}

// A Grillage is a flat frame that carries loads across its plane: nodes joined
// by members that bend and twist. Each node has a deflection w (up) and two
// rotations thx and thy, right-handed about x and y; z is up. A frame afloat
// heels by -thx and trims by +thy.
type Grillage struct {
	Nodes   [][2]float64 // m, x and y
	Members []Member
	Seats   []Seat
	// Forces act on the nodes: force (N, up positive) and moments about x and y
	// (N·m, right-handed). Nil is none.
	Forces  [][3]float64
	Weights []Weight // beside the loads and forces
	Names   []string // of the nodes, for errors and printing; nil is none
}

// node returns how errors call node i.
func (g *Grillage) node(i int) string {
	place := fmt.Sprintf("(%.3f, %.3f) m", noMinus(g.Nodes[i][0], 3), noMinus(g.Nodes[i][1], 3))
	if i < len(g.Names) && g.Names[i] != "" {
		return "node " + g.Names[i] + " at " + place
	}
	return "node " + itoa(i) + " at " + place
}

func (g *Grillage) member(i int) string {
	if g.Members[i].Name != "" {
		return g.Members[i].Name
	}
	return "Members[" + itoa(i) + "]"
}

func (g *Grillage) seat(i int) string {
	if g.Seats[i].Name != "" {
		return g.Seats[i].Name
	}
	return "Seats[" + itoa(i) + "]"
}

// index returns an error unless i is a node.
func (g *Grillage) index(field string, i int) error {
	if i < 0 || i >= len(g.Nodes) {
		return &measure.Error{
			Field: field, Value: float64(i), Class: measure.ErrRange,
			Range: measure.Range{Lo: 0, Hi: float64(len(g.Nodes) - 1)},
		}
	}
	return nil
}

// check returns what is wrong with the grillage's data, if anything.
func (g *Grillage) check() error {
	if len(g.Nodes) == 0 {
		return &measure.Error{Field: "Nodes", Text: "none", Class: measure.ErrRange, Want: "one node or more"}
	}
	place := anyFinite(measure.Length)
	for i, n := range g.Nodes {
		for k, x := range n {
			if !place.Has(x) {
				return place.Check(fmt.Sprintf("Nodes[%d][%d]", i, k), x)
			}
		}
	}
	if g.Forces != nil && len(g.Forces) != len(g.Nodes) {
		return &measure.Error{
			Field: "Forces", Text: itoa(len(g.Forces)) + " of them", Class: measure.ErrRange,
			Want: "one for each of the " + itoa(len(g.Nodes)) + " nodes, or none",
		}
	}
	for i, f := range g.Forces {
		for k, x := range f {
			kind := measure.Moment
			if k == 0 {
				kind = measure.Force
			}
			if r := anyFinite(kind); !r.Has(x) {
				return r.Check(fmt.Sprintf("Forces[%d][%d]", i, k), x)
			}
		}
	}
	for i, w := range g.Weights {
		if w.Node >= 0 && w.Node < len(g.Nodes) && anyFinite(measure.Force).Has(w.Force) && anyFinite(measure.Length).Has(w.Height) {
			continue
		}
		field := "Weights[" + itoa(i) + "]"
		if err := g.index(field+".Node", w.Node); err != nil {
			return err
		}
		if r := anyFinite(measure.Force); !r.Has(w.Force) {
			return r.Check(field+".Force", w.Force)
		}
		if r := anyFinite(measure.Length); !r.Has(w.Height) {
			return r.Check(field+".Height", w.Height)
		}
	}
	for i := range g.Members {
		if err := g.checkMember(i); err != nil {
			return err
		}
	}
	for i := range g.Seats {
		if err := g.checkSeat(i); err != nil {
			return err
		}
	}
	return nil
}

// length returns the length of member i.
func (g *Grillage) length(i int) float64 {
	a, b := g.Nodes[g.Members[i].I], g.Nodes[g.Members[i].J]
	return math.Hypot(b[0]-a[0], b[1]-a[1])
}

func (g *Grillage) checkMember(i int) error {
	m := &g.Members[i]
	for k, n := range [2]int{m.I, m.J} {
		if n < 0 || n >= len(g.Nodes) {
			return g.index(g.member(i)+[2]string{".I", ".J"}[k], n)
		}
	}
	length := g.length(i)
	if r := positive(measure.Length); !r.Has(length) {
		return r.Check(g.member(i)+" from I to J", length)
	}
	if r := positive(measure.Ratio); !r.Has(m.EI) {
		return r.Check(g.member(i)+".EI (N·m²)", m.EI)
	}
	if r := positive(measure.Ratio); !r.Has(m.GJ) && !(m.GJ == 0 && m.Untwist) {
		return r.Check(g.member(i)+".GJ (N·m²)", m.GJ)
	}
	if r := positive(measure.Force); m.GA != 0 && !r.Has(m.GA) {
		return r.Check(g.member(i)+".GA", m.GA)
	}
	for k := range m.Loads {
		if err := m.Loads[k].check("Loads", k, length); err != nil {
			// Name the member too, now that it is wrong.
			return m.Loads[k].check(g.member(i)+".Loads", k, length)
		}
	}
	return nil
}

func (g *Grillage) checkSeat(i int) error {
	s := &g.Seats[i]
	bad := func(part, text, want string) error {
		return &measure.Error{Field: g.seat(i) + part, Text: text, Class: measure.ErrRange, Want: want}
	}
	if len(s.Nodes) == 0 {
		return bad(".Nodes", "none", "one node or more")
	}
	for k, n := range s.Nodes {
		if n < 0 || n >= len(g.Nodes) {
			return g.index(fmt.Sprintf("%s.Nodes[%d]", g.seat(i), k), n)
		}
		for _, other := range s.Nodes[:k] {
			if other == n {
				return bad(".Nodes", "node "+itoa(n)+" twice", "each node once")
			}
		}
	}
	if len(s.Nodes) > 1 && (s.Support == nil || s.Clamped) {
		return bad(".Nodes", itoa(len(s.Nodes))+" nodes under a rigid or clamped seat", "one node, or a support that gives")
	}
	if r := anyFinite(measure.Length); !r.Has(s.Level) {
		return r.Check(g.seat(i)+".Level", s.Level)
	}
	for k, h := range s.Heights {
		if r := anyFinite(measure.Length); !r.Has(h) {
			return r.Check(fmt.Sprintf("%s.Heights[%d]", g.seat(i), k), h)
		}
	}
	if s.Share == nil {
		return nil
	}
	if len(s.Share) != len(s.Nodes) {
		return bad(".Share", itoa(len(s.Share))+" of them", "one for each of the "+itoa(len(s.Nodes))+" nodes, or none")
	}
	var sum float64
	for k, p := range s.Share {
		if r := (measure.Range{Lo: -100, Hi: 100}); !r.Has(p) {
			return r.Check(fmt.Sprintf("%s.Share[%d]", g.seat(i), k), p)
		}
		sum += p
	}
	if r := (measure.Range{Lo: 1 - 1e-6, Hi: 1 + 1e-6}); !r.Has(sum) {
		return r.Check(g.seat(i)+".Share in all", sum)
	}
	return nil
}
