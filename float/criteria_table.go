package float

import (
	"math"

	"example.org/floewright/lumber/measure"
)

var (
	ameren      = &measure.Source{Title: "Ameren Missouri, Lake of the Ozarks dock guidelines", Locator: "page on loads", Status: measure.Read}
	quotedTilt  = &measure.Source{Title: "a US state building code, not named", Locator: "in a structural engineering forum, thread 507600", Status: measure.Quoted}
	stCroix     = &measure.Source{Title: "Lake St. Croix Beach, Minnesota, municipal code", Locator: "docks (4)(b)", Status: measure.Read}
	ufcFloat    = &measure.Source{Title: "UFC 4-152-01", Edition: "28 July 2005", Locator: "par. 7-3.3, landing float", Status: measure.Read}
	enIntact    = &measure.Source{Title: "EN 14504", Edition: "2019", Locator: "4.3.2, inland passenger landing stages", Status: measure.Read}
	enDamaged   = &measure.Source{Title: "EN 14504", Edition: "2019", Locator: "4.3.3, one air chamber flooded", Status: measure.Read}
	cfrHeel     = &measure.Source{Title: "46 CFR 178.340(c)", Locator: "pontoon vessels", Status: measure.Read}
	cfrTrim     = &measure.Source{Title: "46 CFR 178.340(d)", Locator: "pontoon vessels", Status: measure.Read}
	cfrSwamped  = &measure.Source{Title: "33 CFR 183.235(a)", Locator: "small boats, level flotation", Status: measure.Read}
	wrightLoad  = &measure.Source{Title: "Wrightsville Beach, North Carolina, town code", Locator: "piers and docks, live load", Status: measure.Read}
	wrightPlan  = &measure.Source{Title: "Wrightsville Beach, North Carolina, town code", Locator: "floating docks (F)(1)", Status: measure.Read}
	crowding    = &measure.Source{Title: "Directive 2006/87/EC", Edition: "as BinSchUO 2008", Locator: "Annex II, 15.03: 3.75 persons/m² of 75 kg", Status: measure.Read}
	dockPrimer  = &measure.Source{Title: "Fisheries and Oceans Canada, dock primer", Locator: "wording repeated on a blog", Status: measure.Quoted}
	imo         = &measure.Source{Title: "IMO Intact Stability Code", Locator: "3.5.2.6", Status: measure.Read}
	ourImmersed = &measure.Source{Title: "no drum more than 85 % immersed: the rest is for waves and a leak", Status: measure.OwnChoice}
	ourDryEdge  = &measure.Source{Title: "the deck edge stays dry: nobody stands safe on a deck under water", Status: measure.OwnChoice}
)

// How the rules were read where their text leaves it open.
const (
	readingCarry  = "carried means afloat at rest with the whole deck edge above water"
	readingSpot   = "the spot is 1 sq ft, its centre 6 in from the edge, anywhere around it; not together with the load over the deck"
	readingTilt   = "20 psf over one half of the width, and 400 lb on 1 sq ft within 12 in of the edge, centre 6 in from it; one after the other"
	readingEnd    = "the load on the middle of the width; the corner at that end that loses most; either end of the dock"
	readingUFC    = "under the concentrated load of the same paragraph, whose sentence on tilt breaks off"
	readingEN     = "the load is the crowd of Directive 2006/87/EC over the whole deck; the standard excludes recreational docks from its scope"
	readingENHeel = "the load is the crowd of Directive 2006/87/EC over one half of the width; the standard excludes recreational docks from its scope"
	readingLost   = "each drum in turn, open to the lake, under dead load; the standard excludes recreational docks from its scope"
	readingBoat   = "written for swamped boats; here each drum in turn is open to the lake, under dead load"
	readingEvery  = "at every selected load, each by itself"
	readingPeople = "the number of people is that of 20 psf over the deck: our choice"
)

const (
	twentyPSF = 20 * measure.PSF
	crowdLoad = 3.75 * 75 * measure.Gravity // Pa
	spotInset = 6 * measure.Inch
	fourLB    = 400 * measure.Pound
	fiveLB    = 500 * measure.Pound
	degree    = math.Pi / 180
)

