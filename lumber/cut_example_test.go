package lumber_test

import (
	"context"
	"fmt"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A cutting plan: what to cut from the boards in the shed, one of them split at
// an end, and what to buy for the rest. Lengths and prices are invented.
func ExampleCut() {
	const ft, in = measure.Foot, measure.Inch
	wants := []lumber.Want{
		{Name: "rim", Section: "2x8", Length: 12 * ft, Count: 2},
		{Name: "joist", Section: "2x8", Length: 7*ft + 9*in, Count: 8},
		{Name: "blocking", Section: "2x8", Length: 14.5 * in, Count: 9},
	}
	stock := []lumber.Stock{
		{Name: "2x8 from the shed", Section: "2x8", Length: 11*ft + 7*in, InHand: 1, Defects: [][2]float64{{0, 16 * in}}},
		{Name: "2x8x8", Section: "2x8", Length: 8 * ft, Price: 11.48},
		{Name: "2x8x12", Section: "2x8", Length: 12*ft + 0.5*in, Price: 17.98},
		{Name: "2x8x16", Section: "2x8", Length: 16 * ft, Price: 23.48},
	}
	plan, err := lumber.Cut(context.Background(), wants, stock, lumber.Saw{Kerf: in / 8, Trim: in / 8})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, b := range plan.Boards {
		fmt.Printf("%s:", b.Name)
		for _, p := range b.Pieces {
			fmt.Printf(" %s %s,", p.Name, measure.FeetInches(p.Length, 16))
		}
		left := 0.0
		for _, o := range b.Offcuts {
			left += o.Length
		}
		fmt.Printf(" left %s\n", measure.FeetInches(left, 16))
	}
	t := plan.Total
	fmt.Printf("buy %d boards for %.2f; no plan costs less: %v\n", t.Bought, t.Cost, t.Proven)
	// Output:
	// 2x8 from the shed, in hand 1: joist 7 ft 9 in, blocking 1 ft 2-1/2 in, left 1 ft 3-1/8 in
	// 2x8x8, bought 1: joist 7 ft 9 in, left 2-5/8 in
	// 2x8x8, bought 2: joist 7 ft 9 in, left 2-5/8 in
	// 2x8x8, bought 3: joist 7 ft 9 in, left 2-5/8 in
	// 2x8x8, bought 4: joist 7 ft 9 in, left 2-5/8 in
	// 2x8x8, bought 5: joist 7 ft 9 in, left 2-5/8 in
	// 2x8x8, bought 6: joist 7 ft 9 in, left 2-5/8 in
	// 2x8x8, bought 7: joist 7 ft 9 in, left 2-5/8 in
	// 2x8x8, bought 8: blocking 1 ft 2-1/2 in, blocking 1 ft 2-1/2 in, blocking 1 ft 2-1/2 in, blocking 1 ft 2-1/2 in, blocking 1 ft 2-1/2 in, blocking 1 ft 2-1/2 in, left 8 in
	// 2x8x12, bought 1: rim 12 ft, left 1/8 in
	// 2x8x16, bought 1: rim 12 ft, blocking 1 ft 2-1/2 in, blocking 1 ft 2-1/2 in, left 1 ft 6-3/8 in
	// buy 10 boards for 133.30; no plan costs less: true
}

// How many boards, and how wide the last is: rows of 5/4x6 on a deck.
func ExampleDeck_Rows() {
	const ft, in = measure.Foot, measure.Inch
	joists, err := lumber.JoistLines(16*ft, 16*in, 1.5*in)
	if err != nil {
		fmt.Println(err)
		return
	}
	d := lumber.Deck{Length: 16 * ft, Width: 8 * ft, Joists: joists, Board: "5/4x6", Gap: in / 8, Longest: 12 * ft}
	r, err := d.Rows()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d rows, first %s, last %s\n", len(r.Rows), measure.FeetInches(r.First, 16), measure.FeetInches(r.Last, 16))
	for _, p := range r.Pieces {
		fmt.Printf("%2d %s of %s\n", p.Count, p.Name, measure.FeetInches(p.Length, 16))
	}
	fmt.Printf("%d screws, %.0f ft of boards, %.0f board feet\n", r.Screws, r.Lineal/ft, r.BoardFeet)
	for _, n := range r.Notes {
		fmt.Println(n)
	}
	// Output:
	// 18 rows, first 2-15/16 in, last 2-15/16 in
	//  8 deck board of 9 ft 4 in
	//  1 edge board of 9 ft 4 in
	// 16 deck board of 8 ft
	//  2 edge board of 8 ft
	//  8 deck board of 6 ft 8 in
	//  1 edge board of 6 ft 8 in
	// 504 screws, 288 ft of boards, 180 board feet
	// both edge rows are ripped to the same width: the last alone would be a sliver
}
