package float

import (
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Figure is a value and how well it is known: the true value lies within
// Value ± Within, 19 times out of 20. Both bear the same SI unit.
type Figure struct {
	Value  float64
	Within float64
	Source *measure.Source // of Value; nil where it was measured
}

// check returns nil if the figure's value lies in r and its accuracy is a number
// not below zero.
func (f Figure) check(field string, r measure.Range) error {
	if err := r.Check(field, f.Value); err != nil {
		return err
	}
	return measure.Range{Kind: r.Kind, Lo: 0, Hi: 1e9}.Check(field+", accuracy", f.Within)
}

// A Drum is a closed round drum as it is bought or found.
//
// Three volumes go by the name of a drum: the nominal one (a class, 55 gal), the
// brimful one (57 to 58 gal) and the outside one. Only the outside volume pushes
// up, so that is what Displacement holds. It is the sheet's outer surface without
// hoops and chimes, which add 0.5 to 1 % to a steel drum, while dents, and the
// tapered ends of a plastic one, take some away.
type Drum struct {
	Name         string
	Diameter     Figure // outside, clear of the hoops, m
	Length       Figure // between the outer faces of the heads, m
	Displacement Figure // outside volume, m³
	Mass         Figure // empty, bungs in, kg
}

// Drums returns the presets: defaults for a first plan, each figure with its
// tolerance and the status of its source. A drum in hand is better measured, see
// [MeasureDrum]. Tolerances without a source of their own are our choice.
func Drums() []Drum {
	out := make([]Drum, len(drums))
	copy(out, drums)
	return out
}

// LookupDrum returns the preset of that name, with its sources; upper and lower case are alike.
// The error, of class [measure.ErrName], lists the names there are.
func LookupDrum(name string) (Drum, error) {
	names := make([]string, len(drums))
	for i, d := range drums {
		if strings.EqualFold(d.Name, strings.TrimSpace(name)) {
			return d, nil
		}
		names[i] = d.Name
	}
	return Drum{}, &measure.Error{
		Field: "drum", Text: name, Class: measure.ErrName,
		Want: "one of \"" + strings.Join(names, "\"; \"") + "\"",
	}
}

// Bounds that catch a slip of the pen: a reading in inches taken for metres, a
// radius for a girth.
var (
	drumBounds    = &measure.Source{Title: "bounds of a drum that a builder handles", Status: measure.OwnChoice}
	girthRange    = measure.Range{Kind: measure.Length, Lo: 0.3, Hi: 4, Source: drumBounds}
	lengthRange   = measure.Range{Kind: measure.Length, Lo: 0.2, Hi: 3, Source: drumBounds}
	drumMassRange = measure.Range{Kind: measure.Mass, Lo: 0, Hi: 500, OpenLo: true, Source: drumBounds}
)

// shapeAllowance is the share by which a plain cylinder may miss a measured
// drum's outside volume: hoops and chimes add up to 1 %, dents take as much. Our
// choice, after the first figure.
const shapeAllowance = 0.01

// MeasureDrum makes a drum from what a tape and a scale say: the girth around
// the body between two hoops (m), the length between the outer faces of the
// heads, not over the chimes (m), and the empty mass (kg), each with its
// accuracy.
//
//	diameter = girth/π,  displacement = girth² length/(4π)
//
// which is the geometry of a cylinder. The displacement's range takes the accuracies
// at their worst together, and 1 % for hoops and dents. A drum with tapered ends
// displaces less than its girth says; weigh or fill it instead. The error is a
// [measure.Error]: a figure that is no drum's, or a drum heavier than the water it
// displaces.
func MeasureDrum(girth, length, mass Figure) (Drum, error) {
	if err := girth.check("girth", girthRange); err != nil {
		return Drum{}, err
	}
	if err := length.check("length", lengthRange); err != nil {
		return Drum{}, err
	}
	if err := mass.check("mass", drumMassRange); err != nil {
		return Drum{}, err
	}
	volume := girth.Value * girth.Value * length.Value / (4 * math.Pi)
	displaced := measure.Range{
		Kind: measure.Mass, Lo: 0, Hi: 1000 * volume, OpenLo: true, OpenHi: true,
		Source: &measure.Source{Title: "water displaced by a drum of this girth and length", Status: measure.Exact},
	}
	if err := displaced.Check("mass", mass.Value); err != nil {
		return Drum{}, err
	}
	share := 2*girth.Within/girth.Value + length.Within/length.Value + shapeAllowance
	return Drum{
		Name:         "measured drum",
		Diameter:     Figure{Value: girth.Value / math.Pi, Within: girth.Within / math.Pi, Source: girth.Source},
		Length:       length,
		Displacement: Figure{Value: volume, Within: volume * share, Source: girth.Source},
		Mass:         mass,
	}, nil
}
