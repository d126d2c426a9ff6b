// Package rack solves a dock's frame in its own plane: what racks it out of
// square, bends its rims the weak way and pulls its joists off their headers.
//
// # Model
//
// A [Frame] lies flat. Every node moves along x and y and turns about z, a
// [Member] is straight, stretches and bends by small movements (Bernoulli; with
// GA, Timoshenko's shear deflection as well), and is continuous through the
// nodes it passes. Its two ends are joints: an [End] says how they turn and how
// they slip along and across the member. A [Board] of the deck is a member above
// the others, held by screws alone; each [Screw] gives in proportion to its
// force, in every direction alike. So a board across joists acts as a couple of
// its screws, and a board laid aslant as a diagonal. A diagonal brace is a member
// with pinned ends, a corner bracket the Turn of an end. A [Hold] is what keeps
// the frame in place: the hinge to the shore, a fixed point, a line as a spring.
//
// Loads are forces on nodes (a pull at a cleat or a hinge, a boat's bump), and
// forces, couples and spread loads on members (ice along a rim, the drag of the
// water or of the snow while a frame is towed or skidded: [Frame.Dragged]). The
// model is linear; between neighbouring nodes, screws and loads the diagrams are
// polynomials and exact.
//
// # Joints whose slip is not known
//
// A slip stiffness left at zero is unknown, and then no movement is given:
// [Solution.Racking] is an error of class [measure.ErrUnknown]. Forces still
// follow from equilibrium where equilibrium alone decides. The frame is solved for many
// stiffnesses instead of one, from very soft to very stiff, by kind of joint and
// joint by joint, and every force is a [Between]: one value where they all agree,
// the least and the greatest found where they do not. That is what was found
// among the stiffnesses tried, not a proof. [SlipModulus] is a wood code's figure
// for a screw, nail or bolt in a hole without play.
//
// # Signs
//
// x and y are those of the frame, angles and couples counter-clockwise. A
// member's own x runs from its first node to its last, its left is a quarter turn
// counter-clockwise from that. A load is positive along the member and to its
// left, an axial force where it stretches the member, so that a positive one pulls
// the joint out. The shear at x is the sum of the forces to the left that act
// before x, so it is the slope of the moment, and a positive moment bends the
// member's middle to its right.
//
// # Limits
//
// Not covered: large movements, buckling, forces out of the plane, boards that
// touch each other's edges, friction, play that must be taken up before a joint
// resists, joints that bear but do not pull, fasteners past their proportional
// range, creep, and shocks: a bump is a force that somebody has estimated. A line
// only pulls; one that would have to push is said in [Solution.Notes], not left
// out. Each crossing of a board and a member turns as a whole over the width of
// its screws. Slip in wet wood under load that lasts is a multiple of the
// short-term one.
//
// # Sources
//
// Elementary theory of frames, members described by their flexibility. Outside
// checks: textbook frames and trusses, closed forms of portals, braced panels and
// couples of screws, and frames solved by an independent program, each named with
// its status beside the check. Slip of fasteners: EN 1995-1-1:2004, Table 7.1.
package rack
