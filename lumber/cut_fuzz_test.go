package lumber_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// Whatever is asked for: an error of a known class, or a plan that can be sawn,
// whose bound is not above its cost; the same twice; and no dearer with one more
// board in hand where both are proven.
func FuzzCut(f *testing.F) {
	f.Add([]byte{40, 3, 80, 5, 120, 2}, []byte{200, 0, 90, 255, 1, 0}, 0.003, 0.005)
	f.Add([]byte{255, 1}, []byte{10, 0, 5}, 0.0, 0.0)
	f.Add([]byte{30, 9, 31, 9, 32, 9, 33, 9}, []byte{100, 0, 40, 150, 0, 61, 70, 2, 0}, 0.00317, 0.0)
	f.Add([]byte{1, 1}, []byte{255, 255, 255}, math.NaN(), -1.0)
	f.Fuzz(func(t *testing.T, pieces, boards []byte, kerf, trim float64) {
		if len(pieces) > 12 || len(boards) > 15 {
			return
		}
		var wants []lumber.Want
		for i := 0; i+1 < len(pieces); i += 2 {
			wants = append(wants, lumber.Want{
				Name: fmt.Sprint("piece ", i), Section: []string{"2x8", "2x10"}[pieces[i+1]>>7],
				Length: float64(pieces[i]) * 0.0173, Count: int(pieces[i+1] % 16),
			})
		}
		var stock []lumber.Stock
		for i := 0; i+2 < len(boards); i += 3 {
			s := lumber.Stock{
				Name: fmt.Sprint("board ", i), Section: "2x8", Length: float64(boards[i]) * 0.0241,
				InHand: int(boards[i+1] % 4), Price: float64(boards[i+2]) / 7,
			}
			s.Price = math.Round(s.Price*100) / 100
			if s.Price == 0 && boards[i+1]&8 != 0 {
				s.Defects = [][2]float64{{s.Length / 3, s.Length / 3 * (1 + float64(boards[i+1]>>4)/32)}}
			}
			if boards[i+1]&4 != 0 {
				s.Section = "2x10"
			}
			stock = append(stock, s)
		}
		saw := lumber.Saw{Kerf: kerf, Trim: trim}
		c, err := lumber.Cut(context.Background(), wants, stock, saw)
		if err != nil {
			if c != nil || !(errors.Is(err, measure.ErrRange) || errors.Is(err, measure.ErrName) || errors.Is(err, measure.ErrUnknown)) {
				t.Fatalf("%v beside %v", err, c)
			}
			return
		}
		checkCuts(t, wants, stock, saw, c)
		again, err := lumber.Cut(context.Background(), wants, stock, saw)
		if err != nil || fmt.Sprint(c) != fmt.Sprint(again) {
			t.Errorf("not the same twice: %v", err)
		}
		stock = append(stock, lumber.Stock{Name: "one more", Section: wants[0].Section, Length: 3, InHand: 1})
		more, err := lumber.Cut(context.Background(), wants, stock, saw)
		if err != nil {
			t.Fatal(err)
		}
		count := func(c *lumber.Cuts) (n int) {
			for _, w := range c.Uncut {
				n += w.Count
			}
			return n
		}
		if c.Total.Proven && more.Total.Proven && (count(more) > count(c) || count(more) == count(c) && more.Total.Cost > c.Total.Cost+1e-6) {
			t.Errorf("one more board: %d uncut at %.2f, before %d at %.2f", count(more), more.Total.Cost, count(c), c.Total.Cost)
		}
	})
}

// Whatever the deck: an error of a known class, or rows that cover it.
func FuzzRows(f *testing.F) {
	f.Add(6.0, 3.0, 0.4, 0.14, 0.003, 0.07, 3.6, false)
	f.Add(6.0, 3.0, 0.4, 0.14, 0.003, 0.0, 0.0, true)
	f.Add(1.0, 0.15, 0.3, 0.14, 0.02, 0.13, 0.4, true)
	f.Add(math.NaN(), 3.0, 0.4, 0.14, 0.003, 0.07, 3.6, false)
	f.Fuzz(func(t *testing.T, length, width, spacing, face, gap, least, longest float64, slanted bool) {
		if length > 30 || width > 30 || (spacing > 0 && spacing < 0.05) {
			return
		}
		joists, err := lumber.JoistLines(length, spacing, 0.038)
		if err != nil {
			if !errors.Is(err, measure.ErrRange) {
				t.Fatal(err)
			}
			return
		}
		d := lumber.Deck{
			Length: length, Width: width, Joists: joists, Board: "5/4x6",
			Face: face, Gap: gap, Least: least, Longest: longest, Slanted: slanted,
		}
		r, err := d.Rows()
		if err != nil {
			if !errors.Is(err, measure.ErrRange) {
				t.Fatal(err)
			}
			return
		}
		checkRows(t, d, r)
	})
}
