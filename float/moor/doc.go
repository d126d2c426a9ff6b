// Package moor finds what holds a floating dock: the loads of wind, current,
// waves and boats, the lines and anchors that take them, the moored dock at rest
// at every level of the lake, the hinge to a neighbour, the ramp to the shore, and
// the strength of rope, chain and wire.
//
// # Model
//
//   - A line hangs in a catenary, or an elastic catenary, in up to eight pieces
//     with weights between them; one to an anchor may lie on the bottom, one to the
//     shore hangs free. [Line.At] finds its pulls from its ends, [Line.Pull] its
//     reach from a pull, both exact from slack to bar-tight.
//   - The dock is stiff on plan: it surges, sways and turns until lines, posts and
//     load balance ([Mooring.Rest]). The water sets its height.
//   - Loads are steady; [Weather] gathers them. [Mooring.Survey] takes them from all
//     directions at all levels and follows each force to ground: fitting, pieces,
//     links, anchor; fitting, post and what it stands in. A path that ends in
//     something undescribed has no answer. What the pins of a hinge pass to a
//     neighbour ([Mooring.Passed]) is the storm of the neighbour's own survey.
//   - [Mooring.Bands] and [Mooring.Lengths] find the levels and the lengths that work,
//     [Mooring.Losses] what follows when one line is lost.
//
// # Conventions
//
// x runs along the dock, y across, z up; directions are the way wind, water and
// loads go, from x to y. Forces are newtons, weights of lines are newtons per
// metre where they hang, in water or in air. Heights are over one datum of the
// lake's level. Results go on as plain numbers: [FittingForce] to the frame,
// [Ramp.Reaction] to the float, [Cleat.On] and [Gear] to the joints.
//
// # Assumptions and limits
//
// Neglected: drag and inertia of lines, the slope of the bottom under a line and
// its friction on it, the slow swinging of a moored dock in gusts and wave groups,
// snatching of a line that was slack, ice. The load is that on the unturned dock.
// Pieces of rope that float count as weightless; buoys on a line are not computed.
// Not computed either: drag anchors by their weight, screw anchors by soil or
// torque, the wake of a boat by its size (a height must be seen), second-order
// wave forces past mean drift, what a boat's bump brings to the lines past its
// fender's force. Holdings of trees, bolts and embedded anchors are the user's;
// strength unknown is no answer. A hinge ties two stiff floats: a frame that twists
// eases its pins. Snow slides, melts and is shovelled: its weight is that at rest.
//
// Where sources differ the cautious value is the default: the weakest of
// conflicting strengths and clips, the wind at 15 ft for all that is lower,
// friction of the worst bottom of its class under a dropped block, 2.0 on sliding,
// the most a boat's mass grows by the water along, the highest wave of a thousand on
// what cannot give way, old wet snow. Gust curves differ too: 3 s over
// 10 min is 1.44 by the curve used and 1.45 by ESDU's. Wave methods differ by half
// and are shown side by side ([Fetch.Spread]); the ramp's limit of 1 in 3 is practice,
// the navy's is 1 in 1.5, the accessible one 1 in 12.
//
// # Sources
//
// Coastal Engineering Manual, Part II; Shore Protection Manual 1984; UFC 4-159-03
// and 4-152-01; ASCE 7; NAVFAC DM-7.02; FAA AC 43.13-1B, table 7-3; TM
// 5-3810-305-10; NAVEDTRA 14026 and 14251; Cordage Institute CI 1308; each formula and row names its own with
// how it is known. Shapes in wind, shackles and a part of the wire table are from
// memory and say so.
//
// # Safety
//
// A dock adrift is a hazard to others, a loaded line kills when it parts, and
// anchors are set from boats in cold water. Look at lines, shackles and anchors
// every spring. Local rules on moorings, the owner of the lake bed and those with a
// licence to design decide; this package does not.
//
// # Example
//
//	rope, err := moor.Lookup("nylon 3-strand", "3/4 in")
//	if err != nil {
//		return err
//	}
//	check, err := rope.Check(2000) // N, in a line that ends in a knot
//	if err != nil {
//		return err
//	}
//	fmt.Println(check)
package moor
