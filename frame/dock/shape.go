package dock

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Shape is the dock as it is built, in plain numbers: what a drawing shows and a
// tape measures. Places are m from where the tape hooks on, x along the dock and y
// across it; heights count from the underside of the joists, up. All are in m.
type Shape struct {
	Length, Width float64
	Diagonal      float64 // corner to corner, once the frame is square
	Across        bool    // the joists run across, else along
	Joists, Rims  []Timber
	Depth         float64 // of the joists
	RimDepth      float64 // of the rims, their tops flush with the joists'
	Deck          float64 // thickness of the decking

	Marks  []float64 // of the joists, along the dock where they run across it, else across
	Centre bool      // the marks are the joists' middles, as the plan has them, else their near faces

	Stays []Stay // stops and blocks, by bay

	Floats []Lying
	Err    error // why floats are left out, or all things: the first value that is not known

	Fixed  []Spot // what stands on the deck
	Cleats []Spot // where the mooring's lines are made fast
}

// A Timber is a joist, or a ply of a rim, from above: two opposite corners, m.
type Timber struct{ X0, Y0, X1, Y1 float64 }

// A Stay is a stop or a block, nailed from joist to joist of a bay, and the mark of its
// near face along the joists, m.
type Stay struct {
	Timber
	Name string
	Bay  int // between the joists of that number and the next, from 1
	Mark float64
}

// A Spot is a place with a name, m.
type Spot struct {
	Name string
	X, Y float64
}

// A Lying is a float as it lies.
type Lying struct {
	Name        string
	X, Y, Z     float64 // its middle, m
	Long, Broad float64 // along the dock and across it, m
	High        float64 // m; of a drum its diameter
	Drum        bool
	Along       bool   // the drum's axis runs along the dock, else across
	Bay         int    // between the joists of that number and the next, from 1; 0 is none
	Bears       string // on what, in words
}

// Shape returns the dock's shape, as planned and by plane geometry. The error is for
// a frame that the plan does not say enough of.
func (d *Dock) Shape() (*Shape, error) {
	if d.plan == nil {
		return nil, &measure.Error{Field: "plan", Class: measure.ErrUnknown, Want: "a plan"}
	}
	f := &d.plan.Frame
	if err := (rests{on(f.Length), on(f.Width), on(f.Joists.Size), on(f.Rims.Size), d.marks(), on(f.Decking.Size)}).err(); err != nil {
		return nil, err
	}
	s := &Shape{
		Length: d.length, Width: d.width, Diagonal: math.Hypot(d.length, d.width), Across: d.across,
		Depth: d.joist.section.Depth, RimDepth: d.rim.section.Depth, Deck: d.board.section.Width, Centre: f.Joists.MarksAt.Value == "centre" && len(f.Joists.Marks) > 0,
	}
	s.frame(d)
	s.floats(d)
	for i := range d.plan.Weights {
		w := &d.plan.Weights[i]
		if err := (rests{on(w.Along), on(w.Across)}).err(); err != nil {
			s.miss(err)
			continue
		}
		s.Fixed = append(s.Fixed, Spot{called(w.Name, "a weight"), w.Along.Value, w.Across.Value})
	}
	for i := range d.plan.Mooring.Lines {
		if at, ok := d.cleat(i); ok {
			s.Cleats = append(s.Cleats, Spot{lineName(&d.plan.Mooring.Lines[i], i), at[0], at[1]})
		}
	}
	return s, nil
}

// miss keeps the first reason.
func (s *Shape) miss(err error) {
	if s.Err == nil {
		s.Err = err
	}
}

// frame lays joists and rims.
func (s *Shape) frame(d *Dock) {
	timber := func(run0, run1, reach0, reach1 float64) Timber {
		if d.across {
			return Timber{run0, reach0, run1, reach1}
		}
		return Timber{reach0, run0, reach1, run1}
	}
	half, ply := d.joist.section.Width/2, d.rim.section.Width
	rim := float64(d.rimPlies) * ply
	for _, c := range d.centres {
		s.Joists = append(s.Joists, timber(c-half, c+half, rim, d.reach()-rim))
		mark := c - half
		if s.Centre {
			mark = c
		}
		if math.Abs(mark) < slack {
			mark = 0
		}
		s.Marks = append(s.Marks, mark)
	}
	for _, p := range d.stays() {
		from, to := d.centres[p.bay-1]+half, d.centres[p.bay]-half
		s.Stays = append(s.Stays, Stay{timber(from, to, d.face(p), d.face(p)+2*half), p.name, p.bay, d.face(p)})
	}
	for i := range d.rimPlies {
		from := float64(i) * ply
		s.Rims = append(s.Rims, timber(0, d.run(), from, from+ply), timber(0, d.run(), d.reach()-from-ply, d.reach()-from))
	}
}

// floats lays the floats whose sizes and places are known.
func (s *Shape) floats(d *Dock) {
	if len(d.floats) == 0 {
		s.miss(rests{{path: "floats", missing: true}}.err())
	}
	for _, m := range d.floats {
		set := m.set
		rs := floatRests(set)
		if err := append(rests{rs[0], rs[1]}, rs[3:]...).err(); err != nil { // but for the mass
			s.miss(err)
			continue
		}
		size := d.floatSize(set)
		l := Lying{
			Name: called(set.Name, "float"), X: m.x + d.length/2, Y: m.y + d.width/2, Z: m.z, Long: size.long, Broad: size.breadth, High: size.height,
			Drum: size.drum, Along: set.Lies.Value != "across", Bay: m.bay, Bears: m.seat.String(),
		}
		if !l.Along {
			l.Long, l.Broad = l.Broad, l.Long
		}
		s.Floats = append(s.Floats, l)
	}
}

// cleat returns where a line of the mooring is made fast, from where the tape hooks
// on, and whether the plan says so.
func (d *Dock) cleat(line int) ([2]float64, bool) {
	l := &d.plan.Mooring.Lines[line]
	if !on(l.Along).missing && !on(l.Across).missing {
		return [2]float64{l.Along.Value, l.Across.Value}, true
	}
	for i, end := range ends {
		for j, side := range sides {
			if l.Corner.Value == end+", "+side {
				return [2]float64{float64(i) * d.length, float64(j) * d.width}, true
			}
		}
	}
	return [2]float64{}, false
}
