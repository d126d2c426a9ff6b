package sheet

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/floewright/lumber/measure"
)

// TestAtLeast: a thickness that is asked for is never printed thinner than it is.
func TestAtLeast(t *testing.T) {
	for _, u := range []measure.System{measure.US, measure.SI} {
		c := &cards{units: u}
		for x := 0.03; x < 1.2; x += 0.0037 {
			back, err := measure.Length.Parse(c.atLeast(x))
			if err != nil || back < x-1e-9 || back > x+0.0105 {
				t.Errorf("%g m is printed %q, %g m, %v", x, c.atLeast(x), back, err)
			}
		}
	}
}

// TestFit: a picture gives way so that its card has one side, but never so far that it
// cannot be read, and a card that fits stays as it is.
func TestFit(t *testing.T) {
	d := Document{Title: "dock", Date: time.Date(2027, time.February, 6, 0, 0, 0, 0, time.UTC)}
	text := Paragraph(strings.Repeat("words ", 30))
	for _, high := range []float64{400, 900, 1000, 1050, 1100, 2000} {
		card := Card{Name: "card", Title: "Card", Blocks: []Block{Picture{Name: "picture", SVG: "<svg/>", Width: 1000, Height: high}, text, text, text, text}}
		before := card.Blocks[0].height()
		d.Cards = []Card{d.fit(card)}
		after := d.Cards[0].Blocks[0].height()
		sides, err := d.sides()
		if err != nil {
			t.Fatal(err)
		}
		total := 0.0
		for _, b := range d.Cards[0].Blocks {
			total += b.height()
		}
		switch fits := total <= d.room(&card); {
		case after > before || after < leastShrunk*before-1:
			t.Errorf("%g high: %g mm become %g", high, before, after)
		case fits != (len(sides) == 1):
			t.Errorf("%g high: %g mm on %d sides", high, total, len(sides))
		case fits && after < before && total < d.room(&card)-1:
			t.Errorf("%g high: shrunk further than it must be", high)
		}
		if math.Abs(high-400) < 1 && after != before || high == 2000 && after != before {
			t.Errorf("%g high: %g mm become %g", high, before, after)
		}
	}
}
