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
// # What it does not answer
//
// Each report lists it: joints and fasteners, the frame's own bending afloat,
// racking, lines and anchors, weeks on the ice, and the season. Those
// entries are no answers, never silence.
//
// # How verdicts rest on inputs
//
// An input that is unknown or assumed is tried with the other values that it
// might plausibly have. If one of them turns a check, that input decides it: a
// check that rests on an unknown that decides has no answer.
package dock
