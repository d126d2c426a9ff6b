package dock

import "example.org/floewright/lumber/measure"

// The rules that the checks of this package apply themselves.
var (
	srcLift = &measure.Source{
		Title: "NIOSH, Applications Manual for the Revised Lifting Equation", Edition: "Publication 94-110",
		Locator: "load constant 23 kg (51 lb) a person", Status: measure.Quoted,
	}
	srcArchimedes = &measure.Source{Title: "Archimedes' principle", Locator: "floats held under", Status: measure.Exact}
	srcFrameFree  = &measure.Source{
		Title: "Ameren Missouri, Lake of the Ozarks Dock Guidelines", Locator: "Loads: water to frame under dead load", Status: measure.Read,
	}
	srcDeckFree = &measure.Source{
		Title: "Lake St. Croix Beach (Minnesota), city code", Locator: "docks (4)(b)", Status: measure.Read,
	}
	srcUniform = &measure.Source{
		Title: "Ameren Missouri, Lake of the Ozarks Dock Guidelines", Locator: "Loads: 20 psf for flotation", Status: measure.Read,
	}
	srcTilt = &measure.Source{
		Title: "An unnamed US state building code, floating docks", Locator: "tilt under load along a side", Status: measure.Quoted,
	}
	srcImmersed = &measure.Source{Title: "No float more than 85 % immersed at any selected load", Status: measure.OwnChoice}
	srcDry      = &measure.Source{Title: "The lowest deck edge dry at any selected load", Status: measure.OwnChoice}
	srcPerson   = &measure.Source{Title: "IMO, Code on Intact Stability", Locator: "3.5.2.7, a standing person's centre 1.0 m up", Status: measure.Read}
	srcLength   = &measure.Source{Title: "A piece is cut from one board", Status: measure.Exact}
)

// The limits that go with them.
const (
	liftOne       = 23.0 // kg
	frameFree     = 7 * measure.Inch
	deckFree      = 10 * measure.Inch
	tiltMost      = 5 * degree
	immersedShare = 0.85
	degree        = 0.017453292519943295 // π/180
)
