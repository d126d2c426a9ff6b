package frame

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Solution is a solved grillage.
type Solution struct {
	Move     [][3]float64 // by node: w (m), thx, thy (rad)
	Push     []float64    // N, by seat: upward force on the frame; 0 is idle
	Couple   [][2]float64 // N·m, by seat: moments that a clamped seat puts on its node
	Lines    []Line       // by member: its diagrams, from its node I
	Torque   []float64    // N·m, by member: about its x on its far face
	Residual float64      // largest imbalance left at a node, a share of the largest force
	Energy   float64      // J stored in members and supports; NaN where a support cannot say its own
	Places   []string     // what each seat is called
	Names    []string     // what each node is called
}

// solution writes down the state t.
func (s *grid) solution(t *trial) (*Solution, error) {
	g := s.of
	r := &Solution{
		Move: make([][3]float64, len(g.Nodes)), Push: make([]float64, len(g.Seats)), Couple: make([][2]float64, len(g.Seats)),
		Lines: make([]Line, len(g.Members)), Torque: make([]float64, len(g.Members)), Places: make([]string, len(g.Seats)),
		Residual: t.residual(), Names: make([]string, len(g.Nodes)),
	}
	for i := range s.corners {
		c := &s.corners[i]
		r.Names[i] = "node " + itoa(i)
		if i < len(g.Names) && g.Names[i] != "" {
			r.Names[i] = "node " + g.Names[i]
		}
		r1, r2 := t.x[c.r1].hi, t.x[c.r2].hi
		r.Move[i] = [3]float64{t.x[c.w].hi, float64(r1*c.cos) - float64(r2*c.sin), float64(r1*c.sin) + float64(r2*c.cos)}
	}
	for i, seat := range s.seats {
		r.Push[seat] = t.push[i]
		r.Energy += t.energy[i]
	}
	for i := range g.Seats {
		seat := &g.Seats[i]
		c := &s.corners[seat.Nodes[0]]
		r.Places[i] = seat.Name
		if seat.Name == "" {
			r.Places[i] = "seat " + itoa(i)
		}
		if seat.Support == nil {
			r.Push[i] = -t.out[c.w] + 0
		}
		if seat.Clamped {
			m1, m2 := -t.out[c.r1], -t.out[c.r2]
			r.Couple[i] = [2]float64{float64(m1*c.cos) - float64(m2*c.sin), float64(m1*c.sin) + float64(m2*c.cos)}
		}
	}
	pieces := make([]Piece, 0, len(s.stretches))
	for i := range s.bars {
		p := &s.bars[i]
		shear, moment, slope, torque := p.inner(t.x, 1)
		first := len(pieces)
		d := Diagram{Shear: shear, Moment: moment, Slope: slope, Deflection: t.x[p.a.w].hi}
		pieces = trace(pieces, s.stretches[p.first:p.after], d, p.EI, p.GA)
		l := Line{EI: p.EI, GA: p.GA, Residual: r.Residual, Pieces: pieces[first:len(pieces):len(pieces)]}
		if err := l.finite(); err != nil {
			return nil, err
		}
		l.Energy = l.strain()
		r.Lines[i], r.Torque[i] = l, torque
		r.Energy += l.Energy
		if p.twist > 0 {
			r.Energy += torque * torque / (2 * p.twist)
		}
	}
	return r, nil
}

// String returns the pushes and the extremes with their units, a line each.
func (r *Solution) String() string {
	var b strings.Builder
	for i, p := range r.Push {
		note := ""
		if p == 0 {
			note = " (idle)"
		}
		fmt.Fprintf(&b, "%s pushes %s%s\n", nameOf(r.Places, i), measure.Force.Format(p, measure.SI), note)
	}
	low, high := 0, 0
	for i, m := range r.Move {
		if m[0] < r.Move[low][0] {
			low = i
		}
		if m[0] > r.Move[high][0] {
			high = i
		}
	}
	for _, c := range []struct {
		what string
		node int
	}{{"lowest", low}, {"highest", high}} {
		if len(r.Move) > 0 {
			fmt.Fprintf(&b, "%s: %s, %.2f mm\n", c.what, nameOf(r.Names, c.node), noMinus(1e3*r.Move[c.node][0], 2))
		}
	}
	most, which := Diagram{}, -1
	for i := range r.Lines {
		e := r.Lines[i].Extremes()
		for _, d := range [2]Diagram{e.Sag, e.Hog} {
			if which < 0 || math.Abs(d.Moment) > math.Abs(most.Moment)*(1+1e-12) {
				most, which = d, i
			}
		}
	}
	if which >= 0 {
		fmt.Fprintf(&b, "largest moment: member %d, %v\n", which, most)
	}
	fmt.Fprintf(&b, "imbalance left: %.0e of the largest force\n", r.Residual)
	return b.String()
}
