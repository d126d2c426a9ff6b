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

// What is divided by next to nothing is refused, not infinite.
func TestNextToNothing(t *testing.T) {
	const least = 5e-324
	for name, call := range map[string]func() error{
		"waterplane":     func() error { _, err := moor.Afloat(0, 0.3, least, 1, 1, 1); return err },
		"inertia along":  func() error { _, err := moor.Afloat(0, 0.3, 1, least, 1, 1); return err },
		"inertia across": func() error { _, err := moor.Afloat(0, 0.3, 1, 1, least, 1); return err },
		"friction": func() error {
			_, err := moor.DeadWeight{Density: 2400, Friction: least, Design: measure.Factor{Value: 1.5}}.Needed(100, 0)
			return err
		},
		"stiffness": func() error { _, _, err := moor.Fender{Stiffness: least}.Stop(100); return err },
		"stroke":    func() error { _, _, err := moor.Fender{Stroke: least}.Stop(100); return err },
	} {
		if err := call(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
