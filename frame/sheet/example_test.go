package sheet_test

import (
	"fmt"
	"log"
	"os"
	"path/filepath"
	"strings"
	"time"

	"example.org/floewright/frame/sheet"
	"example.org/floewright/lumber/measure"
)

// Draw how two joists are cut from a board.
func ExampleCutting_Draw() {
	p, err := sheet.Cutting{Units: measure.US, Boards: []sheet.Board{{
		Size: "2x8", Length: 20 * measure.Foot, Kerf: measure.Inch / 8,
		Pieces: []sheet.Piece{{Name: "joist", Length: 117 * measure.Inch}, {Name: "joist", Length: 117 * measure.Inch}},
	}}}.Draw()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(p.Title)
	fmt.Println(p.Desc)
	fmt.Println(strings.Contains(p.SVG, "1: 2x8, 20 ft, left over 5-3/4 in"))
	// Output:
	// Cutting diagram
	// The cuts on 1 board of stock, 2 pieces in all; the lengths stand on the pieces.
	// true
}

// Find how high both edges of a heeled deck are.
func ExampleHeeled_Edges() {
	e := sheet.Heeled{Width: 3.05, Depth: 0.184, Deck: 0.038, Heel: 0.1, Height: 0.2}
	high, low := e.Edges()
	fmt.Println(measure.Length.Format(high, measure.SI), "and", measure.Length.Format(low, measure.SI))
	// Output: 573 mm and 269 mm
}

// Find how much line to pay out as the lake falls.
func ExampleTie_At() {
	pine := sheet.Tie{Name: "old pine", Over: 0.4, FarX: -9, FarY: -4, FarZ: 1}
	for _, l := range []sheet.Level{{Name: "today"}, {Name: "low water", Rise: -0.5}} {
		fmt.Printf("%s: %s\n", l.Name, measure.Length.Format(pine.At(l), measure.SI))
	}
	// Output:
	// today: 9.867 m
	// low water: 9.910 m
}

// Print a card and write it with its picture into a folder.
func ExampleWriteFiles() {
	plan, err := sheet.Plan{Units: measure.SI, Length: 6, Width: 2.4, Along: []float64{0, 0.4, 0.8}}.Draw()
	if err != nil {
		log.Fatal(err)
	}
	doc := sheet.Document{
		Title: "Yard work float (invented)", Date: time.Date(2027, time.January, 23, 0, 0, 0, 0, time.UTC), Units: measure.SI,
		Cards: []sheet.Card{{Name: "layout", Title: "Layout", Blocks: []sheet.Block{
			plan, sheet.Blanks{{Label: "First diagonal", Unit: "m"}, {Label: "Second diagonal", Unit: "m"}},
		}}},
	}
	files, err := doc.Files()
	if err != nil {
		log.Fatal(err)
	}
	parent, err := os.MkdirTemp("", "")
	if err != nil {
		log.Fatal(err)
	}
	defer os.RemoveAll(parent)
	dir := filepath.Join(parent, "sheets")
	if err := sheet.WriteFiles(dir, files); err != nil {
		log.Fatal(err)
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		log.Fatal(err)
	}
	for _, e := range entries {
		fmt.Println(e.Name())
	}
	// Output:
	// plan.svg
	// sheet.html
}
