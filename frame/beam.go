package frame

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Rest is one place where a beam is held.
type Rest struct {
	At         float64 // m from the beam's left end
	Support    Support // nil: rigid, pushing and pulling
	Settlement float64 // m, down positive: how far the support itself has gone down
	Clamped    bool    // the rotation is held as well
	Name       string  // for errors and printing; may be empty
}

// A Beam is a straight beam of one section with any number of spans,
// overhangs and hinges, on rests of any kind. Its own weight is a load like any
// other. Places closer than a ten-millionth of the length count as one.
type Beam struct {
	Length float64   // m
	EI     float64   // N·m², bending stiffness
	GA     float64   // N, shear stiffness (G times 5/6 of a rectangle); 0: no shear deflection
	Hinges []float64 // m from the left end, between the ends: the moment is zero there
	Rests  []Rest
	Loads  []Load
}

// slack is the part of the length within which two places are one.
const slack = 1e-7

// largest bounds the sizes that are accepted: far past anything built of lumber,
// and near enough that cubes of lengths stay numbers.
const largest = 1e30

func positive(k measure.Kind) measure.Range {
	return measure.Range{Kind: k, Lo: 1 / largest, Hi: largest}
}

func anyFinite(k measure.Kind) measure.Range {
	return measure.Range{Kind: k, Lo: -largest, Hi: largest}
}

// name returns how errors and tables call rest i.
func (b *Beam) name(i int) string {
	if b.Rests[i].Name != "" {
		return b.Rests[i].Name
	}
	return "Rests[" + itoa(i) + "]"
}

// check returns what is wrong with the beam's data, if anything.
func (b *Beam) check() error {
	if err := positive(measure.Length).Check("Length", b.Length); err != nil {
		return err
	}
	if err := positive(measure.Ratio).Check("EI (N·m²)", b.EI); err != nil {
		return err
	}
	if b.GA != 0 {
		if err := positive(measure.Force).Check("GA", b.GA); err != nil {
			return err
		}
	}
	within := measure.Range{Kind: measure.Length, Lo: 0, Hi: b.Length, OpenLo: true, OpenHi: true}
	for i, h := range b.Hinges {
		field := "Hinges[" + itoa(i) + "]"
		if err := within.Check(field, h); err != nil {
			return err
		}
		if b.same(h, 0) || b.same(h, b.Length) {
			return &measure.Error{
				Field: field, Kind: measure.Length, Value: h, Class: measure.ErrRange,
				Want: "a place between the ends, clear of both",
			}
		}
	}
	place := measure.Range{Kind: measure.Length, Lo: -slack * b.Length, Hi: b.Length * (1 + slack)}
	for i, r := range b.Rests {
		if !place.Has(r.At) {
			return place.Check(b.name(i)+".At", r.At)
		}
		if finite := anyFinite(measure.Length); !finite.Has(r.Settlement) {
			return finite.Check(b.name(i)+".Settlement", r.Settlement)
		}
	}
	for i := range b.Loads {
		if err := b.Loads[i].check("Loads", i, b.Length); err != nil {
			return err
		}
	}
	return nil
}

// same reports whether two places of the beam are one.
func (b *Beam) same(x, y float64) bool { return math.Abs(x-y) <= slack*b.Length }
