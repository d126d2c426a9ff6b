package main

import (
	"fmt"
	"math"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
)

func init() {
	calls = append(calls, call{"frame/layout", func() (string, error) {
		γ, err := layout.Corner(3, 4, 5)
		if err != nil {
			return "", err
		}
		if math.Abs(γ-math.Pi/2) > 1e-15 {
			return "", fmt.Errorf("3, 4 and 5 make a corner of %g rad", γ)
		}
		if _, err := layout.Corner(1, 1, 3); err == nil {
			return "", fmt.Errorf("1, 1 and 3 close a triangle")
		}
		s := lumber.Section{Width: 0.038, Depth: 0.184}
		pieces, err := layout.Rectangle{Length: 1.638, Width: 2, Across: true, Marks: []float64{0, 0.5, 1, 1.6}, Joist: s, Rim: s}.Pieces()
		if err != nil {
			return "", err
		}
		l, err := layout.New(layout.Drawing{
			Pieces: pieces,
			Drums:  []layout.Drum{{Name: "drum", At: layout.Point{X: 0.269, Y: 1}, Diameter: 0.58, Length: 0.9}},
		})
		if err != nil {
			return "", err
		}
		if b := l.Bearings[0]; b.Seat != layout.Wedged || len(b.Contacts) != 4 {
			return "", fmt.Errorf("a drum of 0.58 m in a bay of 0.462 m bears %v", b.Seat)
		}
		return "3, 4 and 5 make a right corner; a drum wider than its bay wedges", nil
	}})
}
