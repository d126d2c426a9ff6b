package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Haul pulls the dock out of the water up a slope.
type Haul struct {
	Mass     float64 // kg, wet: soaked wood, water in drums, weed
	Slope    float64 // rad of the skids
	Friction float64 // a ratio, of skids, or what rollers leave; 0: 0.5, dry wood on wood
	Parts    int     // of a tackle between winch and dock, each over a sheave; 0 or 1: none
	Line     Gear    // zero: unknown, no answer
	Anchor   Ground  // of the winch or block; nil: unknown, no answer
}

// skid is wood on wood, dry, the higher of the usual values; greased skids 0.2,
// rollers 0.05 (from memory).
const skid = 0.5

// sheave is the share of the load that each sheave of a tackle takes to turn.
const sheave = 0.10

// Pull returns the pull, N, that moves the dock up the slope: m g (sin β + μ cos β),
// statics.
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

// Check follows the pull to ground: the line, which carries its share of the pull
// and of the tackle's friction, a tenth of the pull per sheave (Steelworker,
// volume 2, NAVEDTRA 14251, allowance for friction), and the anchor, which carries
// all of the pull and that share again.
func (h Haul) Check() ([]measure.Check, error) {
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
	share := pull
	if h.Parts > 1 {
		share = pull * (1 + sheave*float64(h.Parts)) / float64(h.Parts)
	}
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

// On returns what each bolt takes under a level pull and an upward one, N, plain
// numbers for the joint's check, by statics: tension, N, from the upward part of the
// line and from its level part's tilting the base, and shear, N.
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
