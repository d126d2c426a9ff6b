// Package frame solves beams and grillages on supports of any kind: rigid,
// springs, supports that let go instead of pulling, gaps, and any other that says
// what it does at a sinkage.
//
// # Model
//
// A [Beam] is straight, of one section, bends by small angles, and is made of
// material that springs back in proportion (Bernoulli; with GA, Timoshenko's
// shear deflection as well). Between neighbouring rests, hinges and load ends
// its diagrams are polynomials, which [Line] keeps, so that values and extremes
// are exact to rounding. Rigid rests and clamps are taken out of the unknowns.
//
// A [Grillage] is a flat frame of such members that bend and twist, loaded across
// its plane: nodes with a deflection and two rotations, hinged ends, seats under
// one node or several, each with a level of its own. Torsion is St Venant's.
//
// Supports that are not linear are met by Newton's method on the energy, which
// is convex as long as no support pushes less the deeper it is pressed: there is
// one answer. Weights and pushes with a height take that away, as they do from a
// boat: the state near the upright is found, or the frame capsizes.
//
// # Signs
//
// Deflection w is up positive, a sinkage down positive. A moment is positive
// where it sags. The shear at x is the sum of the upward forces left of x, so it
// is the slope of the moment. Loads are given downward positive, as weights are;
// couples and turns are positive counter-clockwise in a drawing with x to the
// right and w up. The forces on a grillage's nodes are up positive, moments and
// rotations about x and y right-handed.
//
// # Assumptions and limits
//
// A frame afloat without the heights of its weights and of its buoyancy answers
// a tilt too stiffly, which is the unsafe side; Weights and Heights of a
// [Grillage] bring them in, for turns of a few degrees. Not covered: large turns,
// forces along the beam and buckling, yielding, beams of changing section, and
// dynamics. Shear deflection must be left out (GA zero) where the modulus of
// elasticity is an apparent one, as tabulated design values are: it is in them
// already.
//
// # Sources
//
// Elementary theory of beams; shear deflection after S. P. Timoshenko. Outside
// checks: tables of beam formulas, the Wood Handbook's deflection constants,
// solutions for beams on elastic foundation, textbook grids, and complete frames
// solved by an independent program, each named with its status beside the check.
//
// # Example
//
//	joist := frame.Beam{
//		Length: 3.6, // m
//		EI:     2e5, // N·m²
//		Rests:  []frame.Rest{{At: 0, Name: "ledger"}, {At: 3, Name: "beam"}},
//		Loads:  []frame.Load{frame.Uniform(0, 3.6, 900)}, // N/m
//	}
//	line, err := joist.Solve()
//	if err != nil {
//		return err
//	}
//	fmt.Println(line.Push, line.Extremes().Sag.Moment) // N, N·m
package frame
