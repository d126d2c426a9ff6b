package rack

import (
	"fmt"
	"math"
	"strconv"

	"example.org/floewright/lumber/measure"
)

// A Frame lies in its own plane, loaded there and held, or afloat: without Holds
// its loads must balance each other, or Drag carries what is left of them.
type Frame struct {
	Nodes   [][2]float64 // m, x and y
	Members []Member
	Boards  []Board
	Holds   []Hold // none: the frame is afloat
	Forces  []Force
	Drag    Drag     // of a frame afloat
	Names   []string // of the nodes, for errors and printing; nil is none
}

// A Force acts on a node: a pull at a cleat or a hinge, a boat's bump.
type Force struct {
	Node   int     // by index
	X, Y   float64 // N
	Couple float64 // N·m, counter-clockwise
	Name   string  // for errors; may be empty
}

// A Hold keeps a node in place: springs in two directions at right angles and
// against turning. Zero leaves that motion free, math.Inf(1) prevents it.
type Hold struct {
	Node   int     // by index
	Angle  float64 // rad, direction of Along from x; of a line, towards its anchor
	Along  float64 // N/m
	Across float64 // N/m
	Turn   float64 // N·m/rad
	Line   bool    // a line along Angle, that only pulls and gives; Across and Turn are zero
	Name   string  // for errors and printing; may be empty
}

// bounds is who set the ranges that only keep numbers within reason.
var bounds = &measure.Source{Title: "Chosen for this library", Locator: "beyond any dock", Status: measure.OwnChoice}

// Ranges of the data. Their far ends only keep slips of the pen and overflow out.
var (
	places      = measure.Range{Kind: measure.Length, Lo: -1e5, Hi: 1e5, Source: bounds}
	lengths     = measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: 1e5, Source: bounds}
	stretch     = measure.Range{Kind: measure.Force, Lo: 1, Hi: 1e12, Source: bounds}
	bending     = measure.Range{Lo: 1e-3, Hi: 1e12, Source: bounds}
	stiffnesses = measure.Range{Kind: measure.LineLoad, Lo: 1, Hi: 1e11, Source: bounds}
	turning     = measure.Range{Lo: 1e-3, Hi: 1e12, Source: bounds}
	forces      = measure.Range{Kind: measure.Force, Lo: -1e9, Hi: 1e9, Source: bounds}
	lineLoads   = measure.Range{Kind: measure.LineLoad, Lo: -1e9, Hi: 1e9, Source: bounds}
	couples     = measure.Range{Kind: measure.Moment, Lo: -1e9, Hi: 1e9, Source: bounds}
	angles      = measure.Range{Kind: measure.Angle, Lo: -100, Hi: 100, Source: bounds}
	reach       = measure.Range{Kind: measure.Length, Lo: 0, Hi: 0.3, Source: bounds}
)

// slack is how far places on a member of length 1 may differ and be one.
const slack = 1e-9

// firm reports whether a stiffness means that nothing gives.
func firm(k float64) bool { return math.IsInf(k, 1) }

// blank reports whether a slip stiffness is not known.
func blank(k float64) bool { return k == 0 || math.IsNaN(k) }

// has returns an error unless x lies in the range. The field is named only then.
func has(r measure.Range, x float64, name func() string, part string) error {
	if r.Has(x) {
		return nil
	}
	return r.Check(name()+part, x)
}

// given checks a stiffness that may be zero, firm or not known.
func given(r measure.Range, k float64, name func() string, part string) error {
	if math.IsNaN(k) {
		return nil
	}
	return stiff(r, k, name, part)
}

// stiff checks a stiffness that may be zero or firm.
func stiff(r measure.Range, k float64, name func() string, part string) error {
	if k == 0 || firm(k) {
		return nil
	}
	return has(r, k, name, part)
}

func itoa(i int) string { return strconv.Itoa(i) }

// called returns a thing's name, or its place in the list it stands in.
func called(name, list string, i int) string {
	if name != "" {
		return name
	}
	return list + "[" + itoa(i) + "]"
}

// node returns how errors and results call node i.
func (f *Frame) node(i int) string {
	if i < len(f.Names) && f.Names[i] != "" {
		return "node " + f.Names[i]
	}
	return "node " + itoa(i)
}

func (f *Frame) member(i int) string { return called(f.Members[i].Name, "Members", i) }
func (f *Frame) board(i int) string  { return called(f.Boards[i].Name, "Boards", i) }
func (f *Frame) hold(i int) string   { return called(f.Holds[i].Name, "Holds", i) }

// index returns an error unless i is one of n things.
func index(field string, i, n int) error {
	if i >= 0 && i < n {
		return nil
	}
	return &measure.Error{
		Field: field, Value: float64(i), Class: measure.ErrRange,
		Range: measure.Range{Lo: 0, Hi: float64(n - 1)},
	}
}

// wrong returns an error about data that is no single number.
func wrong(field, text, want string) error {
	return &measure.Error{Field: field, Text: text, Class: measure.ErrRange, Want: want}
}

// finite reports whether all of them are numbers.
func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// first returns the first error of several checks.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// check returns what is wrong with the frame's data, if anything. The boards are
// checked where they are put on.
func (f *Frame) check() error {
	if len(f.Members) == 0 {
		return wrong("Members", "none", "one member or more")
	}
	for i, n := range f.Nodes {
		for k, x := range n {
			if !places.Has(x) {
				return places.Check(fmt.Sprintf("Nodes[%d][%d]", i, k), x)
			}
		}
	}
	for i := range f.Members {
		if err := f.checkMember(i); err != nil {
			return err
		}
	}
	rigid := make(map[int]bool)
	for i := range f.Holds {
		h, name := &f.Holds[i], f.hold(i)
		named := func() string { return name }
		if err := first(
			index(name+".Node", h.Node, len(f.Nodes)),
			has(angles, h.Angle, named, ".Angle"),
			stiff(stiffnesses, h.Along, named, ".Along"),
			stiff(stiffnesses, h.Across, named, ".Across"),
			stiff(turning, h.Turn, named, ".Turn (N·m/rad)"),
		); err != nil {
			return err
		}
		if h.Along == 0 && h.Across == 0 && h.Turn == 0 {
			return wrong(name, "no stiffness in any direction", "a stiffness, or no hold")
		}
		if h.Line && (h.Across != 0 || h.Turn != 0) {
			return wrong(name, "a line with Across or Turn", "Along alone")
		}
		if h.Line && firm(h.Along) {
			return wrong(name+".Along", "a line that does not give", "its stiffness in N/m")
		}
		if firm(h.Along) || firm(h.Across) || firm(h.Turn) {
			if rigid[h.Node] {
				return wrong(name, "a second hold that does not give at one node", "one of them, or springs")
			}
			rigid[h.Node] = true
		}
	}
	for i := range f.Forces {
		p := &f.Forces[i]
		name := called(p.Name, "Forces", i)
		if err := first(
			index(name+".Node", p.Node, len(f.Nodes)),
			forces.Check(name+".X", p.X),
			forces.Check(name+".Y", p.Y),
			couples.Check(name+".Couple", p.Couple),
		); err != nil {
			return err
		}
	}
	return f.checkDrag()
}
