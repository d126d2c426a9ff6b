package main

import (
	"fmt"
	"math"

	"example.org/floewright/float/moor"
)

func init() {
	calls = append(calls, call{"float/moor", func() (string, error) {
		line := moor.Line{Pieces: []moor.Piece{{Length: 12, Weight: 20}}}
		hang, err := line.At(8, 3, moor.Hang{})
		if err != nil {
			return "", err
		}
		// Slack, its upright part alone hangs on the dock: 3 m of 20 N/m.
		if pull := hang.Tension(); math.Abs(pull-60) > 1e-6 {
			return "", fmt.Errorf("a slack line pulls %g N at the dock, want its hanging 3 m, 60 N", pull)
		}
		if _, err := line.At(100, 3, moor.Hang{}); err == nil {
			return "", fmt.Errorf("a line of 12 m reaches 100 m")
		}
		ramp := moor.Ramp{Width: 1, Shore: 1.5}
		if l, err := ramp.Needed(0, 0); err != nil || math.Abs(l-1.5*math.Sqrt(10)) > 1e-9 {
			return "", fmt.Errorf("a fall of 1.5 m at 1 in 3 needs %g m of ramp, %v", l, err)
		}
		return "a slack line hangs on the dock by its upright part", nil
	}})
}
