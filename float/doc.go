// Package float answers how a dock on drums floats: its sinkage, heel and trim
// together under any load, exact at finite angles, and how far it is from
// trouble: who may stand at which edge, what a lost drum does, how few drums do.
//
// # Model
//
// A [Platform] is rigid. It rests where its weights, fixed to it at their
// heights, and the water's pressure on the [Body] of every [Unit] balance.
// Lumber gives no buoyancy: wet decking floats little, and soon not at all.
// [Platform.Settle] follows the potential energy
//
//	E/g = M (n·G + d) - ρ ∫ (n·r + d) dV over all that is wet
//
// downhill in the level d and the vertical n, by Newton's method on its second
// derivatives in closed form, so that the rest position found is a minimum. The
// integrals over a drum, level or tilted, an end out of the water or hardly
// touching, are closed too ([Cylinder.Wet]); they keep their digits from 1e-12
// of the diameter to full, and as the tilt vanishes.
//
// Loose water in a unit levels itself. A flooded unit is open to the lake. A
// captive unit pushes up on the frame through its axis while it carries more
// than itself, and otherwise floats by itself.
//
// # Around it
//
// [Water] gives the density of fresh, brackish and sea water; [Drums] and
// [MeasureDrum] the size and mass of drums with their tolerances, [Seal] the
// pressure in a closed one. [Criteria] holds limits of published rules as data,
// each a [Rule] that takes a platform; [DrumNotice] goes with every result on
// drums. [Platform.Motion] gives the natural periods of heave, roll and pitch.
// [Survey] reads a dock afloat backwards: from freeboards measured at its corners
// to its weight, centre of gravity, and the drums that may be leaking.
//
// # Axes
//
// x runs along the dock, y across, z up; heel turns about x (positive: the +y
// side is down), trim about y (positive: the +x end is down). In these axes the
// vertical is
//
//	n = (-sin trim, -sin heel cos trim, cos heel cos trim)
//
// and a point r stands n·r + d above the water. Right-handed rotations about x
// and y are -heel and +trim.
//
// # Assumptions and limits
//
// Bodies are smooth and rigid: hoops, chimes and dents of drums change their
// volume by about 1 % (common practice, no source). Everything is at rest; a
// [Wave] is a snapshot of a long one, each unit on the level and slope under its
// own centre. Rules of thumb from the level waterplane understate the tilt by
// 1 % on a broad dock and by 15 to 30 % on a narrow, crowded or low one; nothing
// here uses them.
//
// # Errors
//
// Bad data gives a [*measure.Error]. A platform that sinks, capsizes or has no
// float gives a [*Failure] with what is lacking. A State, and every verdict made
// from it, is no better than the weights and places put in: a person drowns as
// easily beside a dock whose numbers were guessed. Local codes, permits and
// licensed practice go before anything computed here.
//
// # Sources
//
// Segment, hoof and metacentre are classical geometry (Archimedes, On Floating
// Bodies; CRC Standard Mathematical Tables, ungula, from memory); the
// metacentric height, free surface and lost buoyancy as in Barrass and Derrett,
// Ship Stability for Masters and Mates. Every outside value that the package
// reproduces is data in the module's internal table, and its tests run them.
//
// # Example
//
//	drum := float.Cylinder{Diameter: 23 * measure.Inch, Length: 35 * measure.Inch}
//	dock := &float.Platform{Density: 1000, Weights: []float.Weight{{Mass: 400}}} // kg/m³, kg
//	for _, x := range []float64{-2, 2} {
//		for _, y := range []float64{-1, 1} { // m
//			dock.Units = append(dock.Units, float.Unit{Body: drum, At: r3.Vec{X: x, Y: y, Z: -0.2}, Mass: 18})
//		}
//	}
//	rest, err := dock.Settle()
//	if err != nil {
//		return err // it sinks, capsizes, or a number is malformed
//	}
//	fmt.Println("tilt, rad:", rest.Tilt())
package float
