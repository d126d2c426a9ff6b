package dock

import (
	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// The rules that the checks of this package apply themselves.
var (
	srcLift = &measure.Source{
		Title: "NIOSH, Applications Manual for the Revised Lifting Equation", Edition: "Publication 94-110",
		Locator: "load constant 23 kg (51 lb) a person", Status: measure.Quoted,
	}
	srcArchimedes = &measure.Source{Title: "Archimedes' principle", Locator: "floats held under", Status: measure.Exact}
	srcPerson     = &measure.Source{Title: "IMO, Code on Intact Stability", Locator: "3.5.2.7, a standing person's centre 1.0 m up", Status: measure.Read}
	srcRest       = &measure.Source{Title: "a dock must float or stand whatever it meets", Status: measure.OwnChoice}
	srcFit        = &measure.Source{Title: "parts that go together leave nothing missing", Status: measure.Exact}
	srcGive       = &measure.Source{
		Title: "National Building Code of Canada", Edition: "2010, A-9.23.4.2.(2)", Locator: "a floor gives at most 2 mm under 1 kN",
		Status: measure.Memory,
	}
	srcLength = &measure.Source{Title: "A piece is cut from one board", Status: measure.Exact}
)

const (
	waterHeavy = 1000.0               // kg/m³, as heavy as a lake's gets
	liftOne    = 23.0                 // kg
	degree     = 0.017453292519943295 // π/180
)

// The criteria of floating that the loadings are held against, by their names in
// package float.
const (
	frameFree  = "7 in from water to frame"
	deckFree   = "10 in to the deck"
	deckDry    = "deck edge dry"
	immersed   = "drums at most 85 % immersed"
	tiltMost   = "tilt at most 5 deg"
	evenLoad   = "20 psf over the deck"
	spotLoad   = "400 lb on one spot"
	endDrop    = "end loses at most 4 in"
	crossLevel = "cross level 3/8 in in 3 ft"
)

// limit returns a check with the limit, side and source of a criterion of package
// float; the value is the caller's.
func limit(name, criterion string) measure.Check {
	c, err := float.LookupCriterion(criterion)
	return measure.Check{Name: name, Kind: c.Kind, Limit: c.Limit, AtLeast: c.AtLeast, Rule: c.Source, Err: err}
}
