package plan

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Position is a place in the plan file, counted from 1. The zero Position
// belongs to a value that is not in the file.
type Position struct{ Line, Column int }

// A Given is one value of a plan: what it is and how it is known.
//
// A value that the file gives is Measured. One that it leaves out has its
// default and is Assumed; where there is no default it is Unknown. One that the
// file calls "unknown" is Unknown, with the default standing in if there is
// one.
type Given[T any] struct {
	Value T
	Known measure.Knowledge
	Text  string // as written in the file, or as the default is written
	Path  string // "frame.joists.size", "floats[1].mass": lists count from 1
	At    Position
}

// A Quantity is a Given number in SI; NaN where nothing is known.
type Quantity = Given[float64]

// A Name is a Given word or text; empty where nothing is known.
type Name = Given[string]

// A Count is a Given whole number; 0 where nothing is known.
type Count = Given[int]

// Has reports whether a quantity carries a number, measured or standing in.
func Has(q Quantity) bool { return !math.IsNaN(q.Value) }

// A Plan is one dock as its builder describes it. Places are running marks:
// "along" from one end of the frame, "across" from one long side.
type Plan struct {
	root *node // the file as read, for Vary
	sum  string

	swaps map[string]string // what Vary put in place of the file's values, by path

	File      string
	Name      Name
	Units     Name // "us" or "si": how to print
	Currency  Name
	Frame     Frame
	Floats    []Floats
	Weights   []Weight
	People    []Person
	Loads     Loads
	Site      Site
	Ice       Ice
	Stock     []Board
	Hardware  Hardware
	Mooring   Mooring
	Alongside Alongside
	Season    Season
	Local     Local
	Shop      Shop
}

// A Frame is the lumber: two rims, joists between them, decking on top.
type Frame struct {
	Length, Width Quantity // over the outside of the rims
	Run           Name     // joists run "across" or "along"
	Moisture      Quantity // of the wood in service, by weight of the dry wood
	Joists        Joists
	Rims          Rims
	Decking       Decking
	Hardware      Quantity // mass of bolts, brackets and screws
}

// A Wood says what a piece is made of.
type Wood struct {
	Size, Species, Grade Name
	Incised              Name     // "yes" or "no": slits in the faces from treatment
	Weighed              Quantity // one piece on a scale; replaces the table's density
}

// Joists are the members between the rims.
type Joists struct {
	Wood
	Marks   []Quantity
	MarksAt Name     // "near face" or "centre"
	Spacing Quantity // shorthand for marks at one distance
}

// Rims are the outer members at right angles to the joists; the outermost
// joists close the other two sides.
type Rims struct {
	Wood
	Plies Count // at each side
}

// Decking lies at right angles to the joists.
type Decking struct {
	Wood
	Gap    Quantity
	Screw  Name  // through the boards
	Screws Count // through one board into one joist
}

// Floats are a number of equal drums or blocks and their places.
type Floats struct {
	Name   Name
	Shape  Name     // "drum" or "block"
	Girth  Quantity // of a drum, by tape
	Length Quantity // of a drum, over the ends; of a block, the way it lies
	Width  Quantity // of a block
	Height Quantity // of a block
	Mass   Quantity // of one
	Of     Name     // a drum's "steel" or "plastic"
	Volume Quantity // of a drum, outside
	Lies   Name     // the long way "along" or "across" the dock
	Bears  Name     // "between joists" or "under joists"
	Bays   []Count  // between which joists: bay 1 is between joists 1 and 2
	Marks  []Quantity
	Places []Place
	Tied   Name     // "yes" or "no": ties hold them
	Stops  Quantity // clear distance between the stops of a row in a bay
	Blocks Name     // "yes" or "no": blocks beside each float that has room to slide
	Nail   Name     // of stops and blocks
	Nails  Count    // at each end of a stop or a block
	Top    Quantity // top of the float below the underside of the joists
}

// A Place is the centre of one float.
type Place struct{ Along, Across Quantity }

// A Weight is something fixed to the dock.
type Weight struct {
	Name          Name
	Mass          Quantity
	Along, Across Quantity
	Above         Quantity // its centre above the deck
	Ladder        Name     // "yes" or "no": swimmers climb out by it
}

// A Person, or several alike.
type Person struct {
	Who   Name
	Count Count
	Mass  Quantity // each
}

// Loads are what the dock is to carry.
type Loads struct {
	Flotation Quantity // uniform load for floating
	Deck      Quantity // uniform load for the lumber
	Spot      Quantity // mass on one spot
	Snow      Quantity // uniform, at its deepest
	Uneven    Quantity // how far one float may stand low, on the ice or on blocks
	Pried     Quantity // how far a corner is pried up
	Cleat     Quantity // pull of a line at a corner
	Bump      Quantity // push of a boat at a corner
	Skid      Quantity // pull to drag it, as a share of its weight
	IcePush   Quantity // along one side, N/m
	FromEdge  Quantity // how far from the edge a crowd stands
	Centre    Quantity // height of a standing person's centre above the deck
}

// A Site is the lake and its shore.
type Site struct {
	Water               Name // "lake", "river" or "sea"
	Temperature         Quantity
	WaveHeight          Quantity // trough to crest
	TenCrests           Quantity // time for ten crests to pass
	IceDrop             Quantity // of the lake under its ice
	IceGrip             Quantity // at which it lets go of one float
	LevelLow, LevelHigh Quantity // against the level when measured
	Depth               Quantity
	Slope               Quantity // of the way to the lake, rise over level distance
	Shore               []ShorePoint
}

// A ShorePoint is something on land that a line may be tied to.
type ShorePoint struct {
	Name                 Name
	Kind                 Name
	Along, Across, Above Quantity
	Strength             Quantity
}

// Ice is the sheet as drilled, and what it is to carry.
type Ice struct {
	Now     Name // date and time the question is asked
	Season  Name // "winter" or "spring"
	Cracks  Name // "none", "one" or "crossing"
	Wet     Name // "yes" or "no": wet crack, open water or water on the ice
	Inlets  Name // "yes" or "no": inlet, current, ridge or piles near
	Changed Name // "yes" or "no": thaw, rain, snow or level change since drilling
	Holes   []Hole
	Weather []Weather
	Cross   Crossing
	Snow    Quantity // that may fall while the dock stands there
	Since   Quantity // how long it has stood
	Gauge   []Gauge
	Park    Quantity // how long the finished dock stands on the ice
}

// A Hole is one drilled hole.
type Hole struct {
	Where        Name
	When         Name
	Clear, White Quantity
	Hard         Name     // "yes" or "no": the white ice is hard and frozen to the clear
	Gap          Quantity // water or air between layers
	Layer        Quantity // with a gap: the thickest single layer of clear ice
	Water        Quantity // below the top of the ice
	Snow         Quantity

	Along, Across Quantity // where it is in the dock's axes
}

// A Gauge is one reading of the hole at the dock.
type Gauge struct {
	When  Name
	Water Quantity // below the top of the ice
}

// Weather is one day's high and low.
type Weather struct {
	Date      Name
	High, Low Quantity
}

// A Crossing is the heaviest thing that crosses the ice at one spot.
type Crossing struct {
	Mass   Quantity // with the people beside it
	People Count
}

// A Board is lumber in hand or to buy.
type Board struct {
	Size   Name
	Length Quantity // measured: stock runs long
	Count  Count
	Price  Quantity // of one, in the plan's currency
	Have   Name     // "yes" or "no"
	Lot    Count    // sold in bundles of so many
}
