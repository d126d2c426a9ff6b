package layout_test

import (
	"fmt"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// What each drum bears on: an invented frame of unequal bays, read off its running
// marks, with one drum that wedges and one that comes up under the boards.
func ExampleNew() {
	joist, err := lumber.Size("2x8")
	if err != nil {
		fmt.Println(err)
		return
	}
	frame := layout.Rectangle{
		Length: 88.5 * in, Width: 96 * in, Across: true, Joist: joist, Rim: joist,
		Marks: []float64{0, 20.5 * in, 41 * in, 61.5 * in, 87 * in}, // near faces
	}
	pieces, err := frame.Pieces()
	if err != nil {
		fmt.Println(err)
		return
	}
	l, err := layout.New(layout.Drawing{
		Pieces: pieces,
		Drums: []layout.Drum{
			{Name: "drum 1", At: layout.Point{X: 31.5 * in, Y: 48 * in}, Diameter: 23.5 * in, Length: 35 * in},
			{Name: "drum 2", At: layout.Point{X: 75 * in, Y: 48 * in}, Diameter: 23.5 * in, Length: 35 * in, DropIn: true, Tied: true},
		},
		Decks: []layout.Deck{{Name: "deck", Max: layout.Point{X: 88.5 * in, Y: 96 * in}, Along: true, Face: 5.5 * in, Thickness: 1.5 * in, Gap: 0.25 * in}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, b := range l.Bearings {
		_, spread, err := b.Press(1000)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("drum %d %v, bay %s, spreads the joists with %.0f N of every 1000 N\n", i+1, b.Seat, measure.FeetInches(b.Opening, 8), spread)
	}
	for _, c := range l.Conflicts {
		fmt.Println(c.Format(measure.US))
	}
	// Output:
	// drum 1 wedged between two joists, bay 1 ft 7 in, spreads the joists with 687 N of every 1000 N
	// drum 2 under the deck boards, bay 2 ft, spreads the joists with 0 N of every 1000 N
	// deck spans too far over joist 4 and joist 5: 1-1/2 in too much, has 2 ft 1-1/2 in, at most 2 ft; center to center of the joists (International Residential Code, 2018 and 2021, Table R507.7, maximum joist spacing for decking (as quoted))
	// drum 1 slides towards rim 1: 4 ft 8 in too much, has 4 ft 10 in, at most 2 in; all gaps along it together (common practice, no source)
	// drum 1 drops away from joist 2: 1 ft 11-1/2 in missing; no tie and no strip holds it when the water falls or the dock is lifted
	// drum 2 slides towards rim 1: 4 ft 8 in too much, has 4 ft 10 in, at most 2 in; all gaps along it together (common practice, no source)
}

// How many boards must be on over a drum before the ice goes: an invented frame,
// screws that hold 600 N each.
func ExampleLayout_Lift() {
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	pieces, err := layout.Rectangle{Length: 53.5 * in, Width: 96 * in, Across: true, Marks: []float64{0, 26 * in, 52 * in}, Joist: s, Rim: s}.Pieces()
	if err != nil {
		fmt.Println(err)
		return
	}
	l, err := layout.New(layout.Drawing{
		Pieces: pieces,
		Drums:  []layout.Drum{{Name: "drum", At: layout.Point{X: 13.75 * in, Y: 48 * in}, Diameter: 23.5 * in, Length: 35 * in}},
		Decks:  []layout.Deck{{Name: "deck", Max: layout.Point{X: 53.5 * in, Y: 96 * in}, Along: true, Face: 5.5 * in, Thickness: 1.5 * in, Gap: 0.25 * in}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	lift, err := l.Lift(0, 1900, layout.Strength{Moment: 300, Screw: 600, Screws: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d boards cross it; rows %v first: %.0f N on the hardest pushed, %.0f N on a screw\n", lift.Crossing, lift.Rows, lift.Board, lift.Screw)
	// Output: 6 boards cross it; rows [8 9 10] first: 757 N on the hardest pushed, 521 N on a screw
}

// Is it square: sides and diagonals of an invented frame of 12 by 16 ft, by tape.
func ExampleFrame_Square() {
	f := layout.Frame{A: 144.3 * in, B: 195.4 * in, C: 144.2 * in, D: 195.4 * in, P: 243.1 * in, Q: 242.6 * in}
	s, err := f.Square(in / 16)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Check.Numbers(measure.US)+":", s.Check.Words())
	fmt.Printf("push corner %d by %s along side C, until the diagonals read %s and %s\n", s.Corner,
		measure.FeetInches(s.Push, 16), measure.FeetInches(s.Read[0], 16), measure.FeetInches(s.Read[1], 16))
	// Output:
	// 1/2 in, at most 1/4 in: short
	// push corner 3 by 7/16 in along side C, until the diagonals read 20 ft 2-7/8 in and 20 ft 2-7/8 in
}

// How to level it: tops of four invented blocks by a water hose, one high.
func ExampleLevel() {
	l, err := layout.Level([]layout.Support{
		{Name: "shore left", Height: 0},
		{Name: "lake left", At: layout.Point{X: 16 * measure.Foot}, Height: 0.5 * in},
		{Name: "lake right", At: layout.Point{X: 16 * measure.Foot, Y: 12 * measure.Foot}, Height: 0.25 * in},
		{Name: "shore right", At: layout.Point{Y: 12 * measure.Foot}, Height: 0.25 * in},
	}, layout.Point{X: 8 * measure.Foot, Y: 6 * measure.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range l.Level {
		fmt.Printf("level with %s, untwist with %s, open by %s\n", measure.FeetInches(l.Level[i], 16), measure.FeetInches(l.Flat[i], 16), measure.FeetInches(l.Gap[i], 16))
	}
	fmt.Println("twisted by", measure.FeetInches(l.Twist, 16), "corner to corner; rocks:", l.Rocks)
	// Output:
	// level with 1/2 in, untwist with 1/4 in, open by 1/4 in
	// level with 0 in, untwist with 0 in, open by 0 in
	// level with 1/4 in, untwist with 1/4 in, open by 1/4 in
	// level with 1/4 in, untwist with 0 in, open by 0 in
	// twisted by -1/2 in corner to corner; rocks: true
}
