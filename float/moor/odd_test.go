package moor_test

import (
	"errors"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// The least numbers there are, of which a square is nothing, are refused: not NaN.
func TestLeastNumbers(t *testing.T) {
	const least = 5e-324
	sea := moor.Sea{Height: 0.3, Period: 20}
	line := moor.Line{Shore: true, Pieces: []moor.Piece{{Length: 7, Weight: 17}}}
	for name, call := range map[string]func(x float64) error{
		"length":     func(x float64) error { _, err := sea.Length(x); return err },
		"highest":    func(x float64) error { _, err := sea.Highest(x); return err },
		"push":       func(x float64) error { _, _, err := sea.Push(x, x/2, 0.1); return err },
		"swing":      func(x float64) error { _, err := sea.Swing(x); return err },
		"shore line": func(x float64) error { _, err := line.Pull(x, 3); return err },
		"length of piece": func(x float64) error {
			_, err := (&moor.Line{Pieces: []moor.Piece{{Length: x, Weight: 17}}}).Pull(5, 0.5)
			return err
		},
		"depth, time": func(x float64) error {
			_, err := moor.Fetch{Wind: 11, Length: 800, Depth: x, Duration: x}.Spread()
			return err
		},
	} {
		if err := call(4); err != nil && name != "length of piece" {
			t.Errorf("%s of 4: %v", name, err)
		}
		for _, x := range []float64{least, 1e-300, 1e-160} {
			if err := call(x); !errors.Is(err, measure.ErrRange) {
				t.Errorf("%s of %g: %v", name, x, err)
			}
		}
	}
}
