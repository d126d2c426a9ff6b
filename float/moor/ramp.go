package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// slopes are the limits of a ramp by name, level over rise.
var slopes = []measure.Factor{
	{Symbol: "slope", Name: "accessible", Value: 1. / 12, Why: "1 in 12; a gangway need not exceed 80 ft, nor 30 ft where there are fewer than 25 slips", Source: src("2010 ADA Standards", "", "405.2 and 1003.2.1", measure.Read)},
	{Symbol: "slope", Name: "common", Value: 1. / 3, Why: "1 in 3 at lowest water", Source: src("Marina practice", "", "", measure.Memory)},
	{Symbol: "slope", Name: "navy", Value: 1 / 1.5, Why: "1.5 level to 1 up at the worst condition", Source: src(ufcPiers, "28 July 2005", "7-4.1", measure.Read)},
}

// A Ramp is a gangway hinged on the shore, its free end on the dock's deck.
type Ramp struct {
	Length float64 // m
	Width  float64 // m
	Mass   float64 // kg, spread evenly
	Shore  float64 // m, of the shore hinge over the datum
	Deck   float64 // m, of the deck over the water where the ramp lands

	// Limit names the slope limit: "accessible" (1:12), "common" (1:3), "navy"
	// (1:1.5); "" is the common one.
	Limit string
}

func (r Ramp) check() error {
	return first(
		positiveLength.Check("length of the ramp", r.Length), positiveLength.Check("width of the ramp", r.Width),
		massOrZero.Check("mass of the ramp", r.Mass), anyLength.Check("shore hinge", r.Shore), anyLength.Check("deck", r.Deck),
	)
}

// Angle returns the ramp's fall towards the dock with the water at a level, m
// over the datum, rad; negative where it climbs.
func (r Ramp) Angle(level float64) (float64, error) {
	if err := first(r.check(), anyLength.Check("level", level)); err != nil {
		return 0, err
	}
	s := (r.Shore - level - r.Deck) / r.Length
	if err := (measure.Range{Lo: -1, Hi: 1, OpenLo: true, OpenHi: true, Source: srcSense}).Check("drop over length of the ramp", s); err != nil {
		return 0, err
	}
	return math.Asin(s), nil
}

// Slide returns how far the free end slides on the deck between two levels, m:
// what its roller and track must allow.
func (r Ramp) Slide(low, high float64) (float64, error) {
	a, err1 := r.Angle(low)
	b, err2 := r.Angle(high)
	if err := first(err1, err2); err != nil {
		return 0, err
	}
	near, far := math.Cos(a), math.Cos(b)
	if a*b < 0 { // level in between: out and back
		return r.Length * (1 - math.Min(near, far)), nil
	}
	return r.Length * math.Abs(near-far), nil
}

// Check compares the steepest slope between two levels with the limit.
func (r Ramp) Check(low, high float64) (measure.Check, error) {
	name := r.Limit
	if name == "" {
		name = "common"
	}
	for _, s := range slopes {
		if s.Name != name {
			continue
		}
		a, err1 := r.Angle(low)
		b, err2 := r.Angle(high)
		if err := first(err1, err2); err != nil {
			return measure.Check{}, err
		}
		return measure.Check{
			Name: "slope of the ramp", Kind: measure.Ratio, Value: math.Max(math.Abs(math.Tan(a)), math.Abs(math.Tan(b))), Limit: s.Value,
			Rule: s.Source, Notes: []string{s.Why},
		}, nil
	}
	return measure.Check{}, &measure.Error{Field: "slope limit", Text: r.Limit, Class: measure.ErrName, Want: "accessible, common or navy"}
}

// Reaction returns the weight, N, that the free end lays on the dock under a
// live load, Pa, all over and a point load, N, at its landing: half of the even
// load and all of the point. Divided by measure.Gravity it is a weight for the
// float. UFC 4-152-01, 7-4.4: 25 psf for the float, 50 psf for the ramp.
func (r Ramp) Reaction(live, point float64) (float64, error) {
	if err := first(r.check(), pressureOrZero.Check("live load", live), forceOrZero.Check("point load", point)); err != nil {
		return 0, err
	}
	return (live*r.Length*r.Width+r.Mass*measure.Gravity)/2 + point, nil
}

