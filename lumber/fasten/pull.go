package fasten

import (
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// Pull returns what the whole joint carries along its fasteners, main piece and
// side piece pulled apart, for loads of a duration. Each way to fail is a
// capacity of its own; the least of them governs:
//
//	screws and nails  withdrawal from the main piece, W' = n W p CD CM Ct Ceg Ctn
//	                  head pull-through of a wooden side piece (screws, nails)
//	lag screws        the washer on the wooden side piece
//	bolts             the washers on wood, Fc⊥' and the washer's area
//	bolts and lags    the steel, 20 ksi on the root
//
// Boards that a drum presses up from below pull their screws so. Nails and wood
// screws in end grain count nothing. NDS 11.3, 12.2.
func (j Joint) Pull(t lumber.Duration) ([]Capacity, error) {
	g, err := j.sit()
	if err != nil {
		return nil, err
	}
	cd, err := duration(t)
	if err != nil {
		return nil, err
	}
	ct, err := j.temperature()
	if err != nil {
		return nil, err
	}
	var out []Capacity
	if g.s.kind != Bolt {
		out = append(out, j.withdrawal(g, cd, ct))
	}
	if j.Toe {
		return out, nil // the slant, not the head, holds the side piece
	}
	switch g.s.kind {
	case Bolt:
		for _, p := range j.pieces() {
			if p.Material == Wood && !(j.Double && p.name == "main") {
				out = append(out, j.underWasher(g, p, t))
			}
		}
	case LagScrew:
		if j.Side.Material == Wood {
			out = append(out, j.underWasher(g, named{j.Side, "side", j.Double}, t))
		}
	default:
		if j.Side.Material == Wood {
			out = append(out, j.throughHead(g, cd, ct))
		}
	}
	if g.s.threaded && g.s.kind != WoodScrew {
		out = append(out, j.steelTension(g))
	}
	return out, nil
}

// withdrawal returns W'.
func (j Joint) withdrawal(g grip, cd, ct measure.Factor) Capacity {
	holder := j.Main
	if j.Double {
		holder = j.Side
	}
	w, rule, err := g.s.withdrawal(holder.Grade.G.SI())
	if err != nil {
		return refused("withdrawal", rule, err)
	}
	reach := g.threadIn()
	if j.Toe {
		reach = g.depth
	}
	c := Capacity{
		Name: "withdrawal", Fasteners: j.count(), Rule: rule, Rests: j.rests(),
		Reference: w * reach * measure.PoundForce, Notes: []string{"thread or shank in the wood that holds it: " + measure.FeetInches(reach*measure.Inch, 16)},
	}
	c.Value = c.Reference * float64(c.Fasteners)
	cm := j.out(g.s.kind)
	if j.Toe && g.s.kind.nail() {
		cm = measure.Factor{Symbol: "CM", Name: "wet service", Value: 1, Why: "toe-nailed, any moisture", Source: srcCtn}
	}
	c.factor(cd)
	c.factor(cm)
	c.factor(ct)
	if holder.EndGrain {
		f := measure.Factor{Symbol: "Ceg", Name: "end grain", Value: 0.75, Why: "lag screw in end grain", Source: srcCeg}
		if g.s.kind != LagScrew {
			f.Value, f.Why = 0, "nails and wood screws hold nothing in end grain"
		}
		c.factor(f)
	}
	if j.Toe && g.s.kind.nail() {
		c.factor(measure.Factor{Symbol: "Ctn", Name: "toe-nail", Value: 0.67, Why: "driven at a slant", Source: srcCtn})
	}
	if g.s.kind == Nail && cm.Value < 1 {
		c.Notes = append(c.Notes, "smooth nails are no fastener to pull on a dock: use screws, ring shanks or bolts")
	}
	return c
}

// threadIn returns how much thread, or shank of a nail, lies in the piece that
// holds the end, inches; a lag screw's point does not count.
func (g grip) threadIn() float64 {
	end := g.s.length
	if g.s.kind == LagScrew {
		end -= g.s.tip
	}
	return math.Max(0, math.Min(end, g.to)-math.Max(g.s.length-g.s.thread, g.from))
}

// throughHead returns the head's pull-through of the side piece.
func (j Joint) throughHead(g grip, cd, ct measure.Factor) Capacity {
	const name = "head pull-through"
	if g.s.head == 0 {
		return refused(name, srcHead, unknown("Head", "the diameter of the fastener's head"))
	}
	h := g.s.head * measure.Inch
	w, err := PullThrough(h, j.Side.Thickness, j.Side.Grade.G.SI())
	if err != nil {
		return refused(name, srcHead, err)
	}
	c := Capacity{Name: name, Reference: w, Fasteners: j.count(), Value: w * float64(j.count()), Rule: srcHead, Rests: j.rests()}
	c.factor(cd)
	c.factor(j.head())
	c.factor(ct)
	return c
}

// underWasher returns the bearing of a washer on wood: Fc⊥' on its area less the
// hole, without the bearing area factor. It takes no duration.
func (j Joint) underWasher(g grip, p named, t lumber.Duration) Capacity {
	name := "washer on the " + p.name + " piece"
	if p.EndGrain {
		return refused(name, srcWasher, &measure.Error{Field: name, Why: "a washer on end grain is not covered", Class: measure.ErrNotComputed})
	}
	area, err := j.washerArea(g)
	if err != nil {
		return refused(name, srcWasher, err)
	}
	wood, err := j.member(p.Piece).Adjusted(t)
	if err != nil {
		return refused(name, srcWasher, err)
	}
	if wood.FcPerp.Err != nil {
		return refused(name, srcWasher, wood.FcPerp.Err)
	}
	c := Capacity{
		Name: name, Fasteners: j.count(), Rule: srcWasher, Rests: j.rests(), Factors: wood.FcPerp.Factors,
		Reference: wood.FcPerp.Reference.SI() * area,
	}
	c.Value = wood.FcPerp.Value * area * float64(c.Fasteners)
	return c
}

// member returns a wooden piece as package lumber knows it, standing on edge. A
// piece whose width is not known is taken as square.
func (j Joint) member(p Piece) lumber.Member {
	w := p.Width
	if w == 0 {
		w = p.Thickness
	}
	return lumber.Member{
		Section: lumber.Section{Width: math.Min(w, p.Thickness), Depth: math.Max(w, p.Thickness)},
		Grade:   p.Grade, Dry: j.Dry, Smooth: p.Smooth, Temperature: j.Temperature,
	}
}

// washerArea returns the area of a washer on wood, m²: a round cut washer of the
// bolt's size, or a plate of one's own taken as round.
func (j Joint) washerArea(g grip) (float64, error) {
	hole, err := j.hole(g.s.d)
	if err != nil {
		return 0, err
	}
	od := j.Washer
	if od == 0 {
		t, err := loaded()
		if err != nil {
			return 0, err
		}
		p, err := t.part(g.s.d)
		if err != nil {
			return 0, err
		}
		od = p.washer * measure.Inch
	}
	if !(od > hole) {
		return 0, measure.Range{Kind: measure.Length, Lo: hole, OpenLo: true, Hi: 0.3}.Check("Washer", od)
	}
	return math.Pi / 4 * (od*od - hole*hole), nil
}

// hole returns the hole of a bolt, m: as given, else 1/16 in over it.
func (j Joint) hole(d float64) (float64, error) {
	if j.Hole == 0 {
		return (d + 1.0/16) * measure.Inch, nil
	}
	r := measure.Range{Kind: measure.Length, Lo: (d - hair) * measure.Inch, Hi: 0.1}
	return j.Hole, r.Check("Hole", j.Hole)
}

// steelTension returns the tension of the fastener itself.
func (j Joint) steelTension(g grip) Capacity {
	const allowed = 20000 // psi
	w := allowed * math.Pi / 4 * g.s.root * g.s.root * measure.PoundForce
	return Capacity{Name: "steel in tension", Reference: w, Fasteners: j.count(), Value: w * float64(j.count()), Rule: srcSteel}
}
