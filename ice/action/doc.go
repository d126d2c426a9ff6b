// Package action finds what an ice cover does to a dock that stays in it: how
// it lifts and presses what is frozen in when the lake rises or falls, how it
// thrusts when it warms, and how wind and current push it when it comes loose.
//
// # Model
//
//	level change   a floating plate that follows the water everywhere but at the dock: [Cover.Wall] for a long
//	               side, per metre, [Cover.Uplift] for a pile, a drum or a whole dock as one body
//	               wall   V = k l δ/√2 (edge free to turn) to √2 k l δ (edge held)
//	               body   F = c k l² δ, c near 8 for a small one
//	               capped by bending of the ice and, on smooth sides of known adhesion, by bond
//	thrust         published ranges side by side, [Thrusts]; no model predicts it
//	break-up       drag of wind and current on a loose sheet, τ = ρ C U², times its area, [Drift.Push];
//	               capped on the dock's face by crushing, buckling and, where it slopes, bending
//	one drum       [Cover.Grip]: forces on a drum and its brackets as plain numbers for a frame's model
//
// Level changes and forces are in metres and newtons, k is the water's ρ g and l
// the characteristic length of package ice's plate. Everything uncertain is a
// [Span], a low and a high end with who says so; the high end answers for the
// dock, and the lesser of a force and its caps governs. Every part is reported.
//
// # Assumptions and limits
//
// The plate is thin, elastic, of even thickness, endless and afloat. A body that
// is not round counts as round with the same outline. The ice near it is
// uncracked until a cap is reached; cracks let it feel less. Water that runs over
// a sheet held down, and pieces that break off and hang on the dock with their
// weight, are not counted. What is held counts as held rigidly: a dock that rides
// with the ice feels nearly nothing of a level change until a line, a hinge or
// the ground stops it. Relief by creep is not taken: no figure for it was read.
// Slow changes may be given a lower Modulus by who knows one.
//
// Not computed: the step by step lifting of piles by many level changes,
// grounded ice, ice piled up on the shore, jams, waves in broken ice, the force
// on a floe's edge. A floe under way brings its momentum and reaches the caps in
// any wind, so a [Drift] counts as under way unless it is said to touch.
//
// # Sources
//
// Plate on an elastic foundation (formulas derived, checked by independent
// computation). Zabilansky 1998 for bond on wood; Guest and Davidson 1991,
// Fisher and Lytle, Steiner for drag, all of sea ice; Croasdale, Morgenstern and
// Nuttall for crushing; SINTEF, CEATI and others for thrust. From memory, marked
// so: strengths in bending, the wedge formula of Nevel, buckling on narrow faces,
// the ends of sloping faces, lowest crushing, some manuals' thrust. No value of
// adhesion to polyethylene was read, nor any thrust or drag on a floating dock.
//
// Ice kills and destroys. No check here says that a dock may stay in the ice;
// local rules, permits, people who know the lake and licensed practice come
// before any number.
//
// # Example
//
//	cover := action.Cover{Thickness: 12 * measure.Inch}
//	drum := action.Body{Length: 35 * measure.Inch, Breadth: 23 * measure.Inch}
//	lift, err := cover.Uplift(drum, -2*measure.Inch) // the lake falls
//	if err != nil {
//		return err
//	}
//	fmt.Println(lift.Force.Low, lift.Force.High, lift.Force.Name) // N
package action