// Moment returns the greatest bending moment of the ramp, N·m, under a live
// load, Pa, all over, lying level: q L²/8.
func (r Ramp) Moment(live float64) (float64, error) {
	if err := first(r.check(), pressureOrZero.Check("live load", live)); err != nil {
		return 0, err
	}
	return (live*r.Width + r.Mass*measure.Gravity/r.Length) * r.Length * r.Length / 8, nil
}

var pressureOrZero = measure.Range{Kind: measure.Pressure, Lo: 0, Hi: 1e6, Source: srcSense}

// A Haul pulls the dock out of the water up a slope.
type Haul struct {
	Mass     float64 // kg, wet: soaked wood, water in drums, weed
	Slope    float64 // rad of the skids
	Friction float64 // of skids, or what rollers leave; 0: 0.5, dry wood on wood
	Parts    int     // of a tackle between winch and dock; 0: 1
	Line     Gear    // zero: unknown, no answer
	Anchor   Ground  // of the winch or block; nil: unknown, no answer
}

// skid is wood on wood, dry, the higher of the usual values; greased skids 0.2,
// rollers 0.05 (from memory).
const skid = 0.5

// Pull returns the pull, N, that moves the dock up the slope:
// m g (sin β + μ cos β).
func (h Haul) Pull() (float64, error) {
	if h.Friction == 0 {
		h.Friction = skid
	}
	if err := first(
		positiveMass.Check("wet mass", h.Mass), steepness.Check("slope", h.Slope),
		measure.Range{Lo: 0, Hi: 2, Source: srcSense}.Check("friction of the skids", h.Friction),
	); err != nil {
		return 0, err
	}
	return h.Mass * measure.Gravity * (math.Sin(h.Slope) + h.Friction*math.Cos(h.Slope)), nil
}

// Checks follow the pull to ground: the line, which carries its share of the
// parts, and the anchor, which carries all of it and that share again.
func (h Haul) Checks() ([]measure.Check, error) {
	pull, err := h.Pull()
	if err != nil {
		return nil, err
	}
	if h.Parts == 0 {
		h.Parts = 1
	}
	if err := (measure.Range{Lo: 1, Hi: 12, Source: srcSense}).Check("parts of the tackle", float64(h.Parts)); err != nil {
		return nil, err
	}
	share := pull / float64(h.Parts)
	line, err := h.Line.Check(share)
	if err != nil {
		return nil, err
	}
	line.Name = "haul-out line: " + line.Name
	line.Notes = append(line.Notes, "nobody stands in the bight or in line with a loaded rope, nor below the dock on the slope")
	load := pull
	if h.Parts > 1 {
		load += share
	}
	if h.Anchor == nil {
		return []measure.Check{line, measure.Refuse("haul-out anchor", unknown("anchor of the haul-out", "its holding"))}, nil
	}
	anchor, err := h.Anchor.Check(load, 0)
	if err != nil {
		return nil, err
	}
	anchor.Name = "haul-out anchor: " + anchor.Name
	return []measure.Check{line, anchor}, nil
}

// A Cleat is a fitting bolted to the deck's edge.
type Cleat struct {
	Height float64 // m, of the line over the base
	Base   float64 // m between its bolts, along the pull
	Bolts  int     // in all; half of them hold it down
}

// On returns what each bolt takes, N, plain numbers for the joint's check:
// tension from the upward part of the line and from its level part's tilting
// the base, and shear.
func (c Cleat) On(pull, up float64) (tension, shear float64, err error) {
	if err := first(
		lengthOrZero.Check("height of the line on the cleat", c.Height), positiveLength.Check("base of the cleat", c.Base),
		measure.Range{Lo: 2, Hi: 20, Source: srcSense}.Check("bolts of the cleat", float64(c.Bolts)),
		forceOrZero.Check("pull", pull), anyForce.Check("upward pull", up),
	); err != nil {
		return 0, 0, err
	}
	n := float64(c.Bolts)
	return math.Max(up, 0)/n + pull*c.Height/c.Base/math.Floor(n/2), pull / n, nil
}
