package float

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// A State is a platform at rest. It shares the platform's Units and Corners,
// whose elements must not be changed while the state is in use. The zero State
// is of no platform: its methods answer zero, or an error where they can.
type State struct {
	Heel     float64 // rad; positive: the +y side is down
	Trim     float64 // rad; positive: the +x end is down
	Level    float64 // height of the platform's origin above the water, m
	Residual float64 // a ratio: imbalance over weight (moments over weight and lever)

	Up       r3.Vec  // the vertical in the platform's axes, dimensionless
	Mass     float64 // of all that the strapped and pressed units carry and weigh, kg
	Buoyancy r3.Vec  // centre of buoyancy, m
	Gravity  r3.Vec  // centre of gravity with loose water, m

	// GM is the metacentric matrix at constant displacement, m: the righting
	// lever per radian of turns about the heel axis (first) and the trim axis.
	// Its diagonal holds the metacentric heights for heel and for trim.
	GM [2][2]float64

	up      r3.Vec  // from a wave's mean slope (tx, ty); Up on level water
	tx, ty  float64 //
	units   []Unit
	corners []r3.Vec
	density float64
	wave    Wave // of no length: level water
}

// A UnitState is one unit of a platform at rest.
type UnitState struct {
	Volume float64 // displaced, m³
	Share  float64 // displaced, a share of its own volume
	Draft  float64 // of its lowest point, m; negative where it hangs clear
	Push   float64 // upward on the frame, N; negative where it hangs on
	Free   bool    // captive and floating by itself
}

// Tilt returns the angle between the deck and the water in rad, exact.
func (s State) Tilt() float64 { return math.Atan2(math.Hypot(s.Up.X, s.Up.Y), s.Up.Z) }

// Height returns the height above the water, in m, of a point in the platform's
// axes, in m, by the geometry of the rest position; over a wave, above its surface there.
func (s State) Height(at r3.Vec) float64 {
	return s.up.X*at.X + s.up.Y*at.Y + s.up.Z*at.Z + s.Level + s.tx*at.X + s.ty*at.Y - s.wave.level(at)
}

// Freeboards returns the heights above the water of the platform's Corners, m, as
// [State.Height] has them.
func (s State) Freeboards() []float64 {
	if len(s.corners) == 0 {
		return nil
	}
	out := make([]float64, len(s.corners))
	for i, c := range s.corners {
		out[i] = s.Height(c)
	}
	return out
}

// Lowest returns the lowest place of the deck's edge, m, and its height above the
// water, m, as [State.Height] has it. Without Corners there is no edge and an error.
func (s State) Lowest() (at r3.Vec, height float64, err error) {
	if len(s.corners) == 0 {
		return r3.Vec{}, 0, errEdge
	}
	height = math.Inf(1)
	see := func(c r3.Vec) {
		if h := s.Height(c); h < height {
			at, height = c, h
		}
	}
	for i, c := range s.corners {
		see(c)
		if s.wave.Height > 0 { // the crest may lie between corners
			const pieces = 16
			next := s.corners[(i+1)%len(s.corners)]
			for k := 1; k < pieces; k++ {
				see(r3.Add(c, r3.Scale(float64(k)/pieces, r3.Sub(next, c))))
			}
		}
	}
	return at, height, nil
}

var (
	errEdge  = &measure.Error{Field: "Corners", Class: measure.ErrUnknown, Want: "the corners of the deck's edge"}
	errState = &measure.Error{Field: "State", Class: measure.ErrUnknown, Want: "a state that Settle returned"}
)

// A Metacentre is a principal metacentric height and its axis.
type Metacentre struct {
	Height float64 // m; negative is unstable
	Axis   float64 // rad from the platform's x toward y, in the waterplane, over (-π/2, π/2]
}

// Principal returns the smaller and the larger principal metacentric height
// with the axes about which they turn: the principal values of GM, exact.
func (s State) Principal() [2]Metacentre {
	// Toward e1 and e2; halved twice, so that sums of the largest numbers stay numbers.
	k := stiffness{s.GM[1][1] / 4, s.GM[0][1] / 4, s.GM[0][0] / 4}
	lo, hi, c, sn := k.principal()
	lo, hi = 4*lo, 4*hi
	// n turned toward (c, sn) is a turn about the direction at right angles.
	axis := func(x, y float64) float64 {
		a := math.Atan2(y, x)
		if a > math.Pi/2 {
			a -= math.Pi
		}
		if a <= -math.Pi/2 {
			a += math.Pi
		}
		return a
	}
	return [2]Metacentre{{lo, axis(sn, -c)}, {hi, axis(c, sn)}}
}

