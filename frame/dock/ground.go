package dock

import (
	"math"

	"example.org/floewright/frame"
	"example.org/floewright/frame/plan"
)

// A ground says what a raft stands on instead of, or beside, water: the seats of
// its feet, and more where something else holds it. empty is the raft afloat with
// nobody aboard.
type ground func(l *laden, empty *ride) []frame.Seat

// firm is the stiffness of ice, of a block or of the lake's bed under one part of a
// float, N/m: so much that a dock's weight presses it in by less than a millimetre.
const firm = 1e7

// onGround stands every float on something firm that gives up to no pull. lie says
// how high it lies under each float; nil is level.
func (d *Dock) onGround(lie func(mount int) float64) ground {
	return func(l *laden, _ *ride) []frame.Seat {
		out := make([]frame.Seat, len(l.feet))
		for i := range l.feet {
			out[i] = l.feet[i].seat
			out[i].Support = frame.OneWay(firm)
			if lie != nil {
				out[i].Level = lie(l.feet[i].mount)
			}
		}
		return out
	}
}

// pried stands the dock on level ground with one corner raised.
func (d *Dock) pried(end, side int, by float64) ground {
	level := d.onGround(nil)
	return func(l *laden, empty *ride) []frame.Seat {
		return append(level(l, empty), frame.Seat{
			Support: frame.OneWay(firm), Nodes: []int{l.corner(end, side)}, Level: by, Name: "pry bar",
		})
	}
}

// corner returns the node at a corner of the frame.
func (r *raft) corner(end, side int) int {
	if !r.dock.across {
		end, side = side, end
	}
	st := &r.strips[[2]int{0, len(r.dock.centres) - 1}[end]]
	return st.nodes[[2]int{0, len(st.nodes) - 1}[side]]
}

// held keeps the floats of one edge (the ends, then the sides) where they float with
// nobody aboard while the water drops: fast in ice, which holds them both ways, or by
// the lake's bed under them. The others float. Ice lets go of a float at the plan's
// grip; without one it holds without limit.
func (d *Dock) held(edge int, drop float64, ice bool) ground {
	out := func(m mount) float64 { // how far out toward the edge a float lies
		return [4]float64{-m.x, m.x, -m.y, m.y}[edge]
	}
	return func(l *laden, empty *ride) []frame.Seat {
		outermost := math.Inf(-1)
		for _, m := range d.floats {
			outermost = max(outermost, out(m))
		}
		seats := make([]frame.Seat, len(l.feet))
		for i := range l.feet {
			f := &l.feet[i]
			seats[i] = f.seat
			seats[i].Level = -drop
			if out(d.floats[f.mount]) < outermost-0.1 {
				continue
			}
			water, at := f.seat.Support, empty.sinks[i]
			grip := math.Inf(1)
			if g := d.plan.Site.IceGrip; plan.Has(g) {
				grip = g.Value * f.part.Body.Volume() / d.floats[f.mount].unit(d.floatSize(d.floats[f.mount].set)).Body.Volume()
			}
			seats[i].Support = func(sink float64) (force, stiffness, energy float64) {
				force, stiffness, energy = water(sink)
				// Against where it was held, with the water as high as then.
				over := sink + drop - at
				switch {
				case !ice && over <= 0:
				case ice && math.Abs(over)*firm > grip: // it slips
					force, energy = force+math.Copysign(grip, over), energy+grip*(math.Abs(over)-grip/firm/2)
				default:
					force, stiffness, energy = force+firm*over, stiffness+firm, energy+firm*over*over/2
				}
				return force, stiffness, energy
			}
		}
		return seats
	}
}

// floatVolume returns the most that a whole float may displace, which pushes on what
// holds it under: of a drum whose volume is not known the plain cylinder.
func (d *Dock) floatVolume(mount int) float64 {
	m := d.floats[mount]
	size := d.floatSize(m.set)
	if !plan.Has(m.set.Volume) {
		size.pushes = size.long
	}
	return m.unit(size).Body.Volume()
}
