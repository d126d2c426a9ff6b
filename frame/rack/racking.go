package rack

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Racking is how far four corners go out of square.
type Racking struct {
	// Diagonals is how much longer, m, the diagonals from the first corner to the
	// third and from the second to the fourth become.
	Diagonals [2]float64
	// Shear is how far the sides lean against each other, rad, on the mean of the
	// four corners: positive where the first diagonal becomes longer.
	Shear float64
	// Out is the difference of the diagonals, m, which a builder measures.
	Out float64
}

// String returns the racking in the builder's units and in SI.
func (r Racking) String() string {
	return fmt.Sprintf("diagonals %+.2f in and %+.2f in, out of square by %.2f in (%.1f mm); shear %.3f deg",
		tidy(r.Diagonals[0]/measure.Inch, 2), tidy(r.Diagonals[1]/measure.Inch, 2), math.Abs(r.Out)/measure.Inch,
		math.Abs(r.Out)*1e3, tidy(r.Shear*180/math.Pi, 3))
}

// Racking returns how far four nodes, given in order around, go out of square, by the
// geometry of what [Frame.Solve] found. Where a slip is not known it is an error of
// class [measure.ErrUnknown]: forces follow all the same, inches do not.
func (s *Solution) Racking(corners [4]int) (Racking, error) {
	for i, n := range corners {
		if err := index(fmt.Sprintf("corners[%d]", i), n, len(s.Places)); err != nil {
			return Racking{}, err
		}
	}
	if len(s.Unknown) > 0 || len(s.Move) != len(s.Places) {
		return Racking{}, unknown("racking", s.Unknown)
	}
	var r Racking
	var area, size float64
	line := func(i, j int) (long, turn float64, err error) {
		a, b := corners[i], corners[j]
		dx, dy := s.Places[b][0]-s.Places[a][0], s.Places[b][1]-s.Places[a][1]
		l := math.Hypot(dx, dy)
		if !(l*l > 0) {
			return 0, 0, wrong("corners", fmt.Sprintf("%d and %d in one place", a, b), "four corners apart")
		}
		u, v := s.Move[b][0]-s.Move[a][0], s.Move[b][1]-s.Move[a][1]
		size = math.Max(size, l)
		return (float64(u*dx) + float64(v*dy)) / l, (float64(v*dx) - float64(u*dy)) / (l * l), nil
	}
	for k := range 4 {
		j := (k + 1) % 4
		_, turn, err := line(k, j)
		if err != nil {
			return Racking{}, err
		}
		if k%2 == 1 {
			turn = -turn
		}
		r.Shear += turn / 2
		a, b := s.Places[corners[k]], s.Places[corners[j]]
		o := s.Places[corners[0]]
		area += (float64((a[0]-o[0])*(b[1]-o[1])) - float64((a[1]-o[1])*(b[0]-o[0]))) / 2
	}
	for k := range r.Diagonals {
		long, _, err := line(k, k+2)
		if err != nil {
			return Racking{}, err
		}
		r.Diagonals[k] = long
	}
	if !(math.Abs(area) > 1e-9*size*size) {
		return Racking{}, wrong("corners", "no area between them", "four corners in order around")
	}
	if area < 0 { // clockwise
		r.Shear = -r.Shear
	}
	r.Out = r.Diagonals[0] - r.Diagonals[1]
	if !finite(r.Shear, r.Out) {
		return Racking{}, wrong("Places and Move", "not all finite", "those that Frame.Solve found")
	}
	return r, nil
}

// Pull returns the joint with the greatest pull-out that [Frame.Solve] found; ok is
// false where none pulls.
func (s *Solution) Pull() (j Joint, ok bool) {
	for i := range s.Joints {
		if s.Joints[i].Pull.Most > j.Pull.Most*(1+1e-9) {
			j, ok = s.Joints[i], true
		}
	}
	return j, ok
}

// String returns holds, the hardest worked joint, screw and member, the largest
// movement and the warnings, a line each, with their units.
func (s *Solution) String() string {
	var b strings.Builder
	for _, r := range s.Reactions {
		fmt.Fprintln(&b, r)
	}
	if s.Imbalance.X != 0 || s.Imbalance.Y != 0 || s.Imbalance.Couple != 0 {
		fmt.Fprintf(&b, "the loads leave %v\n", s.Imbalance)
	}
	if j, ok := s.Pull(); ok {
		fmt.Fprintf(&b, "largest pull-out: %v\n", j)
	}
	across := -1
	for i := range s.Joints {
		if across < 0 || math.Abs(s.Joints[i].Across.Peak()) > math.Abs(s.Joints[across].Across.Peak())*(1+1e-9) {
			across = i
		}
	}
	if across >= 0 {
		fmt.Fprintf(&b, "largest force across: %v\n", s.Joints[across])
	}
	screw := -1
	for i := range s.Screws {
		if screw < 0 || s.Screws[i].Force.Most > s.Screws[screw].Force.Most*(1+1e-9) {
			screw = i
		}
	}
	if screw >= 0 {
		fmt.Fprintf(&b, "hardest worked: %v\n", s.Screws[screw])
	}
	most, which := Diagram{}, -1
	for i := range s.Worst {
		for _, d := range [2]Diagram{s.Worst[i].Right, s.Worst[i].Left} {
			if which < 0 || math.Abs(d.Moment) > math.Abs(most.Moment)*(1+1e-9) {
				most, which = d, i
			}
		}
	}
	if which >= 0 && 2*which+1 < len(s.Joints) {
		fmt.Fprintf(&b, "largest moment: the member of %s, %v\n", s.Joints[2*which].Place, most)
	}
	if far := s.farthest(); far >= 0 {
		fmt.Fprintf(&b, "moves most: %s, %.1f mm along x, %.1f mm along y\n", s.Names[far], tidy(1e3*s.Move[far][0], 1), tidy(1e3*s.Move[far][1], 1))
	} else if len(s.Unknown) > 0 {
		fmt.Fprintf(&b, "movement: not known (%s)\n", strings.Join(s.Unknown, ", "))
	}
	for _, n := range s.Notes {
		fmt.Fprintf(&b, "note: %s\n", n)
	}
	fmt.Fprintf(&b, "imbalance left: %.0e of the largest force\n", s.Residual)
	return b.String()
}

// farthest returns the node that moves most, -1 where none is known.
func (s *Solution) farthest() int {
	far := -1
	for i := range s.Move {
		if i < len(s.Names) && (far < 0 || math.Hypot(s.Move[i][0], s.Move[i][1]) > math.Hypot(s.Move[far][0], s.Move[far][1])*(1+1e-9)) {
			far = i
		}
	}
	return far
}
