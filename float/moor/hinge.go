package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Side is one side of a hinge: the height and the slope its pin line takes free,
// and how much a force and a moment change them.
type Side struct {
	Height float64 // m, of the middle of the pin line over the datum, free
	Give   float64 // m/N, rise of the pin line per upward force on it; 0: fixed, a pier or a wall
	Tilt   float64 // rad, free, rising away from the pins
	Lean   float64 // rad/N, by which an upward force on the pin line lowers that tilt
	Heel   float64 // rad, free, of the pin line itself: a crowd along one edge; seen alike from both sides
	Roll   float64 // rad/(N·m), heel per moment on it; 0: stiff, as a pier is
}

// Afloat returns the side of a float whose pin line stands height above the
// water, which is at level: Give from the waterplane, m² of area, m⁴ of inertia
// along, about the axis through its middle along the pins, and across, about the
// one at right angles, and arm, m from that middle to the pins:
// 1/(ρg) (1/A + arm²/I), with trim and heel by the waterplane alone, as for a broad
// dock (hydrostatics). It floats level; set Tilt and Heel where a crowd leans it. Fresh water.
// Within 1.1 units in the last place.
// Worst at (1.703, 0.8562, 25.38, 3.813), ordered as in testdata/accuracy.csv.
func Afloat(level, height, area, along, across, arm float64) (Side, error) {
	inertias := measure.Range{Lo: 1e-9, Hi: 1e9, Source: srcSense}
	if err := first(
		anyLength.Check("level", level), anyLength.Check("height of the pin line", height),
		measure.Range{Kind: measure.Area, Lo: 1e-9, Hi: 1e5, Source: srcSense}.Check("waterplane", area),
		inertias.Check("inertia of the waterplane along the pins", along),
		inertias.Check("inertia of the waterplane across the pins", across), lengthOrZero.Check("arm", arm),
	); err != nil {
		return Side{}, err
	}
	const ρg = fresh * measure.Gravity
	return Side{
		Height: level + height, Give: (1/area + arm*arm/along) / ρg, Lean: arm / along / ρg, Roll: 1 / across / ρg,
	}, nil
}

// A Hinge ties two free heights together by a line of pins.
type Hinge struct {
	Width    float64 // m between the outermost pins
	Pins     int     // at least 2
	Diameter float64 // m of a pin
	Plate    float64 // m, thickness of the middle plate each pin bears on
	Strength Gear    // what one pin with its bracket bears; zero: unknown, no answer
}

// A Joint is a hinge in one state.
type Joint struct {
	Step  float64 // m, of the pin lines before they are tied: the dock over its neighbour
	Line  float64 // m over the datum, of the pin line tied
	Lift  float64 // N, upward on the neighbour (negative: it is pushed down); the dock gets the opposite
	Bend  float64 // rad, of the hinge at rest: positive where both sides rise away from it
	Heel  float64 // rad, of the pin line tied
	Twist float64 // N·m, that heels the neighbour the way the dock heels free; the dock gets the opposite
	Pin   float64 // N, the greatest force on one pin

	Shear   float64 // Pa, in a pin cut twice: 2F/(πd²)
	Bearing float64 // Pa, of a pin on the middle plate: F/(d t)
}

