package dock

import (
	"math"
	"testing"

	"example.org/floewright/float"
	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// Blocks by hand, in inches: rims and blocks of 1-1/2 in, a float of 36 in with 1-3/4 in of
// play, 7/8 in at each end where both are blocks.
func TestBlocksByHand(t *testing.T) {
	const in = measure.Inch
	d := &Dock{across: true, width: 120 * in, rimPlies: 1}
	d.rim.section = lumber.Section{Width: 1.5 * in, Depth: 9.25 * in}
	d.joist.section = lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	for _, c := range []struct {
		name      string
		row, want []float64
	}{
		{"in the middle", []float64{60}, []float64{60 - 18 - 0.875 - 0.75, 60 + 18 + 0.875 + 0.75}},
		{"close to the near rim", []float64{1.5 + 0.5 + 18}, []float64{1.5 + 0.5 + 36 + 1.25 + 0.75}},
		{"close to the far rim", []float64{118.5 - 1.25 - 18}, []float64{118.5 - 1.25 - 36 - 0.5 - 0.75}},
		{"1.9 in off the near rim: nearly as much as practice leaves", []float64{1.5 + 1.9 + 18}, []float64{1.5 + 1.9 + 36 + 0.75}},
		{"2-1/4 in off the near rim: a block against it", []float64{1.5 + 2.25 + 18}, []float64{1.5 + 0.75, 1.5 + 2.25 + 36 + 1 + 0.75}},
		{"2-1/4 in off the far rim", []float64{118.5 - 2.25 - 18}, []float64{118.5 - 2.25 - 36 - 1 - 0.75, 118.5 - 0.75}},
		{"3 in off the near rim", []float64{1.5 + 3 + 18}, []float64{1.5 + 3 - 0.875 - 0.75, 1.5 + 3 + 36 + 0.875 + 0.75}},
		{"8 in between two", []float64{38, 82}, []float64{38 - 18 - 1.625, 38 + 18 + 1.625, 82 - 18 - 1.625, 82 + 18 + 1.625}},
		{"6-1/4 in between two: one for both", []float64{38, 80.25}, []float64{38 - 18 - 1.625, 59.125, 80.25 + 18 + 1.625}},
		{"1 in between two, which bear on each other", []float64{40, 77}, []float64{40 - 18 - 0.75 - 0.75, 77 + 18 + 0.75 + 0.75}},
		{"between both rims", []float64{20.5, 99.5}, []float64{20.5 + 18 + 0.75 + 0.75, 99.5 - 18 - 0.75 - 0.75}},
	} {
		for i := range c.row {
			c.row[i] *= in
		}
		got := d.blocksIn(c.row, 36*in)
		if len(got) != len(c.want) {
			t.Errorf("%s: %d blocks, want %d", c.name, len(got), len(c.want))
			continue
		}
		for i, at := range got {
			if math.Abs(at/in-c.want[i]) > 1e-9 {
				t.Errorf("%s: block %d at %g in, want %g in", c.name, i+1, at/in, c.want[i])
			}
		}
	}
	// Blocks of 3-1/2 in: 3 in off a rim there is no room for any.
	d.joist.section.Width = 3.5 * in
	if got := d.blocksIn([]float64{(1.5 + 3 + 18) * in}, 36*in); len(got) != 1 {
		t.Errorf("thick blocks: %v", got)
	}
	if got := d.blocksIn([]float64{38 * in, 77 * in}, 36*in); len(got) != 2 {
		t.Errorf("thick blocks, 3 in between two: %v", got)
	}
}

// Wherever a float lies, its blocks overlap neither it nor a rim and leave it the room
// that builders do (package layout's practice), unless the rims leave less.
func TestBlocksLeaveRoom(t *testing.T) {
	const in = measure.Inch
	d := &Dock{across: true, width: 120 * in, rimPlies: 2}
	d.rim.section = lumber.Section{Width: 1.5 * in, Depth: 9.25 * in}
	d.joist.section = lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	near, far := d.between()
	practice := layout.Practice().End
	for at := near + 18*in; at <= far-18*in; at += in / 64 {
		from, to := near, far
		for _, b := range d.blocksIn([]float64{at}, 36*in) {
			if b < near+0.75*in-1e-9 || b > far-0.75*in+1e-9 {
				t.Fatalf("a float at %g in: the block at %g in overlaps a rim", at/in, b/in)
			}
			if b < at {
				from = b + 0.75*in
			} else {
				to = b - 0.75*in
			}
		}
		if from > at-18*in+1e-9 || to < at+18*in-1e-9 {
			t.Fatalf("a float at %g in: a block overlaps it", at/in)
		}
		if room := to - from - 36*in; room < practice[0]-1e-9 || room > practice[1]+1e-9 {
			t.Fatalf("a float at %g in has %g in of room", at/in, room/in)
		}
	}
}

// Of two checks of one kind that are short, that of a dock which finds no rest is the worse,
// whatever number the other has.
func TestNoRestIsWorse(t *testing.T) {
	short := measure.Check{Name: "tilt", Kind: measure.Angle, Value: 1, Limit: 0.1, Rule: srcRest}
	gone := (&float.Failure{Class: float.ErrCapsizes}).Check(short)
	if !beyond(gone, short) || beyond(short, gone) || beyond(gone, gone) {
		t.Error("a number is worse than a capsize")
	}
}
