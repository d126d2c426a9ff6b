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

	// Slips is the number of boat slips the ramp serves; 0: not said, many. An
	// accessible ramp of 80 ft, or of 30 ft to fewer than 25 slips, may be steeper.
	Slips int
}

func (r Ramp) check() error {
	return first(
		positiveLength.Check("length of the ramp", r.Length), positiveLength.Check("width of the ramp", r.Width),
		measure.Range{Lo: 0, Hi: 1e6, Source: srcSense}.Check("slips", float64(r.Slips)),
		massOrZero.Check("mass of the ramp", r.Mass), anyLength.Check("shore hinge", r.Shore), anyLength.Check("deck", r.Deck),
	)
}

// Angle returns the ramp's fall towards the dock with the water at a level, m over the
// datum, rad, by trigonometry; negative where it climbs. Within 1.3 units in the last
// place of its condition.
// Worst at (10.42, -0.1888, 0.3392, 1.897), ordered as in testdata/accuracy.csv.
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

// Slide returns how far the free end slides on the deck, m, between two levels, m over
// the datum, by the geometry of [Ramp.Angle]: what its roller and track must allow. It
// keeps its digits for small slides: within 4.4 units in the last place of its
// condition.
// Worst at (2.579, 0.2519, 0.3798, -2.649, -2.581), ordered as in testdata/accuracy.csv.
func (r Ramp) Slide(low, high float64) (float64, error) {
	a, err1 := r.Angle(low)
	b, err2 := r.Angle(high)
	if err := first(err1, err2); err != nil {
		return 0, err
	}
	// L (1 - cos a) and L (cos a - cos b) by the drops, without differences of
	// cosines that hardly differ from 1.
	near, far := r.Shore-low-r.Deck, r.Shore-high-r.Deck
	if a*b < 0 { // level in between: out and back
		steep, drop := math.Max(math.Abs(a), math.Abs(b)), math.Max(math.Abs(near), math.Abs(far))
		return drop * drop / (r.Length * (1 + math.Cos(steep))), nil
	}
	return math.Abs(high-low) * math.Abs(near+far) / (r.Length * (math.Cos(a) + math.Cos(b))), nil
}

// limit returns the slope limit.
func (r Ramp) limit() (measure.Factor, error) {
	for _, s := range slopes {
		if s.Name == r.Limit || r.Limit == "" && s.Name == "common" {
			return s, nil
		}
	}
	return measure.Factor{}, &measure.Error{Field: "slope limit", Text: r.Limit, Class: measure.ErrName, Want: "accessible, common or navy"}
}

// enough returns the length from which an accessible ramp may be steeper.
func (r Ramp) enough() float64 {
	if r.Slips > 0 && r.Slips < 25 {
		return 30 * measure.Foot
	}
	return 80 * measure.Foot
}

// Check compares the steepest slope between two levels, m over the datum, a ratio,
// with the limit, which names its source; an
// accessible ramp that is steeper, its length with that from which it may be.
func (r Ramp) Check(low, high float64) (measure.Check, error) {
	s, err := r.limit()
	a, err1 := r.Angle(low)
	b, err2 := r.Angle(high)
	if err := first(err, err1, err2); err != nil {
		return measure.Check{}, err
	}
	c := measure.Check{
		Name: "slope of the ramp", Kind: measure.Ratio, Value: math.Max(math.Abs(math.Tan(a)), math.Abs(math.Tan(b))), Limit: s.Value,
		Rule: s.Source, Notes: []string{s.Why},
	}
	if s.Name == "accessible" && c.Value > c.Limit && r.Length >= r.enough() {
		c.Name, c.Kind, c.Value, c.Limit, c.AtLeast = "length of the ramp", measure.Length, r.Length, r.enough(), true
	}
	return c, nil
}

// Needed returns the length, m, of a ramp from this shore hinge to this deck that keeps
// the limit of slope between two levels, m over the datum: drop √(1 + 1/slope²),
// geometry. An accessible one need be no longer than its rule asks. Within 0.7 units in
// the last place.
// Worst at (1.52, 0.3824, -1.614, -0.7619), ordered as in testdata/accuracy.csv.
func (r Ramp) Needed(low, high float64) (float64, error) {
	s, err := r.limit()
	r.Length = 1
	if err := first(err, r.check(), anyLength.Check("low level", low), anyLength.Check("high level", high)); err != nil {
		return 0, err
	}
	drop := math.Max(math.Abs(r.Shore-low-r.Deck), math.Abs(r.Shore-high-r.Deck))
	l := drop * math.Sqrt(1+1/(s.Value*s.Value))
	if s.Name == "accessible" && l > r.enough() {
		l = math.Max(r.enough(), drop/0.99) // and long enough to reach
	}
	return l, nil
}

// Reaction returns the weight, N, that the free end lays on the dock under a
// live load, Pa, all over and a point load, N, at its landing: half of the even
// load and all of the point. Divided by measure.Gravity it is a weight for the
// float. UFC 4-152-01, 7-4.4: 25 psf for the float, 50 psf for the ramp.
// Within 1.9 units in the last place.
// Worst at (11.09, 1.223, 221.8, 4202, 770.8), ordered as in testdata/accuracy.csv.
func (r Ramp) Reaction(live, point float64) (float64, error) {
	if err := first(r.check(), pressureOrZero.Check("live load", live), forceOrZero.Check("point load", point)); err != nil {
		return 0, err
	}
	return (live*r.Length*r.Width+r.Mass*measure.Gravity)/2 + point, nil
}

// Moment returns the greatest bending moment of the ramp, N·m, under a live load, Pa,
// all over, lying level: q L²/8 by beam theory, q of its own weight too. Within 3.1
// units in the last place.
// Worst at (1.315, 1.577, 562.2, 178.3), ordered as in testdata/accuracy.csv.
func (r Ramp) Moment(live float64) (float64, error) {
	if err := first(r.check(), pressureOrZero.Check("live load", live)); err != nil {
		return 0, err
	}
	return (live*r.Width + r.Mass*measure.Gravity/r.Length) * r.Length * r.Length / 8, nil
}

var pressureOrZero = measure.Range{Kind: measure.Pressure, Lo: 0, Hi: 1e6, Source: srcSense}
