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
// the frame in place: the hinge to the shore, a post, a fixed point, a line that
// pulls and hangs slack where it would have to push.
//
// Loads are forces on nodes (a pull at a cleat or a hinge, a boat's bump), and
// forces, couples and spread loads on members (ice along a rim). The model is
// linear but for slack lines; between neighbouring nodes, screws and loads the
// diagrams are polynomials and exact.
//
// # Afloat
//
// A frame without Holds floats: the water does not hold it in its plane. Its
// loads must balance each other, as the forces of its lines, wind and waves do;
// what they leave beyond a thousandth is an [*ImbalanceError], unless [Drag] says
// which parts carry it: the members in the water of a frame that is towed or
// bumped, the drums of one that skids over the ice. [Solution] reports it.
// Movements are then those that are left without the frame's own.
//
// # Joints whose slip is not known
//
// A slip stiffness that is zero or NaN, and a bracket of NaN, is not known, and
// then no movement is given: [Solution.Racking] is an error of class
// [measure.ErrUnknown]. Forces still follow. The frame is solved with
// every combination of soft, usual and stiff screws, joints and brackets,
// and with some that differ joint by joint, and every force is a
// [Between]: one value where all agree, because equilibrium alone decides it, and
// else the least and the greatest found. That is what was found
// among the stiffnesses tried, which [Case] lists, not a proof. A known slip comes
// from a test, or from a wood code's slip modulus for the fastener, as a hole
// without play.
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
// # Assumptions and limits
//
// Not covered: large movements, buckling, forces out of the plane, boards that
// touch each other's edges, friction, play that must be taken up before a joint
// resists, joints that bear but do not pull, fasteners past their proportional
// range, creep, and shocks: a bump is a force that somebody has estimated. Each
// crossing of a board and a member turns as a whole over the width of its screws.
// Slip in wet wood under load that lasts is a multiple of the short-term one.
// Forces are no verdict: what a joint, a screw or a rim can carry is for
// the strengths of fasteners and lumber, local codes and licensed practice.
//
// # Sources
//
// Elementary theory of frames, members described by their flexibility. Outside
// checks: textbook frames and trusses, closed forms of portals, braced panels,
// couples of screws and members afloat, and frames solved by an independent
// program, each named with its status beside the check. Slip of fasteners, for
// the middle of what is tried: EN 1995-1-1:2004, Table 7.1, from memory.
//
// # Example
//
//	brace := [2]rack.End{rack.Pinned(), rack.Pinned()}
//	f := &rack.Frame{
//		Nodes: [][2]float64{{0, 0}, {3, 0}, {1.5, 2}}, // m
//		Members: []rack.Member{
//			{Nodes: []int{0, 2}, EA: 5e7, EI: 1e4, Ends: brace}, // N, N·m²
//			{Nodes: []int{1, 2}, EA: 5e7, EI: 1e4, Ends: brace},
//		},
//		Holds: []rack.Hold{
//			{Node: 0, Along: math.Inf(1), Across: math.Inf(1)},
//			{Node: 1, Along: math.Inf(1), Across: math.Inf(1)},
//		},
//		Forces: []rack.Force{{Node: 2, X: 1000}}, // N
//	}
//	s, err := f.Solve()
//	if err != nil {
//		return err
//	}
//	joint, pulls := s.Pull() // that is pulled most
//	fmt.Println(joint.Pull.Most, pulls)
package rack
