package ice

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// onePlace is how near to each other in m two holes tell of one place alone, and
// by how much what stands there may reach past the line between two corners:
// tapes and paces are no better, our choice.
const onePlace = 0.5

// apart is the most between one hole and the next in m: drill at least every 100
// ft along the way (see [Cautions]).
const apart = 100 * measure.Foot

// A point is a place on the ice in m.
type point [2]float64

func (p point) from(q point) float64 { return math.Hypot(p[0]-q[0], p[1]-q[1]) }

// at returns the place of a hole.
func (h Hole) at() point { return point{h.X, h.Y} }

// sited reports whether the place of the hole is known.
func (h Hole) sited() bool { return !math.IsNaN(h.X + h.Y) }

// holesAt returns the places, where they are known, of the holes of some spots.
func (s Sheet) holesAt(spots ...Spot) []point {
	var out []point
	for _, h := range s.Holes {
		for _, spot := range spots {
			if h.spot() == spot && h.sited() {
				out = append(out, h.at())
			}
		}
	}
	return out
}

// placed bars a survey whose holes leave out a part of pad or walk: by their
// names, and by where they are. Places that coincide count once.
func (v *survey) placed(s Sheet) {
	var n [AtDock + 1]int
	for _, h := range s.Holes {
		n[h.spot()]++
	}
	all := n[PadCorner] >= 4 && n[PadMiddle] >= 1 && n[Walk] >= 1
	if !all {
		v.reasons = append(v.reasons, unknown("holes", fmt.Sprintf("the four corners and the middle of the pad and the walk from the shore must be drilled: %d corners, %d in the middle, %d on the walk are named", n[PadCorner], n[PadMiddle], n[Walk])))
	} else if why := s.misplaced(); why != nil {
		all = false
		v.reasons = append(v.reasons, why)
	}
	v.rest("places of the holes", "corners and middle of the pad, the walk", all)
}

// misplaced returns why the places of the holes are not those of a pad and of
// the way to it, nil where they are.
func (s Sheet) misplaced() error {
	walks := s.holesAt(Walk)
	for i, h := range s.Holes {
		spot := h.spot()
		if !h.sited() && (spot == PadCorner || spot == PadMiddle || spot == Walk && len(walks) == 0) {
			return &measure.Error{
				Field: fmt.Sprintf("hole %d (%s), place", i+1, h.label(i)), Class: measure.ErrUnknown,
				Why: "it may be where another hole is, or off the pad", Want: "where it is, in the axes of the load",
			}
		}
	}
	corners := s.holesAt(PadCorner)
	ring := padRing(corners)
	if len(ring) < 4 {
		return unknown("holes", "the corners of the pad must be four different places, each standing out by 0.5 m (20 in) and more")
	}
	var middles []point
	for _, p := range s.holesAt(PadMiddle) {
		if depth(ring, p) >= 0 && nearest(p, corners) >= onePlace {
			middles = append(middles, p)
		}
	}
	if len(middles) == 0 {
		return unknown("holes", "the middle of the pad must lie between its corners, 0.5 m (20 in) and more from each")
	}
	for _, p := range corners {
		if nearest(p, middles) > apart {
			return unknown("holes", "a corner of the pad lies more than 30 m (100 ft) from its middle: "+caution("drill at least"))
		}
	}
	for _, p := range walks {
		if nearest(p, append(corners, middles...)) >= onePlace && depth(ring, p) <= onePlace && away(ring, p) <= apart {
			return nil
		}
	}
	return unknown("holes", "one on the walk from the shore must lie outside the pad, and within 30 m (100 ft) of it: "+caution("drill at least"))
}

