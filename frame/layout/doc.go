// Package layout turns what a builder marks and measures of a frame into what its
// models need, and tells him what touches what, what is in the way, and whether the
// frame is square and level.
//
// [Lines], [Rectangle] and [Ell] make pieces from running marks; [New] works out a
// [Drawing] of pieces, drums, decks, bolts and hinge pins: nodes, members and the
// deck that each carries, what every drum bears on ([Bearing]), and every
// [Conflict], each with its two parts and the missing distance. [Layout.Lift] finds
// how many boards must be on over a drum before the ice goes; [Layout.Under] what
// carries a force on the deck. [Frame.Square] reads sides and diagonals and says
// which corner to push; [Level] reads the heights of supports and says what to shim.
//
// # Model
//
// Pieces are boxes along x or y; z counts from the underside of the joists. A piece
// whose end comes within a butt's gap of another's face butts on it; two that lie
// one on the other cross. Nodes lie where axes meet, so that a member is longer
// than its piece is cut, by half of what it butts on. An end that butts passes no
// bending moment and, at both ends, no torque, as nails and hangers give, unless the
// piece is Stiff; the outermost of those that butt on a piece which rests on nothing
// itself hold it from rolling. Pieces nailed side by side are not joined: draw them
// as plies. A pin's arms are members of their own, stiff to either section and
// hinged at the pin.
//
// The deck is shared by halves of the span between the pieces that the boards
// cross, and what hangs over goes to the outermost: all areas together are exactly
// the deck's. What lies past the last node of a piece is laid just inside it.
//
// A drum floats straight up until pieces or boards stop it. It rolls to the middle
// between two edges nearer than its diameter, without friction, and wedges there.
// It pushes in one to three parts along its length, shared among pieces by a linear
// law that keeps its middle. Strips and stops below its middle never stop it; they
// keep it from dropping out.
//
// # Assumptions and limits
//
// Pieces slanted in plan, drums that lie askew or upright, and bent or twisted
// stock are not covered. Clearances are distances of the parts as drawn: no swelling
// of wood, no bulge of a drum. Where two pieces obstruct a drum's way in together,
// each is looked at alone. The strength of pieces, of boards and of screws is the
// caller's. Squareness takes a flat frame with straight sides: equal diagonals alone
// prove nothing, a trapezium has them too. Level takes a stiff frame; a limber one
// closes its gaps by sagging.
//
// # Sources
//
// Plane trigonometry; the law of cosines; the parallelogram law; Brahmagupta's
// diagonals; the theorem of three moments. Joist spacing under boards: International
// Residential Code, Table R507.7, through package lumber. All clearances
// ([Practice]) and the quarter inch between diagonals are common practice without a
// source that was read.
//
// # Example
//
//	frame := layout.Frame{A: 7.32, B: 3.05, C: 7.32, D: 3.05, P: 7.94, Q: 7.92} // m
//	s, err := frame.Square(0.003) // m, what the tape may be off
//	if err != nil {
//		return err
//	}
//	fmt.Println("corners off by, rad:", s.Off)
package layout
