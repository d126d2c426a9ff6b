package fasten

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Pin is a hinge pin in double shear: two outer leaves and a lug between them.
// Movement of a dock belongs in a pin, not in a loose bolted joint.
type Pin struct {
	Diameter float64 // as worn, m
	Lug      float64 // thickness of the middle plate, m
	Leaf     float64 // thickness of each outer plate, m
	Play     float64 // gap between lug and leaf on each side, m
	Yield    float64 // yield strength of the pin, Pa
	Plates   float64 // yield strength of the plates, Pa; 0: the pin's if less than 250 MPa, else 250 MPa
}

// Shares of the yield strength that are allowed, allowable stress design of steel.
const (
	pinShear   = 0.40
	pinBending = 0.75
	pinBearing = 0.90
)

var (
	srcPinShear   = &measure.Source{Title: "Specification for Structural Steel Buildings (AISC)", Edition: "1989, allowable stress design", Locator: "F4: shear 0.40 Fy", Status: measure.Memory}
	srcPinBending = &measure.Source{Title: "Specification for Structural Steel Buildings (AISC)", Edition: "1989, allowable stress design", Locator: "F2: solid rounds in bending 0.75 Fy", Status: measure.Memory}
	srcPinBearing = &measure.Source{Title: "Specification for Structural Steel Buildings (AISC)", Edition: "1989, allowable stress design", Locator: "J8: bearing on pins 0.90 Fy", Status: measure.Memory}
)

// Stresses returns the pin's shear, bending and bearing stress, Pa, under a force,
// N:
//
//	shear    2 F/(π d²), two planes
//	bending  32 M/(π d³),  M = F (lug/8 + leaf/4 + play/2)
//	bearing  F/(d t),  t the lesser of lug and both leaves
//
// The force is spread evenly over each plate (beam theory). Within 1.9 units in the last
// place.
// Worst at (0.03418, 0.008204, 0.006869, 0.01779, 5617), ordered as in testdata/accuracy.csv.
func (p Pin) Stresses(force float64) (shear, bending, bearing float64, err error) {
	if err := p.check(force); err != nil {
		return 0, 0, 0, err
	}
	d := p.Diameter
	moment := force * (p.Lug/8 + p.Leaf/4 + p.Play/2)
	return 2 * force / (math.Pi * d * d), 32 * moment / (math.Pi * d * d * d), force / (d * math.Min(p.Lug, 2*p.Leaf)), nil
}

func (p Pin) check(force float64) error {
	plate := measure.Range{Kind: measure.Length, Lo: 1e-4, Hi: 0.5}
	steel := measure.Range{Kind: measure.Stress, Hi: 2e9}
	return checkAll(
		ranged{"force", force, forces},
		ranged{"Diameter", p.Diameter, measure.Range{Kind: measure.Length, Lo: 1e-3, Hi: 0.3}},
		ranged{"Lug", p.Lug, plate},
		ranged{"Leaf", p.Leaf, plate},
		ranged{"Play", p.Play, measure.Range{Kind: measure.Length, Hi: 0.5}},
		ranged{"Yield", p.Yield, steel},
		ranged{"Plates", p.Plates, steel},
	)
}

// Check compares the pin's stresses under a force, N, with what steel is allowed:
// shear 0.40, bending 0.75 and bearing 0.90 of the yield strength (AISC 1989). Impact counts
// in the force. A yield strength that is not known gives no answer.
func (p Pin) Check(force float64) ([]measure.Check, error) {
	shear, bending, bearing, err := p.Stresses(force)
	if err != nil {
		return nil, err
	}
	plates := p.Plates
	if plates == 0 {
		plates = math.Min(p.Yield, 250*measure.Megapascal)
	}
	var unsaid error
	if p.Yield == 0 {
		unsaid = unknown("Yield", "the yield strength of the pin")
	}
	one := func(name string, stress, limit float64, rule *measure.Source) measure.Check {
		c := measure.Check{Name: name, Kind: measure.Stress, Value: stress, Limit: limit, Rule: rule, Err: unsaid}
		if unsaid != nil {
			c.Limit = math.NaN()
		}
		return c
	}
	return []measure.Check{
		one("pin in double shear", shear, pinShear*p.Yield, srcPinShear),
		one("pin in bending", bending, pinBending*p.Yield, srcPinBending),
		one("pin bearing on its plates", bearing, pinBearing*math.Min(p.Yield, plates), srcPinBearing),
	}, nil
}
