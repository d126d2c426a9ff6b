package layout

import (
	"example.org/floewright/lumber/measure"
)

// A Fault is a kind of [Conflict].
type Fault int

// The faults, and what is missing with each.
const (
	Overlaps     Fault = iota // two parts in one place: how deep
	Apart                     // a piece's end, a strip, a deck or a pin that meets nothing: the gap past what may be
	TightBay                  // no room for a drum between its sides: how much wider
	TightEnds                 // no room for a drum between its stops: how much further apart
	Covered                   // a piece lies across a drum's way in from above: how far the drum must move along itself
	Rolls                     // a drum may wander sideways: how far past what may be
	Slides                    // a drum may wander along itself: how far past what may be
	Drops                     // nothing keeps a drum from dropping out: how much narrower below
	Rocks                     // a drum's middle lies outside what it bears on: how far
	Elsewhere                 // a drum bears on something else than meant: the height, or the width of the bay, that is between
	Unborne                   // a drum bears on nothing: how much narrower the bay
	Protrudes                 // a drum reaches out from under the decks: how far
	TailNear                  // a bolt's tail at a drum: how much further off
	NoReach                   // no room for the wrench: how much more
	WideSpan                  // joists too far apart for the boards, or boards too thin for any span: how much
	SplicesClose              // splices of neighbouring plies: how much further apart
	WeakBoards                // too few boards cross a drum for its push: how much longer the crown, or the deck
	faults                    // their number
)

var faultNames = [faults]string{
	Overlaps: "overlaps", Apart: "does not meet", TightBay: "is too wide for", TightEnds: "is too long for", Covered: "is covered by",
	Rolls: "rolls towards", Slides: "slides towards", Drops: "drops away from", Rocks: "rocks on", Elsewhere: "bears elsewhere, on", Unborne: "bears on nothing past",
	Protrudes: "sticks out of", TailNear: "is too near", NoReach: "cannot be reached for", WideSpan: "spans too far over", SplicesClose: "is spliced too near",
	WeakBoards: "is held by too few of",
}

// String returns what part A does to part B: "is too wide for".
func (f Fault) String() string {
	if f < 0 || f >= faults {
		return "no known fault with"
	}
	return faultNames[f]
}

// A Conflict is two parts that do not go together.
type Conflict struct {
	Kind    Fault
	A, B    string  // the parts, by name
	Missing float64 // m, always positive
	// Has and Wants are what there is and what there should be, m, where Missing is
	// their difference; both 0 where it is not.
	Has, Wants float64
	Why        string
	Source     *measure.Source // of the room that is missing; nil: plain geometry
}

// String returns the conflict on one line, in SI.
func (c Conflict) String() string { return c.Format(measure.SI) }

// Format returns the conflict on one line: parts, what is missing, and why.
func (c Conflict) Format(s measure.System) string {
	off, side := " missing", ", at least "
	if c.Has > c.Wants {
		off, side = " too much", ", at most "
	}
	text := c.A + " " + c.Kind.String() + " " + c.B + ": " + measure.Length.Format(c.Missing, s) + off
	if c.Has != 0 || c.Wants != 0 {
		text += ", has " + measure.Length.Format(c.Has, s) + side + measure.Length.Format(c.Wants, s)
	}
	if c.Why != "" {
		text += "; " + c.Why
	}
	if c.Source != nil {
		text += " (" + c.Source.String() + ")"
	}
	return text
}
