package plan

// A Mooring is wind and water at the site and what holds the dock there. Directions
// are compass bearings.
type Mooring struct {
	Wind, WindMean, WindHeight Quantity
	WindYears                  Count    // in which such a wind comes once
	Bearing                    Quantity // of the dock, from its near end to its far end
	Fetch                      Fetch
	Current, Set               Quantity
	Above                      []Windage
	Lines                      []Line
	Anchors                    []Anchor
	HingedTo                   Name // "nothing", "pier" or "float"
	Hinge                      Hinge
	HasRamp                    Name // "yes" or "no"
	Ramp                       Ramp
	HauledOut                  Name // "yes" or "no"
	Haul                       HaulOut
}

// A Fetch is the open water seen from the dock, by direction.
type Fetch struct{ N, NE, E, SE, S, SW, W, NW Quantity }

// All returns the fetches from north round by east.
func (f *Fetch) All() [8]Quantity {
	return [8]Quantity{f.N, f.NE, f.E, f.SE, f.S, f.SW, f.W, f.NW}
}

// A Windage is something above the deck or alongside that the wind pushes on.
type Windage struct {
	Name      Name
	End, Side Quantity // as seen along the dock, and across it
	Height    Quantity // of its middle above the water
}

// A Line runs from the dock to an anchor or a shore point.
type Line struct {
	Name          Name
	Corner        Name
	Along, Across Quantity // instead of the corner
	To            Name     // an anchor or a shore point
	Cleat         Quantity // its breaking load
	Shackle       Name     // its size, or "none"
	Pieces        []LinePiece
}

// A LinePiece is one length of rope, chain or wire, the first at the ground.
type LinePiece struct {
	Kind, Size   Name
	Length, Mass Quantity
	End          Name // knot, splice or clips
	Stretch      Quantity
}

// An Anchor is what a line ends in on the bottom.
type Anchor struct {
	Name                 Name
	Along, Across, Depth Quantity
	Kind                 Name // "dead weight" or "tested"
	Material, Bottom     Name
	Mass                 Quantity
	Holding, Steepest    Quantity // of a tested one
}

// A Hinge pins one edge of the dock to its neighbour.
type Hinge struct {
	Edge      Name
	Pins      Count
	Width     Quantity // between the outermost pins
	Diameter  Quantity
	Plate     Quantity
	Height    Quantity // of the dock's pin line above the water, floating free
	Neighbour Quantity // of the neighbour's pin line above the water
	Strength  Quantity // breaking load of one pin with its bracket
}

// A Ramp lies on the dock from the shore.
type Ramp struct {
	Length, Mass, Shore Quantity
	Limit               Name // "accessible", "common" or "navy"
}

// A HaulOut is the way up the shore in autumn.
type HaulOut struct {
	Slope      Quantity
	Parts      Count
	Kind, Size Name // of the line
	End        Name
	Holding    Quantity // of what the winch hangs on
}

// A Local is what the lake's authority and the building office say.
type Local struct {
	Reach, MostReach      Quantity
	MostArea              Quantity
	Setback, LeastSetback Quantity
	OffIce                Name // date
	Drums                 Name // "none", "new" or "reused"
	Flotation             Name // "any", "no reused drums" or "no drums"
	Mains                 Name // "yes" or "no"
	Asked                 Name // "yes" or "no"
}
