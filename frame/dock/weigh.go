package dock

import (
	"fmt"
	"math"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A piece is a number of equal things that are carried to the lake.
type piece struct {
	name   string
	plural string
	what   string // its size, for the sheet
	count  float64
	each   float64 // kg
	s, t   float64 // of its centre: along the run and along the joists, from the middle
	z      float64 // and its height
	by     string  // how its weight is known
	rests  rests
	err    error
}

// pieces lists everything that is carried, but the floats' places.
func (d *Dock) pieces() []piece {
	f := &d.plan.Frame
	sys := d.system()
	lumber := func(name string, w wood, length, count, z float64, more ...rest) piece {
		p := piece{
			name: name, plural: name + "s", count: count, z: z,
			what:  w.given.Size.Value + " x " + measure.Length.Format(length, sys),
			rests: append(rests{on(w.given.Size), on(f.Length), on(f.Width)}, more...),
		}
		if math.IsNaN(length) {
			p.what = w.given.Size.Value
		}
		p.each, p.err = w.mass(length, f.Moisture.Value)
		if plan.Has(w.given.Weighed) {
			p.by, p.rests = "by scale", append(p.rests, on(w.given.Weighed))
			return p
		}
		p.by = "by table at " + measure.Percent.Format(f.Moisture.Value, sys) + " moisture"
		p.rests = append(p.rests, on(w.given.Species).standsIn("the heaviest of "+yardNames), on(w.given.Grade), on(f.Moisture))
		return p
	}
	boards, covered := d.boards()
	depth := d.joist.section.Depth
	board := lumber("deck board", d.board, d.run(), covered, depth+d.board.section.Width/2, on(f.Decking.Gap))
	board.what = fmt.Sprintf("%s, %d rows", board.what, boards)
	out := []piece{
		lumber("joist", d.joist, d.clear, float64(len(d.centres)), depth/2, d.marks(), on(f.Rims.Size), on(f.Rims.Plies)),
		lumber("rim", d.rim, d.run(), float64(2*d.rimPlies), d.rimMiddle(), on(f.Rims.Plies)),
		board,
	}
	for _, c := range d.centres {
		out[0].s += (c - d.run()/2) / float64(len(d.centres))
	}
	out = append(out, piece{
		s:    out[0].s, // it joins the joists to the rims
		name: "hardware", plural: "hardware", what: "bolts, brackets, screws", count: 1, each: f.Hardware.Value, z: depth / 2,
		by: "by the boxes", rests: rests{on(f.Hardware)},
	})
	if stops := d.stopPiece(out[0]); stops.count > 0 {
		out = append(out, stops)
	}
	return out
}

// stopPiece is the stops and blocks, in their mean: like joists, and as long as their bays
// leave room.
func (d *Dock) stopPiece(joist piece) piece {
	p := piece{
		name: "stop or block", plural: "stops and blocks", z: joist.z, by: joist.by, err: joist.err,
		rests: append(append(rests(nil), joist.rests...), d.stopRests()...),
	}
	mass, least, most := 0.0, math.Inf(1), 0.0
	for _, s := range d.stops() {
		long := d.room(s.bay)
		m := joist.each * long / d.clear
		p.count++
		mass += m
		p.s += m * ((d.centres[s.bay-1]+d.centres[s.bay])/2 - d.run()/2)
		p.t += m * (s.at - d.reach()/2)
		least, most = math.Min(least, long), math.Max(most, long)
	}
	if p.count == 0 {
		return p
	}
	p.s, p.t, p.each = p.s/mass, p.t/mass, mass/p.count
	p.what = d.joist.given.Size.Value + " x " + measure.Length.Format(most, d.system())
	if most-least > slack {
		p.what = d.joist.given.Size.Value + " x " + measure.Length.Format(least, d.system()) + " to " + measure.Length.Format(most, d.system())
	}
	return p
}

// rimMiddle is the height of a rim's middle over the underside of the joists: their
// tops are flush, so that the boards lie on all of them.
func (d *Dock) rimMiddle() float64 { return d.joist.section.Depth - d.rim.section.Depth/2 }

// why returns why a piece has no weight, nil if it has one.
func (p piece) why() error {
	if err := p.rests.err(); err != nil {
		return err
	}
	return p.err
}

// boards returns the number of rows of decking and what they come to in whole
// boards, the last one ripped to fit.
func (d *Dock) boards() (rows int, covered float64) {
	w, gap := d.board.section.Depth, d.plan.Frame.Decking.Gap.Value
	if !(w > 0 && gap >= 0 && d.reach() > 0) {
		return 0, math.NaN()
	}
	n := math.Ceil((d.reach()+gap)/(w+gap) - 1e-9)
	return int(n), (d.reach() - (n-1)*gap) / w
}

const yardNames = "the yard's species"

// lifts checks each piece against what people can lift, and names the total of
// its kind.
func (d *Dock) lifts() []measure.Check {
	sys := d.system()
	var out []measure.Check
	add := func(p piece, people int) {
		c := measure.Check{
			Name: fmt.Sprintf("Weight of one %s, %d to lift it", p.name, people), Kind: measure.Mass,
			Value: p.each, Limit: float64(people) * liftOne, Rule: srcLift, Rests: dedupe(p.rests).assumptions(), Err: p.why(),
		}
		c.Notes = []string{p.what + "; " + p.by}
		if p.count != 1 && !math.IsNaN(p.count*p.each) {
			c.Notes = append(c.Notes, fmt.Sprintf("%.4g of them: %s", p.count, measure.Mass.Format(p.count*p.each, sys)))
		}
		out = append(out, c)
	}
	for _, p := range d.pieces() {
		if p.name != "hardware" {
			add(p, 2)
		}
	}
	for i := range d.plan.Floats {
		s := &d.plan.Floats[i]
		n := 0
		for _, f := range d.floats {
			if f.set == s {
				n++
			}
		}
		add(piece{name: called(s.Name, "float"), what: s.Shape.Value, count: float64(n), each: s.Mass.Value, by: "by scale", rests: rests{on(s.Mass)}}, 2)
	}
	return out
}
