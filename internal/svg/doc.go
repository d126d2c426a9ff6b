// Package svg writes line drawings as SVG 1.1 text: lines, arcs, hatching,
// dimensions, leaders, axes. It is made for trade drawings in black on white, to
// be read on a phone and on paper.
//
// # Model
//
// A [Drawing] has a size in drawing units, x to the right and y down. A [View]
// carries metres to units. Line weights and hatchings are named constants.
//
// Every text is measured by a table of widths that no usual sans-serif face
// exceeds, and its box is kept: [Drawing.Place], the dimensions and the leaders
// move a text to where it covers no other. Texts lie over all lines, each on a
// white ground.
//
// Numbers are printed with two decimals, so that the same drawing is the same
// text on every machine. A NaN, an infinity or a coordinate far off the sheet is
// refused: [Drawing.Err] and [Drawing.SVG] report the first.
package svg
