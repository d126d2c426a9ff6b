// Package dock is the whole job: it takes a plan (frame/plan), builds the models
// of every package from it, runs their checks and returns one [Report].
//
// # Model
//
// The frame is a rectangle: joists at running marks, two rims across their ends,
// decking on top. Lumber gives no buoyancy. Floats are drums lying level or
// rectangular blocks; a drum between two joists nearer to each other than its
// diameter sits wedged between their lower edges, one in a wider bay bears on the
// deck boards, one under the joists on their lower edges.
//
// Axes: x along the dock and y across it from its middle, z up from the underside
// of the joists.
//
// # Where to begin
//
// [Read] takes a plan; [Dock.Report] runs every check and writes itself as text, JSON
// and lists. The numbers for the sign are [Dock.Plate] of [Dock.Envelope], what to
// measure on launch day [Dock.Launch]; [Dock.Shop] cuts and buys, [Dock.Season] gives
// odds from past winters, [Compare] sets docks side by side.
//
// # The frame
//
// [Dock.Envelope] solves the frame in every situation that the dock meets, as a
// grillage on its floats in parts (package frame) and in its own plane (package
// frame/rack), and keeps the worst. Afloat, heights of weights and of buoyancy act at
// the joists' ends, and follow the drafts; with stiff members the frame takes the
// rigid attitude of package float. Deck boards are beams from joist to joist and
// screws in the plane; their own bending is left out, for which the code's factor
// stands. [Dock.Layout] says what bears on what and which parts do not go together.
//
// # For drawings
//
// [Dock.Shape], [Dock.Lines], [Dock.Crowded], [Dock.Righting] and
// [Envelope.Diagram] give what was found as plain numbers to draw.
//
// # What it does not answer
//
// Each report lists it. Those entries are no answers, never silence.
//
// # Hardware
//
// The package has no maker's figure: what a hanger, a tie or a drum takes is the
// plan's to say, and what it does not say has no answer. An angle's own bending is
// its maker's too. Corner joints count like any joist's end.
//
// # How verdicts rest on inputs
//
// An input that is unknown or assumed is tried with the other values that it
// might plausibly have. If one of them turns a check, that input decides it: a
// check that rests on an unknown that decides has no answer.
package dock