// criteria is the table, the default set first.
var criteria = []Criterion{
	{
		Name: "20 psf over the deck", What: "load laid evenly over the whole deck that the dock carries",
		Kind: measure.Pressure, Limit: twentyPSF, AtLeast: true, Pressure: twentyPSF, Above: stands,
		Default: true, Reading: readingCarry, Source: ameren, loads: evenly, value: carriesEvenly,
	},
	{
		Name: "400 lb on one spot", What: "load on any one square foot that the dock carries, not together with the load over the deck",
		Kind: measure.Mass, Limit: fourLB, AtLeast: true, Mass: fourLB, Inset: spotInset, Above: stands,
		Default: true, Reading: readingCarry + "; " + readingSpot, Source: ameren, loads: onSpots, value: carriesOnSpot,
	},
	{
		Name: "7 in from water to frame", What: "height of the frame's underside over water at its lowest corner, dead load",
		Kind: measure.Length, Limit: 7 * measure.Inch, AtLeast: true,
		Default: true, Source: ameren, loads: inTurn, value: clearance,
	},
	{
		Name: "end loses at most 4 in", What: "freeboard that an end loses under 400 lb placed 2 ft from it",
		Kind: measure.Length, Limit: 4 * measure.Inch, Mass: fourLB, Inset: 2 * measure.Foot, Above: stands,
		Default: true, Reading: readingEnd, Source: ameren, loads: atEnds, value: endDrop,
	},
	{
		Name: "cross level 3/8 in in 3 ft", What: "rise of the deck in 3 ft of its width, dead load",
		Kind: measure.Length, Limit: 3.0 / 8 * measure.Inch,
		Default: true, Source: ameren, loads: inTurn, value: crossLevel,
	},
	{
		Name: "tilt at most 5 deg", What: "tilt under the live load on one half of the width, or under 400 lb within 12 in of any side",
		Kind: measure.Angle, Limit: 5 * degree, Pressure: twentyPSF, Mass: fourLB, Inset: spotInset, Above: stands,
		Default: true, Reading: readingTilt, Source: quotedTilt, loads: halvesAndSpots, value: tilt,
	},
	{
		Name: "10 in to the deck", What: "height of the deck's lowest corner over water, dead load",
		Kind: measure.Length, Limit: 10 * measure.Inch, AtLeast: true,
		Default: true, Source: stCroix, loads: inTurn, value: lowestEdge,
	},
	{
		Name: "drums at most 85 % immersed", What: "immersed share of the deepest drum at every selected load",
		Kind: measure.Percent, Limit: 0.85, Pressure: twentyPSF, Mass: fourLB, Inset: spotInset, Above: stands,
		Default: true, Reading: readingEvery, Source: ourImmersed, loads: everySelected, value: share, every: true,
	},
	{
		Name: "deck edge dry", What: "height of the lowest deck edge over water at every selected load",
		Kind: measure.Length, Limit: 0, AtLeast: true, Pressure: twentyPSF, Mass: fourLB, Inset: spotInset, Above: stands,
		Default: true, Reading: readingEvery, Source: ourDryEdge, loads: everySelected, value: lowestEdge, every: true,
	},

	// From here on by name only.
	{
		Name: "freeboard within 2 in of the drawing", What: "difference of any corner's freeboard from the drawing, dead load",
		Kind: measure.Length, Limit: 2 * measure.Inch, Source: ameren, loads: inTurn, value: fromDrawing,
	},
	{
		Name: "end level with the walk within 3 in", What: "difference of the corners at the +x end from the main walk, dead load",
		Kind: measure.Length, Limit: 3 * measure.Inch, Source: ameren, loads: inTurn, value: fromWalk,
	},
	{
		Name: "50 psf over the deck", What: "load laid evenly over the whole deck that the float carries",
		Kind: measure.Pressure, Limit: 50 * measure.PSF, AtLeast: true, Pressure: 50 * measure.PSF, Above: stands,
		Reading: readingCarry, Source: ufcFloat, loads: evenly, value: carriesEvenly,
	},
	{
		Name: "500 lb on one spot", What: "load anywhere that the float carries, instead of the load over the deck",
		Kind: measure.Mass, Limit: fiveLB, AtLeast: true, Mass: fiveLB, Inset: spotInset, Above: stands,
		Reading: readingCarry + "; " + readingSpot, Source: ufcFloat, loads: onSpots, value: carriesOnSpot,
	},
	{
		Name: "tilt at most 6 deg", What: "tilt from horizontal under 500 lb anywhere",
		Kind: measure.Angle, Limit: 6 * degree, Mass: fiveLB, Inset: spotInset, Above: stands,
		Reading: readingUFC, Source: ufcFloat, loads: onSpots, value: tilt,
	},
	{
		Name: "crowd of 3.75 persons/m² over the deck", What: "load laid evenly over the whole deck that the dock carries",
		Kind: measure.Pressure, Limit: crowdLoad, AtLeast: true, Pressure: crowdLoad, Above: stands,
		Reading: readingCarry, Source: crowding, loads: evenly, value: carriesEvenly,
	},
	{
		Name: "100 psf over the deck", What: "load laid evenly over the whole deck that the dock carries",
		Kind: measure.Pressure, Limit: 100 * measure.PSF, AtLeast: true, Pressure: 100 * measure.PSF, Above: stands,
		Reading: readingCarry, Source: wrightLoad, loads: evenly, value: carriesEvenly,
	},
	{
		Name: "freeboard 0.15 m", What: "height of the lowest deck edge over water at maximum draught",
		Kind: measure.Length, Limit: 0.15, AtLeast: true, Pressure: crowdLoad, Above: stands,
		Reading: readingEN, Source: enIntact, loads: evenly, value: lowestEdge,
	},
	{
		Name: "heel at most 10 deg", What: "tilt under the crowd",
		Kind: measure.Angle, Limit: 10 * degree, Pressure: crowdLoad, Above: stands,
		Reading: readingENHeel, Source: enIntact, loads: byHalves, value: tilt,
	},
	{
		Name: "metacentric height 0.15 m", What: "smaller principal metacentric height under the crowd",
		Kind: measure.Length, Limit: 0.15, AtLeast: true, Pressure: crowdLoad, Above: stands,
		Reading: readingEN, Source: enIntact, loads: evenly, value: metacentre,
	},
	{
		Name: "freeboard 0.10 m with one drum lost", What: "height of the lowest deck edge over water with any one drum open to the lake",
		Kind: measure.Length, Limit: 0.10, AtLeast: true, Above: stands,
		Reading: readingLost, Source: enDamaged, loads: eachLost, lost: true, value: lowestEdge,
	},
	{
		Name: "tilt at most 10 deg with one drum lost", What: "tilt with any one drum open to the lake",
		Kind: measure.Angle, Limit: 10 * degree, Above: stands,
		Reading: readingBoat, Source: cfrSwamped, loads: eachLost, lost: true, value: tilt,
	},
	{
		Name: "pontoon heel", What: "section that the low tube keeps above water beyond a quarter, and beyond what a crowd a sixth of the width off the middle put under",
		Kind: measure.Percent, Limit: 0, AtLeast: true, Pressure: twentyPSF, Above: stands,
		Reading: readingPeople, Source: cfrHeel, loads: crowdMoment, value: exposed,
	},
	{
		Name: "pontoon trim", What: "height of the lowest tube top over water with everybody at one end",
		Kind: measure.Length, Limit: 0, AtLeast: true, Pressure: twentyPSF, Above: stands,
		Reading: readingPeople, Source: cfrTrim, loads: crowdAtEnds, value: tops,
	},
	{
		Name: "deck at least 4 ft wide", What: "smaller side of the deck", Kind: measure.Length,
		Limit: 4 * measure.Foot, AtLeast: true, Source: wrightPlan, loads: inTurn, value: leastSide,
	},
	{
		Name: "deck at most twice as long as wide", What: "longer side of the deck over its shorter", Kind: measure.Ratio,
		Limit: 2, Source: wrightPlan, loads: inTurn, value: sidesRatio,
	},
	{
		Name: "steady dock, 6 ft wide", What: "smaller side of the deck", Kind: measure.Length,
		Limit: 6 * measure.Foot, AtLeast: true, Source: dockPrimer, loads: inTurn, value: leastSide,
	},
	{
		Name: "steady dock, 20 ft long", What: "longer side of the deck", Kind: measure.Length,
		Limit: 20 * measure.Foot, AtLeast: true, Source: dockPrimer, loads: inTurn, value: mostSide,
	},
	{
		Name: "steady dock, 450 kg", What: "mass of the dock as it floats, without load", Kind: measure.Mass,
		Limit: 450, AtLeast: true, Source: dockPrimer, loads: inTurn, value: wholeMass,
	},
}