// Tie pins the dock to its neighbour. pull and across are the level forces
// through the hinge, N, and turn the moment about z, N·m, which the outermost
// pins carry as a couple, as they do the twist between two sides that heel
// differently (statics); [Mooring.Forces] gives them. The neighbour and its moorings must
// carry all of it on to ground ([Mooring.Passed]). Tied in every state that comes (at
// launch, empty, crowded, at low and high water), the greatest and least Bend,
// each widened by [Sea.Swing], are the motion that the hinge must allow.
//
// Two fixed sides with a step, or two stiff ones with a heel between them, cannot
// be pinned: an error.
func (h Hinge) Tie(dock, neighbour Side, pull, across, turn float64) (Joint, error) {
	gives := measure.Range{Lo: 0, Hi: 1, Source: srcSense}
	tilts := measure.Range{Kind: measure.Angle, Lo: -math.Pi / 2, Hi: math.Pi / 2, Source: srcSense}
	if err := first(
		positiveLength.Check("width of the hinge", h.Width), measure.Range{Lo: 2, Hi: 100, Source: srcSense}.Check("pins", float64(h.Pins)),
		positiveLength.Check("diameter of a pin", h.Diameter), positiveLength.Check("thickness of the plate", h.Plate),
		anyLength.Check("pin line of the dock", dock.Height), anyLength.Check("pin line of the neighbour", neighbour.Height),
		gives.Check("give of the dock", dock.Give), gives.Check("give of the neighbour", neighbour.Give),
		tilts.Check("tilt of the dock", dock.Tilt), tilts.Check("tilt of the neighbour", neighbour.Tilt),
		gives.Check("lean of the dock", dock.Lean), gives.Check("lean of the neighbour", neighbour.Lean),
		tilts.Check("heel of the dock", dock.Heel), tilts.Check("heel of the neighbour", neighbour.Heel),
		gives.Check("roll of the dock", dock.Roll), gives.Check("roll of the neighbour", neighbour.Roll),
		anyForce.Check("pull", pull), anyForce.Check("force across", across), anyMoment.Check("turn", turn),
	); err != nil {
		return Joint{}, err
	}
	j := Joint{Step: dock.Height - neighbour.Height, Line: neighbour.Height}
	give := dock.Give + neighbour.Give
	switch {
	case give > 0:
		j.Lift = j.Step / give
		j.Line = neighbour.Height + j.Lift*neighbour.Give
	case j.Step != 0:
		return Joint{}, &measure.Error{
			Field: "step of the pin lines", Kind: measure.Length, Value: j.Step, Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Length, Source: srcStatics}, Why: "both sides are fixed",
		}
	}
	j.Heel = neighbour.Heel
	roll := dock.Roll + neighbour.Roll
	switch heel := dock.Heel - neighbour.Heel; {
	case roll > 0:
		j.Twist = heel / roll
		j.Heel += j.Twist * neighbour.Roll
	case heel != 0:
		return Joint{}, &measure.Error{
			Field: "heel between the pin lines", Kind: measure.Angle, Value: heel, Class: measure.ErrRange,
			Range: measure.Range{Kind: measure.Angle, Source: srcStatics}, Why: "neither side gives way to a moment",
		}
	}
	// The dock is pushed down at its pins, the neighbour up.
	j.Bend = dock.Tilt + j.Lift*dock.Lean + neighbour.Tilt - j.Lift*neighbour.Lean
	n := float64(h.Pins)
	along := math.Abs(pull)/n + math.Abs(turn)/h.Width
	up := math.Abs(j.Lift)/n + math.Abs(j.Twist)/h.Width
	j.Pin = math.Sqrt(along*along + across*across/n/n + up*up)
	j.Shear = 2 * j.Pin / (math.Pi * h.Diameter * h.Diameter)
	j.Bearing = j.Pin / (h.Diameter * h.Plate)
	return j, nil
}

// Check compares the greatest force on a pin of a joint with what one pin and
// its bracket bear, as [Gear.Check] does.
func (h Hinge) Check(j Joint) (measure.Check, error) {
	c, err := h.Strength.Check(j.Pin)
	if err != nil {
		return measure.Check{}, err
	}
	c.Name = "hinge pin: " + c.Name
	return c, nil
}

// Swing returns the angle, rad, by which the two sides of a hinge turn against each
// other at most in waves in water of the given depth, m: 2πH/L by linear theory. Each
// may follow the steepest slope of the wave, one up, one down. It bounds small floats;
// long ones bridge the waves. Within 2.6 units in the last place.
// Worst at (1.805, 0.4904, 4.544), ordered as in testdata/accuracy.csv.
func (s Sea) Swing(depth float64) (float64, error) {
	if err := positiveLength.Check("wave height", s.Height); err != nil {
		return 0, err
	}
	l, err := s.Length(depth)
	if err != nil {
		return 0, err
	}
	return 2 * math.Pi * s.Height / l, nil
}
