package rack

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A trial says which stiffness stands in for slips that are not known.
type trial struct {
	Slips
	scatter int // not 0: each joint differs
}

// Slips are the stiffnesses that stand in where none is known.
type Slips struct {
	Screw         float64 // N/m, of each screw of a board
	Along, Across float64 // N/m, of each member's end
	Turn          float64 // N·m/rad, of each bracket
}

// What is tried. A screw of 5 mm in softwood of 450 kg/m³ has 2.1 MN/m by
// ρ^1.5 d/23 of EN 1995-1-1:2004, Table 7.1 (from memory), which is the middle;
// the ends are a loose nail and a bolted plate. A small bracket with four such
// screws 35 mm from its middle has some 10 kN·m/rad.
var (
	usual = Slips{Screw: 2e6, Along: 2e6, Across: 2e6, Turn: 1e4}
	soft  = Slips{Screw: 1e5, Along: 1e5, Across: 1e5, Turn: 3e2}
	hard  = Slips{Screw: 5e7, Along: 5e7, Across: 5e7, Turn: 1e6}
)

// scatters is how often the stiffnesses are tried joint by joint.
const scatters = 3

// factor spreads a stiffness joint by joint, from a third to threefold.
func (t *trial) factor(i int) float64 {
	if t.scatter == 0 {
		return 1
	}
	_, part := math.Modf(float64(i+1)*0.6180339887498949 + float64(t.scatter)*0.3819660112501051*float64(i%7+1))
	return math.Pow(3, 2*part-1)
}

// end returns an end, of number i, with what is not known filled in.
func (t *trial) end(e End, i int) End {
	if blank(e.Along) {
		e.Along = t.Along * t.factor(i)
	}
	if blank(e.Across) {
		e.Across = t.Across * t.factor(i+3)
	}
	if math.IsNaN(e.Turn) {
		e.Turn = t.Turn * t.factor(i+5)
	}
	return e
}

// slip returns the stiffness of the screw of number i.
func (t *trial) slip(k float64, i int) float64 {
	if blank(k) {
		return t.Screw * t.factor(i)
	}
	return k
}

// String says what was tried.
func (s Slips) String() string {
	print := func(k float64) string { return measure.LineLoad.Format(k, measure.SI) }
	return "screws " + print(s.Screw) + ", joints " + print(s.Along) + " along and " + print(s.Across) +
		" across, brackets " + measure.Moment.Format(s.Turn, measure.SI) + "/rad"
}

// trials returns what to try, and what is not known: the usual stiffness first,
// every combination of usual, soft and hard by kind of joint, and some scattered.
// Forces are not monotone in the slips: with soft and hard ones alone, random
// frames fell outside what was found by as much as a ninth of their largest force,
// with the usual ones by a fortieth.
func (m *mesh) trials() ([]trial, []string) {
	var screw, along, across, turn bool
	for i := range m.ties {
		screw = screw || blank(m.ties[i].slip)
	}
	for i := range m.f.Members {
		for _, e := range m.f.Members[i].Ends {
			along = along || blank(e.Along)
			across = across || blank(e.Across)
			turn = turn || math.IsNaN(e.Turn)
		}
	}
	corners := []trial{{Slips: usual}}
	var unknown []string
	vary := func(is bool, what string, of func(*Slips) *float64) {
		if !is {
			return
		}
		unknown = append(unknown, what)
		var more []trial
		for _, t := range corners {
			for _, s := range [3]Slips{usual, soft, hard} {
				*of(&t.Slips) = *of(&s)
				more = append(more, t)
			}
		}
		corners = more
	}
	vary(screw, "slip of screws", func(s *Slips) *float64 { return &s.Screw })
	vary(along, "slip of joints along members", func(s *Slips) *float64 { return &s.Along })
	vary(across, "slip of joints across members", func(s *Slips) *float64 { return &s.Across })
	vary(turn, "turning of brackets", func(s *Slips) *float64 { return &s.Turn })
	if unknown == nil {
		return corners, nil
	}
	for i := range scatters {
		corners = append(corners, trial{[scatters]Slips{usual, soft, hard}[i], i + 1})
	}
	return corners, unknown
}
