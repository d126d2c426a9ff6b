package float

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// A Unit is one body under a platform. Its axes keep the platform's z; its x
// axis, a cylinder's axis, is turned by Heading.
type Unit struct {
	Body    Body
	At      r3.Vec  // its centre, in the platform's axes, m
	Heading float64 // rad from the platform's x axis toward y: 0 along, π/2 across
	Mass    float64 // of the empty body, at its centre, kg

	// Leak is loose water inside, m³, free to run to the low side. It has the
	// platform's Density; the hull is taken as thin.
	Leak float64

	// Flooded says that the body is open to the lake: it gives no buoyancy, and
	// its own mass hangs on the platform. Leak is not looked at.
	Flooded bool

	// Captive says that the body lies under the frame without being strapped to
	// it: it pushes up on the frame, at its axis, but never hangs on. Once it
	// carries no more than itself it floats by itself, and neither its mass nor
	// its volume counts in the platform's sums.
	Captive bool
}

// A Weight is a mass in kg fixed to the platform at a place in m: the frame, a
// person (at the height of his centre of gravity), snow.
type Weight struct {
	Mass float64
	At   r3.Vec
}

// A Platform is a rigid dock with the bodies under it. x runs along it, y
// across, z up; the origin is anywhere. Lumber gives no buoyancy.
type Platform struct {
	Units   []Unit
	Weights []Weight
	Corners []r3.Vec // of the deck's edge, m, in order around it; needed for freeboards only

	Density  float64 // of the water, kg/m³; required, 900 to 1300
	TiltStop float64 // rad; a dock that tilts further has capsized; 0 means 60°

	Wave *Wave // a long wave under the platform; nil is flat water
}

// defaultStop is where a dock counts as capsized (our choice: nobody stands on
// a deck at a third of it).
const defaultStop = math.Pi / 3

var (
	ownBound     = &measure.Source{Title: "bound against slips of the pen", Status: measure.OwnChoice}
	sizeRange    = measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: 1e4, Source: ownBound}
	placeRange   = measure.Range{Kind: measure.Length, Lo: -1e4, Hi: 1e4, Source: ownBound}
	massRange    = measure.Range{Kind: measure.Mass, Lo: 0, Hi: 1e9, Source: ownBound}
	headingRange = measure.Range{Kind: measure.Angle, Lo: -100, Hi: 100, Source: ownBound}
	densityRange = measure.Range{Kind: measure.Density, Lo: 900, Hi: 1300, Source: &measure.Source{
		Title: "from hot fresh water to brine", Status: measure.OwnChoice,
	}}
	stopRange = measure.Range{Kind: measure.Angle, Lo: 0, Hi: 80 * math.Pi / 180, Source: &measure.Source{
		Title: "attitudes in which a deck is still a deck", Status: measure.OwnChoice,
	}}
)

// The same bounds for the fast path.
func size(x float64) bool  { return x >= 1e-3 && x <= 1e4 }
func place(x float64) bool { return x >= -1e4 && x <= 1e4 }
func heft(x float64) bool  { return x >= 0 && x <= 1e9 }

func (p *Platform) stop() float64 {
	if p.TiltStop == 0 {
		return defaultStop
	}
	return p.TiltStop
}

// check returns the first bad input. Its fast part allocates nothing.
func (p *Platform) check() error {
	if p == nil {
		return &measure.Error{Field: "platform", Class: measure.ErrUnknown, Want: "a platform"}
	}
	for i := range p.Units {
		if u := &p.Units[i]; !u.sound() {
			return u.check("Units[" + strconv.Itoa(i) + "].")
		}
	}
	for i := range p.Weights {
		if w := &p.Weights[i]; !(heft(w.Mass) && within(w.At)) {
			field := "Weights[" + strconv.Itoa(i) + "]."
			if err := massRange.Check(field+"Mass", w.Mass); err != nil {
				return err
			}
			return checkPlace(field+"At", w.At)
		}
	}
	for i := range p.Corners {
		if !within(p.Corners[i]) {
			return checkPlace("Corners["+strconv.Itoa(i)+"]", p.Corners[i])
		}
	}
	if !(p.Density >= 900 && p.Density <= 1300) {
		return densityRange.Check("Density", p.Density)
	}
	if !(p.TiltStop >= 0 && p.TiltStop <= stopRange.Hi) {
		return stopRange.Check("TiltStop", p.TiltStop)
	}
	if p.Wave != nil {
		return p.Wave.check(p.Units)
	}
	return nil
}

func within(v r3.Vec) bool { return place(v.X) && place(v.Y) && place(v.Z) }

func checkPlace(field string, v r3.Vec) error {
	if err := placeRange.Check(field+".X", v.X); err != nil {
		return err
	}
	if err := placeRange.Check(field+".Y", v.Y); err != nil {
		return err
	}
	return placeRange.Check(field+".Z", v.Z)
}

// sound reports whether check would return nil.
func (u *Unit) sound() bool {
	var all float64
	switch b := u.Body.(type) {
	case nil:
		return false
	case Cylinder:
		if !b.sound() {
			return false
		}
		all = b.Volume()
	case Block:
		if !b.sound() {
			return false
		}
		all = b.Volume()
	default:
		all = b.Volume()
		if !(all > 0 && all <= 1e12) {
			return false
		}
	}
	return within(u.At) && u.Heading >= -100 && u.Heading <= 100 && heft(u.Mass) &&
		u.Leak >= 0 && (u.Leak < all || u.Flooded && u.Leak <= math.MaxFloat64)
}

func (u *Unit) check(field string) error {
	switch b := u.Body.(type) {
	case nil:
		return &measure.Error{Field: field + "Body", Class: measure.ErrUnknown, Want: "a body, such as a Cylinder"}
	case Cylinder:
		if err := b.check(field + "Body."); err != nil {
			return err
		}
	case Block:
		if err := b.check(field + "Body."); err != nil {
			return err
		}
	default:
		r := measure.Range{Kind: measure.Volume, Lo: 0, Hi: 1e12, OpenLo: true, Source: ownBound}
		if err := r.Check(field+"Body.Volume()", b.Volume()); err != nil {
			return err
		}
	}
	if err := checkPlace(field+"At", u.At); err != nil {
		return err
	}
	if err := headingRange.Check(field+"Heading", u.Heading); err != nil {
		return err
	}
	if err := massRange.Check(field+"Mass", u.Mass); err != nil {
		return err
	}
	if u.Flooded { // what leaked in counts nothing, but it is a number
		return (measure.Range{Kind: measure.Volume, Lo: 0, Hi: math.MaxFloat64, Source: ownBound}).Check(field+"Leak", u.Leak)
	}
	r := measure.Range{Kind: measure.Volume, Lo: 0, Hi: u.Body.Volume(), OpenHi: true, Source: &measure.Source{
		Title: "volume of the body", Status: measure.Exact,
	}}
	return r.Check(field+"Leak", u.Leak)
}