// Unit returns the state of Units[i], by the hydrostatics of [Platform.Settle].
func (s State) Unit(i int) (UnitState, error) {
	if !(s.density > 0) {
		return UnitState{}, errState
	}
	if i < 0 || i >= len(s.units) {
		return UnitState{}, &measure.Error{
			Field: "unit", Text: strconv.Itoa(i), Class: measure.ErrName,
			Want: "a number from 0, less than " + strconv.Itoa(len(s.units)),
		}
	}
	u := &s.units[i]
	if !u.sound() || !place(s.Level) { // changed since
		return UnitState{}, errState
	}
	up := s.up
	h := up.X*u.At.X + up.Y*u.At.Y + up.Z*u.At.Z + s.Level
	if s.wave.Length > 0 {
		l, tx, ty := s.wave.at(u.At.X, u.At.Y)
		h += s.tx*u.At.X + s.ty*u.At.Y - l
		up.X, up.Y = up.X+s.tx-tx, up.Y+s.ty-ty
	}
	sin, cos := math.Sincos(u.Heading)
	own := r3.Vec{X: up.X*cos + up.Y*sin, Y: up.Y*cos - up.X*sin, Z: up.Z}
	all := u.Body.Volume()
	w := u.Body.Wet(h, own)
	out := UnitState{Volume: w.Volume, Share: w.Volume / all, Draft: draft(u.Body, h, own)}
	if u.Flooded {
		out.Volume, out.Share, out.Push = 0, 0, -measure.Gravity*u.Mass
		if u.Captive {
			out.Push, out.Free = 0, true
		}
		return out, nil
	}
	carried := u.Mass + s.density*u.Leak
	out.Push = measure.Gravity * (s.density*w.Volume - carried)
	if u.Captive && !(out.Push > 0) {
		out.Push, out.Free = 0, true
		out.Volume = min(carried/s.density, all)
		out.Share = out.Volume / all
		if carried >= s.density*all {
			return out, &Failure{Class: ErrSinks, Short: carried - s.density*all}
		}
		out.Draft = afloat(u.Body, out.Volume)
	}
	return out, nil
}

// Draft returns the draft of the deepest unit, m: how far the lowest point of any of
// Units lies under still water, or under the surface of a wave there; negative where all hang
// clear. A full unit counts, a captive one as deep as it floats; frame, ladders and keels do
// not. It is exact geometry of the rest position, as [State.Unit] has it, whose errors it
// gives; a state without units is an error.
func (s State) Draft() (float64, error) {
	if len(s.units) == 0 {
		return 0, errState
	}
	deepest := math.Inf(-1)
	for i := range s.units {
		u, err := s.Unit(i)
		if err != nil {
			return 0, err
		}
		deepest = max(deepest, u.Draft)
	}
	return deepest, nil
}

// draft returns the depth of a body's lowest point.
func draft(b Body, h float64, up r3.Vec) float64 {
	n := math.Sqrt(up.X*up.X + up.Y*up.Y + up.Z*up.Z)
	h, up = h/n, r3.Scale(1/n, up)
	switch b := b.(type) {
	case Cylinder:
		return math.Hypot(up.Y, up.Z)*b.Diameter/2 + math.Abs(up.X)*b.Length/2 - h
	case Block:
		return (math.Abs(up.X)*b.Length+math.Abs(up.Y)*b.Width+math.Abs(up.Z)*b.Height)/2 - h
	}
	// The level at which it comes clear of the water.
	step := math.Cbrt(b.Volume())
	lo, hi := -step, step
	for i := 0; i < 60 && !(b.Wet(lo, up).Volume > 0); i++ {
		lo *= 2
	}
	for i := 0; i < 60 && b.Wet(hi, up).Volume > 0; i++ {
		hi *= 2
	}
	for range 60 {
		if mid := lo + (hi-lo)/2; b.Wet(mid, up).Volume > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi - h
}

// afloat returns the draft of a body that floats by itself on a level keel.
func afloat(b Body, volume float64) float64 {
	switch b := b.(type) {
	case Cylinder:
		d, err := b.Draft(volume)
		if err == nil {
			return d
		}
	case Block:
		return volume / (b.Length * b.Width)
	}
	up := r3.Vec{Z: 1}
	step := math.Cbrt(b.Volume())
	lo, hi := -step, step
	for i := 0; i < 60 && b.Wet(lo, up).Volume < volume; i++ {
		lo *= 2
	}
	for i := 0; i < 60 && b.Wet(hi, up).Volume > volume; i++ {
		hi *= 2
	}
	for range 60 {
		if mid := lo + (hi-lo)/2; b.Wet(mid, up).Volume > volume {
			lo = mid
		} else {
			hi = mid
		}
	}
	return draft(b, lo, up)
}
