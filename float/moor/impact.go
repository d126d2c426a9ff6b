package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// An Impact is a boat coming alongside. Zero fields are the cautious ones.
type Impact struct {
	Mass     float64 // kg
	Speed    float64 // m/s across the dock's edge; UFC 4-152-01 has 0.076 to 0.46
	Draft    float64 // m; with Beam it gives the water that moves along, 1 + 2 draft/beam
	Beam     float64 // m; either 0: 1.8 times the mass, the most of PIANC's 1.5 to 1.8
	Along    float64 // a ratio: boat and water along over the boat, where it is known: at least 1
	Length   float64 // m; with Block it gives the radius of gyration, (0.19 block + 0.11) length
	Block    float64 // a ratio: volume under water over length × beam × draft
	Gyration float64 // m, the radius itself where it is known
	Arm      float64 // m from the boat's middle to where it touches
	Angle    float64 // rad between the arm and the motion; 0: it hits square and turns nothing aside
	Soft     float64 // share left by give of hull and fender; 0: 1
	Dock     float64 // kg of a dock that is free to move off; 0: held fast
}

var (
	blockRange   = measure.Range{Lo: 0.2, Hi: 1, Source: srcSense}
	impactShare  = measure.Range{Lo: 0.5, Hi: 1, Source: src("Berthing calculation sheets", "", "softness 0.9 to 1", measure.Read)}
	impactSpeed  = measure.Range{Kind: measure.Speed, Lo: 0, Hi: 5, Source: srcOwn}
	waterAlong   = measure.Range{Lo: 1, Hi: 3, Source: src("Vasco Costa", "1964", "added mass 1 + 2 draft/beam", measure.Read)}
	angleOfTouch = measure.Range{Kind: measure.Angle, Lo: 0, Hi: math.Pi, Source: srcSense}
)

// Energy returns what the dock must take up, J:
//
//	E = M v²/2 · CM · CE · CS,  CM = 1 + 2 draft/beam
//	CE = (K² + R² cos² φ)/(K² + R²),  K = (0.19 block + 0.11) length
//
// with the arm R and its angle φ; a dock free to move off takes the share
// dock/(boat + dock) and swims away with the rest. (Berthing calculation sheets;
// fender manual; PIANC 2002 list.)
func (i Impact) Energy() (float64, error) {
	if err := first(
		positiveMass.Check("mass of the boat", i.Mass), impactSpeed.Check("speed of the boat", i.Speed),
		lengthOrZero.Check("draft of the boat", i.Draft), lengthOrZero.Check("beam of the boat", i.Beam),
		lengthOrZero.Check("length of the boat", i.Length), lengthOrZero.Check("radius of gyration", i.Gyration),
		lengthOrZero.Check("arm", i.Arm), angleOfTouch.Check("angle", i.Angle), massOrZero.Check("mass of the dock", i.Dock),
	); err != nil {
		return 0, err
	}
	cm, ce, cs := 1.8, 1.0, 1.0
	if i.Beam > 0 && i.Draft > 0 {
		cm = 1 + 2*i.Draft/i.Beam
	}
	if i.Along != 0 {
		cm = i.Along
	}
	if err := waterAlong.Check("boat with the water along", cm); err != nil {
		return 0, err
	}
	k := i.Gyration
	if k == 0 && i.Block != 0 {
		if err := blockRange.Check("block coefficient", i.Block); err != nil {
			return 0, err
		}
		k = (0.19*i.Block + 0.11) * i.Length
	}
	if k*k > 0 {
		c := i.Arm * math.Cos(i.Angle)
		ce = (k*k + c*c) / (k*k + i.Arm*i.Arm)
	}
	if i.Soft != 0 {
		if err := impactShare.Check("softness", i.Soft); err != nil {
			return 0, err
		}
		cs = i.Soft
	}
	e := i.Mass / 2 * i.Speed * i.Speed * cm * ce * cs
	if i.Dock > 0 {
		e *= i.Dock / (i.Mass + i.Dock)
	}
	return e, nil
}

// A Fender is a cushion on the dock's edge that pushes back in proportion.
type Fender struct {
	Stroke    float64 // m it can give
	Stiffness float64 // N/m; 0: it just uses its stroke, the best a spring can do
}

// Stop returns the greatest force, N, and the stroke, m, with which the fender
// stops an energy, J: √(2kE) and √(2E/k), exact for an even spring.
func (f Fender) Stop(energy float64) (force, stroke float64, err error) {
	if err := first(
		measure.Range{Kind: measure.Moment, Lo: 0, Hi: 1e9, Source: srcSense}.Check("energy", energy),
		nothingOr(measure.Range{Kind: springOrZero.Kind, Lo: 1e-6, Hi: springOrZero.Hi, Source: srcSense}, "stiffness of the fender", f.Stiffness),
		nothingOr(positiveLength, "stroke of the fender", f.Stroke),
	); err != nil {
		return 0, 0, err
	}
	switch {
	case f.Stiffness > 0:
		return math.Sqrt(2 * f.Stiffness * energy), math.Sqrt(2 * energy / f.Stiffness), nil
	case f.Stroke > 0:
		return 2 * energy / f.Stroke, f.Stroke, nil
	}
	return 0, 0, unknown("fender", "its stroke, or its stiffness")
}

// Check compares the stroke that an energy, J, needs by [Fender.Stop] with the
// fender's own.
func (f Fender) Check(energy float64) (measure.Check, error) {
	force, stroke, err := f.Stop(energy)
	if err != nil {
		return measure.Check{}, err
	}
	if f.Stroke == 0 || f.Stiffness == 0 {
		return measure.Refuse("stroke of the fender", unknown("stroke and stiffness of the fender", "both")), nil
	}
	return measure.Check{
		Name: "stroke of the fender", Kind: measure.Length, Value: stroke, Limit: f.Stroke, Rule: srcStatics,
		Notes: []string{"the dock's edge takes " + measure.Force.Format(force, measure.US) + " (" + measure.Force.Format(force, measure.SI) + ")"},
	}, nil
}
