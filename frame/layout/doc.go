// Package layout turns what a builder measures of a frame into what its models
// need, and tells him whether the frame is what he thinks.
//
// So far it answers one question: is the frame square? [Frame.Corners] finds the
// angles of a four-sided frame from its measured sides and one diagonal, and
// [Frame.Misfit] whether the other diagonal belongs to them; [Racked] gives the
// offset and the angle of a frame whose opposite sides are equal.
//
// # Model and limits
//
// The frame is flat and its sides are straight. Equal diagonals alone prove
// nothing: a trapezium has them too. Measure all four sides, since stock runs
// long; nominal lengths make a square frame look racked. Four sides and two
// diagonals are one measurement more than a flat frame has freedom for, so that
// their misfit shows a wrong reading or a frame that is twisted out of its plane.
//
// # Sources
//
// Plane trigonometry: the law of cosines; the parallelogram law. How far out of
// square a dock may be is nobody's published rule that was read; craft practice is
// 1/4 in. between the diagonals of a 16 ft frame (from memory).
package layout