// outside lists why a load does not stand on the drilled pad: it reaches outside
// the corners by more than half a metre, it lies far from every hole, or the
// corners are none.
func (s Sheet) outside(loads []Patch) []error {
	if len(loads) == 0 {
		return nil
	}
	ring, holes := padRing(s.holesAt(PadCorner)), s.holesAt(PadCorner, PadMiddle)
	if len(ring) < 4 {
		return []error{unknown("holes", "where the four corners of the pad lie must be given, in the axes of the load")}
	}
	for i, load := range loads {
		for _, p := range load.outline() {
			if !(depth(ring, p) >= -onePlace) || !(nearest(p, holes) <= apart) {
				return []error{unknown("holes", fmt.Sprintf("load %d stands outside the drilled pad: its corners must surround it, but for 0.5 m (20 in)", i+1))}
			}
		}
	}
	return nil
}

// outline returns the corners of a patch, of the square about it if it is round.
func (c Patch) outline() []point {
	a, b, turn := c.A/2, c.B/2, c.Turn
	if c.B == 0 {
		a, b, turn = c.A, c.A, 0
	}
	sin, cos := math.Sincos(turn)
	var out []point
	for _, o := range []point{{-a, -b}, {a, -b}, {a, b}, {-a, b}} {
		out = append(out, point{c.X + o[0]*cos - o[1]*sin, c.Y + o[0]*sin + o[1]*cos})
	}
	return out
}

// padRing returns those places that are corners of all of them, in order,
// counter-clockwise: of the convex hull those that stand out from the line
// between their neighbours by more than what is one place.
func padRing(points []point) []point {
	ring := hull(points)
	for len(ring) > 2 {
		least, at := math.Inf(1), 0
		for k, p := range ring {
			before, after := ring[(k+len(ring)-1)%len(ring)], ring[(k+1)%len(ring)]
			if out := -side(before, after, p); out < least {
				least, at = out, k
			}
		}
		if least >= onePlace {
			return ring
		}
		ring = append(ring[:at:at], ring[at+1:]...)
	}
	return nil
}

// side returns how far p lies to the left of the line from a to b in m, and how
// far from a where the two are one.
func side(a, b, p point) float64 {
	d := b.from(a)
	if d == 0 {
		return -p.from(a)
	}
	return ((b[0]-a[0])*(p[1]-a[1]) - (b[1]-a[1])*(p[0]-a[0])) / d
}

// depth returns how far a place lies inside a ring in m, negative outside.
func depth(ring []point, p point) float64 {
	least := math.Inf(1)
	for k, a := range ring {
		least = math.Min(least, side(a, ring[(k+1)%len(ring)], p))
	}
	return least
}

// away returns how far a place lies from a ring in m, 0 inside.
func away(ring []point, p point) float64 {
	if depth(ring, p) >= 0 {
		return 0
	}
	least := math.Inf(1)
	for k, a := range ring {
		b := ring[(k+1)%len(ring)]
		d := b.from(a)
		along := ((p[0]-a[0])*(b[0]-a[0]) + (p[1]-a[1])*(b[1]-a[1])) / d
		t := math.Min(math.Max(along/d, 0), 1)
		least = math.Min(least, p.from(point{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])}))
	}
	return least
}

// nearest returns how far the nearest of some places lies in m, +Inf for none.
func nearest(p point, of []point) float64 {
	least := math.Inf(1)
	for _, q := range of {
		least = math.Min(least, p.from(q))
	}
	return least
}

// hull returns the corners of the convex hull in order, counter-clockwise.
func hull(points []point) []point {
	if len(points) < 3 {
		return nil
	}
	start := points[0]
	for _, p := range points {
		if p[0] < start[0] || p[0] == start[0] && p[1] < start[1] {
			start = p
		}
	}
	var ring []point
	for at := start; len(ring) <= len(points); {
		ring = append(ring, at)
		next := at
		for _, p := range points {
			turn := (next[0]-at[0])*(p[1]-at[1]) - (next[1]-at[1])*(p[0]-at[0])
			far := p.from(at) > next.from(at)
			if p != at && (next == at || turn < 0 || turn == 0 && far) {
				next = p
			}
		}
		if next == start || next == at {
			return ring
		}
		at = next
	}
	return ring
}
